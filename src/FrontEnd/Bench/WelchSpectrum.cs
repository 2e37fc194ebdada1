using FrontEnd.Numbers;

namespace FrontEnd.Bench;

/// <summary>Power density of a record by Welch's method: Hann windows, half overlapped, the mean of each taken off, weighted
/// as the window weighs: the plain mean of a line that does not end with a whole period would stand in the first bins.</summary>
/// <remarks>S(k·fs/n) = 2·|X(k)|²/(fs·Σw²), one-sided, averaged over the windows.
/// Source: P. D. Welch, The use of fast Fourier transform for the estimation of power spectra, IEEE Trans. Audio Electroacoust. 15 (1967)
/// 70 (from memory). A sine's power is what its main lobe of five bins holds above the
/// noise, to 0.1 %.</remarks>
internal sealed class WelchSpectrum
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
    /// <param name="windowSeconds">Length wanted; a record shorter than four of them gets shorter windows.</param>
    public static WelchSpectrum Of(IReadOnlyList<double> samples, double rate, double windowSeconds = 8)
    {
        Builder builder = new(samples.Count, rate, windowSeconds);
        new HeldSamples(samples).Read(builder.Take);
        return builder.Whole();
    }

    /// <summary>Makes a spectrum of samples as they come; it holds no more of them than one window.</summary>
    internal sealed class Builder
    {
        private readonly double _rate, _power;
        private readonly double[] _window, _weights, _held, _windowed, _density;
        private readonly RealTransform _transform;
        private int _filled, _windows;

        /// <param name="count">How many samples will come, at least 16.</param>
        /// <param name="rate">fs [Hz].</param>
        /// <param name="windowSeconds">Length of a window, if the record has four of them.</param>
        public Builder(long count, double rate, double windowSeconds)
        {
            int n = (int)Math.Min(windowSeconds * rate, count / 4.0);
            n = Math.Max(16, n - (n % 2));
            (_rate, _window, _held, _windowed, _density) = (rate, new double[n], new double[n], new double[n], new double[(n / 2) + 1]);
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                _window[i] = 0.5 - (0.5 * Math.Cos(2 * Math.PI * i / n));
                _power += _window[i] * _window[i];
                sum += _window[i];
            }

            _weights = [.. _window.Select(weight => weight / sum)];
            _transform = new RealTransform(n);
        }

        public void Take(ReadOnlySpan<double> piece)
        {
            while (!piece.IsEmpty)
            {
                int taken = Math.Min(piece.Length, _held.Length - _filled);
                piece[..taken].CopyTo(_held.AsSpan(_filled));
                _filled += taken;
                piece = piece[taken..];
                if (_filled == _held.Length)
                {
                    AddWindow();
                    _filled = _held.Length / 2;
                    _held.AsSpan(_filled).CopyTo(_held);
                }
            }
        }

        /// <summary>The spectrum of all that was taken; the samples behind the last whole window do not count.</summary>
        public WelchSpectrum Whole()
        {
            double[] density = [.. _density.Select((sum, k) =>
                sum * (k == 0 || k == _density.Length - 1 ? 1 : 2) / (_rate * _power * _windows))];
            return new WelchSpectrum(_rate / _held.Length, density, _windows);
        }

        private void AddWindow()
        {
            double mean = 0;
            for (int i = 0; i < _held.Length; i++)
            {
                mean += _weights[i] * _held[i];
            }

            for (int i = 0; i < _held.Length; i++)
            {
                _windowed[i] = (_held[i] - mean) * _window[i];
            }

            _transform.AddPowers(_windowed, _density);
            _windows++;
        }
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
