using BenchmarkDotNet.Attributes;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Spread;

namespace FrontEnd.Benchmarks;

/// <summary>100,000 builds of the dry headband: what a user waits for. And one build: what stands before the first one and behind the
/// last.</summary>
/// <remarks>Divide what is allocated by the number of builds; what is rented is not in it.</remarks>
[MemoryDiagnoser]
public class SpreadBenchmarks
{
    private Design _design = new();

    /// <summary>Path of the design; by default the one in the repository's folder, from which the benchmark is run.</summary>
    [Params("designs/dry-headband.toml")]
    public string Path { get; set; } = "";

    [GlobalSetup]
    public void Read() => _design = DesignDocument.Read(System.IO.Path.Combine(Environment.GetEnvironmentVariable("FRONTEND_ROOT") ?? Environment.CurrentDirectory, Path)).Design;

    [Benchmark]
    public SpreadResult? HundredThousandBuilds() => SpreadRun.Run(_design, new SpreadOptions { Builds = 100_000 });

    [Benchmark]
    public SpreadResult? OneBuild() => SpreadRun.Run(_design, new SpreadOptions { Builds = 1 });

    [Benchmark]
    public SpreadResult? HundredThousandBuildsOnOneThread() => SpreadRun.Run(_design, new SpreadOptions { Builds = 100_000, Threads = 1 });
}
