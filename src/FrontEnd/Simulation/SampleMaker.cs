using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Numbers;
using FrontEnd.Reporting;

namespace FrontEnd.Simulation;

/// <summary>Makes the samples of a <see cref="SampleRun"/> one after the other.</summary>
internal sealed class SampleMaker
{
    /// <summary>Samples of a channel at a time.</summary>
    public const int Most = 4096;

    /// <summary>Values between samples where nothing clips: enough for shapes that are smooth within a sample.</summary>
    private const int FewSteps = 4;

    /// <summary>With so many the steps show the budget's eight zones on either side.</summary>
    private const int ManySteps = (2 * FoldedNoise.Zones) + 1;

    private readonly SampleRun _run;
    private readonly Design _design;
    private readonly int _channels;
    private readonly SampleBlock _block;
    private readonly double[][] _rows;
    private readonly HeadSource _head;
    private readonly ChannelSteps[]? _steps;
    private readonly ColouredNoise _atSamples;
    private readonly PathNoise? _pathNoise;
    private readonly MainsWave? _mains;
    private readonly double[][] _mainsRows;
    private readonly FilterRunner[] _filters;
    private readonly ClipWatch _clips;

    public SampleMaker(SampleRun run)
    {
        (_run, _design, _channels) = (run, run.Design, run.Design.Channels);
        _block = new SampleBlock(_channels, Most);
        _rows = [.. _block.Steps];
        _mainsRows = [.. run.Kinds.Select(_ => new double[Most])];
        _filters = [.. Enumerable.Range(0, _channels).Select(channel => new FilterRunner(run.Kinds[run.KindOf[channel]].Digital))];
        _clips = new ClipWatch(run);
        PathDensities[] densities = Densities(run);
        int steps = run.IsStepByStep ? ManySteps : FewSteps;
        if (run.IsStepByStep)
        {
            _atSamples = LateNoise(run, densities);
            _head = new HeadSource(run, steps, null);
            _steps = [.. Enumerable.Range(0, _channels).Select(channel => new ChannelSteps(run, channel, steps, _clips))];
            _pathNoise = new PathNoise(run, densities, steps);
        }
        else
        {
            (_atSamples, double[][] responses) = NoiseAtSamples(run, densities);
            _head = new HeadSource(run, steps, responses);
            _mains = run.LeftOut.Hum ? null : new MainsWave(_design, [.. run.Kinds.Select(MainsAtSamples)], run.Wish.Seed);
            _steps = 0 < run.Head.Shapes.Count ? [.. Enumerable.Range(0, _channels).Select(channel => new ChannelSteps(run, channel, steps, null))] : null;
        }

        Settle();
    }

    /// <summary>The next samples, filtered.</summary>
    public SampleBlock Next(long first, int count)
    {
        Fill(first, count);
        (_block.First, _block.Length) = (first, count);
        InParallel.For(_channels, null, channel => _filters[channel].Run(_rows[channel].AsSpan(0, count)));
        _block.Found = _clips.Found(first, count, isLast: first + count == _run.Count);
        return _block;
    }

    /// <summary>The converter's steps, before the digital filters.</summary>
    private void Fill(long first, int count)
    {
        foreach (double[] row in _rows)
        {
            Array.Clear(row, 0, count);
        }

        double period = 1 / _run.Rate.Hertz;
        if (_run.IsStepByStep)
        {
            double[][] sites = _head.Steps(first, count);
            double[][][] noise = _pathNoise!.Next(count);
            InParallel.For(_channels, null, channel => _steps![channel].AddTo(first, count, sites[channel], noise, _rows[channel]));
        }
        else
        {
            foreach (double[] row in _mainsRows)
            {
                Array.Clear(row, 0, count);
            }

            _mains?.AddTo(first * period, period, count, _mainsRows);
            _head.AddTo(_rows, first, count);
            double[][]? sites = _steps is null ? null : _head.Steps(first, count);
            InParallel.For(_channels, null, channel =>
            {
                _steps?[channel].AddTo(first, count, sites![channel], null, _rows[channel]);
                double[] row = _rows[channel], mains = _mainsRows[_run.KindOf[channel]];
                for (int i = 0; i < count; i++)
                {
                    row[i] += mains[i];
                }
            });
        }

        _atSamples.AddTo(_rows, count);
        Convert(first, count);
    }

    /// <summary>Volts at the converter's pin to its steps.</summary>
    private void Convert(long first, int count)
    {
        AnalogDigitalConverter converter = _design.Converter;
        double perStep = 1 / converter.LsbVolts, swing = Math.Min(converter.FullScale.Volts / 2, Math.Max(0, ConverterSupply.Swing(converter, _design.Supply.Lowest).Volts));
        double highest = Math.Max(0, Math.Floor((swing * perStep) + 1e-9) - 1), lowest = -Math.Floor((swing * perStep) + 1e-9);
        bool rounds = !_run.LeftOut.Rounding;
        for (int channel = 0; channel < _channels; channel++)
        {
            double[] row = _rows[channel];
            for (int i = 0; i < count; i++)
            {
                double steps = row[i] * perStep, whole = rounds ? Math.Round(steps, MidpointRounding.AwayFromZero) : steps;
                row[i] = Math.Clamp(whole, lowest, highest);
                if (whole < lowest || highest < whole)
                {
                    _clips.Saw(channel, NodeId.Converter, first + i);
                }
            }
        }
    }

    /// <summary>Lets the digital filters run until what they began with has died away, on noise and mains before the first sample.</summary>
    private void Settle()
    {
        long samples = FilterSettling.Samples(_run);
        for (long left = samples; 0 < left; left -= Most)
        {
            int count = (int)Math.Min(Most, left);
            Fill(-left, count);
            for (int channel = 0; channel < _channels; channel++)
            {
                _filters[channel].Run(_rows[channel].AsSpan(0, count));
            }
        }

        _clips.Forget();
    }

    private static PathDensities[] Densities(SampleRun run)
    {
        var all = new PathDensities[run.Kinds.Count];
        for (int kind = 0; kind < all.Length; kind++)
        {
            all[kind] = new PathDensities(run.Kinds[kind].Path, 0 < kind ? all[0].Path : null, run.LeftOut.Weights, !run.LeftOut.Folds, !run.LeftOut.ConverterNoise);
        }

        return all;
    }

    /// <summary>Samples of a block: so many that what lies below 1/T of a block is no part of the band (50 periods of its lower edge), as far as memory
    /// allows.</summary>
    internal static int BlockLength(SampleRun run, double rate)
    {
        const int least = 1 << 13, most = 1 << 19;
        double channels = Math.Max(1, run.Design.Channels / 8.0);
        return ColouredNoise.LengthOf(50 * rate / run.Design.Band.Low.Hertz, least, (int)(most / System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Ceiling(channels))));
    }

    private static (ColouredNoise Noise, double[][] Responses) NoiseAtSamples(SampleRun run, PathDensities[] densities)
    {
        int length = BlockLength(run, run.Rate.Hertz);
        var kinds = densities.Select(one => one.AtSamples(length)).ToArray();
        var whole = kinds.Select(kind => Added(kind.Own, kind.Shared)).ToArray();
        NoiseColour[] colours = [.. run.KindOf.Select((kind, channel) =>
            run.HasOwnReference(channel) ? new NoiseColour(whole[kind], [null]) : new NoiseColour(kinds[kind].Own, [kinds[kind].Shared]))];
        return (new ColouredNoise(length, run.Rate.Hertz, colours, ["reference"], run.Wish.Seed, "noise"), [.. kinds.Select(kind => kind.Response)]);
    }

    private static ColouredNoise LateNoise(SampleRun run, PathDensities[] densities)
    {
        const int length = 1 << 12;
        var kinds = densities.Select(one => one.Late(length)).ToArray();
        return new ColouredNoise(length, run.Rate.Hertz, [.. run.KindOf.Select(kind => new NoiseColour(kinds[kind], []))], [], run.Wish.Seed, "converter");
    }

    /// <summary>√(a² + b²).</summary>
    internal static double[] Added(double[] first, double[] second) => [.. first.Zip(second, (a, b) => Math.Sqrt((a * a) + (b * b)))];

    private static double[][] MainsAtSamples(ChannelBudgets kind) => MainsWave.Peaks(kind, open: false, (hertz, atInput) =>
    {
        kind.Path.SweepTransfer([hertz]);
        return atInput.Total * kind.Path.Size(kind.Path.Nodes - 1, 0) * kind.Design.Converter.Response(hertz);
    });
}
