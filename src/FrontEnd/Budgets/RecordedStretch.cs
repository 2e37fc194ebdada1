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

    /// <summary>Windows after which the changes from sample to sample are looked at too.</summary>
    private const int FewWindows = 32;

    private readonly double[] _output;
    private readonly double[] _work;
    private double[]? _window;
    private double[]? _changesInWindows;
    private double[]? _half;
    private double[]? _transposed;
    private readonly List<double[]> _energy = [];
    private readonly List<double[]> _changes = [];
    private int _windows;

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

    /// <summary>Samples after which nothing is left of a state.</summary>
    public long Samples => 1L << Math.Max(WindowDoublings, Steps.DiedDownAfter()
        ?? throw new InvalidOperationException("A recording that never comes to rest has no last sample."));

    /// <summary>The last of a number of samples, from a state on, at which the recorded value is further than the tolerance from an end; null
    /// for none.</summary>
    /// <remarks>The sum of the squares of what is left at the next 2^j samples is a form of the state, made by doubling (Smith's way to
    /// solve Lyapunov's equation). Samples that have it below the square of the tolerance are all within; others are halved, the later half
    /// first.</remarks>
    /// <param name="state">States at the first sample, less those at rest.</param>
    /// <param name="samples">How many.</param>
    /// <param name="tolerance">[V]</param>
    /// <param name="end">What the recording ends at; another than <see cref="Final"/> where a limiter lets go later [V].</param>
    public long? LastAbove(double[] state, long samples, double tolerance, double end)
    {
        double off = Final - end;
        List<(long First, int Doublings, double[] State)> pieces = [];
        double[] at = (double[])state.Clone();
        long first = 0;
        for (int doublings = 62; WindowDoublings <= doublings; doublings--)
        {
            if ((samples & (1L << doublings)) != 0)
            {
                pieces.Add((first, doublings, (double[])at.Clone()));
                first += 1L << doublings;
                if (first < samples)
                {
                    Steps.Advance(doublings, at, _work);
                }
            }
        }

        long? last = InWindow(at, (int)(samples - first), tolerance, off) + first;
        for (int piece = pieces.Count - 1; last is null && 0 <= piece; piece--)
        {
            last = LastAbove(pieces[piece].State, pieces[piece].Doublings, tolerance, off) + pieces[piece].First;
        }

        return last;
    }

    private long? LastAbove(double[] state, int doublings, double tolerance, double off)
    {
        double room = tolerance - Math.Abs(off);
        if (0 < room && SquareMatrix.Form(Energy(doublings), state) <= room * room)
        {
            return null;
        }

        if (doublings == WindowDoublings)
        {
            _windows++;
            return InWindow(state, Window, tolerance, off);
        }

        if (FewWindows < _windows && StaysWithin(state, doublings, tolerance, off))
        {
            return null;
        }

        double[] later = (double[])state.Clone();
        Steps.Advance(doublings - 1, later, _work);
        return LastAbove(later, doublings - 1, tolerance, off) is { } found
            ? found + (1L << (doublings - 1))
            : LastAbove(state, doublings - 1, tolerance, off);
    }

    /// <summary>True where what is recorded cannot leave the tolerance: the sum of the sizes of n changes is at most the root of n times the sum of
    /// their squares. Where a filter needs millions of samples, its changes say it for almost all of them; their form is made where many windows have
    /// been looked at, so that a common recovery does not wait for it.</summary>
    private bool StaysWithin(double[] state, int doublings, double tolerance, double off)
    {
        // A hundredth for the rounding of the form.
        double room = 0.99 * (tolerance - Math.Abs(SquareMatrix.Dot(_output, state) + off));
        return 0 < room && Math.ScaleB(SquareMatrix.Form(Changes(doublings), state), doublings) <= room * room;
    }

    private long? InWindow(double[] state, int samples, double tolerance, double off)
    {
        Span<double> values = stackalloc double[Window];
        values.Fill(off);
        for (int k = 0; k < state.Length; k++)
        {
            SquareMatrix.AddScaled(state[k], InWindows.AsSpan(k * Window, Window), values);
        }

        for (int i = samples - 1; 0 <= i; i--)
        {
            if (tolerance < Math.Abs(values[i]))
            {
                return i;
            }
        }

        return null;
    }

    private double[] InWindows => _window ??= MakeWindow(_output);

    /// <summary>What each state at the start of a window is at each of its samples, one state after the other.</summary>
    private double[] MakeWindow(double[] output)
    {
        int n = Steps.Order;
        double[] window = new double[Window * n], row = (double[])output.Clone(), next = new double[n];
        for (int i = 0; i < Window; i++)
        {
            for (int k = 0; k < n; k++)
            {
                window[(k * Window) + i] = row[k];
            }

            row.CopyTo(next, 0);
            for (int k = 0; k < n; k++)
            {
                SquareMatrix.AddScaled(row[k], Steps.Less1(0).Slice(k * n, n), next);
            }

            (row, next) = (next, row);
        }

        return window;
    }

    private double[] Energy(int doublings) => SumOfSquares(_energy, InWindows, doublings);

    /// <summary>Of the changes from each sample to the next.</summary>
    private double[] Changes(int doublings)
    {
        if (_changesInWindows is null)
        {
            double[] row = new double[Steps.Order];
            for (int k = 0; k < row.Length; k++)
            {
                SquareMatrix.AddScaled(_output[k], Steps.Less1(0).Slice(k * row.Length, row.Length), row);
            }

            _changesInWindows = MakeWindow(row);
        }

        return SumOfSquares(_changes, _changesInWindows, doublings);
    }

    /// <summary>The form of a state that is the sum of the squares of what a row makes of it at 2^doublings samples.</summary>
    private double[] SumOfSquares(List<double[]> forms, double[] window, int doublings)
    {
        int n = Steps.Order;
        if (forms.Count == 0)
        {
            var first = new double[n * n];
            for (int k = 0; k < n; k++)
            {
                for (int j = 0; j < n; j++)
                {
                    first[(k * n) + j] = SquareMatrix.Dot(window.AsSpan(k * Window, Window), window.AsSpan(j * Window, Window));
                }
            }

            forms.Add(first);
        }

        while (forms.Count <= doublings - WindowDoublings)
        {
            // P + MᵀPM, M = 1 + E: T = P + P·E, then T + EᵀT, and P once more.
            double[] before = forms[^1], half = _half ??= new double[n * n], transposed = _transposed ??= new double[n * n];
            before.CopyTo(half, 0);
            ReadOnlySpan<double> less1 = Steps.Less1(WindowDoublings + forms.Count - 1);
            SquareMatrix.AddProduct(before, less1, half, n);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    transposed[(i * n) + j] = less1[(j * n) + i];
                }
            }

            var sum = new double[n * n];
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] = before[i] + half[i];
            }

            SquareMatrix.AddProduct(transposed, half, sum, n);
            forms.Add(sum);
        }

        return forms[doublings - WindowDoublings];
    }
}
