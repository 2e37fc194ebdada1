namespace FrontEnd.Schematics;

/// <summary>What belongs to one channel, in the order of the signal.</summary>
internal static class ChannelCells
{
    public static List<Cell> Of(DrawingScope scope)
    {
        List<Cell> cells = [.. InputCells.Buffers(scope), InputCells.Amplifier(scope)];
        for (int stage = 0; stage < scope.Board.Design.Stages.Count; stage++)
        {
            cells.Add(StageCells.Of(scope, stage));
        }

        return cells;
    }
}
