using FrontEnd.Numbers;

namespace FrontEnd.Simulation;

/// <summary>What the made-up head gives each channel: Gaussian activity at the samples or between them, shapes between them.</summary>
internal sealed class HeadSource
{
    private readonly SampleRun _run;
    private readonly int _steps;
    private readonly double _step;
    private readonly bool _isAtSites;
    private readonly double[][] _sites, _bursts;
    private readonly ColouredNoise? _gaussian, _muscle;
    private readonly Pulses? _burstTimes;

    /// <param name="run">The run.</param>
    /// <param name="steps">Values a sample.</param>
    /// <param name="responses">From the electrodes to the samples, for each kind of channel, at the bins of a block: Gaussian activity is added at the samples;
    /// null to have it at the sites, from step to step.</param>
    public HeadSource(SampleRun run, int steps, double[][]? responses)
    {
        (_run, _steps, _isAtSites) = (run, steps, responses is null);
        _step = 1 / (run.Rate.Hertz * steps);
        int channels = run.Design.Channels;
        _sites = [.. Enumerable.Range(0, channels).Select(_ => new double[SampleMaker.Most * steps])];
        _bursts = [.. _sites.Select(_ => run.Head.Muscle is null ? [] : new double[SampleMaker.Most * (responses is null ? steps : 1)])];
        double rate = run.Rate.Hertz * (responses is null ? steps : 1);
        int length = responses is null ? SampleMaker.BlockLength(run, rate) : (responses[0].Length - 1) * 2;
        if (0 < run.Head.Gaussians.Count)
        {
            double[][] roots = [.. run.Head.Gaussians.Select(one => Bins(length, rate, one.Root))];
            _gaussian = new ColouredNoise(length, rate, [.. Enumerable.Range(0, channels).Select(channel =>
                new NoiseColour(null, [.. run.Head.Gaussians.Select((one, i) => Weighed(roots[i], one.Weights[channel], responses?[run.KindOf[channel]]))]))],
                [.. run.Head.Gaussians.Select(one => one.Name)], run.Wish.Seed, "head");
        }

        if (run.Head.Muscle is { } muscle)
        {
            _burstTimes = muscle.When;
            double[] root = Bins(length, rate, run.Head.MuscleRoot);
            _muscle = new ColouredNoise(length, rate, [.. Enumerable.Range(0, channels).Select(channel =>
                new NoiseColour(Weighed(root, 1, responses?[run.KindOf[channel]]), []))], [], run.Wish.Seed, "muscle");
        }
    }

    /// <summary>Adds the Gaussian activity as it comes to the converter's pin; muscles are taken as filtered first and then let swell, which differs at the ends of a
    /// burst alone.</summary>
    public void AddTo(double[][] rows, long first, int count)
    {
        _gaussian?.AddTo(rows, count);
        AddBursts(rows, first / _run.Rate.Hertz, 1 / _run.Rate.Hertz, count);
    }

    /// <summary>At the sites of each channel, from step to step behind the sample before.</summary>
    public double[][] Steps(long first, int count)
    {
        int values = count * _steps;
        foreach (double[] row in _sites)
        {
            Array.Clear(row, 0, values);
        }

        double start = (first / _run.Rate.Hertz) - ((_steps - 1) * _step);
        foreach (HeadActivity.Shape shape in _run.Head.Shapes.Where(shape => !shape.IsOffset))
        {
            AddShape(shape, start, values);
        }

        if (_isAtSites)
        {
            _gaussian?.AddTo(_sites, values);
            AddBursts(_sites, start, _step, values);
        }

        return _sites;
    }

    private void AddShape(HeadActivity.Shape shape, double start, int values)
    {
        for (int i = 0; i < values; i++)
        {
            double height = shape.Volts * shape.Pulses.At(start + (i * _step));
            for (int channel = 0; height != 0 && channel < _sites.Length; channel++)
            {
                _sites[channel][i] += height * shape.Weights[channel];
            }
        }
    }

    private void AddBursts(double[][] rows, double start, double step, int count)
    {
        if (_muscle is null)
        {
            return;
        }

        foreach (double[] row in _bursts)
        {
            Array.Clear(row, 0, count);
        }

        _muscle.AddTo(_bursts, count);
        for (int i = 0; i < count; i++)
        {
            double height = _burstTimes!.At(start + (i * step));
            for (int channel = 0; height != 0 && channel < rows.Length; channel++)
            {
                rows[channel][i] += height * _bursts[channel][i];
            }
        }
    }

    private static double[] Bins(int length, double rate, Func<double, double> root) =>
        [.. Enumerable.Range(0, (length / 2) + 1).Select(k => k == 0 ? 0 : root(k * rate / length))];

    private static double[]? Weighed(double[] roots, double weight, double[]? response) =>
        weight == 0 ? null : [.. roots.Select((root, k) => root * weight * (response?[k] ?? 1))];
}
