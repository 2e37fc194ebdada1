using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>Tables of a printed page: a head, which stands again on each page, and a piece a row.</summary>
internal static class PrintTable
{
    private const double Gap = 7, SmallGap = 6, Padding = 1.1, MarkRoom = 8;

    /// <summary>What a reading wants that is written in by hand, 15 mm.</summary>
    private const double BoxWidth = 42;

    /// <summary>Of the width of a table that a column of text is left before numbers are broken too.</summary>
    private const double LeastForText = 0.3;

    /// <summary>A row with more lines is broken, so that none is higher than a page.</summary>
    private const int MostLines = 40;

    private static readonly Pen HeadLine = new("#333", 0.8), RowLine = new("#ccc", 0.4), SumLine = new("#333", 0.8), Frame = new("#333", 0.6);

    public static IReadOnlyList<Piece> Of(Block.Table table, double width, PrintLook look)
    {
        PrintStyle style = table.Small ? look.Small : look.Body;
        PrintStyle sum = style with { IsBold = true };
        Line[] rows = [.. table.Rows.Select(row => row.IsHeading
            ? new Line([new Cell(HtmlSheet.Capital(row.Cells[0]), sum, "")], null, IsSum: false, IsOverAll: true)
            : new Line([.. row.Cells.Select(cell => new Cell(cell, row.IsSum ? sum : style, ""))], null, row.IsSum))];
        return Of(table.Columns, rows, style, width, look);
    }

    public static IReadOnlyList<Piece> Of(Block.Verdicts verdicts, double width, PrintLook look)
    {
        Line[] rows = [.. verdicts.Results.Select(result => new Line(
            [
                new($"{Wording.Sign(result.Verdict.Kind)} {Wording.Word(result.Verdict.Kind)}", look.Body with { IsBold = true }, ""),
                new(HtmlSheet.Capital(result.Name), look.Body, result.Verdict.Dominates is { Length: > 0 } most ? $"most of it: {most}" : ""),
                new(Wording.Value(result), look.Body, ""),
                new(Wording.Limit(result.Verdict), look.Body, ""),
                new(Wording.Margin(result), look.Body, ""),
            ], result.Verdict.Kind, IsSum: false))];
        return Of([new("verdict", true), new("what is judged", true), new("value"), new("limit"), new("margin")], rows, look.Body, width, look);
    }

    private static List<Piece> Of(IReadOnlyList<Column> columns, IReadOnlyList<Line> rows, PrintStyle style, double width, PrintLook look)
    {
        double padding = look.Room(Padding), gap = style == look.Small ? SmallGap : Gap, marks = rows.Any(row => row.Mark is not null) ? MarkRoom : 0;
        PrintStyle quiet = style with { Colour = "#444" };
        double[] widths = Widths(columns, [.. rows.Where(row => !row.IsOverAll)], (quiet, look.Quiet), width - marks - (gap * (columns.Count - 1)));
        double[] lefts = [.. columns.Select((_, at) => marks + widths.Take(at).Sum() + (gap * at))];
        Piece? head = columns.All(column => column.Head.Length == 0) ? null : Row(new Line([.. columns.Select(column => new Cell(column.Head, quiet, ""))], null, IsSum: false), isHead: true)[0];
        List<Piece> pieces = head is null ? [] : [head with { KeepsNext = rows.Count > 0 }];
        foreach (Line row in rows)
        {
            pieces.AddRange(Row(row, isHead: false).Select(piece => piece with { Head = head, KeepsNext = row.IsOverAll }));
        }

        return pieces;

        IReadOnlyList<Piece> Row(Line row, bool isHead)
        {
            (Cell Cell, IReadOnlyList<string> Lines, IReadOnlyList<string> Quiet)[] cells = [.. row.Cells.Select((cell, at) =>
                (cell, PrintLines.Of(cell.Text, row.IsOverAll ? width : widths[at], cell.Style), cell.Quiet.Length == 0 ? [] : PrintLines.Of(cell.Quiet, widths[at], look.Quiet)))];
            int lines = cells.Max(cell => cell.Lines.Count);
            List<Piece> parts = [];
            for (int first = 0; first < lines; first += MostLines)
            {
                var some = cells.Select(cell => (cell.Cell, Lines: (IReadOnlyList<string>)[.. cell.Lines.Skip(first).Take(MostLines)], cell.Quiet)).ToArray();
                parts.Add(RowPart(row, some, isHead, first == 0));
            }

            return parts;
        }

        Piece RowPart(Line row, (Cell Cell, IReadOnlyList<string> Lines, IReadOnlyList<string> Quiet)[] cells, bool isHead, bool isFirst)
        {
            double height = (2 * padding) + cells.Max(cell => (cell.Lines.Count * cell.Cell.Style.Leading) + (cell.Quiet.Count * look.Quiet.Leading));
            return new Piece(height, (page, x, y) =>
            {
                if (row.IsSum && isFirst)
                {
                    page.Line(x, y, x + width, y, SumLine);
                }

                page.Line(x, y + height, x + width, y + height, isHead || row.IsOverAll ? HeadLine : RowLine);
                for (int at = 0; at < cells.Length; at++)
                {
                    (Cell cell, IReadOnlyList<string> lines, IReadOnlyList<string> under) = cells[at];
                    (double place, Anchor anchor) = row.IsOverAll ? (x, Anchor.Start) : columns[at].IsText || columns[at].IsBox ? (x + lefts[at], Anchor.Start) : (x + lefts[at] + widths[at], Anchor.End);
                    if (columns[at].IsBox && !isHead && !row.IsOverAll)
                    {
                        page.Rectangle(x + lefts[at], y + 0.6, widths[at], height - 1.2, Frame);
                    }

                    cell.Style.Draw(page, lines, place, y + padding, anchor);
                    look.Quiet.Draw(page, under, place, y + padding + (lines.Count * cell.Style.Leading), anchor);
                }

                if (row.Mark is { } kind)
                {
                    Mark(page, kind, x, y + 0.6, height - 1.2);
                }
            });
        }
    }

    /// <summary>A bar before the word, which says it too: whole, double or dotted, so that it needs no colour.</summary>
    private static void Mark(Picture page, VerdictKind kind, double x, double y, double height)
    {
        const double Width = 3;
        switch (kind)
        {
            case VerdictKind.Marginal:
                page.Rectangle(x, y, Width / 3, height, null, new Fill("#d55e00"));
                page.Rectangle(x + (2 * Width / 3), y, Width / 3, height, null, new Fill("#d55e00"));
                break;
            case VerdictKind.Open:
                page.Line(x + (Width / 2), y, x + (Width / 2), y + height, new Pen("#444", Width, [Width, Width]));
                break;
            default:
                page.Rectangle(x, y, Width, height, null, new Fill(kind switch { VerdictKind.Fail => "#d55e00", VerdictKind.Pass => "#0072b2", _ => "#bbb" }));
                break;
        }
    }

    /// <summary>Numbers get the room they need; texts share what is left, the widest giving way first, but no word is broken while another column
    /// has room.</summary>
    private static double[] Widths(IReadOnlyList<Column> columns, IReadOnlyList<Line> rows, (PrintStyle Head, PrintStyle Quiet) look, double room)
    {
        double[] whole = new double[columns.Count], least = new double[columns.Count];
        for (int at = 0; at < columns.Count; at++)
        {
            // A hair more than the text, so that rounding breaks no line.
            double box = columns[at].IsBox ? BoxWidth : 0;
            whole[at] = Math.Max(box, Math.Max(look.Head.Width(columns[at].Head), rows.Select(row => row.Cells[at].Width(look.Quiet)).DefaultIfEmpty(0).Max()) + 0.01);
            least[at] = Math.Max(box, Math.Max(PrintLines.WidestWord(columns[at].Head, look.Head), rows.Select(row => columns[at].IsWhole ? row.Cells[at].Width(look.Quiet) : row.Cells[at].WidestWord(look.Quiet)).DefaultIfEmpty(0).Max()) + 0.01);
        }

        bool numbersFit = columns.Select((column, at) => column.IsText ? Math.Min(whole[at], LeastForText * room) : whole[at]).Sum() <= room;
        bool[] gives = [.. columns.Select(column => column.IsText || !numbersFit)];
        double[] widths = Level(whole, [.. whole.Select((width, at) => gives[at] ? Math.Min(least[at], width) : width)], room);

        // What is left goes to the texts, so that the table is as wide as the page.
        double left = room - widths.Sum(), texts = columns.Select((column, at) => column.IsText ? widths[at] : 0).Sum(), all = widths.Sum();
        return [.. widths.Select((width, at) => width + (left <= 0 ? 0 : texts > 0 ? (columns[at].IsText ? left * width / texts : 0) : left * width / all))];
    }

    /// <summary>Each as wide as it would be, but none above a common level, nor below its own least, so that they fit; where the least ones do
    /// not fit, they are cut in proportion.</summary>
    private static double[] Level(double[] whole, double[] least, double room)
    {
        if (whole.Sum() <= room)
        {
            return whole;
        }

        if (least.Sum() >= room)
        {
            return [.. least.Select(width => width * room / least.Sum())];
        }

        double low = 0, high = room;
        for (int halving = 0; halving < 60; halving++)
        {
            double level = (low + high) / 2;
            (low, high) = At(level).Sum() <= room ? (level, high) : (low, level);
        }

        return At(low);

        double[] At(double level) => [.. whole.Select((width, at) => Math.Max(least[at], Math.Min(width, level)))];
    }

    /// <param name="Quiet">Said below it in small; "" for nothing.</param>
    private sealed record Cell(string Text, PrintStyle Style, string Quiet)
    {
        public double Width(PrintStyle quiet) => Math.Max(PrintLines.WidestLine(Text, Style), Quiet.Length == 0 ? 0 : quiet.Width(Quiet));

        public double WidestWord(PrintStyle quiet) => Math.Max(PrintLines.WidestWord(Text, Style), PrintLines.WidestWord(Quiet, quiet));
    }

    /// <param name="IsOverAll">Its only cell is as wide as the table and heads the rows below it.</param>
    private sealed record Line(IReadOnlyList<Cell> Cells, VerdictKind? Mark, bool IsSum, bool IsOverAll = false);
}
