using FrontEnd.Findings;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>What is said where a file is silent about the resistors in the measuring leads: of each lead what is true of it.</summary>
public sealed class ProtectionTests
{
    private const string Both = "[electrodes.active-buffer]\ncard = \"cmos-follower\"\n{0}[electrodes.reference-buffer]\ncard = \"cmos-follower\"\n{0}";

    [Theory]
    [InlineData("", "input.series-resistor", "in the active and the reference electrode's lead: none is assumed")]
    [InlineData("[electrodes.active-buffer]\ncard = \"cmos-follower\"\nskin-resistor = \"68 kΩ\"\n", "input.series-resistor", "in the reference electrode's lead: none is assumed")]
    [InlineData("[electrodes.active-buffer]\ncard = \"cmos-follower\"\n[input]\nseries-resistor = \"68 kΩ\"\n", "electrodes.active-buffer.skin-resistor", "in the active electrode's lead, ahead of its buffer: none is assumed")]
    public void Lead_WithoutAResistor_IsNamed(string text, string key, string says)
    {
        Finding finding = Assert.Single(Read(text));
        Assert.Equal(key, finding.Field);
        Assert.Contains(says, finding.Message, StringComparison.Ordinal);
        Assert.Contains($"set {key} ", finding.Help, StringComparison.Ordinal);
        Assert.Contains("safety.series_resistance_needed", finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Leads_WithAResistorAtTheSkin_NeedNoOther() =>
        Assert.Empty(Read(Both.Replace("{0}", "skin-resistor = \"68 kΩ\"\n", StringComparison.Ordinal)));

    [Fact]
    public void Leads_BufferedWithoutOne_AreNamedEach() =>
        Assert.Equal(["electrodes.active-buffer.skin-resistor", "electrodes.reference-buffer.skin-resistor"],
            Read(Both.Replace("{0}", "", StringComparison.Ordinal)).Select(finding => finding.Field).Order());

    [Fact]
    public void Resistor_OfZero_IsGiven() => Assert.Empty(Read("[input]\nseries-resistor = \"0 Ω\"\n"));

    private static Finding[] Read(string text) =>
        [.. DesignDocument.Parse(text, Documents.Reading.DocumentFormat.Toml).Findings.Where(finding => finding.Code == "FE0212")];
}
