using FrontEnd.Documents.Recordings;
using FrontEnd.Simulation;

namespace FrontEnd.Documents.Sheets;

/// <summary>What simulated samples hold as plain text: what was simulated, noise against the budget, mains, clips, files.</summary>
internal static class SamplesText
{
    public static string Of(SampleAnswer answer, int width = TextPage.Width)
    {
        TextPage page = new(width);
        foreach (SampledDesign design in answer.Designs)
        {
            Write(page, design);
            page.Blank();
        }

        foreach (WrittenSamples file in answer.Files)
        {
            Write(page, file);
            page.Blank();
        }

        page.Paragraph("Not in the samples: offset voltages and bias currents of the parts, interference other than mains, the contact check, ripple and noise of the supply, the skew of a multiplexed converter.");
        page.Blank();
        page.Paragraph($"{RecordingHead.Simulated}: the data are invented, belong to no person and say nothing about one");
        page.Cautions();
        return page.ToString();
    }

    private static void Write(TextPage page, SampledDesign design)
    {
        (SampleRun run, SampleSummary summary) = design;
        page.Paragraph($"samples of {run.Design.Name}: {RecordingHead.Simulated}");
        page.OwnCautions(run.Design);
        page.Paragraph($"{QuantityText.FormatPart(run.Wish.Length)} of {run.Channels.Count} channel{(run.Channels.Count == 1 ? "" : "s")} at {QuantityText.FormatTrimmed(run.Rate.Hertz, "1", 6)} S/s, seed {run.Wish.Seed}"
            + $"; delay {QuantityText.Format(summary.Delay)} from the electrode to the filtered sample");
        foreach (HeadSignal signal in run.Wish.Signals)
        {
            page.Paragraph($"{signal.What}{(signal.Amplitude is { } amplitude ? $": {QuantityText.FormatPart(amplitude)}" : "")}", $"with {signal.Word}: ");
        }

        if (0 < run.Wish.Without.Count)
        {
            page.Paragraph(string.Join(", ", run.Wish.Without), "without: ");
        }

        page.Blank();
        page.Line("all samples, at the electrodes");
        page.Table([new("channel", IsText: true), new("mean"), new("rms"), new("p-p")],
            [.. summary.Channels.Select(channel => new Row([channel.Name, Volts(channel.Mean.Volts), Volts(channel.Rms.Volts), Volts(channel.PeakToPeak.Volts)]))]);
        Noise(page, summary);
        Lines(page, summary);
        Events(page, "what happens in them", design.Events);
        if (0 < summary.ClippedSamples)
        {
            Events(page, $"clipping: {summary.ClippedSamples} times{(summary.Clips.Count < summary.ClippedSamples ? $", the first {summary.Clips.Count} by their place" : "")}", design.Clips);
        }
    }

    private static void Noise(TextPage page, SampleSummary summary)
    {
        page.Blank();
        if (summary.NotCompared is { } why)
        {
            page.Paragraph($"Noise is not compared with the budget: {why}.");
            return;
        }

        page.Line("noise against the budget, rms at the electrodes, without the mains' lines");
        page.Table([new("channel", IsText: true), new("band", IsText: true), new("samples"), new("budget"), new("share"), new("least"), new("most"), new("", IsText: true)],
            [.. summary.Channels.SelectMany(channel => channel.Bands.Select(band => new Row(
            [
                channel.Name, band.Band.Name, Volts(band.Measured.Volts), Volts(band.Budget.Volts), Share(band.Share), Share(band.Least), Share(band.Greatest),
                band.IsInside ? "" : "outside",
            ])))]);
        page.Paragraph($"Share: the samples' rms over the budget's. Least and most: if the budget holds, one record in {QuantityText.FormatTrimmed(1 / SampleSummary.Significance, "1", 6)} lies outside them.", "  ");
    }

    private static void Lines(TextPage page, SampleSummary summary)
    {
        (string Name, SampledLine Line)[] rows = [.. summary.Channels.SelectMany(channel =>
            channel.Lines.OrderByDescending(line => line.Budget.Volts).Take(MostLines).OrderBy(line => line.Order).Select(line => (channel.Name, line)))];
        if (rows.Length == 0)
        {
            return;
        }

        page.Blank();
        page.Line($"mains, rms at the electrodes: the {MostLines} largest lines of each channel, by the budget");
        page.Table([new("channel", IsText: true), new("h"), new("lands at"), new("samples"), new("budget, worst case")],
            [.. rows.Select(row => new Row(
                [row.Name, $"{row.Line.Order}", QuantityText.Format(row.Line.LandsAt), row.Line.Measured.Volts == 0 ? "in the noise" : Volts(row.Line.Measured.Volts), Volts(row.Line.Budget.Volts)]))]);
    }

    /// <summary>Lines of a channel that are printed.</summary>
    private const int MostLines = 5;

    private static void Events(TextPage page, string head, IReadOnlyList<AlikeEvents> events)
    {
        if (events.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Paragraph(head);
        foreach (AlikeEvents one in events)
        {
            page.Paragraph(one.Number == 1 ? $"at {Seconds(one.First)}: {one.Text}" : $"{one.Text}, {one.Number} times, first at {Seconds(one.First)}", "  ");
        }
    }

    private static void Write(TextPage page, WrittenSamples file)
    {
        page.Paragraph(file is { Records: { } records, RecordLength: { } length } ? $"{file.Path}: {records} record{(records == 1 ? "" : "s")} of {QuantityText.FormatPart(length)}" : $"{file.Path}: a row for each sample", "file ");
        foreach (string scale in file.Scales)
        {
            page.Paragraph(scale, "  ");
        }

        if (0 < file.Held)
        {
            page.Paragraph($"{file.Held} samples were beyond the file's range and are held at its edge", "  ");
        }
    }

    private static string Volts(double volts) => QuantityText.Format(volts, "V");

    private static string Share(double share) => FormattableString.Invariant($"{share:0.000}");

    private static string Seconds(Duration time) => QuantityText.FormatTrimmed(time, 6);
}
