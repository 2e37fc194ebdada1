using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>The blocks of a sheet as pieces of printed pages. Lengths in points.</summary>
internal sealed class PrintBlocks(PrintLook look)
{
    private const double ColumnGap = 18, ManyGap = 14, Indent = 11, SmallIndent = 8;
    private const int ManyColumns = 3;

    /// <summary>What columns need below their heading to begin on its page.</summary>
    private const double Beginning = 45;

    /// <summary>Drawings are in units of which about so many make a point, and are not enlarged.</summary>
    private const double LargestScale = 1;

    /// <summary>A text with more lines is broken, so that no piece is higher than a page.</summary>
    private const int MostLines = 12;

    /// <summary>Puts blocks onto pages, from where the flow is.</summary>
    public void Add(PageFlow flow, IReadOnlyList<Block> blocks)
    {
        List<Piece> column = [];
        foreach (Block block in blocks)
        {
            switch (block)
            {
                case Block.Pair pair:
                    flow.Add(column, Beginning);
                    column.Clear();
                    double half = (flow.Width - ColumnGap) / 2;
                    flow.AddBeside(Of(pair.Left, half, flow.Height), Of(pair.Right, half, flow.Height), half + ColumnGap);
                    break;
                case Block.Items { Small: true } items when items.Texts.Count >= HtmlSheet.Many:
                    flow.Add(column, Beginning);
                    column.Clear();
                    double third = (flow.Width - ((ManyColumns - 1) * ManyGap)) / ManyColumns;
                    flow.AddColumns(Entries(items, third), ManyColumns, third + ManyGap);
                    break;
                default:
                    column.AddRange(Of(block, flow.Width, flow.Height));
                    break;
            }
        }

        flow.Add(column);
    }

    /// <summary>Blocks in one column.</summary>
    private List<Piece> Of(IEnumerable<Block> blocks, double width, double most) => [.. blocks.SelectMany(block => Of(block, width, most))];

    private IReadOnlyList<Piece> Of(Block block, double width, double most) => block switch
    {
        Block.Heading heading => [Heading(HtmlSheet.Capital(heading.Text), width)],
        Block.Paragraph paragraph => Text(HtmlSheet.Capital(paragraph.Text), look.Body, width),
        Block.Warning warning => [Warning(warning.Text, width)],
        Block.Items items => Entries(items, width),
        Block.Table table => Spaced(PrintTable.Of(table, width, look)),
        Block.Verdicts verdicts => Spaced(PrintTable.Of(verdicts, width, look)),
        Block.Pair pair => Of(pair.Left.Concat(pair.Right), width, most),
        Block.Drawing drawing => [Drawing(drawing, width, most)],
        Block.Drawings drawings => [Heading(Block.Drawings.Title, width), .. TwoByTwo(drawings.All, width, most)],
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Block is not handled."),
    };

    /// <summary>The name of what is printed, at the top of its first page.</summary>
    public IReadOnlyList<Piece> Title(string text, double width) => Text(text, look.Title, width);

    /// <summary>What each page says of a design that must not be worn.</summary>
    public static Piece Stamp(string text, double width)
    {
        const double Height = 20, Below = 6;
        PrintStyle style = new(12, 15, IsBold: true);
        string capitals = text.ToUpperInvariant();
        return new Piece(Height + Below, (page, x, y) =>
        {
            page.Rectangle(x + 1, y + 1, width - 2, Height - 2, new Pen("#d55e00", 2));
            style.Draw(page, [capitals], x + (width / 2), y + ((Height - style.Leading) / 2), Anchor.Middle);
        });
    }

    private Piece Heading(string text, double width)
    {
        IReadOnlyList<string> lines = PrintLines.Of(text, width, look.Heading);
        return new Piece((lines.Count * look.Heading.Leading) + 2, (page, x, y) => look.Heading.Draw(page, lines, x, y))
        {
            Before = look.Room(8),
            KeepsNext = true,
            Bookmark = text,
        };
    }

    private static Piece[] Text(string text, PrintStyle style, double width)
    {
        IReadOnlyList<string> lines = PrintLines.Of(text, width, style);
        return [.. lines.Chunk(MostLines).Select((some, at) =>
            new Piece(some.Length * style.Leading, (page, x, y) => style.Draw(page, some, x, y)) { Before = at == 0 ? 3 : 0 })];
    }

    private Piece Warning(string text, double width)
    {
        const double Bar = 6, Inside = 5;
        PrintStyle style = look.Body with { IsBold = true };
        IReadOnlyList<string> lines = PrintLines.Of(text, width - Bar - (2 * Inside), style);
        double height = (lines.Count * style.Leading) + (2 * Inside);
        return new Piece(height, (page, x, y) =>
        {
            page.Rectangle(x + 0.75, y + 0.75, width - 1.5, height - 1.5, new Pen("#111", 1.5));
            page.Rectangle(x, y, Bar, height, null, new Fill("#111"));
            style.Draw(page, lines, x + Bar + Inside, y + Inside);
        })
        {
            Before = look.Room(5),
        };
    }

    private Piece[] Entries(Block.Items items, double width)
    {
        (PrintStyle style, double indent) = items.Small ? (look.Small, SmallIndent) : (look.Body, Indent);
        if (items.Numbered)
        {
            indent = Math.Max(indent, style.Width($"{items.Texts.Count}. "));
        }

        return [.. items.Texts.SelectMany((text, at) =>
        {
            string mark = items.Numbered ? $"{at + 1}." : "•";
            IReadOnlyList<string> lines = PrintLines.Of(items.AsWritten ? text : HtmlSheet.Capital(text), width - indent, style);
            return lines.Chunk(MostLines).Select((some, part) => new Piece(some.Length * style.Leading, (page, x, y) =>
            {
                style.Draw(page, part == 0 ? [mark] : [], x, y);
                style.Draw(page, some, x + indent, y);
            })
            {
                Before = part == 0 ? look.Room(at == 0 ? 3 : 1.2) : 0,
            });
        })];
    }

    private Piece Drawing(Block.Drawing drawing, double width, double most)
    {
        const double Below = 3, UnderCaption = 3;
        PrintStyle style = look.Caption;
        IReadOnlyList<string> lines = drawing.Title.Length == 0 ? [] : PrintLines.Of(HtmlSheet.Capital(drawing.Title), width, style);
        double caption = lines.Count == 0 ? 0 : (lines.Count * style.Leading) + UnderCaption;
        double scale = Math.Min(Math.Min(LargestScale, look.Density * width / drawing.Picture.Width), (most - caption - Below) / drawing.Picture.Height);
        return new Piece(caption + (scale * drawing.Picture.Height) + Below, (page, x, y) =>
        {
            style.Draw(page, lines, x, y);
            page.Place(drawing.Picture, x, y + caption, scale);
        })
        {
            Before = look.Room(5),
        };
    }

    private IEnumerable<Piece> TwoByTwo(IReadOnlyList<Block.Drawing> all, double width, double most)
    {
        double half = (width - ColumnGap) / 2;
        foreach (Block.Drawing[] row in all.Chunk(2))
        {
            Piece[] beside = [.. row.Select(drawing => Drawing(drawing, half, most))];
            yield return new Piece(beside.Max(piece => piece.Height), (page, x, y) =>
            {
                for (int at = 0; at < beside.Length; at++)
                {
                    beside[at].Draw(page, x + (at * (half + ColumnGap)), y);
                }
            })
            {
                Before = look.Room(6),
            };
        }
    }

    /// <summary>With room above.</summary>
    private IReadOnlyList<Piece> Spaced(IReadOnlyList<Piece> pieces) => 
        [.. pieces.Select((piece, at) => at == 0 ? piece with { Before = look.Room(3) } : piece)];
}
