using System.Globalization;
using System.Text.Json;
using FrontEnd.Bench;
using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using FrontEnd.Numbers;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend bench --measured</c> of a headset that somebody else built.</summary>
public sealed class BenchNarrowingTests
{
    private const string Bought = "designs/bought-headband.toml";

    /// <summary>A minute of white noise at 200 Hz.</summary>
    internal static string White(TemporaryFolder folder, double microvolts)
    {
        SeededRandom random = SeededRandom.For(7, "recording");
        return folder.Write("recording.csv", "# rate: 200 Hz\nch1 [µV]\n" + string.Concat(Enumerable.Range(0, 12000).Select(_ =>
            (microvolts * Math.Sqrt(-2 * Math.Log(1 - random.NextUnit())) * Math.Cos(2 * Math.PI * random.NextUnit())).ToString("0.0000", CultureInfo.InvariantCulture) + "\n")));
    }

    [Theory]
    [InlineData("--test shorted")]
    [InlineData("--fixture 10k")]
    public void Recording_OnAFixture_WritesNarrowerRangesBesideEveryComment(string fixture)
    {
        using TemporaryFolder folder = new();
        string output = Path.Combine(folder.Path, "narrowed.toml");
        Outcome outcome = Shell.Run(["bench", Bought, "--measured", White(folder, 2.2), .. fixture.Split(' '), "--narrow", output]);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("narrower by the recording", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("amplifier.output-noise", outcome.Output, StringComparison.Ordinal);
        string[] was = File.ReadAllLines(Path.Combine(Repository.Root, Bought)), now = File.ReadAllLines(output);
        Assert.Equal(was, now.Take(was.Length));
        Assert.Equal("[amplifier]", now[was.Length + 1]);
        DesignDocument before = DesignDocument.Read(Path.Combine(Repository.Root, Bought)), after = DesignDocument.Read(output);
        Assert.False(after.HasErrors);
        Assert.Equal(before.PartlyKnown!.Unknowns.Select(one => one.Key), after.PartlyKnown!.Unknowns.Select(one => one.Key));
        Assert.All(before.PartlyKnown.Unknowns.Zip(after.PartlyKnown.Unknowns), pair => Assert.True(pair.First.Least <= pair.Second.Least && pair.Second.Greatest <= pair.First.Greatest, pair.First.Key));
        Assert.Equal(before.Design.Electrodes.Mismatch, after.Design.Electrodes.Mismatch);
    }

    /// <summary>Check leads to what is worth recording, bench names it with what it narrows, and a recording that narrowed nothing says so and what else
    /// would: never itself.</summary>
    [Fact]
    public void WhatToRecord_IsRankedAndNeverWhatNarrowsNothing()
    {
        using TemporaryFolder folder = new();
        string check = Shell.Run("check", Bought).Output;
        Assert.Contains("  what to record to narrow it  frontend bench designs/bought-headband.toml\n", check, StringComparison.Ordinal);
        Assert.DoesNotContain("--fixture shorted", check, StringComparison.Ordinal);
        Outcome plan = Shell.Run("bench", Bought);
        Assert.Equal(0, plan.Code);
        Assert.Matches(@"(?s)joined by wire\n    narrows .*`--fixture shorted`.*1 MΩ in every lead, .*\n    narrows amplifier.current-noise in \d\d %.*--fixture shorted --narrow narrowed.toml", plan.Output);
        Outcome nothing = Shell.Run("bench", Bought, "--measured", White(folder, 0.8), "--fixture", "shorted", "--narrow", Path.Combine(folder.Path, "same.toml"));
        Assert.Equal(0, nothing.Code);
        Assert.Contains("  none: the ranges are unchanged", nothing.Output, StringComparison.Ordinal);
        string told = string.Join(' ', nothing.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("(`--fixture 1M`) narrows", told, StringComparison.Ordinal);
        Assert.DoesNotContain("(`--fixture 10k`) narrows", told, StringComparison.Ordinal);   // it would read the same
        Assert.DoesNotContain("(`--fixture shorted`) narrows", told, StringComparison.Ordinal);
        Assert.Contains("; nothing in it is narrower", nothing.Messages, StringComparison.Ordinal);
    }

    /// <summary>Of what contacts and the room do, no recording on a fixture tells anything: none is proposed.</summary>
    [Fact]
    public void WhatToRecord_WhereNoFixtureReachesWhatIsUnknown_IsNothing()
    {
        using TemporaryFolder folder = new();
        string file = folder.Write("mine.toml", "[electrodes]\nactive = \"gel-prepared\"\nreference = \"gel-prepared\"\nground = \"gel-prepared\"\nmismatch = [\"10 %\", \"50 %\"]\n[mains]\nlead-to-mains = \"unknown\"\n");
        Assert.DoesNotContain("frontend bench", Shell.Run("check", file).Output, StringComparison.Ordinal);
        Outcome bench = Shell.Run("bench", file);
        Assert.Equal(0, bench.Code);
        Assert.Contains("would hardly narrow", bench.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("--fixture", bench.Output, StringComparison.Ordinal);
        string rate = folder.Write("rate.toml", File.ReadAllText(Path.Combine(Repository.Designs, "starter.toml")).Replace("rate = \"250 Hz\"", "rate = \"unknown\"", StringComparison.Ordinal));
        Assert.Contains("Any recording of the device tells converter.rate: set it in the file.", Shell.Run("bench", rate).Output, StringComparison.Ordinal);
    }

    /// <summary>No verdict that was answered is open in the narrowed file.</summary>
    [Fact]
    public void Check_OfTheNarrowedFile_AnswersAtLeastAsMuch()
    {
        using TemporaryFolder folder = new();
        string output = Path.Combine(folder.Path, "narrowed.toml");
        Shell.Run("bench", Bought, "--measured", White(folder, 2.2), "--fixture", "shorted", "--narrow", output);
        Assert.True(Open(output) <= Open(Bought));

        static int Open(string path)
        {
            using JsonDocument json = JsonDocument.Parse(Shell.Run("check", path, "--json").Output);
            return json.RootElement.GetProperty("results").EnumerateArray().Count(result => result.GetProperty("verdict").GetString() == "open");
        }
    }

    /// <summary>A file is written over only where it is the design itself; JSON stays JSON.</summary>
    [Fact]
    public void Narrow_WritesOverTheDesignAloneAndOnlyWhereItIsNamed()
    {
        using TemporaryFolder folder = new();
        string recording = White(folder, 2.2), design = Path.Combine(folder.Path, "mine.json");
        Shell.Run("new", "--bought", design);
        string text = File.ReadAllText(design);
        Assert.Equal(2, Shell.Run("bench", design, "--measured", recording, "--fixture", "shorted", "--narrow", folder.Write("other.toml", "")).Code);
        Assert.Equal(text, File.ReadAllText(design));
        Assert.Equal(0, Shell.Run("bench", design, "--measured", recording, "--fixture", "shorted", "--narrow", design).Code);
        UnknownField noise = DesignDocument.Read(design).PartlyKnown!.Find("amplifier.output-noise")!;
        Assert.True(noise.IsStated && 50e-9 < noise.Least);
    }

    [Theory]
    [InlineData("bench {1} --measured {0}", Messages.FixtureNeeded)]
    [InlineData("bench {1} --measured {0} --test sine", Messages.FixtureNeeded)]
    [InlineData("bench {1} --measured {0} --test shorted --fixture 10k", Messages.FixtureNeeded)]
    [InlineData("bench {1} --measured {0} --fixture wearer", Messages.NotANumber)]
    [InlineData("bench {1} --narrow x.toml", "FE0001")]
    [InlineData("bench {1} --fixture 10k", "FE0001")]
    [InlineData("bench designs/starter.toml --measured {0} --test shorted --narrow x.toml", Messages.NothingToNarrow)]
    [InlineData("bench designs/starter.toml --measured {0} --fixture shorted", Messages.NothingToNarrow)]
    [InlineData("bench {1} --measured {2} --fixture shorted", Messages.FixtureNeeded)]
    public void Calls_ThatMakeNoSense_AreFindings(string call, string code)
    {
        using TemporaryFolder folder = new();
        string readings = folder.Write("readings.csv", "test,reading\nshorted,1 µV\n");
        Outcome outcome = Shell.Run(string.Format(CultureInfo.InvariantCulture, call, White(folder, 2.2), Bought, readings).Split(' '));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(code, outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists("x.toml"));
    }

    [Fact]
    public void Recording_ThatNoDrawGives_ContradictsTheFileAndWritesNothing()
    {
        using TemporaryFolder folder = new();
        string output = Path.Combine(folder.Path, "narrowed.toml");
        Outcome outcome = Shell.Run("bench", Bought, "--measured", White(folder, 60), "--fixture", "shorted", "--narrow", output);
        Assert.Equal(1, outcome.Code);
        Assert.Contains(Messages.ContradictsFacts, outcome.Messages, StringComparison.Ordinal);
        Assert.Contains("bought.range 2 mV", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(output));
        Assert.Contains("0 of 400 draws", outcome.Output, StringComparison.Ordinal);
        Assert.True(Narrowing.FewestDraws > 0);
    }
}
