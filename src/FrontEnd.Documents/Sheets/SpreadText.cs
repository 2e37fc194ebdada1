using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>How the figures of many builds spread, as plain text.</summary>
internal static class SpreadText
{
    private const int BarWidth = 40;

    /// <param name="explains">What names the key of a limit, for whoever reads it: a command or a key.</param>
    public static string Of(SpreadResult result, int width = TextPage.Width, string explains = "`frontend explain DESIGN FIGURE`")
    {
        TextPage page = new(width);
        page.Paragraph(result.Design.Name);
        page.OwnCautions(result.Design);
        page.Paragraph(SpreadWording.Run(result));
        page.Blank();
        page.Paragraph(SpreadWording.Yield(result), "yield  ");
        if (SpreadWording.YieldRows(result) is { Count: > 0 } rows)
        {
            // Eighty columns have no room for the keys of the limits beside whole ids.
            page.Table(SpreadWording.YieldColumns[..^1], [.. rows.Select(row => row with { Cells = [.. row.Cells.Take(row.Cells.Count - 1)] })]);
            page.Paragraph($"{explains} names the key of a limit.");
        }

        page.Blank();
        page.Paragraph(SpreadWording.NoMismatchMeaning);
        foreach (SpreadFigure figure in result.Figures)
        {
            page.Blank();
            Write(page, figure, width);
        }

        page.Blank();
        page.Paragraph(SpreadWording.ChanceMeaning(result));
        foreach (string drawn in SpreadWording.Drawn(result))
        {
            page.Paragraph(drawn);
        }

        page.Cautions();

        return page.ToString();
    }

    private static void Write(TextPage page, SpreadFigure figure, int width)
    {
        string V(double value, int digits = 3) => SpreadWording.Value(figure, value, digits);
        page.Paragraph(SpreadWording.Extremes(figure), figure.Id + "  ");
        (string Percent,
            string Value)[] cells = [.. SpreadFigure.Percents.Zip(figure.Percentiles, (percent, value) =>
                (SpreadWording.Percent(percent), V(value)))];

        // Cells stand two apart; with rms or p-p seven of them are wider than the page.
        foreach ((string Percent, string Value)[] row in cells.Chunk(cells.Sum(cell => cell.Value.Length + 2) <= width ? cells.Length : 4))
        {
            page.Table([.. row.Select(cell => new Column(cell.Percent))], [new Row([.. row.Select(cell => cell.Value)])]);
        }

        if (figure.InBins(SpreadWording.Bins) is { } bins)
        {
            int most = bins.Counts.Max(), bar = Math.Min(BarWidth, width - 20);
            for (int bin = 0; bin < bins.Counts.Count; bin++)
            {
                page.Line($"  {V(bins.Middle(bin), 5),12} |{new string('#', (int)Math.Ceiling((double)bins.Counts[bin] * bar / most))}");
            }
        }

        page.Paragraph(SpreadWording.Parts(figure), "  rank correlation: ");
    }
}
