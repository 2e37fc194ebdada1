using FrontEnd.Boards;

namespace FrontEnd.Building;

/// <summary>What pieces cost, as the user says: by designator, by class and value, by card or by class.</summary>
/// <param name="Rows">What is priced, in the user's words, and the price of one piece in whatever currency the user thinks in; at least 0.</param>
internal sealed record Prices(IReadOnlyList<(string Piece, double Price)> Rows)
{
    /// <summary>Price of one piece: the first row for its designator, else for its class and value ("resistor 68 kΩ"), else for its card, else for its
    /// class; null where no row speaks of it.</summary>
    public double? Of(BoardPart part)
    {
        string kind = OrderList.Word(part.Class);
        string[] names = [part.Name, part.Designator, part.Value is { } value ? $"{kind} {QuantityText.FormatPart(value)}" : "", part.Card, kind];
        foreach (string name in names.Where(name => name.Length != 0))
        {
            foreach ((string piece, double price) in Rows)
            {
                if (string.Equals(Plain(piece), Plain(name), StringComparison.OrdinalIgnoreCase))
                {
                    return price;
                }
            }
        }

        return null;
    }

    /// <summary>What all rows of an order list cost together, and the rows of which a piece has no price.</summary>
    public (double Total, IReadOnlyList<OrderRow> Without) Total(IReadOnlyList<OrderRow> order) =>
        (order.Sum(row => Of(row) ?? 0), [.. order.Where(row => Of(row) is null)]);

    /// <summary>What a row costs: all of its pieces; null where a piece has no price.</summary>
    public double? Of(OrderRow row)
    {
        double sum = 0;
        foreach (BoardPart part in row.Parts)
        {
            if (Of(part) is not { } price)
            {
                return null;
            }

            sum += price;
        }

        return sum;
    }

    /// <summary>Blanks and the spelling of Ω and µ tell no pieces apart.</summary>
    private static string Plain(string text) => text.Replace(" ", "", StringComparison.Ordinal).Replace("ohm", "Ω", StringComparison.OrdinalIgnoreCase)
        .Replace('μ', 'µ').Replace("uF", "µF", StringComparison.Ordinal);
}
