using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>What stands at one node of the path, each part by its size and all added up, against the swing there [V].</summary>
internal sealed record NodeLevel(NodeId Node)
{
    /// <summary>Half of what the node can swing about its middle.</summary>
    public double Swing { get; init; }

    /// <summary>From the electrodes' offset.</summary>
    public double Offset { get; init; }

    /// <summary>Offset voltages and bias currents.</summary>
    public double OtherDc { get; init; }

    public double Signal { get; init; }

    public double Mains { get; init; }

    public double Noise { get; init; }

    /// <summary>Volts here per volt of electrode offset.</summary>
    public double OffsetGain { get; init; }

    /// <summary>Volts here per volt of signal.</summary>
    public double SignalGain { get; init; }

    public double Total => Offset + OtherDc + Signal + Mains + Noise;

    /// <summary>20·log10(swing/total) [dB]; null where nothing stands there.</summary>
    public double? Headroom => 0 < Total && 0 < Swing ? 20 * Math.Log10(Swing / Total) : 0 < Total ? -300 : null;

    /// <summary>Largest electrode offset with everything else in place; null where the offset does not reach this node.</summary>
    public double? OffsetSurvived => 1e-12 < OffsetGain ? Math.Max(0, (Swing - (Total - Offset)) / OffsetGain) : null;

    public double? LargestSignal => 1e-12 < SignalGain ? Math.Max(0, (Swing - (Total - Signal)) / SignalGain) : null;

    /// <summary>The largest of the parts, in words.</summary>
    public string Dominates => new (string Name, double Size)[]
        {
            ("electrode offset", Offset), ("amplifier offsets and bias currents", OtherDc), ("signal", Signal), ("mains", Mains), ("noise", Noise),
        }.MaxBy(part => part.Size).Name;
}

/// <summary>Levels at every node at the lowest battery voltage: dc by size, signal peak, mains peak and noise peak, added linearly.</summary>
internal sealed class LevelsBudget
{
    internal const double LowestNoiseHertz = 0.01;
    internal const double NoisePeakFactor = 3.3;

    private readonly Design _design;
    private readonly List<NodeLevel> _nodes = [];

    public LevelsBudget(Design design, SignalPath path, MainsBudget mains, BuiltParts? built = null)
    {
        _design = design;
        DirectCurrent = new DirectCurrent(design, path.Input, built: built);
        NodeRms = NodeNoise(path);
        SignalGain = SignalGains(path);
        double[] noise = NodeRms, signalGain = SignalGain, mainsPeak = MainsPeaks(path, mains);
        double gain = design.Amplifier.Gain, offset = Math.Abs(design.Electrodes.Offset.Volts), signal = design.LargestSignal.Volts;
        double difference = Math.Abs(DirectCurrent.OffsetDifference), mean = Math.Abs(DirectCurrent.OffsetMean);
        double half = design.Supply.HalfRailVolts - design.Amplifier.InnerMargin.Volts;
        double commonPeak = Math.Sqrt(2) * mains.Harmonics.Sum(harmonic => harmonic.AtInput.CommonMode);
        double differencePeak = Math.Sqrt(2) * mains.Harmonics.Sum(harmonic => harmonic.AtInput.Difference);
        double inputDc = Math.Abs(DirectCurrent.BiasDifference) + Math.Abs(design.Amplifier.OffsetVoltage.Volts);
        var inner = new NodeLevel(NodeId.AmplifierInnerPlus)
        {
            Swing = half,
            OffsetGain = mean + (gain / 2 * difference),
            Offset = offset * (mean + (gain / 2 * difference)),
            OtherDc = Math.Abs(DirectCurrent.BiasMean) + (gain / 2 * inputDc),
            SignalGain = (signalGain[0] / 2) + 0.5,
            Signal = signal * ((signalGain[0] / 2) + 0.5),
            Mains = commonPeak + (gain / 2 * differencePeak),
            Noise = NoisePeakFactor * noise[0] / 2,
        };
        _nodes.Add(inner);
        _nodes.Add(inner with { Node = NodeId.AmplifierInnerMinus });
        double offsetGain = gain * difference, otherDc = gain * inputDc;
        _nodes.Add(Node(NodeId.Amplifier, design.Supply.HalfRailVolts - design.Amplifier.OutputMargin.Volts, 0));
        for (int i = 0; i < design.Stages.Count; i++)
        {
            Stage stage = design.Stages[i];
            (double dcGain, double ownDc) = StageDc(stage);
            offsetGain *= dcGain;
            otherDc = (otherDc * dcGain) + ownDc;
            if (stage.FittedOpAmp is { } opAmp)
            {
                _nodes.Add(Node(NodeId.Of(stage.Name), design.Supply.HalfRailVolts - opAmp.OutputMargin.Volts, i + 1));
            }
        }

        DcAtConverter = (offsetGain * offset) + otherDc;
        _nodes.Add(Node(NodeId.Converter, design.Converter.FullScale.Volts / 2, design.Stages.Count));
        if (design.GroundIsDriven)
        {
            double driveGain = Math.Abs(DirectCurrent.OffsetDrive);
            _nodes.Add(new NodeLevel(NodeId.Drive)
            {
                Swing = design.Supply.HalfRailVolts - design.GroundDrive.OutputMargin.Volts,
                OffsetGain = driveGain,
                Offset = driveGain * offset,
                OtherDc = Math.Abs(DirectCurrent.BiasDrive),
                SignalGain = 0.5,
                Signal = 0.5 * signal,
                Mains = mains.DriveSwing,
            });
        }

        NodeLevel Node(NodeId id, double swing, int node) => new(id)
        {
            Swing = swing,
            OffsetGain = offsetGain,
            Offset = offsetGain * offset,
            OtherDc = otherDc,
            SignalGain = signalGain[node],
            Signal = signalGain[node] * signal,
            Mains = mainsPeak[node],
            Noise = NoisePeakFactor * noise[node],
        };
    }

    public DirectCurrent DirectCurrent { get; }

    /// <summary>Noise at the amplifier's output and after each stage, 0.01 Hz to half the rate, rms [V].</summary>
    public double[] NodeRms { get; }

    /// <summary>Largest gain in the band to the amplifier's output and to each stage's.</summary>
    public double[] SignalGain { get; }

    /// <summary>Rms noise at the converter's pin, 0.01 Hz to half the rate [V].</summary>
    public double NoiseAtConverter => NodeRms[^1];

    public IReadOnlyList<NodeLevel> Nodes => _nodes;

    /// <summary>|dc| at the converter's pin [V].</summary>
    public double DcAtConverter { get; }

    /// <summary>The node with the least headroom; null where nothing stands anywhere.</summary>
    public NodeLevel? FirstToClip => _nodes.Where(node => node.Headroom is not null).MinBy(node => node.Headroom);

    /// <summary>Largest electrode offset that no node clips at; null where the path is ac-coupled throughout.</summary>
    public double? OffsetSurvived => _nodes.Min(node => node.OffsetSurvived);

    public NodeLevel? OffsetLimitedBy => _nodes.Where(node => node.OffsetSurvived is not null).MinBy(node => node.OffsetSurvived);

    public double? LargestSignal => _nodes.Min(node => node.LargestSignal);

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
        var breaks = new List<double> { LowestNoiseHertz };
        for (double f = LowestNoiseHertz * 6; f < high * 0.6; f *= 6)
        {
            breaks.Add(f);
        }

        breaks.Add(high);
        BandIntegral integral = BandIntegral.Over(
            [.. breaks],
            path.Nodes,
            (hertz, values) =>
            {
                path.Sweep(hertz);
                for (int node = 0; node < path.Nodes; node++)
                {
                    path.NodeDensity[node].AsSpan(0, hertz.Length).CopyTo(values[node]);
                }
            },
            1e-6);
        return [.. Enumerable.Range(0, path.Nodes).Select(node => Math.Sqrt(integral.Sum(node)))];
    }

    /// <summary>Largest gain to every node within the band.</summary>
    private double[] SignalGains(SignalPath path)
    {
        double low = _design.Band.Low.Hertz, high = _design.Band.High.Hertz;
        var hertz = new double[64];
        for (int i = 0; i < hertz.Length; i++)
        {
            hertz[i] = low * Math.Pow(high / low, i / (hertz.Length - 1.0));
        }

        path.Sweep(hertz);
        var gains = new double[path.Nodes];
        for (int node = 0; node < path.Nodes; node++)
        {
            for (int i = 0; i < hertz.Length; i++)
            {
                gains[node] = Math.Max(gains[node], Magnitude(path, node, i));
            }
        }

        return gains;
    }

    /// <summary>√2·Σ_h of the mains residue at every node.</summary>
    private static double[] MainsPeaks(SignalPath path, MainsBudget mains)
    {
        var peaks = new double[path.Nodes];
        foreach (MainsHarmonic[] some in mains.Harmonics.Chunk(SignalPath.Chunk))
        {
            path.Sweep([.. some.Select(harmonic => harmonic.Hertz)]);
            for (int node = 0; node < path.Nodes; node++)
            {
                for (int i = 0; i < some.Length; i++)
                {
                    peaks[node] += Math.Sqrt(2) * some[i].AtInput.Total * Magnitude(path, node, i);
                }
            }
        }

        return peaks;
    }

    private static double Magnitude(SignalPath path, int node, int lane) =>
        Math.Sqrt((path.NodeRe[node][lane] * path.NodeRe[node][lane]) + (path.NodeIm[node][lane] * path.NodeIm[node][lane]));
}
