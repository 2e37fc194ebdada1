using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>Where one node goes with an electrode off, limited at its swing [V].</summary>
/// <param name="Dc">Its dc, by size; behind a limiter the middle of what the limiter leaves.</param>
/// <param name="Mains">Peak of the mains about it, likewise.</param>
/// <param name="Clips">True where more would stand there if nothing limited it.</param>
internal sealed record OpenNode(NodeId Node, double Swing, double Dc, double Mains, bool Clips)
{
    /// <summary>The farthest that it goes from its middle.</summary>
    public double Farthest => Dc + Mains;
}

/// <summary>Where every node of the path goes with one electrode off: dc from bias currents and offsets, held at the rails, and the mains
/// that the floating lead picks up; each node passes on what its limit leaves.</summary>
internal sealed class OpenElectrode
{
    private readonly Design _design;
    private readonly Lead _lead;
    private readonly MainsAtInput[] _mains;
    private readonly double[][] _gain;
    private readonly SignalPath _path;
    private readonly int[] _inner;
    private readonly List<OpenNode> _nodes = [];

    /// <param name="design">The design.</param>
    /// <param name="path">Its path.</param>
    /// <param name="mains">Its mains.</param>
    /// <param name="gains">Of <see cref="Gains"/>, the same for every lead.</param>
    /// <param name="lead">The electrode that is off.</param>
    public OpenElectrode(Design design, SignalPath path, MainsBudget mains, double[][] gains, Lead lead)
    {
        (_design, _path, _lead, _gain) = (design, path, lead, gains);
        _mains = mains.WithOpenElectrode((int)lead);
        _inner = new int[design.Stages.Count];
        for (int i = 1, at = path.Nodes; i <= _inner.Length; i++)
        {
            _inner[i - 1] = at;
            at += path.Model.Stages[i - 1].InnerNodes.Count;
        }

        foreach (OpenInputDc dc in new OpenInput(design, path.Model.Input, path.Built, (int)lead).All())
        {
            Walk(dc);
        }
    }

    /// <summary>Every node of the levels, in their order, each for the signs that take it farthest.</summary>
    public IReadOnlyList<OpenNode> Nodes => _nodes;

    /// <summary>Dc at the amplifier's open input, or at the output of the buffer whose input is open; at the one that goes farther where the
    /// ground electrode is off and both move [V].</summary>
    public double InputDc { get; private set; }

    /// <summary>Peak of the mains about it [V].</summary>
    public double InputMains { get; private set; }

    /// <summary>True where it reaches the rail.</summary>
    public bool InputAtRail => _design.Supply.FarRailVolts * (1 - 1e-6) <= InputDc + InputMains;

    /// <summary>|H| from the amplifier's input to the path's nodes, by node and harmonic.</summary>
    public static double[][] Gains(SignalPath path, MainsBudget mains)
    {
        double[][] gain = [.. Enumerable.Range(0, path.AllNodes).Select(_ => new double[mains.Harmonics.Count])];
        int first = 0;
        foreach (MainsHarmonic[] some in mains.Harmonics.Chunk(SignalPath.Chunk))
        {
            path.SweepTransfer([.. some.Select(harmonic => harmonic.Hertz)]);
            for (int i = 0; i < some.Length; i++)
            {
                double front = Math.Sqrt((path.FrontRe[i] * path.FrontRe[i]) + (path.FrontIm[i] * path.FrontIm[i]));
                for (int node = 0; node < gain.Length; node++)
                {
                    gain[node][first + i] = front == 0 ? 0 : path.Size(node, i) / front;
                }
            }

            first += some.Length;
        }

        return gain;
    }

    /// <summary>One wave on its way along the path: its dc and the peak of each harmonic.</summary>
    private sealed class Wave(double dc, double[] peaks)
    {
        public double Dc { get; set; } = dc;

        public double[] Peaks { get; } = peaks;

        public double Peak => Peaks.Sum();

        /// <summary>Cuts it off at a limit on either side: what is left has another middle and a smaller peak.</summary>
        /// <returns>Whether anything was cut off, and the share of the peak that is left.</returns>
        public (bool Clips, double Left) Limit(double limit)
        {
            double peak = Peak, high = Math.Clamp(Dc + peak, -limit, limit), low = Math.Clamp(Dc - peak, -limit, limit);
            bool clips = limit < Math.Abs(Dc) + peak;
            if (!clips)
            {
                return (false, 1);
            }

            double left = peak == 0 ? 1 : (high - low) / 2 / peak;
            Dc = (high + low) / 2;
            Scale(left);
            return (true, left);
        }

        public void Scale(double factor)
        {
            for (int i = 0; i < Peaks.Length; i++)
            {
                Peaks[i] *= factor;
            }
        }

        public Wave Through(double dc, double own, Func<int, double> size) =>
            new((dc * Dc) + (Dc < 0 ? -own : own), [.. Peaks.Select((peak, i) => peak * size(i))]);
    }

    private double[] Peaks(Func<MainsAtInput, double> rms) => [.. _mains.Select(harmonic => Math.Sqrt(2) * rms(harmonic))];

    /// <summary>Walks along the path with one choice of signs.</summary>
    private void Walk(OpenInputDc dc)
    {
        int at = 0;
        ElectrodeSet set = _design.Electrodes;
        bool isBuffered = false;
        for (int buffer = 0; buffer < dc.Buffers.Length; buffer++)
        {
            bool isActive = buffer == 0 && set.ActiveBuffer is not null;
            ElectrodeBuffer part = (isActive ? set.ActiveBuffer : set.ReferenceBuffer)!;
            int which = buffer;
            var wave = new Wave(dc.Buffers[buffer].Volts, Peaks(one => which == 0 ? one.FirstBuffer : one.SecondBuffer));
            Put(at++, isActive ? NodeId.ActiveBuffer : NodeId.ReferenceBuffer, wave, NodeSwing.Of(_design, part.OpAmp),
                dc.Buffers[buffer].IsHeld);
            if (_lead == (isActive ? Lead.Active : Lead.Reference))
            {
                isBuffered = true;
                Note(wave);
            }
        }

        (Wave difference, Wave common) = AtAmplifier(dc, isBuffered);
        Wave output = Amplify(ref at, difference, common);
        for (int i = 0; i < _design.Stages.Count; i++)
        {
            output = Pass(ref at, i, output);
        }

        Put(at++, NodeId.Converter, new Wave(output.Dc, [.. output.Peaks]),
            ConverterSupply.Swing(_design.Converter, _design.Supply.Lowest).Volts);
        if (_design.GroundIsDriven)
        {
            Put(at, NodeId.Drive, new Wave(dc.Drive.Volts, Peaks(one => one.Drive)), NodeSwing.Drive(_design),
                dc.Drive.IsHeld);
        }
    }

    /// <summary>Difference and mean of the amplifier's inputs, the open one (with the ground electrode off: both) held at the rails with
    /// its mains. Behind an open buffer, whose output is held already, the lead is not open.</summary>
    private (Wave Difference, Wave Common) AtAmplifier(OpenInputDc dc, bool isBuffered)
    {
        double[] differences = Peaks(one => one.Difference), commons = Peaks(one => one.CommonMode);
        double rail = _design.Supply.FarRailVolts, active = dc.Active, reference = dc.Reference;
        double open = _lead switch { Lead.Active => active, Lead.Reference => reference, _ => (active + reference) / 2 };
        var wave = new Wave(open, [.. _lead == Lead.Ground ? commons : differences]);
        double left = isBuffered ? 1 : wave.Limit(rail).Left, shift = wave.Dc - open;
        active += _lead == Lead.Reference ? 0 : shift;
        reference += _lead == Lead.Active ? 0 : shift;
        double goes = _lead switch { Lead.Active => active, Lead.Reference => reference, _ => Math.MaxMagnitude(active, reference) };
        if (!isBuffered)
        {
            var farther = new Wave(goes, [.. wave.Peaks]);
            farther.Limit(rail);
            Note(farther);
        }

        var difference = new Wave(active - reference, differences);
        var common = new Wave((active + reference) / 2, commons);
        difference.Scale(left);
        common.Scale(left);
        return (difference, common);
    }

    /// <summary>Keeps what stands at the open input if no other signs took it farther.</summary>
    private void Note(Wave input)
    {
        if (InputDc + InputMains <= Math.Abs(input.Dc) + input.Peak)
        {
            (InputDc, InputMains) = (Math.Abs(input.Dc), input.Peak);
        }
    }

    /// <summary>The amplifier's inner nodes, each of which can hold the output, and its output.</summary>
    private Wave Amplify(ref int at, Wave difference, Wave common)
    {
        double gain = _design.Amplifier.Gain, inner = NodeSwing.AmplifierInner(_design);
        double volts = difference.Dc + (difference.Dc < 0 ? -1 : 1) * Math.Abs(_design.Amplifier.OffsetVoltage.Volts);
        double[] innerPeaks = [.. common.Peaks.Zip(difference.Peaks, (c, d) => c + (gain / 2 * d))];
        var plus = new Wave(common.Dc + (gain / 2 * volts), [.. innerPeaks]);
        var minus = new Wave(common.Dc - (gain / 2 * volts), [.. innerPeaks]);
        double left = (Put(at++, NodeId.AmplifierInnerPlus, plus, inner) + Put(at++, NodeId.AmplifierInnerMinus, minus, inner)) / 2;
        var output = new Wave(plus.Dc - minus.Dc, [.. difference.Peaks.Select((peak, i) => peak * _gain[0][i])]);
        output.Scale(left);
        Put(at++, NodeId.Amplifier, output, NodeSwing.Amplifier(_design));
        return output;
    }

    private Wave Pass(ref int at, int i, Wave input)
    {
        Stage stage = _design.Stages[i];
        CircuitDc dc = _path.Builds.Stages[i].Dc();
        double swing = NodeSwing.Of(_design, stage);
        Circuit circuit = _path.Model.Stages[i].Circuit;
        int inner = _inner[i];
        foreach (string node in circuit.InnerClipping)
        {
            int number = inner++;
            Put(at++, NodeId.Of($"{stage.Name} {node}"), input.Through(dc.Gain(node)[0], dc.Own(node)[0], h => Ratio(number, h)), swing);
        }

        Wave output = input.Through(dc.Gain(circuit.Output)[0], dc.Own(circuit.Output)[0], h => Ratio(i + 1, h));
        if (stage.FittedOpAmp is not null)
        {
            Put(at++, NodeId.Of(stage.Name), output, swing);
        }

        return output;

        double Ratio(int node, int harmonic) => _gain[i][harmonic] == 0 ? 0 : _gain[node][harmonic] / _gain[i][harmonic];
    }

    /// <summary>Limits a wave at a node and keeps it there if no other signs took the node farther.</summary>
    /// <returns>The share of its peak that is left.</returns>
    private double Put(int at, NodeId node, Wave wave, double swing, bool isHeld = false)
    {
        double limit = Math.Max(0, swing);
        (bool clips, double left) = wave.Limit(limit);
        clips |= isHeld;
        var here = new OpenNode(node, limit, Math.Abs(wave.Dc), wave.Peak, clips);
        if (at == _nodes.Count)
        {
            _nodes.Add(here);
        }
        else if (_nodes[at].Farthest < here.Farthest || (clips && !_nodes[at].Clips))
        {
            _nodes[at] = here with { Clips = clips || _nodes[at].Clips };
        }

        return left;
    }
}
