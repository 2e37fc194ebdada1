using FrontEnd.Designs;

namespace FrontEnd.Tests.Plain;

internal sealed partial class PlainFigures
{
    private const double Highest = 1e9;

    private readonly Dictionary<string, double> _variances = [];
    private string[] _sources = [];
    private double[] _folded = [];
    private double _quantisation;
    private double _converterNoise;
    private double _total;

    /// <summary>The converter's own noise; where it is not given the larger of 0.4 LSB and full scale/(6.6·2¹⁹).</summary>
    private double ConverterRms => _design.Converter.Noise?.Volts ?? Math.Max(0.4 * Step, _design.Converter.FullScale.Volts / (6.6 * (1 << 19)));

    /// <summary>Sums over the sources' densities: all, without excess, the electrodes alone.</summary>
    private double[] Sums(double hertz)
    {
        double[] s = _path.At(hertz).Sources;
        double all = 0, excess = 0, electrodes = 0;
        for (int i = 0; i < s.Length; i++)
        {
            all += s[i];
            excess += _sources[i].Contains(" excess", StringComparison.Ordinal) ? s[i] : 0;
            electrodes += _sources[i].Contains("-electrode", StringComparison.Ordinal) ? s[i] : 0;
        }

        return [all, all - excess, electrodes];
    }

    private double[] Tail(double from) => PlainQuadrature.Over(Sums, from, Highest, []);

    /// <summary>What folds to f, with the decimator on its way.</summary>
    private Func<double, double[]> Folds(double low, double high)
    {
        double[] tail = IsDeltaSigma ? [.. Tail(2.5 * Clock).Select(x => x * 2 / Clock)] : [.. Tail(8.5 * _fs).Select(x => x * 2 / _fs)];
        double[] Exact(double f)
        {
            double[] sum = new double[3];
            void Add(double hertz, double factor)
            {
                double[] s = Sums(hertz);
                for (int i = 0; i < 3; i++)
                {
                    sum[i] += factor * s[i];
                }
            }

            double here = IsDeltaSigma ? _path.Adc(f) * _path.Adc(f) : 1;
            for (int k = 1; k <= 8; k++)
            {
                foreach (double hertz in (ReadOnlySpan<double>)[(k * _fs) - f, (k * _fs) + f])
                {
                    double adc = _path.Adc(hertz);
                    Add(hertz, adc * adc);
                }
            }

            if (IsDeltaSigma)
            {
                foreach (double hertz in (ReadOnlySpan<double>)[Clock - f, Clock + f, (2 * Clock) - f, (2 * Clock) + f])
                {
                    Add(hertz, here);
                }
            }

            return [.. sum.Select((x, i) => x + (here * tail[i]))];
        }

        return Table(Exact, low, high);
    }

    /// <summary>A smooth function from a table: six neighbours' polynomial.</summary>
    private static Func<double, double[]> Table(Func<double, double[]> exact, double low, double high)
    {
        const int Count = 30;
        double step = (high - low) / (Count - 1);
        double[][] table = [.. Enumerable.Range(0, Count).Select(i => exact(low + (i * step)))];
        return f =>
        {
            double x = (f - low) / step;
            int first = Math.Clamp((int)x - 2, 0, Count - 6);
            double[] value = new double[table[0].Length];
            for (int i = first; i < first + 6; i++)
            {
                double weight = 1;
                for (int j = first; j < first + 6; j++)
                {
                    weight *= i == j ? 1 : (x - j) / (i - j);
                }

                for (int k = 0; k < value.Length; k++)
                {
                    value[k] += weight * table[i][k];
                }
            }

            return value;
        };
    }

    private IEnumerable<double> Breaks => _digital.SelectMany(filter => filter.Features);

    private void Noise()
    {
        _sources = [.. _path.Sources];
        int count = _sources.Length;
        Band[] bands = [.. _design.Bands];
        double low = Math.Min(_f1, bands.Select(b => b.Low.Hertz).DefaultIfEmpty(_f1).Min()), high = Math.Min(_fs / 2, Math.Max(_f2, bands.Select(b => b.High.Hertz).DefaultIfEmpty(_f2).Max()));
        Func<double, double[]> folds = Folds(low, high);
        double quantisation = Step * Step / 12 / (_fs / 2), converter = Math.Pow(ConverterRms, 2) / (_fs / 2);

        // By source, folds (three sums), |H_dig|², signal.
        double[] Density(double f)
        {
            PlainPoint point = _path.At(f);
            double adc = Math.Pow(_path.Adc(f), 2), digital = PlainPath.Square(Digital(f));
            return [.. point.Sources.Select(s => s * adc * digital), .. folds(f).Select(x => x * digital), digital, PlainPath.Square(point.Whole) * adc * digital];
        }

        double[] edges = [.. new[] { low, high, _f1, _f2 }.Concat(bands.SelectMany(b => new[] { b.Low.Hertz, Math.Min(b.High.Hertz, high) })).Distinct().Order()];
        double[][] pieces = [.. edges.Zip(edges.Skip(1), (a, b) => PlainQuadrature.Over(Density, a, b, Breaks))];
        double[] Between(double a, double b)
        {
            double[] sum = new double[count + 5];
            for (int i = 0; i < pieces.Length; i++)
            {
                if (a <= edges[i] && edges[i + 1] <= b)
                {
                    sum = [.. sum.Zip(pieces[i], (x, y) => x + y)];
                }
            }

            return [.. sum.Select(x => x / (_gainMid * _gainMid))];
        }

        double[] design = Between(_f1, _f2);
        NoiseOf(design, count, quantisation, converter);
        foreach (Band band in bands)
        {
            BandOf(band, Between(band.Low.Hertz, band.High.Hertz), count, quantisation + converter);
        }
    }

    private void NoiseOf(double[] design, int count, double quantisation, double converter)
    {
        double share = 0, floor = 0, electrodes = 0;
        for (int i = 0; i < count; i++)
        {
            string name = _sources[i].Split('|')[0].Split(' ')[0];
            _variances[name] = _variances.GetValueOrDefault(name) + design[i];
            ReferenceSide += _sources[i].EndsWith("|R", StringComparison.Ordinal) ? design[i] : 0;
            share += _sources[i].Contains(" excess", StringComparison.Ordinal) ? 0 : design[i];
            electrodes += name.EndsWith("-electrode", StringComparison.Ordinal) ? design[i] : 0;
            floor += _sources[i].Contains(" thermal", StringComparison.Ordinal) && name != "ground-electrode" ? design[i] : 0;
        }

        _folded = design[count..(count + 3)];
        (_quantisation, _converterNoise) = (quantisation * design[count + 3], converter * design[count + 3]);
        _variances["folded"] = _folded[0];
        _variances["quantisation"] = _quantisation;
        _variances["converter"] = _converterNoise;
        foreach ((string name, double variance) in _variances)
        {
            _figures["noise.source." + name] = Math.Sqrt(variance);
        }

        _total = Math.Sqrt(_variances.Values.Sum());
        foreach ((string name, double variance) in _variances)
        {
            _figures[$"noise.source.{name}.share"] = variance / (_total * _total);
        }

        double rest = _quantisation + _converterNoise, shorted = Math.Sqrt((_total * _total) - electrodes);
        _figures["noise.total"] = _total;
        _figures["noise.peak_to_peak"] = 6.6 * _total;
        _figures["noise.board_share"] = 6.6 * Math.Sqrt(share + _folded[0] + rest);
        _figures["noise.shorted"] = shorted;
        _figures["noise.thermal_floor"] = Math.Sqrt(floor);
        _figures["noise.over_thermal_floor"] = Decibels(_total / Math.Sqrt(floor));
        _figures["noise.electrodes"] = Math.Sqrt(electrodes);
        _figures["noise.figure"] = Decibels(_total / Math.Sqrt(electrodes));
        double full = Figure("converter.full_scale"), range = Decibels(full / (2 * Math.Sqrt(2) * _total));
        _figures["converter.dynamic_range"] = range;
        _figures["converter.enob"] = (range - 1.76) / 6.02;
        _figures["converter.enob_shorted"] = (Decibels(full / (2 * Math.Sqrt(2) * shorted)) - 1.76) / 6.02;
        _figures["converter.noise_free_bits"] = Math.Log2(full / (6.6 * _total));
        double others = (_total * _total) - _quantisation;
        _figures["converter.bits_needed"] = (double)Enumerable.Range(1, 64).First(bits =>
        {
            double lsb = _design.Converter.FullScale.Volts / Math.Pow(2, bits);
            return Math.Sqrt(1 + (_quantisation * lsb * lsb / (Step * Step) / others)) < _design.Requirements.QuantisationRise.Fraction;
        });
    }

    private void BandOf(Band band, double[] sums, int count, double white)
    {
        string id = "noise.band." + PlainStage.Slug(band.Name);
        double noise = Math.Sqrt(sums[..count].Sum() + sums[count] + (white * sums[count + 3]));
        _figures[id] = noise;
        double share = Math.Sqrt(sums[count + 4] / (band.High.Hertz - band.Low.Hertz)), smallest = band.SmallestSignal?.Volts ?? _design.SmallestSignal.Volts;
        _figures[id + ".ratio"] = share < 0.1 ? "filtered out" : Decibels(smallest * share / noise);
        if (band.EvokedAmplitude is { } amplitude)
        {
            _figures[id + ".sweep_time"] = Math.Ceiling(Math.Pow(band.EvokedRatio * noise / amplitude.Volts, 2)) / band.EvokedRate.Hertz;
            _figures[id + ".sweeps"] = Math.Ceiling(Math.Pow(band.EvokedRatio * noise / amplitude.Volts, 2));
        }
    }
}
