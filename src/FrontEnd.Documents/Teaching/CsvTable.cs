using System.Buffers;
using System.Text;
using FrontEnd.Findings;
using FrontEnd.Text;

namespace FrontEnd.Documents.Teaching;

/// <summary>Rows of a small table of comma-separated values, as spreadsheets and people write it: commas, semicolons or tabs, fields in double quotes or not.</summary>
/// <remarks>Rows that do not fit are findings and left out. The form follows RFC 4180, from memory; the separator is the one that stands in the first row.</remarks>
internal static class CsvTable
{
    private static readonly char[] Separators = [',', ';', '\t'];
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\";\n\r\t");

    /// <summary>The wanted columns of every row, by the names in the first row, in any order and case; null with a finding where the table cannot be used.</summary>
    public static List<(string[] Fields, int Line)>? Read(string text, string path, string[] columns, List<Finding> findings)
    {
        string first = text.Split('\n', 2)[0];
        char separator = Separators.MaxBy(one => first.Count(letter => letter == one));
        List<(List<string> Fields, int Line)> rows = Split(text, separator, path, findings);
        if (rows.Count == 0)
        {
            findings.Add(Messages.EmptyTable(path));
            return null;
        }

        string[] names = [.. rows[0].Fields.Select(name => name.Trim().ToLowerInvariant())];
        int[] places = [.. columns.Select(column => Array.IndexOf(names, column))];
        if (Array.IndexOf(places, -1) is var missing and >= 0)
        {
            findings.Add(Messages.NoColumn(path, columns[missing], columns));
            return null;
        }

        List<(string[], int)> read = [];
        foreach ((List<string> fields, int line) in rows.Skip(1))
        {
            if (fields.Count == names.Length)
            {
                read.Add(([.. places.Select(place => fields[place].Trim())], line));
            }
            else
            {
                findings.Add(Messages.FieldCount(path, line, fields.Count, names.Length));
            }
        }

        return read;
    }

    /// <summary>A field as it is written: in quotes where it must be. A text that a spreadsheet would take for a formula gets an apostrophe in front.</summary>
    public static string Field(string text)
    {
        bool formula = text.Length > 0 && (text[0] is '=' or '@' or '\t' or '\r' || (text[0] is '+' or '-' && (text.Length == 1 || !(char.IsAsciiDigit(text[1]) || text[1] == '.'))));
        string plain = formula ? "'" + text : text;
        return !plain.AsSpan().ContainsAny(Quoted) ? plain : $"\"{plain.Replace("\"", "\"\"")}\"";
    }

    private static List<(List<string> Fields, int Line)> Split(string text, char separator, string path, List<Finding> findings)
    {
        List<(List<string>, int)> rows = [];
        List<string> row = [];
        StringBuilder field = new();
        (int line, int rowLine) = (1, 1);
        bool quoted = false;
        for (int at = 0; at < text.Length; at++)
        {
            char letter = text[at];
            line += letter == '\n' ? 1 : 0;
            if (quoted)
            {
                if (letter != '"')
                {
                    field.Append(letter);
                }
                else if (at + 1 < text.Length && text[at + 1] == '"')
                {
                    field.Append('"');
                    at++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (letter == '"' && string.IsNullOrWhiteSpace(field.ToString()))
            {
                field.Clear();
                quoted = true;
            }
            else if (letter == separator)
            {
                row.Add(field.ToString());
                field.Clear();
            }
            else if (letter == '\n')
            {
                End();
            }
            else if (letter != '\r')
            {
                field.Append(letter);
            }
        }

        if (quoted)
        {
            findings.Add(Messages.OpenQuote(path, rowLine));
        }
        else
        {
            End();
        }

        return rows;

        void End()
        {
            row.Add(field.ToString());
            field.Clear();
            if (row.Count > 1 || !string.IsNullOrWhiteSpace(row[0]))
            {
                rows.Add((row, rowLine));
            }

            row = [];
            rowLine = line;
        }
    }
}
