using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Bench;

/// <summary>The noise density that a recording of a design should show, referred to the input.</summary>
/// <remarks>S_rti(f) = |H_dig|²·[S·|H_adc|² + F + LSB²/12/(fs/2) + σ_adc²/(fs/2)]/G_mid², 0 &lt; f &lt; fs/2: the integrand of
/// <c>noise.total</c>.</remarks>
public sealed class PredictedSpectrum
{
    private readonly Evaluation _evaluation;
    private readonly bool _filtered;

    /// <param name="design">A design without errors.</param>
    /// <param name="filtered">True for the recording behind the digital filters.</param>
    public PredictedSpectrum(Design design, bool filtered = true)
        : this(new Evaluation(design), filtered)
    {
    }

    internal PredictedSpectrum(Evaluation evaluation, bool filtered)
    {
        _evaluation = evaluation;
        _filtered = filtered;
    }

    /// <summary>The largest source of noise of the board in the band, as in the noise budget.</summary>
    public string LargestSource => _evaluation.Noise.Rows().MaxBy(row => row.Rms).Name;

    /// <summary>Densities [V²/Hz] at frequencies above 0 and below half the rate [Hz].</summary>
    public double[] At(IReadOnlyList<double> hertz)
    {
        AnalogDigitalConverter converter = _evaluation.Design.Converter;
        double half = converter.Rate.Hertz / 2;
        double white = (NoiseDensity.Quantisation(converter.LsbVolts) + (converter.NoiseVolts * converter.NoiseVolts)) / half;
        double perGain = 1 / (_evaluation.GainMid * _evaluation.GainMid);
        double[] f = [.. hertz];
        double[] folded = _evaluation.Noise.Folds.Exact(f);
        var density = new double[f.Length];
        for (int first = 0; first < f.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, f.Length - first);
            _evaluation.Path.Sweep(f.AsSpan(first, n));
            for (int lane = 0; lane < n; lane++)
            {
                double response = converter.Response(f[first + lane]);
                double digital = _filtered ? _evaluation.Digital.Power(f[first + lane]) : 1;
                density[first + lane] = digital * ((_evaluation.Path.Density[lane] * response * response) + folded[first + lane]
                    + white) * perGain;
            }
        }

        return density;
    }

    /// <summary>Relative standard deviation of an rms measured over a time: √(∫S² df/T)/(2·∫S df), which is 1/√(4BT) for a flat spectrum
    /// of bandwidth B.</summary>
    /// <remarks>Derived from the variance of a periodogram of Gaussian noise, S²/(T·df) a bin.</remarks>
    public double Spread(double low, double high, double seconds)
    {
        const int Points = 256;
        double step = (high - low) / Points, sum = 0, squares = 0;
        foreach (double density in At([.. Enumerable.Range(0, Points).Select(i => low + ((i + 0.5) * step))]))
        {
            sum += density * step;
            squares += density * density * step;
        }

        return 0 < sum ? Math.Sqrt(squares / seconds) / (2 * sum) : 0;
    }
}
