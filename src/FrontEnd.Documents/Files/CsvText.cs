using System.Buffers;
using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Comma-separated values as spreadsheets, recorders and people write them: the one reader and the one writer.</summary>
/// <remarks>The form follows RFC 4180, from memory; semicolons and tabs separate too, whichever stands in the first row.</remarks>
internal static class CsvText
{
    private static readonly char[] Separators = [';', '\t', ','];
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\";\n\r\t");

    /// <summary>The rows of a table, blank ones left out.</summary>
    /// <param name="remarks">True where a line that begins with <c>#</c> is a remark and no row.</param>
    public static IEnumerable<CsvRow> Rows(string text, bool remarks = false)
    {
        char separator = '\0';
        int line = 0, at = text.StartsWith('\uFEFF') ? 1 : 0;
        while (at < text.Length)
        {
            int first = ++line;
            string row = NextLine(text, ref at);
            if (string.IsNullOrWhiteSpace(row))
            {
                continue;
            }

            if (remarks && row.AsSpan().TrimStart()[0] == '#')
            {
                yield return new CsvRow([], first) { Remark = row.Trim()[1..].Trim() };
                continue;
            }

            separator = separator == '\0' ? SeparatorOf(row) : separator;
            if (!row.Contains('"'))
            {
                yield return new CsvRow(row.Split(separator), first) { Separator = separator };
                continue;
            }

            Splitter splitter = new(separator);
            splitter.Take(row);
            for (; splitter.IsOpen && at < text.Length; line++)
            {
                splitter.Take("\n");
                splitter.Take(NextLine(text, ref at));
            }

            yield return new CsvRow(splitter.Cells(), first) { IsOpen = splitter.IsOpen, Separator = separator };
        }
    }

    /// <summary>A cell as it is written: in quotes where it must be. A text that a spreadsheet would take for a formula gets an apostrophe
    /// in front, as names come from files that anyone may have written.</summary>
    public static string Cell(string text)
    {
        string safe = IsFormula(text) ? "'" + text : text;
        return safe.AsSpan().ContainsAny(Quoted) ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }

    /// <summary>Adds a row.</summary>
    public static StringBuilder Row(this StringBuilder text, string end, params IEnumerable<string> cells) =>
        text.AppendJoin(',', cells.Select(Cell)).Append(end);

    /// <summary>A signed number, with its unit or not, is none.</summary>
    private static bool IsFormula(string text) => text switch
    {
        ['=' or '@' or '\t' or '\r', ..] => true,
        ['+' or '-', (>= '0' and <= '9') or '.', ..] => text.AsSpan().ContainsAny("=|!("),
        ['+' or '-', ..] => true,
        _ => false,
    };

    private static char SeparatorOf(string row)
    {
        // What stands in quotes separates nothing: every second piece does.
        string bare = string.Concat(row.Split('"').Where((_, at) => at % 2 == 0));
        return Array.Find(Separators, bare.Contains) is var found and not '\0' ? found : ',';
    }

    private static string NextLine(string text, ref int at)
    {
        int end = text.IndexOf('\n', at);
        string line = end < 0 ? text[at..] : text[at..end];
        at = end < 0 ? text.Length : end + 1;
        return line.TrimEnd('\r');
    }

    /// <summary>Cells of a row in which there are quotes; a quoted cell may go on in the next line.</summary>
    private sealed class Splitter(char separator)
    {
        private readonly List<string> _cells = [];
        private readonly StringBuilder _cell = new();

        /// <summary>True inside quotes.</summary>
        public bool IsOpen { get; private set; }

        public void Take(string text)
        {
            for (int at = 0; at < text.Length; at++)
            {
                char letter = text[at];
                if (IsOpen && letter == '"' && at + 1 < text.Length && text[at + 1] == '"')
                {
                    _cell.Append('"');
                    at++;
                }
                else if (letter == '"' && (IsOpen || string.IsNullOrWhiteSpace(_cell.ToString())))
                {
                    _ = IsOpen ? _cell : _cell.Clear();
                    IsOpen = !IsOpen;
                }
                else if (letter == separator && !IsOpen)
                {
                    _cells.Add(_cell.ToString());
                    _cell.Clear();
                }
                else
                {
                    _cell.Append(letter);
                }
            }
        }

        public IReadOnlyList<string> Cells() => [.. _cells, _cell.ToString()];
    }
}

/// <summary>A row of a table.</summary>
/// <param name="Cells">As written, without quotes; blanks around them are kept.</param>
/// <param name="Line">Line of the file where it begins, from 1.</param>
internal readonly record struct CsvRow(IReadOnlyList<string> Cells, int Line)
{
    /// <summary>The text of a remark, without its sign; null for a row.</summary>
    public string? Remark { get; init; }

    /// <summary>What separates the cells; a comma where there is but one.</summary>
    public char Separator { get; init; }

    /// <summary>True where a quotation never ends.</summary>
    public bool IsOpen { get; init; }
}
