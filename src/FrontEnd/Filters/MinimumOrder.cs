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
/// <remarks>The order is always rounded up, never down or to the nearest. Band shapes are reduced to the normalised low-pass with their
/// pass edges kept (inverse Chebyshev: their stop edges)
/// and the nearer of the two other edges counts. Formulas: n = ln(εs/εp)/ln Ω (Butterworth), acosh(εs/εp)/acosh Ω (Chebyshev and inverse),
/// K(k)·K(k1')/(K(k')·K(k1)), k = 1/Ω, k1 = εp/εs (elliptic); the others are searched.
/// Source: S. Orfanidis, Introduction to Signal Processing, chapter 11; Lecture Notes on Elliptic Filter Design, equation 34 (both from
/// memory).</remarks>
public static class MinimumOrder
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

        var axis = new Axis(rate?.Hertz);
        double selectivity = Selectivity(family, requirement, axis);
        double ep = Prototype.Epsilon(requirement.Ripple.Value);
        double es = Prototype.Epsilon(requirement.Attenuation.Value);
        double? exact = family switch
        {
            FilterFamily.Butterworth => Math.Log(es / ep) / Math.Log(selectivity),
            FilterFamily.Chebyshev or FilterFamily.InverseChebyshev => Math.Acosh(es / ep) / Math.Acosh(selectivity),
            FilterFamily.Elliptic => EllipticOrder(1 / selectivity, ep / es),
            FilterFamily.Bessel or FilterFamily.CriticallyDamped => null,
            _ => throw new ArgumentOutOfRangeException(nameof(family), family, "The family is not handled."),
        };
        int most = requirement.Pass.OrderFactor == 1 ? FilterDesign.MostOrder : FilterDesign.MostBandOrder;
        int? order = exact is { } e ? (int)Math.Clamp(Math.Ceiling(e - Slack), 1, int.MaxValue) : Search(family, selectivity, ep, es, most);
        var choice = new OrderChoice { Family = family, Order = order, Exact = exact };
        if (order is not { } n || most < n)
        {
            return choice with { Findings = [FilterMessages.OrderNotFound(field, Name(family), most, order)] };
        }

        Prototype prototype = Make(family, n, requirement);
        ResponseShape shape = family switch
        {
            FilterFamily.InverseChebyshev => requirement.Stop,
            FilterFamily.Chebyshev or FilterFamily.Elliptic => requirement.Pass,
            _ => Widen(requirement.Pass, 1 / EdgeOf(prototype, ep), axis),
        };
        IReadOnlyList<Finding> wrong = FilterDesign.Check(prototype, shape, rate, field);
        return 0 < wrong.Count ? choice with { Findings = wrong } : choice with { Prototype = prototype, Shape = shape };
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

    /// <summary>Ω of the stop edge over the pass edge in the normalised low-pass.</summary>
    private static double Selectivity(FilterFamily family, FilterRequirement requirement, Axis axis) =>
        family == FilterFamily.InverseChebyshev
            ? 1 / requirement.Pass.Corners.Max(c => requirement.Stop.Normalised(axis.ToAngular(c), axis.ToAngular))
            : requirement.Stop.Corners.Min(c => requirement.Pass.Normalised(axis.ToAngular(c), axis.ToAngular));

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

    /// <summary>The shape with its band wider by a factor, about the same centre.</summary>
    private static ResponseShape Widen(ResponseShape shape, double factor, Axis axis)
    {
        switch (shape)
        {
            case LowPass low:
                return new LowPass(axis.ToFrequency(axis.ToAngular(low.Corner) * factor));
            case HighPass high:
                return new HighPass(axis.ToFrequency(axis.ToAngular(high.Corner) / factor));
            case BandPass band:
                (Frequency passLow, Frequency passHigh) = Edges(band.Low, band.High, factor, axis);
                return new BandPass(passLow, passHigh);
            case BandStop band:
                (Frequency stopLow, Frequency stopHigh) = Edges(band.Low, band.High, 1 / factor, axis);
                return new BandStop(stopLow, stopHigh);
            default:
                throw new InvalidOperationException($"Shape {shape.GetType().Name} is not handled.");
        }
    }

    private static (Frequency Low, Frequency High) Edges(Frequency low, Frequency high, double factor, Axis axis)
    {
        double half = 0.5 * factor * (axis.ToAngular(high) - axis.ToAngular(low));
        double product = axis.ToAngular(high) * axis.ToAngular(low);
        double upper = half + Math.Sqrt((half * half) + product);
        return (axis.ToFrequency(product / upper), axis.ToFrequency(upper));
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

    /// <summary>Frequency to angular frequency and back, prewarped where there is a sampling rate.</summary>
    private sealed record Axis(double? Rate)
    {
        internal double ToAngular(Frequency f) => Rate is { } rate ? FilterDesign.Prewarp(f.Hertz, rate) : FilterDesign.Angular(f);

        internal Frequency ToFrequency(double angular) =>
            Frequency.FromHertz(Rate is { } rate ? rate / Math.PI * Math.Atan(angular / (2 * rate)) : angular / (2 * Math.PI));
    }
}
