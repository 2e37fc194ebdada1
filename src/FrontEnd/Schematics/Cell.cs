namespace FrontEnd.Schematics;

/// <summary>Where a signal enters or leaves a cell.</summary>
internal readonly record struct CellPort(GridPoint At, string Net);

/// <summary>A block as drawn, at a place of its own.</summary>
/// <param name="In">Where the signal enters; null where it comes by name.</param>
/// <param name="Out">Where it leaves.</param>
internal sealed record Cell(
    string Title, IReadOnlyList<SchematicSymbol> Symbols, IReadOnlyList<SchematicWire> Wires, IReadOnlyList<SchematicPort> Ports,
    IReadOnlyList<SchematicText> Texts, CellPort? In, CellPort? Out)
{
    /// <summary>All that it fills.</summary>
    public Area Bounds
    {
        get
        {
            Area area = Area.Nothing;
            foreach (SchematicSymbol symbol in Symbols)
            {
                area = symbol.Body.Concat(symbol.Texts.Select(text => text.Box)).Append(Area.Around(symbol.Pins.Select(pin => (Spot)pin.At)))
                    .Aggregate(area, (sum, next) => sum.With(next));
            }

            area = area.With(Area.Around(Wires.SelectMany(wire => wire.Corners).Select(corner => (Spot)corner)));
            foreach (SchematicPort port in Ports)
            {
                area = (port.Body is { } body ? area.With(body) : area).With(port.Text?.Box ?? Area.Nothing);
            }

            // The signal's own cells stand close, and their names are cut; others are as wide as their names.
            area = In is null && Title.Length > 0 && area.Left <= area.Right
                ? area with { Right = Math.Max(area.Right, area.Left + Lettering.Width(Title, Lettering.Large, bold: true)) } : area;
            return Texts.Aggregate(area, (sum, text) => sum.With(text.Box));
        }
    }

    public Cell Moved(GridPoint by) => this with
    {
        Symbols = [.. Symbols.Select(symbol => symbol.Moved(by))], Wires = [.. Wires.Select(wire => wire.Moved(by))],
        Ports = [.. Ports.Select(port => port.Moved(by))], Texts = [.. Texts.Select(text => text.Moved(by))],
        In = In is { } entry ? entry with { At = entry.At + by } : null, Out = Out is { } exit ? exit with { At = exit.At + by } : null,
    };
}
