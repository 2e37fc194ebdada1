using FrontEnd.Designs;

namespace FrontEnd.Boards;

/// <summary>A design as a circuit board: every piece with its designator, its pins and their nets, from the electrodes' connectors to the
/// host's.</summary>
/// <remarks>The one description of the board. Schematic, order list, netlist and test points are views of it, and none of them computes a value.
/// Parts of a stage come from its <see cref="Topologies.Stage.Circuit"/>, those of the inputs from the design's input network.</remarks>
/// <param name="Stated">The design as it was given.</param>
/// <param name="Built">The same with values that can be bought.</param>
/// <param name="Parts">Every piece: those of the channels in their order, then those that all share; within, block by block.</param>
/// <param name="Findings">What of the design cannot be built as it is stated, and the nearest that can.</param>
/// <param name="Notes">What the builder must see to and no piece shows, a sentence each.</param>
internal sealed record Board(Design Stated, BuildableDesign Built, IReadOnlyList<BoardPart> Parts, IReadOnlyList<Finding> Findings, IReadOnlyList<string> Notes)
{
    private readonly Dictionary<(int, BoardBlock, string), BoardPart> _byRole = Parts.ToDictionary(part => (part.Assembly, part.Block, part.Role));

    private readonly Dictionary<(int, BoardBlock, string), (BoardPart Part, BoardSection Section)> _sections = Parts
        .SelectMany(part => part.Sections.Where(section => section.Role != BoardRoles.Unused).Select(section => (part, section)))
        .ToDictionary(one => (one.part.Assembly, one.section.Block, one.section.Role), one => (one.part, one.section));

    /// <summary>The design whose figures the board has: <see cref="Stated"/> with values that can be bought.</summary>
    public Design Design => Built.Design;

    /// <summary>Channels that are assemblies of their own; 0 for a board with one channel, whose pieces carry no prefix.</summary>
    public int Assemblies => Design.Channels == 1 ? 0 : Design.Channels;

    /// <summary>The assemblies, counted from 1, in groups of those that are alike piece by piece; of a board with one channel the one group of
    /// assembly 0.</summary>
    public IReadOnlyList<IReadOnlyList<int>> AlikeAssemblies { get; } = Alike(Parts);

    /// <summary>A board of a design that has no errors.</summary>
    public static Board Of(Design design) => new BoardDraft(design).Finish();

    /// <summary>The piece of a role; null where there is none.</summary>
    public BoardPart? Find(int assembly, BoardBlock block, string role) => _byRole.GetValueOrDefault((assembly, block, role));

    /// <summary>The op-amp of a role with the package that it is in; null where there is none.</summary>
    public (BoardPart Part, BoardSection Section)? FindOpAmp(int assembly, BoardBlock block, string role) =>
        _sections.TryGetValue((assembly, block, role), out (BoardPart, BoardSection) found) ? found : null;

    /// <summary>The pieces of one assembly; 0 for those that all share.</summary>
    public IEnumerable<BoardPart> PartsOf(int assembly) => Parts.Where(part => part.Assembly == assembly);

    /// <summary>The test point on a net; null where there is none.</summary>
    public BoardPart? TestPoint(string net) => Parts.FirstOrDefault(part => part.Class == PieceClass.TestPoint && part.Pins[0].Net == net);

    /// <summary>A net of a channel as it stands in the netlist: with the assembly's prefix, where there is one.</summary>
    public static string NetOf(int assembly, string net) => assembly == 0 ? net : $"A{assembly}.{net}";

    private static IReadOnlyList<IReadOnlyList<int>> Alike(IReadOnlyList<BoardPart> parts)
    {
        int[] assemblies = [.. parts.Select(part => part.Assembly).Where(assembly => 0 < assembly).Distinct()];
        return assemblies.Length == 0
            ? [[0]]
            : [.. assemblies.GroupBy(assembly => string.Join('\n', parts.Where(part => part.Assembly == assembly).Select(Shape)), StringComparer.Ordinal)
                .Select(group => (IReadOnlyList<int>)[.. group])];
    }

    /// <summary>All of a piece that a drawing or a list shows, without its assembly.</summary>
    private static string Shape(BoardPart part) => string.Join('|',
        part.Designator, part.Class, part.Value is { } value ? QuantityText.Format(value) : "", part.Tolerance?.Fraction, part.Card, part.Description,
        string.Join(',', part.Pins.Select(pin => $"{pin.Number}{pin.Name}{Nets.Drawn(pin.Net)}")));
}
