using System.Buffers;
using System.Text;

namespace FrontEnd.Documents.Files;

/// <summary>Comma-separated values as spreadsheets, recorders and people write them: the one reader and the one writer.</summary>
/// <remarks>The form follows RFC 4180, from memory; semicolons and tabs separate too, whichever stands in the first row,
/// or what a line <c>sep=;</c> in front of it says.</remarks>
internal static class CsvText
{
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\";\n\r\t");

    /// <summary>The rows of a table, blank ones left out.</summary>
    /// <param name="remarks">True where a line that begins with <c>#</c> is a remark and no row.</param>
    public static IEnumerable<CsvRow> Rows(string text, bool remarks = false)
    {
        CsvReader reader = new(new StringReader(text), remarks);
        while (reader.Next())
        {
            string[] cells = reader.Cells();
            yield return reader.IsRemark
                ? new CsvRow([], reader.Line) { Remark = cells[0] }
                : new CsvRow(cells, reader.Line) { IsOpen = reader.IsOpen };
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
}

/// <summary>A row of a table.</summary>
/// <param name="Cells">As written, without quotes; blanks around them are kept.</param>
/// <param name="Line">Line of the file where it begins, from 1.</param>
internal readonly record struct CsvRow(IReadOnlyList<string> Cells, int Line)
{
    /// <summary>The text of a remark, without its sign; null for a row.</summary>
    public string? Remark { get; init; }

    /// <summary>True where a quotation never ends.</summary>
    public bool IsOpen { get; init; }
}
