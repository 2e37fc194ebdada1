using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Interference;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of the mains, the supply, the montage and the requirements.</summary>
internal static class ChainFields
{
    private const string Interference = "Metting van Rijn, Peper, Grimbergen 1990, interference reduction";

    private static readonly IReadOnlyList<Field<Mains>> MainsValues =
    [
        Value("frequency", "frequency", Above(0, 1e4), "50 Hz", Practice, "nominal frequency of the mains",
            (Mains m) => m.Frequency, (m, v) => m with { Frequency = v }),
        Value("voltage", "voltage", Closed(0, 1e5), "230 V", Practice, "voltage of the mains to earth, rms",
            (Mains m) => m.Voltage, (m, v) => m with { Voltage = v }),
        Value("body-to-mains", "body_to_mains", Closed(0, 1e-6), "3 pF", Interference, "stray capacitance from the body to the mains",
            (Mains m) => m.BodyToMains, (m, v) => m with { BodyToMains = v })
            .Usually(0.3e-12, 10e-12, KnownBy.Room),
        Value("body-to-earth", "body_to_earth", Above(0, 1e-3), "300 pF", Interference, "stray capacitance from the body to earth",
            (Mains m) => m.BodyToEarth, (m, v) => m with { BodyToEarth = v })
            .Usually(100e-12, 1e-9, KnownBy.Room),
        Value("amplifier-to-earth", "amplifier_to_earth", Closed(0, 1e-3), "10 pF", "worn battery box 5 to 20 pF; " + Practice,
            "stray capacitance from the amplifier's common to earth; 1 µF represents an earthed recorder",
            (Mains m) => m.AmplifierToEarth, (m, v) => m with { AmplifierToEarth = v })
            .Usually(5e-12, 20e-12, KnownBy.Room),
        Value("amplifier-to-mains", "amplifier_to_mains", Closed(0, 1e-6), "50 fF", Practice, "stray capacitance from the amplifier's common to the mains",
            (Mains m) => m.AmplifierToMains, (m, v) => m with { AmplifierToMains = v })
            .Usually(10e-15, 200e-15, KnownBy.Room),
        Value("lead-to-mains", "lead_to_mains", Closed(0, 1e-6), "2 fF", Practice, "stray capacitance from each lead to the mains",
            (Mains m) => m.LeadToMains, (m, v) => m with { LeadToMains = v })
            .Usually(0.5e-15, 20e-15, KnownBy.Room),
        Value("field", "field", Closed(0, 1), "0.1 µT", "0.01 to 0.3 µT at home and at work: National Research Council 1997",
            "magnetic flux density at the mains frequency, rms",
            (Mains m) => m.Field, (m, v) => m with { Field = v })
            .Usually(0.01e-6, 0.3e-6, KnownBy.Room, "0.01 to 0.3 µT at home and at work: National Research Council 1997"),
        Value("loop-area", "loop_area", Closed(0, 10), "20 cm²", Practice, "area of the loop that the leads make",
            (Mains m) => m.LoopArea, (m, v) => m with { LoopArea = v })
            .Usually(10e-4, 200e-4, KnownBy.Room),
        Value("harmonics", "harmonics", Closed(0, 10),
            "[1, 0.02, 0.05, 0.01, 0.06, 0.005, 0.05, 0.005, 0.015, 0.005, 0.035, 0.005, 0.03, 0.005, 0.005, 0.005, 0.02, 0.005, 0.015, 0.005, 0.005, 0.005, 0.015, 0.005, 0.015]",
            "EN 50160, limits for h = 2 to 25", "share of the mains voltage at h = 1, 2, 3 …; harmonics beyond the last are left out",
            (Mains m) => m.Harmonics, (m, v) => m with { Harmonics = v }),
        new()
        {
            Key = "field-harmonics",
            JsonKey = "field_harmonics",
            Kind = FieldKind.NumberList,
            Meaning = "share of the field at h = 1, 2, 3 …",
            Range = Closed(0, 10),
            NullWord = "auto",
            DefaultText = "the same as harmonics",
            DefaultIsValue = false,
            DefaultSource = Derived,
            Get = m => m.FieldHarmonics,
            Set = (m, v) => m with { FieldHarmonics = (IReadOnlyList<double>?)v },
        },
        Value("deviation", "deviation", Below(0, 0.1), "0.4 %", Practice, "how far the mains frequency may deviate from its nominal value, ±",
            (Mains m) => m.Deviation, (m, v) => m with { Deviation = v }),
    ];

    public static readonly IReadOnlyList<Field<Mains>> Mains =
    [
        .. MainsValues,
        Ranges(MainsValues, ["voltage", "body-to-mains", "body-to-earth", "amplifier-to-earth", "amplifier-to-mains", "lead-to-mains",
            "field", "loop-area"], (Mains m) => m.Ranges, (m, v) => m with { Ranges = v }),
    ];

    public static readonly IReadOnlyList<Field<Supply>> Supply =
    [
        Value("lowest", "lowest", Above(0, 100), "3 V", Practice,
            "lowest voltage across the analogue rails while the device works, both rails of a split supply together",
            (Supply s) => s.Lowest, (s, v) => s with { Lowest = v })
            .Usually(2.7, 3.3),
        Value("highest", "highest", Above(0, 1000), "3.3 V", Practice,
            "highest voltage anywhere in the box: battery full, charger input, boost or inverting converters, the whole of a split supply",
            (Supply s) => s.Highest, (s, v) => s with { Highest = v }, safety: true)
            .Usually(3.3, 5.5),
        Maybe("rails-highest", "rails_highest", Above(0, 1000), "auto", "the highest voltage in the box", Derived,
            "highest voltage across the analogue rails, if a regulator keeps it below supply.highest: what the parts must withstand",
            (Supply s) => s.RailsHighest, (s, v) => s with { RailsHighest = v }),
        Maybe("mid-rail", "mid_rail", Above(0, 100), "auto", "half the lowest voltage", Practice,
            "mid-rail of the analogue path above the negative rail",
            (Supply s) => s.MidRail, (s, v) => s with { MidRail = v }),
        Maybe("battery-capacity", "battery_capacity", Above(0, 1e7), "none", "none", ByDesign, "capacity of the battery",
            (Supply s) => s.BatteryCapacity, (s, v) => s with { BatteryCapacity = v }),
        Value("usable-share", "usable_share", Above(0, 1), "80 %", Memory, "share of the capacity that can be used",
            (Supply s) => s.UsableShare, (s, v) => s with { UsableShare = v }),
        Value("other-current", "other_current", Closed(0, 10), "5 mA", Memory, "everything that is not in the path: microcontroller, radio",
            (Supply s) => s.OtherCurrent, (s, v) => s with { OtherCurrent = v })
            .Usually(1e-3, 30e-3),
        Maybe("ripple", "ripple", Closed(0, 10), "none", "none", ByDesign, "ripple on the analogue supply, rms",
            (Supply s) => s.Ripple, (s, v) => s with { Ripple = v }),
        Value("ripple-frequency", "ripple_frequency", Above(0, 1e9), "33 Hz", "radio bursts come at 10 to 100 Hz; " + Practice,
            "frequency of the ripple",
            (Supply s) => s.RippleFrequency, (s, v) => s with { RippleFrequency = v }),
        Maybe("mid-rail-noise", "mid_rail_noise", Closed(0, 10), "none", "none", ByDesign,
            "noise of the mid-rail or reference buffer in the band, rms",
            (Supply s) => s.MidRailNoise, (s, v) => s with { MidRailNoise = v }),
        Value("data-overhead", "data_overhead", Closed(0, 10), "20 %", Practice, "bits sent in addition to the samples, as a share of them",
            (Supply s) => s.DataOverhead, (s, v) => s with { DataOverhead = v }),
    ];

    public static readonly IReadOnlyList<Field<Montage>> Montage =
    [
        Word("kind", "kind", "referential", Practice, "which derived channels are computed",
            [new("referential", MontageKind.Referential), new("bipolar", MontageKind.Bipolar), new("average", MontageKind.Average),
                new("mean-of-others", MontageKind.MeanOfOthers)],
            (Montage m) => m.Kind, (m, v) => m with { Kind = v }),
        Value("sites", "sites", null, "[]", "numbered where not named", "names of the recorded sites, one per channel",
            (Montage m) => m.Sites, (m, v) => m with { Sites = v }),
        Wording("reference", "ref", "name of the reference site", (Montage m) => m.Reference, (m, v) => m with { Reference = v }),
        Value("reference-buffered", "reference_buffered", null, "false", Practice,
            "true if one buffer drives all channels' reference inputs from the reference electrode",
            (Montage m) => m.ReferenceBuffered, (m, v) => m with { ReferenceBuffered = v }),
    ];

    public static readonly IReadOnlyList<Field<Requirements>> Requirements =
    [
        Maybe("noise", "noise", Above(0, 1), "auto", "1.5 µV p-p × √((f2 − f1)/99.5 Hz) for wet electrodes; dry ones are not judged",
            "1.5 µV p-p at 0.5 to 100 Hz: chapter on the fundamentals of digital recording, citing the IFCN",
            "maximum noise at the electrodes without their excess, peak-to-peak",
            (Requirements r) => r.Noise, (r, v) => r with { Noise = v }),
        Value("mains-at-electrodes", "mains_at_electrodes", Above(0, 10), "3.5 µV", "10 µV p-p: " + Interference,
            "maximum mains residue at the electrodes, rms",
            (Requirements r) => r.MainsAtElectrodes, (r, v) => r with { MainsAtElectrodes = v }),
        Maybe("mains-recorded", "mains_recorded", Above(0, 10), "auto", "half the smallest signal", Practice,
            "maximum mains residue in the recording, rms",
            (Requirements r) => r.MainsRecorded, (r, v) => r with { MainsRecorded = v }),
        Maybe("mains-residue", "mains_residue", Above(0, 10), "auto", "the smallest signal", Practice,
            "the residue for which the required common-mode rejection is computed, rms",
            (Requirements r) => r.MainsResidue, (r, v) => r with { MainsResidue = v }),
        Value("offset", "offset", Closed(0, 5), "300 mV", "AAMI TIR60; ANSI/AAMI EC11:1991",
            "minimum electrode offset that the path must survive",
            (Requirements r) => r.Offset, (r, v) => r with { Offset = v }),
        Value("headroom", "headroom", Closed(0, 100), "1 dB", Practice, "minimum headroom at any node",
            (Requirements r) => r.Headroom, (r, v) => r with { Headroom = v }),
        Value("fold", "fold", Closed(0, 200), "40 dB", Practice, "minimum attenuation at the fold frequency, fs - f2",
            (Requirements r) => r.Fold, (r, v) => r with { Fold = v }),
        Value("phase-margin", "phase_margin", Closed(0, 180), "45°", Practice,
            "minimum phase margin of the driven ground over its whole range of loads",
            (Requirements r) => r.PhaseMargin, (r, v) => r with { PhaseMargin = v }),
        Value("fault-current", "fault_current", Above(0, 1), "50 µA",
            "dc, single fault, from memory of the limits commonly quoted from IEC 60601-1",
        "maximum dc current through one electrode after a single fault",
            (Requirements r) => r.FaultCurrent, (r, v) => r with { FaultCurrent = v }, safety: true),
        Value("driven-ground-current", "driven_ground_current", Above(0, 1), "10 µA",
            "dc, normal operation, from memory of the limits commonly quoted from IEC 60601-1",
        "maximum dc current through the driven ground in normal operation, its amplifier at the rail",
            (Requirements r) => r.DrivenGroundCurrent, (r, v) => r with { DrivenGroundCurrent = v }, safety: true),
        Value("quantisation-rise", "quantisation_rise", Above(1, 100), "1.1", Practice,
            "maximum factor by which quantisation may raise the noise",
            (Requirements r) => r.QuantisationRise, (r, v) => r with { QuantisationRise = v }),
    ];
}
