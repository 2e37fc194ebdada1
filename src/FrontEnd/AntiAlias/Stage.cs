using FrontEnd.Circuits;
using FrontEnd.Quantities;

namespace FrontEnd.AntiAlias;

/// <summary>A block between the differential amplifier and the converter.</summary>
public abstract record Stage
{
    /// <summary>"gain 2", "anti-alias 1" …; unique in the design.</summary>
    public string Name { get; init; } = "";

    /// <summary>The stage's op-amp; null for a passive section.</summary>
    public OpAmp? FittedOpAmp => this switch
    {
        GainStage gain => gain.OpAmp,
        RcSection rc => rc.OpAmp,
        SallenKeySection section => section.OpAmp,
        MultipleFeedbackSection section => section.OpAmp,
        TwinTNotch notch => notch.OpAmp,
        _ => throw new InvalidOperationException($"Stage {GetType().Name} is not handled."),
    };

    /// <summary>Gain at frequencies that the stage passes, by size, with ideal op-amps.</summary>
    public virtual double NominalGain => 1;

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);
    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>1 + Rf/Rg; 1 for a follower, which has no Rg.</summary>
    private protected static double NonInverting(Resistance feedback, Resistance? ground) => ground is { } rg ? 1 + (feedback / rg) : 1;
}

/// <summary>Non-inverting op-amp stage, 1 + Rf/Rg, with optional ac coupling in front and an optional capacitor across Rf.</summary>
public sealed record GainStage : Stage
{
    /// <summary>Series capacitor of the ac coupling; null where the stage is coupled for dc.</summary>
    public Capacitance? CouplingCapacitor { get; init; }

    /// <summary>From the op-amp's input to common, behind the coupling capacitor.</summary>
    public Resistance CouplingResistor { get; init; } = Resistance.FromMegohms(1);

    /// <summary>Rf; 0 makes a follower together with no Rg.</summary>
    public Resistance FeedbackResistor { get; init; }

    /// <summary>Rg; null makes a follower.</summary>
    public Resistance? GroundResistor { get; init; }

    /// <summary>Cf across Rf; null for none.</summary>
    public Capacitance? FeedbackCapacitor { get; init; }

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>1 + Rf/Rg.</summary>
    public override double NominalGain => NonInverting(FeedbackResistor, GroundResistor);
}

/// <summary>First-order low-pass: R, C and a follower; or R and C alone at the converter's pin.</summary>
public sealed record RcSection : Stage
{
    public Resistance R { get; init; } = Resistance.FromKilohms(10);
    public Capacitance C { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>The follower's op-amp; null for a passive section, allowed as the last block only.</summary>
    public OpAmp? OpAmp { get; init; } = OpAmp.MicropowerCmos;
}

/// <summary>Second-order Sallen–Key low-pass: R1 in–X, R2 X–P, C1 X–out, C2 P–common; with a follower, or with the gain K = 1 + Rf/Rg.</summary>
/// <remarks>With K = 3 − 1/Q all of R1, R2 and of C1, C2 may be equal: the equal-component form.</remarks>
public sealed record SallenKeySection : Stage
{
    public Resistance R1 { get; init; } = Resistance.FromKilohms(22);
    public Resistance R2 { get; init; } = Resistance.FromKilohms(22);
    public Capacitance C1 { get; init; } = Capacitance.FromNanofarads(150);
    public Capacitance C2 { get; init; } = Capacitance.FromNanofarads(68);

    /// <summary>Rf, from the output to the op-amp's − input; of no effect without Rg.</summary>
    public Resistance FeedbackResistor { get; init; }

    /// <summary>Rg, from the − input to common; null makes a follower.</summary>
    public Resistance? GroundResistor { get; init; }

    /// <summary>Rf + Rg, which the output drives; null for a follower.</summary>
    public Resistance? GainLoad => GroundResistor is { } rg ? FeedbackResistor + rg : null;

    /// <summary>K.</summary>
    public override double NominalGain => NonInverting(FeedbackResistor, GroundResistor);

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;
}

/// <summary>Second-order multiple-feedback low-pass: R1 in–X, R3 X–out, R2 X–(−), C1 X–common, C2 (−)–out; inverts, dc gain −R3/R1.</summary>
public sealed record MultipleFeedbackSection : Stage
{
    public Resistance R1 { get; init; } = Resistance.FromKilohms(22);
    public Resistance R2 { get; init; } = Resistance.FromKilohms(22);
    public Resistance R3 { get; init; } = Resistance.FromKilohms(22);
    public Capacitance C1 { get; init; } = Capacitance.FromNanofarads(220);
    public Capacitance C2 { get; init; } = Capacitance.FromNanofarads(47);

    /// <summary>R3/R1; with less than 1 mΩ for R1, which the network takes it for, of that.</summary>
    public override double NominalGain => R3.Ohms / Math.Max(1e-3, R1.Ohms);

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;
}
