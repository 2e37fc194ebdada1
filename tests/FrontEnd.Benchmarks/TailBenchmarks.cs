using BenchmarkDotNet.Attributes;
using FrontEnd.DesignedFilters;
using FrontEnd.Filters;
using FrontEnd.Quantities;

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

    /// <summary>All that its page says.</summary>
    [Benchmark]
    public DesignedSections PageOfOrder20() => DesignedSections.Of(_slow, new FilterParts());

    /// <summary>A notch at every harmonic of the mains up to 7 kHz.</summary>
    [Benchmark]
    public DesignedNotches PageOfNotches() => DesignedNotches.Of(_notches);
}
