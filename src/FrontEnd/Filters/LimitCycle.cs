using FrontEnd.Numbers;

namespace FrontEnd.Filters;

/// <summary>What a fixed-point filter does for ever with nothing at its input.</summary>
/// <param name="Amplitude">Largest size of the output in the cycle, in LSB of the sample.</param>
/// <param name="Period">Samples until the output repeats; 1 is a constant (a dead band).</param>
public sealed record LimitCycle(double Amplitude, int Period)
{
    /// <summary>The largest limit cycle found in a section by itself, see <see cref="CycleSearch"/>; null where it always comes to
    /// rest.</summary>
    /// <param name="section">Rounded to fixed point.</param>
    /// <param name="format">The word it was rounded to.</param>
    public static LimitCycle? Search(QuantisedSection section, FixedFormat format) =>
        CycleSearch.Of([section], format, long.MaxValue).Largest;
}

/// <summary>What a search for limit cycles came to.</summary>
/// <param name="Largest">The largest found; null where none was.</param>
/// <param name="IsComplete">False where states too long for the search or its bound of steps ended it early.</param>
public sealed record LimitCycleSearch(LimitCycle? Largest, bool IsComplete);

/// <summary>The limit cycles of a whole filter in fixed point: it is run with nothing at its input from many starts, all sections together,
/// each on what the one before it goes on giving, until its states repeat.</summary>
/// <remarks>A search and not a proof: a larger cycle may exist, up to <see cref="RoundOff.HangingBound"/>. The last two outputs of every
/// section are the whole state, in both forms, as both round the same sum once; they are whole numbers, so that they must repeat.
/// Starts: every section by itself from a grid of states with the others at rest; all sections where a large constant would have left them, of
/// either sign; and states drawn at random in all sections at once.</remarks>
internal sealed class CycleSearch
{
    private const int MostStarts = 12;

    // Sums of five products of 32-bit words and larger states would leave 64 bits.
    private const long LargestState = 1L << 28;

    private readonly long[] words;
    private readonly int[] shifts;
    private readonly long[] y1;
    private readonly long[] y2;
    private readonly long[] kept1;
    private readonly long[] kept2;
    private readonly double[] spans;
    private long left;
    private bool isShort;
    private LimitCycle? worst;

    private CycleSearch(IReadOnlyList<QuantisedSection> sections, long most)
    {
        words = [.. sections.SelectMany(s => s.Words)];
        shifts = [.. sections.Select(s => s.FractionBits!.Value)];
        (y1, y2, kept1, kept2) = (new long[shifts.Length], new long[shifts.Length], new long[shifts.Length], new long[shifts.Length]);
        spans = Spans([.. sections.Select(s => s.Rounded)]);
        left = most;
    }

    /// <summary>The largest cycle at the last section's output.</summary>
    /// <param name="sections">Rounded to fixed point, in the order of the signal.</param>
    /// <param name="format">The word they were rounded to.</param>
    /// <param name="most">Steps of one section after which the search ends.</param>
    internal static LimitCycleSearch Of(IReadOnlyList<QuantisedSection> sections, FixedFormat format, long most)
    {
        if (sections.FirstOrDefault(s => s.FractionBits is null) is { } free)
        {
            throw new ArgumentOutOfRangeException(nameof(sections), free, "The sections must be rounded to fixed point.");
        }

        if (sections.Count == 0)
        {
            return new LimitCycleSearch(null, true);
        }

        if (sections.Any(s => s.Standing != PoleStanding.InsideCircle || s.FractionBits < 0))
        {
            return new LimitCycleSearch(null, false);
        }

        var search = new CycleSearch(sections, most);
        if (LargestState < search.spans.Max())
        {
            return new LimitCycleSearch(null, false);
        }

        // From four dead bands to rest takes some eight time constants of each section.
        double each = sections.Count * (16 + sections.Sum(s => 8 / -Math.Log(Math.Clamp(s.Rounded.PoleRadius, 0.1, 1 - 1e-12))));
        int starts = (int)Math.Clamp((Math.Sqrt(most / each / (sections.Count + 1)) - 1) / 2, 1, MostStarts);
        search.FromConstants([.. sections.Select(s => s.Rounded.DcGain)]);
        search.FromEachSection(starts);
        search.FromDraws((2 * starts + 1) * (2 * starts + 1));
        double unit = Math.Pow(2, -format.StateFraction);
        LimitCycle? found = search.worst;
        return new LimitCycleSearch(found is null ? null : found with { Amplitude = found.Amplitude * unit }, !search.isShort);
    }

    /// <summary>Four times the levels at which each section hangs by itself, those of the sections before it carried through it.</summary>
    private static double[] Spans(Biquad[] sections)
    {
        double[] levels = new double[sections.Length];
        double level = 0;
        for (int i = 0; i < sections.Length; i++)
        {
            var alone = new SecondOrderSections([sections[i]]);
            double gain = Enumerable.Range(0, 65).Max(k => Math.Sqrt(alone.PowerResponse(k / 128.0, 1)));
            DeadBand band = RoundOff.DeadBandOf(sections[i]);
            level = (gain * level) + Math.Max(Math.Max(band.Constant, band.Alternating), band.Oscillating ?? 0);
            levels[i] = 4 * level;
        }

        return levels;
    }

    /// <summary>Where a large constant at the input would have left the sections, either sign.</summary>
    private void FromConstants(double[] gains)
    {
        foreach (int sign in (int[])[1, -1])
        {
            // As driven by a constant, and each at its own span: a high-pass would be driven to nothing.
            double level = sign * spans[0];
            for (int i = 0; i < y1.Length; i++)
            {
                level *= Math.Clamp(gains[i], -16, 16);
                y1[i] = y2[i] = (long)Math.Clamp(level, -LargestState, LargestState);
            }

            Follow();
            for (int i = 0; i < y1.Length; i++)
            {
                y1[i] = y2[i] = (long)(sign * spans[i]);
            }

            Follow();
        }
    }

    private void FromEachSection(int starts)
    {
        for (int section = 0; section < y1.Length; section++)
        {
            for (int i = -starts; i <= starts; i++)
            {
                for (int j = -starts; j <= starts; j++)
                {
                    Array.Clear(y1);
                    Array.Clear(y2);
                    y1[section] = (long)Math.Round(spans[section] * i / starts);
                    y2[section] = (long)Math.Round(spans[section] * j / starts);
                    Follow();
                }
            }
        }
    }

    private void FromDraws(int draws)
    {
        var random = new SeededRandom(1);
        for (int draw = 0; draw < draws && 1 < y1.Length; draw++)
        {
            for (int i = 0; i < y1.Length; i++)
            {
                y1[i] = (long)Math.Round(spans[i] * ((2 * random.NextUnit()) - 1));
                y2[i] = (long)Math.Round(spans[i] * ((2 * random.NextUnit()) - 1));
            }

            Follow();
        }
    }

    /// <summary>Brent's cycle search on the states; what it finds is kept where it is the largest.</summary>
    private void Follow()
    {
        Keep();
        int power = 1;
        int length = 0;
        do
        {
            if (length == power)
            {
                Keep();
                power *= 2;
                length = 0;
            }

            Step();
            length++;
            left -= y1.Length;
            if (left < 0 || LargestState < Math.Abs(y1[^1]))
            {
                isShort = true;
                return;
            }
        }
        while (!y1.AsSpan().SequenceEqual(kept1) || !y2.AsSpan().SequenceEqual(kept2));

        long largest = 0;
        for (int i = 0; i < length; i++)
        {
            Step();
            largest = Math.Max(largest, Math.Abs(y1[^1]));
        }

        if (largest != 0 && (worst is null || worst.Amplitude < largest))
        {
            worst = new LimitCycle(largest, OutputPeriod(length));
        }
    }

    /// <summary>The output may repeat sooner than the states of the sections before it.</summary>
    private int OutputPeriod(int states)
    {
        const int Longest = 100_000;
        if (Longest < states)
        {
            return states;
        }

        long[] output = new long[states];
        for (int i = 0; i < states; i++)
        {
            Step();
            output[i] = y1[^1];
        }

        return Enumerable.Range(1, states).First(
            period => states % period == 0 && output.AsSpan(period).SequenceEqual(output.AsSpan(0, states - period)));
    }

    private void Keep()
    {
        y1.CopyTo(kept1, 0);
        y2.CopyTo(kept2, 0);
    }

    private void Step()
    {
        long x = 0, x1 = 0, x2 = 0;
        for (int i = 0; i < y1.Length; i++)
        {
            ReadOnlySpan<long> c = words.AsSpan(i * 5, 5);
            (long p1, long p2) = (y1[i], y2[i]);
            long sum = (c[0] * x) + (c[1] * x1) + (c[2] * x2) - (c[3] * p1) - (c[4] * p2);
            long y = shifts[i] == 0 ? sum : (sum + (1L << (shifts[i] - 1))) >> shifts[i];
            (y1[i], y2[i]) = (y, p1);
            (x, x1, x2) = (y, p1, p2);
        }
    }
}
