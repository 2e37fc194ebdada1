using System.Numerics;

namespace FrontEnd.Head;

/// <summary>Sums over Legendre polynomials, term n = 1 first, by their recurrences upwards, which are stable for −1 ≤ x ≤ 1.</summary>
/// <remarks>P_0 = 1, P_1 = x, (n + 1)·P_{n+1} = (2n + 1)·x·P_n − n·P_{n−1}; P_0′ = 0, P_1′ = 1, P_{n+1}′ = P_{n−1}′ + (2n + 1)·P_n.</remarks>
internal static class LegendreSeries
{
    /// <summary>Σ c_n·P_n(x) of several series at once: one sweep of the polynomials.</summary>
    /// <param name="terms">c_n of every series side by side: the first term of all, then the second of all, and so on.</param>
    /// <param name="sums">One sum a series.</param>
    public static void Sums(ReadOnlySpan<double> terms, double x, Span<double> sums)
    {
        sums.Clear();
        int series = sums.Length;
        double last = 1, p = x;
        for (int n = 1, at = 0; at < terms.Length; n++)
        {
            for (int k = 0; k < series; k++)
            {
                sums[k] += terms[at++] * p;
            }

            (last, p) = (p, ((((2 * n) + 1) * x * p) - (n * last)) / (n + 1));
        }
    }

    /// <summary>Σ c_n·P_n′(x) of several series at once.</summary>
    public static void SlopeSums(ReadOnlySpan<double> terms, double x, Span<double> sums)
    {
        sums.Clear();
        int series = sums.Length;
        double last = 1, p = x, lastSlope = 0, slope = 1;
        for (int n = 1, at = 0; at < terms.Length; n++)
        {
            for (int k = 0; k < series; k++)
            {
                sums[k] += terms[at++] * slope;
            }

            (lastSlope, slope) = (slope, lastSlope + (((2 * n) + 1) * p));
            (last, p) = (p, ((((2 * n) + 1) * x * p) - (n * last)) / (n + 1));
        }
    }

    /// <summary>Σ c_n·P_n(x) of one series at many places, as many at once as two vectors of the machine hold: a step of the recurrence waits for
    /// the one before, and two that go side by side wait together.</summary>
    /// <param name="x">A multiple of two vectors' length.</param>
    public static void Values(ReadOnlySpan<double> terms, ReadOnlySpan<double> x, Span<double> values)
    {
        for (int at = 0; at < x.Length; at += 2 * Vector<double>.Count)
        {
            int beside = at + Vector<double>.Count;
            Vector<double> x1 = new(x[at..]), x2 = new(x[beside..]), last1 = Vector<double>.One, last2 = last1, p1 = x1, p2 = x2;
            Vector<double> sum1 = Vector<double>.Zero, sum2 = sum1;
            for (int n = 1; n <= terms.Length; n++)
            {
                double term = terms[n - 1], next = 1.0 / (n + 1), rise = ((2 * n) + 1) * next, fall = n * next;
                sum1 += term * p1;
                sum2 += term * p2;
                (last1, p1) = (p1, (rise * (x1 * p1)) - (fall * last1));
                (last2, p2) = (p2, (rise * (x2 * p2)) - (fall * last2));
            }

            sum1.CopyTo(values[at..]);
            sum2.CopyTo(values[beside..]);
        }
    }

    /// <summary>P_n′(x) for n = 1 and on.</summary>
    public static void Slopes(double x, Span<double> slopes)
    {
        double last = 1, p = x, lastSlope = 0, slope = 1;
        for (int n = 1; n <= slopes.Length; n++)
        {
            slopes[n - 1] = slope;
            (lastSlope, slope) = (slope, lastSlope + (((2 * n) + 1) * p));
            (last, p) = (p, ((((2 * n) + 1) * x * p) - (n * last)) / (n + 1));
        }
    }
}
