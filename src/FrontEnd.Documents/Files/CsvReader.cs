namespace FrontEnd.Documents.Files;

/// <summary>Reads a table of any length row by row; see <see cref="CsvText"/>. It holds one row, and makes no texts of the cells.</summary>
/// <param name="text">The table, from its beginning.</param>
/// <param name="remarks">True where a line that begins with <c>#</c> is a remark and no row.</param>
/// <param name="longest">Most letters of a row; a longer one ends the reading.</param>
internal sealed class CsvReader(TextReader text, bool remarks, int longest = int.MaxValue)
{
    /// <summary>What may separate cells, the likeliest first.</summary>
    public static IReadOnlyList<char> Separators { get; } = [';', '\t', ','];

    /// <summary>What was read and is not taken: from <c>_from</c> up to <c>_to</c>.</summary>
    private char[] _letters = new char[16 * 1024];
    private int _from, _to, _lines;
    private bool _isBegun;

    /// <summary>Cells of a row with quotes, one behind the other.</summary>
    private char[] _bare = [];
    private int _bareLength, _cellFrom;

    /// <summary>The row's cells, by where they stand in <c>_row</c>.</summary>
    private (int From, int Length)[] _cells = new (int, int)[16];
    private char[] _row = [];

    /// <summary>Cells of the row.</summary>
    public int Count { get; private set; }

    /// <summary>A cell as written, without quotes; blanks around it are kept. It lasts until the next row is read.</summary>
    public ReadOnlySpan<char> this[int at] => _row.AsSpan(_cells[at].From, _cells[at].Length);

    /// <summary>Line where the row begins, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>True for a remark, whose one cell is its text without its sign.</summary>
    public bool IsRemark { get; private set; }

    /// <summary>What separates the cells, the same in every row: what the first row shows unless it is said, a comma where there is but one.</summary>
    public char Separator { get; set; }

    /// <summary>True where a quotation never ends.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>True where the reading ended at a row of more letters than a row may have.</summary>
    public bool IsTooLong { get; private set; }

    /// <summary>The cells as texts.</summary>
    public string[] Cells()
    {
        var cells = new string[Count];
        for (int at = 0; at < cells.Length; at++)
        {
            cells[at] = this[at].ToString();
        }

        return cells;
    }

    /// <summary>Goes on to the next row or remark, blank ones left out; false at the end.</summary>
    public bool Next()
    {
        while (TryLine(out int from, out int length))
        {
            ReadOnlySpan<char> line = _letters.AsSpan(from, length);
            if (line.IsWhiteSpace())
            {
                continue;
            }

            (Count, Line, IsRemark, IsOpen) = (0, _lines, false, false);
            if (remarks && line.TrimStart()[0] == '#')
            {
                ReadOnlySpan<char> remark = line.Trim()[1..].Trim();
                IsRemark = true;
                remark.CopyTo(_row = new char[remark.Length]);
                Add(0, remark.Length);
                return true;
            }

            if (Separator == '\0' && SaysSeparator(line, out char said))
            {
                Separator = said;
                continue;
            }

            Separator = Separator == '\0' ? SeparatorOf(line.ToString()) : Separator;
            if (line.Contains('"'))
            {
                return Unquote(from, length);
            }

            _row = _letters;
            for (int end; 0 <= (end = line.IndexOf(Separator)); line = line[(end + 1)..])
            {
                Add(from, end);
                from += end + 1;
            }

            Add(from, line.Length);
            return true;
        }

        Line = IsTooLong ? _lines + 1 : Line;
        return false;
    }

    /// <summary>A line that spreadsheets write and read for this and nothing else, and show to nobody: sep=;</summary>
    private static bool SaysSeparator(ReadOnlySpan<char> line, out char separator)
    {
        ReadOnlySpan<char> plain = line.Trim(['"', ' ', '\r']);
        bool isSaid = plain.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && 5 <= plain.Length;
        separator = isSaid ? plain[4] : '\0';
        return isSaid && plain[4..].TrimEnd(",;\t") is "" or [_];
    }

    private static char SeparatorOf(string row)
    {
        // What stands in quotes separates nothing: every second piece does.
        string bare = string.Concat(row.Split('"').Where((_, at) => at % 2 == 0));
        return Separators.FirstOrDefault(bare.Contains) is var found and not '\0' ? found : ',';
    }

    /// <summary>The next line without its end, where it stands among the letters that were read.</summary>
    private bool TryLine(out int from, out int length)
    {
        for (int searched = 0; ;)
        {
            int end = _letters.AsSpan(_from + searched, _to - _from - searched).IndexOf('\n');
            (from, length) = (_from, end < 0 ? _to - _from : searched + end);
            if (longest < length)
            {
                IsTooLong = true;
                return false;
            }

            searched = length;
            if (0 <= end || !Fill())
            {
                bool isLine = 0 <= end || 0 < length;
                (from, _from) = (_from, Math.Min(_to, _from + length + 1));
                length = _letters.AsSpan(from, length).TrimEnd('\r').Length;
                _lines += isLine ? 1 : 0;
                return isLine;
            }
        }
    }

    /// <summary>Reads on behind what is not taken; false at the end.</summary>
    private bool Fill()
    {
        _letters.AsSpan(_from, _to - _from).CopyTo(_letters);
        (_from, _to) = (0, _to - _from);
        if (_to == _letters.Length)
        {
            Array.Resize(ref _letters, 2 * _letters.Length);
        }

        int read = text.Read(_letters, _to, _letters.Length - _to);
        if (!_isBegun && 0 < read)
        {
            _isBegun = true;
            _from = _letters[0] == '\uFEFF' ? 1 : 0;
        }

        _to += read;
        return 0 < read;
    }

    private void Add(int from, int length)
    {
        if (Count == _cells.Length)
        {
            Array.Resize(ref _cells, 2 * Count);
        }

        _cells[Count++] = (from, length);
    }

    /// <summary>Cells of a row in which there are quotes; a quoted cell may go on in the next line. False for one that is too long.</summary>
    private bool Unquote(int from, int length)
    {
        (_bareLength, _cellFrom) = (0, 0);
        Take(_letters.AsSpan(from, length));
        while (IsOpen && TryLine(out from, out length))
        {
            Take(['\n']);
            Take(_letters.AsSpan(from, length));
            IsTooLong = longest < _bareLength;
            if (IsTooLong)
            {
                break;
            }
        }

        Add(_cellFrom, _bareLength - _cellFrom);
        _row = _bare;
        return !IsTooLong;
    }

    private void Take(ReadOnlySpan<char> line)
    {
        if (_bare.Length < _bareLength + line.Length)
        {
            Array.Resize(ref _bare, 2 * (_bareLength + line.Length));
        }

        for (int at = 0; at < line.Length; at++)
        {
            char letter = line[at];
            if (IsOpen && letter == '"' && at + 1 < line.Length && line[at + 1] == '"')
            {
                _bare[_bareLength++] = '"';
                at++;
            }
            else if (letter == '"' && (IsOpen || _bare.AsSpan(_cellFrom, _bareLength - _cellFrom).IsWhiteSpace()))
            {
                _bareLength = IsOpen ? _bareLength : _cellFrom;
                IsOpen = !IsOpen;
            }
            else if (letter == Separator && !IsOpen)
            {
                Add(_cellFrom, _bareLength - _cellFrom);
                _cellFrom = _bareLength;
            }
            else
            {
                _bare[_bareLength++] = letter;
            }
        }
    }
}
