using FrontEnd.Documents.Files;
using FrontEnd.Findings;
using FrontEnd.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>A small table whose first row names its columns. Rows that do not fit are findings and left out.</summary>
internal static class CsvTable
{
    /// <summary>The wanted columns of every row, by the names in the first row, in any order and case; null with a finding where the table
    /// cannot be used.</summary>
    public static List<(string[] Fields, int Line)>? Read(string text, string path, string[] columns, List<Finding> findings)
    {
        CsvRow[] rows = [.. CsvText.Rows(text)];
        if (rows is [.., { IsOpen: true } open])
        {
            findings.Add(Messages.OpenQuote(path, open.Line));
            rows = rows[..^1];
        }

        if (rows.Length == 0)
        {
            findings.Add(Messages.EmptyTable(path));
            return null;
        }

        string[] names = [.. rows[0].Cells.Select(name => name.Trim().ToLowerInvariant())];
        int[] places = [.. columns.Select(column => Array.IndexOf(names, column))];
        if (Array.IndexOf(places, -1) is var missing and >= 0)
        {
            findings.Add(Messages.NoColumn(path, columns[missing], columns));
            return null;
        }

        List<(string[], int)> read = [];
        foreach (CsvRow row in rows.Skip(1))
        {
            if (row.Cells.Count == names.Length)
            {
                read.Add(([.. places.Select(place => row.Cells[place].Trim())], row.Line));
            }
            else
            {
                findings.Add(Messages.FieldCount(path, row.Line, row.Cells.Count, names.Length));
            }
        }

        return read;
    }
}
