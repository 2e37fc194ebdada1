using FrontEnd.Spread;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>Order, ranks and percentiles of the values in buckets against those of a plain sort and of counting, whatever lies in them.</summary>
public class SortingTests
{
    private static void AgreesWithThePlainWay(double[] values)
    {
        using var sorting = new Sorting(values.Length);
        sorting.Sort(values, values.Length);
        double[] sorted = [.. values.Order()];
        Assert.Equal(sorted, Enumerable.Range(0, values.Length).Select(place => sorting[place]));

        // A rank about the mean, doubled: how many are smaller less how many are greater.
        Assert.Equal(values.Select(one => (float)(values.Count(value => value < one) - values.Count(value => one < value))), Statistics.Ranks(values));
        foreach (double percent in SpreadFigure.Percents)
        {
            double at = (values.Length - 1) * percent / 100;
            int below = (int)at, above = Math.Min(below + 1, values.Length - 1);
            double expected = sorted[below] == sorted[above] ? sorted[below] : sorted[below] + ((at - below) * (sorted[above] - sorted[below]));
            Assert.Equal(expected, Statistics.Percentile(sorting, values.Length, percent));
        }
    }

    [Property(MaxTest = 60)]
    public void Sort_AnyValues_AgreesWithThePlainWay(int seed, byte kind)
    {
        var random = new Random(seed);
        double[] values = new double[1 + random.Next(400)];
        for (int i = 0; i < values.Length; i++)
        {
            double u = random.NextDouble();
            values[i] = (kind % 6) switch
            {
                0 => u,
                1 => Math.Floor(5 * u),
                2 => Math.Pow(10, (40 * u) - 20),
                3 => u < 0.02 ? 1e300 : 1 + (1e-15 * Math.Floor(9 * u)),
                4 => u < 0.1 ? double.PositiveInfinity : -u,
                _ => 7,
            };
        }

        AgreesWithThePlainWay(values);
    }

    [Fact]
    public void Sort_ValuesWithoutABound_KeepsThem() => AgreesWithThePlainWay([double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity]);

    [Fact]
    public void Sort_TheLargestDoubles_DoesNotOverflow() => AgreesWithThePlainWay([double.MaxValue, double.MinValue, 0, double.Epsilon]);

    [Fact]
    public void Sort_OneListAfterAnother_ForgetsTheFirst()
    {
        using var sorting = new Sorting(100);
        sorting.Sort([.. Enumerable.Range(0, 100).Select(i => (double)-i)], 100);
        sorting.Sort([3, 1, 2, 99, 98], 3);
        Assert.Equal([1, 2, 3], [sorting[0], sorting[1], sorting[2]]);
        float[] ranks = new float[3];
        sorting.Rank(ranks);
        Assert.Equal([2, -2, 0], ranks);
    }
}
