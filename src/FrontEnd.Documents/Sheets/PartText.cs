using FrontEnd.Boards;
using FrontEnd.Building;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a part to buy says of itself, the same in every format.</summary>
internal static class PartText
{
    /// <summary>Value as it stands on the part (an active part: its card), tolerance, the series that has the value or the nearest value
    /// of one.</summary>
    public static string[] Cells(ListedPart part) => part.Value is { } value
        ? [QuantityText.FormatPart(value.Nominal), "±" + QuantityText.FormatTrimmed(value.Tolerance, 3), Preferred(value)]
        : [part.Card.Length == 0 ? "of the class assumed" : part.Card, "", ""];

    private static string Preferred(PartValue value) =>
        value.Nearest is { } nearest ? $"nearest {QuantityText.FormatTrimmed(nearest, 6)} ({value.Series})" : $"{value.Series}";
}
