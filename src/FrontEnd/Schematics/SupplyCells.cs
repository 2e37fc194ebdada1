using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>Battery, regulators and the middle of the supply.</summary>
internal static class SupplyCells
{
    private static readonly BoardBlock Block = new(BlockKind.Supply);

    /// <summary>Of a voltage; the order list has all of them.</summary>
    private const int Digits = 3;

    public static Cell Battery(DrawingScope scope)
    {
        const int Transistor = 13, Own = 13;
        CellDraft draft = new(scope, "Supply", Block);
        BoardPart battery = draft.Get(BoardRoles.Battery);
        Designs.Supply supply = scope.Board.Design.Supply;
        draft.Put(SymbolShapes.Battery(battery, new(0, 1), $"{QuantityText.FormatTrimmed(supply.Lowest, Digits)} to {QuantityText.FormatTrimmed(supply.Highest, Digits)}"));
        draft.Rail(0, 1 + SymbolShapes.Length, battery.Pins[1].Net);
        draft.Wire((0, 1), (0, 0), (2, 0), (Transistor, 0));
        draft.Label(2, 0, battery.Pins[0].Net);
        int at = Transistor;
        if (draft.Find(BoardRoles.Reverse) is { } reverse)
        {
            draft.Put(SymbolShapes.Transistor(reverse, new(at, 0)));
            draft.Rail(at + 2, 2, reverse.Net("G"));
            at += SymbolShapes.Length;
            if (reverse.Net("S") != Nets.Analogue)
            {
                draft.Label(at + 1, 0, reverse.Net("S"));
            }
        }

        BoardPart? regulator = draft.Find(BoardRoles.Regulator);
        draft.Wire((at, 0), (at + 6, 0));
        at += 6;
        at = regulator is null ? Bulk(draft, at) : Regulator(draft, regulator, (BoardRoles.RegulatorIn, BoardRoles.RegulatorOut), at, 0, supply.RailsHighest);
        _ = draft.Find(BoardRoles.ConverterRegulator) is { } own
            ? Supplied(draft, own, Own)
            : at;
        return draft.Finish();

        int Supplied(CellDraft to, BoardPart part, int y)
        {
            int x = Transistor + 6;
            to.Rail(x - 4, y, part.Pins[0].Net);
            to.Wire((x - 4, y), (x, y));
            return Regulator(to, part, (BoardRoles.ConverterRegulatorIn, BoardRoles.ConverterRegulatorOut), x, y, scope.Board.Design.Converter.OwnSupply);
        }
    }

    /// <summary>The supply's one capacitor where nothing regulates it.</summary>
    private static int Bulk(CellDraft draft, int x)
    {
        string net = draft.Get(BoardRoles.Bulk).Pins[0].Net;
        draft.Hang(BoardRoles.Bulk, x, 0);
        return End(draft, x, 0, net);
    }

    /// <summary>Test point and name of a supply.</summary>
    private static int End(CellDraft draft, int x, int y, string net)
    {
        draft.TestPoint(x + 5, y, net);
        draft.Wire((x, y), (x + 5, y));
        draft.Wire((x + 5, y), (x + 9, y));
        draft.Rail(x + 9, y, net);
        return x + 9;
    }

    private static int Regulator(CellDraft draft, BoardPart part, (string In, string Out) capacitors, int x, int y, Voltage? volts)
    {
        draft.Hang(capacitors.In, x, y);
        draft.Wire((x, y), (x + 7, y));
        draft.Put(SymbolShapes.Box(part, new(x + 8, y - 2), (8, 5),
            [new(part.Pins[0].Number, BoxSide.Left, 2), new(part.Pins[1].Number, BoxSide.Bottom, 4), new(part.Pins[2].Number, BoxSide.Right, 2)],
            "", BoxLabel.Around));
        if (volts is { } output)
        {
            draft.Note(x + 11.4, y - 2.5, QuantityText.FormatTrimmed(output, Digits), 8);
        }

        draft.Rail(x + 12, y + 4, part.Pins[1].Net);
        draft.Wire((x + 17, y), (x + 20, y));
        draft.Hang(capacitors.Out, x + 20, y);
        return End(draft, x + 20, y, part.Pins[2].Net);
    }

    public static Cell Middle(DrawingScope scope)
    {
        CellDraft draft = new(scope, "Middle of the supply", Block);
        string upper = draft.Get(BoardRoles.Upper).Pins[0].Net, middle = Nets.Middle;
        draft.Upright(BoardRoles.Upper, 0, -4);
        draft.Rail(0, -4, upper);
        draft.Hang(BoardRoles.Lower, 0, 0);
        draft.Hang(BoardRoles.Tap, 7, 0);
        if (scope.Board.FindOpAmp(0, Block, BoardRoles.Follower) is null)
        {
            draft.Wire((0, 0), (13, 0));
            draft.Hang(BoardRoles.MidBulk, 13, 0);
            MiddleEnd(draft, 13, 0, middle);
            return draft.Finish();
        }

        draft.Wire((0, 0), (14, 0));
        draft.Label(8, 0, draft.OpAmpOf(BoardRoles.Follower).Section.Plus.Net);
        draft.OpAmp(BoardRoles.Follower, 14, 2, plusUp: true);
        draft.Wire((14, 4), (13, 4), (13, 8), (16, 8));
        draft.Level(BoardRoles.FollowerCapacitor, 16, 8);
        draft.Wire((20, 8), (22, 8), (22, 2));
        draft.Wire((21, 2), (22, 2), (24, 2));
        draft.Level(BoardRoles.Isolating, 24, 2);
        draft.Wire((13, 8), (13, 12), (16, 12));
        draft.Level(BoardRoles.FollowerFeedback, 16, 12);
        draft.Wire((20, 12), (30, 12), (30, 2));
        draft.Wire((28, 2), (30, 2), (33, 2));
        draft.Hang(BoardRoles.MidBulk, 33, 2);
        MiddleEnd(draft, 33, 2, middle);
        return draft.Finish();
    }

    private static void MiddleEnd(CellDraft draft, int x, int y, string net)
    {
        draft.TestPoint(x + 5, y, net);
        draft.Wire((x, y), (x + 5, y));
        draft.Wire((x + 5, y), (x + 9, y));
        draft.Rail(x + 9, y, net);
    }
}
