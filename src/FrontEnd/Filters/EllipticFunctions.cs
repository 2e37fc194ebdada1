using System.Numerics;
using System.Runtime.InteropServices;

namespace FrontEnd.Filters;

/// <summary>A modulus k together with its complement k' = √(1 − k²), so that neither loses digits when the other is near 1.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Modulus(double K, double Complement)
{
    /// <summary>The pair the other way round.</summary>
    internal Modulus Swapped => new(Complement, K);
}

/// <summary>Jacobi's elliptic functions by descending Landen transformations.</summary>
/// <remarks>Arguments are in units of the quarter period K: sn(u·K, k). k_(n+1) = (k_n/(1 + k_n'))², k'_(n+1) = 2√k'_n/(1 + k'_n); w_(n−1)
/// = (1 + k_n)·w_n/(1 + k_n·w_n²).
/// Source: S. J. Orfanidis, Lecture Notes on Elliptic Filter Design (2006), section 3 (from memory); M. Abramowitz, I. A. Stegun, Handbook
/// of Mathematical Functions, 16.12 and 17.3 (from memory).
/// Accuracy: 2e-15 relative against reference/filters/elliptic-functions.csv, k up to 1 − 5e-13; 2e-14 next to a pole of sn.</remarks>
internal static class EllipticFunctions
{
    /// <summary>sn(u·K, k).</summary>
    internal static Complex Sn(Complex u, Modulus modulus) => Ascend(Complex.Sin(u * (Math.PI / 2)), Landen(modulus));

    /// <summary>cd(u·K, k) = sn((u + 1)·K, k).</summary>
    internal static Complex Cd(Complex u, Modulus modulus) => Ascend(Complex.Cos(u * (Math.PI / 2)), Landen(modulus));

    /// <summary>The complete integral K(k) = (π/2)·Π(1 + k_n).</summary>
    internal static double QuarterPeriod(Modulus modulus)
    {
        double value = Math.PI / 2;
        foreach (double k in Landen(modulus))
        {
            value *= 1 + k;
        }

        return value;
    }

    /// <summary>v with sn(j·v·K, k) = j·y. All real: w → 2w/((1 + k_n)·(1 + √(1 + k_(n−1)²·w²))), v = (2/π)·asinh(w).</summary>
    internal static double InverseSnOfImaginary(double y, Modulus modulus)
    {
        double previous = modulus.K;
        foreach (double k in Landen(modulus))
        {
            y = 2 * y / ((1 + k) * (1 + Hypotenuse(previous * y)));
            previous = k;
        }

        return Math.Asinh(y) * 2 / Math.PI;
    }

    /// <summary>k of a filter of order n from k1: k' = k1'^n·Π sn⁴(u_i·K1', k1').</summary>
    /// <remarks>Where k' is near 1 its digits say nothing about k, which then follows from the nome, q = q1^(1/n) with q1 =
    /// exp(−π·K1'/K1).</remarks>
    internal static Modulus Degree(int order, Modulus first)
    {
        Modulus complement = first.Swapped;
        double product = Math.Pow(complement.K, order);
        for (int i = 1; i <= order / 2; i++)
        {
            double sn = Sn(((2.0 * i) - 1) / order, complement).Real;
            product *= sn * sn * sn * sn;
        }

        double k = product < Math.Sqrt(0.5)
            ? Math.Sqrt((1 - product) * (1 + product))
            : FromNome(Math.Exp(-Math.PI * QuarterPeriod(first.Swapped) / (QuarterPeriod(first) * order)));
        return new Modulus(k, product);
    }

    /// <summary>k = (θ2(q)/θ3(q))² = 4·√q·((1 + q² + q⁶ + q¹² + …)/(1 + 2q + 2q⁴ + 2q⁹ + …))². Below q = e^(−π), k = √½, four terms are
    /// more than double precision holds.</summary>
    /// <remarks>Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 16.38 (from memory).</remarks>
    private static double FromNome(double q)
    {
        double ratio = (1 + Math.Pow(q, 2) + Math.Pow(q, 6) + Math.Pow(q, 12))
            / (1 + (2 * (q + Math.Pow(q, 4) + Math.Pow(q, 9) + Math.Pow(q, 16))));
        return 4 * Math.Sqrt(q) * ratio * ratio;
    }

    private static double Hypotenuse(double x) => Math.Sqrt(1 + (x * x));

    private static Complex Ascend(Complex w, List<double> moduli)
    {
        for (int i = moduli.Count - 1; 0 <= i; i--)
        {
            w = (1 + moduli[i]) * w / (1 + (moduli[i] * w * w));
        }

        return w;
    }

    private static List<double> Landen(Modulus modulus)
    {
        var moduli = new List<double>();
        (double k, double complement) = (modulus.K, modulus.Complement);

        // Convergence is quadratic: below 1e-18 a further step changes nothing.
        while (1e-18 < k && moduli.Count < 30)
        {
            double root = k / (1 + complement);
            k = root * root;
            complement = 2 * Math.Sqrt(complement) / (1 + complement);
            moduli.Add(k);
        }

        return moduli;
    }
}
