using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace FrontEnd.Bench;

/// <summary>Power density of a record by Welch's method: Hann windows, half overlapped, the mean of each taken off, weighted
/// as the window weighs: the plain mean of a line that does not end with a whole period would stand in the first bins.</summary>
/// <remarks>S(k·fs/n) = 2·|X(k)|²/(fs·Σw²), one-sided, averaged over the windows.
/// Source: P. D. Welch, The use of fast Fourier transform for the estimation of power spectra, IEEE Trans. Audio Electroacoust. 15 (1967)
/// 70 (from memory). The transform is the general-purpose library's. A sine's power is what its main lobe of five bins holds above the
/// noise, to 0.1 %.</remarks>
public sealed class WelchSpectrum
{
    private WelchSpectrum(double step, double[] density, int windows)
    {
        Step = step;
        Density = density;
        Windows = windows;
    }

    /// <summary>Distance of the bins, fs/n [Hz].</summary>
    public double Step { get; }

    /// <summary>V²/Hz at k·Step, k = 0 … n/2.</summary>
    public IReadOnlyList<double> Density { get; }

    public int Windows { get; }

    /// <summary>Averages that are as good as independent: half-overlapped Hann windows correlate by 1/36 of their power, so that each
    /// counts for 1/(1 + 2/36) (Welch 1967, from memory).</summary>
    public double Averages => Windows / (1 + (Windows == 1 ? 0 : 2.0 / 36));

    /// <summary>The spectrum of a record with windows of at most a given length.</summary>
    /// <param name="samples">At least 16.</param>
    /// <param name="rate">fs [Hz].</param>
    /// <param name="windowSeconds">Length wanted; a record shorter than eight of them gets shorter windows.</param>
    public static WelchSpectrum Of(IReadOnlyList<double> samples, double rate, double windowSeconds = 8)
    {
        int n = (int)Math.Min(windowSeconds * rate, samples.Count / 4.0);
        n = Math.Max(16, n - (n % 2));
        var window = new double[n];
        double power = 0, sum = 0;
        for (int i = 0; i < n; i++)
        {
            window[i] = 0.5 - (0.5 * Math.Cos(2 * Math.PI * i / n));
            power += window[i] * window[i];
            sum += window[i];
        }

        var density = new double[(n / 2) + 1];
        var buffer = new Complex[n];
        int windows = 0;
        for (int first = 0; first + n <= samples.Count; first += n / 2)
        {
            double mean = 0;
            for (int i = 0; i < n; i++)
            {
                mean += window[i] * samples[first + i] / sum;
            }

            for (int i = 0; i < n; i++)
            {
                buffer[i] = (samples[first + i] - mean) * window[i];
            }

            Fourier.Forward(buffer, FourierOptions.NoScaling);
            for (int k = 0; k < density.Length; k++)
            {
                density[k] += (buffer[k].Real * buffer[k].Real) + (buffer[k].Imaginary * buffer[k].Imaginary);
            }

            windows++;
        }

        for (int k = 0; k < density.Length; k++)
        {
            density[k] *= (k == 0 || k == density.Length - 1 ? 1 : 2) / (rate * power * windows);
        }

        return new WelchSpectrum(rate / n, density, windows);
    }

    /// <summary>Power between two frequencies [V²], bins at the edges counted in part.</summary>
    public double Power(double low, double high) => Integral(low, high, k => Density[k]);

    /// <summary>The same for densities given at the bins.</summary>
    internal double Integral(double low, double high, Func<int, double> density)
    {
        double sum = 0;
        for (int k = Math.Max(0, (int)Math.Floor((low / Step) - 0.5)); k < Density.Count && ((k - 0.5) * Step) < high; k++)
        {
            double from = Math.Max(low, (k - 0.5) * Step), to = Math.Min(high, (k + 0.5) * Step);
            sum += from < to ? density(k) * (to - from) : 0;
        }

        return sum;
    }

    /// <summary>Rms of a tone near a frequency: the main lobe of the largest bin within two bins, less the noise beside it [V].</summary>
    public double ToneRms(double hertz)
    {
        int centre = (int)Math.Round(hertz / Step), best = Math.Clamp(centre, 1, Density.Count - 2);
        for (int k = Math.Max(1, centre - 2); k <= Math.Min(Density.Count - 2, centre + 2); k++)
        {
            best = Density[best] < Density[k] ? k : best;
        }

        return Math.Sqrt(Math.Max(0, LobePower(best) - (Math.Min(5, Density.Count) * Step * Background(best))));
    }

    internal double LobePower(int centre)
    {
        double sum = 0;
        for (int k = Math.Max(0, centre - 2); k <= Math.Min(Density.Count - 1, centre + 2); k++)
        {
            sum += Density[k] * Step;
        }

        return sum;
    }

    /// <summary>Median of the bins 4 to 20 away on both sides: what the noise would be without the line.</summary>
    internal double Background(int centre)
    {
        var beside = new List<double>();
        for (int k = 4; k <= 20; k++)
        {
            if (1 <= centre - k)
            {
                beside.Add(Density[centre - k]);
            }

            if (centre + k < Density.Count - 1)
            {
                beside.Add(Density[centre + k]);
            }
        }

        beside.Sort();
        return beside.Count == 0 ? 0 : beside[beside.Count / 2];
    }
}
