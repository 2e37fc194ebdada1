using System.Globalization;

namespace FrontEnd.Text;

/// <summary>All wording of messages. Tests and programs refer to a message by its code; the wording may change.</summary>
internal static partial class Messages
{
    public const string NotANumber = "FE0101";
    public const string NotThisQuantity = "FE0102";
    public const string DecimalComma = "FE0103";
    public const string SeveralReadings = "FE0104";
    public const string OutOfRange = "FE0105";
    public const string Empty = "FE0106";
    public const string UnitMissing = "FE0107";

    internal static ParseProblem EmptyText(QuantityKind kind) =>
        new(Empty, $"the text is empty where {kind.Words} is expected", null, WriteSuch(kind), 0, kind.Example);

    internal static ParseProblem NoNumber(string text, QuantityKind kind, int position) =>
        new(NotANumber, $"`{text}` does not begin with a number", Plain(text, kind) is null ? null : NumberMeant.Rule, Plain(text, kind) ?? WriteSuch(kind), position, kind.Example);

    internal static ParseProblem Comma(string text, QuantityKind kind, int position) =>
        new(
            DecimalComma,
            $"`{text}` has a comma in its number",
            "the decimal sign is a point, whatever the language of the machine",
            text.AsSpan().Count(',') > 1
                ? $"leave the commas out: `{text.Replace(",", "", StringComparison.Ordinal)}`"
                : $"write `{text[..position]}.{text[(position + 1)..]}` if the comma is a decimal sign; leave it out if it groups thousands",
            position,
            kind.Example);

    internal static ParseProblem UnknownUnit(string text, string unit, QuantityKind kind, IReadOnlyList<string> otherKinds, int position) =>
        new(
            NotThisQuantity,
            $"`{text}` is not {kind.Words}",
            Plain(text, kind) is not null ? NumberMeant.Rule : Lookalikes.Reason(unit) ?? (otherKinds.Count == 0 ? $"the unit `{unit}` is not known" : $"the unit `{unit}` belongs to {string.Join(" or ", otherKinds)}"),
            Lookalikes.First(unit) is not null && QuantityText.TryParse(kind, Lookalikes.ToLatin(text), out _, out _)
                ? $"retype it: `{Lookalikes.ToLatin(text)}`" : Plain(text, kind) ?? WriteSuch(kind),
            position,
            kind.Example);

    /// <summary>What to write where only the number's signs are not plain ones; null where that is not all.</summary>
    private static string? Plain(string text, QuantityKind kind) =>
        NumberMeant.PlainSigns(text) is var plain && plain != text && QuantityText.TryParse(kind, plain, out _, out _) ? $"write `{plain}`" : null;

    internal static ParseProblem Ambiguous(string text, QuantityKind kind, IReadOnlyList<string> readings, int position) =>
        new(
            SeveralReadings,
            readings.Count == 1 ? $"`{text}` has a prefix in the wrong case" : $"`{text}` can be read in {readings.Count} ways",
            $"it could be {string.Join(" or ", readings.Select(reading => $"`{reading}`"))}: `m` is milli, `M` is mega",
            readings.Count == 1 ? $"write `{readings[0]}` if that is intended" : "write the intended one",
            position,
            kind.Example);

    internal static ParseProblem TooLarge(string text, QuantityKind kind, int position) =>
        new(OutOfRange, $"`{text}` is outside the range of numbers",
            "the largest is 1.8e308 and the smallest above zero 4.9e-324, in SI units", WriteSuch(kind), position, kind.Example);

    internal static ParseProblem NoUnit(string text, QuantityKind kind, int position) =>
        new(UnitMissing, $"`{text}` has no unit", null,
            $"add a unit: {(InPlainUnit(text, kind) is { } plain ? $"`{text} {plain}`" : $"`{text}{(kind.Form == NumberForm.Degrees ? "" : " ")}{kind.UnitExamples[0]}`{MoreUnits(text, kind)}")}", position, kind.Example);

    /// <summary>The unit without a prefix for a number that is written as instruments and programs write SI units, `551e-9`; null for any
    /// other number.</summary>
    /// <remarks>With the example's `µV` such a number would be read a million times too small.</remarks>
    private static string? InPlainUnit(string text, QuantityKind kind) =>
        kind.Form == NumberForm.Prefixed && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && (text.Contains('e', StringComparison.OrdinalIgnoreCase) || (value != 0 && Math.Abs(value) < 1e-3))
            ? kind.Units[0].Spellings[0] + kind.Suffix
            : null;

    internal static bool IsInPlainUnit(string text, QuantityKind kind) => InPlainUnit(text, kind) is not null;

    private static string MoreUnits(string text, QuantityKind kind) =>
        string.Concat(kind.UnitExamples.Skip(1).Select(unit => $" or `{text} {unit}`"));

    private static string WriteSuch(QuantityKind kind) =>
        $"write {kind.Asked}, such as {string.Join(" or ", kind.Examples.Select(example => $"`{example}`"))}";
}
