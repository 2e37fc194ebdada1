using FrontEnd.Filters;

namespace FrontEnd.AntiAlias;

/// <summary>The Chebyshev low-pass that does what one with zeros does, and can be built of the sections that have none.</summary>
internal static class SubstituteLowPass
{
    /// <summary>Its order, pass edge and stop edge; null where there is none of an order that is built.</summary>
    /// <param name="target">An elliptic or inverse Chebyshev low-pass.</param>
    internal static (int Order, double PassHertz, double StopHertz)? Of(AnalogFilter target)
    {
        double corner = target.Shape!.Corners[0].Hertz;
        (double pass, double stop, Decibels ripple, Decibels attenuation) = target.Prototype switch
        {
            EllipticPrototype p => (corner, Edge(p.Attenuation.Value, corner), p.Ripple, p.Attenuation),
            InverseChebyshevPrototype p =>
                (Edge(FrequencyResponse.HalfPower.Value, corner / 1000), corner, FrequencyResponse.HalfPower, p.Attenuation),
            _ => default,
        };
        if (!(pass < stop))
        {
            return null;
        }

        var requirement = new FilterRequirement(
            new LowPass(Frequency.FromHertz(pass)), new LowPass(Frequency.FromHertz(stop)), ripple, attenuation);
        return MinimumOrder.Find(FilterFamily.Chebyshev, requirement) is { Prototype: { } found } ? (found.Order, pass, stop) : null;

        // The first frequency with a loss, in steps that the stop band's first zero is wider than; the greatest gain of a prototype is 1.
        double Edge(double decibels, double from)
        {
            const double Step = 1.001;
            double Above(double f) => target.PowerResponse(f) - (Math.Pow(10, -decibels / 10) * (1 + 1e-9));
            double low = from;
            while (0 < Above(low * Step) && low < 1e6 * from)
            {
                low *= Step;
            }

            return MathExtra.Bisect(Above, low, low * Step);
        }
    }
}
