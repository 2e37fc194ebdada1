using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Inputs;

namespace FrontEnd.Budgets;

/// <summary>The input network at dc: what the electrodes' offset and the bias currents do to the amplifier's inputs and to the driven
/// ground.</summary>
/// <param name="OffsetDifference">Per volt of electrode offset: difference of the amplifier's inputs [V/V]; mean and driven ground
/// likewise.</param>
/// <param name="BiasDifference">From the bias currents: difference of the amplifier's inputs [V]; mean and driven ground likewise.</param>
internal readonly record struct DirectLanes(
    Vector<double> OffsetDifference, Vector<double> OffsetMean, Vector<double> OffsetDrive, Vector<double> BiasDifference,
    Vector<double> BiasMean, Vector<double> BiasDrive)
{
    /// <summary>Frequency that stands for dc [Hz]: so low that the largest capacitance conducts nothing beside the smallest leak, and not
    /// zero, so that a node which only capacitors reach has an equation.</summary>
    private const double DcHertz = 1e-40;

    /// <summary>What an electrode that is off still conducts: nothing beside any leak [S].</summary>
    private const double OpenSiemens = 1e-18;

    /// <summary>Solves the input network at dc with the builds that stand on the lanes.</summary>
    public static DirectLanes At(InputLanes input, Design design, BuildLanes builds)
    {
        InputModel model = input.Model;
        input.Factor(new Vector<double>(DcHertz));
        (Vector<double> offsetDifference, Vector<double> biasDifference) = Solve(input, design, builds, model.Difference);
        (Vector<double> offsetMean, Vector<double> biasMean) = Solve(input, design, builds, model.Mean);
        (Vector<double> offsetDrive, Vector<double> biasDrive) = 0 <= model.Drive ? Solve(input, design, builds, model.Drive) : default;
        return new DirectLanes(offsetDifference, offsetMean, offsetDrive, biasDifference, biasMean, biasDrive);
    }

    /// <summary>One build, the same on all lanes, with pivoting: a short circuit beside the amplifier's leaks spans fifteen
    /// decades.</summary>
    /// <param name="design">The design.</param>
    /// <param name="model">Its input network, with the build in it.</param>
    /// <param name="built">The build.</param>
    /// <param name="open">An electrode that has come off, as <see cref="InputLanes"/> numbers them; −1 for none.</param>
    public static DirectLanes Of(Design design, InputModel model, BuiltParts built, int open = -1)
    {
        ElectrodeSet set = design.Electrodes;
        double active = Conductance(set.Active, built.ActiveFactor, open == InputLanes.Active), bias = design.Amplifier.BiasCurrent.Amperes;
        double[] slots = new double[model.Program.Slots];
        slots[model.ActiveElectrode] = active;
        slots[model.ReferenceElectrode] = Conductance(set.Reference, built.ReferenceFactor, open == InputLanes.Reference);
        if (set.Ground is { } ground)
        {
            slots[model.GroundElectrode] = Conductance(ground, built.GroundFactor, open == InputLanes.Ground);
        }

        if (0 <= model.DriveSlot)
        {
            slots[model.DriveSlot] = 1 / design.GroundDrive.DcGain;
        }

        double[] offset = model.Program.SolveDirectCurrent(slots, [(model.SignalPort, active)]);
        double[] fromBias = model.Program.SolveDirectCurrent(
            slots, [(model.ActiveInputPort, bias), (model.ReferenceInputPort, bias * design.EffectiveReferenceInputs)]);
        return new DirectLanes(
            new(offset[model.Difference]), new(offset[model.Mean]), new(Drive(offset)),
            new(fromBias[model.Difference]), new(fromBias[model.Mean]), new(Drive(fromBias)));

        double Drive(double[] outputs) => 0 <= model.Drive ? outputs[model.Drive] : 0;
    }

    private static double Conductance(Electrode electrode, double factor, bool isOpen) =>
        isOpen ? OpenSiemens : 1 / Math.Max(1e-3, electrode.DcResistance.Ohms * factor);

    private static (Vector<double> Offset, Vector<double> Bias) Solve(InputLanes input, Design design, BuildLanes builds, int output)
    {
        InputModel model = input.Model;
        input.Solve(output);
        Vector<double> bias = input.Transfer(model.ActiveInputPort).Re
            + (design.EffectiveReferenceInputs * input.Transfer(model.ReferenceInputPort).Re);
        return (input.Admittance(InputLanes.Active).Re * input.Transfer(model.SignalPort).Re, builds.BiasCurrent * bias);
    }
}
