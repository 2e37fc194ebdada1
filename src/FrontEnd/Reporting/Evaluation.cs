using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Reporting;

/// <summary>The budgets of one design, each worked out when it is first asked for and read by every report.</summary>
/// <remarks>Not for use by two threads at a time, but for what <see cref="Whole"/> has worked out.
/// <para>A design's channels may be unlike each other. Each kind of channel is evaluated once, and each family of figures is the one channel's, whole,
/// that is worst in what the family is judged by.</para></remarks>
internal sealed class Evaluation
{
    private readonly ChannelBudgets[] _kinds;
    private readonly int[] _kindOf;

    public Evaluation(Design design)
        : this(design, null)
    {
    }

    /// <param name="design">The design.</param>
    /// <param name="built">One device's own parts in the leads and its electrodes; null judges with tolerances and mismatch.</param>
    /// <param name="like">Another design's, judged alike; its budgets are taken over where they read nothing of what differs.</param>
    internal Evaluation(Design design, BuiltParts? built, Evaluation? like = null)
    {
        Design = design;
        (Design[] kinds, _kindOf) = Kinds(design);
        _kinds = new ChannelBudgets[kinds.Length];
        for (int i = 0; i < kinds.Length; i++)
        {
            _kinds[i] = new ChannelBudgets(kinds[i], built, like is not null && i < like._kinds.Length ? like._kinds[i] : null,
                0 < i ? _kinds[0] : null, 1 < kinds.Length);
        }
    }

    /// <summary>Of one channel alone.</summary>
    private Evaluation(ChannelBudgets one)
    {
        Design = one.Design;
        (_kinds, _kindOf) = ([one], [0]);
    }

    public Design Design { get; }

    /// <summary>What the channels see of sources where another design's are those of this one; null to work it out.</summary>
    public SharedSources? Sources { get; init; }

    /// <summary>The whole of the channel with the most noise of the board, which the figures of noise, gain, converter and filters are of.</summary>
    public Evaluation ForNoise => field ??= OfOne(WorstInNoise);

    /// <summary>Of the channel with the most mains, which the figures of mains, driven ground and input are of.</summary>
    public Evaluation ForMains => field ??= OfOne(WorstInMains);

    /// <summary>Of the channel that survives the least offset, which the levels are of.</summary>
    public Evaluation ForLevels => field ??= OfOne(WorstInLevels);

    /// <summary>Every kind of channel once.</summary>
    public IReadOnlyList<ChannelBudgets> EveryKind => _kinds;

    public SignalPath Path => WorstInNoise.Path;

    public DigitalChain Digital => WorstInNoise.Digital;

    public double CentreHertz => WorstInNoise.CentreHertz;

    /// <summary>|H_path| at the band's centre, without the converter's own response.</summary>
    public double PathGain => WorstInNoise.PathGain;

    public double GainMid => WorstInNoise.GainMid;

    public NoiseBudget Noise => WorstInNoise.Noise;

    public MainsBudget Mains => WorstInMains.Mains;

    /// <summary>Null without a driven ground.</summary>
    public DriveBudget? Drive => WorstInMains.Drive;

    public LevelsBudget Levels => WorstInLevels.Levels;

    /// <summary>The stages in time with ideal op-amps.</summary>
    public IReadOnlyList<StateSpace> IdealStages => WorstInNoise.IdealStages;

    /// <summary>What is recorded after a step of the electrodes' offset.</summary>
    public Recovery Recovery => WorstInLevels.Recovery;

    /// <summary>The budgets of a channel, counted from 0.</summary>
    public ChannelBudgets Of(int channel) => _kinds[_kindOf[channel]];

    /// <summary>The first channel of the kind that a family's figures are of; null where the design names no channels.</summary>
    public string? ChannelOf(Evaluation family)
    {
        int channel = Array.FindIndex(_kindOf, kind => _kinds[kind] == family._kinds[0]);
        return Design.ChannelList.Count == 0 || channel < 0 ? null : Design.ChannelList[channel].Name;
    }

    /// <summary>|H_path·H_adc| at many frequencies.</summary>
    public double[] PathAndConverter(double[] hertz) => WorstInNoise.PathAndConverter(hertz);

    /// <summary>What is recorded of a line at the electrodes, digital filters included [V rms RTI].</summary>
    /// <param name="volts">The line [V rms].</param>
    /// <param name="hertz">Its frequency before sampling [Hz].</param>
    public double RecordedAt(double volts, double hertz) => WorstInNoise.RecordedAt(volts, hertz);

    private ChannelBudgets WorstInNoise => field ??= Worst(kind => kind.Noise.WithoutExcess);

    private ChannelBudgets WorstInMains => field ??= Worst(kind => kind.Mains.AtInput.Total);

    /// <summary>That no node clips at any offset is the most that can be survived.</summary>
    private ChannelBudgets WorstInLevels => field ??= Worst(kind => -(kind.Levels.OffsetSurvived ?? double.PositiveInfinity));

    /// <summary>The same with every budget worked out that another evaluation may take over: from then on it is only read.</summary>
    /// <exception cref="NetworkHasNoAnswer">A budget's network has none.</exception>
    public Evaluation Whole()
    {
        foreach (ChannelBudgets kind in _kinds)
        {
            kind.Whole();
        }

        return this;
    }

    /// <summary>The first of those that have the most of something; where there is one kind only nothing needs to be known of it.</summary>
    private ChannelBudgets Worst(Func<ChannelBudgets, double> figure) => _kinds.Length == 1 ? _kinds[0] : _kinds.MaxBy(figure)!;

    private Evaluation OfOne(ChannelBudgets one) => _kinds.Length == 1 && ReferenceEquals(one.Design, Design) ? this : new Evaluation(one);

    /// <summary>The designs that the channels see, each once, and which of them each channel sees.</summary>
    private static (Design[] Kinds, int[] KindOf) Kinds(Design design)
    {
        List<(Electrodes.ElectrodeSet Set, int? Inputs)> seen = [];
        List<Design> kinds = [];
        int[] kindOf = new int[design.Channels];
        if (design.ChannelList.Count == 0)
        {
            return ([design.AsSeenBy(0)], kindOf);
        }

        for (int channel = 0; channel < kindOf.Length; channel++)
        {
            Design one = design.AsSeenBy(channel);
            (Electrodes.ElectrodeSet, int?) key = (Bare(one.Electrodes), one.Input.ReferenceInputs);
            kindOf[channel] = seen.IndexOf(key);
            if (kindOf[channel] < 0)
            {
                kindOf[channel] = seen.Count;
                seen.Add(key);
                kinds.Add(one);
            }
        }

        return ([.. kinds], kindOf);
    }

    /// <summary>Electrodes and buffers without what only their names and a spread read.</summary>
    private static Electrodes.ElectrodeSet Bare(Electrodes.ElectrodeSet set)
    {
        return set with
        {
            Active = Nameless(set.Active), Reference = Nameless(set.Reference), ActiveBuffer = Unnamed(set.ActiveBuffer), ReferenceBuffer = Unnamed(set.ReferenceBuffer),
        };

        static Electrodes.Electrode Nameless(Electrodes.Electrode one) => one with { Card = "", Ranges = Fields.PartRanges.None, OverTime = Fields.ContactOverTime.None };
        static Electrodes.ElectrodeBuffer? Unnamed(Electrodes.ElectrodeBuffer? one) =>
            one is null ? null : one with { Card = "", OpAmp = one.OpAmp with { Ranges = Fields.PartRanges.None } };
    }
}
