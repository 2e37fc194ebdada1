using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Reporting;
using FrontEnd.Topologies;

namespace FrontEnd.Sizing;

/// <summary>One combination of parts, gains and rate, with bounds that need no network.</summary>
/// <param name="NoiseBound">Board noise that amplifier, protection, second stage and converter alone make, mid-band densities over the band
/// [V rms]: never above the full figure by more than rounding.</param>
/// <param name="Design">The design that it makes.</param>
/// <param name="Parts">Pieces of the whole device.</param>
/// <param name="IsAcCoupled">Some stage passes no dc.</param>
internal sealed record SizingCandidate(Design Design, double NoiseBound, int Parts, bool IsAcCoupled)
{
    private static readonly Limit Offset = Limit.Find(DesignKeys.Requirements.Offset)!, Headroom = Limit.Find(DesignKeys.Requirements.Headroom)!,
        Noise = Limit.Find(DesignKeys.Requirements.Noise)!, Life = Limit.Find(Limit.BatteryLife)!, Pieces = Limit.Find(Limit.Parts)!;

    /// <summary>From the electrodes to the converter, without what filters take.</summary>
    public double TotalGain => Design.Stages.Where(stage =>
        stage.Role == StageRole.Gain).Aggregate(Design.Amplifier.Gain, (gain, stage) => gain * stage.NominalGain);

    /// <summary>How long the battery lasts [s]; null without a battery.</summary>
    public double? LifeSeconds => Design.Supply.BatteryCapacity is { } capacity
        ? capacity.Coulombs * Design.Supply.UsableShare.Fraction / SupplyReport.TotalAmperes(Design)
        : null;

    /// <summary>The best that it can reach of some requirements, by bounds that need no network.</summary>
    public IEnumerable<(Limit Limit, double Best)> Bounds()
    {
        double half = Design.Supply.HalfRailVolts, g1 = Design.Amplifier.Gain, total = TotalGain;
        double margin = Math.Max(Design.Amplifier.OutputMargin.Volts, 0), signal = Design.LargestSignal.Volts;
        double pin = ConverterSupply.Swing(Design.Converter, Design.Supply.Lowest).Volts;

        // (V_s/2 − h)/G − V_sig is the offset that the first stage survives at best; every other node only lowers it.
        double survived = ((half - margin) / g1) - signal;
        survived = IsAcCoupled ? survived : Math.Min(survived, (pin / g1) - signal);
        yield return (Offset, Math.Max(0, survived));
        if (0 < signal)
        {
            yield return (Headroom, 20 * Math.Log10(Math.Min(pin, half) / (signal * total)));
        }

        // A tenth below: the band's edges are rounded off by the filters.
        yield return (Noise, 0.9 * TradeConstants.NoisePeakToPeak * NoiseBound);
        if (LifeSeconds is { } life)
        {
            yield return (Life, life);
        }

        yield return (Pieces, Parts);
    }
}
