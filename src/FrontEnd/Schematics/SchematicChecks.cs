using FrontEnd.Building;

namespace FrontEnd.Schematics;

/// <summary>Whether a drawing says what its board is, and can be read. Each answer lists what is wrong, a sentence each.</summary>
internal static class SchematicChecks
{
    /// <summary>The nets, taken from nothing but lines that touch and names that are the same, against the netlist, pin by pin.</summary>
    public static IReadOnlyList<string> Nets(Schematic schematic)
    {
        DrawnNets drawn = new(schematic);
        List<string> faults = [];
        Dictionary<string, (string Net, string Pin)> netOfGroup = new(StringComparer.Ordinal);
        Dictionary<string, string> groupOfNet = new(StringComparer.Ordinal);
        foreach (NetlistRow row in Netlist.Of(schematic.Board))
        {
            string pin = $"{row.Designator}.{row.Pin}";
            string[] groups = [.. drawn.GroupsOf(pin)];
            if (groups.Length != 1)
            {
                faults.Add(groups.Length == 0 ? $"{pin} is not drawn" : $"{pin} is drawn in {groups.Length} places that are not joined");
                continue;
            }

            string net = row.Net.Length == 0 ? $"(alone) {pin}" : row.Net;
            if (netOfGroup.TryGetValue(groups[0], out (string Net, string Pin) other) && other.Net != net)
            {
                faults.Add($"{pin} on {net} is drawn joined with {other.Pin} on {other.Net}");
            }
            else if (groupOfNet.TryGetValue(net, out string? group) && group != groups[0])
            {
                faults.Add($"{pin} on {net} is drawn apart from the rest of its net");
            }

            netOfGroup[groups[0]] = (net, pin);
            groupOfNet[net] = groups[0];
        }

        faults.AddRange(drawn.Names.Where(name => netOfGroup.TryGetValue(name.Group, out (string Net, string Pin) of) && of.Net != name.Name)
            .Select(name => $"the name {name.Name} stands at {netOfGroup[name.Group].Net}"));
        return faults;
    }

    /// <summary>Texts that touch another text, a line or a symbol; lines that run through a symbol; anything beyond the page.</summary>
    public static IReadOnlyList<string> Readability(SchematicPage page)
    {
        List<string> faults = [];
        Area sheet = new(0, 0, Schematic.Width, Schematic.Height);
        SchematicText[] texts = [.. page.AllTexts];
        (string Name, Area Body)[] bodies =
        [
            .. page.Symbols.SelectMany(symbol => symbol.Body.Select(body => (symbol.Part.Designator, body))),
            .. page.Ports.Where(port => port.Body is not null).Select(port => (port.Name, port.Body!.Value)),
        ];
        faults.AddRange(bodies.Where(body => !sheet.Holds(body.Body)).Select(body => $"{body.Name} stands beyond the page"));
        for (int at = 0; at < texts.Length; at++)
        {
            Area box = texts[at].Box;
            if (!sheet.Holds(box))
            {
                faults.Add($"“{texts[at].Text}” stands beyond the page");
            }

            faults.AddRange(texts.Skip(at + 1).Where(other => box.Overlaps(other.Box)).Select(other => $"“{texts[at].Text}” and “{other.Text}” overlap"));
            faults.AddRange(page.Dots.Where(dot => box.Overlaps(new(dot.X - DotRadius, dot.Y - DotRadius, dot.X + DotRadius, dot.Y + DotRadius)))
                .Select(_ => $"a dot touches “{texts[at].Text}”"));
        }

        faults.AddRange(Lines(page).SelectMany(line => texts.Where(text => Crosses(line.From, line.To, text.Box)).Select(text => $"{line.Of} runs through “{text.Text}”")));
        faults.AddRange(Bodies(page));
        faults.AddRange(Wires(page));
        return faults;
    }

    /// <summary>Radius of the dot that joins, in steps.</summary>
    public const double DotRadius = 0.22;

    /// <summary>Symbols that touch each other or the text of another.</summary>
    private static IEnumerable<string> Bodies(SchematicPage page)
    {
        (string Name, IReadOnlyList<Area> Body, IEnumerable<SchematicText> Texts)[] all =
        [
            .. page.Symbols.Select(symbol => (symbol.Part.Designator, symbol.Body, (IEnumerable<SchematicText>)symbol.Texts)),
            .. page.Ports.Select(port => (port.Name, (IReadOnlyList<Area>)(port.Body is { } body ? [body] : []),
                (IEnumerable<SchematicText>)(port.Text is { } text ? [text] : []))),
            .. page.Texts.Select(text => (text.Text, (IReadOnlyList<Area>)[], (IEnumerable<SchematicText>)[text])),
        ];
        for (int one = 0; one < all.Length; one++)
        {
            for (int two = 0; two < all.Length; two++)
            {
                if (one != two && all[one].Body.Any(body => all[two].Texts.Any(text => body.Overlaps(text.Box))))
                {
                    yield return $"a text of {all[two].Name} stands on {all[one].Name}";
                }

                if (one < two && all[one].Body.Any(body => all[two].Body.Any(body.Overlaps)))
                {
                    yield return $"{all[one].Name} and {all[two].Name} overlap";
                }
            }
        }
    }

    /// <summary>Wires that run through a symbol or across its leads.</summary>
    private static IEnumerable<string> Wires(SchematicPage page)
    {
        (string Name, IReadOnlyList<Area> Body, IReadOnlyList<Stroke> Strokes, GridPoint[] Ends)[] all =
        [
            .. page.Symbols.Select(symbol => (symbol.Part.Designator, symbol.Body, symbol.Strokes, symbol.Pins.Select(pin => pin.At).ToArray())),
            .. page.Ports.Select(port => (port.Name, (IReadOnlyList<Area>)(port.Body is { } body ? [body] : []), port.Strokes, new[] { port.At })),
        ];
        foreach ((GridPoint from, GridPoint to) in page.Wires.SelectMany(wire => wire.Segments))
        {
            if (from.X != to.X && from.Y != to.Y)
            {
                yield return $"a wire runs askew from {from} to {to}";
            }

            foreach ((string name, IReadOnlyList<Area> body, IReadOnlyList<Stroke> strokes, GridPoint[] ends) in all)
            {
                if (body.Any(area => Crosses(from, to, area)) || strokes.Any(stroke => stroke.Corners.Zip(stroke.Corners.Skip(1)).Any(lead =>
                    Meets(from, to, lead.First, lead.Second) is { } at && !Array.Exists(ends, end => Near(end, at)))))
                {
                    yield return $"a wire from {from} to {to} runs through {name}";
                }
            }
        }
    }

    /// <summary>Points that more than three lines go to, and lines that lie on one another.</summary>
    public static IReadOnlyList<string> FourWay(SchematicPage page) =>
    [
        .. Junctions.Of(page).Where(one => 3 < one.Value.Count || one.Value.Distinct().Count() < one.Value.Count)
            .Select(one => $"{one.Value.Count} lines meet at {one.Key}"),
    ];

    private static IEnumerable<(string Of, Spot From, Spot To)> Lines(SchematicPage page) =>
    [
        .. page.Wires.SelectMany(wire => wire.Segments).Select(one => ("a wire", (Spot)one.From, (Spot)one.To)),
        .. page.Symbols.SelectMany(symbol => symbol.Strokes.SelectMany(Pieces).Select(one => (symbol.Part.Designator, one.From, one.To))),
        .. page.Ports.SelectMany(port => port.Strokes.SelectMany(Pieces).Select(one => (port.Name, one.From, one.To))),
    ];

    private static IEnumerable<(Spot From, Spot To)> Pieces(Stroke stroke) =>
        stroke.Corners.Zip(stroke.Corners.Skip(1).Concat(stroke.IsClosed ? stroke.Corners.Take(1) : []));

    private const double Touch = 1e-6;

    private static bool Near(Spot a, Spot b) => Math.Abs(a.X - b.X) < Touch && Math.Abs(a.Y - b.Y) < Touch;

    /// <summary>True where a line has more in common with a rectangle than its edge.</summary>
    private static bool Crosses(Spot from, Spot to, Area area)
    {
        double first = 0, last = 1, dx = to.X - from.X, dy = to.Y - from.Y;
        foreach ((double step, double room) in (ReadOnlySpan<(double, double)>)
            [(-dx, from.X - area.Left - Touch), (dx, area.Right - Touch - from.X), (-dy, from.Y - area.Top - Touch), (dy, area.Bottom - Touch - from.Y)])
        {
            if (step == 0)
            {
                if (room < 0)
                {
                    return false;
                }

                continue;
            }

            double at = room / step;
            (first, last) = step < 0 ? (Math.Max(first, at), last) : (first, Math.Min(last, at));
        }

        return first < last;
    }

    /// <summary>Where two lines that are not parallel meet; null where they do not.</summary>
    private static Spot? Meets(Spot a, Spot b, Spot c, Spot d)
    {
        double ux = b.X - a.X, uy = b.Y - a.Y, vx = d.X - c.X, vy = d.Y - c.Y, area = (ux * vy) - (uy * vx);
        if (Math.Abs(area) < Touch)
        {
            return null;
        }

        double s = (((c.X - a.X) * vy) - ((c.Y - a.Y) * vx)) / area, t = (((c.X - a.X) * uy) - ((c.Y - a.Y) * ux)) / area;
        return s is >= -Touch and <= 1 + Touch && t is >= -Touch and <= 1 + Touch ? new(a.X + (s * ux), a.Y + (s * uy)) : null;
    }
}
