using FrontEnd.Numbers;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Numbers;

/// <summary>The generator against its table, and how evenly it draws.</summary>
public class SeededRandomTests
{
    public static TheoryData<string> Rows => [.. File.ReadAllLines(Path.Combine(Folder, "random", "generator.dat")).Where(line => line.Length > 0 && line[0] != '#')];

    private static string Folder => ReferenceTable.Folder;

    [Theory]
    [MemberData(nameof(Rows))]
    public void Generator_Table_IsReproduced(string row)
    {
        string[] fields = [.. row.Split(" | ").Select(field => field.Trim())];
        string[] from = fields[1].Split(' ');
        ulong first = ulong.Parse(from[0]);
        SeededRandom random = fields[0] switch
        {
            "state" => SeededRandom.FromState(first, ulong.Parse(from[1]), ulong.Parse(from[2]), ulong.Parse(from[3])),
            "seed" => new SeededRandom(first),
            "stream" => SeededRandom.For(first, from.AsSpan(1)),
            _ => throw new InvalidDataException(row),
        };
        foreach (string number in fields[2].Split(' '))
        {
            Assert.Equal(ulong.Parse(number), random.NextBits());
        }
    }

    [Fact]
    public void NextBelow_ManyDraws_AreEven()
    {
        // Chi-square with 9 degrees of freedom: 27.9 is passed by chance once in a thousand; the seed is fixed.
        SeededRandom random = new(1);
        int[] counts = new int[10];
        for (int i = 0; i < 100_000; i++)
        {
            counts[random.NextBelow(10)]++;
        }

        Assert.True(counts.Sum(count => Math.Pow(count - 10_000, 2) / 10_000) < 27.9);
    }

    [Fact]
    public void NextUnit_ManyDraws_HaveMeanAndVarianceOfTheUniform()
    {
        SeededRandom random = new(2);
        double[] draws = [.. Enumerable.Range(0, 100_000).Select(_ => random.NextUnit())];
        Assert.All(draws, draw => Assert.InRange(draw, 0, 1 - 1e-16));
        Assert.Equal(0.5, draws.Average(), 0.004);   // 4 standard errors, √(1/12/1e5) each
        Assert.Equal(1.0 / 12, draws.Average(draw => Math.Pow(draw - 0.5, 2)), 0.001);
    }

    [Fact]
    public void NextBelow_NothingToDrawFrom_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => new SeededRandom(1).NextBelow(0));
}
