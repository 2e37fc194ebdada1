using BenchmarkDotNet.Attributes;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Recordings;
using FrontEnd.Numbers;

namespace FrontEnd.Benchmarks;

/// <summary>What <c>bench --measured</c> is waited for: an hour of one channel of eight as the open binary form, and of one channel as
/// text; a day takes 24 times as long.</summary>
[MemoryDiagnoser]
public class RecordingBenchmarks
{
    private const int Seconds = 3600, Rate = 250, Signals = 8;
    private readonly string _folder = Directory.CreateTempSubdirectory("frontend-benchmark-").FullName;
    private IReadOnlyList<BenchReading> _plan = [];

    [Params("hour.edf", "hour.csv")]
    public string Name { get; set; } = "";

    [GlobalSetup]
    public void Write()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Root, "designs", "engineer.toml")).Design;
        _plan = BenchPlan.Of(design).Readings;
        var random = new Random(1);
        short[] steps = [.. Enumerable.Range(0, Seconds * Rate).Select(_ => (short)(random.Next(-60, 61) + random.Next(-60, 61)))];
        string path = Path.Combine(_folder, Name);
        if (Name == "hour.csv")
        {
            File.WriteAllLines(path, steps.Select((step, i) => FormattableString.Invariant($"{i / (double)Rate:0.000},{step / 100.0:0.000}")).Prepend("time [s],ch1 [uV]"));
            return;
        }

        using BinaryWriter file = new(File.Create(path));
        string Each(string value, int width) => string.Concat(Enumerable.Repeat(value.PadRight(width), Signals));
        file.Write(System.Text.Encoding.ASCII.GetBytes(string.Concat("0".PadRight(8), "".PadRight(160), "25.11.26", "10.00.00", "2304".PadRight(8), "".PadRight(44), $"{Seconds}".PadRight(8), "1".PadRight(8), $"{Signals}".PadRight(4),
            Each("ch", 16), Each("", 80), Each("uV", 8), Each("-327.68", 8), Each("327.67", 8), Each("-32768", 8), Each("32767", 8), Each("", 80), Each($"{Rate}", 8), Each("", 32))));
        foreach (short[] second in steps.Chunk(Rate))
        {
            for (int signal = 0; signal < Signals; signal++)
            {
                Array.ForEach(second, file.Write);
            }
        }
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark]
    public object Compare()
    {
        using MeasuredFile file = MeasuredFile.Open(Path.Combine(_folder, Name), out _)!;
        return file.Compare(_plan, "shorted", null, raw: false, null, default);
    }
}

/// <summary>One window of a recording's spectrum: of small factors, of powers of two, with a large prime factor.</summary>
public class TransformBenchmarks
{
    private RealTransform _transform = new(2);
    private double[] _record = [], _sums = [];

    [Params(3000, 4096, 2830)]
    public int Length { get; set; }

    [GlobalSetup]
    public void Make()
    {
        _transform = new RealTransform(Length);
        (_record, _sums) = ([.. Enumerable.Range(0, Length).Select(i => Math.Sin(0.1 * i * i))], new double[(Length / 2) + 1]);
    }

    [Benchmark]
    public void AddPowers() => _transform.AddPowers(_record, _sums);
}
