using FrontEnd.Boards;
using FrontEnd.Building;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Channels at sites, joined references and derived channels in design files.</summary>
public sealed class ChannelDesignTests
{
    private const string Rest = """
        [input]
        series-resistor = "100 kΩ"
        [supply]
        highest = "3.3 V"
        [electrodes]
        reference = "gel-prepared"
        ground = "gel-prepared"
        [electrodes.active]
        contact-resistance = "200 kΩ"
        contact-capacitance = "20 nF"
        excess-density = "1e-12 V²/Hz"

        """;

    private const string Mixed = Rest + """
        [[channels]]
        site = "O1"
        [[channels]]
        name = "front"
        site = "Fp1"
        electrode = "gel-prepared"
        [[channels]]
        site = "T3"
        electrode.contact-resistance = "500 kΩ"
        buffer = { skin-resistor = "150 kΩ" }
        minus = "T4"
        [[channels]]
        site = "over the left eyebrow"
        buffer = "none"
        [[derived]]
        name = "back-front"
        weights = { O1 = 1, front = -1 }

        """;

    private static DesignDocument Read(string text) => DesignDocument.Parse(text, DocumentFormat.Toml);

    [Fact]
    public void File_WithChannels_IsReadAsWritten()
    {
        DesignDocument document = Read(Mixed);
        Assert.Empty(document.Findings);
        Design design = document.Design;
        Assert.Equal(["O1", "front", "T3", "over the left eyebrow"], design.ChannelNames);
        Assert.Equal(4, design.Channels);
        Assert.Equal(3, design.EffectiveReferenceInputs);
        Assert.Null(design.ChannelList[0].Electrode);
        Assert.Equal("gel-prepared", design.ChannelList[1].Electrode!.Card);

        // What is not said of an electrode that is given by values is the design's active one's.
        Assert.Equal((500e3, 20e-9), (design.ChannelList[2].Electrode!.ContactResistance.Ohms, design.ChannelList[2].Electrode!.ContactCapacitance.Farads));
        Assert.Equal(150e3, design.ChannelList[2].Buffer!.SkinResistor.Ohms);
        Assert.Equal("T4", design.ChannelList[2].Minus!.Site);
        Assert.True(design.ChannelList[3].IsUnbuffered);
        Assert.Equal([1, -1, 0, 0], design.DerivedRows.Single(row => row.Name == "back-front").Weights);
    }

    [Theory]
    [InlineData("toml")]
    [InlineData("json")]
    public void Design_WithChannels_IsReadBackAsItWas(string form)
    {
        Design design = Read(Mixed).Design;
        Design again = form == "toml" ? Read(DesignWriter.ToToml(design)).Design : DesignDocument.Parse(DesignWriter.ToJson(design), DocumentFormat.Json).Design;
        Assert.Equal(design.ChannelList.AsEnumerable(), again.ChannelList);
        Assert.Equal(design.Derived.AsEnumerable(), again.Derived);
    }

    [Fact]
    public void WorkedDesign_WrittenAsTomlOrJson_GivesTheSameFigures()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Worked, "channels", "evening-band.json")).Design;
        foreach (Design again in (Design[])[Read(DesignWriter.ToToml(design)).Design, DesignDocument.Parse(DesignWriter.ToJson(design), DocumentFormat.Json).Design])
        {
            Assessment first = Evaluator.Evaluate(design), second = Evaluator.Evaluate(again);
            Assert.All(first.Results, result => Assert.Equal(result.Value?.SiValue, second[result.Id].Value?.SiValue));
        }
    }

    [Theory]
    [InlineData("[[channels]]\nname = \"a\"\nsite = \"O1\"\n[[channels]]\nname = \"A\"\nsite = \"O2\"\n", "FE0303", "channels[2].name")]
    [InlineData("[[channels]]\nname = \"a\"\nsite = \"O1\"\n[[channels]]\nname = \"b\"\nsite = \"o1\"\n", "FE0950", "channels[2].site")]
    [InlineData("[[channels]]\nsite = \"T3\"\n[[channels]]\nsite = \"T7\"\n", "FE0950", "channels[2].site")]
    [InlineData("[electrodes]\nreference-sites = [\"A1\", \"Cz\"]\n[[channels]]\nsite = \"Cz\"\n", "FE0951", "electrodes.reference-sites")]
    [InlineData("[electrodes]\nreference-sites = [\"ear-left\", \"A1\"]\n[[channels]]\nsite = \"Cz\"\n", "FE0950", "electrodes.reference-sites")]
    [InlineData("[electrodes]\nground-site = \"Fpz\"\n[[channels]]\nsite = \"Fpz\"\n", "FE0951", "electrodes.ground-site")]
    [InlineData("[montage]\nsites = [\"O1\"]\n[[channels]]\nsite = \"O1\"\n", "FE0953", "montage.sites")]
    [InlineData("[[channels]]\nsite = \"O1\"\n[[derived]]\nname = \"d\"\nweights = { O1 = 1, O3 = -1 }\n", "FE0954", "derived[1].weights")]
    [InlineData("channels = 2\n[[derived]]\nname = \"d\"\nweights = { 1 = 1, 3 = -1 }\n", "FE0954", "derived[1].weights")]
    [InlineData("[[channels]]\nsite = \"O1\"\n[[derived]]\nname = \"d\"\n", "FE0955", "derived[1].weights")]
    [InlineData("[[channels]]\nsite = \"O1\"\nminus = \"O1\"\n", "FE0956", "channels[1].minus.site")]
    [InlineData("[[channels]]\nsite = \"O1\"\n[[derived]]\nname = \"O1-ref\"\nweights = { O1 = 2 }\n", "FE0957", "derived[1].name")]
    public void Mistake_InChannels_IsAnError(string text, string code, string key)
    {
        Finding finding = Assert.Single(Read(text).Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal((code, key), (finding.Code, finding.Field));
        Assert.False(string.IsNullOrEmpty(finding.Help));
    }

    [Theory]
    [InlineData("[[channels]]\nsite = \"Q2\"\n", "channels[1].site", "O2")]
    [InlineData("[electrodes]\nreference-sites = [\"ear-lefd\"]\n", "electrodes.reference-sites", "ear-left")]
    [InlineData("[electrodes]\nground-site = \"Fppz\"\n", "electrodes.ground-site", "Fpz")]
    [InlineData("[[channels]]\nsite = \"O1\"\nminus = \"Fpp1\"\n", "channels[1].minus.site", "Fp1")]
    public void Site_OneLetterFromAKnownOne_IsAWarningWithThatName(string text, string key, string near)
    {
        Finding finding = Assert.Single(Read(text).Findings, finding => finding.Code == "FE0952");
        Assert.Equal((Severity.Warning, key), (finding.Severity, finding.Field));
        Assert.Contains($"`{near}`", finding.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("left eyebrow")]
    [InlineData("ear-left")]
    [InlineData("mastoid right")]
    [InlineData("T7")]
    [InlineData("L1")]
    [InlineData("E2")]
    [InlineData("11")]
    public void Site_KnownOrFarFromAny_IsNoFinding(string site) =>
        Assert.DoesNotContain(Read($"[[channels]]\nsite = \"{site}\"\n").Findings.Concat(Read($"[montage]\nsites = [\"{site}\"]\n").Findings),
            finding => finding.Code.StartsWith("FE095", StringComparison.Ordinal));

    [Fact]
    public void Parts_OfChannelsThatAreUnlike_AreCountedOneByOne()
    {
        Design design = Read(Mixed).Design;
        IReadOnlyList<OrderRow> parts = OrderList.Of(Board.Of(design));

        // Four channels, one minus electrode's lead and the reference's.
        Assert.Equal(6, parts.Where(part => part.Keys == "input.series-resistor").Sum(part => part.Quantity));
        Assert.Equal(2, parts.Where(part => part.First.Class == PieceClass.OpAmps && part.Where.Contains("follower at", StringComparison.Ordinal)).Sum(part => part.Quantity));
    }

    [Fact]
    public void Form_OfAChannel_HasNoFieldsOfPartsThatItDoesNotHave()
    {
        string[] keys = [.. DesignFields.Of(Read(Mixed).Design).Select(field => field.Key)];
        Assert.DoesNotContain("channels", keys);
        Assert.DoesNotContain("channels[1].electrode.contact-resistance", keys);
        Assert.Contains("channels[3].electrode.contact-resistance", keys);
        Assert.Contains("channels[3].minus.site", keys);
        Assert.DoesNotContain("channels[3].minus.electrode.contact-resistance", keys);
    }
}
