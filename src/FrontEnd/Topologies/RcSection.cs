using FrontEnd.Circuits;
using FrontEnd.Fields;
using FrontEnd.Textbook;
using static FrontEnd.Circuits.Circuit;
using static FrontEnd.Topologies.StageFields;

namespace FrontEnd.Topologies;

/// <summary>First-order low-pass: R, C and a follower; or R and C alone at the converter's pin.</summary>
public sealed record RcSection : Stage
{
    private static readonly IReadOnlyList<Field<RcSection>> Rows =
    [
        Ohms("r", "R", "10 kΩ", "series resistor", (RcSection s) => s.R, (s, v) => s with { R = v }),
        Farads("c", "C", "100 nF", "capacitor to common", (RcSection s) => s.C, (s, v) => s with { C = v }),
    ];

    internal static readonly IReadOnlyList<Variant> Variants =
    [
        Variant.Make("low-pass", "rc", "a first-order section with follower", () =>
            new RcSection(), Of(Rows), stage => stage is RcSection { OpAmp: not null }),
        Variant.Make("low-pass", "rc-passive", "a passive first-order section", () =>
            new RcSection { OpAmp = null }, Of(Rows, hasOpAmp: false), stage => stage is RcSection { OpAmp: null }),
    ];

    public Resistance R { get; init; } = Resistance.FromKilohms(10);

    public Capacitance C { get; init; } = Capacitance.FromNanofarads(100);

    /// <summary>The follower's op-amp; null for a passive section, allowed as the last block only.</summary>
    public OpAmp? OpAmp { get; init; } = OpAmp.MicropowerCmos;

    public override StageRole Role => StageRole.LowPass;

    public override OpAmp? FittedOpAmp => OpAmp;

    public override string Word => "RC";

    public override string Title => "RC and follower";

    public override string Picture => "stage-rc";

    internal override TextbookFigure? PoleFormula => 0 < R.Ohms && 0 < C.Farads ? FilterFormulas.RcCorner(R, C) : null;

    internal override TextbookFigure? UpperCorner => PoleFormula;

    internal override SectionParts? Section =>
        new SectionParts(SectionKind.Rc, R.Ohms, 0, 0, C.Farads, 0, OpAmp is { } a
            ? 1 / a.DcGain
            : 0, OpAmp?.GainBandwidth.Hertz ?? double.PositiveInfinity);

    public override StageShape Shape => StageShape.Rc;

    public override Stage WithOpAmp(OpAmp opAmp) => this with { OpAmp = opAmp };

    internal override Circuit Circuit()
    {
        CircuitDraft draft = Draft().Resistor("r", "R", Input, "P", R).Capacitor("c", "C", "P", Common, C);
        return OpAmp is { } opAmp ? draft.OpAmp(opAmp, Out, "P", Out).Finish() : draft.Finish("P");
    }

    internal override IEnumerable<StageFault> Faults(bool isLast)
    {
        if (OpAmp is null && !isLast)
        {
            yield return new(Messages.PassiveNotLast, Severity.Error, $"the passive section `{Name}` is not the last stage",
                "only the converter's pin loads it so lightly that it needs no buffer",
                _ => "write topology = \"rc\" to add a follower, or move it to the end");
        }
    }
}
