using System.Globalization;
using FrontEnd.Quantities;
using FrontEnd.Spread;
using FrontEnd.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>How the figures of many devices spread, as plain text, 80 columns wide: yield, percentiles, a histogram and the parts that matter for each figure.</summary>
public static class SpreadText
{
    private const int Bins = 20;
    private const int BarWidth = 40;
    private const int RanksShown = 4;

    public static string Of(SpreadResult result)
    {
        TextPage page = new();
        page.Paragraph($"{result.Design.Name}: {result.Options.Builds} builds, seed {result.Options.Seed}");
        page.Line(result.Yield is { } all ? $"yield {Percent(all)} against the requirements below" : "nothing is judged");
        foreach (SpreadFigure figure in result.Figures)
        {
            page.Blank();
            page.Paragraph($"{figure.Id}: nominal {Text(figure.Nominal, figure.Unit)}, corners {Text(figure.Least, figure.Unit)} to {Text(figure.Most, figure.Unit)}");
            if (figure.Yield is { } yield)
            {
                page.Paragraph($"yield {Percent(yield)} against {Text(figure.Limit!.Value, figure.Unit)} ({figure.Requirement})", "  ");
            }

            page.Table(
                [.. SpreadFigure.Percents.Select(percent => new Column($"{percent.ToString(CultureInfo.InvariantCulture)} %"))],
                [new Row([.. figure.Percentiles.Select(value => Text(value, figure.Unit))])]);
            Histogram(page, figure);
            page.Paragraph(figure.Ranks.Count == 0 ? "no part moves it" : "rank correlation: " + string.Join(", ", figure.Ranks.Take(RanksShown).Select(rank => $"{rank.Key} {rank.Coefficient.ToString("+0.00;-0.00", CultureInfo.InvariantCulture)}")), "  ");
        }

        return page.ToString();
    }

    private static void Histogram(TextPage page, SpreadFigure figure)
    {
        IReadOnlyList<HistogramBin> bins = figure.Histogram(Bins);
        foreach (HistogramBin bin in bins)
        {
            string bar = new('#', (int)Math.Ceiling((double)bin.Count * BarWidth / bins.Max(one => one.Count)));
            page.Line($"  {Text(bin.Middle, figure.Unit, 5),12} |{bar}");
        }
    }

    private static string Percent(double share) => QuantityText.FormatPercent(Ratio.FromFraction(share));

    private static string Text(double value, string unit, int digits = 3) => unit == "°" ? QuantityText.Format(Angle.FromDegrees(value), digits) : QuantityText.Format(value, unit, digits);
}
