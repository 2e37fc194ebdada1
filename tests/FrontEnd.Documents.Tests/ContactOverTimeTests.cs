using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Documents.Tests;

public class ContactOverTimeTests
{
    private static readonly ContactOverTime Settling = new([new(Duration.FromSeconds(60), new(2, 1.5)), new(Duration.FromSeconds(3600), new(1, 1))]);

    [Theory]
    [InlineData("[electrodes.active]\nover-time = [{ after = \"1 min\", impedance = 2, excess = 1.5 }, { after = \"1 h\" }]\n")]
    [InlineData("[electrodes.active]\nover-time = [\n  { after = \"60 s\", impedance = 2, excess = 1.5 },   # just put on\n  { after = \"1 h\", impedance = 1 },\n]\n")]
    [InlineData("[[electrodes.active.over-time]]\nafter = \"1 min\"\nimpedance = 2\nexcess = 1.5\n[[electrodes.active.over-time]]\nafter = \"60 min\"\n")]
    public void Toml_InAnyForm_IsRead(string text)
    {
        DesignDocument document = DesignDocument.Parse(text, DocumentFormat.Toml);
        Assert.DoesNotContain(document.Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal(Settling, document.Design.Electrodes.Active.OverTime);
    }

    [Fact]
    public void Json_InSeconds_IsReadAndWritten()
    {
        DesignDocument document = DesignDocument.Parse("{\"electrodes\": {\"active\": {\"over_time\": [{\"after\": 60, \"impedance\": 2, \"excess\": 1.5}, {\"after\": 3600}]}}}", DocumentFormat.Json);
        Assert.Equal(Settling, document.Design.Electrodes.Active.OverTime);
        Assert.Equal(Settling, DesignDocument.Parse(DesignWriter.ToJson(document.Design), DocumentFormat.Json).Design.Electrodes.Active.OverTime);
        Assert.Equal(Settling, DesignDocument.Parse(DesignWriter.ToToml(document.Design), DocumentFormat.Toml).Design.Electrodes.Active.OverTime);
    }

    [Theory]
    [InlineData("[{ after = \"10 min\" }, { after = \"1 min\" }]", "FE0958", "time 2 of electrodes.active.over-time, 1 min, is not after the one before it, 10 min")]
    [InlineData("[{ after = \"1 min\" }, { after = \"60 s\" }]", "FE0958", "is not after")]
    [InlineData("[{ after = \"0 s\" }]", "FE0958", "is outside the range above 0 up to 30 d")]
    [InlineData("[{ after = \"60 d\" }]", "FE0958", "is outside the range above 0 up to 30 d")]
    [InlineData("[{ after = \"1 min\", impedance = 0 }]", "FE0959", "the factor of impedance at time 1 of electrodes.active.over-time is 0,")]
    [InlineData("[{ after = \"1 min\", excess = -2 }]", "FE0959", "the factor of excess at time 1")]
    [InlineData("[{ after = \"1 min\", impedance = 1e9 }]", "FE0959", "up to 10000")]
    [InlineData("[{ impedance = 2 }]", "FE0124", "")]
    [InlineData("[{ after = 60 }]", "FE0124", "")]
    [InlineData("[{ after = \"1 mV\" }]", "FE0102", "")]
    [InlineData("[{ after = \"1 min\", imped = 2 }]", "FE0121", "")]
    [InlineData("[{ after = \"1 min\", impedance = \"2\" }]", "FE0124", "")]
    [InlineData("[60, 600]", "FE0124", "")]
    [InlineData("\"unknown\"", "FE0124", "")]
    public void BadTimes_AreFindingsWithTheirPlace(string value, string code, string words)
    {
        DesignDocument document = DesignDocument.Parse($"[electrodes.active]\nover-time = {value}\n", DocumentFormat.Toml);
        Finding finding = document.Findings.First(one => one.Severity == Severity.Error);
        Assert.Equal(code, finding.Code);
        Assert.Equal(2, finding.Line);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
        Assert.StartsWith("electrodes.active.over-time", finding.Field, StringComparison.Ordinal);
    }

    /// <summary>A card's times are the design's unless it says otherwise; an empty list takes them away, and then nobody speaks of them.</summary>
    [Fact]
    public void CardsTimes_StandInTheTableWithTheirSource()
    {
        string check = Check("electrodes.active = \"dry-multipin\"\nelectrodes.reference = \"dry-multipin\"\n");
        Assert.Contains("contact over time ", check, StringComparison.Ordinal);
        Assert.Contains("  1-min   1.24 MΩ", check, StringComparison.Ordinal);
        Assert.Contains("from memory", check, StringComparison.Ordinal);
        string off = Check("[electrodes.active]\ncard = \"dry-multipin\"\nover-time = []\n[electrodes.reference]\ncard = \"dry-multipin\"\nover-time = []\n");
        Assert.DoesNotContain("contact over time", off, StringComparison.Ordinal);
        Assert.DoesNotContain("contact.after", Json("electrodes.active = \"skin-electrode-surrogate\"\n"), StringComparison.Ordinal);
        Assert.Contains("\"contact_over_time\"", Json("electrodes.active = \"dry-multipin\"\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Edit_OfOtherValues_KeepsTheTimesAndTheirComments()
    {
        const string Text = "[electrodes.active]\nover-time = [\n  { after = \"1 min\", impedance = 2, excess = 1.5 },   # just put on\n  { after = \"1 h\" },\n]\ncontact-resistance = \"30 kΩ\"\n";
        DesignDocument document = DesignDocument.Parse(Text, DocumentFormat.Toml);
        EditResult result = document.Set("electrodes.active.contact-resistance", "40 kΩ");
        Assert.Null(result.Finding);
        Assert.Equal(Text.Replace("30 kΩ", "40 kΩ", StringComparison.Ordinal), result.Document.Text);
        EditResult times = document.Set("electrodes.active.over-time", "1 min 2 2; 4 h 3 1");
        Assert.Null(times.Finding);
        Assert.Equal([new(Duration.FromSeconds(60), new(2, 2)), new(Duration.FromSeconds(14400), new(3, 1))], times.Document.Design.Electrodes.Active.OverTime.All);
    }

    private static Sheet SheetOf(string text)
    {
        DesignDocument document = DesignDocument.Parse(text, DocumentFormat.Toml);
        return new Sheet(document, Evaluator.Evaluate(document.Design));
    }

    private static string Check(string text) => CheckText.Of(SheetOf(text));

    private static string Json(string text) => AnswerJson.Of(SheetOf(text));
}
