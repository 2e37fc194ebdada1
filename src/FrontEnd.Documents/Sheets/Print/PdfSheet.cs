using System.Text;
using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet as pages of A4 in a PDF: the blocks of the HTML sheet, with contents, page numbers and the font in it.</summary>
internal static class PdfSheet
{
    public static byte[] Of(Sheet sheet) => Of(sheet, out _);

    /// <param name="lacking">Letters of the sheet that the font does not have, each once, a few at most.</param>
    public static byte[] Of(Sheet sheet, out string lacking)
    {
        const int Few = 10;
        PageFlow flow = Pages(sheet);
        IEnumerable<Rune> letters = flow.Pages.SelectMany(page => page.AllTexts()).SelectMany(text => text.Runs).SelectMany(run => run.Text.EnumerateRunes());
        lacking = string.Join(' ', letters.Where(letter => !letter.IsBmp || !FontFile.Regular.Has((char)letter.Value)).Distinct().Take(Few));
        return Pdf.Of(sheet.Design.Name, flow.Pages, flow.Bookmarks, sheet.Day);
    }

    /// <summary>Pages under a title that are no design's sheet.</summary>
    public static byte[] Of(string title, IReadOnlyList<SheetPage> pages)
    {
        PageFlow flow = Pages(title, null, pages);
        return Pdf.Of(title, flow.Pages, flow.Bookmarks, null);
    }

    /// <summary>The pages as pictures, a unit being a point.</summary>
    internal static PageFlow Pages(Sheet sheet) => Pages(sheet.Design.Name, sheet.Day, SheetBody.Pages(sheet));

    private static PageFlow Pages(string name, DateOnly? day, IReadOnlyList<SheetPage> pages)
    {
        PageFlow flow = new();
        bool isFirst = true;
        foreach (SheetPage page in pages)
        {
            string? title = isFirst ? name : null;
            Add(flow, page, title, Look(page, title));
            isFirst = false;
        }

        Foot(name, day, flow.Pages);
        return flow;
    }

    /// <summary>The closest look is taken only where it saves a sheet of paper, and then no closer than it must be.</summary>
    private static PrintLook Look(SheetPage page, string? title)
    {
        ReadOnlySpan<double> densities = [0.96, 0.92, 0.88, 0.85];
        int usual = Count(PrintLook.Usual);
        if (usual > 1 && Count(new PrintLook(densities[^1])) is var least && least < usual)
        {
            foreach (double density in densities)
            {
                if (Count(new PrintLook(density)) == least)
                {
                    return new PrintLook(density);
                }
            }
        }

        return PrintLook.Usual;

        int Count(PrintLook look)
        {
            PageFlow flow = new();
            Add(flow, page, title, look);
            return flow.Pages.Count;
        }
    }

    private static void Add(PageFlow flow, SheetPage page, string? title, PrintLook look)
    {
        PrintBlocks blocks = new(look);
        flow.Begin(page.Title, page.IsLandscape, page.Stamp is { } stamp ? width => PrintBlocks.Stamp(stamp, width) : null);
        if (title is not null)
        {
            flow.Add(blocks.Title(title, flow.Width));
        }

        blocks.Add(flow, page.Blocks);
    }

    private static void Foot(string title, DateOnly? written, IReadOnlyList<Picture> pages)
    {
        const double Above = 26, Gap = 20;
        PrintStyle style = PrintStyle.Foot;
        for (int at = 0; at < pages.Count; at++)
        {
            Picture page = pages[at];
            double right = page.Width - PageFlow.Margin, top = page.Height - Above;
            string number = $"page {at + 1} of {pages.Count}", day = written is { } date ? $"{date:yyyy-MM-dd}" : "";
            style.Draw(page, [number], right, top, Anchor.End);
            style.Draw(page, [day], page.Width / 2, top, Anchor.Middle);

            // A long name ends before the day.
            double room = (day.Length > 0 ? (page.Width - style.Width(day)) / 2 : right - style.Width(number)) - PageFlow.Margin - Gap;
            IReadOnlyList<string> name = PrintLines.Of(title, room, style);
            style.Draw(page, [name.Count == 1 ? name[0] : $"{PrintLines.Of(title, room - style.Width("…"), style)[0]}…"], PageFlow.Margin, top);
        }
    }
}
