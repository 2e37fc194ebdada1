using System.Numerics;
using FrontEnd.Numbers;

namespace FrontEnd.Circuits;

/// <summary>A linear step x ← M·x and its doublings, M to the power of 2^j.</summary>
/// <remarks>
/// Held less the unit matrix, E = M − 1: doubled it is 2E + E², and a slow mode beside a fast one, whose step is 1 less a billionth of a
/// billionth, keeps its digits. Doublings are made when they are asked for. Not for use by two threads at a time.
/// </remarks>
internal class Doublings
{
    /// <summary>What is left of every state where a response has died down.</summary>
    private const double DiedDown = 1e-12;

    /// <summary>A state larger than this, per volt, and it will never die down.</summary>
    private const double Grown = 1e30;

    private const int Most = 200;

    private readonly List<double[]> _less1 = [];
    private bool _isLookedFor;
    private int? _diedDownAfter;

    /// <param name="less1">M − 1, row after row.</param>
    /// <param name="order">Its rows.</param>
    public Doublings(double[] less1, int order)
    {
        Order = order;
        _less1.Add(less1);
    }

    public int Order { get; }

    /// <summary>M^(2^j) − 1.</summary>
    public ReadOnlySpan<double> Less1(int doublings)
    {
        while (_less1.Count <= doublings)
        {
            double[] last = _less1[^1], next = new double[last.Length];
            for (int i = 0; i < next.Length; i++)
            {
                next[i] = 2 * last[i];
            }

            SquareMatrix.AddProduct(last, last, next, Order);
            _less1.Add(next);
        }

        return _less1[doublings];
    }

    /// <summary>Takes the state on by 2^j steps.</summary>
    public void Advance(int doublings, Span<double> x, Span<double> work)
    {
        x.CopyTo(work);
        SquareMatrix.AddProduct(Less1(doublings), work, x);
    }

    /// <summary>Takes the state on by a number of steps.</summary>
    public void AdvanceBy(long steps, Span<double> x, Span<double> work)
    {
        for (int doublings = 0; steps != 0; doublings++, steps >>= 1)
        {
            if ((steps & 1) != 0)
            {
                Advance(doublings, x, work);
            }
        }
    }

    /// <summary>The first doubling after which nothing is left of any state; null where that never comes: the system swings on or
    /// grows.</summary>
    public int? DiedDownAfter()
    {
        if (!_isLookedFor)
        {
            (_isLookedFor, _diedDownAfter) = (true, LookFor());
        }

        return _diedDownAfter;
    }

    private int? LookFor()
    {
        for (int doublings = 0; doublings < Most; doublings++)
        {
            double most = Largest(Less1(doublings));
            if (most <= DiedDown || !(most <= Grown))
            {
                return most <= DiedDown ? doublings : null;
            }
        }

        return null;
    }

    /// <summary>The largest entry of M by size; no number where one is none.</summary>
    private double Largest(ReadOnlySpan<double> less1)
    {
        double most = 0;
        for (int i = 0; i < Order; i++)
        {
            ReadOnlySpan<double> row = less1.Slice(i * Order, Order);
            for (int j = 0; j < row.Length; j++)
            {
                most = Math.Max(most, Math.Abs(row[j] + (i == j ? 1 : 0)));
            }
        }

        return most;
    }
}

/// <summary>A state and what becomes of it at the next few steps, one on each lane: all lanes go on together.</summary>
internal sealed class LaneStates(Doublings steps)
{
    private Vector<double>[] _other = new Vector<double>[steps.Order];
    private readonly double[] _state = new double[steps.Order];
    private readonly double[] _work = new double[steps.Order];
    private int _doublings;

    /// <summary>Steps from group to group, as doublings of one step.</summary>
    private static int Doubled { get; } = BitOperations.Log2((uint)Vector<double>.Count);

    /// <summary>Each state on the lanes.</summary>
    public Vector<double>[] Now { get; private set; } = new Vector<double>[steps.Order];

    /// <summary>Puts a state on the first lane and what 1, 2 … steps of 2^doublings make of it on those behind.</summary>
    public void Begin(ReadOnlySpan<double> state, int doublings)
    {
        _doublings = doublings;
        state.CopyTo(_state);
        Span<double> lanes = stackalloc double[Vector<double>.Count * state.Length];
        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            for (int i = 0; i < state.Length; i++)
            {
                lanes[(i * Vector<double>.Count) + lane] = _state[i];
            }

            if (lane + 1 < Vector<double>.Count)
            {
                steps.Advance(doublings, _state, _work);
            }
        }

        for (int i = 0; i < state.Length; i++)
        {
            Now[i] = new Vector<double>(lanes[(i * Vector<double>.Count)..]);
        }
    }

    /// <summary>Takes every lane on by as many steps as there are lanes.</summary>
    public void Advance()
    {
        (Vector<double>[] last, Vector<double>[] next) = (Now, _other);
        ReadOnlySpan<double> less1 = steps.Less1(_doublings + Doubled);
        for (int i = 0; i < last.Length; i++)
        {
            Vector<double> sum = last[i];
            ReadOnlySpan<double> row = less1.Slice(i * last.Length, last.Length);
            for (int j = 0; j < row.Length; j++)
            {
                sum += new Vector<double>(row[j]) * last[j];
            }

            next[i] = sum;
        }

        (Now, _other) = (next, last);
    }

    /// <summary>The states on the lane before one; before the first stands the last of the group before.</summary>
    public void CopyBefore(int lane, Span<double> state)
    {
        (Vector<double>[] group, int at) = lane == 0 ? (_other, Vector<double>.Count - 1) : (Now, lane - 1);
        for (int i = 0; i < state.Length; i++)
        {
            state[i] = group[i][at];
        }
    }
}

/// <summary>Exact steps of dx/dt = A·x by a time and its doublings: exp(A·h·2^j).</summary>
/// <remarks>The first step is short enough for the exponential's series; all others are doublings of it.</remarks>
internal sealed class TimeSteps : Doublings
{
    /// <summary>‖A‖·h of the series: with this many terms the rest is below 1e-18.</summary>
    private const double SeriesNorm = 0.5;
    private const int SeriesTerms = 16;

    /// <param name="a">A, row after row [1/s].</param>
    /// <param name="order">Its rows.</param>
    /// <param name="longest">Longest first step that is of use [s].</param>
    public TimeSteps(double[] a, int order, double longest)
        : this(a, order, longest, Halvings(a, order, longest))
    {
    }

    private TimeSteps(double[] a, int order, double longest, int halvings)
        : base(Series(a, order, Math.ScaleB(longest, -halvings)), order)
    {
        FirstSeconds = Math.ScaleB(longest, -halvings);
        FirstDoublings = halvings;
    }

    /// <summary>Length of step 0 [s].</summary>
    public double FirstSeconds { get; }

    /// <summary>The doubling whose length was given.</summary>
    public int FirstDoublings { get; }

    /// <summary>Largest sum over a row of |A|: no time constant is shorter than one over it [1/s].</summary>
    public static double Norm(ReadOnlySpan<double> a, int order)
    {
        double norm = 0;
        for (int i = 0; i < order; i++)
        {
            double row = 0;
            foreach (double entry in a.Slice(i * order, order))
            {
                row += Math.Abs(entry);
            }

            norm = Math.Max(norm, row);
        }

        return norm;
    }

    /// <summary>By powers of 2, so that a step of the length given is among the doublings.</summary>
    private static int Halvings(double[] a, int order, double longest)
    {
        double size = Norm(a, order) * longest;
        return size <= SeriesNorm ? 0 : (int)Math.Ceiling(Math.Log2(size / SeriesNorm));
    }

    private static double[] Series(double[] a, int order, double seconds)
    {
        var term = new double[a.Length];
        var sum = new double[a.Length];
        for (int i = 0; i < a.Length; i++)
        {
            sum[i] = term[i] = a[i] * seconds;
        }

        double[] scaled = (double[])term.Clone(), next = new double[a.Length];
        for (int n = 2; n <= SeriesTerms; n++)
        {
            Array.Clear(next);
            SquareMatrix.AddProduct(term, scaled, next, order);
            for (int i = 0; i < a.Length; i++)
            {
                next[i] /= n;
                sum[i] += next[i];
            }

            (term, next) = (next, term);
        }

        return sum;
    }
}
