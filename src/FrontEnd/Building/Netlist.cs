using FrontEnd.Boards;

namespace FrontEnd.Building;

/// <summary>A row of a netlist: one pin of one piece.</summary>
/// <param name="Designator">The piece with its assembly's prefix: "A1R301". A package, never one of its op-amps.</param>
/// <param name="Pin">Number of the pin.</param>
/// <param name="Net">The net that it is on; "" where it is not connected.</param>
internal readonly record struct NetlistRow(string Designator, string Pin, string Net);

/// <summary>Which pin is on which net.</summary>
internal static class Netlist
{
    /// <summary>Every pin of a board, by designator and then by pin.</summary>
    public static IReadOnlyList<NetlistRow> Of(Board board) =>
    [
        .. board.Parts.SelectMany(part => part.Pins.Select(pin => new NetlistRow(part.Name, pin.Number, pin.Net)))
            .OrderBy(row => row.Designator, StringComparer.Ordinal).ThenBy(row => row.Pin.Length).ThenBy(row => row.Pin, StringComparer.Ordinal),
    ];
}
