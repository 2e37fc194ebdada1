using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Textbook;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Topologies.StageFields;

namespace FrontEnd.Topologies;

/// <summary>Second-order multiple-feedback low-pass: R1 in–X, R3 X–out, R2 X–(−), C1 X–common, C2 (−)–out; inverts, dc gain
/// −R3/R1.</summary>
public sealed record MultipleFeedbackSection : Stage
{
    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("low-pass", "multiple-feedback", "a multiple-feedback section", () =>
            new MultipleFeedbackSection(), Of<MultipleFeedbackSection>(
        [
            Ohms("r1", "R1", "22 kΩ", "R1, from the input to node X", (MultipleFeedbackSection s) => s.R1, (s, v) => s with { R1 = v }),
            Ohms("r2", "R2", "22 kΩ", "R2, from node X to the op-amp's - input", (MultipleFeedbackSection s) =>
                s.R2, (s, v) => s with { R2 = v }),
            Ohms("r3", "R3", "22 kΩ", "R3, from node X to the output", (MultipleFeedbackSection s) => s.R3, (s, v) => s with { R3 = v }),
            Farads("c1", "C1", "220 nF", "C1, from node X to common", (MultipleFeedbackSection s) => s.C1, (s, v) => s with { C1 = v }),
            Farads("c2", "C2", "47 nF", "C2, from the op-amp's - input to the output", (MultipleFeedbackSection s) =>
                s.C2, (s, v) => s with { C2 = v }),
        ]), stage => stage is MultipleFeedbackSection),
    ];

    public Resistance R1 { get; init; } = Resistance.FromKilohms(22);

    public Resistance R2 { get; init; } = Resistance.FromKilohms(22);

    public Resistance R3 { get; init; } = Resistance.FromKilohms(22);

    public Capacitance C1 { get; init; } = Capacitance.FromNanofarads(220);

    public Capacitance C2 { get; init; } = Capacitance.FromNanofarads(47);

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    public override StageRole Role => StageRole.LowPass;

    public override OpAmp? FittedOpAmp => OpAmp;

    /// <summary>R3/R1.</summary>
    public override double NominalGain => R3.Ohms / R1.Ohms;

    public override string Word => "multiple feedback";

    public override IReadOnlyList<string> Lines => ["multiple", "feedback"];

    public override double NoiseGain => 1 + NominalGain;

    public override string GainFormula => "R3/R1";

    public override string GainText => $" · {QuantityText.FormatPart(R3)}/{QuantityText.FormatPart(R1)}";

    public override string PartsText =>
        $"R1 {QuantityText.FormatPart(R1)}, R2 {QuantityText.FormatPart(R2)}, R3 {QuantityText.FormatPart(R3)}, C1 {QuantityText.FormatPart(C1)} to common, C2 {QuantityText.FormatPart(C2)} to the output";

    public override string Picture => "stage-multiple-feedback";

    internal override TextbookFigure? PoleFormula => IsGiven ? FilterFormulas.MultipleFeedbackFrequency(R2, R3, C1, C2) : null;

    internal override TextbookFigure? QFormula => IsGiven ? FilterFormulas.MultipleFeedbackQ(R1, R2, R3, C1, C2) : null;

    internal override TextbookFigure? UpperCorner => IsGiven
        ? FilterFormulas.SecondOrderCorner(Frequency.FromHertz(PoleFormula!.Value), QFormula!.Value)
        : null;

    internal override SectionParts? Section =>
        new SectionParts(SectionKind.MultipleFeedback, R1.Ohms, R2.Ohms, R3.Ohms, C1.Farads, C2.Farads, 1 / OpAmp.DcGain,
            OpAmp.GainBandwidth.Hertz);

    private bool IsGiven => 0 < R1.Ohms && 0 < R2.Ohms && 0 < R3.Ohms && 0 < C1.Farads && 0 < C2.Farads;

    public override StageShape Shape => StageShape.MultipleFeedback;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit() => Draft()
        .Resistor("r1", "R1, input to middle", Input, "X", R1)
        .Resistor("r2", "R2, middle to op-amp", "X", "minus", R2)
        .Resistor("r3", "R3, middle to output", "X", Out, R3)
        .Capacitor("c1", "C1, middle to common", "X", Common, C1)
        .Capacitor("c2", "C2, op-amp to output", "minus", Out, C2)
        .OpAmp(OpAmp, Out, Common, "minus")
        .Finish();
}
