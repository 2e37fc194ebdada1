using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Quantities;

namespace FrontEnd.Budgets;

/// <summary>Series resistance fitted in every kind of lead on each lane [Ω], and the dc that a fault drives through it at the highest
/// voltage of the supply [A].</summary>
/// <param name="Active">Active lead: its protection resistor, or the skin resistor of the buffer at the electrode.</param>
/// <param name="Reference">The same in the reference lead.</param>
/// <param name="Ground">The ground electrode's; null without one.</param>
internal readonly record struct SafetyLanes(Vector<double> Active, Vector<double> Reference, Vector<double>? Ground)
{
    /// <summary>Each build's own resistors.</summary>
    public static SafetyLanes Of(Design design, BuildLanes builds)
    {
        // The network has a short circuit of 1 mΩ where no resistor is fitted; here there is none.
        Resistance series = design.Input.SeriesResistor;
        int buffer = 0;
        return new SafetyLanes(
            design.Electrodes.ActiveBuffer is null
                ? Fitted(builds.ActiveSiemens, series)
                : Vector<double>.One / builds.SkinSiemens[buffer++],
            design.Electrodes.ReferenceBuffer is null
                ? Fitted(builds.ReferenceSiemens, series)
                : Vector<double>.One / builds.SkinSiemens[buffer],
            design.Electrodes.Ground is null ? null : Fitted(builds.GroundSiemens, design.GroundDrive.SeriesResistor));

        static Vector<double> Fitted(Vector<double> siemens, Resistance nominal) =>
            0 < nominal.Ohms ? Vector<double>.One / siemens : Vector<double>.Zero;
    }

    /// <summary>The least that the design's tolerances allow in every lead: what it is judged with.</summary>
    public static SafetyLanes Least(Design design)
    {
        double least = 1 - design.Input.ResistorTolerance.Fraction, ground = 1 - design.GroundDrive.ResistorTolerance.Fraction,
            series = design.Input.SeriesResistor.Ohms;
        return new SafetyLanes(
            new((design.Electrodes.ActiveBuffer?.SkinResistor.Ohms ?? series) * least),
            new((design.Electrodes.ReferenceBuffer?.SkinResistor.Ohms ?? series) * least),
            design.Electrodes.Ground is null ? null : new(design.GroundDrive.SeriesResistor.Ohms * ground));
    }

    /// <summary>Dc through the lead with the least resistance; infinite where one has none.</summary>
    public Vector<double> FaultCurrent(double highestVolts)
    {
        var measuring = Vector.Min(Active, Reference);
        return Current(highestVolts, Ground is { } ground ? Vector.Min(measuring, ground) : measuring);
    }

    /// <summary>Dc through one lead.</summary>
    public static Vector<double> Current(double highestVolts, Vector<double> ohms) => new Vector<double>(highestVolts) / ohms;
}
