using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Textbook;

namespace FrontEnd.Documents.Teaching;

/// <summary>Tables of many short rows on printed pages: as narrow as their cells, cut into several where a page is narrower. Lengths in
/// points.</summary>
internal static class DrawnTable
{
    private const double Gap = 9, ColumnsGap = 22, Padding = 0.9, WidestCell = 190;

    private static readonly Pen HeadLine = new("#333", 0.7), RowLine = new("#ccc", 0.4);

    /// <summary>Puts a table onto pages; a narrow one stands in several columns.</summary>
    public static void Add(PageFlow flow, KeyTable table, PrintStyle style)
    {
        double[] widths = [.. table.Heads.Select((_, at) => Width(table, at, style))];
        foreach (int[] columns in Chunks(widths, flow.Width))
        {
            double width = columns.Sum(at => widths[at]) + (Gap * (columns.Length - 1));
            int beside = Math.Max(1, (int)((flow.Width + ColumnsGap) / (width + ColumnsGap)));
            flow.AddColumns(Rows(table, columns, widths, style), beside, (flow.Width + ColumnsGap) / beside);
            flow.Skip(5);
        }
    }

    /// <summary>Columns that fit beside each other, each time with the first, which names the row.</summary>
    private static IEnumerable<int[]> Chunks(double[] widths, double room)
    {
        for (int next = 1; next < widths.Length;)
        {
            List<int> columns = [0];
            double width = widths[0];
            while (next < widths.Length && (columns.Count == 1 || width + Gap + widths[next] <= room))
            {
                width += Gap + widths[next];
                columns.Add(next++);
            }

            yield return [.. columns];
        }
    }

    private static double Width(KeyTable table, int column, PrintStyle style) =>
        Math.Max(Head(table, column, style).Width, Math.Min(WidestCell, table.Rows.Max(row => style.Width(row[column])))) + 0.01;

    private static DrawnFormula Head(KeyTable table, int column, PrintStyle style) =>
        0 < column && column <= table.Symbols && FormulaReader.Find(table.Heads[column]) is { } symbol
            ? DrawnFormula.Of(symbol, style.Size)
            : DrawnFormula.Letters(table.Heads[column], style.Size, style.IsBold, "#444");

    private static List<Piece> Rows(KeyTable table, int[] columns, double[] widths, PrintStyle style)
    {
        double[] lefts = [.. columns.Select((_, place) => columns.Take(place).Sum(at => widths[at] + Gap))];
        double width = lefts[^1] + widths[columns[^1]];
        DrawnFormula[] heads = [.. columns.Select(at => Head(table, at, style))];
        double above = Math.Max(0.8 * style.Size, heads.Max(head => head.Above)), headHeight = above + heads.Max(head => head.Below) + 3;
        Piece head = new(headHeight, (page, x, y) =>
        {
            for (int place = 0; place < heads.Length; place++)
            {
                heads[place].Draw(page, x + lefts[place], y + above + 1);
            }

            page.Line(x, y + headHeight, x + width, y + headHeight, HeadLine);
        })
        {
            KeepsNext = true,
        };
        List<Piece> pieces = [head];
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            IReadOnlyList<string>[] cells = [.. columns.Select(at => PrintLines.Of(row[at], widths[at], style))];
            double height = (cells.Max(lines => lines.Count) * style.Leading) + (2 * Padding);
            pieces.Add(new Piece(height, (page, x, y) =>
            {
                for (int place = 0; place < cells.Length; place++)
                {
                    style.Draw(page, cells[place], x + lefts[place], y + Padding);
                }

                page.Line(x, y + height, x + width, y + height, RowLine);
            })
            {
                Head = head,
            });
        }

        return pieces;
    }
}
