using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Numbers;

namespace FrontEnd.Budgets;

/// <summary>The samples of a <see cref="Stretch"/> and the digital filters behind them as one linear step from sample to sample.</summary>
/// <remarks>The states are the chain's and two of each section (transposed direct form II), each less its value at rest.</remarks>
internal sealed class RecordedStretch
{
    /// <summary>Samples that are looked at one by one, at the least.</summary>
    private const int WindowDoublings = 6, Window = 1 << WindowDoublings;

    private readonly double[] _output;
    private readonly double[] _work;
    private readonly double[] _window;
    private readonly List<double[]> _energy = [];

    public RecordedStretch(Stretch stretch, SecondOrderSections digital)
    {
        int analog = stretch.Rest.Length, n = analog + (2 * digital.Count);
        double[] less1 = new double[n * n], row = new double[n];
        Rest = new double[n];
        for (int i = 0; i < analog; i++)
        {
            stretch.Steps.Less1(stretch.Sample).Slice(i * analog, analog).CopyTo(less1.AsSpan(i * n));
            row[i] = stretch.Output[i];
        }

        // What goes into a section, as a row over all states, and at rest.
        double volts = stretch.OutputRest;
        for (int section = 0; section < digital.Count; section++)
        {
            Biquad c = digital[section];
            int first = analog + (2 * section), second = first + 1;
            double output = c.DcGain * volts;
            (Rest[first], Rest[second]) = (output - (c.B0 * volts), (c.B2 * volts) - (c.A2 * output));
            double[] input = [.. row];
            for (int j = 0; j < n; j++)
            {
                row[j] = (c.B0 * input[j]) + (j == first ? 1 : 0);
                less1[(first * n) + j] = (c.B1 * input[j]) - (c.A1 * row[j]) + (j == second ? 1 : 0) - (j == first ? 1 : 0);
                less1[(second * n) + j] = (c.B2 * input[j]) - (c.A2 * row[j]) - (j == second ? 1 : 0);
            }

            volts = output;
        }

        (_output, Final, _work) = (row, volts, new double[n]);
        Steps = new Doublings(less1, n);
        _window = MakeWindow();
    }

    /// <summary>Steps from sample to sample.</summary>
    public Doublings Steps { get; }

    /// <summary>The states at rest.</summary>
    public double[] Rest { get; }

    /// <summary>The recorded value at rest [V].</summary>
    public double Final { get; }

    /// <summary>The recorded value at a sample [V].</summary>
    /// <param name="state">States there, less those at rest.</param>
    public double At(double[] state) => Final + SquareMatrix.Dot(_output, state);

    /// <summary>The last of the samples from a state on at which the recorded value is further than the tolerance from its end; null for
    /// none.</summary>
    /// <remarks>The sum of the squares of what is left at the next 2^j samples is a form of the state, made by doubling (Smith's way to
    /// solve Lyapunov's equation). A stretch of samples in which it is below the square of the tolerance holds none that is not; other
    /// stretches are halved, the later half first.</remarks>
    public long? LastAbove(double[] state, double tolerance)
    {
        if (Steps.DiedDownAfter() is not { } last)
        {
            throw new InvalidOperationException("A recording that never comes to rest has no last sample.");
        }

        return LastAbove(state, Math.Max(last, WindowDoublings), tolerance);
    }

    private long? LastAbove(double[] state, int doublings, double tolerance)
    {
        if (SquareMatrix.Form(Energy(doublings), state) <= tolerance * tolerance)
        {
            return null;
        }

        if (doublings == WindowDoublings)
        {
            for (int i = Window - 1; 0 <= i; i--)
            {
                if (tolerance < Math.Abs(SquareMatrix.Dot(_window.AsSpan(i * state.Length, state.Length), state)))
                {
                    return i;
                }
            }

            return null;
        }

        double[] later = (double[])state.Clone();
        Steps.Advance(doublings - 1, later, _work);
        return LastAbove(later, doublings - 1, tolerance) is { } found
            ? found + (1L << (doublings - 1))
            : LastAbove(state, doublings - 1, tolerance);
    }

    /// <summary>Each sample of a window as a row over the states at its start.</summary>
    private double[] MakeWindow()
    {
        int n = Steps.Order;
        var window = new double[Window * n];
        _output.CopyTo(window, 0);
        for (int i = 1; i < Window; i++)
        {
            Span<double> before = window.AsSpan((i - 1) * n, n), row = window.AsSpan(i * n, n);
            before.CopyTo(row);
            for (int k = 0; k < n; k++)
            {
                for (int j = 0; j < n; j++)
                {
                    row[j] += before[k] * Steps.Less1(0)[(k * n) + j];
                }
            }
        }

        return window;
    }

    private double[] Energy(int doublings)
    {
        int n = Steps.Order;
        if (_energy.Count == 0)
        {
            var first = new double[n * n];
            for (int i = 0; i < Window; i++)
            {
                for (int k = 0; k < n; k++)
                {
                    for (int j = 0; j < n; j++)
                    {
                        first[(k * n) + j] += _window[(i * n) + k] * _window[(i * n) + j];
                    }
                }
            }

            _energy.Add(first);
        }

        while (_energy.Count <= doublings - WindowDoublings)
        {
            // P + MᵀPM, M = 1 + E: T = P + P·E, then T + EᵀT, and P once more.
            double[] before = _energy[^1], half = (double[])before.Clone(), transposed = new double[n * n];
            ReadOnlySpan<double> less1 = Steps.Less1(WindowDoublings + _energy.Count - 1);
            SquareMatrix.AddProduct(before, less1, half, n);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    transposed[(i * n) + j] = less1[(j * n) + i];
                }
            }

            double[] sum = [.. before.Zip(half, (a, b) => a + b)];
            SquareMatrix.AddProduct(transposed, half, sum, n);
            _energy.Add(sum);
        }

        return _energy[doublings - WindowDoublings];
    }
}
