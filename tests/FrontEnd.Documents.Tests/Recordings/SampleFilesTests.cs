using FrontEnd.Documents.Recordings;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Simulation;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>Designs simulated and written: every sample of a file is the one that was simulated, whichever way it stands there.</summary>
public sealed class SampleFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string At(string name) => Path.Combine(_folder.Path, name);

    private static SampleRun Run(string design, double seconds, string[] without, params string[] signals)
    {
        List<Finding> findings = [];
        SampleWish wish = new() { Length = Duration.FromSeconds(seconds), Without = without, Signals = [.. signals.Select(signal => HeadSignal.Parse(signal, findings)!)] };
        SampleRun run = SampleRun.Prepare(DesignDocument.Parse(design, Reading.DocumentFormat.Toml).Design, wish, findings)!;
        Assert.Empty(findings);
        return run;
    }

    private static string Text(string design) => File.ReadAllText(Path.Combine(Repository.Designs, design + ".toml"));

    private IReadOnlyList<WrittenSamples> Written(SampleRun run, bool inSteps, params string[] names)
    {
        IReadOnlyList<WrittenSamples>? written = SampleFiles.Write(run, Evaluator.Evaluate(run.Design), new SampleFileWish { InSteps = inSteps, Version = "0.1.0" },
            [.. names.Select(At)], null, null, TestContext.Current.CancellationToken, out Finding? finding);
        Assert.Null(finding);
        return written!;
    }

    /// <summary>Double, single and fixed-point filters; 12, 16 and 24 bits; volts and steps: within half of what the file can tell apart, and exactly where a
    /// sample is a whole step of 16 bits or fewer.</summary>
    [Theory]
    [InlineData("minimal", "double", false)]
    [InlineData("minimal", "q31", false)]
    [InlineData("minimal", "q31", true)]
    [InlineData("engineer", "q15", false)]
    [InlineData("engineer", "q15", true)]
    [InlineData("engineer", "single", true)]
    [InlineData("hobbyist", "q31", false)]
    public void Edf_OfADesign_HoldsItsSamples(string design, string word, bool inSteps)
    {
        SampleRun run = Run($"digital-word = \"{word}\"\n{Text(design)}", 4, []);
        WrittenSamples written = Written(run, inSteps, "a.edf")[0];
        PlainEdf read = new(File.ReadAllBytes(At("a.edf")));
        Assert.Equal("1", read.RecordSeconds.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(run.Channels.Count, read.Signals.Count);
        foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
        {
            for (int channel = 0; channel < read.Signals.Count; channel++)
            {
                PlainEdf.Signal signal = read.Signals[channel];
                double unit = inSteps ? 1 : run.VoltsPerStep[channel] * 1e6, count = written.Channels[channel].Count.Volts / run.VoltsPerStep[channel] * unit;
                for (int i = 0; i < block.Length; i++)
                {
                    short digital = signal.Digital[(int)block.First + i];
                    Assert.Equal(block.Steps[channel][i] * unit, signal.Physical(digital), 0.51 * count);
                    Assert.True(!written.Channels[channel].IsExact || block.Steps[channel][i] == digital);
                }
            }
        }

        Assert.Equal(0, written.Held);
        Assert.Equal(word.StartsWith('q'), written.Channels.All(channel => channel.IsExact));
    }

    /// <summary>What clips stands in both forms as the run found it, and what was known ahead.</summary>
    [Fact]
    public void Events_OfADesignThatClips_AreInEveryFile()
    {
        SampleRun run = Run(Text("engineer"), 30, [], "offset=400mV", "blink");
        List<SampleEvent> all = [.. run.Events, .. run.Blocks(TestContext.Current.CancellationToken).SelectMany(block => block.Found.ToArray())];
        Assert.Contains(all, one => one.Text.Contains("clips", StringComparison.Ordinal));
        Assert.Contains(all, one => one.Text.Contains("blink", StringComparison.Ordinal));
        Written(run, false, "a.edf", "a.csv");
        PlainEdf read = new(File.ReadAllBytes(At("a.edf")));
        string[] rows = File.ReadAllLines(At("a.csv"));
        foreach (SampleEvent one in all)
        {
            decimal start = Math.Round((decimal)one.Start.Seconds, 6);
            Assert.Contains(read.Annotations, note => note.Onset == start && note.Text == one.Text && (note.Length is null) == (one.Length is null));
            Assert.Contains(rows, row => row.StartsWith(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"# at {start:0.######} s"), StringComparison.Ordinal)
                && row.Contains(one.Text.Replace(',', ';'), StringComparison.Ordinal));
        }
    }

    /// <summary>Sites with their reference, the design's filters without what is left out, and names that have no site.</summary>
    [Fact]
    public void Header_OfADesign_NamesSitesAndFilters()
    {
        Written(Run(Text("mixed-headset"), 4, []), false, "a.edf");
        PlainEdf read = new(File.ReadAllBytes(At("a.edf")));
        Assert.Equal(["EEG Fp1-ears", "EEG Fp2-ears", "EEG O1-ears", "EEG O2-ears"], read.Signals.Select(signal => signal.Label));
        Assert.Equal("HP:0.5Hz N:50Hz", read.Signals[0].Filters);
        Written(Run(Text("mixed-headset"), 4, ["notch-50-hz"]), false, "a.edf");
        Assert.Equal("HP:0.5Hz", new PlainEdf(File.ReadAllBytes(At("a.edf"))).Signals[0].Filters);
        Written(Run(Text("minimal"), 4, []), false, "a.edf");
        Assert.Equal(["ch1"], new PlainEdf(File.ReadAllBytes(At("a.edf"))).Signals.Select(signal => signal.Label));
    }

    /// <summary>Where one of two files cannot be made neither is, and what was there stays.</summary>
    [Fact]
    public void Write_OfTwoFilesOneOfWhichCannotBe_LeavesBothAsTheyWere()
    {
        _folder.Write("a.csv", "before");
        SampleRun run = Run(Text("minimal"), 4, []);
        Assert.Null(SampleFiles.Write(run, Evaluator.Evaluate(run.Design), new SampleFileWish { Version = "0.1.0" }, [At("a.csv"), At("no/b.edf")], null, null, TestContext.Current.CancellationToken, out Finding? finding));
        Assert.Equal("FE0146", finding!.Code);
        Assert.Equal("before", File.ReadAllText(At("a.csv")));
        Assert.Single(Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Write_ThatIsCancelled_LeavesNothing()
    {
        SampleRun run = Run(Text("minimal"), 600, []);
        using CancellationTokenSource source = new();
        Assert.Throws<OperationCanceledException>(() => SampleFiles.Write(run, Evaluator.Evaluate(run.Design), new SampleFileWish { Version = "0.1.0" }, [At("a.csv"), At("a.edf")],
            block => { if (20_000 < block.First) { source.Cancel(); } }, null, source.Token, out _));
        Assert.Empty(Directory.GetFileSystemEntries(_folder.Path));
    }

    /// <summary>Ten times the length holds no more: a record and a block, whatever the file's form.</summary>
    [Theory]
    [InlineData("a.edf")]
    [InlineData("a.csv")]
    public void Write_OfALongerFile_AllocatesNoMore(string name)
    {
        RecordingHead brief = EdfFileTests.Head(250, 100, 4), lengthy = EdfFileTests.Head(250, 1000, 4);
        Allocated(brief);
        long few = Allocated(brief), many = Allocated(lengthy);

        // A record's own time is a text of some ten bytes, and goes at once.
        Assert.True(many < few + 600_000, $"{few} and {many} bytes");

        long Allocated(RecordingHead head)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            EdfFileTests.Fill(name.EndsWith("edf", StringComparison.Ordinal) ? EdfFile.Prepare(head, name, out _)!(Stream.Null.Write) : new SampleTable(Stream.Null.Write, head), head);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }
}
