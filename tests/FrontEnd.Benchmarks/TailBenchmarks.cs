using BenchmarkDotNet.Attributes;
using FrontEnd.DesignedFilters;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;

namespace FrontEnd.Benchmarks;

/// <summary>Wishes at the edges of what may be asked for: they must not be waited for either.</summary>
[MemoryDiagnoser]
public class SlowFilterBenchmarks
{
    private readonly FilterAnswer _slow = new FilterWish
    {
        Family = FilterFamily.Butterworth, Shape = FilterShape.LowPass, Order = 20, Corners = [Frequency.FromHertz(0.01)], Rate = Frequency.FromKilohertz(16),
    }.Design();

    private readonly NotchAnswer _notches = new NotchWish { Q = 1000, Edge = Frequency.FromKilohertz(7), Rate = Frequency.FromKilohertz(16) }.Design();

    /// <summary>Round-off noise gain of a low-pass of order 20 at 0.01 Hz and 16 kHz.</summary>
    [Benchmark]
    public double NoiseGainOfOrder20() => RoundOff.NoiseGain(_slow.Digital!.Sections, 0);

    /// <summary>The fewest taps of equal ripple, 687 of them.</summary>
    [Benchmark]
    public FirAnswer ShortestEquiripple() => Fir(41, FirMethod.Equiripple, null);

    /// <summary>The fewest taps of a Kaiser window, 3141 of them.</summary>
    [Benchmark]
    public FirAnswer ShortestKaiser() => Fir(40.3, FirMethod.Kaiser, null);

    /// <summary>The longest filter that is designed.</summary>
    [Benchmark]
    public FirAnswer LongestEquiripple() => Fir(40.3, FirMethod.Equiripple, FirWish.MostTaps);

    private static FirAnswer Fir(double stop, FirMethod method, int? taps) => new FirWish
    {
        Method = method, PassEdges = [Frequency.FromHertz(40)], StopEdges = [Frequency.FromHertz(stop)], Rate = Frequency.FromHertz(250), Taps = taps,
        Ripple = Decibels.FromStated(0.1), Attenuation = Decibels.FromStated(60),
    }.Design();

    /// <summary>All that its page says.</summary>
    [Benchmark]
    public DesignedSections PageOfOrder20() => DesignedSections.Of(_slow, new FilterParts());

    /// <summary>A notch at every harmonic of the mains up to 7 kHz.</summary>
    [Benchmark]
    public DesignedNotches PageOfNotches() => DesignedNotches.Of(_notches);
}

/// <summary>Why one figure is what it is: of the starter's kind of design, and of one whose high-pass takes minutes to recover.</summary>
[MemoryDiagnoser]
public class ExplainBenchmarks
{
    private Assessment? _assessment;

    [Params("noise.total", "levels.recovery", "filter.path.settling", "limit.contact")]
    public string Id { get; set; } = "";

    [Params(250, 16000)]
    public int Rate { get; set; }

    [GlobalSetup]
    public void Make()
    {
        Design design = new();
        _assessment = Evaluator.Evaluate(design with
        {
            Converter = design.Converter with { Rate = Frequency.FromHertz(Rate) },
            Digital = [new DigitalHighPass { Name = "high-pass", Corner = Frequency.FromHertz(125.0 / Rate) }],
        });
    }

    [Benchmark]
    public object? Explain() => Explained.Of(_assessment!, Id);
}
