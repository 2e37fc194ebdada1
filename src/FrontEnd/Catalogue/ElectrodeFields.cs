using FrontEnd.Circuits;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Catalogue;

/// <summary>The fields of an electrode, of a buffer at the electrode, of the set of electrodes and of the contact check.</summary>
internal static class ElectrodeFields
{
    private const string Surrogate = "skin-electrode surrogate of AAMI TIR60, 51 kΩ in parallel with 47 nF";

    private static readonly IReadOnlyList<Field<Electrode>> ElectrodeValues =
    [
        Make.Card(CardClass.Electrode, (Electrode e) => e.Card, (e, v) => e with { Card = v }),
        Value("series-resistance", "Rs", Closed(0, 1e8), "0 Ω", Practice, "wire, gel and deeper tissue in series, Rs",
            (Electrode e) => e.SeriesResistance, (e, v) => e with { SeriesResistance = v })
            .Usually(100, 5e3, KnownBy.Contact),
        Value("contact-resistance", "Rd", Closed(0, 1e10), "51 kΩ", Surrogate, "the contact's parallel resistance, Rd",
            (Electrode e) => e.ContactResistance, (e, v) => e with { ContactResistance = v })
            .Usually(5e3, 2e6, KnownBy.Contact),
        Value("contact-capacitance", "Cd", Closed(0, 1e-3), "47 nF", Surrogate, "the contact's parallel capacitance, Cd",
            (Electrode e) => e.ContactCapacitance, (e, v) => e with { ContactCapacitance = v })
            .Usually(1e-9, 100e-9, KnownBy.Contact),
        Maybe("second-resistance", "Rd2", Closed(0, 1e10), "none", "none", ByDesign,
            "parallel resistance of a second block such as the skin beneath the gel, Rd2",
            (Electrode e) => e.SecondResistance, (e, v) => e with { SecondResistance = v }),
        Maybe("second-capacitance", "Cd2", Closed(0, 1e-3), "none", "none", ByDesign, "parallel capacitance of the second block, Cd2",
            (Electrode e) => e.SecondCapacitance, (e, v) => e with { SecondCapacitance = v }),
        Value("excess-density", "excess_psd_1hz", Closed(0, 1e-6), "0 V²/Hz", "none unless given",
            "excess noise power density of this electrode alone at 1 Hz, K in K/f^α",
            (Electrode e) => e.ExcessNoise, (e, v) => e with { ExcessNoise = v })
            .Usually(1e-14, 5e-11, KnownBy.Contact),
        Value("excess-slope", "excess_slope", Closed(0, 4), "2",
            "low-frequency noise of dry and gel electrodes falls about as f^-2 in power (abstract on NASICON ceramic and Ag-AgCl electrodes)", "α in K/f^α",
            (Electrode e) => e.ExcessSlope, (e, v) => e with { ExcessSlope = v }),
        new()
        {
            Key = "contact",
            JsonKey = "contact",
            Kind = FieldKind.Choice,
            Meaning = "wet or dry: decides the default mismatch and whether the noise is judged",
            DefaultText = "auto",
            DefaultSource = "dry from 100 kΩ at dc on; " + Practice,
            NullWord = "auto",
            Choices = [new("wet", ContactKind.Wet), new("dry", ContactKind.Dry)],
            Get = e => e.Contact,
            Set = (e, v) => e with { Contact = (ContactKind?)v },
        },
        Value("over-time", "over_time", null, "[]", "unknown unless given",
            "how the contact changes after it is put on: factors on impedance and excess noise (in volts) at rising times, 1 being as designed",
            (Electrode e) => e.OverTime, (e, v) => e with { OverTime = v }),
    ];

    public static readonly IReadOnlyList<Field<Electrode>> Electrode =
    [
        .. ElectrodeValues,
        Ranges(ElectrodeValues, ["contact-resistance", "excess-density"], (Electrode e) => e.Ranges, (e, v) => e with { Ranges = v }),
    ];

    public static readonly IReadOnlyList<Field<ElectrodeBuffer>> Buffer =
    [
        Make.Card(CardClass.Buffer, (ElectrodeBuffer b) => b.Card, (b, v) => b with { Card = v }),
        Value("input-resistance", "input_resistance", Above(0, 1e16), "1 TΩ", Practice, "resistance of the buffer's input",
            (ElectrodeBuffer b) => b.InputResistance, (b, v) => b with { InputResistance = v }),
        Value("input-capacitance", "input_capacitance", Closed(0, 1e-6), "5 pF", Practice, "capacitance of the buffer's input",
            (ElectrodeBuffer b) => b.InputCapacitance, (b, v) => b with { InputCapacitance = v }),
        Value("skin-resistor", "skin_resistor", Closed(0, 1e9), "0 Ω", "no resistor unless given",
            "resistor between the electrode and the buffer's input: the only one that limits a fault current into this electrode",
            (ElectrodeBuffer b) => b.SkinResistor, (b, v) => b with { SkinResistor = v }, safety: true),
        Value("output-resistance", "output_resistance", Closed(0, 1e6), "100 Ω", Practice, "source impedance that the lead sees",
            (ElectrodeBuffer b) => b.OutputResistance, (b, v) => b with { OutputResistance = v }),
        .. OpAmpFields.All.Select(field =>
            field.Within("opamp.", "opamp.", (ElectrodeBuffer b) => b.OpAmp, (b, v) => b with { OpAmp = v }, () => OpAmp.MicropowerCmos)),
    ];

    private static readonly IReadOnlyList<Field<ElectrodeSet>> SetValues =
    [
        Maybe("mismatch", "mismatch", Below(0, 2), "auto", "50 % wet, 100 % dry", Practice,
            "m: the active electrode's impedance is multiplied by 1 + m/2, the reference's by 1 − m/2",
            (ElectrodeSet e) => e.Mismatch, (e, v) => e with { Mismatch = v })
            .Usually(0.1, 1.5, KnownBy.Contact),
        Value("offset", "offset", Closed(0, 5), "300 mV", "AAMI TIR60; ANSI/AAMI EC11:1991",
            "worst dc difference between two electrodes' half-cells",
            (ElectrodeSet e) => e.Offset, (e, v) => e with { Offset = v })
            .Usually(10e-3, 300e-3, KnownBy.Contact),
    ];

    public static readonly IReadOnlyList<Field<ElectrodeSet>> Set =
    [
        .. SetValues,
        Ranges(SetValues, ["offset"], (ElectrodeSet e) => e.Ranges, (e, v) => e with { Ranges = v }),
        .. Electrode.Select(field =>
            field.Within("active.", "active.", (ElectrodeSet e) => e.Active, (e, v) => e with { Active = v }, () => new Electrode())),
        .. Electrode.Select(field =>
            field.Within("reference.", "reference.", (ElectrodeSet e) => e.Reference, (e, v) => e with { Reference = v },
            () => new Electrode())),
        Value("reference-sites", "reference_sites", null, "[]", "named by montage.reference if not given",
            "sites of the reference; two, such as both ears, are two electrodes joined together",
            (ElectrodeSet e) => e.ReferenceSites, (e, v) => e with { ReferenceSites = v }),
        Wording("ground-site", "", "site of the ground electrode", (ElectrodeSet e) => e.GroundSite, (e, v) => e with { GroundSite = v }),
        Value("ground-electrode", "ground_electrode", null, "true", Practice,
            "false for a two-electrode device, which then needs bias resistors",
            (ElectrodeSet e) => e.Ground is not null, (e, v) => e with { Ground = v ? e.Ground ?? new Electrode() : null }),
        .. Electrode.Select(field =>
            field.Within("ground.", "ground.", (ElectrodeSet e) => e.Ground, (e, v) => e with { Ground = v }, () => new Electrode())),
        .. Buffer.Select(field =>
            field.Within("active-buffer.", "active_buffer.", (ElectrodeSet e) => e.ActiveBuffer, (e, v) => e with { ActiveBuffer = v },
            () => new ElectrodeBuffer())),
        .. Buffer.Select(field =>
            field.Within("reference-buffer.", "reference_buffer.", (ElectrodeSet e) => e.ReferenceBuffer,
            (e, v) => e with { ReferenceBuffer = v }, () => new ElectrodeBuffer())),
    ];

    public static readonly IReadOnlyList<Field<ContactCheck>> Check =
    [
        Value("current", "current", Closed(0, 1e-3), "6 nA", "a few nA at about 30 Hz; " + Practice, "peak current of the contact check",
            (ContactCheck c) => c.Current, (c, v) => c with { Current = v }),
        Value("frequency", "frequency", Above(0, 1e6), "31.25 Hz", "a few nA at about 30 Hz; " + Practice, "frequency of the contact check",
            (ContactCheck c) => c.Frequency, (c, v) => c with { Frequency = v }),
        Value("on-while-recording", "on_while_recording", null, "false", Practice, "true where the current stays on while recording",
            (ContactCheck c) => c.OnWhileRecording, (c, v) => c with { OnWhileRecording = v }),
    ];
}
