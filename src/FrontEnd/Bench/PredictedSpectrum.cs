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
    private readonly double _gain;

    /// <param name="design">A design without errors.</param>
    /// <param name="filtered">True for the recording behind the digital filters.</param>
    public PredictedSpectrum(Design design, bool filtered = true)
        : this(new Evaluation(design), filtered)
    {
    }

    /// <param name="evaluation">The design, with the fixture if there is one.</param>
    /// <param name="filtered">True for the recording behind the digital filters.</param>
    /// <param name="gain">What the samples are divided by; null for the gain with the fixture in place.</param>
    internal PredictedSpectrum(Evaluation evaluation, bool filtered, double? gain = null)
    {
        _evaluation = evaluation;
        _filtered = filtered;
        _gain = gain ?? evaluation.GainMid;
    }

    /// <summary>The largest source of noise of the board in the band, as in the noise budget.</summary>
    public string LargestSource => _evaluation.Noise.Rows().MaxBy(row => row.Rms).Name;

    /// <summary>Densities [V²/Hz] at frequencies above 0 and below half the rate [Hz].</summary>
    public double[] At(IReadOnlyList<double> hertz)
    {
        double[] density = BeforeDigital(hertz);
        for (int i = 0; i < density.Length && _filtered; i++)
        {
            density[i] *= _evaluation.Digital.Power(hertz[i]);
        }

        return density;
    }

    /// <summary>What a spectrum of Hann windows shows of the density at its bins 1…<paramref name="bins"/> [V²/Hz]: the window smears
    /// what stands beside a bin into it, such as the edges of a notch.</summary>
    /// <remarks>∫S(f)·|W(f/step − k)|² df over ∫|W|², W(x) = sin(πx)/(πx(1 − x²)) (Hann's transform; derived). The density before the
    /// digital filters is smooth, so that it is taken at the bins and drawn as a power law between them; the filters' own response is taken at
    /// every quarter.</remarks>
    /// <param name="step">Distance of the bins [Hz].</param>
    public double[] Seen(double step, int bins)
    {
        const int Parts = 4, Reach = 8;
        double[] hertz = [.. Enumerable.Range(1, Parts - 1).Select(i => step * i / Parts), .. Enumerable.Range(1, bins).Select(k => k * step)];
        double[] smooth = BeforeDigital(hertz);
        int quarters = bins * Parts;
        var fine = new double[quarters + 1];
        for (int i = 1; i <= quarters; i++)
        {
            (int k, int part) = (i / Parts, i % Parts);
            double before = i < Parts ? smooth[i - 1] : smooth[Parts - 2 + k], after = smooth[Math.Min(smooth.Length - 1, Parts - 1 + k)];
            double analog = i < Parts ? before : Between(before, after, part == 0 ? 0 : Math.Log(i / (double)(k * Parts)) / Math.Log((k + 1) / (double)k));
            fine[i] = analog * (_filtered ? _evaluation.Digital.Power(i * step / Parts) : 1);
        }

        fine[0] = fine[1] * (_filtered ? 0 : 1);
        double[] kernel = [.. Enumerable.Range(0, (Reach * Parts) + 1).Select(i => Hann((double)i / Parts))];
        double whole = (2 * kernel.Sum()) - kernel[0];
        return [.. Enumerable.Range(1, bins).Select(k => Smeared(k * Parts) / whole)];

        double Smeared(int centre)
        {
            double sum = 0;
            for (int d = -Reach * Parts; d <= Reach * Parts; d++)
            {
                // Below 0 Hz and above half the rate the spectrum is its own mirror image.
                int at = Math.Abs(centre + d);
                at = at <= quarters ? at : Math.Max(0, (2 * quarters) - at);
                sum += fine[at] * kernel[Math.Abs(d)];
            }

            return sum;
        }
    }

    /// <summary>A straight line in the logarithms, which a power law is: straight in the densities it would lie above every one that falls.</summary>
    private static double Between(double before, double after, double share) =>
        0 < before && 0 < after ? before * Math.Pow(after / before, share) : before + ((after - before) * share);

    private static double Hann(double x)
    {
        double size = x == 0 ? 1 : Math.Abs(x - 1) < 1e-9 ? 0.5 : Math.Sin(Math.PI * x) / (Math.PI * x * (1 - (x * x)));
        return size * size;
    }

    /// <summary>Response of the digital filters, as a power; 1 where they are off.</summary>
    internal double Digital(double hertz) => _filtered ? _evaluation.Digital.Power(hertz) : 1;

    private double[] BeforeDigital(IReadOnlyList<double> hertz)
    {
        AnalogDigitalConverter converter = _evaluation.Design.Converter;
        double half = converter.Rate.Hertz / 2;
        double white = (NoiseDensity.Quantisation(converter.LsbVolts) + (converter.NoiseVolts * converter.NoiseVolts)) / half;
        double perGain = 1 / (_gain * _gain);
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
                density[first + lane] = ((_evaluation.Path.Density[lane] * response * response) + folded[first + lane] + white) * perGain;
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
