using FrontEnd.Quantities;

namespace FrontEnd.Amplifier;

/// <summary>What stands between the electrodes' leads and the differential amplifier.</summary>
public sealed record InputNetwork
{
    /// <summary>Each lead to the amplifier's common: cable shield, protection parts.</summary>
    public Capacitance LeadToCommon { get; init; } = Capacitance.FromPicofarads(10);

    /// <summary>g: share of lead-to-common that a driven shield ties to the lead's own potential.</summary>
    public Ratio DrivenShield { get; init; }

    /// <summary>Protection resistor in each of the two measuring leads. A resistor counts only if it is fitted: none unless
    /// given.</summary>
    public Resistance SeriesResistor { get; init; }

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>Capacitor from each amplifier input to common.</summary>
    public Capacitance ShuntCapacitor { get; init; } = Capacitance.FromPicofarads(22);

    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Capacitor between the amplifier's inputs.</summary>
    public Capacitance DifferentialCapacitor { get; init; }

    /// <summary>Bias resistor from each amplifier input to common; null for none.</summary>
    public Resistance? BiasResistor { get; init; }

    /// <summary>N: inputs on the reference lead; null where it follows from channels and the reference buffer.</summary>
    public int? ReferenceInputs { get; init; }
}
