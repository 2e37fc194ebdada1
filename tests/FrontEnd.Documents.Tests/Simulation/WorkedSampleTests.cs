using System.Globalization;
using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Simulation;
using Xunit;

namespace FrontEnd.Documents.Tests.Simulation;

/// <summary>The worked designs' noise budgets against their own samples, a second way that shares densities with them but no integral, fold or filter response: total
/// and named bands inside limits that one sound record of a thousand misses.</summary>
/// <remarks>Lengths are such that a tenth more power in a source that makes two fifths of the variance, which is 2 % more noise, fails for 19 of 20 seeds:
/// √(2ν)·0.0198 = 3.29 + 1.645, ν = 31,000 in the design's band. By hand: <c>SAMPLE_SEEDS=20</c> counts how many seeds find it.</remarks>
public sealed class WorkedSampleTests(ITestOutputHelper output)
{
    private const double Wanted = 31_000;

    private static readonly Dictionary<string, Design> Known = [];

    private static Design Design(string name) => Known.TryGetValue(name, out Design? design) ? design
        : Known[name] = DesignDocument.Read(Path.Combine(Repository.Worked, name + ".json")).Design;

    private static SampleSummary Run(string name, double seconds, ulong seed = 1, IReadOnlyDictionary<SourceId, double>? louder = null)
    {
        List<Finding> findings = [];
        SampleRun run = SampleRun.Prepare(Design(name), new SampleWish
        {
            Length = Duration.FromSeconds(seconds), Seed = seed, Without = ["hum"], Louder = louder ?? new Dictionary<SourceId, double>(),
        }, findings)!;
        Assert.Empty(findings);
        var summary = new SampleSummary.Builder(run);
        foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
        {
            summary.Take(block);
        }

        return summary.Whole();
    }

    [Theory]
    [InlineData("dry-headband", 6000)]
    [InlineData("gel-cap", 900)]
    [InlineData("saline-sponge", 1400)]
    [InlineData("channels/evening-band", 5400)]
    public void TotalAndBands_AreInsideTheirLimits(string name, double seconds)
    {
        SampleSummary summary = Run(name, seconds);
        Assert.Null(summary.NotCompared);
        foreach (SampledChannel channel in summary.Channels)
        {
            Assert.Equal(Design(name).Bands.Count(band => band.Low.Hertz < Design(name).Converter.Rate.Hertz / 2) + 1, channel.Bands.Count);
            Assert.True(Wanted < channel.Bands[0].Freedom, string.Create(CultureInfo.InvariantCulture, $"{name} {channel.Name}: {channel.Bands[0].Freedom:f0}"));
            foreach (SampledBand band in channel.Bands)
            {
                Assert.True(band.IsInside, string.Create(CultureInfo.InvariantCulture, $"{name} {channel.Name} {band.Band.Name}: {band.Share:f4}, allowed {band.Least:f4} to {band.Greatest:f4}"));
            }
        }
    }

    /// <summary>The sources of a design's first channel that make at least two fifths of its variance, and all of them for 3 % more noise.</summary>
    private static IEnumerable<(string What, Dictionary<SourceId, double> Louder)> Mutations(string name)
    {
        NoiseBudget noise = new Evaluation(Design(name)).Of(0).Noise;
        NoiseRow[] rows = [.. noise.Rows()];
        yield return ("3 % more noise", rows.ToDictionary(row => row.Id, _ => 1.03 * 1.03));
        foreach (NoiseRow row in rows.Where(row => 0.4 * noise.Total * noise.Total <= row.Rms * row.Rms))
        {
            yield return ($"a tenth more of {row.Id}", new Dictionary<SourceId, double> { [row.Id] = 1.1 });
        }
    }

    [Theory]
    [InlineData("dry-headband", 6000)]
    [InlineData("gel-cap", 900)]
    [InlineData("saline-sponge", 1400)]
    [InlineData("channels/evening-band", 5400)]
    public void ALittleMoreNoise_IsOutsideThem(string name, double seconds)
    {
        ulong seeds = ulong.Parse(Environment.GetEnvironmentVariable("SAMPLE_SEEDS") ?? "1", CultureInfo.InvariantCulture);
        foreach ((string what, Dictionary<SourceId, double> louder) in Mutations(name))
        {
            int found = 0;
            for (ulong seed = 1; seed <= seeds; seed++)
            {
                found += Run(name, seconds, seed, louder).Channels[0].Bands[0].IsInside ? 0 : 1;
            }

            output.WriteLine($"{name}, {what}: found with {found} of {seeds} seeds");
            Assert.True(0.9 * seeds <= found, $"{name}, {what}: found with {found} of {seeds} seeds");
        }
    }
}
