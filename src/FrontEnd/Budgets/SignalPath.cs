using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Networks;
using FrontEnd.Quantities;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>
/// The path from the electrode site to the converter's pin as built: transfer and noise density at every node. Blocks are joined by
/// low-impedance outputs, so transfers multiply and a block's noise is multiplied by the squared transfer of what follows.
/// </summary>
/// <remarks>One <see cref="Sweep"/> fills the arrays; they are overwritten by the next. Not for use by two threads at a time.</remarks>
internal sealed class SignalPath
{
    /// <summary>Lanes worked on at a time: small enough for the first caches to hold every port's transfers.</summary>
    public const int Chunk = 128;

    private readonly Design _design;
    private readonly BuiltParts _built;
    private readonly InputModel _input;
    private readonly NetworkSweep _inputSweep;
    private readonly ElectrodeLanes _electrodes;
    private readonly StageModel[] _stages;
    private readonly NetworkSweep[] _stageSweeps;
    private readonly double[] _activeFactor = new double[Chunk];
    private readonly double[] _referenceFactor = new double[Chunk];
    private readonly double[] _groundFactor = new double[Chunk];
    private readonly double[][] _density;
    private readonly double[] _amplifierPower = new double[Chunk];
    private readonly double[] _suffix = new double[Chunk];
    private readonly List<NoiseSource> _sources = [];
    private readonly List<InputNoise> _inputNoise = [];
    private readonly int _amplifierVoltage;
    private readonly int[] _stageSource;
    private int _suffixBlock = -1;

    public SignalPath(Design design, BuiltParts? built = null)
    {
        _design = design;
        _built = built ?? BuiltParts.Worst(design);
        _input = new InputModel(design, Varying.None, _built);
        _inputSweep = _input.Program.CreateSweep(Chunk, 1);
        _electrodes = new ElectrodeLanes(_inputSweep.Capacity);
        Array.Fill(_activeFactor, _built.ActiveFactor);
        Array.Fill(_referenceFactor, _built.ReferenceFactor);
        Array.Fill(_groundFactor, _built.GroundFactor);
        _stages = [.. design.Stages.Select(stage => new StageModel(stage, design.BoardTemperature))];
        _stageSweeps = [.. _stages.Select(stage => stage.Program.CreateSweep(Chunk))];

        AddInputSources();
        _amplifierVoltage = AddSource(SourceId.AmplifierVoltage);
        _stageSource = new int[_stages.Length];
        for (int i = 0; i < _stages.Length; i++)
        {
            string name = _stages[i].Stage.Name;
            _stageSource[i] = AddStageSource(SourceId.ResistorsOf(name), $"{name} resistors", i);
            if (_stages[i].OpAmp is not null)
            {
                AddStageSource(SourceId.CurrentOf(name), $"{name} current", i);
                AddStageSource(SourceId.VoltageOf(name), $"{name} voltage", i);
            }
        }

        _density = [.. _sources.Select(_ => new double[Chunk])];
        NodeRe = [.. Enumerable.Range(0, _stages.Length + 1).Select(_ => new double[Chunk])];
        NodeIm = [.. NodeRe.Select(_ => new double[Chunk])];
        NodeDensity = [.. NodeRe.Select(_ => new double[Chunk])];
        BlockPower = [.. NodeRe.Select(_ => new double[Chunk])];
    }

    /// <summary>How one noise contribution of the input network gets its density at the amplifier's input.</summary>
    /// <param name="Kind">Which formula; see <see cref="InputNoiseKind"/>.</param>
    /// <param name="Port">The network's port.</param>
    /// <param name="Level">White level: A²/Hz for a current, V²/Hz for a voltage, K for excess noise, 4kT for an electrode's thermal noise.</param>
    /// <param name="Corner">Flicker corner [Hz], or the excess noise's slope α.</param>
    /// <param name="Electrode">0 active, 1 reference, 2 ground.</param>
    internal sealed record InputNoise(InputNoiseKind Kind, int Source, int Port, double Level, double Corner, int Electrode);

    internal enum InputNoiseKind
    {
        ElectrodeThermal,
        ElectrodeExcess,
        Flicker,
    }

    /// <summary>Every contribution in the order of the path.</summary>
    public IReadOnlyList<NoiseSource> Sources => _sources;

    /// <summary>Nodes after the amplifier (0) and each stage.</summary>
    public int Nodes => _stages.Length + 1;

    /// <summary>H from the site to each node, real and imaginary part.</summary>
    public double[][] NodeRe { get; }

    public double[][] NodeIm { get; }

    /// <summary>Noise density at each node [V²/Hz].</summary>
    public double[][] NodeDensity { get; }

    /// <summary>|H|² of each block by itself; block 0 is input network and amplifier.</summary>
    public double[][] BlockPower { get; }

    /// <summary>H_front: from the site to the amplifier's input, real and imaginary part.</summary>
    public double[] FrontRe { get; } = new double[Chunk];

    public double[] FrontIm { get; } = new double[Chunk];

    /// <summary>Lanes that needed the pivoted fallback so far.</summary>
    public int Fallbacks => _inputSweep.Fallbacks + _stageSweeps.Sum(sweep => sweep.Fallbacks);

    public InputModel Input => _input;

    /// <summary>Noise of the input network as it stands in the network.</summary>
    public IReadOnlyList<InputNoise> InputNoises => _inputNoise;

    public IReadOnlyList<StageModel> Stages => _stages;

    /// <summary>H from the site to the converter's pin on a lane of the last sweep.</summary>
    public Complex Path(int lane) => new(NodeRe[^1][lane], NodeIm[^1][lane]);

    /// <summary>Noise density at the converter's pin on each lane of the last sweep.</summary>
    public ReadOnlySpan<double> Density => NodeDensity[^1];

    /// <summary>Works out transfers and noise at up to <see cref="Chunk"/> frequencies [Hz].</summary>
    public void Sweep(ReadOnlySpan<double> hertz)
    {
        int n = hertz.Length;
        _suffixBlock = -1;
        SweepInput(hertz);
        for (int i = 0; i < _stages.Length; i++)
        {
            SweepStage(i, hertz, n);
        }
    }

    /// <summary>Density of one contribution of the last sweep at the output of its own block [V²/Hz].</summary>
    public ReadOnlySpan<double> OwnDensity(int source) => _density[source];

    /// <summary>Density of one contribution of the last sweep, carried to the converter's pin [V²/Hz].</summary>
    public void SourceDensity(int source, int lanes, Span<double> destination)
    {
        Suffix(_sources[source].Block, lanes);
        double[] density = _density[source];
        for (int lane = 0; lane < lanes; lane++)
        {
            destination[lane] = density[lane] * _suffix[lane];
        }
    }

    /// <summary>Product of the power transfers of the blocks after a block; kept while the block stays the same.</summary>
    private void Suffix(int block, int lanes)
    {
        if (block == _suffixBlock)
        {
            return;
        }

        _suffixBlock = block;
        Array.Fill(_suffix, 1.0, 0, lanes);
        for (int later = block + 1; later < Nodes; later++)
        {
            double[] power = BlockPower[later];
            for (int lane = 0; lane < lanes; lane++)
            {
                _suffix[lane] *= power[lane];
            }
        }
    }

    private int AddSource(SourceId id, NoiseKind kind = NoiseKind.Board)
    {
        _sources.Add(new NoiseSource(id, id.Words, kind, 0));
        return _sources.Count - 1;
    }

    private int AddStageSource(SourceId id, string name, int stage)
    {
        _sources.Add(new NoiseSource(id, name, NoiseKind.Board, stage + 1));
        return _sources.Count - 1;
    }

    private void AddInputSources()
    {
        ElectrodeSet set = _design.Electrodes;
        double skin = 4 * PhysicalConstants.Boltzmann * _design.SkinTemperature.Kelvins;
        double board = 4 * PhysicalConstants.Boltzmann * _design.BoardTemperature.Kelvins;
        AddElectrode(SourceId.ActiveElectrode, set.Active, 0, _input.SignalPort, skin);
        AddElectrode(SourceId.ReferenceElectrode, set.Reference, 1, _input.ReferencePort, skin);
        if (set.Ground is { } ground)
        {
            AddElectrode(SourceId.GroundElectrode, ground, 2, _input.GroundPort, skin);
        }

        int protection = AddSource(SourceId.ProtectionResistors);
        AddFlicker(protection, _input.ActiveResistorPort, board / _built.ActiveOhms, 0);
        AddFlicker(protection, _input.ReferenceResistorPort, board / _built.ReferenceOhms, 0);
        if (_design.Input.BiasResistor is not null)
        {
            int biasSource = AddSource(SourceId.BiasResistors);
            AddFlicker(biasSource, _input.ActiveInputPort, board / _built.ActiveBiasOhms, 0);
            AddFlicker(biasSource, _input.ReferenceInputPort, board / _built.ReferenceBiasOhms, 0);
        }

        AddBufferSources(board);
        DifferentialAmplifier amplifier = _design.Amplifier;
        double current = Square(amplifier.CurrentNoise.AmperesPerRootHertz);
        int currentSource = AddSource(SourceId.AmplifierCurrent);
        AddFlicker(currentSource, _input.ActiveInputPort, current, amplifier.CurrentNoiseCorner.Hertz);
        AddFlicker(currentSource, _input.ReferenceInputPort, current * _design.EffectiveReferenceInputs, amplifier.CurrentNoiseCorner.Hertz);
        if (set.Ground is not null)
        {
            AddFlicker(AddSource(SourceId.GroundResistor), _input.GroundResistorPort, board / InputModel.GroundOhms(_design), 0);
        }
    }

    private void AddElectrode(SourceId id, Electrode electrode, int index, int port, double thermal)
    {
        _inputNoise.Add(new InputNoise(InputNoiseKind.ElectrodeThermal, AddSource(id, NoiseKind.ElectrodeThermal), port, thermal, 0, index));
        double k = electrode.ExcessNoise.VoltsSquaredPerHertz;
        if (0 < k)
        {
            _inputNoise.Add(new InputNoise(InputNoiseKind.ElectrodeExcess, AddSource(id, NoiseKind.ElectrodeExcess), port, k, electrode.ExcessSlope, index));
        }
    }

    private void AddBufferSources(double board)
    {
        if (_input.Buffers.Count == 0)
        {
            return;
        }

        int current = AddSource(SourceId.BufferCurrent), voltage = AddSource(SourceId.BufferVoltage);
        foreach (InputModel.BufferPorts ports in _input.Buffers)
        {
            OpAmp opAmp = ports.Buffer.OpAmp;
            AddFlicker(current, ports.Current, Square(opAmp.CurrentNoise.AmperesPerRootHertz), opAmp.CurrentNoiseCorner.Hertz);
            AddFlicker(voltage, ports.Voltage, Square(opAmp.VoltageNoise.VoltsPerRootHertz), opAmp.NoiseCorner.Hertz);
        }

        if (_input.Buffers.Any(ports => ports.SkinResistor is not null))
        {
            int skin = AddSource(SourceId.SkinResistors);
            foreach (InputModel.BufferPorts ports in _input.Buffers.Where(ports => ports.SkinResistor is not null))
            {
                AddFlicker(skin, ports.SkinResistor!.Value, board / ports.Buffer.SkinResistor.Ohms, 0);
            }
        }
    }

    private void AddFlicker(int source, int port, double level, double corner) =>
        _inputNoise.Add(new InputNoise(InputNoiseKind.Flicker, source, port, level, corner, -1));

    private static double Square(double x) => x * x;

    private void SweepInput(ReadOnlySpan<double> hertz)
    {
        int n = hertz.Length;
        NetworkSweep sweep = _inputSweep;
        Span<double> omega = sweep.Omega;
        for (int lane = 0; lane < n; lane++)
        {
            omega[lane] = 2 * Math.PI * hertz[lane];
        }

        int padded = Math.Min(sweep.Capacity, (n + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count);
        omega[n..padded].Fill(omega[n - 1]);
        _input.SetElectrodes(sweep, padded, _activeFactor, _referenceFactor, _groundFactor, _electrodes);
        sweep.SolveAdjoint(n, 1);

        DifferentialAmplifier amplifier = _design.Amplifier;
        ReadOnlySpan<double> tr = sweep.TransferReal(_input.Difference, _input.SignalPort), ti = sweep.TransferImaginary(_input.Difference, _input.SignalPort);
        ReadOnlySpan<double> yr = sweep.SlotReal(_input.ActiveElectrode), yi = sweep.SlotImaginary(_input.ActiveElectrode);
        double gain = amplifier.Gain, inverseBandwidth = 1 / amplifier.Bandwidth.Hertz;
        double white = Square(amplifier.InputNoise.VoltsPerRootHertz) + Square(amplifier.OutputNoise.VoltsPerRootHertz / gain);
        double corner = amplifier.NoiseCorner.Hertz;
        double[] re = NodeRe[0], im = NodeIm[0], power = BlockPower[0], total = NodeDensity[0];
        for (int lane = 0; lane < n; lane++)
        {
            double fr = (yr[lane] * tr[lane]) - (yi[lane] * ti[lane]), fi = (yr[lane] * ti[lane]) + (yi[lane] * tr[lane]);
            FrontRe[lane] = fr;
            FrontIm[lane] = fi;
            double x = hertz[lane] * inverseBandwidth, scale = gain / (1 + (x * x));
            re[lane] = scale * (fr + (fi * x));
            im[lane] = scale * (fi - (fr * x));
            _amplifierPower[lane] = gain * scale;
            power[lane] = (re[lane] * re[lane]) + (im[lane] * im[lane]);
            total[lane] = 0;
        }

        foreach (double[] density in _density.AsSpan(0, _amplifierVoltage + 1))
        {
            density.AsSpan(0, n).Clear();
        }

        foreach (InputNoise noise in _inputNoise)
        {
            AddInputNoise(noise, hertz);
        }

        double[] voltage = _density[_amplifierVoltage];
        for (int lane = 0; lane < n; lane++)
        {
            voltage[lane] = white * (1 + (corner / hertz[lane]));
        }

        foreach (double[] density in _density.AsSpan(0, _amplifierVoltage + 1))
        {
            for (int lane = 0; lane < n; lane++)
            {
                density[lane] *= _amplifierPower[lane];
                total[lane] += density[lane];
            }
        }
    }

    private void AddInputNoise(InputNoise noise, ReadOnlySpan<double> hertz)
    {
        int n = hertz.Length;
        double[] density = _density[noise.Source];
        ReadOnlySpan<double> tr = _inputSweep.TransferReal(_input.Difference, noise.Port), ti = _inputSweep.TransferImaginary(_input.Difference, noise.Port);
        if (noise.Kind == InputNoiseKind.Flicker)
        {
            double level = noise.Level, corner = noise.Corner;
            if (corner == 0)
            {
                for (int lane = 0; lane < n; lane++)
                {
                    density[lane] += level * ((tr[lane] * tr[lane]) + (ti[lane] * ti[lane]));
                }

                return;
            }

            for (int lane = 0; lane < n; lane++)
            {
                density[lane] += level * (1 + (corner / hertz[lane])) * ((tr[lane] * tr[lane]) + (ti[lane] * ti[lane]));
            }

            return;
        }

        int slot = noise.Electrode switch
        {
            0 => _input.ActiveElectrode,
            1 => _input.ReferenceElectrode,
            _ => _input.GroundElectrode,
        };
        double[] resistance = noise.Electrode switch
        {
            0 => _electrodes.Active,
            1 => _electrodes.Reference,
            _ => _electrodes.Ground,
        };
        ReadOnlySpan<double> yr = _inputSweep.SlotReal(slot), yi = _inputSweep.SlotImaginary(slot);
        bool thermal = noise.Kind == InputNoiseKind.ElectrodeThermal;
        for (int lane = 0; lane < n; lane++)
        {
            double transfer = ((yr[lane] * yr[lane]) + (yi[lane] * yi[lane])) * ((tr[lane] * tr[lane]) + (ti[lane] * ti[lane]));
            double own = thermal ? resistance[lane] : LaneMath.InversePower(hertz[lane], noise.Corner);
            density[lane] += noise.Level * own * transfer;
        }
    }

    private void SweepStage(int index, ReadOnlySpan<double> hertz, int n)
    {
        StageModel stage = _stages[index];
        NetworkSweep sweep = _stageSweeps[index];
        Span<double> omega = sweep.Omega;
        for (int lane = 0; lane < n; lane++)
        {
            omega[lane] = 2 * Math.PI * hertz[lane];
        }

        sweep.SolveAdjoint(n, 1);
        ReadOnlySpan<double> hr = sweep.TransferReal(0, stage.SignalPort), hi = sweep.TransferImaginary(0, stage.SignalPort);
        double[] beforeRe = NodeRe[index], beforeIm = NodeIm[index], re = NodeRe[index + 1], im = NodeIm[index + 1], power = BlockPower[index + 1];
        double[] before = NodeDensity[index], total = NodeDensity[index + 1];
        for (int lane = 0; lane < n; lane++)
        {
            re[lane] = (beforeRe[lane] * hr[lane]) - (beforeIm[lane] * hi[lane]);
            im[lane] = (beforeRe[lane] * hi[lane]) + (beforeIm[lane] * hr[lane]);
            power[lane] = (hr[lane] * hr[lane]) + (hi[lane] * hi[lane]);
            total[lane] = before[lane] * power[lane];
        }

        int source = _stageSource[index];
        double[] density = _density[source];
        density.AsSpan(0, n).Clear();
        foreach ((int port, double level) in stage.Resistors)
        {
            AddPort(sweep, port, level, 0, hertz, density);
        }

        AddTo(total, density, n);
        if (stage.OpAmp is not { } opAmp)
        {
            return;
        }

        density = _density[source + 1];
        density.AsSpan(0, n).Clear();
        double current = Square(opAmp.CurrentNoise.AmperesPerRootHertz), voltage = Square(opAmp.VoltageNoise.VoltsPerRootHertz);
        foreach (int port in stage.CurrentPorts)
        {
            AddPort(sweep, port, current, opAmp.CurrentNoiseCorner.Hertz, hertz, density);
        }

        AddTo(total, density, n);
        density = _density[source + 2];
        density.AsSpan(0, n).Clear();
        foreach (int port in stage.VoltagePorts)
        {
            AddPort(sweep, port, voltage, opAmp.NoiseCorner.Hertz, hertz, density);
        }

        AddTo(total, density, n);
    }

    private static void AddPort(NetworkSweep sweep, int port, double level, double corner, ReadOnlySpan<double> hertz, double[] density)
    {
        ReadOnlySpan<double> tr = sweep.TransferReal(0, port), ti = sweep.TransferImaginary(0, port);
        for (int lane = 0; lane < hertz.Length; lane++)
        {
            density[lane] += level * (corner == 0 ? 1 : 1 + (corner / hertz[lane])) * ((tr[lane] * tr[lane]) + (ti[lane] * ti[lane]));
        }
    }

    private static void AddTo(double[] total, double[] density, int n)
    {
        for (int lane = 0; lane < n; lane++)
        {
            total[lane] += density[lane];
        }
    }
}
