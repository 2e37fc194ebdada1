using System.Text.Json.Serialization;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Sheets;

/// <summary>The key of a homework as it is written beside the sheets, and read for marking.</summary>
/// <param name="Format">Says that the file is a key.</param>
/// <param name="Version">Of the format, not of the program.</param>
/// <param name="Templates">Version of the templates that drew the numbers.</param>
/// <param name="Seal">Over everything else in the file.</param>
/// <param name="Code">Of the homework.</param>
/// <param name="Generator">Of the random numbers.</param>
/// <param name="Rubric">Left out where it says nothing but what is usual.</param>
internal sealed record KeyJson(string Format, int Version, string Seal, string Code, string Templates, string Generator, ulong Seed,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RubricJson? Rubric, IEnumerable<KeySheetJson> Sheets);

/// <summary>What answers earn that are not simply right, by the keys of a homework's file.</summary>
/// <param name="Questions">By the ids of those that differ from the others.</param>
internal sealed record RubricJson(QuestionRubricJson All, IReadOnlyDictionary<string, QuestionRubricJson> Questions)
{
    public static RubricJson? From(Rubric rubric) => rubric.IsUsual ? null
        : new(QuestionRubricJson.From(rubric.All), rubric.Questions.ToDictionary(one => one.Key, one => QuestionRubricJson.From(one.Value), StringComparer.Ordinal));
}

/// <summary>Shares of a question's points, 0 to 1.</summary>
/// <param name="Slip">Null for what each slip says.</param>
internal sealed record QuestionRubricJson(double? Slip, double Rounding, double Unit, double Kind, double Sign)
{
    public static QuestionRubricJson From(QuestionRubric rubric) =>
        new(rubric.Slip, rubric.Rounding, rubric.UnitLeftOut, rubric.OtherKind, rubric.WrongSign);
}

/// <summary>One student's questions; "" where all share a sheet.</summary>
internal sealed record KeySheetJson(string Student, string Name, IReadOnlyList<KeyQuestionJson> Questions)
{
    public static KeySheetJson From(KeySheet sheet) => new(sheet.Student, sheet.Name, [.. sheet.Questions.Select(KeyQuestionJson.From)]);
}

/// <summary>One question: the accepted range in SI units, for a choice its index.</summary>
/// <param name="Kind">Of the quantity; left out for a choice.</param>
/// <param name="Choices">Left out for a quantity.</param>
internal sealed record KeyQuestionJson(
    string Id, string Template, string Title, string Text, IReadOnlyList<KeyGiven> Givens, int Points, string Answer,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Kind,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Choices,
    double Value, double Low, double High)
{
    /// <summary>The value before it was rounded as the question asks; left out where nothing is to be rounded.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Unrounded { get; init; }

    /// <summary>Whether values on the way are worked out, which somebody may round.</summary>
    public required bool HasIntermediates { get; init; }

    public required IReadOnlyList<KeySlipJson> Slips { get; init; }

    public required IReadOnlyList<KeyStep> Steps { get; init; }

    public static KeyQuestionJson From(KeyQuestion one) => new(
        one.Id, one.Template, one.Title, one.Text, one.Givens, one.Points, one.Answer, one.Kind?.Name, one.Options.Count > 0
            ? one.Options
            : null, one.Value, one.Low, one.High)
    {
        Unrounded = one.Unrounded, HasIntermediates = one.HasIntermediates,
        Slips = [.. one.Slips.Select(slip => new KeySlipJson(slip.Code, slip.Value, slip.Low, slip.High, slip.Points, slip.Remark))],
        Steps = one.Steps,
    };
}

/// <summary>A known slip and the range that gives it away.</summary>
internal sealed record KeySlipJson(string Slip, double Value, double Low, double High, double Points, string Remark);
