using FrontEnd.Rates;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>rates --json</c>: sampling rates side by side.</summary>
internal sealed record RatesJson(
    string Design, IQuantity Corner, string CornerIs, IQuantity? Pick, IQuantity? RunnerUp, string Because, IReadOnlyList<RateJson> Rates,
    IReadOnlyList<FindingJson> Findings)
    : CautionedJson
{
    /// <summary>What the rates are judged by.</summary>
    public required AskedJson Asked { get; init; }

    /// <summary>What leaks of a common mode at the mains between neighbouring channels as the design samples them.</summary>
    public required SkewJson SkewAsDesigned { get; init; }

    public static RatesJson From(RateComparison comparison) => new(
        comparison.Design.Name, comparison.Corner, comparison.CornerIs, comparison.Pick?.Rate, comparison.RunnerUp?.Rate,
        comparison.Because,
        [.. comparison.Options.Select(option => RateJson.From(option, comparison.SkewSpreadEvenly(option)))],
        FindingJson.From(comparison.Findings))
    {
        DesignCautions = FrontEnd.Results.Cautions.Own(comparison.Design), Asked = AskedJson.From(comparison.Design), SkewAsDesigned = SkewJson.From(comparison.SkewAsDesigned)!,
    };
}

/// <summary>One rate; its figures are null where it cannot be worked out.</summary>
internal sealed record RateJson(IQuantity Rate, string Verdict, string Because)
{
    public IQuantity? FoldFrequency { get; init; }

    public IQuantity? FoldAttenuation { get; init; }

    public IQuantity? ConverterShare { get; init; }

    public IQuantity? ModulatorAttenuation { get; init; }

    /// <summary>By the family of low-passes; null where no order does.</summary>
    public OrderedDictionary<string, int?> Orders { get; init; } = [];

    public IReadOnlyList<MainsJson> Mains { get; init; } = [];

    public IReadOnlyList<InterfererJson> Interferers { get; init; } = [];

    public IQuantity? DroopLow { get; init; }

    public IQuantity? DroopHigh { get; init; }

    public IQuantity? Delay { get; init; }

    public IQuantity? Noise { get; init; }

    public IQuantity? BitRate { get; init; }

    public IQuantity? BatteryLife { get; init; }

    /// <summary>What leaks where a multiplexer spreads all channels over one period; null for a single channel.</summary>
    public SkewJson? SkewSpreadEvenly { get; init; }

    public IReadOnlyList<FindingJson> Findings { get; init; } = [];

    public static RateJson From(RateOption option, SamplingSkew? skew)
    {
        IReadOnlyList<FindingJson> findings = FindingJson.From(option.Findings);
        return !option.IsWorkedOut
            ? new RateJson(option.Rate, "not worked out", option.Because) { Findings = findings }
            : new RateJson(option.Rate, Wording.Word(option.Verdict), option.Because)
            {
                FoldFrequency = option.Fold, FoldAttenuation = option.FoldAttenuation, ConverterShare = option.ConverterShare,
                ModulatorAttenuation = option.ModulatorAttenuation,
                Orders = new(option.Orders.Select(one => KeyValuePair.Create(one.Family, one.Order))),
                Mains = [.. option.Mains.Select(MainsJson.From)],
                Interferers = [.. option.Interferers.Select(one => new InterfererJson(one.Name, one.LandsAt, one.Folded, one.Direct))],
                DroopLow = option.DroopLow, DroopHigh = option.DroopHigh, Delay = option.Delay, Noise = option.Noise,
                BitRate = option.DataRate,
                BatteryLife = option.BatteryLife, SkewSpreadEvenly = SkewJson.From(skew), Findings = findings,
            };
    }
}

/// <summary>The band, the mains and the attenuation at the fold that is asked for.</summary>
internal sealed record AskedJson(IQuantity BandLow, IQuantity BandHigh, IQuantity Mains, IQuantity MainsDeviation,
    IQuantity FoldAttenuation)
{
    public static AskedJson From(Design design) =>
        new(design.Band.Low, design.Band.High, design.Mains.Frequency, design.Mains.Deviation, design.Requirements.Fold);
}

/// <summary>Time between two channels' samples, the share of a common mode that leaks, and the rejection that this is; null where nothing
/// leaks.</summary>
internal sealed record SkewJson(IQuantity Apart, IQuantity Leak, IQuantity? Rejection)
{
    public static SkewJson? From(SamplingSkew? skew) => skew is null ? null : new(skew.Apart, skew.Leak, skew.Rejection);
}

/// <summary>One mains frequency at one rate.</summary>
internal sealed record MainsJson(
    IQuantity Frequency, IQuantity Voltage, IQuantity Recorded, IQuantity RecordedEverywhere, int? CombSamples, IQuantity SkewLeak,
    int HighestHarmonic, IReadOnlyList<LandingJson> Harmonics)
{
    public static MainsJson From(MainsAtRate mains) => new(
        mains.Frequency, mains.Voltage, mains.Recorded, mains.Everywhere, mains.Comb, mains.Skew, mains.HighestHarmonic,
        [.. mains.Landings.Select(one =>
            new LandingJson(one.Harmonic, one.Frequency, one.LandsAt, one.Low, one.High, one.InBand, one.Residue))]);
}

/// <summary>Where one harmonic lands and what is left of it.</summary>
internal sealed record LandingJson(
    int Harmonic, IQuantity Frequency, IQuantity LandsAt, IQuantity LandsLow, IQuantity LandsHigh, bool InBand, IQuantity Residue);

/// <summary>What an interferer other than the mains leaves.</summary>
internal sealed record InterfererJson(string Name, string LandsAt, IQuantity Folded, IQuantity? InBand);
