using System.Numerics;
using FrontEnd.Numbers;

namespace FrontEnd.Filters;

/// <summary>Σ|h| at each section of a cascade, h the answer to one impulse at its input: how far an input within ±1 can drive it.</summary>
/// <remarks>While something fast still rings, the samples are run and added up. What is slow is walked in strides, short beside whatever rings
/// there: where h keeps its sign over a stretch, its sum is the difference of two values of the step response, and where it changes sign the place
/// is sought by halving. Every stride is a power of the sections' state matrix (<see cref="SectionStates"/>). Derived.</remarks>
internal sealed class CascadeGrowth
{
    /// <summary>Samples that are run and added at a time.</summary>
    private const int Block = 1024;

    /// <summary>Samples of one section after which a sum that has not ended is closed as if the slowest pole alone went on.</summary>
    private const long MostSamples = 1L << 24;

    /// <summary>Strides in half a period of the fastest pole that still rings: what two changes of sign within one would leave out is a
    /// thousandth of that half period's.</summary>
    private const int StridesPerHalfPeriod = 16;

    /// <summary>Strides after which the walk looks whether it may end.</summary>
    private const int Chunk = 64;

    /// <summary>Strides of one section after which a sum that has not ended is closed likewise; each costs the square of the sections before
    /// it.</summary>
    private const long MostStrides = 1L << 24;

    /// <summary>Share of the sum that what is left may hold.</summary>
    private const double Rest = 1e-10;

    private readonly Biquad[] _sections;
    private readonly SectionStates[] _states;
    private readonly bool _polesAlone;
    private readonly (double Decay, double Speed)[] _poles;
    private readonly double _slowest;
    private readonly double[] _sums;
    private readonly List<double[]> _powers = [];

    private CascadeGrowth(Biquad[] sections, bool polesAlone)
    {
        (_sections, _polesAlone) = (sections, polesAlone);
        _states = [.. sections.Select(SectionStates.Of)];
        _poles = [.. sections.SelectMany(s => new[] { s.Poles.First, s.Poles.Second }).Where(z => z != Complex.Zero)
            .Select(z => Complex.Log(z)).Select(s => (-s.Real, Complex.Abs(s)))];
        _slowest = _poles.Length == 0 ? double.PositiveInfinity : _poles.Min(pole => pole.Decay);
        _sums = new double[sections.Length];
    }

    private int Size => 2 * _sections.Length;

    /// <summary>Σ|h| at every section's output.</summary>
    /// <param name="cascade">In the order of the signal, all poles inside the unit circle.</param>
    /// <param name="polesAlone">Behind each section's poles, without its own numerator.</param>
    internal static double[] Of(SecondOrderSections cascade, bool polesAlone)
    {
        // Next to z = −1 nothing is slow, but with every other sample of the other sign it is, and sizes stay.
        bool turned = 0 < cascade.Sections.DefaultIfEmpty(Biquad.Through).MaxBy(s => s.PoleRadius).A1;
        var growth = new CascadeGrowth([.. cascade.Sections.Select(s => turned ? CascadeSpectrum.Turned(s) : s)], polesAlone);
        growth.Add();
        return growth._sums;
    }

    private void Add()
    {
        SectionRunner[] whole = [.. _sections.Select(s => new SectionRunner(new SecondOrderSections([s])))];
        SectionRunner[] poles = [.. _sections.Select(s => new SectionRunner(new SecondOrderSections([new Biquad(1, 0, 0, s.A1, s.A2)])))];
        Ending[] endings = [.. _sections.Select(_ => new Ending(_slowest))];
        double[] block = new double[Block], own = new double[Block];
        block[0] = 1;
        for (long at = Block; ; at += Block)
        {
            bool done = true;
            for (int i = 0; i < _sections.Length; i++)
            {
                if (_polesAlone)
                {
                    poles[i].Run(block, own);
                }

                whole[i].Run(block, block);
                foreach (double h in _polesAlone ? own : block)
                {
                    _sums[i] += Math.Abs(h);
                }

                done &= endings[i].IsNear(at, _sums[i]);
            }

            if (done)
            {
                return;
            }

            if (MostSamples <= at * _sections.Length)
            {
                break;
            }

            Array.Clear(block);
            // A stride takes the square of the states, a sample in the run only their number.
            if (4 + _sections.Length <= StrideAt(at))
            {
                Walk(at);
                return;
            }
        }

        for (int i = 0; i < _sums.Length; i++)
        {
            _sums[i] += endings[i].Left;
        }
    }

    /// <summary>The largest power of two that is short beside what still rings after so many samples.</summary>
    private long StrideAt(long at)
    {
        // h falls as r^t times a power of t: 45 time constants leave 1e-19 of a single pair, and each further section gets 12 more.
        double constants = 45 + (12 * _sections.Length), fastest = 0;
        foreach ((double decay, double speed) in _poles)
        {
            fastest = decay * at < constants ? Math.Max(fastest, speed) : fastest;
        }

        double longest = Math.PI / StridesPerHalfPeriod / Math.Max(fastest, _slowest);
        return longest < 1 ? 1 : 1L << (int)Math.Log2(Math.Min(longest, 1L << 60));
    }

    private void Walk(long from)
    {
        double[] start = Impulse();
        Advance(start, Size, from - 1);
        for (int i = 0; i < _sections.Length; i++)
        {
            _sums[i] = Whole(i, start, from);
        }
    }

    /// <summary>Σ|h| at one section, what has been added up to a sample and what is walked from there.</summary>
    private double Whole(int section, double[] start, long at)
    {
        int size = 2 * (section + 1);
        double[] output = new double[size], toCome = new double[size], x = start[..size], next = new double[size];
        Read(section, output, toCome);
        double sum = _sums[section], side = SquareMatrix.Dot(output, x), begun = SquareMatrix.Dot(toCome, x);
        var ending = new Ending(_slowest);
        ending.IsNear(at, sum);
        for (long strides = Chunk; ; strides += Chunk)
        {
            long stride = StrideAt(at);
            int power = BitOperations.Log2((ulong)stride);
            for (int k = 0; k < Chunk; k++)
            {
                Step(power, x, next);
                double h = SquareMatrix.Dot(output, next);
                if (h * side < 0)
                {
                    double turn = SquareMatrix.Dot(toCome, Turn(power, output, side, x));
                    sum += Math.Abs(begun - turn);
                    (begun, side) = (turn, h);
                }
                else if (side == 0)
                {
                    side = h;
                }

                (x, next) = (next, x);
            }

            at += Chunk * stride;
            double whole = sum + Math.Abs(begun - SquareMatrix.Dot(toCome, x));
            if (ending.IsNear(at, whole))
            {
                return whole;
            }

            if (MostStrides <= strides * (4 + (section * section)))
            {
                return whole + ending.Left;
            }
        }
    }

    /// <summary>The states at the first sample whose output lies on the other side of zero, less than a stride on.</summary>
    private double[] Turn(int power, double[] output, double side, double[] x)
    {
        double[] low = (double[])x.Clone(), middle = new double[x.Length];
        for (int half = power - 1; 0 <= half; half--)
        {
            Step(half, low, middle);
            if (0 <= SquareMatrix.Dot(output, middle) * side)
            {
                (low, middle) = (middle, low);
            }
        }

        Step(0, low, middle);
        return middle;
    }

    /// <summary>What an output is of the states of its section and those before, and its sum over this sample and all to come.</summary>
    private void Read(int section, double[] output, double[] toCome)
    {
        double through = 1, sum = 1;
        for (int i = section; 0 <= i; i--)
        {
            Biquad s = _sections[i];
            (double n0, double n1, double n2) = _polesAlone && i == section ? (1, 0, 0) : (s.B0, s.B1, s.B2);
            (double c1, double c2, double direct) = _states[i].Output(n0, n1, n2);
            (double g1, double g2) = _states[i].ToCome(c1, c2);
            (output[2 * i], output[(2 * i) + 1]) = (through * c1, through * c2);
            (toCome[2 * i], toCome[(2 * i) + 1]) = (sum * g1, sum * g2);
            through *= direct;
            sum *= (n0 + n1 + n2) / _states[i].Q;
        }
    }

    /// <summary>The states one sample after an impulse at the input.</summary>
    private double[] Impulse()
    {
        double[] x = new double[Size];
        double reaches = 1;
        for (int i = 0; i < _sections.Length; i++)
        {
            x[(2 * i) + 1] = reaches * _states[i].Input;
            reaches *= _sections[i].B0;
        }

        return x;
    }

    private void Advance(double[] x, int size, long samples)
    {
        double[] next = new double[size];
        for (int power = 0; samples != 0; power++, samples >>= 1)
        {
            if ((samples & 1) != 0)
            {
                Step(power, x, next);
                next.CopyTo(x, 0);
            }
        }
    }

    /// <summary>2^power samples on: the matrices stand column by column, of a cascade's only what lies at and below the section itself.</summary>
    private void Step(int power, double[] x, double[] next)
    {
        double[] change = Power(power);
        x.CopyTo(next, 0);
        for (int k = 0; k < x.Length; k++)
        {
            int from = k & ~1;
            SquareMatrix.AddScaled(x[k], change.AsSpan((k * Size) + from, x.Length - from), next.AsSpan(from));
        }
    }

    /// <summary>A^(2^power) − I by squaring: (I + F)² − I = 2F + F².</summary>
    private double[] Power(int power)
    {
        while (_powers.Count <= power)
        {
            if (_powers.Count == 0)
            {
                _powers.Add(OneSample());
                continue;
            }

            double[] one = _powers[^1], two = new double[one.Length];
            for (int k = 0; k < Size; k++)
            {
                for (int i = k & ~1; i < Size; i++)
                {
                    int from = i & ~1;
                    SquareMatrix.AddScaled(
                        one[(k * Size) + i], one.AsSpan((i * Size) + from, Size - from), two.AsSpan((k * Size) + from, Size - from));
                }
            }

            for (int i = 0; i < two.Length; i++)
            {
                two[i] += 2 * one[i];
            }

            _powers.Add(two);
        }

        return _powers[power];
    }

    private double[] OneSample()
    {
        double[] change = new double[Size * Size];
        double[] output = new double[Size];
        for (int i = 0; i < _sections.Length; i++)
        {
            (double f11, double f12, double f21, double f22) = _states[i].Change;
            int at = 2 * i;
            (change[(at * Size) + at], change[((at + 1) * Size) + at]) = (f11, f12);
            (change[(at * Size) + at + 1], change[((at + 1) * Size) + at + 1]) = (f21, f22);
            for (int j = 0; j < at; j++)
            {
                change[(j * Size) + at + 1] = _states[i].Input * output[j];
            }

            (double c1, double c2, double direct) = _states[i].Output(_sections[i].B0, _sections[i].B1, _sections[i].B2);
            for (int j = 0; j < at; j++)
            {
                output[j] *= direct;
            }

            (output[at], output[at + 1]) = (c1, c2);
        }

        return change;
    }

    /// <summary>What is left of a sum whose terms soon shrink as the slowest pole does.</summary>
    /// <param name="decay">The slowest pole's, a sample.</param>
    private sealed class Ending(double decay)
    {
        private (long At, double Sum) _last, _half, _later;

        /// <summary>Taken from the latter half of the sum, in which many a half period makes up for those cut off at its ends.</summary>
        internal double Left => (_last.Sum - _half.Sum) / Math.Max(Math.Exp(decay * (_last.At - _half.At)) - 1, 1e-300);

        /// <summary>True where next to nothing is left.</summary>
        internal bool IsNear(long at, double sum)
        {
            double left = (sum - _last.Sum) / Math.Max(Math.Exp(decay * (at - _last.At)) - 1, 1e-300);
            _last = (at, sum);
            if (2 * _later.At <= at)
            {
                (_half, _later) = (_later, _last);
            }

            return left <= Rest * sum;
        }
    }
}
