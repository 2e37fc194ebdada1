using System.Numerics;
using FrontEnd.Designs;

namespace FrontEnd.Budgets;

/// <summary>Series resistance fitted in every kind of lead on each lane [Ω], and the dc that a fault drives through it at the highest
/// voltage of the supply [A].</summary>
/// <param name="Active">Active lead: its protection resistor, or the skin resistor of the buffer at the electrode.</param>
/// <param name="Reference">The same in the reference lead.</param>
/// <param name="Ground">The ground electrode's; null without one.</param>
internal readonly record struct SafetyLanes(Vector<double> Active, Vector<double> Reference, Vector<double>? Ground)
{
    /// <summary>Conductance of all measuring leads together [S], where their resistors are not alike; null where all channels' are.</summary>
    public Vector<double>? Measuring { get; init; }

    /// <summary>Each build's own resistors.</summary>
    public static SafetyLanes Of(Design design, BuildLanes builds)
    {
        int buffer = 0;
        return new SafetyLanes(
            design.Electrodes.ActiveBuffer is null
                ? Vector<double>.One / builds.ActiveSiemens
                : Vector<double>.One / builds.SkinSiemens[buffer++],
            design.Electrodes.ReferenceBuffer is null
                ? Vector<double>.One / builds.ReferenceSiemens
                : Vector<double>.One / builds.SkinSiemens[buffer],
            design.Electrodes.Ground is null ? null : Vector<double>.One / builds.GroundSiemens);
    }

    /// <summary>The least that the design's tolerances allow in every lead: what it is judged with.</summary>
    public static SafetyLanes Least(Design design)
    {
        double least = 1 - design.Input.ResistorTolerance.Fraction, ground = 1 - design.GroundDrive.ResistorTolerance.Fraction,
            series = design.Input.SeriesResistor.Ohms;
        Vector<double>? groundOhms = design.Electrodes.Ground is null ? null : new(design.GroundDrive.SeriesResistor.Ohms * ground);
        if (design.ChannelList.Count == 0)
        {
            return new SafetyLanes(Of(design.Electrodes.ActiveBuffer), Of(design.Electrodes.ReferenceBuffer), groundOhms);
        }

        // Among channels of which each has its own the least counts; a minus electrode is the reference of its channel.
        double active = double.PositiveInfinity, reference = double.PositiveInfinity, siemens = 0;
        foreach (MeasuringLead lead in design.Leads)
        {
            double ohms = Of(lead.Buffer)[0];
            siemens += 1 / ohms;
            (active, reference) = lead.Channel is null || lead.IsMinus ? (active, Math.Min(reference, ohms)) : (Math.Min(active, ohms), reference);
        }

        return new SafetyLanes(new(active), new(reference), groundOhms) { Measuring = new(siemens) };

        Vector<double> Of(Electrodes.ElectrodeBuffer? buffer) => new((buffer?.SkinResistor.Ohms ?? series) * least);
    }

    /// <summary>Dc through the lead with the least resistance; infinite where one has none.</summary>
    public Vector<double> FaultCurrent(double highestVolts)
    {
        var measuring = Vector.Min(Active, Reference);
        return Current(highestVolts, Ground is { } ground ? Vector.Min(measuring, ground) : measuring);
    }

    /// <summary>Dc through the wearer with all measuring leads at the highest voltage: back through the ground lead in a box that floats,
    /// through the earth where the common is earthed or wired; infinite where nothing limits it. Null where a floating box has no ground
    /// electrode: there is no known way back.</summary>
    public Vector<double>? SharedFault(Design design)
    {
        Vector<double> highest = new(design.Supply.Highest.Volts),
            siemens = Measuring ?? (new Vector<double>(design.Channels) / Active) + (Vector<double>.One / Reference);
        return design.Mains.CommonIsEarthed ? highest * siemens : highest / ((Vector<double>.One / siemens) + Ground);
    }

    /// <summary>Resistance that each measuring lead needs to keep a current below a limit at −tolerance, whether one lead or all of them
    /// carry it [Ω]. In a box that floats the ground lead carries what all of them share, and one lead's own current decides.</summary>
    public static double NeededInLead(Design design, double amperes)
    {
        int sharing = design.Mains.CommonIsEarthed ? design.Channels + 1 : 1;
        return sharing * design.Supply.Highest.Volts / amperes / (1 - design.Input.ResistorTolerance.Fraction);
    }

    /// <summary>Dc through one lead.</summary>
    public static Vector<double> Current(double highestVolts, Vector<double> ohms) => new Vector<double>(highestVolts) / ohms;
}
