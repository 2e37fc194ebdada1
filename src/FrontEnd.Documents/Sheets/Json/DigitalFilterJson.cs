using System.Text.Json.Serialization;
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>filter fir --json</c>.</summary>
internal sealed record FirJson(
    string Kind, string Method, IQuantity Rate, int Length, IQuantity Delay, int Multiplications, double PassRippleDb, double? StopLossDb,
    IReadOnlyList<IQuantity> HalfPower, double DcGain, IReadOnlyList<double> Taps)
{
    public required string Shape { get; init; }

    public required IReadOnlyList<IQuantity> PassEdges { get; init; }

    public required IReadOnlyList<IQuantity> StopEdges { get; init; }

    /// <summary>What was asked for; null where it was not.</summary>
    public double? WantedRippleDb { get; init; }

    public double? WantedAttenuationDb { get; init; }

    public required IQuantity StepSettledAfter { get; init; }

    public required double MultiplicationsPerSecond { get; init; }

    public required IReadOnlyList<TapWordJson> Words { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static FirJson From(DesignedFir fir)
    {
        FirWish wish = fir.Answer.Wish;
        FirFilter filter = fir.Answer.Filter!;
        FirFigures figures = fir.Answer.Figures!;
        return new FirJson(
            "fir", wish.Method == FirMethod.Kaiser ? "kaiser" : "equiripple", wish.Rate, filter.Length, filter.Delay, filter.Multiplies,
            figures.PassLoss, figures.StopLoss,
            [.. figures.HalfPower], figures.DcGain, Numbers(filter.Taps))
        {
            Shape = FilterWords.Of(wish.Shape),
            PassEdges = [.. wish.PassEdges],
            StopEdges = [.. wish.StopEdges],
            WantedRippleDb = wish.Ripple?.Value,
            WantedAttenuationDb = wish.Attenuation?.Value,
            StepSettledAfter = fir.Settled,
            MultiplicationsPerSecond = fir.Cost.MultipliesPerSecond,
            Words = TapWordJson.From(fir.Cost),
            Findings = FindingJson.From(fir.Findings),
        };
    }

    internal static IReadOnlyList<double> Numbers(ReadOnlySpan<double> taps) => [.. taps.ToArray().Select(SectionJson.Unsigned)];
}

/// <summary>Members that combs and notches share: what is left of the band from 0 Hz to its edge. Losses are null without bound.</summary>
internal abstract record BandJson(BandDroop Droop, IReadOnlyList<HarmonicDepth> Harmonics)
{
    [JsonIgnore]
    public BandDroop Droop { get; } = Droop;

    [JsonIgnore]
    public IReadOnlyList<HarmonicDepth> Harmonics { get; } = Harmonics;

    public IQuantity BandEdge => Droop.Edge;

    public double? LargestLossDb => Droop.Largest;

    public IQuantity LargestLossAt => Droop.At;

    [JsonPropertyName("lost_1db")]
    public IQuantity LostOne => Droop.LostOne;

    [JsonPropertyName("lost_3db")]
    public IQuantity LostThree => Droop.LostThree;

    /// <summary>About each harmonic, where the mains has moved.</summary>
    public IReadOnlyList<DepthJson> Depths =>
        [.. Harmonics.Select(
            h => new DepthJson(h.Harmonic, h.Frequency, [.. h.Depths.Select(d => new DeviationJson(d.Deviation, d.Attenuation))]))];
}

/// <summary>How deep a filter is about one harmonic.</summary>
internal sealed record DepthJson(int Harmonic, IQuantity Frequency, IReadOnlyList<DeviationJson> At);

/// <summary>Loss where the mains has moved by so much, and harmonic h by h times as much; the worse side.</summary>
internal sealed record DeviationJson(IQuantity Deviation, double? LossDb);

/// <summary>Members of <c>filter comb --json</c>.</summary>
internal sealed record CombJson(BandDroop Droop, IReadOnlyList<HarmonicDepth> Harmonics) : BandJson(Droop, Harmonics)
{
    public string Kind { get; } = "comb";

    public required IQuantity Rate { get; init; }

    public required IQuantity Mains { get; init; }

    public required int Period { get; init; }

    public required int Periods { get; init; }

    public required IQuantity RingTime { get; init; }

    /// <summary>First frequency of half the power; null where there is none below half the rate.</summary>
    public IQuantity? HalfPower { get; init; }

    public required IQuantity GroupDelayAt { get; init; }

    public required IQuantity GroupDelay { get; init; }

    public required IQuantity LargestGroupDelay { get; init; }

    public required int Multiplications { get; init; }

    public required int Additions { get; init; }

    public required int Divisions { get; init; }

    /// <summary>Samples and sums that a channel keeps.</summary>
    public required int Words { get; init; }

    /// <summary>Multiplications by its taps, in floating point.</summary>
    public required int TapMultiplications { get; init; }

    public required IReadOnlyList<double> Taps { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static CombJson From(DesignedComb designed)
    {
        PeriodComb comb = designed.Answer.Comb!;
        CombFigures figures = designed.Figures;
        return new CombJson(figures.Droop, figures.Depths)
        {
            Rate = designed.Answer.Wish.Rate,
            Mains = designed.Answer.Wish.Mains,
            Period = comb.Period,
            Periods = comb.Periods,
            RingTime = comb.RingTime,
            HalfPower = figures.HalfPower,
            GroupDelayAt = figures.Middle,
            GroupDelay = figures.Delay,
            LargestGroupDelay = figures.LargestDelay,
            Multiplications = figures.Multiplies,
            Additions = figures.Additions,
            Divisions = DesignedComb.Divisions,
            Words = figures.Words,
            TapMultiplications = designed.TapMultiplies,
            Taps = FirJson.Numbers(comb.Taps()),
            Findings = FindingJson.From(designed.Findings),
        };
    }
}

/// <summary>Members of <c>filter notch --json</c> with a rate.</summary>
internal sealed record NotchJson(BandDroop Droop, IReadOnlyList<HarmonicDepth> Harmonics) : BandJson(Droop, Harmonics)
{
    public string Kind { get; } = "notch";

    public required IQuantity Rate { get; init; }

    /// <summary>Centre over −3 dB width of the first notch, and of all unless they have a common width.</summary>
    public required double Q { get; init; }

    public required bool CommonWidth { get; init; }

    public required int Multiplications { get; init; }

    public required IQuantity RingTime { get; init; }

    public required IQuantity GroupDelayAt { get; init; }

    public required IQuantity GroupDelay { get; init; }

    public required IReadOnlyList<EachNotchJson> Notches { get; init; }

    public required IReadOnlyList<CoefficientsJson> Sections { get; init; }

    public required IReadOnlyList<WordJson> Words { get; init; }

    public required IReadOnlyList<GrowthJson> Growth { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static NotchJson From(DesignedNotches designed)
    {
        NotchesFigures figures = designed.Figures;
        return new NotchJson(figures.Droop, figures.Depths)
        {
            Rate = designed.Answer.Wish.Rate,
            Q = designed.Answer.Wish.Q,
            CommonWidth = designed.Answer.Wish.CommonWidth,
            Multiplications = figures.Multiplies,
            RingTime = figures.RingTime,
            GroupDelayAt = figures.Droop.Edge,
            GroupDelay = figures.DelayAtEdge,
            Notches = [.. figures.Notches.Zip(
                figures.Depths, (notch, depth) => new EachNotchJson(depth.Frequency, notch.Bandwidth, notch.TimeConstant, notch.RingTime))],
            Sections = [.. CoefficientsJson.From(designed.Answer.Sections!)],
            Words = WordJson.From(designed.Words)!,
            Growth = GrowthJson.From(designed.Words)!,
            Findings = FindingJson.From(designed.Findings),
        };
    }
}

/// <summary>One digital notch.</summary>
internal sealed record EachNotchJson(IQuantity Centre, IQuantity Width, IQuantity TimeConstant, IQuantity RingTime);

/// <summary>Members of <c>filter sinc --json</c>; length, delay, multiplications and taps are of the compensation.</summary>
internal sealed record SincJson(string Kind, int Order, int Ratio, IQuantity Rate, IQuantity BandEdge, IReadOnlyList<SincLossJson> Loss)
{
    /// <summary>Of what the decimator folds into the band, behind the taps.</summary>
    public required double FoldLossDb { get; init; }

    public required double FoldLossOfDecimatorDb { get; init; }

    public required double LargestDeviationDb { get; init; }

    public required double RiseAtHalfRateDb { get; init; }

    public required double NoiseGain { get; init; }

    public required int RegisterGrowthBits { get; init; }

    public required IQuantity DecimatorDelay { get; init; }

    public required int Length { get; init; }

    public required IQuantity Delay { get; init; }

    public required int Multiplications { get; init; }

    public required IReadOnlyList<double> Taps { get; init; }

    /// <summary>In front of the decimator.</summary>
    public required IQuantity InputRate { get; init; }

    /// <summary>Output samples until a step has settled, decimator alone.</summary>
    public required int SettlingSamples { get; init; }

    public required int SettlingSamplesWithTaps { get; init; }

    public required double MultiplicationsPerSecond { get; init; }

    public required IReadOnlyList<TapWordJson> Words { get; init; }

    public required IReadOnlyList<FindingJson> Findings { get; init; }

    public static SincJson From(DesignedSinc designed)
    {
        SincWish wish = designed.Answer.Wish;
        FirFilter taps = designed.Answer.Compensation!;
        SincFigures figures = designed.Figures;
        return new SincJson(
            "sinc", wish.Order, wish.Ratio, wish.Rate, wish.Edge, [.. figures.Points.Select(
                point => new SincLossJson(point.At, point.Decimator, point.Compensated))])
        {
            FoldLossDb = figures.FoldLoss,
            FoldLossOfDecimatorDb = figures.DecimatorFoldLoss,
            LargestDeviationDb = figures.LargestDeviation,
            RiseAtHalfRateDb = figures.RiseAtHalfRate,
            NoiseGain = figures.NoiseGain,
            RegisterGrowthBits = figures.GrowthBits,
            DecimatorDelay = designed.Answer.Sinc!.Delay,
            Length = taps.Length,
            Delay = taps.Delay,
            Multiplications = taps.Multiplies,
            Taps = FirJson.Numbers(taps.Taps),
            InputRate = designed.InputRate,
            SettlingSamples = designed.Answer.Sinc.SettlingSamples,
            SettlingSamplesWithTaps = designed.SettlingWithTaps,
            MultiplicationsPerSecond = designed.Cost.MultipliesPerSecond,
            Words = TapWordJson.From(designed.Cost),
            Findings = FindingJson.From(designed.Findings),
        };
    }
}

/// <summary>Loss at one frequency before and behind the taps.</summary>
internal sealed record SincLossJson(IQuantity Frequency, double DecimatorDb, double CompensatedDb);
