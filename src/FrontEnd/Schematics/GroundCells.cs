using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>The ground electrode: on the middle of the supply, or driven with the inverted mean of two inputs.</summary>
internal static class GroundCells
{
    private static readonly BoardBlock Block = new(BlockKind.Ground);

    public static IEnumerable<Cell> Of(DrawingScope scope)
    {
        if (scope.Board.Find(0, Block, BoardRoles.At(BoardRoles.Socket, BoardRoles.Ground)) is { } socket)
        {
            yield return scope.Board.FindOpAmp(0, Block, BoardRoles.Drive) is null ? Passive(scope, socket) : Driven(scope, socket);
        }
    }

    private static Cell Passive(DrawingScope scope, BoardPart socket)
    {
        CellDraft draft = new(scope, "Ground electrode", Block);
        draft.Rail(0, 0, draft.Find(BoardRoles.GroundSeries)?.Pins[0].Net ?? socket.Pins[0].Net);
        draft.Wire((0, 0), (4, 0));
        Electrode(draft, socket, 4, 0);
        return draft.Finish();
    }

    private static void Electrode(CellDraft draft, BoardPart socket, int x, int y)
    {
        draft.Level(BoardRoles.GroundSeries, x, y);
        draft.Wire((x + 4, y), (x + 6, y));
        draft.Put(SymbolShapes.Box(socket, new(x + 7, y - 1), (6, 2), [new(socket.Pins[0].Number, BoxSide.Left, 1)], "ground electrode", BoxLabel.Around));
    }

    private static Cell Driven(DrawingScope scope, BoardPart socket)
    {
        const int Second = 12, Sum = 8, Output = 10, Mean = 19;
        CellDraft draft = new(scope, "Driven ground", Block);
        foreach ((string follower, string average, int y) in (ReadOnlySpan<(string, string, int)>)
            [(BoardRoles.FollowActive, BoardRoles.AverageActive, 0), (BoardRoles.FollowReference, BoardRoles.AverageReference, Second)])
        {
            draft.Flag(0, y, draft.OpAmpOf(follower).Section.Plus.Net, toLeft: true);
            draft.Wire((0, y), (2, y));
            (int x, int at) = draft.Follower(follower, 2, y);
            draft.Label(x, at, draft.OpAmpOf(follower).Section.Output.Net);
            draft.Wire((x, at), (x + 3, at));
            draft.Level(average, x + 3, at);
            draft.Wire((x + 7, at), (Mean, at), (Mean, Sum));
        }

        draft.Wire((Mean, Sum), (21, Sum));
        draft.Wire((21, Sum), (25, Sum));
        draft.Label(21, Sum, draft.OpAmpOf(BoardRoles.Drive).Section.Minus.Net);
        draft.OpAmp(BoardRoles.Drive, 25, Output, plusUp: false);
        draft.Wire((25, Output + 2), (24, Output + 2), (24, Output + 3));
        draft.Rail(24, Output + 3, draft.OpAmpOf(BoardRoles.Drive).Section.Plus.Net);
        draft.Wire((21, Sum), (21, 3), (26, 3));
        draft.Level(BoardRoles.FeedbackCapacitor, 26, 3);
        draft.Wire((30, 3), (33, 3), (33, Output));
        draft.Wire((21, 3), (21, -1), (26, -1));
        draft.Level(BoardRoles.Feedback, 26, -1);
        draft.Wire((30, -1), (33, -1), (33, 3));
        string drive = draft.OpAmpOf(BoardRoles.Drive).Section.Output.Net;
        int point = scope.NoteOn(drive).Length == 0 ? 36 : 38;
        draft.Wire((32, Output), (33, Output), (point, Output));
        draft.Wire((point, Output), (point + 3, Output));
        if (!draft.TestPoint(point, Output, drive))
        {
            draft.Label(34, Output, drive);
        }

        Electrode(draft, socket, point + 3, Output);
        return draft.Finish();
    }
}
