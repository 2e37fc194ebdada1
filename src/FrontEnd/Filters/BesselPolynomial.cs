using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Roots of the reverse Bessel polynomial θ_n(s) = Σ (2n − k)!/((n − k)!·k!)·s^k/2^(n−k).</summary>
/// <remarks>In double precision the value near a root of order 20 is the small difference of terms some 10⁹ times larger, and roots are
/// good to 7 digits only. The polynomial has whole coefficients,
/// so it is evaluated in fixed point with 192 fraction bits, and all roots are found at once by Aberth's iteration
/// (O. Aberth, Math. Comp. 27 (1973) 339, from memory).</remarks>
internal static class BesselPolynomial
{
    private const int Bits = 192;
    private const int MostIterations = 200;

    /// <summary>The roots with positive imaginary part, largest imaginary part first; the real root of an odd order last.</summary>
    internal static Complex[] UpperRoots(int order)
    {
        BigInteger[] coefficients = Coefficients(order);
        var roots = new Fixed[order];
        for (int i = 0; i < order; i++)
        {
            // A ring to the left of the origin, not symmetric about the axis: the iteration separates equal starts by their neighbours
            // only.
            roots[i] = Fixed.From(Complex.FromPolarCoordinates(order, (Math.PI / 2) + (Math.PI * (i + 0.6) / (order + 0.3))));
        }

        Iterate(coefficients, roots);
        Complex[] all = [.. roots.Select(r => r.ToComplex())];
        IEnumerable<Complex> upper = all.Where(r => 1e-9 < r.Imaginary).OrderByDescending(r => r.Imaginary);
        return [.. upper, .. all.Where(r => Math.Abs(r.Imaginary) <= 1e-9).Select(r => (Complex)r.Real)];
    }

    /// <summary>Coefficients of s^0 … s^n, whole numbers: c_k = (2n − k)!/(2^(n−k)·k!·(n − k)!).</summary>
    internal static BigInteger[] Coefficients(int order)
    {
        var coefficients = new BigInteger[order + 1];
        for (int k = 0; k <= order; k++)
        {
            coefficients[k] = Factorial((2 * order) - k) / (BigInteger.Pow(2, order - k) * Factorial(k) * Factorial(order - k));
        }

        return coefficients;
    }

    private static BigInteger Factorial(int n)
    {
        BigInteger value = 1;
        for (int i = 2; i <= n; i++)
        {
            value *= i;
        }

        return value;
    }

    private static void Iterate(BigInteger[] coefficients, Fixed[] roots)
    {
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            double largest = 0;
            for (int i = 0; i < roots.Length; i++)
            {
                (Fixed value, Fixed derivative) = Evaluate(coefficients, roots[i]);
                Fixed newton = value / derivative;
                Fixed crowd = default;
                for (int j = 0; j < roots.Length; j++)
                {
                    if (j != i)
                    {
                        crowd += Fixed.One / (roots[i] - roots[j]);
                    }
                }

                Fixed step = newton / (Fixed.One - (newton * crowd));
                roots[i] -= step;
                largest = Math.Max(largest, Complex.Abs(step.ToComplex()));
            }

            if (largest < 1e-25)
            {
                return;
            }
        }

        throw new InvalidOperationException($"The roots of the Bessel polynomial of order {roots.Length} were not found.");
    }

    private static (Fixed Value, Fixed Derivative) Evaluate(BigInteger[] coefficients, Fixed s)
    {
        Fixed value = Fixed.From(coefficients[^1]);
        Fixed derivative = default;
        for (int k = coefficients.Length - 2; 0 <= k; k--)
        {
            derivative = (derivative * s) + value;
            value = (value * s) + Fixed.From(coefficients[k]);
        }

        return (value, derivative);
    }

    /// <summary>A complex number in fixed point.</summary>
    private readonly record struct Fixed(BigInteger Re, BigInteger Im)
    {
        internal static readonly Fixed One = From(BigInteger.One);

        internal static Fixed From(BigInteger whole) => new(whole << Bits, 0);

        // 2^52 keeps every digit of the start; its accuracy does not matter.
        internal static Fixed From(Complex value) =>
            new(new BigInteger(value.Real * 4503599627370496.0) << (Bits - 52),
                new BigInteger(value.Imaginary * 4503599627370496.0) << (Bits - 52));

        internal Complex ToComplex() => new(ToDouble(Re), ToDouble(Im));

        private static double ToDouble(BigInteger value) => (double)(value >> (Bits - 120)) * Math.Pow(2, -120);

        public static Fixed operator +(Fixed a, Fixed b) => new(a.Re + b.Re, a.Im + b.Im);

        public static Fixed operator -(Fixed a, Fixed b) => new(a.Re - b.Re, a.Im - b.Im);

        public static Fixed operator *(Fixed a, Fixed b) =>
            new(((a.Re * b.Re) - (a.Im * b.Im)) >> Bits, ((a.Re * b.Im) + (a.Im * b.Re)) >> Bits);

        public static Fixed operator /(Fixed a, Fixed b)
        {
            BigInteger size = (b.Re * b.Re) + (b.Im * b.Im);
            return new(((((a.Re * b.Re) + (a.Im * b.Im)) << Bits) / size), (((a.Im * b.Re) - (a.Re * b.Im)) << Bits) / size);
        }
    }
}
