using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Quantities;
using FrontEnd.Text;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of the input network, the amplifiers and the ground drive.</summary>
internal static class AmplifierFields
{
    public static readonly IReadOnlyList<Field<InputNetwork>> Input =
    [
        Value("lead-to-common", "lead_to_common", Closed(0, 1e-6), "10 pF", Practice,
            "capacitance of each lead to the amplifier's common: cable shield, protection parts",
            (InputNetwork n) => n.LeadToCommon, (n, v) => n with { LeadToCommon = v }),
        Value("driven-shield", "driven_shield", Closed(0, 0.99), "0 %", "none unless given",
            "share of lead-to-common that a driven shield ties to the lead's own potential, g",
            (InputNetwork n) => n.DrivenShield, (n, v) => n with { DrivenShield = v }),
        Value("series-resistor", "series_R", Closed(0, 1e9), "0 Ω", "none is fitted unless given",
            "protection resistor in each of the two measuring leads; the quoted limit wants at least the highest voltage over 50 µA",
            (InputNetwork n) => n.SeriesResistor, (n, v) => n with { SeriesResistor = v }, safety: true),
        Value("resistor-tolerance", "tolerance_R", Below(0, 1), "1 %", Practice, "tolerance of the protection resistors, ±",
            (InputNetwork n) => n.ResistorTolerance, (n, v) => n with { ResistorTolerance = v }, safety: true),
        Value("shunt-capacitor", "shunt_C", Closed(0, 1e-3), "22 pF", Practice, "capacitor from each amplifier input to common",
            (InputNetwork n) => n.ShuntCapacitor, (n, v) => n with { ShuntCapacitor = v }),
        Value("capacitor-tolerance", "tolerance_C", Below(0, 1), "5 %", Practice, "tolerance of the shunt capacitors, ±",
            (InputNetwork n) => n.CapacitorTolerance, (n, v) => n with { CapacitorTolerance = v }),
        Value("differential-capacitor", "differential_C", Closed(0, 1e-3), "0 F", "none unless given",
            "capacitor between the amplifier's inputs",
            (InputNetwork n) => n.DifferentialCapacitor, (n, v) => n with { DifferentialCapacitor = v }),
        Maybe("bias-resistor", "bias_R", Above(0, 1e14), "none", "none", ByDesign, "bias resistor from each amplifier input to common",
            (InputNetwork n) => n.BiasResistor, (n, v) => n with { BiasResistor = v }),
        Maybe("reference-inputs", "reference_inputs", Closed(1, 1024), "auto", "channels, or 1 where the reference is buffered", Derived,
            "how many channel inputs hang on the reference electrode's lead, N",
            (InputNetwork n) => n.ReferenceInputs, (n, v) => n with { ReferenceInputs = v }),
    ];

    private static readonly IReadOnlyList<Field<DifferentialAmplifier>> DifferentialValues =
    [
        Make.Card(CardClass.Amplifier, (DifferentialAmplifier a) => a.Card, (a, v) => a with { Card = v }),
        Value("gain", "gain", Above(0, 1e5), "5", "±300 mV of electrode offset on 3 V leave about 5; " + Derived,
            "gain of the first stage, G",
            (DifferentialAmplifier a) => a.Gain, (a, v) => a with { Gain = v }),
        Value("bandwidth", "bandwidth", Above(0, 1e10), "35 kHz",
            "low-power instrumentation amplifier at gain 10, application report SLAA486B table 4", "-3 dB bandwidth at this gain",
            (DifferentialAmplifier a) => a.Bandwidth, (a, v) => a with { Bandwidth = v }),
        Value("input-noise", "eni", Closed(0, 1e-3), "50 nV/√Hz", OpAmpFields.CmosClass, "white voltage noise of the input stage",
            (DifferentialAmplifier a) => a.InputNoise, (a, v) => a with { InputNoise = v }),
        Value("output-noise", "eno", Closed(0, 1e-3), "150 nV/√Hz", OpAmpFields.CmosClass,
            "white voltage noise of the output stage; counts divided by the gain",
            (DifferentialAmplifier a) => a.OutputNoise, (a, v) => a with { OutputNoise = v }),
        Value("noise-corner", "en_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white voltage noise are equal",
            (DifferentialAmplifier a) => a.NoiseCorner, (a, v) => a with { NoiseCorner = v }),
        Value("current-noise", "in", Closed(0, 1e-6), "1 fA/√Hz", OpAmpFields.CmosClass, "white current noise of each input",
            (DifferentialAmplifier a) => a.CurrentNoise, (a, v) => a with { CurrentNoise = v }),
        Value("current-noise-corner", "in_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white current noise are equal",
            (DifferentialAmplifier a) => a.CurrentNoiseCorner, (a, v) => a with { CurrentNoiseCorner = v }),
        Value("common-mode-resistance", "Rcm", Above(0, 1e16), "100 GΩ", OpAmpFields.CmosClass, "each input to common",
            (DifferentialAmplifier a) => a.CommonModeResistance, (a, v) => a with { CommonModeResistance = v }),
        Value("common-mode-capacitance", "Ccm", Closed(0, 1e-6), "5 pF", OpAmpFields.CmosClass, "each input to common",
            (DifferentialAmplifier a) => a.CommonModeCapacitance, (a, v) => a with { CommonModeCapacitance = v }),
        Value("differential-resistance", "Rdm", Above(0, 1e16), "100 GΩ", OpAmpFields.CmosClass, "input to input",
            (DifferentialAmplifier a) => a.DifferentialResistance, (a, v) => a with { DifferentialResistance = v }),
        Value("differential-capacitance", "Cdm", Closed(0, 1e-6), "3 pF", OpAmpFields.CmosClass, "input to input",
            (DifferentialAmplifier a) => a.DifferentialCapacitance, (a, v) => a with { DifferentialCapacitance = v }),
        Value("cmrr", "cmrr_db", Closed(0, 200), "100 dB", OpAmpFields.CmosClass, "common-mode rejection at dc",
            (DifferentialAmplifier a) => a.Cmrr, (a, v) => a with { Cmrr = v }),
        Value("cmrr-corner", "cmrr_corner", Above(0, 1e9), "150 Hz", OpAmpFields.CmosClass, "where the common-mode rejection is 3 dB down",
            (DifferentialAmplifier a) => a.CmrrCorner, (a, v) => a with { CmrrCorner = v }),
        Value("bias-current", "bias_current", Closed(-1e-3, 1e-3), "0 A", "none unless given", "dc current into each input, worst case",
            (DifferentialAmplifier a) => a.BiasCurrent, (a, v) => a with { BiasCurrent = v }),
        Value("offset-voltage", "offset_voltage", Closed(-1, 1), "0 V", "none unless given", "dc offset at the input, worst case",
            (DifferentialAmplifier a) => a.OffsetVoltage, (a, v) => a with { OffsetVoltage = v }),
        Value("output-margin", "output_margin", Closed(0, 20), "100 mV", OpAmpFields.CmosClass, "how close to the rails the output may go",
            (DifferentialAmplifier a) => a.OutputMargin, (a, v) => a with { OutputMargin = v }),
        Value("inner-margin", "inner_margin", Closed(0, 20), "100 mV", OpAmpFields.CmosClass,
            "how close to the rails the inner nodes V_cm ± G·V_d/2 may go",
            (DifferentialAmplifier a) => a.InnerMargin, (a, v) => a with { InnerMargin = v }),
        Value("supply-rejection", "supply_rejection", Closed(0, 200), "80 dB", OpAmpFields.CmosClass, "rejection of ripple on the supply",
            (DifferentialAmplifier a) => a.SupplyRejection, (a, v) => a with { SupplyRejection = v }),
        Value("supply-current", "supply_current", Closed(0, 10), "50 µA",
            "low-power instrumentation amplifier, application report SLAA486B table 4", "supply current of one channel",
            (DifferentialAmplifier a) => a.SupplyCurrent, (a, v) => a with { SupplyCurrent = v }),
    ];

    public static readonly IReadOnlyList<Field<DifferentialAmplifier>> Differential =
    [
        .. DifferentialValues,
        Ranges(DifferentialValues, ["gain", "input-noise", "output-noise", "current-noise", "cmrr", "bias-current", "offset-voltage"],
            (DifferentialAmplifier a) => a.Ranges, (a, v) => a with { Ranges = v }),
    ];

    public static readonly IReadOnlyList<Field<GroundDrive>> Ground =
    [
        Word("kind", "kind", "passive", Practice,
            "passive: tied to common through the resistor; driven: driven with the inverted mean of the inputs",
            [new("passive", GroundKind.Passive), new("driven", GroundKind.Driven)],
            (GroundDrive g) => g.Kind, (g, v) => g with { Kind = v }),
        Value("series-resistor", "series_R", Closed(0, 1e9), "0 Ω", "none is fitted unless given",
            "resistor between the ground electrode and common or the driving amplifier; the quoted limits want at least the highest voltage over 50 µA (passive), 10 µA (driven)",
            (GroundDrive g) => g.SeriesResistor, (g, v) => g with { SeriesResistor = v }, safety: true),
        Value("resistor-tolerance", "resistor_tolerance", Below(0, 1), "1 %", Practice, "tolerance of that resistor, ±",
            (GroundDrive g) => g.ResistorTolerance, (g, v) => g with { ResistorTolerance = v }, safety: true),
        Value("dc-gain", "dc_gain", Above(0, 1e12), "10000", Practice, "gain of the driving amplifier at dc, K0",
            (GroundDrive g) => g.DcGain, (g, v) => g with { DcGain = v }),
        Value("unity-gain-frequency", "unity_gain_f", Above(0, 1e9), "2 kHz", Practice, "where the driving amplifier's gain is 1, f_u",
            (GroundDrive g) => g.UnityGainFrequency, (g, v) => g with { UnityGainFrequency = v }),
        new()
        {
            Key = "averaging-bandwidth",
            JsonKey = "averaging_bandwidth",
            Kind = FieldKind.Quantity,
            Quantity = QuantityKind.Of<Frequency>(),
            Meaning = "bandwidth of the averaging of the two inputs, f_2; \"unlimited\" takes it as infinitely fast",
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
            (GroundDrive g) => g.SupplyCurrent, (g, v) => g with { SupplyCurrent = v }),
    ];
}
