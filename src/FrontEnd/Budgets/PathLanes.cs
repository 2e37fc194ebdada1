using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>
/// The path from the electrode site to the converter's pin for a group of lanes: transfer and noise density at every node. Blocks are
/// joined by low-impedance outputs, so transfers multiply and a block's noise is multiplied by the squared transfer of what follows.
/// </summary>
/// <remarks>The one place where the path's physics stands: the assessment solves one build at many frequencies with it, a spread many
/// builds at few. Nothing is allocated after the start. Not for use by two threads at a time.</remarks>
internal sealed class PathLanes
{
    private readonly PathModel _model;
    private readonly StageLanes[] _stages;
    private readonly Vector<double>[] _level;
    private readonly bool[] _isExcess;
    private readonly StageMemory? _memory;
    private Vector<double> _gain;
    private Vector<double> _amplifierWhite;

    /// <param name="model">What all lanes share.</param>
    /// <param name="isChecked">See <see cref="NetworkLanes"/>.</param>
    /// <param name="other">A path with the same stages behind another input: it sets and solves them for both; null for stages of
    /// its own.</param>
    /// <param name="memory">Where the stages' solutions are kept for other paths with the same stages; null for nowhere.</param>
    public PathLanes(PathModel model, bool isChecked, PathLanes? other = null, StageMemory? memory = null)
    {
        _model = model;
        _memory = memory;
        Input = memory?.InputOf(model.Design) is var (kept, isFirst)
            ? new InputLanes(model.Design, model.Input, isChecked, kept, isFirst)
            : new InputLanes(model.Design, model.Input, isChecked);
        _stages = other?._stages ?? [.. model.Stages.Select(stage => new StageLanes(stage, isChecked))];
        _level = new Vector<double>[model.InputNoises.Length];
        _isExcess = [.. model.Sources.Select(source => source.Kind == NoiseKind.ElectrodeExcess)];
        Node = new ComplexLanes[model.AllNodes];
        NodeDensity = new Vector<double>[model.AllNodes];
        NodeExcess = new Vector<double>[model.AllNodes];
        BlockPower = new Vector<double>[model.Nodes];
        BlockDelay = new Vector<double>[model.Nodes];
        SourceDensity = new Vector<double>[model.Sources.Count];
        BufferTransfer = new ComplexLanes[model.Input.Buffers.Count];
        BufferDensity = new Vector<double>[BufferTransfer.Length];
        BufferExcess = new Vector<double>[BufferTransfer.Length];
    }

    public InputLanes Input { get; }

    /// <summary>The converter's pin among the nodes.</summary>
    public int Pin => BlockPower.Length - 1;

    /// <summary>H from the site to each node; behind the pin the stages' inner nodes.</summary>
    public ComplexLanes[] Node { get; }

    /// <summary>Noise density at each node [V²/Hz].</summary>
    public Vector<double>[] NodeDensity { get; }

    /// <summary>The electrodes' excess noise in it [V²/Hz].</summary>
    public Vector<double>[] NodeExcess { get; }

    /// <summary>What the reference's side puts into the noise behind the amplifier [V²/Hz]: every channel gets it alike.</summary>
    public Vector<double> SharedDensity { get; private set; }

    /// <summary>|H|² of each block by itself; block 0 is input network and amplifier.</summary>
    public Vector<double>[] BlockPower { get; }

    /// <summary>Group delay of each block by itself, after <see cref="SolveDelay"/> [s]; block 0 is input network and amplifier.</summary>
    public Vector<double>[] BlockDelay { get; }

    /// <summary>Density of each of the model's sources at the output of its own block [V²/Hz].</summary>
    public Vector<double>[] SourceDensity { get; }

    /// <summary>H from the site to the outputs of the electrodes' buffers, as <see cref="SolveBuffers"/> found it.</summary>
    public ComplexLanes[] BufferTransfer { get; }

    /// <summary>Noise density there, and the electrodes' excess noise in it [V²/Hz].</summary>
    public Vector<double>[] BufferDensity { get; }

    public Vector<double>[] BufferExcess { get; }

    /// <summary>|H| from the site to the converter's pin.</summary>
    public Vector<double> Size => Node[Pin].Magnitude;

    /// <summary>Lanes that needed the pivoted fallback so far.</summary>
    public int Fallbacks => Input.Fallbacks + _stages.Sum(stage => stage.Fallbacks);

    /// <summary>See <see cref="NetworkLanes.Live"/>.</summary>
    public int Live
    {
        set
        {
            Input.Live = value;
            foreach (StageLanes stage in _stages)
            {
                stage.Live = value;
            }
        }
    }

    /// <summary>Puts a build on each lane.</summary>
    public void Set(BuildLanes builds)
    {
        SetInput(builds);
        for (int i = 0; i < _stages.Length; i++)
        {
            _stages[i].Set(builds.Stages[i]);
            int source = _model.StageSource[i];
            bool hasOpAmp = _stages[i].HasOpAmp;
            _stages[i].Weigh(_model.Weight(source), hasOpAmp ? _model.Weight(source + 1) : 1, hasOpAmp ? _model.Weight(source + 2) : 1);
        }
    }

    /// <summary>Puts what stands in front of the stages on each lane.</summary>
    public void SetInput(BuildLanes builds)
    {
        Input.Set(builds);
        for (int i = 0; i < _level.Length; i++)
        {
            _level[i] = _model.InputNoises[i].Level(Input, builds) * _model.Weight(_model.InputNoises[i].Source);
        }

        _gain = builds.Gain;
        Vector<double> output = builds.OutputNoise / builds.Gain;
        _amplifierWhite = ((builds.InputNoise * builds.InputNoise) + (output * output)) * _model.Weight(_model.AmplifierVoltage);
    }

    /// <summary>Works out transfers and noise, and where it is asked for the blocks' group delays, at a frequency of each lane [Hz].</summary>
    public void Solve(Vector<double> hertz, bool withDelay = false)
    {
        SolveStages(hertz, withNoise: true, withDelay);
        Join(hertz, withDelay);
    }

    /// <summary>The same where the stages are solved at these frequencies already.</summary>
    public void Join(Vector<double> hertz, bool withDelay = false)
    {
        if (withDelay)
        {
            Input.Factor(hertz);
            Input.SolveDifference();
        }
        else
        {
            Input.FactorAndSolve(hertz);
        }

        Amplify(hertz);
        AddInputNoise(hertz);
        if (withDelay)
        {
            AddFrontDelay(hertz);
        }

        int inner = BlockPower.Length;
        for (int i = 0; i < _stages.Length; i++)
        {
            Pass(i);
            AddStageNoise(i);
            inner = AddInner(i, inner, withNoise: true);
        }
    }

    /// <summary>Works out the transfers alone at a frequency of each lane [Hz].</summary>
    public void SolveTransfer(Vector<double> hertz)
    {
        SolveStages(hertz, withNoise: false);
        Input.FactorAndSolve(hertz);
        Carry(hertz);
    }

    /// <summary>Solves the stages by themselves at a frequency of each lane [Hz].</summary>
    public void SolveStages(Vector<double> hertz, bool withNoise, bool withDelay = false)
    {
        if (!withDelay && _memory?.Recall(hertz, withNoise, _stages) == true)
        {
            return;
        }

        for (int i = 0; i < _stages.Length; i++)
        {
            StageLanes stage = _stages[i];
            stage.Solve(hertz);
            if (withDelay)
            {
                BlockDelay[i + 1] = stage.Delay();
            }

            if (withNoise)
            {
                stage.SolveNoise(hertz);
            }

            stage.SolveInner(hertz, withNoise);
        }

        _memory?.Keep(hertz, withNoise, _stages);
    }

    /// <summary>Works out the group delay of every block at a frequency of each lane [Hz], from the derivatives of the solved networks.</summary>
    public void SolveDelay(Vector<double> hertz)
    {
        Input.Factor(hertz);
        Input.SolveDifference();
        AddFrontDelay(hertz);
        for (int i = 0; i < _stages.Length; i++)
        {
            _stages[i].Solve(hertz);
            BlockDelay[i + 1] = _stages[i].Delay();
        }
    }

    /// <summary>Delay of input network and amplifier at the frequencies that the input network is solved for.</summary>
    private void AddFrontDelay(Vector<double> hertz)
    {
        double pole = 1 / _model.Design.Amplifier.Bandwidth.Hertz;
        Vector<double> x = hertz * pole;
        BlockDelay[0] = Input.FrontDelay(hertz) + (new Vector<double>(pole / (2 * Math.PI)) / (Vector<double>.One + (x * x)));
    }

    /// <summary>The transfers alone where the input network is solved for the difference at these frequencies already, and the
    /// stages.</summary>
    public void Carry(Vector<double> hertz)
    {
        Amplify(hertz);
        int inner = BlockPower.Length;
        for (int i = 0; i < _stages.Length; i++)
        {
            Pass(i);
            inner = AddInner(i, inner, withNoise: false);
        }
    }

    /// <summary>Works out transfers and noise at the outputs of the electrodes' buffers at a frequency of each lane [Hz]. They are no part
    /// of the path's chain, and only levels ask for them.</summary>
    public void SolveBuffers(Vector<double> hertz)
    {
        Input.Factor(hertz);
        for (int buffer = 0; buffer < BufferTransfer.Length; buffer++)
        {
            Input.Solve(_model.Input.BufferOutputs[buffer]);
            BufferTransfer[buffer] = Input.Admittance(InputLanes.Active) * Input.Transfer(_model.Input.SignalPort);
            Vector<double> total = Vector<double>.Zero, excess = Vector<double>.Zero;
            for (int i = 0; i < _level.Length; i++)
            {
                Vector<double> density = InputDensity(i, hertz);
                total += density;
                excess += _isExcess[_model.InputNoises[i].Source] ? density : Vector<double>.Zero;
            }

            (BufferDensity[buffer], BufferExcess[buffer]) = (total, excess);
        }
    }

    /// <summary>Gain and bandwidth of the amplifier: G/(1 + jf/f_b).</summary>
    private void Amplify(Vector<double> hertz)
    {
        Vector<double> x = hertz * (1 / _model.Design.Amplifier.Bandwidth.Hertz), scale = _gain / (Vector<double>.One + (x * x));
        ComplexLanes front = Input.Front;
        Node[0] = scale * new ComplexLanes(front.Re + (front.Im * x), front.Im - (front.Re * x));
        BlockPower[0] = Node[0].Power;
    }

    private void Pass(int stage)
    {
        ComplexLanes transfer = _stages[stage].Transfer;
        Node[stage + 1] = Node[stage] * transfer;
        BlockPower[stage + 1] = transfer.Power;
    }

    /// <summary>The stage's inner nodes, from a place among the nodes on; the place behind them.</summary>
    private int AddInner(int stage, int at, bool withNoise)
    {
        StageLanes lanes = _stages[stage];
        for (int i = 0; i < lanes.InnerTransfer.Length; i++)
        {
            Node[at] = Node[stage] * lanes.InnerTransfer[i];
            if (withNoise)
            {
                Vector<double> power = lanes.InnerTransfer[i].Power;
                (NodeDensity[at], NodeExcess[at]) = ((NodeDensity[stage] * power) + lanes.InnerNoise[i], NodeExcess[stage] * power);
            }

            at++;
        }

        return at;
    }

    private void AddInputNoise(Vector<double> hertz)
    {
        DifferentialAmplifier amplifier = _model.Design.Amplifier;
        int last = _model.AmplifierVoltage;
        SourceDensity.AsSpan(0, last).Clear();
        Vector<double> shared = Vector<double>.Zero;
        InputNoise[] noises = _model.InputNoises;
        for (int i = 0; i < _level.Length; i++)
        {
            Vector<double> own = InputDensity(i, hertz);
            SourceDensity[noises[i].Source] += own;
            shared += noises[i].IsShared ? own : Vector<double>.Zero;
        }

        SourceDensity[last] = NoiseDensity.Flicker(_amplifierWhite, amplifier.NoiseCorner.Hertz, hertz);
        Vector<double> x = hertz * (1 / amplifier.Bandwidth.Hertz), power = _gain * _gain / (Vector<double>.One + (x * x));
        Vector<double> total = Vector<double>.Zero, excess = Vector<double>.Zero;
        for (int source = 0; source <= last; source++)
        {
            Vector<double> density = SourceDensity[source] * power;
            SourceDensity[source] = density;
            total += density;
            excess += _isExcess[source] ? density : Vector<double>.Zero;
        }

        SharedDensity = shared * power;
        (NodeDensity[0], NodeExcess[0]) = (total, excess);
    }

    /// <summary>Density of one contribution of the input network at the output that it was last solved for [V²/Hz].</summary>
    private Vector<double> InputDensity(int contribution, Vector<double> hertz)
    {
        InputNoise noise = _model.InputNoises[contribution];
        Vector<double> level = _level[contribution];
        Vector<double> own = noise.Kind switch
        {
            InputNoiseKind.Flicker => NoiseDensity.Flicker(level, noise.Corner, hertz),
            InputNoiseKind.ElectrodeThermal => level * Input.Resistance[noise.Electrode] * Input.Admittance(noise.Electrode).Power,
            _ => level * LaneMath.InversePower(hertz, noise.Corner) * Input.Admittance(noise.Electrode).Power,
        };
        return own * Input.Transfer(noise.Port).Power;
    }

    private void AddStageNoise(int i)
    {
        StageLanes stage = _stages[i];
        int source = _model.StageSource[i];
        Vector<double> power = BlockPower[i + 1];
        Vector<double> total = (NodeDensity[i] * power) + stage.Noise;
        SourceDensity[source] = stage.ResistorNoise;
        if (stage.HasOpAmp)
        {
            SourceDensity[source + 1] = stage.CurrentNoise;
            SourceDensity[source + 2] = stage.VoltageNoise;
        }

        (NodeDensity[i + 1], NodeExcess[i + 1]) = (total, NodeExcess[i] * power);
    }
}
