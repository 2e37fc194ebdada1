using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Identity;

namespace FrontEnd.Budgets;

/// <summary>Noise referred to the input, source by source, in the design band and in the named bands.</summary>
/// <remarks>σ² = (1/G_mid²)·∫ |H_dig|²·[S·|H_adc|² + F + quantisation + converter] df over the band, S the density at the converter's
/// pin.</remarks>
internal sealed class NoiseBudget
{
    /// <summary>A band of whose signal's amplitude less than this is left is filtered out.</summary>
    public const double LeastShareOfASignal = 0.1;

    private const double Tolerance = 1e-8;

    /// <summary>Greatest ratio of a panel's ends before it is halved for the first time.</summary>
    private const double PanelRatio = 3;

    private readonly IReadOnlyList<NoiseSource> _sources;
    private readonly BandIntegral _integral;
    private readonly double _perGain;
    private readonly int _folded;
    private readonly int _quantisation;
    private readonly int _converter;
    private readonly int _shared;
    private readonly int _signal;

    public NoiseBudget(Design design, SignalPath path, DigitalChain digital, double gainMid)
    {
        AnalogDigitalConverter converter = design.Converter;
        double half = converter.Rate.Hertz / 2;
        Low = design.Band.Low.Hertz;
        High = design.Band.High.Hertz;
        _sources = path.Sources;
        _perGain = 1 / (gainMid * gainMid);
        _folded = _sources.Count;
        _quantisation = _folded + 1;
        _converter = _folded + 2;
        _shared = _folded + 3;
        _signal = _folded + 4;
        double[] breaks = Breaks(design, path, digital, half);
        BandBreaks = [.. breaks.Where(f => Low <= f && f <= High)];
        Folds = new FoldedNoise(path, converter, breaks[0], breaks[^1]);
        double quantisation = NoiseDensity.Quantisation(converter.LsbVolts) / half;
        double own = converter.NoiseVolts * converter.NoiseVolts / half;
        var digitalPower = new double[SignalPath.Chunk];
        _integral = BandIntegral.Over(
            breaks,
            _sources.Count + 5,
            (hertz, values) =>
            {
                path.Sweep(hertz);
                for (int lane = 0; lane < hertz.Length; lane++)
                {
                    double power = digital.Power(hertz[lane]), response = converter.Response(hertz[lane]);
                    digitalPower[lane] = power * response * response;
                    values[_folded][lane] = power * Folds.At(hertz[lane]);
                    values[_quantisation][lane] = power * quantisation;
                    values[_converter][lane] = power * own;
                    double size = path.Size(path.Nodes - 1, lane);
                    values[_signal][lane] = digitalPower[lane] * size * size;
                }

                path.SharedDensity(hertz.Length, values[_shared]);
                for (int lane = 0; lane < hertz.Length; lane++)
                {
                    values[_shared][lane] *= digitalPower[lane];
                }

                for (int source = 0; source < _sources.Count; source++)
                {
                    path.SourceDensity(source, hertz.Length, values[source]);
                    for (int lane = 0; lane < hertz.Length; lane++)
                    {
                        values[source][lane] *= digitalPower[lane];
                    }
                }
            },
            Tolerance);
    }

    public double Low { get; }

    public double High { get; }

    public FoldedNoise Folds { get; }

    /// <summary>Frequencies from the band's lower to its upper edge between which the integrands are smooth [Hz].</summary>
    public double[] BandBreaks { get; }

    /// <summary>False where an integral did not reach its tolerance, the one over what folds included.</summary>
    public bool Converged => _integral.Converged && Folds.Converged;

    /// <summary>Rms of everything, RTI [V].</summary>
    public double Total => Math.Sqrt(TotalPower(Low, High, _ => true));

    /// <summary>The total without the electrodes' excess noise: the board's share.</summary>
    public double WithoutExcess => Math.Sqrt(TotalPower(Low, High, source => source.Kind != NoiseKind.ElectrodeExcess));

    /// <summary>The total without quantisation, with folds and converter noise: σ0 of the resolution needed.</summary>
    public double WithoutQuantisation =>
        Math.Sqrt(Math.Max(0, TotalPower(Low, High, _ => true) - (_integral.Sum(_quantisation, Low, High) * _perGain)));

    /// <summary>Active and reference electrode's thermal noise alone.</summary>
    public double ThermalFloor =>
        Math.Sqrt(Power(Low, High, source => source.Kind == NoiseKind.ElectrodeThermal && source.Id != SourceId.GroundElectrode));

    /// <summary>Thermal and excess noise of all electrodes.</summary>
    public double Electrodes => Math.Sqrt(Power(Low, High, source => source.Kind != NoiseKind.Board));

    /// <summary>Everything but the electrodes: what shorted inputs would show.</summary>
    public double Shorted => Math.Sqrt(TotalPower(Low, High, source => source.Kind == NoiseKind.Board));

    /// <summary>Rms of the quantisation, RTI [V].</summary>
    public double Quantisation => Rms(_quantisation);

    /// <summary>Rms of what the reference's side puts into every channel alike, without its folds, RTI [V]: the reference electrode, its
    /// protection and bias resistor, its buffer, and all channels' current noise at the reference pin.</summary>
    public double Shared => Rms(_shared);

    /// <summary>Rows of the budget in the order of the path.</summary>
    public IEnumerable<NoiseRow> Rows()
    {
        foreach (NoiseSource row in _sources.DistinctBy(source => source.Id))
        {
            yield return new(row.Id, row.Name, Math.Sqrt(Power(Low, High, source => source.Id == row.Id)));
        }

        yield return new(SourceId.Folded, SourceId.Folded.Words, Rms(_folded));
        yield return new(SourceId.Quantisation, SourceId.Quantisation.Words, Quantisation);
        yield return new(SourceId.Converter, SourceId.Converter.Words, Rms(_converter));
    }

    /// <summary>The row that makes most of <see cref="WithoutExcess"/>: an electrode counts with its thermal noise alone.</summary>
    public NoiseRow LargestWithoutExcess =>
        Rows().Select(row => row.Id.IsElectrode
            ? row with { Rms = Math.Sqrt(Power(Low, High, source => source.Id == row.Id && source.Kind != NoiseKind.ElectrodeExcess)) }
            : row).MaxBy(row => row.Rms);

    /// <summary>The total in a band that was among the design's.</summary>
    public double InBand(double low, double high)
    {
        double half = _integralHigh;
        return low < half ? Math.Sqrt(TotalPower(low, Math.Min(high, half), _ => true)) : 0;
    }

    /// <summary><see cref="Shared"/> in a band that was among the design's.</summary>
    public double SharedInBand(double low, double high)
    {
        double half = _integralHigh;
        return low < half ? Math.Sqrt(_integral.Sum(_shared, low, Math.Min(high, half)) * _perGain) : 0;
    }

    /// <summary>What is recorded of a signal that is flat in a band, as a share of its amplitude: √(∫|H_path·H_adc·H_dig|²/(f_b − f_a))
    /// over the mid-band gain. Above half the sampling rate nothing is recorded.</summary>
    /// <param name="low">f_a, among the design's bands [Hz].</param>
    /// <param name="high">f_b [Hz].</param>
    public double SignalInBand(double low, double high) =>
        Math.Sqrt(_integral.Sum(_signal, low, Math.Min(high, _integralHigh)) * _perGain / (high - low));

    private double _integralHigh;

    private double[] Breaks(Design design, SignalPath path, DigitalChain digital, double half)
    {
        double highest = half * 0.999999;
        var breaks = new SortedSet<double> { Low, Math.Min(High, highest) };
        foreach (Band band in design.Bands)
        {
            if (band.Low.Hertz < highest)
            {
                breaks.Add(band.Low.Hertz);
                breaks.Add(Math.Min(band.High.Hertz, highest));
            }
        }

        _integralHigh = breaks.Max;
        return BreakPoints.Between(breaks, path.Bends.Concat(BreakPoints.Of(digital.Sections, 2 * half)), PanelRatio);
    }

    private double Rms(int quantity) => Math.Sqrt(_integral.Sum(quantity, Low, High) * _perGain);

    private double Power(double low, double high, Func<NoiseSource, bool> counts)
    {
        double sum = 0;
        for (int i = 0; i < _sources.Count; i++)
        {
            sum += counts(_sources[i]) ? _integral.Sum(i, low, high) : 0;
        }

        return sum * _perGain;
    }

    private double TotalPower(double low, double high, Func<NoiseSource, bool> counts) =>
        Power(low, high, counts)
            + ((_integral.Sum(_folded, low, high) + _integral.Sum(_quantisation, low, high)
            + _integral.Sum(_converter, low, high)) * _perGain);
}
