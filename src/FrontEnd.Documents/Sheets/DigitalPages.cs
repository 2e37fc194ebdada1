using System.Globalization;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>FIRs, combs, notches and decimators as pages of plain text: what they do, what they cost, and for whom they are.</summary>
public static class DigitalPages
{
    private const int MostTapsShown = 150;

    private static readonly Column[] Pairs = [new("", IsText: true), new("")];

    /// <param name="answer">One that has a filter.</param>
    public static string Of(FirAnswer answer)
    {
        TextPage page = new();
        FirFilter filter = answer.Filter!;
        FirFigures figures = answer.Figures!;
        FirWish wish = answer.Wish;
        page.Paragraph($"FIR {FilterWords.Of(wish.Shape)}, {(wish.Method == FirMethod.Kaiser ? "Kaiser window" : "equal ripple")}, {filter.Length} taps, at {QuantityText.FormatPart(wish.Rate)}");
        page.Paragraph($"passes {FilterPage.List(wish.PassEdges)}, stops {FilterPage.List(wish.StopEdges)}{(wish.Taps is null ? "; the fewest taps found that meet the losses" : "")}", "  ");
        page.Blank();
        page.Line("response");
        page.Table(
            Pairs,
            [
                new([Asked("ripple in the pass band, largest gain to least", wish.Ripple, "at most"), FilterPage.Decibel(figures.PassLoss)]),
                new([Asked("loss in the stop band", wish.Attenuation, "at least"), FilterPage.Loss(figures.StopLoss)]),
                new(["-3 dB (half power)", figures.HalfPower.Count == 0 ? "none in the range" : string.Join(", ", figures.HalfPower.Select(f => QuantityText.Format(f, 5)))]),
                new(["gain at 0 Hz", FilterPage.Plain(figures.DcGain, 6)]),
                new(["delay, the same at every frequency", QuantityText.Format(filter.Delay, 4)]),
                new(["a step has settled entirely after", QuantityText.Format(Duration.FromSeconds((filter.Length - 1) / wish.Rate.Hertz), 4)]),
            ],
            heads: false);
        Cost(page, filter);
        Taps(page, filter);
        return page.ToString();
    }

    /// <param name="answer">One that has a comb.</param>
    public static string Of(CombAnswer answer)
    {
        TextPage page = new();
        PeriodComb comb = answer.Comb!;
        CombFigures figures = answer.Figures;
        page.Paragraph(comb.Periods == 1
            ? $"comb: the mean over one period of {QuantityText.FormatPart(answer.Wish.Mains)}, {comb.Period} samples, at {QuantityText.FormatPart(answer.Wish.Rate)}"
            : $"comb: the signal less what repeats over {comb.Periods} periods of {QuantityText.FormatPart(answer.Wish.Mains)}, {comb.Period} samples each, at {QuantityText.FormatPart(answer.Wish.Rate)}");
        page.Paragraph(
            comb.Periods == 1 ? "takes out every harmonic that does not land at 0 Hz, and is a low-pass besides; with --periods the band between the harmonics stays flatter" : "takes out every harmonic that does not land at 0 Hz, where its gain is 1; the more periods, the flatter the band between and the longer the ringing", "  ");
        Depths(page, figures.Depths);
        page.Blank();
        page.Line("the band");
        List<Row> rows = [.. Droop(figures.Droop, "")];
        rows.Add(new(["first -3 dB (half power)", figures.HalfPower is { } half ? QuantityText.Format(half, 5) : "none below half the rate"]));
        rows.Add(new([$"group delay at {QuantityText.FormatTrimmed(figures.Middle, 4)}", QuantityText.Format(figures.Delay, 4)]));
        rows.Add(new(["largest group delay in the band, away from nulls", QuantityText.Format(figures.LargestDelay, 4)]));
        rows.Add(new(["rings for, and forgets an artefact after", QuantityText.Format(comb.RingTime, 4)]));
        page.Table(Pairs, rows, heads: false);
        page.Blank();
        page.Line("cost, a sample and channel");
        page.Table(
            Pairs,
            [
                new(["running sums in whole numbers", $"{Count(figures.Multiplies, "multiplication")}, {Count(figures.Additions, "addition")}, 1 division"]),
                new(["samples and sums kept", Number(figures.Words)]),
                new(["by its taps, in floating point", Count(new FirFilter(comb.Taps(), comb.Rate).Multiplies, "multiplication")]),
            ],
            heads: false);
        return page.ToString();
    }

    /// <param name="answer">One that has notches.</param>
    public static string Of(NotchAnswer answer)
    {
        TextPage page = new();
        NotchWish wish = answer.Wish;
        NotchesFigures figures = answer.Figures;
        page.Paragraph(
            $"{Count(figures.Notches.Count, "notch")} at {string.Join(", ", figures.Depths.Select(d => QuantityText.FormatPart(d.Frequency)))}, Q {FilterPage.Plain(wish.Q, 4)}{(figures.Notches.Count == 1 ? "" : wish.CommonWidth ? " of the first, all of its width" : " each")}, at {QuantityText.FormatPart(wish.Rate)}");
        page.Blank();
        page.Line("each notch");
        page.Table(
            [new("at"), new("-3 dB width"), new("time constant"), new("rings to 1 % in")],
            [.. figures.Notches.Zip(figures.Depths, (notch, depth) => new Row([QuantityText.FormatPart(depth.Frequency), QuantityText.Format(notch.Bandwidth), QuantityText.Format(notch.TimeConstant), QuantityText.Format(notch.RingTime)]))]);
        Depths(page, figures.Depths);
        page.Blank();
        page.Line("the band");
        List<Row> rows = [.. Droop(figures.Droop, ", two widths from a notch")];
        rows.Add(new([$"group delay at {QuantityText.FormatPart(figures.Droop.Edge)}", QuantityText.Format(figures.DelayAtEdge)]));
        rows.Add(new(["longest ringing, to 1 %", QuantityText.Format(figures.RingTime)]));
        rows.Add(new(["cost per sample", Count(NotchesFigures.MultipliesEach * figures.Notches.Count, "multiplication")]));
        page.Table(Pairs, rows, heads: false);
        WordTables.Write(page, answer.Sections!);
        return page.ToString();
    }

    /// <param name="answer">One that has a decimator.</param>
    public static string Of(SincAnswer answer)
    {
        TextPage page = new();
        SincDecimator sinc = answer.Sinc!;
        FirFilter flat = answer.Compensation!;
        SincFigures figures = answer.Figures;
        SincWish wish = answer.Wish;
        page.Paragraph($"sinc^{sinc.Order} decimator by {Number(sinc.Ratio)}, from {QuantityText.FormatTrimmed(Frequency.FromHertz(wish.Rate.Hertz * sinc.Ratio), 6)} to {QuantityText.FormatPart(wish.Rate)}, and {flat.Length} taps that make it flat to {QuantityText.FormatPart(wish.Edge)}");
        page.Blank();
        page.Line("loss against 0 Hz of the decimator, and with the taps behind it");
        page.Table(
            [new("frequency"), new("decimator"), new("with taps")],
            [.. figures.Points.Select(point => new Row([QuantityText.FormatTrimmed(point.At, 4), FilterPage.Decibel(point.Decimator), FilterPage.Decibel(point.Compensated)]))]);
        page.Blank();
        page.Line("what it does");
        page.Table(
            Pairs,
            [
                new([$"largest distance from gain 1 up to {QuantityText.FormatPart(wish.Edge)}, with taps", FilterPage.Decibel(figures.LargestDeviation)]),
                new(["least loss of what folds into that band", FilterPage.Decibel(figures.FoldLoss)]),
                new(["the taps lift, at half the rate", FilterPage.Decibel(figures.RiseAtHalfRate)]),
                new(["the taps multiply white noise by", FilterPage.Plain(figures.NoiseGain, 4)]),
                new(["delay of the decimator", QuantityText.Format(sinc.Delay, 4)]),
                new(["delay of the taps", QuantityText.Format(flat.Delay, 4)]),
                new(["output samples until a step has settled, decimator alone", Number(sinc.SettlingSamples)]),
                new(["the same with taps", Number(sinc.SettlingSamples + flat.Length - 1)]),
                new(["registers longer than the input by", $"{figures.GrowthBits} bit"]),
            ],
            heads: false);
        Cost(page, flat);
        Taps(page, flat);
        return page.ToString();
    }

    private static void Depths(TextPage page, IReadOnlyList<HarmonicDepth> depths)
    {
        page.Blank();
        page.Line("attenuation where the mains has moved by so much");
        page.Table(
            [new("harmonic", IsText: true), .. depths[0].Depths.Select(d => new Column($"±{QuantityText.FormatTrimmed(d.Deviation, 3)}"))],
            [.. depths.Select(h => new Row([$"{h.Harmonic}, {QuantityText.FormatPart(h.Frequency)}", .. h.Depths.Select(d => FilterPage.Loss(d.Attenuation))]))]);
        if (1 < depths.Count)
        {
            page.Paragraph("Harmonic h moves by h times as much as the mains.", "  ");
        }
    }

    private static IEnumerable<Row> Droop(BandDroop droop, string away)
    {
        yield return new([$"largest loss from 0 Hz to {QuantityText.FormatPart(droop.Edge)}{away}", droop.Largest is { } loss ? $"{FilterPage.Decibel(loss)} at {QuantityText.FormatTrimmed(droop.At, 4)}" : "without bound"]);
        yield return new(["of the band, more than 1 dB down", QuantityText.FormatTrimmed(droop.LostOne, 3)]);
        yield return new(["of the band, more than 3 dB down", QuantityText.FormatTrimmed(droop.LostThree, 3)]);
    }

    private static void Cost(TextPage page, FirFilter filter)
    {
        page.Blank();
        page.Line("cost, a channel");
        page.Table(
            Pairs,
            [
                new(["multiplications per sample, symmetric taps folded", Number(filter.Multiplies)]),
                new(["multiplications per second", FilterPage.Plain(filter.MultipliesPerSecond, 6)]),
                new(["samples kept", Number(filter.Length)]),
                Rounded(filter, "q31", NumberFormat.Q31),
                Rounded(filter, "q15", NumberFormat.Q15),
            ],
            heads: false);
    }

    private static Row Rounded(FirFilter filter, string name, NumberFormat format) =>
        new([$"taps rounded to {name} change the response by at most", Share(QuantisedTaps.Of(filter, format).LargestChange)]);

    private static void Taps(TextPage page, FirFilter filter)
    {
        page.Blank();
        int half = (filter.Length + 1) / 2;
        if (MostTapsShown < half)
        {
            page.Paragraph($"{filter.Length} taps are too many for a page; -o writes them to a file", "  ");
            return;
        }

        page.Line("taps, the first half; the second is its mirror");
        for (int k = 0; k < half; k += 3)
        {
            page.Line("  " + string.Concat(filter.Taps.Slice(k, Math.Min(3, half - k)).ToArray().Select(h => h.ToString("e16", CultureInfo.InvariantCulture).PadLeft(26))));
        }
    }

    private static string Asked(string what, Decibels? asked, string bound) => asked is { } limit ? $"{what}, {bound} {FilterPage.Decibel(limit.Value)}" : what;

    private static string Count(int number, string what) => $"{Number(number)} {what}{(number == 1 ? "" : what.EndsWith("ch", StringComparison.Ordinal) ? "es" : "s")}";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Share(double value) => value.ToString("0.0e0", CultureInfo.InvariantCulture);
}
