using System.Numerics;
using System.Runtime.Intrinsics;
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
    private const long MostSamples = 1L << 26;

    /// <summary>Strides in half a period of the fastest pole that still rings: what two changes of sign within one would leave out is a
    /// thousandth of that half period's.</summary>
    private const int StridesPerHalfPeriod = 16;

    /// <summary>Strides after which the walk looks whether it may end.</summary>
    private const int Chunk = 64;

    /// <summary>Strides of one section after which a sum that has not ended is closed likewise; each costs the square of the sections before
    /// it.</summary>
    private const long MostStrides = 1L << 24;

    /// <summary>Time constants of the slowest pole after which a sum is near its end: ln of 1 over <see cref="Rest"/>.</summary>
    private const double Near = 23;

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
        bool turned = 0 < CascadeSpectrum.Stable(cascade).Sections.DefaultIfEmpty(Biquad.Through).MaxBy(s => s.PoleRadius).A1;
        var growth = new CascadeGrowth([.. cascade.Sections.Select(s => turned ? CascadeSpectrum.Turned(s) : s)], polesAlone);
        growth.Add();
        return growth._sums;
    }

    private void Add()
    {
        // A walk begins at a sample; without one the lanes, each a sample behind the one before it, need not be brought level.
        bool walks = 4 + _sections.Length <= StrideAt((long)Math.Min(Near / _slowest, 1L << 60));
        Action<double[]> run = walks ? OneByOne() : FourByFour();
        Ending[] endings = [.. _sections.Select(_ => new Ending(_slowest))];
        double[] block = new double[Block];
        block[0] = 1;
        for (long at = Block; ; at += Block)
        {
            run(block);
            bool done = true;
            for (int i = 0; i < _sections.Length; i++)
            {
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
            if (walks && 4 + _sections.Length <= StrideAt(at))
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

    private Action<double[]> OneByOne()
    {
        SectionRunner[] whole = [.. _sections.Select(s => new SectionRunner(new SecondOrderSections([s])))];
        SectionRunner[] poles = [.. _sections.Select(s => new SectionRunner(new SecondOrderSections([new Biquad(1, 0, 0, s.A1, s.A2)])))];
        double[] own = new double[Block];
        return block =>
        {
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
            }
        };
    }

    private Action<double[]> FourByFour()
    {
        Lanes[] groups = [.. Enumerable.Range(0, (_sections.Length + 3) / 4).Select(group => new Lanes(_sections, 4 * group))];
        return block =>
        {
            foreach (Lanes group in groups)
            {
                group.Run(block, _polesAlone);
                group.Sums(_sums);
            }
        };
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

    /// <summary>All sections together from a sample on, until next to nothing is left of any.</summary>
    private void Walk(long at)
    {
        double[] x = Impulse(), next = new double[Size];
        Advance(x, Size, at - 1);
        Output[] outputs = [.. _sections.Select((_, section) => Read(section).Begin(x, at, _sums[section], _slowest))];
        for (long strides = Chunk; ; strides += Chunk)
        {
            long stride = StrideAt(at);
            int power = BitOperations.Log2((ulong)stride);
            for (int k = 0; k < Chunk; k++)
            {
                Step(power, x, next);
                foreach (Output one in outputs)
                {
                    double h = one.At(next);
                    if (h * one.Side < 0)
                    {
                        one.Turn(Turn(power, one, x));
                    }

                    one.Side = h == 0 ? one.Side : h;
                }

                (x, next) = (next, x);
            }

            at += Chunk * stride;
            bool done = true, isLong = MostStrides <= strides * (4 + (_sections.Length * _sections.Length));
            for (int i = 0; i < outputs.Length; i++)
            {
                _sums[i] = outputs[i].Whole(x);
                bool near = outputs[i].Ending.IsNear(at, _sums[i]);
                _sums[i] += isLong && !near ? outputs[i].Ending.Left : 0;
                done &= near;
            }

            if (done || isLong)
            {
                return;
            }
        }
    }

    /// <summary>The states at the first sample whose output lies on the other side of zero, less than a stride on.</summary>
    private double[] Turn(int power, Output output, double[] x)
    {
        double[] low = x[..output.Shares.Length], middle = new double[low.Length];
        for (int half = power - 1; 0 <= half; half--)
        {
            Step(half, low, middle);
            if (0 <= output.At(middle) * output.Side)
            {
                (low, middle) = (middle, low);
            }
        }

        Step(0, low, middle);
        return middle;
    }

    /// <summary>What an output is of the states of its section and those before, and its sum over this sample and all to come.</summary>
    private Output Read(int section)
    {
        double[] output = new double[2 * (section + 1)], toCome = new double[output.Length];
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

        return new Output(output, toCome);
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

    /// <summary>Four sections in the lanes of a vector, each one sample behind the one before it, and the sums of the sizes of what they put
    /// out; what stands beyond the last section passes everything.</summary>
    private sealed class Lanes
    {
        private readonly int _first;
        private readonly Vector256<double> _b0, _b1, _b2, _a1, _a2;
        private Vector256<double> _y, _s1, _s2, _w1, _w2, _sums;

        internal Lanes(Biquad[] sections, int first)
        {
            Biquad[] four = [.. Enumerable.Range(first, 4).Select(i => i < sections.Length ? sections[i] : Biquad.Through)];
            Vector256<double> Of(Func<Biquad, double> part) => Vector256.Create(part(four[0]), part(four[1]), part(four[2]), part(four[3]));
            (_first, _b0, _b1, _b2, _a1, _a2) = (first, Of(s => s.B0), Of(s => s.B1), Of(s => s.B2), Of(s => s.A1), Of(s => s.A2));
        }

        internal void Sums(double[] sums)
        {
            for (int lane = 0; lane < 4 && _first + lane < sums.Length; lane++)
            {
                sums[_first + lane] = _sums.GetElement(lane);
            }
        }

        /// <summary>Takes a block through the four; what leaves the last is three samples late.</summary>
        internal void Run(double[] block, bool polesAlone)
        {
            (Vector256<double> y, Vector256<double> s1, Vector256<double> s2, Vector256<double> w1, Vector256<double> w2) = (_y, _s1, _s2, _w1, _w2);
            Vector256<double> b0 = _b0, b1 = _b1, b2 = _b2, a1 = _a1, a2 = _a2, sums = _sums;
            Vector256<long> before = Vector256.Create(0L, 0, 1, 2);
            for (int n = 0; n < block.Length; n++)
            {
                Vector256<double> x = Vector256.Shuffle(y, before).WithElement(0, block[n]);
                y = (b0 * x) + s1;
                s1 = (b1 * x) + s2 - (a1 * y);
                s2 = (b2 * x) - (a2 * y);
                if (polesAlone)
                {
                    (w1, w2) = (x - (a1 * w1) - (a2 * w2), w1);
                    sums += Vector256.Abs(w1);
                }
                else
                {
                    sums += Vector256.Abs(y);
                }

                block[n] = y.GetElement(3);
            }

            (_y, _s1, _s2, _w1, _w2, _sums) = (y, s1, s2, w1, w2, sums);
        }
    }

    /// <summary>One section's output on the walk.</summary>
    /// <param name="shares">Of the states of the section and of those before it in the output.</param>
    /// <param name="toCome">Their shares in its sum over a sample and all to come.</param>
    private sealed class Output(double[] shares, double[] toCome)
    {
        private double _sum;
        private double _begun;

        internal double[] Shares => shares;

        /// <summary>Any value on the side of zero on which it was last.</summary>
        internal double Side { get; set; }

        internal Ending Ending { get; private set; } = new(1);

        internal double At(double[] x) => SquareMatrix.Dot(shares, x.AsSpan(0, shares.Length));

        /// <param name="x">States at the first sample of the walk.</param>
        /// <param name="at">Its number.</param>
        /// <param name="sum">Of what came before it.</param>
        /// <param name="decay">Of the slowest pole.</param>
        internal Output Begin(double[] x, long at, double sum, double decay)
        {
            (_sum, _begun, Side, Ending) = (sum, ToCome(x), At(x), new Ending(decay));
            Ending.IsNear(at, sum);
            return this;
        }

        /// <summary>What was on one side of zero is added.</summary>
        /// <param name="x">States at the first sample on the other.</param>
        internal void Turn(double[] x)
        {
            double turn = ToCome(x);
            (_sum, _begun) = (_sum + Math.Abs(_begun - turn), turn);
        }

        internal double Whole(double[] x) => _sum + Math.Abs(_begun - ToCome(x));

        private double ToCome(double[] x) => SquareMatrix.Dot(toCome, x.AsSpan(0, toCome.Length));
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
