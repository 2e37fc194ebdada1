namespace FrontEnd.Filters;

/// <summary>A comb over whole mains periods as someone asks for it.</summary>
public sealed record CombWish
{
    /// <summary>Longest memory of a comb in samples.</summary>
    public const int MostSamples = 65_536;

    /// <summary>Mains frequency.</summary>
    public Frequency Mains { get; init; } = Frequency.FromHertz(50);

    /// <summary>Sampling rate, a whole multiple of the mains frequency.</summary>
    public Frequency Rate { get; init; }

    /// <summary>K: 1 for the mean over one period, more for the signal less what repeats over so many periods.</summary>
    public int Periods { get; init; } = 1;

    /// <summary>Upper edge of the band whose droop is looked at.</summary>
    public Frequency Edge { get; init; } = Frequency.FromHertz(40);

    /// <summary>The comb and its figures; findings with an error where there is none.</summary>
    public CombAnswer Design()
    {
        List<Finding> findings = [.. MainsChecks.Of(Mains, Rate, Edge)];
        if (Periods is < 1 or > 1000)
        {
            findings.Add(FilterMessages.NotInRange("periods", Periods, 1, 1000));
        }

        if (findings.Count == 0)
        {
            if (PeriodComb.PeriodOf(Mains, Rate) is not { } period)
            {
                findings.Add(FilterMessages.NoWholePeriods(Mains, Rate));
            }
            else if (MostSamples < (long)period * Periods)
            {
                findings.Add(FilterMessages.CombTooLong((long)period * Periods, MostSamples));
            }
            else
            {
                // Harmonics at multiples of the rate are recorded as 0 Hz, where every comb has gain 1.
                (int, Frequency, Frequency)[] folding = [.. Enumerable.Range(1, NotchWish.MostHarmonic / period).Select(
                    k => (k * period, Frequency.FromHertz(k * Rate.Hertz), Frequency.FromHertz(0)))];
                return new CombAnswer
                {
                    Wish = this,
                    Comb = new PeriodComb(period, Periods, Rate),
                    Findings = folding.Length == 0 ? [] : [FilterMessages.HarmonicsFold(folding, NotchWish.MostHarmonic)],
                };
            }
        }

        return new CombAnswer { Wish = this, Findings = findings };
    }
}

/// <summary>What came of a wish for a comb.</summary>
public sealed record CombAnswer
{
    /// <summary>What was asked for.</summary>
    public required CombWish Wish { get; init; }

    /// <summary>The comb; null where there is none.</summary>
    public PeriodComb? Comb { get; init; }

    /// <summary>Errors where there is no comb; warnings where there is one.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The figures of an answer that has a comb.</summary>
    public CombFigures Figures => CombFigures.Of(Comb ?? throw new InvalidOperationException("The answer has no comb."), Wish);
}

/// <summary>What a comb does and costs.</summary>
/// <param name="Depths">About each harmonic below half the rate.</param>
/// <param name="Droop">In the band from 0 Hz to the edge.</param>
/// <param name="HalfPower">First frequency of half the power; null where there is none below half the rate.</param>
/// <param name="Middle">Half the band edge, where the delay is stated.</param>
/// <param name="Delay">Group delay there.</param>
/// <param name="LargestDelay">Largest group delay in the band where less than 40 dB are lost.</param>
/// <param name="Words">Samples and sums that a channel keeps.</param>
/// <param name="Multiplies">Multiplications per sample with running sums, see <see cref="CombRunner"/>; besides one division.</param>
/// <param name="Additions">Additions per sample with running sums.</param>
public sealed record CombFigures(
    IReadOnlyList<HarmonicDepth> Depths, BandDroop Droop, Frequency? HalfPower, Frequency Middle, Duration Delay, Duration LargestDelay,
    int Words, int Multiplies, int Additions)
{
    // −40 dB: nearer to a null the delay says nothing of what still comes through.
    private const double LeastPower = 1e-4;

    internal static CombFigures Of(PeriodComb comb, CombWish wish)
    {
        double half = wish.Rate.Hertz / 2;
        IReadOnlyList<HarmonicDepth> depths = HarmonicDepth.Of(comb, wish.Mains, half, wish.Rate);
        var middle = Frequency.FromHertz(wish.Edge.Hertz / 2);
        // The first half power lies below the first null, and the ripples before it are 1/(K·M) of the rate apart.
        List<double> crossings = ResponseExtremes.Crossings(
            comb.PowerResponse, 0.5, ResponseExtremes.Even(0, Math.Min(half, wish.Mains.Hertz), 1000 + (64 * comb.Periods)));
        double slowest = ResponseExtremes.Greatest(
            f => comb.PowerResponse(f) < LeastPower ? double.MinValue : comb.GroupDelay(f), ResponseExtremes.Even(0, wish.Edge.Hertz, 2000)).Value;
        return new CombFigures(
            depths, BandDroop.Of(comb, wish.Edge, [.. depths.Select(d => d.Frequency)], default), crossings.Count == 0 ? null : Frequency.FromHertz(crossings[0]), middle,
            Duration.FromSeconds(comb.GroupDelay(middle.Hertz)), Duration.FromSeconds(slowest),
            comb.Length + (comb.Periods == 1 ? 1 : comb.Period + 1), comb.Periods == 1 ? 0 : 2, comb.Periods == 1 ? 2 : 5);
    }
}
