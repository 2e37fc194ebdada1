using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Filters;
using FrontEnd.Numbers;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>Stages one after the other, as their circuits with ideal op-amps say, and their answer to a unit step in time: linear, as for a
/// signal so small that nothing clips.</summary>
/// <remarks>The input network and the amplifier settle within microseconds of what is shown here (milliseconds to seconds) and count as
/// instantaneous; the op-amps' finite bandwidth moves the poles used here by less than the parts' tolerance. <see cref="Recovery"/> has
/// them all.</remarks>
internal sealed class TimeResponse
{
    /// <summary>Points between a time and its double: what still swings then has a period longer than a few of them, or has died
    /// down.</summary>
    private const int PointsPerDoubling = 256;
    private const int DoublingsOfPoints = 8;

    /// <summary>Where the greatest value is sought: points that are 2^3 times as far apart, and the share of the greatest of these above which
    /// all points of a doubling are looked at.</summary>
    private const int Coarser = 3;
    private const double Near = 0.3;

    /// <summary>The first points lie this share of the shortest time constant apart: a cubic between them is right to 1e-10.</summary>
    private const double Finest = 1.0 / 64;

    /// <summary>Of the end value; an end below <see cref="NoEnd"/> of the greatest value counts as none, and the greatest is taken.</summary>
    private const double Tolerance = 1e-3, NoEnd = 1e-4;

    /// <summary>An end above this share of the greatest value after any doubling of time is none of next to nothing.</summary>
    private const double ClearEnd = 1e-2;

    private readonly double[] _a;
    private readonly double[] _b;
    private readonly double[] _c;
    private readonly double _d;

    private TimeResponse(double[] a, double[] b, double[] c, double d) => (_a, _b, _c, _d) = (a, b, c, d);

    /// <summary>One stage or several, in order.</summary>
    public static TimeResponse Of(params IEnumerable<Stage> stages) => Of(stages.Select(stage => StateSpace.Ideal(stage.Circuit())));

    /// <summary>Blocks in order.</summary>
    public static TimeResponse Of(IEnumerable<StateSpace> chain)
    {
        StateSpace[] blocks = [.. chain];
        int n = blocks.Sum(block => block.Order), at = 0;
        double[] a = new double[n * n], b = new double[n], c = new double[n];
        double d = 1;
        foreach (StateSpace block in blocks)
        {
            // The block sees u = c·x + d·input of everything before it.
            for (int i = 0; i < block.Order; i++)
            {
                for (int j = 0; j < at; j++)
                {
                    a[((at + i) * n) + j] = block.B[i] * c[j];
                }

                for (int j = 0; j < block.Order; j++)
                {
                    a[((at + i) * n) + at + j] = block.A[(i * block.Order) + j];
                }

                b[at + i] = block.B[i] * d;
            }

            for (int j = 0; j < at; j++)
            {
                c[j] *= block.D;
            }

            block.C.CopyTo(c, at);
            d *= block.D;
            at += block.Order;
        }

        return new TimeResponse(a, b, c, d);
    }

    /// <summary>Settling after a step; null where the response never comes to rest.</summary>
    public Settling? Settle()
    {
        var space = new StateSpace(_a, _b, _c, _d);
        double[] rest = space.Settled();
        double end = _d + SquareMatrix.Dot(_c, rest);
        if (_b.Length == 0)
        {
            return new Settling(0, end, Math.Abs(end), false);
        }

        var steps = new TimeSteps(_a, _b.Length, Finest / TimeSteps.Norm(_a, _b.Length));
        if (steps.DiedDownAfter() is not { } last)
        {
            return null;
        }

        // What is left of the way to rest, at time 0 and after each doubling.
        var starts = new double[last + 1][];
        double[] x = [.. rest.Select(value => -value)], work = new double[x.Length];
        for (int doublings = 0; doublings <= last; doublings++)
        {
            starts[doublings] = (double[])x.Clone();
            steps.Advance(doublings, starts[doublings], work);
        }

        double peak = Math.Max(Math.Abs(_d), Math.Abs(end));
        var walk = new Walk(this, steps);
        foreach (double[] start in starts)
        {
            peak = Math.Max(peak, Math.Abs(end + SquareMatrix.Dot(_c, start)));
        }

        // The greatest value to the last digit is asked for only where the end is next to none of it.
        if (Math.Abs(end) < ClearEnd * peak)
        {
            peak = Peak(walk, starts, x, end, peak);
        }

        bool ofPeak = Math.Abs(end) < NoEnd * peak;
        double tolerance = Tolerance * (ofPeak ? peak : Math.Abs(end));
        for (int doublings = last - 1; DoublingsOfPoints <= doublings; doublings--)
        {
            if (walk.LastAbove(starts[doublings], doublings - DoublingsOfPoints, tolerance) is { } points)
            {
                return new Settling((PointsPerDoubling + points) * Length(doublings - DoublingsOfPoints), end, peak, ofPeak);
            }
        }

        return new Settling((walk.LastAbove(x, 0, tolerance) ?? 0) * steps.FirstSeconds, end, peak, ofPeak);

        double Length(int doublings) => Math.ScaleB(steps.FirstSeconds, doublings);
    }

    /// <summary>The greatest size of the response: every doubling of time at few points first, then those at all points in which it comes
    /// anywhere near the greatest of these.</summary>
    private static double Peak(Walk walk, double[][] starts, double[] first, double end, double before)
    {
        double peak = walk.Peak(first, 0, PointsPerDoubling, end, before);
        var coarse = new double[starts.Length];
        for (int doublings = DoublingsOfPoints; doublings < starts.Length - 1; doublings++)
        {
            coarse[doublings] = walk.Peak(starts[doublings], doublings - DoublingsOfPoints + Coarser, PointsPerDoubling >> Coarser, end, 0);
            peak = Math.Max(peak, coarse[doublings]);
        }

        double near = Near * peak;
        for (int doublings = DoublingsOfPoints; doublings < starts.Length - 1; doublings++)
        {
            peak = near < coarse[doublings]
                ? walk.Peak(starts[doublings], doublings - DoublingsOfPoints, PointsPerDoubling, end, peak)
                : peak;
        }

        return peak;
    }

    /// <summary>Response to a unit step at t = 0, dt, 2dt …: the analogue path alone, or sampled at dt and filtered.</summary>
    public double[] Step(double dt, int samples, SecondOrderSections? digital = null) => Step(dt, Enumerable.Range(0, samples), digital);

    /// <summary>The same at some of these times alone, by number, rising.</summary>
    public double[] Step(double dt, IEnumerable<int> samples, SecondOrderSections? digital = null)
    {
        double[] rest = new StateSpace(_a, _b, _c, _d).Settled();
        var stretch = new Stretch(new TimeSteps(_a, _b.Length, dt), 0, [], rest, _c, _d + SquareMatrix.Dot(_c, rest));
        var recorded = new RecordedStretch(stretch, digital ?? SecondOrderSections.Empty);
        double[] state = [.. rest.Concat(recorded.Rest.Skip(rest.Length)).Select(value => -value)], work = new double[state.Length];
        List<double> values = [];
        int at = 0;
        foreach (int sample in samples)
        {
            recorded.Steps.AdvanceBy(sample - at, state, work);
            at = sample;
            values.Add(recorded.At(state));
        }

        return [.. values];
    }

    /// <summary>Points of the response and the greatest or last of what lies between them: value and slope at both ends of an interval
    /// make a cubic.</summary>
    private sealed class Walk(TimeResponse response, TimeSteps steps)
    {
        private readonly LaneStates _lanes = new(steps);

        /// <summary>c·A: the response's slope is it times the states.</summary>
        private readonly double[] _slope = Slope(response);
        private readonly double[] _value = new double[PointsPerDoubling + Vector<double>.Count];
        private readonly double[] _rise = new double[PointsPerDoubling + Vector<double>.Count];

        /// <summary>The greatest size of the response in a doubling of time, or what it was before if that is greater.</summary>
        public double Peak(double[] start, int doublings, int points, double end, double before)
        {
            Fill(start, doublings, points);
            double peak = before;
            for (int i = 0; i < points; i++)
            {
                peak = Math.Max(peak, Math.Abs(end + _value[i]));
                if (_rise[i] * _rise[i + 1] < 0)
                {
                    peak = Math.Max(peak, Math.Abs(end + Cubic(i, Turn(i))));
                }
            }

            return peak;
        }

        /// <summary>The last place at which the response lies further than the tolerance from its end, in points; null for none.</summary>
        public double? LastAbove(double[] start, int doublings, double tolerance)
        {
            Fill(start, doublings, PointsPerDoubling);
            for (int i = PointsPerDoubling - 1; 0 <= i; i--)
            {
                double outside = tolerance < Math.Abs(_value[i + 1]) ? 1
                    : _rise[i] * _rise[i + 1] < 0 && tolerance < Math.Abs(Cubic(i, Turn(i))) ? Turn(i)
                    : tolerance < Math.Abs(_value[i]) ? 0 : -1;
                if (0 <= outside)
                {
                    return i + Crossing(i, outside, tolerance);
                }
            }

            return null;
        }

        private void Fill(double[] start, int doublings, int points)
        {
            var length = new Vector<double>(Math.ScaleB(steps.FirstSeconds, doublings));
            _lanes.Begin(start, doublings);
            for (int first = 0; first <= points; first += Vector<double>.Count)
            {
                if (first != 0)
                {
                    _lanes.Advance();
                }

                Vector<double> value = Vector<double>.Zero, slope = Vector<double>.Zero;
                for (int i = 0; i < _slope.Length; i++)
                {
                    value += response._c[i] * _lanes.Now[i];
                    slope += _slope[i] * _lanes.Now[i];
                }

                value.CopyTo(_value, first);
                (slope * length).CopyTo(_rise, first);
            }
        }

        private static double[] Slope(TimeResponse response)
        {
            var slope = new double[response._c.Length];
            for (int row = 0; row < slope.Length; row++)
            {
                SquareMatrix.AddScaled(response._c[row], response._a.AsSpan(row * slope.Length, slope.Length), slope);
            }

            return slope;
        }

        private double Cubic(int i, double t)
        {
            double s = 1 - t;
            return (s * s * ((_value[i] * (1 + (2 * t))) + (_rise[i] * t))) + (t * t * ((_value[i + 1] * (1 + (2 * s))) - (_rise[i + 1] * s)));
        }

        /// <summary>Where the slope is zero, by halving the cubic's interval.</summary>
        private double Turn(int i)
        {
            double a = 6 * (_value[i] - _value[i + 1]) + (3 * (_rise[i] + _rise[i + 1])), low = 0, high = 1;
            double b = (6 * (_value[i + 1] - _value[i])) - (4 * _rise[i]) - (2 * _rise[i + 1]);
            for (int round = 0; round < 40; round++)
            {
                double middle = (low + high) / 2, slope = (((a * middle) + b) * middle) + _rise[i];
                (low, high) = slope * _rise[i] > 0 ? (middle, high) : (low, middle);
            }

            return (low + high) / 2;
        }

        private double Crossing(int i, double outside, double tolerance)
        {
            double low = outside, high = 1;
            for (int round = 0; round < 40 && low < high; round++)
            {
                double middle = (low + high) / 2;
                (low, high) = tolerance < Math.Abs(Cubic(i, middle)) ? (middle, high) : (low, middle);
            }

            return (low + high) / 2;
        }
    }
}

/// <summary>When a step response has settled to 0.1 %.</summary>
/// <param name="Seconds">After the step.</param>
/// <param name="End">Its value long after a unit step.</param>
/// <param name="Peak">Its greatest value, by size; to the last digit only where the 0.1 % are of it.</param>
/// <param name="IsOfPeak">True where the 0.1 % are of the greatest value, because the end is next to none beside it.</param>
internal readonly record struct Settling(double Seconds, double End, double Peak, bool IsOfPeak);
