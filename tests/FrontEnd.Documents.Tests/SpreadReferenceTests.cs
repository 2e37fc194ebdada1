using System.Globalization;
using FrontEnd.Designs;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Percentiles of many builds against those of an independent program with random numbers of its own (reference/spread).</summary>
public class SpreadReferenceTests
{
    private const int Builds = 20_000, TheirBuilds = 100_000;

    [Fact]
    public void Percentiles_OfTheWorkedDesign_AgreeWithTheIndependentProgram()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, "dry-headband.toml")).Design;
        SpreadResult result = SpreadRun.Run(design, new SpreadOptions { Builds = Builds, Seed = 5 }, null, TestContext.Current.CancellationToken)!;
        string[] lines = [.. File.ReadLines(Path.Combine(Repository.Root, "reference", "spread", "dry-headband.dat")).Where(line => !line.StartsWith('#'))];
        double[] shares = [.. lines[0].Split('|')[2..].Select(head => double.Parse(head.TrimEnd('%'), CultureInfo.InvariantCulture) / 100)];
        Assert.Equal(8, lines.Length - 1);
        foreach (string[] cells in lines[1..].Select(line => line.Split('|')))
        {
            SpreadFigure figure = result.Find(cells[0])!;
            double[] theirs = [.. cells[1..].Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];

            // Their fold is taken at the band's centre for all of the band: 5e-6 of the noise.
            Assert.Equal(1, figure.Nominal / theirs[0], 2e-5);
            for (int i = 0; i < shares.Length; i++)
            {
                // The share of our builds below their percentile; five standard errors of both samples' ranks.
                double share = figure.Values.Count(value => value <= theirs[i + 1]) / (double)Builds;
                double allowed = 5 * Math.Sqrt(shares[i] * (1 - shares[i]) * ((1.0 / Builds) + (1.0 / TheirBuilds)));
                Assert.True(Math.Abs(share - shares[i]) < allowed, $"{cells[0]} at {shares[i]}: {share} of the builds lie below {theirs[i + 1]:G7}");
            }
        }
    }
}
