using FrontEnd.Bench;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a recording on a fixture leaves of what is not known of a device, as plain text, 80 columns wide.</summary>
internal static class NarrowingText
{
    /// <param name="next">Recordings that would narrow what is left, the most first.</param>
    public static string Of(Narrowing narrowing, IReadOnlyList<RecordingChoice> next)
    {
        TextPage page = new();
        Design design = narrowing.Design.Given.Design;
        FixtureRecording recording = narrowing.Recording;
        page.Paragraph($"what a recording tells about {design.Name}");
        page.OwnCautions(design);
        page.Paragraph(BenchPlan.Caution);
        page.Blank();
        page.Paragraph(recording.Fixture.Words, "  fixture:    ");
        page.Paragraph(recording.Taken, "  taken:      ");
        if (narrowing.Channel is { } channel)
        {
            page.Paragraph($"channel {channel}, the one with the most noise of the board", "  against:    ");
        }

        page.Paragraph($"{QuantityText.Format(narrowing.Measured)} of noise in {QuantityText.FormatPart(design.Band.Low)} to {QuantityText.FormatPart(design.Band.High)}, at the electrodes"
            + (recording.AreSteps ? ", using the converter step of the middle design" : ""), "  measured:   ");
        foreach (FoundLine line in recording.Lines)
        {
            page.Paragraph($"a line of {QuantityText.Format(line.Rms)} at {QuantityText.Format(line.Frequency)}: not noise", "  taken out:  ");
        }

        page.Paragraph($"{Volts(narrowing.Predicted.Least)} to {Volts(narrowing.Predicted.Greatest)}, nine in ten {Volts(narrowing.Predicted.P05)} to {Volts(narrowing.Predicted.P95)}", "  drawn:      ");
        page.Paragraph($"{narrowing.Agree} of {narrowing.Drawn} draws, to within {QuantityText.FormatPercent(recording.Width, 2)}: the bench's {QuantityText.FormatPercent(Ratio.FromFraction(BenchPlan.NoiseTolerance), 2)} and twice the record's own spread of {QuantityText.FormatPercent(recording.Spread, 2)}",
            "  agree:      ");
        Fields(page, narrowing);
        Next(page, narrowing, next);
        page.Cautions();
        return page.ToString();
    }

    private static void Next(TextPage page, Narrowing narrowing, IReadOnlyList<RecordingChoice> next)
    {
        if (narrowing.Contradiction is not null)
        {
            return;
        }

        page.Blank();
        page.Line("next");
        if (next.Count == 0)
        {
            page.Paragraph("no other recording on a fixture is likely to narrow what is left; `frontend check` names what closes each open requirement", "  ");
        }

        foreach (RecordingChoice one in next)
        {
            page.Paragraph($"{one.Worth}", "  ");
        }
    }

    private static string Volts(double volts) => QuantityText.Format(VoltageRms.FromVolts(volts), 2);

    private static void Fields(TextPage page, Narrowing narrowing)
    {
        if (narrowing.Contradiction is not null)
        {
            return;
        }

        NarrowedField[] narrower = [.. narrowing.Fields.Where(one => one.IsNarrower)];
        page.Blank();
        page.Line("narrower by the recording");
        if (narrower.Length > 0)
        {
            page.Table([new("value", true), new("before", true), new("in the draws that agree", true)],
                [.. narrower.Select(one => new Row([one.Before.Key, PartlyKnownText.Ends(one.Before), PartlyKnownText.Ends(one.After)]))]);
        }

        page.Paragraph($"{(narrower.Length == 0 ? "none" : $"{narrowing.Fields.Count - narrower.Length} others stay as they are")}: the ranges are unchanged over the draws that agree, "
            + $"or narrower by less than {QuantityText.FormatPercent(Narrowing.LeastNarrower, 2)}. Ends are the 5th and the 95th percentile, rounded outwards.", "  ");
    }
}
