using BenchmarkDotNet.Attributes;
using FrontEnd.AntiAlias;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Benchmarks;

/// <summary>What the filter bench is waited for: a design, a long linear-phase design, a search for parts.</summary>
[MemoryDiagnoser]
public class FilterBenchmarks
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);
    private readonly EllipticPrototype _elliptic = new(20, Decibels.FromStated(0.5), Decibels.FromStated(80));
    private readonly BesselPrototype _bessel = new(20);
    private readonly EllipticPrototype _band = new(10, Decibels.FromStated(0.5), Decibels.FromStated(60));
    private readonly FirBand[] _bands = [FirBand.Flat(default, Frequency.FromHertz(40), 1, 1), FirBand.Flat(Frequency.FromHertz(42), Frequency.FromHertz(125), 0, 10)];
    private readonly RealisationRequest _request = new() { Target = FilterDesign.Analog(new ButterworthPrototype(4), new LowPass(Frequency.FromHertz(40))), CapacitorSeries = PreferredSeries.E24 };

    [Benchmark]
    public DigitalFilter EllipticOrder20() => FilterDesign.Digital(_elliptic, new LowPass(Frequency.FromHertz(40)), Rate);

    [Benchmark]
    public DigitalFilter BesselOrder20() => FilterDesign.Digital(_bessel, new LowPass(Frequency.FromHertz(40)), Rate);

    [Benchmark]
    public DigitalFilter EllipticBandPassOf20Poles() => FilterDesign.Digital(_band, new BandPass(Frequency.FromHertz(8), Frequency.FromHertz(13)), Rate);

    [Benchmark]
    public FirFilter? Equiripple255Taps() => EquirippleDesign.Taps(255, _bands, Rate);

    [Benchmark]
    public object PartsOfFourthOrderE24ByE96() => RealisationSearch.Find(_request);

    [Benchmark]
    public object PartsOfFourthOrderWithOutputResistance() => RealisationSearch.Find(_request with { OpAmp = _request.OpAmp with { OutputResistance = Resistance.FromKilohms(2) } });

    [Benchmark]
    public object PartsOfFourthOrderOfEqualComponents() => RealisationSearch.Find(_request with { Topology = SectionKind.SallenKeyEqual });

    [Benchmark]
    public object PartsOfATwinTNotch() => NotchSearch.Find(new NotchRequest { Centre = Frequency.FromHertz(50), Q = 10 });
}

/// <summary>Running filters over a record of 2^20 samples; section-samples a second are sections × 2^20 over the time.</summary>
public class RunnerBenchmarks
{
    private const int Length = 1 << 20;
    private readonly double[] _doubles = new double[Length];
    private readonly float[] _floats = new float[Length];
    private readonly int[] _counts = new int[Length];
    private SectionRunner _runner = new(SecondOrderSections.Empty);
    private SingleRunner? _single;
    private FixedRunner? _q31;
    private FixedRunner? _q15;

    [Params(1, 2, 4)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Make()
    {
        SecondOrderSections sections = FilterDesign.Digital(new ButterworthPrototype(2 * Sections), new LowPass(Frequency.FromHertz(40)), Frequency.FromHertz(250)).Sections;
        _runner = new SectionRunner(sections);
        _single = new SingleRunner(QuantisedFilter.Of(sections, NumberFormat.Single), FilterForm.TransposedDirectII);
        _q31 = new FixedRunner(QuantisedFilter.Of(sections, NumberFormat.Q31));
        _q15 = new FixedRunner(QuantisedFilter.Of(sections, NumberFormat.Q15 with { StateBits = 32 }));
        for (int n = 0; n < Length; n++)
        {
            // A sum of two sines that never decays into subnormal numbers, which are slow.
            _doubles[n] = Math.Sin(0.1 * n) + Math.Sin(1.3 * n);
            _floats[n] = (float)_doubles[n];
            _counts[n] = (int)(10000 * _doubles[n]);
        }
    }

    [Benchmark]
    public void Double() => _runner.Run(_doubles.AsSpan(), Output);

    [Benchmark]
    public void Single() => _single!.Run(_floats, SingleOutput);

    [Benchmark]
    public void Q31() => _q31!.Run(_counts, CountOutput);

    [Benchmark]
    public void Q15() => _q15!.Run(_counts, CountOutput);

    private double[] Output { get; } = new double[Length];

    private float[] SingleOutput { get; } = new float[Length];

    private int[] CountOutput { get; } = new int[Length];
}
