using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>What all channels share: reference lead, converter, ground electrode, supply.</summary>
internal static class SharedCells
{
    private static readonly BoardBlock Input = new(BlockKind.Input);

    public static List<Cell> Of(DrawingScope scope)
    {
        List<Cell> cells = [];
        string reference = BoardRoles.At(BoardRoles.Socket, BoardRoles.Reference);
        if (0 < scope.Board.Assemblies && scope.Board.Find(0, Input, reference) is { } socket)
        {
            cells.AddRange(InputCells.Buffers(scope));
            cells.Add(InputCells.Reference(scope,
                scope.Board.Find(0, Input, BoardRoles.At(BoardRoles.Series, BoardRoles.Reference))?.Pins[1].Net ?? socket.Pins[0].Net));
        }

        cells.AddRange(ConverterCells.Of(scope));
        cells.AddRange(GroundCells.Of(scope));

        // The higher ones first, so that the others fit beside and below them.
        cells.Add(SupplyCells.Middle(scope));
        if (ConverterCells.Supplies(scope) is { } supplies)
        {
            cells.Add(supplies);
        }

        cells.Add(SupplyCells.Battery(scope));
        return cells;
    }
}
