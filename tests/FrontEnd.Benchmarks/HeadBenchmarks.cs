using BenchmarkDotNet.Attributes;
using FrontEnd.Designs;
using FrontEnd.Pairs;
using FrontEnd.Quantities;

namespace FrontEnd.Benchmarks;

/// <summary>What someone waits for who asks which pair of sites sees a rhythm: all pairs of the 10-20 system, and two pairs.</summary>
[MemoryDiagnoser]
public class HeadBenchmarks
{
    private static readonly PairsQuestion Question = new()
    {
        Patches = [new CortexPatch { Name = "O1", Under = "O1", Area = Area.FromSquareCentimetres(25), Amplitude = Voltage.FromMicrovolts(30) }], Sites = [],
    };

    [Benchmark]
    public object? BestOfTheTenTwentySystem() => PairStudy.Work(Question, (_, key) => key).Answer;

    [Benchmark]
    public object? TwoPairs() => PairStudy.Work(Question with { Sites = ["O1-ears", "O1-P3"] }, (_, key) => key).Answer;
}
