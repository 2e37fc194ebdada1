using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>A page of a schematic.</summary>
/// <param name="Title">What of the board it shows: "channel A1 of 8: A1 to A7 alike".</param>
/// <param name="Assemblies">The channels that it stands for, counted from 1; 0 alone for what all share and for a board with one channel. Names of
/// nets on the page lack the prefix of these.</param>
/// <param name="Dots">Where wires that meet are joined.</param>
/// <param name="Texts">Titles and notes; pieces and ports have their own.</param>
internal sealed record SchematicPage(
    string Title, IReadOnlyList<int> Assemblies, IReadOnlyList<SchematicSymbol> Symbols, IReadOnlyList<SchematicWire> Wires,
    IReadOnlyList<SchematicPort> Ports, IReadOnlyList<GridPoint> Dots, IReadOnlyList<SchematicText> Texts)
{
    /// <summary>The first of the assemblies, whose pieces are drawn.</summary>
    public int Assembly => Assemblies[0];

    /// <summary>Every text of the page.</summary>
    public IEnumerable<SchematicText> AllTexts =>
        [.. Texts, .. Symbols.SelectMany(symbol => symbol.Texts), .. Ports.Select(port => port.Text).OfType<SchematicText>()];
}

/// <summary>A board as a circuit diagram: geometry on a grid, and nothing that is not on the board.</summary>
/// <remarks>Letters of the designators as in IEEE 315; symbols of IEC 60617 for resistors and capacitors, of IEEE 315 for op-amps (both from
/// memory). Signals run to the right, supplies are above, common is below.</remarks>
internal sealed record Schematic(Board Board, IReadOnlyList<SchematicPage> Pages)
{
    /// <summary>The module of IEC drawings (from memory).</summary>
    public const double StepMillimetres = 2.5;

    /// <summary>A4 landscape with margins: 277 mm by 190 mm.</summary>
    public const int Width = 110, Height = 76;

    /// <summary>What a shared net's name has behind it on a channel's page, where names without are the channel's own.</summary>
    internal const string SharedMark = ", shared";

    /// <summary>What a page says of the notes at its test points.</summary>
    private const string RoomLegend = " Room: how far a node is from clipping, in the worst channel.";

    /// <summary>A board's schematic, channels that are alike drawn once.</summary>
    /// <param name="board">What is drawn.</param>
    /// <param name="notes">What is printed at the test point of a net, by the net's name without its assembly's prefix; null for nothing.</param>
    /// <param name="stamp">What must be read on every page; null for nothing.</param>
    public static Schematic Of(Board board, IReadOnlyDictionary<string, string>? notes = null, string? stamp = null)
    {
        notes ??= new Dictionary<string, string>();
        List<SchematicPage> pages = [];
        int all = board.Assemblies;
        foreach (IReadOnlyList<int> alike in board.AlikeAssemblies)
        {
            DrawingScope scope = new(board, alike[0], notes);
            List<Cell> cells = ChannelCells.Of(scope);
            if (all == 0)
            {
                cells.AddRange(SharedCells.Of(scope));
            }

            cells.AddRange(PackageCells.Of(scope));
            string title = all == 0 ? "" : alike.Count == 1 ? $"channel A{alike[0]} of {all}" : $"channel A{alike[0]} of {all}: {Listed(alike)} alike";
            pages.AddRange(PageComposer.Compose(cells, scope, title, alike));
        }

        if (0 < all)
        {
            DrawingScope scope = new(board, 0, notes);
            pages.AddRange(PageComposer.Compose([.. SharedCells.Of(scope), .. PackageCells.Of(scope)], scope, "what all channels share", [0]));
        }

        return new Schematic(board, PageComposer.Framed(board, pages, stamp, 0 < notes.Count ? RoomLegend : ""));
    }

    /// <summary>"A1 to A4, A6".</summary>
    private static string Listed(IReadOnlyList<int> assemblies)
    {
        List<string> words = [];
        for (int at = 0; at < assemblies.Count;)
        {
            int end = at;
            while (end + 1 < assemblies.Count && assemblies[end + 1] == assemblies[end] + 1)
            {
                end++;
            }

            words.Add(end == at ? $"A{assemblies[at]}" : end == at + 1 ? $"A{assemblies[at]}, A{assemblies[end]}" : $"A{assemblies[at]} to A{assemblies[end]}");
            at = end + 1;
        }

        return string.Join(", ", words);
    }
}
