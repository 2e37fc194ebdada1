using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Inputs;

namespace FrontEnd.Tests.Budgets;

/// <summary>The input network at dc a second time: without its capacitors, with pivoting, source by source.</summary>
internal static class PivotedDirect
{
    public static DirectLanes Of(Design design, InputModel model, BuiltParts built)
    {
        var network = new DirectNetwork(design, model, built);
        double[] offset = network.FromOffset(), amplifier = network.FromAmplifierBias();
        double[][] bias = [.. model.Buffers.Select(network.FromBias)], voltage = [.. model.Buffers.Select(network.FromOffsetVoltage)];
        return new DirectLanes(
            Output(model.Difference), Output(model.Mean), 0 <= model.Drive ? Output(model.Drive) : default,
            0 < model.Buffers.Count ? Output(model.BufferOutputs[0]) : default,
            1 < model.Buffers.Count ? Output(model.BufferOutputs[1]) : default);

        DirectAt Output(int output) => new(
            new(offset[output]), new(amplifier[output]), new(bias.Sum(from => Math.Abs(from[output]))),
            new(voltage.Sum(from => Math.Abs(from[output]))));
    }
}
