namespace FrontEnd.Teaching.Problems;

/// <summary>The circuit that a question is about, on a grid of letters as a <see cref="Diagram"/> is, with the names of the question's givens.</summary>
/// <param name="Title">What it shows, for a reader who does not see it.</param>
/// <param name="Art">As <see cref="Diagram.Art"/>; a box with <c>▷</c> in it is an op-amp, its output at the box's right side.</param>
internal sealed record QuestionCircuit(string Title, string Art)
{
    public IReadOnlyList<string> Lines => [.. Art.Split('\n').Select(line => line.TrimEnd())];
}

/// <summary>The circuits of the templates that have one.</summary>
internal static class QuestionCircuits
{
    private static readonly QuestionCircuit Rc = new("A low-pass of one resistor and one capacitor",
        """
        in ──[R]──┬─────> out
                 ─┴─
               C ─┬─
                  │
                  ┷
        """);

    private static readonly QuestionCircuit SallenKey = new("A unity-gain Sallen–Key low-pass",
        """
                    ┌────┤├──────────────────┐
                    │    C_1    ┌─────┐      │
        in ──[R_1]──┴──[R_2]─┬──┤+    │      │
                            ─┴─ │   ▷ ├──┬───┴──> out
                        C_2 ─┬─ │     │  │
                             │ ┌┤−    │  │
                             │ │└─────┘  │
                             ┷ └─────────┘
        """);

    private static readonly QuestionCircuit NonInverting = new("A non-inverting stage",
        """
                 ┌─────┐
        in ──────┤+    │
                 │   ▷ ├──┬───> out
              ┌──┤−    │  │
              │  └─────┘  │
              ├───[R_f]───┘
            [R_g]
              │
              ┷
        """);

    private static readonly QuestionCircuit Inverting = new("An inverting stage",
        """
                    ┌──[R_f]─────┐
                    │  ┌─────┐   │
        in ──[R_in]─┴──┤−    │   │
                       │   ▷ ├───┴──> out
                    ┌──┤+    │
                    │  └─────┘
                    ┷
        """);

    private static readonly QuestionCircuit Coupling = new("An ac coupling",
        """
        in ──┤├──┬─────> out
             C   │
                [R]
                 │
                 ┷
        """);

    private static readonly QuestionCircuit Instrumentation = new("The first stage of an instrumentation amplifier",
        """
                   ┌─────┐
        + in ──────┤+    │
                   │   ▷ ├──┬──> first inner node
                ┌──┤−    │  │
                │  └─────┘  │
                ├────[R]────┘
              [R_G]
                ├────[R]────┐
                │  ┌─────┐  │
                └──┤−    │  │
                   │   ▷ ├──┴──> second inner node
        − in ──────┤+    │
                   └─────┘
        """);

    private static readonly QuestionCircuit Difference = new("A difference amplifier of four resistors",
        """
                       ┌───[R_2]────┐
                       │  ┌─────┐   │
        − in ──[R_1]───┴──┤−    │   │
                          │   ▷ ├───┴──> out
        + in ──[R_1]───┬──┤+    │
                       │  └─────┘
                     [R_2]
                       │
                       ┷
        """);

    private static readonly QuestionCircuit Dividers = new("Two electrodes and their inputs",
        """
         ┌───[Z]──────┬────> + in
         │           ─┴─
         │      C_in ─┬─
        body          ┷
         │
         └─[Z + ΔZ]───┬────> − in
                     ─┴─
                C_in ─┬─
                      ┷
        """);

    private static readonly QuestionCircuit BodyCurrent = new("The mains' way through the body",
        """
           C_p
         ┌──┤├───┬── body
         │       │
        (~) V    │ i
         │       │
         ╧       ╧
        """);

    private static readonly QuestionCircuit CommonMode = new("The mains' way through the body and the ground electrode",
        """
           C_p
         ┌──┤├───┬── body ────> inputs
         │       │ i
        (~) V  [Z_g]
         │       │
         ╧       ╧
        """);

    private static readonly QuestionCircuit ChainMains = new("The mains' way into the inputs",
        """
           C_p            body
         ┌──┤├───┬──────┬───[Z]─────┬────> + in
         │       │ i    │          ─┴─
        (~) V  [Z_g]    │     C_in ─┬─
         │       │      │           ┷
         ╧       ╧      └─[Z + ΔZ]──┬────> − in
                                   ─┴─
                              C_in ─┬─
                                    ┷
        """);

    private static readonly QuestionCircuit Loop = new("The loop of the leads",
        """
          ┌─────────────────────> + in
          │
        body    B through A
          │
          └─────────────────────> − in
        """);

    private static readonly QuestionCircuit SharedReference = new("A reference that carries all channels",
        """
        active ──────[Z_e]──┬────> + in
                           ─┴─
                         C ─┬─
                            ┷
        reference ───[Z_e]──┬────> − in, N times
                           ─┴─
                       N·C ─┬─
                            ┷
        """);

    private static readonly QuestionCircuit DrivenResistance = new("A driven ground",
        """
                       ┌──[R_f]─────┐
        + in ──[R_a]─┐ │  ┌─────┐   │
                     ├─┴──┤−    │   │
        − in ──[R_a]─┘    │   ▷ ├───┴──[R_o]──> ground
                       ┌──┤+    │
                       │  └─────┘
                       ┷
        """);

    private static readonly QuestionCircuit DrivenLoop = new("The loop of a driven ground",
        """
         i ──> body ──[R_e]──[R_o]──┐
                │                   │
                │    ┌─────────┐    │
                └───>│ loop    ├────┘
                     │ gain T  │
                     └─────────┘
        """);

    private static readonly QuestionCircuit Bias = new("A bias current in an electrode",
        """
        skin ───[R]───┬─────> amplifier
                      │
                     (I) I_b
                      │
                      ┷
        """);

    private static readonly QuestionCircuit Electrode = new("An electrode on skin",
        """
                    ┌──[R_d]──┐
        skin ─[R_s]─┤         ├───> lead
                    └───┤├────┘
                        C_d
        """);

    private static readonly QuestionCircuit Pair = new("A pair of electrodes",
        """
          ┌──[R_d]──┐            ┌──[R_d]──┐
        ──┤         ├─── skin ───┤         ├──
          └───┤├────┘            └───┤├────┘
              C_d                    C_d
        """);

    private static readonly QuestionCircuit ContactCheck = new("A contact check",
        """
         ┌────[Z_1]── body ───[Z_2]───┐
         │                            │
        (I) I                         │
         │                            │
         └────────────────────────────┘
        """);

    private static readonly QuestionCircuit OneResistor = new("A resistor in front of an input",
        """
        in ────[R]────> amplifier
        """);

    private static readonly QuestionCircuit CurrentNoise = new("An input's current noise in an electrode",
        """
        skin ───[R]───┬─────> amplifier
                      │
                     (~) i
                      │
                      ┷
        """);

    private static readonly QuestionCircuit Referred = new("Noise in front of the gain and behind it",
        """
           (~) e_ni         (~) e_no
            │    ┌─────┐     │
        in ─┴───>│ × G ├─────┴───> out
                 └─────┘
        """);

    private static readonly QuestionCircuit ChainNoise = new("The chain from the skin to the converter",
        """
         ┌──[R_e]──[R_p]──>┌──────┐
         │                 │ × G  ├────> converter
        skin               │ e, i │      σ_adc
         │                 │      │
         └──[R_e]──[R_p]──>└──────┘
        """);

    private static readonly QuestionCircuit ToConverter = new("From the electrodes to the samples",
        """
                      ┌─────┐    ┌───────────┐
        electrodes ──>│ × G ├───>│ converter ├──> samples
                      └─────┘    └───────────┘
        """);

    private static readonly QuestionCircuit Fault = new("The way of the current after a fault",
        """
         ┌── fault ───[R]─── skin ────┐
         │                            │
        (V) V_max                   wearer
         │                            │
         └────── other lead ── skin ──┘
        """);

    private static readonly QuestionCircuit SharedFault = new("The way of the current after a fault that all measuring leads share",
        """
         ┌── fault ──┬──[R]──── skin ────┐
         │           ├──[R]──── skin ────┤
        (V) V_max    └──[R]──── skin ────┤  N leads
         │                               │
         │                            wearer
         │                               │
         └─────────────[R_g]─── skin ────┘
        """);

    private static readonly QuestionCircuit Sections = new("Sections in a row",
        """
            ┌────┐    ┌────┐         ┌────┐
        in ─┤ f₁ ├───>│ f_1├── ... ─>│ f_1├──> out
            └────┘    └────┘         └────┘
        """);

    private static readonly QuestionCircuit Chain = new("The chain from the skin to the samples",
        """
               ┌──────┐
        skin ──┤ R_d  ├─[R_p]─>┌──────┐  ┌──────┐
               │ C_d  │        │ × G_1├─>│ × G_2├─[10 kΩ]─┬─> samples
        skin ──┤      ├─[R_p]─>│ e, i │  └──────┘        ─┴─
               └──────┘        └──────┘                C ─┬─
        ground ───────[R_g]──> common                     ┷
        """);

    private static readonly Dictionary<string, QuestionCircuit> ByTemplate = new(StringComparer.Ordinal)
    {
        ["filter-rc"] = Rc, ["filter-choose-capacitor"] = Rc, ["filter-sallen-key"] = SallenKey, ["filter-sallen-key-q"] = SallenKey,
        ["filter-equal-sections"] = Sections,
        ["gain-stage"] = NonInverting, ["gain-bandwidth"] = Inverting, ["gain-settling"] = Coupling, ["gain-inner-nodes"] = Instrumentation,
        ["cmrr-resistors"] = Difference, ["cmrr-divider"] = Dividers, ["cmrr-body-current"] = BodyCurrent, ["cmrr-common-mode"] = CommonMode,
        ["cmrr-loop"] = Loop, ["cmrr-shared-reference"] = SharedReference, ["chain-mains"] = ChainMains,
        ["drive-resistance"] = DrivenResistance, ["drive-common-mode"] = DrivenLoop,
        ["electrode-bias"] = Bias, ["electrode-impedance"] = Electrode, ["electrode-pair-noise"] = Pair, ["electrode-contact-check"] = ContactCheck,
        ["noise-thermal"] = OneResistor, ["noise-current"] = CurrentNoise, ["noise-referred"] = Referred, ["chain-noise"] = ChainNoise,
        ["converter-step"] = ToConverter, ["converter-quantisation"] = ToConverter, ["converter-dynamic-range"] = ToConverter,
        ["chain-noise-free-bits"] = ToConverter,
        ["safety-current"] = Fault, ["safety-resistor"] = Fault, ["safety-leads"] = SharedFault,
        ["chain-judge-noise"] = Chain, ["chain-judge-mains"] = Chain, ["chain-judge-fold"] = Chain, ["chain-judge-offset"] = Chain,
        ["chain-judge-dominant"] = Chain,
    };

    /// <summary>The circuit of a template's questions; null where a question has none.</summary>
    public static QuestionCircuit? Find(string templateId) => ByTemplate.GetValueOrDefault(templateId);

    /// <summary>Ids of the templates that have one.</summary>
    public static IReadOnlyCollection<string> Templates => ByTemplate.Keys;
}
