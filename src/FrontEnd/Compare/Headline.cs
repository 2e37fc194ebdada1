using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Compare;

/// <summary>A figure that no requirement is made of and that designs are chosen by all the same: noise where it is not judged, delay, supply
/// current, battery life, data rate. It stands in a comparison whether it moved or not.</summary>
/// <param name="Before">In the first assessment; null where it has none, as the battery life of a design without a battery.</param>
/// <param name="After">In the second.</param>
internal sealed record Headline(Result? Before, Result? After)
{
    private static readonly ResultId[] Ids =
        [ResultIds.Noise.Total, ResultIds.Latency.Total, ResultIds.Power.SupplyCurrent, ResultIds.Power.BatteryLife, ResultIds.Data.BitRate];

    /// <summary>Which figure.</summary>
    public ResultId Id => (After ?? Before)!.Id;

    /// <summary>Those that at least one of two assessments has and neither judges.</summary>
    public static IReadOnlyList<Headline> Of(Assessment before, Assessment after) =>
    [
        .. Ids.Select(id => new Headline(before.Find(id), after.Find(id))).Where(one => one is not { Before: null, After: null }
            && !IsJudged(one.Before) && !IsJudged(one.After)),
    ];

    private static bool IsJudged(Result? result) => result is not null && result.Verdict.Kind != VerdictKind.NotJudged;
}
