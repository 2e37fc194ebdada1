using FrontEnd.Filters;

namespace FrontEnd.AntiAlias;

/// <summary>The Chebyshev low-pass that does what one with zeros does, and can be built of the sections that have none.</summary>
/// <param name="Order">The least that does.</param>
/// <param name="Pass">Edge of the pass band.</param>
/// <param name="Stop">Edge of the stop band.</param>
/// <param name="Ripple">Largest loss up to the one.</param>
/// <param name="Attenuation">Least loss from the other on.</param>
internal sealed record SubstituteLowPass(int Order, Frequency Pass, Frequency Stop, Decibels Ripple, Decibels Attenuation)
{
    /// <summary>Null where there is none of an order that is designed.</summary>
    /// <param name="target">An elliptic or inverse Chebyshev low-pass.</param>
    /// <param name="asked">What it was sought for: that is what has to be met, and not what the target does beyond it. Null where its order
    /// was given: then its own edges count.</param>
    internal static SubstituteLowPass? Of(AnalogFilter target, FilterRequirement? asked)
    {
        if ((asked ?? Own(target)) is not { } requirement
            || MinimumOrder.Find(FilterFamily.Chebyshev, requirement) is not { Prototype: { } found })
        {
            return null;
        }

        return new SubstituteLowPass(
            found.Order, requirement.Pass.Corners[0], requirement.Stop.Corners[0], requirement.Ripple, requirement.Attenuation);
    }

    private static FilterRequirement? Own(AnalogFilter target)
    {
        double corner = target.Shape!.Corners[0].Hertz;
        return target.Prototype switch
        {
            EllipticPrototype p => Between(corner, corner * p.StopEdge, p.Ripple, p.Attenuation),

            // Flat in the pass band: its half power stands for an edge.
            InverseChebyshevPrototype p => Between(HalfPower(p) * corner, corner, FrequencyResponse.HalfPower, p.Attenuation),
            _ => null,
        };
    }

    private static FilterRequirement? Between(double pass, double stop, Decibels ripple, Decibels attenuation) => pass < stop
        ? new FilterRequirement(
            new LowPass(Frequency.FromHertz(pass)), new LowPass(Frequency.FromHertz(stop)), ripple, attenuation)
        : null;

    /// <summary>Half power over stop edge: T_n(1/Ω) = ε, ε² = 10^(A/10) − 1, so 1/Ω = cosh(acosh(ε)/n). Derived; at most 3 dB of attenuation has
    /// none.</summary>
    private static double HalfPower(InverseChebyshevPrototype p)
    {
        double epsilon = Math.Sqrt(Math.Pow(10, p.Attenuation.Value / 10) - 1);
        return epsilon <= 1 ? 1 : 1 / Math.Cosh(Math.Acosh(epsilon) / p.Order);
    }
}
