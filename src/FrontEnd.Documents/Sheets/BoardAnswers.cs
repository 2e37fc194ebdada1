using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Compare;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a sheet says of the board.</summary>
/// <param name="Board">Every piece with its pins and nets.</param>
/// <param name="AsBuilt">What the values that can be bought move.</param>
internal sealed record BoardAnswers(Board Board, AsBuilt AsBuilt)
{
    /// <summary>The order list.</summary>
    public IReadOnlyList<OrderRow> Order { get; } = OrderList.Of(Board);

    /// <summary>Where tighter tolerances pay and looser ones do; empty where nobody asked for a spread.</summary>
    public IReadOnlyList<ToleranceMark> Marks { get; init; } = [];

    /// <summary>What pieces cost; null where nobody says.</summary>
    public Prices? Prices { get; init; }

    /// <summary>Of an assessment that has figures.</summary>
    public static BoardAnswers Of(Assessment assessment)
    {
        Board board = Board.Of(assessment.Design);
        return new BoardAnswers(board, AsBuilt.Of(assessment, board.Built));
    }

    /// <summary>The mark of a row's tolerance; null for none.</summary>
    public ToleranceMark? MarkOf(OrderRow row) => Marks.FirstOrDefault(mark => mark.Key == OrderList.ToleranceKey(row.First));
}
