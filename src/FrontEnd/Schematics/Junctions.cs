namespace FrontEnd.Schematics;

/// <summary>Where wires, pins and ports of a page meet, and from how many sides.</summary>
internal static class Junctions
{
    /// <summary>Every point at which something ends, with the directions that something goes in from there, a line that passes in two.</summary>
    public static IReadOnlyDictionary<GridPoint, IReadOnlyList<GridPoint>> Of(SchematicPage page)
    {
        Dictionary<GridPoint, List<GridPoint>> arms = [];
        foreach (SchematicWire wire in page.Wires)
        {
            foreach ((GridPoint from, GridPoint to) in wire.Segments)
            {
                GridPoint way = new(Math.Sign(to.X - from.X), Math.Sign(to.Y - from.Y));
                Add(from, way);
                Add(to, new(-way.X, -way.Y));
            }
        }

        foreach (SymbolPin pin in page.Symbols.SelectMany(symbol => symbol.Pins))
        {
            Add(pin.At, pin.Arm);
        }

        foreach (SchematicPort port in page.Ports)
        {
            Add(port.At, port.Arm);
        }

        foreach ((GridPoint from, GridPoint to) in page.Wires.SelectMany(wire => wire.Segments))
        {
            GridPoint way = new(Math.Sign(to.X - from.X), Math.Sign(to.Y - from.Y));
            for (GridPoint at = from + way; at != to; at += way)
            {
                if (arms.TryGetValue(at, out List<GridPoint>? here))
                {
                    here.Add(way);
                    here.Add(new(-way.X, -way.Y));
                }
            }
        }

        return arms.ToDictionary(one => one.Key, one => (IReadOnlyList<GridPoint>)one.Value);

        void Add(GridPoint at, GridPoint way)
        {
            if (!arms.TryGetValue(at, out List<GridPoint>? here))
            {
                arms[at] = here = [];
            }

            if (way != default)
            {
                here.Add(way);
            }
        }
    }

    /// <summary>Points that three or more go to: there stands a dot.</summary>
    public static IReadOnlyList<GridPoint> Dots(SchematicPage page) =>
        [.. Of(page).Where(one => 2 < one.Value.Count).Select(one => one.Key).OrderBy(at => at.X).ThenBy(at => at.Y)];
}
