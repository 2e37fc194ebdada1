using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>Of every design that the unknown allows the node that clips first is judged, and which one that is rests on what is not known: what stands
/// for all of them is the least headroom of each, wherever it is.</summary>
internal static class WorstNode
{
    /// <summary>The headroom that one design is judged by; null where nothing stands at any of its nodes.</summary>
    public static Result? Of(IEnumerable<Result> results) => results.FirstOrDefault(result =>
        ResultIds.Levels.IsHeadroom(result.Id) && string.Equals(result.Verdict.Requirement, DesignKeys.Requirements.Headroom, StringComparison.Ordinal));

    /// <summary>The node of a headroom.</summary>
    public static NodeId NodeOf(Result headroom) => new(ResultIds.Levels.All.Rest(headroom.Id.Stem));

    /// <summary>One design's results with the least headroom as a figure of its own, which is judged; those of the nodes are not.</summary>
    public static IReadOnlyList<Result> Apart(IReadOnlyList<Result> results)
    {
        if (Of(results) is not { } worst)
        {
            return results;
        }

        List<Result> apart = [.. results];
        int at = apart.FindIndex(result => result.Id == worst.Id);
        apart[at] = worst with { Verdict = Verdict.NotJudged };
        apart.Insert(at, worst with { Id = ResultIds.Levels.LeastHeadroom, Name = $"headroom at {Unnamed}, lowest supply", Channel = null });
        return apart;
    }

    /// <summary>The result over many designs with the nodes named: in its name, "(converter or amplifier)", and how often each in its text, "at converter
    /// in 371 of 464 designs, at amplifier in 93".</summary>
    /// <param name="over">The least headroom of all of them.</param>
    /// <param name="nodes">The node that has it in each.</param>
    public static Result Named(Result over, IEnumerable<NodeId?> nodes)
    {
        (string Node, int Count)[] counted = [.. nodes.OfType<NodeId>().GroupBy(node => node).Select(same => (same.Key.Words, same.Count())).OrderByDescending(one => one.Item2)];
        int all = counted.Sum(one => one.Count);
        string[] words = [.. counted.Select(one => one.Node)];
        return words.Length == 0 ? over : over with
        {
            Name = over.Name.Replace(Unnamed, $"{Unnamed} ({(words.Length == 1 ? words[0] : $"{string.Join(", ", words[..^1])} or {words[^1]}")})", StringComparison.Ordinal),
            Text = words.Length == 1 ? $"at {words[0]}"
                : string.Join(", ", counted.Select((one, at) => FormattableString.Invariant($"at {one.Node} in {one.Count}{(at == 0 ? $" of {all} designs" : "")}"))),
        };
    }

    private const string Unnamed = "the node that clips first";
}
