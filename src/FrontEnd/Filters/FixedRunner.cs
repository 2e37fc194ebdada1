namespace FrontEnd.Filters;

/// <summary>A running filter in fixed point, bit for bit as a machine with a long accumulator computes it. One runner per
/// channel.</summary>
/// <remarks>Each section sums its five products exactly and rounds once (half up) to the state word, which has <see
/// cref="FixedFormat.StateFraction"/> bits below the sample's LSB; the last section's output is
/// rounded to the sample. A state beyond its word saturates and is counted. The transposed form keeps its two sums at the accumulator's
/// full length and so gives the same bits as direct form I.
/// Allocates nothing while running.</remarks>
internal sealed class FixedRunner
{
    private const int BlockLength = 256;

    private readonly long[] words;
    private readonly int[] fractions;
    private readonly long[] state;
    private readonly Int128[] sums;
    private readonly long[] block = new long[BlockLength];
    private readonly FilterForm form;
    private readonly int stateFraction;
    private readonly long greatest;
    private readonly bool wide;

    /// <param name="filter">Coefficients rounded to a <see cref="FixedFormat"/>.</param>
    public FixedRunner(QuantisedFilter filter, FilterForm form = FilterForm.DirectI)
    {
        if (filter.Format is not FixedFormat format)
        {
            throw new ArgumentOutOfRangeException(nameof(filter), filter.Format, "The filter must be rounded to fixed point.");
        }

        words = [.. filter.Details.SelectMany(d => d.Words)];
        fractions = [.. filter.Details.Select(d => d.FractionBits ?? 0)];
        state = new long[filter.Details.Count * 4];
        sums = new Int128[filter.Details.Count * 2];
        this.form = form;
        stateFraction = format.StateFraction;
        greatest = (1L << (format.StateBits - 1)) - 1;
        // Five products of this length fit into 64 bits with three to spare; 32-bit words times 32-bit states do not.
        wide = 60 < format.WordBits + format.StateBits;
    }

    /// <summary>How many states have saturated so far.</summary>
    public long Overflows { get; private set; }

    /// <summary>Back to rest: all states 0.</summary>
    public void Reset()
    {
        Array.Clear(state);
        Array.Clear(sums);
        Overflows = 0;
    }

    /// <summary>Filters a block of counts; the state carries over to the next.</summary>
    public void Run(ReadOnlySpan<int> input, Span<int> output)
    {
        RunnerBlocks.RequireRoom(input.Length, output.Length);
        while (0 < input.Length)
        {
            int length = Math.Min(BlockLength, input.Length);
            Span<long> values = block.AsSpan(0, length);
            for (int n = 0; n < length; n++)
            {
                values[n] = Saturate((long)input[n] << stateFraction);
            }

            for (int i = 0; i < fractions.Length; i++)
            {
                if (form == FilterForm.TransposedDirectII)
                {
                    RunTransposed(i, values);
                }
                else if (wide)
                {
                    RunWide(i, values);
                }
                else
                {
                    RunNarrow(i, values);
                }
            }

            for (int n = 0; n < length; n++)
            {
                output[n] = (int)Math.Clamp(RoundShift(values[n], stateFraction), int.MinValue, int.MaxValue);
            }

            input = input[length..];
            output = output[length..];
        }
    }

    private static long RoundShift(long value, int bits) => bits == 0 ? value : (value + (1L << (bits - 1))) >> bits;

    private void RunNarrow(int section, Span<long> values)
    {
        ReadOnlySpan<long> c = words.AsSpan(section * 5, 5);
        Span<long> s = state.AsSpan(section * 4, 4);
        (long b0, long b1, long b2, long a1, long a2) = (c[0], c[1], c[2], c[3], c[4]);
        (long x1, long x2, long y1, long y2) = (s[0], s[1], s[2], s[3]);
        int shift = fractions[section];
        for (int n = 0; n < values.Length; n++)
        {
            long x = values[n];
            long y = Saturate(RoundShift((b0 * x) + (b1 * x1) + (b2 * x2) - (a1 * y1) - (a2 * y2), shift));
            (x2, x1, y2, y1) = (x1, x, y1, y);
            values[n] = y;
        }

        (s[0], s[1], s[2], s[3]) = (x1, x2, y1, y2);
    }

    private void RunWide(int section, Span<long> values)
    {
        ReadOnlySpan<long> c = words.AsSpan(section * 5, 5);
        Span<long> s = state.AsSpan(section * 4, 4);
        (long b0, long b1, long b2, long a1, long a2) = (c[0], c[1], c[2], c[3], c[4]);
        (long x1, long x2, long y1, long y2) = (s[0], s[1], s[2], s[3]);
        int shift = fractions[section];
        Int128 half = Half(shift);
        for (int n = 0; n < values.Length; n++)
        {
            long x = values[n];
            // Each product fits into 64 bits; only their sum does not.
            Int128 sum = (Int128)(b0 * x) + (b1 * x1) + (b2 * x2) - (a1 * y1) - (a2 * y2) + half;
            long y = Saturate(sum >> shift);
            (x2, x1, y2, y1) = (x1, x, y1, y);
            values[n] = y;
        }

        (s[0], s[1], s[2], s[3]) = (x1, x2, y1, y2);
    }

    private void RunTransposed(int section, Span<long> values)
    {
        ReadOnlySpan<long> c = words.AsSpan(section * 5, 5);
        (long b0, long b1, long b2, long a1, long a2) = (c[0], c[1], c[2], c[3], c[4]);
        (Int128 s1, Int128 s2) = (sums[section * 2], sums[(section * 2) + 1]);
        int shift = fractions[section];
        Int128 half = Half(shift);
        for (int n = 0; n < values.Length; n++)
        {
            long x = values[n];
            long y = Saturate(((Int128)(b0 * x) + s1 + half) >> shift);
            s1 = (Int128)(b1 * x) - (a1 * y) + s2;
            s2 = (Int128)(b2 * x) - (a2 * y);
            values[n] = y;
        }

        (sums[section * 2], sums[(section * 2) + 1]) = (s1, s2);
    }

    private static Int128 Half(int shift) => shift == 0 ? 0 : Int128.One << (shift - 1);

    private long Saturate(long value)
    {
        if (-greatest - 1 <= value && value <= greatest)
        {
            return value;
        }

        Overflows++;
        return value < 0 ? -greatest - 1 : greatest;
    }

    private long Saturate(Int128 value)
    {
        if (-greatest - 1 <= value && value <= greatest)
        {
            return (long)value;
        }

        Overflows++;
        return value < 0 ? -greatest - 1 : greatest;
    }
}
