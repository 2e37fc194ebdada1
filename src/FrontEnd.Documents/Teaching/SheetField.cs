using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>What stands at the top of a sheet: a value that is known, or a line to fill in.</summary>
/// <param name="Value">Null for a line to fill in.</param>
internal sealed record SheetField(string Label, string? Value)
{
    private static readonly string[] Usual = ["Name", "Number"];

    /// <summary>Those of a sheet; none where a student's name and id stand for themselves.</summary>
    /// <param name="fields">See <see cref="HomeworkPlan.Fields"/>; empty or null for name and number.</param>
    public static IReadOnlyList<SheetField> Of(Student? student, IReadOnlyList<string>? fields)
    {
        if (fields is not { Count: > 0 })
        {
            return student is null ? [.. Usual.Select(label => new SheetField(label, null))] : [];
        }

        string?[] known = student is null ? [] : [student.Name.Length == 0 ? null : student.Name, student.Id];
        return [.. fields.Select((field, at) => new SheetField(Capital(field.Trim()), at < known.Length ? known[at] : null))];
    }

    private static string Capital(string field) => char.ToUpperInvariant(field[0]) + field[1..];
}
