using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Circuits;

/// <summary>A circuit at dc with ideal op-amps: gain from its input to its nodes, and what its op-amps' offset voltages and bias currents
/// make there.</summary>
/// <remarks>
/// Capacitors are open. The bias current of each input flows through the dc resistances that the nodes leave it; a follower's − input hangs
/// on its output, where a current does nothing. Offset voltages and bias currents add up by size: every sign the worst. Not safe for
/// several threads at once.
/// </remarks>
internal sealed class CircuitDc
{
    private readonly IdealNodes _nodes;
    private readonly (int From, int To, CircuitPart Part)[] _resistors;
    private readonly DcOpAmp[] _opAmps;
    private readonly LaneSystem _system;
    private readonly Vector<double>[] _offset, _bias;
    private readonly double[] _scale;

    public CircuitDc(Circuit circuit)
    {
        _nodes = new IdealNodes(circuit);
        _resistors =
        [
            .. circuit.Parts.Where(part => part.Kind == PartKind.Resistor).Select(part =>
                (_nodes.Of(part.From), _nodes.Of(part.To), part)).Where(one => one.Item1 != one.Item2),
        ];
        _opAmps = [.. circuit.OpAmps.Select(opAmp => new DcOpAmp(opAmp, opAmp.Key + ".offset-voltage", opAmp.Key + ".bias-current",
            _nodes.Of(opAmp.Output), _nodes.Of(opAmp.Plus), _nodes.Of(opAmp.Minus)))];
        _system = new LaneSystem(_nodes.Count, 1 + (3 * circuit.OpAmps.Count));
        _scale = _nodes.LargestOhms(circuit);
        (_offset, _bias) = (new Vector<double>[circuit.OpAmps.Count], new Vector<double>[circuit.OpAmps.Count]);
    }

    /// <summary>The values of nominal parts.</summary>
    public static Func<string, double, Vector<double>> Nominal { get; } = (_, value) => new Vector<double>(value);

    /// <summary>Solves for several builds at once.</summary>
    /// <param name="part">The builds' values of a part by its role and its nominal value, of an op-amp's dc error by "opamp.offset-voltage"
    /// or "opamp.bias-current" [SI].</param>
    public CircuitDc Solve(Func<string, double, Vector<double>> part)
    {
        _system.Clear();
        foreach ((int from, int to, CircuitPart resistor) in _resistors)
        {
            Stamp(from, to, part(resistor.Role, resistor.Value));
        }

        for (int i = 0; i < _opAmps.Length; i++)
        {
            DcOpAmp one = _opAmps[i];
            _offset[i] = Vector.Abs(part(one.OffsetKey, one.OpAmp.Model.OffsetVoltage.Volts));
            _bias[i] = Vector.Abs(part(one.BiasKey, one.OpAmp.Model.BiasCurrent.Amperes));
            Constrain(i, one.Output, one.Plus, one.Minus);
        }

        _system.Solve();
        return this;
    }

    /// <summary>Gain from the input to a node, by size.</summary>
    public Vector<double> Gain(string node) => Size(node, 0);

    /// <summary>What the circuit's own op-amps make at a node, each by its size and all added up [V].</summary>
    public Vector<double> Own(string node)
    {
        Vector<double> sum = default;
        for (int i = 0; i < _offset.Length; i++)
        {
            sum += (_offset[i] * Size(node, 1 + (3 * i))) + (_bias[i] * (Size(node, 2 + (3 * i)) + Size(node, 3 + (3 * i))));
        }

        return sum;
    }

    private void Stamp(int from, int to, Vector<double> ohms)
    {
        Row(from, to, ohms);
        Row(to, from, ohms);
    }

    /// <summary>Kirchhoff's row times the node's largest resistance: whole ratios of parts then stay whole numbers.</summary>
    private void Row(int node, int other, Vector<double> ohms)
    {
        if (!_nodes.IsFree(node))
        {
            return;
        }

        Vector<double> g = new Vector<double>(_scale[node]) / ohms;
        _system.Add(node, node, g);
        _system.Add(node, other, -g);
        if (other == IdealNodes.Input)
        {
            _system.AddRight(node, 0, g);
        }
    }

    /// <summary>v(−) − v(+) = offset in the output's row; the inputs' currents in their own.</summary>
    private void Constrain(int opAmp, int output, int plus, int minus)
    {
        int first = 1 + (3 * opAmp);
        _system.Add(output, minus, Vector<double>.One);
        _system.Add(output, plus, -Vector<double>.One);
        _system.AddRight(output, 0, new Vector<double>((plus == IdealNodes.Input ? 1.0 : 0) - (minus == IdealNodes.Input ? 1.0 : 0)));
        _system.AddRight(output, first, Vector<double>.One);
        Current(plus, first + 1);
        Current(minus, first + 2);
    }

    private void Current(int node, int side)
    {
        if (_nodes.IsFree(node))
        {
            _system.AddRight(node, side, new Vector<double>(_scale[node]));
        }
    }

    private Vector<double> Size(string node, int side) => _nodes.Of(node) switch
    {
        IdealNodes.Common => default,
        IdealNodes.Input => new Vector<double>(side == 0 ? 1 : 0),
        int unknown => Vector.Abs(_system.Value(unknown, side)),
    };

    /// <summary>An op-amp with the keys of its dc errors and the numbers of its nodes.</summary>
    private sealed record DcOpAmp(CircuitOpAmp OpAmp, string OffsetKey, string BiasKey, int Output, int Plus, int Minus);
}
