using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Simulation;
using Xunit;

namespace FrontEnd.Documents.Tests.Simulation;

public sealed class WorkedSampleTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("dry-headband", 1200)]
    [InlineData("gel-cap", 600)]
    [InlineData("saline-sponge", 600)]
    [InlineData("channels/evening-band", 600)]
    public void Show(string name, double seconds)
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Worked, name + ".json")).Design;
        var clock = System.Diagnostics.Stopwatch.StartNew();
        List<Finding> findings = [];
        foreach (bool steps in new[] { false, true })
        {
            SampleRun run = SampleRun.Prepare(design, new SampleWish { Length = Duration.FromSeconds(seconds), Without = ["hum"], StepByStep = steps }, findings)!;
            output.WriteLine($"{clock.Elapsed} prepared {run.IsStepByStep} {run.Rate.Hertz} {run.Channels.Count} {run.Design.Arithmetic.Word} fraction {run.Design.Arithmetic.StateFraction}");
            var summary = new SampleSummary.Builder(run);
            foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
            {
                summary.Take(block);
            }

            SampleSummary whole = summary.Whole();
            output.WriteLine($"{clock.Elapsed} {whole.NotCompared} {whole.ClippedSamples}");
            foreach (SampledChannel channel in whole.Channels)
            {
                output.WriteLine($"{channel.Name} rms {channel.Rms.Volts:g6}");
                foreach (SampledBand band in channel.Bands)
                {
                    output.WriteLine($"  {band.Band.Name,-10} {band.Measured.Volts:g6} {band.Budget.Volts:g6} {band.Share:f4} in {band.Least:f4} {band.Greatest:f4} nu {band.Freedom:f0} {band.IsInside}");
                }
            }
        }
    }
}
