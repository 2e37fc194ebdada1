using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Reporting;

namespace FrontEnd.Bench;

/// <summary>The noise density that a recording of a design should show, referred to the input.</summary>
/// <remarks>S_rti(f) = |H_dig|²·[S·|H_adc|² + F + LSB²/12/(fs/2) + σ_adc²/(fs/2)]/G_mid², 0 &lt; f &lt; fs/2: the integrand of
/// <c>noise.total</c>.</remarks>
internal sealed class PredictedSpectrum
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
            density[i] = (density[i] * _evaluation.Digital.Power(hertz[i])) + RoundOff(hertz[i]);
        }

        return density;
    }

    /// <summary>What a spectrum of Hann windows shows of the density at its bins 1…<paramref name="bins"/> [V²/Hz]: the window smears
    /// what stands beside a bin into it, such as the edges of a notch.</summary>
    /// <remarks>∫S(f)·|W(f/step − k)|² df over ∫|W|², W(x) = sin(πx)/(πx(1 − x²)) (Hann's transform; derived). The density before the
    /// digital filters is smooth, so that it is taken at the bins and drawn as a power law between them; the filters' own response is taken at
    /// every quarter.</remarks>
    /// <param name="step">Distance of the bins [Hz].</param>
    /// <param name="digital">Power response of other digital filters than the design's at every quarter of a bin, from 0 on; null for these.</param>
    internal double[] Seen(double step, int bins, Func<int, double>? digital)
    {
        const int Reach = 8;
        Func<int, double> response = digital ?? (quarter => Digital(quarter * step / Parts));
        bool isFiltered = digital is not null || _filtered;
        int quarters = bins * Parts;
        if (_held is not { } known || known.Step != step || known.Bins != bins)
        {
            _held = known = new Held(step, bins, Quarters(step, bins), Rounding(step / Parts, quarters + 1));
        }

        var fine = new double[quarters + 1];
        for (int i = 1; i <= quarters; i++)
        {
            double exact = known.Analog[i] * response(i);
            fine[i] = Math.Max(LeastLeft * exact, exact + known.Rounding[i]);
        }

        fine[0] = fine[1] * (isFiltered ? 0 : 1);
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

    /// <summary>The same of the design's own filters.</summary>
    /// <param name="step">Distance of the bins [Hz].</param>
    /// <param name="bins">How many.</param>
    public double[] Seen(double step, int bins) => Seen(step, bins, null);

    /// <summary>Into how many parts a bin is divided for the filters' response.</summary>
    internal const int Parts = 4;

    /// <summary>Least share of a density that rounding leaves: what is simulated is not known better.</summary>
    private const double LeastLeft = 0.01;

    private Held? _held;

    /// <summary>What is the same for all digital filters, at every part of a bin.</summary>
    private sealed record Held(double Step, int Bins, double[] Analog, double[] Rounding);

    /// <summary>The density before the digital filters at every part of a bin; that at 0 is none.</summary>
    private double[] Quarters(double step, int bins)
    {
        double[] smooth = BeforeDigital([.. Enumerable.Range(1, Parts - 1).Select(i => step * i / Parts), .. Enumerable.Range(1, bins).Select(k => k * step)]);
        var analog = new double[(bins * Parts) + 1];
        for (int i = 1; i < analog.Length; i++)
        {
            (int k, int part) = (i / Parts, i % Parts);
            double before = i < Parts ? smooth[i - 1] : smooth[Parts - 2 + k], after = smooth[Math.Min(smooth.Length - 1, Parts - 1 + k)];
            analog[i] = i < Parts ? before : Between(before, after, part == 0 ? 0 : Math.Log(i / (double)(k * Parts)) / Math.Log((k + 1) / (double)k));
        }

        return analog;
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

    /// <summary>What the rounding inside filters of whole numbers adds, as white at each place where it happens [V²/Hz].</summary>
    /// <remarks>Each section rounds once to F bits below the step, 2^(−2F)/12 over half the rate, through its own poles and all that follows; each filter
    /// rounds to whole steps at its end.</remarks>
    internal double RoundOff(double hertz)
    {
        if (!_filtered || !_evaluation.Design.Arithmetic.IsFixed)
        {
            return 0;
        }

        double own = Math.Pow(2, -2 * _evaluation.Design.Arithmetic.StateFraction), step = _evaluation.Design.Converter.LsbVolts / _gain,
            rate = _evaluation.Design.Converter.Rate.Hertz;
        return step * step / 6 / rate * ((own * RoundingGain(hertz)) + ((1 - own) * EndGain(hertz)));
    }

    /// <summary>The same at whole multiples of a step as it is simulated, since the rounding of noise of a few steps follows the noise; below 0 where a dead band swallows
    /// it.</summary>
    /// <remarks>A simulated bin spreads by a fifth: each figure is the mean of those within a twelfth of an octave.</remarks>
    private double[] Rounding(double step, int count)
    {
        if (!_filtered || !_evaluation.Design.Arithmetic.IsFixed || !_evaluation.Digital.Sections.IsStable)
        {
            return [.. Enumerable.Range(0, count).Select(i => RoundOff(i * step))];
        }

        const double Beside = 1.06;
        (double own, double[] density) = RoundOffInTime.Spectrum(_evaluation);
        double[] sums = new double[density.Length + 1];
        for (int k = 0; k < density.Length; k++)
        {
            sums[k + 1] = sums[k] + density[k];
        }

        double scale = Math.Pow(_evaluation.Design.Converter.LsbVolts / _gain, 2);
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            int low = Math.Clamp((int)Math.Round(i * step / own / Beside), 1, density.Length - 2), high = Math.Clamp((int)Math.Round(i * step / own * Beside), low, density.Length - 2);
            return scale * (sums[high + 1] - sums[low]) / (high - low + 1);
        })];
    }

    /// <summary>Σ|H|² from the rounding of every section to the end.</summary>
    internal double RoundingGain(double hertz)
    {
        double sum = 0, behind = 1, rate = _evaluation.Design.Converter.Rate.Hertz;
        foreach (SecondOrderSections filter in _evaluation.Digital.Filters.Reverse())
        {
            for (int i = filter.Count - 1; 0 <= i; i--)
            {
                sum += behind * new SecondOrderSections([new Biquad(1, 0, 0, filter[i].A1, filter[i].A2)]).PowerResponse(hertz, rate);
                behind *= new SecondOrderSections([filter[i]]).PowerResponse(hertz, rate);
            }
        }

        return sum;
    }

    /// <summary>The same from the end of every filter.</summary>
    private double EndGain(double hertz)
    {
        double sum = 0, behind = 1, rate = _evaluation.Design.Converter.Rate.Hertz;
        foreach (SecondOrderSections filter in _evaluation.Digital.Filters.Reverse())
        {
            sum += behind;
            behind *= filter.PowerResponse(hertz, rate);
        }

        return sum;
    }

    /// <summary>Densities before the digital filters [V²/Hz].</summary>
    internal double[] BeforeDigital(IReadOnlyList<double> hertz) =>
        BeforeDigital(_evaluation.Path, _evaluation.Noise.Folds, _evaluation.Design.Converter, _gain, [.. hertz]);

    /// <summary>The same of a design of which nothing else is wanted.</summary>
    /// <param name="design">With one kind of channel.</param>
    /// <param name="gain">What the samples are divided by.</param>
    /// <param name="hertz">Frequencies [Hz].</param>
    internal static double[] BeforeDigital(Design design, double gain, double[] hertz)
    {
        SignalPath path = new(design);
        return BeforeDigital(path, new FoldedNoise(path, design.Converter), design.Converter, gain, hertz);
    }

    private static double[] BeforeDigital(SignalPath path, FoldedNoise folds, AnalogDigitalConverter converter, double gain, double[] hertz)
    {
        double half = converter.Rate.Hertz / 2;
        double white = (NoiseDensity.Quantisation(converter.LsbVolts) + (converter.NoiseVolts * converter.NoiseVolts)) / half;
        double perGain = 1 / (gain * gain);
        double[] folded = folds.Exact(hertz);
        var density = new double[hertz.Length];
        for (int first = 0; first < hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, hertz.Length - first);
            path.Sweep(hertz.AsSpan(first, n));
            for (int lane = 0; lane < n; lane++)
            {
                double response = converter.Response(hertz[first + lane]);
                density[first + lane] = ((path.Density[lane] * response * response) + folded[first + lane] + white) * perGain;
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
