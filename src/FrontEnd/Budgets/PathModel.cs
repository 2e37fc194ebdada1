using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Inputs;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>How a contribution to the noise of the input network gets its density at the amplifier's inputs.</summary>
internal enum InputNoiseKind
{
    /// <summary>4kT·Re Z in series with an electrode.</summary>
    ElectrodeThermal,

    /// <summary>K/f^α in series with an electrode.</summary>
    ElectrodeExcess,

    /// <summary>A level with a flicker corner at a port.</summary>
    Flicker,
}

/// <summary>One contribution to the noise of the input network.</summary>
/// <param name="Kind">Which formula.</param>
/// <param name="Source">Its row among the path's sources.</param>
/// <param name="Port">The network's port.</param>
/// <param name="Level">White level: A²/Hz for a current, V²/Hz for a voltage, V²/Hz at 1 Hz for excess noise, 4kT [W/Hz] for an
/// electrode's thermal noise. Asked once for a group of builds.</param>
/// <param name="Corner">Flicker corner [Hz], or the excess noise's slope α.</param>
/// <param name="Electrode">As <see cref="InputLanes"/> numbers them; −1 for none.</param>
/// <param name="IsShared">True for what stands in the reference's lead: it reaches every channel's inputs alike.</param>
internal sealed record InputNoise(
    InputNoiseKind Kind, int Source, int Port, Func<InputLanes, BuildLanes, Vector<double>> Level, double Corner, int Electrode,
    bool IsShared);

/// <summary>What all lanes of a design share: its networks made ready for solving, and the list of its noise sources in the order of the
/// path.</summary>
internal sealed class PathModel
{
    private readonly List<NoiseSource> _sources = [];
    private readonly List<InputNoise> _inputNoise = [];
    private readonly IReadOnlyDictionary<SourceId, double>? _weights;

    /// <param name="design">The design.</param>
    /// <param name="built">What stands in its leads; other builds are put in lane by lane.</param>
    /// <param name="other">A path with the same stages behind another input, whose networks serve here too; null for none.</param>
    /// <param name="weights">What the power of some sources is multiplied by, 0 for a source that is left out; null for all as they are.</param>
    public PathModel(Design design, BuiltParts built, PathModel? other = null, IReadOnlyDictionary<SourceId, double>? weights = null)
    {
        (Design, _weights) = (design, weights);
        Input = new InputModel(design, built);
        Stages = other?.Stages ?? [.. design.Stages.Select(stage => new StageModel(stage, design.BoardTemperature))];
        AddInputSources();
        InputNoises = [.. _inputNoise];
        AmplifierVoltage = AddSource(SourceId.AmplifierVoltage);
        StageSource = new int[Stages.Length];
        for (int i = 0; i < Stages.Length; i++)
        {
            string name = Stages[i].Stage.Name;
            StageSource[i] = AddStageSource(SourceId.ResistorsOf(name), $"{name} resistors", i);
            if (Stages[i].OpAmp is not null)
            {
                AddStageSource(SourceId.CurrentOf(name), $"{name} current", i);
                AddStageSource(SourceId.VoltageOf(name), $"{name} voltage", i);
            }
        }
    }

    public Design Design { get; }

    public InputModel Input { get; }

    public StageModel[] Stages { get; }

    /// <summary>Nodes after the amplifier (0) and each stage.</summary>
    public int Nodes => Stages.Length + 1;

    /// <summary>Those, and behind them the stages' inner nodes that can clip, in the order of the path.</summary>
    public int AllNodes => Nodes + Stages.Sum(stage => stage.InnerNodes.Count);

    /// <summary>Those, and behind them the outputs of the electrodes' buffers: every node that levels are counted at.</summary>
    public int LevelNodes => AllNodes + Input.Buffers.Count;

    /// <summary>Every contribution in the order of the path.</summary>
    public IReadOnlyList<NoiseSource> Sources => _sources;

    /// <summary>Noise of the input network as it stands in the network.</summary>
    public InputNoise[] InputNoises { get; }

    /// <summary>The amplifier's voltage noise among the sources; all before it belong to the input network.</summary>
    public int AmplifierVoltage { get; }

    /// <summary>Each stage's resistors among the sources; current and voltage noise of its op-amp follow where it has one.</summary>
    public int[] StageSource { get; }

    /// <summary>What the power of a source is multiplied by.</summary>
    /// <param name="source">Its place among <see cref="Sources"/>.</param>
    public double Weight(int source) => _weights is not null && _weights.TryGetValue(_sources[source].Id, out double weight) ? weight : 1;

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
        ElectrodeSet set = Design.Electrodes;
        AddElectrode(SourceId.ActiveElectrode, set.Active, InputLanes.Active, Input.SignalPort);
        AddElectrode(SourceId.ReferenceElectrode, set.Reference, InputLanes.Reference, Input.ReferencePort);
        if (set.Ground is { } ground)
        {
            AddElectrode(SourceId.GroundElectrode, ground, InputLanes.Ground, Input.GroundPort);
        }

        int protection = AddSource(SourceId.ProtectionResistors);
        AddResistor(protection, InputCircuit.ActiveResistor);
        AddResistor(protection, InputCircuit.ReferenceResistor, isShared: true);
        if (Design.Input.BiasResistor is not null)
        {
            int bias = AddSource(SourceId.BiasResistors);
            AddResistor(bias, InputCircuit.ActiveBias);
            AddResistor(bias, InputCircuit.ReferenceBias, isShared: true);
        }

        AddBufferSources();
        int current = AddSource(SourceId.AmplifierCurrent);
        double corner = Design.Amplifier.CurrentNoiseCorner.Hertz, references = Design.EffectiveReferenceInputs;
        AddFlicker(current, Input.ActiveInputPort, builds => Square(builds.CurrentNoise), corner, isShared: false);
        AddFlicker(current, Input.ReferenceInputPort, builds => Square(builds.CurrentNoise) * references, corner, isShared: true);
        if (set.Ground is not null)
        {
            AddResistor(AddSource(SourceId.GroundResistor), InputCircuit.GroundResistor);
        }
    }

    private void AddElectrode(SourceId id, Electrode electrode, int index, int port)
    {
        var thermal = new Vector<double>(PhysicalConstants.ThermalPower(Design.SkinTemperature));
        int resistance = AddSource(id, NoiseKind.ElectrodeThermal);
        bool isShared = index == InputLanes.Reference;
        _inputNoise.Add(new InputNoise(InputNoiseKind.ElectrodeThermal, resistance, port, (_, _) => thermal, 0, index, isShared));
        if (0 < electrode.ExcessNoise.VoltsSquaredPerHertz)
        {
            int source = AddSource(id, NoiseKind.ElectrodeExcess);
            _inputNoise.Add(
                new InputNoise(InputNoiseKind.ElectrodeExcess, source, port, (_, builds) =>
                    builds.Excess[index], electrode.ExcessSlope, index, isShared));
        }
    }

    private void AddBufferSources()
    {
        if (Input.Buffers.Count == 0)
        {
            return;
        }

        int current = AddSource(SourceId.BufferCurrent), voltage = AddSource(SourceId.BufferVoltage);
        for (int i = 0; i < Input.Buffers.Count; i++)
        {
            int buffer = i;
            NetworkOpAmp opAmp = Input.Buffers[i];
            bool isShared = IsReference(opAmp);
            AddFlicker(current, opAmp.CurrentPorts[0], builds =>
                Square(builds.BufferOpAmps[buffer].CurrentNoise), opAmp.OpAmp.Model.CurrentNoiseCorner.Hertz, isShared);
            AddFlicker(voltage, opAmp.VoltagePort, builds =>
                Square(builds.BufferOpAmps[buffer].VoltageNoise), opAmp.OpAmp.Model.NoiseCorner.Hertz, isShared);
        }

        NetworkOpAmp[] skin = [.. Input.Buffers.Where(buffer => Input.Part(InputCircuit.SkinResistor(buffer.OpAmp.Role)) is not null)];
        if (skin.Length != 0)
        {
            int source = AddSource(SourceId.SkinResistors);
            foreach (NetworkOpAmp buffer in skin)
            {
                AddResistor(source, InputCircuit.SkinResistor(buffer.OpAmp.Role), IsReference(buffer));
            }
        }
    }

    /// <summary>4kT times the conductance that the network has; a resistance of zero makes none.</summary>
    private void AddResistor(int source, string role, bool isShared = false)
    {
        if (Input.Part(role) is not { } part)
        {
            return;
        }

        double thermal = PhysicalConstants.ThermalPower(Design.BoardTemperature);
        _inputNoise.Add(new InputNoise(InputNoiseKind.Flicker, source, part.NoisePort, (input, _) =>
            thermal * input.Conductance(part.Element), 0, -1, isShared));
    }

    private void AddFlicker(int source, int port, Func<BuildLanes, Vector<double>> level, double corner, bool isShared) =>
        _inputNoise.Add(new InputNoise(InputNoiseKind.Flicker, source, port, (_, builds) => level(builds), corner, -1, isShared));

    private static bool IsReference(NetworkOpAmp buffer) => buffer.OpAmp.Role == InputCircuit.ReferenceSide;

    private static Vector<double> Square(Vector<double> x) => x * x;
}
