using System.Xml.Linq;
using FrontEnd.Designs;
using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Simulation;
using Xunit;

namespace FrontEnd.Documents.Tests.Simulation;

/// <summary>The picture of simulated samples.</summary>
public sealed class SamplesDrawingTests
{
    private static SampleLook Look(Design design, params string[] without) => SampleLook.Of(
        SampleRun.Prepare(design, new SampleWish { Length = Duration.FromSeconds(40), Without = without }, [])!, SamplesDrawing.Shown, null, TestContext.Current.CancellationToken);

    [Theory]
    [InlineData("hobbyist", 1)]
    [InlineData("starter", 2)]
    [InlineData("eight-channel-cap", 4)]
    public void Picture_IsXmlWithEveryLine_AndSaysThatNobodyWasRecorded(string name, int channels)
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml")).Design;
        SampleLook all = Look(design), without = Look(design, "hum");
        string alone = SamplesDrawing.FileOf(Evaluator.Evaluate(design), all, "samples", null),
            both = SamplesDrawing.FileOf(Evaluator.Evaluate(design), without, "without hum", (all, "with all"));
        foreach (string file in new[] { alone, both })
        {
            XElement root = XDocument.Parse(file).Root!;
            string[] texts = [.. root.Descendants().Where(one => one.Name.LocalName == "text").Select(one => one.Value)];
            Assert.Contains(texts, text => text.Contains("nobody was recorded", StringComparison.Ordinal));
            Assert.Contains(texts, text => text.Contains("Not a medical device", StringComparison.Ordinal));
            Assert.Contains("the noise budget", texts);
            Assert.Equal(channels, texts.Count(text => text == "time, s"));
        }

        Assert.DoesNotContain("with all", alone, StringComparison.Ordinal);
        Assert.Contains("with all", both, StringComparison.Ordinal);
    }
}
