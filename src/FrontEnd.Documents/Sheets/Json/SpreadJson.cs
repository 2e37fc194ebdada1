using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>spread --json</c>: how the figures of many builds spread.</summary>
/// <param name="Ranged">What is drawn from a range that a card or the design gives.</param>
internal sealed record SpreadJson(
    string Design, int Builds, ulong Seed, PartDistribution Distribution, double? Yield, IReadOnlyList<string> Ranged,
    IReadOnlyList<SpreadFigureJson> Figures)
    : CautionedJson
{
    /// <summary>The percents of the percentiles.</summary>
    public IReadOnlyList<double> Percents { get; } = SpreadFigure.Percents;

    /// <summary>Rank correlations up to this are what chance makes of so many builds, and are left out.</summary>
    public required double Chance { get; init; }

    /// <summary>Of the same builds with electrodes and leads at their nominal values.</summary>
    public double? YieldWithoutElectrodesAndLeads { get; init; }

    /// <summary>Of the same builds with the board's parts alone drawn.</summary>
    public double? YieldOfParts { get; init; }

    /// <summary>What is tied to what.</summary>
    public required IReadOnlyList<string> Ties { get; init; }

    /// <summary>Everything that is drawn, and where it stands.</summary>
    public required OrderedDictionary<string, SpreadPlace> Drawn { get; init; }

    /// <summary>What is drawn where neither card nor design gives a range.</summary>
    public required SpreadRanges Assumed { get; init; }

    public static SpreadJson From(SpreadResult result) => new(
        result.Design.Name, result.Options.Builds, result.Options.Seed, result.Options.Distribution, result.Yield,
        [.. result.Parts.Where(part => part.IsRanged).Select(part => part.Key)], [.. result.Figures.Select(SpreadFigureJson.From)])
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(result.Design),
        Chance = SpreadFigure.Chance(result.Options.Builds), Assumed = result.Options.Ranges,
        YieldWithoutElectrodesAndLeads = result.YieldWithoutElectrodesAndLeads, YieldOfParts = result.YieldOfParts, Ties = result.Ties,
        Drawn = new(result.Parts.Select(part => KeyValuePair.Create(part.Key, part.Place))),
    };
}

/// <summary>One figure over all builds.</summary>
internal sealed record SpreadFigureJson(
    string Id, string Unit, double Nominal, double Mean, double StandardDeviation, double LeastCorner, double MostCorner, double? Yield,
    double? Limit)
{
    public string? Requirement { get; init; }

    /// <summary>With the board's parts alone drawn.</summary>
    public double? YieldOfParts { get; init; }

    /// <summary>By the percent, as text.</summary>
    public required OrderedDictionary<string, double> Percentiles { get; init; }

    /// <summary>The smallest value of a build; the largest.</summary>
    public double LeastDrawn { get; init; }

    public double MostDrawn { get; init; }

    public HistogramJson? Histogram { get; init; }

    /// <summary>By the part's key, largest first.</summary>
    public required OrderedDictionary<string, double> RankCorrelation { get; init; }

    public static SpreadFigureJson From(SpreadFigure figure) => new(
        figure.Id.Text, figure.Unit, figure.Nominal, figure.Mean, figure.StandardDeviation, figure.Least, figure.Most, figure.Yield,
        figure.Limit)
    {
        Requirement = figure.Requirement, YieldOfParts = figure.YieldOfParts, LeastDrawn = figure.LeastDrawn, MostDrawn = figure.MostDrawn,
        Percentiles = new(SpreadFigure.Percents.Zip(figure.Percentiles, (percent, value) => KeyValuePair.Create($"{percent}", value))),
        Histogram = figure.InBins(SpreadWording.Bins) is { } bins ? HistogramJson.From(bins) : null,
        RankCorrelation = new(figure.Ranks.Select(rank => KeyValuePair.Create(rank.Key, rank.Coefficient))),
    };
}

/// <summary>Numbers of builds in bins of equal width from low to high, and the middle of each bin.</summary>
internal sealed record HistogramJson(double Low, double High, IReadOnlyList<int> Counts, IReadOnlyList<double> Middles)
{
    public static HistogramJson From(Histogram bins) =>
        new(bins.Low, bins.High, bins.Counts, [.. Enumerable.Range(0, bins.Counts.Count).Select(bins.Middle)]);
}
