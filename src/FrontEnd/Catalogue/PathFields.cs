using FrontEnd.Circuits;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Interference;
using FrontEnd.Topologies;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of the stages, the converter, the digital filters, and of the lists of bands and interferers.</summary>
internal static class PathFields
{
    public static readonly IReadOnlyList<Field<AntiAliasWish>> AntiAlias =
    [
        Word("family", "family", "butterworth", Practice, "approximation of the anti-alias filter",
            [new("butterworth", FilterFamily.Butterworth), new("chebyshev", FilterFamily.Chebyshev), new("bessel", FilterFamily.Bessel),
                new("critically-damped", FilterFamily.CriticallyDamped)],
            (AntiAliasWish w) => w.Family, (w, v) => w with { Family = v }),
        Maybe("corner", "corner", Above(0, 1e9), "auto", "the band's upper edge", Practice,
            "with an order: the filter's corner; otherwise: the edge of the pass band", (AntiAliasWish w) => w.Corner,
            (w, v) => w with { Corner = v }),
        Maybe("order", "order", Closed(1, 10), "auto", "the lowest that reaches the attenuation", Derived, "order of the filter",
            (AntiAliasWish w) => w.Order, (w, v) => w with { Order = v }),
        Value("attenuation", "attenuation", Above(0, 200), "60 dB", Practice,
            "if no order is given: attenuation required at the fold frequency, rate minus the band's upper edge (delta-sigma: modulator clock minus that edge)",
            (AntiAliasWish w) => w.Attenuation, (w, v) => w with { Attenuation = v }),
        Maybe("ripple", "ripple", Above(0, 40), "auto", "3.01 dB; chebyshev 0.5 dB", Practice,
            "if no order is given: maximum loss at the corner; chebyshev's ripple", (AntiAliasWish w) => w.Ripple,
            (w, v) => w with { Ripple = v }),
        Word("topology", "topology", "sallen-key", Practice,
            "circuit of each pole pair: sallen-key has gain 1, sallen-key-equal has equal parts and gain 3 − 1/Q, multiple feedback inverts",
            [new("sallen-key", SectionKind.SallenKey), new("sallen-key-equal", SectionKind.SallenKeyEqual),
                new("multiple-feedback", SectionKind.MultipleFeedback)],
            (AntiAliasWish w) => w.Topology, (w, v) => w with { Topology = v }),
        Value("resistor-tolerance", "resistor_tolerance", Below(0, 1), "1 %", Practice, "tolerance of the resistors, ±",
            (AntiAliasWish w) => w.ResistorTolerance, (w, v) => w with { ResistorTolerance = v }),
        Value("capacitor-tolerance", "capacitor_tolerance", Below(0, 1), "5 %", Practice, "tolerance of the capacitors, ±",
            (AntiAliasWish w) => w.CapacitorTolerance, (w, v) => w with { CapacitorTolerance = v }),
        .. OpAmpFields.All.Select(field =>
            field.Within("opamp.", "opamp.", (AntiAliasWish w) =>
                w.OpAmp, (w, v) => w with { OpAmp = v }, () => Circuits.OpAmp.MicropowerCmos)),
    ];

    private static readonly IReadOnlyList<Field<AnalogDigitalConverter>> ConverterValues =
    [
        Make.Card(CardClass.Converter, (AnalogDigitalConverter c) => c.Card, (c, v) => c with { Card = v }),
        Word("kind", "kind", "successive-approximation", Practice, "conversion principle",
            [new("successive-approximation", ConverterKind.SuccessiveApproximation, "sar"), new("delta-sigma", ConverterKind.DeltaSigma)],
            (AnalogDigitalConverter c) => c.Kind, (c, v) => c with { Kind = v })
            .UsuallyAny(),
        Value("rate", "rate", Above(0, 1e9), "250 Hz",
            "200 samples a second at least, 250 to 400 preferred: requirements attributed to a technologists' association, 2001",
            "output rate of each channel, fs",
            (AnalogDigitalConverter c) => c.Rate, (c, v) => c with { Rate = v })
            .Usually(125, 1000),
        Value("bits", "bits", Above(0, 64), "12", "12 bits at least: requirements attributed to a technologists' association, 2001",
            "word length, N",
            (AnalogDigitalConverter c) => c.Bits, (c, v) => c with { Bits = v })
            .Usually(10, 24),
        Maybe("lsb", "lsb", Above(0, 100), "auto", "full scale over 2^N", Derived, "size of one step, if it is not full scale over 2^N",
            (AnalogDigitalConverter c) => c.Lsb, (c, v) => c with { Lsb = v }),
        Value("full-scale", "full_scale_pp", Above(0, 1000), "3 V", Practice, "full scale, peak-to-peak",
            (AnalogDigitalConverter c) => c.FullScale, (c, v) => c with { FullScale = v })
            .Usually(1.2, 2.5),
        Maybe("noise", "noise_rms", Closed(0, 10), "auto", $"the larger of 0.4 steps and full scale/({TradeConstants.NoisePeakToPeak}·2¹⁹)", Practice,
            "the converter's own noise over half the rate, rms, without quantisation",
            (AnalogDigitalConverter c) => c.Noise, (c, v) => c with { Noise = v })
            .Usually(2e-6, 300e-6, whenBought: false),
        Maybe("differential", "differential", null, "auto", "delta-sigma yes, successive approximation no", Practice,
            "true if full scale is the difference of two pins: it may then be up to twice the lowest supply, otherwise once",
            (AnalogDigitalConverter c) => c.Differential, (c, v) => c with { Differential = v }),
        Maybe("own-supply", "own_supply", Above(0, 100), "none", "none", ByDesign,
            "voltage of the converter's own supply, which replaces the lowest supply as the limit of its full scale",
            (AnalogDigitalConverter c) => c.OwnSupply, (c, v) => c with { OwnSupply = v }),
        Value("in-controller", "in_controller", null, "false", Practice,
            "true if it is part of the microcontroller: no converter of its own is drawn and ordered, and the signals go to the connector of the microcontroller",
            (AnalogDigitalConverter c) => c.InController, (c, v) => c with { InController = v }),
        Value("oversampling", "osr", Closed(2, 1e6), "256", Practice, "delta-sigma: modulator clock over output rate, OSR",
            (AnalogDigitalConverter c) => c.Oversampling, (c, v) => c with { Oversampling = v }),
        Value("sinc-order", "sinc_order", Closed(1, 8), "3", Practice, "delta-sigma: order of the sinc decimator",
            (AnalogDigitalConverter c) => c.SincOrder, (c, v) => c with { SincOrder = v }),
        Value("skew", "skew", Closed(0, 1), "0 s", "simultaneous sampling unless given",
            "time between the samples of two neighbouring channels",
            (AnalogDigitalConverter c) => c.Skew, (c, v) => c with { Skew = v }),
        Maybe("reference-noise", "reference_noise", Closed(0, 10), "none", "none", ByDesign, "rms noise of the reference in the band",
            (AnalogDigitalConverter c) => c.ReferenceNoise, (c, v) => c with { ReferenceNoise = v }),
        Maybe("reference-voltage", "reference_voltage", Above(0, 1000), "none", "none", ByDesign, "voltage of the reference",
            (AnalogDigitalConverter c) => c.ReferenceVoltage, (c, v) => c with { ReferenceVoltage = v }),
        Value("supply-current", "supply_current", Closed(0, 10), "200 µA", Practice, "supply current of the converter",
            (AnalogDigitalConverter c) => c.SupplyCurrent, (c, v) => c with { SupplyCurrent = v })
            .Usually(100e-6, 5e-3),
        .. SupplyRange.Fields((AnalogDigitalConverter c) => c.SupplyRange, (c, v) => c with { SupplyRange = v }),
    ];

    public static readonly IReadOnlyList<Field<AnalogDigitalConverter>> Converter =
    [
        .. ConverterValues,
        Ranges(ConverterValues, ["noise", "full-scale"], (AnalogDigitalConverter c) => c.Ranges, (c, v) => c with { Ranges = v }),
    ];

    public static readonly IReadOnlyList<Field<DigitalArithmetic>> Arithmetic =
    [
        Word("digital-word", "digital_word", "double", Practice,
            "number format of the digital filters; the figures are for filters rounded to it",
            [new("double", DigitalWord.Double), new("single", DigitalWord.Single, "float"), new("q31", DigitalWord.Q31),
                new("q15", DigitalWord.Q15)],
            (DigitalArithmetic a) => a.Word, (a, v) => a with { Word = v }),
        Word("digital-form", "digital_form", "transposed-2", Practice, "structure of each second-order section",
            [new("direct-1", FilterForm.DirectI), new("transposed-2", FilterForm.TransposedDirectII)],
            (DigitalArithmetic a) => a.Form, (a, v) => a with { Form = v }),
        Value("digital-state-fraction", "digital_state_fraction", Closed(0, 16), "0", Practice,
            "q31 and q15: bits below the sample's LSB that the states hold",
            (DigitalArithmetic a) => a.StateFraction, (a, v) => a with { StateFraction = v }),
    ];

    private static readonly IReadOnlyList<Field<DigitalStage>> AnyDigital =
    [
        Make.Wording("name", "the kind; a notch's with its frequency", "unique in the design; results are named after it", (DigitalStage s) =>
            s.Name, (s, v) => s with { Name = v }) with { DefaultIsValue = false },
    ];

    private static IEnumerable<Field<TStage>> Designed<TStage>(int most)
        where TStage : DigitalDesigned =>
    [
        Value("order", "order", Closed(1, most), "2", Practice, most == FilterDesign.MostBandOrder
            ? "order of the prototype; the filter has twice as many poles"
            : "order of the filter",
            (TStage s) => s.Order, (s, v) => (TStage)(s with { Order = v })),
        Word("family", "family", "butterworth", Practice,
            "approximation; a corner is -3 dB (butterworth, bessel, critically-damped), the ripple edge (chebyshev, elliptic) or the stop edge (inverse-chebyshev)",
            [.. FilterWords.Families.Select(pair => new ChoiceWord(pair.Key, pair.Value))], (TStage s) =>
                s.Family, (s, v) => (TStage)(s with { Family = v })),
        Value("ripple", "ripple", Above(0, 40), "0.5 dB", Practice, "chebyshev and elliptic: maximum loss in the pass band", (TStage s) =>
            s.Ripple, (s, v) => (TStage)(s with { Ripple = v })),
        Value("attenuation", "attenuation", Above(0, 300), "40 dB", Practice,
            "inverse-chebyshev and elliptic: least attenuation in the stop band", (TStage s) => s.Attenuation,
            (s, v) => (TStage)(s with { Attenuation = v })),
    ];

    public static readonly IReadOnlyList<Field<DigitalHighPass>> HighPass =
    [
        .. AnyDigital.Select(AsA<DigitalHighPass, DigitalStage>),
        Value("corner", "corner", Above(0, 1e9), "0.5 Hz", Practice, "the filter's corner", (DigitalHighPass s) =>
            s.Corner, (s, v) => s with { Corner = v }),
        .. Designed<DigitalHighPass>(FilterDesign.MostOrder),
    ];

    public static readonly IReadOnlyList<Field<DigitalLowPass>> LowPass =
    [
        .. AnyDigital.Select(AsA<DigitalLowPass, DigitalStage>),
        Value("corner", "corner", Above(0, 1e9), "40 Hz", Practice, "the filter's corner", (DigitalLowPass s) =>
            s.Corner, (s, v) => s with { Corner = v }),
        .. Designed<DigitalLowPass>(FilterDesign.MostOrder),
    ];

    public static readonly IReadOnlyList<Field<DigitalBandPass>> BandPass =
    [
        .. AnyDigital.Select(AsA<DigitalBandPass, DigitalStage>),
        Value("low", "low", Above(0, 1e9), "8 Hz", Practice, "lower corner", (DigitalBandPass s) => s.Low, (s, v) => s with { Low = v }),
        Value("high", "high", Above(0, 1e9), "13 Hz", Practice, "upper corner", (DigitalBandPass s) =>
            s.High, (s, v) => s with { High = v }),
        .. Designed<DigitalBandPass>(FilterDesign.MostBandOrder),
    ];

    public static readonly IReadOnlyList<Field<DigitalBandStop>> BandStop =
    [
        .. AnyDigital.Select(AsA<DigitalBandStop, DigitalStage>),
        Value("low", "low", Above(0, 1e9), "45 Hz", Practice, "lower corner", (DigitalBandStop s) => s.Low, (s, v) => s with { Low = v }),
        Value("high", "high", Above(0, 1e9), "55 Hz", Practice, "upper corner", (DigitalBandStop s) =>
            s.High, (s, v) => s with { High = v }),
        .. Designed<DigitalBandStop>(FilterDesign.MostBandOrder),
    ];

    public static readonly IReadOnlyList<Field<DigitalNotch>> Notch =
    [
        .. AnyDigital.Select(AsA<DigitalNotch, DigitalStage>),
        Value("centre", "centre", Above(0, 1e9), "50 Hz", Practice, "frequency removed", (DigitalNotch s) =>
            s.Centre, (s, v) => s with { Centre = v }),
        Value("q", "q", Above(0, 1e4), "10", "5 to 10, since the mains wanders; " + Practice, "quality factor: centre over -3 dB width",
            (DigitalNotch s) => s.Q, (s, v) => s with { Q = v }),
    ];

    public static readonly IReadOnlyList<Field<DigitalSections>> Sections =
    [
        .. AnyDigital.Select(AsA<DigitalSections, DigitalStage>),
        Value("rows", "rows", null, "[]", "no sections unless given", "rows of b0, b1, b2, a0, a1, a2", (DigitalSections s) =>
            s.Rows, (s, v) => s with { Rows = v }),
    ];

    public static readonly IReadOnlyList<Field<Band>> NamedBand =
    [
        Make.Wording("name", "", "name of the band", (Band b) => b.Name, (b, v) => b with { Name = v }),
        Value("low", "low", Above(0, 1e9), "0.5 Hz", "edges are a convention and sources disagree", "lower edge", (Band b) =>
            b.Low, (b, v) => b with { Low = v }),
        Value("high", "high", Above(0, 1e9), "40 Hz", "edges are a convention and sources disagree", "upper edge", (Band b) =>
            b.High, (b, v) => b with { High = v }),
        Maybe("smallest-signal", "smallest_signal", Above(0, 1), "auto", "the design's smallest signal", Derived,
            "smallest signal that must be seen in this band, rms",
            (Band b) => b.SmallestSignal, (b, v) => b with { SmallestSignal = v }),
        Maybe("evoked-amplitude", "evoked_amplitude", Above(0, 1), "none", "none", ByDesign,
            "amplitude of an evoked response to be recovered by averaging",
            (Band b) => b.EvokedAmplitude, (b, v) => b with { EvokedAmplitude = v }),
        Value("evoked-ratio", "evoked_ratio", Above(0, 1000), "3", Practice, "required amplitude over the noise of the average, S",
            (Band b) => b.EvokedRatio, (b, v) => b with { EvokedRatio = v }),
        Value("evoked-rate", "evoked_rate", Above(0, 1e4), "1 Hz", Practice, "stimuli per second",
            (Band b) => b.EvokedRate, (b, v) => b with { EvokedRate = v }),
    ];

    public static readonly IReadOnlyList<Field<Interferer>> Interferer =
    [
        Make.Wording("name", "", "name of the disturbance", (Interferer i) => i.Name, (i, v) => i with { Name = v }),
        Value("low", "low", Above(0, 1e10), "20 Hz", Memory, "lower edge", (Interferer i) => i.Low, (i, v) => i with { Low = v }),
        Value("high", "high", Above(0, 1e10), "300 Hz", Memory, "upper edge; the same as the lower for a single frequency",
            (Interferer i) => i.High, (i, v) => i with { High = v }),
        Value("amplitude", "amplitude", Closed(0, 100), "20 µV", Memory, "amplitude, rms", (Interferer i) =>
            i.Amplitude, (i, v) => i with { Amplitude = v }),
    ];
}
