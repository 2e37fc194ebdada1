using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace FrontEnd.Documents.Drawing;

/// <summary>An entry of a document's contents.</summary>
/// <param name="Level">0 for a part of the document, 1 for what stands in the part before it.</param>
/// <param name="Page">The place of its page, from 0.</param>
/// <param name="Top">How far below the page's upper edge what it names begins, in points.</param>
internal sealed record Bookmark(string Text, int Level, int Page, double Top);

/// <summary>Pictures as the pages of a PDF file, a unit of theirs being a point (1/72 inch), with the font in it.</summary>
internal static class Pdf
{
    private static readonly Lazy<bool> Prepared = new(Prepare);

    /// <summary>The same pages give the same bytes: nothing in the file tells when or in which run it was made, but the day that is given.</summary>
    /// <param name="day">What the file says that it was made on; null for nothing.</param>
    public static byte[] Of(string title, IReadOnlyList<Picture> pages, IReadOnlyList<Bookmark> bookmarks, DateOnly? day)
    {
        _ = Prepared.Value;
        using PdfDocument document = new();
        document.Info.Title = title;
        document.Info.CreationDate = (day ?? default).ToDateTime(default, DateTimeKind.Utc);
        document.Language = "en";
        document.ViewerPreferences.DisplayDocTitle = true;
        document.Options.CompressContentStreams = false;
        document.Options.NoCompression = true;
        foreach (Picture picture in pages)
        {
            PdfPage page = document.AddPage();
            page.Width = XUnit.FromPoint(picture.Width);
            page.Height = XUnit.FromPoint(picture.Height);
            using XGraphics graphics = XGraphics.FromPdfPage(page);
            new PdfPainter(graphics).Draw(picture);
        }

        PdfOutline? part = null;
        foreach (Bookmark bookmark in bookmarks)
        {
            bool isPart = bookmark.Level == 0 || part is null;
            PdfOutline entry = (isPart ? document.Outlines : part!.Outlines).Add(bookmark.Text, document.Pages[bookmark.Page], opened: true);
            part = isPart ? entry : part;
            entry.PageDestinationType = PdfPageDestinationType.Xyz;
            entry.Top = pages[bookmark.Page].Height - bookmark.Top;
        }

        using MemoryStream stream = new();
        document.Save(stream, closeStream: false);
        return PdfFile.Settled(stream.ToArray(), isDated: day is not null);
    }

    private static bool Prepare()
    {
        GlobalFontSettings.FontResolver = new OwnFonts();
        return true;
    }

    /// <summary>Whatever font is asked for, it is the one that comes with the program: nothing is looked for on the machine.</summary>
    private sealed class OwnFonts : IFontResolver
    {
        public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) => new((isBold ? FontFile.Bold : FontFile.Regular).Name);

        public byte[] GetFont(string faceName) => (faceName == FontFile.Bold.Name ? FontFile.Bold : FontFile.Regular).Bytes;
    }
}
