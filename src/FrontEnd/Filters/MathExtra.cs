using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Elementary functions and searches that the platform and the numerics library lack; DEVELOPERS.md section 6 says why.</summary>
internal static class MathExtra
{
    // (√5 − 1)/2.
    private const double GoldenShare = 0.6180339887498949;

    /// <summary>e^x − 1 without loss of digits near 0: 2·e^(x/2)·sinh(x/2).</summary>
    internal static double Expm1(double x) => Math.Abs(x) < 1 ? 2 * Math.Exp(x / 2) * Sinh(x / 2) : Math.Exp(x) - 1;

    // Math.Sinh keeps its digits near 0 on the platforms in use; the series makes that independent of the library.
    private static double Sinh(double x)
    {
        if (0.1 < Math.Abs(x))
        {
            return Math.Sinh(x);
        }

        double square = x * x;
        return x * (1 + (square / 6 * (1 + (square / 20 * (1 + (square / 42 * (1 + (square / 72 * (1 + (square / 110))))))))));
    }

    /// <summary>Where a function with one valley between two points is least, by golden section to the last bit; of two equal values the
    /// lower point's side is taken.</summary>
    internal static double LeastAt(Func<double, double> function, double low, double high)
    {
        for (int i = 0; i < 100; i++)
        {
            double a = high - (GoldenShare * (high - low)), b = low + (GoldenShare * (high - low));
            (low, high) = function(b) < function(a) ? (a, high) : (low, b);
        }

        return (low + high) / 2;
    }

    /// <summary>The greatest value of a function with one top between two points, by golden section; every value returned is one of the
    /// function's, so that it is never too large, and about a smooth top it is short by 1e-11 of the rise over the bracket.</summary>
    internal static (double At, double Value) Greatest(Func<double, double> function, double low, double high)
    {
        double a = high - (GoldenShare * (high - low)), b = low + (GoldenShare * (high - low));
        double left = function(a), right = function(b);
        for (int i = 0; i < 28; i++)
        {
            if (left < right)
            {
                (low, a, left) = (a, b, right);
                b = low + (GoldenShare * (high - low));
                right = function(b);
            }
            else
            {
                (high, b, right) = (b, a, left);
                a = high - (GoldenShare * (high - low));
                left = function(a);
            }
        }

        return left < right ? (b, right) : (a, left);
    }

    /// <summary>A zero of an analytic function near a point, by Newton's rule with the slope from a central difference; the last point
    /// where it does not settle.</summary>
    internal static Complex RootNear(Func<Complex, Complex> function, Complex start)
    {
        Complex root = start;
        for (int i = 0; i < 60; i++)
        {
            Complex step = 1e-6 * root;
            Complex slope = (function(root + step) - function(root - step)) / (2 * step);
            Complex change = function(root) / slope;
            root -= change;
            if (Complex.Abs(change) < 1e-13 * Complex.Abs(root))
            {
                break;
            }
        }

        return root;
    }

    /// <summary>Root of a function that changes sign once between two points, by bisection to the last bit.</summary>
    internal static double Bisect(Func<double, double> function, double low, double high)
    {
        bool rising = function(low) < 0;
        for (int i = 0; i < 200; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || high <= middle)
            {
                break;
            }

            if ((function(middle) < 0) == rising)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
