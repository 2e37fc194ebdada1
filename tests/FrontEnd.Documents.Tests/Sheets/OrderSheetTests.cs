using FrontEnd.Building;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>Order list, netlist and prices as files.</summary>
public class OrderSheetTests
{
    /// <summary>RFC 4180: the first row names the columns, every row has as many cells; the caution is the last row.</summary>
    [Theory]
    [InlineData("hobbyist")]
    [InlineData("eight-channel-cap")]
    [InlineData("mixed-headset")]
    [InlineData("dry-headband")]
    public void Csv_OfADesign_IsATableWithItsCautionAtTheEnd(string name)
    {
        Sheet sheet = SheetOf(name);
        foreach ((string text, string head) in new[] { (CsvSheet.Of(sheet), "designators"), (BoardFiles.NetlistOf(sheet.Assessment, sheet.Board!.Board), "designator") })
        {
            CsvRow[] rows = [.. CsvText.Rows(text)];
            Assert.Equal(head, rows[0].Cells[0]);
            Assert.All(rows, row => Assert.Equal(rows[0].Cells.Count, row.Cells.Count));
            Assert.StartsWith("# ", rows[^1].Cells[0], StringComparison.Ordinal);
            Assert.Contains("Not a medical device", rows[^1].Cells[0], StringComparison.Ordinal);
            Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        }
    }

    /// <summary>The pieces of the order are those of the netlist, one by one.</summary>
    [Theory]
    [InlineData("hobbyist")]
    [InlineData("eight-channel-cap")]
    [InlineData("mixed-headset")]
    public void Order_OfADesign_HasThePiecesOfItsNetlist(string name)
    {
        Sheet sheet = SheetOf(name);
        IEnumerable<string> ordered = CsvText.Rows(CsvSheet.Of(sheet)).Skip(1).Where(row => !row.Cells[0].StartsWith('#')).SelectMany(row => row.Cells[0].Split(' '));
        IEnumerable<string> listed = CsvText.Rows(BoardFiles.NetlistOf(sheet.Assessment, sheet.Board!.Board)).Skip(1).Where(row => !row.Cells[0].StartsWith('#')).Select(row => row.Cells[0]).Distinct(StringComparer.Ordinal)
            .Where(piece => !piece.Contains("TP", StringComparison.Ordinal));
        Assert.Equal(listed.Order(StringComparer.Ordinal), ordered.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Prices_WithAHeadAndRemarks_AreRead()
    {
        (Prices? prices, IReadOnlyList<Finding> findings) = PriceTable.Parse("piece;price\n# mine\nresistor 68 kΩ;0,08\nU201;3.4\n", "prices.csv");
        Assert.Empty(findings);
        Assert.Equal([("resistor 68 kΩ", 0.08), ("U201", 3.4)], prices!.Rows);
    }

    [Theory]
    [InlineData("resistor,0.1\ncapacitor,cheap\n", Messages.PriceUnreadable)]
    [InlineData("resistor,0.1\ncapacitor,-1\n", Messages.PriceUnreadable)]
    [InlineData("resistor,0.1\ncapacitor\n", Messages.PriceUnreadable)]
    [InlineData("", Messages.NoPrices)]
    [InlineData("piece,price\n", Messages.NoPrices)]
    public void Prices_ThatCannotBeRead_AreAFinding(string text, string code)
    {
        (Prices? prices, IReadOnlyList<Finding> findings) = PriceTable.Parse(text, "prices.csv");
        Assert.Null(prices);
        Finding finding = Assert.Single(findings);
        Assert.Equal(code, finding.Code);
        Assert.Equal("prices.csv", finding.File);
    }

    private static Sheet SheetOf(string name)
    {
        DesignDocument document = DesignDocument.Parse(File.ReadAllText(Path.Combine(Repository.Designs, name + ".toml")), Reading.DocumentFormat.Toml);
        Assessment assessment = Evaluator.Evaluate(document.Design);
        return new Sheet(document, assessment) { Board = BoardAnswers.Of(assessment) };
    }
}
