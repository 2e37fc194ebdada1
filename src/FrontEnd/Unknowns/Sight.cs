using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Unknowns;

/// <summary>Whether a signal stands above the noise, whatever the unknown values are: pass for yes, fail for no, open for both.</summary>
internal sealed record Sight(Band Band, Result Noise, Result Ratio, VerdictKind Kind)
{
    /// <summary>One for each named band that the sampling rate leaves.</summary>
    public static IReadOnlyList<Sight> Bands(Assessment assessment)
    {
        List<Sight> bands = [];
        foreach (Band band in assessment.Design.Bands)
        {
            BandIds ids = ResultIds.Noise.Band(band.Name);
            if (assessment.Find(ids.Noise) is { State: not ResultState.Missing } noise && assessment.Find(ids.Ratio) is { State: not ResultState.Word } ratio)
            {
                bands.Add(new(band, noise, ratio, Above(ratio, 0)));
            }
        }

        return bands;
    }

    /// <summary>Whether a figure is above a level over all that the unknown allows.</summary>
    public static VerdictKind Above(Result result, double level) => result switch
    {
        { State: ResultState.Unbounded } => result.IsBelowAll ? VerdictKind.Fail : VerdictKind.Pass,
        { Interval: { } span } => level < span.Least ? VerdictKind.Pass : span.Greatest <= level ? VerdictKind.Fail : VerdictKind.Open,
        { State: ResultState.Number } => level < result.Si ? VerdictKind.Pass : VerdictKind.Fail,
        _ => VerdictKind.NotJudged,
    };

    /// <summary>The signals over noise of all sources in all channels, with the channel's stem.</summary>
    public static IReadOnlyList<(Result Ratio, VerdictKind Kind)> Sources(Assessment assessment) =>
        [.. assessment.Results.Where(result => ResultIds.See.All.Has(result.Id) && new SeeIds(result.Id.Stem.Stem) is var ids
            && result.Id == ids.SignalToNoise(result.Id.Figure) && assessment.Find(ids.Signal) is not null && result.State is ResultState.Number or ResultState.Interval)
            .Select(result => (result, Above(result, 1)))];

    /// <summary>What the hum is made of, the largest part first.</summary>
    public static IReadOnlyList<Result> Hum(Assessment assessment) =>
        [.. new[] { ResultIds.Mains.Divider, ResultIds.Mains.Leads, ResultIds.Mains.Amplifier, ResultIds.Mains.Loop }
            .Select(assessment.Find).OfType<Result>().OrderByDescending(Largest)];

    private static double Largest(Result result) => result.Interval?.P95 ?? (result.State == ResultState.Number ? result.Si : 0);
}
