using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend bench</c> and <c>frontend size</c>: the texts that people read.</summary>
public class BenchAndSizeTests
{
    private const string Project = "FrontEnd.App.Tests";

    [Theory]
    [InlineData("dry-headband")]
    [InlineData("engineer")]
    public void Bench_Design_PrintsTheExpectedTests(string name) =>
        ExpectedText.Matches(Shell.Run("bench", $"designs/{name}.toml").Output, Project, $"bench-{name}.txt");

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    [InlineData("instructor")]
    public void Size_Requirements_PrintsTheExpectedDesigns(string name) =>
        ExpectedText.Matches(Shell.Run("size", $"designs/{name}-requirements.toml").Output, Project, $"size-{name}.txt");

    /// <summary>The design that is written is buildable: a second time nothing changes, and its comments are still there.</summary>
    [Fact]
    public void SizeAsBuilt_Twice_ChangesNothingTheSecondTime()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "bought.toml");
        Outcome first = Shell.Run("size", "--as-built", "designs/hobbyist.toml", "-o", file);
        Assert.Equal(0, first.Code);
        Assert.Contains("amplifier.gain 3.5 becomes", first.Output, StringComparison.Ordinal);
        Outcome second = Shell.Run("size", "--as-built", file);
        Assert.StartsWith("Every value of the design can be bought as it is.\n", second.Output, StringComparison.Ordinal);
        Assert.Contains("# slow enough for a dry contact", File.ReadAllText(file), StringComparison.Ordinal);
    }

    /// <summary>A file that is there is not written over, a requirements file beside a design is too much, and a device of which not all is known has no
    /// board.</summary>
    [Fact]
    public void SizeAsBuilt_CalledWrongly_IsRefused()
    {
        Assert.Equal(2, Shell.Run("size", "--as-built", "designs/hobbyist.toml", "-o", "designs/hobbyist.toml").Code);
        Assert.Equal(2, Shell.Run("size", "designs/hobbyist-requirements.toml", "--as-built", "designs/hobbyist.toml").Code);
        Assert.Equal(2, Shell.Run("size").Code);
        Assert.Equal(2, Shell.Run("size", "--as-built", "designs/bought-headband.toml").Code);
    }

    /// <summary>What cannot be built as stated is said where a table or a drawing is all that is written; on a sheet it stands on the first page.</summary>
    [Fact]
    public void Netlist_OfABoardWithAGap_SaysIt()
    {
        using TemporaryFolder folder = new();
        Assert.Contains("FE1020", Shell.Run("sheet", "designs/dry-headband.toml", "--netlist", Path.Combine(folder.Path, "nets.csv")).Messages, StringComparison.Ordinal);
        string page = Path.Combine(folder.Path, "sheet.md");
        Assert.DoesNotContain("FE1020", Shell.Run("sheet", "designs/dry-headband.toml", "-o", page).Messages, StringComparison.Ordinal);
        Assert.Contains("FE1020", File.ReadAllText(page), StringComparison.Ordinal);
    }
}
