using FrontEnd.Filters;

namespace FrontEnd.Rates;

/// <summary>The least order of an analogue low-pass of each family that reaches an attenuation at a stop frequency.</summary>
/// <remarks>All families have their half-power frequency at the same corner, so that they keep the same band. Butterworth in closed form:
/// n ≥ log10(10^(A/10) − 1)/(2·log10(f_stop/f_c)); the others by trying orders. Chebyshev and elliptic with 0.5 dB of ripple (common
/// practice, no source); inverse Chebyshev and elliptic are made for the attenuation asked for.</remarks>
internal static class AntiAliasOrder
{
    /// <summary>Beyond it nobody builds the filter; the answer is then "no order".</summary>
    public const int Most = 12;

    private const double Ripple = 0.5;

    /// <summary>The families in the order in which they are shown; the first is the one a design is taken to have.</summary>
    public static readonly IReadOnlyList<string> Families = ["Butterworth", "Bessel", "critically damped", "Chebyshev",
        "inverse Chebyshev", "elliptic"];

    /// <summary>One row for each family.</summary>
    /// <param name="corner">Half-power frequency, f_c [Hz].</param>
    /// <param name="stop">Frequency to be attenuated [Hz].</param>
    /// <param name="attenuation">Attenuation wanted there; at or below 0 dB no filter is needed and the order is 0.</param>
    public static IReadOnlyList<OrderNeeded> For(Frequency corner, Frequency stop, Decibels attenuation) =>
        [.. Families.Select(family => new OrderNeeded(family, Least(family, corner, stop, attenuation)))];

    /// <summary>The least order; null where none up to <see cref="Most"/> does it, as when the stop frequency is not above the
    /// corner.</summary>
    public static int? Least(string family, Frequency corner, Frequency stop, Decibels attenuation)
    {
        if (attenuation.Value <= 0)
        {
            return 0;
        }

        double ratio = stop / corner, limit = Math.Pow(10, -attenuation.Value / 10);
        if (ratio <= 1)
        {
            return null;
        }

        for (int order = 1; order <= Most; order++)
        {
            Prototype prototype = Make(family, order, attenuation);
            if (prototype.PowerResponse(ratio * HalfPower(prototype)) <= limit)
            {
                return order;
            }
        }

        return null;
    }

    private static Prototype Make(string family, int order, Decibels attenuation)
    {
        // An equiripple stop band of less than the ripple has no meaning; 3.1 dB keeps the half-power point in the transition.
        Decibels stop = Decibels.FromStated(Math.Max(3.1, attenuation.Value * (1 + 1e-12)));
        return family switch
        {
            "Butterworth" => new ButterworthPrototype(order),
            "Bessel" => new BesselPrototype(order),
            "critically damped" => new CriticallyDampedPrototype(order),
            "Chebyshev" => new ChebyshevPrototype(order, Decibels.FromStated(Ripple)),
            "inverse Chebyshev" => new InverseChebyshevPrototype(order, stop),
            "elliptic" => new EllipticPrototype(order, Decibels.FromStated(Ripple), stop),
            _ => throw new ArgumentOutOfRangeException(nameof(family), family, "Family is not handled."),
        };
    }

    /// <summary>Ω of half power in the normalised low-pass: the first frequency below it, then bisection.</summary>
    private static double HalfPower(Prototype prototype)
    {
        double low = 0, high = 0.05;
        while (0.5 < prototype.PowerResponse(high))
        {
            (low, high) = (high, high * 1.05);
        }

        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = 0.5 < prototype.PowerResponse(middle) ? (middle, high) : (low, middle);
        }

        return high;
    }
}
