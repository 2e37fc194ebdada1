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
        return below + 1 < sorted.Length && sorted[below] < sorted[below + 1] ? sorted[below] + ((at - below) * (sorted[below + 1] - sorted[below])) : sorted[below];
    }

    /// <summary>Ranks from 0 about their mean; equal values share the mean of their ranks.</summary>
    public static double[] Ranks(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        int[] order = new int[sorted.Length];
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(sorted, order);
        var ranks = new double[order.Length];
        double middle = (order.Length - 1) / 2.0;
        for (int i = 0; i < order.Length;)
        {
            int end = i + 1;
            while (end < order.Length && sorted[end] == sorted[i])
            {
                end++;
            }

            for (int j = i; j < end; j++)
            {
                ranks[order[j]] = ((i + end - 1) / 2.0) - middle;
            }

            i = end;
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
