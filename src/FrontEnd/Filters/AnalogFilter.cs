using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>An analogue filter as designed: its poles and zeros in s, and the same as sections.</summary>
public sealed record AnalogFilter(ZeroPoleGain ZeroPoleGain, AnalogSections Sections) : IFrequencyResponse
{
    /// <summary>The approximation it was made from; null where it was given as poles and zeros.</summary>
    public Prototype? Prototype { get; init; }

    /// <summary>The shape it was designed to, with its corners; null where it was made of poles and zeros.</summary>
    public ResponseShape? Shape { get; init; }

    /// <summary>What the stated corner is, in words; "" where there is none.</summary>
    public string CornerMeaning => Prototype?.CornerMeaning ?? "";

    /// <inheritdoc/>
    public Complex Response(double hertz) => Sections.Response(hertz);

    /// <inheritdoc/>
    public double PowerResponse(double hertz) => Sections.PowerResponse(hertz);

    /// <inheritdoc/>
    public double GroupDelay(double hertz) => Sections.GroupDelay(hertz);

    /// <summary>A filter given by its poles and zeros.</summary>
    /// <param name="referenceAngular">Angular frequency [rad/s] at which every section gets gain 1: 0, infinite, or the centre of a
    /// band.</param>
    public static AnalogFilter FromZeroPoleGain(ZeroPoleGain filter, double referenceAngular = 0)
    {
        var sections = new List<AnalogSection>();
        foreach (SectionPairing.Group group in SectionPairing.Pair(filter, p => -p.Real / Complex.Abs(p)))
        {
            (double b0, double b1, double b2) = Polynomial(group.Zeros);
            (double a0, double a1, double a2) = Polynomial(group.Poles);
            sections.Add(new AnalogSection(b0, b1, b2, a0, a1, a2));
        }

        return new AnalogFilter(filter, new AnalogSections(SectionScaling.Spread(sections, filter.Gain, referenceAngular)));
    }

    /// <summary>Coefficients of s², s and 1.</summary>
    private static (double C0, double C1, double C2) Polynomial(Complex[] roots) => roots.Length switch
    {
        0 => (0, 0, 1),
        1 => (0, 1, -roots[0].Real),
        _ when roots[0].Imaginary == 0 => (1, -(roots[0].Real + roots[1].Real), roots[0].Real * roots[1].Real),
        _ => (1, -2 * roots[0].Real, (roots[0].Real * roots[0].Real) + (roots[0].Imaginary * roots[0].Imaginary)),
    };
}
