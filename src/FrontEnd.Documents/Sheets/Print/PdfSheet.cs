using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>The sheet as pages of A4 in a PDF: the blocks of the HTML sheet, with contents, page numbers and the font in it.</summary>
internal static class PdfSheet
{
    public static byte[] Of(Sheet sheet)
    {
        PageFlow flow = Pages(sheet);
        return Pdf.Of(sheet.Design.Name, flow.Pages, flow.Bookmarks, sheet.Day);
    }

    /// <summary>The pages as pictures, a unit being a point.</summary>
    internal static PageFlow Pages(Sheet sheet)
    {
        PageFlow flow = new();
        bool isFirst = true;
        foreach (SheetPage page in SheetBody.Pages(sheet))
        {
            flow.Begin(page.Title, page.IsLandscape, page.Stamp is { } stamp ? width => PrintBlocks.Stamp(stamp, width) : null);
            if (isFirst)
            {
                flow.Add(PrintBlocks.Title(sheet.Design.Name, flow.Width));
                isFirst = false;
            }

            PrintBlocks.Add(flow, page.Blocks);
        }

        Foot(sheet, flow.Pages);
        return flow;
    }

    private static void Foot(Sheet sheet, IReadOnlyList<Picture> pages)
    {
        const double Above = 26, Gap = 20;
        PrintStyle style = PrintStyle.Foot;
        for (int at = 0; at < pages.Count; at++)
        {
            Picture page = pages[at];
            double right = page.Width - PageFlow.Margin, top = page.Height - Above;
            string number = $"page {at + 1} of {pages.Count}", day = sheet.Day is { } date ? $"{date:yyyy-MM-dd}" : "";
            style.Draw(page, [number], right, top, Anchor.End);
            style.Draw(page, [day], page.Width / 2, top, Anchor.Middle);

            // A long name ends before the day.
            double room = (day.Length > 0 ? (page.Width - style.Width(day)) / 2 : right - style.Width(number)) - PageFlow.Margin - Gap;
            IReadOnlyList<string> name = PrintLines.Of(sheet.Design.Name, room, style);
            style.Draw(page, [name.Count == 1 ? name[0] : $"{PrintLines.Of(sheet.Design.Name, room - style.Width("…"), style)[0]}…"], PageFlow.Margin, top);
        }
    }
}
