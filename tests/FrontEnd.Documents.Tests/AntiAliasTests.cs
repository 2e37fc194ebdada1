using FrontEnd.AntiAlias;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>An anti-alias filter that is given by what it has to do.</summary>
public sealed class AntiAliasTests
{
    private static DesignDocument Read(string text) => DesignDocument.Parse(text, DocumentFormat.Toml, "d.toml");

    /// <summary>55 dB at 250 − 40 = 210 Hz from 40 Hz: ln(10^2.75)/ln(210/40) = 3.82, so order 4 (worked by hand).</summary>
    [Fact]
    public void Requirement_BandAndAttenuation_BecomesStagesThatMeetIt()
    {
        DesignDocument document = Read("[converter]\nrate = \"250 Hz\"\n[anti-alias]\ncorner = \"40 Hz\"\nattenuation = \"55 dB\"\n");
        Assert.False(document.HasErrors);
        Assert.Equal(2, document.Design.Stages.Count);
        Assert.All(document.Design.Stages, stage => Assert.IsType<SallenKeySection>(stage));
        double loss = -10 * Math.Log10(AsBuiltSection.PowerResponse(document.Design.Stages, 210) / AsBuiltSection.PowerResponse(document.Design.Stages, 0.1));
        Assert.InRange(loss, 55, 60);
        Assert.Equal("realised from [anti-alias]", document.OriginOf("stages[1].r1")!.Source);
    }

    [Fact]
    public void Requirement_OrderFamilyTopology_IsWhatIsBuilt()
    {
        DesignDocument document = Read("[anti-alias]\nfamily = \"bessel\"\norder = 3\ncorner = \"60 Hz\"\ntopology = \"multiple-feedback\"\nresistor-tolerance = \"0.5 %\"\n");
        Assert.False(document.HasErrors);
        Assert.Single(document.Design.Stages.OfType<RcSection>());
        MultipleFeedbackSection section = Assert.Single(document.Design.Stages.OfType<MultipleFeedbackSection>());
        Assert.Equal(0.5, section.ResistorTolerance.Percent, 1e-12);
        double power = AsBuiltSection.PowerResponse(document.Design.Stages, 60) / AsBuiltSection.PowerResponse(document.Design.Stages, 0.1);
        Assert.Equal(-3.01, 10 * Math.Log10(power), 0.1);
    }

    [Theory]
    [InlineData("[anti-alias]\norder = 0\n", "FE0110", "anti-alias.order")]
    [InlineData("[anti-alias]\nfamily = \"elliptic\"\n", "FE0111", "anti-alias.family")]
    [InlineData("[anti-alias]\ncornr = \"40 Hz\"\n", "FE0121", "anti-alias.cornr")]
    [InlineData("[anti-alias]\ncorner = \"300 Hz\"\n", "FE0608", "anti-alias")]
    [InlineData("[anti-alias]\norder = 2\n[[stages]]\nkind = \"low-pass\"\ntopology = \"rc\"\n", "FE0127", "anti-alias")]
    public void Requirement_ThatCannotBe_IsFinding(string text, string code, string field)
    {
        DesignDocument document = Read(text);
        Assert.Contains(document.Findings, finding => finding.Code == code && finding.Field == field && finding.Severity == Severity.Error && finding.Line is not null);
    }

    [Fact]
    public void Set_PartThatFollowsFromTheRequirement_IsRefused()
    {
        DesignDocument document = Read("[anti-alias]\norder = 2\n");
        EditResult result = document.Set("stages[1].r1", "10 kΩ");
        Assert.Equal(document.Text, result.Document.Text);
        Assert.Contains("[anti-alias]", result.Finding!.Message + result.Finding.Note + result.Finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Requirement_EqualComponents_IsWhatIsBuilt()
    {
        DesignDocument document = Read("[anti-alias]\norder = 4\ncorner = \"40 Hz\"\ntopology = \"sallen-key-equal\"\n");
        Assert.False(document.HasErrors);
        SallenKeySection[] sections = [.. document.Design.Stages.Cast<SallenKeySection>()];
        Assert.Equal(2, sections.Length);
        // K = 3 − 1/Q of the two pole pairs, 1.152 and 2.235: 2.575 together.
        Assert.Equal(2.575, sections[0].NominalGain * sections[1].NominalGain, 0.03);
        Assert.NotNull(document.OriginOf("stages[1].ground-resistor"));
    }

    [Fact]
    public void Stages_EqualSectionAndNotch_AreReadWithTheirDefaultsAndEvaluated()
    {
        DesignDocument document = Read(
            "[[stages]]\nkind = \"notch\"\nfeedback-resistor = \"19 kΩ\"\n[[stages]]\nkind = \"low-pass\"\ntopology = \"sallen-key-equal\"\nopamp.output-resistance = \"2 kΩ\"\n");
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        TwinTNotch notch = Assert.IsType<TwinTNotch>(document.Design.Stages[0]);
        Assert.Equal(("analogue notch 1", 1.95), (notch.Name, notch.NominalGain));
        SallenKeySection section = Assert.IsType<SallenKeySection>(document.Design.Stages[1]);
        Assert.Equal(("anti-alias 1", 2000.0), (section.Name, section.OpAmp.OutputResistance.Ohms));
        Assert.Equal(1.59, section.NominalGain, 1e-12);
        Assessment assessment = Evaluator.Evaluate(document.Design);

        // 1/(2π·31.6 kΩ·100 nF) = 50.37 Hz and Q 10: at 49.8 Hz and 50.2 Hz |1 − x²|/√((1 − x²)² + (x/Q)²) is 13.14 dB and 23.7 dB down (by hand); the lesser is the depth.
        Assert.Equal(13.14, assessment.Find("filter.analogue-notch-1.notch_depth")!.Si, 0.05);
        Assert.True(assessment.Find("filter.analogue-notch-1.notch_depth_worst")!.Si < assessment.Find("filter.analogue-notch-1.notch_depth")!.Si - 5);
        Assert.Null(assessment.Find("filter.analogue-notch-1.minus_3db"));

        // 1.59·(1 + 22/22 + 22/2 + 22/15.9) = 22.87, 27.2 dB.
        Assert.Equal(27.2, assessment.Find("filter.anti-alias-1.stop_band_floor")!.Si, 0.1);
        Assert.Equal(1.95 * 1.59 * document.Design.Amplifier.Gain, assessment.Find("gain.mid")!.Hand!.Value.SiValue, 1e-6);
    }

    [Fact]
    public void Stages_JsonKeys_AreTheNeighboursManner()
    {
        DesignDocument document = DesignDocument.Parse(
            """{"stages": [{"kind": "notch", "name": "n", "Rf": 10000, "Rg": null, "opamp": {"Ro": 150}}, {"kind": "lowpass", "topology": "sallen-key-equal", "name": "a", "R1": 1000, "R2": 1000, "C1": 1e-6, "C2": 1e-6, "Rf": 5000, "Rg": 10000, "opamp": {"Ro": 30}}]}""",
            DocumentFormat.Json, "d.json");
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        TwinTNotch notch = Assert.IsType<TwinTNotch>(document.Design.Stages[0]);
        Assert.Null(notch.GroundResistor);
        Assert.Equal(150, notch.OpAmp.OutputResistance.Ohms);
        Assert.Equal(1.5, Assert.IsType<SallenKeySection>(document.Design.Stages[1]).NominalGain);
        Assert.Equal(30, document.Design.Stages[1].FittedOpAmp!.OutputResistance.Ohms);
    }

    /// <summary>Gain 3 of equal parts, gain 2 of a matched twin-T: both oscillate, and the help names the resistor.</summary>
    [Theory]
    [InlineData("kind = \"low-pass\"\ntopology = \"sallen-key-equal\"\nfeedback-resistor = \"20.1 kΩ\"\n", "its gain is 3.01")]
    [InlineData("kind = \"notch\"\nfeedback-resistor = \"20.1 kΩ\"\n", "its gain is 2.005")]
    public void Stages_GainTooHigh_IsAnError(string stage, string words)
    {
        Finding finding = Assert.Single(Read("[[stages]]\n" + stage).Findings, finding => finding.Code is "FE0330");
        Assert.Equal((Severity.Error, "stages[1]"), (finding.Severity, finding.Field));
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
        Assert.Contains("stages[1].feedback-resistor", finding.Help, StringComparison.Ordinal);
    }

    /// <summary>A stop band that rises to less than the fold asks for, through the whole path, is said; behind an amplifier of little bandwidth it is not.</summary>
    [Fact]
    public void StopBand_ThatRisesThroughThePath_IsAWarning()
    {
        const string Text = "[amplifier]\nbandwidth = \"{0}\"\n[[stages]]\nkind = \"low-pass\"\ntopology = \"sallen-key\"\nopamp.output-resistance = \"2 kΩ\"\n";
        Finding finding = Assert.Single(Evaluator.Evaluate(Read(Text.Replace("{0}", "10 MHz", StringComparison.Ordinal)).Design).Findings, finding => finding.Code is "FE0654");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("multiple-feedback", finding.Help, StringComparison.Ordinal);
        Assert.DoesNotContain(Evaluator.Evaluate(Read(Text.Replace("{0}", "1 kHz", StringComparison.Ordinal)).Design).Findings, finding => finding.Code is "FE0654");
    }
}
