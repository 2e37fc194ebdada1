using FrontEnd.Identity;
using FrontEnd.Results;

namespace FrontEnd.Teaching;

/// <summary>The pictures beside the explanations: one table for the command and the sheets.</summary>
/// <remarks>At most 58 letters wide, so that two stand side by side on a printed page.</remarks>
internal static class Diagrams
{
    // The first that fits counts, so the narrower ones stand first.
    private static readonly Diagram[] Table =
    [
        new(
            "noise-sources", "Where noise comes in, and what divides it",
            [ResultIds.Noise.Total, ResultIds.Noise.PeakToPeak, ResultIds.Noise.BoardShare, ResultIds.Noise.Shorted,
                ResultIds.Noise.Figure, ResultIds.Noise.OverThermalFloor, ResultIds.Noise.AnyVoltage, ResultIds.Noise.Bands],
            """
            electrodes        amplifier        converter
            (~) e_1           (~) e_2          (~) e_3
             │                 │                │
             │    ┌─────┐      │    ┌─────┐     │
            ─┴───>│ G_1 ├──────┴───>│ G_2 ├─────┴───> samples
                  └─────┘           └─────┘
            at the electrodes: e_1, e_2/G_1, e_3/(G_1·G_2)
            noise.total = root of the sum of squares: {total}
            """,
            assessment => Values(("total", Figure(assessment, ResultIds.Noise.Total)))),
        new(
            "lead-network", "One lead: the electrode and what its input draws",
            [ResultIds.Noise.ThermalFloor, ResultIds.Noise.Electrodes, ResultIds.Noise.AnyElectrode,
                ResultIds.Noise.Source(SourceId.ProtectionResistors), ResultIds.Noise.Source(SourceId.BiasResistors),
                ResultIds.Noise.AnyCurrent, ResultIds.Mains.Divider, ResultIds.Mains.Imbalance, ResultIds.Input.All, ResultIds.Gain.Mid],
            """
                      ┌──[R_d]──┐
            skin─[R_s]┤         ├──┬──[R_p]──┬────────> amplifier
                      └───┤├────┘  │         │
                          C_d     ─┴─       ─┴─
                            C_lead─┬─   C_in─┬─
                                   │         │
                                   ┷         ┷
            R_s {rs}   R_d {rd}   C_d {cd}
            R_p {rp}   at the mains Z_in {zin}
            divider: Z_in/(Z_e + R_p + Z_in)
            """,
            assessment => Values(
                ("rs", Part(assessment.Design.Electrodes.Active.SeriesResistance)),
                ("rd", Part(assessment.Design.Electrodes.Active.ContactResistance)),
                ("cd", Part(assessment.Design.Electrodes.Active.ContactCapacitance)),
                ("rp", Part(assessment.Design.Input.SeriesResistor)), ("zin", Figure(assessment, ResultIds.Input.ImpedanceAtMains)))),
        new(
            "lead-pick-up", "Each lead carries its own current", [ResultIds.Mains.Leads],
            """
            mains (~)─────┤├─────┐
                         C_lead  │ i
               ┌──────[Z_1]──────┴────────> + input
               │
             body                   V = i·(Z_1 − Z_2)
               │
               └──────[Z_2]──────┬────────> − input
                         C_lead  │ i
            mains (~)─────┤├─────┘
            C_lead {c}   mains {v}, {f}
            """,
            assessment => Values(("c", Part(assessment.Design.Mains.LeadToMains)), ("v", Part(assessment.Design.Mains.Voltage)),
                ("f", Part(assessment.Design.Mains.Frequency)))),
        new(
            "leads-loop", "The leads enclose an area", [ResultIds.Mains.Loop],
            """
               ┌───[Z_1]──────────────────> + input
               │
             body    field B through area A     V = 2πf·B·A
               │
               └───[Z_2]──────────────────> − input
            B {b}   A {a}   V {loop}
            """,
            assessment => Values(("b", QuantityText.FormatTrimmed(assessment.Design.Mains.Field, 3)),
                ("a", Part(assessment.Design.Mains.LoopArea)), ("loop", Figure(assessment, ResultIds.Mains.Loop)))),
        new(
            "common-mode-path", "The mains' way through the body",
            [ResultIds.Mains.BodyCommonMode, ResultIds.Mains.Amplifier, ResultIds.Mains.Total, ResultIds.Mains.Rss,
                ResultIds.Mains.SystemCmrr, ResultIds.Mains.CmrrNeeded, ResultIds.Mains.Signs, ResultIds.Mains.Recorded.AndMore,
                ResultIds.Open.Of(Lead.Ground)],
            """
             ┌─────┤├─────┬───────────┬───[Z_e]────> inputs
             │    C_p     │ body      │
            (~)          ─┴─        [Z_g]
            mains     C_b─┬─          │  i
             │            │           ├────────────> common
             │            │          ─┴─
             │            │     C_iso─┬─
             │            │           │
             ╧            ╧           ╧
            C_p {cp}   C_b {cb}   C_iso {ciso}
            common mode over Z_g: {cm}
            """,
            assessment => Values(
                ("cp", Part(assessment.Design.Mains.BodyToMains)), ("cb", Part(assessment.Design.Mains.BodyToEarth)),
                ("ciso", Part(assessment.Design.Mains.AmplifierToEarth)), ("cm", Figure(assessment, ResultIds.Mains.BodyCommonMode)))),
        new(
            "driven-ground-loop", "The loop of a driven ground", [ResultIds.Drive.All, ResultIds.Levels.Headroom(NodeId.Drive)],
            """
            mains (~)──┤├──┐
                      C_p  │ i
               ┌──[Z_e]── body ──[Z_g]──[R_o]──┐
               │                               │
               │    ┌─────────────────────┐    │
               └───>│ mean of the inputs, ├────┘
                    │ amplified, inverted │
                    └─────────────────────┘
            left of V_cm: i·(Z_g + R_o)/(1 + T)
            R_o {ro}   T at the mains {t}
            """,
            assessment => Values(("ro", Part(assessment.Design.GroundDrive.SeriesResistor)),
                ("t", Figure(assessment, ResultIds.Drive.GainAtMains)))),
        new(
            "folding", "Sampling copies what lies about the rate onto the band",
            [ResultIds.Noise.Source(SourceId.Folded), ResultIds.Alias.All, ResultIds.Mains.AnyHarmonic.LandsAt],
            """
                ┌───────────────────────────────┐
                v                               │
              ┌──────┐            ┆          ┌──┴───┐
              │ band │            ┆          │ from │
              │      │            ┆          │ here │
            ──┴──────┴────────────┴──────────┴──────┴─────> f
              f_1  f_2          f_s/2     f_s − f_2
            f_s {fs}   f_2 {f2}   f_s − f_2 {fold}
            """,
            assessment => Values(("fs", Part(assessment.Design.Converter.Rate)), ("f2", Part(assessment.Design.Band.High)),
                ("fold", Figure(assessment, ResultIds.Alias.FoldFrequency)))),
        new(
            "harmonics", "A harmonic on its way to the samples", [ResultIds.Mains.Harmonics],
            """
                   C_p, leads      filter      sampling
            h·f_0  ┌────────┐    ┌───────┐    ┌────────┐
            ──────>│ grows  ├───>│ falls ├───>│ lands  ├──> record
                   │ with h │    │ off   │    │ at     │
                   └────────┘    └───────┘    └────────┘
            at its distance from the nearest multiple of f_s
            f_0 {f0}   f_s {fs}
            """,
            assessment => Values(("f0", Part(assessment.Design.Mains.Frequency)), ("fs", Part(assessment.Design.Converter.Rate)))),
        new(
            "headroom", "What must fit between the middle and the rail",
            [ResultIds.Levels.AnyHeadroom, ResultIds.Levels.FirstToClip, ResultIds.Levels.OffsetSurvived, ResultIds.Levels.LargestSignal,
                ResultIds.Levels.FirstGainLimit],
            """
            rail    ──────────────────────────────────────
                     the output's margin
            limit   ──────────────────┬───────────────────
                                      │ headroom, dB
                     ┌────────────┬───┴───
                     │ noise      │
                     ├────────────┤
                     │ mains      │  peaks at the output,
                     ├────────────┤  all at once
                     │ signal     │
                     ├────────────┤
                     │ offset, dc │
            middle  ─┴────────────┴───────────────────────
            first to clip: {first}, {room}
            """,
            assessment => Values(("first", assessment.Find(ResultIds.Levels.FirstToClip)?.Text ?? "none"), ("room", First(assessment)))),
        new(
            "coupling", "A step of the offset passes through the path, with a limit at every node",
            [ResultIds.Levels.Recovery, ResultIds.Filter.Path.Settling],
            """
                   ┌───────────┐   ┌────────┐   ┌─────────┐
            step ─>│ amplifier ├╱─>│ stages ├╱─>│ samples ├╱─> filters
                   └───────────┘   └────────┘   └─────────┘
            ╱ passes no more than the swing of its node
            a step of {step}: {recovery}
            stages alone, a small step, to 0.1 %: {settling}
            """,
            assessment => Values(
                ("step", Part(assessment.Design.OffsetStep)),
                ("recovery", Back(assessment)), ("settling", Settled(assessment)))),
        new(
            "gain-stages", "The signal's way, and what each stage multiplies",
            [ResultIds.Gain.All, ResultIds.Filter.Figures(NodeId.Path), ResultIds.Filter.Figures(NodeId.Amplifier)],
            """
                      ┌───────────┐   ┌────────┐   ┌───────────┐
            scalp ───>│ amplifier ├──>│ stages ├──>│ converter ├─>
                      │ × {g1}    │   │ filter │   │           │
                      └───────────┘   └────────┘   └───────────┘
            mid-band gain, all together: {mid}
            """,
            assessment => Values(("g1", QuantityText.FormatTrimmed(assessment.Design.Amplifier.Gain, "1", 4)),
                ("mid", Figure(assessment, ResultIds.Gain.Mid)))),
        new(
            "stage-sallen-key", "A unity-gain Sallen–Key section", [ResultIds.Filter.All],
            """
                        ┌───────┤├─────────────┐
                        │       C1             │
                        │            ┌────┐    │
            in ──[R1]───┴──[R2]──┬───┤ ×1 ├────┴──> out
                                ─┴─  └────┘
                              C2─┬─
                                 │
                                 ┷
            f_0 = 1/(2π·√(R1·R2·C1·C2))
            """,
            NoValues, Is("stage-sallen-key")),
        new(
            "stage-multiple-feedback", "A multiple-feedback section", [ResultIds.Filter.All],
            """
                        ┌────────[R3]──────────────────┐
                        │                              │
                        │        ┌───────┤├────────────┤
                        │        │       C2            │
                        │        │   ┌────────────┐    │
            in ──[R1]───┼──[R2]──┴───┤ − op-amp   ├────┴──> out
                       ─┴─           │ +          │
                     C1─┬─           └─┬──────────┘
                        │              │
                        ┷              ┷
            f_0 = 1/(2π·√(R2·R3·C1·C2))
            """,
            NoValues, Is("stage-multiple-feedback")),
        new(
            "stage-gain", "A non-inverting stage after a coupling capacitor", [ResultIds.Filter.All],
            """
                             ┌────────────┐
            in ──┤├──┬───────┤ + op-amp   ├──┬───> out
                 C   │       │            │  │
                    [R]    ┌─┤ −          │[Rf]
                     │     │ └────────────┘  │
                     ┷     └─────────────────┤
                                            [Rg]
                                             │
                                             ┷
            gain 1 + Rf/Rg; lower corner 1/(2πRC)
            """,
            NoValues, Is("stage-gain")),
        new(
            "stage-rc", "A low-pass of one pole", [ResultIds.Filter.All],
            """
            in ──[R]──┬──────> out
                     ─┴─
                    C─┬─        f_c = 1/(2πRC)
                      │
                      ┷
            """,
            NoValues, Is("stage-rc")),
        new(
            "digital-section", "A second-order digital section", [ResultIds.Digital.All],
            """
            x ───┬──[b0]──>(+)────────────┬──> y
                 │          ^             │
                 │        [z⁻¹]           │
                 │          │             │
                 ├──[b1]──>(+)<──[−a1]────┤
                 │          ^             │
                 │        [z⁻¹]           │
                 │          │             │
                 └──[b2]──>(+)<──[−a2]────┘
            what comes back from y makes it ring
            """,
            NoValues),
        new(
            "latency", "Delays add up on the way", [ResultIds.Latency.Total],
            """
              ┌──────────┐  ┌───────────┐  ┌─────────┐
            ─>│ analogue ├─>│ converter ├─>│ digital ├─> reader
              │ filters  │  │           │  │ filters │
              └──────────┘  └───────────┘  └─────────┘
            all together {total}
            """,
            assessment => Values(("total", Figure(assessment, ResultIds.Latency.Total)))),
        new(
            "skew", "Two channels sampled at two moments", [ResultIds.Skew.Leak],
            """
            channel 1 ──────┬───────────────> t
                            │ Δt
                            └──┐
                               v
            channel 2 ─────────┬────────────> t
            left of a common sine: 2·sin(πf·Δt)
            Δt {skew}
            """,
            assessment => Values(("skew", Part(assessment.Design.Converter.Skew)))),
        new(
            "quantiser", "A converter's steps",
            [ResultIds.Converter.All, ResultIds.Noise.Source(SourceId.Quantisation), ResultIds.Noise.Source(SourceId.Converter)],
            """
            code │                 ┌─────
                 │           ┌─────┘
                 │     ┌─────┘
                 │─────┘
                 └──────────────────────> input
                       one step: LSB
            error within ± half a step, rms LSB/√12
            LSB at the electrodes {lsb}
            """,
            assessment => Values(("lsb", Figure(assessment, ResultIds.Converter.Lsb)))),
        new(
            "montage", "One reference for all channels", [ResultIds.Montage.All],
            """
                                 ┌───────────┐
            site 1 ─────[Z_1]───>│+          ├──> x_1 = v_1 − v_r
                              ┌─>│−          │
            reference ─[Z_3]──┤  └───────────┘
                              │  ┌───────────┐
                              └─>│−          ├──> x_2 = v_2 − v_r
            site 2 ─────[Z_2]───>│+          │
                                 └───────────┘
            v_r is in both: x_1 − x_2 = v_1 − v_2
            """,
            NoValues),
        new(
            "stage-noise", "Noise of one stage of the path", [ResultIds.Noise.Sources],
            """
                        (~) the part's own noise
                         │
                 ┌───┐   │   ┌───┐
            ────>│ G ├───┴──>│   ├──> samples
                 └───┘       └───┘
            at the electrodes it is divided by the gain G
            in front of it
            """,
            NoValues),
        new(
            "shared-fault-path", "The current after a fault that all measuring leads share", [ResultIds.Safety.SharedFaultCurrent],
            """
             ┌── fault ──┬──[R_1]───── skin ────┐
             │  (short)  ├──[R_2]───── skin ────┤
            (V)          └──[R_3]───── skin ────┤
             │                               wearer
             │                                  │
             └──────────────[R_g]───── skin ────┘
            floating box: I = V/(R_1, R_2 … in parallel + R_g)
            common tied to earth: the current returns there,
            and I = V/R_1 + V/R_2 + …
            here: {shared}
            a design aid, no safety assessment
            """,
            assessment => Values(("shared", Figure(assessment, ResultIds.Safety.SharedFaultCurrent)))),
        new(
            "fault-path", "The current after a fault", [ResultIds.Safety.All],
            """
             ┌── fault ───[R]────── skin, 0 Ω ──┐
             │  (short)  fitted                 │
            (V)                               wearer
             │                                  │
             └────────── other lead, 0 Ω ───────┘
            I = V/R; the highest V of the box, R at its least
            worst lead: {worst}
            a design aid, no safety assessment
            """,
            assessment => Values(("worst", Figure(assessment, ResultIds.Safety.FaultCurrent)))),
        new(
            "open-lead", "A lead without its electrode", [ResultIds.Open.All],
            """
            mains (~)────┤├─────┐
                       C_lead   │
            body   ── off ──    ├──────┬─────> amplifier
                                │      │
                              [Z_in]  (I) bias current
                                │      │
                                ┷      ┷
            where it floats to decides what clips
            """,
            NoValues),
        new(
            "contact-check", "Impedance from a small known current", [ResultIds.Contact.Any.Good, ResultIds.Contact.Any.Poor, ResultIds.Contact.Any.Open, ResultIds.Contact.Beat, ResultIds.Contact.AddsInBand],
            """
             ┌────[Z_1]─── body ───[Z_2]────┐
             │                              │
            (I)   V = I·(Z_1 + Z_2)         │
             │                              │
             └──────────────────────────────┘
            I {i} at {f}
            """,
            assessment => Values(("i", assessment.Design.ContactCheck is { } check ? Part(check.Current) : "none"),
                ("f", assessment.Design.ContactCheck is { } used ? Part(used.Frequency) : "none"))),
        new(
            "supply", "What hangs on the battery", [ResultIds.Supply.All, ResultIds.Power.All, ResultIds.Data.All],
            """
            battery ──┬────────────────> amplifiers, converter
                      │
                      ├────────────────> processor, radio
                      │  ripple of its bursts
                      └──[R]──┬────────> middle of the supply
                              │          both inputs rest on it
                             [R]
                              │
                              ┷
            lowest {low}   highest {high}
            """,
            assessment => Values(("low", Part(assessment.Design.Supply.Lowest)), ("high", Part(assessment.Design.Supply.Highest)))),
    ];

    public static IReadOnlyList<Diagram> All => Table;

    /// <summary>The picture of a result of an assessment; null where none would help.</summary>
    public static Diagram? Of(Assessment assessment, ResultId resultId) =>
        Array.Find(Table, diagram =>
            diagram.For.Any(pattern => pattern.Fits(resultId)) && (diagram.When is null || diagram.When(assessment, resultId)));

    /// <summary>The pictures that an assessment's results have, each once, in the order of the table.</summary>
    public static IReadOnlyList<Diagram> Of(Assessment assessment)
    {
        HashSet<Diagram> used = [.. assessment.Results.Select(result => Of(assessment, result.Id)).OfType<Diagram>()];
        return [.. Table.Where(used.Contains)];
    }

    /// <summary>Whether a result such as filter.anti-alias-1.settling is one of a kind of stage.</summary>
    private static Func<Assessment, ResultId, bool> Is(string picture) => (assessment, id) =>
        assessment.Design.Stages.Any(stage => stage.Picture == picture && ResultIds.Filter.Figures(NodeId.Of(stage.Name)).Has(id));

    private static Dictionary<string, string> NoValues(Assessment assessment) => [];

    private static Dictionary<string, string> Values(params (string Name, string Text)[] values) =>
        values.ToDictionary(value => value.Name, value => value.Text, StringComparer.Ordinal);

    private static string Part(IQuantity quantity) => QuantityText.FormatPart(quantity);

    private static string Figure(Assessment assessment, ResultId id) =>
        assessment.Find(id) switch
        {
            { Value: { } value } => QuantityText.Format(value),
            { State: ResultState.Unbounded } unbounded => UnboundedWords.Of(unbounded),
            _ => "no number",
        };

    private static string Back(Assessment assessment) => assessment.Find(ResultIds.Levels.Recovery) switch
    {
        { Value: { } value } => $"within 10 µV of its end in {QuantityText.Format(value)}",
        { Text: { } text } => text.Split(':')[0],
        _ => "no number",
    };

    private static string Settled(Assessment assessment) => assessment.Find(ResultIds.Filter.Path.Settling) switch
    {
        { Value: { } value } => QuantityText.Format(value),
        { } => "never",
        null => "at once",
    };

    /// <summary>The headroom of the node that clips first.</summary>
    private static string First(Assessment assessment) =>
        assessment.Results.Where(result =>
            ResultIds.Levels.IsHeadroom(result.Id) && result.Value is not null).MinBy(result => result.Si) is { } least
                ? QuantityText.Format(least.Value)
                : "no number";
}
