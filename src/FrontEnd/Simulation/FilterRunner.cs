using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Simulation;

/// <summary>The design's digital filters running on one channel, in its word and form: whole numbers for whole numbers, bit for bit as the firmware
/// computes them.</summary>
internal sealed class FilterRunner
{
    private readonly List<FixedRunner> _fixed = [];
    private readonly List<SingleRunner> _single = [];
    private readonly SectionRunner? _double;
    private int[] _whole = [];
    private float[] _short = [];

    public FilterRunner(DigitalChain chain)
    {
        DigitalArithmetic arithmetic = chain.Arithmetic;
        IEnumerable<QuantisedFilter> rounded = arithmetic.Word == DigitalWord.Double ? [] : chain.Designed.Select(sections => QuantisedFilter.Of(sections, arithmetic.Format));
        foreach (QuantisedFilter filter in rounded)
        {
            if (arithmetic.IsFixed)
            {
                _fixed.Add(new FixedRunner(filter, arithmetic.Form));
            }
            else
            {
                _single.Add(new SingleRunner(filter, arithmetic.Form));
            }
        }

        _double = arithmetic.Word == DigitalWord.Double && 0 < chain.Sections.Count ? new SectionRunner(chain.Sections, arithmetic.Form) : null;
    }

    /// <summary>True where what comes out are whole numbers if what goes in are.</summary>
    public bool IsWhole => _double is null && _single.Count == 0;

    /// <summary>How many states have saturated so far.</summary>
    public long Overflows => _fixed.Sum(runner => runner.Overflows);

    /// <summary>Filters samples in place.</summary>
    public void Run(Span<double> samples)
    {
        _double?.Run(samples, samples);
        if (0 < _fixed.Count)
        {
            RunWhole(samples);
        }
        else if (0 < _single.Count)
        {
            RunShort(samples);
        }
    }

    private void RunWhole(Span<double> samples)
    {
        Room(ref _whole, samples.Length);
        Span<int> whole = _whole.AsSpan(0, samples.Length);
        for (int i = 0; i < whole.Length; i++)
        {
            whole[i] = (int)Math.Round(samples[i]);
        }

        foreach (FixedRunner runner in _fixed)
        {
            runner.Run(whole, whole);
        }

        for (int i = 0; i < whole.Length; i++)
        {
            samples[i] = whole[i];
        }
    }

    private void RunShort(Span<double> samples)
    {
        Room(ref _short, samples.Length);
        Span<float> some = _short.AsSpan(0, samples.Length);
        for (int i = 0; i < some.Length; i++)
        {
            some[i] = (float)samples[i];
        }

        foreach (SingleRunner runner in _single)
        {
            runner.Run(some, some);
        }

        for (int i = 0; i < some.Length; i++)
        {
            samples[i] = some[i];
        }
    }

    private static void Room<T>(ref T[] held, int length) => held = held.Length < length ? new T[length] : held;
}
