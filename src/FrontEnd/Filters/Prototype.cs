using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>A normalised analogue low-pass with its corner at 1 rad/s: the approximation of a filter, apart from what it passes (<see
/// cref="ResponseShape"/>).</summary>
public abstract record Prototype
{
    private protected Prototype(int order) => Order = order;

    /// <summary>n, the number of poles of the low-pass: 1…20, for band shapes 1…10.</summary>
    public int Order { get; init; }

    /// <summary>The family's name, as in "Butterworth".</summary>
    public abstract string Family { get; }

    /// <summary>What the stated corner is, in words: the normalisation, always named.</summary>
    public abstract string CornerMeaning { get; }

    /// <summary>Poles, zeros and gain at corner 1 rad/s. Greatest gain 1 (for all families).</summary>
    public abstract ZeroPoleGain Normalised();

    /// <summary>|H(jΩ)|² of the normalised low-pass, Ω ≥ 0.</summary>
    public double PowerResponse(double omega)
    {
        Complex value = Normalised().At(new Complex(0, omega));
        return (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
    }

    /// <summary>ε of a loss in decibels: √(10^(A/10) − 1).</summary>
    internal static double Epsilon(double decibels) => Math.Sqrt(MathExtra.Expm1(decibels * Math.Log(10) / 10));

    /// <summary>Conjugate pairs and the real root −1·(…) of an order, from their upper halves.</summary>
    private protected static ZeroPoleGain FromHalves(
        IEnumerable<Complex> upperZeros, IEnumerable<Complex> upperPoles, double? realPole, double gainAtZero)
    {
        var zeros = new List<Complex>();
        foreach (Complex zero in upperZeros)
        {
            zeros.Add(zero);
            zeros.Add(Complex.Conjugate(zero));
        }

        var poles = new List<Complex>();
        foreach (Complex pole in upperPoles)
        {
            poles.Add(pole);
            poles.Add(Complex.Conjugate(pole));
        }

        if (realPole is { } real)
        {
            poles.Add(real);
        }

        double atZero = new ZeroPoleGain(zeros, poles, 1).At(0).Real;
        return new ZeroPoleGain(zeros, poles, gainAtZero / atZero);
    }

    /// <summary>Angles θ = π(2i − 1)/(2n), i = 1…⌊n/2⌋, of the upper half.</summary>
    private protected static IEnumerable<double> Angles(int order)
    {
        for (int i = 1; i <= order / 2; i++)
        {
            yield return Math.PI * ((2 * i) - 1) / (2 * order);
        }
    }
}

/// <summary>Maximally flat: |H|² = 1/(1 + Ω^(2n)); half power at the corner.</summary>
/// <remarks>Source: S. Butterworth, On the theory of filter amplifiers, Experimental Wireless 7 (1930) 536 (from memory).</remarks>
internal sealed record ButterworthPrototype(int Order) : Prototype(Order)
{
    public override string Family => "Butterworth";
    public override string CornerMeaning => "-3 dB (half power)";

    public override ZeroPoleGain Normalised() =>
        FromHalves([], Angles(Order).Select(a => new Complex(-Math.Sin(a), Math.Cos(a))), Order % 2 == 1 ? -1 : null, 1);
}

/// <summary>Equal ripple in the pass band: |H|² = 1/(1 + ε²·T_n²(Ω)); the corner is the ripple edge.</summary>
/// <param name="Ripple">Largest loss in the pass band, 10·log10(1 + ε²) [dB], above 0.</param>
/// <remarks>Even orders start in a trough: their gain at 0 Hz is −ripple. Poles −sinh(a)·sin θ ± j·cosh(a)·cos θ, a = asinh(1/ε)/n.
/// Source: S. Orfanidis, Introduction to Signal Processing, chapter 11 (from memory).</remarks>
internal sealed record ChebyshevPrototype(int Order, Decibels Ripple) : Prototype(Order)
{
    public override string Family => "Chebyshev";
    public override string CornerMeaning => "ripple edge";

    public override ZeroPoleGain Normalised()
    {
        double epsilon = Epsilon(Ripple.Value);
        double a = Math.Asinh(1 / epsilon) / Order;
        double sinh = Math.Sinh(a);
        double cosh = Math.Cosh(a);
        return FromHalves([], Angles(Order).Select(t => new Complex(-sinh * Math.Sin(t), cosh * Math.Cos(t))), Order % 2 == 1
            ? -sinh
            : null,
            Order % 2 == 1 ? 1 : 1 / Math.Sqrt(1 + (epsilon * epsilon)));
    }

    /// <summary>The frequency of half the power at 0 Hz over the ripple edge: the other normalisation in handbooks.</summary>
    /// <remarks>Even orders start in a trough, ε²T² = 1 + 2ε²; odd orders at the top, ε²T² = 1. Derived.</remarks>
    public double Minus3DbOverRippleEdge
    {
        get
        {
            double epsilon = Epsilon(Ripple.Value);
            double argument = Order % 2 == 1 ? 1 / epsilon : Math.Sqrt(1 + (2 * epsilon * epsilon)) / epsilon;
            return argument < 1 ? Math.Cos(Math.Acos(argument) / Order) : Math.Cosh(Math.Acosh(argument) / Order);
        }
    }
}

/// <summary>Equal ripple in the stop band, flat pass band: |H|² = 1/(1 + 1/(ε²·T_n²(1/Ω))); the corner is the stop edge.</summary>
/// <param name="Attenuation">Least loss in the stop band [dB], above 0.</param>
internal sealed record InverseChebyshevPrototype(int Order, Decibels Attenuation) : Prototype(Order)
{
    public override string Family => "inverse Chebyshev";
    public override string CornerMeaning => "stop edge";

    public override ZeroPoleGain Normalised()
    {
        double a = Math.Asinh(Epsilon(Attenuation.Value)) / Order;
        double sinh = Math.Sinh(a);
        double cosh = Math.Cosh(a);
        return FromHalves(
            Angles(Order).Select(t => new Complex(0, 1 / Math.Cos(t))),
            Angles(Order).Select(t => Complex.Reciprocal(new Complex(-sinh * Math.Sin(t), -cosh * Math.Cos(t)))),
            Order % 2 == 1 ? -1 / sinh : null,
            1);
    }
}

/// <summary>Equal ripple in both bands (Cauer): the steepest edge for an order; the corner is the ripple edge.</summary>
/// <param name="Ripple">Largest loss in the pass band [dB], above 0.</param>
/// <param name="Attenuation">Least loss in the stop band [dB], above the ripple.</param>
/// <remarks>k1 = ε_p/ε_s; degree equation k' = k1'^n·Π sn⁴(u_i·K1', k1'), u_i = (2i − 1)/n; zeros j/(k·cd(u_i·K, k)); poles j·cd((u_i −
/// j·v0)·K, k).
/// Source: S. J. Orfanidis, Lecture Notes on Elliptic Filter Design (2006), equations 46 to 65 (from memory). Both moduli of a pair (k, k')
/// are carried, so that neither loses digits near 1.</remarks>
internal sealed record EllipticPrototype(int Order, Decibels Ripple, Decibels Attenuation) : Prototype(Order)
{
    public override string Family => "elliptic";
    public override string CornerMeaning => "ripple edge";

    /// <summary>Stop edge over ripple edge, 1/k.</summary>
    public double StopEdge => 1 / Modulus().K;

    public override ZeroPoleGain Normalised()
    {
        double ep = Epsilon(Ripple.Value);
        Modulus first = FirstModulus();
        Modulus k = Modulus();
        double v0 = EllipticFunctions.InverseSnOfImaginary(1 / ep, first) / Order;
        var zeros = new List<Complex>();
        var poles = new List<Complex>();
        for (int i = 1; i <= Order / 2; i++)
        {
            double u = ((2.0 * i) - 1) / Order;
            zeros.Add(new Complex(0, 1 / (k.K * EllipticFunctions.Cd(u, k).Real)));
            Complex pole = Complex.ImaginaryOne * EllipticFunctions.Cd(new Complex(u, -v0), k);
            poles.Add(new Complex(pole.Real, Math.Abs(pole.Imaginary)));
        }

        double? real = Order % 2 == 1 ? -Math.Abs(EllipticFunctions.Sn(new Complex(0, v0), k).Imaginary) : null;
        return FromHalves(zeros, poles, real, Order % 2 == 1 ? 1 : 1 / Math.Sqrt(1 + (ep * ep)));
    }

    private Modulus FirstModulus()
    {
        double k1 = Epsilon(Ripple.Value) / Epsilon(Attenuation.Value);
        return new Modulus(k1, Math.Sqrt((1 - k1) * (1 + k1)));
    }

    private Modulus Modulus() => EllipticFunctions.Degree(Order, FirstModulus());
}

/// <summary>Critically damped: n equal real poles, no overshoot at all; half power at the corner.</summary>
internal sealed record CriticallyDampedPrototype(int Order) : Prototype(Order)
{
    public override string Family => "critically damped";
    public override string CornerMeaning => "-3 dB (half power)";

    /// <summary>The pole −1/√(2^(1/n) − 1). Derived: (1 + Ω²/p²)^n = 2 at Ω = 1.</summary>
    public override ZeroPoleGain Normalised()
    {
        double pole = -1 / Math.Sqrt(MathExtra.Expm1(Math.Log(2) / Order));
        return new ZeroPoleGain([], [.. Enumerable.Repeat((Complex)pole, Order)], Math.Pow(-pole, Order));
    }
}
