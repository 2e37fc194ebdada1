using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>Gain from the electrodes to the converter's pin and to the samples, in the middle of the band.</summary>
internal static class GainReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        double nominal = design.Amplifier.Gain * design.Stages.Aggregate(1.0, (product, stage) => product * stage.NominalGain);
        string substituted = QuantityText.FormatNumber(design.Amplifier.Gain, 4)
            + string.Concat(design.Stages.Select(stage => stage.GainText));
        string formula = "G1" + string.Concat(design.Stages.Where(stage => stage.GainFormula.Length != 0).Select(stage =>
            $"·{stage.GainFormula}"));
        var hand = new TextbookFigure(nominal, formula, () => $"{substituted} = {QuantityText.FormatNumber(nominal, 4)}",
            Equations.CommonPractice) { Unit = "1" };
        const string Assumption = "the formula leaves out the division by electrodes and input, what couplings, low-passes and notches take off at the band's centre, and the op-amps' finite gain";
        list.Number(ResultIds.Gain.Mid, "gain from the electrodes to the samples, mid-band", "G_mid",
            Ratio.FromFraction(evaluation.GainMid), Equations.GainMid, hand: hand,
            assumption: Assumption + ", and the converter's own response");
        list.Number(ResultIds.Gain.MidFrequency, "geometric centre of the band", "f_mid", design.Band.Centre, Equations.CentreFrequency,
            () => $"√({QuantityText.FormatPart(design.Band.Low)} · {QuantityText.FormatPart(design.Band.High)})");
        list.Number(ResultIds.Gain.TotalAnalog, "analogue gain to the converter's pin, mid-band", "|H_path|",
            Ratio.FromFraction(evaluation.PathGain), Equations.GainTotal, hand: hand, assumption: Assumption);
    }
}
