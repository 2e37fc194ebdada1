using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.AntiAlias;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Networks;

namespace FrontEnd.Spread;

/// <summary>Works out the figures of a group of builds at once: a lane is a build. One to a thread.</summary>
internal sealed class SpreadKernel
{
    /// <summary>Figures in the order of <see cref="Ids"/>.</summary>
    public const int GainMid = 0, NoiseTotal = 1, MainsTotal = 2, SystemCmrr = 3, Recorded = 4, Offset = 5, PhaseMargin = 6, Fold = 7;

    public static readonly string[] Ids =
        ["gain.mid", "noise.total", "mains.total", "mains.system_cmrr", "mains.recorded", "levels.offset_survived", "drive.phase_margin", "alias.fold_attenuation"];

    /// <summary>ω at which the network counts as being at dc: the largest strays are then 1e-15 S, far below every leak.</summary>
    private const double DcOmega = 1e-9;

    private static readonly int Width = Vector<double>.Count;

    private readonly SpreadSetup _setup;
    private readonly Design _design;
    private readonly PartList _parts;
    private readonly InputModel _input;
    private readonly NetworkSweep _inputSweep;
    private readonly ElectrodeLanes _electrodes;
    private readonly NetworkSweep[] _stageSweeps;
    private readonly IReadOnlyList<StageModel> _stages;
    private readonly int[] _noisePart;
    private readonly int[][] _stageResistorPart;
    private readonly Vector<double>[] _nodeGain;
    private readonly Vector<double>[] _nodePeak;
    private readonly double[] _one = new double[Vector<double>.Count];
    private readonly double[] _factor;
    private readonly int _dcNodes;
    private Vector<double> _pathRe;
    private Vector<double> _pathIm;
    private Vector<double> _frontSize;

    public SpreadKernel(SpreadSetup setup)
    {
        _setup = setup;
        _design = setup.Design;
        _parts = setup.Parts;
        _input = setup.Nominal.Path.Input;
        _inputSweep = _input.Program.CreateSweep(Width);
        _electrodes = new ElectrodeLanes(_inputSweep.Capacity);
        _stages = setup.Nominal.Path.Stages;
        _stageSweeps = [.. _stages.Select(stage => stage.Program.CreateSweep(Width))];
        _nodeGain = new Vector<double>[_stages.Count + 1];
        _nodePeak = new Vector<double>[_stages.Count + 1];
        _nodeSize = new Vector<double>[_stages.Count + 1];
        _factor = new double[_parts.Parts.Count];
        Array.Fill(_one, 1);
        IReadOnlyList<NoiseSource> sources = setup.Nominal.Path.Sources;
        _noisePart = [.. setup.Nominal.Path.InputNoises.Select(noise => PartOf(sources[noise.Source].Name, noise.Port))];
        _stageResistorPart = [.. _stages.Select(stage => new int[stage.Resistors.Count])];
        for (int i = 0; i < _stages.Count; i++)
        {
            foreach ((string part, int _, int resistor) in _stages[i].Parts.Where(part => 0 <= part.Resistor))
            {
                _stageResistorPart[i][resistor] = _parts.StageParts.First(p => p.Stage == i && p.Part == part).Index;
            }
        }

        // Behind a stage that stops dc the offset plays no part, and neither does the mains for the offset that is survived.
        while (_dcNodes < _stages.Count && LevelsBudget.StageDc(_stages[_dcNodes].Stage).Gain != 0)
        {
            _dcNodes++;
        }
    }

    /// <summary>Fills figures[id][first … first + width − 1] from factors[part][…].</summary>
    public void Evaluate(double[][] factors, double[][] figures, int first)
    {
        Vector<double> F(int part) => part < 0 ? Vector<double>.One : new Vector<double>(factors[part], first);
        void Put(int figure, Vector<double> value) => value.CopyTo(figures[figure], first);

        Prepare(F);
        Array.Clear(_nodeGain);
        Array.Clear(_nodePeak);
        ReadOnlySpan<double> active = factors[_parts.ActiveElectrode].AsSpan(first, Width), reference = factors[_parts.ReferenceElectrode].AsSpan(first, Width);
        ReadOnlySpan<double> ground = _parts.GroundElectrode < 0 ? _one : factors[_parts.GroundElectrode].AsSpan(first, Width);
        Vector<double> gain = F(_parts.Gain) * _design.Amplifier.Gain, noise = F(_parts.Noise), power = new(_setup.ConverterPower), mid = default, fold = default;
        Vector<double> lowest = default;
        AnalogDigitalConverter converter = _design.Converter;
        for (int i = 0; i < SpreadSetup.BandPoints; i++)
        {
            double hertz = _setup.BandHertz[i];
            Front(hertz, active, reference, ground);
            Vector<double> atAmplifier = InputDensity(hertz, F, gain, noise);
            lowest = i == 0 ? atAmplifier : lowest;
            power += Stages(hertz, gain, atAmplifier, F) * _setup.BandWeights[i];
            for (int node = 0; node <= _stages.Count; node++)
            {
                _nodeGain[node] = Vector.Max(_nodeGain[node], _nodeSize[node]);
            }

            if (i == SpreadSetup.BandPoints / 2)
            {
                mid = PathSize() * converter.Response(hertz);
            }
        }

        for (int i = 0; i < SpreadSetup.FoldPoints; i++)
        {
            double hertz = _setup.FoldHertz[i];
            Front(hertz, active, reference, ground);
            power += Stages(hertz, gain, InputDensity(hertz, F, gain, noise), F) * _setup.FoldWeights[i];
            if (i == 0)
            {
                fold = PathSize() * converter.Response(hertz);
            }
        }

        Put(GainMid, mid);
        Put(NoiseTotal, Vector.SquareRoot(power) / mid);
        Put(Fold, Decibel(mid / fold));
        MainsFigures(F, Put, active, reference, ground, gain, mid, out Vector<double> commonPeak, out Vector<double> differencePeak, out Vector<double> drivePeak);
        OffsetFigure(factors, figures, first, F, active, reference, ground, commonPeak, differencePeak, drivePeak, lowest);
        Margin(F, figures, first);
    }

    private static Vector<double> Decibel(Vector<double> ratio) => Vector.Log(ratio) * (20 / Math.Log(10));

    private int PartOf(string source, int port) => source switch
    {
        "protection resistors" => port == _input.ActiveResistorPort ? _parts.ActiveResistor : _parts.ReferenceResistor,
        "bias resistors" => port == _input.ActiveInputPort ? _parts.ActiveBias : _parts.ReferenceBias,
        "ground resistor" => _parts.GroundResistor,
        _ => -1,
    };

    /// <summary>Puts the group's parts into the networks.</summary>
    private void Prepare(Func<int, Vector<double>> f)
    {
        _inputSweep.BeginBuilds();
        Resistor(_input.ActiveResistorElement, _parts.ActiveResistor);
        Resistor(_input.ReferenceResistorElement, _parts.ReferenceResistor);
        Resistor(_input.ActiveBiasElement, _parts.ActiveBias);
        Resistor(_input.ReferenceBiasElement, _parts.ReferenceBias);
        Resistor(_input.GroundResistorElement, _parts.GroundResistor);
        Capacitor(_input.ActiveShuntElement, _parts.ActiveShunt);
        Capacitor(_input.ReferenceShuntElement, _parts.ReferenceShunt);
        Surroundings(f);
        for (int i = 0; i < _stageSweeps.Length; i++)
        {
            _stageSweeps[i].BeginBuilds();
        }

        foreach ((int stage, string part, int index) in _parts.StageParts)
        {
            foreach ((string name, int element, int resistor) in _stages[stage].Parts)
            {
                if (string.Equals(name, part, StringComparison.Ordinal))
                {
                    double value = _stages[stage].Program.Elements[element].Value;
                    _stageSweeps[stage].Vary(element, 0 <= resistor ? new Vector<double>(value) / f(index) : f(index) * value);
                }
            }
        }

        void Resistor(int element, int part)
        {
            if (0 <= element && 0 <= part)
            {
                _inputSweep.Vary(element, new Vector<double>(_input.Program.Elements[element].Value) / f(part));
            }
        }

        void Capacitor(int element, int part)
        {
            if (0 <= element && 0 <= part)
            {
                _inputSweep.Vary(element, f(part) * _input.Program.Elements[element].Value);
            }
        }
    }

    private void Surroundings(Func<int, Vector<double>> f)
    {
        Set(_input.BodyToMainsElement, f(_parts.BodyToMains));
        Set(_input.BodyToEarthElement, f(_parts.BodyToEarth));
        Set(_input.CommonToEarthElement, f(_parts.AmplifierToEarth));
        Set(_input.CommonToMainsElement, f(_parts.AmplifierToMains));
        Leads(f(_parts.LeadToMains));
    }

    private void Leads(Vector<double> factor)
    {
        Set(_input.ActiveLeadElement, factor);
        Set(_input.ReferenceLeadElement, factor);
    }

    private void Set(int element, Vector<double> factor) => _inputSweep.Vary(element, factor * _input.Program.Elements[element].Value);

    /// <summary>Factors the input network at a frequency and solves for the amplifier's difference.</summary>
    private void Front(double hertz, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground)
    {
        FactorInput(2 * Math.PI * hertz, active, reference, ground);
        Difference();
    }

    private void FactorInput(double omega, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground)
    {
        _inputSweep.Omega.Fill(omega);
        _input.SetElectrodes(_inputSweep, Width, active, reference, ground, _electrodes);
        _inputSweep.FactorBuilds(omega);
    }

    /// <summary>Adjoint for the difference; the path starts with H_front.</summary>
    private void Difference()
    {
        _inputSweep.AdjointBuilds(_input.Difference);
        (Vector<double> tr, Vector<double> ti) = _inputSweep.BuildTransfer(_input.SignalPort);
        Vector<double> yr = new(_inputSweep.SlotReal(_input.ActiveElectrode)), yi = new(_inputSweep.SlotImaginary(_input.ActiveElectrode));
        _pathRe = (yr * tr) - (yi * ti);
        _pathIm = (yr * ti) + (yi * tr);
        _frontSize = PathSize();
    }

    private Vector<double> PathSize() => Vector.SquareRoot((_pathRe * _pathRe) + (_pathIm * _pathIm));

    /// <summary>Noise density at the amplifier's output.</summary>
    private Vector<double> InputDensity(double hertz, Func<int, Vector<double>> f, Vector<double> gain, Vector<double> noiseFactor)
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        Vector<double> eni = noiseFactor * amplifier.InputNoise.VoltsPerRootHertz, eno = noiseFactor * amplifier.OutputNoise.VoltsPerRootHertz / gain;
        Vector<double> sum = ((eni * eni) + (eno * eno)) * (1 + (amplifier.NoiseCorner.Hertz / hertz));
        IReadOnlyList<SignalPath.InputNoise> noises = _setup.Nominal.Path.InputNoises;
        for (int i = 0; i < noises.Count; i++)
        {
            SignalPath.InputNoise noise = noises[i];
            (Vector<double> tr, Vector<double> ti) = _inputSweep.BuildTransfer(noise.Port);
            Vector<double> transfer = (tr * tr) + (ti * ti);
            if (noise.Kind == SignalPath.InputNoiseKind.Flicker)
            {
                Vector<double> level = new(noise.Level * (1 + (noise.Corner / hertz)));
                sum += transfer * (_noisePart[i] < 0 ? level : level / f(_noisePart[i]));
                continue;
            }

            int slot = noise.Electrode == 0 ? _input.ActiveElectrode : noise.Electrode == 1 ? _input.ReferenceElectrode : _input.GroundElectrode;
            double[] resistance = noise.Electrode == 0 ? _electrodes.Active : noise.Electrode == 1 ? _electrodes.Reference : _electrodes.Ground;
            Vector<double> yr = new(_inputSweep.SlotReal(slot)), yi = new(_inputSweep.SlotImaginary(slot));
            Vector<double> own = noise.Kind == SignalPath.InputNoiseKind.ElectrodeThermal ? new(resistance, 0) : new(LaneMath.InversePower(hertz, noise.Corner));
            sum += transfer * ((yr * yr) + (yi * yi)) * own * noise.Level;
        }

        double x = hertz / amplifier.Bandwidth.Hertz;
        return sum * gain * gain / new Vector<double>(1 + (x * x));
    }

    private readonly Vector<double>[] _nodeSize;

    /// <summary>Carries path and density from the amplifier's input through all stages; the density at the converter's pin.</summary>
    private Vector<double> Stages(double hertz, Vector<double> gain, Vector<double> density, Func<int, Vector<double>> f)
    {
        Amplify(hertz, gain);
        for (int i = 0; i < _stages.Count; i++)
        {
            StageModel stage = _stages[i];
            NetworkSweep sweep = PassStage(i, hertz, out Vector<double> power);
            density *= power;
            for (int r = 0; r < stage.Resistors.Count; r++)
            {
                (Vector<double> tr, Vector<double> ti) = sweep.BuildTransfer(stage.Resistors[r].Port);
                density += ((tr * tr) + (ti * ti)) * stage.Resistors[r].Density / f(_stageResistorPart[i][r]);
            }

            if (stage.OpAmp is not { } opAmp)
            {
                continue;
            }

            double current = opAmp.CurrentNoise.AmperesPerRootHertz, voltage = opAmp.VoltageNoise.VoltsPerRootHertz;
            foreach (int port in stage.CurrentPorts)
            {
                (Vector<double> tr, Vector<double> ti) = sweep.BuildTransfer(port);
                density += ((tr * tr) + (ti * ti)) * (current * current * (1 + (opAmp.CurrentNoiseCorner.Hertz / hertz)));
            }

            (Vector<double> vr, Vector<double> vi) = sweep.BuildTransfer(stage.VoltagePort);
            density += ((vr * vr) + (vi * vi)) * (voltage * voltage * (1 + (opAmp.NoiseCorner.Hertz / hertz)));
        }

        return density;
    }

    private void Amplify(double hertz, Vector<double> gain)
    {
        double x = hertz / _design.Amplifier.Bandwidth.Hertz;
        Vector<double> scale = gain / new Vector<double>(1 + (x * x));
        (_pathRe, _pathIm) = (scale * (_pathRe + (_pathIm * x)), scale * (_pathIm - (_pathRe * x)));
        _nodeSize[0] = PathSize();
    }

    private NetworkSweep PassStage(int i, double hertz, out Vector<double> power)
    {
        NetworkSweep sweep = _stageSweeps[i];
        sweep.FactorBuilds(2 * Math.PI * hertz);
        sweep.AdjointBuilds(0);
        (Vector<double> hr, Vector<double> hi) = sweep.BuildTransfer(_stages[i].SignalPort);
        (_pathRe, _pathIm) = ((_pathRe * hr) - (_pathIm * hi), (_pathRe * hi) + (_pathIm * hr));
        power = (hr * hr) + (hi * hi);
        _nodeSize[i + 1] = PathSize();
        return sweep;
    }

    /// <summary>|Σ currents of the mains' couplings × transfer| of the last adjoint solve per volt of mains and per ω, as a phasor.</summary>
    private (Vector<double> Re, Vector<double> Im) Coupled(Func<int, Vector<double>> f, bool leads)
    {
        Interference.Mains mains = _design.Mains;
        (Vector<double> br, Vector<double> bi) = _inputSweep.BuildTransfer(_input.BodyMainsPort);
        (Vector<double> cr, Vector<double> ci) = _inputSweep.BuildTransfer(_input.CommonMainsPort);
        Vector<double> body = f(_parts.BodyToMains) * mains.BodyToMains.Farads, common = f(_parts.AmplifierToMains) * mains.AmplifierToMains.Farads;
        Vector<double> re = (body * br) + (common * cr), im = (body * bi) + (common * ci);
        if (leads)
        {
            (Vector<double> ar, Vector<double> ai) = _inputSweep.BuildTransfer(_input.ActiveLeadPort);
            (Vector<double> rr, Vector<double> ri) = _inputSweep.BuildTransfer(_input.ReferenceLeadPort);
            Vector<double> lead = f(_parts.LeadToMains) * (mains.LeadToMains.Farads * (1 - _design.Input.DrivenShield.Fraction));
            re += lead * (ar + rr);
            im += lead * (ai + ri);
        }

        return (re, im);
    }

    private static Vector<double> Size((Vector<double> Re, Vector<double> Im) z) => Vector.SquareRoot((z.Re * z.Re) + (z.Im * z.Im));

    private void MainsFigures(
        Func<int, Vector<double>> f, Action<int, Vector<double>> put, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground, Vector<double> gain, Vector<double> mid,
        out Vector<double> commonPeak, out Vector<double> differencePeak, out Vector<double> drivePeak)
    {
        Interference.Mains mains = _design.Mains;
        double f0 = mains.Frequency.Hertz, rate = _design.Converter.Rate.Hertz;
        Vector<double> volts = f(_parts.MainsVoltage) * mains.Voltage.Volts, recorded = default;
        (commonPeak, differencePeak, drivePeak) = (default, default, default);

        // At the fundamental without the leads' couplings: what the body's common mode becomes.
        Leads(Vector<double>.Zero);
        FactorInput(2 * Math.PI * f0, active, reference, ground);
        _inputSweep.AdjointBuilds(_input.Difference);
        Vector<double> scale = volts * (2 * Math.PI * f0 * Share(mains.Harmonics, 0));
        Vector<double> plain = Size(Coupled(f, leads: false)) * scale;
        _inputSweep.AdjointBuilds(_input.Body);
        Vector<double> body = Size(Coupled(f, leads: false)) * scale;
        Leads(f(_parts.LeadToMains));

        foreach (MainsHarmonic harmonic in _setup.Harmonics)
        {
            double share = Share(mains.Harmonics, harmonic.Order - 1), field = Share(mains.FieldHarmonics ?? mains.Harmonics, harmonic.Order - 1);
            Vector<double> total = AtInput(harmonic.Hertz, share, field, active, reference, ground, out Vector<double> amplifier, out Vector<double> common, out Vector<double> difference, out Vector<double> drive);
            if (harmonic.Order == 1)
            {
                put(MainsTotal, total);
                put(SystemCmrr, Decibel(body / ((plain / _frontSize) + amplifier)));
            }

            commonPeak += common * Math.Sqrt(2);
            differencePeak += difference * Math.Sqrt(2);
            drivePeak += drive * Math.Sqrt(2);
            Amplify(harmonic.Hertz, gain);
            _nodePeak[0] += total * Math.Sqrt(2) * _nodeSize[0];
            for (int i = 0; i < _dcNodes; i++)
            {
                PassStage(i, harmonic.Hertz, out _);
                _nodePeak[i + 1] += total * Math.Sqrt(2) * _nodeSize[i + 1];
            }

            if (!harmonic.InBand)
            {
                continue;
            }

            Vector<double> larger = default;
            for (int side = -1; side <= 1; side += 2)
            {
                double hertz = harmonic.Hertz * (1 + (side * mains.Deviation.Fraction));
                Vector<double> input = AtInput(hertz, share, field, active, reference, ground, out _, out _, out _, out _);
                Amplify(hertz, gain);
                for (int i = 0; i < _stages.Count; i++)
                {
                    PassStage(i, hertz, out _);
                }

                double rest = _design.Converter.Response(hertz) * Math.Sqrt(_setup.Nominal.Digital.Power(Folding.LandsAt(hertz, rate)));
                larger = Vector.Max(larger, input * PathSize() / mid * rest);
            }

            recorded += larger;
        }

        put(Recorded, recorded);

        Vector<double> AtInput(
            double hertz, double share, double field, ReadOnlySpan<double> a, ReadOnlySpan<double> r, ReadOnlySpan<double> g,
            out Vector<double> amplifier, out Vector<double> common, out Vector<double> difference, out Vector<double> drive)
        {
            Vector<double> size = volts * (2 * Math.PI * hertz * share);
            FactorInput(2 * Math.PI * hertz, a, r, g);
            _inputSweep.AdjointBuilds(_input.Mean);
            common = Size(Coupled(f, leads: true)) * size;
            drive = default;
            if (0 <= _input.Drive)
            {
                _inputSweep.AdjointBuilds(_input.Drive);
                drive = Size(Coupled(f, leads: true)) * size;
            }

            Difference();
            difference = Size(Coupled(f, leads: true)) * size;
            double x = _design.Amplifier.CmrrCorner.Hertz == 0 ? 0 : hertz / _design.Amplifier.CmrrCorner.Hertz;
            Vector<double> rejection = f(_parts.Cmrr) * (_design.Amplifier.Cmrr.VoltageRatio / Math.Sqrt(1 + (x * x)));
            amplifier = common / rejection / _frontSize;
            double loop = 2 * Math.PI * hertz * mains.Field.Teslas * field * mains.LoopArea.SquareMetres;
            return (difference / _frontSize) + amplifier + new Vector<double>(loop);
        }
    }

    private static double Share(IReadOnlyList<double> shares, int index) => index < shares.Count ? shares[index] : 0;

    /// <summary>The levels' sums for the offset alone. A node's noise is the nominal device's, scaled with the density at the band's lower edge.</summary>
    private void OffsetFigure(
        double[][] factors, double[][] figures, int first, Func<int, Vector<double>> f, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground,
        Vector<double> commonPeak, Vector<double> differencePeak, Vector<double> drivePeak, Vector<double> lowest)
    {
        FactorInput(DcOmega, active, reference, ground);
        (Vector<double> od, Vector<double> bd) = Dc(_input.Difference);
        (Vector<double> om, Vector<double> bm) = Dc(_input.Mean);
        (Vector<double> ov, Vector<double> bv) = 0 <= _input.Drive ? Dc(_input.Drive) : default;
        double half = _design.Supply.HalfRailVolts, signal = _design.LargestSignal.Volts;
        double ownOffset = Math.Abs(_design.Amplifier.OffsetVoltage.Volts);
        double[] noise = _setup.Nominal.Levels.NodeRms;
        for (int lane = 0; lane < Width; lane++)
        {
            double gain = _design.Amplifier.Gain * factors[_parts.Gain][first + lane], least = double.PositiveInfinity;
            double ratio = Math.Sqrt(lowest[lane] / _setup.NominalLowest);
            double inputDc = bd[lane] + ownOffset, signalGain = _nodeGain[0][lane];
            Node(half - _design.Amplifier.InnerMargin.Volts, om[lane] + (gain / 2 * od[lane]), bm[lane] + (gain / 2 * inputDc),
                ((signalGain / 2) + 0.5) * signal, commonPeak[lane] + (gain / 2 * differencePeak[lane]), 3.3 * ratio * noise[0] / 2);
            double offsetGain = gain * od[lane], dc = gain * inputDc;
            Node(half - _design.Amplifier.OutputMargin.Volts, offsetGain, dc, signalGain * signal, _nodePeak[0][lane], 3.3 * ratio * noise[0]);
            Stage[]? stages = 0 < _dcNodes ? _parts.Stages(Column(factors, first + lane)) : null;
            for (int i = 0; i < _dcNodes; i++)
            {
                (double dcGain, double own) = LevelsBudget.StageDc(stages![i]);
                offsetGain *= dcGain;
                dc = (dc * dcGain) + own;
                if (stages[i].FittedOpAmp is { } opAmp)
                {
                    Node(half - opAmp.OutputMargin.Volts, offsetGain, dc, _nodeGain[i + 1][lane] * signal, _nodePeak[i + 1][lane], 3.3 * ratio * noise[i + 1]);
                }
            }

            if (_dcNodes == _stages.Count)
            {
                Node(_design.Converter.FullScale.Volts / 2, offsetGain, dc, _nodeGain[_dcNodes][lane] * signal, _nodePeak[_dcNodes][lane], 3.3 * ratio * noise[_dcNodes]);
            }

            if (0 <= _input.Drive)
            {
                Node(half - _design.GroundDrive.OutputMargin.Volts, ov[lane], bv[lane], 0.5 * signal, drivePeak[lane], 0);
            }

            figures[Offset][first + lane] = double.IsPositiveInfinity(least) ? double.NaN : least;

            void Node(double swing, double perVolt, double ownDc, double signalPeak, double mainsPeak, double noisePeak)
            {
                if (1e-12 < perVolt)
                {
                    least = Math.Min(least, Math.Max(0, (swing - ownDc - signalPeak - mainsPeak - noisePeak) / perVolt));
                }
            }
        }

        (Vector<double> Offset, Vector<double> Bias) Dc(int output)
        {
            _inputSweep.AdjointBuilds(output);
            double bias = _design.Amplifier.BiasCurrent.Amperes;
            Vector<double> perVolt = new Vector<double>(_inputSweep.SlotReal(_input.ActiveElectrode)) * _inputSweep.BuildTransfer(_input.SignalPort).Re;
            Vector<double> fromBias = (_inputSweep.BuildTransfer(_input.ActiveInputPort).Re * bias) + (_inputSweep.BuildTransfer(_input.ReferenceInputPort).Re * (bias * _design.EffectiveReferenceInputs));
            return (Vector.Abs(perVolt), Vector.Abs(fromBias));
        }
    }

    private double[] Column(double[][] factors, int build)
    {
        for (int i = 0; i < _factor.Length; i++)
        {
            _factor[i] = factors[i][build];
        }

        return _factor;
    }

    /// <summary>The loop's phase margin with body, surroundings and electrodes at their nominal values: secant steps on ln|T| from the nominal crossing.</summary>
    private void Margin(Func<int, Vector<double>> f, double[][] figures, int first)
    {
        if (_setup.Nominal.Drive is not { UnityGainHertz: { } unity, PhaseMarginDegrees: { } nominal } drive)
        {
            figures[PhaseMargin].AsSpan(first, Width).Fill(double.NaN);
            return;
        }

        Surroundings(_ => Vector<double>.One);
        double[] hertz = new double[Width], before = new double[Width], last = new double[Width];
        Array.Fill(hertz, unity);
        Complex start = _setup.LoopAtUnity;
        for (int round = 0; ; round++)
        {
            for (int lane = 0; lane < Width; lane++)
            {
                _inputSweep.Omega[lane] = 2 * Math.PI * hertz[lane];
            }

            _input.SetElectrodes(_inputSweep, Width, _one, _one, _one, _electrodes);
            _inputSweep.FactorBuilds(new Vector<double>(_inputSweep.Omega));
            _inputSweep.ForwardBuilds(_input.DrivePort);
            (Vector<double> mr, Vector<double> mi) = _inputSweep.BuildOutput(_input.Mean);
            (Vector<double> dr, Vector<double> di) = _inputSweep.BuildOutput(_input.Drive);
            bool done = true;
            for (int lane = 0; lane < Width; lane++)
            {
                Complex loop = new Complex(mr[lane], mi[lane]) / new Complex(dr[lane], di[lane]) * drive.Gain(hertz[lane]);
                double value = Math.Log(loop.Magnitude);
                figures[PhaseMargin][first + lane] = nominal + ((loop / start).Phase * 180 / Math.PI);
                double slope = round == 0 || Math.Abs(hertz[lane] - last[lane]) < 1e-9 * hertz[lane] ? -1 : (value - before[lane]) / Math.Log(hertz[lane] / last[lane]);
                slope = Math.Clamp(slope, -4, -0.2);
                (before[lane], last[lane]) = (value, hertz[lane]);
                done &= Math.Abs(value) < 1e-6;
                hertz[lane] *= Math.Exp(Math.Clamp(-value / slope, -0.5, 0.5));
            }

            if (done || round == 8)
            {
                return;
            }
        }
    }
}
