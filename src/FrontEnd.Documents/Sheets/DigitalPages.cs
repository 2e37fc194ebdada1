using System.Globalization;
using FrontEnd.DesignedFilters;
using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.Documents.Sheets;

/// <summary>FIRs, combs, notches and decimators as pages of plain text: what they do, what they cost, and for whom they are.</summary>
internal static class DigitalPages
{
    private const int MostTapsShown = 150;

    private static readonly Column[] Pairs = [new("", IsText: true), new("")];

    /// <summary>The page of an FIR, 80 columns.</summary>
    public static string Of(DesignedFir fir)
    {
        TextPage page = new();
        FirFilter filter = fir.Answer.Filter!;
        FirFigures figures = fir.Answer.Figures!;
        FirWish wish = fir.Answer.Wish;
        string method = wish.Method == FirMethod.Kaiser ? "Kaiser window" : "equal ripple";
        string fewest = wish.Taps is not null ? ""
            : wish.Method == FirMethod.Kaiser ? "; the first odd number of taps, from the window's estimate upwards, that meets ripple and attenuation"
            : "; the smallest odd number of taps that meets ripple and attenuation";
        page.Paragraph($"FIR {FilterWords.Of(wish.Shape)}, {method}, {filter.Length} taps, at {QuantityText.FormatPart(wish.Rate)}");
        page.Paragraph($"passes {FilterPage.List(wish.PassEdges)}, stops {FilterPage.List(wish.StopEdges)}{fewest}", "  ");
        page.Blank();
        page.Line("response");
        page.Table(
            Pairs,
            [
                new([Asked("ripple in the pass band, largest gain to smallest", wish.Ripple, "at most"),
                    FilterPage.Decibel(figures.PassLoss)]),
                new([Asked("attenuation in the stop band", wish.Attenuation, "at least"), FilterPage.Loss(figures.StopLoss)]),
                new(["-3 dB (half power)", FilterPage.Crossings(figures.HalfPower)]),
                new(["gain at 0 Hz", FilterPage.Plain(figures.DcGain, 6)]),
                new(["delay, the same at every frequency", QuantityText.Format(filter.Delay, 4)]),
                new(["a step has fully settled after", QuantityText.Format(fir.Settled, 4)]),
            ],
            heads: false);
        Cost(page, fir.Cost);
        Taps(page, filter);
        return page.ToString();
    }

    /// <summary>The page of a comb, 80 columns.</summary>
    public static string Of(DesignedComb designed)
    {
        TextPage page = new();
        PeriodComb comb = designed.Answer.Comb!;
        CombFigures figures = designed.Figures;
        string mains = QuantityText.FormatPart(designed.Answer.Wish.Mains), rate = QuantityText.FormatPart(designed.Answer.Wish.Rate);
        page.Paragraph(comb.Periods == 1
            ? $"comb: the mean over one period of {mains}, {comb.Period} samples, at {rate}"
            : $"comb: the signal minus what repeats over {comb.Periods} periods of {mains}, {comb.Period} samples each, at {rate}");
        page.Paragraph(
            "removes every harmonic that does not land at 0 Hz"
            + (comb.Periods == 1
                ? ", and also acts as a low-pass; with --periods the band between the harmonics stays flatter"
                : ", where its gain is 1; the more periods, the flatter the band between and the longer the ringing"), "  ");
        Depths(page, figures.Depths);
        page.Blank();
        page.Line("the band");
        List<Row> rows = [.. Droop(figures.Droop, "")];
        string firstHalf = figures.HalfPower is { } half ? QuantityText.Format(half, 5) : "none below half the rate";
        rows.Add(new(["first -3 dB (half power)", firstHalf]));
        rows.Add(new([$"group delay at {QuantityText.FormatTrimmed(figures.Middle, 4)}", QuantityText.Format(figures.Delay, 4)]));
        rows.Add(new(["largest group delay in the band, where the loss is below 40 dB", QuantityText.Format(figures.LargestDelay, 4)]));
        rows.Add(new(["rings, and remembers an artefact, for", QuantityText.Format(comb.RingTime, 4)]));
        page.Table(Pairs, rows, heads: false);
        page.Blank();
        page.Line("cost per sample and channel");
        page.Table(
            Pairs,
            [
                new([
                    "running sums in integers",
                    $"{Count(figures.Multiplies, "multiplication")}, {Count(figures.Additions, "addition")}, {Count(DesignedComb.Divisions, "division")}",
                ]),
                new(["samples and sums kept", Number(figures.Words)]),
                new(["by its taps, in floating point", Count(designed.TapMultiplies, "multiplication")]),
            ],
            heads: false);
        return page.ToString();
    }

    /// <summary>The page of digital notches, 80 columns.</summary>
    public static string Of(DesignedNotches designed)
    {
        TextPage page = new();
        NotchWish wish = designed.Answer.Wish;
        NotchesFigures figures = designed.Figures;
        string centres = string.Join(", ", figures.Depths.Select(d => QuantityText.FormatPart(d.Frequency)));
        string each = figures.Notches.Count == 1 ? "" : wish.CommonWidth ? " of the first, all with its width" : " each";
        page.Paragraph($"{Count(figures.Notches.Count, "notch")} at {centres}, Q {FilterPage.Plain(wish.Q, 4)}{each}, at {QuantityText.FormatPart(wish.Rate)}");
        page.Blank();
        page.Line("each notch");
        page.Table(
            [new("at"), new("-3 dB width"), new("time constant"), new("rings to 1 % in")],
            [.. figures.Notches.Zip(figures.Depths, (notch, depth) => new Row([
                QuantityText.FormatPart(depth.Frequency), QuantityText.Format(notch.Bandwidth), QuantityText.Format(notch.TimeConstant),
                QuantityText.Format(notch.RingTime),
            ]))]);
        Depths(page, figures.Depths);
        page.Blank();
        page.Line("the band");
        List<Row> rows = [.. Droop(figures.Droop, ", two widths from a notch")];
        rows.Add(new([$"group delay at {QuantityText.FormatPart(figures.Droop.Edge)}", QuantityText.Format(figures.DelayAtEdge)]));
        rows.Add(new(["longest ringing, to 1 %", QuantityText.Format(figures.RingTime)]));
        rows.Add(new(["cost per sample", Count(figures.Multiplies, "multiplication")]));
        page.Table(Pairs, rows, heads: false);
        WordTables.Write(page, designed.Words);
        return page.ToString();
    }

    /// <summary>The page of a decimator with the taps behind it, 80 columns.</summary>
    public static string Of(DesignedSinc designed)
    {
        TextPage page = new();
        SincDecimator sinc = designed.Answer.Sinc!;
        FirFilter flat = designed.Answer.Compensation!;
        SincFigures figures = designed.Figures;
        SincWish wish = designed.Answer.Wish;
        page.Paragraph(
            $"sinc^{sinc.Order} decimator by {Number(sinc.Ratio)}, from {QuantityText.FormatTrimmed(designed.InputRate, 6)} to {QuantityText.FormatPart(wish.Rate)}, "
            + $"and {flat.Length} taps that make it flat to {QuantityText.FormatPart(wish.Edge)}");
        page.Blank();
        page.Line("loss of the decimator, normalised to unit gain, and with the taps after it");
        page.Table(
            [new("frequency"), new("decimator"), new("with taps")],
            [.. figures.Points.Select(
                at => new Row([QuantityText.FormatTrimmed(at.At, 4), FilterPage.Decibel(at.Decimator),
                    FilterPage.Decibel(at.Compensated)]))]);
        page.Blank();
        page.Line("what it does");
        page.Table(
            Pairs,
            [
                new([$"largest deviation from gain 1 up to {QuantityText.FormatPart(wish.Edge)}, with taps",
                    FilterPage.Decibel(figures.LargestDeviation)]),
                new(["lowest attenuation of folds into that band, with taps", FilterPage.Decibel(figures.FoldLoss)]),
                new(["the same, decimator alone", FilterPage.Decibel(figures.DecimatorFoldLoss)]),
                new(["gain of the taps at half the rate", FilterPage.Decibel(figures.RiseAtHalfRate)]),
                new(["white noise is multiplied by the taps by", FilterPage.Plain(figures.NoiseGain, 4)]),
                new(["delay of the decimator", QuantityText.Format(sinc.Delay, 4)]),
                new(["delay of the taps", QuantityText.Format(flat.Delay, 4)]),
                new(["output samples for a step to settle, decimator alone", Number(sinc.SettlingSamples)]),
                new(["the same with taps", Number(designed.SettlingWithTaps)]),
                new(["register growth beyond the input", $"{figures.GrowthBits} bit"]),
            ],
            heads: false);
        Cost(page, designed.Cost);
        Taps(page, flat);
        return page.ToString();
    }

    private static void Depths(TextPage page, IReadOnlyList<HarmonicDepth> depths)
    {
        page.Blank();
        page.Line("attenuation when the mains is off by");
        page.Table(
            [new("harmonic", IsText: true), .. depths[0].Depths.Select(d => new Column($"±{QuantityText.FormatTrimmed(d.Deviation, 3)}"))],
            [.. depths.Select(
                h => new Row([$"{h.Harmonic}, {QuantityText.FormatPart(h.Frequency)}",
                    .. h.Depths.Select(d => FilterPage.Loss(d.Attenuation))]))]);
        if (1 < depths.Count)
        {
            page.Paragraph("Harmonic h is then off by h times as much; its figures include this.", "  ");
        }
    }

    private static IEnumerable<Row> Droop(BandDroop droop, string away)
    {
        yield return new([
            $"largest loss from 0 Hz to {QuantityText.FormatPart(droop.Edge)}{away}",
            droop.Largest is { } loss ? $"{FilterPage.Decibel(loss)} at {QuantityText.FormatTrimmed(droop.At, 4)}" : "without bound",
        ]);
        yield return new(["of the band, more than 1 dB down", QuantityText.FormatTrimmed(droop.LostOne, 3)]);
        yield return new(["of the band, more than 3 dB down", QuantityText.FormatTrimmed(droop.LostThree, 3)]);
    }

    private static void Cost(TextPage page, FirCost cost)
    {
        page.Blank();
        page.Line("cost, a channel");
        page.Table(
            Pairs,
            [
                new(["multiplications per sample, symmetric taps paired", Number(cost.Multiplies)]),
                new(["multiplications per second", FilterPage.Plain(cost.MultipliesPerSecond, 6)]),
                new(["samples kept", Number(cost.Samples)]),
                .. cost.Words.Select(word => new Row(
                    [$"taps rounded to {DigitalArithmetic.WordOf(word.Word)} change the response by at most", Share(word.LargestChange)])),
            ],
            heads: false);
    }

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
            double[] line = filter.Taps.Slice(k, Math.Min(3, half - k)).ToArray();
            page.Line("  " + string.Concat(line.Select(h => h.ToString("e16", CultureInfo.InvariantCulture).PadLeft(26))));
        }
    }

    private static string Asked(string what, Decibels? asked, string bound) =>
        asked is { } limit ? $"{what}, {bound} {FilterPage.Decibel(limit)}" : what;

    private static string Count(int number, string what) =>
        $"{Number(number)} {what}{(number == 1 ? "" : what.EndsWith("ch", StringComparison.Ordinal) ? "es" : "s")}";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Share(double value) => value.ToString("0.0e0", CultureInfo.InvariantCulture);
}
