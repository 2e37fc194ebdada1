using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>Tests at the bench and what came of them as plain text.</summary>
internal static class BenchText
{
    private const int BarRoom = 24;

    /// <summary>The tests with the readings to expect.</summary>
    /// <param name="lists">What lists the limits to check before a recording, for whoever reads it: a command or a key.</param>
    public static string Of(Design design, IReadOnlyList<BenchReading> plan, int width = TextPage.Width, string lists = "`frontend check`")
    {
        TextPage page = new(width);
        Head(page, design, plan.Select(test => test.Channel).FirstOrDefault());
        BenchStep? step = null;
        foreach (BenchReading test in plan)
        {
            page.Blank();
            if (test.Step != step)
            {
                page.Line(BenchWording.Heading(test.Step).ToUpperInvariant());
                step = test.Step;
            }

            page.Ends($"{test.Name}: {test.Title}", BenchWording.Expected(test));
            page.Paragraph(test.Fixture, "  fixture:    ");
            page.Paragraph(test.Setting, "  do:         ");
            if (test.Expected is not null)
            {
                page.Paragraph(BenchWording.Agrees(test), "  agrees:     ");
            }

            if (test.Remark is { } remark)
            {
                page.Paragraph(remark, "  remark:     ");
            }

            if (test.Step != BenchStep.Further && BenchWording.IfOff(test) is { Length: > 0 } suspects)
            {
                page.Paragraph(suspects, "  if off:     ");
            }
        }

        page.Blank();
        page.Paragraph($"Before each recording: contact, mismatch, offset and battery as {lists} lists them under \"{BudgetTables.BeforeARecording}\".");
        page.Paragraph("Readings at the electrodes are those of the samples divided by the gain gain.mid. Noise, gain and rejection tolerances are common practice, no source.");
        page.Cautions();
        return page.ToString();
    }

    /// <summary>Readings or a recording against what the design should give.</summary>
    public static string Of(Design design, IReadOnlyList<BenchResult> results, int width = TextPage.Width)
    {
        TextPage page = new(width);
        Head(page, design, results.Select(result => result.Reading.Channel).FirstOrDefault());
        foreach (BenchResult result in results)
        {
            page.Blank();
            page.Ends($"{Wording.Sign(result.Verdict)} {Wording.Word(result.Verdict)}  {result.Reading.Name}: {result.Reading.Title}",
                QuantityText.Format(result.Measured));
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

        page.Cautions();
        return page.ToString();
    }

    private static void Head(TextPage page, Design design, string? channel)
    {
        page.Paragraph($"bench tests for {design.Name}");
        page.OwnCautions(design);
        page.Paragraph(BenchPlan.Caution);
        if (channel is not null)
        {
            page.Paragraph(BenchWording.OfChannel(channel));
        }
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
                    line is { Harmonic: { } h, Mains: { } f0 }
                        ? $"harmonic {h} of {QuantityText.FormatPart(f0)}{(line.Folded ? ", folded" : "")}"
                        : $"no mains harmonic up to h = {BenchComparison.HighestHarmonic}",
                ])),
            ]);
    }

    /// <summary>Densities and a bar of their difference, one mark a decibel.</summary>
    private static void Spectrum(TextPage page, BenchResult result)
    {
        IReadOnlyList<SpectrumRow> rows = SpectrumRow.Of(result);
        if (rows.Count == 0)
        {
            return;
        }

        page.Line("  spectrum, rms over each row's frequencies; bar: measured over predicted, one");
        page.Line("  mark per decibel");
        page.Table(
            [new Column("from"), new Column("measured"), new Column("predicted"), new Column("difference", IsText: true)],
            [
                .. rows.Select(row => new Row(
                [
                    QuantityText.Format(row.From, 2), QuantityText.Format(row.Measured, 2), QuantityText.Format(row.Predicted, 2),
                    Bar(row.Difference),
                ])),
            ]);
    }

    private static string Bar(Decibels? difference)
    {
        int marks = (int)Math.Clamp(Math.Round(difference?.Value ?? 0), -BarRoom / 2, BarRoom);
        return new string(marks < 0 ? '-' : '+', Math.Abs(marks));
    }
}
