using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;

namespace FrontEnd.Simulation;

/// <summary>The samples that the designed device would deliver on a made-up head: noise source by source, the mains, signals if they are asked for, through
/// the path, the converter and the digital filters. Nothing is recorded, and nobody.</summary>
/// <remarks>
/// Noise is Gaussian with the densities of the budget (<see cref="Numbers.ColouredNoise"/>), the reference's side common to all channels, what folds
/// folded; where something may clip before the converter, or where it is asked for, everything goes step by step at 17 times the rate through amplifier and
/// stages with a limiter behind each, so that folds come by themselves. The converter limits, adds its noise and rounds; the digital filters run in the word and
/// form of the design. The mains is the budget's worst case. Left out: offset voltages and bias currents, interference but for the mains, the contact
/// check, the supply's ripple and noise, limiters at the stages' inner nodes and at the driven ground, the skew of a multiplexed converter.
/// <para>Source: the densities' and levels' formulas are the budgets'; the method: derived.</para>
/// </remarks>
internal sealed class SampleRun
{
    private readonly Evaluation _evaluation;
    private readonly ChannelBudgets[] _kinds;

    private SampleRun(Design design, SampleWish wish, LeftOut leftOut)
    {
        (Wish, LeftOut) = (wish, leftOut);
        _evaluation = new Evaluation(design);
        _kinds = [.. _evaluation.EveryKind];
        Rate = design.Converter.Rate;
        Count = (long)Math.Round(wish.Length.Seconds * Rate.Hertz);
        KindOf = [.. Enumerable.Range(0, design.Channels).Select(channel => Array.IndexOf(_kinds, _evaluation.Of(channel)))];
        VoltsPerStep = [.. KindOf.Select(kind => design.Converter.LsbVolts / _kinds[kind].GainMid)];
        Head = new HeadActivity(design, wish);
        IsStepByStep = wish.StepByStep || Head.HasLeadOff || _kinds.Any(MayClip);
        LargestExpected = [.. KindOf.Select((kind, channel) => Math.Min(FullScaleSteps, ExpectedVolts(kind) / VoltsPerStep[channel]))];
        Events = [.. Head.Events(Channels).OrderBy(one => one.Start.Seconds)];
    }

    /// <summary>The design, without what is left out of it.</summary>
    public Design Design => _evaluation.Design;

    public SampleWish Wish { get; }

    /// <summary>What each channel is called.</summary>
    public IReadOnlyList<string> Channels => Design.ChannelNames;

    public Frequency Rate { get; }

    /// <summary>Samples of each channel.</summary>
    public long Count { get; }

    /// <summary>True where every value is a whole step of the converter.</summary>
    public bool AreWhole => !LeftOut.Rounding && (Design.Digital.Count == 0 || Design.Arithmetic.IsFixed);

    /// <summary>One step of the converter at the electrodes, channel by channel [V].</summary>
    public IReadOnlyList<double> VoltsPerStep { get; }

    /// <summary>What a value of each channel is not expected to go beyond, in steps: at most half of full scale.</summary>
    public IReadOnlyList<double> LargestExpected { get; }

    /// <summary>Half of full scale in steps of the converter.</summary>
    public double FullScaleSteps => Design.Converter.FullScale.Volts / 2 / Design.Converter.LsbVolts;

    /// <summary>What is known to happen, in order.</summary>
    public IReadOnlyList<SampleEvent> Events { get; }

    /// <summary>True where everything goes from node to node at 17 times the rate, so that nodes can clip.</summary>
    public bool IsStepByStep { get; }

    /// <summary>True for a channel with a minus electrode of its own.</summary>
    internal bool HasOwnReference(int channel) => 0 < Design.ChannelList.Count && Design.ChannelList[channel].Minus is not null;

    internal LeftOut LeftOut { get; }

    internal HeadActivity Head { get; }

    internal int[] KindOf { get; }

    internal IReadOnlyList<ChannelBudgets> Kinds => _kinds;

    internal Evaluation Evaluation => _evaluation;

    /// <summary>Makes ready what is asked for; null where a finding says what is wrong with it.</summary>
    /// <param name="design">A design of which every value is known, without errors.</param>
    /// <param name="wish">How long, with what and without what.</param>
    /// <param name="findings">Told what is wrong, and what the samples do not hold.</param>
    public static SampleRun? Prepare(Design design, SampleWish wish, ICollection<Finding> findings)
    {
        double samples = wish.Length.Seconds * design.Converter.Rate.Hertz;
        if (samples < LeastSamples || SampleWish.Longest.Seconds < wish.Length.Seconds)
        {
            findings.Add(SampleMessages.NoLength(QuantityText.FormatPart(wish.Length)));
            return null;
        }

        if (LeftOut.Of(design, wish, findings) is not { } leftOut)
        {
            return null;
        }

        var run = new SampleRun(leftOut.From(design), wish, leftOut);
        run.Head.Warn(findings);
        return run;
    }

    /// <summary>The samples from the first to the last, some thousand of every channel at a time; as often as they are asked for, always the same.</summary>
    public IEnumerable<SampleBlock> Blocks(CancellationToken cancellation = default)
    {
        var maker = new SampleMaker(this);
        for (long first = 0; first < Count; first += SampleMaker.Most)
        {
            cancellation.ThrowIfCancellationRequested();
            yield return maker.Next(first, (int)Math.Min(SampleMaker.Most, Count - first));
        }
    }

    private const int LeastSamples = 16;

    /// <summary>True where a node before the converter may reach its limit: with twice the peak that levels count for noise, so that it stays below it for
    /// days.</summary>
    private bool MayClip(ChannelBudgets kind) => kind.Levels.Nodes.Any(node => node.Node != NodeId.Converter && node.Node != NodeId.Drive
        && node.Swing <= (LeftOut.Hum ? 0 : node.Mains) + (2 * node.Noise) + (Head.PeakVolts * node.SignalGain) + (Head.OffsetVolts * node.OffsetGain));

    /// <summary>At the electrodes: a generous bound, with what a filter may overshoot [V].</summary>
    private double ExpectedVolts(int kind)
    {
        const double noise = 8, overshoot = 2;
        ChannelBudgets one = _kinds[kind];
        double mains = LeftOut.Hum ? 0 : Math.Sqrt(2) * one.Mains.Harmonics.Sum(harmonic => harmonic.Converter);
        return (noise * one.Levels.NoiseAtConverter / one.GainMid) + (overshoot * (mains + Head.PeakVolts + Head.OffsetVolts))
            + (Head.HasLeadOff ? double.PositiveInfinity : 0);
    }
}
