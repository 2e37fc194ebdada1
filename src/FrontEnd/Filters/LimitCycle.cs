namespace FrontEnd.Filters;

/// <summary>What a fixed-point section does for ever with nothing at its input.</summary>
/// <param name="Amplitude">Largest size in the cycle, in LSB of the sample.</param>
/// <param name="Period">Samples until it repeats; 1 is a constant (a dead band).</param>
public sealed record LimitCycle(double Amplitude, int Period)
{
    /// <summary>The largest limit cycle found in a section, by running it from many starts until its states repeat; null where it always comes to rest.</summary>
    /// <param name="section">Rounded to fixed point.</param>
    /// <param name="starts">Starts tried in each direction; they go up to four times the dead band's forecast.</param>
    /// <remarks>A search, not a proof: a larger cycle may exist. The pair of past outputs is the whole state, and it is a pair of whole numbers, so that it must repeat.</remarks>
    public static LimitCycle? Search(QuantisedSection section, FixedFormat format, int starts = 12)
    {
        if (section.FractionBits is not { } fraction)
        {
            throw new ArgumentOutOfRangeException(nameof(section), section, "The section must be rounded to fixed point.");
        }

        if (section.Standing != PoleStanding.InsideCircle)
        {
            return null;
        }

        DeadBand band = RoundOff.DeadBandOf(section.Rounded);
        double span = 4 * Math.Max(Math.Max(band.Constant, band.Alternating), band.Oscillating ?? 0);
        LimitCycle? worst = null;
        for (int i = -starts; i <= starts; i++)
        {
            for (int j = -starts; j <= starts; j++)
            {
                long y1 = (long)Math.Round(span * i / starts);
                long y2 = (long)Math.Round(span * j / starts);
                LimitCycle? found = Follow(section.Words[3], section.Words[4], fraction, y1, y2);
                if (found is not null && (worst is null || worst.Amplitude < found.Amplitude))
                {
                    worst = found;
                }
            }
        }

        double unit = Math.Pow(2, -format.StateFraction);
        return worst is null ? null : worst with { Amplitude = worst.Amplitude * unit };
    }

    /// <summary>Brent's cycle search on the states (y1, y2).</summary>
    private static LimitCycle? Follow(long a1, long a2, int fraction, long y1, long y2)
    {
        (long t1, long t2) = (y1, y2);
        int power = 1;
        int length = 0;
        do
        {
            if (length == power)
            {
                (t1, t2) = (y1, y2);
                power *= 2;
                length = 0;
            }

            (y1, y2) = (Next(a1, a2, fraction, y1, y2), y1);
            length++;
        }
        while (y1 != t1 || y2 != t2);

        long largest = 0;
        for (int i = 0; i < length; i++)
        {
            (y1, y2) = (Next(a1, a2, fraction, y1, y2), y1);
            largest = Math.Max(largest, Math.Abs(y1));
        }

        return largest == 0 ? null : new LimitCycle(largest, length);
    }

    private static long Next(long a1, long a2, int fraction, long y1, long y2) =>
        fraction == 0 ? -(a1 * y1) - (a2 * y2) : (-(a1 * y1) - (a2 * y2) + (1L << (fraction - 1))) >> fraction;
}
