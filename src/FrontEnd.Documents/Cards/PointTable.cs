using System.Globalization;
using System.Text.RegularExpressions;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Cards;

/// <summary>Points as numbers in SI units, in the order of the columns that are wanted.</summary>
/// <param name="Form">Which of the forms the columns have.</param>
/// <param name="HasUnit">True for a column whose numbers have a unit, their own or the column's.</param>
internal sealed record PointTable(int Form, IReadOnlyList<double[]> Rows, IReadOnlyList<bool> HasUnit, IReadOnlyList<Finding> Findings)
{
    /// <summary>Reads a table; lines before the one that names the columns are passed over.</summary>
    /// <param name="forms">Sets of columns that will do; the first where no heading tells.</param>
    /// <param name="least">Points that are needed.</param>
    public static PointTable Read(string path, IReadOnlyList<IReadOnlyList<PointColumn>> forms, int least) =>
        TableText.Read(path, out Finding? unread) is { } text ? new PointReading(path, forms).Read(text, least) : new(0, [], [], [unread!]);
}

/// <summary>A table of points while it is read.</summary>
internal sealed partial class PointReading(string path, IReadOnlyList<IReadOnlyList<PointColumn>> forms)
{
    /// <summary>No frequency, impedance or density is smaller or larger, in SI units.</summary>
    private const double Tiny = 1e-18, Huge = 1e15;

    private readonly List<Finding> _findings = [];

    /// <summary>What is wrong with lines before the headings, which may be anything, until it is known that there are none.</summary>
    private readonly List<Finding> _before = [];
    private readonly List<double[]> _rows = [];
    private IReadOnlyList<PointColumn> _columns = forms[0];
    private PointPlace[]? _places;
    private PointHeads? _heads;
    private bool[] _hasUnit = [];
    private int _form, _width;
    private bool _isByRemark;

    public PointTable Read(string text, int least)
    {
        char separator = SeparatorOf(text);
        CsvReader reader = new(new StringReader(separator == ' ' ? Tabbed(text) : text), remarks: true) { Separator = separator == ' ' ? '\t' : separator };
        while (reader.Next() && _rows.Count <= PointsFile.Most)
        {
            string[] cells = [.. reader.Cells().Select(cell => cell.Trim())];
            if (reader.IsRemark || cells[0].StartsWith('%'))
            {
                Remark(reader, cells);
                continue;
            }

            bool isPoint = (_places is not null && !(_isByRemark && _rows.Count == 0 && IsHead(reader, cells))) || Begins(reader, cells);
            if (_findings.Count != 0 && _places is null)
            {
                break;
            }

            if (isPoint && Row(reader, cells) is { } row)
            {
                _rows.Add(row);
            }
        }

        _findings.AddRange(_places is null && _findings.Count == 0 ? _before : []);
        if (_findings.Count == 0 && PointsFile.Most < _rows.Count)
        {
            _findings.Add(CardMessages.Many(path, PointsFile.Most));
        }
        else if (_findings.Count == 0 && (_rows.Count < least || _rows.TrueForAll(row => row[0] == _rows[0][0])))
        {
            _findings.Add(CardMessages.Few(path, _rows.Count, least));
        }

        return new(_form, _rows, _hasUnit, _findings);
    }

    /// <summary>True for the first point: the line before it names the columns, unless an earlier one does. What stands before that belongs to no
    /// table.</summary>
    private bool Begins(CsvReader reader, string[] cells)
    {
        if (IsHead(reader, cells))
        {
            _heads = new PointHeads(path, reader.Line, cells);
            Named(_heads);
            return false;
        }

        if (cells.Length < forms[0].Count && _heads?.Heads.Length == cells.Length && _heads.NamesAny(forms[0]))
        {
            _heads.Places(forms[0], _findings);
            return false;
        }

        int wrong = cells.Length < forms[0].Count ? -1 : Enumerable.Range(0, forms[0].Count).FirstOrDefault(at => !IsNumber(cells[at], forms[0][at]), -1);
        if (cells.Length < forms[0].Count || 0 <= wrong)
        {
            _before.Add(wrong < 0 ? CardMessages.Cells(path, reader.Line, cells.Length, forms[0].Count) : CardMessages.NoNumber(path, reader.Line, forms[0][wrong].Name, cells[wrong]));
            return false;
        }

        _findings.AddRange(_before);
        Begin(0, cells.Length, _heads is null ? [.. forms[0].Select((_, at) => new PointPlace(at, 1, null))] : _heads.Places(forms[0], _findings));
        return _places is not null;

        bool IsNumber(string cell, PointColumn column) => TryNumber(cell, reader.Separator, column.Kind, null, out _, out _);
    }

    /// <summary>True for a line without any number.</summary>
    private bool IsHead(CsvReader reader, string[] cells) => !Array.Exists(cells, cell => TryNumber(cell, reader.Separator, forms[0][0].Kind, null, out _, out _));

    /// <summary>A line that begins with # or % names the columns where it has all their names, as programs write it that have no other way.</summary>
    private void Remark(CsvReader reader, string[] cells)
    {
        if (_rows.Count == 0 && (_places is null || _isByRemark))
        {
            string[] words = reader.IsRemark ? [.. cells[0].Split(reader.Separator == '\0' ? ',' : reader.Separator).Select(cell => cell.Trim())]
                : cells is ["%", ..] ? cells[1..] : [cells[0][1..].Trim(), .. cells[1..]];
            _isByRemark = Named(new PointHeads(path, reader.Line, words));
        }
    }

    /// <summary>Begins the table where every column is named by a heading of its own.</summary>
    private bool Named(PointHeads heads)
    {
        int form = Enumerable.Range(0, forms.Count).FirstOrDefault(at => heads.Name(forms[at]), -1);
        if (0 <= form)
        {
            _before.Clear();
            Begin(form, heads.Heads.Length, heads.Places(forms[form], _findings));
        }

        return 0 <= form;
    }

    private void Begin(int form, int width, PointPlace[]? places)
    {
        (_form, _columns, _width, _places) = (form, forms[form], width, places);
        _hasUnit = [.. _columns.Select(_ => true)];
    }

    private double[]? Row(CsvReader reader, string[] cells)
    {
        if (cells.Length < _columns.Count || cells.Length != _width)
        {
            _findings.Add(CardMessages.Cells(path, reader.Line, cells.Length, Math.Max(_width, _columns.Count)));
            return null;
        }

        double[] row = new double[_columns.Count];
        for (int at = 0; at < row.Length; at++)
        {
            PointPlace place = _places![at];
            string cell = cells[place.At];
            if (!TryNumber(cell, reader.Separator, _columns[at].Kind, place.Factor, out double number, out bool own))
            {
                _findings.Add(CardMessages.NoNumber(path, reader.Line, _columns[at].Name, cell));
                return null;
            }

            _hasUnit[at] &= own || place.Factor is not null;
            row[at] = place.Sign * (own ? number : number * (place.Factor ?? 1));
            if (_columns[at].IsAboveZero && !(0 < row[at]))
            {
                _findings.Add(CardMessages.Cell(path, reader.Line, _columns[at].Name, cell, "is not above 0"));
                return null;
            }

            if (row[at] != 0 && Math.Abs(row[at]) is not (> Tiny and < Huge))
            {
                _findings.Add(CardMessages.Cell(path, reader.Line, _columns[at].Name, cell, "is beyond anything that can be measured"));
                return null;
            }
        }

        return row;
    }

    /// <summary>A number as it stands, or a quantity of the column's kind in its SI unit; with a prefix alone, 4.7k, where the column names no
    /// unit.</summary>
    private static bool TryNumber(string cell, char separator, QuantityKind kind, double? factor, out double number, out bool hasUnit)
    {
        hasUnit = false;
        string plain = separator != ',' && !cell.Contains('.', StringComparison.Ordinal) ? cell.Replace(',', '.') : cell;
        if (double.TryParse(plain.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out number))
        {
            return double.IsFinite(number);
        }

        hasUnit = QuantityText.IsRead(kind, plain, out IQuantity? quantity)
            || (factor is null && plain is [.., >= 'A' and <= 'z' or 'µ'] && char.IsAsciiDigit(plain[0]) && QuantityText.IsRead(kind, plain + kind.SiUnit, out quantity));
        number = quantity?.SiValue ?? 0;
        return hasUnit;
    }

    /// <summary>What separates the columns, by the last line that begins as a number does: remarks and titles may hold anything. A blank where nothing
    /// else does.</summary>
    private static char SeparatorOf(string text)
    {
        string[] lines = [.. text.Split('\n').Select(line => line.Trim(' ', '\r')).Where(line => line is [not ('#' or '%'), ..])];
        if (lines.FirstOrDefault(line => line.Length != 0)?.TrimStart('"').StartsWith("sep=", StringComparison.OrdinalIgnoreCase) is true)
        {
            return '\0';
        }

        string? point = Array.FindLast(lines, line => char.IsAsciiDigit(line[0]) || line[0] is '.' or '+' or '-' or '−' or '"');
        // Nothing in quotes separates.
        string bare = string.Concat((point ?? "").Split('"').Where((_, at) => at % 2 == 0));
        return CsvReader.Separators.FirstOrDefault(bare.Contains) is not '\0' and var found ? found : Blanks().IsMatch(bare.Trim()) ? ' ' : '\0';
    }

    /// <summary>The text with a tab for the blanks between columns; a unit in brackets stays with its name.</summary>
    private static string Tabbed(string text) => string.Join('\n', text.Split('\n').Select(line => Blanks().Replace(line.Trim(), "\t")));

    [GeneratedRegex(@"[ \t]+(?![\[(])", RegexOptions.None, 5000)]
    private static partial Regex Blanks();
}
