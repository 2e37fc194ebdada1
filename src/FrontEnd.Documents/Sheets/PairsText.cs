using FrontEnd.Head;
using FrontEnd.Pairs;

namespace FrontEnd.Documents.Sheets;

/// <summary>What pairs of sites show of sources as plain text: what is kept, then what it stands against, then the limits.</summary>
internal static class PairsText
{
    /// <summary>A head is no sphere: more figures than these would be none.</summary>
    private const int Digits = 2;

    private const int BarWidth = 48;

    public static string Of(PairsAnswer answer, int width = TextPage.Width)
    {
        TextPage page = new(width);
        page.Paragraph(answer.Question.Design is { } design ? $"what pairs of sites show, {design.Name}" : "what pairs of sites show");
        if (answer.Question.Design is { } own)
        {
            page.OwnCautions(own);
        }

        page.Paragraph(answer.HeadSentence);
        foreach (SourceTable table in answer.Sources)
        {
            Source(page, table, width);
        }

        page.Blank();
        page.Line("limits");
        foreach (string limit in answer.Limits)
        {
            page.Paragraph(limit, "  - ");
        }

        if (answer.Question.Design is not null)
        {
            page.Cautions();
        }

        return page.ToString();
    }

    private static void Source(TextPage page, SourceTable table, int width)
    {
        page.Blank();
        page.Paragraph(table.SourceSentence, "source: ");
        if (table.DensitySentence is { } density)
        {
            page.Paragraph(density, "        ");
        }

        page.Blank();
        page.Paragraph(table.Tried is { } tried ? $"{table.Rows.Count} best of {tried} pairs by signal over noise: what is kept of the active site's potential"
            : "what is kept of the active site's potential");
        string kind = table.View.Question.Statement is { } stated ? stated.Kind == AmplitudeKind.Rms ? "rms" : "p-p" : "";
        page.Table([new("pair", IsText: true), new($"seen {kind}".TrimEnd()), new("kept"), new("least"), new("most"), new("taken"), new("reference", IsText: true), new("of peak")],
            [.. table.Rows.Select(row => new Row(Kept(row)))]);
        Words(page, table);
        page.Blank();
        page.Line("what competes with it in the band, rms, and signal over both in dB");
        page.Table([new("pair", IsText: true), new("signal"), new("background"), new("front end"), new("dB"), new("least"), new("most"), new("larger", IsText: true)],
            [.. table.Rows.Select(row => new Row(Against(row.Seen)))]);
        Chart(page, table, Math.Min(BarWidth, width - 20));
    }

    private static string[] Kept(SourceRow row)
    {
        SourceInChannel seen = row.Seen;
        (string least, string most) = seen.KeptSpan is var (low, high) ? (Percent(low), Percent(high)) : ("-", "-");
        return
        [
            seen.Channel.Derivation.Name, seen.Seen is { } volts ? QuantityText.Format(volts.SiValue, "V", Digits) : "-", seen.Kept is { } kept ? Percent(kept) : "-", least, most,
            seen.ReferenceTakes is { } taken ? Percent(taken) : "-", seen.Part is { } part ? HeadWords.Of(part) : "hardly seen", Percent(seen.OfPeak),
        ];
    }

    private static string[] Against(SourceInChannel seen)
    {
        (Decibels? least, Decibels? most) = seen.SignalToNoiseLevels;
        return
        [
            seen.Channel.Derivation.Name, seen.Signal is { } signal ? Volts(signal) : "-", Volts(seen.Background),
            seen.Channel.Noise is { } noise ? Volts(noise) : "-", Level(seen.SignalToNoiseLevel), Level(least), Level(most),
            seen.Channel.Noise is null ? "" : seen.FrontEndLimits ? "front end" : "background",
        ];
    }

    private static void Words(TextPage page, SourceTable table)
    {
        foreach (ReferencePart part in table.Rows.Select(row => row.Seen.Part).OfType<ReferencePart>().Distinct().Order())
        {
            page.Paragraph(HeadWords.Sentence(part), $"  {HeadWords.Of(part)}: ");
        }

        if (table.Rows.Any(row => row.Seen.Part is null))
        {
            page.Paragraph("the active site itself has less than a twentieth of the peak, so a share of it means nothing", "  hardly seen: ");
        }

        page.Paragraph("Least and most: with a brain that conducts 15, 20 and 80 times as well as the skull.", "  ");
        string[] regions = [.. table.Rows.Where(row => row.HalfRegion is not null)
            .Select(row => $"{row.Seen.Channel.Derivation.Name} {QuantityText.Format(row.HalfRegion, Digits)}")];
        if (regions.Length > 0)
        {
            page.Paragraph($"Share of the cortex over which such a patch can move while the pair sees at least half of its best: {string.Join(", ", regions)}.", "  ");
        }
    }

    private static void Chart(TextPage page, SourceTable table, int bar)
    {
        if (table.ByDistance.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Line("kept: patch directly under the active site, reference at this distance");
        double most = Math.Max(1, table.ByDistance.Max(point => point.Kept.Fraction));
        foreach (KeptAtDistance point in table.ByDistance)
        {
            string distance = $"{QuantityText.FormatTrimmed(point.Distance.Centimetres, "1", 3)} cm", kept = Percent(point.Kept);
            page.Line($"  {distance,6}  {kept,6}  {new string('#', (int)Math.Round(bar * Math.Max(0, point.Kept.Fraction) / most))}");
        }
    }

    private static string Volts(VoltageRms volts) => QuantityText.Format(volts.Volts, "V", Digits);

    private static string Percent(Share share) => QuantityText.Format(share, 0.995 <= Math.Abs(share.Fraction) ? 3 : Digits);

    private static string Level(Decibels? level) => level is { } known ? FormattableString.Invariant($"{known.Value:0.0}") : "-";
}
