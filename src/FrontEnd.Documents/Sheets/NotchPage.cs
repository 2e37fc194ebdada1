using System.Globalization;
using FrontEnd.AntiAlias;
using FrontEnd.DesignedFilters;
using FrontEnd.Quantities;
using FrontEnd.Text;
using FrontEnd.Topologies;

namespace FrontEnd.Documents.Sheets;

/// <summary>The part of a filter's page that says what an analogue notch is built of, how deep it is as built, and what its parts'
/// tolerance leaves of it.</summary>
internal static class NotchPage
{
    public static void Write(TextPage page, BuiltNotch notch)
    {
        string centre = QuantityText.FormatPart(notch.Centre);
        page.Blank();
        page.Ends("parts", "E12 capacitors, E96 resistors");
        page.Paragraph(Values(notch.Circuit), "  ");
        page.Blank();
        page.Line($"as built, with the op-amp's real gain-bandwidth product, {QuantityText.FormatPart(notch.OpAmp.GainBandwidth)}");
        page.Table(
            [new("", IsText: true), new("")],
            [
                new(["deepest at", QuantityText.Format(notch.DeepestAt, 5)]),
                new(["Q", $"{FilterPage.Plain(notch.Circuit.BuiltQ, 4)} (wanted {FilterPage.Plain(notch.WantedQ, 4)})"]),
                new(["Q by formula, ideal op-amp", FilterPage.Plain(notch.Circuit.FormulaQ, 4)]),
                new([$"depth at {centre}", FilterPage.Loss(notch.Depth)]),
                new([$"depth at the mains' deviation, ±{Share(notch.Deviation)}", FilterPage.Loss(notch.DepthAtDeviation)]),
                new(["gain far from the notch", FilterPage.Plain(notch.Gain, 4)]),
                .. notch.Noise is { } noise
                    ? FilterPage.NoiseRows(noise)
                    : [new Row(["own noise and dc error of four op-amps", "not worked out"])],
            ],
            heads: false);
        page.Blank();
        page.Line("with every part at its tolerance, the worst way");
        page.Table(
            [new("tolerance"), new($"depth at {centre}"), new("least Q"), new("greatest Q")],
            [.. notch.Corners.Select(worst => new Row([
                "±" + Share(Ratio.FromFraction(worst.Tolerance)), FilterPage.Loss(worst.LeastLoss), FilterPage.Plain(worst.LowestQ, 3),
                worst.CanOscillate ? "OSCILLATES" : FilterPage.Plain(worst.HighestQ, 3),
            ]))]);
        page.Blank();
        page.Line("1 % more of one part");
        page.Table(
            [new("part", IsText: true), new("moves f0 by"), new("moves Q by"), new($"leaves at {centre}")],
            [.. notch.Sensitivities.Select(one => new Row([
                one.Move.Part, FilterPage.Percent(one.Move.ToFrequency), FilterPage.Percent(one.Move.ToQ!.Value),
                FilterPage.Loss(one.DepthWithOnePerCent),
            ]))]);
        page.Paragraph(
            notch.Circuit.TwinT is null
                ? "The null stays a null whatever the parts are; they only move it away from the mains."
                : "Unequal parts leave a residue at the null as well as moving it. Where the mains has to be deeper, match the parts, or filter behind the converter, with a sampling rate.", "  ");
    }

    private static string Values(NotchRealisation built)
    {
        if (built.TwinT is { } t)
        {
            (string r, string c) = (QuantityText.FormatPart(t.R1), QuantityText.FormatPart(t.C1));
            return $"twin-T, amplifier of gain {FilterPage.Plain(t.NominalGain, 4)} that drives the foot of R3: "
                + $"R1 and R2 {r}, R3 two of them in parallel to the output, C1 and C2 {c}, C3 two of them in parallel to common"
                + (t.GroundResistor is { } rg ? $", Rf {QuantityText.FormatPart(t.FeedbackResistor)}, Rg {QuantityText.FormatPart(rg)}" : "");
        }

        StateVariableNotch s = built.StateVariable!;
        return $"state-variable filter and adding amplifier, {StateVariableNotch.OpAmps} op-amps: "
            + $"integrators Ra and Rb {QuantityText.FormatPart(s.R)}, Ca and Cb {QuantityText.FormatPart(s.C)}; "
            + $"R1 {QuantityText.FormatPart(s.R1)} from the first + input to common, R2 {QuantityText.FormatPart(s.R2)} from the band-pass output to it; "
            + $"R3 from the input, R4 from the low-pass output and R5 feedback, all {QuantityText.FormatPart(s.Equal)}; "
            + "R6 from the high-pass output, R7 from the low-pass output and R8 feedback of the adding amplifier, the same";
    }

    private static string Share(Ratio ratio) => (100 * ratio.Fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
