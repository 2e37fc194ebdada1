using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>How the gain of a filter is spread over its sections: each has gain 1 in the middle of the pass band, the first carries what is
/// left.</summary>
internal static class SectionScaling
{
    internal static IEnumerable<AnalogSection> Spread(IReadOnlyList<AnalogSection> sections, double gain, double referenceAngular)
    {
        double left = gain;
        double[] factors = new double[sections.Count];
        for (int i = 0; i < sections.Count; i++)
        {
            AnalogSection c = sections[i];
            double size = double.IsPositiveInfinity(referenceAngular)
                ? Math.Abs(c.IsFirstOrder ? c.B1 / c.A1 : c.B0 / c.A0)
                : Complex.Abs(c.At(new Complex(0, referenceAngular)));
            factors[i] = Usable(size) ? 1 / size : 1;
            left /= factors[i];
        }

        return sections.Select((c, i) =>
        {
            double factor = i == 0 ? factors[0] * left : factors[i];
            return c with { B0 = c.B0 * factor, B1 = c.B1 * factor, B2 = c.B2 * factor };
        });
    }

    internal static IEnumerable<Biquad> Spread(IReadOnlyList<Biquad> sections, double gain, Complex reference)
    {
        double left = gain;
        double[] factors = new double[sections.Count];
        for (int i = 0; i < sections.Count; i++)
        {
            double size = Complex.Abs(sections[i].At(reference));
            factors[i] = Usable(size) ? 1 / size : 1;
            left /= factors[i];
        }

        return sections.Select((c, i) => c.Scaled(i == 0 ? factors[0] * left : factors[i]));
    }

    private static bool Usable(double size) => 1e-100 < size && size < 1e100;
}
