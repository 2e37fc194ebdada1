using FrontEnd.Designs;

namespace FrontEnd.Inputs;

/// <summary>What stands in the two leads of one device and how large its electrodes are: the values that a tolerance or a mismatch leaves
/// open.</summary>
/// <param name="ActiveOhms">Protection resistor in the active lead [Ω].</param>
/// <param name="ReferenceOhms">The same in the reference lead.</param>
/// <param name="ActiveFarads">Shunt capacitor at the active input [F].</param>
/// <param name="ReferenceFarads">The same at the reference input.</param>
/// <param name="ActiveBiasOhms">Bias resistor at the active input [Ω]; 0 where there is none.</param>
/// <param name="ReferenceBiasOhms">The same at the reference input.</param>
/// <param name="ActiveFactor">The active electrode's impedance over its nominal one.</param>
/// <param name="ReferenceFactor">The same for the reference electrode.</param>
/// <param name="GroundFactor">The same for the ground electrode.</param>
internal sealed record BuiltParts(
    double ActiveOhms, double ReferenceOhms, double ActiveFarads, double ReferenceFarads, double ActiveBiasOhms, double ReferenceBiasOhms,
    double ActiveFactor, double ReferenceFactor, double GroundFactor)
{
    /// <summary>The mains around the device as the design gives it, for the driven ground's margin; null where it is the evaluated design's
    /// own.</summary>
    public Interference.Mains? NominalMains { get; init; }

    /// <summary>What the active lead couples to the mains over the design's lead-to-mains capacitance; the leads of a design are alike, those
    /// of one build are not.</summary>
    public double ActiveLeadFactor { get; init; } = 1;

    /// <summary>The same for the reference lead.</summary>
    public double ReferenceLeadFactor { get; init; } = 1;

    /// <summary>Active lead at +tolerance, reference lead at −tolerance, electrodes apart by the mismatch: what a design is judged
    /// with.</summary>
    public static BuiltParts Worst(Design design) => Signed(design, 1, 1, 1);

    /// <summary>Leads and electrodes apart by tolerances and mismatch, each with a sign: +1 for the larger value in the active lead, −1 for
    /// the smaller.</summary>
    public static BuiltParts Signed(Design design, int mismatch, int resistors, int capacitors)
    {
        double r = design.Input.SeriesResistor.Ohms, dr = resistors * design.Input.ResistorTolerance.Fraction;
        double c = design.Input.ShuntCapacitor.Farads, dc = capacitors * design.Input.CapacitorTolerance.Fraction;
        double bias = design.Input.BiasResistor?.Ohms ?? 0, half = mismatch * design.Electrodes.EffectiveMismatch / 2;
        return new BuiltParts(r * (1 + dr), r * (1 - dr), c * (1 + dc), c * (1 - dc), bias, bias, 1 + half, 1 - half, 1);
    }

    /// <summary>Every part and electrode at its nominal value.</summary>
    public static BuiltParts Balanced(Design design)
    {
        double r = design.Input.SeriesResistor.Ohms, c = design.Input.ShuntCapacitor.Farads, bias = design.Input.BiasResistor?.Ohms ?? 0;
        return new BuiltParts(r, r, c, c, bias, bias, 1, 1, 1);
    }

    /// <summary>These parts with another set's reference lead and reference electrode.</summary>
    public BuiltParts WithReferenceOf(BuiltParts other) => this with
    {
        ReferenceOhms = other.ReferenceOhms, ReferenceFarads = other.ReferenceFarads, ReferenceBiasOhms = other.ReferenceBiasOhms,
        ReferenceFactor = other.ReferenceFactor, ReferenceLeadFactor = other.ReferenceLeadFactor,
    };
}
