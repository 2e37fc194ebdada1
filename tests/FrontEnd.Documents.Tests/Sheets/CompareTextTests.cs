using FrontEnd.Compare;
using FrontEnd.Designs;
using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>What <c>compare</c> prints: the worst first, and nothing about a design that is none.</summary>
public class CompareTextTests
{
    private static Design Starter { get; } = DesignDocument.Read(Path.Combine(Repository.Designs, "starter.toml")).Design;

    private static string Text(Design to) => CompareText.Of(Comparison.Of(Starter, to, TestContext.Current.CancellationToken));

    [Fact]
    public void AMarginThatClips_FailsFirst()
    {
        string text = Text(Starter with { Amplifier = Starter.Amplifier with { OutputMargin = Voltage.FromVolts(1) } });
        string[] lines = text.Split('\n');
        int heading = Array.FindIndex(lines, line => line.Trim() == "fails now");
        Assert.True(0 < heading && lines[heading + 1].Contains("(fail)", StringComparison.Ordinal), text);
        Assert.Contains("levels.offset_survived: ", text, StringComparison.Ordinal);
        Assert.True(heading < (Array.FindIndex(lines, line => line.Trim() == "better") is var better and >= 0 ? better : lines.Length), text);
    }

    [Fact]
    public void ALimitOfSafety_IsNoSilentChange()
    {
        string text = Text(Starter with { Requirements = Starter.Requirements with { FaultCurrent = Current.FromAmperes(400e-6) } });
        Assert.DoesNotContain("no judged figure changes", text, StringComparison.Ordinal);
        Assert.Contains("safety.fault_current: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnInvalidDesignHalfWay_HasItsFindingAndNoFigures()
    {
        string text = Text(Starter with
        {
            Band = Starter.Band with { High = Frequency.FromHertz(10) }, Digital = [],
            Converter = Starter.Converter with { Rate = Frequency.FromHertz(50) },
        });
        string half = text[text.IndexOf("converter.rate alone", StringComparison.Ordinal)..];
        half = half[..(half.IndexOf("\n\n", StringComparison.Ordinal) is var end and > 0 ? end : half.Length)];
        Assert.Contains("error FE1170", half, StringComparison.Ordinal);
        Assert.Contains("no figures: a design with this difference is invalid", half, StringComparison.Ordinal);
        Assert.DoesNotContain("no limit found", half, StringComparison.Ordinal);
    }

    /// <summary>Noise, delay, current, battery and data rate are told though no limit stands against them and they move by less than a tenth, or not at all.</summary>
    [Fact]
    public void WhatDesignsAreChosenBy_IsToldOfBoth()
    {
        Design to = Starter with { Supply = Starter.Supply with { OtherCurrent = Current.FromAmperes(Starter.Supply.OtherCurrent.Amperes * 1.04) } };
        string text = Text(to);
        Comparison comparison = Comparison.Of(Starter, to, TestContext.Current.CancellationToken);
        foreach (string id in (string[])["power.supply_current", "power.battery_life"])
        {
            (string before, string after) = (FrontEnd.Text.QuantityText.Format(comparison.From[id].Value), FrontEnd.Text.QuantityText.Format(comparison.To[id].Value));
            Assert.NotEqual(before, after);
            Assert.Contains($"\n  {id}: {before} -> {after}\n", text, StringComparison.Ordinal);
            Assert.Contains($"\"id\": \"{id}\"", AnswerJson.Of(comparison), StringComparison.Ordinal);
        }

        Assert.Contains($"\n  data.bit_rate: {FrontEnd.Text.QuantityText.Format(comparison.To["data.bit_rate"].Value)} in both\n", text, StringComparison.Ordinal);
        string without = Text(to with { Supply = to.Supply with { BatteryCapacity = null } });
        Assert.Contains($"power.battery_life: {FrontEnd.Text.QuantityText.Format(comparison.From["power.battery_life"].Value)} -> none", without, StringComparison.Ordinal);
    }

    /// <summary>A current that no resistor limits is not a limit that was not found: what it means for the wearer is said, and what to do.</summary>
    [Fact]
    public void ACurrentThatNothingLimits_IsSaidSo_WhereverItIsJudged()
    {
        Design bare = Starter with
        {
            Input = Starter.Input with { SeriesResistor = Resistance.FromOhms(0) }, GroundDrive = Starter.GroundDrive with { SeriesResistor = Resistance.FromOhms(0) },
        };
        DesignDocument document = DesignDocument.Parse(DesignWriter.ToToml(bare), Reading.DocumentFormat.Toml);
        Sheet sheet = new(document, FrontEnd.Advice.Advisor.Advise(FrontEnd.Reporting.Evaluator.Evaluate(document.Design), TestContext.Current.CancellationToken));
        foreach (string text in (string[])[CheckText.Brief(sheet, ""), CheckText.Of(sheet)])
        {
            string flat = string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
            Assert.Matches("x fail (dc after a single fault )?not limited at most 50.0 µA", flat);
            Assert.Contains("only the skin limits the current through the wearer", flat, StringComparison.Ordinal);
            Assert.Contains("fit a series resistor in it, 68 kΩ at least", flat, StringComparison.Ordinal);
            Assert.Contains("helps most: series resistors in every lead: measuring 0 Ω -> 68 kΩ, ground 0 Ω -> 68 kΩ", flat, StringComparison.Ordinal);
            Assert.DoesNotContain("no limit found at most", flat, StringComparison.Ordinal);
        }
    }

    /// <summary>A figure without bound says which way it has none, here as in JSON: of rejection none is enough where the leads alone leave too much, and none
    /// is needed where there is nothing to reject.</summary>
    [Fact]
    public void AFigureWithoutBound_SaysWhichWay()
    {
        Design strict = Starter with { Requirements = Starter.Requirements with { MainsResidue = VoltageRms.FromVolts(1e-15) } };
        Assert.Matches("\n    mains.cmrr_needed: [0-9.]+ dB -> none is enough\n", Text(strict));
        Assert.Contains("none is enough", AnswerJson.Of(Comparison.Of(Starter, strict, TestContext.Current.CancellationToken)), StringComparison.Ordinal);
        FrontEnd.Results.Assessment quiet = FrontEnd.Reporting.Evaluator.Evaluate(Starter with { Mains = Starter.Mains with { Voltage = VoltageRms.FromVolts(0) } });
        Assert.Equal("none is needed", Wording.Value(quiet["mains.cmrr_needed"]));
        Assert.Equal("none is left", Wording.Value(quiet["mains.system_cmrr"]));
    }

    [Fact]
    public void NoDifference_IsSaid() => Assert.StartsWith("the designs do not differ", Text(Starter with { }), StringComparison.Ordinal);
}
