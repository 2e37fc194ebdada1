using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>Writes plain text of a fixed width: wrapped paragraphs and tables without ruling.</summary>
internal sealed class TextPage(int width = TextPage.Width)
{
    /// <summary>The narrowest terminal in use; wider ones show the same.</summary>
    public const int Width = 80;

    private const int Gap = 2;
    private readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    public void Blank() => _text.Append('\n');

    public void Line(string text) => _text.Append(text.TrimEnd()).Append('\n');

    /// <summary>Text at the left and at the right end of one line.</summary>
    public void Ends(string left, string right) =>
        Line(width < left.Length + Gap + right.Length ? $"{left}  {right}" : left + right.PadLeft(width - left.Length));

    /// <param name="first">What stands before the first line; the others are indented as far.</param>
    public void Paragraph(string text, string first = "")
    {
        string indent = new(' ', first.Length);
        string lead = first;
        foreach (string line in Wrap(text, width - first.Length))
        {
            Line(lead + line);
            lead = indent;
        }
    }

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
        width = Math.Max(10, width);
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
                int end = word.AsSpan(0, width).LastIndexOfAny([.. "-._ "]) + 1;
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

    private static bool IsUnit(string word)
    {
        ReadOnlySpan<char> bare = word.AsSpan().TrimEnd(",;.):");
        return bare is "%" or "×" or "dB" or "bit" or "Hz" or "s" or "V" or "A" or "Ω" or "F" or "cm" or "cm²"
            || (2 <= bare.Length && bare.Length <= 6 && "pnµmkMGf".Contains(bare[0]) && (Units.Contains(bare[1]) || bare[1..] is "Hz"));
    }

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

            Line(line.ToString());
        }
    }
}
