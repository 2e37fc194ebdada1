using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Inputs;

namespace FrontEnd.Budgets;

/// <summary>What direct currents and voltages make at one place of the input network on each lane.</summary>
/// <param name="Offset">Per volt of electrode offset [V/V], of either sign.</param>
/// <param name="AmplifierBias">From the bias currents of the amplifier's two inputs, which draw alike [V], of either sign.</param>
/// <param name="BufferBias">From the bias currents of the electrodes' buffers, each by its size and added up [V].</param>
/// <param name="BufferOffset">From the buffers' offset voltages, likewise [V].</param>
internal readonly record struct DirectAt(
    Vector<double> Offset, Vector<double> AmplifierBias, Vector<double> BufferBias, Vector<double> BufferOffset)
{
    /// <summary>From all bias currents, by size [V].</summary>
    public Vector<double> Bias => Vector.Abs(AmplifierBias) + BufferBias;

    /// <summary>From everything but the electrodes' offset, by size [V].</summary>
    public Vector<double> Own => Bias + BufferOffset;
}

/// <summary>The input network at dc: what the electrodes' offset, the bias currents and the buffers' offset voltages do to the amplifier's
/// inputs, to the buffers' outputs and to the driven ground.</summary>
/// <param name="Difference">Of the amplifier's inputs.</param>
/// <param name="Mean">Of the amplifier's inputs, against common.</param>
/// <param name="Drive">The driven ground's output; nothing without one.</param>
/// <param name="FirstBuffer">Output of the first of the buffers that are there; nothing without one.</param>
/// <param name="SecondBuffer">Output of the second.</param>
internal readonly record struct DirectLanes(DirectAt Difference, DirectAt Mean, DirectAt Drive, DirectAt FirstBuffer, DirectAt SecondBuffer)
{
    /// <summary>Frequency that stands for dc [Hz]: so low that the largest capacitance conducts nothing beside the smallest leak, and not
    /// zero, so that a node which only capacitors reach has an equation.</summary>
    private const double DcHertz = 1e-40;

    /// <summary>Solves the input network at dc with the builds that stand on the lanes.</summary>
    public static DirectLanes At(InputLanes input, Design design, BuildLanes builds)
    {
        InputModel model = input.Model;
        input.Factor(new Vector<double>(DcHertz));
        return new DirectLanes(
            Solve(input, design, builds, model.Difference),
            Solve(input, design, builds, model.Mean),
            0 <= model.Drive ? Solve(input, design, builds, model.Drive) : default,
            0 < model.Buffers.Count ? Solve(input, design, builds, model.BufferOutputs[0]) : default,
            1 < model.Buffers.Count ? Solve(input, design, builds, model.BufferOutputs[1]) : default);
    }

    private static DirectAt Solve(InputLanes input, Design design, BuildLanes builds, int output)
    {
        InputModel model = input.Model;
        input.Solve(output);
        Vector<double> amplifier = input.Transfer(model.ActiveInputPort).Re
            + (design.EffectiveReferenceInputs * input.Transfer(model.ReferenceInputPort).Re), bias = default, voltage = default;
        for (int i = 0; i < model.Buffers.Count; i++)
        {
            bias += Vector.Abs(builds.BufferOpAmps[i].BiasCurrent * input.Transfer(model.Buffers[i].CurrentPorts[0]).Re);
            voltage += Vector.Abs(builds.BufferOpAmps[i].OffsetVoltage * input.Transfer(model.Buffers[i].VoltagePort).Re);
        }

        return new DirectAt(
            input.Admittance(InputLanes.Active).Re * input.Transfer(model.SignalPort).Re, builds.BiasCurrent * amplifier, bias, voltage);
    }
}
