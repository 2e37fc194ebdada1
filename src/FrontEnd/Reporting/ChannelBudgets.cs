using System.Numerics;
using FrontEnd.Budgets;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Inputs;

namespace FrontEnd.Reporting;

/// <summary>The budgets of one kind of channel, worked out once and read by every report.</summary>
internal sealed class ChannelBudgets
{
    private readonly Lazy<DriveBudget?> _drive;

    /// <param name="design">The design as this kind of channel sees it.</param>
    /// <param name="built">One device's own parts in the leads and its electrodes; null judges with tolerances and mismatch.</param>
    /// <param name="like">Another design's channel, judged alike; its budgets are taken over where they read nothing of what differs. They are only
    /// read, so many evaluations may share them.</param>
    public ChannelBudgets(Design design, BuiltParts? built, ChannelBudgets? like)
    {
        Design = design;
        Path = new SignalPath(design, built);
        Digital = new DigitalChain(design.Digital, design.Converter.Rate, design.Arithmetic);
        double centre = design.Band.Centre.Hertz;
        Path.Sweep([centre]);
        CentreHertz = centre;
        Complex path = Path.Path(0);
        PathGain = path.Magnitude;
        GainMid = path.Magnitude * design.Converter.Response(centre);
        ChannelBudgets? noise = like is not null && UnchangedInputs.OfNoise(design, like.Design) ? like : null;
        Noise = noise?.Noise ?? new NoiseBudget(design, Path, Digital, GainMid);
        Mains = like is not null && UnchangedInputs.OfMains(design, like.Design) ? like.Mains
            : new MainsBudget(design, Path, Digital, GainMid, built);
        _drive = new(() => MakeDrive(design, built, like));
        Levels = new LevelsBudget(design, Path, Mains, noise?.Levels);
    }

    public Design Design { get; }

    public SignalPath Path { get; }

    public DigitalChain Digital { get; }

    public double CentreHertz { get; }

    /// <summary>|H_path| at the band's centre, without the converter's own response.</summary>
    public double PathGain { get; }

    public double GainMid { get; }

    public NoiseBudget Noise { get; }

    public MainsBudget Mains { get; }

    /// <summary>Null without a driven ground; worked out when it is first asked for.</summary>
    public DriveBudget? Drive => _drive.Value;

    public LevelsBudget Levels { get; }

    /// <summary>The stages in time with ideal op-amps.</summary>
    public IReadOnlyList<StateSpace> IdealStages => field ??= Array.ConvertAll(Path.Model.Stages, stage => StateSpace.Ideal(stage.Circuit));

    /// <summary>What is recorded after a step of the electrodes' offset.</summary>
    public Recovery Recovery => field ??= new Recovery(Path.Model, Levels.Direct, Digital.Sections, GainMid);

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

    private DriveBudget? MakeDrive(Design design, BuiltParts? built, ChannelBudgets? like) =>
        !design.GroundIsDriven ? null
        : like is not null && UnchangedInputs.OfDrive(design, like.Design) && like.Drive is { } drive ? drive
        : built is null ? new DriveBudget(Path.Model, BuiltParts.Worst(design))
        : new DriveBudget(Path.Model, built with { ActiveFactor = 1, ReferenceFactor = 1, GroundFactor = 1, ActiveLeadFactor = 1, ReferenceLeadFactor = 1 },
            built.NominalMains);
}
