using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Reporting;

/// <summary>The budgets of one kind of channel, each worked out when it is first asked for and read by every report.</summary>
/// <remarks>Not for use by two threads at a time, but for what <see cref="Whole"/> has worked out.</remarks>
internal sealed class ChannelBudgets
{
    private readonly BuiltParts? _built;
    private readonly ChannelBudgets? _like;

    /// <param name="design">The design as this kind of channel sees it.</param>
    /// <param name="built">One device's own parts in the leads and its electrodes; null judges with tolerances and mismatch.</param>
    /// <param name="like">Another design's channel, judged alike; its budgets are taken over where they read nothing of what differs.</param>
    /// <param name="other">Another channel of the same design: what both have behind the input is worked out once; null for none.</param>
    /// <param name="isOneOfMany">True where other channels will be made from this one.</param>
    public ChannelBudgets(Design design, BuiltParts? built, ChannelBudgets? like, ChannelBudgets? other = null, bool isOneOfMany = false)
    {
        Design = design;
        Path = new SignalPath(design, built, other?.Path, isOneOfMany);
        Digital = other?.Digital ?? new DigitalChain(design.Digital, design.Converter.Rate, design.Arithmetic);
        double centre = design.Band.Centre.Hertz;
        Path.Sweep([centre]);
        CentreHertz = centre;
        Complex path = Path.Path(0);
        PathGain = path.Magnitude;
        GainMid = path.Magnitude * design.Converter.Response(centre);
        (_built, _like) = (built, like);
    }

    public Design Design { get; }

    public SignalPath Path { get; }

    public DigitalChain Digital { get; }

    public double CentreHertz { get; }

    /// <summary>|H_path| at the band's centre, without the converter's own response.</summary>
    public double PathGain { get; }

    public double GainMid { get; }

    public NoiseBudget Noise => field ??= OfSameNoise?.Noise ?? new NoiseBudget(Design, Path, Digital, GainMid);

    public MainsBudget Mains => field ??= _like is not null && UnchangedInputs.OfMains(Design, _like.Design)
        ? _like.Mains
        : new MainsBudget(Design, Path, Digital, GainMid, _built);

    /// <summary>Null without a driven ground.</summary>
    public DriveBudget? Drive => field ??= !Design.GroundIsDriven ? null
        : _like?.Drive is { } drive && UnchangedInputs.OfDrive(Design, _like.Design) ? drive
        : _built is null ? new DriveBudget(Path.Model, BuiltParts.Worst(Design))
        : new DriveBudget(Path.Model,
            _built with { ActiveFactor = 1, ReferenceFactor = 1, GroundFactor = 1, ActiveLeadFactor = 1, ReferenceLeadFactor = 1 },
            _built.NominalMains);

    public LevelsBudget Levels => field ??= new LevelsBudget(Design, Path, Mains, OfSameNoise?.Levels);

    /// <summary>The stages in time with ideal op-amps.</summary>
    public IReadOnlyList<StateSpace> IdealStages => field ??= Array.ConvertAll(Path.Model.Stages, stage => StateSpace.Ideal(stage.Circuit));

    /// <summary>What is recorded after a step of the electrodes' offset.</summary>
    public Recovery Recovery => field ??= new Recovery(Path.Model, Levels.Direct, Digital.Sections, GainMid);

    /// <summary>The other channel where its noise is this one's too; null else.</summary>
    private ChannelBudgets? OfSameNoise => _like is not null && UnchangedInputs.OfNoise(Design, _like.Design) ? _like : null;

    /// <summary>The same with every budget worked out that another may take over: from then on it is only read.</summary>
    /// <exception cref="NetworkHasNoAnswer">A budget's network has none.</exception>
    public ChannelBudgets Whole()
    {
        _ = (Noise, Drive, Levels);
        return this;
    }

    /// <summary>|H_path·H_adc| at many frequencies.</summary>
    public double[] PathAndConverter(double[] hertz)
    {
        var gains = new double[hertz.Length];
        for (int first = 0; first < hertz.Length; first += SignalPath.Chunk)
        {
            int n = Math.Min(SignalPath.Chunk, hertz.Length - first);
            Path.SweepTransfer(hertz.AsSpan(first, n));
            for (int i = 0; i < n; i++)
            {
                gains[first + i] = Path.Path(i).Magnitude * Design.Converter.Response(hertz[first + i]);
            }
        }

        return gains;
    }

    /// <summary>What is recorded of a line at the electrodes, digital filters included [V rms RTI].</summary>
    /// <param name="volts">The line [V rms].</param>
    /// <param name="hertz">Its frequency before sampling [Hz].</param>
    public double RecordedAt(double volts, double hertz) =>
        MainsBudget.RecordedAt(new(volts), new(PathAndConverter([hertz])[0] / GainMid), Digital, hertz, Design.Converter.Rate.Hertz)[0];
}
