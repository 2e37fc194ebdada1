using FrontEnd.Amplifier;
using FrontEnd.Converter;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Head;
using FrontEnd.Interference;
using FrontEnd.Topologies;

namespace FrontEnd.Designs;

/// <summary>What the user chose: the chain from scalp to samples and what is asked of it. Immutable.</summary>
/// <remarks>Every property has a default; where it depends on other choices it is null here and the block's <c>Effective…</c> property
/// resolves it. Meaning, unit, range, default and source of each field stand in the catalogue of fields (FrontEnd.Fields).</remarks>
public sealed record Design
{
    /// <summary>What the band of the whole design is called where bands are named.</summary>
    public const string WholeBand = "design";

    /// <summary>What the design is called.</summary>
    public string Name { get; init; } = "unnamed design";

    /// <summary>What the device is for, in the builder's words; printed on the sheet.</summary>
    public string Purpose { get; init; } = "";

    /// <summary>A sentence that must stand on the sheet's first lines, such as "for calculation only"; "" for none.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Number of recorded channels, one converter input each.</summary>
    public int Channels { get; init; } = 1;

    /// <summary>The band that noise and mains are worked out in.</summary>
    public Band Band { get; init; } = new(WholeBand, Frequency.FromHertz(0.5), Frequency.FromHertz(40));

    /// <summary>Smallest signal that must still be seen.</summary>
    public VoltageRms SmallestSignal { get; init; } = VoltageRms.FromMicrovolts(0.5);

    /// <summary>Largest signal that must pass without clipping, peak.</summary>
    public Voltage LargestSignal { get; init; } = Voltage.FromMillivolts(2);

    /// <summary>The step of the electrodes' offset that recovery is worked out for: the offset between them, or the one that is asked for
    /// where they have none.</summary>
    public Voltage OffsetStep => Electrodes.Offset.Volts == 0 ? Requirements.Offset : Voltage.FromVolts(Math.Abs(Electrodes.Offset.Volts));

    /// <summary>Temperature of the resistors on the board [K].</summary>
    public Temperature BoardTemperature { get; init; } = Temperature.FromKelvins(298.15);

    /// <summary>Temperature of the electrodes' contact [K].</summary>
    public Temperature SkinTemperature { get; init; } = Temperature.FromKelvins(306.15);

    /// <summary>The mains around the wearer.</summary>
    public Mains Mains { get; init; } = new();

    /// <summary>Electrodes and their buffers.</summary>
    public ElectrodeSet Electrodes { get; init; } = new();

    /// <summary>Protection and bias between leads and amplifier.</summary>
    public InputNetwork Input { get; init; } = new();

    /// <summary>The first amplifier.</summary>
    public DifferentialAmplifier Amplifier { get; init; } = new();

    /// <summary>What the ground electrode is tied to.</summary>
    public GroundDrive GroundDrive { get; init; } = new();

    /// <summary>Gain stages and anti-alias sections between the amplifier and the converter, in the order of the path.</summary>
    public IReadOnlyList<Stage> Stages { get; init; } = [];

    /// <summary>The converter.</summary>
    public AnalogDigitalConverter Converter { get; init; } = new();

    /// <summary>Digital filters behind the converter, in order.</summary>
    public IReadOnlyList<DigitalStage> Digital { get; init; } = [];

    /// <summary>Word and form in which the digital filters are computed; the chain uses them as rounded.</summary>
    public DigitalArithmetic Arithmetic { get; init; } = new();

    /// <summary>Battery and rails.</summary>
    public Supply Supply { get; init; } = new();

    /// <summary>Sites and how channels are formed from them.</summary>
    public Montage Montage { get; init; } = new();

    /// <summary>Bands that are reported besides the design band.</summary>
    public IReadOnlyList<Band> Bands { get; init; } = Band.Conventional;

    /// <summary>The head that sites and sources are placed on; null for the usual one.</summary>
    public HeadMeasures? Head { get; init; }

    /// <summary>Pieces of cortex whose rhythms are to be seen.</summary>
    public IReadOnlyList<CortexPatch> Patches { get; init; } = [];

    /// <summary>What the rest of the brain does beside them; null for the usual.</summary>
    public BackgroundActivity? Background { get; init; }

    /// <summary>Interference besides the mains, each with a band.</summary>
    public IReadOnlyList<Interferer> Interferers { get; init; } = [Interferer.Muscle];

    /// <summary>The check of the electrodes' contact; null for none.</summary>
    public ContactCheck? ContactCheck { get; init; }

    /// <summary>What is asked of the figures.</summary>
    public Requirements Requirements { get; init; } = new();

    /// <summary>Delay of radio or cable packets that adds to the latency; null where not given.</summary>
    public Duration? PacketTime { get; init; }

    /// <summary>N: how many channel inputs hang on the reference electrode's lead; 1 where it is buffered.</summary>
    public int EffectiveReferenceInputs => Input.ReferenceInputs ?? (Montage.ReferenceBuffered ? 1 : Channels);

    /// <summary>True where a ground electrode is there and driven; without the electrode the drive has no effect.</summary>
    public bool GroundIsDriven => GroundDrive.Kind == GroundKind.Driven && Electrodes.Ground is not null;

    /// <summary>The amplifier's averaging bandwidth for the driven ground, f2; null where it is taken as unlimited.</summary>
    public Frequency? EffectiveAveragingBandwidth =>
        GroundDrive.AveragingUnlimited ? null : GroundDrive.AveragingBandwidth ?? Amplifier.Bandwidth;
}
