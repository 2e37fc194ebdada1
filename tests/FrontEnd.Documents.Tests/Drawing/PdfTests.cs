using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FrontEnd.Documents.Drawing;
using PdfSharp.Drawing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;

namespace FrontEnd.Documents.Tests.Drawing;

/// <summary>A picture in a PDF is the picture in SVG; the file is whole by the rules of its format.</summary>
public sealed class PdfTests
{
    private static readonly Picture Sample = Drawn();

    [Fact]
    public void Text_OfBothWriters_StandsAtTheSamePlaces()
    {
        using PdfDocument document = PdfDocument.Open(Pdf.Of("sample", [Sample], [], null));
        Page page = document.GetPage(1);
        XElement[] texts = [.. XElement.Parse(Svg.Of(Sample)).Descendants().Where(one => one.Name.LocalName == "text")];
        string drawn = string.Concat(page.Letters.Select(letter => letter.Value)), written = string.Concat(texts.Select(text => text.Value));
        Assert.Equal(written.Replace(" ", "", StringComparison.Ordinal), drawn.Replace(" ", "", StringComparison.Ordinal));
        Assert.Contains("22 kΩ ± 1 %, 4 µV/√Hz, s−1, x²", drawn, StringComparison.Ordinal);

        // Of each text that begins at its place, the first letter.
        int at = 0;
        foreach (XElement text in texts)
        {
            Letter first = page.Letters[at];
            if ((string?)text.Attribute("text-anchor") == "start" && text.Parent!.Name.LocalName == "svg" && text.Attribute("x") is not null)
            {
                Assert.Equal((double)text.Attribute("x")!, first.StartBaseLine.X, 1);
                Assert.Equal(Sample.Height - (double)text.Attribute("y")!, first.StartBaseLine.Y, 1);
            }

            at += text.Value.Length;
        }

        Assert.Equal(page.Letters.Count, at);
    }

    [Fact]
    public void Anchors_OfText_PutItsMiddleAndItsEndThere()
    {
        using PdfDocument document = PdfDocument.Open(Pdf.Of("sample", [Sample], [], null));
        Word[] words = [.. document.GetPage(1).GetWords()];
        Word middle = words.Single(word => word.Text == "middle"), end = words.Single(word => word.Text == "end");
        Assert.Equal(100, (middle.Letters[0].StartBaseLine.X + middle.Letters[^1].EndBaseLine.X) / 2, 1);
        Assert.Equal(190, end.Letters[^1].EndBaseLine.X, 1);
        Letter up = document.GetPage(1).Letters.First(letter => letter.Value == "U");
        Assert.Equal(TextOrientation.Rotate90, up.TextOrientation == TextOrientation.Rotate270 ? TextOrientation.Rotate90 : up.TextOrientation);
        Assert.Equal(150, up.StartBaseLine.X, 1);
    }

    [Fact]
    public void Shapes_OfBothWriters_AreAsMany()
    {
        using PdfDocument document = PdfDocument.Open(Pdf.Of("sample", [Sample], [], null));
        XElement svg = XElement.Parse(Svg.Of(Sample));

        // An outline of two pieces is one path in SVG and two in the PDF.
        int shapes = svg.Descendants().Where(one => one.Parent!.Name.LocalName != "clipPath").Sum(one => one.Name.LocalName switch
        {
            "line" or "rect" or "circle" => 1,
            "path" => ((string)one.Attribute("d")!).Count(letter => letter == 'M'),
            _ => 0,
        });
        Assert.Equal(shapes, document.GetPage(1).Paths.Count(path => path.IsFilled || path.IsStroked));
        Assert.Equal(svg.Descendants().Count(one => one.Attribute("stroke-dasharray") is not null), document.GetPage(1).Paths.Count(path => path.LineDashPattern is { Array.Count: > 0 }));
    }

    [Fact]
    public void Widths_AreThoseThatTheLibraryMeasures()
    {
        Pdf.Of("", [Sample], [], null);
        using PdfSharp.Pdf.PdfDocument document = new();
        using XGraphics graphics = XGraphics.FromPdfPage(document.AddPage());
        string letters = string.Concat(Enumerable.Range(0x20, 0x2700).Select(code => (char)code).Where(letter => FontFile.Regular.Has(letter) && !char.IsControl(letter)));
        Assert.True(letters.Length > 900);
        foreach ((bool bold, XFontStyleEx style) in new[] { (false, XFontStyleEx.Regular), (true, XFontStyleEx.Bold) })
        {
            XFont font = new(FontFile.Regular.Name, 100, style, XPdfFontOptions.UnicodeDefault);
            Assert.All(letters.Where(letter => letter != '\u00AD'), letter => Assert.Equal(graphics.MeasureString($"{letter}", font).Width, TextWidth.Of($"{letter}", 100, bold), 6));
        }
    }

    [Fact]
    public void File_SameTwice_IsTheSameBytes_AndTellsNoDay()
    {
        byte[] first = Pdf.Of("sample", [Sample, Sample], [new("one", 0, 0, 10)], null);
        Assert.Equal(first, Pdf.Of("sample", [Sample, Sample], [new("one", 0, 0, 10)], null));
        Assert.DoesNotContain("Date", Encoding.Latin1.GetString(first), StringComparison.Ordinal);
        Assert.NotEqual(first, Pdf.Of("sample", [Sample], [], null));
    }

    [Fact]
    public void File_OfADay_SaysIt()
    {
        byte[] bytes = Pdf.Of("sample", [Sample], [], new DateOnly(2026, 11, 26));
        Assert.Equal(bytes, Pdf.Of("sample", [Sample], [], new DateOnly(2026, 11, 26)));
        Assert.Contains("/CreationDate(D:20261126000000", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
        using PdfDocument document = PdfDocument.Open(bytes);
        Assert.Equal(new DateTimeOffset(2026, 11, 26, 0, 0, 0, TimeSpan.Zero), document.Information.GetCreatedDateTimeOffset());
    }

    /// <summary>Titles with everything that the format's own signs are made of.</summary>
    [Theory]
    [InlineData("one-channel dry headband")]
    [InlineData("50 Ω µV (a) [b] {c} <d> & \"e\" \\ / % ' startxref >>stream")]
    [InlineData("/FontName/ABCDEF+x /CreationDate(D:2026) /Length 7 xref trailer endobj")]
    [InlineData("")]
    public void File_ByItsOwnTable_HasEveryObjectWhereItSays_AndEveryStreamWhole(string title)
    {
        byte[] bytes = Pdf.Of(title, [Sample, Sample], [new(title.Length == 0 ? "x" : title, 0, 1, 10)], null);
        string text = Encoding.Latin1.GetString(bytes);
        int table = int.Parse(Found(text, @"startxref\s+(\d+)\s+%%EOF\s*$")[0].Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.StartsWith("xref", text[table..], StringComparison.Ordinal);
        Match[] entries = Found(text[table..], @"(\d{10}) (\d{5}) ([nf]) \n");
        Assert.Equal("f", entries[0].Groups[3].Value);
        for (int number = 1; number < entries.Length; number++)
        {
            int place = int.Parse(entries[number].Groups[1].Value, CultureInfo.InvariantCulture);
            Assert.StartsWith($"{number} 0 obj", text[place..], StringComparison.Ordinal);
        }

        int streams = 0;
        foreach (Match stream in Found(text, @"/Length (\d+)/Filter/FlateDecode[^\r\n]*\s+stream\n"))
        {
            int length = int.Parse(stream.Groups[1].Value, CultureInfo.InvariantCulture), start = stream.Index + stream.Length;
            Assert.StartsWith("\nendstream", text[(start + length)..], StringComparison.Ordinal);

            // A whole one ends with the checksum of what is in it.
            using ZLibStream open = new(new MemoryStream(bytes, start, length), CompressionMode.Decompress);
            using MemoryStream content = new();
            open.CopyTo(content);
            uint low = 1, high = 0;
            foreach (byte one in content.ToArray())
            {
                low = (low + one) % 65521;
                high = (high + low) % 65521;
            }

            Assert.Equal([(byte)(high >> 8), (byte)high, (byte)(low >> 8), (byte)low], bytes[(start + length - 4)..(start + length)]);
            streams++;
        }

        Assert.True(streams >= 4, $"{streams} streams");
        using PdfDocument document = PdfDocument.Open(bytes);
        Assert.Equal(2, document.NumberOfPages);
        Assert.Equal(title, document.Information.Title ?? "");
        Assert.True(document.TryGetBookmarks(out UglyToad.PdfPig.Outline.Bookmarks? bookmarks));
        Assert.Equal(2, Assert.IsAssignableFrom<UglyToad.PdfPig.Outline.DocumentBookmarkNode>(Assert.Single(bookmarks!.GetNodes())).PageNumber);
    }

    /// <summary>What the font lacks is seen to be missing, and moves nothing.</summary>
    [Fact]
    public void Letters_ThatTheFontLacks_AreReplacedByOneThatIsSeen()
    {
        Picture picture = new(200, 50, "");
        picture.Text(10, 20, "a 漢字 b Ж ℓ ‰", size: 10);
        using PdfDocument document = PdfDocument.Open(Pdf.Of("漢字", [picture], [], null));
        Assert.Equal("a \uFFFD\uFFFD b Ж ℓ ‰", string.Concat(document.GetPage(1).Letters.Select(letter => letter.Value)));
        Assert.Equal("漢字", document.Information.Title);
        Letter last = document.GetPage(1).Letters[^1];
        Assert.InRange(last.EndBaseLine.X - 10 - TextWidth.Of("a 漢字 b Ж ℓ ‰", 10), -0.15, 0.15);
    }

    [Fact]
    public void Fonts_AreInTheFile_AndOnlyTheLettersUsed()
    {
        byte[] bytes = Pdf.Of("sample", [Sample], [], null);
        string text = Encoding.Latin1.GetString(bytes);
        Assert.Equal(2, Found(text, "/Type/FontDescriptor").Length);
        Assert.Equal(2, Found(text, "/FontFile2 ").Length);
        Assert.Equal(["AAAAAA", "AAAAAB"], Found(text, @"/FontName/([A-Z]{6})\+DejaVu").Select(tag => tag.Groups[1].Value).Order());
        Assert.True(bytes.Length < 40_000, $"{bytes.Length} bytes");
    }

    private static Match[] Found(string text, string pattern) => [.. Regex.Matches(text, pattern, RegexOptions.None, TimeSpan.FromSeconds(20)).Cast<Match>()];

    private static Picture Drawn()
    {
        Picture inner = new(20, 10, "inner");
        inner.Circle(5, 5, 4, new Pen("#000"), Fill.White);
        inner.Text(1, 9, "inner", size: 8);
        Picture picture = new(200, 150, "sample");
        picture.Line(0, 1, 20, 3, new Pen("#333", 0.5, [2, 1]));
        picture.Rectangle(10, 20, 30, 40, new Pen("#000"), Fill.White, radius: 3);
        picture.Rectangle(50, 20, 30, 40, null, new Fill("#0072b2"));
        picture.Polygon(new Pen("#222"), Fill.Black, (100, 20), (120, 20), (110, 30));
        picture.Path(new Outline().Move(130, 20).LineBy(10, 0).MoveBy(0, 5).LineBy(10, 0), new Pen("#111", 2, IsRound: true), clip: new Box(100, 0, 50, 50));
        picture.Text(5, 80, "22 kΩ ± 1 %, 4 µV/√Hz, s−1, x²", size: 9);
        picture.Text(5, 92, "bold", size: 9, bold: true);
        picture.Text(100, 104, "middle", Anchor.Middle, 9);
        picture.Text(190, 104, "end", Anchor.End, 9);
        picture.TextUp(150, 60, "Up");
        picture.Formula(5, 116, "V_cm = 2·f_c", Anchor.Start, 10);
        picture.Place(inner, 150, 120, 0.5);
        return picture;
    }
}
