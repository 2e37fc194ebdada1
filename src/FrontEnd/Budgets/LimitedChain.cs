using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Identity;
using FrontEnd.Numbers;

namespace FrontEnd.Budgets;

/// <summary>A block of the path in time, and the limiter behind it.</summary>
/// <param name="Node">Where the limiter stands.</param>
/// <param name="Space">The block, linear.</param>
/// <param name="Swing">Largest size that the next block is given [V]; infinite for none.</param>
internal sealed record LimitedBlock(NodeId Node, StateSpace Space, double Swing);

/// <summary>Blocks one after the other, each linear, with a limiter behind each, after a step at the input at t = 0 from rest.</summary>
/// <remarks>
/// While no limiter begins or ceases to act the whole is linear and its steps are exact. Such a stretch begins where one does; it is found
/// by steps that grow with the time since the last, and then by halving. Which limiters act follows from the states alone. Not for use by
/// two threads at a time.
/// </remarks>
internal sealed class LimitedChain
{
    /// <summary>The longest step is this share of the time since the last limiter changed.</summary>
    private const double Stride = 1.0 / 32;

    /// <summary>Halvings of a sample's time in which the change of a limiter is found, at least.</summary>
    private const int Fine = 6;

    /// <summary>What is left of a state, against the step, where it counts as at rest.</summary>
    private const double AtRest = 1e-13;

    private const int MostStretches = 5000;

    private readonly LimitedBlock[] _blocks;
    private readonly double[][] _perVolt;
    private readonly double _step;
    private readonly double _sample;
    private readonly Dictionary<string, Stretch> _known = new(StringComparer.Ordinal);
    private readonly sbyte[] _acting;

    /// <param name="blocks">In order.</param>
    /// <param name="step">Step at the first one's input [V].</param>
    /// <param name="sample">Time of a sample [s].</param>
    public LimitedChain(IReadOnlyList<LimitedBlock> blocks, double step, double sample)
    {
        (_blocks, _step, _sample) = ([.. blocks], step, sample);
        _perVolt = [.. blocks.Select(block => block.Space.Settled())];
        _acting = new sbyte[_blocks.Length];
        Order = blocks.Sum(block => block.Space.Order);
        double volts = step;
        for (int i = 0; i < _blocks.Length; i++)
        {
            volts *= _blocks[i].Space.D + SquareMatrix.Dot(_blocks[i].Space.C, _perVolt[i]);
            if (_blocks[i].Swing < Math.Abs(volts))
            {
                HeldBy ??= (_blocks[i], volts);
                volts = Math.CopySign(_blocks[i].Swing, volts);
            }
        }
    }

    public int Order { get; }

    /// <summary>The first limiter that acts for good, and what would stand there without it [V]; null for none.</summary>
    public (LimitedBlock Block, double Volts)? HeldBy { get; }

    /// <summary>One stretch after the other; the last one has no end. Null where there is none to end it: the limiters act again and
    /// again, or a block swings on by itself.</summary>
    public IReadOnlyList<(double Start, Stretch During, double[] State)>? Stretches()
    {
        var list = new List<(double, Stretch, double[])>();
        double[] x = new double[Order], tried = new double[Order], work = new double[Order];
        double time = 0;
        while (list.Count < MostStretches)
        {
            Look(x);
            Stretch during = Known();
            list.Add((time, during, [.. x.Zip(during.Rest, (value, rest) => value - rest)]));
            // Whichever limiters act, each block's own modes are the chain's: what dies down in one stretch does in all.
            if (list.Count == 1 && during.Steps.DiedDownAfter() is null)
            {
                return null;
            }

            if (RunOut(during, x, tried, work) is not { } length)
            {
                return list;
            }

            time += length;
        }

        return null;
    }

    /// <summary>Takes x to where the limiters change; the time until then in samples, or null where they never do.</summary>
    private double? RunOut(Stretch during, double[] x, double[] tried, double[] work)
    {
        double[] z = [.. x];
        for (int i = 0; i < z.Length; i++)
        {
            z[i] -= during.Rest[i];
        }

        double elapsed = 0, tick = during.Steps.FirstSeconds / _sample, small = AtRest * Math.Abs(_step);
        int doublings = 0;
        var lanes = new LaneStates(during.Steps);
        while (Array.Exists(z, value => small < Math.Abs(value)))
        {
            while (Math.ScaleB(tick, doublings + 1) <= Stride * elapsed)
            {
                doublings++;
            }

            // As many steps of this length as there are until the next length may be taken.
            double step = Math.ScaleB(tick, doublings);
            long most = Math.Max(1, (long)Math.Ceiling(((2 * step / Stride) - elapsed) / step));
            long alike = Alike(during, lanes, z, doublings, most, small);
            elapsed += alike * step;
            if (alike == most || Array.TrueForAll(z, value => Math.Abs(value) <= small))
            {
                continue;
            }

            for (int halved = doublings - 1; 0 <= halved; halved--)
            {
                Try(halved);
            }

            if (!Try(0))
            {
                during.Steps.Advance(0, z, work);
                Volts(z, x);
                return elapsed + tick;
            }
        }

        return null;

        bool Try(int length)
        {
            z.CopyTo(tried, 0);
            during.Steps.Advance(length, tried, work);
            Volts(tried, x);
            if (!IsLike(x, during.Acting))
            {
                return false;
            }

            tried.CopyTo(z, 0);
            elapsed += Math.ScaleB(tick, length);
            return true;
        }

        void Volts(double[] deviation, double[] volts)
        {
            for (int i = 0; i < volts.Length; i++)
            {
                volts[i] = deviation[i] + during.Rest[i];
            }
        }
    }

    /// <summary>Takes z on by steps of 2^doublings while the same limiters act, until it is at rest or so many are done; how many it
    /// was.</summary>
    private long Alike(Stretch during, LaneStates lanes, double[] z, int doublings, long most, double small)
    {
        // Lane 0 is z itself.
        lanes.Begin(z, doublings);
        for (long first = 0; ; first += Vector<double>.Count)
        {
            int live = (int)Math.Min(Vector<double>.Count, most + 1 - first), alike = Math.Min(live, FirstUnlike(during, lanes.Now));
            if (alike < live || first + live == most + 1 || IsAtRest(lanes.Now, small))
            {
                long done = first + alike - 1;
                if (0 < done)
                {
                    lanes.CopyBefore(alike, z);
                }

                return Math.Max(0, done);
            }

            lanes.Advance();
        }
    }

    private static bool IsAtRest(Vector<double>[] states, double small)
    {
        foreach (Vector<double> state in states)
        {
            if (Vector.GreaterThanAny(Vector.Abs(state), new Vector<double>(small)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The first lane on which other limiters act; the number of lanes where there is none.</summary>
    /// <param name="during">What acts, and what the states are at rest.</param>
    /// <param name="states">Less those at rest.</param>
    private int FirstUnlike(Stretch during, Vector<double>[] states)
    {
        var volts = new Vector<double>(_step);
        Vector<long> unlike = Vector<long>.Zero;
        for (int i = 0, at = 0; i < _blocks.Length; i++)
        {
            StateSpace space = _blocks[i].Space;
            volts *= space.D;
            for (int k = 0; k < space.Order; k++)
            {
                volts += space.C[k] * (states[at + k] + new Vector<double>(during.Rest[at + k]));
            }

            // A limiter that acts holds its node beyond the swing, on its own side.
            double swing = _blocks[i].Swing;
            int acting = during.Acting[i];
            unlike |= acting == 0 ? Vector.GreaterThan(Vector.Abs(volts), new Vector<double>(swing))
                : ~Vector.GreaterThan(acting * volts, new Vector<double>(swing));
            volts = acting == 0 ? volts : new Vector<double>(acting * swing);
            at += space.Order;
        }

        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            if (unlike[lane] != 0)
            {
                return lane;
            }
        }

        return Vector<double>.Count;
    }

    private bool IsLike(double[] x, sbyte[] acting)
    {
        Look(x);
        return _acting.AsSpan().SequenceEqual(acting);
    }

    /// <summary>Which limiters act, and with which sign.</summary>
    private void Look(double[] x)
    {
        double volts = _step;
        for (int i = 0, at = 0; i < _blocks.Length; i++)
        {
            StateSpace space = _blocks[i].Space;
            volts = (space.D * volts) + SquareMatrix.Dot(space.C, x.AsSpan(at, space.Order));
            _acting[i] = (sbyte)(_blocks[i].Swing < Math.Abs(volts) ? Math.Sign(volts) : 0);
            volts = _acting[i] == 0 ? volts : _acting[i] * _blocks[i].Swing;
            at += space.Order;
        }
    }

    private Stretch Known()
    {
        string key = string.Join(' ', _acting);
        if (!_known.TryGetValue(key, out Stretch? stretch))
        {
            _known.Add(key, stretch = Make([.. _acting]));
        }

        return stretch;
    }

    /// <summary>The chain while the same limiters act: a block behind one that does sees a constant.</summary>
    private Stretch Make(sbyte[] acting)
    {
        double[] a = new double[Order * Order], rest = new double[Order], row = new double[Order];
        double volts = _step;
        for (int i = 0, at = 0; i < _blocks.Length; i++)
        {
            StateSpace space = _blocks[i].Space;
            for (int k = 0; k < space.Order; k++)
            {
                Span<double> target = a.AsSpan((at + k) * Order, Order);
                for (int j = 0; j < at; j++)
                {
                    target[j] = space.B[k] * row[j];
                }

                space.A.AsSpan(k * space.Order, space.Order).CopyTo(target[at..]);
                rest[at + k] = _perVolt[i][k] * volts;
            }

            volts = (space.D * volts) + SquareMatrix.Dot(space.C, rest.AsSpan(at, space.Order));
            for (int j = 0; j < at; j++)
            {
                row[j] *= space.D;
            }

            space.C.CopyTo(row, at);
            at += space.Order;
            if (acting[i] != 0)
            {
                volts = acting[i] * _blocks[i].Swing;
                Array.Clear(row);
            }
        }

        return new Stretch(new TimeSteps(a, Order, Math.ScaleB(_sample, -Fine)), Fine, acting, rest, row, volts);
    }
}

/// <summary>What holds while the same limiters act.</summary>
/// <param name="Steps">Exact steps of what is left of the way to rest.</param>
/// <param name="Fine">Doublings from the step that <see cref="TimeSteps"/> was given to a sample's time.</param>
/// <param name="Acting">The sign of each limiter that acts; 0 where it does not.</param>
/// <param name="Rest">The states at rest [V].</param>
/// <param name="Output">What is left, at the last limiter's output, of what is left of the states.</param>
/// <param name="OutputRest">The last limiter's output at rest [V].</param>
internal sealed record Stretch(TimeSteps Steps, int Fine, sbyte[] Acting, double[] Rest, double[] Output, double OutputRest)
{
    /// <summary>The doubling that is a sample's time.</summary>
    public int Sample => Steps.FirstDoublings + Fine;

    /// <summary>What the digital filters make of it; made when it is asked for.</summary>
    public RecordedStretch? Recorded { get; set; }
}
