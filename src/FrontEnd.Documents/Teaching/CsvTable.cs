using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Teaching;

/// <summary>A small table whose first row names its columns. Rows that do not fit are findings and left out.</summary>
internal static class CsvTable
{
    /// <summary>The wanted columns of every row, by the names in the first row, in any order and case; null with a finding where the table
    /// cannot be used.</summary>
    /// <param name="optional">Columns that may be missing, behind the wanted ones in the fields; "" where they are.</param>
    /// <remarks>What stands beyond the last column belongs to it: a decimal comma divides an answer.</remarks>
    public static List<(string[] Fields, int Line)>? Read(string text, string path, string[] columns, List<Finding> findings,
        params string[] optional)
    {
        CsvReader reader = new(new StringReader(text), remarks: false);
        if (!reader.Next() || reader.IsOpen)
        {
            findings.Add(reader.IsOpen ? Messages.OpenQuote(path, reader.Line) : Messages.EmptyTable(path));
            return null;
        }

        string[] names = [.. reader.Cells().Select(name => name.Trim().ToLowerInvariant())];
        int named = names.Length;
        while (0 < named && names[named - 1].Length == 0)
        {
            named--;
        }

        names = names[..named];
        int[] places = [.. columns.Select(column => Array.IndexOf(names, column)), .. optional.Select(column => Array.IndexOf(names, column))];
        if (Array.IndexOf(places[..columns.Length], -1) is var missing and >= 0)
        {
            findings.Add(Messages.NoColumn(path, columns[missing], columns));
            return null;
        }

        List<(string[], int)> read = [];
        while (reader.Next())
        {
            string[] cells = Fitted(reader.Cells(), names.Length, reader.Separator, isLastWanted: places.Contains(names.Length - 1));
            if (reader.IsOpen)
            {
                findings.Add(Messages.OpenQuote(path, reader.Line));
            }
            else if (cells.All(cell => cell.Trim().Length == 0))
            {
                // Spreadsheets end a table with rows of nothing.
            }
            else if (cells.Length == names.Length)
            {
                read.Add(([.. places.Select(place => place < 0 ? "" : cells[place].Trim())], reader.Line));
            }
            else
            {
                findings.Add(Messages.FieldCount(path, reader.Line, cells.Length, names.Length));
            }
        }

        return read;
    }

    /// <summary>The cells without empty ones beyond the last column, and with what else stands there put to it.</summary>
    private static string[] Fitted(string[] cells, int columns, char separator, bool isLastWanted)
    {
        int end = cells.Length;
        while (columns < end && cells[end - 1].Trim().Length == 0)
        {
            end--;
        }

        return columns < end && isLastWanted && columns > 1
            ? [.. cells[..(columns - 1)], string.Join(separator, cells[(columns - 1)..end])]
            : cells[..end];
    }
}
