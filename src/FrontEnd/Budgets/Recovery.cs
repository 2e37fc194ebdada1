using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Identity;
using FrontEnd.Topologies;

namespace FrontEnd.Budgets;

/// <summary>What is recorded after a step of the electrodes' offset, the limits of every node with it.</summary>
/// <remarks>
/// From rest. The input network acts by its transfer at dc, amplifier and stages are linear in time (real op-amps), a limiter stands behind
/// each, the converter's own behind the last; its decimator is left out and nothing is rounded. The digital filters run on the samples at
/// k/fs, the first just after the step.
/// </remarks>
internal sealed class Recovery
{
    /// <summary>Volts at the input that count as recovered.</summary>
    public const double Tolerance = 10e-6;

    private const int CurvePoints = 400;

    private readonly double _rate;
    private readonly SecondOrderSections _digital;
    private readonly double _gainMid;
    private readonly List<Part> _parts = [];

    /// <param name="model">The design's path.</param>
    /// <param name="direct">Its input network at dc.</param>
    /// <param name="digital">Its digital filters.</param>
    /// <param name="gainMid">Recorded volts over volts at the input in the middle of the band.</param>
    public Recovery(PathModel model, in DirectLanes direct, SecondOrderSections digital, double gainMid)
    {
        Design design = model.Design;
        StepVolts = design.OffsetStep.Volts;
        (_rate, _digital, _gainMid) = (design.Converter.Rate.Hertz, digital, gainMid);
        double common = Math.Abs(direct.Mean.Offset[0]) * StepVolts;
        var chain = new LimitedChain([.. Blocks(model, common)], Math.Abs(direct.Difference.Offset[0]) * StepVolts, 1 / _rate);
        HeldBy = chain.HeldBy;
        if (chain.Stretches() is not { } stretches)
        {
            return;
        }

        AddParts(stretches);
        Part last = _parts[^1];
        if (last.Recorded.Steps.DiedDownAfter() is null)
        {
            _parts.Clear();
            return;
        }

        FinalVolts = last.Recorded.Final / gainMid;
        LastSample = HeldBy is null ? FindLast() : null;
    }

    /// <summary>Samples of one stretch.</summary>
    private sealed record Part(long First, RecordedStretch Recorded, double[] State);

    /// <summary>The step at the electrodes [V].</summary>
    public double StepVolts { get; }

    /// <summary>The limiter that acts for good, and what would stand there without it [V]; null for none.</summary>
    public (LimitedBlock Block, double Volts)? HeldBy { get; }

    /// <summary>False where the recording never comes to rest.</summary>
    public bool ComesToRest => _parts.Count != 0;

    /// <summary>What is recorded long after the step, referred to the input [V].</summary>
    public double FinalVolts { get; }

    /// <summary>Number of the last sample that is more than <see cref="Tolerance"/> from it; 0 where none is, null where a limiter still
    /// acts or the recording never comes to rest.</summary>
    public long? LastSample { get; }

    public double? Seconds => LastSample / _rate;

    /// <summary>The recording, referred to the input, until somewhat after it has recovered [s and V].</summary>
    public (double[] Seconds, double[] Volts) Curve()
    {
        double until = LastSample is { } last ? Math.Max(64, 1.5 * last)
            : ComesToRest ? Math.Max(64, Math.ScaleB(1, _parts[^1].Recorded.Steps.DiedDownAfter()!.Value - 2)) : 0;
        int doublings = Math.Max(0, (int)Math.Ceiling(Math.Log2(Math.Max(1, until) / CurvePoints)));
        List<double> seconds = [], volts = [];
        int part = -1;
        long at = 0;
        double[] state = [], work = [];
        for (long sample = 0; ComesToRest && sample <= until; sample += 1L << doublings)
        {
            if (part + 1 < _parts.Count && _parts[part + 1].First <= sample)
            {
                part = _parts.FindLastIndex(one => one.First <= sample);
                (state, at) = ([.. _parts[part].State], _parts[part].First);
                work = new double[state.Length];
            }

            _parts[part].Recorded.Steps.AdvanceBy(sample - at, state, work);
            at = sample;
            seconds.Add(sample / _rate);
            volts.Add(_parts[part].Recorded.At(state) / _gainMid);
        }

        return ([.. seconds], [.. volts]);
    }

    private static IEnumerable<LimitedBlock> Blocks(PathModel model, double common)
    {
        Design design = model.Design;

        // The difference stands at the amplifier's output, half of it with either sign beside the common mode at the inner nodes.
        double output = NodeSwing.Amplifier(design), inner = 2 * (NodeSwing.AmplifierInner(design) - common);
        yield return new(NodeId.Amplifier, StateSpace.LowPass(design.Amplifier.Gain, design.Amplifier.Bandwidth.Hertz),
            Math.Max(0, Math.Min(output, inner)));
        foreach (StageModel one in model.Stages)
        {
            Stage stage = one.Stage;
            double swing = stage.FittedOpAmp is null ? double.PositiveInfinity : Math.Max(0, NodeSwing.Of(design, stage));
            yield return new(NodeId.Of(stage.Name), StateSpace.Of(one.Circuit), swing);
        }

        yield return new(NodeId.Converter, new StateSpace([], [], [], 1),
            ConverterSupply.Swing(design.Converter, design.Supply.Lowest).Volts);
    }

    /// <summary>Goes through the stretches; a stretch between two samples is passed over by the digital filters.</summary>
    private void AddParts(IReadOnlyList<(double Start, Stretch During, double[] State)> stretches)
    {
        double[] filters = new double[2 * _digital.Count];
        for (int i = 0; i < stretches.Count; i++)
        {
            (double start, Stretch during, double[] left) = stretches[i];
            double first = Math.Ceiling(start), end = i + 1 < stretches.Count ? Math.Ceiling(stretches[i + 1].Start) : double.PositiveInfinity;
            if (end <= first)
            {
                continue;
            }

            RecordedStretch recorded = during.Recorded ??= new RecordedStretch(during, _digital);
            double[] analog = [.. left], work = new double[analog.Length];
            during.Steps.AdvanceBy((long)Math.Round(Math.ScaleB(first - start, during.Sample)), analog, work);
            int n = analog.Length;
            double[] state = [.. analog, .. filters.Select((volts, k) => volts - recorded.Rest[n + k])];
            _parts.Add(new Part((long)first, recorded, state));
            if (double.IsFinite(end))
            {
                double[] there = (double[])state.Clone();
                recorded.Steps.AdvanceBy((long)(end - first), there, new double[there.Length]);
                filters = [.. there.Skip(n).Select((volts, k) => volts + recorded.Rest[n + k])];
            }
        }
    }

    private long FindLast()
    {
        double tolerance = Tolerance * _gainMid, end = _parts[^1].Recorded.Final;
        for (int part = _parts.Count - 1; 0 <= part; part--)
        {
            (long first, RecordedStretch recorded, double[] state) = _parts[part];
            long samples = part + 1 < _parts.Count ? _parts[part + 1].First - first : recorded.Samples;
            if (recorded.LastAbove(state, samples, tolerance, end) is { } found)
            {
                return first + found;
            }
        }

        return 0;
    }
}
