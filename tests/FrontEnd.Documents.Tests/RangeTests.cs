using FrontEnd.Designs;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Ranges of a part's values, from a card and from the design file.</summary>
public class RangeTests
{
    private const string Carded = "supply.highest = \"3.3 V\"\n[amplifier]\ncard = \"low-noise-cmos\"\n";

    [Fact]
    public void Ranges_OfACard_AreRead()
    {
        PartRanges ranges = Read(Carded).Amplifier.Ranges;
        Assert.Equal(new PartRange("cmrr", 100, 120), ranges.Of("cmrr"));
        Assert.Equal(new PartRange("offset-voltage", -200e-6, 200e-6), ranges.Of("offset-voltage"));
    }

    [Fact]
    public void Range_OfAValueThatTheFileGives_IsNotTheCards()
    {
        PartRanges ranges = Read(Carded + "cmrr = \"90 dB\"\n").Amplifier.Ranges;
        Assert.Null(ranges.Of("cmrr"));
        Assert.NotNull(ranges.Of("offset-voltage"));
        Assert.Null(Read("[electrodes.active]\ncard = \"dry-forehead\"\nexcess-rms = \"3 µV\"\n").Electrodes.Active.Ranges.Of("excess-density"));
    }

    [Theory]
    [InlineData("ranges = { cmrr = [\"95 dB\", \"105 dB\"] }\ncmrr = \"96 dB\"\n")]
    [InlineData("cmrr = \"96 dB\"\nranges.cmrr = [\"95 dB\", \"105 dB\"]\n")]
    [InlineData("cmrr = \"96 dB\"\n[amplifier.ranges]\ncmrr = [\"95 dB\", \"105 dB\"]\n")]
    [InlineData("ranges = \"cmrr 95 dB to 105 dB\"\n")]
    public void Range_InTheFile_StandsBesideTheCardsOthers(string written)
    {
        PartRanges ranges = Read(Carded + written).Amplifier.Ranges;
        Assert.Equal(new PartRange("cmrr", 95, 105), ranges.Of("cmrr"));
    }

    [Fact]
    public void Ranges_OfEveryKindOfPart_AreRead()
    {
        Design design = Read(
            """
            [mains]
            ranges.voltage = ["207 V", "253 V"]
            [electrodes]
            ranges.offset = ["0 V", "100 mV"]
            active.ranges.contact-resistance = ["10 kΩ", "90 kΩ"]
            [converter]
            ranges.full-scale = ["2.9 V", "3.1 V"]
            [[stages]]
            kind = "gain"
            opamp = "general-purpose-cmos"
            [[stages]]
            kind = "low-pass"
            topology = "rc"
            opamp.ranges.bias-current = ["-1 nA", "1 nA"]
            """);
        Assert.Equal(new PartRange("voltage", 207, 253), design.Mains.Ranges.Of("voltage"));
        Assert.Equal(new PartRange("offset", 0, 0.1), design.Electrodes.Ranges.Of("offset"));
        Assert.Equal(90e3, design.Electrodes.Active.Ranges.Of("contact-resistance")!.High);
        Assert.Equal(2.9, design.Converter.Ranges.Of("full-scale")!.Low);
        Assert.Equal(new PartRange("offset-voltage", -4e-3, 4e-3), ((GainStage)design.Stages[0]).OpAmp.Ranges.Of("offset-voltage"));
        Assert.Equal(new PartRange("bias-current", -1e-9, 1e-9), ((RcSection)design.Stages[1]).OpAmp!.Ranges.Of("bias-current"));
    }

    [Theory]
    [InlineData("ranges.gian = [1, 2]", "`gian` has no range in amplifier.ranges")]
    [InlineData("ranges.gain = [1, 2, 3]", "two values")]
    [InlineData("ranges.gain = 5", "two values")]
    [InlineData("ranges.cmrr = [\"95 dB\", \"90 Hz\"]", "`90 Hz` is not a ratio in decibels")]
    [InlineData("ranges.cmrr = [\"95 dB\", \"90 dB\"]", "the least value of cmrr first")]
    [InlineData("ranges.gain = [1, 1e9]", "1000000000")]
    [InlineData("ranges = \"gain 1 2\"", "two values for gain")]
    [InlineData("ranges = 5", "a table of ranges")]
    public void Range_ThatIsWrong_IsAFinding(string written, string message)
    {
        DesignDocument document = DesignDocument.Parse("[amplifier]\n" + written + "\n", DocumentFormat.Toml);
        Finding error = Assert.Single(document.Findings, finding => finding.Severity == Severity.Error);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.Equal(2, error.Line);
    }

    [Fact]
    public void Ranges_Written_AreReadBack()
    {
        Design design = Read(Carded + "ranges.gain = [4.5, 5.5]\n");
        Assert.Equal(design.Amplifier.Ranges, Read(DesignWriter.ToToml(design)).Amplifier.Ranges);
        Assert.Equal(design.Amplifier.Ranges, DesignDocument.Parse(PlainDesign.Text(design), DocumentFormat.Json).Design.Amplifier.Ranges);
        DesignDocument plain = DesignDocument.Parse("""{ "amplifier": { "ranges": { "cmrr": [90, 110], "offset-voltage": [-0.001, 0.001] } } }""", DocumentFormat.Json);
        Assert.Equal(new PartRange("cmrr", 90, 110), plain.Design.Amplifier.Ranges.Of("cmrr"));
    }

    private static Design Read(string text)
    {
        DesignDocument document = DesignDocument.Parse(text, DocumentFormat.Toml);
        Assert.Empty(document.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Message));
        return document.Design;
    }
}
