using System.Globalization;
using System.Text;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>Writes samples as comma-separated values, RFC 4180: the time, then a column for each channel, a row for each sample.</summary>
/// <remarks>
/// Rows end with CR and LF, numbers have decimal points. The first row names the columns with their units; what else is to be said stands in
/// the last rows, whose first cell begins with <c>#</c>, so that whoever reads by columns finds them.
/// </remarks>
internal sealed class SampleTable : ISampleWriter
{
    /// <summary>What ends a row.</summary>
    private const string End = "\r\n";

    /// <summary>Decimals that a number has at most.</summary>
    private const int MostDecimals = 9;

    /// <summary>Events that were found and are listed; more are counted.</summary>
    private const int MostFound = 10_000;

    private const int LongestNumber = 32;

    private static readonly long[] Powers = [.. Enumerable.Range(0, MostDecimals + 1).Select(power => (long)Math.Pow(10, power))];

    private readonly ByteSink _write;
    private readonly RecordingHead _head;
    private readonly double[] _scales;
    private readonly int[] _decimals;
    private readonly int _timeDecimals;
    private readonly byte[] _bytes;
    private readonly List<RecordingNote> _found = [];
    private int _filled;
    private long _written, _unnoted;

    public SampleTable(ByteSink write, RecordingHead head)
    {
        (_write, _head) = (write, head);
        _bytes = new byte[Math.Max(1 << 16, LongestNumber * (head.Channels.Count + 1))];
        _scales = [.. head.Channels.Select(channel => head.InSteps ? 1 : channel.Step.Microvolts)];
        _decimals = [.. _scales.Select(scale => head is { InSteps: true, AreWhole: true } ? 0 : DecimalsOf(scale))];
        _timeDecimals = TimeDecimals(head.Rate.Hertz);
        string unit = head.InSteps ? "counts" : "µV";
        Text(new StringBuilder().Row(End, ["time [s]", .. head.Channels.Select(channel => $"{channel.Name.Replace('[', '(').Replace(']', ')')} [{unit}]")]).ToString());
    }

    public IReadOnlyList<WrittenChannel> Channels =>
        [.. _head.Channels.Select((channel, at) => new WrittenChannel(channel.Name, channel.Name,
            Voltage.FromVolts(channel.Step.Volts / (_scales[at] * Powers[_decimals[at]])), channel.Step, _head.InSteps && _head.AreWhole, 0))];

    public void Write(IReadOnlyList<double[]> steps, int length)
    {
        double places = Powers[_timeDecimals], rate = _head.Rate.Hertz;
        for (int i = 0; i < length; i++)
        {
            Room((_scales.Length + 1) * LongestNumber);
            Number((long)Math.Round(_written++ * places / rate), _timeDecimals);
            for (int channel = 0; channel < _scales.Length; channel++)
            {
                _bytes[_filled++] = (byte)',';
                Number((long)Math.Round(steps[channel][i] * _scales[channel] * Powers[_decimals[channel]]), _decimals[channel]);
            }

            (_bytes[_filled], _bytes[_filled + 1]) = ((byte)'\r', (byte)'\n');
            _filled += 2;
        }
    }

    public void Note(RecordingNote note)
    {
        if (_found.Count < MostFound)
        {
            _found.Add(note);
        }
        else
        {
            _unnoted++;
        }
    }

    public void Finish()
    {
        // The comma parts two cells, and leaves the words as they stand in every file: there are two columns at least.
        string[] words = RecordingHead.Simulated.Split(", ");
        Last(words);
        Last(string.Create(CultureInfo.InvariantCulture, $"seed {_head.Seed}; design: {_head.Design}"));
        foreach (RecordingNote note in _head.Notes.Concat(_found).OrderBy(note => note.Start.Seconds))
        {
            string length = note.Length is { } lasts ? string.Create(CultureInfo.InvariantCulture, $" for {lasts.Seconds:0.######} s") : "";
            Last(string.Create(CultureInfo.InvariantCulture, $"at {note.Start.Seconds:0.######} s{length}: {note.Text}"));
        }

        if (_unnoted != 0)
        {
            Last(string.Create(CultureInfo.InvariantCulture, $"{_unnoted} more events"));
        }

        if (_head.Caution.Length > 0)
        {
            Last(_head.Caution);
        }

        Flush();
    }

    /// <summary>A row that is no sample: as many cells as any.</summary>
    private void Last(params string[] cells)
    {
        string[] whole = [$"# {Cautions.InOneCell(cells[0])}", .. cells.Skip(1).Select(cell => " " + cell)];
        Text(new StringBuilder().AppendJoin(',', whole.Concat(Enumerable.Repeat("", _scales.Length + 1 - whole.Length))).Append(End).ToString());
    }

    /// <summary>As many decimals as show a thousandth of a step.</summary>
    private static int DecimalsOf(double step) => Math.Clamp((int)Math.Ceiling(-Math.Log10(step / 1000)), 0, MostDecimals);

    /// <summary>The fewest that say every time exactly; the most where none do.</summary>
    private static int TimeDecimals(double rate)
    {
        int decimals = 0;
        while (decimals < MostDecimals && !double.IsInteger(Powers[decimals] / rate))
        {
            decimals++;
        }

        return decimals;
    }

    /// <summary>A number of so many units of its last decimal.</summary>
    private void Number(long units, int decimals)
    {
        if (units < 0)
        {
            _bytes[_filled++] = (byte)'-';
            units = -units;
        }

        Span<byte> digits = stackalloc byte[LongestNumber];
        int at = digits.Length;
        for (int placed = 0; 0 < units || placed <= decimals; placed++)
        {
            if (placed == decimals && 0 < decimals)
            {
                digits[--at] = (byte)'.';
            }

            (units, long digit) = Math.DivRem(units, 10);
            digits[--at] = (byte)('0' + digit);
        }

        digits[at..].CopyTo(_bytes.AsSpan(_filled));
        _filled += digits.Length - at;
    }

    private void Text(string text)
    {
        Flush();
        _write(Encoding.UTF8.GetBytes(text));
    }

    private void Room(int bytes)
    {
        if (_bytes.Length < _filled + bytes)
        {
            Flush();
        }
    }

    private void Flush()
    {
        _write(_bytes.AsSpan(0, _filled));
        _filled = 0;
    }
}
