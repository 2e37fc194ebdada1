using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Pages that belong together: a student's sheet, a key. Whose they are stands on each of them.</summary>
/// <param name="Name">Its entry in the document's contents.</param>
internal sealed record PrintedSheet(string Name, IReadOnlyList<Picture> Pages, IReadOnlyList<Bookmark> Bookmarks)
{
    private static readonly PrintStyle HeadStyle = new(9, 11, IsBold: true), FieldStyle = new(9, 11);

    private static readonly Pen Rule = new("#333", 0.6), Thin = new("#999", 0.5);

    /// <summary>Whose a page is, at its top: the student's name and number, or room to write them.</summary>
    /// <param name="right">At the right side: the sheet's code.</param>
    /// <param name="fields">What is asked for in place of name and number; empty for these.</param>
    public static Func<double, Piece> Head(Student? student, string right, IReadOnlyList<string>? fields = null) => width =>
    {
        const double Height = 16, Below = 8, Gap = 12;
        double room = width - FieldStyle.Width(right) - 20;
        IReadOnlyList<SheetField> asked = SheetField.Of(student, fields);
        string name = asked.Count > 0 ? "" : One(student!.Name.Length == 0 ? student.Id : $"{student.Name} ({student.Id})", room + 8, HeadStyle);

        // Two on a line: the name has more room than a number, unless what stands in front of the number is long.
        double share = fields is { Count: > 0 } ? 0.5 : 0.62, height = Height * Math.Max(1, (asked.Count + 1) / 2);
        return new Piece(height + Below, (page, x, y) =>
        {
            FieldStyle.Draw(page, [right], x + width, y, Anchor.End);
            HeadStyle.Draw(page, [name], x, y);
            for (int at = 0; at < asked.Count; at++)
            {
                bool isSecond = at % 2 == 1;
                double from = isSecond ? x + (share * room) + Gap : x, wide = isSecond ? ((1 - share) * room) - Gap : share * room;
                Field(page, asked[at], from, y + (at / 2 * Height), wide);
            }

            page.Line(x, y + height, x + width, y + height, Thin);
        });
    };

    private static void Field(Picture page, SheetField field, double x, double y, double width)
    {
        if (field.Value is { } value)
        {
            double label = FieldStyle.Width($"{field.Label}:") + 5;
            FieldStyle.Draw(page, [$"{field.Label}:"], x, y);
            HeadStyle.Draw(page, [One(value, Math.Max(HeadStyle.Width("…") * 4, width - label), HeadStyle)], x + label, y);
        }
        else
        {
            Field(page, field.Label, x, y, width);
        }
    }

    /// <summary>Adds what stands at the foot of each page: what it is, and which of how many.</summary>
    public static PrintedSheet Of(string name, PageFlow flow, string foot)
    {
        const double Above = 26;
        for (int at = 0; at < flow.Pages.Count; at++)
        {
            Picture page = flow.Pages[at];
            PrintStyle.Foot.Draw(page, [foot], PageFlow.Margin, page.Height - Above);
            PrintStyle.Foot.Draw(page, [$"page {at + 1} of {flow.Pages.Count}"], page.Width - PageFlow.Margin, page.Height - Above, Anchor.End);
        }

        return new PrintedSheet(name, flow.Pages, flow.Bookmarks);
    }

    /// <summary>A document of sheets, one after the other.</summary>
    public static byte[] Document(string title, IReadOnlyList<PrintedSheet> sheets)
    {
        List<Picture> pages = [];
        List<Bookmark> bookmarks = [];
        foreach (PrintedSheet sheet in sheets)
        {
            bookmarks.AddRange(sheet.Bookmarks.Select(bookmark => bookmark with { Page = bookmark.Page + pages.Count }));
            pages.AddRange(sheet.Pages);
        }

        return Pdf.Of(title, pages, bookmarks, day: null);
    }

    /// <summary>A line to write on, with what belongs there in front of it.</summary>
    /// <returns>Where it ends.</returns>
    public static double Field(Picture page, string name, double x, double y, double width)
    {
        FieldStyle.Draw(page, [$"{name}:"], x, y);
        double from = x + FieldStyle.Width($"{name}:") + 5;
        page.Line(from, y + 10.5, x + width, y + 10.5, Rule);
        return x + width;
    }

    /// <summary>A text cut to one line.</summary>
    private static string One(string text, double width, PrintStyle style) =>
        PrintLines.Of(text, width, style) is [var only] ? only : PrintLines.Of(text, width - style.Width("…"), style)[0] + "…";
}
