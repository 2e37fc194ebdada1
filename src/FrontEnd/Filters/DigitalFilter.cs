using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A digital filter as designed: its poles and zeros in z, the same as sections, and the sampling rate that belongs to
/// them.</summary>
public sealed record DigitalFilter(ZeroPoleGain ZeroPoleGain, SecondOrderSections Sections, Frequency Rate) : IFrequencyResponse
{
    /// <summary>The approximation it was made from; null where it was given as poles and zeros.</summary>
    public Prototype? Prototype { get; init; }

    /// <summary>The shape it was designed to, with its corners; null where it was made of poles and zeros.</summary>
    public ResponseShape? Shape { get; init; }

    /// <summary>What the stated corner is, in words; "" where there is none.</summary>
    public string CornerMeaning => Prototype?.CornerMeaning ?? "";

    /// <inheritdoc/>
    public Complex Response(double hertz) => Sections.Response(hertz, Rate.Hertz);

    /// <inheritdoc/>
    public double PowerResponse(double hertz) => Sections.PowerResponse(hertz, Rate.Hertz);

    /// <inheritdoc/>
    public double GroupDelay(double hertz) => Sections.GroupDelay(hertz, Rate.Hertz);

    /// <summary>A filter given by its poles and zeros.</summary>
    /// <param name="reference">Point on the unit circle at which every section gets gain 1; 1 is 0 Hz and −1 half the rate.</param>
    public static DigitalFilter FromZeroPoleGain(ZeroPoleGain filter, Frequency rate, Complex reference)
    {
        var sections = new List<Biquad>();
        foreach (SectionPairing.Group group in SectionPairing.Pair(filter, p => 1 - Complex.Abs(p)))
        {
            // Powers of z⁻¹: with fewer zeros than poles the numerator is delayed.
            (double b1, double b2) = Polynomial(group.Zeros);
            // A sum of zeros that cancel is 0, and not the −0 that its sign would make of it: nobody wants that in a header.
            b1 += 0.0;
            (double a1, double a2) = Polynomial(group.Poles);
            sections.Add(group.Zeros.Length == group.Poles.Length
                ? new Biquad(1, b1, b2, a1, a2)
                : group.Poles.Length - group.Zeros.Length == 1 ? new Biquad(0, 1, b1, a1, a2) : new Biquad(0, 0, 1, a1, a2));
        }

        return new DigitalFilter(filter, new SecondOrderSections(SectionScaling.Spread(sections, filter.Gain, reference)), rate);
    }

    /// <summary>Coefficients of z⁻¹ and z⁻² of Π(1 − root·z⁻¹).</summary>
    private static (double C1, double C2) Polynomial(Complex[] roots)
    {
        if (roots.Length < 2)
        {
            return roots.Length == 0 ? (0, 0) : (-roots[0].Real, 0);
        }

        if (roots[0].Imaginary == 0)
        {
            return (-(roots[0].Real + roots[1].Real), roots[0].Real * roots[1].Real);
        }

        double size = (roots[0].Real * roots[0].Real) + (roots[0].Imaginary * roots[0].Imaginary);
        // A zero on the unit circle: its modulus is 1 but for the rounding of sine and cosine.
        return (-2 * roots[0].Real, Math.Abs(size - 1) < 1e-15 ? 1 : size);
    }
}
