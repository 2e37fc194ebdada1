using FrontEnd.Boards;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Bench;

/// <summary>What a probe is put to, by the names on the board's drawing. Of channels that are assemblies of their own it is the first's; the
/// others have the same names behind their prefix.</summary>
internal sealed class BenchBoard
{
    private readonly Board _board;
    private readonly int _channel;

    public BenchBoard(Design design)
    {
        _board = Board.Of(design);
        _channel = _board.Assemblies == 0 ? 0 : 1;
    }

    /// <summary>The test point on a net; null where it has none.</summary>
    public TestPoint? At(string net) => (_board.TestPoint(Board.NetOf(_channel, net)) ?? _board.TestPoint(net)) is { } part
        ? new TestPoint(part.Designator, net) : null;

    /// <summary>The test point of a node of the path; null where it has none.</summary>
    public TestPoint? At(NodeId node) => Nets.Of(_board.Design, node) is { } net ? At(net) : null;

    /// <summary>The resistor that limits the current through a lead's electrode, as it is soldered in; null where none is.</summary>
    public BoardPart? Protection(Lead lead, bool isBuffered) => lead == Lead.Ground
        ? _board.Find(0, new BoardBlock(BlockKind.Ground), BoardRoles.GroundSeries)
        : Input(BoardRoles.At(isBuffered ? BoardRoles.Skin : BoardRoles.Series, lead == Lead.Active ? BoardRoles.Active : BoardRoles.Reference))
            ?? (lead == Lead.Reference ? Input(BoardRoles.At(isBuffered ? BoardRoles.Skin : BoardRoles.Series, BoardRoles.Minus)) : null);

    /// <summary>A resistor of the mid-supply's divider.</summary>
    public BoardPart? Divider(string role) => _board.Find(0, new BoardBlock(BlockKind.Supply), role);

    /// <summary>True where a follower stands behind the divider.</summary>
    public bool HasFollower => _board.FindOpAmp(0, new BoardBlock(BlockKind.Supply), BoardRoles.Follower) is not null;

    private BoardPart? Input(string role) => _board.Find(_channel, new BoardBlock(BlockKind.Input), role) ?? _board.Find(0, new BoardBlock(BlockKind.Input), role);
}
