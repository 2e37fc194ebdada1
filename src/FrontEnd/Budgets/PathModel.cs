using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
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
internal sealed record InputNoise(
    InputNoiseKind Kind, int Source, int Port, Func<InputLanes, BuildLanes, Vector<double>> Level, double Corner, int Electrode);

/// <summary>What all lanes of a design share: its networks made ready for solving, and the list of its noise sources in the order of the
/// path.</summary>
internal sealed class PathModel
{
    private readonly List<NoiseSource> _sources = [];
    private readonly List<InputNoise> _inputNoise = [];

    /// <param name="design">The design.</param>
    /// <param name="built">What stands in its leads; other builds are put in lane by lane.</param>
    public PathModel(Design design, BuiltParts built)
    {
        Design = design;
        Input = new InputModel(design, built);
        Stages = [.. design.Stages.Select(stage => new StageModel(stage, design.BoardTemperature))];
        AddInputSources();
        InputNoises = [.. _inputNoise];
        AmplifierVoltage = AddSource("amplifier voltage", NoiseKind.Board, 0);
        StageSource = new int[Stages.Length];
        for (int i = 0; i < Stages.Length; i++)
        {
            string name = Stages[i].Stage.Name;
            StageSource[i] = AddSource($"{name} resistors", NoiseKind.Board, i + 1);
            if (Stages[i].OpAmp is not null)
            {
                AddSource($"{name} current", NoiseKind.Board, i + 1);
                AddSource($"{name} voltage", NoiseKind.Board, i + 1);
            }
        }
    }

    public Design Design { get; }

    public InputModel Input { get; }

    public StageModel[] Stages { get; }

    /// <summary>Nodes after the amplifier (0) and each stage.</summary>
    public int Nodes => Stages.Length + 1;

    /// <summary>Every contribution in the order of the path.</summary>
    public IReadOnlyList<NoiseSource> Sources => _sources;

    /// <summary>Noise of the input network as it stands in the network.</summary>
    public InputNoise[] InputNoises { get; }

    /// <summary>The amplifier's voltage noise among the sources; all before it belong to the input network.</summary>
    public int AmplifierVoltage { get; }

    /// <summary>Each stage's resistors among the sources; current and voltage noise of its op-amp follow where it has one.</summary>
    public int[] StageSource { get; }

    private int AddSource(string name, NoiseKind kind, int block)
    {
        _sources.Add(new NoiseSource(name, kind, block));
        return _sources.Count - 1;
    }

    private void AddInputSources()
    {
        ElectrodeSet set = Design.Electrodes;
        AddElectrode("active electrode", set.Active, InputLanes.Active, Input.SignalPort);
        AddElectrode("reference electrode", set.Reference, InputLanes.Reference, Input.ReferencePort);
        if (set.Ground is { } ground)
        {
            AddElectrode("ground electrode", ground, InputLanes.Ground, Input.GroundPort);
        }

        int protection = AddSource("protection resistors", NoiseKind.Board, 0);
        AddResistor(protection, Input.ActiveResistorPort, Input.ActiveResistorElement);
        AddResistor(protection, Input.ReferenceResistorPort, Input.ReferenceResistorElement);
        if (Design.Input.BiasResistor is not null)
        {
            int bias = AddSource("bias resistors", NoiseKind.Board, 0);
            AddResistor(bias, Input.ActiveInputPort, Input.ActiveBiasElement);
            AddResistor(bias, Input.ReferenceInputPort, Input.ReferenceBiasElement);
        }

        AddBufferSources();
        int current = AddSource("amplifier current", NoiseKind.Board, 0);
        double corner = Design.Amplifier.CurrentNoiseCorner.Hertz, references = Design.EffectiveReferenceInputs;
        AddFlicker(current, Input.ActiveInputPort, builds => Square(builds.CurrentNoise), corner);
        AddFlicker(current, Input.ReferenceInputPort, builds => Square(builds.CurrentNoise) * references, corner);
        if (set.Ground is not null)
        {
            AddResistor(AddSource("ground resistor", NoiseKind.Board, 0), Input.GroundResistorPort, Input.GroundResistorElement);
        }
    }

    private void AddElectrode(string name, Electrode electrode, int index, int port)
    {
        var thermal = new Vector<double>(NoiseDensity.Thermal(Design.SkinTemperature));
        int resistance = AddSource(name, NoiseKind.ElectrodeThermal, 0);
        _inputNoise.Add(new InputNoise(InputNoiseKind.ElectrodeThermal, resistance, port, (_, _) => thermal, 0, index));
        if (0 < electrode.ExcessNoise.VoltsSquaredPerHertz)
        {
            int source = AddSource(name, NoiseKind.ElectrodeExcess, 0);
            _inputNoise.Add(
                new InputNoise(InputNoiseKind.ElectrodeExcess, source, port, (_, builds) => builds.Excess[index], electrode.ExcessSlope, index));
        }
    }

    private void AddBufferSources()
    {
        if (Input.Buffers.Count == 0)
        {
            return;
        }

        int current = AddSource("buffer current", NoiseKind.Board, 0), voltage = AddSource("buffer voltage", NoiseKind.Board, 0);
        for (int i = 0; i < Input.Buffers.Count; i++)
        {
            int buffer = i;
            InputModel.BufferPorts ports = Input.Buffers[i];
            OpAmp opAmp = ports.Buffer.OpAmp;
            AddFlicker(current, ports.Current, builds => Square(builds.BufferOpAmps[buffer].CurrentNoise), opAmp.CurrentNoiseCorner.Hertz);
            AddFlicker(voltage, ports.Voltage, builds => Square(builds.BufferOpAmps[buffer].VoltageNoise), opAmp.NoiseCorner.Hertz);
        }

        if (Input.Buffers.Any(ports => ports.SkinResistor is not null))
        {
            int skin = AddSource("skin resistors", NoiseKind.Board, 0);
            foreach (InputModel.BufferPorts ports in Input.Buffers.Where(ports => ports.SkinResistor is not null))
            {
                AddResistor(skin, ports.SkinResistor!.Value, ports.SkinElement);
            }
        }
    }

    /// <summary>4kT times the conductance that the network has.</summary>
    private void AddResistor(int source, int port, int element)
    {
        double thermal = NoiseDensity.Thermal(Design.BoardTemperature);
        _inputNoise.Add(new InputNoise(InputNoiseKind.Flicker, source, port, (input, _) => thermal * input.Conductance(element), 0, -1));
    }

    private void AddFlicker(int source, int port, Func<BuildLanes, Vector<double>> level, double corner) =>
        _inputNoise.Add(new InputNoise(InputNoiseKind.Flicker, source, port, (_, builds) => level(builds), corner, -1));

    private static Vector<double> Square(Vector<double> x) => x * x;
}
