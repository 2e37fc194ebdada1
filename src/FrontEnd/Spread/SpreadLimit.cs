using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Spread;

/// <summary>The limit that the assessment judges a figure by.</summary>
/// <param name="Figure">The figure's number in <see cref="SpreadKernel.Ids"/>.</param>
/// <param name="Key">The requirement's key.</param>
/// <param name="Limit">In the figure's unit.</param>
/// <param name="IsGreatest">True where the figure must not be above it, false where it must not be below.</param>
internal sealed record SpreadLimit(int Figure, string? Key, double Limit, bool IsGreatest)
{
    /// <summary>The limits of a design, in the order of the figures.</summary>
    public static SpreadLimit[] Of(Design design)
    {
        Dictionary<ResultId, Result> judged = Evaluator.Judged(design) ?? [];
        return [.. Enumerable.Range(0, SpreadKernel.Ids.Length).Select(figure => Of(judged, figure)).OfType<SpreadLimit>()];
    }

    public bool IsMet(double value) => IsGreatest ? value <= Limit : Limit <= value;

    private static SpreadLimit? Of(Dictionary<ResultId, Result> judged, int figure)
    {
        ResultId id = SpreadKernel.Ids[figure];
        Result? result = id == ResultIds.Levels.LeastHeadroom
            ? judged.Values.FirstOrDefault(one => ResultIds.Levels.IsHeadroom(one.Id))
            : judged.GetValueOrDefault(id);
        return result?.Verdict is { Limit: { } limit } verdict
            ? new SpreadLimit(
                figure, verdict.Requirement, limit is Angle angle ? angle.Degrees : limit.SiValue, verdict.LimitIsGreatest)
            : null;
    }
}
