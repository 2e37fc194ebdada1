using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>Writes plain text of a fixed width: wrapped paragraphs and tables without ruling.</summary>
/// <remarks>A table that is wider than the page is written in parts below each other, the columns that name its rows before each; where not even
/// one more column has room beside them, each row is written as lines of its own.</remarks>
internal sealed class TextPage(int width = TextPage.Width)
{
    /// <summary>What the commands print; wider terminals show the same, narrower ones what is written for them.</summary>
    public const int Width = 80;

    /// <summary>Wide enough for a number with its unit and a word beside it.</summary>
    private const int Least = 20;

    private const int Gap = 2, LeastText = 10;
    private readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    public void Blank() => _text.Append('\n');

    /// <summary>A line as it is; on a page narrower than <see cref="Width"/> it is broken where it has no room.</summary>
    public void Line(string text)
    {
        if (IsNarrow && width < text.TrimEnd().Length)
        {
            string bare = text.TrimStart();
            int indent = Math.Min(text.Length - bare.Length, width - Least);
            Add(bare, new string(' ', indent), indent);
            return;
        }

        Put(text);
    }

    /// <summary>Text at the left and at the right end of one line; on a narrow page below each other where one has no room.</summary>
    public void Ends(string left, string right)
    {
        bool fits = left.Length + Gap + right.Length <= width;
        if (IsNarrow && !fits)
        {
            Line(left);
            Line("  " + right);
            return;
        }

        Line(fits ? left + right.PadLeft(width - left.Length) : $"{left}  {right}");
    }

    /// <param name="first">What stands before the first line; the others are indented as far, on a narrow page no further than leaves most of it.</param>
    public void Paragraph(string text, string first = "")
    {
        if (IsNarrow && width / 2 < first.Length)
        {
            // The lead is part of what is broken, and what follows stands a little further in than it.
            int begins = first.Length - first.TrimStart().Length;
            Add($"{first.Trim()} {text}", new string(' ', begins), begins + Gap);
            return;
        }

        Add(text, first, first.Length);
    }

    private bool IsNarrow => width < Width;

    private void Add(string text, string first, int indent)
    {
        string lead = first;
        foreach (string line in Wrap(text, width - Math.Max(first.Length, indent)))
        {
            Put(lead + line);
            lead = new string(' ', indent);
        }
    }

    private void Put(string line) => _text.Append(line.TrimEnd()).Append('\n');

    /// <summary>What the designs say of their own danger, at the head of a page.</summary>
    public void OwnCautions(params IEnumerable<Design> designs)
    {
        foreach (string caution in FrontEnd.Results.Cautions.Own(designs))
        {
            Paragraph(caution, "caution: ");
        }
    }

    /// <summary>What must be said wherever a design is judged, after a blank line.</summary>
    public void Cautions()
    {
        Blank();
        Line("cautions");
        foreach (string caution in FrontEnd.Results.Cautions.All)
        {
            Paragraph(caution, "  - ");
        }
    }

    public void Table(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, bool heads = true)
    {
        int keys = Keys(columns, rows, heads);
        if (HasRoom(columns, rows, heads) || columns.Count == keys)
        {
            Whole(columns, rows, heads);
            return;
        }

        // As many columns in each part as have room beside those that name the rows.
        int[] named = [.. Enumerable.Range(0, keys)];
        List<int[]> parts = [];
        for (int at = keys; at < columns.Count;)
        {
            List<int> part = [at++];
            if (!Fits([.. named, .. part]))
            {
                Stacked(columns, rows, keys);
                return;
            }

            while (at < columns.Count && Fits([.. named, .. part, at]))
            {
                part.Add(at++);
            }

            parts.Add([.. named, .. part]);
        }

        foreach (int[] part in parts)
        {
            Whole(Of(part), RowsOf(part), heads);
        }

        IReadOnlyList<Column> Of(int[] part) => [.. part.Select(at => columns[at])];

        IReadOnlyList<Row> RowsOf(int[] part) => [.. rows.Select(row => row with { Cells = [.. part.Select(at => row.Cells[at])] })];

        bool Fits(int[] part) => HasRoom(Of(part), RowsOf(part), heads);
    }

    /// <summary>How many columns name a row: the first, with a mark's before it and texts behind it.</summary>
    private static int Keys(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, bool heads)
    {
        const int Mark = 4;
        int keys = 0;
        while (heads && keys < columns.Count - 1 && columns[keys].Head.Length == 0 && rows.All(row => row.Cells[keys].Length <= Mark))
        {
            keys++;
        }

        keys++;
        while (keys < columns.Count && columns[keys - 1].IsText && columns[keys].IsText)
        {
            keys++;
        }

        return keys == columns.Count ? Math.Min(1, keys) : keys;
    }

    /// <summary>Whether all numbers have room, and on a narrow page whether the texts are broken no worse than between their words, in columns that are no
    /// narrower than <see cref="Wrap"/> breaks.</summary>
    private bool HasRoom(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, bool heads)
    {
        int[] widths = Widths(columns, rows, heads);
        return widths.Sum() + (Gap * columns.Count) <= width
            && (!IsNarrow || columns.Select((column, at) => !column.IsText || Math.Min(width / 3, Needed(at)) <= widths[at]).All(fits => fits));

        int Needed(int at) => Math.Min(Longest(rows, at), Math.Max(LeastText, LongestWord(rows, at)));
    }

    private static int LongestWord(IReadOnlyList<Row> rows, int at) =>
        rows.SelectMany(row => Pieces(row.Cells[at])).SelectMany(piece => piece.Split(Breaks)).Select(word => word.Length + 1).DefaultIfEmpty().Max();

    private static int Longest(IReadOnlyList<Row> rows, int at) => rows.Select(row => row.Cells[at].Length).DefaultIfEmpty().Max();

    /// <summary>Each row by itself: what names it, then a line a column.</summary>
    private void Stacked(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, int keys)
    {
        foreach (Row row in rows)
        {
            Paragraph(string.Join("  ", row.Cells.Take(keys).Where(cell => cell.Length > 0)), row.IsSum ? "= " : "  ");
            for (int at = keys; at < columns.Count; at++)
            {
                if (row.Cells[at].Length > 0)
                {
                    Paragraph(row.Cells[at], columns[at].Head.Length == 0 ? "    " : $"    {columns[at].Head}: ");
                }
            }
        }
    }

    private void Whole(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, bool heads)
    {
        int[] widths = Widths(columns, rows, heads);
        if (heads && columns.Any(column => column.Head.Length > 0))
        {
            Write(columns, [.. columns.Select(column => column.Head)], widths);
        }

        foreach (Row row in rows)
        {
            Write(columns, row.Cells, widths, row.IsSum ? "= " : "  ");
        }
    }

    /// <summary>Breaks at blanks, but not between a number and its unit; a word longer than the line is broken behind a hyphen or point, or
    /// where the line ends.</summary>
    public static IEnumerable<string> Wrap(string text, int width)
    {
        width = Math.Max(LeastText, width);
        StringBuilder line = new();
        foreach (string piece in Pieces(text))
        {
            string word = piece;
            if (line.Length > 0 && width < line.Length + 1 + word.Length)
            {
                yield return line.ToString();
                line.Clear();
            }

            while (width < word.Length)
            {
                int end = word.AsSpan(0, width).LastIndexOfAny(Breaks) + 1;
                end = end < width / 3 ? width : end;
                yield return word[..end].TrimEnd();
                word = word[end..];
            }

            line.Append(line.Length == 0 ? "" : " ").Append(word);
        }

        yield return line.ToString();
    }

    /// <summary>Words, a number and its unit being one.</summary>
    internal static IEnumerable<string> Pieces(string text)
    {
        string? number = null;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (number is not null)
            {
                yield return IsUnit(word) ? $"{number} {word}" : number;
                if (IsUnit(word))
                {
                    number = null;
                    continue;
                }
            }

            number = char.IsAsciiDigit(word[^1]) ? word : null;
            if (number is null)
            {
                yield return word;
            }
        }

        if (number is not null)
        {
            yield return number;
        }
    }

    internal static bool IsUnit(string word)
    {
        ReadOnlySpan<char> bare = word.AsSpan().TrimEnd(",;.):");
        return bare is "%" or "×" or "dB" or "bit" or "Hz" or "s" or "V" or "A" or "Ω" or "F" or "cm" or "cm²"
            || (2 <= bare.Length && bare.Length <= 6 && "pnµmkMGf".Contains(bare[0]) && (Units.Contains(bare[1]) || bare[1..] is "Hz"));
    }

    /// <summary>Behind these a word may be broken.</summary>
    private static readonly char[] Breaks = ['-', '.', '_', ' '];

    private const string Units = "VAΩFsTW";

    /// <summary>Numbers get the room they need; texts give way, the last column first, down to a quarter of the line and only then to a
    /// sixth.</summary>
    private int[] Widths(IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, bool heads)
    {
        int[] widths = [.. columns.Select((column, at) =>
            Math.Max(heads ? column.Head.Length : 0, rows.Count == 0 ? 0 : rows.Max(row => row.Cells[at].Length)))];
        int room = width - Gap - (Gap * (columns.Count - 1));
        foreach (int least in (ReadOnlySpan<int>)[width / 4, width / 6, width / 10])
        {
            for (int at = columns.Count - 1; 0 <= at && room < widths.Sum(); at--)
            {
                if (columns[at].IsText)
                {
                    widths[at] = Math.Min(widths[at], Math.Max(least, room - (widths.Sum() - widths[at])));
                }
            }
        }

        return widths;
    }

    private void Write(IReadOnlyList<Column> columns, IReadOnlyList<string> cells, int[] widths, string lead = "  ")
    {
        string[][] lines = [.. cells.Select((cell, at) => columns[at].IsText ? (string[])[.. Wrap(cell, widths[at])] : [cell])];
        for (int at = 0; at < lines.Max(cell => cell.Length); at++)
        {
            StringBuilder line = new(at == 0 ? lead : "  ");
            for (int column = 0; column < lines.Length; column++)
            {
                string cell = at < lines[column].Length ? lines[column][at] : "";
                line.Append(columns[column].IsText ? cell.PadRight(widths[column]) : cell.PadLeft(widths[column])).Append("  ");
            }

            Put(line.ToString());
        }
    }
}
