using BenchmarkDotNet.Attributes;
using FrontEnd.Advice;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Benchmarks;

/// <summary>What someone waits for after a keystroke: the whole assessment, and the helping changes of all verdicts.</summary>
[MemoryDiagnoser]
public class EvaluationBenchmarks
{
    private Design _design = new();
    private Assessment? _assessment;

    [Params("dry-headband", "gel-cap", "saline-sponge")]
    public string Name { get; set; } = "";

    [GlobalSetup]
    public void Read()
    {
        _design = DesignDocument.Read(Path.Combine(Repository.Root, "designs", Name + ".toml")).Design;
        _assessment = Evaluator.Evaluate(_design);
    }

    [Benchmark]
    public Assessment Evaluate() => Evaluator.Evaluate(_design);

    [Benchmark]
    public Assessment Advise() => Advisor.Advise(_assessment!);
}
