using FrontEnd.Bench;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Bench;

/// <summary>What a stream of samples leaves is what the same samples give that are held.</summary>
public sealed class RecordingSumsTests
{
    /// <summary>Samples in pieces of any size.</summary>
    private sealed class Pieces(double[] samples, Random random) : ISamples
    {
        public long Count => samples.Length;

        public void Read(Action<ReadOnlySpan<double>> take)
        {
            for (int at = 0; at < samples.Length;)
            {
                int length = Math.Min(samples.Length - at, random.Next(1, 7000));
                take(samples.AsSpan(at, length));
                at += length;
            }
        }
    }

    /// <summary>Values of a converter of few or many steps, some offset, now and then cut.</summary>
    private static double[] Drawn(Random random)
    {
        int count = random.Next(1, 30_000);
        double step = random.Next(2) == 0 ? 1 : 1e-12, offset = random.Next(3) * 1e6, limit = random.Next(2) == 0 ? 2 : 100, size = Math.Pow(10, random.Next(3));
        return [.. Enumerable.Range(0, count).Select(_ =>
            offset + Math.Clamp(step * Math.Round(size * (random.NextDouble() - random.NextDouble() + random.NextDouble() - 0.5) / step), -limit, limit))];
    }

    [Property(MaxTest = 60)]
    public void Sums_OfPieces_AreThoseOfTheWhole(int seed)
    {
        var random = new Random(seed);
        double[] samples = Drawn(random);
        RecordingSums sums = new();
        new Pieces(samples, random).Read(sums.Take);
        double mean = samples.Average(), power = samples.Average(sample => (sample - mean) * (sample - mean));
        Assert.Equal(samples.Length, sums.Count);
        Assert.Equal(mean, sums.Mean, 1e-12 * (1 + Math.Abs(mean)));
        Assert.Equal(power, sums.Power, 1e-9 * power);
        Assert.Equal((samples.Min(), samples.Max()), (sums.Bottom, sums.Top));
        Assert.Equal((samples.Count(sample => sample == sums.Bottom), samples.Count(sample => sample == sums.Top)), (sums.AtBottom, sums.AtTop));
        Assert.Equal(samples.CountBy(sample => sample).OrderBy(pair => pair.Key).Select(pair => (pair.Key, (long)pair.Value)), sums.Values!.Select(pair => (pair.Key, pair.Value)));
        Assert.Null(sums.NotFinite);
    }

    /// <summary>Percentiles are exact, whether the values are counted one by one or found bit by bit.</summary>
    [Property(MaxTest = 30)]
    public void Order_OfPieces_IsTheSortedSamples(int seed)
    {
        var random = new Random(seed);
        double[] samples = Drawn(random), sorted = [.. samples.Order()];
        double[] shares = [0, 0.01, 0.05, 0.5, 0.5, 0.95, 0.99, 1];
        foreach (int most in new[] { RecordingSums.MostValues, 0 })
        {
            Pieces pieces = new(samples, random);
            RecordingSums sums = new(most);
            pieces.Read(sums.Take);
            Assert.Equal(most == 0, sums.Values is null);
            Assert.Equal(shares.Select(share => sorted[(int)(share * (sorted.Length - 1))]), new SampleOrder(pieces, sums).At(shares));
        }
    }

    [Fact]
    public void Sums_OfANumberThatIsNone_SayWhere()
    {
        RecordingSums sums = new();
        sums.Take([1, 2, 3]);
        sums.Take([4, double.NaN, 5]);
        sums.Take([6]);
        Assert.Equal(4, sums.NotFinite);
    }

    /// <summary>A window at a time gives the spectrum of the whole.</summary>
    [Property(MaxTest = 20)]
    public void Welch_OfPieces_IsThatOfTheWhole(int seed)
    {
        var random = new Random(seed);
        double[] samples = [.. Enumerable.Range(0, random.Next(64, 20_000)).Select(_ => random.NextDouble() - 0.3)];
        WelchSpectrum.Builder builder = new(samples.Length, 250, 4);
        new Pieces(samples, random).Read(builder.Take);
        WelchSpectrum pieces = builder.Whole(), whole = WelchSpectrum.Of(samples, 250, 4);
        Assert.Equal(whole.Density, pieces.Density);
        Assert.Equal((whole.Windows, whole.Step), (pieces.Windows, pieces.Step));
    }
}
