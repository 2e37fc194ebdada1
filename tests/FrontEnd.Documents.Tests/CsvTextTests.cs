using System.Text;
using FrontEnd.Documents.Files;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The one reader and writer of comma-separated values.</summary>
public class CsvTextTests
{
    [Theory]
    [InlineData("a,b\n1,2\n", "a|b/1|2")]
    [InlineData("a;b\r\n1,5;2\r\n", "a|b/1,5|2")]
    [InlineData("a\tb\n1\t2", "a|b/1|2")]
    [InlineData("\uFEFFa,b\n\n  \n1,2", "a|b/1|2")]
    [InlineData("\"a;x\",b\n1,2", "a;x|b/1|2")]
    [InlineData("a,b\n \"say \"\"hm\"\"\",2", "a|b/say \"hm\"|2")]
    [InlineData("a,b\n5\" electrode,2", "a|b/5\" electrode|2")]
    [InlineData("a,b\n\"two\nlines\",2\n3,4", "a|b/two\nlines|2/3|4")]
    [InlineData("", "")]
    public void Rows_AsPeopleWriteThem_AreRead(string text, string expected) =>
        Assert.Equal(expected, string.Join('/', CsvText.Rows(text).Select(row => string.Join('|', row.Cells))));

    [Fact]
    public void Rows_CellOverLines_SayWhereTheyBegin() =>
        Assert.Equal([1, 2, 4], CsvText.Rows("a,b\n\"two\nlines\",2\n3,4").Select(row => row.Line));

    [Fact]
    public void Rows_QuotationThatNeverEnds_IsOpen()
    {
        CsvRow last = CsvText.Rows("a,b\n1,\"2\n3,4\n").Last();
        Assert.True(last.IsOpen);
        Assert.Equal(2, last.Line);
    }

    [Fact]
    public void Rows_WithRemarks_GiveTheirText()
    {
        CsvRow[] rows = [.. CsvText.Rows("# rate: 250 Hz\nch1\n1\n", remarks: true)];
        Assert.Equal("rate: 250 Hz", rows[0].Remark);
        Assert.Equal(["ch1", "1"], rows[1..].Select(row => row.Cells.Single()));
        Assert.Equal("# rate: 250 Hz", CsvText.Rows("# rate: 250 Hz\n").Single().Cells.Single());
    }

    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("say \"hm\"", "\"say \"\"hm\"\"\"")]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@x", "'@x")]
    [InlineData("-4.7 mV", "-4.7 mV")]
    [InlineData("-x", "'-x")]
    [InlineData("-1+1|cmd", "'-1+1|cmd")]
    public void Cell_AnyText_IsQuotedAndNeverAFormula(string text, string expected) => Assert.Equal(expected, CsvText.Cell(text));

    [Fact]
    public void Row_ReadBack_IsTheSame()
    {
        string[] cells = ["a", "b,c", "d\"e", "f\ng", "h;i", ""];
        string text = new StringBuilder().Row("\n", cells).ToString();
        Assert.Equal(cells, CsvText.Rows(text).Single().Cells);
    }
}
