using FrontEnd.Head;
using FrontEnd.Pairs;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>pairs --json</c>: what pairs of sites show of sources.</summary>
/// <param name="Design">The design's name; null where there is none.</param>
internal sealed record PairsJson(string? Design, string Head, IReadOnlyList<SourceJson> Sources, IReadOnlyList<string> Limits, IReadOnlyList<FindingJson> Findings)
{
    public required IQuantity HeadRadius { get; init; }

    public required double SkullRatio { get; init; }

    public required string Shells { get; init; }

    /// <summary>What the design says of its own danger; empty without one.</summary>
    public required IReadOnlyList<string> DesignCautions { get; init; }

    /// <summary>What must be said wherever a design is judged; empty without one.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    public required IReadOnlyList<ResultJson> Results { get; init; }

    public static PairsJson From(PairsAnswer answer) =>
        new(answer.Question.Design?.Name, answer.HeadSentence, [.. answer.Sources.Select(SourceJson.From)], answer.Limits, FindingJson.From(answer.Findings))
        {
            HeadRadius = answer.Head.Sphere.Radius, SkullRatio = answer.Head.Conductor.Shells.SkullRatio, Shells = HeadWords.Of(answer.Question.Head.Shells),
            DesignCautions = answer.Question.Design is { } design ? FrontEnd.Results.Cautions.Own(design) : [],
            Cautions = answer.Question.Design is null ? [] : FrontEnd.Results.Cautions.All,
            Results = [.. answer.Results.Select(ResultJson.From)],
        };
}

/// <summary>One source and what each pair shows of it.</summary>
/// <param name="Says">The source in a sentence.</param>
/// <param name="Density">The density that makes the rhythm as large as stated, its peak; null where no amplitude is stated.</param>
/// <param name="Tried">How many pairs were ranked; null where they stand in their own order.</param>
internal sealed record SourceJson(string Name, string Says, string Under, IQuantity Area, IQuantity? Amplitude, string? StatedIn, IQuantity? Density, int? Tried)
{
    /// <summary>How many pairs are shown.</summary>
    public int Shown => Pairs.Count;

    public string? WallTowards { get; init; }

    public string? AmplitudeKind { get; init; }

    public required string Band { get; init; }

    public required IQuantity BandLow { get; init; }

    public required IQuantity BandHigh { get; init; }

    public string? DensitySays { get; init; }

    /// <summary>The largest far potential on the skin for 1 nA·m/mm².</summary>
    public required IQuantity PeakPerDensity { get; init; }

    public required IReadOnlyList<PairJson> Pairs { get; init; }

    public required IReadOnlyList<DistanceKeptJson> KeptByDistance { get; init; }

    public static SourceJson From(SourceTable table)
    {
        SourceQuestion question = table.View.Question;
        return new(table.Patch.Name, table.SourceSentence, table.Patch.Under, table.Patch.Area, question.Statement?.Amplitude, question.Statement?.In.Name, table.View.Density,
            table.Tried)
        {
            WallTowards = table.Patch.WallTowards.Length == 0 ? null : table.Patch.WallTowards,
            AmplitudeKind = question.Statement is { } stated ? HeadWords.Of(stated.Kind) : null,
            Band = question.BandName, BandLow = question.Low, BandHigh = question.High, DensitySays = table.DensitySentence,
            PeakPerDensity = table.View.PeakPerDensity, Pairs = [.. table.Rows.Select(PairJson.From)],
            KeptByDistance = [.. table.ByDistance.Select(point => new DistanceKeptJson(point.Distance, point.Kept))],
        };
    }
}

/// <summary>One pair: shares are null where its active site hardly sees the source, ratios where no amplitude is stated.</summary>
internal sealed record PairJson(string Pair, IQuantity? Seen, IQuantity SeenPerDensity, IQuantity? Kept, IQuantity? KeptLeast, IQuantity? KeptGreatest,
    IQuantity? ReferenceTakes)
{
    public string? Reference { get; init; }

    public IQuantity? AgainstEars { get; init; }

    public required IQuantity OfPeak { get; init; }

    public IQuantity? HalfRegion { get; init; }

    public IQuantity? Signal { get; init; }

    public required IQuantity Background { get; init; }

    public IQuantity? FrontEndNoise { get; init; }

    public double? SignalToNoise { get; init; }

    public double? SignalToNoiseLeast { get; init; }

    public double? SignalToNoiseGreatest { get; init; }

    public IQuantity? SignalToNoiseDecibels { get; init; }

    public IQuantity? SignalToNoiseDecibelsLeast { get; init; }

    public IQuantity? SignalToNoiseDecibelsGreatest { get; init; }

    public string? MoreOfTheNoise { get; init; }

    public required IReadOnlyList<SiteWeightJson> Sites { get; init; }

    public static PairJson From(SourceRow row)
    {
        SourceInChannel seen = row.Seen;
        return new(seen.Channel.Derivation.Name, seen.Seen, seen.PerDensity, seen.Kept, seen.KeptSpan?.Least, seen.KeptSpan?.Greatest, seen.ReferenceTakes)
        {
            Reference = seen.Part is { } part ? HeadWords.Of(part) : null, AgainstEars = seen.AgainstEars, OfPeak = seen.OfPeak, HalfRegion = row.HalfRegion,
            Signal = seen.Signal, Background = seen.Background, FrontEndNoise = seen.Channel.Noise, SignalToNoise = seen.SignalToNoise,
            SignalToNoiseLeast = seen.SignalToNoiseSpan?.Least, SignalToNoiseGreatest = seen.SignalToNoiseSpan?.Greatest,
            SignalToNoiseDecibels = seen.SignalToNoiseLevel, SignalToNoiseDecibelsLeast = seen.SignalToNoiseLevels.Least,
            SignalToNoiseDecibelsGreatest = seen.SignalToNoiseLevels.Greatest,
            MoreOfTheNoise = seen.Channel.Noise is null ? null : seen.FrontEndLimits ? "front end" : "background",
            Sites = [.. seen.Channel.Derivation.Weights.Select(one => new SiteWeightJson(one.Site.Name, one.Weight))],
        };
    }
}

/// <summary>A site of a pair and its weight.</summary>
internal sealed record SiteWeightJson(string Site, double Weight);

/// <summary>What is kept with the reference so far away.</summary>
internal sealed record DistanceKeptJson(IQuantity Distance, IQuantity Kept);
