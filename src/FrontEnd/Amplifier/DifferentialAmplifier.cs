using FrontEnd.Circuits;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Amplifier;

/// <summary>The differential (instrumentation) amplifier: the path's first gain.</summary>
public sealed record DifferentialAmplifier
{
    public string Card { get; init; } = "";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    public double Gain { get; init; } = 5;

    /// <summary>−3 dB bandwidth at this gain.</summary>
    public Frequency Bandwidth { get; init; } = Frequency.FromKilohertz(35);

    /// <summary>eni: white noise of the input stage.</summary>
    public VoltageNoiseDensity InputNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(50);

    /// <summary>eno: white noise of the output stage, divided by the gain at the input.</summary>
    public VoltageNoiseDensity OutputNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(150);

    /// <summary>f_ce: where flicker and white voltage noise are equal.</summary>
    public Frequency NoiseCorner { get; init; }

    public CurrentNoiseDensity CurrentNoise { get; init; } = CurrentNoiseDensity.FromFemtoamperesPerRootHertz(1);

    public Frequency CurrentNoiseCorner { get; init; }

    public Resistance CommonModeResistance { get; init; } = Resistance.FromOhms(1e11);
    public Capacitance CommonModeCapacitance { get; init; } = Capacitance.FromPicofarads(5);
    public Resistance DifferentialResistance { get; init; } = Resistance.FromOhms(1e11);
    public Capacitance DifferentialCapacitance { get; init; } = Capacitance.FromPicofarads(3);

    /// <summary>CMRR at dc.</summary>
    public Decibels Cmrr { get; init; } = Decibels.FromStated(100);

    /// <summary>f_cm: where the CMRR is 3 dB down.</summary>
    public Frequency CmrrCorner { get; init; } = Frequency.FromHertz(150);

    /// <summary>Largest dc current into each input.</summary>
    public Current BiasCurrent { get; init; }

    public Voltage OffsetVoltage { get; init; }

    /// <summary>How close to the rails its output may go.</summary>
    public Voltage OutputMargin { get; init; } = Voltage.FromMillivolts(100);

    /// <summary>How close to the rails its inner nodes V_cm ± G·V_d/2 may go.</summary>
    public Voltage InnerMargin { get; init; } = Voltage.FromMillivolts(100);

    /// <summary>Rejection of ripple on the supply.</summary>
    public Decibels SupplyRejection { get; init; } = Decibels.FromStated(80);

    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(50);

    /// <summary>The gains that it can be set to; null where one resistor sets any.</summary>
    public IReadOnlyList<double>? Gains { get; init; }

    /// <summary>k: the gain is 1 + k/R_G with one resistor R_G; null where it is not known or no resistor sets it.</summary>
    public Resistance? GainConstant { get; init; }

    /// <summary>The supply that its figures hold on and that it stands.</summary>
    public SupplyRange SupplyRange { get; init; } = SupplyRange.Any;

    /// <summary>True where one resistor R_G sets the gain; at gain 1 none is fitted.</summary>
    public bool HasGainResistor => Gains is null && 1 < Gain;

    /// <summary>R_G = k/(G − 1); null where no resistor is fitted for the gain, or k is not known.</summary>
    public Resistance? GainResistor =>
        HasGainResistor && GainConstant is { } constant ? Resistance.FromOhms(constant.Ohms / (Gain - 1)) : null;

    /// <summary>Of the gains that it can be set to the one whose ratio to its gain is nearest to 1; null where it may have any.</summary>
    public double? NearestGain => Gains is { Count: > 0 } gains ? gains.MinBy(gain => Math.Abs(Math.Log(gain / Gain))) : null;

    /// <summary>Its values, in the order of the key table.</summary>
    private static readonly IReadOnlyList<Field<DifferentialAmplifier>> Values =
    [
        Make.Card(CardClass.Amplifier, (DifferentialAmplifier a) => a.Card, (a, v) => a with { Card = v }),
        Value("gain", "gain", Above(0, 1e5), "5", "±300 mV of electrode offset on 3 V leaves about 5; " + Derived,
            "gain of the first stage, G",
            (DifferentialAmplifier a) => a.Gain, (a, v) => a with { Gain = v })
            .Usually(2, 24),
        Value("bandwidth", "bandwidth", Above(0, 1e10), "35 kHz",
            "low-power instrumentation amplifier at gain 10, application report SLAA486B table 4; higher at the default gain",
            "-3 dB bandwidth at this gain",
            (DifferentialAmplifier a) => a.Bandwidth, (a, v) => a with { Bandwidth = v })
            .Usually(5e3, 200e3),
        Value("input-noise", "eni", Closed(0, 1e-3), "50 nV/√Hz", OpAmpFields.CmosClass, "white voltage noise of the input stage",
            (DifferentialAmplifier a) => a.InputNoise, (a, v) => a with { InputNoise = v })
            .Usually(8e-9, 100e-9),
        Value("output-noise", "eno", Closed(0, 1e-3), "150 nV/√Hz", OpAmpFields.CmosClass,
            "white voltage noise of the output stage; counts divided by the gain",
            (DifferentialAmplifier a) => a.OutputNoise, (a, v) => a with { OutputNoise = v })
            .Usually(50e-9, 500e-9),
        Value("noise-corner", "en_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white voltage noise are equal",
            (DifferentialAmplifier a) => a.NoiseCorner, (a, v) => a with { NoiseCorner = v })
            .Usually(0.1, 10),
        Value("current-noise", "in", Closed(0, 1e-6), "1 fA/√Hz", OpAmpFields.CmosClass, "white current noise of each input",
            (DifferentialAmplifier a) => a.CurrentNoise, (a, v) => a with { CurrentNoise = v })
            .Usually(1e-15, 200e-15),
        Value("current-noise-corner", "in_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white current noise are equal",
            (DifferentialAmplifier a) => a.CurrentNoiseCorner, (a, v) => a with { CurrentNoiseCorner = v }),
        Value("common-mode-resistance", "Rcm", Above(0, 1e16), "100 GΩ", OpAmpFields.CmosClass, "each input to common",
            (DifferentialAmplifier a) => a.CommonModeResistance, (a, v) => a with { CommonModeResistance = v })
            .Usually(1e8, 1e12),
        Value("common-mode-capacitance", "Ccm", Closed(0, 1e-6), "5 pF", OpAmpFields.CmosClass, "each input to common",
            (DifferentialAmplifier a) => a.CommonModeCapacitance, (a, v) => a with { CommonModeCapacitance = v })
            .Usually(2e-12, 20e-12),
        Value("differential-resistance", "Rdm", Above(0, 1e16), "100 GΩ", OpAmpFields.CmosClass, "input to input",
            (DifferentialAmplifier a) => a.DifferentialResistance, (a, v) => a with { DifferentialResistance = v })
            .Usually(1e8, 1e12),
        Value("differential-capacitance", "Cdm", Closed(0, 1e-6), "3 pF", OpAmpFields.CmosClass, "input to input",
            (DifferentialAmplifier a) => a.DifferentialCapacitance, (a, v) => a with { DifferentialCapacitance = v })
            .Usually(1e-12, 10e-12),
        Value("cmrr", "cmrr_db", Closed(0, 200), "100 dB", OpAmpFields.CmosClass, "common-mode rejection at dc",
            (DifferentialAmplifier a) => a.Cmrr, (a, v) => a with { Cmrr = v })
            .Usually(75, 115),
        Value("cmrr-corner", "cmrr_corner", Above(0, 1e9), "150 Hz", OpAmpFields.CmosClass, "where the common-mode rejection is 3 dB down",
            (DifferentialAmplifier a) => a.CmrrCorner, (a, v) => a with { CmrrCorner = v })
            .Usually(50, 5e3),
        Value("bias-current", "bias_current", Closed(-1e-3, 1e-3), "0 A", "none unless given", "dc current into each input, worst case",
            (DifferentialAmplifier a) => a.BiasCurrent, (a, v) => a with { BiasCurrent = v })
            .Usually(1e-12, 2e-9),
        Value("offset-voltage", "offset_voltage", Closed(-1, 1), "0 V", "none unless given", "dc offset at the input, worst case",
            (DifferentialAmplifier a) => a.OffsetVoltage, (a, v) => a with { OffsetVoltage = v }),
        Value("output-margin", "output_margin", Closed(0, 20), "100 mV", OpAmpFields.CmosClass, "how close to the rails the output may go",
            (DifferentialAmplifier a) => a.OutputMargin, (a, v) => a with { OutputMargin = v })
            .Usually(0.05, 0.2),
        Value("inner-margin", "inner_margin", Closed(0, 20), "100 mV", OpAmpFields.CmosClass,
            "how close to the rails the inner nodes V_cm ± G·V_d/2 may go",
            (DifferentialAmplifier a) => a.InnerMargin, (a, v) => a with { InnerMargin = v })
            .Usually(0.05, 0.2),
        Value("supply-rejection", "supply_rejection", Closed(0, 200), "80 dB", OpAmpFields.CmosClass, "rejection of ripple on the supply",
            (DifferentialAmplifier a) => a.SupplyRejection, (a, v) => a with { SupplyRejection = v }),
        Value("supply-current", "supply_current", Closed(0, 10), "50 µA",
            "low-power instrumentation amplifier, application report SLAA486B table 4", "supply current of one channel",
            (DifferentialAmplifier a) => a.SupplyCurrent, (a, v) => a with { SupplyCurrent = v })
            .Usually(20e-6, 1e-3),
        new()
        {
            Key = "gains",
            JsonKey = "gains",
            Kind = FieldKind.NumberList,
            Meaning = "the gains that it can be set to, if they are not set by a resistor",
            Range = Above(0, 1e5),
            NullWord = "any",
            DefaultText = "any",
            DefaultSource = ByDesign,
            Get = a => a.Gains,
            Set = (a, v) => a with { Gains = (IReadOnlyList<double>?)v },
        },
        Maybe("gain-constant", "gain_constant", Above(0, 1e9), "none", "none", ByDesign,
            "k in gain = 1 + k/R_G, R_G the resistor that sets the gain; 50 kΩ and 100 kΩ are usual",
            (DifferentialAmplifier a) => a.GainConstant, (a, v) => a with { GainConstant = v }),
        .. SupplyRange.Fields((DifferentialAmplifier a) => a.SupplyRange, (a, v) => a with { SupplyRange = v }),
    ];

    /// <summary>Its fields: the values, and how far they go from piece to piece.</summary>
    internal static readonly IReadOnlyList<Field<DifferentialAmplifier>> Rows =
    [
        .. Values,
        Make.Ranges(Values, ["gain", "input-noise", "output-noise", "current-noise", "cmrr", "bias-current", "offset-voltage"],
            (DifferentialAmplifier a) => a.Ranges, (a, v) => a with { Ranges = v }),
    ];
}
