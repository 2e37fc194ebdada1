using BenchmarkDotNet.Attributes;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Reporting;

namespace FrontEnd.Benchmarks;

/// <summary>The assessment of one channel, and of 32 that all have electrodes of their own.</summary>
[MemoryDiagnoser]
public class ChannelBenchmarks
{
    private Design _one = new();
    private Design _all = new();

    [Params("starter", "saline-sponge", "gel-cap")]
    public string Name { get; set; } = "";

    [GlobalSetup]
    public void Read()
    {
        Design design = DesignDocument.Read(Path.Combine(Repository.Root, "designs", Name + ".toml")).Design;
        _one = design with { Channels = 1, Montage = design.Montage with { Kind = MontageKind.Referential, Sites = [] }, Input = design.Input with { ReferenceInputs = null } };
        _all = _one with
        {
            ChannelList = [.. Enumerable.Range(0, 32).Select(i => new Channel { Name = $"c{i}", Electrode = design.Electrodes.Active.Scaled(1 + (0.03 * i)) })],
        };
    }

    [Benchmark(Baseline = true)]
    public int One() => Evaluator.Evaluate(_one).Results.Count;

    [Benchmark]
    public int ThirtyTwo() => Evaluator.Evaluate(_all).Results.Count;
}
