using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>The converter with its reference, its supplies and the lines to the host; or the connector to the microcontroller that it is part of.</summary>
internal static class ConverterCells
{
    private static readonly BoardBlock Block = new(BlockKind.Converter);

    /// <summary>Inputs that fit beside the supplies; more have boxes of their own.</summary>
    private const int MostInputs = 16, InputsInBox = 24;

    private const int Pitch = 2, DataPitch = 4;

    public static IEnumerable<Cell> Of(DrawingScope scope)
    {
        BoardPart converter = Part(scope);
        BoardPin[] inputs = [.. converter.Pins.Where(pin => pin.Name.StartsWith("AIN", StringComparison.Ordinal)).OrderBy(pin => Nets.IsRail(pin.Net))];
        bool together = inputs.Length <= MostInputs;
        yield return converter.Role == BoardRoles.Converter ? Converter(scope, converter, together ? inputs : []) : Controller(scope, converter, together ? inputs : []);
        for (int first = 0; !together && first < inputs.Length; first += InputsInBox)
        {
            CellDraft draft = new(scope, $"Inputs of {converter.Designator}", Block);
            BoardPin[] some = [.. inputs.Skip(first).Take(InputsInBox)];
            draft.Put(SymbolShapes.Box(converter, new(0, 0), (9, (Pitch * some.Length) + 2), [.. Inputs(some)], "", BoxLabel.Around));
            Sources(draft, some, 0, Pitch);
            yield return draft.Finish();
        }
    }

    /// <summary>What has the converter's inputs: the converter, or the connector to the microcontroller that it is part of.</summary>
    private static BoardPart Part(DrawingScope scope) => scope.Board.Find(0, Block, BoardRoles.Converter) ?? scope.Board.Find(0, Block, BoardRoles.Host)!;

    private static IEnumerable<BoxPin> Inputs(BoardPin[] inputs) =>
        inputs.Select((pin, at) => new BoxPin(pin.Number, BoxSide.Left, Pitch + (Pitch * at)));

    /// <summary>What the inputs are on: a flag each, and one symbol for all that are on a rail.</summary>
    /// <param name="edge">The box's left edge.</param>
    /// <param name="y">Of the first.</param>
    private static void Sources(CellDraft draft, BoardPin[] inputs, int edge, int y)
    {
        (int Y, string Net)[] rails = [.. inputs.Select((pin, at) => (y + (Pitch * at), pin.Net)).Where(one => Nets.IsRail(one.Net))];
        for (int at = 0; at < inputs.Length; at++)
        {
            if (!Nets.IsRail(inputs[at].Net))
            {
                draft.Wire((edge - 1, y + (Pitch * at)), (edge - 3, y + (Pitch * at)));
                draft.Flag(edge - 3, y + (Pitch * at), inputs[at].Net, toLeft: true);
            }
        }

        for (int at = 0; at < rails.Length; at++)
        {
            draft.Wire((edge - 1, rails[at].Y), (edge - 4, rails[at].Y), (edge - 4, rails[at].Y + (at + 1 < rails.Length ? Pitch : 1)));
        }

        if (0 < rails.Length)
        {
            draft.Rail(edge - 4, rails[^1].Y + 1, rails[0].Net);
        }
    }

    private static Cell Converter(DrawingScope scope, BoardPart converter, BoardPin[] inputs)
    {
        const int Width = 14, Above = 4, Edge = 5;
        CellDraft draft = new(scope, "Converter", Block);
        string[] lines = [.. Nets.DataLines];
        int height = Above + Math.Max(DataPitch * (lines.Length - 1), Pitch * (inputs.Length - 1)) + 3;
        string Number(string name) => converter.Pins.First(pin => pin.Name == name).Number;
        draft.Put(SymbolShapes.Box(converter, new(Edge, -Above), (Width, height),
            [
                .. inputs.Select((pin, at) => new BoxPin(pin.Number, BoxSide.Left, Above + (Pitch * at))),
                .. lines.Select((line, at) => new BoxPin(Number(line), BoxSide.Right, Above + (DataPitch * at))),
                new(Number("VREF"), BoxSide.Top, 2), new(Number("AVDD"), BoxSide.Top, 7), new(Number("DVDD"), BoxSide.Top, 12),
                new(Number("AGND"), BoxSide.Bottom, 4), new(Number("DGND"), BoxSide.Bottom, 10),
            ], Words(scope.Board), BoxLabel.Inside));
        foreach ((string pin, int at) in (ReadOnlySpan<(string, int)>)[("VREF", 2), ("AVDD", 7), ("DVDD", 12)])
        {
            draft.Rail(Edge + at, -Above - 1, converter.Net(pin));
        }

        draft.Rail(Edge + 4, height - Above + 1, converter.Net("AGND"));
        draft.Rail(Edge + 10, height - Above + 1, converter.Net("DGND"));
        Host(draft, Edge + Width + 1, lines);
        return Entered(draft, inputs, Edge);
    }

    /// <summary>The connector to a microcontroller that holds the converter.</summary>
    private static Cell Controller(DrawingScope scope, BoardPart host, BoardPin[] inputs)
    {
        const int Width = 14, Above = 4, Edge = 5, Least = 6;
        CellDraft draft = new(scope, "To the microcontroller", Block);
        int height = Above + Math.Max(Least, Pitch * (inputs.Length - 1)) + 3;
        string Number(string name) => host.Pins.First(pin => pin.Name == name).Number;
        (string Name, int At)[] places = [(ConverterBlock.ReferencePin, 2), (ConverterBlock.OwnSupplyPin, 7), (ConverterBlock.Power, 12)];
        (string Name, int At)[] above = [.. places.Where(place => host.Pins.Any(pin => pin.Name == place.Name))];
        draft.Put(SymbolShapes.Box(host, new(Edge, -Above), (Width, height),
            [
                .. inputs.Select((pin, at) => new BoxPin(pin.Number, BoxSide.Left, Above + (Pitch * at))),
                .. above.Select(pin => new BoxPin(Number(pin.Name), BoxSide.Top, pin.At)), new(Number(ConverterBlock.Ground), BoxSide.Bottom, Width / 2),
            ], Words(scope.Board), BoxLabel.Inside));
        foreach ((string name, int at) in above)
        {
            draft.Rail(Edge + at, -Above - 1, host.Net(name));
        }

        draft.Rail(Edge + (Width / 2), height - Above + 1, host.Net(ConverterBlock.Ground));
        return Entered(draft, inputs, Edge);
    }

    /// <summary>A cell that the signal enters by the first input of a board with one channel, and by flags otherwise.</summary>
    private static Cell Entered(CellDraft draft, BoardPin[] inputs, int edge)
    {
        if (draft.Scope.Board.Assemblies != 0 || inputs.Length == 0)
        {
            Sources(draft, inputs, edge, 0);
            return draft.Finish();
        }

        draft.Wire((0, 0), (edge - 1, 0));
        Sources(draft, inputs[1..], edge, Pitch);
        return draft.Finish(new CellPort(new(0, 0), inputs[0].Net));
    }

    /// <summary>Converter's bits as the design has them.</summary>
    private static string Words(Board board) => $"{board.Design.Converter.Bits:0.##} bit";

    private static void Host(CellDraft draft, int x, string[] lines)
    {
        const int Lead = 3, To = 10;
        BoardPart host = draft.Get(BoardRoles.Host);
        string Number(string name) => host.Pins.First(pin => pin.Name == name).Number;
        int last = DataPitch * lines.Length;
        for (int at = 0; at < lines.Length; at++)
        {
            draft.Wire((x, DataPitch * at), (x + Lead, DataPitch * at));
            draft.Level(BoardRoles.DataLine(lines[at]), x + Lead, DataPitch * at);
            draft.Wire((x + Lead + SymbolShapes.Length, DataPitch * at), (x + To, DataPitch * at));
        }

        draft.Put(SymbolShapes.Box(host, new(x + To + 1, -DataPitch - 1), (6, last + DataPitch + 2),
            [
                new(Number("GND"), BoxSide.Left, 1), .. lines.Select((line, at) => new BoxPin(Number(line), BoxSide.Left, 1 + DataPitch + (DataPitch * at))),
                new(Number("VP"), BoxSide.Left, 1 + DataPitch + last),
            ], "to the host", BoxLabel.Around));
        draft.Wire((x + To, -DataPitch), (x + To - 2, -DataPitch));
        draft.Rail(x + To - 2, -DataPitch, host.Net("GND"));
        draft.Wire((x + To, last), (x + To - 2, last));
        draft.Rail(x + To - 2, last, host.Net("VP"));
    }

    /// <summary>What stands at the converter's supply and reference pins; null for nothing.</summary>
    public static Cell? Supplies(DrawingScope scope)
    {
        BoardPart converter = Part(scope);
        if (converter.Role != BoardRoles.Converter)
        {
            return ReferenceAlone(scope, converter);
        }

        CellDraft draft = new(scope, "Converter: supplies and reference", Block);
        string analogue = converter.Net("AVDD"), digital = converter.Net("DVDD");
        draft.Rail(0, 0, analogue);
        draft.Hang(BoardRoles.DecouplingOf(BoardRoles.Converter), 0, 0);
        draft.Wire((0, 0), (6, 0));
        draft.Level(BoardRoles.DigitalResistor, 6, 0);
        draft.Wire((10, 0), (20, 0));
        draft.Hang(BoardRoles.DigitalBulk, 12, 0);
        draft.Hang(BoardRoles.DigitalDecoupling, 18, 0);
        draft.Rail(20, 0, digital);
        Reference(draft, converter.Net("VREF"), analogue, 28);
        return draft.Finish();
    }

    /// <summary>The reference that the board makes for a converter in the microcontroller.</summary>
    private static Cell? ReferenceAlone(DrawingScope scope, BoardPart host)
    {
        string? Net(string name) => host.Pins.FirstOrDefault(pin => pin.Name == name)?.Net;
        if (Net(ConverterBlock.ReferencePin) is not { } reference)
        {
            return null;
        }

        CellDraft draft = new(scope, "Reference of the converter", Block);
        Reference(draft, reference, Net(ConverterBlock.OwnSupplyPin) ?? Nets.Analogue, 0);
        return draft.Finish();
    }

    private static void Reference(CellDraft draft, string reference, string analogue, int x)
    {
        int at = x;
        if (draft.Find(BoardRoles.VoltageReference) is { } part)
        {
            draft.Rail(x, 0, analogue);
            draft.Hang(BoardRoles.ReferenceInput, x, 0);
            draft.Wire((x, 0), (x + 7, 0));
            draft.Put(SymbolShapes.Box(part, new(x + 8, -2), (8, 5),
                [new(part.Pins[0].Number, BoxSide.Left, 2), new(part.Pins[1].Number, BoxSide.Bottom, 4), new(part.Pins[2].Number, BoxSide.Right, 2)], "", BoxLabel.Around));
            if (draft.Scope.Board.Design.Converter.ReferenceVoltage is { } volts)
            {
                draft.Note(x + 11.4, -2.5, QuantityText.FormatTrimmed(volts, 3), 8);
            }

            draft.Rail(x + 12, 4, part.Pins[1].Net);
            at = x + 17;
        }
        else if (draft.Find(BoardRoles.ReferenceResistor) is not null || reference == analogue)
        {
            draft.Rail(x, 0, analogue);
            draft.Wire((x, 0), (x + 2, 0));
            draft.Level(BoardRoles.ReferenceResistor, x + 2, 0);
            at = x + 6;
        }

        if (x < at)
        {
            draft.Wire((at, 0), (at + 2, 0));
            at += 2;
        }

        draft.Hang(BoardRoles.ReferenceBulk, at, 0);
        draft.Hang(BoardRoles.ReferenceDecoupling, at + 6, 0);
        draft.TestPoint(at + 10, 0, reference);
        draft.Wire((at, 0), (at + 10, 0));
        draft.Wire((at + 10, 0), (at + 15, 0));
        draft.Rail(at + 15, 0, reference);
    }
}
