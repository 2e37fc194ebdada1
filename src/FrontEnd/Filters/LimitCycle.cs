namespace FrontEnd.Filters;

/// <summary>What a fixed-point section does for ever with nothing at its input.</summary>
/// <param name="Amplitude">Largest size in the cycle, in LSB of the sample.</param>
/// <param name="Period">Samples until it repeats; 1 is a constant (a dead band).</param>
public sealed record LimitCycle(double Amplitude, int Period)
{
    /// <summary>The largest limit cycle found in a section, by running it from many starts until its states repeat; null where it always
    /// comes to rest.</summary>
    /// <param name="section">Rounded to fixed point.</param>
    /// <param name="starts">Starts tried in each direction; they go up to four times the dead band's forecast.</param>
    /// <remarks>A search, not a proof: a larger cycle may exist. The pair of past outputs is the whole state, and it is a pair of whole
    /// numbers, so that it must repeat.</remarks>
    public static LimitCycle? Search(QuantisedSection section, FixedFormat format, int starts = 12) =>
        Search(section, format, starts, long.MaxValue).Largest;

    /// <summary>The same within a number of steps; fewer starts where the poles lie so near the circle that each takes long.</summary>
    internal static LimitCycleSearch SearchWithin(QuantisedSection section, FixedFormat format, long most)
    {
        // From four dead bands to rest takes some eight time constants.
        double each = 16 + (8 / -Math.Log(Math.Clamp(section.Rounded.PoleRadius, 0.1, 1 - 1e-12)));
        int starts = (int)Math.Clamp((Math.Sqrt(most / each) - 1) / 2, 1, 12);
        return Search(section, format, starts, most);
    }

    private static LimitCycleSearch Search(QuantisedSection section, FixedFormat format, int starts, long most)
    {
        if (section.FractionBits is not { } fraction)
        {
            throw new ArgumentOutOfRangeException(nameof(section), section, "The section must be rounded to fixed point.");
        }

        if (section.Standing != PoleStanding.InsideCircle)
        {
            return new LimitCycleSearch(null, false);
        }

        DeadBand band = RoundOff.DeadBandOf(section.Rounded);
        double span = 4 * Math.Max(Math.Max(band.Constant, band.Alternating), band.Oscillating ?? 0);
        // Products of 32-bit words with larger states would leave 64 bits.
        if (Math.Pow(2, 28) < span)
        {
            return new LimitCycleSearch(null, false);
        }

        LimitCycle? worst = null;
        bool complete = true;
        for (int i = -starts; i <= starts; i++)
        {
            for (int j = -starts; j <= starts; j++)
            {
                long y1 = (long)Math.Round(span * i / starts);
                long y2 = (long)Math.Round(span * j / starts);
                LimitCycle? found = Follow(section.Words[3], section.Words[4], fraction, y1, y2, ref most);
                if (most < 0)
                {
                    complete = false;
                    break;
                }

                if (found is not null && (worst is null || worst.Amplitude < found.Amplitude))
                {
                    worst = found;
                }
            }
        }

        double unit = Math.Pow(2, -format.StateFraction);
        return new LimitCycleSearch(worst is null ? null : worst with { Amplitude = worst.Amplitude * unit }, complete);
    }

    /// <summary>Brent's cycle search on the states (y1, y2).</summary>
    private static LimitCycle? Follow(long a1, long a2, int fraction, long y1, long y2, ref long left)
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
            if (--left < 0)
            {
                return null;
            }
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

/// <summary>What a search for limit cycles came to.</summary>
/// <param name="Largest">The largest found; null where none was.</param>
/// <param name="IsComplete">False where states too long for the search or its bound of steps ended it early.</param>
public sealed record LimitCycleSearch(LimitCycle? Largest, bool IsComplete);
