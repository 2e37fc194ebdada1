namespace FrontEnd.Schematics;

/// <summary>Cells side by side: groups that a signal runs through, and others.</summary>
internal sealed class PageRow
{
    private const int Between = 4;

    /// <summary>What is kept between what two cells of one group draw.</summary>
    private const double Clear = 0.6;

    private const int FarApart = 60;

    private readonly List<List<List<Cell>>> _columns = [];

    /// <summary>Between the lowest of one cell and the highest of another below it, with room for a title.</summary>
    public const double Titles = 2.4, Below = 2;

    public double Height => _columns.Max(HeightOf);

    private static double HeightOf(List<List<Cell>> column) =>
        column.Sum(group => Math.Ceiling(Bounds(group).Height)) + (Math.Ceiling(Titles + Below) * (column.Count - 1));

    /// <summary>The cells at their places, group by group, the highest of each group's first at the row's top.</summary>
    /// <param name="top">In steps.</param>
    public IEnumerable<(IReadOnlyList<Cell> Group, double Top)> Placed(int top)
    {
        foreach (List<List<Cell>> column in _columns)
        {
            int at = top;
            foreach (List<Cell> group in column)
            {
                GridPoint by = new(0, at - (int)Math.Floor(Bounds(group).Top));
                yield return ([.. group.Select(cell => cell.Moved(by))], at);
                at += (int)Math.Ceiling(Bounds(group).Height) + (int)Math.Ceiling(Titles + Below);
            }
        }
    }

    /// <summary>True where a cell makes the row no higher.</summary>
    public bool IsHighEnough(Cell cell) => Math.Ceiling(cell.Bounds.Height) <= Height;

    /// <summary>Adds a cell where there is room for it beside the others.</summary>
    /// <param name="chained">True where the signal comes from the cell before.</param>
    public bool TryAdd(Cell cell, bool chained, DrawingScope scope)
    {
        if (chained && _columns[^1].Count > 1)
        {
            return false;
        }

        Cell[] added = [.. chained ? Behind(_columns[^1][0], cell) : Beside(cell, scope)];
        if (Schematic.Width < Math.Max(Bounds(added).Right, RightOf(added[^1], scope)))
        {
            return false;
        }

        Add(added, chained);
        return true;
    }

    /// <summary>Adds a cell below another that leaves room for it.</summary>
    /// <param name="spare">How much higher the row may get.</param>
    public bool TryAddBelow(Cell cell, double spare = 0)
    {
        double height = Height + spare;
        for (int at = 0; at < _columns.Count; at++)
        {
            double left = Bounds([.. _columns[at].SelectMany(group => group)]).Left;
            double right = at + 1 < _columns.Count ? Bounds([.. _columns[at + 1].SelectMany(group => group)]).Left - Between : Schematic.Width;
            Area area = cell.Bounds;
            if (HeightOf(_columns[at]) + Math.Ceiling(Titles + Below) + Math.Ceiling(area.Height) <= height && Math.Ceiling(area.Width) <= right - left)
            {
                _columns[at].Add([cell.Moved(new((int)Math.Ceiling(left - area.Left), 0))]);
                return true;
            }
        }

        return false;
    }

    /// <summary>The first cell of a row, however wide it is.</summary>
    public void AddFirst(Cell cell, DrawingScope scope) => Add([.. Beside(cell, scope)], chained: false);

    /// <summary>The names of signals that leave the row.</summary>
    public void Close(DrawingScope scope)
    {
        foreach (List<Cell> group in _columns.SelectMany(column => column))
        {
            if (group[^1].Out is { } exit)
            {
                group.Add(Extra([], [PortShapes.Flag(exit.At, exit.Net, scope.NameOf(exit.Net), toLeft: false)]));
            }
        }
    }

    /// <summary>Where a cell ends, with room for the flag that its signal may leave by.</summary>
    private static double RightOf(Cell cell, DrawingScope scope) => cell.Out is { } exit
        ? Math.Max(cell.Bounds.Right, PortShapes.Flag(exit.At, exit.Net, scope.NameOf(exit.Net), toLeft: false).Body!.Value.Right) : cell.Bounds.Right;

    private void Add(Cell[] cells, bool chained)
    {
        if (chained)
        {
            _columns[^1][0].AddRange(cells);
        }
        else
        {
            _columns.Add([[.. cells]]);
        }
    }

    private IEnumerable<Cell> Beside(Cell cell, DrawingScope scope)
    {
        List<Cell> group = [];
        if (cell.In is { } entry)
        {
            group.Add(Extra([], [PortShapes.Flag(entry.At, entry.Net, scope.NameOf(entry.Net), toLeft: true)]));
        }

        group.Add(cell);
        double from = _columns.Count == 0 ? 0 : _columns.SelectMany(column => column.SelectMany(one => one)).Max(one => RightOf(one, scope)) + Between;
        GridPoint by = new((int)Math.Ceiling(from - Bounds(group).Left), 0);
        return group.Select(one => one.Moved(by));
    }

    /// <summary>A cell behind another, so near that nothing of them touches; where its place is further right, with a wire to it.</summary>
    private static IEnumerable<Cell> Behind(List<Cell> group, Cell cell)
    {
        GridPoint exit = group[^1].Out!.Value.At, entry = cell.In!.Value.At;
        GridPoint by = new(exit.X - entry.X, exit.Y - entry.Y);
        Area[] taken = [.. group.SelectMany(Areas).Select(Wider)];
        int apart = 0;
        while (apart < FarApart && Areas(cell.Moved(by + new GridPoint(apart, 0))).Any(area => taken.Any(area.Overlaps)))
        {
            apart++;
        }

        if (0 < apart)
        {
            yield return Extra([new([exit, exit + new GridPoint(apart, 0)])], []);
        }

        yield return cell.Moved(by + new GridPoint(apart, 0));
    }

    private static Cell Extra(IReadOnlyList<SchematicWire> wires, IReadOnlyList<SchematicPort> ports) => new("", [], wires, ports, [], null, null);

    private static Area Wider(Area area) => new(area.Left - Clear, area.Top - Clear, area.Right + Clear, area.Bottom + Clear);

    /// <summary>What a cell fills, piece by piece; its wires only where they are none that the signal leaves on.</summary>
    private static IEnumerable<Area> Areas(Cell cell) =>
    [
        .. cell.Symbols.SelectMany(symbol => symbol.Body.Concat(symbol.Texts.Select(text => text.Box))),
        .. cell.Ports.SelectMany(port => new[] { port.Body, port.Text?.Box }).OfType<Area>(), .. cell.Texts.Select(text => text.Box),
        .. cell.Wires.SelectMany(wire => wire.Segments).Where(one => one.From.X == one.To.X).Select(one => Area.Around(one.From, one.To)),
    ];

    private static Area Bounds(IEnumerable<Cell> cells) => cells.Aggregate(Area.Nothing, (area, cell) => area.With(cell.Bounds));
}
