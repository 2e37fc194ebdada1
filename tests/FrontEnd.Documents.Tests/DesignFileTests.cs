using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Every design that comes with the program opens and says what it is.</summary>
public sealed class DesignFileTests
{
    public static TheoryData<string> Good => [.. Directory.GetFiles(Repository.Designs, "*.toml").Select(path => Path.GetFileName(path)).Where(name => name is not "wrong-in-six-ways.toml" && !name.EndsWith("-requirements.toml", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Good))]
    public void Design_ThatComesWithTheProgram_OpensWithoutFindings(string file)
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, file));
        Assert.Empty(document.Findings.Select(finding => $"{finding.Line}: {finding.Code} {finding.Message}"));
    }

    [Theory]
    [InlineData("dry-headband.toml")]
    [InlineData("gel-cap.toml")]
    [InlineData("saline-sponge.toml")]
    public void Design_WithTooSmallProtection_SaysForCalculationOnly(string file)
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, file));
        const string words = "for calculation only: the protection resistors are too small to be worn";
        Assert.StartsWith("# F" + words[1..], document.Text, StringComparison.Ordinal);
        Assert.StartsWith(words, document.Design.Caution, StringComparison.Ordinal);
        Assert.Equal(file is "saline-sponge.toml", document.Design.Caution.Contains("earthed", StringComparison.Ordinal));
    }

    // 50 µA after a fault, 10 µA through a driven ground, as the requirements' defaults; resistors at their lower tolerance.
    [Theory]
    [InlineData("starter.toml")]
    [InlineData("minimal.toml")]
    [InlineData("hobbyist.toml")]
    [InlineData("engineer.toml")]
    [InlineData("instructor.toml")]
    public void Design_ToBeWorn_HasProtectionForItsHighestVoltage(string file)
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, file)).Design;
        double lead = design.Input.SeriesResistor.Ohms * (1 - design.Input.ResistorTolerance.Fraction);
        double ground = design.GroundDrive.SeriesResistor.Ohms * (1 - design.GroundDrive.ResistorTolerance.Fraction);
        double allowed = design.GroundDrive.Kind == Amplifier.GroundKind.Driven ? 10e-6 : 50e-6;
        Assert.True(design.Supply.Highest.Volts / lead <= 50e-6, $"{design.Supply.Highest.Volts} V over {lead} Ω");
        Assert.True(design.Supply.Highest.Volts / ground <= allowed, $"{design.Supply.Highest.Volts} V over {ground} Ω");
    }

    [Fact]
    public void Starter_IsTheFileInTheFolder()
    {
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Designs, "starter.toml")), DesignDocument.StarterText);
    }

    [Fact]
    public void WrongInSixWays_ReportsAllSix_EachWithRemedy()
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, "wrong-in-six-ways.toml"));
        (string Code, string Field, string Text)[] expected =
        [
            ("FE0305", "input.bias-resistor", "no bias resistor"),
            ("FE0126", "electrodes.active.card", "2: there is no such card"),
            ("FE0102", "input.series-resistor", "3: a frequency"),
            ("FE0121", "input.shunt-capacitance", "4: the key is"),
            ("FE0110", "amplifier.gain", "5: no amplifier"),
            ("FE0306", "digital[1].centre", "6: not below half"),
        ];
        string[] lines = document.Text.Split('\n');
        Assert.Equal(expected.Length, document.Findings.Count);
        foreach ((string code, string field, string text) in expected)
        {
            Finding finding = Assert.Single(document.Findings, finding => string.Equals(finding.Code, code, StringComparison.Ordinal));
            Assert.Equal(field, finding.Field);
            Assert.Equal(Severity.Error, finding.Severity);
            Assert.NotNull(finding.Help);
            if (code is not "FE0305")   // its key is not in the file: it points at the table where it belongs
            {
                Assert.Contains(text, lines[finding.Line!.Value - 1], StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void With_FindingsOfTheEvaluation_ArePlacedAndNotRepeated()
    {
        DesignDocument document = DesignDocument.Parse("[input]\nseries-resistor = \"68 kΩ\"\n[electrodes]\nground-electrode = false\n", DocumentFormat.Toml, "a.toml");
        Finding repeated = Assert.Single(document.Findings, finding => finding.Code is "FE0305") with { File = null, Line = null, Excerpt = null };
        Finding other = new("FE0410", Severity.Warning, "input.series-resistor", "message", null, null);
        IReadOnlyList<Finding> all = document.With([repeated, other]);
        Assert.Equal(document.Findings.Count + 1, all.Count);
        Assert.Equal(("a.toml", 2), (all[^1].File, all[^1].Line));
    }

    [Fact]
    public void Origins_OfMinimal_TellGivenCardAndDefaultApart()
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, "minimal.toml"));
        Assert.Equal(DesignFields.Of(document.Design).Select(field => field.Key), document.Origins.Select(origin => origin.Key), StringComparer.Ordinal);
        Assert.Equal(new FieldOrigin("amplifier.gain", OriginKind.Given, "4", "design file"), document.OriginOf("amplifier.gain"));
        FieldOrigin card = document.OriginOf("electrodes.active.contact-resistance")!;
        Assert.Equal(OriginKind.Card, card.Kind);
        Assert.Equal("30 kΩ", card.Text);
        Assert.Contains("Ferree", card.Source, StringComparison.Ordinal);
        FieldOrigin standard = document.OriginOf("mains.body-to-earth")!;
        Assert.Equal(OriginKind.Default, standard.Kind);
        Assert.Equal("300 pF", standard.Text);
        Assert.Contains("Metting van Rijn", standard.Source, StringComparison.Ordinal);
        Assert.Equal("50 % wet, 100 % dry", document.OriginOf("electrodes.mismatch")!.Text);
        Assert.All(document.Origins, origin => Assert.False(string.IsNullOrWhiteSpace(origin.Source), origin.Key));
    }
}
