using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>The supply pins of packages with op-amps, op-amps that nothing uses, and test points that stand nowhere else.</summary>
internal static class PackageCells
{
    private const int Room = 15;

    public static List<Cell> Of(DrawingScope scope)
    {
        BoardPart[] packages = [.. scope.Board.PartsOf(scope.Assembly).Where(part => part.Class == PieceClass.OpAmps)];
        List<Cell> cells = [.. packages.Select(part => Supply(scope, part))];
        cells.AddRange(packages.SelectMany(part => part.Sections.Where(section => section.Role == BoardRoles.Unused).Select(section => Unused(scope, part, section))));
        BoardPart[] points = [.. scope.Board.PartsOf(scope.Assembly).Where(part => part.Class == PieceClass.TestPoint && !scope.Drawn.Contains(part))];
        if (0 < points.Length)
        {
            cells.Add(TestPoints(scope, points));
        }

        return cells;
    }

    private static Cell Supply(DrawingScope scope, BoardPart part)
    {
        CellDraft draft = new(scope, $"Supply of {part.Designator}", part.Block);
        BoardPin positive = part.Pins.First(pin => pin.Name == "V+"), negative = part.Pins.First(pin => pin.Name == "V−");
        draft.Put(SymbolShapes.Box(part, new(0, 0), (6, 6), [new(positive.Number, BoxSide.Top, 3), new(negative.Number, BoxSide.Bottom, 3)], "", BoxLabel.Middle));
        draft.Rail(3, -1, positive.Net);
        draft.Rail(3, 7, negative.Net);
        if (scope.Board.Find(scope.Assembly, part.Block, BoardRoles.DecouplingOf(part.Role)) is { } capacitor)
        {
            draft.Wire((3, -1), (9, -1), (9, 1));
            draft.Put(SymbolShapes.Upright(capacitor, new(9, 1), 0));
            draft.Rail(9, 1 + SymbolShapes.Length, capacitor.Pins[1].Net);
        }

        draft.Note(0, 10, part.Description.Split(',')[0], Room);
        if (part.Card.Length > 0)
        {
            draft.Note(0, 11.3, part.Card, Room);
        }

        return draft.Finish();
    }

    private static Cell Unused(DrawingScope scope, BoardPart part, BoardSection section)
    {
        CellDraft draft = new(scope, $"{part.Designator}{section.Letter}, not used", part.Block);
        draft.Put(SymbolShapes.OpAmp(part, section, new(0, 2), plusUp: false));
        draft.Wire((0, 0), (-1, 0), (-1, -3), (8, -3), (8, 2), (7, 2));
        draft.Wire((0, 4), (-1, 4), (-1, 5));
        draft.Rail(-1, 5, section.Plus.Net);
        return draft.Finish();
    }

    private static Cell TestPoints(DrawingScope scope, BoardPart[] points)
    {
        CellDraft draft = new(scope, points.Length == 1 ? "Test point" : "Test points", points[0].Block);
        int x = 0;
        foreach (BoardPart part in points)
        {
            string net = part.Pins[0].Net;
            draft.Put(SymbolShapes.TestPoint(part, new(x, 0), scope.NameOf(net)));
            if (net is Nets.Common or Nets.Middle)
            {
                draft.Rail(x, 0, net);
            }
            else
            {
                draft.Flag(x, 0, net, toLeft: false);
            }

            x += 6;
        }

        return draft.Finish();
    }
}
