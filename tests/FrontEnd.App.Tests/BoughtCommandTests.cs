using System.Diagnostics;
using FrontEnd.Documents.Tests;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>A headset that somebody else built: written, checked, and refused by what wants every value.</summary>
public sealed class BoughtCommandTests
{
    [Theory]
    [InlineData("mine.toml")]
    [InlineData("mine.json")]
    public void New_Bought_WritesAFileThatCheckAnswers(string name)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, name);
        Assert.Equal(0, Shell.Run("new", "--bought", file).Code);
        Outcome check = Shell.Run("check", file);
        Assert.Equal(0, check.Code);
        Assert.Contains("? open", check.Output, StringComparison.Ordinal);
        Assert.Contains("closed by:", check.Output, StringComparison.Ordinal);
        Assert.Contains("alpha, eyes closed in O1-A1", check.Output, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("new", "--bought", file).Code);   // never over a file
    }

    /// <summary>One screen by default: what can be seen, every requirement with what closes it, how much is not known and what of it decides, what to do
    /// next. What protects the wearer is said whole; everything else stands behind --all.</summary>
    [Fact]
    public void Check_Bought_IsOneScreenByDefault()
    {
        string brief = Shell.Run("check", "designs/bought-headband.toml").Output, all = Shell.Run("check", "designs/bought-headband.toml", "--all").Output;
        string[] lines = brief.Split('\n');
        Assert.InRange(lines.Length, 20, 60);
        Assert.InRange(lines.TakeWhile(line => line != "next").Max(line => line.Length), 1, 80);
        Assert.Contains("Not a medical device.", brief, StringComparison.Ordinal);
        Assert.Contains("57 values are not known, 88 values are defaults\n  deciding: ", brief, StringComparison.Ordinal);
        Assert.Contains("input.series-resistor 1 kΩ to\n", brief, StringComparison.Ordinal);
        Assert.Contains("             closed by: ask the maker for converter.kind\n", brief, StringComparison.Ordinal);
        Assert.Contains("treat nothing here", brief, StringComparison.Ordinal);
        Assert.Contains("next\n", brief, StringComparison.Ordinal);
        Assert.Contains("  2 µV rms above the noise in:  x delta", brief, StringComparison.Ordinal);
        Assert.DoesNotContain("the default of signal.smallest", brief, StringComparison.Ordinal);
        Assert.Equal(lines.Count(line => line.StartsWith("? open ", StringComparison.Ordinal)), all.Split('\n').Count(line => line.StartsWith("? open ", StringComparison.Ordinal)));
        Assert.DoesNotContain("hum: where it comes from", brief, StringComparison.Ordinal);
        Assert.Contains("hum: where it comes from", all, StringComparison.Ordinal);
        Assert.Contains("\ncautions\n", all, StringComparison.Ordinal);
    }

    /// <summary>A file that says what a box says, with no word of the circuit, is told of [bought] where it fails; one that passes, one of a circuit and
    /// one that says what is not known are not.</summary>
    [Theory]
    [InlineData("[electrodes]\nactive = \"dry-multipin\"\nreference = \"dry-forehead\"\nground = \"dry-forehead\"\n[converter]\nrate = \"256 Hz\"\nbits = 12\n", true)]
    [InlineData("name = \"bare\"\n[amplifier]\ngain = 24\n", true)]
    [InlineData("[bought]\nrange = \"2 mV\"\n[converter]\nrate = \"200 Hz\"\n[electrodes]\nactive = \"dry-multipin\"\nreference = \"dry-forehead\"\nground = \"dry-forehead\"\n", false)]
    [InlineData("[anti-alias]\norder = 2\ncorner = \"60 Hz\"\n[electrodes]\nactive = \"dry-multipin\"\n", false)]
    [InlineData(null, false)]
    public void Check_OfABareDesignThatFails_TellsOfBought(string? text, bool told)
    {
        using TemporaryFolder folder = new();
        string file = text is null ? "designs/dry-headband.toml" : folder.Write("mine.toml", text);
        Outcome outcome = Shell.Run("check", file, "--no-advice");
        Assert.True(told == outcome.Output.Contains("[bought]", StringComparison.Ordinal), outcome.Output + outcome.Messages);
        Assert.DoesNotContain("[bought]", Shell.Run("check", "designs/starter.toml", "--no-advice").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_Several_SaysWhatAnOpenOneWaitsFor()
    {
        string[] lines = Shell.Run("check", "designs/starter.toml", "designs/bought-headband.toml").Output.Split('\n');
        Assert.Matches("^[?] open +designs/bought-headband.toml  mains at the electrodes.*, at most 3.50 µV rms; closed by: ", lines[1]);
        Assert.DoesNotContain("closed by", lines[0], StringComparison.Ordinal);
    }

    /// <summary>A watched file is shown at once, and again whenever it is saved.</summary>
    [Fact]
    public async Task Check_Watched_IsShownAtOnceAndAgain()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("band.toml", File.ReadAllText(Path.Combine(Repository.Designs, "bought-headband.toml")));
        ProcessStartInfo start = new("dotnet", [Path.Combine(AppContext.BaseDirectory, "frontend.dll"), "check", file, "--watch"]) { UseShellExecute = false, RedirectStandardOutput = true };
        using Process process = Process.Start(start)!;
        try
        {
            await Shown(process);
            File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddSeconds(2));
            await Shown(process);
        }
        finally
        {
            process.Kill();
        }

        static async Task Shown(Process process)
        {
            using CancellationTokenSource patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
            patience.CancelAfter(TimeSpan.FromMinutes(1));
            while (await process.StandardOutput.ReadLineAsync(patience.Token).ConfigureAwait(false) is { } line && !line.StartsWith("  enter values on screens", StringComparison.Ordinal))
            {
                // What is shown above it.
            }

            Assert.False(process.HasExited);
        }
    }

    [Theory]
    [InlineData("spread {0}")]
    [InlineData("explain {0} noise.total")]
    [InlineData("compare {0} designs/starter.toml")]
    [InlineData("coefficients {0} -o {1}")]
    [InlineData("rates {0}")]
    [InlineData("sheet {0} --builds 50 -o {1}")]
    public void Command_ThatWantsEveryValue_NamesWhatIsUnknown(string call)
    {
        using TemporaryFolder folder = new();
        string output = Path.Combine(folder.Path, call.StartsWith("coef", StringComparison.Ordinal) ? "filters.csv" : "sheet.md");
        Outcome outcome = Shell.Run(string.Format(System.Globalization.CultureInfo.InvariantCulture, call, "designs/bought-headband.toml", output).Split(' '));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(Messages.PartlyKnown, outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("input.series-resistor", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(output));
    }

    private const string Bare = "name = \"k\"\nchannels = 2\n\n[bought]\nrange = \"2 mV\"\n\n[converter]\nrate = \"256 Hz\"\nbits = \"unknown\"\n\n[montage]\nsites = [\"AF7\", \"AF8\"]\nreference = \"Fpz\"\n";

    /// <summary>Limits that rest on what is not known stand as ranges, in the text as in JSON, and no fail has none.</summary>
    [Fact]
    public void Check_LimitsThatAreNotKnown_AreRanges()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "k.toml");
        File.WriteAllText(file, Bare);
        string brief = Shell.Run("check", file).Output, all = Shell.Run("check", file, "--all").Output, json = Shell.Run("check", file, "--json").Output;
        Assert.Matches(@"[?] open       noise, board's share .*\n             limit: at most 945 nV p-p, or none\n             closed by: set requirements.noise\n", brief);
        Assert.Matches(@"[?] open       resolution needed .*\n             limit: at most 10 bit to 24 bit\n", brief);
        Assert.DoesNotContain("none set", brief, StringComparison.Ordinal);
        Assert.All([brief, all], text => Assert.DoesNotContain("15.5 bit", text, StringComparison.Ordinal));
        Assert.InRange(brief.Split('\n').TakeWhile(line => line != "next").Max(line => line.Length), 1, 80);
        using System.Text.Json.JsonDocument answer = System.Text.Json.JsonDocument.Parse(json);
        foreach (System.Text.Json.JsonElement result in answer.RootElement.GetProperty("results").EnumerateArray())
        {
            bool hasLimit = result.GetProperty("limit").ValueKind != System.Text.Json.JsonValueKind.Null || result.GetProperty("wanted").ValueKind != System.Text.Json.JsonValueKind.Null
                || result.TryGetProperty("limit_least", out _);
            Assert.True(hasLimit || result.GetProperty("verdict").GetString() is "not judged", result.GetProperty("id").GetString());
        }
    }

    /// <summary>What wants every value says in one sentence how much is not known, and what can be done instead.</summary>
    [Fact]
    public void Command_ThatWantsEveryValue_SaysWhatCanBeDoneInstead()
    {
        string flat = Shell.Run("explain", "designs/bought-headband.toml", "noise.total").Messages;
        Assert.Contains("57 values of the design are not known, such as `input.series-resistor`, ", flat, StringComparison.Ordinal);
        Assert.InRange(flat.Split('`').Length, 1, 20);
        Assert.All((string[])["frontend check DESIGN", "--plain", "frontend bench DESIGN"], way => Assert.Contains(way, flat, StringComparison.Ordinal));
    }

    /// <summary>Without a recording the bench says how to make the one that narrows.</summary>
    [Fact]
    public void Bench_OfABoughtHeadset_SaysHowToRecord()
    {
        Outcome outcome = Shell.Run("bench", "designs/bought-headband.toml");
        Assert.Equal((0, ""), (outcome.Code, outcome.Messages));
        string flat = string.Join(' ', outcome.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.All((string[])["57 values of the design are not known", "with nobody wearing the device", "all its electrodes joined by wire; record a minute", "ch1 [µV]", "Not a medical device"],
            words => Assert.Contains(words, flat, StringComparison.Ordinal));
        Assert.Contains("\n    frontend bench designs/bought-headband.toml --measured FILE --fixture shorted --narrow narrowed.toml\n", outcome.Output, StringComparison.Ordinal);
    }
}
