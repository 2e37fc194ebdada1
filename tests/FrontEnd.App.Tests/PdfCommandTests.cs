using System.Text;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The sheet as a PDF, as it is called.</summary>
public sealed class PdfCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Pdf_Twice_IsTheSameFile_AndADayMakesAnother()
    {
        byte[] first = Written("designs/hobbyist.toml");
        Assert.Equal(first, Written("designs/hobbyist.toml"));
        byte[] dated = Written("designs/hobbyist.toml", "--date", "2026-11-26");
        Assert.NotEqual(first, dated);
        Assert.Contains("/CreationDate(D:20261126", Encoding.Latin1.GetString(dated), StringComparison.Ordinal);
        Assert.DoesNotContain("CreationDate", Encoding.Latin1.GetString(first), StringComparison.Ordinal);
        Assert.Single(_folder.GetFiles());
    }

    [Theory]
    [InlineData("designs/hobbyist.toml", "--plain")]
    [InlineData("designs/hobbyist.toml", "--appendix")]
    [InlineData("designs/bought-headband.toml")]
    public void Pdf_OfEveryKindOfSheet_IsWritten(string design, params string[] more) =>
        Assert.StartsWith("%PDF-1.", Encoding.Latin1.GetString(Written(design, more)), StringComparison.Ordinal);

    [Theory]
    [InlineData("2026-11-31")]
    [InlineData("26.11.2026")]
    [InlineData("today")]
    [InlineData("")]
    public void Date_ThatIsNoDay_IsTwo(string day)
    {
        Outcome outcome = Shell.Run("sheet", "designs/hobbyist.toml", "-o", File("a.pdf"), "--date", day);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE1040 error", outcome.Messages, StringComparison.Ordinal);
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public void Date_WithoutAPdf_IsTwo()
    {
        Outcome outcome = Shell.Run("sheet", "designs/hobbyist.toml", "-o", File("a.html"), "--date", "2026-11-26");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("`--date` does not apply to a file that is not a PDF", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_ThatTheFontLacks_AreTold()
    {
        string design = File("own.toml");
        System.IO.File.WriteAllText(design, System.IO.File.ReadAllText(Path.Combine(Repository.Root, "designs/starter.toml")).Replace("name = \"", "name = \"漢字 and 漢 ", StringComparison.Ordinal));
        Outcome outcome = Shell.Run("sheet", design, "-o", File("a.pdf"));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("FE1041 warning", outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("lacks 漢 字", outcome.Messages, StringComparison.Ordinal);
    }

    private string File(string name) => Path.Combine(_folder.FullName, name);

    private byte[] Written(string design, params string[] more)
    {
        Outcome outcome = Shell.Run(["sheet", design, "-o", File("a.pdf"), .. more]);
        Assert.True(outcome.Code == 0, outcome.Messages);
        Assert.DoesNotContain("FE1041", outcome.Messages, StringComparison.Ordinal);
        return System.IO.File.ReadAllBytes(File("a.pdf"));
    }
}
