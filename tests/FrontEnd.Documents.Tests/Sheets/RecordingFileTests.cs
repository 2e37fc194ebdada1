using System.Globalization;
using System.Text;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Documents.Recordings;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Results;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

public sealed class RecordingFileTests : IDisposable
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string File(string name, byte[] bytes)
    {
        string path = Path.Combine(_folder.Path, name);
        System.IO.File.WriteAllBytes(path, bytes);
        return path;
    }

    /// <summary>A recording with all its samples.</summary>
    private sealed record Held(Recording Whole, IReadOnlyList<double> Samples);

    private static (Held? Recording, IReadOnlyList<Finding> Findings) Read(string path, string? channel)
    {
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        try
        {
            Recording recording = file.Recording(channel, Rate);
            return (new Held(recording, All(recording.Samples)), []);
        }
        catch (BadRecordingException problem)
        {
            return (null, [problem.Finding]);
        }
    }

    private static List<double> All(ISamples samples)
    {
        List<double> all = [];
        samples.Read(piece => all.AddRange(piece));
        return all;
    }

    /// <summary>A file laid out by hand from the published header, apart from the reader: two signals, the second at half the rate.</summary>
    private static byte[] Made(int width, int records = 3, string dimension = "uV", string records8 = "3")
    {
        var text = new StringBuilder();
        void Put(string value, int room) => text.Append(value.PadRight(room));
        Put(width == 2 ? "0" : "?", 8);
        Put("X", 80);
        Put("bench", 80);
        Put("25.11.26", 8);
        Put("10.00.00", 8);
        Put("768", 8);
        Put("", 44);
        Put(records8, 8);
        Put("1", 8);
        Put("2", 4);
        Put("one", 16);
        Put("two", 16);
        Put("", 160);
        Put(dimension, 8);
        Put(dimension, 8);
        string low = width == 2 ? "-32768" : "-8388608", high = width == 2 ? "32767" : "8388607";
        foreach (string value in new[] { "-3276.8", "-3276.8", "3276.7", "3276.7", low, low, high, high })
        {
            Put(value, 8);
        }

        Put("", 160);
        Put("250", 8);
        Put("125", 8);
        Put("", 64);
        List<byte> bytes = [.. Encoding.ASCII.GetBytes(text.ToString())];
        Assert.Equal(768, bytes.Count);
        if (width == 3)
        {
            bytes[0] = 255;
        }

        for (int record = 0; record < records; record++)
        {
            foreach (int count in new[] { 250, 125 })
            {
                for (int i = 0; i < count; i++)
                {
                    int value = (count == 250 ? i - 100 : -i) * (width == 2 ? 1 : 256);
                    for (int b = 0; b < width; b++)
                    {
                        bytes.Add((byte)(value >> (8 * b)));
                    }
                }
            }
        }

        return [.. bytes];
    }

    [Theory]
    [InlineData(2, "a.edf")]
    [InlineData(3, "a.bdf")]
    public void Binary_TwoSignals_GivesVoltsAndRateOfEach(int width, string name)
    {
        string path = File(name, Made(width));
        (Held? first, IReadOnlyList<Finding> findings) = Read(path, null);
        Assert.Empty(findings);
        Assert.Equal("one", first!.Whole.Channel);
        Assert.Equal(250, first.Whole.Rate.Hertz);
        Assert.Equal(750, first.Samples.Count);

        // The 24-bit range of the fixture is not symmetric: zero lies 0.05 µV off.
        // 0.1 µV a step: sample i of a record is (i − 100) steps.
        double step = width == 2 ? 0.1e-6 : 6553.5e-6 / 16777215 * 256;
        Assert.Equal(-100 * step, first.Samples[0], width == 2 ? 1e-12 : 0.06e-6);
        Assert.Equal(149 * step, first.Samples[249], width == 2 ? 1e-12 : 0.06e-6);
        Assert.Equal(-100 * step, first.Samples[250], width == 2 ? 1e-12 : 0.06e-6);
        Held second = Read(path, "TWO").Recording!;
        Assert.Equal(125, second.Whole.Rate.Hertz);
        Assert.Equal(-124 * step, second.Samples[^1], width == 2 ? 1e-12 : 0.06e-6);
        Assert.Equal(second.Samples, Read(path, "2").Recording!.Samples);
    }

    [Fact]
    public void Binary_UnknownNumberOfRecords_IsCountedFromTheLength() =>
        Assert.Equal(500, Read(File("a.edf", Made(2, records: 2, records8: "-1")), null).Recording!.Samples.Count);

    [Theory]
    [InlineData("a.edf", 3, "uV", 9999, "FE0741")]    // the 24-bit form under the other name
    [InlineData("a.edf", 2, "mmHg", 9999, "FE0742")]
    [InlineData("a.edf", 2, "uV", 100, "FE0741")]     // cut inside the header
    [InlineData("a.edf", 2, "uV", 300, "FE0741")]
    [InlineData("a.edf", 2, "uV", 800, "FE0741")]     // no whole record
    public void Binary_Bad_IsAFinding(string name, int width, string dimension, int length, string code)
    {
        byte[] bytes = Made(width, dimension: dimension);
        (Held? recording, IReadOnlyList<Finding> findings) = Read(File(name, bytes[..Math.Min(length, bytes.Length)]), null);
        Assert.Null(recording);
        Assert.Equal(code, findings.Single().Code);
    }

    [Fact]
    public void Binary_UnknownChannel_ListsThoseThereAre()
    {
        Finding finding = Read(File("a.edf", Made(2)), "three").Findings.Single();
        Assert.Equal("FE0743", finding.Code);
        Assert.Contains("one", finding.Note, StringComparison.Ordinal);
    }

    [Property(MaxTest = 200)]
    public void Binary_AnyBytesChanged_NeverThrows(int seed)
    {
        var random = new Random(seed);
        byte[] bytes = Made(2);
        for (int i = 0; i < 8; i++)
        {
            bytes[random.Next(768)] = (byte)random.Next(256);
        }

        (Held? recording, IReadOnlyList<Finding> findings) = Read(File("b.edf", bytes), null);
        Assert.True(recording is not null || findings.Count == 1);
    }

    [Theory]
    [InlineData("1\n2\n3\n", 250, 1, 3)]
    [InlineData("# rate: 500 Hz\n# unit: uV\n1\n2\n", 500, 1e-6, 2)]
    [InlineData("time [s], ch1 [µV], ch2 [mV]\n0, 1, 5\n0.01, 2, 6\n0.02, 3, 7\n", 100, 1e-6, 3)]
    [InlineData("time [ms];x [nV]\n0;1\n4;2\n", 250, 1e-9, 2)]
    [InlineData("time (s),ch1 (µV)\n0,1\n0.01,2\n", 100, 1e-6, 2)]
    [InlineData("Time [s],ch1\n0,1\n0.01,2\n", 100, 1, 2)]
    [InlineData("t/s,ch1/mV\n0,1\n0.01,2\n", 100, 1e-3, 2)]
    [InlineData("seconds,uV\n0,1\n0.01,2\n", 100, 1e-6, 2)]
    [InlineData("Time_ms,sample_µV\n0,1\n10,2\n", 100, 1e-6, 2)]
    [InlineData("timestamp,Fp1 uV\n0,1\n0.01,2\n", 100, 1e-6, 2)]
    [InlineData("\"time (s)\",\"ch1 (nV)\"\n0,1\n0.01,2\n", 100, 1e-9, 2)]
    [InlineData("Fp1_A1 (left)\n1\n2\n", 250, 1, 2)] // a remark and a site are no units
    public void Text_SaysRateAndUnit(string text, double rate, double first, int count)
    {
        (Held? recording, IReadOnlyList<Finding> findings) = Read(File("s.csv", Encoding.UTF8.GetBytes(text)), null);
        Assert.Empty(findings);
        Assert.Equal(rate, recording!.Whole.Rate.Hertz, 1e-6);
        Assert.Equal(first, recording.Samples[0], 1e-18);
        Assert.Equal(count, recording.Samples.Count);
    }

    /// <summary>Where semicolons or tabs separate, a comma can only be the decimal one; a heading tells columns of counts.</summary>
    [Theory]
    [InlineData("t;ch1 [µV]\n0,000;-0,5\n0,004;0,7\n", -0.5e-6)]
    [InlineData("0,5\t1\n0,7\t2\n", 0.5)]
    [InlineData("ch1 [µV],ch2 [µV]\n5,1\n7,2\n", 5e-6)]
    [InlineData("5,-1\n7,2\n", 5)]
    [InlineData("\"0,5\"\n\"0,7\"\n", 0.5)]
    [InlineData("t,ch1\n\"0,000\",\"0,5\"\n\"0,004\",\"-0,7\"\n", 0.5)]
    [InlineData("0.5,1\n7,2\n", 0.5)]
    [InlineData("5,1,\n7,2.5,\n", 5)]
    public void Text_WithCommas_IsReadAsItMustBe(string text, double first)
    {
        (Held? recording, IReadOnlyList<Finding> findings) = Read(File("s.csv", Encoding.UTF8.GetBytes(text)), null);
        Assert.Empty(findings);
        Assert.Equal(first, recording!.Samples[0], 1e-18);
    }

    [Fact]
    public void Text_WithoutARate_SaysThatTheDesignsIsTaken()
    {
        Assert.True(Read(File("s.csv", "1\n2\n"u8.ToArray()), null).Recording!.Whole.IsRateAssumed);
        Assert.False(Read(File("s.csv", "# rate: 250 Hz\n1\n2\n"u8.ToArray()), null).Recording!.Whole.IsRateAssumed);
        Assert.False(Read(File("a.edf", Made(2)), null).Recording!.Whole.IsRateAssumed);
    }

    /// <summary>A file that was cut says so, whether its header counts its records or not.</summary>
    [Theory]
    [InlineData(3, "3", 750)]
    [InlineData(2, "3", 0)]
    [InlineData(3, "-1", 1)]
    [InlineData(4, "3", 0)]
    public void Binary_CutShort_IsAFinding(int records, string said, int less)
    {
        byte[] bytes = Made(2, records, records8: said);
        (Held? recording, IReadOnlyList<Finding> findings) = Read(File("a.edf", bytes[..^less]), null);
        Assert.Null(recording);
        Assert.Equal("FE0755", findings.Single().Code);
    }

    [Theory]
    [InlineData("time (s),ch1_counts\n0,7\n0.01,8\n")]
    [InlineData("t,LSB\n0,7\n0.01,8\n")]
    public void Text_InSteps_IsNotTakenAsVolts(string text)
    {
        Held recording = Read(File("s.csv", Encoding.UTF8.GetBytes(text)), null).Recording!;
        Assert.True(recording.Whole.AreSteps);
        Assert.Equal([7, 8], recording.Samples);
    }

    [Fact]
    public void Text_OfARecording_SaysWhichChannelAndUnitWereTaken()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, "minimal.toml")).Design;
        double rate = design.Converter.Rate.Hertz;
        string rows = string.Concat(Enumerable.Range(0, (int)(60 * rate)).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i / rate},{i % 7}\n")));
        using MeasuredFile file = MeasuredFile.Open(File("s.csv", Encoding.UTF8.GetBytes("time (s),Cz (µV)\n" + rows)), out _)!;
        BenchResult result = file.Compare(BenchPlan.Of(design).Readings, "shorted", null, raw: false, null, TestContext.Current.CancellationToken).Result!;
        Assert.Contains("channel `Cz`, its samples read as µV at the electrodes", BenchText.Of(design, [result]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "FE0744")]
    [InlineData("a\nb\n", "FE0744")]
    [InlineData("1\n2,5\nx\n", "FE0744")]
    [InlineData("0,5\n0,7\n-0,9\n", "FE0753")]          // decimal commas, or two columns of counts
    [InlineData("0,004,1,5\n0,008,1,7\n", "FE0753")]
    [InlineData("ch1\n0,5\n0,7\n", "FE0744")]
    [InlineData("0,5\n1\n0,7\n", "FE0744")]
    [InlineData("t,ch1\n0,004,1,5\n", "FE0744")]
    [InlineData("t,ch1\n0,1\n0.004\n", "FE0744")]      // cut within a row
    [InlineData("t,ch1\n0,1\n0.01,2\n0.005,3\n", "FE0754")]
    [InlineData("t,ch1\n0,1\n0.1,2\n0.2,3\n0.3,3\n9,3\n9.1,1\n", "FE0754")]
    [InlineData("x [A]\n1\n", "FE0742")]
    [InlineData("t,x (%)\n0,1\n", "FE0742")]
    [InlineData("x_%\n1\n", "FE0742")]
    [InlineData("x_ADU\n1\n", "FE0742")]
    [InlineData("x_MV\n1\n", "FE0742")]
    [InlineData("time (ticks),x\n0,1\n1,2\n", "FE0742")]
    [InlineData("# rate: fast\n1\n", "FE0101")]
    public void Text_Bad_IsAFindingWithItsLine(string text, string code)
    {
        Finding finding = Read(File("s.csv", Encoding.UTF8.GetBytes(text)), null).Findings.Single();
        Assert.Equal(code, finding.Code);
        Assert.NotNull(finding.File);
    }

    [Fact]
    public void Readings_WithUnits_AreComparedAndMistakesNamed()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, "minimal.toml")).Design;
        IReadOnlyList<BenchReading> plan = BenchPlan.Of(design).Readings;
        double shorted = plan.Single(test => test.Name == "shorted").Expected!.SiValue;
        string text = string.Create(CultureInfo.InvariantCulture, $"test,reading\nshorted, {shorted * 1e6} uV\nstep, 3 s\nshort, 1 uV\n10k, 5 parsec\n51k-47n\n");
        string path = File("r.csv", Encoding.UTF8.GetBytes(text));
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        Assert.True(file.HoldsReadings);
        (IReadOnlyList<(BenchReading Test, IQuantity Reading)> readings, IReadOnlyList<Finding> findings) = file.Readings(plan);
        Assert.Equal(2, readings.Count);
        Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(readings[0].Test, readings[0].Reading).Result!.Verdict);
        Assert.Equal(["FE0714", "FE0102", "FE0745"], findings.Select(finding => finding.Code));
        Assert.Equal([4, 5, 6], findings.Select(finding => finding.Line ?? 0));
    }

    [Theory]
    [InlineData("minimal.toml")]
    [InlineData("hobbyist.toml")]
    [InlineData("gel-cap.toml")]
    public void Text_OfTheTests_SaysThatNobodyIsConnectedAndFits(string name)
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Designs, name)).Design;
        string text = BenchText.Of(design, BenchPlan.Of(design).Readings);
        Assert.Contains("nobody connected", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }
}
