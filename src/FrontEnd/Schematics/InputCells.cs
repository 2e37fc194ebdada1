using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>From the electrodes to the output of the differential amplifier.</summary>
internal static class InputCells
{
    private static readonly BoardBlock Block = new(BlockKind.Input);

    /// <summary>How far the inputs' lines are above and below the line of the amplifier's output.</summary>
    private const int Apart = 6;

    /// <summary>Where the protection resistors stand and end.</summary>
    private const int Resistor = 8, Behind = 12, First = 15;

    /// <summary>From a part that hangs on a line to the next, with room for its value.</summary>
    private const int Column = 6;

    /// <summary>Electrodes with a follower, one cell each.</summary>
    public static IEnumerable<Cell> Buffers(DrawingScope scope)
    {
        foreach (string electrode in (string[])[BoardRoles.Active, BoardRoles.Minus, BoardRoles.Reference])
        {
            for (int which = 0; scope.Board.Find(scope.Assembly, Block, BoardRoles.At(BoardRoles.Contact, electrode, which)) is not null; which++)
            {
                yield return Buffer(scope, electrode, which);
            }
        }
    }

    private static Cell Buffer(DrawingScope scope, string electrode, int which)
    {
        CellDraft draft = new(scope, $"{Capital(electrode)} electrode with follower", Block);
        string role = BoardRoles.At(BoardRoles.Buffer, electrode, which);
        draft.Box(BoardRoles.At(BoardRoles.Contact, electrode, which), (0, -1), (4, 2), [new("1", BoxSide.Right, 1)], "metal on the skin");
        draft.Wire((5, 0), (7, 0));
        draft.Level(BoardRoles.At(BoardRoles.Skin, electrode, which), 7, 0);
        draft.Wire((11, 0), (15, 0));
        (int x, int y) = draft.Follower(role, 15, 0);
        draft.Label(x, y, draft.OpAmpOf(role).Section.Output.Net);
        draft.Wire((x, y), (x + 5, y));
        draft.Level(BoardRoles.At(BoardRoles.BufferOutput, electrode, which), x + 5, y);
        draft.Wire((x + 9, y), (x + 11, y));
        draft.Flag(x + 11, y, draft.Get(BoardRoles.At(BoardRoles.Socket, electrode, which)).Pins[0].Net, toLeft: false);
        return draft.Finish();
    }

    /// <summary>The lead of the reference that channels share, with what hangs on its input.</summary>
    public static Cell Reference(DrawingScope scope, string input)
    {
        CellDraft draft = new(scope, "Reference electrode", Block);
        int end = Lead(draft, BoardRoles.Reference, 0);
        foreach (string role in (string[])[BoardRoles.Shunt, BoardRoles.Bias])
        {
            end += draft.Hang(BoardRoles.At(role, BoardRoles.Reference), end, 0) ? Column : 0;
        }

        draft.Wire((Behind, 0), (end, 0));
        draft.Flag(end, 0, input, toLeft: false);
        return draft.Finish();
    }

    /// <summary>Both leads, what stands between and behind them, and the amplifier.</summary>
    public static Cell Amplifier(DrawingScope scope)
    {
        Board board = scope.Board;
        CellDraft draft = new(scope, "Input and differential amplifier", Block);
        BoardPart amplifier = board.Find(scope.Assembly, new BoardBlock(BlockKind.Amplifier), BoardRoles.Amplifier)!;
        string plus = amplifier.Net("+IN"), minus = amplifier.Net("−IN");
        int next = Math.Max(Lead(draft, BoardRoles.Active, -Apart), Negative(draft, minus));
        draft.Label(Behind, -Apart, plus);
        if (draft.Find(BoardRoles.Differential) is not null)
        {
            draft.Wire((next, -Apart), (next, -2));
            draft.Upright(BoardRoles.Differential, next, -2);
            draft.Wire((next, 2), (next, Apart));
            next += Column;
        }

        bool shunts = Pair(BoardRoles.Shunt), bias = Pair(BoardRoles.Bias);

        // The gain resistor stands between the lines, under the values of what hangs on the upper one; the name of the middle would be in its way.
        next -= shunts && !bias ? 3 : 0;
        int box = AmplifierCell.Add(draft, amplifier, next, Apart);
        draft.Wire((Behind, -Apart), (box - 1, -Apart));
        draft.Wire((Behind, Apart), (box - 1, Apart));
        return draft.Finish(null, draft.Exit(box + AmplifierCell.Width + 1, 0, amplifier.Net("OUT")));

        bool Pair(string role)
        {
            bool upper = draft.Hang(BoardRoles.At(role, BoardRoles.Active), next, -Apart);
            bool lower = draft.Hang(BoardRoles.At(role, BoardRoles.Minus), next, Apart) || draft.Hang(BoardRoles.At(role, BoardRoles.Reference), next, Apart);
            next += upper || lower ? Column : 0;
            return upper || lower;
        }
    }

    /// <summary>The lower line: a lead of the channel's own or, where it comes from elsewhere, its name.</summary>
    private static int Negative(CellDraft draft, string net)
    {
        foreach (string electrode in (string[])[BoardRoles.Minus, BoardRoles.Reference])
        {
            if (draft.Find(BoardRoles.At(BoardRoles.Socket, electrode)) is not null)
            {
                int next = Lead(draft, electrode, Apart);
                draft.Label(Behind, Apart, net);
                return next;
            }
        }

        draft.Flag(Behind, Apart, net, toLeft: true);
        return First;
    }

    /// <summary>Sockets, protection resistor and diodes to the rails on a line.</summary>
    /// <returns>Where the next may stand on the line.</returns>
    private static int Lead(CellDraft draft, string electrode, int y)
    {
        const int Join = 7;
        int row = y;
        for (int which = 0; draft.Find(BoardRoles.At(BoardRoles.Socket, electrode, which)) is { } socket; which++)
        {
            int pitch = socket.Pins.Count == 1 ? 6 : 12;
            bool several = 0 < which || draft.Find(BoardRoles.At(BoardRoles.Socket, electrode, 1)) is not null;
            row = which == 0 ? y : row + pitch;
            Socket(draft, socket, several ? $"{electrode} {which + 1}" : $"{electrode} electrode", row);
            draft.Wire((socket.Pins.Count == 1 ? 6 : 5, row), (Join, row));
            if (which == 0 && 1 < socket.Pins.Count)
            {
                draft.Label(5, row, socket.Pins[0].Net);
            }

            if (0 < which)
            {
                draft.Wire((Join, row), (Join, row - pitch));
            }
        }

        draft.Wire((Join, y), (Resistor, y));
        draft.Level(BoardRoles.At(BoardRoles.Series, electrode), Resistor, y);
        int next = First;
        if (draft.Find(BoardRoles.At(BoardRoles.Clamp, electrode)) is not { } clamp)
        {
            return next;
        }

        string Pin(string name) => clamp.Pins.First(pin => pin.Name == name).Number;
        draft.Put(SymbolShapes.Diode(clamp, Pin("AK"), Pin("K"), new(next, y)));
        draft.Put(SymbolShapes.Diode(clamp, Pin("A"), Pin("AK"), new(next + 2, y + SymbolShapes.Length)));
        draft.Rail(next, y - SymbolShapes.Length, clamp.Net("K"));
        draft.Rail(next + 2, y + SymbolShapes.Length, clamp.Net("A"));
        return next + 2 + Column;
    }

    private static void Socket(CellDraft draft, BoardPart socket, string words, int row)
    {
        if (socket.Pins.Count == 1)
        {
            draft.Put(SymbolShapes.Box(socket, new(0, row - 1), (5, 2), [new("1", BoxSide.Right, 1)], words, BoxLabel.Around));
            return;
        }

        draft.Put(SymbolShapes.Box(socket, new(-2, row - 2), (6, 4),
            [new("1", BoxSide.Right, 2), new("2", BoxSide.Top, 4), new("3", BoxSide.Bottom, 4)], "", BoxLabel.Around));
        draft.Rail(2, row - 3, socket.Pins[1].Net);
        draft.Rail(2, row + 3, socket.Pins[2].Net);
    }

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}

/// <summary>The differential amplifier with its gain resistor.</summary>
internal static class AmplifierCell
{
    public const int Width = 9;

    private static readonly BoardBlock Block = new(BlockKind.Amplifier);

    /// <param name="from">Where there is room for it.</param>
    /// <param name="apart">From the output's line to each input's.</param>
    /// <returns>The left edge of the amplifier's box.</returns>
    public static int Add(CellDraft draft, BoardPart amplifier, int from, int apart)
    {
        const int Over = 2, Room = 6;
        Board board = draft.Scope.Board;
        int box = from + 2, top = -apart - Over, assembly = draft.Scope.Assembly;
        BoardPart? gain = board.Find(assembly, Block, BoardRoles.GainResistor);
        string Number(string name) => amplifier.Pins.First(pin => pin.Name == name).Number;
        BoardPin[] gainPins = [.. amplifier.Pins.Where(pin => pin.Name == "RG")];
        if (gain is not null)
        {
            box = from + Room;
            draft.Wire((box - 1, -2), (from, -2));
            draft.Wire((box - 1, 2), (from, 2));
            draft.Put(SymbolShapes.Upright(gain, new(from, -2), 0));
        }

        draft.Put(SymbolShapes.Box(amplifier, new(box, top), (Width, 2 * (apart + Over)),
            [
                new(Number("+IN"), BoxSide.Left, Over), new(gainPins[0].Number, BoxSide.Left, apart + Over - 2), new(gainPins[1].Number, BoxSide.Left, apart + Over + 2),
                new(Number("−IN"), BoxSide.Left, (2 * apart) + Over), new(Number("OUT"), BoxSide.Right, apart + Over), new(Number("V+"), BoxSide.Top, 3),
                new(Number("V−"), BoxSide.Bottom, 3), new(Number("REF"), BoxSide.Bottom, 7),
            ], "in-amp", BoxLabel.Inside));
        draft.Rail(box + 3, top - 1, amplifier.Net("V+"));
        draft.Rail(box + 3, apart + Over + 1, amplifier.Net("V−"));
        draft.Rail(box + 7, apart + Over + 1, amplifier.Net("REF"));
        if (board.Find(assembly, Block, BoardRoles.DecouplingOf(BoardRoles.Amplifier)) is { } decoupling)
        {
            int x = box + Width + (draft.Scope.NoteOn(amplifier.Net("OUT")).Length == 0 ? 8 : 11);
            draft.Wire((box + 3, top - 1), (x, top - 1));
            draft.Put(SymbolShapes.Upright(decoupling, new(x, top - 1), 0));
            draft.Rail(x, top - 1 + SymbolShapes.Length, decoupling.Pins[1].Net);
        }

        return box;
    }
}
