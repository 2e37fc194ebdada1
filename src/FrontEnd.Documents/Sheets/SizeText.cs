using FrontEnd.Sizing;

namespace FrontEnd.Documents.Sheets;

/// <summary>What a search for a design found, as plain text.</summary>
internal static class SizeText
{
    public static string Of(SizingRequest request, SizingOutcome outcome, int width = TextPage.Width)
    {
        TextPage page = new(width);
        page.Paragraph($"sizing {request.Fixed.Name}");
        page.OwnCautions(outcome.Front.Select(one => one.Design).Prepend(request.Fixed));
        page.Paragraph($"{outcome.Candidates} combinations, {outcome.Evaluated} evaluated in full; bounds ruled out the rest");
        page.Blank();
        if (outcome.Front.Count == 0)
        {
            page.Line("no design meets all requirements");
        }
        else
        {
            page.Ends("designs that meet everything, lowest noise first", "none is better in all figures");
            List<Row> rows = [];
            for (int at = 0; at < outcome.Front.Count; at++)
            {
                SizedDesign one = outcome.Front[at];
                rows.Add(new Row([$"{at + 1}", QuantityText.Format(one.Noise), QuantityText.Format(one.BoardNoise),
                    QuantityText.Format(one.Current), $"{one.Parts}", QuantityText.Format(one.MainsMargin)]));
            }

            page.Table([new Column(""), new Column("noise"), new Column("board"), new Column("current"), new Column("parts"),
                new Column("mains margin")], rows);
            page.Paragraph("parts: in the path of the signal; an order list has more, such as decoupling and connectors", "  ");
            for (int at = 0; at < outcome.Front.Count; at++)
            {
                page.Blank();
                page.Paragraph(outcome.Front[at].Summary, $"  {at + 1}  ");
                page.Paragraph(outcome.Front[at].LimitedBy, "     tightest limit:  ");
            }
        }

        if (outcome.Front.Count == 0)
        {
            Obstacles(page, "what stops them", outcome.Obstacles.Where(obstacle => !obstacle.IsMetByOthers));
            Obstacles(page, "what stopped some of them, but is met by others", outcome.Obstacles.Where(obstacle => obstacle.IsMetByOthers));
        }
        else
        {
            Obstacles(page, "what stopped the others", outcome.Obstacles);
        }

        page.Blank();
        page.Paragraph("Safety limits are not part of the search: every lead has the resistor that the quoted limit needs, and nothing is connected to earth.");
        page.Cautions();
        return page.ToString();
    }

    private static void Obstacles(TextPage page, string title, IEnumerable<Obstacle> obstacles)
    {
        bool isFirst = true;
        foreach (Obstacle obstacle in obstacles)
        {
            if (isFirst)
            {
                page.Blank();
                page.Line(title);
                isFirst = false;
            }

            page.Paragraph(obstacle.Stopped == 0 ? obstacle.Text : $"{obstacle.Text} ({obstacle.Stopped} stopped)", $"  {obstacle.Requirement}: ");
            if (obstacle.Relaxation is { } relaxation)
            {
                page.Paragraph(relaxation, "    would do:  ");
            }
        }
    }
}
