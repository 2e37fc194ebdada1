using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>An FIR's taps as a machine holds them.</summary>
/// <param name="Ideal">As designed.</param>
/// <param name="Format">The word.</param>
/// <param name="Rounded">Values of the rounded taps.</param>
/// <param name="FractionBits">Binary places of the words; null for floating point.</param>
/// <param name="Words">Whole numbers, tap × 2^fraction bits; empty for floating point.</param>
internal sealed record QuantisedTaps(FirFilter Ideal, NumberFormat Format, FirFilter Rounded, int? FractionBits, IReadOnlyList<long> Words)
{
    /// <summary>Σ|h| of the rounded taps: growth of the worst input.</summary>
    public double L1 => Rounded.Taps.ToArray().Sum(Math.Abs);

    /// <summary>Σ|h − ideal h|: the response changes nowhere by more.</summary>
    public double LargestChange
    {
        get
        {
            double sum = 0;
            for (int k = 0; k < Ideal.Length; k++)
            {
                sum += Math.Abs(Rounded.Taps[k] - Ideal.Taps[k]);
            }

            return sum;
        }
    }

    /// <summary>Rounds every tap to the nearest; in fixed point all share the binary point that lets the largest fit.</summary>
    public static QuantisedTaps Of(FirFilter filter, NumberFormat format)
    {
        double[] taps = filter.Taps.ToArray();
        switch (format)
        {
            case DoubleFormat:
                return new QuantisedTaps(filter, format, filter, null, []);
            case SingleFormat:
                return new QuantisedTaps(filter, format, new FirFilter([.. taps.Select(h => (double)(float)h)], filter.Rate), null, []);
            case FixedFormat { WordBits: var bits }:
                int fraction = QuantisedFilter.FractionFor(taps, bits);
                double unit = Math.Pow(2, fraction);
                long[] words = [.. taps.Select(h => (long)Math.Round(h * unit, MidpointRounding.AwayFromZero))];
                return new QuantisedTaps(filter, format, new FirFilter([.. words.Select(w => w / unit)], filter.Rate), fraction, words);
            default:
                throw new ArgumentOutOfRangeException(nameof(format), format, "The format is not handled.");
        }
    }
}

/// <summary>A running FIR, bit for bit as the exported code computes it. One runner per channel.</summary>
/// <remarks>Floating point: symmetric taps meet the sum of their two samples, from the newest and oldest inwards, each product and sum
/// rounded in turn. Fixed point: the exact sum, rounded once, half up, saturating at 32 bits.</remarks>
internal sealed class FirRunner(QuantisedTaps taps)
{
    private readonly double[] coefficients = taps.Rounded.Taps.ToArray();
    private readonly float[] singles = [.. taps.Rounded.Taps.ToArray().Select(h => (float)h)];
    private readonly bool folded = taps.Rounded.IsSymmetric;

    /// <summary>From rest, in double precision.</summary>
    public void Run(ReadOnlySpan<double> input, Span<double> output) => Run(coefficients, input, output);

    /// <summary>From rest, in single precision.</summary>
    public void Run(ReadOnlySpan<float> input, Span<float> output) => Run(singles, input, output);

    /// <summary>From rest, in whole numbers.</summary>
    public void Run(ReadOnlySpan<int> input, Span<int> output)
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        int shift = taps.FractionBits ?? throw new InvalidOperationException("The taps are not rounded to fixed point.");
        for (int n = 0; n < input.Length; n++)
        {
            Int128 sum = shift <= 0 ? 0 : Int128.One << (shift - 1);
            for (int k = 0; k < taps.Words.Count && k <= n; k++)
            {
                sum += (Int128)taps.Words[k] * input[n - k];
            }

            output[n] = (int)Int128.Clamp(sum >> shift, int.MinValue, int.MaxValue);
        }
    }

    private void Run<T>(T[] h, ReadOnlySpan<T> input, Span<T> output)
        where T : struct, INumber<T>
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        for (int n = 0; n < input.Length; n++)
        {
            T sum = T.Zero;
            for (int k = 0; k < (folded ? h.Length / 2 : h.Length); k++)
            {
                T x = At(input, n - k);
                sum += h[k] * (folded ? x + At(input, n - (h.Length - 1 - k)) : x);
            }

            output[n] = folded && h.Length % 2 == 1 ? sum + (h[h.Length / 2] * At(input, n - (h.Length / 2))) : sum;
        }
    }

    private static T At<T>(ReadOnlySpan<T> input, int n)
        where T : struct => n < 0 ? default : input[n];
}

/// <summary>A running comb in whole numbers with running sums, bit for bit as the exported code computes it. One runner per
/// channel.</summary>
/// <remarks>With T the sum of the last K·M samples and P the sum of every M-th of them, the newest included: y = (K·M·x − M·P + T)/(K·M),
/// rounded once, half up, saturating at 32 bits. Whole numbers lose nothing, so that the sums
/// never drift, as they would in floating point. For K = 1 P is x and y is the mean of the last M. Derived from the comb's H.</remarks>
internal sealed class CombRunner(PeriodComb comb)
{
    private readonly long[] ring = new long[comb.Length];
    private readonly long[] phases = new long[comb.Period];
    private long total;
    private int at;

    /// <summary>Filters a block of counts; the state carries over to the next.</summary>
    public void Run(ReadOnlySpan<int> input, Span<int> output)
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        long length = comb.Length;
        for (int n = 0; n < input.Length; n++)
        {
            long x = input[n], change = x - ring[at];
            int phase = at % comb.Period;
            ring[at] = x;
            at = at + 1 == ring.Length ? 0 : at + 1;
            total += change;
            phases[phase] += change;
            long sum = (length * x) - (comb.Period * phases[phase]) + total;
            // Floor of (2·sum + length)/(2·length): half up, also below zero.
            long twice = (2 * sum) + length, quotient = twice / (2 * length);
            output[n] = (int)Math.Clamp(twice < quotient * 2 * length ? quotient - 1 : quotient, int.MinValue, int.MaxValue);
        }
    }
}
