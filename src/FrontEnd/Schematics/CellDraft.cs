using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>A cell being drawn: pieces of a board by their role, and what joins them. Places count from where the signal enters.</summary>
internal sealed class CellDraft(DrawingScope scope, string title, BoardBlock block)
{
    private readonly List<SchematicSymbol> _symbols = [];
    private readonly List<SchematicWire> _wires = [];
    private readonly List<SchematicPort> _ports = [];
    private readonly List<SchematicText> _texts = [];

    public DrawingScope Scope => scope;

    public BoardPart? Find(string role) => scope.Board.Find(scope.Assembly, block, role);

    public BoardPart Get(string role) => Find(role) ?? throw new ArgumentOutOfRangeException(nameof(role), role, $"The board has no such piece in {title}.");

    public (BoardPart Part, BoardSection Section) OpAmpOf(string role) => scope.Board.FindOpAmp(scope.Assembly, block, role)
        ?? throw new ArgumentOutOfRangeException(nameof(role), role, $"The board has no such op-amp in {title}.");

    public void Wire(params (int X, int Y)[] corners) => _wires.Add(new([.. corners.Select(corner => new GridPoint(corner.X, corner.Y))]));

    /// <summary>A part to the right of its left pin, which is its first one; where it is not fitted, since it has 0 Ω, a wire.</summary>
    public void Level(string role, int x, int y, bool firstRight = false)
    {
        if (Find(role) is { } part)
        {
            Put(SymbolShapes.Level(part, new(x, y), firstRight ? 1 : 0));
        }
        else
        {
            Wire((x, y), (x + SymbolShapes.Length, y));
        }
    }

    /// <summary>The same downwards from its upper pin.</summary>
    public void Upright(string role, int x, int y, bool firstBelow = false)
    {
        if (Find(role) is { } part)
        {
            Put(SymbolShapes.Upright(part, new(x, y), firstBelow ? 1 : 0));
        }
        else
        {
            Wire((x, y), (x, y + SymbolShapes.Length));
        }
    }

    /// <summary>A part from a wire down to the rail of its second pin, with that rail's symbol; nothing where it is not fitted.</summary>
    /// <returns>True where it is fitted.</returns>
    public bool Hang(string role, int x, int y)
    {
        if (Find(role) is not { } part)
        {
            return false;
        }

        Put(SymbolShapes.Upright(part, new(x, y), 0));
        Rail(x, y + SymbolShapes.Length, part.Pins[1].Net);
        return true;
    }

    /// <param name="y">Of the output's line.</param>
    public void OpAmp(string role, int x, int y, bool plusUp)
    {
        (BoardPart part, BoardSection section) = OpAmpOf(role);
        Put(SymbolShapes.OpAmp(part, section, new(x, y), plusUp));
    }

    /// <summary>A follower: its output back to the inverting input, below it. The signal enters at the given place and is two steps lower
    /// behind it.</summary>
    /// <returns>Where the output and its way back meet.</returns>
    public (int X, int Y) Follower(string role, int x, int y)
    {
        const int Back = 5;
        int output = y + SymbolShapes.OpAmpInput, end = x + SymbolShapes.OpAmpLength + 1;
        OpAmp(role, x, output, plusUp: true);
        Wire((x, y + 4), (x - 1, y + 4), (x - 1, output + Back), (end, output + Back), (end, output));
        Wire((end - 1, output), (end, output));
        return (end, output);
    }

    public void Box(string role, (int X, int Y) at, (int Width, int Height) size, IReadOnlyList<BoxPin> pins, string words = "", BoxLabel label = BoxLabel.Around) =>
        Put(SymbolShapes.Box(Get(role), new(at.X, at.Y), size, pins, words, label));

    public void Put(SchematicSymbol symbol)
    {
        _symbols.Add(symbol);
        scope.Drawn.Add(symbol.Part);
    }

    public void Rail(int x, int y, string net) => _ports.Add(PortShapes.Rail(new(x, y), net, scope.NameOf(net)));

    public void Label(int x, int y, string net) => _ports.Add(PortShapes.Label(new(x, y), net, scope.NameOf(net)));

    /// <summary>A net that goes on elsewhere: the symbol of a rail, or a flag.</summary>
    public void Flag(int x, int y, string net, bool toLeft) => _ports.Add(PortShapes.Flag(new(x, y), net, scope.NameOf(net), toLeft));

    /// <summary>The net's test point on a wire, if there is one that does not stand elsewhere.</summary>
    /// <returns>True where it stands here.</returns>
    public bool TestPoint(int x, int y, string net)
    {
        if (scope.Board.TestPoint(net) is not { } part || scope.Drawn.Contains(part))
        {
            return false;
        }

        Put(SymbolShapes.TestPoint(part, new(x, y), scope.NameOf(net), scope.NoteOn(net)));
        return true;
    }

    /// <summary>The way out of a stage: its test point, or else the net's name, and the wire to the next.</summary>
    /// <param name="x">Where the output is joined to its feedback.</param>
    /// <returns>Where the next cell may begin.</returns>
    public CellPort Exit(int x, int y, string net)
    {
        // A note is wider than the names, and what comes back to the output must pass it.
        double half = Lettering.Width(scope.NoteOn(net), Lettering.Small, bold: false) / 2;
        int to = x + Math.Max(3, (int)Math.Ceiling(half) + 1), end = to + 2;
        if (!TestPoint(to, y, net))
        {
            Label(x, y, net);
        }

        Wire((x, y), (to, y));
        Wire((to, y), (end, y));
        return new(new(end, y), net);
    }

    public void Note(double x, double y, string text, double room) => _texts.Add(
        new(new(x, y), Lettering.Shortened(text, Lettering.Usual, bold: false, room), TextSide.Start, Lettering.Usual, TextPurpose.Note));

    public Cell Finish(CellPort? entry = null, CellPort? exit = null) => new(title, _symbols, _wires, _ports, _texts, entry, exit);
}

/// <summary>Which pieces a page draws and how it names nets.</summary>
internal sealed class DrawingScope(Board board, int assembly, IReadOnlyDictionary<string, string> notes)
{
    public Board Board => board;

    public int Assembly => assembly;

    /// <summary>Pieces that stand somewhere.</summary>
    public HashSet<BoardPart> Drawn { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>A net of the assembly that is drawn, as the board names it.</summary>
    public string Net(string net) => Board.NetOf(assembly, net);

    /// <summary>What is to be said of a net at its test point; "" for nothing.</summary>
    public string NoteOn(string net) => notes.GetValueOrDefault(Nets.Drawn(net), "");

    /// <summary>A net as the page names it: without the prefix of the channel that the page shows; on such a page a net that all channels share
    /// says so, unless it is a rail.</summary>
    public string NameOf(string net) => assembly == 0 || Nets.IsRail(net)
        ? net
        : net.StartsWith($"A{assembly}.", StringComparison.Ordinal) ? Nets.Drawn(net) : net + Schematic.SharedMark;
}
