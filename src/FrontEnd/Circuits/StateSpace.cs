using System.Numerics;
using FrontEnd.Networks;

namespace FrontEnd.Circuits;

/// <summary>dx/dt = A·x + B·u, y = C·x + D·u of a circuit.</summary>
/// <remarks>The states are voltages: of the capacitors, then of real op-amps ahead of their output resistances, where A0/(1 +
/// s·A0/(2π·GBW)) ends. Ideal op-amps have none.</remarks>
/// <param name="A">Row after row [1/s].</param>
/// <param name="B">[1/s].</param>
/// <param name="C">[V/V].</param>
/// <param name="D">What of a step gets through at once [V/V].</param>
internal sealed record StateSpace(double[] A, double[] B, double[] C, double D)
{
    public int Order => B.Length;

    /// <summary>gain/(1 + jf/bandwidth).</summary>
    public static StateSpace LowPass(double gain, double hertz)
    {
        double rate = 2 * Math.PI * hertz;
        return new([-rate], [rate], [gain], 0);
    }

    /// <summary>From the circuit's input to its output, with the circuit's real op-amps.</summary>
    /// <remarks>Capacitors and op-amps stand as sources of their voltages. The current that flows through a capacitor, over its capacitance,
    /// is its state's slope; an op-amp's is 2π·GBW times what is between its inputs less v/A0.</remarks>
    /// <exception cref="NetworkHasNoAnswer">Capacitors and sources alone make a loop, or a node hangs on nothing.</exception>
    public static StateSpace Of(Circuit circuit) => new StateSpaceMaker(circuit, isIdeal: false).Make();

    /// <summary>The same with op-amps that hold their inputs equal at once.</summary>
    /// <exception cref="NetworkHasNoAnswer">As there.</exception>
    public static StateSpace Ideal(Circuit circuit) => new StateSpaceMaker(circuit, isIdeal: true).Make();

    /// <summary>The eigenvalues of A [1/s].</summary>
    public IReadOnlyList<Complex> Poles() => Order == 0 ? [] :
        [.. MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(Order, Order, (i, j) => A[(i * Order) + j]).Evd().EigenValues];

    /// <summary>x of a constant input of 1 V, long after it came.</summary>
    /// <exception cref="NetworkHasNoAnswer">Something integrates without end.</exception>
    public double[] Settled()
    {
        var system = new LaneSystem(Order, 1);
        for (int i = 0; i < Order; i++)
        {
            for (int j = 0; j < Order; j++)
            {
                system.Add(i, j, new Vector<double>(A[(i * Order) + j]));
            }

            system.AddRight(i, 0, new Vector<double>(-B[i]));
        }

        system.Solve();
        return [.. Enumerable.Range(0, Order).Select(i => system.Value(i, 0)[0])];
    }
}

/// <summary>Works out a circuit's <see cref="StateSpace"/>.</summary>
internal sealed class StateSpaceMaker
{
    private readonly Circuit _circuit;
    private readonly IdealNodes _nodes;
    private readonly CircuitPart[] _capacitors;
    private readonly bool _isIdeal;
    private readonly int _states;
    private readonly LaneSystem _system;

    public StateSpaceMaker(Circuit circuit, bool isIdeal)
    {
        (_circuit, _nodes, _isIdeal) = (circuit, new IdealNodes(circuit), isIdeal);
        _capacitors = [.. circuit.Parts.Where(part =>
            part is { Kind: PartKind.Capacitor, NetworkValue: > 0 } && _nodes.Of(part.From) != _nodes.Of(part.To))];
        _states = _capacitors.Length + (isIdeal ? 0 : circuit.OpAmps.Count);

        // Unknown: the nodes' voltages, then the capacitors' currents. Right sides: each state's volt, then the input's.
        _system = new LaneSystem(_nodes.Count + _capacitors.Length, _states + 1);
    }

    public StateSpace Make()
    {
        foreach (CircuitPart part in _circuit.Parts.Where(part => part.Kind == PartKind.Resistor && !part.IsJoint))
        {
            Conduct(_nodes.Of(part.From), _nodes.Of(part.To), 1 / part.NetworkValue);
        }

        for (int k = 0; k < _circuit.OpAmps.Count; k++)
        {
            AddOpAmp(_circuit.OpAmps[k], _capacitors.Length + k);
        }

        for (int k = 0; k < _capacitors.Length; k++)
        {
            AddCapacitor(_capacitors[k], k);
        }

        _system.Solve();
        double[] a = new double[_states * _states], b = new double[_states];
        for (int state = 0; state < _states; state++)
        {
            for (int side = 0; side < _states; side++)
            {
                a[(state * _states) + side] = Slope(state, side);
            }

            b[state] = Slope(state, _states);
        }

        int output = _nodes.Of(_circuit.Output);
        return new StateSpace(a, b, [.. Enumerable.Range(0, _states).Select(side => Voltage(output, side))], Voltage(output, _states));
    }

    private static Vector<double> Lanes(double value) => new(value);

    private double Slope(int state, int side)
    {
        if (state < _capacitors.Length)
        {
            return _system.Value(_nodes.Count + state, side)[0] / _capacitors[state].NetworkValue;
        }

        CircuitOpAmp opAmp = _circuit.OpAmps[state - _capacitors.Length];
        double between = Voltage(_nodes.Of(opAmp.Plus), side) - Voltage(_nodes.Of(opAmp.Minus), side);
        return 2 * Math.PI * opAmp.Model.GainBandwidth.Hertz * (between - (side == state ? 1 / opAmp.Model.DcGain : 0));
    }

    private double Voltage(int node, int side) => node switch
    {
        IdealNodes.Common => 0,
        IdealNodes.Input => side == _states ? 1 : 0,
        _ => _system.Value(node, side)[0],
    };

    /// <summary>True for a node whose row is Kirchhoff's: an op-amp without output resistance holds its own.</summary>
    private bool IsFree(int node) =>
        0 <= node && _nodes.Driver[node] is var driver
            && (driver < 0 || (!_isIdeal && 0 < _circuit.OpAmps[driver].Model.OutputResistance.Ohms));

    private void Conduct(int from, int to, double siemens)
    {
        foreach ((int node, int other) in new[] { (from, to), (to, from) })
        {
            if (from != to && IsFree(node))
            {
                _system.Add(node, node, Lanes(siemens));
                _system.Add(node, other, Lanes(-siemens));
                _system.AddRight(other == IdealNodes.Input ? node : -1, _states, Lanes(siemens));
            }
        }
    }

    private void AddOpAmp(CircuitOpAmp opAmp, int state)
    {
        int output = _nodes.Of(opAmp.Output);
        if (_isIdeal)
        {
            Difference(output, _nodes.Of(opAmp.Plus), _nodes.Of(opAmp.Minus));
            return;
        }

        double siemens = IsFree(output) ? 1 / opAmp.Model.OutputResistance.Ohms : 1;
        _system.Add(output, output, Lanes(siemens));
        _system.AddRight(output, state, Lanes(siemens));
    }

    private void AddCapacitor(CircuitPart part, int state)
    {
        int from = _nodes.Of(part.From), to = _nodes.Of(part.To), current = _nodes.Count + state;
        _system.Add(IsFree(from) ? from : -1, current, Vector<double>.One);
        _system.Add(IsFree(to) ? to : -1, current, -Vector<double>.One);

        Difference(current, from, to);
        _system.AddRight(current, state, Vector<double>.One);
    }

    /// <summary>v(left) − v(right) on the left side of a row; the input's volt goes to the right.</summary>
    private void Difference(int row, int left, int right)
    {
        _system.Add(row, left, Vector<double>.One);
        _system.Add(row, right, -Vector<double>.One);
        _system.AddRight(row, _states, Lanes((right == IdealNodes.Input ? 1 : 0) - (left == IdealNodes.Input ? 1 : 0)));
    }
}
