using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Electrodes;

namespace FrontEnd.Budgets;

/// <summary>The input network at dc: what the electrodes' offset and the bias currents do to the amplifier's inputs and to the driven ground.</summary>
/// <param name="OffsetDifference">Per volt of electrode offset: difference of the amplifier's inputs [V/V]; mean and driven ground likewise.</param>
/// <param name="BiasDifference">From the bias currents: difference of the amplifier's inputs [V]; mean and driven ground likewise.</param>
internal readonly record struct DirectLanes(
    Vector<double> OffsetDifference, Vector<double> OffsetMean, Vector<double> OffsetDrive, Vector<double> BiasDifference, Vector<double> BiasMean, Vector<double> BiasDrive)
{
    /// <summary>Frequency that stands for dc [Hz]: so low that the largest capacitance conducts nothing beside the smallest leak, and not zero, so that a node which only capacitors reach has an equation.</summary>
    private const double DcHertz = 1e-40;

    /// <summary>What an electrode that is off still conducts: nothing beside any leak [Ω].</summary>
    private const double OpenOhms = 1e18;

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

    /// <summary>The same with an electrode come off, as <see cref="InputLanes"/> numbers them.</summary>
    public static DirectLanes WithOpen(InputLanes input, Design design, BuildLanes builds, int electrode)
    {
        Vector<double>[] factor = [builds.ActiveFactor, builds.ReferenceFactor, builds.GroundFactor];
        Electrode? open = electrode switch
        {
            InputLanes.Active => design.Electrodes.Active,
            InputLanes.Reference => design.Electrodes.Reference,
            _ => design.Electrodes.Ground,
        };
        factor[electrode] = new(OpenOhms / Math.Max(1e-3, open?.DcResistance.Ohms ?? 1));
        input.SetElectrodes(factor[0], factor[1], factor[2]);
        DirectLanes direct = At(input, design, builds);
        input.SetElectrodes(builds.ActiveFactor, builds.ReferenceFactor, builds.GroundFactor);
        return direct;
    }

    private static (Vector<double> Offset, Vector<double> Bias) Solve(InputLanes input, Design design, BuildLanes builds, int output)
    {
        InputModel model = input.Model;
        input.Solve(output);
        Vector<double> bias = input.Transfer(model.ActiveInputPort).Re + (design.EffectiveReferenceInputs * input.Transfer(model.ReferenceInputPort).Re);
        return (input.Admittance(InputLanes.Active).Re * input.Transfer(model.SignalPort).Re, builds.BiasCurrent * bias);
    }
}
