using System.Collections.Concurrent;
using FrontEnd.Advice;
using FrontEnd.Documents.Drawing;
using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;
using FrontEnd.Unknowns;
using UglyToad.PdfPig;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

/// <summary>The PDF says what the other sheets say, on pages of A4, with nothing over anything else.</summary>
public sealed class PdfSheetTests
{
    private const double Hair = 0.02;

    private static readonly ConcurrentDictionary<string, Sheet> Sheets = new(StringComparer.Ordinal);

    public static TheoryData<string> Designs =>
        [.. Directory.GetFiles(Repository.Designs, "*.toml").Select(path => Path.GetFileNameWithoutExtension(path))
            .Where(name => !name.EndsWith("-requirements", StringComparison.Ordinal) && name != "wrong-in-six-ways").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Text_ReadBack_IsThatOfTheBlocks(string name)
    {
        Sheet sheet = Made(name);
        using PdfDocument document = PdfDocument.Open(PdfSheet.Of(sheet));

        // Without the feet, so that a text may run over two pages.
        string read = Plain(string.Concat(document.GetPages().SelectMany(page => page.Letters).Where(letter => letter.StartBaseLine.Y > 30).Select(letter => letter.Value)));
        Assert.All(SheetBody.Pages(sheet).SelectMany(page => page.Blocks).SelectMany(Texts).Append(sheet.Design.Name), text => Found(Plain(text), read));
        Assert.All(sheet.Assessment.PartlyKnown is null && !sheet.PlainOnly ? sheet.Findings : [], finding => Found(Plain(finding.Message), read));
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Pages_AreA4_NumberedAndNamed_AndTheContentsLeadToEveryHeading(string name)
    {
        Sheet sheet = Made(name);
        using PdfDocument document = PdfDocument.Open(PdfSheet.Of(sheet));
        Assert.All(document.GetPages(), page =>
        {
            Assert.Equal((595.28, 841.89), (Math.Min(page.Width, page.Height), Math.Max(page.Width, page.Height)), EqualityComparer<(double, double)>.Create((a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 0.02));
            Assert.Contains($"PAGE{page.Number}OF{document.NumberOfPages}", Plain(page.Text), StringComparison.Ordinal);
            Assert.All(page.Letters, letter =>
            {
                Assert.Matches("^[A-Z]{6}\\+DejaVu", letter.FontName);
                Assert.True(0 <= letter.BoundingBox.Left && letter.BoundingBox.Right <= page.Width && 0 <= letter.BoundingBox.Bottom && letter.BoundingBox.Top <= page.Height, $"{letter.Value} on page {page.Number}");
            });
        });
        Assert.True(document.TryGetBookmarks(out UglyToad.PdfPig.Outline.Bookmarks? bookmarks));
        string[] headings = [.. SheetBody.Pages(sheet).SelectMany(page => page.Blocks).SelectMany(Headings)];
        Assert.Equal(headings, bookmarks!.GetNodes().Where(node => node.Level == 1).Select(node => node.Title));
        Assert.Equal(SheetBody.Pages(sheet).Select(page => HtmlSheet.Capital(page.Title)), bookmarks!.GetNodes().Where(node => node.Level == 0).Select(node => node.Title));
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Layout_OfEveryPage_HasNoTextOverTextOrOutside(string name)
    {
        IReadOnlyList<Picture> pages = PdfSheet.Pages(Made(name)).Pages;
        for (int at = 0; at < pages.Count; at++)
        {
            Operation.Text[] texts = [.. pages[at].Operations.OfType<Operation.Text>()];
            Box[] boxes = [.. texts.Select(TextWidth.Around), .. pages[at].Operations.OfType<Operation.Placed>().Select(one => new Box(one.X, one.Y, one.Scale * one.Picture.Width, one.Scale * one.Picture.Height))];
            string What(int one) => one < texts.Length ? string.Concat(texts[one].Runs.Select(run => run.Text)) : "a drawing";
            for (int one = 0; one < boxes.Length; one++)
            {
                Box box = boxes[one];
                Assert.True(PageFlow.Margin - Hair <= box.X && box.X + box.Width <= pages[at].Width - PageFlow.Margin + Hair && 0 < box.Y && box.Y + box.Height < pages[at].Height, $"page {at + 1}: {What(one)} stands outside");
                for (int other = one + 1; other < boxes.Length; other++)
                {
                    Box next = boxes[other];
                    bool isOver = box.X + Hair < next.X + next.Width && next.X + Hair < box.X + box.Width && box.Y + 0.3 < next.Y + next.Height && next.Y + 0.3 < box.Y + box.Height;
                    Assert.False(isOver, $"page {at + 1}: {What(one)} | {What(other)}");
                }
            }

            Assert.All(texts, text => Assert.True(text.Size >= PrintStyle.LeastSize, What(Array.IndexOf(texts, text))));
        }
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void Layout_OfEveryDrawing_KeepsItsTextsInside(string name)
    {
        foreach (Operation.Placed placed in PdfSheet.Pages(Made(name)).Pages.SelectMany(page => page.Operations.OfType<Operation.Placed>()))
        {
            Assert.All(placed.Picture.Operations.OfType<Operation.Text>(), text =>
            {
                Box box = TextWidth.Around(text);
                Assert.True(-1 <= box.X && box.X + box.Width <= placed.Picture.Width + 1 && -1 <= box.Y && box.Y + box.Height <= placed.Picture.Height + 3,
                    $"{placed.Picture.Label}: {string.Concat(text.Runs.Select(run => run.Text))} reaches out, {box}");
            });
        }
    }

    [Fact]
    public void Sheet_SameTwice_IsTheSameBytes_AndADayStandsOnEveryPage()
    {
        Sheet sheet = Made("hobbyist");
        byte[] first = PdfSheet.Of(sheet);
        Assert.Equal(first, PdfSheet.Of(Make("hobbyist")));
        using PdfDocument document = PdfDocument.Open(PdfSheet.Of(sheet with { Day = new DateOnly(2026, 11, 26) }));
        Assert.All(document.GetPages(), page => Assert.Contains("2026-11-26", page.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Numbers_OfATable_StandFlushRight()
    {
        string[] numbers = ["1.00 nV", "−22.45 mV", "100 %", "4"];
        IReadOnlyList<Piece> pieces = PrintTable.Of(new Block.Table([new("what", true), new("value")], [.. numbers.Select(number => new Row(["a text", number]))]), 300, PrintLook.Usual);
        Picture page = new(400, 400, "");
        foreach (Piece piece in pieces)
        {
            piece.Draw(page, 20, 20);
        }

        Box[] boxes = [.. page.Operations.OfType<Operation.Text>().Where(text => numbers.Contains(text.Runs[0].Text)).Select(TextWidth.Around)];
        Assert.Equal(numbers.Length, boxes.Length);
        Assert.All(boxes, box => Assert.Equal(320, box.X + box.Width, 6));
    }

    /// <summary>A table over many pages has its head on each; a row that is higher than a page is broken.</summary>
    [Fact]
    public void Table_LongerThanAPage_HasItsHeadOnEach()
    {
        string[] words = [.. Enumerable.Range(0, 4000).Select(number => $"w{number}")];
        PageFlow flow = new();
        flow.Begin("", isLandscape: false, null);
        new PrintBlocks(PrintLook.Usual).Add(flow, [new Block.Heading("many rows"), new Block.Table([new("the head", true), new("number")],
            [.. Enumerable.Range(0, 200).Select(number => new Row([$"row {number}", $"{number}"])), new Row([string.Join(' ', words), "last"])])]);
        Assert.True(flow.Pages.Count > 3);
        Assert.All(flow.Pages, page => Assert.Single(page.Operations.OfType<Operation.Text>(), text => text.Runs[0].Text == "the head"));
        Assert.All(flow.Pages.SelectMany(page => page.Operations.OfType<Operation.Text>()), text => Assert.True(text.Y < Paper.A4.Long - 30));
        string all = string.Join(' ', flow.Pages.SelectMany(page => page.Operations.OfType<Operation.Text>()).Select(text => text.Runs[0].Text));
        Assert.All(words, word => Assert.Contains(word + " ", all + " ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("a word and another", 30.0)]
    [InlineData("levels.amplifier.electrode_offset_at_lowest_supply", 60.0)]
    [InlineData("Donaudampfschifffahrtsgesellschaftskapitän", 20.0)]
    [InlineData("μμμ 𝄞𝄞𝄞𝄞𝄞𝄞𝄞𝄞𝄞", 12.0)]
    [InlineData("", 10.0)]
    public void Lines_OfAnyText_AreNoWiderThanTheColumn_AndLoseNoLetter(string text, double width)
    {
        IReadOnlyList<string> lines = PrintLines.Of(text, width, PrintLook.Usual.Body);
        Assert.All(lines, line => Assert.True(PrintLook.Usual.Body.Width(line) <= width || line.Length <= 2, line));
        Assert.Equal(Plain(text), Plain(string.Concat(lines)));
    }

    [Fact]
    public void Heading_OfColumns_NeverStandsAlone()
    {
        for (int rows = 20; rows < 80; rows++)
        {
            PageFlow flow = new();
            flow.Begin("", isLandscape: false, null);
            new PrintBlocks(PrintLook.Usual).Add(flow,
            [
                new Block.Table([new("a", true)], [.. Enumerable.Range(0, rows).Select(row => new Row([$"{row}"]))]), new Block.Heading("the list"),
                new Block.Items([.. Enumerable.Range(0, 30).Select(number => $"entry {number}")], Small: true),
            ]);
            Assert.All(flow.Pages, page => Assert.NotEqual("The list", page.Operations.OfType<Operation.Text>().Last().Runs[0].Text));
        }
    }

    private static Sheet Made(string name) => Sheets.GetOrAdd(name, Make);

    private static Sheet Make(string name)
    {
        DesignDocument document = DesignDocument.Read(Path.Combine(Repository.Designs, name + ".toml"));
        return document.NotAllKnown is not null
            ? new Sheet(document, PartlyKnownEvaluator.Evaluate(document.PartlyKnown!))
            : new Sheet(document, Advisor.Advise(Evaluator.Evaluate(document.Design))) { Bench = Bench.BenchPlan.Of(document.Design).Readings, HasAppendix = true };
    }

    private static IEnumerable<string> Headings(Block block) => block switch
    {
        Block.Heading heading => [HtmlSheet.Capital(heading.Text)],
        Block.Pair pair => pair.Left.Concat(pair.Right).SelectMany(Headings),
        Block.Drawings => [Block.Drawings.Title],
        _ => [],
    };

    private static IEnumerable<string> Texts(Block block) => block switch
    {
        Block.Heading heading => [heading.Text],
        Block.Paragraph paragraph => [paragraph.Text],
        Block.Warning warning => [warning.Text],
        Block.Items items => items.Texts,
        Block.Table table => table.Columns.Select(column => column.Head).Concat(table.Rows.SelectMany(row => row.Cells)),
        Block.Verdicts verdicts => verdicts.Results.SelectMany(result => new[] { result.Name, Wording.Word(result.Verdict.Kind), Wording.Value(result), Wording.Limit(result.Verdict), Wording.Margin(result), result.Verdict.Dominates ?? "" }),
        Block.Pair pair => pair.Left.Concat(pair.Right).SelectMany(Texts),
        Block.Drawing drawing => [drawing.Title, .. drawing.Picture.Operations.OfType<Operation.Text>().Select(text => string.Concat(text.Runs.Select(run => run.Text)))],
        Block.Drawings drawings => drawings.All.SelectMany(Texts),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Block is not handled."),
    };

    private static void Found(string text, string read)
    {
        int most = text.Length;
        while (!read.Contains(text[..most], StringComparison.Ordinal))
        {
            most--;
        }

        Assert.True(most == text.Length, $"not found: {text[..most]} | {text[most..]}");
    }

    private static string Plain(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter))).ToUpperInvariant();
}
