using FrontEnd.Boards;
using FrontEnd.Results;

namespace FrontEnd.Schematics;

/// <summary>Cells into rows and rows into pages.</summary>
internal static class PageComposer
{
    /// <summary>Where cells may stand.</summary>
    private const int Top = 6, Bottom = 72;

    /// <summary>The pages of some cells in their order; what does not fit beside the last goes on in the next row, with the signal's name at
    /// both ends.</summary>
    public static IEnumerable<SchematicPage> Compose(IReadOnlyList<Cell> cells, DrawingScope scope, string title, IReadOnlyList<int> assemblies)
    {
        List<PageRow> rows = [];
        for (int at = 0; at < cells.Count; at++)
        {
            bool chained = 0 < at && cells[at - 1].Out is not null && cells[at].In is not null;
            if (chained && rows[^1].TryAdd(cells[at], chained, scope))
            {
                continue;
            }

            if (!chained && cells[at].In is null && cells[at].Out is null && rows.Find(row => row.TryAddBelow(cells[at]) || (row.IsHighEnough(cells[at]) && row.TryAdd(cells[at], chained, scope))) is not null)
            {
                continue;
            }

            if (!chained && rows.Count > 0 && rows[^1].TryAdd(cells[at], chained, scope))
            {
                continue;
            }

            // A page for one small cell is avoided where a row of the last page can get higher.
            if (!chained && cells[at].In is null && cells[at].Out is null && rows.Count > 0 && Pages(rows)[^1] is var last
                && Bottom < Math.Ceiling(last.End + PageRow.Below + PageRow.Titles) + Math.Ceiling(cells[at].Bounds.Height)
                && last.Rows.Find(row => row.TryAddBelow(cells[at], Math.Floor(Bottom - last.End))) is not null)
            {
                continue;
            }

            rows.Add(new PageRow());
            rows[^1].AddFirst(cells[at], scope);
        }

        rows.ForEach(row => row.Close(scope));
        return Pages(rows).Select(page => Page(page.Rows, title, assemblies));
    }

    /// <summary>Rows to pages, each with where its last row ends.</summary>
    private static List<(List<PageRow> Rows, double End)> Pages(List<PageRow> rows)
    {
        List<(List<PageRow> Rows, double End)> pages = [];
        foreach (PageRow row in rows)
        {
            if (pages.Count > 0 && EndOf(row, pages[^1].End + PageRow.Below) is var end && end <= Bottom)
            {
                pages[^1].Rows.Add(row);
                pages[^1] = (pages[^1].Rows, end);
            }
            else
            {
                pages.Add(([row], EndOf(row, Top)));
            }
        }

        return pages;
    }

    private static double EndOf(PageRow row, double from) => Math.Ceiling(from + PageRow.Titles) + Math.Ceiling(row.Height);

    private static SchematicPage Page(List<PageRow> rows, string title, IReadOnlyList<int> assemblies)
    {
        List<Cell> placed = [];
        List<SchematicText> titles = [];
        double y = Top;
        foreach (PageRow row in rows)
        {
            (IReadOnlyList<Cell> Group, double Top)[] groups = [.. row.Placed((int)Math.Ceiling(y + PageRow.Titles))];
            placed.AddRange(groups.SelectMany(one => one.Group));
            for (int at = 0; at < groups.Length; at++)
            {
                double end = groups.Skip(at + 1).Where(other => groups[at].Group[0].Bounds.Right < other.Group[0].Bounds.Left)
                    .Select(other => other.Group[0].Bounds.Left - 1).FirstOrDefault(Schematic.Width);
                titles.AddRange(TitlesOf(groups[at].Group, groups[at].Top - PageRow.Titles + 1, end));
            }

            y = EndOf(row, y) + PageRow.Below;
        }

        SchematicPage page = new(title, assemblies, [.. placed.SelectMany(cell => cell.Symbols)], [.. placed.SelectMany(cell => cell.Wires)],
            [.. placed.SelectMany(cell => cell.Ports)], [], [.. titles, .. placed.SelectMany(cell => cell.Texts)]);
        return page with { Dots = Junctions.Dots(page) };
    }

    /// <summary>Titles of a group's cells, each cut where the next begins.</summary>
    private static IEnumerable<SchematicText> TitlesOf(IReadOnlyList<Cell> cells, double y, double right)
    {
        Cell[] named = [.. cells.Where(cell => cell.Title.Length > 0)];
        double[] starts = [.. named.Select(cell => Math.Max(0, cell.In?.At.X ?? cell.Bounds.Left))];
        for (int at = 0; at < named.Length; at++)
        {
            double end = at + 1 < named.Length ? starts[at + 1] - 1 : right;
            string text = Lettering.Shortened(named[at].Title, Lettering.Large, bold: true, end - starts[at]);
            yield return new(new(starts[at], y), text, TextSide.Start, Lettering.Large, TextPurpose.Title);
        }
    }

    /// <summary>The pages with name, number, legend and caution.</summary>
    public static IReadOnlyList<SchematicPage> Framed(Board board, IReadOnlyList<SchematicPage> pages, string? stamp, string notes) =>
        [.. pages.Select((page, index) => page with { Texts = [.. page.Texts, .. Frame(board, page, index + 1, pages.Count, notes, stamp is null ? Numbered : Stamped), .. Warnings(board, stamp)] })];

    private static IEnumerable<SchematicText> Frame(Board board, SchematicPage page, int number, int pages, string notes, int taken)
    {
        const string Legend = "Letters as in IEEE 315. Three bars: GND. Open triangle: MID, the middle of the supply. Bar: the supply of its name. One name is one net. "
            + "Dot: joined; lines that cross without a dot are not.";
        string name = board.Design.Name.Length == 0 ? "Schematic" : $"{board.Design.Name}: schematic";
        string prefix = page.Assembly == 0 ? "" : $" Names of nets and parts lack their prefix A{page.Assembly}.";
        yield return new(new(0, 1.8), Lettering.Shortened(name, Lettering.Largest, bold: true, Schematic.Width - taken), TextSide.Start, Lettering.Largest, TextPurpose.Title);
        yield return new(new(Schematic.Width, 1.8), $"page {number} of {pages}", TextSide.End, Lettering.Usual, TextPurpose.Note);
        string what = page.Title.Length == 0 ? "" : $"{char.ToUpperInvariant(page.Title[0])}{page.Title[1..]}. ";
        yield return Note(3.8, $"{what}Drawn as it can be bought: values are the nearest available.{prefix}{notes}");
        yield return Note(Schematic.Height - 2.6, Legend);
        double y = Schematic.Height - 1.4;
        foreach (string line in Lines(Cautions.All[0]).Take(2))
        {
            yield return Note(y, line);
            y += 1.15;
        }
    }

    /// <summary>What the page's number, and a stamp before it, take of the title's line.</summary>
    private const int Numbered = 12, Stamped = 36;

    /// <summary>What must be read before anything else: the stamp, and what the design says of its own danger.</summary>
    private static IEnumerable<SchematicText> Warnings(Board board, string? stamp)
    {
        if (stamp is not null)
        {
            yield return new(new(Schematic.Width - 12, 1.8), stamp.ToUpperInvariant(), TextSide.End, Lettering.Largest, TextPurpose.Title);
        }

        if (board.Design.Caution.Length > 0)
        {
            yield return Note(5.2, $"Caution: {board.Design.Caution}");
        }
    }

    private static SchematicText Note(double y, string text) => new(
        new(0, y), Lettering.Shortened(text, Lettering.Small, bold: false, Schematic.Width), TextSide.Start, Lettering.Small, TextPurpose.Note);

    /// <summary>A text in lines that fit the page.</summary>
    private static IEnumerable<string> Lines(string text)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Schematic.Width < Lettering.Width(longer, Lettering.Small, bold: false))
            {
                yield return line;
                longer = word;
            }

            line = longer;
        }

        yield return line;
    }
}
