using System.Globalization;
using System.Xml.Linq;
using FrontEnd.Documents.Drawing;
using Xunit;

namespace FrontEnd.Documents.Tests.Drawing;

/// <summary>What is drawn stands in the SVG: every operation as one element with its looks, every text escaped.</summary>
public sealed class PictureTests
{
    private static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    [Fact]
    public void Svg_OfEveryOperation_HasItsElement()
    {
        Picture inner = new(10, 10, "inner");
        inner.Circle(5, 5, 4, null, Fill.Black);
        Picture picture = new(100, 50, "all & every");
        picture.Line(0, 1, 2, 3.456, new Pen("#333", 0.5, [2, 1]));
        picture.Rectangle(1, 2, 3, 4, new Pen("#000"), Fill.White, radius: 2);
        picture.Polygon(new Pen("#222"), null, (0, 0), (4, 0), (2, 3));
        picture.Path(new Outline().Move(1, 1).LineBy(2, 0).MoveBy(0, 5).Line(9, 9), new Pen("#111", 2, IsRound: true), clip: new Box(0, 0, 5, 5));
        picture.Text(3, 4, "<R1>", Anchor.End, 6.5, bold: true, colour: "#456");
        picture.TextUp(7, 8, "up");
        picture.Place(inner, 20, 30, 0.5);
        string text = FrontEnd.Documents.Drawing.Svg.Of(picture);
        XElement svg = XElement.Parse(text);
        Assert.Equal("0 0 100 50", (string?)svg.Attribute("viewBox"));
        Assert.Equal("all & every", (string?)svg.Attribute("aria-label"));
        Assert.Equal(["defs", "line", "rect", "path", "path", "text", "text", "g"], svg.Elements().Select(one => one.Name.LocalName));
        Assert.Contains("""<line x1="0" y1="1" x2="2" y2="3.46" stroke="#333" stroke-width="0.5" stroke-dasharray="2 1"/>""", text, StringComparison.Ordinal);
        Assert.Contains("""<rect x="1" y="2" width="3" height="4" rx="2" fill="#fff" stroke="#000"/>""", text, StringComparison.Ordinal);
        Assert.Contains("""<path d="M0 0L4 0L2 3Z" fill="none" stroke="#222"/>""", text, StringComparison.Ordinal);
        Assert.Contains("""<path d="M1 1L3 1M3 6L9 9" fill="none" stroke="#111" stroke-width="2" stroke-linejoin="round" clip-path="url(#plot-all-every)"/>""", text, StringComparison.Ordinal);
        Assert.Contains("""<text x="3" y="4" text-anchor="end" font-size="6.5" font-weight="bold" fill="#456">&lt;R1&gt;</text>""", text, StringComparison.Ordinal);
        Assert.Contains("""<text transform="translate(7 8) rotate(-90)" text-anchor="middle" font-size="11">up</text>""", text, StringComparison.Ordinal);
        Assert.Equal("translate(20 30) scale(0.5)", (string?)svg.Element(Space + "g")!.Attribute("transform"));
        Assert.Single(svg.Element(Space + "g")!.Elements());
    }

    [Theory]
    [InlineData("f_c", "f|c")]
    [InlineData("V_cm = 2·f_c", "V|cm| =| 2·f|c")]
    [InlineData("plain", "plain")]
    [InlineData("Z_e ", "Z|e| ")]
    public void Formula_IndicesAreRunsOfTheirOwn_AndTheLineComesBack(string text, string runs)
    {
        Picture picture = new(10, 10, "");
        picture.Formula(0, 0, text, Anchor.Start, 10);
        Operation.Text drawn = Assert.IsType<Operation.Text>(Assert.Single(picture.Operations));
        Assert.Equal(runs.Replace("|", "", StringComparison.Ordinal), string.Concat(drawn.Runs.Select(run => run.Text)));
        Assert.Equal(runs.Split('|').Length, drawn.Runs.Count);
        Assert.Equal(text.TrimEnd().EndsWith("_c", StringComparison.Ordinal) || text.EndsWith(' ') ? 2.5 : 0, drawn.Runs.Sum(run => run.Lower), 12);
    }

    [Fact]
    public void Clips_OfSeveralPlots_HaveNamesOfTheirOwn()
    {
        Picture page = new(100, 100, "page");
        foreach (double left in (double[])[0, 20])
        {
            Picture plot = new(10, 10, "plot");
            plot.Path(new Outline().Move(0, 0).Line(9, 9), new Pen("#000"), clip: new Box(left, 0, 5, 5));
            plot.Path(new Outline().Move(0, 9).Line(9, 0), new Pen("#000"), clip: new Box(left, 0, 5, 5));
            page.Place(plot, left, 0);
        }

        XElement svg = XElement.Parse(FrontEnd.Documents.Drawing.Svg.Of(page));
        Assert.Equal(["plot-plot", "plot-plot-2"], svg.Descendants(Space + "clipPath").Select(one => (string)one.Attribute("id")!));
        Assert.Equal(["url(#plot-plot)", "url(#plot-plot)", "url(#plot-plot-2)", "url(#plot-plot-2)"], svg.Descendants(Space + "path").Select(one => (string)one.Attribute("clip-path")!));
    }

    [Fact]
    public void Width_IsThatOfTheLetters_AndDigitsAreAlike()
    {
        Assert.All("0123456789", digit => Assert.Equal(TextWidth.Of("0", 10), TextWidth.Of($"{digit}", 10), 12));
        Assert.Equal(TextWidth.Of("a", 10) + TextWidth.Of("Ω", 10), TextWidth.Of("aΩ", 10), 12);
        Assert.True(TextWidth.Of("22 kΩ", 10) < TextWidth.Of("22 kΩ", 10, bold: true));

        // DejaVu Sans has 2048 units, of which a digit takes 1303 and a bold one 1425: its own table of widths, as its source tells.
        Assert.Equal(13.03 / 2.048, TextWidth.Of("0", 10), 3);
        Assert.Equal(14.25 / 2.048, TextWidth.Of("0", 10, bold: true), 3);
    }

    [Theory]
    [InlineData(0, 10.0, 20.0)]
    [InlineData(1, 5.0, 20.0)]
    [InlineData(2, 0.0, 20.0)]
    public void Around_ATextAlongTheLine_LiesWhereItsAnchorSays(int anchor, double left, double y)
    {
        Picture picture = new(100, 100, "");
        string text = "1234";
        double size = 10 / TextWidth.Of(text, 1);
        picture.Text(10, y, text, (Anchor)anchor, size);
        Box box = TextWidth.Around((Operation.Text)picture.Operations[0]);
        Assert.Equal((left, 10.0), (box.X, box.Width), EqualityComparer<(double, double)>.Create((a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9));
        Assert.True(box.Y < y && y < box.Y + box.Height);
    }

    [Fact]
    public void Around_ATextUpwards_StandsOnEnd()
    {
        Picture picture = new(100, 100, "");
        picture.TextUp(50, 60, "upwards", 10);
        Box box = TextWidth.Around((Operation.Text)picture.Operations[0]);
        Assert.Equal(TextWidth.Of("upwards", 10), box.Height, 9);
        Assert.Equal(60, box.Y + (box.Height / 2), 9);
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{50 - (10 * TextWidth.Above):0.##}"), string.Create(CultureInfo.InvariantCulture, $"{box.X:0.##}"));
    }
}
