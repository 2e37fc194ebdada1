using FrontEnd.Designs;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>Dc at an output [V], and whether its limit holds it there.</summary>
internal readonly record struct HeldOutput(double Volts, bool IsHeld);

/// <summary>What stands at the input network at dc with an electrode off, for one choice of signs [V].</summary>
/// <param name="Active">The amplifier's input of the active lead.</param>
/// <param name="Reference">The other one.</param>
/// <param name="Drive">The driven ground's output; 0 without one.</param>
/// <param name="Buffers">Outputs of the electrodes' buffers that are there.</param>
internal sealed record OpenInputDc(double Active, double Reference, HeldOutput Drive, HeldOutput[] Buffers);

/// <summary>The input network at dc with an electrode off. Its inputs hang on leaks, and bias currents take them far; nothing goes beyond
/// the supply: the amplifier's and the buffers' inputs are held at the rails, outputs at their swing.</summary>
/// <remarks>
/// A limiter is a current (at an input) or a source in the constraint (of an output) that is just large enough to hold its node. Which of
/// them act is found by letting that of the node that lies farthest beyond act next, until none lies beyond.
/// </remarks>
internal sealed class OpenInput
{
    private const double Slack = 1e-9;

    private readonly Func<double[], double>[] _read;
    private readonly double[] _limit;

    /// <summary>Volts at a limited node per unit at a limiter's port, by node and limiter.</summary>
    private readonly double[][] _response;

    /// <summary>What each source makes at the limited nodes; the first keeps its sign, the others may have either.</summary>
    private readonly double[][] _sources;

    private readonly int _buffers;
    private readonly bool _isDriven;

    public OpenInput(Design design, InputModel model, BuiltParts built, int electrode)
    {
        var network = new DirectNetwork(design, model, built, electrode);
        double far = design.Supply.FarRailVolts;
        List<(Func<double[], double> Read, int Port, double Limit)> nodes =
        [
            (outputs => outputs[model.Mean] + (outputs[model.Difference] / 2), model.ActiveInputPort, far),
            (outputs => outputs[model.Mean] - (outputs[model.Difference] / 2), model.ReferenceInputPort, far),
        ];
        _buffers = model.Buffers.Count;
        for (int i = 0; i < _buffers; i++)
        {
            int output = model.BufferOutputs[i];
            nodes.Add((outputs => outputs[output], model.Buffers[i].VoltagePort, NodeSwing.Of(design, model.Buffers[i].OpAmp.Model)));
        }

        for (int i = 0; i < _buffers; i++)
        {
            int input = model.BufferInputs[i];
            nodes.Add((outputs => outputs[input], model.Buffers[i].CurrentPorts[0], far));
        }

        _isDriven = 0 <= model.Drive;
        if (_isDriven)
        {
            nodes.Add((outputs => outputs[model.Drive], model.DrivePort, NodeSwing.Drive(design)));
        }

        _read = [.. nodes.Select(node => node.Read)];
        _limit = [.. nodes.Select(node => Math.Max(0, node.Limit))];
        _response = [.. nodes.Select(node => Read(network.From(node.Port)))];
        double offset = design.Electrodes.Offset.Volts;
        _sources =
        [
            Read(network.FromAmplifierBias()),
            [.. Read(network.FromOffset()).Select(per => per * offset)],
            .. model.Buffers.Select(buffer => Read(network.FromBias(buffer))),
            .. model.Buffers.Select(buffer => Read(network.FromOffsetVoltage(buffer))),
        ];
    }

    /// <summary>What stands there for every choice of the sources' signs.</summary>
    public IEnumerable<OpenInputDc> All()
    {
        for (int signs = 0; signs < 1 << (_sources.Length - 1); signs++)
        {
            var free = (double[])_sources[0].Clone();
            for (int source = 1; source < _sources.Length; source++)
            {
                for (int node = 0; node < free.Length; node++)
                {
                    free[node] += (signs >> (source - 1) & 1) == 0 ? _sources[source][node] : -_sources[source][node];
                }
            }

            double[] at = Limited(free);
            yield return new OpenInputDc(at[0], at[1], _isDriven ? Held(at, at.Length - 1) : default,
                [.. Enumerable.Range(2, _buffers).Select(node => Held(at, node))]);
        }
    }

    private HeldOutput Held(double[] at, int node) => new(at[node], _limit[node] * (1 - Slack) <= Math.Abs(at[node]));

    private double[] Read(double[] outputs) => [.. _read.Select(read => read(outputs))];

    /// <summary>Voltages at the limited nodes from those without limiters.</summary>
    private double[] Limited(double[] free)
    {
        var acting = new List<int>();
        var at = (double[])free.Clone();
        while (true)
        {
            // A node that its own limiter cannot move is held by another one.
            int[] beyond = [.. Enumerable.Range(0, at.Length).Where(node =>
                !acting.Contains(node) && _response[node][node] != 0 && _limit[node] * (1 + Slack) < Math.Abs(at[node]))];
            if (beyond.Length == 0)
            {
                break;
            }

            acting.Add(beyond.MaxBy(node => Math.Abs(at[node]) - _limit[node]));
            Hold(free, at, acting);
        }

        for (int node = 0; node < at.Length; node++)
        {
            at[node] = Math.Clamp(at[node], -_limit[node], _limit[node]);
        }

        return at;
    }

    /// <summary>Holds some nodes at their limits, on the side on which they are, and works out the others.</summary>
    private void Hold(double[] free, double[] at, List<int> acting)
    {
        var solver = new DenseSolver(acting.Count);
        for (int row = 0; row < acting.Count; row++)
        {
            int node = acting[row];
            solver.RightSide[row] = (Math.Sign(at[node]) * _limit[node]) - free[node];
            for (int column = 0; column < acting.Count; column++)
            {
                solver.Add(row, column, _response[acting[column]][node]);
            }
        }

        solver.Solve();
        for (int node = 0; node < at.Length; node++)
        {
            at[node] = free[node];
            for (int i = 0; i < acting.Count; i++)
            {
                at[node] += solver.Solution[i].Real * _response[acting[i]][node];
            }
        }
    }
}
