using FrontEnd.Quantities;
using FrontEnd.Rates;

namespace FrontEnd.Documents.Sheets;

/// <summary>Members of <c>rates --json</c>: sampling rates side by side.</summary>
internal sealed record RatesJson(
    string Design, IQuantity Corner, string CornerIs, IQuantity? Pick, IQuantity? RunnerUp, string Because, IReadOnlyList<RateJson> Rates, IReadOnlyList<FindingJson> Findings)
{
    public static RatesJson From(RateComparison comparison) => new(
        comparison.Design.Name, comparison.Corner, comparison.CornerIs, comparison.Pick?.Rate, comparison.RunnerUp?.Rate, comparison.Because,
        [.. comparison.Options.Select(RateJson.From)], FindingJson.From(comparison.Findings));
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

    public IReadOnlyList<FindingJson> Findings { get; init; } = [];

    public static RateJson From(RateOption option)
    {
        IReadOnlyList<FindingJson> findings = FindingJson.From(option.Findings);
        return !option.IsWorkedOut
            ? new RateJson(option.Rate, "not worked out", option.Because) { Findings = findings }
            : new RateJson(option.Rate, Wording.Word(option.Verdict), option.Because)
            {
                FoldFrequency = option.Fold, FoldAttenuation = option.FoldAttenuation, ConverterShare = option.ConverterShare,
                ModulatorAttenuation = option.ModulatorAttenuation, Orders = new(option.Orders.Select(one => KeyValuePair.Create(one.Family, one.Order))),
                Mains = [.. option.Mains.Select(MainsJson.From)],
                Interferers = [.. option.Interferers.Select(one => new InterfererJson(one.Name, one.LandsAt, one.Folded, one.Direct))],
                DroopLow = option.DroopLow, DroopHigh = option.DroopHigh, Delay = option.Delay, Noise = option.Noise, BitRate = option.DataRate,
                BatteryLife = option.BatteryLife, Findings = findings,
            };
    }
}

/// <summary>One mains frequency at one rate.</summary>
internal sealed record MainsJson(
    IQuantity Frequency, IQuantity Voltage, IQuantity Recorded, IQuantity RecordedEverywhere, int? CombSamples, IQuantity SkewLeak, IReadOnlyList<LandingJson> Harmonics)
{
    public static MainsJson From(MainsAtRate mains) => new(
        mains.Frequency, mains.Voltage, mains.Recorded, mains.Everywhere, mains.Comb, mains.Skew,
        [.. mains.Landings.Select(one => new LandingJson(one.Harmonic, one.Frequency, one.LandsAt, one.Low, one.High, one.InBand, one.Residue))]);
}

/// <summary>Where one harmonic lands and what is left of it.</summary>
internal sealed record LandingJson(
    int Harmonic, IQuantity Frequency, IQuantity LandsAt, IQuantity LandsLow, IQuantity LandsHigh, bool InBand, IQuantity Residue);

/// <summary>What an interferer other than the mains leaves.</summary>
internal sealed record InterfererJson(string Name, string LandsAt, IQuantity Folded, IQuantity? InBand);
