using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>spread --json</c>: how the figures of many builds spread.</summary>
/// <param name="Ranged">What is drawn from a range that a card or the design gives.</param>
internal sealed record SpreadJson(
    string Design, int Builds, ulong Seed, PartDistribution Distribution, double? Yield, IReadOnlyList<string> Ranged, IReadOnlyList<SpreadFigureJson> Figures)
{
    public static SpreadJson From(SpreadResult result) => new(
        result.Design.Name, result.Options.Builds, result.Options.Seed, result.Options.Distribution, result.Yield,
        [.. result.Parts.Where(part => part.IsRanged).Select(part => part.Key)], [.. result.Figures.Select(SpreadFigureJson.From)]);
}

/// <summary>One figure over all builds.</summary>
internal sealed record SpreadFigureJson(
    string Id, string Unit, double Nominal, double Mean, double StandardDeviation, double LeastCorner, double MostCorner, double? Yield, double? Limit)
{
    public string? Requirement { get; init; }

    /// <summary>By the percent, as text.</summary>
    public required OrderedDictionary<string, double> Percentiles { get; init; }

    public HistogramJson? Histogram { get; init; }

    /// <summary>By the part's key, largest first.</summary>
    public required OrderedDictionary<string, double> RankCorrelation { get; init; }

    public static SpreadFigureJson From(SpreadFigure figure) => new(
        figure.Id.Text, figure.Unit, figure.Nominal, figure.Mean, figure.StandardDeviation, figure.Least, figure.Most, figure.Yield, figure.Limit)
    {
        Requirement = figure.Requirement,
        Percentiles = new(SpreadFigure.Percents.Zip(figure.Percentiles, (percent, value) => KeyValuePair.Create($"{percent}", value))),
        Histogram = figure.InBins(SpreadWording.Bins) is { } bins ? new HistogramJson(bins.Low, bins.High, bins.Counts) : null,
        RankCorrelation = new(figure.Ranks.Select(rank => KeyValuePair.Create(rank.Key, rank.Coefficient))),
    };
}

/// <summary>Numbers of builds in bins of equal width from low to high.</summary>
internal sealed record HistogramJson(double Low, double High, IReadOnlyList<int> Counts);
