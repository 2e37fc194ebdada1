using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Textbook;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;
using static FrontEnd.Topologies.StageFields;

namespace FrontEnd.Topologies;

/// <summary>Second-order Sallen–Key low-pass: R1 in–X, R2 X–P, C1 X–out, C2 P–common; with a follower, or with the gain K = 1 +
/// Rf/Rg.</summary>
/// <remarks>With K = 3 − 1/Q all of R1, R2 and of C1, C2 may be equal: the equal-component form.</remarks>
public sealed record SallenKeySection : Stage
{
    /// <summary>A section of equal parts as it stands where nothing is given: Q 0.707 at 72 Hz.</summary>
    private static readonly SallenKeySection EqualDefault = new()
    {
        C1 = Capacitance.FromNanofarads(100), C2 = Capacitance.FromNanofarads(100), FeedbackResistor = Resistance.FromOhms(5900),
        GroundResistor = Resistance.FromKilohms(10),
    };

    private static readonly IReadOnlyList<Field<SallenKeySection>> Rows =
    [
        Ohms("r1", "R1", "22 kΩ", "R1, from the input to node X", (SallenKeySection s) => s.R1, (s, v) => s with { R1 = v }),
        Ohms("r2", "R2", "22 kΩ", "R2, from node X to the op-amp's + input", (SallenKeySection s) => s.R2, (s, v) => s with { R2 = v }),
        Farads("c1", "C1", "150 nF", "C1, from node X to the output", (SallenKeySection s) => s.C1, (s, v) => s with { C1 = v }),
        Farads("c2", "C2", "68 nF", "C2, from the op-amp's + input to common", (SallenKeySection s) => s.C2, (s, v) => s with { C2 = v }),
    ];

    private static readonly IReadOnlyList<Field<SallenKeySection>> EqualRows =
    [
        .. Rows.Select(field => field.Key is "c1" or "c2" ? field with { DefaultText = "100 nF" } : field),
        Value("feedback-resistor", "Rf", Closed(0, 1e10), "5.9 kΩ", Practice,
            "Rf of the gain K = 1 + Rf/Rg; with equal parts Q = 1/(3 − K)", (SallenKeySection s) => s.FeedbackResistor,
            (s, v) => s with { FeedbackResistor = v }),
        Ohms("ground-resistor", "Rg", "10 kΩ", "Rg of the gain K = 1 + Rf/Rg", (SallenKeySection s) =>
            s.GroundResistor ?? EqualDefault.GroundResistor!.Value, (s, v) => s with { GroundResistor = v }),
    ];

    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("low-pass", "sallen-key", "a Sallen-Key section", () =>
            new SallenKeySection(), Of(Rows), stage => stage is SallenKeySection { GroundResistor: null }),
        Variant.Make("low-pass", "sallen-key-equal", "an equal-component Sallen-Key section", () =>
            EqualDefault, Of(EqualRows), stage => stage is SallenKeySection { GroundResistor: not null }),
    ];

    public Resistance R1 { get; init; } = Resistance.FromKilohms(22);

    public Resistance R2 { get; init; } = Resistance.FromKilohms(22);

    public Capacitance C1 { get; init; } = Capacitance.FromNanofarads(150);

    public Capacitance C2 { get; init; } = Capacitance.FromNanofarads(68);

    /// <summary>Rf, from the output to the op-amp's − input; of no effect without Rg.</summary>
    public Resistance FeedbackResistor { get; init; }

    /// <summary>Rg, from the − input to common; null makes a follower.</summary>
    public Resistance? GroundResistor { get; init; }

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    /// <summary>Rf + Rg, which the output drives; null for a follower.</summary>
    public Resistance? GainLoad => GroundResistor is { } rg ? FeedbackResistor + rg : null;

    public override StageRole Role => StageRole.LowPass;

    public override OpAmp? FittedOpAmp => OpAmp;

    /// <summary>K.</summary>
    public override double NominalGain => NonInverting(FeedbackResistor, GroundResistor);

    public override string Word => "Sallen-Key";

    public override string Title => GroundResistor is null
        ? "Sallen-Key, gain 1"
        : $"equal-component Sallen-Key, gain {QuantityText.FormatTrimmed(NominalGain, "1", 4)}";

    public override IReadOnlyList<string> Lines => GroundResistor is null
        ? [Word]
        : [Word, $"gain {QuantityText.FormatNumber(NominalGain)}"];

    public override string GainFormula => GroundResistor is null ? "" : "(1 + Rf/Rg)";

    public override string GainText => NonInvertingText(FeedbackResistor, GroundResistor);

    public override string PartsText =>
        $"R1 {QuantityText.FormatPart(R1)}, R2 {QuantityText.FormatPart(R2)}, C1 {QuantityText.FormatPart(C1)} to the output, C2 {QuantityText.FormatPart(C2)} to common{GainParts(FeedbackResistor, GroundResistor)}";

    public override string Picture => "stage-sallen-key";

    internal override TextbookFigure? PoleFormula => IsGiven ? FilterFormulas.SallenKeyFrequency(R1, R2, C1, C2) : null;

    internal override TextbookFigure? QFormula => !IsGiven
        ? null
        : GroundResistor is null
        ? FilterFormulas.SallenKeyQ(R1, R2, C1, C2)
        : FilterFormulas.SallenKeyQ(R1, R2, C1, C2, NominalGain);

    internal override TextbookFigure? UpperCorner => IsGiven
        ? FilterFormulas.SecondOrderCorner(Frequency.FromHertz(PoleFormula!.Value), QFormula!.Value)
        : null;

    internal override TextbookFigure? StopBandTurn => IsGiven
        ? FilterFormulas.SallenKeyTurn(Frequency.FromHertz(PoleFormula!.Value), R1, OpAmp.OutputResistance, OpAmp.GainBandwidth)
        : null;

    internal override TextbookFigure? StopBandFloor => IsGiven
        ? FilterFormulas.SallenKeyFloor(R1, R2, OpAmp.OutputResistance, NominalGain, GainLoad)
        : null;

    internal override SectionParts? Section => GroundResistor is { } rg
        ? new SectionParts(SectionKind.SallenKeyEqual, R1.Ohms, R2.Ohms, 0, C1.Farads, C2.Farads, 1 / OpAmp.DcGain,
            OpAmp.GainBandwidth.Hertz) { Rf = FeedbackResistor.Ohms, Rg = rg.Ohms }
        : new SectionParts(SectionKind.SallenKey, R1.Ohms, R2.Ohms, 0, C1.Farads, C2.Farads, 1 / OpAmp.DcGain, OpAmp.GainBandwidth.Hertz);

    private bool IsGiven => 0 < R1.Ohms && 0 < R2.Ohms && 0 < C1.Farads && 0 < C2.Farads;

    public override StageShape Shape => StageShape.SallenKey;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit() => Draft()
        .Resistor("r1", "R1, input to middle", Input, "X", R1)
        .Resistor("r2", "R2, middle to op-amp", "X", "P", R2)
        .Capacitor("c1", "C1, middle to output", "X", Out, C1)
        .Capacitor("c2", "C2, op-amp to common", "P", Common, C2)
        .NonInverting(OpAmp, "P", FeedbackResistor, GroundResistor)
        .Finish();

    internal override IEnumerable<StageFault> Faults(bool isLast)
    {
        if (GroundResistor is { Ohms: > 0 } && C2.Farads * (R1.Ohms + R2.Ohms) <= (NominalGain - 1) * R1.Ohms * C1.Farads)
        {
            yield return new(Messages.StageOscillates, Severity.Error, $"the section `{Name}` oscillates: its gain is {NominalGain:0.###}",
                $"1 + Rf/Rg must be below 1 + (C2/C1)·(1 + R2/R1) = {1 + (C2.Farads / C1.Farads * (1 + (R2.Ohms / R1.Ohms))):0.###}; 3 with equal parts",
                key => $"lower {key}.feedback-resistor", "feedback-resistor", "ground-resistor");
        }
    }
}
