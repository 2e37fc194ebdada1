using System.Text;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>What a program of somebody else's writes by the library alone, without the checks that the command makes first.</summary>
public class LibraryWritingTests
{
    private static Sheet Of(string text)
    {
        DesignDocument document = DesignDocument.Parse(text, DocumentFormat.Toml);
        return new Sheet(document, Evaluator.Evaluate(document.Design));
    }

    private static Sheet Starter => Of(DesignDocument.Starter(DocumentFormat.Toml));

    /// <summary>The order list has the parts, asked for or not.</summary>
    [Fact]
    public void Bytes_OfEveryForm_AreThereWithoutMore()
    {
        Assert.All(SheetFormats.Extensions, extension => Assert.NotEmpty(SheetFormats.Bytes(Starter, extension)));
        Assert.Equal(SheetFormats.Bytes(Starter.ForBuilding(), ".csv"), SheetFormats.Bytes(Starter, ".csv"));
        Assert.Contains("68", Encoding.UTF8.GetString(SheetFormats.Bytes(Starter, ".csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sheet.xyz", "FE0004")]
    [InlineData("sheet", "FE0004")]
    [InlineData("", "FE0004")]
    public void WriteFile_OfNoForm_IsAFinding(string path, string code)
    {
        Assert.Equal(code, SheetFormats.WriteFile(Starter, path)?.Code);
        Assert.Throws<ArgumentException>(() => SheetFormats.Bytes(Starter, path));
    }

    /// <summary>A sheet of a design with errors showed the figures of another, or ended in the middle of a page.</summary>
    [Theory]
    [InlineData("band = [\"40 Hz\", \"1 Hz\"]\n", "FE0301")]
    [InlineData("[amplifier]\ngain = \"no\"\n", "FE0124")]
    public void WriteFile_OfADesignWithErrors_WritesNothingAndTellsTheFirst(string text, string code)
    {
        using TemporaryFolder folder = new();
        Sheet sheet = Of(text);
        foreach (string extension in SheetFormats.Extensions)
        {
            string path = Path.Combine(folder.Path, "sheet" + extension);
            Assert.Equal(code, SheetFormats.WriteFile(sheet, path)?.Code);
            Assert.False(File.Exists(path));
            Assert.Throws<ArgumentException>(() => SheetFormats.Bytes(sheet, extension));
        }
    }

    [Fact]
    public void WriteFile_AnOrderListOfAnAssessmentWithoutFigures_IsAFinding()
    {
        DesignDocument document = DesignDocument.Parse(DesignDocument.Starter(DocumentFormat.Toml), DocumentFormat.Toml);
        Assert.Equal("FE0110", SheetFormats.WriteFile(new Sheet(document, Evaluator.Evaluate(new Design { Channels = 0 })), "sheet.csv")?.Code);
    }

    [Fact]
    public void Coefficients_OfADesignThatContradictsItself_AreAFinding()
    {
        using TemporaryFolder folder = new();
        string path = Path.Combine(folder.Path, "filters.h");
        Design design = new() { Digital = [new DigitalNotch { Name = "notch", Centre = Frequency.FromHertz(500) }] };
        Finding? finding = CoefficientWriting.Write(path, design);
        Assert.Equal(Severity.Error, finding?.Severity);
        Assert.StartsWith("digital[1]", finding!.Field, StringComparison.Ordinal);
        Assert.False(File.Exists(path));
    }
}
