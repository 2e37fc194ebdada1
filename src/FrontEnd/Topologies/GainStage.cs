using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Textbook;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Fields.FieldRange;
using static FrontEnd.Fields.Make;

namespace FrontEnd.Topologies;

/// <summary>Non-inverting op-amp stage, 1 + Rf/Rg, with optional ac coupling in front and an optional capacitor across Rf.</summary>
public sealed record GainStage : Stage
{
    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("gain", null, "a gain stage", () => new GainStage(), StageFields.Of<GainStage>(
        [
            Maybe("coupling-capacitor", "coupling_C", Above(0, 1e-2), "none", "none", ByDesign,
                "series capacitor of the ac coupling; \"none\" makes the stage dc coupled",
                (GainStage s) => s.CouplingCapacitor, (s, v) => s with { CouplingCapacitor = v }),
            Value("coupling-resistor", "coupling_R", Above(0, 1e12), "1 MΩ", Practice,
                "from the op-amp's input to common, after the coupling capacitor",
                (GainStage s) => s.CouplingResistor, (s, v) => s with { CouplingResistor = v }),
            Value("feedback-resistor", "Rf", Closed(0, 1e10), "0 Ω", "a follower unless given", "Rf of the gain 1 + Rf/Rg",
                (GainStage s) => s.FeedbackResistor, (s, v) => s with { FeedbackResistor = v }),
            Maybe("ground-resistor", "Rg", Above(0, 1e10), "none", "none", "a follower unless given", "Rg of the gain 1 + Rf/Rg",
                (GainStage s) => s.GroundResistor, (s, v) => s with { GroundResistor = v }),
            Maybe("feedback-capacitor", "Cf", Above(0, 1e-2), "none", "none", ByDesign, "capacitor across Rf",
                (GainStage s) => s.FeedbackCapacitor, (s, v) => s with { FeedbackCapacitor = v }),
        ]), stage => stage is GainStage),
    ];

    /// <summary>Series capacitor of the ac coupling; null where the stage is coupled for dc.</summary>
    public Capacitance? CouplingCapacitor { get; init; }

    /// <summary>From the op-amp's input to common, behind the coupling capacitor.</summary>
    public Resistance CouplingResistor { get; init; } = Resistance.FromMegohms(1);

    /// <summary>Rf; 0 makes a follower together with no Rg.</summary>
    public Resistance FeedbackResistor { get; init; }

    /// <summary>Rg; null makes a follower.</summary>
    public Resistance? GroundResistor { get; init; }

    /// <summary>Cf across Rf; null for none.</summary>
    public Capacitance? FeedbackCapacitor { get; init; }

    public OpAmp OpAmp { get; init; } = OpAmp.MicropowerCmos;

    public override StageRole Role => StageRole.Gain;

    public override OpAmp? FittedOpAmp => OpAmp;

    /// <summary>1 + Rf/Rg.</summary>
    public override double NominalGain => NonInverting(FeedbackResistor, GroundResistor);

    public override string Word => "gain stage";

    public override IReadOnlyList<string> Lines => [$"gain {QuantityText.FormatNumber(NominalGain)}", CouplingCapacitor is null
        ? "dc coupled"
        : "ac coupled"];

    public override string GainFormula => GroundResistor is null ? "" : "(1 + Rf/Rg)";

    public override string GainText => GroundResistor is null ? " · 1" : NonInvertingText(FeedbackResistor, GroundResistor);

    public override string Picture => "stage-gain";

    internal override TextbookFigure? UpperCorner => FeedbackCapacitor is { Farads: > 0 } cf && 0 < FeedbackResistor.Ohms
        ? FilterFormulas.RcCorner(FeedbackResistor, cf)
        : AmplifierFormulas.Bandwidth(OpAmp.GainBandwidth, NominalGain);

    internal override TextbookFigure? LowerCorner =>
        CouplingCapacitor is { Farads: > 0 } c && 0 < CouplingResistor.Ohms ? FilterFormulas.RcCorner(CouplingResistor, c) : null;

    public override StageShape Shape => StageShape.Gain;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit()
    {
        CircuitDraft draft = Draft();
        string plus = Input;
        if (CouplingCapacitor is { } coupling)
        {
            plus = "plus";
            draft.Capacitor("coupling-capacitor", "coupling capacitor", Input, plus, coupling);
            draft.Resistor("coupling-resistor", "coupling resistor", plus, Common, CouplingResistor);
        }

        draft.NonInverting(OpAmp, plus, FeedbackResistor, GroundResistor);
        if (GroundResistor is not null && FeedbackCapacitor is { } cf)
        {
            draft.Capacitor("feedback-capacitor", "Cf", Out, "minus", cf);
        }

        return draft.Finish();
    }

    internal override IEnumerable<StageFault> Faults(bool isLast)
    {
        if (GroundResistor is null && 0 < FeedbackResistor.Ohms)
        {
            yield return new(Messages.FeedbackWithoutGround, Severity.Warning,
                $"the gain stage `{Name}` has a feedback resistor but no ground resistor, so its gain is 1", "the gain is 1 + Rf/Rg",
                key => $"set {key}.ground-resistor, or leave the feedback resistor out", "ground-resistor");
        }
        else if (GroundResistor is not null && FeedbackResistor.Ohms == 0)
        {
            yield return new(Messages.FeedbackWithoutGround, Severity.Warning,
                $"the gain stage `{Name}` has a ground resistor but no feedback resistor, so its gain is 1", "the gain is 1 + Rf/Rg",
                key => $"set {key}.feedback-resistor", "feedback-resistor");
        }
    }
}
