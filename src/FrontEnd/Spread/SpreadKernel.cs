using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Networks;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Spread;

/// <summary>Works out the figures of a group of builds at once: a lane is a build. One to a thread.</summary>
internal sealed class SpreadKernel
{
    /// <summary>Figures in the order of <see cref="Ids"/>.</summary>
    public const int GainMid = 0, NoiseTotal = 1, BoardShare = 2, Enob = 3, BitsNeeded = 4, MainsTotal = 5, SystemCmrr = 6, Recorded = 7, Offset = 8, Headroom = 9, PhaseMargin = 10, WorstMargin = 11,
        Fold = 12, ModulatorFold = 13, FaultCurrent = 14, GroundCurrent = 15;

    /// <summary>Ids of the assessment's results, and the least of its headrooms.</summary>
    public static readonly ResultId[] Ids =
    [
        ResultIds.Gain.Mid, ResultIds.Noise.Total, ResultIds.Noise.BoardShare, ResultIds.Converter.Enob, ResultIds.Converter.BitsNeeded,
        ResultIds.Mains.Total, ResultIds.Mains.SystemCmrr, ResultIds.Mains.Recorded, ResultIds.Levels.OffsetSurvived, ResultIds.Levels.LeastHeadroom,
        ResultIds.Drive.PhaseMargin, ResultIds.Drive.WorstPhaseMargin, ResultIds.Alias.FoldAttenuation, ResultIds.Alias.ModulatorFoldAttenuation,
        ResultIds.Safety.FaultCurrent, ResultIds.Safety.DrivenGroundCurrent,
    ];

    /// <summary>The row behind the figures: the bits needed before they are rounded up to a whole number.</summary>
    private const int BitsUnrounded = 16;

    /// <summary>Bits beyond which the assessment calls the resolution needed unbounded.</summary>
    private const int MostBits = 40;

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
    private readonly CircuitDc[] _stageDc;
    private readonly (int Divides, int Squares)[] _noisePart;
    private readonly int[][] _stageResistorPart;
    private readonly int[][] _stagePart;
    private readonly Vector<double>[] _nodeDensity;
    private readonly Vector<double>[] _nodeExcess;
    private readonly Vector<double>[] _nodePower;
    private readonly Vector<double>[] _nodeGain;
    private readonly Vector<double>[] _nodePeak;
    private readonly double[] _one = new double[Vector<double>.Count];
    private readonly double[] _lane = new double[Vector<double>.Count];
    private Vector<double> _excess;
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
        _stageDc = [.. _stages.Select(stage => new CircuitDc(stage.Circuit))];
        _stageSweeps = [.. _stages.Select(stage => stage.Program.CreateSweep(Width))];
        _nodeGain = new Vector<double>[_stages.Count + 1];
        _nodePeak = new Vector<double>[_stages.Count + 1];
        _nodeSize = new Vector<double>[_stages.Count + 1];
        _nodeDensity = new Vector<double>[_stages.Count + 1];
        _nodeExcess = new Vector<double>[_stages.Count + 1];
        _nodePower = new Vector<double>[_stages.Count + 1];
        Array.Fill(_one, 1);
        IReadOnlyList<NoiseSource> sources = setup.Nominal.Path.Sources;
        _noisePart = [.. setup.Nominal.Path.InputNoises.Select(noise => PartsOf(sources[noise.Source].Id, noise.Port))];
        _stageResistorPart = [.. _stages.Select(stage => new int[stage.Resistors.Count])];
        for (int i = 0; i < _stages.Count; i++)
        {
            foreach ((string part, int _, int resistor) in _stages[i].Parts.Where(part => 0 <= part.Resistor))
            {
                _stageResistorPart[i][resistor] = _parts.OfStage(i, part);
            }
        }

        _stagePart = [.. _stages.Select((stage, i) => stage.Parts.Select(part => _parts.OfStage(i, part.Part)).ToArray())];
    }

    /// <summary>Rows for <see cref="Evaluate"/>: the figures in the order of <see cref="Ids"/>, and what <see cref="Walked"/> adds to them.</summary>
    public static double[][] NewRows(int builds) => [.. Enumerable.Range(0, BitsUnrounded + 1).Select(_ => new double[builds])];

    /// <summary>The row to look for a figure's extremes in: a stepped figure does not tell which way a part moves it, the value before the step does.</summary>
    public static int Walked(int figure) => figure == BitsNeeded ? BitsUnrounded : figure;

    /// <summary>Fills figures[id][first … first + width − 1] from factors[part][…].</summary>
    public void Evaluate(double[][] factors, double[][] figures, int first)
    {
        Vector<double> F(int part) => part < 0 ? Vector<double>.One : new Vector<double>(factors[part], first);
        void Put(int figure, Vector<double> value) => value.CopyTo(figures[figure], first);

        Prepare(F);
        Array.Clear(_nodeGain);
        Array.Clear(_nodePeak);
        Array.Clear(_nodePower);
        ReadOnlySpan<double> active = factors[_parts.ActiveElectrode].AsSpan(first, Width), reference = factors[_parts.ReferenceElectrode].AsSpan(first, Width);
        ReadOnlySpan<double> ground = _parts.GroundElectrode < 0 ? _one : factors[_parts.GroundElectrode].AsSpan(first, Width);
        Vector<double> gain = F(_parts.Gain) * _design.Amplifier.Gain, mid = default, fold = default, scale = F(_parts.FullScale), own = F(_parts.ConverterNoise);
        AnalogDigitalConverter converter = _design.Converter;

        // A step that is given does not follow the full scale.
        Vector<double> step = converter.Lsb is null ? scale : Vector<double>.One;
        Vector<double> quantisation = step * step * _setup.QuantisationPower, rest = own * own * _setup.ConverterPower, excess = default;
        for (int i = 0; i < SpreadSetup.BandPoints; i++)
        {
            double hertz = _setup.BandHertz[i];
            Front(hertz, active, reference, ground);
            Vector<double> density = Stages(hertz, gain, InputDensity(hertz, F, gain), F);
            rest += density * _setup.BandWeights[i];
            excess += (density * _setup.BandWeights[i]) - ((density - _excess) * _setup.BoardWeights[i]);
            for (int node = 0; node <= _stages.Count; node++)
            {
                _nodeGain[node] = Vector.Max(_nodeGain[node], _nodeSize[node]);
                _nodePower[node] += ((_nodeDensity[node] - _nodeExcess[node]) * _setup.NodeWeights[i][node]) + (_nodeExcess[node] * _setup.NodeExcessWeights[i][node]);
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
            rest += Stages(hertz, gain, InputDensity(hertz, F, gain), F) * _setup.FoldWeights[i];
            if (i == 0)
            {
                fold = PathSize() * converter.Response(hertz);
            }
        }

        Vector<double> noise = Vector.SquareRoot(rest + quantisation) / mid;
        Put(GainMid, mid);
        Put(NoiseTotal, noise);
        Put(BoardShare, TradeConstants.NoisePeakToPeak * Vector.SquareRoot(rest + quantisation - excess) / mid);
        Put(Enob, (Decibel(scale * converter.FullScale.Volts / (mid * noise) / (2 * Math.Sqrt(2))) - new Vector<double>(TradeConstants.DecibelsOfSine)) / TradeConstants.DecibelsPerBit);
        PutBitsNeeded(figures, first, scale * (converter.FullScale.Volts * Math.Sqrt(_setup.StepPower)) / Vector.SquareRoot(rest));
        Put(Fold, Decibel(mid / fold));
        PutModulatorFold(Put, active, reference, ground, gain, mid);
        MainsFigures(F, Put, active, reference, ground, gain, mid, out Vector<double> commonPeak, out Vector<double> differencePeak, out Vector<double> drivePeak);
        LevelFigures(F, Put, active, reference, ground, gain, scale, commonPeak, differencePeak, drivePeak);
        SafetyFigures(F, Put);
        Margins(figures, first);
    }

    /// <summary>The least N with √(1 + q²/σ0²) below the setting, q being full scale/2^N times the steps' noise: 2^N above <paramref name="ratio"/>/√(setting² − 1).</summary>
    private void PutBitsNeeded(double[][] figures, int first, Vector<double> ratio)
    {
        double limit = _design.Requirements.QuantisationRise.Fraction;
        for (int lane = 0; lane < Width; lane++)
        {
            double wanted = Math.Log2(ratio[lane] / Math.Sqrt((limit * limit) - 1)), bits = Math.Max(1, Math.Floor(wanted) + 1);
            figures[BitsUnrounded][first + lane] = wanted;
            figures[BitsNeeded][first + lane] = bits <= MostBits ? bits : double.PositiveInfinity;
        }
    }

    private void PutModulatorFold(Action<int, Vector<double>> put, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground, Vector<double> gain, Vector<double> mid)
    {
        if (_design.Converter.Kind != ConverterKind.DeltaSigma)
        {
            put(ModulatorFold, new Vector<double>(double.NaN));
            return;
        }

        double hertz = _design.Converter.ModulatorClock.Hertz - _design.Band.High.Hertz;
        Front(hertz, active, reference, ground);
        Amplify(hertz, gain);
        for (int i = 0; i < _stages.Count; i++)
        {
            PassStage(i, hertz, out _);
        }

        put(ModulatorFold, Decibel(mid / (PathSize() * _design.Converter.Response(hertz))));
    }

    /// <summary>Highest voltage over the resistors fitted: the least of a build's leads, and the driven ground's own.</summary>
    private void SafetyFigures(Func<int, Vector<double>> f, Action<int, Vector<double>> put)
    {
        double highest = _design.Supply.Highest.Volts;
        (Lead Lead, double Ohms)[] leads = [.. Reporting.SafetyReport.Leads(_design, BuiltParts.Balanced(_design))];
        int buffer = 0;
        int active = _design.Electrodes.ActiveBuffer is null ? _parts.ActiveResistor : _parts.Buffers[buffer++].SkinResistor;
        int reference = _design.Electrodes.ReferenceBuffer is null ? _parts.ReferenceResistor : _parts.Buffers[buffer].SkinResistor;
        Vector<double> least = Vector.Min(f(active) * leads[0].Ohms, f(reference) * leads[1].Ohms), current = new(double.NaN);
        if (leads.Length == 3)
        {
            Vector<double> ground = f(_parts.GroundResistor) * leads[2].Ohms;
            least = Vector.Min(least, ground);
            current = _setup.Nominal.Drive is null ? current : new Vector<double>(highest) / ground;
        }

        // Without a resistor there is no bound: infinite, which fails.
        put(FaultCurrent, new Vector<double>(highest) / least);
        put(GroundCurrent, current);
    }

    private static Vector<double> Decibel(Vector<double> ratio) => Vector.Log(ratio) * (20 / Math.Log(10));

    /// <summary>The part that a noise contribution is divided by, a resistor, and the one whose square it is multiplied by, an amplifier's noise.</summary>
    private (int Divides, int Squares) PartsOf(SourceId source, int port)
    {
        if (source == SourceId.ProtectionResistors)
        {
            return (port == _input.ActiveResistorPort ? _parts.ActiveResistor : _parts.ReferenceResistor, -1);
        }

        if (source == SourceId.BiasResistors)
        {
            return (port == _input.ActiveInputPort ? _parts.ActiveBias : _parts.ReferenceBias, -1);
        }

        return source == SourceId.GroundResistor ? (_parts.GroundResistor, -1)
            : source == SourceId.SkinResistors ? (_parts.Buffers[BufferOf(ports => ports.SkinResistor == port)].SkinResistor, -1)
            : source == SourceId.AmplifierCurrent ? (-1, _parts.CurrentNoise)
            : source == SourceId.BufferCurrent ? (-1, _parts.Buffers[BufferOf(ports => ports.Current == port)].OpAmp.CurrentNoise)
            : source == SourceId.BufferVoltage ? (-1, _parts.Buffers[BufferOf(ports => ports.Voltage == port)].OpAmp.VoltageNoise)
            : (-1, -1);
    }

    private int BufferOf(Func<InputModel.BufferPorts, bool> isIt) => _input.Buffers.Select((ports, i) => (ports, i)).First(one => isIt(one.ports)).i;

    /// <summary>Puts the group's parts into the networks.</summary>
    private void Prepare(Func<int, Vector<double>> f)
    {
        _inputSweep.BeginBuilds();
        Resistor(_input.ActiveResistorElement, _parts.ActiveResistor);
        Resistor(_input.ReferenceResistorElement, _parts.ReferenceResistor);
        for (int i = 0; i < _input.Buffers.Count; i++)
        {
            Resistor(_input.Buffers[i].SkinElement, _parts.Buffers[i].SkinResistor);
        }

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

        for (int i = 0; i < _stages.Count; i++)
        {
            for (int at = 0; at < _stagePart[i].Length; at++)
            {
                (string _, int element, int resistor) = _stages[i].Parts[at];
                double value = _stages[i].Program.Elements[element].Value;
                _stageSweeps[i].Vary(element, 0 <= resistor ? new Vector<double>(value) / f(_stagePart[i][at]) : f(_stagePart[i][at]) * value);
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
    private Vector<double> InputDensity(double hertz, Func<int, Vector<double>> f, Vector<double> gain)
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        Vector<double> eni = f(_parts.Noise) * amplifier.InputNoise.VoltsPerRootHertz, eno = f(_parts.OutputNoise) * amplifier.OutputNoise.VoltsPerRootHertz / gain, excess = default;
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
                (int divides, int squares) = _noisePart[i];
                level = divides < 0 ? level : level / f(divides);
                sum += transfer * (squares < 0 ? level : level * f(squares) * f(squares));
                continue;
            }

            int slot = noise.Electrode == 0 ? _input.ActiveElectrode : noise.Electrode == 1 ? _input.ReferenceElectrode : _input.GroundElectrode;
            double[] resistance = noise.Electrode == 0 ? _electrodes.Active : noise.Electrode == 1 ? _electrodes.Reference : _electrodes.Ground;
            Vector<double> yr = new(_inputSweep.SlotReal(slot)), yi = new(_inputSweep.SlotImaginary(slot));
            transfer *= ((yr * yr) + (yi * yi)) * noise.Level;
            if (noise.Kind == SignalPath.InputNoiseKind.ElectrodeThermal)
            {
                sum += transfer * new Vector<double>(resistance, 0);
            }
            else
            {
                excess += transfer * f(_parts.Excess[noise.Electrode]) * LaneMath.InversePower(hertz, noise.Corner);
            }
        }

        double x = hertz / amplifier.Bandwidth.Hertz;
        Vector<double> power = gain * gain / new Vector<double>(1 + (x * x));
        _excess = excess * power;
        return (sum + excess) * power;
    }

    private readonly Vector<double>[] _nodeSize;

    /// <summary>Carries path and density from the amplifier's input through all stages; the density at the converter's pin.</summary>
    private Vector<double> Stages(double hertz, Vector<double> gain, Vector<double> density, Func<int, Vector<double>> f)
    {
        Amplify(hertz, gain);
        (_nodeDensity[0], _nodeExcess[0]) = (density, _excess);
        for (int i = 0; i < _stages.Count; i++)
        {
            StageModel stage = _stages[i];
            NetworkSweep sweep = PassStage(i, hertz, out Vector<double> power);
            density *= power;
            _excess *= power;
            for (int r = 0; r < stage.Resistors.Count; r++)
            {
                (Vector<double> tr, Vector<double> ti) = sweep.BuildTransfer(stage.Resistors[r].Port);
                density += ((tr * tr) + (ti * ti)) * stage.Resistors[r].Density / f(_stageResistorPart[i][r]);
            }

            if (stage.OpAmp is { } opAmp)
            {
                PartList.OpAmpParts drawn = _parts.StageOpAmps[i];
                Vector<double> current = f(drawn.CurrentNoise) * opAmp.CurrentNoise.AmperesPerRootHertz, voltage = f(drawn.VoltageNoise) * opAmp.VoltageNoise.VoltsPerRootHertz;
                current *= current * (1 + (opAmp.CurrentNoiseCorner.Hertz / hertz));
                foreach (int port in stage.CurrentPorts)
                {
                    (Vector<double> tr, Vector<double> ti) = sweep.BuildTransfer(port);
                    density += ((tr * tr) + (ti * ti)) * current;
                }

                foreach (int port in stage.VoltagePorts)
                {
                    (Vector<double> vr, Vector<double> vi) = sweep.BuildTransfer(port);
                    density += ((vr * vr) + (vi * vi)) * (voltage * voltage * (1 + (opAmp.NoiseCorner.Hertz / hertz)));
                }
            }

            (_nodeDensity[i + 1], _nodeExcess[i + 1]) = (density, _excess);
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
            for (int i = 0; i < _stages.Count; i++)
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
            Vector<double> loop = f(_parts.Field) * f(_parts.LoopArea) * (2 * Math.PI * hertz * mains.Field.Teslas * field * mains.LoopArea.SquareMetres);
            return (difference / _frontSize) + amplifier + loop;
        }
    }

    private static double Share(IReadOnlyList<double> shares, int index) => index < shares.Count ? shares[index] : 0;

    /// <summary>The levels' sums at every node: the largest offset that no node clips at, and the least headroom.</summary>
    private void LevelFigures(
        Func<int, Vector<double>> f, Action<int, Vector<double>> put, ReadOnlySpan<double> active, ReadOnlySpan<double> reference, ReadOnlySpan<double> ground, Vector<double> gain, Vector<double> fullScale,
        Vector<double> commonPeak, Vector<double> differencePeak, Vector<double> drivePeak)
    {
        DifferentialAmplifier amplifier = _design.Amplifier;
        Vector<double> bias = Value(f, _parts.BiasCurrent, amplifier.BiasCurrent.Amperes), offset = Vector.Abs(Value(f, _parts.ElectrodeOffset, _design.Electrodes.Offset.Volts));
        FactorInput(DcOmega, active, reference, ground);
        (Vector<double> od, Vector<double> bd) = Dc(_input.Difference);
        (Vector<double> om, Vector<double> bm) = Dc(_input.Mean);
        (Vector<double> ov, Vector<double> bv) = 0 <= _input.Drive ? Dc(_input.Drive) : default;
        double half = _design.Supply.HalfRailVolts, signal = _design.LargestSignal.Volts;
        Vector<double> least = new(double.PositiveInfinity), room = new(double.PositiveInfinity);
        Vector<double> inputDc = bd + Vector.Abs(Value(f, _parts.OffsetVoltage, amplifier.OffsetVoltage.Volts));
        Node(new(half - amplifier.InnerMargin.Volts), om + (gain / 2 * od), bm + (gain / 2 * inputDc), (SignalGain(0) / 2) + new Vector<double>(0.5), commonPeak + (gain / 2 * differencePeak), Noise(0) / 2);
        Vector<double> offsetGain = gain * od, dc = gain * inputDc;
        Node(new(half - amplifier.OutputMargin.Volts), offsetGain, dc, SignalGain(0), _nodePeak[0], Noise(0));
        for (int i = 0; i < _stages.Count; i++)
        {
            int number = i;
            CircuitDc stageDc = _stageDc[i].Solve((part, nominal) => Value(f, _parts.OfStage(number, part), nominal));
            Vector<double> dcGain = stageDc.Gain(_stages[i].Circuit.Output);
            offsetGain *= dcGain;
            dc = (dc * dcGain) + stageDc.Own(_stages[i].Circuit.Output);
            if (_stages[i].Stage.FittedOpAmp is { } opAmp)
            {
                Node(new(half - opAmp.OutputMargin.Volts), offsetGain, dc, SignalGain(i + 1), _nodePeak[i + 1], Noise(i + 1));
            }
        }

        int last = _stages.Count;
        Node(fullScale * (_design.Converter.FullScale.Volts / 2), offsetGain, dc, SignalGain(last), _nodePeak[last], Noise(last));
        if (0 <= _input.Drive)
        {
            Node(new(half - _design.GroundDrive.OutputMargin.Volts), ov, bv, new(0.5), drivePeak, default);
        }

        Vector<double> infinite = new(double.PositiveInfinity);
        put(Offset, Vector.ConditionalSelect(Vector.Equals(least, infinite), new Vector<double>(double.NaN), least));
        put(Headroom, Decibel(room));

        Vector<double> SignalGain(int node) => _nodeGain[node] * _setup.SignalGainScale[node];

        Vector<double> Noise(int node) => LevelsBudget.NoisePeakFactor * Vector.SquareRoot(_nodePower[node]);

        void Node(Vector<double> swing, Vector<double> perVolt, Vector<double> ownDc, Vector<double> signalGain, Vector<double> mainsPeak, Vector<double> noisePeak)
        {
            Vector<double> rest = ownDc + (signalGain * signal) + mainsPeak + noisePeak, total = rest + (perVolt * offset);
            Vector<double> survived = Vector.Max(Vector<double>.Zero, (swing - rest) / perVolt);
            least = Vector.ConditionalSelect(Vector.LessThan(new Vector<double>(1e-12), perVolt), Vector.Min(least, survived), least);
            Vector<double> ratio = Vector.ConditionalSelect(Vector.LessThan(Vector<double>.Zero, swing), swing / total, new Vector<double>(NoSwing));
            room = Vector.ConditionalSelect(Vector.LessThan(Vector<double>.Zero, total), Vector.Min(room, ratio), room);
        }

        (Vector<double> Offset, Vector<double> Bias) Dc(int output)
        {
            _inputSweep.AdjointBuilds(output);
            Vector<double> perVolt = new Vector<double>(_inputSweep.SlotReal(_input.ActiveElectrode)) * _inputSweep.BuildTransfer(_input.SignalPort).Re;
            Vector<double> fromBias = (_inputSweep.BuildTransfer(_input.ActiveInputPort).Re * bias) + (_inputSweep.BuildTransfer(_input.ReferenceInputPort).Re * bias * _design.EffectiveReferenceInputs);
            return (Vector.Abs(perVolt), Vector.Abs(fromBias));
        }
    }

    /// <summary>Swing over level of a node that cannot swing at all: the levels' budget calls it −300 dB.</summary>
    private const double NoSwing = 1e-15;

    private Vector<double> Value(Func<int, Vector<double>> f, int part, double nominal) => part < 0 ? new(nominal) : f(part) * (nominal != 0 ? nominal : _parts.FromZero(part));

    /// <summary>The loop's phase margins, body and electrodes as each figure wants them: at their nominal values, and in the surroundings in which the nominal device's margin is least.</summary>
    private void Margins(double[][] figures, int first)
    {
        if (_setup.Nominal.Drive is not { } drive)
        {
            figures[PhaseMargin].AsSpan(first, Width).Fill(double.NaN);
            figures[WorstMargin].AsSpan(first, Width).Fill(double.NaN);
            return;
        }

        Surroundings(_ => Vector<double>.One);
        Span<double> least = figures[WorstMargin].AsSpan(first, Width);
        least.Fill(double.NaN);
        if (_setup.Loop is { } nominal)
        {
            Margin(nominal, drive, figures[PhaseMargin].AsSpan(first, Width));
        }
        else
        {
            figures[PhaseMargin].AsSpan(first, Width).Fill(double.NaN);
        }

        foreach (SpreadSetup.LoopPoint loop in _setup.WorstLoops)
        {
            Margin(loop, drive, _lane);
            for (int lane = 0; lane < Width; lane++)
            {
                least[lane] = least[lane] <= _lane[lane] ? least[lane] : _lane[lane];
            }
        }
    }

    /// <summary>The margin in one surrounding: secant steps on ln|T| from the nominal device's crossing.</summary>
    private void Margin(SpreadSetup.LoopPoint point, DriveBudget drive, Span<double> degrees)
    {
        Span<double> hertz = stackalloc double[Width], before = stackalloc double[Width], last = stackalloc double[Width];
        hertz.Fill(point.UnityGainHertz);
        _inputSweep.Vary(_input.BodyToEarthElement, new Vector<double>(point.Surroundings.BodyToEarth));
        _inputSweep.Vary(_input.CommonToEarthElement, new Vector<double>(point.Surroundings.CommonToEarth));
        Span<double> factor = stackalloc double[Width];
        factor.Fill(point.Surroundings.ElectrodeFactor);
        for (int round = 0; ; round++)
        {
            for (int lane = 0; lane < Width; lane++)
            {
                _inputSweep.Omega[lane] = 2 * Math.PI * hertz[lane];
            }

            _input.SetElectrodes(_inputSweep, Width, factor, factor, factor, _electrodes);
            _inputSweep.FactorBuilds(new Vector<double>(_inputSweep.Omega));
            _inputSweep.ForwardBuilds(_input.DrivePort);
            (Vector<double> mr, Vector<double> mi) = _inputSweep.BuildOutput(_input.Mean);
            (Vector<double> dr, Vector<double> di) = _inputSweep.BuildOutput(_input.Drive);
            bool done = true;
            for (int lane = 0; lane < Width; lane++)
            {
                Complex loop = new Complex(mr[lane], mi[lane]) / new Complex(dr[lane], di[lane]) * drive.Gain(hertz[lane]);
                double value = Math.Log(loop.Magnitude);
                degrees[lane] = point.MarginDegrees + ((loop / point.LoopAtUnity).Phase * 180 / Math.PI);
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
