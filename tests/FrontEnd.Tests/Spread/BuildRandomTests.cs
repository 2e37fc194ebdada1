using FrontEnd.Spread;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>The generator against its test values, and its draws against their distributions.</summary>
public class BuildRandomTests
{
    [Fact]
    public void Generators_FirstOutputs_AreTheTables()
    {
        ulong state = 1234567;
        BuildRandom random = BuildRandom.FromState(1, 2, 3, 4);
        string[] rows = [.. File.ReadLines(Path.Combine(ReferenceTable.Folder, "random", "generators.txt")).Where(line => !line.StartsWith('#'))];
        Assert.Equal(13, rows.Length);
        Assert.All(rows, row =>
        {
            string[] words = row.Split(' ');
            Assert.Equal(ulong.Parse(words[1]), words[0] == "splitmix64" ? BuildRandom.SplitMix(ref state) : random.Next());
        });
    }

    [Fact]
    public void Normal_ManyDraws_HaveMeanZeroAndDeviationOne()
    {
        const int N = 100_000;
        double sum = 0, squares = 0;
        for (int build = 0; build < N; build++)
        {
            double x = new BuildRandom(3, build).Normal();
            sum += x;
            squares += x * x;
        }

        // Five standard errors: 1/√N of the mean, √(2/N) of the variance.
        Assert.Equal(0, sum / N, 5 / Math.Sqrt(N));
        Assert.Equal(1, squares / N, 5 * Math.Sqrt(2.0 / N));
    }

    [Fact]
    public void Streams_OfNeighbouringSeedsAndBuilds_Differ() =>
        Assert.Equal(400, Enumerable.Range(0, 20).SelectMany(seed => Enumerable.Range(0, 20).Select(build => new BuildRandom((ulong)seed, build).Next())).Distinct().Count());
}
