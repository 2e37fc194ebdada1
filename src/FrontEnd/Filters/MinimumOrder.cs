namespace FrontEnd.Filters;

/// <summary>The families of approximation.</summary>
public enum FilterFamily
{
    Butterworth,
    Chebyshev,
    InverseChebyshev,
    Elliptic,
    Bessel,
    CriticallyDamped,
}

/// <summary>The least order of a family that meets a requirement, and the filter that does.</summary>
public sealed record OrderChoice
{
    /// <summary>The approximation.</summary>
    public required FilterFamily Family { get; init; }

    /// <summary>The least order; null where the family cannot meet the requirement, however large the order.</summary>
    public int? Order { get; init; }

    /// <summary>The order before rounding up; null for families without a closed formula.</summary>
    public double? Exact { get; init; }

    /// <summary>Together with <see cref="Shape"/> the filter; null where there is none, or its order is above what is built.</summary>
    public Prototype? Prototype { get; init; }

    /// <summary>The corner(s) to ask for, in the prototype's own meaning of corner: the pass band's edge is met exactly (inverse Chebyshev:
    /// the stop band's).</summary>
    public ResponseShape? Shape { get; init; }

    /// <summary>Why there is no filter; empty where there is one.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>From requirement to order, for every family.</summary>
/// <remarks>The order is always rounded up, never down or to the nearest. It hangs on the selectivity Ω alone, the stop edge over the pass
/// edge in the normalised low-pass. A band shape may choose its centre: its selectivity is greatest where the two inner edges (band-pass: the
/// pass edges, band-stop: the stop edges) are each other's image, and the nearer of the two outer edges binds (<see cref="BandFit"/>).
/// Formulas: n = ln(εs/εp)/ln Ω (Butterworth), acosh(εs/εp)/acosh Ω (Chebyshev and inverse),
/// K(k)·K(k1')/(K(k')·K(k1)), k = 1/Ω, k1 = εp/εs (elliptic); the others are searched.
/// Source: S. Orfanidis, Introduction to Signal Processing, chapter 11; Lecture Notes on Elliptic Filter Design, equation 34 (both from
/// memory); the centre of band shapes is derived.</remarks>
internal static class MinimumOrder
{
    // An order that is whole by design (a filter asked for its own edges) comes out with rounding of this size.
    private const double Slack = 1e-9;

    /// <param name="rate">Sampling rate for a digital filter (edges are prewarped); null for an analogue one.</param>
    public static OrderChoice Find(FilterFamily family, FilterRequirement requirement, Frequency? rate = null, string field = "")
    {
        IReadOnlyList<Finding> findings = requirement.Check(rate, field);
        if (0 < findings.Count)
        {
            return new OrderChoice { Family = family, Findings = findings };
        }

        double ep = Prototype.Epsilon(requirement.Ripple.Value);
        double es = Prototype.Epsilon(requirement.Attenuation.Value);
        int most = requirement.Pass.OrderFactor == 1 ? FilterDesign.MostOrder : FilterDesign.MostBandOrder;
        var least = BandFit.Tightest(requirement, rate);
        (double? exact, int? order) = OrderOf(family, least.Selectivity, ep, es, most);
        var choice = new OrderChoice { Family = family, Order = order, Exact = exact };
        if (order is not { } n || most < n)
        {
            return choice with { Findings = [FilterMessages.OrderNotFound(field, Name(family), most, order)] };
        }

        // Where the edges that were asked for can all be met exactly at the same order, they are.
        var asked = BandFit.AsAsked(requirement, rate, family == FilterFamily.InverseChebyshev);
        BandFit fit = OrderOf(family, asked.Selectivity, ep, es, most).Order == order ? asked : least;
        Prototype prototype = Make(family, n, requirement);
        ResponseShape shape = family switch
        {
            FilterFamily.InverseChebyshev => fit.WithStopEdgeAt(1),
            FilterFamily.Chebyshev or FilterFamily.Elliptic => fit.WithPassEdgeAt(1),
            _ => fit.WithPassEdgeAt(EdgeOf(prototype, ep)),
        };
        IReadOnlyList<Finding> wrong = FilterDesign.Check(prototype, shape, rate, field);
        return 0 < wrong.Count ? choice with { Findings = wrong } : choice with { Prototype = prototype, Shape = shape };
    }

    private static (double? Exact, int? Order) OrderOf(FilterFamily family, double selectivity, double ep, double es, int most)
    {
        double? exact = family switch
        {
            FilterFamily.Butterworth => Math.Log(es / ep) / Math.Log(selectivity),
            FilterFamily.Chebyshev or FilterFamily.InverseChebyshev => Math.Acosh(es / ep) / Math.Acosh(selectivity),
            FilterFamily.Elliptic => EllipticOrder(1 / selectivity, ep / es),
            FilterFamily.Bessel or FilterFamily.CriticallyDamped => null,
            _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
        };
        return (exact, exact is { } e
            ? (int)Math.Clamp(Math.Ceiling(e - Slack), 1, int.MaxValue)
            : Search(family, selectivity, ep, es, most));
    }

    private static Prototype Make(FilterFamily family, int order, FilterRequirement requirement) => family switch
    {
        FilterFamily.Butterworth => new ButterworthPrototype(order),
        FilterFamily.Chebyshev => new ChebyshevPrototype(order, requirement.Ripple),
        FilterFamily.InverseChebyshev => new InverseChebyshevPrototype(order, requirement.Attenuation),
        FilterFamily.Elliptic => new EllipticPrototype(order, requirement.Ripple, requirement.Attenuation),
        FilterFamily.Bessel => new BesselPrototype(order),
        FilterFamily.CriticallyDamped => new CriticallyDampedPrototype(order),
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
    };

    private static double EllipticOrder(double k, double k1)
    {
        var modulus = new Modulus(k, Math.Sqrt((1 - k) * (1 + k)));
        var first = new Modulus(k1, Math.Sqrt((1 - k1) * (1 + k1)));
        return EllipticFunctions.QuarterPeriod(modulus) * EllipticFunctions.QuarterPeriod(first.Swapped)
            / (EllipticFunctions.QuarterPeriod(modulus.Swapped) * EllipticFunctions.QuarterPeriod(first));
    }

    /// <summary>Monotone families: the corner meets the pass edge exactly, and the order grows until the stop edge is met.</summary>
    private static int? Search(FilterFamily family, double selectivity, double ep, double es, int most)
    {
        for (int order = 1; order <= most; order++)
        {
            Prototype prototype = family == FilterFamily.Bessel ? new BesselPrototype(order) : new CriticallyDampedPrototype(order);
            double power = prototype.PowerResponse(EdgeOf(prototype, ep) * selectivity);
            if (power * (1 + (es * es)) <= 1 + Slack)
            {
                return order;
            }
        }

        return null;
    }

    /// <summary>Ω at which a monotone prototype has lost the ripple.</summary>
    private static double EdgeOf(Prototype prototype, double ep)
    {
        if (prototype is ButterworthPrototype)
        {
            return Math.Pow(ep, 1.0 / prototype.Order);
        }

        ZeroPoleGain filter = prototype.Normalised();
        double target = 1 / Math.Sqrt(1 + (ep * ep));
        return MathExtra.Bisect(w => System.Numerics.Complex.Abs(filter.At(new System.Numerics.Complex(0, w))) - target, 1e-9, 1e4);
    }

    internal static string Name(FilterFamily family) => family switch
    {
        FilterFamily.Butterworth => "Butterworth",
        FilterFamily.Chebyshev => "Chebyshev",
        FilterFamily.InverseChebyshev => "inverse Chebyshev",
        FilterFamily.Elliptic => "elliptic",
        FilterFamily.Bessel => "Bessel",
        FilterFamily.CriticallyDamped => "critically damped",
        _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
    };
}
