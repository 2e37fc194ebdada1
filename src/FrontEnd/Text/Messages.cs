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

    internal static ParseProblem NoNumber(string text, QuantityKind kind, int position)
    {
        string what = char.IsAsciiDigit(text[0]) ? $"`{text}` has more than one point in its number" : $"`{text}` does not begin with a number";
        return QuantityMeant.Of(text, kind) is { } proposal
            ? new(NotANumber, what, proposal.Why, proposal.Help, position, kind.Example) { NamesValue = true, Meant = proposal.Meant, Ends = proposal.Ends }
            : new(NotANumber, what, Lookalikes.InvisibleReason(text), WriteSuch(kind), position, kind.Example);
    }

    internal static ParseProblem Comma(string text, QuantityKind kind, int position)
    {
        string[] readings = NumberMeant.Readings(text);
        (string Help, string? Meant) told = readings.Length == 0 ? ($"write {NumberMeant.WithoutComma(text)}", null)
            : readings is [var point, var plain] ? ($"write `{point}` if the comma is a decimal sign, `{plain}` if it groups thousands", null)
            : kind.Is<Resistance>() && NumberMeant.IsNumber(readings[0]) ? ($"write `{readings[0]} Ω` if ohms are meant", $"{readings[0]} Ω")
            : QuantityText.TryParse(kind, readings[0], out _, out ParseProblem? problem) ? ($"write `{readings[0]}`", readings[0])
            : problem.NamesValue ? (problem.Help, problem.Meant) : ($"write `{readings[0]}` with a unit: {WriteSuch(kind)}", null);
        return new(DecimalComma, $"`{text}` has a comma in its number", "the decimal sign is a point, whatever the language of the machine, and nothing groups thousands", told.Help, position, kind.Example)
            { NamesValue = true, Meant = told.Meant };
    }

    internal static ParseProblem UnknownUnit(string text, string unit, QuantityKind kind, IReadOnlyList<string> otherKinds, int position) =>
        (otherKinds.Count == 0 ? QuantityMeant.Of(text, kind) : QuantityMeant.PrefixOf(text, unit, kind)) is { } proposal
            ? new(NotThisQuantity, $"`{text}` is not {kind.Words}", proposal.Why, proposal.Help, position, kind.Example) { NamesValue = true, Meant = proposal.Meant, Ends = proposal.Ends }
            : new(
                NotThisQuantity,
                $"`{text}` is not {kind.Words}",
                Lookalikes.Reason(unit) ?? (otherKinds.Count == 0 ? $"the unit `{unit}` is not known" : $"the unit `{unit}` belongs to {string.Join(" or ", otherKinds)}"),
                WriteSuch(kind),
                position,
                kind.Example);

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
