namespace FrontEnd.Bench;

/// <summary>Percentiles of samples that are not held: the sample at its place in the order of all, exactly.</summary>
/// <remarks>From the counts of the values where these are known. Otherwise the samples are read four times: the doubles' bits are brought
/// into the order of the numbers, and each reading counts the next 16 of them among the samples that share those before with the one that
/// is looked for.</remarks>
/// <param name="samples">The samples.</param>
/// <param name="sums">Of the same.</param>
internal sealed class SampleOrder(ISamples samples, RecordingSums sums)
{
    private const int Bits = 16;

    /// <summary>Of samples in memory.</summary>
    public static SampleOrder Of(IReadOnlyList<double> samples)
    {
        HeldSamples held = new(samples);
        return new SampleOrder(held, RecordingSums.Of(held));
    }

    /// <summary>The samples at shares of the way from the least, 0, to the greatest, 1.</summary>
    public double[] At(params ReadOnlySpan<double> shares)
    {
        var places = new long[shares.Length];
        for (int i = 0; i < places.Length; i++)
        {
            places[i] = (long)(shares[i] * (samples.Count - 1));
        }

        return sums.Values is { } values ? [.. places.Select(place => Counted(values, place))] : ByBits(places);
    }

    private static double Counted(KeyValuePair<double, long>[] values, long place)
    {
        int at = 0;
        for (long before = values[0].Value; before <= place; before += values[at].Value)
        {
            at++;
        }

        return values[at].Key;
    }

    private double[] ByBits(long[] places)
    {
        var found = new ulong[places.Length];
        var counts = new long[places.Length][];
        for (int shift = 64 - Bits; 0 <= shift; shift -= Bits)
        {
            for (int i = 0; i < places.Length; i++)
            {
                // Places that share what is found so far share their counts.
                int same = Array.IndexOf(found, found[i]);
                counts[i] = same < i ? counts[same] : new long[1 << Bits];
            }

            Count(shift, [.. Enumerable.Range(0, places.Length).Where(i => Array.IndexOf(counts, counts[i]) == i)], found, counts);
            for (int i = 0; i < places.Length; i++)
            {
                ulong digit = 0;
                for (; counts[i][digit] <= places[i]; digit++)
                {
                    places[i] -= counts[i][digit];
                }

                found[i] = (found[i] << Bits) | digit;
            }
        }

        return [.. found.Select(Number)];
    }

    private void Count(int shift, int[] different, ulong[] found, long[][] counts) => samples.Read(piece =>
    {
        const ulong Digit = (1 << Bits) - 1;
        foreach (double sample in piece)
        {
            ulong key = Key(sample) >> shift;
            foreach (int i in different)
            {
                if (key >> Bits == found[i])
                {
                    counts[i][key & Digit]++;
                }
            }
        }
    });

    /// <summary>Bits that are in order as the numbers are: a number's sign turned over, a negative one's other bits as well.</summary>
    private static ulong Key(double number)
    {
        long bits = BitConverter.DoubleToInt64Bits(number);
        return (ulong)(bits ^ ((bits >> 63) | long.MinValue));
    }

    private static double Number(ulong key)
    {
        long bits = (long)key;
        return BitConverter.Int64BitsToDouble(bits ^ (~(bits >> 63) | long.MinValue));
    }
}
