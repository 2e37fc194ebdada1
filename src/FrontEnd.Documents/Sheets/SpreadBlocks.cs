using FrontEnd.Documents.Drawing;
using FrontEnd.Spread;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet's page on many builds: yield, percentiles, histograms, the parts that matter.</summary>
internal static class SpreadBlocks
{
    private const int InARow = 4;
    private const double Width = 760, Cell = Width / InARow, Height = 104, Plot = 60;

    public static IEnumerable<Block> Of(SpreadResult result)
    {
        yield return new Block.Heading($"many builds   {SpreadWording.Run(result)}");
        yield return new Block.Paragraph(SpreadWording.Yield(result) + ".");
        if (SpreadWording.YieldRows(result) is { Count: > 0 } rows)
        {
            yield return new Block.Table(SpreadWording.YieldColumns, rows, Small: true);
        }

        yield return new Block.Heading("percentiles");
        yield return new Block.Paragraph(SpreadWording.NoMismatchMeaning);
        yield return new Block.Table(SpreadWording.PercentileColumns, SpreadWording.PercentileRows(result), Small: true);
        yield return new Block.Drawing("histograms: number of builds, from the least value to the greatest; the dashed line is the limit",
            Histograms(result), Counts(result));
        yield return new Block.Heading("rank correlation with the parts that matter most");
        yield return new Block.Table([new("figure", true), new("parts", true)],
            [.. result.Figures.Select(figure => new Row([figure.Id.Text, SpreadWording.Parts(figure)]))], Small: true);
        yield return new Block.Items([SpreadWording.ChanceMeaning(result), .. SpreadWording.Drawn(result)], Small: true);
    }

    /// <summary>The histograms as numbers, for a format without drawings.</summary>
    private static Block.Table Counts(SpreadResult result) => new(
        [new("figure", true), new("least"), .. Enumerable.Range(1, SpreadWording.Bins).Select(bin => new Column($"{bin}")),
            new("greatest")],
        [.. Drawn(result).Select(one =>
            new Row([one.Figure.Id.Text, SpreadWording.Value(one.Figure, one.Bins.Least),
                .. Enumerable.Range(0, SpreadWording.Bins).Select(bin => bin < one.Bins.Counts.Count ? $"{one.Bins.Counts[bin]}" : ""),
                SpreadWording.Value(one.Figure, one.Bins.Greatest)]))],
        Small: true);

    private static IEnumerable<(SpreadFigure Figure, Histogram Bins)> Drawn(SpreadResult result) =>
        result.Figures.Select(figure =>
            (figure, figure.InBins(SpreadWording.Bins))).Where(pair => pair.Item2 is not null).Select(pair => (pair.figure, pair.Item2!));

    private static Picture Histograms(SpreadResult result)
    {
        (SpreadFigure Figure, Histogram Bins)[] all = [.. Drawn(result)];
        Picture picture = new(Width, Height * ((all.Length + InARow - 1) / InARow), "histograms of the builds' figures");
        for (int at = 0; at < all.Length; at++)
        {
            (SpreadFigure figure, Histogram bins) = all[at];
            double left = (at % InARow * Cell) + 6, width = Cell - 16, top = (at / InARow * Height) + 18, bar = width / bins.Counts.Count;
            picture.Text(left, top - 6, figure.Id.Text, Anchor.Start, 10);
            for (int bin = 0; bin < bins.Counts.Count; bin++)
            {
                double height = Plot * bins.Counts[bin] / bins.Counts.Max();
                picture.Rectangle(left + (bin * bar), top + Plot - height, bar - 1, height, null, new Fill("#0072b2"));
            }

            picture.Line(left, top + Plot, left + width, top + Plot, new Pen("#333"));
            if (figure.Limit is { } limit && bins.Low <= limit && limit <= bins.High)
            {
                double x = left + (width * (limit - bins.Low) / (bins.High - bins.Low));
                picture.Line(x, top, x, top + Plot, new Pen("#a00", Dash: [3, 3]));
            }

            picture.Text(left, top + Plot + 13, SpreadWording.Value(figure, bins.Least), Anchor.Start, 9.5);
            picture.Text(left + width, top + Plot + 13, SpreadWording.Value(figure, bins.Greatest), Anchor.End, 9.5);
        }

        return picture;
    }
}
