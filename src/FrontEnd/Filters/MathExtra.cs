namespace FrontEnd.Filters;

/// <summary>Elementary functions that the platform lacks.</summary>
internal static class MathExtra
{
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
