using System.Numerics;
using System.Runtime.InteropServices;

namespace FrontEnd.Filters;

/// <summary>One digital section: H(z) = (b0 + b1·z⁻¹ + b2·z⁻²)/(1 + a1·z⁻¹ + a2·z⁻²). A section of first order has b2 = a2 = 0.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Biquad(double B0, double B1, double B2, double A1, double A2)
{
    /// <summary>The section that changes nothing.</summary>
    public static readonly Biquad Through = new(1, 0, 0, 0, 0);

    /// <summary>True for a section with one pole and at most one zero.</summary>
    public bool IsFirstOrder => B2 == 0 && A2 == 0;

    /// <summary>True where the gain at 0 Hz is 0, to a billionth of b0.</summary>
    public bool HasDcZero => Math.Abs(B0 + B1 + B2) <= 1e-9 * Math.Abs(B0);

    /// <summary>Gain at 0 Hz; infinite with a pole there.</summary>
    public double DcGain => (B0 + B1 + B2) / (1 + A1 + A2);

    /// <summary>The section's poles; the second is 0 for a section of first order.</summary>
    public (Complex First, Complex Second) Poles => Roots(1, A1, A2);

    /// <summary>The section's zeros; a section of first order has one, and the second is 0. B0 must not be 0.</summary>
    public (Complex First, Complex Second) Zeros => Roots(B0, B1, B2);

    /// <summary>Largest distance of a pole from the origin: below 1 for a stable section.</summary>
    public double PoleRadius
    {
        get
        {
            (Complex first, Complex second) = Poles;
            return Math.Max(Complex.Abs(first), Complex.Abs(second));
        }
    }

    /// <summary>The same section with its numerator times a factor.</summary>
    public Biquad Scaled(double factor) => this with { B0 = B0 * factor, B1 = B1 * factor, B2 = B2 * factor };

    internal Complex At(Complex z) => ((((B0 * z) + B1) * z) + B2) / ((((1 * z) + A1) * z) + A2);

    /// <summary>Roots of c0·z² + c1·z + c2, the larger without cancellation.</summary>
    internal static (Complex First, Complex Second) Roots(double c0, double c1, double c2)
    {
        double half = -c1 / (2 * c0);
        double product = c2 / c0;
        // half² − product with one rounding: near z = 1 the two nearly cancel, and the poles' angle hangs on what is left.
        double discriminant = Math.FusedMultiplyAdd(half, half, -product);
        if (discriminant < 0)
        {
            double imaginary = Math.Sqrt(-discriminant);
            return (new Complex(half, imaginary), new Complex(half, -imaginary));
        }

        double root = Math.Sqrt(discriminant);
        double larger = half < 0 ? half - root : half + root;
        return larger == 0 ? (0, 0) : (larger, product / larger);
    }
}
