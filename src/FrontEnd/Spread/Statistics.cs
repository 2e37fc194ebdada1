using System.Numerics;

namespace FrontEnd.Spread;

/// <summary>Percentiles and rank correlation.</summary>
internal static class Statistics
{
    /// <summary>Percentile of values put in order: the point (n − 1)·p between them.</summary>
    public static double Percentile(Sorting sorted, int count, double percent)
    {
        if (count == 0)
        {
            return double.NaN;
        }

        double at = (count - 1) * percent / 100;
        int below = (int)at;
        return below + 1 < count && sorted[below] < sorted[below + 1]
            ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below]))
            : sorted[below];
    }

    /// <summary>Ranks about their mean, doubled, so that they are whole numbers; equal values share the mean of their ranks.</summary>
    public static float[] Ranks(double[] values)
    {
        using var sorting = new Sorting(values.Length);
        var ranks = new float[values.Length];
        sorting.Sort(values, values.Length);
        sorting.Rank(ranks);
        return ranks;
    }

    /// <summary>Correlation of ranks that are about their mean; 0 where one of them does not vary.</summary>
    public static double Correlation(ReadOnlySpan<float> a, ReadOnlySpan<float> b) => Correlation(Product(a, b), Product(a, a), Product(b, b));

    /// <summary>The same from the sums of products.</summary>
    public static double Correlation(double ab, double aa, double bb) => aa == 0 || bb == 0 ? 0 : ab / Math.Sqrt(aa * bb);

    /// <summary>Sum of products; whole numbers, and so exact up to some 200,000 ranks.</summary>
    public static double Product(ReadOnlySpan<float> a, ReadOnlySpan<float> b)
    {
        Vector<double> low = Vector<double>.Zero, high = Vector<double>.Zero;
        int at = 0;
        for (; at + Vector<float>.Count <= a.Length; at += Vector<float>.Count)
        {
            Vector.Widen(new Vector<float>(a[at..]), out Vector<double> a0, out Vector<double> a1);
            Vector.Widen(new Vector<float>(b[at..]), out Vector<double> b0, out Vector<double> b1);
            low += a0 * b0;
            high += a1 * b1;
        }

        double sum = Vector.Sum(low + high);
        for (; at < a.Length; at++)
        {
            sum += (double)a[at] * b[at];
        }

        return sum;
    }
}
