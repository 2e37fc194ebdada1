using FrontEnd.Boards;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Topologies;

namespace FrontEnd.Schematics;

/// <summary>Gain stages and sections of filters, one cell each. The signal enters at (0, 0).</summary>
internal static class StageCells
{
    private const string OpAmp = "op-amp", Feedback = "feedback-resistor", Ground = "ground-resistor", FeedbackCapacitor = "feedback-capacitor";

    public static Cell Of(DrawingScope scope, int stage)
    {
        Design design = scope.Board.Design;
        BoardBlock block = new(BlockKind.Stage, stage);
        CellDraft draft = new(scope, design.Stages[stage].Name, block);
        string from = scope.Net(stage == 0 ? Nets.AmplifierOf(design) : Nets.Stage(design, stage - 1)), to = scope.Net(Nets.Stage(design, stage));
        (int x, int y) = design.Stages[stage].Shape switch
        {
            StageShape.Gain => Gain(draft),
            StageShape.Rc => Rc(draft, design.Stages[stage].Circuit().OpAmps.Count > 0),
            StageShape.SallenKey => SallenKey(draft),
            StageShape.MultipleFeedback => MultipleFeedback(draft),
            StageShape.TwinT => TwinT(draft),
            StageShape.StateVariable => StateVariable(draft, design.Stages[stage].Circuit()),
            var other => throw new ArgumentOutOfRangeException(nameof(stage), other, "Stage is not handled."),
        };
        return draft.Finish(new CellPort(new(0, 0), from), draft.Exit(x, y, to));
    }

    private static (int X, int Y) Gain(CellDraft draft)
    {
        if (draft.Find("coupling-capacitor") is null)
        {
            draft.Wire((0, 0), (4, 0));
            return NonInverting(draft, 4);
        }

        draft.Wire((0, 0), (1, 0));
        draft.Level("coupling-capacitor", 1, 0);
        draft.Hang("coupling-resistor", 7, 0);
        draft.Wire((5, 0), (14, 0));
        return NonInverting(draft, 14);
    }

    /// <summary>The op-amp with its feedback below it: a wire or two resistors, and a capacitor across the upper one.</summary>
    /// <param name="x">Of its inputs; the signal comes at y 0.</param>
    /// <returns>Where output and feedback meet.</returns>
    private static (int X, int Y) NonInverting(CellDraft draft, int x)
    {
        const int Output = 2, Level = 9, Lower = 13;
        if (draft.Find(Ground) is null)
        {
            return draft.Follower(OpAmp, x, 0);
        }

        int end = x + SymbolShapes.OpAmpLength + 1, back = x - 1, bottom = Level;
        draft.OpAmp(OpAmp, x, Output, plusUp: true);
        draft.Wire((x, 4), (back, 4), (back, Level));
        draft.Wire((back, Level), (x + 2, Level));
        draft.Level(Feedback, x + 2, Level, firstRight: true);
        draft.Wire((x + 6, Level), (end, Level), (end, Output));
        draft.Wire((end - 1, Output), (end, Output));
        if (draft.Find(FeedbackCapacitor) is not null)
        {
            bottom = Lower;
            draft.Wire((back, Level), (back, Lower), (x + 2, Lower));
            draft.Level(FeedbackCapacitor, x + 2, Lower, firstRight: true);
            draft.Wire((x + 6, Lower), (end, Lower), (end, Level));
        }

        draft.Wire((back, bottom), (back, bottom + 2));
        draft.Hang(Ground, back, bottom + 2);
        return (end, Output);
    }

    private static (int X, int Y) Rc(CellDraft draft, bool hasOpAmp)
    {
        draft.Wire((0, 0), (1, 0));
        draft.Level("r", 1, 0);
        draft.Hang("c", 7, 0);
        draft.Wire((5, 0), (hasOpAmp ? 14 : 7, 0));
        return hasOpAmp ? draft.Follower(OpAmp, 14, 0) : (7, 0);
    }

    private static (int X, int Y) SallenKey(CellDraft draft)
    {
        const int Over = -4;
        draft.Wire((0, 0), (1, 0));
        draft.Level("r1", 1, 0);
        draft.Wire((5, 0), (7, 0));
        draft.Level("r2", 7, 0);
        draft.Hang("c2", 13, 0);
        draft.Wire((11, 0), (19, 0));
        (int x, int y) = NonInverting(draft, 19);
        draft.Wire((6, 0), (6, Over), (15, Over));
        draft.Level("c1", 15, Over);
        draft.Wire((19, Over), (x + 1, Over), (x + 1, y));
        draft.Wire((x, y), (x + 1, y));
        return (x + 1, y);
    }

    private static (int X, int Y) MultipleFeedback(CellDraft draft)
    {
        const int Near = -4, Far = -8, Output = 2;
        draft.Wire((0, 0), (2, 0));
        draft.Level("r1", 2, 0);
        draft.Wire((6, 0), (13, 0));
        draft.Wire((10, 0), (10, 2));
        draft.Hang("c1", 10, 2);
        draft.Level("r2", 13, 0);
        draft.Wire((17, 0), (20, 0));
        draft.OpAmp(OpAmp, 20, Output, plusUp: false);
        MiddleAtPlus(draft, OpAmp, 20, Output);
        draft.Wire((18, 0), (18, Near), (21, Near));
        draft.Level("c2", 21, Near);
        draft.Wire((25, Near), (28, Near), (28, Output));
        draft.Wire((7, 0), (7, Far), (16, Far));
        draft.Level("r3", 16, Far);
        draft.Wire((20, Far), (29, Far), (29, Output));
        draft.Wire((27, Output), (28, Output), (29, Output));
        return (29, Output);
    }

    /// <summary>The lower, non-inverting input on the middle of the supply.</summary>
    private static void MiddleAtPlus(CellDraft draft, string role, int x, int output)
    {
        int plus = output + SymbolShapes.OpAmpInput;
        draft.Wire((x, plus), (x - 1, plus), (x - 1, plus + 1));
        draft.Rail(x - 1, plus + 1, draft.OpAmpOf(role).Section.Plus.Net);
    }

    private static (int X, int Y) TwinT(CellDraft draft)
    {
        const int Lower = 11, Third = 18, Fourth = 22;
        draft.Wire((0, 0), (2, 0));
        draft.Level("r1", 2, 0);
        draft.Wire((6, 0), (16, 0));
        draft.Level("r2", 16, 0);
        draft.Wire((20, 0), (25, 0));
        draft.Wire((1, 0), (1, Lower), (2, Lower));
        draft.Level("c1", 2, Lower);
        draft.Wire((6, Lower), (16, Lower));
        draft.Level("c2", 16, Lower);
        draft.Wire((20, Lower), (21, Lower), (21, 0));
        for (int piece = 0; draft.Find(BoardRoles.Piece("c3", piece)) is not null; piece++)
        {
            int column = 8 + (6 * piece);
            draft.Wire((column, 0), (column, 2));
            draft.Hang(BoardRoles.Piece("c3", piece), column, 2);
        }

        (int x, int y) = NonInverting(draft, 25);
        draft.Wire((8, Lower), (8, Third), (14, Third));
        draft.Level("r3", 14, Third);
        draft.Wire((18, Third), (x + 1, Third), (x + 1, y));
        if (draft.Find(BoardRoles.Piece("r3", 1)) is not null)
        {
            draft.Wire((8, Third), (8, Fourth), (14, Fourth));
            draft.Level(BoardRoles.Piece("r3", 1), 14, Fourth);
            draft.Wire((18, Fourth), (20, Fourth), (20, Third));
        }

        draft.Wire((x, y), (x + 1, y));
        return (x + 1, y);
    }

    private static (int X, int Y) StateVariable(CellDraft draft, Circuit circuit)
    {
        const int Over = -8, Under = 11, Lowest = 17;
        string[] opAmps = [.. circuit.OpAmps.Select(opAmp => opAmp.Role)];

        // The first amplifier: input and low-pass output against its own, band-pass output at the other input.
        draft.Wire((0, 0), (2, 0));
        draft.Level("r3", 2, 0);
        draft.Wire((6, 0), (11, 0));
        draft.OpAmp(opAmps[0], 11, 2, plusUp: false);
        draft.Wire((8, 0), (8, -4), (12, -4));
        draft.Level("r5", 12, -4, firstRight: true);
        draft.Wire((16, -4), (19, -4), (19, 2));
        draft.Wire((11, 4), (9, 4), (9, Under));
        draft.Wire((9, Under), (15, Under));
        draft.Level("r2", 15, Under, firstRight: true);
        draft.Hang("r1", 9, Under);
        draft.Wire((18, 2), (23, 2));

        Integrator(draft, opAmps[1], "ra", "ca", 23, 2);
        draft.Wire((39, 4), (43, 4));
        draft.Wire((19, Under), (41, Under), (41, 4));
        Integrator(draft, opAmps[2], "rb", "cb", 43, 4);
        draft.Wire((59, 6), (63, 6));
        draft.Wire((8, -4), (8, Over), (33, Over));
        draft.Level("r4", 33, Over, firstRight: true);
        draft.Wire((37, Over), (61, Over), (61, 6));

        // The adding amplifier.
        draft.Level("r7", 63, 6);
        draft.Wire((67, 6), (72, 6));
        draft.Wire((21, 2), (21, Lowest), (63, Lowest));
        draft.Level("r6", 63, Lowest);
        draft.Wire((67, Lowest), (69, Lowest), (69, 6));
        draft.OpAmp(opAmps[3], 72, 8, plusUp: false);
        MiddleAtPlus(draft, opAmps[3], 72, 8);
        draft.Wire((70, 6), (70, 2), (73, 2));
        draft.Level("r8", 73, 2, firstRight: true);
        draft.Wire((77, 2), (80, 2), (80, 8));
        draft.Wire((79, 8), (80, 8));
        return (80, 8);
    }

    /// <summary>Resistor, op-amp and capacitor; the output is 16 steps to the right and two lower.</summary>
    private static void Integrator(CellDraft draft, string opAmp, string resistor, string capacitor, int x, int y)
    {
        draft.Level(resistor, x, y);
        draft.Wire((x + 4, y), (x + 8, y));
        draft.OpAmp(opAmp, x + 8, y + 2, plusUp: false);
        MiddleAtPlus(draft, opAmp, x + 8, y + 2);
        draft.Wire((x + 6, y), (x + 6, y - 4), (x + 9, y - 4));
        draft.Level(capacitor, x + 9, y - 4);
        draft.Wire((x + 13, y - 4), (x + 16, y - 4), (x + 16, y + 2));
        draft.Wire((x + 15, y + 2), (x + 16, y + 2));
    }
}
