using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>Nets as a reader takes them from a drawing: what touches is joined, and so is what has one name.</summary>
/// <remarks>The board is asked for nothing. A page that stands for several channels is read once for each of them.</remarks>
internal sealed class DrawnNets
{
    private readonly Dictionary<string, string> _parents = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _places = new(StringComparer.Ordinal);
    private readonly List<(string Name, string Place)> _names = [];

    public DrawnNets(Schematic schematic)
    {
        for (int page = 0; page < schematic.Pages.Count; page++)
        {
            foreach (int assembly in schematic.Pages[page].Assemblies)
            {
                Read(schematic.Pages[page], $"{page}:{assembly}:", assembly);
            }
        }
    }

    /// <summary>Every name that is written at a net, with the group of what is joined there.</summary>
    public IEnumerable<(string Name, string Group)> Names => _names.Select(name => (name.Name, Root(name.Place)));

    /// <summary>The groups that a pin is drawn in: one, if the drawing is right.</summary>
    /// <param name="pin">"A1R301.2".</param>
    public IEnumerable<string> GroupsOf(string pin) =>
        _places.TryGetValue(pin, out List<string>? places) ? places.Select(Root).Distinct(StringComparer.Ordinal) : [];

    private void Read(SchematicPage page, string scope, int assembly)
    {
        string prefix = assembly == 0 ? "" : $"A{assembly}";
        string Place(GridPoint at) => $"{scope}{at.X},{at.Y}";
        HashSet<GridPoint> ends = [];
        foreach (SchematicSymbol symbol in page.Symbols)
        {
            foreach (SymbolPin pin in symbol.Pins)
            {
                ends.Add(pin.At);
                string name = $"{prefix}{symbol.Part.Designator}.{pin.Number}";
                (_places.TryGetValue(name, out List<string>? places) ? places : _places[name] = []).Add(Place(pin.At));
            }
        }

        foreach (SchematicPort port in page.Ports)
        {
            ends.Add(port.At);
            string name = NameOf(port.Name, assembly);
            _names.Add((name, Place(port.At)));
            Join(Place(port.At), $"net {name}");
        }

        ends.UnionWith(page.Wires.SelectMany(wire => wire.Corners));
        foreach ((GridPoint from, GridPoint to) in page.Wires.SelectMany(wire => wire.Segments))
        {
            GridPoint way = new(Math.Sign(to.X - from.X), Math.Sign(to.Y - from.Y));
            for (GridPoint at = from + way; ; at += way)
            {
                if (ends.Contains(at))
                {
                    Join(Place(from), Place(at));
                }

                if (at == to)
                {
                    break;
                }
            }
        }
    }

    /// <summary>A name as it is written on a page of a channel: its own nets lack their prefix, and what it shares says so.</summary>
    private static string NameOf(string name, int assembly) => assembly == 0 || Nets.IsRail(name)
        ? name
        : name.EndsWith(Schematic.SharedMark, StringComparison.Ordinal) ? name[..^Schematic.SharedMark.Length] : $"A{assembly}.{name}";

    private string Root(string place)
    {
        string at = place;
        while (_parents.TryGetValue(at, out string? parent))
        {
            at = parent;
        }

        if (at != place)
        {
            _parents[place] = at;
        }

        return at;
    }

    private void Join(string a, string b)
    {
        (string one, string two) = (Root(a), Root(b));
        if (one != two)
        {
            _parents[one] = two;
        }
    }
}
