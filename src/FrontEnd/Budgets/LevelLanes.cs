using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>What stands at one node of the path on each lane, each part by its size, against the swing there [V].</summary>
internal readonly record struct NodeLevelLanes
{
    /// <summary>Swing over level of a node that cannot swing at all: −300 dB.</summary>
    private const double NoSwing = 1e-15;

    /// <summary>Below it a gain counts as none: the node does not see the offset or the signal.</summary>
    private const double NoGain = 1e-12;

    /// <summary>Half of what the node can swing about its middle.</summary>
    public Vector<double> Swing { get; init; }

    /// <summary>Volts here per volt of electrode offset.</summary>
    public Vector<double> OffsetGain { get; init; }

    /// <summary>From the electrodes' offset.</summary>
    public Vector<double> Offset { get; init; }

    /// <summary>Offset voltages and bias currents.</summary>
    public Vector<double> OtherDc { get; init; }

    /// <summary>Volts here per volt of signal.</summary>
    public Vector<double> SignalGain { get; init; }

    public Vector<double> Signal { get; init; }

    /// <summary>Peak of the mains.</summary>
    public Vector<double> Mains { get; init; }

    /// <summary>Peak of the noise.</summary>
    public Vector<double> Noise { get; init; }

    public Vector<double> Total => Offset + OtherDc + Signal + Mains + Noise;

    /// <summary>Swing over level; infinite where nothing stands there, 1e-15 where the node cannot swing.</summary>
    public Vector<double> Headroom
    {
        get
        {
            Vector<double> total = Total;
            Vector<double> ratio = Vector.ConditionalSelect(
                Vector.LessThan(Vector<double>.Zero, Swing), Swing / total, new Vector<double>(NoSwing));
            return Vector.ConditionalSelect(
                Vector.LessThan(Vector<double>.Zero, total), ratio, new Vector<double>(double.PositiveInfinity));
        }
    }

    /// <summary>Largest electrode offset with everything else in place [V]; infinite where the offset does not reach this node.</summary>
    public Vector<double> OffsetSurvived => Largest(OtherDc + Signal + Mains + Noise, OffsetGain);

    /// <summary>Largest signal with everything else in place [V]; infinite where the signal does not reach this node.</summary>
    public Vector<double> LargestSignal => Largest(Offset + OtherDc + Mains + Noise, SignalGain);

    private Vector<double> Largest(Vector<double> rest, Vector<double> gain) => Vector.ConditionalSelect(
        Vector.LessThan(new Vector<double>(NoGain), gain), Vector.Max(Vector<double>.Zero, (Swing - rest) / gain),
            new Vector<double>(double.PositiveInfinity));
}

/// <summary>Levels at every node at the lowest battery voltage: dc by size, signal peak, mains peak and noise peak, added
/// linearly.</summary>
/// <remarks>Set what stands at the nodes (gains, peaks, rms), then <see cref="Add"/> sums up every node that can clip.</remarks>
internal sealed class LevelLanes
{
    /// <summary>Peak of noise over its rms: half of what its peak-to-peak counts.</summary>
    internal const double NoisePeakFactor = TradeConstants.NoisePeakToPeak / 2;

    private readonly Design _design;
    private readonly bool _isDriven;
    private readonly double[] _bufferSwing;
    private readonly int[] _stageNode;
    private readonly string[][] _inner;
    private readonly string[] _output;
    private readonly NodeLevelLanes[] _nodes;

    public LevelLanes(Design design)
    {
        _design = design;
        _isDriven = design.GroundIsDriven;
        int stages = design.Stages.Count;
        _inner = [.. design.Stages.Select(stage => stage.Circuit().InnerClipping.ToArray())];
        _output = [.. design.Stages.Select(stage => stage.Circuit().Output)];
        (NodeId Id, ElectrodeBuffer? Buffer)[] buffers =
            [(NodeId.ActiveBuffer, design.Electrodes.ActiveBuffer), (NodeId.ReferenceBuffer, design.Electrodes.ReferenceBuffer)];
        _bufferSwing = [.. buffers.Select(one => one.Buffer).OfType<ElectrodeBuffer>().Select(buffer => NodeSwing.Of(design, buffer.OpAmp))];
        FirstBuffer = stages + 1 + _inner.Sum(inner => inner.Length);
        int nodes = FirstBuffer + _bufferSwing.Length;
        SignalGain = new Vector<double>[nodes];
        MainsPeak = new Vector<double>[nodes];
        NoiseRms = new Vector<double>[nodes];

        // The electrodes' buffers, the amplifier's two inner nodes and its output, every stage that has an op-amp, the converter, the
        // driven ground.
        List<NodeId> ids = [.. buffers.Where(one => one.Buffer is not null).Select(one => one.Id)];
        ids.AddRange([NodeId.AmplifierInnerPlus, NodeId.AmplifierInnerMinus, NodeId.Amplifier]);
        _stageNode = [.. Enumerable.Repeat(-1, stages)];
        for (int i = 0; i < stages; i++)
        {
            ids.AddRange(_inner[i].Select(inner => NodeId.Of($"{design.Stages[i].Name} {inner}")));
            if (design.Stages[i].FittedOpAmp is not null)
            {
                _stageNode[i] = ids.Count;
                ids.Add(NodeId.Of(design.Stages[i].Name));
            }
        }

        ids.Add(NodeId.Converter);
        ids.AddRange(_isDriven ? [NodeId.Drive] : Array.Empty<NodeId>());
        Ids = ids;
        _nodes = new NodeLevelLanes[ids.Count];
    }

    /// <summary>Where the outputs of the electrodes' buffers begin among what stands at the nodes.</summary>
    public int FirstBuffer { get; }

    /// <summary>Largest gain in the band to the amplifier's output and to each stage's; behind them the stages' inner nodes, then the
    /// electrodes' buffers.</summary>
    public Vector<double>[] SignalGain { get; }

    /// <summary>√2·Σ_h of the mains residue there [V].</summary>
    public Vector<double>[] MainsPeak { get; }

    /// <summary>Noise there, rms from <see cref="LevelsBudget.LowestNoiseHertz"/> to half the rate [V].</summary>
    public Vector<double>[] NoiseRms { get; }

    /// <summary>√2·Σ_h of the mean and of the difference of the amplifier's inputs, and of the driven ground's output [V].</summary>
    public Vector<double> CommonPeak { get; set; }

    public Vector<double> DifferencePeak { get; set; }

    public Vector<double> DrivePeak { get; set; }

    /// <summary>The nodes that can clip.</summary>
    public IReadOnlyList<NodeId> Ids { get; }

    /// <summary>What stands at each of them.</summary>
    public ReadOnlySpan<NodeLevelLanes> Nodes => _nodes;

    /// <summary>The converter's pin among them.</summary>
    public NodeLevelLanes Converter => _nodes[_nodes.Length - (_isDriven ? 2 : 1)];

    /// <summary>Empties the sums over harmonics and frequencies.</summary>
    public void Clear()
    {
        Array.Clear(SignalGain);
        Array.Clear(MainsPeak);
        Array.Clear(NoiseRms);
        (CommonPeak, DifferencePeak, DrivePeak) = (default, default, default);
    }

    /// <summary>Adds one harmonic of the mains at the input network: mean and difference of the amplifier's inputs, driven ground's and
    /// buffers' outputs [V rms].</summary>
    public void AddMains(Vector<double> common, Vector<double> difference, Vector<double> drive, Vector<double> firstBuffer,
        Vector<double> secondBuffer)
    {
        CommonPeak += Math.Sqrt(2) * common;
        DifferencePeak += Math.Sqrt(2) * difference;
        DrivePeak += Math.Sqrt(2) * drive;
        for (int buffer = 0; buffer < _bufferSwing.Length; buffer++)
        {
            MainsPeak[FirstBuffer + buffer] += Math.Sqrt(2) * (buffer == 0 ? firstBuffer : secondBuffer);
        }
    }

    /// <summary>Adds one harmonic at a node behind the amplifier.</summary>
    /// <param name="node">0 for the amplifier's output, then the stages' in order.</param>
    /// <param name="atInput">The harmonic at the input [V rms RTI].</param>
    /// <param name="size">|H| from the site to the node.</param>
    public void AddNodeMains(int node, Vector<double> atInput, Vector<double> size) => MainsPeak[node] += Math.Sqrt(2) * atInput * size;

    /// <summary>Sums up every node.</summary>
    /// <param name="builds">The builds.</param>
    /// <param name="direct">Their input networks at dc.</param>
    public void Add(BuildLanes builds, in DirectLanes direct)
    {
        Vector<double> offset = Vector.Abs(builds.ElectrodeOffset), gain = builds.Gain;
        AddBuffers(offset, direct);
        Vector<double> difference = Vector.Abs(direct.Difference.Offset),
            inputDc = direct.Difference.Own + Vector.Abs(builds.OffsetVoltage);

        // An inner node carries the common mode and half of the amplified difference.
        int amplifier = _bufferSwing.Length;
        _nodes[amplifier] = _nodes[amplifier + 1] = Node(
            new(NodeSwing.AmplifierInner(_design)), offset, Vector.Abs(direct.Mean.Offset) + (gain / 2 * difference),
            direct.Mean.Own + (gain / 2 * inputDc),
            (SignalGain[0] / 2) + new Vector<double>(0.5), CommonPeak + (gain / 2 * DifferencePeak), NoiseRms[0] / 2);
        Vector<double> offsetGain = gain * difference, dc = gain * inputDc;
        _nodes[amplifier + 2] = Node(
            new(NodeSwing.Amplifier(_design)), offset, offsetGain, dc, SignalGain[0], MainsPeak[0], NoiseRms[0]);
        int inner = _design.Stages.Count + 1;
        for (int i = 0; i < _stageNode.Length; i++)
        {
            Stage stage = _design.Stages[i];
            CircuitDc stageDc = builds.Stages[i].Dc();
            Vector<double> swing = new(NodeSwing.Of(_design, stage));
            for (int k = 0; k < _inner[i].Length; k++, inner++)
            {
                Vector<double> innerGain = stageDc.Gain(_inner[i][k]);
                _nodes[_stageNode[i] - _inner[i].Length + k] = Node(
                    swing, offset, offsetGain * innerGain, (dc * innerGain) + stageDc.Own(_inner[i][k]), SignalGain[inner],
                        MainsPeak[inner], NoiseRms[inner]);
            }

            Vector<double> dcGain = stageDc.Gain(_output[i]);
            offsetGain *= dcGain;
            dc = (dc * dcGain) + stageDc.Own(_output[i]);
            if (0 <= _stageNode[i])
            {
                _nodes[_stageNode[i]] = Node(swing, offset, offsetGain, dc, SignalGain[i + 1], MainsPeak[i + 1], NoiseRms[i + 1]);
            }
        }

        int at = _nodes.Length - (_isDriven ? 2 : 1), pin = _design.Stages.Count;
        _nodes[at] = Node(
            ConverterSupply.Swing(_design.Converter, _design.Supply.Lowest, builds.FullScale), offset, offsetGain, dc, SignalGain[pin],
            MainsPeak[pin], NoiseRms[pin]);
        if (_isDriven)
        {
            _nodes[^1] = Node(
                new(NodeSwing.Drive(_design)), offset, Vector.Abs(direct.Drive.Offset), direct.Drive.Own, new(0.5),
                DrivePeak, Vector<double>.Zero);
        }
    }

    /// <summary>Largest electrode offset that no node clips at [V]; infinite where the path is ac-coupled throughout.</summary>
    public Vector<double> OffsetSurvived()
    {
        var least = new Vector<double>(double.PositiveInfinity);
        foreach (ref readonly NodeLevelLanes node in Nodes)
        {
            least = Vector.Min(least, node.OffsetSurvived);
        }

        return least;
    }

    /// <summary>Least swing over level of all nodes; infinite where nothing stands anywhere.</summary>
    public Vector<double> LeastHeadroom()
    {
        var least = new Vector<double>(double.PositiveInfinity);
        foreach (ref readonly NodeLevelLanes node in Nodes)
        {
            least = Vector.Min(least, node.Headroom);
        }

        return least;
    }

    /// <summary>The electrodes' buffers stand ahead of everything else.</summary>
    private void AddBuffers(Vector<double> offset, in DirectLanes direct)
    {
        for (int buffer = 0; buffer < _bufferSwing.Length; buffer++)
        {
            DirectAt at = buffer == 0 ? direct.FirstBuffer : direct.SecondBuffer;
            int node = FirstBuffer + buffer;
            _nodes[buffer] = Node(new(_bufferSwing[buffer]), offset, Vector.Abs(at.Offset), at.Own, SignalGain[node],
                MainsPeak[node], NoiseRms[node]);
        }
    }

    private NodeLevelLanes Node(
        Vector<double> swing, Vector<double> offset, Vector<double> offsetGain, Vector<double> dc, Vector<double> signalGain,
        Vector<double> mainsPeak, Vector<double> noiseRms) => new()
    {
        Swing = swing,
        OffsetGain = offsetGain,
        Offset = offsetGain * offset,
        OtherDc = dc,
        SignalGain = signalGain,
        Signal = signalGain * _design.LargestSignal.Volts,
        Mains = mainsPeak,
        Noise = NoisePeakFactor * noiseRms,
    };
}
