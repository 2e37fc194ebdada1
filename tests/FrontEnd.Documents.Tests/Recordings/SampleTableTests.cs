using System.Text;
using FrontEnd.Bench;
using FrontEnd.Documents.Recordings;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>Simulated samples as a table: RFC 4180 by the letter, and read again by the program.</summary>
public sealed class SampleTableTests
{
    private static string Written(RecordingHead head, Func<long, IEnumerable<RecordingNote>>? found = null)
    {
        using MemoryStream stream = new();
        EdfFileTests.Fill(new SampleTable(stream.Write, head), head, null, found);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>Every row has as many cells, ends with CR LF, and holds no quotation mark that would be part of one.</summary>
    [Theory]
    [InlineData(250, 60, 1, 2048, true, false)]
    [InlineData(100.0 / 3, 60, 8, 8_388_608, true, false)]
    [InlineData(512, 4, 2, 8_388_608, true, true)]
    [InlineData(250.5, 4, 2, 2048, false, true)]
    public void Write_AnyDesign_IsATableThatTheProgramReads(double rate, double seconds, int channels, double largest, bool areWhole, bool inSteps)
    {
        RecordingNote note = new(Duration.FromSeconds(1.5), Duration.FromSeconds(0.2), "a blink, \"large\"");
        RecordingHead head = EdfFileTests.Head(rate, seconds, channels, largest, 0.01, areWhole, inSteps) with { Notes = [note] };
        string text = Written(head, first => first == 0 ? [new RecordingNote(Duration.FromSeconds(2), null, "ch1 clips")] : []);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        string[] rows = text[..^2].Split("\r\n");
        Assert.DoesNotContain(rows, row => row.Contains('\n', StringComparison.Ordinal) || row.Contains('"', StringComparison.Ordinal));
        Assert.All(rows, row => Assert.Equal(channels + 1, row.Split(',').Length));
        Assert.StartsWith(inSteps ? "time [s],ch1 [counts]" : "time [s],ch1 [µV]", rows[0], StringComparison.Ordinal);
        string[] last = [.. rows.SkipWhile(row => row[0] != '#')];
        Assert.All(last, row => Assert.StartsWith("# ", row, StringComparison.Ordinal));
        Assert.StartsWith("# simulated, nobody was recorded", last[0], StringComparison.Ordinal);
        Assert.StartsWith("# seed 7; design: ", last[1], StringComparison.Ordinal);
        Assert.StartsWith("# at 1.5 s for 0.2 s: a blink; 'large'", last[2], StringComparison.Ordinal);
        Assert.StartsWith("# at 2 s: ch1 clips", last[3], StringComparison.Ordinal);
        Assert.StartsWith("# Not a medical device.", last[4], StringComparison.Ordinal);
        Assert.Equal(head.Count + 1, rows.Length - last.Length);

        using TemporaryFolder folder = new();
        string path = folder.Write("a.csv", text);
        for (int channel = 0; channel < channels; channel++)
        {
            using MeasuredFile file = MeasuredFile.Open(path, out _)!;
            Assert.False(file.HoldsReadings);
            Recording own = file.Recording($"ch{channel + 1}", Frequency.FromHertz(1));
            List<double> samples = [];
            own.Samples.Read(piece => samples.AddRange(piece));
            Assert.Equal(rate, own.Rate.Hertz, 1e-7 * rate);
            Assert.Equal(inSteps, own.AreSteps);
            Assert.Equal(head.Count, samples.Count);
            double step = inSteps ? 1 : head.Channels[channel].Step.Volts;
            Assert.All(Enumerable.Range(0, samples.Count), n =>
                Assert.Equal(EdfFileTests.Sample(channel, n, largest, areWhole) * step, samples[n], inSteps && areWhole ? 0 : 0.00051 * step));
        }
    }

    /// <summary>Numbers written by hand: sign, zeros behind the point, a value that rounds to nothing.</summary>
    [Fact]
    public void Numbers_AreRoundedToAThousandthOfAStep()
    {
        RecordingHead head = EdfFileTests.Head(250, 0.016, 1, 2048, 1, areWhole: false) with { Caution = "" };
        using MemoryStream stream = new();
        SampleTable table = new(stream.Write, head);
        table.Write([[1234.5678, -0.0004, -0.0006, 0.05]], 4);
        table.Finish();
        Assert.StartsWith("time [s],ch1 [µV]\r\n0.000,1234.568\r\n0.004,0.000\r\n0.008,-0.001\r\n0.012,0.050\r\n# ", Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
    }

    /// <summary>A path that clips all day: as many are listed as can be held, the others counted.</summary>
    [Fact]
    public void Findings_ThatAreTooMany_AreCounted()
    {
        string text = Written(EdfFileTests.Head(250, 10), first => first == 0 ? Enumerable.Range(0, 12_000).Select(i => new RecordingNote(Duration.FromSeconds(i / 1200.0), null, "clips")) : []);
        Assert.Equal(10_000, text.Split("\r\n").Count(row => row.EndsWith(": clips,", StringComparison.Ordinal)));
        Assert.Contains("# 2000 more events,", text, StringComparison.Ordinal);
    }

    /// <summary>A name with brackets, a comma or a sign that begins a formula leaves the heading readable.</summary>
    [Theory]
    [InlineData("a [b]", "a (b)")]
    [InlineData("a, b", "a, b")]
    [InlineData("Fp1", "Fp1")]
    public void Names_OfAnyKind_AreReadAgain(string name, string read)
    {
        RecordingHead head = EdfFileTests.Head(250, 1);
        using TemporaryFolder folder = new();
        using MeasuredFile file = MeasuredFile.Open(folder.Write("a.csv", Written(head with { Channels = [head.Channels[0] with { Name = name }] })), out _)!;
        Assert.Equal((read, "µV"), (file.Recording(null, Frequency.FromHertz(1)).Channel, file.Recording(null, Frequency.FromHertz(1)).Unit));
    }
}
