using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Circuits;

/// <summary>The fields of an op-amp, wherever one stands.</summary>
internal static class OpAmpFields
{
    internal const string CmosClass = "typical of the class micropower CMOS, chosen here";

    private static readonly IReadOnlyList<Field<OpAmp>> Values =
    [
        Make.Card(CardClass.OpAmp, (OpAmp o) => o.Card, (o, v) => o with { Card = v }),
        Value("dc-gain", "dc_gain", Above(0, 1e12), "1e7", Practice, "open-loop gain at dc, A0",
            (OpAmp o) => o.DcGain, (o, v) => o with { DcGain = v }),
        Value("gain-bandwidth", "gbw", Above(0, 1e11), "350 kHz", CmosClass, "gain-bandwidth product, GBW",
            (OpAmp o) => o.GainBandwidth, (o, v) => o with { GainBandwidth = v }),
        Value("output-resistance", "Ro", Closed(0, 1e6), "0 Ω", "an ideal output unless given",
            "open-loop output resistance, Ro; it makes a Sallen-Key's stop band rise again",
            (OpAmp o) => o.OutputResistance, (o, v) => o with { OutputResistance = v }),
        Value("voltage-noise", "en", Closed(0, 1e-3), "55 nV/√Hz", CmosClass, "white voltage noise",
            (OpAmp o) => o.VoltageNoise, (o, v) => o with { VoltageNoise = v }),
        Value("noise-corner", "en_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white voltage noise are equal",
            (OpAmp o) => o.NoiseCorner, (o, v) => o with { NoiseCorner = v }),
        Value("current-noise", "in", Closed(0, 1e-6), "1 fA/√Hz", CmosClass, "white current noise of each input",
            (OpAmp o) => o.CurrentNoise, (o, v) => o with { CurrentNoise = v }),
        Value("current-noise-corner", "in_corner", Closed(0, 1e9), "0 Hz", "no flicker unless given",
            "where flicker and white current noise are equal",
            (OpAmp o) => o.CurrentNoiseCorner, (o, v) => o with { CurrentNoiseCorner = v }),
        Value("offset-voltage", "offset_voltage", Closed(-1, 1), "0 V", "none unless given", "dc offset at the input, worst case",
            (OpAmp o) => o.OffsetVoltage, (o, v) => o with { OffsetVoltage = v }),
        Value("bias-current", "bias_current", Closed(-1e-3, 1e-3), "0 A", "none unless given", "dc current into each input, worst case",
            (OpAmp o) => o.BiasCurrent, (o, v) => o with { BiasCurrent = v }),
        Value("output-margin", "output_margin", Closed(0, 20), "50 mV", CmosClass, "how close to the rails the output may go",
            (OpAmp o) => o.OutputMargin, (o, v) => o with { OutputMargin = v }),
        Value("supply-current", "supply_current", Closed(0, 10), "20 µA", CmosClass, "supply current of one amplifier",
            (OpAmp o) => o.SupplyCurrent, (o, v) => o with { SupplyCurrent = v }),
        .. SupplyRange.Fields((OpAmp o) => o.SupplyRange, (o, v) => o with { SupplyRange = v }),
    ];

    public static readonly IReadOnlyList<Field<OpAmp>> All =
    [
        .. Values,
        Make.Ranges(Values, ["voltage-noise", "current-noise", "offset-voltage", "bias-current"], (OpAmp o) =>
            o.Ranges, (o, v) => o with { Ranges = v }),
    ];
}
