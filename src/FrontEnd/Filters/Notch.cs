namespace FrontEnd.Filters;

/// <summary>Digital notches: one frequency out, the rest nearly untouched.</summary>
/// <remarks>Q is the centre over the width between the −3 dB points of the digital filter itself, Q = f0/Δf, exact at any rate. The other
/// form in use, α = sin ω0/(2Q), is
/// narrower than f0/Q near half the rate and is not used here (reference/filters/published.csv keeps both: T4-N01 is this form, T4-N03 the
/// other).</remarks>
internal static class Notch
{
    /// <summary>Second-order notch: removes one frequency and leaves the rest almost unchanged.</summary>
    /// <param name="centre">Frequency removed, f0 [Hz]; 0 &lt; f0 &lt; fs/2.</param>
    /// <param name="bandwidth">Width between the −3 dB points, Δf [Hz]; 0 &lt; Δf &lt; fs/2.</param>
    /// <param name="rate">Sampling rate, fs [Hz].</param>
    /// <returns>Coefficients with a0 = 1; unit gain at 0 Hz and at fs/2.</returns>
    /// <remarks>H(z) = b·(1 − 2cos ω0·z⁻¹ + z⁻²)/(1 − 2b·cos ω0·z⁻¹ + (2b − 1)·z⁻²), b = 1/(1 + tan(Δω/2)), ω = 2π·f/fs.
    /// Source: S. J. Orfanidis, Introduction to Signal Processing (1996), p. 370, equations 8.2.22 and 8.2.23 (book not yet seen; as cited
    /// by general-purpose signal libraries).</remarks>
    public static Biquad Coefficients(Frequency centre, Frequency bandwidth, Frequency rate)
    {
        RequireBelowHalf(centre, rate);
        RequireBelowHalf(bandwidth, rate);
        double b = 1 / (1 + Math.Tan(bandwidth.RadiansPerSample(rate) / 2)); // Eq. 8.2.23
        double cosine = Math.Cos(centre.RadiansPerSample(rate));
        return new Biquad(b, -2 * b * cosine, b, -2 * b * cosine, (2 * b) - 1); // Eq. 8.2.22
    }

    /// <summary>The same by its quality Q = f0/Δf.</summary>
    public static Biquad WithQ(Frequency centre, double q, Frequency rate) =>
        Coefficients(centre, Frequency.FromHertz(centre.Hertz / Require.Positive(q)), rate);

    /// <summary>Notches of the same width Δf = f0/Q at the mains and its harmonics h·f0, up to and including the band edge.</summary>
    /// <remarks>A common width, not a common Q: the mains' deviation grows with h, but so would the ringing shrink; with a common Q the
    /// width grows with h and follows the deviation.
    /// <paramref name="commonQ"/> chooses. A harmonic at or above half the rate lands elsewhere and gets no notch: see <see
    /// cref="Landing"/>.</remarks>
    public static SecondOrderSections AtHarmonics(Frequency mains, double q, Frequency edge, Frequency rate, bool commonQ = true)
    {
        var sections = new List<Biquad>();
        for (int h = 1; h * mains.Hertz <= edge.Hertz && h * mains.Hertz < rate.Hertz / 2; h++)
        {
            sections.Add(WithQ(Frequency.FromHertz(h * mains.Hertz), commonQ ? q : q * h, rate));
        }

        return new SecondOrderSections(sections);
    }

    /// <summary>Where a frequency lands after sampling: |f − fs·round(f/fs)|.</summary>
    public static Frequency Landing(Frequency frequency, Frequency rate) =>
        Frequency.FromHertz(Folding.LandsAt(frequency.Hertz, rate.Hertz));

    private static void RequireBelowHalf(Frequency frequency, Frequency rate)
    {
        if (!(0 < frequency.Hertz && frequency.Hertz < rate.Hertz / 2))
        {
            throw new ArgumentOutOfRangeException(
                nameof(frequency), frequency.Hertz, "The frequency must lie between 0 and half the sampling rate.");
        }
    }
}
