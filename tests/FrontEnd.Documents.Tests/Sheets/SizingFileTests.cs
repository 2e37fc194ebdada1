using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Sizing;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Sizing;
using FrontEnd.Text;
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
    [InlineData("[sizing]\nparts = 2.5\n", "FE0113")]
    [InlineData("[sizing]\nparts = 0\n", "FE0110")]
    [InlineData("[sizing]\nbattery-life = \"-3 h\"\n", "FE0110")]
    [InlineData("[sizing]\nparts = \"many\"\n", "FE0124")]
    [InlineData("[sizing]\nbattery-life = 20\n", "FE0125")]
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

    // A band above half the default rate is no error where the rate is still to be found.
    [Theory]
    [InlineData("band = [\"0.5 Hz\", \"200 Hz\"]\n")]
    [InlineData("band = [\"1 Hz\", \"2 kHz\"]\n[[digital]]\nkind = \"low-pass\"\ncorner = \"1.5 kHz\"\n")]
    [InlineData("supply.lowest = \"2 V\"\n")]
    public void Read_WhatRestsOnPartsToBeFound_IsNotJudged(string text)
    {
        (SizingRequest? request, IReadOnlyList<Finding> findings) = SizingFile.Parse(text, "r.toml");
        Assert.Empty(findings);
        Assert.NotNull(request);
    }

    /// <summary>Whatever is asked, what is written passes the check: no error, no fail, no part beyond its card, buffers that were asked for in
    /// place. Drawn anew from each seed.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Size_AnyRequest_WritesDesignsThatPassTheCheck(int seed)
    {
        string text = AnyRequest(new Random(seed));
        (SizingRequest? request, IReadOnlyList<Finding> findings) = SizingFile.Parse(text, "r.toml");
        Assert.DoesNotContain(findings, finding => finding.Severity == Severity.Error);
        SizingOutcome outcome = Sizer.Size(request!, cancellation: TestContext.Current.CancellationToken);
        Assert.Empty(outcome.Findings);
        foreach (SizedDesign one in outcome.Front)
        {
            DesignDocument document = DesignDocument.Parse(DesignWriter.ToToml(one.Design, request!.Stated), DocumentFormat.Toml);
            Results.Assessment assessment = Evaluator.Evaluate(document.Design);
            IReadOnlyList<Finding> said = document.With(assessment.Findings);
            Assert.True(assessment.AllRequirementsMet, $"{one.Summary}\n{text}");
            Assert.DoesNotContain(assessment.Results, result => result.Verdict.Kind == Results.VerdictKind.Fail);
            Assert.DoesNotContain(said, finding => finding.Severity == Severity.Error || finding.Code is Messages.GainNotOffered or Messages.SupplyOutsidePart
                or Messages.ConverterAboveSupply);
            Assert.Equal(request.Fixed.Electrodes.ActiveBuffer?.Card, document.Design.Electrodes.ActiveBuffer?.Card);
            Assert.Equal(request.Fixed.Electrodes.ReferenceBuffer?.Card, document.Design.Electrodes.ReferenceBuffer?.Card);
            Assert.True(request.Parts is null || one.Parts <= request.Parts);
            Assert.True(request.BatteryLife is null || request.BatteryLife.Value.Seconds <= assessment["power.battery_life"].Si);
        }

        // What must be given up is told, and no safety limit is among it.
        Obstacle[] given = [.. outcome.Obstacles.Where(obstacle => obstacle.Relaxation is not null)];
        Assert.Equal(outcome.Front.Count == 0, given.Length != 0);
        Assert.DoesNotContain(given, obstacle => obstacle.Requirement.Contains("current", StringComparison.Ordinal) || obstacle.IsMetByOthers);
    }

    private static string AnyRequest(Random random)
    {
        string One(params string[] of) => of[random.Next(of.Length)];
        (string lowest, string highest, string rails) = random.Next(5) switch
        {
            0 => ("2.7 V", "3.3 V", ""), 1 => ("3 V", "5 V", "rails-highest = \"3.3 V\"\n"), 2 => ("4.75 V", "5.25 V", ""), 3 => ("1.8 V", "3.6 V", ""), _ => ("3.3 V", "4.2 V", ""),
        };
        string electrode = One("gel-prepared", "gel-unprepared", "saline-sponge", "dry-forehead");
        string buffers = random.Next(3) == 0 ? "active-buffer.card = \"low-noise-cmos-follower\"\nreference-buffer.card = \"cmos-follower\"\n" : "";
        return $"""
            name = "any"
            channels = {One("1", "2", "8")}
            band = ["{One("0.5 Hz", "1 Hz")}", "{One("40 Hz", "70 Hz", "150 Hz", "500 Hz")}"]
            [signal]
            largest = "{One("500 µV", "2 mV", "5 mV")}"
            [mains]
            frequency = "{One("50 Hz", "60 Hz")}"
            voltage = "230 V"
            lead-to-mains = "{One("0.1 fF", "0.5 fF")}"
            amplifier-to-earth = "{One("10 pF", "10 pF", "1 µF")}"
            loop-area = "10 cm²"
            [electrodes]
            active.card = "{electrode}"
            reference.card = "{electrode}"
            ground.card = "{electrode}"
            {buffers}[supply]
            lowest = "{lowest}"
            highest = "{highest}"
            {rails}battery-capacity = "600 mAh"
            [requirements]
            noise = "{One("3 µV", "8 µV", "20 µV")}"
            offset = "{One("100 mV", "300 mV")}"
            {One("", "fold = \"60 dB\"", "headroom = \"3 dB\"")}
            [sizing]
            battery-life = "{One("10 h", "40 h")}"
            {One("", "parts = 60")}

            """;
    }

    [Fact]
    public void Shelf_HasEveryCardOfTheProgram()
    {
        Assert.All(SizingFile.Shelf.Amplifiers, amplifier => Assert.NotEmpty(amplifier.Card));
        Assert.All(SizingFile.Shelf.OpAmps, opAmp => Assert.NotEmpty(opAmp.Card));
        Assert.Contains(SizingFile.Shelf.Converters, converter => converter.Card == "sar-12-microcontroller");
    }
}
