using System.Globalization;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Cards;

/// <summary>A column that is wanted.</summary>
/// <param name="IsAboveZero">True where no value of it is 0 or less.</param>
/// <param name="Parts">Pieces of names that mean it.</param>
/// <param name="Names">Whole names that do.</param>
internal sealed record PointColumn(string Name, QuantityKind Kind, bool IsAboveZero, IReadOnlyList<string> Parts, IReadOnlyList<string> Names)
{
    /// <summary>True where a heading means this column: by its name, in lower case and without its unit, or by a unit of the column's kind alone.</summary>
    public bool IsMeantBy(string name, bool isUnitAlone) =>
        isUnitAlone || Parts.Any(part => name.Contains(part, StringComparison.Ordinal)) || Names.Contains(name.TrimStart('-', '−'), StringComparer.Ordinal);
}

/// <summary>Points as numbers in SI units, in the order of the columns that are wanted.</summary>
/// <param name="HasUnit">True for a column whose numbers have a unit, their own or the column's.</param>
internal sealed record PointTable(IReadOnlyList<double[]> Rows, IReadOnlyList<bool> HasUnit, IReadOnlyList<Finding> Findings)
{
    /// <summary>Where a column stands, what a bare number in it is multiplied by, and its unit's factor if one was named.</summary>
    private readonly record struct Found(int At, double Sign, double? Factor);

    /// <summary>No frequency, impedance or density is smaller or larger, in SI units.</summary>
    private const double Tiny = 1e-18, Huge = 1e15;

    public static PointTable Read(string path, IReadOnlyList<PointColumn> columns, int least)
    {
        if (TableText.Read(path, out Finding? unread) is not { } text)
        {
            return new([], [], [unread!]);
        }

        CsvReader reader = new(new StringReader(text), remarks: true);
        List<Finding> findings = [];
        List<double[]> rows = [];
        bool[] hasUnit = [.. columns.Select(_ => true)];
        Found[]? found = null;
        int width = 0;
        while (reader.Next() && rows.Count <= PointsFile.Most)
        {
            if (reader.IsRemark)
            {
                continue;
            }

            string[] cells = [.. reader.Cells().Select(cell => cell.Trim())];
            if (found is null)
            {
                width = cells.Length;
                bool isHead = !Array.Exists(cells, cell => TryNumber(cell, reader.Separator, columns[0].Kind, out _, out _));
                found = isHead ? Heads(path, reader.Line, cells, columns, findings) : [.. columns.Select((_, at) => new Found(at, 1, null))];
                if (found is null)
                {
                    break;
                }

                if (isHead)
                {
                    continue;
                }
            }

            if (cells.Length < columns.Count || cells.Length != width)
            {
                findings.Add(CardMessages.Cells(path, reader.Line, cells.Length, Math.Max(width, columns.Count)));
                continue;
            }

            if (Row(path, reader, cells, columns, found, hasUnit, findings) is { } row)
            {
                rows.Add(row);
            }
        }

        if (findings.Count == 0 && PointsFile.Most < rows.Count)
        {
            findings.Add(CardMessages.Many(path, PointsFile.Most));
        }
        else if (findings.Count == 0 && (rows.Count < least || rows.TrueForAll(row => row[0] == rows[0][0])))
        {
            findings.Add(CardMessages.Few(path, rows.Count, least));
        }

        return new(rows, hasUnit, findings);
    }

    private static double[]? Row(string path, CsvReader reader, string[] cells, IReadOnlyList<PointColumn> columns, Found[] found, bool[] hasUnit, List<Finding> findings)
    {
        double[] row = new double[columns.Count];
        for (int at = 0; at < row.Length; at++)
        {
            string cell = cells[found[at].At];
            if (!TryNumber(cell, reader.Separator, columns[at].Kind, out double number, out bool own))
            {
                findings.Add(CardMessages.NoNumber(path, reader.Line, columns[at].Name, cell));
                return null;
            }

            hasUnit[at] &= own || found[at].Factor is not null;
            row[at] = found[at].Sign * (own ? number : number * (found[at].Factor ?? 1));
            if (columns[at].IsAboveZero && !(0 < row[at]))
            {
                findings.Add(CardMessages.Cell(path, reader.Line, columns[at].Name, cell, "is not above 0"));
                return null;
            }

            if (row[at] != 0 && Math.Abs(row[at]) is not (> Tiny and < Huge))
            {
                findings.Add(CardMessages.Cell(path, reader.Line, columns[at].Name, cell, "is beyond anything that can be measured"));
                return null;
            }
        }

        return row;
    }

    /// <summary>A number as it stands, or a quantity of the column's kind in its SI unit.</summary>
    private static bool TryNumber(string cell, char separator, QuantityKind kind, out double number, out bool hasUnit)
    {
        hasUnit = false;
        string plain = separator != ',' && !cell.Contains('.', StringComparison.Ordinal) ? cell.Replace(',', '.') : cell;
        if (double.TryParse(plain.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out number))
        {
            return double.IsFinite(number);
        }

        hasUnit = QuantityText.TryParse(kind, plain, out IQuantity? quantity, out _);
        number = quantity?.SiValue ?? 0;
        return hasUnit;
    }

    /// <summary>Where the columns stand by their headings; by their order where there are as many as are wanted and no heading says otherwise.</summary>
    private static Found[]? Heads(string path, int line, string[] heads, IReadOnlyList<PointColumn> columns, List<Finding> findings)
    {
        int?[] places = new int?[columns.Count];
        // The last first: "phase of the impedance" is a phase.
        for (int at = columns.Count - 1; 0 <= at; at--)
        {
            int place = Enumerable.Range(0, heads.Length).Where(index => !places.Contains(index)).Cast<int?>().FirstOrDefault(index =>
                Split(heads[index!.Value], columns[at].Kind) is var (name, factor) && columns[at].IsMeantBy(name, factor is not null && name.Length == 0)) ?? -1;
            places[at] = place < 0 ? null : place;
        }

        bool byOrder = heads.Length == columns.Count && places.Select((place, at) => place is null || place == at).All(one => one);
        for (int at = 0; at < columns.Count; at++)
        {
            places[at] ??= byOrder ? at : null;
            if (places[at] is null)
            {
                findings.Add(CardMessages.NoColumn(path, line, columns[at].Name, columns.Select(column => column.Name)));
            }
        }

        return findings.Count != 0 ? null : [.. columns.Select((column, at) =>
        {
            string head = heads[places[at]!.Value];
            return new Found(places[at]!.Value, !column.IsAboveZero && head is ['-' or '−', ..] ? -1 : 1, Split(head, column.Kind).Factor);
        })];
    }

    /// <summary>A heading's name in lower case, "" where it is a unit alone, and the factor of the unit behind it: "f [kHz]", "density_nV/√Hz", "phase (deg)",
    /// "Hz".</summary>
    private static (string Name, double? Factor) Split(string head, QuantityKind kind)
    {
        for (int at = 0; at < head.Length; at++)
        {
            bool isStart = at == 0 || head[at - 1] is ' ' or '_' or '/' or '(' or '[' or ',' or ':';
            if (!isStart)
            {
                continue;
            }

            string unit = head[at..].Trim(' ', '[', ']');
            unit = unit.EndsWith(')') && unit.Count(letter => letter == ')') != unit.Count(letter => letter == '(') ? unit[..^1] : unit;
            foreach (string spelling in new[] { unit, unit.Replace("hz", "Hz", StringComparison.OrdinalIgnoreCase), unit.ToLowerInvariant() })
            {
                if (0 < unit.Length && char.IsAsciiDigit(unit[0]) is false && QuantityText.TryParse(kind, "1 " + spelling, out IQuantity? one, out _))
                {
                    string name = head[..at].Trim(' ', '_', '/', '(', '[', ',', ':').ToLowerInvariant();
                    return (name, one!.SiValue);
                }
            }
        }

        return (head.Trim().ToLowerInvariant(), null);
    }
}
