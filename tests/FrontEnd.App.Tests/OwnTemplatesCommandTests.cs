using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The option of <c>problems</c> that adds templates of one's own.</summary>
public sealed class OwnTemplatesCommandTests
{
    private const string File = "designs/classroom/own-problems.toml";

    [Fact]
    public void List_WithTemplates_ChecksAndListsThem()
    {
        Outcome list = Shell.Run("problems", "--templates", File, "--list");
        Assert.Equal((0, ""), (list.Code, list.Messages));
        Assert.All((string[])["own-contact-noise", "own-first-corner", "own-hum-left"], id => Assert.Contains(id, list.Output, StringComparison.Ordinal));
        Assert.Contains("own-hum-left", Shell.Run("problems", "--templates", File, "--list", "--json", "--topic", "cmrr").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("own-hum-left", Shell.Run("problems", "--list").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_WithTemplates_AskThem()
    {
        using TemporaryFolder folder = new();
        Assert.Equal(0, Shell.Run("problems", "--templates", File, "--topic", "cmrr", "--level", "2", "--count", "20", "-o", folder.Path).Code);
        string[] pages = [.. Directory.GetFiles(folder.Path, "*.html", SearchOption.AllDirectories)];
        Assert.Contains(pages, page => System.IO.File.ReadAllText(page).Contains("What a rejection leaves of the hum", StringComparison.Ordinal));
    }

    [Fact]
    public void Templates_WithAMistake_AreRefusedWithTheirPlace()
    {
        using TemporaryFolder folder = new();
        string wrong = folder.Write("wrong.toml", System.IO.File.ReadAllText(Path.Combine(Repository.Root, File)).Replace("formula = \"f2 - f1\"", "formula = \"f2 - R\"", StringComparison.Ordinal));
        Outcome refused = Shell.Run("problems", "--templates", wrong, "--list");
        Assert.Equal((2, ""), (refused.Code, refused.Output));
        Assert.Contains("FE1120 error: what is in Ω is taken away from what is in Hz", refused.Messages, StringComparison.Ordinal);
        Assert.Contains("wrong.toml:", refused.Messages, StringComparison.Ordinal);
        Assert.Contains("f2 ^- R", refused.Messages, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("problems", "--templates", File, "--templates", File, "--list").Code);   // ids twice
        Assert.Equal(2, Shell.Run("problems", "--templates", Path.Combine(folder.Path, "none.toml"), "--list").Code);
    }
}
