using FrontEnd.Circuits;

namespace FrontEnd.Simulation;

/// <summary>A linear block of the path in equal steps of time, its input drawn from one to the next as a parabola through the last three values.</summary>
/// <remarks>u = u(t) + s·∇u + s(s − 1)/2·∇²u within a step, s from 0 to 1; the step of the states is exact for such an input: the exponential of the block with
/// u, its slope and its bend as three more states. A straight line would lose (πf·h)²/3 of a sine in every block (derived).</remarks>
internal sealed class BlockSteps
{
    /// <summary>The input, its slope and its bend.</summary>
    private const int InputStates = 3;

    private readonly int _order;
    private readonly double[] _step, _state, _work, _output;
    private readonly double _direct;
    private double _input, _before;

    /// <param name="space">The block.</param>
    /// <param name="seconds">h.</param>
    public BlockSteps(StateSpace space, double seconds)
    {
        int n = _order = space.Order, m = n + InputStates;
        var a = new double[m * m];
        for (int i = 0; i < n; i++)
        {
            Array.Copy(space.A, i * n, a, i * m, n);
            a[(i * m) + n] = space.B[i];
        }

        a[(n * m) + n + 1] = a[((n + 1) * m) + n + 2] = 1 / seconds;
        var steps = new TimeSteps(a, m, seconds);
        ReadOnlySpan<double> less1 = steps.Less1(steps.FirstDoublings);
        _step = less1[..(n * m)].ToArray();
        (_state, _work, _output, _direct) = (new double[m], new double[n], space.C, space.D);
    }

    /// <summary>The output a step later.</summary>
    public double Next(double input)
    {
        if (_order == 0)
        {
            return _direct * input;
        }

        int m = _order + InputStates;
        double slope = input - _input, bend = slope - (_input - _before);
        (_state[_order], _state[_order + 1], _state[_order + 2]) = (_input, slope - (bend / 2), bend);
        double output = _direct * input;
        for (int i = 0; i < _order; i++)
        {
            double sum = _state[i];
            for (int j = 0; j < m; j++)
            {
                sum += _step[(i * m) + j] * _state[j];
            }

            _work[i] = sum;
            output += _output[i] * sum;
        }

        Array.Copy(_work, _state, _order);
        (_before, _input) = (_input, input);
        return output;
    }
}

/// <summary>What comes of the values between samples: the last one for a converter that samples at once, their mean of a mean for one that averages.</summary>
/// <remarks>A moving mean over the steps of a sample, as often as the sinc filter's order: its nulls are the filter's, and in between it is the filter's response
/// but for (f/fs)²·π²·order/(6·steps²).</remarks>
internal sealed class SampleSteps
{
    private readonly double[] _weights, _ring;
    private int _at;

    /// <param name="steps">Values a sample.</param>
    /// <param name="order">Of the sinc filter; 0 for none.</param>
    public SampleSteps(int steps, int order)
    {
        double[] weights = [1];
        for (int i = 0; i < order; i++)
        {
            var next = new double[weights.Length + steps - 1];
            for (int k = 0; k < weights.Length; k++)
            {
                for (int j = 0; j < steps; j++)
                {
                    next[k + j] += weights[k] / steps;
                }
            }

            weights = next;
        }

        (_weights, _ring) = (weights, new double[weights.Length]);
    }

    public void Put(double value)
    {
        _at = _at == 0 ? _ring.Length - 1 : _at - 1;
        _ring[_at] = value;
    }

    public double Sample()
    {
        double sum = 0;
        for (int i = 0; i < _weights.Length; i++)
        {
            int place = _at + i;
            sum += _weights[i] * _ring[place < _ring.Length ? place : place - _ring.Length];
        }

        return sum;
    }
}

/// <summary>Where something is limited in time, and whether it was.</summary>
/// <param name="node">The node.</param>
/// <param name="swing">The most that it passes, of either sign [V].</param>
internal sealed class Limiter(Identity.NodeId node, double swing)
{
    public Identity.NodeId Node => node;

    /// <summary>True where it acted since this was last set false.</summary>
    public bool HasActed { get; set; }

    public double Pass(double volts)
    {
        if (Math.Abs(volts) <= swing)
        {
            return volts;
        }

        HasActed = true;
        return Math.CopySign(swing, volts);
    }
}
