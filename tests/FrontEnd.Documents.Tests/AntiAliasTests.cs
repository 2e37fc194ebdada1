using FrontEnd.AntiAlias;
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
}
