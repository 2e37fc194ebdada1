using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Topologies;

namespace FrontEnd.Simulation;

/// <summary>One channel's amplifier and stages, step by step, with a limiter behind each where limits count.</summary>
/// <remarks>The input network acts by its size in the middle of the band, on offsets by its size at dc; amplifier and stages are linear in time with real
/// op-amps, as for recovery.</remarks>
internal sealed class ChannelSteps
{
    private readonly SampleRun _run;
    private readonly int _channel, _steps;
    private readonly BlockSteps[] _blocks;
    private readonly Limiter[]? _limiters;
    private readonly Limiter[] _buffers;
    private readonly SampleSteps _sampler;
    private readonly ClipWatch? _clips;
    private readonly MainsWave? _mains, _open;
    private readonly double _front, _offsetFront, _openInput;
    private readonly double[] _wave, _openWave;
    private readonly HeadActivity.Shape[] _offsets;
    private readonly Pulses? _off;

    /// <param name="run">The run.</param>
    /// <param name="channel">Which channel.</param>
    /// <param name="steps">Values a sample.</param>
    /// <param name="clips">Told what clips; null where nothing is limited, and mains and noise come in elsewhere.</param>
    public ChannelSteps(SampleRun run, int channel, int steps, ClipWatch? clips)
    {
        (_run, _channel, _steps, _clips) = (run, channel, steps, clips);
        ChannelBudgets kind = run.Kinds[run.KindOf[channel]];
        Design design = kind.Design;
        double seconds = 1 / (run.Rate.Hertz * steps);
        _blocks =
        [
            new BlockSteps(StateSpace.LowPass(design.Amplifier.Gain, design.Amplifier.Bandwidth.Hertz), seconds),
            .. kind.Path.Model.Stages.Select(stage => new BlockSteps(StateSpace.Of(stage.Circuit), seconds)),
        ];
        AnalogDigitalConverter converter = design.Converter;
        _sampler = new SampleSteps(steps, converter.Kind == ConverterKind.DeltaSigma ? converter.SincOrder : 0);
        kind.Path.SweepTransfer([kind.CentreHertz]);
        _front = Math.Sqrt((kind.Path.FrontRe[0] * kind.Path.FrontRe[0]) + (kind.Path.FrontIm[0] * kind.Path.FrontIm[0]));
        _offsetFront = Math.Abs(kind.Levels.Direct.Difference.Offset[0]);
        _offsets = [.. run.Head.Shapes.Where(shape => shape.IsOffset)];
        (_wave, _openWave, _buffers) = ([], [], []);
        if (clips is null)
        {
            return;
        }

        _wave = new double[SampleMaker.Most * steps];
        _limiters = [.. Limiters(kind)];
        _buffers = [.. kind.Levels.Nodes.Where(node => node.Node == NodeId.ActiveBuffer || node.Node == NodeId.ReferenceBuffer)
            .Select(node => new Limiter(node.Node, Math.Max(0, node.Swing - node.Mains - node.OtherDc) / Math.Max(1e-12, node.SignalGain)))];
        _mains = run.LeftOut.Hum ? null : new MainsWave(design, [MainsWave.Peaks(kind, open: false, (hertz, atInput) => AtAmplifier(kind, hertz, atInput))], run.Wish.Seed);
        if (run.Head.Off is not null && channel == 0)
        {
            _openWave = new double[_wave.Length];
            _open = run.LeftOut.Hum ? null : new MainsWave(design, [MainsWave.Peaks(kind, open: true, (_, atInput) => atInput.Difference)], run.Wish.Seed);
            _openInput = new OpenElectrode(design, kind.Path, kind.Mains, OpenElectrode.Gains(kind.Path, kind.Mains), Lead.Active).InputDc;
            _off = run.Head.Off;
        }
    }

    /// <summary>Adds what comes to the converter's pin at each sample [V].</summary>
    /// <param name="first">Number of the first sample.</param>
    /// <param name="sites">Signals at the electrodes, from step to step.</param>
    /// <param name="noise">Of each channel and block; null for none.</param>
    /// <param name="row">The samples.</param>
    public void AddTo(long first, int count, double[] sites, double[][][]? noise, double[] row)
    {
        double step = 1 / (_run.Rate.Hertz * _steps), start = (first / _run.Rate.Hertz) - ((_steps - 1) * step);
        Array.Clear(_wave);
        Array.Clear(_openWave);
        _mains?.AddTo(start, step, count * _steps, [_wave]);
        _open?.AddTo(start, step, count * _steps, [_openWave]);
        for (int i = 0, at = 0; i < count; i++)
        {
            for (int j = 0; j < _steps; j++, at++)
            {
                _sampler.Put(Through(Input(start + (at * step), at, sites[at]), at, noise?[_channel]));
            }

            row[i] += _sampler.Sample();
            Tell(first + i);
        }
    }

    /// <summary>Difference of the amplifier's inputs [V].</summary>
    private double Input(double time, int at, double site)
    {
        if (_off?.At(time) > 0)
        {
            return _openInput + _openWave[at];
        }

        double offset = 0;
        foreach (HeadActivity.Shape shape in _offsets)
        {
            offset += shape.Volts * shape.Pulses.At(time);
        }

        double volts = (_front * site) + (_offsetFront * offset);
        foreach (Limiter buffer in _buffers)
        {
            volts = _front == 0 ? volts : _front * buffer.Pass(volts / _front);
        }

        return volts + (_wave.Length == 0 ? 0 : _wave[at]);
    }

    private double Through(double volts, int at, double[][]? noise)
    {
        for (int block = 0; block < _blocks.Length; block++)
        {
            volts = _blocks[block].Next(volts) + (noise is null ? 0 : noise[block][at]);
            volts = _limiters is null ? volts : _limiters[block].Pass(volts);
        }

        return volts;
    }

    private void Tell(long sample)
    {
        if (_clips is null)
        {
            return;
        }

        foreach (Limiter limiter in _limiters!.Concat(_buffers))
        {
            if (limiter.HasActed)
            {
                limiter.HasActed = false;
                _clips.Saw(_channel, limiter.Node, sample);
            }
        }
    }

    /// <summary>The mains' difference at the amplifier's inputs that the budget's worst case stands for [V rms].</summary>
    private static double AtAmplifier(ChannelBudgets kind, double hertz, MainsAtInput atInput)
    {
        kind.Path.SweepTransfer([hertz]);
        return atInput.Total * Math.Sqrt((kind.Path.FrontRe[0] * kind.Path.FrontRe[0]) + (kind.Path.FrontIm[0] * kind.Path.FrontIm[0]));
    }

    /// <summary>As for recovery: behind the amplifier the least of its output's and of what both inner nodes leave beside the common mode.</summary>
    private IEnumerable<Limiter> Limiters(ChannelBudgets kind)
    {
        Design design = kind.Design;
        double common = (Math.Abs(kind.Levels.Direct.Mean.Offset[0]) * _run.Head.OffsetVolts)
            + (_run.LeftOut.Hum ? 0 : Math.Sqrt(2) * kind.Mains.Harmonics.Sum(harmonic => harmonic.AtInput.CommonMode));
        double output = NodeSwing.Amplifier(design), inner = 2 * (NodeSwing.AmplifierInner(design) - common);
        yield return new Limiter(inner < output ? NodeId.AmplifierInnerPlus : NodeId.Amplifier, Math.Max(0, Math.Min(output, inner)));
        foreach (StageModel one in kind.Path.Model.Stages)
        {
            yield return new Limiter(NodeId.Of(one.Stage.Name), one.Stage.FittedOpAmp is null ? double.PositiveInfinity : Math.Max(0, NodeSwing.Of(design, one.Stage)));
        }
    }
}
