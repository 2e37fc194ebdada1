using FrontEnd.Converter;
using FrontEnd.Identity;

namespace FrontEnd.Budgets;

/// <summary>Densities of one kind of channel at the bins of a block, as what <see cref="Numbers.ColouredNoise"/> takes: square roots, at the bins
/// 0 … n/2, nothing at 0 Hz.</summary>
internal sealed class PathDensities
{
    private readonly SignalPath _path;
    private readonly AnalogDigitalConverter _converter;
    private readonly bool _isFolded, _isConverterNoisy;

    /// <param name="path">The channel's path.</param>
    /// <param name="first">The path of the first kind, whose stages serve all; null for the first itself.</param>
    /// <param name="weights">What the powers of some sources are multiplied by; empty for all as they are.</param>
    /// <param name="isFolded">False to leave out what folds.</param>
    /// <param name="isConverterNoisy">False to leave out the converter's own noise.</param>
    public PathDensities(SignalPath path, SignalPath? first, IReadOnlyDictionary<SourceId, double> weights, bool isFolded, bool isConverterNoisy)
    {
        (_converter, _isFolded, _isConverterNoisy) = (path.Model.Design.Converter, isFolded, isConverterNoisy);
        _path = weights.Count == 0 ? path : new SignalPath(path.Model.Design, path.Built, first, isOneOfMany: true, weights);
    }

    /// <summary>Of a path as it is.</summary>
    public PathDensities(SignalPath path)
        : this(path, null, new Dictionary<SourceId, double>(), isFolded: true, isConverterNoisy: true)
    {
    }

    public SignalPath Path => _path;

    /// <summary>White density of the converter's own noise [V²/Hz].</summary>
    private double White => _isConverterNoisy ? 2 * _converter.NoiseVolts * _converter.NoiseVolts / _converter.Rate.Hertz : 0;

    /// <summary>At the samples: what a channel has by itself, folds and converter included, what the reference's side gives all channels, and the response from
    /// the electrodes to the samples.</summary>
    /// <param name="length">n.</param>
    public (double[] Own, double[] Shared, double[] Response) AtSamples(int length)
    {
        int half = length / 2;
        double rate = _converter.Rate.Hertz, step = rate / length;
        double[] own = new double[half + 1], shared = new double[half + 1], response = new double[half + 1];
        FoldedNoise? folds = _isFolded ? new FoldedNoise(_path, _converter, step, rate / 2) : null;
        ForBins(length, step, (k, lane, hertz, reference) =>
        {
            double adc = _converter.Response(hertz), power = adc * adc, common = reference * power;
            shared[k] = Math.Sqrt(common);
            own[k] = Math.Sqrt(Math.Max(0, (_path.Density[lane] * power) - common) + Math.Max(0, folds?.At(hertz) ?? 0) + White);
            response[k] = _path.Size(_path.Nodes - 1, lane) * adc;
        });
        return (own, shared, response);
    }

    /// <summary>In the signal's path: what a channel has by itself and what the reference's side gives all channels at the amplifier's output, and each stage's own
    /// at its output.</summary>
    /// <param name="length">n.</param>
    /// <param name="rate">Of the steps [Hz].</param>
    public (double[] Own, double[] Shared, double[][] Stages) InThePath(int length, double rate)
    {
        int half = length / 2, stages = _path.Nodes - 1;
        double step = rate / length;
        double[] own = new double[half + 1], shared = new double[half + 1];
        double[][] each = [.. Enumerable.Range(0, stages).Select(_ => new double[half + 1])];
        ForBins(length, step, (k, lane, _, _) =>
        {
            double common = _path.SharedAtAmplifier(lane);
            shared[k] = Math.Sqrt(common);
            own[k] = Math.Sqrt(Math.Max(0, _path.NodeDensity[0][lane] - common));
            for (int i = 0; i < stages; i++)
            {
                each[i][k] = Math.Sqrt(Math.Max(0, _path.NodeDensity[i + 1][lane] - (_path.NodeDensity[i][lane] * _path.BlockPower[i + 1][lane])));
            }
        });
        return (own, shared, each);
    }

    /// <summary>At the samples, what such steps do not show: the converter's noise, and what folds from beyond the steps' own zones.</summary>
    /// <param name="length">n.</param>
    public double[] Late(int length)
    {
        int half = length / 2;
        double step = _converter.Rate.Hertz / length;
        FoldedNoise? folds = _isFolded ? new FoldedNoise(_path, _converter, step, _converter.Rate.Hertz / 2) : null;
        double[] hertz = [.. Enumerable.Range(0, half + 1).Select(k => Math.Max(1, k) * step)];
        double[]? beyond = folds?.Beyond(hertz);
        return [.. hertz.Select((_, k) => Math.Sqrt((beyond?[k] ?? 0) + White))];
    }

    private delegate void AtBin(int bin, int lane, double hertz, double shared);

    private void ForBins(int length, double step, AtBin take)
    {
        Span<double> hertz = stackalloc double[SignalPath.Chunk], shared = stackalloc double[SignalPath.Chunk];
        for (int first = 1; first <= length / 2; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, (length / 2) + 1 - first);
            for (int i = 0; i < n; i++)
            {
                hertz[i] = (first + i) * step;
            }

            _path.Sweep(hertz[..n]);
            _path.SharedDensity(n, shared);
            for (int lane = 0; lane < n; lane++)
            {
                take(first + lane, lane, hertz[lane], shared[lane]);
            }
        }
    }
}
