using System.Globalization;
using FrontEnd.DesignedFilters;

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
        page.Paragraph(notch.Circuit.Stage.PartsText, "  ");
        page.Blank();
        page.Line($"as built, with the op-amp's real gain-bandwidth product, {QuantityText.FormatPart(notch.OpAmp.GainBandwidth)}");
        page.Table(
            [new("", IsText: true), new("")],
            [
                new(["deepest at", QuantityText.Format(notch.DeepestAt, 5)]),
                new(["Q", $"{FilterPage.Plain(notch.Circuit.BuiltQ, 4)} (wanted {FilterPage.Plain(notch.WantedQ, 4)})"]),
                new(["Q by formula, ideal op-amp", FilterPage.Plain(notch.Circuit.FormulaQ, 4)]),
                new([$"depth at {centre}", FilterPage.Loss(notch.Depth)]),
                new([$"depth at the mains deviation, ±{Share(notch.Deviation)}", FilterPage.Loss(notch.DepthAtDeviation)]),
                new(["gain far from the notch", FilterPage.Plain(notch.Gain, 4)]),
                .. FilterPage.NoiseRows(notch.Noise),
            ],
            heads: false);
        page.Blank();
        page.Line("with every part at its worst-case tolerance");
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
        page.Paragraph(notch.Circuit.Stage.Remark, "  ");
    }

    private static string Share(Ratio ratio) => (100 * ratio.Fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
