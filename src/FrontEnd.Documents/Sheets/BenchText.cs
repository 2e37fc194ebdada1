using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>Tests at the bench and what came of them as plain text, 80 columns wide.</summary>
public static class BenchText
{
    private const int PlotRows = 16;
    private const int BarRoom = 24;

    /// <summary>The tests with the readings to expect.</summary>
    public static string Of(Design design, IReadOnlyList<BenchReading> plan)
    {
        TextPage page = new();
        Head(page, design);
        foreach (BenchReading test in plan)
        {
            page.Blank();
            page.Ends($"{test.Name}: {test.Title}", Expected(test));
            page.Paragraph(test.Fixture, "  fixture:    ");
            page.Paragraph(test.Setting, "  do:         ");
            if (test.Expected is not null)
            {
                page.Paragraph($"{Range(test)}; {test.Tolerance}", "  agrees:     ");
            }

            if (test.Remark is { } remark)
            {
                page.Paragraph(remark, "  remark:     ");
            }
        }

        page.Blank();
        page.Paragraph("Readings at the electrodes are those of the samples divided by the gain gain.mid. Noise, gain and rejection tolerances are common practice, no source.");
        return page.ToString();
    }

    /// <summary>Readings or a recording against what the design should give.</summary>
    public static string Of(Design design, IReadOnlyList<BenchResult> results)
    {
        TextPage page = new();
        Head(page, design);
        foreach (BenchResult result in results)
        {
            page.Blank();
            page.Ends($"{Wording.Sign(result.Verdict)} {Wording.Word(result.Verdict)}  {result.Reading.Name}: {result.Reading.Title}", QuantityText.Format(result.Measured));
            if (result.Taken is { } taken)
            {
                page.Paragraph(taken, "  taken:      ");
            }

            page.Paragraph(result.Because, "  ");
            for (int at = 0; at < result.Suspects.Count; at++)
            {
                page.Paragraph(result.Suspects[at].Text, $"  suspect {at + 1}:  ");
                page.Paragraph(result.Suspects[at].Evidence, "              ");
            }

            Lines(page, result);
            Spectrum(page, result);
        }

        return page.ToString();
    }

    private static void Head(TextPage page, Design design)
    {
        page.Paragraph($"bench tests for {design.Name}");
        page.Paragraph(BenchPlan.Caution);
    }

    private static string Expected(BenchReading test) => test.Expected is null ? "no figure" : QuantityText.Format(test.Expected);

    private static string Range(BenchReading test)
    {
        string unit = test.Expected!.SiUnit;
        return (test.Least, test.Greatest) switch
        {
            ({ } least, { } greatest) => $"{QuantityText.Format(least, unit)} to {QuantityText.Format(greatest, unit)}",
            ({ } least, null) => $"at least {QuantityText.Format(least, unit)}",
            (null, { } greatest) => $"at most {QuantityText.Format(greatest, unit)}",
            _ => "any reading",
        };
    }

    private static void Lines(TextPage page, BenchResult result)
    {
        if (result.Lines.Count == 0)
        {
            return;
        }

        page.Line("  lines found");
        page.Table(
            [new Column("at"), new Column("rms"), new Column("what", IsText: true)],
            [
                .. result.Lines.Select(line => new Row(
                [
                    QuantityText.Format(line.Frequency), QuantityText.Format(line.Rms),
                    line is { Harmonic: { } h, Mains: { } f0 } ? $"harmonic {h} of {QuantityText.FormatPart(f0)}{(line.Folded ? ", folded" : "")}" : "no mains harmonic",
                ])),
            ]);
    }

    /// <summary>Both spectra in rows of equal ratio: densities and a bar of their difference, one mark a decibel.</summary>
    private static void Spectrum(TextPage page, BenchResult result)
    {
        if (result.Spectra is not [{ } measured, { } predicted] || measured.X.Length < 2)
        {
            return;
        }

        page.Line("  spectrum, rms over each row's frequencies; bar: measured over predicted, one");
        page.Line("  mark a decibel");
        double low = measured.X[0], high = measured.X[^1], step = Math.Pow(high / low, 1.0 / PlotRows);
        List<Row> rows = [];
        for (int row = 0; row < PlotRows; row++)
        {
            double from = low * Math.Pow(step, row), to = from * step;
            int[] bins = [.. Enumerable.Range(0, measured.X.Length).Where(k => from <= measured.X[k] && (measured.X[k] < to || (row == PlotRows - 1 && k == measured.X.Length - 1)))];
            if (bins.Length == 0)
            {
                continue;
            }

            double m = Math.Sqrt(bins.Average(k => measured.Y[k] * measured.Y[k])), p = Math.Sqrt(bins.Average(k => predicted.Y[k] * predicted.Y[k]));
            int marks = 0 < m && 0 < p ? (int)Math.Clamp(Math.Round(20 * Math.Log10(m / p)), -BarRoom / 2, BarRoom) : 0;
            rows.Add(new Row([QuantityText.Format(from, "Hz", 2), QuantityText.Format(m, "V/√Hz", 2), QuantityText.Format(p, "V/√Hz", 2), marks < 0 ? new string('-', -marks) : new string('+', marks)]));
        }

        page.Table([new Column("from"), new Column("measured"), new Column("predicted"), new Column("difference", IsText: true)], rows);
    }
}
