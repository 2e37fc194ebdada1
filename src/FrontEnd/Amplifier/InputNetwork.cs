using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Amplifier;

/// <summary>What stands between the electrodes' leads and the differential amplifier.</summary>
public sealed record InputNetwork
{
    /// <summary>Each lead to the amplifier's common: cable shield, protection parts.</summary>
    public Capacitance LeadToCommon { get; init; } = Capacitance.FromPicofarads(10);

    /// <summary>g: share of lead-to-common that a driven shield ties to the lead's own potential.</summary>
    public Ratio DrivenShield { get; init; }

    /// <summary>Protection resistor in each of the two measuring leads. A resistor counts only if it is fitted: none unless
    /// given.</summary>
    public Resistance SeriesResistor { get; init; }

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>Capacitor from each amplifier input to common.</summary>
    public Capacitance ShuntCapacitor { get; init; } = Capacitance.FromPicofarads(22);

    public Ratio CapacitorTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Capacitor between the amplifier's inputs.</summary>
    public Capacitance DifferentialCapacitor { get; init; }

    /// <summary>Bias resistor from each amplifier input to common; null for none.</summary>
    public Resistance? BiasResistor { get; init; }

    /// <summary>N: inputs on the reference lead; null where it follows from channels and the reference buffer.</summary>
    public int? ReferenceInputs { get; init; }

    /// <summary>Its fields, in the order of the key table.</summary>
    internal static readonly IReadOnlyList<Field<InputNetwork>> Rows =
    [
        Value("lead-to-common", "lead_to_common", Closed(0, 1e-6), "10 pF", Practice,
            "capacitance of each lead to the amplifier's common: cable shield, protection parts",
            (InputNetwork n) => n.LeadToCommon, (n, v) => n with { LeadToCommon = v })
            .Usually(3e-12, 100e-12),
        Value("driven-shield", "driven_shield", Closed(0, 0.99), "0 %", "none unless given",
            "share of lead-to-common that a driven shield ties to the lead's own potential, g",
            (InputNetwork n) => n.DrivenShield, (n, v) => n with { DrivenShield = v }),
        Value("series-resistor", "series_R", Closed(0, 1e9), "0 Ω", "none fitted unless given",
            "protection resistor in each of the two measuring leads; the quoted limit requires at least the highest voltage over 50 µA",
            (InputNetwork n) => n.SeriesResistor, (n, v) => n with { SeriesResistor = v }, safety: true)
            .Usually(1e3, 220e3),
        Value("resistor-tolerance", "tolerance_R", Below(0, 1), "1 %", Practice, "tolerance of the protection resistors, ±",
            (InputNetwork n) => n.ResistorTolerance, (n, v) => n with { ResistorTolerance = v }, safety: true),
        Value("shunt-capacitor", "shunt_C", Closed(0, 1e-3), "22 pF", Practice, "capacitor from each amplifier input to common",
            (InputNetwork n) => n.ShuntCapacitor, (n, v) => n with { ShuntCapacitor = v })
            .Usually(10e-12, 1e-9),
        Value("capacitor-tolerance", "tolerance_C", Below(0, 1), "5 %", Practice, "tolerance of the shunt capacitors, ±",
            (InputNetwork n) => n.CapacitorTolerance, (n, v) => n with { CapacitorTolerance = v }),
        Value("differential-capacitor", "differential_C", Closed(0, 1e-3), "0 F", "none unless given",
            "capacitor between the amplifier's inputs",
            (InputNetwork n) => n.DifferentialCapacitor, (n, v) => n with { DifferentialCapacitor = v }),
        Maybe("bias-resistor", "bias_R", Above(0, 1e14), "none", "none", ByDesign, "bias resistor from each amplifier input to common",
            (InputNetwork n) => n.BiasResistor, (n, v) => n with { BiasResistor = v })
            .Usually(10e6, 1e9, whenBought: false),
        Maybe("reference-inputs", "reference_inputs", Closed(1, 1024), "auto", "channels, or 1 where the reference is buffered", Derived,
            "how many channel inputs are connected to the reference electrode's lead, N",
            (InputNetwork n) => n.ReferenceInputs, (n, v) => n with { ReferenceInputs = v }),
    ];
}
