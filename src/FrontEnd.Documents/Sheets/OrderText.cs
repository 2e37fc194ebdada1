using System.Globalization;
using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>The order list, the same in every format.</summary>
internal static class OrderText
{
    /// <summary>Columns of the list as a file.</summary>
    public static readonly IReadOnlyList<string> Columns =
    [
        "designators", "quantity", "class", "value", "code", "tolerance", "dielectric or technology", "temperature coefficient", "voltage rating",
        "power rating", "package", "where", "key", "remark", "card",
    ];

    /// <summary>A row of the file, in the order of <see cref="Columns"/>.</summary>
    public static IEnumerable<string> Cells(BoardAnswers answers, OrderRow row) =>
    [
        row.Designators, row.Quantity.ToString(CultureInfo.InvariantCulture), OrderList.Word(row.First.Class), Value(row.First), PartCode.Of(row.First.Value),
        Tolerance(row.First), row.Ratings.Technology, row.Ratings.TemperatureCoefficient, row.Ratings.Voltage, row.Ratings.Power, row.Ratings.Package,
        row.Where, row.Keys, Remark(answers, row), row.First.Card,
    ];

    /// <summary>Value of a resistor or a capacitor, else what the piece is.</summary>
    public static string Value(BoardPart part) => part.Value is { } value ? QuantityText.FormatPart(value) : part.Description;

    /// <summary>"±1 %".</summary>
    public static string Tolerance(BoardPart part) => part.Tolerance is { } tolerance ? "±" + QuantityText.FormatTrimmed(tolerance, 3) : "";

    /// <summary>What to know of a row, with what the spread says of its tolerance.</summary>
    public static string Remark(BoardAnswers answers, OrderRow row) =>
        string.Join("; ", new[] { row.Remark, answers.MarkOf(row) is { } mark ? Mark(mark) : "" }.Where(text => text.Length != 0));

    /// <summary>"worth paying for: ±0.1 % lifts the yield from 93.1 % to 96.0 %".</summary>
    private static string Mark(ToleranceMark mark) => mark.IsTighter
        ? $"worth paying for: ±{QuantityText.FormatTrimmed(mark.Other, 3)} lifts the yield from {Share(mark.Before)} to {Share(mark.After)}"
        : $"±{QuantityText.FormatTrimmed(mark.Other, 3)} is good enough: yield {Share(mark.Before)}, then {Share(mark.After)}";

    private static string Share(double share) => QuantityText.Format(Ratio.FromFraction(share));

    /// <summary>A sum of prices, in the user's currency, without what adding in binary leaves behind.</summary>
    public static string Price(double price) => Math.Round(price, 6).ToString("0.00####", CultureInfo.InvariantCulture);

    /// <summary>What the list costs, what has no price, and what a device that meets all costs; empty without prices.</summary>
    public static IReadOnlyList<string> Cost(BoardAnswers answers, double? yield)
    {
        if (answers.Prices is not { } prices)
        {
            return [];
        }

        (double total, IReadOnlyList<OrderRow> without) = prices.Total(answers.Order);
        return
        [
            $"The parts for one device cost {Price(total)}"
                + (without.Count == 0 ? "." : $", without {string.Join(", ", without.Select(row => row.Designators))}, which have no price."),
            .. yield is > 0 and { } share
                ? (string[])[$"{Share(share)} of the devices meet every requirement: {Price(Math.Round(total / share, 2))} of parts for each that does."]
                : [],
        ];
    }
}
