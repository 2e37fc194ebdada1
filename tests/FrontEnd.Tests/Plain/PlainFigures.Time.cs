using System.Numerics;

namespace FrontEnd.Tests.Plain;

internal sealed partial class PlainFigures
{
    /// <summary>What the recorded value may be off by and still count as recovered, at the electrodes [V].</summary>
    private const double Recovered = 10e-6;

    private void StagesAlone()
    {
        List<PlainResponse> ideal = [];
        for (int i = 0; i < _path.Stages.Length; i++)
        {
            PlainStage stage = _path.Stages[i];
            _figures[$"filter.{stage.Id}.minus_3db"] = HalfPower(stage);
            ideal.Add(PlainResponse.Of(new PlainStage(_design.Stages[i], _design.BoardTemperature.Kelvins, ideal: true)));
            if (ideal[i].Settling() is { } settling)
            {
                _figures[$"filter.{stage.Id}.settling"] = settling;
            }
        }

        // The path: the stages, whose settling the amplifier is too fast to show in.
        if (PlainResponse.Chain(ideal).Settling() is { } whole)
        {
            _figures["filter.path.settling"] = whole;
        }
    }

    /// <summary>The first frequency above mid-band at which half the power of mid-band is left.</summary>
    private double HalfPower(PlainStage stage)
    {
        double wanted = stage.Transfer(_mid).Magnitude / Math.Sqrt(2), low = _mid, high = _mid;
        while (wanted < stage.Transfer(high).Magnitude && high < 1e10)
        {
            (low, high) = (high, high * 1.05);
        }

        for (int i = 0; i < 60; i++)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = wanted < stage.Transfer(middle).Magnitude ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>A step of the electrodes' offset through the path with a limiter at each node, sampled and filtered.</summary>
    private void Recovery()
    {
        double volts = _design.Electrodes.Offset.Volts == 0 ? _design.Requirements.Offset.Volts : Math.Abs(_design.Electrodes.Offset.Volts);
        PlainInput direct = new(_design, new PlainSigns(1, 1, 1), direct: true);
        PlainSolution dc = direct.Circuit.At(0);
        Complex[] x = dc.OfSource(direct.Signal);
        double plus = dc.Volts(x, "A2").Real * volts, minus = dc.Volts(x, "R2").Real * volts;
        double gain = _design.Amplifier.Gain, input = plus - minus, inner = HalfRail - _design.Amplifier.InnerMargin.Volts;
        List<double> swings = [Math.Min(HalfRail - _design.Amplifier.OutputMargin.Volts, 2 * Math.Max(0, inner - Math.Abs((plus + minus) / 2)))];
        List<PlainResponse> blocks = [PlainResponse.Of([new Complex(-2 * Math.PI * _design.Amplifier.Bandwidth.Hertz, 0)], s => gain / (1 + (s / (2 * Math.PI * _design.Amplifier.Bandwidth.Hertz))))];
        foreach (PlainStage stage in _path.Stages)
        {
            blocks.Add(PlainResponse.Of(stage));
            swings.Add(stage.OpAmp is { } opAmp ? HalfRail - opAmp.OutputMargin.Volts : double.PositiveInfinity);
        }

        // Where everything has come to rest: what then lies at a limit never recovers.
        double final = input;
        for (int i = 0; i <= blocks.Count; i++)
        {
            final *= i < blocks.Count ? blocks[i].At(0).Real : 1;
            if ((i < blocks.Count ? swings[i] : ConverterSwing) < Math.Abs(final))
            {
                _figures["levels.recovery"] = "unbounded";
                return;
            }
        }

        final *= Digital(0).Real / _gainMid;
        _figures["levels.recovery"] = RecoveryOf(input, blocks, swings, final);
    }

    private double RecoveryOf(double input, List<PlainResponse> blocks, List<double> swings, double final)
    {
        // The amplifier moves within microseconds: the first hundredth of a second goes in fine steps.
        int coarse = Math.Max(1, (int)Math.Ceiling(4000 / _fs)), fine = (int)Math.Ceiling(400e3 / _fs);
        double slowest = Math.Max(blocks.SelectMany(b => b.Poles).Max(p => -1 / p.Real), _digital.Select(d => d.Slowest).DefaultIfEmpty(0).Max());
        double start = 2 * Math.PI * _design.Amplifier.Bandwidth.Hertz;
        Func<double, bool, double>[] stages = [.. blocks.Skip(1).Select(b => b.Run(1 / (_fs * coarse), 1 / (_fs * fine)))];
        Func<double, double>[] filters = [.. _digital.Select(d => d.Run())];
        long samples = (long)Math.Ceiling(_fs * 25 * slowest) + 10, last = -1, first = (long)Math.Ceiling(0.01 * _fs);
        for (long k = 0; k <= samples; k++)
        {
            // The first sample is at 0+, where the amplifier has not moved.
            double v = 0;
            bool isFine = k <= first;
            int between = k == 0 ? 0 : isFine ? fine : coarse;
            for (int i = 1; i <= between; i++)
            {
                double seconds = (k - 1 + ((double)i / between)) / _fs;
                v = Math.Clamp(input * _design.Amplifier.Gain * (1 - Math.Exp(-start * seconds)), -swings[0], swings[0]);
                for (int n = 0; n < stages.Length; n++)
                {
                    v = Math.Clamp(stages[n](v, isFine), -swings[n + 1], swings[n + 1]);
                }
            }

            v = filters.Aggregate(Math.Clamp(v, -ConverterSwing, ConverterSwing), (value, filter) => filter(value));
            last = Recovered < Math.Abs((v / _gainMid) - final) ? k : last;
        }

        return last < 0 ? 0 : last / _fs;
    }
}
