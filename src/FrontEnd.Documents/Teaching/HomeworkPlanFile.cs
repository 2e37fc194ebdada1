using FrontEnd.Documents.Files;
using FrontEnd.Documents.Reading;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A homework's file, TOML with the keys of <see cref="HomeworkFields"/>; checked like a design.</summary>
internal static class HomeworkPlanFile
{
    /// <summary>Null where a finding is an error.</summary>
    public static (HomeworkPlan? Plan, IReadOnlyList<Finding> Findings) Read(string path)
    {
        string? text = TextFiles.Read(path, out Finding? finding);
        return text is null ? (null, [finding!]) : Parse(text, path);
    }

    public static (HomeworkPlan? Plan, IReadOnlyList<Finding> Findings) Parse(string text, string? file = null)
    {
        SourceText source = new(file, text);
        List<Finding> findings = [];
        TableNode root = TomlTree.Read(source, findings);
        HomeworkPlan plan = new();
        string[] keys = [.. HomeworkFields.All.Select(field => field.Key)];
        foreach (Entry entry in root.Entries)
        {
            if (HomeworkFields.All.FirstOrDefault(field => string.Equals(field.Key, entry.Key, StringComparison.Ordinal)) is not { } field)
            {
                findings.Add(source.Placed(
                    ReadingMessages.Unknown(entry.Key, Nearest.Of(entry.Key, keys), keys, entry.Value is TableNode), entry.KeySpan.Start));
            }
            else if (NodeValue.Read(field, entry.Key, entry.Value, DocumentFormat.Toml, out object? value, out Node place) is { } wrong)
            {
                findings.Add(source.Placed(wrong, place.Span.Start));
            }
            else
            {
                plan = field.Set(plan, value);
            }
        }

        foreach (Finding finding in plan.Check())
        {
            findings.Add(root.Find(finding.Field) is { } entry ? source.Placed(finding, entry.Value.Span.Start) : finding with { File = file });
        }

        IReadOnlyList<Finding> sorted = [.. findings.OrderBy(finding => finding.Line ?? int.MaxValue)];
        return (findings.Exists(finding => finding.Severity == Severity.Error) ? null : plan, sorted);
    }
}
