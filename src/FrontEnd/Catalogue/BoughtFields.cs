using FrontEnd.Designs;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of a device that somebody else built.</summary>
internal static class BoughtFields
{
    public static readonly IReadOnlyList<Field<BoughtDevice>> All =
    [
        Value("range", "range", Above(0, 10), "2 mV", Practice, "largest signal that it can record, at the electrodes, peak-to-peak",
            (BoughtDevice b) => b.Range, (b, v) => b with { Range = v })
            .Usually(1e-3, 1),
        Value("high-pass", "high_pass", Above(0, 1e3), "0.3 Hz", Practice,
            "corner of the coupling after the first amplifier; a range of 100 mV or more needs none",
            (BoughtDevice b) => b.HighPass, (b, v) => b with { HighPass = v })
            .Usually(0.05, 1),
        Value("filter-order", "filter_order", Closed(1, 2), "1", Practice, "order of the filter before the converter",
            (BoughtDevice b) => b.FilterOrder, (b, v) => b with { FilterOrder = v })
            .Usually(1, 2),
        Value("filter-corner", "filter_corner", Above(0, 2), "40 %", Practice, "its corner as a share of the sampling rate",
            (BoughtDevice b) => b.FilterCorner, (b, v) => b with { FilterCorner = v })
            .Usually(0.2, 1),
        Value("stage-noise", "stage_noise", Closed(0, 1e-3), "55 nV/√Hz", Practice, "white voltage noise of the op-amps after the first amplifier",
            (BoughtDevice b) => b.StageNoise, (b, v) => b with { StageNoise = v })
            .Usually(10e-9, 100e-9),
        Value("converter-noise", "converter_noise", Above(0, 100), "1 ×", Practice,
            "the converter's own noise relative to the usual, which is the larger of 0.4 steps and what leaves 19 bits",
            (BoughtDevice b) => b.ConverterNoise, (b, v) => b with { ConverterNoise = v })
            .Usually(0.5, 5),
    ];
}
