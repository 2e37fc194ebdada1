using System.Numerics;

namespace FrontEnd.Tests.Plain;

internal sealed partial class PlainFigures
{
    private sealed record Level(string Node, double Swing, double OffsetReach, double OtherDirect, double SignalReach, double Mains, double Noise)
    {
        public double Direct(double offset) => (OffsetReach * offset) + OtherDirect;
    }

    private double HalfRail
    {
        get
        {
            double lowest = _design.Supply.Lowest.Volts, middle = _design.Supply.MidRail?.Volts ?? (lowest / 2);
            return Math.Min(middle, lowest - middle);
        }
    }

    /// <summary>Half of what the converter takes, its supply counted.</summary>
    private double ConverterSwing => Math.Min(_design.Converter.FullScale.Volts, ConverterMost) / 2;

    /// <summary>The largest full scale that the supply carries: once it for a single-ended input, twice for a differential one.</summary>
    private double ConverterMost => _design.Supply.Lowest.Volts * (IsDeltaSigma ? 2 : 1);

    private void Levels()
    {
        PlainInput direct = new(_design, new PlainSigns(1, 1, 1), direct: true);
        PlainSolution dc = direct.Circuit.At(0);
        Complex gain = _design.Amplifier.Gain;
        double[] Of(Complex[] unknowns) => BySize(_path.AtInput(dc, unknowns, gain));
        double bias = Math.Abs(_design.Amplifier.BiasCurrent.Amperes);
        Complex[] a = dc.OfCurrent("A2", "C"), r = dc.OfCurrent("R2", "C");
        Complex[] alike = [.. a.Zip(r, (x, y) => x + (_design.EffectiveReferenceInputs * y))];
        double[] offset = Of(dc.OfSource(direct.Signal)), own = [.. Of(alike).Select(x => x * bias)];
        double biasOffset = bias * (dc.Volts(alike, "A2") - dc.Volts(alike, "R2")).Magnitude;
        double driveOwn = direct.Drive < 0 ? 0 : bias * dc.Volts(alike, "D").Magnitude;
        foreach ((double size, bool isCurrent, Func<PlainSolution, Complex[]> answer) in direct.BufferErrors)
        {
            Complex[] x = answer(dc);
            own = [.. own.Zip(Of(x), (sum, one) => sum + (size * one))];
            biasOffset += (isCurrent ? size : 0) * (dc.Volts(x, "A2") - dc.Volts(x, "R2")).Magnitude;
            driveOwn += direct.Drive < 0 ? 0 : size * dc.Volts(x, "D").Magnitude;
        }

        _figures["input.bias_offset"] = biasOffset;
        InputImpedance();
        Level[] levels = [.. LevelsOf(offset, own, direct, dc, driveOwn)];
        double signal = _design.LargestSignal.Volts, offsetVolts = Math.Abs(_design.Electrodes.Offset.Volts);
        double least = double.PositiveInfinity, survived = double.PositiveInfinity, largest = double.PositiveInfinity;
        foreach (Level level in levels)
        {
            double rest = level.Mains + level.Noise, all = level.Direct(offsetVolts) + (level.SignalReach * signal) + rest;
            double headroom = Decibels(level.Swing / all);
            _figures[$"levels.{level.Node}.headroom"] = headroom;
            least = Math.Min(least, headroom);
            if (0 < level.OffsetReach)
            {
                survived = Math.Min(survived, Math.Max(0, (level.Swing - level.OtherDirect - (level.SignalReach * signal) - rest) / level.OffsetReach));
            }

            largest = Math.Min(largest, Math.Max(0, (level.Swing - level.Direct(offsetVolts) - rest) / level.SignalReach));
        }

        _figures["levels.least_headroom"] = least;
        _figures["levels.offset_survived"] = survived;
        _figures["levels.largest_signal"] = largest;
        _figures["converter.fits_supply"] = _design.Converter.FullScale.Volts <= ConverterMost ? "yes" : "no:";
    }

    private IEnumerable<Level> LevelsOf(double[] offset, double[] own, PlainInput direct, PlainSolution dc, double driveOwn)
    {
        int buffers = _path.Amplifiers - 2;
        double g = _design.Amplifier.Gain, vos = Math.Abs(_design.Amplifier.OffsetVoltage.Volts);
        double[] signal = SignalAtNodes(), mains = MainsAtNodes(), noise = NoiseAtNodes();
        for (int i = 0; i < buffers; i++)
        {
            double margin = (_path.Nodes[i] == "buffer-active" ? _design.Electrodes.ActiveBuffer : _design.Electrodes.ReferenceBuffer)!.OpAmp.OutputMargin.Volts;
            yield return new Level(_path.Nodes[i], HalfRail - margin, offset[i], own[i], signal[i], mains[i], noise[i]);
        }

        for (int i = buffers; i < buffers + 2; i++)
        {
            double half = 0.5 + (signal[buffers + 2] / 2);
            yield return new Level(_path.Nodes[i], HalfRail - _design.Amplifier.InnerMargin.Volts, offset[i], own[i] + (vos * g / 2), half, mains[i], noise[buffers + 2] / 2);
        }

        int node = buffers + 2;
        double reach = offset[node], other = own[node] + (vos * g);
        yield return new Level("amplifier", HalfRail - _design.Amplifier.OutputMargin.Volts, reach, other, signal[node], mains[node], noise[node]);
        foreach (PlainStage stage in _path.Stages)
        {
            foreach ((string name, string at) in stage.Inner)
            {
                (double inside, double errors) = stage.Direct(at);
                node++;
                yield return new Level($"{stage.Id}-{name}", HalfRail - stage.OpAmp!.OutputMargin.Volts, reach * Math.Abs(inside), (other * Math.Abs(inside)) + errors, signal[node], mains[node], noise[node]);
            }

            (double gain, double more) = stage.Direct();
            reach *= Math.Abs(gain);
            other = (other * Math.Abs(gain)) + more;
            node++;
            if (stage.OpAmp is { } opAmp)
            {
                yield return new Level(stage.Id, HalfRail - opAmp.OutputMargin.Volts, reach, other, signal[node], mains[node], noise[node]);
            }
        }

        yield return new Level("converter", ConverterSwing, reach, other, signal[node], mains[node], noise[node]);
        _directAtConverter = (reach * Math.Abs(_design.Electrodes.Offset.Volts)) + other;
        if (0 <= direct.Drive)
        {
            double driven = dc.Volts(dc.OfSource(direct.Signal), "D").Magnitude;
            yield return new Level("drive", HalfRail - _design.GroundDrive.OutputMargin.Volts, driven, driveOwn, 0.5, MainsAtDrive(), 0);
        }
    }

    private double _directAtConverter;

    /// <summary>Sizes at the input's nodes; at the amplifier's inner nodes V_cm and G·V_d/2 each by size, so that the two are one statement.</summary>
    private static double[] BySize(Complex[] atInput)
    {
        double mean = ((atInput[^3] + atInput[^2]) / 2).Magnitude, half = atInput[^1].Magnitude / 2;
        return [.. atInput.Select((z, i) => i == atInput.Length - 3 || i == atInput.Length - 2 ? mean + half : z.Magnitude)];
    }

    private double[] MainsAtNodes()
    {
        double[] sum = new double[_path.Nodes.Length];
        int amplifier = _path.Amplifiers;
        for (int h = 1; h <= Harmonics; h++)
        {
            double hertz = h * _design.Mains.Frequency.Hertz;
            PlainSolution s = _mainsInput!.At(hertz);
            double[] atInput = BySize(_path.AtInput(s, s.OfSource(_mainsInput.Mains), _design.Amplifier.Gain));
            PlainPoint point = _path.At(hertz);
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] += Math.Sqrt(2) * (i < amplifier ? Volts(h) * atInput[i] : _harmonicInput[h] * point.Transfer[i].Magnitude);
            }
        }

        return sum;
    }

    /// <summary>The greatest transfer in the band: a signal's peak may lie anywhere in it.</summary>
    private double[] SignalAtNodes()
    {
        const int Points = 300;
        double step = Math.Pow(_f2 / _f1, 1.0 / Points);
        double[] most = new double[_path.Nodes.Length], at = new double[most.Length];
        void Look(double hertz)
        {
            PlainPoint point = _path.At(Math.Clamp(hertz, _f1, _f2));
            for (int k = 0; k < most.Length; k++)
            {
                (most[k], at[k]) = most[k] < point.Transfer[k].Magnitude ? (point.Transfer[k].Magnitude, hertz) : (most[k], at[k]);
            }
        }

        for (int i = 0; i <= Points; i++)
        {
            Look(_f1 * Math.Pow(step, i));
        }

        // About each node's loudest point in steps of half the length each time.
        for (int i = 0; i < 10; i++)
        {
            step = Math.Sqrt(step);
            foreach (double centre in at.Distinct().ToArray())
            {
                Look(centre * step);
                Look(centre / step);
            }
        }

        return most;
    }

    private double[] NoiseAtNodes() => [.. PlainQuadrature.Over(f => _path.At(f).Nodes, 0.01, _fs / 2, []).Select(v => 3.3 * Math.Sqrt(v))];

    /// <summary>One input to common at the mains frequency: the active electrode's buffer, or bias resistor, shunt capacitor, lead and amplifier.</summary>
    private void InputImpedance()
    {
        double w = 2 * Math.PI * _design.Mains.Frequency.Hertz;
        if (_design.Electrodes.ActiveBuffer is { } buffer)
        {
            _figures["input.impedance_at_mains"] = (1 / new Complex(1 / buffer.InputResistance.Ohms, w * buffer.InputCapacitance.Farads)).Magnitude;
            return;
        }

        Amplifier.DifferentialAmplifier a = _design.Amplifier;
        double siemens = (1 / a.CommonModeResistance.Ohms) + (_design.Input.BiasResistor is { } bias ? 1 / bias.Ohms : 0);
        double farads = _design.Input.ShuntCapacitor.Farads + a.CommonModeCapacitance.Farads + (_design.Input.LeadToCommon.Farads * (1 - _design.Input.DrivenShield.Fraction));
        _figures["input.impedance_at_mains"] = (1 / new Complex(siemens, w * farads)).Magnitude;
    }
}
