using System.Diagnostics;
using System.Globalization;
using System.Text;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Documents.Recordings;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>Recordings are read as streams: any length in the same memory, and the figures of samples that are held.</summary>
public sealed class RecordingStreamTests : IDisposable
{
    private const int Rate = 250;

    private readonly TemporaryFolder _folder = new();
    private readonly Design _design = DesignDocument.Read(Path.Combine(Repository.Designs, "minimal.toml")).Design;
    private readonly IReadOnlyList<BenchReading> _plan;

    public RecordingStreamTests() => _plan = BenchPlan.Of(_design).Readings;

    public void Dispose() => _folder.Dispose();

    /// <summary>Noise of some steps with a line where the sine of the plan stands, within 16 bits, the same at each call.</summary>
    private IEnumerable<int> Steps(int seconds, double line)
    {
        double hertz = _plan.Single(test => test.Name == "sine").Line!.Value.Hertz;
        var random = new Random(11);
        for (int i = 0; i < seconds * Rate; i++)
        {
            double noise = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            yield return (int)Math.Clamp(Math.Round((40 * noise) + (line * Math.Sin(2 * Math.PI * hertz * i / Rate))), short.MinValue, short.MaxValue);
        }
    }

    /// <summary>A recording of eight signals, the fourth of which has the steps, written second by second.</summary>
    /// <param name="recordSeconds">Length of a record: one of many seconds is read in parts.</param>
    private string Binary(string name, int seconds, double line = 0, int recordSeconds = 1)
    {
        const int Signals = 8;
        string path = Path.Combine(_folder.Path, name);
        using FileStream file = new(path, FileMode.Create);
        string Each(string value, int width) => string.Concat(Enumerable.Repeat(value.PadRight(width), Signals));
        string head = string.Concat("0".PadRight(8), "X".PadRight(80), "bench".PadRight(80), "25.11.26", "10.00.00", "2304".PadRight(8), "".PadRight(44),
            $"{seconds / recordSeconds}".PadRight(8), $"{recordSeconds}".PadRight(8), $"{Signals}".PadRight(4), string.Concat(Enumerable.Range(1, Signals).Select(i => $"ch{i}".PadRight(16))),
            Each("", 80), Each("uV", 8), Each("-327.68", 8), Each("327.67", 8), Each("-32768", 8), Each("32767", 8), Each("", 80), Each($"{Rate * recordSeconds}", 8), Each("", 32));
        file.Write(Encoding.ASCII.GetBytes(head));
        var record = new byte[Signals * Rate * recordSeconds * 2];
        foreach (int[] steps in Steps(seconds, line).Chunk(Rate * recordSeconds))
        {
            for (int i = 0; i < steps.Length; i++)
            {
                BitConverter.TryWriteBytes(record.AsSpan((3 * steps.Length * 2) + (2 * i)), (short)steps[i]);
            }

            file.Write(record);
        }

        return path;
    }

    private string Text(string name, int seconds, double line = 0)
    {
        string path = Path.Combine(_folder.Path, name);
        using StreamWriter file = new(path);
        file.Write("time [s],ch4 [uV]\n");
        int at = 0;
        foreach (int step in Steps(seconds, line))
        {
            file.Write(string.Create(CultureInfo.InvariantCulture, $"{at++ / (double)Rate},{step / 100.0}\n"));
        }

        return path;
    }

    private (BenchResult? Result, IReadOnlyList<Finding> Findings) Compare(string path, string test, string? channel = "ch4")
    {
        using MeasuredFile file = MeasuredFile.Open(path, out Finding? finding)!;
        return file.Compare(_plan, test, channel, raw: false, null, default);
    }

    [Theory]
    [InlineData("shorted", 0)]
    [InlineData("sine", 1000)]
    [InlineData("sine", 40000)] // beyond the range, cut
    [InlineData("polarity", 300)]
    public void Compare_OfAFile_GivesWhatHeldSamplesGive(string test, double line)
    {
        int[] steps = [.. Steps(70, line)];
        Recording held = new("ch4", Frequency.FromHertz(Rate), [.. steps.Select(step => step * 1e-8)]);
        BenchResult expected = BenchComparison.Recording(_plan, test, held).Result!;
        foreach (string path in new[] { Binary("a.edf", 70, line), Binary("b.edf", 70, line, recordSeconds: 35), Text("c.csv", 70, line) })
        {
            BenchResult result = Compare(path, test).Result!;
            Assert.Equal(expected.Because, result.Because);
            Assert.Equal(expected.Verdict, result.Verdict);
            Assert.Equal(expected.Measured.SiValue, result.Measured.SiValue, 1e-9 * Math.Abs(expected.Measured.SiValue));
            Assert.Equal(expected.Suspects.Select(suspect => (suspect.Kind, suspect.Evidence)), result.Suspects.Select(suspect => (suspect.Kind, suspect.Evidence)));
        }
    }

    /// <summary>Eight times the length needs no more memory, whatever is left to the collector.</summary>
    [Fact]
    public void Compare_OfALongerFile_AllocatesNoMore()
    {
        foreach ((string brief, string lengthy) in new[] { (Binary("a.edf", 100), Binary("b.edf", 800)), (Text("a.csv", 100), Text("b.csv", 800)) })
        {
            long Allocated(string path)
            {
                long before = GC.GetAllocatedBytesForCurrentThread();
                Assert.NotNull(Compare(path, "sine").Result);
                return GC.GetAllocatedBytesForCurrentThread() - before;
            }

            Allocated(brief);
            long few = Allocated(brief), many = Allocated(lengthy);
            Assert.True(many < few + 400_000, $"{lengthy}: {few} and {many} bytes");
        }
    }

    /// <summary>No file is too large: 294 MB, of holes that take no room on the disk, most of them other signals' samples.</summary>
    [Fact]
    public void Compare_OfAnyFileSize_IsNotRefused()
    {
        string path = Binary("a.edf", 60);
        using (FileStream file = new(path, FileMode.Open))
        {
            file.Position = 256 + (216 * 8) + 8;
            file.Write(Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("350000  ", 7))));
            file.SetLength(2304);
            file.SetLength(2304 + (60L * 2 * (250 + (7 * 350_000))));
        }

        BenchResult result = Compare(path, "shorted", "ch1").Result!;
        Assert.Equal(SuspectKind.DeadChannel, result.Suspects[0].Kind);
        Assert.Contains("15000", result.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_OfAFileThatGrows_TakesWhatItHadWhenOpened()
    {
        string path = Text("a.csv", 62);
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        File.AppendAllText(path, "62,not a number\n");
        Assert.NotNull(file.Compare(_plan, "shorted", null, raw: false, null, TestContext.Current.CancellationToken).Result);
        Assert.Equal("FE0744", Compare(path, "shorted").Findings.Single().Code);
    }

    [Theory]
    [InlineData("a.edf")]
    [InlineData("a.csv")]
    public void Compare_OfAFileThatIsCutMeanwhile_SaysThatItChanged(string name)
    {
        string path = name == "a.edf" ? Binary(name, 62) : Text(name, 62);
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        Recording recording = file.Recording("ch4", Frequency.FromHertz(Rate));
        using (FileStream other = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
        {
            other.SetLength(5000);
        }

        BadRecordingException problem = Assert.Throws<BadRecordingException>(() => recording.Samples.Read(_ => { }));
        Assert.Equal("FE0985", problem.Finding.Code);
        Assert.NotEmpty(file.Compare(_plan, "shorted", null, raw: false, null, TestContext.Current.CancellationToken).Findings);
    }

    [Theory]
    [InlineData("x\n", "1,")]
    [InlineData("x\n\"", "1\n")]
    public void Compare_OfARowWithoutEnd_IsAFinding(string first, string part)
    {
        string path = _folder.Write("a.csv", first + string.Concat(Enumerable.Repeat(part, 600_000)));
        Assert.Equal("FE0986", Compare(path, "shorted", null).Findings.Single().Code);
    }

    [Fact]
    public void Open_OfADeviceWithoutEnd_IsAFinding()
    {
        if (OperatingSystem.IsLinux())
        {
            Assert.Null(RecordingBytes.Open("/dev/zero", 1 << 20, out Finding? finding));
            Assert.Equal("FE0746", finding!.Code);
        }
    }

    /// <summary>A pipe can be read but once, and is opened but once.</summary>
    [Theory]
    [InlineData("a.csv")]
    [InlineData("a.edf")]
    public async Task Compare_OfAPipe_GivesWhatTheFileGives(string name)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        string path = name == "a.edf" ? Binary("file.edf", 62) : Text("file.csv", 62), pipe = Path.Combine(_folder.Path, name);
        using (Process make = Process.Start("mkfifo", pipe))
        {
            await make.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        Task copying = Task.Run(() =>
        {
            using FileStream from = File.OpenRead(path), to = new(pipe, FileMode.Open, FileAccess.Write);
            from.CopyTo(to);
        }, TestContext.Current.CancellationToken);
        BenchResult result = Compare(pipe, "shorted").Result!;
        await copying;
        Assert.Equal(Compare(path, "shorted").Result!.Because, result.Because);
    }

    [Fact]
    public void Compare_TellsHowFarItIs_AndEndsWhenAsked()
    {
        string path = Text("a.csv", 600);
        List<int> told = [];
        using MeasuredFile file = MeasuredFile.Open(path, out _)!;
        file.Compare(_plan, "shorted", null, raw: false, new Told(told.Add), TestContext.Current.CancellationToken);
        Assert.True(10 < told.Count);
        Assert.Equal(told.Order(), told);
        Assert.Equal(MeasuredFile.ProgressSteps, told[^1]);
        using CancellationTokenSource source = new();
        Assert.Throws<OperationCanceledException>(() => file.Compare(_plan, "shorted", null, raw: false, new Told(_ => source.Cancel()), source.Token));
    }

    private sealed class Told(Action<int> take) : IProgress<int>
    {
        public void Report(int value) => take(value);
    }

    /// <summary>The quick way to a number is the library's to the last bit.</summary>
    [Fact]
    public void Number_AnyText_IsTheLibrarys()
    {
        var random = new Random(4);
        string[] odd = ["", "-", ".", "-.5", "5.", " 7 ", "1e3", "1,5", "1,2,3", "1_0", "٣", "-0", "+1.25", "NaN", "0.1.2", "000000000000000001", "999999999999999.9", "\t3"];
        foreach (string text in odd.Concat(Enumerable.Range(0, 20_000).Select(_ => Drawn(random))))
        {
            string plain = text.Count(letter => letter == ',') == 1 ? text.Replace(',', '.') : text;
            bool expected = double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out double wanted);
            Assert.True(expected == SampleNumber.TryParse(text, out double read), text);
            Assert.True(!expected || BitConverter.DoubleToInt64Bits(wanted) == BitConverter.DoubleToInt64Bits(read), text);
        }
    }

    private static string Drawn(Random random)
    {
        string digits = random.NextInt64((long)Math.Pow(10, random.Next(1, 18))).ToString(CultureInfo.InvariantCulture);
        string sign = random.Next(3) switch { 0 => "-", 1 => "+", _ => "" }, point = random.Next(4) switch { 0 => "", 1 => ",", _ => "." };
        return sign + digits.Insert(random.Next(digits.Length + 1), point);
    }
}
