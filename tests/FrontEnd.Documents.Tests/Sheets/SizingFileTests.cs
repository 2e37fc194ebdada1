using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Sizing;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Sizing;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

public sealed class SizingFileTests
{
    [Theory]
    [InlineData("hobbyist-requirements.toml")]
    [InlineData("engineer-requirements.toml")]
    [InlineData("instructor-requirements.toml")]
    public void Size_UsersRequirements_WritesDesignsThatPassTheCheck(string name)
    {
        (SizingRequest? request, IReadOnlyList<Finding> findings) = SizingFile.Read(Path.Combine(Repository.Designs, name));
        Assert.Empty(findings);
        SizingOutcome outcome = Sizer.Size(request!, cancellation: TestContext.Current.CancellationToken);
        Assert.NotEmpty(outcome.Front);
        foreach (SizedDesign one in outcome.Front)
        {
            DesignDocument document = DesignDocument.Parse(DesignWriter.ToToml(one.Design, request!.Stated), DocumentFormat.Toml);
            Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);

            // What the requirements state, a highest voltage that is the default included, is stated by the design too.
            Assert.DoesNotContain(document.Findings, finding => finding.Code == "FE0211");
            Assert.Equal(OriginKind.Given, document.OriginOf("supply.highest")!.Kind);
            Assert.All(request.Stated, key => Assert.Equal(OriginKind.Given, document.OriginOf(key)!.Kind));
            Assert.True(Evaluator.Evaluate(document.Design).AllRequirementsMet, one.Summary);
        }

        string text = SizeText.Of(request!, outcome);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
        using var json = System.Text.Json.JsonDocument.Parse(AnswerJson.Of(request!, outcome, findings));
        Assert.Equal(outcome.Front.Count, json.RootElement.GetProperty("designs").GetArrayLength());
    }

    [Theory]
    [InlineData("[sizing]\nparts = 2.5\n", "FE0124")]
    [InlineData("[sizing]\nparts = \"many\"\n", "FE0124")]
    [InlineData("[sizing]\nbattery-life = 20\n", "FE0124")]
    [InlineData("[sizing]\nbattery-life = \"20 V\"\n", "FE0102")]
    [InlineData("[sizing]\npart = 20\n", "FE0121")]
    [InlineData("sizing = 3\n", "FE0128")]
    [InlineData("amplifier.gain = 5\n", "FE0751")]
    [InlineData("electrodes.active = \"no-such\"\n", "FE0126")]
    public void Read_Mistakes_AreFindingsWithTheirLine(string text, string code)
    {
        (_, IReadOnlyList<Finding> findings) = SizingFile.Parse(text, "r.toml");
        Assert.Contains(findings, finding => finding.Code == code && finding.Line is not null);
    }

    [Fact]
    public void Shelf_HasEveryCardOfTheProgram()
    {
        Assert.All(SizingFile.Shelf.Amplifiers, amplifier => Assert.NotEmpty(amplifier.Card));
        Assert.All(SizingFile.Shelf.OpAmps, opAmp => Assert.NotEmpty(opAmp.Card));
        Assert.Contains(SizingFile.Shelf.Converters, converter => converter.Card == "sar-12-microcontroller");
    }
}
