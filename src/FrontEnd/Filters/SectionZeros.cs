namespace FrontEnd.Filters;

/// <summary>Where the zeros of a section lie, in words of the trade.</summary>
public enum ZeroPlace
{
    /// <summary>Nowhere: a section with poles alone.</summary>
    None,

    /// <summary>At 0 Hz.</summary>
    ZeroHertz,

    /// <summary>At half the sampling rate.</summary>
    HalfRate,

    /// <summary>One at 0 Hz and one at half the sampling rate.</summary>
    ZeroHertzAndHalfRate,

    /// <summary>At a frequency, where the section's gain is 0: <see cref="SectionZeros.At"/>.</summary>
    Frequency,

    /// <summary>On the real axis, at no frequency.</summary>
    RealAxis,

    /// <summary>In the z plane off the unit circle, at no frequency.</summary>
    OffCircle,
}

/// <summary>The zeros of one section.</summary>
/// <param name="Place">Where they lie.</param>
/// <param name="At">The frequency, with <see cref="ZeroPlace.Frequency"/>; else null.</param>
public sealed record SectionZeros(ZeroPlace Place, Frequency? At)
{
    internal static SectionZeros Of(AnalogSection s)
    {
        if (s.B0 == 0 && s.B1 == 0)
        {
            return new(ZeroPlace.None, null);
        }

        if (s.B2 == 0)
        {
            return new(ZeroPlace.ZeroHertz, null);
        }

        return s.B1 == 0 && 0 < s.B2 / s.B0 ? AtHertz(Math.Sqrt(s.B2 / s.B0) / (2 * Math.PI)) : new(ZeroPlace.RealAxis, null);
    }

    internal static SectionZeros Of(Biquad s, double rate)
    {
        if (s.B2 == 0)
        {
            return new(s.B1 == s.B0 ? ZeroPlace.HalfRate : s.B1 == -s.B0 ? ZeroPlace.ZeroHertz : ZeroPlace.RealAxis, null);
        }

        // A pair on the unit circle at ±θ has b1 = −2·b0·cos θ and b2 = b0.
        double cosine = s.B1 / (-2 * s.B0);
        if (s.B2 == s.B0 && Math.Abs(cosine) < 1)
        {
            return AtHertz(Math.Acos(cosine) * rate / (2 * Math.PI));
        }

        return new(
            s.B2 == -s.B0 ? ZeroPlace.ZeroHertzAndHalfRate
            : cosine <= -1 ? ZeroPlace.HalfRate
            : 1 <= cosine ? ZeroPlace.ZeroHertz : ZeroPlace.OffCircle,
            null);
    }

    private static SectionZeros AtHertz(double hertz) => new(ZeroPlace.Frequency, Frequency.FromHertz(hertz));
}
