using BenchmarkDotNet.Attributes;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Quantities;
using FrontEnd.Simulation;

namespace FrontEnd.Benchmarks;

/// <summary>Ten minutes of the gel cap's eight channels: at the rate, and step by step at 17 times it for one minute.</summary>
[MemoryDiagnoser]
public class SampleBenchmarks
{
    private Design _design = new();

    [GlobalSetup]
    public void Read() => _design = DesignDocument.Read(Path.Combine(Environment.GetEnvironmentVariable("FRONTEND_ROOT") ?? Environment.CurrentDirectory, "designs/gel-cap.toml")).Design;

    [Benchmark]
    public long TenMinutes() => Made(new SampleWish { Length = Duration.FromSeconds(600) });

    [Benchmark]
    public long OneMinuteStepByStep() => Made(new SampleWish { Signals = [new HeadSignal(HeadSignalKind.Offset, Voltage.FromVolts(2))] });

    private long Made(SampleWish wish) => SampleRun.Prepare(_design, wish, [])!.Blocks().Sum(block => (long)block.Length);
}
