using System.CommandLine;
using System.Text.Json;
using System.Text.RegularExpressions;
using FrontEnd.App.Commands;
using FrontEnd.Terminal;
using FrontEnd.App.Tests.Terminal;
using FrontEnd.Documents.Tests;
using FrontEnd.Designs;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>What must be said wherever a design is judged, and what the design itself says, stands there: every command, every page, every
/// sheet.</summary>
public sealed partial class CautionTests
{
    internal const string Own = "for calculation only: the protection resistors are too small to be worn";

    /// <summary>The commands that judge a design, with a call of each; {0} is a folder with what they need.</summary>
    internal static readonly Dictionary<string, string> Judging = new(StringComparer.Ordinal)
    {
        ["check"] = "check designs/dry-headband.toml --all --no-advice",
        ["compare"] = "compare designs/dry-headband.toml designs/starter.toml",
        ["explain"] = "explain designs/dry-headband.toml noise.total",
        ["spread"] = "spread designs/dry-headband.toml --builds 8",
        ["rates"] = "rates designs/dry-headband.toml --rates 500",
        ["bench"] = "bench designs/dry-headband.toml",
        ["pairs"] = "pairs designs/dry-headband.toml --sites Fp1-A1 --under Fp1",
        ["samples"] = "samples designs/dry-headband.toml --length 8s",
        ["size"] = "size {0}/wanted.toml",
        ["lesson"] = "lesson offset-and-gain --design designs/dry-headband.toml",
    };

    /// <summary>The commands that say nothing about a design on a person. A new command belongs in one of the two lists.</summary>
    private static readonly HashSet<string> Others = new(StringComparer.Ordinal)
    {
        "sheet",          // writes files: see below
        "problems",       // exercises, with a sentence of their own: see below
        "new", "cards", "coefficients", "filter", "mark", "sites", "glossary", "schema", "completion", "manual",
    };

    [Fact]
    public void Commands_AllOfThem_AreSorted()
    {
        using StringWriter nowhere = new();
        string[] names = [.. CommandLine.Makers.Select(make => make(new Outlet(nowhere, nowhere)).Name)];
        Assert.Equal(names.Order(StringComparer.Ordinal), Judging.Keys.Concat(Others).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("sheet.json")]
    [InlineData("sheet.html")]
    [InlineData("sheet.md")]
    public void Sheet_OfAnyFormatThatJudges_SaysAllOfIt(string name)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, name);
        Shell.Run("sheet", "designs/dry-headband.toml", "-o", file);
        string text = Plain(System.Net.WebUtility.HtmlDecode(File.ReadAllText(file)));
        Assert.All(Cautions.All.Append(Own), caution => Assert.Contains(Plain(caution), text, StringComparison.Ordinal));
    }

    /// <summary>Exercises hand out 10 kΩ resistors as plain givens: every sheet and the key say that they are no designs to be worn.</summary>
    [Fact]
    public void Problems_EverySheetAndTheKey_SayThatTheyAreExercises()
    {
        using TemporaryFolder folder = new();
        Assert.Equal(0, Shell.Run("problems", "--count", "3", "--students", "designs/classroom/class.csv", "-o", folder.Path).Code);
        string[] pages = [.. Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ".html" or ".md")];
        Assert.True(3 < pages.Length);
        Assert.All(pages, file => Assert.Contains(Cautions.Exercise, System.Net.WebUtility.HtmlDecode(File.ReadAllText(file)), StringComparison.Ordinal));
        int students = File.ReadLines(Path.Combine(Repository.Root, "designs", "classroom", "class.csv")).Count(line => line.Length > 0) - 1;
        string printed = System.Net.WebUtility.HtmlDecode(File.ReadAllText(Path.Combine(folder.Path, "problems.html")));
        Assert.Equal(students, printed.Split(Cautions.Exercise).Length - 1);
        Assert.Contains(Plain(Cautions.Exercise), Plain(Shell.Run("problems", "--list").Output), StringComparison.Ordinal);
        Assert.Contains(Cautions.Exercise, Shell.Run("problems", "--list", "--json").Output, StringComparison.Ordinal);
    }

    /// <summary>Verdicts, safety, every other view and every block: below the figures, reached with the keys that go through them.</summary>
    [Theory]
    [InlineData(80, 24)]
    [InlineData(60, 15)]
    public void Places_AllOfThem_EndWithTheCautions(int width, int height)
    {
        Model start = Setup.Start(Setup.Headband, width, height);
        foreach (Place place in Place.Views.Concat(Place.Blocks(start.Design)))
        {
            Model there = Updater.Update(start, new Message.GoTo(place.Id)).Model.Press(KeyName.Tab);
            there = there with { ResultRow = Whereabouts.ResultsOf(there).Count - 1 };   // the last figure
            string seen = "";
            for (int row = 0; row <= Whereabouts.CautionsOf(there).Count; row++)
            {
                seen += there.Screen() + " ";
                there = there.Press(KeyName.Down);
            }

            string words = Letters(seen);
            Assert.All(Cautions.All, caution => Assert.True(Words(caution).All(word => words.Contains(word, StringComparison.Ordinal)), $"{place.Id}: {caution}"));
            Assert.Null(Whereabouts.ResultInHand(there));   // a caution is in hand, and Enter has no reason to give for it
            Assert.Null(there.Press(KeyName.Enter).Page);
        }
    }

    [Theory]
    [InlineData(80)]
    [InlineData(160)]
    public void Pages_OfOneFigureAndOfTwoDesigns_SayAllOfIt(int width)
    {
        foreach (string keys in (string[])["v", "c"])
        {
            Model page = Setup.Start(Setup.Headband, width, 24).Type(keys);
            page = keys is "v" ? (page.OnResults ? page : page.Press(KeyName.Tab)).Press(KeyName.Enter) : page;
            Assert.NotNull(page.Page);
            string seen = "";
            for (int line = 0; line < 90; line++)
            {
                seen += page.Screen() + " ";
                page = page.Press(KeyName.Down);
            }

            string words = Letters(seen);
            Assert.All(Cautions.All, caution => Assert.True(Words(caution).All(word => words.Contains(word, StringComparison.Ordinal)), $"{keys}: {caution}"));
        }
    }

    /// <summary>A design's own caution heads the screen whole, whatever page is open; without one nothing moves down.</summary>
    [Theory]
    [InlineData(80, 24)]
    [InlineData(60, 15)]
    public void Screen_OfADesignWithACaution_BeginsWithIt(int width, int height)
    {
        Model start = Setup.Start(Setup.Headband, width, height);
        foreach (Model model in (Model[])[start, start.Type("v"), start.Type("f"), start.Type("?"), start.Type("c"), start.Type("zb")])
        {
            string head = string.Join(' ', model.Screen().Split('\n').Skip(1).Take(3).Select(line => line.Trim()));
            Assert.StartsWith("caution: " + Own, Plain(head), StringComparison.Ordinal);
        }

        Assert.DoesNotContain("caution: ", Setup.Start(null, width, height).Screen(), StringComparison.Ordinal);
    }

    /// <summary>Line breaks, indents and list marks of a page are none of the sentence's.</summary>
    internal static string Plain(string text) => Blanks().Replace(text, " ").Trim();

    private static string Letters(string text) => Blanks().Replace(text, " ");

    /// <summary>On a screen other columns stand between the lines of a sentence: its words are looked for one by one.</summary>
    private static IEnumerable<string> Words(string text) => text.Split(' ').Where(word => 4 < word.Length && word.All(char.IsAsciiLetter));

    [GeneratedRegex("\\s+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Blanks();
}

/// <summary>The same of what takes long: every command that judges, and every study of the interface.</summary>
public sealed class CautionStudyTests
{
    public static TheoryData<string> JudgingCommands => [.. CautionTests.Judging.Keys];

    [Theory]
    [MemberData(nameof(JudgingCommands))]
    public void Command_ThatJudges_SaysAllOfIt_AsTextAndAsJson(string command)
    {
        using TemporaryFolder folder = new();
        folder.Write("wanted.toml", $"caution = \"{CautionTests.Own}\"\n" + File.ReadAllText(Path.Combine(Repository.Root, "designs", "hobbyist-requirements.toml")));
        string[] call = string.Format(System.Globalization.CultureInfo.InvariantCulture, CautionTests.Judging[command], folder.Path).Split(' ');
        string text = CautionTests.Plain(Shell.Run(call).Output);
        Assert.All(Cautions.All, caution => Assert.Contains(CautionTests.Plain(caution), text, StringComparison.Ordinal));
        Assert.InRange(text.IndexOf("caution: " + CautionTests.Own, StringComparison.Ordinal), 0, 300);   // at the head

        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. call, "--json"]).Output);
        Assert.Equal(Cautions.All, json.RootElement.GetProperty("cautions").EnumerateArray().Select(one => one.GetString()!));
        Assert.Equal([CautionTests.Own], json.RootElement.GetProperty("design_cautions").EnumerateArray().Select(one => one.GetString()!));
    }

    public static TheoryData<StudyPage> Studies => [new RatesPage(), new SizingPage(), new SpreadPage(Builds: 8), new BenchPage(), new PairsPage(), new BoughtPage()];

    [Theory]
    [MemberData(nameof(Studies))]
    public void Study_OfADesign_SaysAllOfIt(StudyPage page)
    {
        // Pairs of sites want sites.
        Design design = Setup.Start(Setup.Headband).Design with { Montage = new() { Sites = ["O1", "O2"], Reference = "A1" } };
        string text = CautionTests.Plain(page.Work(design, _ => { }, TestContext.Current.CancellationToken).Text);
        Assert.All(Cautions.All.Append(CautionTests.Own), caution => Assert.Contains(CautionTests.Plain(caution), text, StringComparison.Ordinal));
    }
}
