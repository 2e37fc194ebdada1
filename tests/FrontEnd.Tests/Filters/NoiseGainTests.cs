using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>Σh² and Σ|h| of cascades whose poles stand next to the circle, against closed forms, the Lyapunov equation and plain sums.</summary>
public class NoiseGainTests
{
    private static readonly Frequency Fast = Frequency.FromKilohertz(16);

    /// <summary>1/(1 − p²) of one pole, (1 + a2)/((1 − a2)·((1 + a2)² − a1²)) of two, both without cancellation in p, 1 − r² and the angle.</summary>
    [Theory]
    [InlineData(1e-2, 0.3)]
    [InlineData(1e-5, 1e-5)]
    [InlineData(1e-7, 2e-6)]
    [InlineData(1e-7, 3.1415)]
    [InlineData(3e-6, 1.3)]
    public void NoiseGain_OfOneAndTwoPoles_IsTheClosedForm(double away, double angle)
    {
        double pole = 1 - away;
        foreach (double sign in (double[])[1, -1])
        {
            double first = 1 / ((1 - pole) * (1 + pole));
            Assert.Equal(1, RoundOff.NoiseGain(new SecondOrderSections([new Biquad(0.3, 0.2, 0, sign * -pole, 0)]), 0) / first, 1e-9);
        }

        var section = new Biquad(1, 0, 0, -2 * pole * Math.Cos(angle), pole * pole);
        double low = 1 + section.A1 + section.A2, high = 1 - section.A1 + section.A2;
        double second = (1 + section.A2) / ((1 - section.A2) * low * high);
        Assert.Equal(1, RoundOff.NoiseGain(new SecondOrderSections([section]), 0) / second, 1e-9);
    }

    /// <summary>The plain sum of the impulse response, where it ends in reasonable time.</summary>
    [Theory]
    [InlineData(FilterFamily.Butterworth, FilterShape.LowPass, 8, 20, 0)]
    [InlineData(FilterFamily.Chebyshev, FilterShape.HighPass, 7, 10, 0)]
    [InlineData(FilterFamily.Elliptic, FilterShape.BandStop, 4, 49, 51)]
    [InlineData(FilterFamily.CriticallyDamped, FilterShape.LowPass, 10, 5, 0)]
    [InlineData(FilterFamily.InverseChebyshev, FilterShape.HighPass, 5, 124, 0)]
    public void Norms_WhereTheSumEnds_AreTheSum(FilterFamily family, FilterShape shape, int order, double low, double high)
    {
        SecondOrderSections sections = Designed(family, shape, order, low, high, Frequency.FromHertz(250));
        IReadOnlyList<OverflowNorms> norms = RoundOff.Overflow(sections);
        for (int i = 0; i < sections.Count; i++)
        {
            double[] rounding = Impulse([new Biquad(1, 0, 0, sections[i].A1, sections[i].A2), .. sections.Sections.Skip(i + 1)]);
            double[] input = Impulse([.. sections.Sections.Take(i + 1)]);
            Assert.Equal(1, RoundOff.NoiseGain(sections, i) / rounding.Sum(h => h * h), 1e-9);
            Assert.Equal(1, norms[i].L2 * norms[i].L2 / input.Sum(h => h * h), 1e-9);
            Assert.Equal(1, norms[i].L1 / input.Sum(Math.Abs), 1e-8);
        }

        QuantisedFilter kept = QuantisedFilter.Of(sections, NumberFormat.Q31);
        Assert.Equal(kept.Sections.Count, RoundOff.Paths(kept).Growths.Count);
        for (int i = 0; i < sections.Count; i++)
        {
            double[] rounding = Impulse([new Biquad(1, 0, 0, kept.Sections[i].A1, kept.Sections[i].A2), .. kept.Sections.Sections.Skip(i + 1)]);
            Assert.Equal(1, RoundOff.Paths(kept).Growths[i] / rounding.Sum(Math.Abs), 1e-8);
        }
    }

    /// <summary>The discrete Lyapunov equation P = A·P·Aᵀ + B·Bᵀ by doubling, P += A·P·Aᵀ, A = A², in whole numbers over 2^400: as long as it takes, and
    /// no rounding counts. A band-pass over four decades amplifies in one section what the next takes out: 64-bit covariances keep no digit of it.</summary>
    [Theory]
    [InlineData(FilterFamily.Butterworth, FilterShape.LowPass, 20, 0.01, 0)]
    [InlineData(FilterFamily.Chebyshev, FilterShape.HighPass, 9, 0.01, 0)]
    [InlineData(FilterFamily.CriticallyDamped, FilterShape.LowPass, 12, 0.01, 0)]
    [InlineData(FilterFamily.Elliptic, FilterShape.LowPass, 20, 0.01, 0)]
    [InlineData(FilterFamily.Butterworth, FilterShape.BandPass, 4, 0.01, 100)]
    [InlineData(FilterFamily.Butterworth, FilterShape.HighPass, 6, 7999.99, 0)]
    public void NoiseGain_NextToTheCircle_SolvesTheLyapunovEquation(FilterFamily family, FilterShape shape, int order, double low, double high)
    {
        SecondOrderSections sections = Designed(family, shape, order, low, high, Fast);
        foreach (int section in (int[])[0, sections.Count / 2, sections.Count - 1])
        {
            double exact = Lyapunov([new Biquad(1, 0, 0, sections[section].A1, sections[section].A2), .. sections.Sections.Skip(section + 1)]);
            Assert.Equal(1, RoundOff.NoiseGain(sections, section) / exact, 1e-9);
        }

        Assert.Equal(1, RoundOff.Overflow(sections)[^1].L2 / Math.Sqrt(Lyapunov([.. sections.Sections])), 1e-9);
    }

    /// <summary>What the sum cannot reach: Σ|h| of a filter hangs on its rate only by what the bilinear transform does, a share of (f/fs)².</summary>
    [Theory]
    [InlineData(FilterFamily.Butterworth, FilterShape.LowPass, 20)]
    [InlineData(FilterFamily.Chebyshev, FilterShape.LowPass, 7)]
    [InlineData(FilterFamily.Bessel, FilterShape.LowPass, 6)]
    public void Growth_OfASlowFilter_IsThatOfTheSameFilterLessSlow(FilterFamily family, FilterShape shape, int order)
    {
        IReadOnlyList<OverflowNorms> slow = RoundOff.Overflow(Designed(family, shape, order, 0.02, 0, Fast));
        IReadOnlyList<OverflowNorms> faster = RoundOff.Overflow(Designed(family, shape, order, 20, 0, Fast));
        for (int i = 0; i < slow.Count; i++)
        {
            Assert.Equal(1, slow[i].L1 / faster[i].L1, 5e-5);
            Assert.Equal(1, slow[i].LInfinity / faster[i].LInfinity, 5e-5);
        }
    }

    [Fact]
    public void Norms_WithAPoleOnTheCircle_AreOurMistake()
    {
        SecondOrderSections sections = new([new Biquad(1, 0, 0, -1, 0)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundOff.NoiseGain(sections, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundOff.Overflow(sections));
        Assert.Throws<ArgumentOutOfRangeException>(() => CascadeGrowth.Of(sections, polesAlone: true));
        Assert.Equal([1.0, 3.0], CascadeGrowth.Of(new([Biquad.Through, new Biquad(1, -1, 1, 0, 0)]), polesAlone: false));
    }

    private static SecondOrderSections Designed(
        FilterFamily family, FilterShape shape, int order, double low, double high, Frequency rate) => new FilterWish
        {
            Family = family, Shape = shape, Order = order, Rate = rate,
            Corners = high == 0 ? [Frequency.FromHertz(low)] : [Frequency.FromHertz(low), Frequency.FromHertz(high)],
            Ripple = Decibels.FromStated(1), Attenuation = Decibels.FromStated(60),
        }.Design().Digital!.Sections;

    private static double[] Impulse(IReadOnlyList<Biquad> sections)
    {
        double[] h = new double[200_000];
        h[0] = 1;
        foreach (Biquad s in sections)
        {
            (double x1, double x2, double y1, double y2) = (0, 0, 0, 0);
            for (int n = 0; n < h.Length; n++)
            {
                double y = (s.B0 * h[n]) + (s.B1 * x1) + (s.B2 * x2) - (s.A1 * y1) - (s.A2 * y2);
                (x1, x2, y1, y2) = (h[n], x1, y, y1);
                h[n] = y;
            }
        }

        return h;
    }

    private const int Places = 400;

    private static double Lyapunov(IReadOnlyList<Biquad> sections)
    {
        int n = 2 * sections.Count;
        BigInteger[,] a = new BigInteger[n, n], p = new BigInteger[n, n];
        BigInteger[] b = new BigInteger[n], output = new BigInteger[n];
        BigInteger direct = BigInteger.One << Places;
        for (int i = 0; i < sections.Count; i++)
        {
            // The last two values of w = v − a1·w1 − a2·w2; out go b0·w + b1·w1 + b2·w2.
            (BigInteger b0, BigInteger a1, BigInteger a2) = (Whole(sections[i].B0), Whole(sections[i].A1), Whole(sections[i].A2));
            for (int j = 0; j < 2 * i; j++)
            {
                a[2 * i, j] = output[j];
                output[j] = (b0 * output[j]) >> Places;
            }

            (a[2 * i, 2 * i], a[2 * i, (2 * i) + 1], a[(2 * i) + 1, 2 * i], b[2 * i]) = (-a1, -a2, BigInteger.One << Places, direct);
            output[2 * i] = Whole(sections[i].B1) - ((b0 * a1) >> Places);
            output[(2 * i) + 1] = Whole(sections[i].B2) - ((b0 * a2) >> Places);
            direct = (direct * b0) >> Places;
        }

        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                p[i, j] = (b[i] * b[j]) >> Places;
            }
        }

        // 2^40 samples: every pole of these filters has died away.
        for (int doubling = 0; doubling < 40; doubling++)
        {
            BigInteger[,] added = Product(Product(a, p, turned: false), a, turned: true);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    p[i, j] += added[i, j];
                }
            }

            a = Product(a, a, turned: false);
        }

        BigInteger sum = direct * direct;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                sum += (output[i] * output[j] * p[i, j]) >> Places;
            }
        }

        return Math.ScaleB((double)(sum >> Places), -Places);
    }

    private static BigInteger Whole(double value) => value == 0
        ? BigInteger.Zero
        : Math.ILogB(value) is var exponent && (BigInteger)Math.ScaleB(value, 52 - exponent) is var digits && Places + exponent - 52 is var shift && 0 <= shift
            ? digits << shift
            : digits >> -shift;

    private static BigInteger[,] Product(BigInteger[,] x, BigInteger[,] y, bool turned)
    {
        int n = x.GetLength(0);
        BigInteger[,] product = new BigInteger[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                BigInteger sum = BigInteger.Zero;
                for (int k = 0; k < n; k++)
                {
                    BigInteger other = turned ? y[j, k] : y[k, j];
                    sum += x[i, k].IsZero || other.IsZero ? BigInteger.Zero : x[i, k] * other;
                }

                product[i, j] = sum >> Places;
            }
        }

        return product;
    }
}
