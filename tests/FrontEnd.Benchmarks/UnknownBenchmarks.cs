using BenchmarkDotNet.Attributes;
using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Results;
using FrontEnd.Unknowns;

namespace FrontEnd.Benchmarks;

/// <summary>A bought headset with all its draws and corners.</summary>
public class UnknownBenchmarks
{
    private readonly PartlyKnownDesign _bought = DesignDocument.Parse(DesignDocument.BoughtText, DocumentFormat.Toml).PartlyKnown!;

    [Benchmark]
    public Assessment Bought() => PartlyKnownEvaluator.Evaluate(_bought);
}
