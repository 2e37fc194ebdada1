using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>What stands at one node of the path, each part by its size and all added up, against the swing there [V]: one lane of <see
/// cref="NodeLevelLanes"/>.</summary>
internal sealed class NodeLevel(NodeId node, NodeLevelLanes at)
{
    public NodeId Node => node;

    /// <summary>Half of what the node can swing about its middle.</summary>
    public double Swing => at.Swing[0];

    /// <summary>From the electrodes' offset.</summary>
    public double Offset => at.Offset[0];

    /// <summary>Offset voltages and bias currents.</summary>
    public double OtherDc => at.OtherDc[0];

    public double Signal => at.Signal[0];

    public double Mains => at.Mains[0];

    public double Noise => at.Noise[0];

    /// <summary>Volts here per volt of electrode offset.</summary>
    public double OffsetGain => at.OffsetGain[0];

    /// <summary>Volts here per volt of signal.</summary>
    public double SignalGain => at.SignalGain[0];

    public double Total => at.Total[0];

    /// <summary>20·log10(swing/total) [dB]; null where nothing stands there.</summary>
    public double? Headroom => Finite(20 * Math.Log10(at.Headroom[0]));

    /// <summary>Largest electrode offset with everything else in place; null where the offset does not reach this node.</summary>
    public double? OffsetSurvived => Finite(at.OffsetSurvived[0]);

    public double? LargestSignal => Finite(at.LargestSignal[0]);

    /// <summary>The largest of the parts, in words.</summary>
    public string Dominates => new (string Name, double Size)[]
        {
            ("electrode offset", Offset), ("amplifier offsets and bias currents", OtherDc), ("signal", Signal), ("mains", Mains),
            ("noise", Noise),
        }.MaxBy(part => part.Size).Name;

    private static double? Finite(double value) => double.IsInfinity(value) ? null : value;
}

/// <summary>Levels at every node at the lowest battery voltage: one build's <see cref="LevelLanes"/>, with the integrals and largest values
/// over frequency that they rest on.</summary>
internal sealed class LevelsBudget
{
    internal const double LowestNoiseHertz = 0.01;

    private readonly Design _design;
    private readonly List<NodeLevel> _nodes = [];

    /// <param name="design">The design.</param>
    /// <param name="path">Its path.</param>
    /// <param name="mains">Its mains.</param>
    /// <param name="like">Levels of the same path at the same rate and in the same band; null for none.</param>
    public LevelsBudget(Design design, SignalPath path, MainsBudget mains, LevelsBudget? like = null)
    {
        _design = design;
        Converged = like?.Converged ?? true;
        NodeRms = like?.NodeRms ?? NodeNoise(path);
        SignalGain = like?.SignalGain ?? SignalGains(path);
        var levels = new LevelLanes(design);
        for (int node = 0; node < path.Model.LevelNodes; node++)
        {
            (levels.SignalGain[node], levels.NoiseRms[node]) = (new(SignalGain[node]), new(NodeRms[node]));
        }

        AddMains(levels, path, mains);
        Direct = DirectLanes.At(path.Lanes.Input, design, path.Builds);
        levels.Add(path.Builds, Direct);
        for (int node = 0; node < levels.Ids.Count; node++)
        {
            _nodes.Add(new NodeLevel(levels.Ids[node], levels.Nodes[node]));
        }

        DcAtConverter = levels.Converter.Offset[0] + levels.Converter.OtherDc[0];
    }

    /// <summary>The input network at dc, the same on all lanes.</summary>
    public DirectLanes Direct { get; }

    /// <summary>Noise at the amplifier's output and after each stage, 0.01 Hz to half the rate, rms [V]; behind them the stages' inner
    /// nodes, then the electrodes' buffers.</summary>
    public double[] NodeRms { get; }

    /// <summary>False where the noise at some node did not reach its tolerance.</summary>
    public bool Converged { get; private set; }

    /// <summary>Largest gain in the band to the amplifier's output and to each stage's.</summary>
    public double[] SignalGain { get; }

    /// <summary>Rms noise at the converter's pin, 0.01 Hz to half the rate [V].</summary>
    public double NoiseAtConverter => NodeRms[_design.Stages.Count];

    public IReadOnlyList<NodeLevel> Nodes => _nodes;

    /// <summary>|dc| at the converter's pin [V].</summary>
    public double DcAtConverter { get; }

    /// <summary>The node with the least headroom; null where nothing stands anywhere.</summary>
    public NodeLevel? FirstToClip => _nodes.Where(node => node.Headroom is not null).MinBy(node => node.Headroom);

    /// <summary>Largest electrode offset that no node clips at; null where the path is ac-coupled throughout.</summary>
    public double? OffsetSurvived => _nodes.Min(node => node.OffsetSurvived);

    public NodeLevel? OffsetLimitedBy => _nodes.Where(node => node.OffsetSurvived is not null).MinBy(node => node.OffsetSurvived);

    /// <summary>The node that clips most of those that the offset does not reach, or that clip without it; null where none does.</summary>
    public NodeLevel? ClipsWhateverTheOffset => _nodes.Where(node => node.Swing < node.Total - node.Offset).MinBy(node => node.Headroom);

    public double? LargestSignal => _nodes.Min(node => node.LargestSignal);

    public NodeLevel? SignalLimitedBy => _nodes.Where(node => node.LargestSignal is not null).MinBy(node => node.LargestSignal);

    /// <summary>Gain at dc by size, and the dc that the stage's own op-amps make at its output [V].</summary>
    internal static (double Gain, double Own) StageDc(Stage stage)
    {
        Circuit circuit = stage.Circuit();
        CircuitDc dc = new CircuitDc(circuit).Solve(CircuitDc.Nominal);
        return (dc.Gain(circuit.Output)[0], dc.Own(circuit.Output)[0]);
    }

    /// <summary>Rms at every node from 0.01 Hz to half the rate.</summary>
    private double[] NodeNoise(SignalPath path)
    {
        double high = _design.Converter.Rate.Hertz / 2;
        int nodes = path.Model.LevelNodes;
        BandIntegral integral = BandIntegral.Over(
            BreakPoints.Between([LowestNoiseHertz, Math.Max(LowestNoiseHertz, high)], path.Bends, 6),
            nodes,
            (hertz, values) =>
            {
                path.Sweep(hertz);
                path.SweepBuffers(hertz);
                for (int node = 0; node < nodes; node++)
                {
                    double[] density = node < path.AllNodes ? path.NodeDensity[node] : path.BufferDensity[node - path.AllNodes];
                    density.AsSpan(0, hertz.Length).CopyTo(values[node]);
                }
            },
            1e-6);
        Converged = integral.Converged;
        return [.. Enumerable.Range(0, nodes).Select(node => Math.Sqrt(integral.Sum(node)))];
    }

    /// <summary>Largest gain to every node within the band: of points all over it first, then of the top of the parabola through the loudest
    /// and its neighbours, round by round.</summary>
    private double[] SignalGains(SignalPath path)
    {
        double low = _design.Band.Low.Hertz, high = _design.Band.High.Hertz;
        const int Points = 64, Rounds = 5;
        var peaks = new GainPeak[path.Model.LevelNodes];
        var hertz = new double[Points];
        for (int i = 0; i < Points; i++)
        {
            hertz[i] = low * Math.Pow(high / low, i / (Points - 1.0));
        }

        Look(path, hertz, (node, at, gain) => peaks[node].See(hertz, at, gain));

        // An inner node of a notch is loudest at the notch's own frequency, which a narrow one may hide between two points.
        double[] own = [.. _design.Stages.Select(stage => stage.Notch?.Centre.Hertz ?? 0).Where(f => low < f && f < high)];
        foreach (double[] some in own.Chunk(SignalPath.Chunk))
        {
            Look(path, some, (node, at, gain) => peaks[node].Add(some[at], gain));
        }

        double[] tops = new double[peaks.Length];
        for (int round = 0; round < Rounds; round++)
        {
            for (int node = 0; node < tops.Length; node++)
            {
                tops[node] = peaks[node].Next();
            }

            Look(path, tops, (node, at, gain) =>
            {
                if (node == at)
                {
                    peaks[node].Add(tops[at], gain);
                }
            });
        }

        return Array.ConvertAll(peaks, peak => peak.Gain);
    }

    /// <summary>Tells of the gain to every node at some frequencies.</summary>
    private static void Look(SignalPath path, double[] hertz, Action<int, int, double> tell)
    {
        path.SweepTransfer(hertz);
        path.SweepBuffers(hertz);
        for (int node = 0; node < path.Model.LevelNodes; node++)
        {
            for (int i = 0; i < hertz.Length; i++)
            {
                tell(node, i, node < path.AllNodes ? path.Size(node, i) : path.BufferSize[node - path.AllNodes][i]);
            }
        }
    }

    private static void AddMains(LevelLanes levels, SignalPath path, MainsBudget mains)
    {
        foreach (MainsHarmonic[] some in mains.Harmonics.Chunk(SignalPath.Chunk))
        {
            path.SweepTransfer([.. some.Select(harmonic => harmonic.Hertz)]);
            for (int i = 0; i < some.Length; i++)
            {
                MainsAtInput at = some[i].AtInput;
                levels.AddMains(new(at.CommonMode), new(at.Difference), new(at.Drive), new(at.FirstBuffer), new(at.SecondBuffer));
                for (int node = 0; node < path.AllNodes; node++)
                {
                    levels.AddNodeMains(node, new(at.Total), new(path.Size(node, i)));
                }
            }
        }
    }
}
