using MathNet.Numerics.Statistics;

namespace FrontEnd.Spread;

/// <summary>Percentiles and rank correlation.</summary>
internal static class Statistics
{
    /// <summary>Percentile of sorted values: the point (n − 1)·p between them.</summary>
    public static double Percentile(double[] sorted, double percent)
    {
        if (sorted.Length == 0)
        {
            return double.NaN;
        }

        double at = (sorted.Length - 1) * percent / 100;
        int below = (int)at;
        return below + 1 < sorted.Length && sorted[below] < sorted[below + 1]
            ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below]))
            : sorted[below];
    }

    /// <summary>Ranks about their mean; equal values share the mean of their ranks.</summary>
    public static double[] Ranks(ReadOnlySpan<double> values)
    {
        double[] ranks = ArrayStatistics.RanksInplace(values.ToArray(), RankDefinition.Average);
        double middle = (ranks.Length + 1) / 2.0;
        for (int i = 0; i < ranks.Length; i++)
        {
            ranks[i] -= middle;
        }

        return ranks;
    }

    /// <summary>Correlation of ranks that are about their mean; 0 where one of them does not vary.</summary>
    public static double Correlation(double[] a, double[] b)
    {
        double ab = 0, aa = 0, bb = 0;
        for (int i = 0; i < a.Length; i++)
        {
            ab += a[i] * b[i];
            aa += a[i] * a[i];
            bb += b[i] * b[i];
        }

        return aa == 0 || bb == 0 ? 0 : ab / Math.Sqrt(aa * bb);
    }
}
