using System.Net;
using FrontEnd.Documents.Tests;
using FrontEnd.Results;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The page for a reader who knows nothing of the trade.</summary>
public sealed class PlainSheetTests
{
    public static TheoryData<string> Designs => [.. Directory.GetFiles(Path.Combine(Repository.Root, "designs"), "*.toml")
        .Where(file => !file.EndsWith("-requirements.toml", StringComparison.Ordinal) && !file.EndsWith("wrong-in-six-ways.toml", StringComparison.Ordinal)).Select(file => "designs/" + Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Plain_AnyDesign_HasSixSentencesOfThePathAndTheCautions(string design)
    {
        using TemporaryFolder folder = new();
        string markdown = Path.Combine(folder.Path, "plain.md"), html = Path.Combine(folder.Path, "plain.html");
        Assert.Equal(0, Shell.Run("sheet", design, "--plain", "-o", markdown, "-o", html).Code);
        string text = File.ReadAllText(markdown), page = WebUtility.HtmlDecode(File.ReadAllText(html));
        Assert.Contains("\n6. ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\n7. ", text, StringComparison.Ordinal);
        Assert.All(Cautions.All, caution => Assert.Contains(caution, page, StringComparison.Ordinal));
        foreach (string heading in (string[])["What each electrode does", "Hum, and what the box does to it", "What the reference does here", "What it can and cannot show", "Words on this page"])
        {
            Assert.Contains(heading, page, StringComparison.Ordinal);
        }
    }

    /// <summary>Sites in a picture, open verdicts with what closes them, and no figure in the middle of what nobody knows.</summary>
    [Fact]
    public void Sheet_OfABoughtHeadset_BeginsWithThePlainPageAndShowsIntervals()
    {
        using TemporaryFolder folder = new();
        string html = Path.Combine(folder.Path, "bought.html");
        Assert.Equal(0, Shell.Run("sheet", "designs/bought-headband.toml", "-o", html).Code);
        string page = WebUtility.HtmlDecode(File.ReadAllText(html));
        Assert.True(page.IndexOf("The path of the signal", StringComparison.Ordinal) < page.IndexOf("What would close it", StringComparison.Ordinal));
        Assert.Contains("from above, nose up", page, StringComparison.Ordinal);
        Assert.Contains("? open", page, StringComparison.Ordinal);
        Assert.Contains("ask the maker for input.series-resistor", page, StringComparison.Ordinal);
        Assert.Contains("100 kΩ to 900 kΩ", page, StringComparison.Ordinal);   // its card's class, where one value would be the middle
    }

    /// <summary>A maker knows no keys of a design file; every minus sign is one; a band begins at 0.5 Hz.</summary>
    [Fact]
    public void Plain_OfABoughtHeadset_HasNoKeysAndOneMinusSign()
    {
        using TemporaryFolder folder = new();
        string html = Path.Combine(folder.Path, "plain.html");
        Assert.Equal(0, Shell.Run("sheet", "designs/bought-headband.toml", "--plain", "-o", html).Code);
        string page = WebUtility.HtmlDecode(File.ReadAllText(html));
        page = page[page.IndexOf("The path of the signal", StringComparison.Ordinal)..page.IndexOf("Words on this page", StringComparison.Ordinal)];
        Assert.Contains("ask the maker: protection resistor in each of the two measuring leads", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("(input|converter|supply|mains|ground-drive|amplifier|electrodes)[.][a-z]", page.Replace("design.", "", StringComparison.Ordinal));
        Assert.Matches("−[0-9.]+ dB to −[0-9.]+ dB", page);
        Assert.DoesNotMatch("-[0-9.]+ (dB|%)", page);
        Assert.Contains("0.5 Hz to 4 Hz", page, StringComparison.Ordinal);
        Assert.DoesNotContain("mHz", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Plain_AsAListOfParts_IsRefused()
    {
        using TemporaryFolder folder = new();
        Assert.Equal(2, Shell.Run("sheet", "designs/starter.toml", "--plain", "-o", Path.Combine(folder.Path, "a.csv")).Code);
        Assert.Equal(2, Shell.Run("sheet", "designs/bought-headband.toml", "-o", Path.Combine(folder.Path, "a.csv")).Code);
        Assert.Equal(2, Shell.Run("sheet", "designs/bought-headband.toml", "--builds", "100", "-o", Path.Combine(folder.Path, "a.html")).Code);
    }

    [Theory]
    [InlineData("unipolar")]
    [InlineData("bipolar")]
    [InlineData("reference")]
    [InlineData("ground")]
    [InlineData("active site")]
    [InlineData("amplifier")]
    [InlineData("filter")]
    [InlineData("sampling")]
    [InlineData("hum")]
    [InlineData("artefact")]
    [InlineData("impedance")]
    [InlineData("nasion")]
    [InlineData("inion")]
    [InlineData("paste")]
    [InlineData("dry")]
    [InlineData("alpha")]
    [InlineData("10-20")]
    public void Glossary_WordOfALayman_IsThere(string word) => Assert.Single(Glossary.Find(word));
}
