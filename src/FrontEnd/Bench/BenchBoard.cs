using FrontEnd.Boards;
using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Bench;

/// <summary>What a probe is put to, by the names on the board's drawing. Of channels that are assemblies of their own it is one's; those that
/// are alike have the same names behind their prefix.</summary>
internal sealed class BenchBoard
{
    private readonly Board _board;
    private readonly int _channel;

    /// <param name="design">The whole design, with all of its channels.</param>
    /// <param name="channel">Name of the channel that is probed; null for the first, as where all are alike.</param>
    public BenchBoard(Design design, string? channel)
    {
        _board = Board.Of(design);
        int named = channel is null ? -1 : design.ChannelNames.ToList().IndexOf(channel);
        _channel = _board.Assemblies == 0 ? 0 : Math.Max(0, named) + 1;
    }

    /// <summary>The test point on a net; null where it has none.</summary>
    public TestPoint? At(string net) => (_board.TestPoint(Board.NetOf(_channel, net)) ?? _board.TestPoint(net)) is { } part
        ? new TestPoint(part.Designator, net) : null;

    /// <summary>The test point of a node of the path; null where it has none.</summary>
    public TestPoint? At(NodeId node) => Nets.Of(_board.Design, node) is { } net ? At(net) : null;

    /// <summary>The resistor that limits the current through a lead's electrode, as it is soldered in; null where none is.</summary>
    public BoardPart? Protection(Lead lead, bool isBuffered)
    {
        return lead switch
        {
            Lead.Ground => _board.Find(0, new BoardBlock(BlockKind.Ground), BoardRoles.GroundSeries),
            Lead.Active => At(_channel, BoardRoles.Active),
            _ => At(_channel, BoardRoles.Minus) ?? At(0, BoardRoles.Reference),
        };

        BoardPart? At(int assembly, string electrode) =>
            _board.Find(assembly, new BoardBlock(BlockKind.Input), BoardRoles.At(isBuffered ? BoardRoles.Skin : BoardRoles.Series, electrode));
    }

    /// <summary>A resistor of the mid-supply's divider.</summary>
    public BoardPart? Divider(string role) => _board.Find(0, new BoardBlock(BlockKind.Supply), role);

    /// <summary>True where a follower stands behind the divider.</summary>
    public bool HasFollower => _board.FindOpAmp(0, new BoardBlock(BlockKind.Supply), BoardRoles.Follower) is not null;
}
