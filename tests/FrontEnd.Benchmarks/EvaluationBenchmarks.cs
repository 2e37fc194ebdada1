using BenchmarkDotNet.Attributes;
using FrontEnd.Advice;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Benchmarks;

/// <summary>What someone waits for after a keystroke: the whole assessment, and the helping changes of all verdicts with the limits of
/// use.</summary>
[MemoryDiagnoser]
public class EvaluationBenchmarks
{
    private Design _design = new();
    private Assessment? _assessment;

    [Params("dry-headband", "gel-cap", "saline-sponge", "starter")]
    public string Name { get; set; } = "";

    [GlobalSetup]
    public void Read()
    {
        _design = DesignDocument.Read(Path.Combine(Repository.Root, "designs", Name + ".toml")).Design;
        _assessment = Evaluator.Evaluate(_design);
    }

    /// <summary>Everything that is printed of a design without advice, and the plots' lines: what is made when it is read is read.</summary>
    [Benchmark]
    public int EvaluateAndReadAll()
    {
        Assessment assessment = Evaluator.Evaluate(_design);
        int read = assessment.Curves.Response.Count;
        foreach (Result result in assessment.Results)
        {
            read += result.Substituted.Length + (result.Hand?.Substituted.Length ?? 0) + result.Verdict.Because.Length + (result.Verdict.Dominates?.Length ?? 0);
        }

        return read;
    }

    /// <summary>The figures and verdicts alone.</summary>
    [Benchmark]
    public Assessment Evaluate() => Evaluator.Evaluate(_design);

    [Benchmark]
    public Assessment Advise() => Advisor.Advise(_assessment!);
}
