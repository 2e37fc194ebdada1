using System.Collections.Concurrent;
using FrontEnd.Boards;
using FrontEnd.Designs;
using FrontEnd.Schematics;
using FrontEnd.Topologies;
using Area = FrontEnd.Schematics.Area;

namespace FrontEnd.Teaching.Problems;

/// <summary>The circuit of a question that is about a stage of the catalogue: drawn as a board's schematic draws that stage, with the question's symbols and
/// values in the places of designators and values that are bought.</summary>
/// <remarks>The letters of <see cref="QuestionCircuits"/> stay for the circuits that are no stage, and for readers of plain text.</remarks>
/// <param name="Title">What it shows, for a reader who does not see it.</param>
/// <param name="Area">What of the page it fills.</param>
internal sealed record QuestionSchematic(string Title, SchematicPage Page, Area Area)
{
    private const double Margin = 0.6;

    private static readonly Shown Rc = new(new RcSection { OpAmp = null }, ("r", "R"), ("c", "C"));

    private static readonly Shown SallenKey = new(new SallenKeySection(), ("r1", "R₁"), ("r2", "R₂"), ("c1", "C₁"), ("c2", "C₂"));

    private static readonly Dictionary<string, Shown> ByTemplate = new(StringComparer.Ordinal)
    {
        ["filter-rc"] = Rc, ["filter-choose-capacitor"] = Rc, ["filter-sallen-key"] = SallenKey, ["filter-sallen-key-q"] = SallenKey,
        ["gain-stage"] = new(
            new GainStage { FeedbackResistor = Resistance.FromKilohms(47), GroundResistor = Resistance.FromKilohms(10) }, ("feedback-resistor", "Rf"), ("ground-resistor", "Rg")),
        ["gain-settling"] = new(new GainStage { CouplingCapacitor = Capacitance.FromNanofarads(220) }, ("coupling-capacitor", "C"), ("coupling-resistor", "R")),
    };

    private static readonly ConcurrentDictionary<Shown, Cell> Cells = [];

    /// <summary>Ids of the templates whose circuit is a stage of the catalogue.</summary>
    public static IReadOnlyCollection<string> Templates => ByTemplate.Keys;

    /// <summary>The circuit of a template's questions; null where it is no stage of the catalogue.</summary>
    /// <param name="givens">Symbol and value of what is given; what is shown and not given is asked for. Null for symbols alone.</param>
    public static QuestionSchematic? Of(string template, IReadOnlyList<(string Symbol, string Value)>? givens)
    {
        if (!ByTemplate.TryGetValue(template, out Shown? shown) || QuestionCircuits.Find(template) is not { } circuit)
        {
            return null;
        }

        Cell cell = Cells.GetOrAdd(shown, one => Drawn(one.Stage));
        Dictionary<string, string> symbols = shown.Symbols.ToDictionary(one => one.Role, one => one.Symbol, StringComparer.Ordinal);
        SchematicSymbol[] parts = [.. cell.Symbols.Where(symbol => symbol.Part.Class != PieceClass.TestPoint).Select(symbol => symbol with
        {
            Texts = [.. symbol.Texts.Select(text => Named(text, symbols.GetValueOrDefault(symbol.Part.Role, ""), givens)).Where(text => text.Text.Length > 0)],
        })];
        SchematicText[] ends =
        [
            new(new(cell.In!.Value.At.X - 0.4, cell.In.Value.At.Y + 0.34), "in", TextSide.End, Lettering.Usual, TextPurpose.NetName),
            new(new(cell.Out!.Value.At.X + 0.4, cell.Out.Value.At.Y + 0.34), "out", TextSide.Start, Lettering.Usual, TextPurpose.NetName),
        ];
        SchematicPage page = new(circuit.Title, [0], parts, cell.Wires, [.. cell.Ports.Where(port => port.Kind is not (PortKind.Label or PortKind.Flag)).Select(Common)], [], ends);
        page = page with { Dots = Junctions.Dots(page) };
        Area filled = (cell with { Title = "", Symbols = page.Symbols, Ports = page.Ports, Texts = page.Texts, In = null }).Bounds;
        return new QuestionSchematic(circuit.Title, page, new(filled.Left - Margin, filled.Top - Margin, filled.Right + Margin, filled.Bottom + Margin));
    }

    /// <summary>The stage's cell on the board of a design that has it alone.</summary>
    private static Cell Drawn(Stage stage)
    {
        Board board = Board.Of(new Design { Stages = [stage with { Name = "stage" }] });
        return StageCells.Of(new DrawingScope(board, board.AlikeAssemblies[0][0], new Dictionary<string, string>()), 0);
    }

    private static SchematicText Named(SchematicText text, string symbol, IReadOnlyList<(string Symbol, string Value)>? givens) => text with
    {
        Text = text.Purpose switch
        {
            TextPurpose.Designator => symbol,
            TextPurpose.Value when givens is null => "",
            TextPurpose.Value => givens.FirstOrDefault(given => string.Equals(given.Symbol, symbol, StringComparison.Ordinal)).Value ?? "?",
            TextPurpose.PinName => text.Text,
            _ => "",
        },
    };

    /// <summary>What a book draws as common is the middle of the supply on a board.</summary>
    private static SchematicPort Common(SchematicPort port) => port is { Kind: PortKind.Middle, Text: { } text } ? port with { Text = text with { Text = "common" } } : port;

    /// <summary>A stage, and what a question calls its parts.</summary>
    private sealed record Shown(Stage Stage, params (string Role, string Symbol)[] Symbols);
}
