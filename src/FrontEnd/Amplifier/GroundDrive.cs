using FrontEnd.Circuits;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Amplifier;

/// <summary>How the amplifier common is tied to the body.</summary>
public enum GroundKind
{
    /// <summary>The ground electrode is tied to the amplifier's common through its resistor.</summary>
    Passive,

    /// <summary>The ground electrode is driven with the inverted mean of the inputs.</summary>
    Driven,
}

/// <summary>What the ground electrode is tied to.</summary>
public sealed record GroundDrive
{
    public GroundKind Kind { get; init; } = GroundKind.Passive;

    /// <summary>Resistor between the ground electrode and common or the driving amplifier; none unless given.</summary>
    public Resistance SeriesResistor { get; init; }

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>K0.</summary>
    public double DcGain { get; init; } = 10000;

    /// <summary>f_u.</summary>
    public Frequency UnityGainFrequency { get; init; } = Frequency.FromHertz(2000);

    /// <summary>f_2: bandwidth of the averaging of the two inputs; null for the amplifier's.</summary>
    public Frequency? AveragingBandwidth { get; init; }

    /// <summary>True where the averaging is taken as infinitely fast.</summary>
    public bool AveragingUnlimited { get; init; }

    public Voltage OutputMargin { get; init; } = Voltage.FromMillivolts(50);

    /// <summary>White voltage noise of the driving amplifier.</summary>
    public VoltageNoiseDensity VoltageNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(55);

    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(20);

    /// <summary>Its fields, in the order of the key table.</summary>
    internal static readonly IReadOnlyList<Field<GroundDrive>> Rows =
    [
        Word("kind", "kind", "passive", Practice,
            "passive: tied to common through the resistor; driven: driven with the inverted mean of the inputs",
            [new("passive", GroundKind.Passive), new("driven", GroundKind.Driven)],
            (GroundDrive g) => g.Kind, (g, v) => g with { Kind = v })
            .UsuallyAny(),
        Value("series-resistor", "series_R", Closed(0, 1e9), "0 Ω", "none fitted unless given",
            "resistor between the ground electrode and common or the driving amplifier; the quoted limits require at least the highest voltage over 50 µA (passive), 10 µA (driven)",
            (GroundDrive g) => g.SeriesResistor, (g, v) => g with { SeriesResistor = v }, safety: true)
            .Usually(1e3, 470e3),
        Value("resistor-tolerance", "resistor_tolerance", Below(0, 1), "1 %", Practice, "tolerance of that resistor, ±",
            (GroundDrive g) => g.ResistorTolerance, (g, v) => g with { ResistorTolerance = v }, safety: true),
        Value("dc-gain", "dc_gain", Above(0, 1e12), "10000", Practice, "gain of the driving amplifier at dc, K0",
            (GroundDrive g) => g.DcGain, (g, v) => g with { DcGain = v })
            .Usually(100, 1e5),
        Value("unity-gain-frequency", "unity_gain_f", Above(0, 1e9), "2 kHz", Practice, "where the driving amplifier's gain is 1, f_u",
            (GroundDrive g) => g.UnityGainFrequency, (g, v) => g with { UnityGainFrequency = v })
            .Usually(100, 10e3),
        new()
        {
            Key = "averaging-bandwidth",
            JsonKey = "averaging_bandwidth",
            Kind = FieldKind.Quantity,
            Quantity = QuantityKind.Of<Frequency>(),
            Meaning = "bandwidth of the averaging of the two inputs, f_2; \"unlimited\" assumes it is infinitely fast",
            Range = Above(0, 1e12),
            NullWord = "auto",
            SpecialWord = "unlimited",
            DefaultText = "the amplifier's bandwidth",
            DefaultIsValue = false,
            DefaultSource = Derived,
            Get = g => g.AveragingUnlimited ? "unlimited" : (object?)g.AveragingBandwidth,
            Set = (g, v) => g with { AveragingUnlimited = v is string, AveragingBandwidth = v as Frequency? },
        },
        Value("output-margin", "output_margin", Closed(0, 20), "50 mV", OpAmpFields.CmosClass,
            "how close to the rails the driving amplifier's output may go",
            (GroundDrive g) => g.OutputMargin, (g, v) => g with { OutputMargin = v }),
        Value("voltage-noise", "voltage_noise", Closed(0, 1e-3), "55 nV/√Hz", OpAmpFields.CmosClass,
            "white voltage noise of the driving amplifier",
            (GroundDrive g) => g.VoltageNoise, (g, v) => g with { VoltageNoise = v }),
        Value("supply-current", "supply_current", Closed(0, 10), "20 µA", OpAmpFields.CmosClass, "supply current of the driving amplifier",
            (GroundDrive g) => g.SupplyCurrent, (g, v) => g with { SupplyCurrent = v })
            .Usually(5e-6, 200e-6),
    ];
}
