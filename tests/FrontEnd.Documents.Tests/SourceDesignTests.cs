using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using FrontEnd.Head;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Heads, sources and what has to be seen, in design files.</summary>
public sealed class SourceDesignTests
{
    private const string Text = """
        channels = 2
        [montage]
        sites = ["O1", "Fz"]
        reference = "ears"
        [requirements]
        offset = "200 mV"
        [[requirements.see]]   # first
        patch = "alpha rhythm"
        channel = "O1-ears"
        ratio = "6 dB"
        [[patches]]
        name = "alpha rhythm"
        under = "O1"
        area = "25 cm²"
        amplitude = "30 µV"
        amplitude-kind = "rms"
        stated-in = "O1-ears"
        band = "alpha"
        [[patches]]
        under = "Fz"
        wall-towards = "F3"
        [head]
        circumference = "57 cm"
        shells = "stok"
        skull-ratio = 40
        [background]
        density = "2 µV²/Hz"
        slope = 1
        patch-area = "4 cm²"
        """;

    private static DesignDocument Read(string text, DocumentFormat format = DocumentFormat.Toml) => DesignDocument.Parse(text, format);

    [Fact]
    public void File_WithAllOfIt_IsReadAsWritten()
    {
        DesignDocument document = Read(Text);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        Design design = document.Design;
        Assert.Equal(("alpha rhythm", "O1", 25.0, AmplitudeKind.Rms), (design.Patches[0].Name, design.Patches[0].Under, design.Patches[0].Area.SquareCentimetres, design.Patches[0].AmplitudeKind));
        Assert.Equal(("patch 2", "F3"), (design.Patches[1].Name, design.Patches[1].WallTowards));
        Assert.Equal(6, Assert.Single(design.Requirements.See).Ratio!.Value.Value);
        Assert.Equal((ShellSet.Stok, 40.0, 57.0), (design.Head!.Shells, design.Head.SkullRatio!.Value, Math.Round(design.Head.Circumference.Centimetres, 9)));
        Assert.Equal((2.0, 1.0), (Math.Round(design.Background!.Density.MicrovoltsSquaredPerHertz, 9), design.Background.Slope));
    }

    [Fact]
    public void Design_WrittenAndReadAgain_IsTheSame()
    {
        Design design = Read(Text).Design;
        foreach (Design again in (Design[])[Read(DesignWriter.ToToml(design)).Design, Read(DesignWriter.ToJson(design), DocumentFormat.Json).Design])
        {
            Assert.Equal(design.Patches, again.Patches);
            Assert.Equal(design.Requirements.See, again.Requirements.See);
            Assert.Equal(design.Head, again.Head);
            Assert.Equal(design.Background, again.Background);
        }
    }

    /// <summary>A design that says nothing of heads and sources shows none of their keys.</summary>
    [Fact]
    public void Design_WithoutThem_HasNoKeysOfThem() =>
        Assert.DoesNotContain(DesignFields.Of(new Design()), field => field.Key.StartsWith("head.", StringComparison.Ordinal) || field.Key.StartsWith("background.", StringComparison.Ordinal)
            || field.Key.StartsWith("patches", StringComparison.Ordinal) || field.Key.StartsWith("requirements.see", StringComparison.Ordinal));

    /// <summary>An element is taken out with its own lines, the last one too; the table that the list stands in stays.</summary>
    [Fact]
    public void Element_TakenOut_LeavesTheRest()
    {
        DesignDocument document = Read(Text);
        DesignList list = DesignFields.Lists.First(one => one.Key == DesignList.SeeKey);
        EditResult gone = Edits.Remove(document, list, 0);
        Assert.Null(gone.Finding);
        Assert.Empty(gone.Document.Design.Requirements.See);
        Assert.Equal(2, gone.Document.Design.Patches.Count);
        Assert.Equal(document.Design.Requirements.Offset, gone.Document.Design.Requirements.Offset);
    }

    [Theory]
    [InlineData("under = \"O1\"", "under = \"O1x\"", Messages.SourceSiteUnknown, 13)]
    [InlineData("channel = \"O1-ears\"", "channel = \"O1-cars\"", Messages.SeeUnknown, 9)]
    [InlineData("57 cm", "85 cm", Messages.HeadMeasuresApart, 23)]
    [InlineData("skull-ratio = 40", "skull-ratio = 4", "FE0110", 25)]
    [InlineData("wall-towards = \"F3\"", "wall-towards = \"Fz\"", Messages.WallDirection, 21)]
    public void Value_ThatIsWrong_IsTellingItsLine(string old, string wrong, string code, int line)
    {
        Finding finding = Assert.Single(Read(Text.Replace(old, wrong, StringComparison.Ordinal)).Findings, one => one.Severity == Severity.Error);
        Assert.Equal((code, line), (finding.Code, finding.Line));
    }

    /// <summary>A place that could not be read is not complained of a second time.</summary>
    [Fact]
    public void Value_ThatCannotBeRead_IsToldOnce() =>
        Assert.Equal("FE0124", Assert.Single(Read(Text.Replace("under = \"O1\"", "under = 3", StringComparison.Ordinal)).Findings, one => one.Severity == Severity.Error).Code);
}
