using FrontEnd.Bench;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>
/// Samples as text: one row a sample, columns with name and unit at their head, <c>time [s], ch1 [µV]</c> (see <see cref="ColumnHead"/>);
/// lines <c># rate: 250 Hz</c> and <c># unit: µV</c> may stand before.
/// </summary>
/// <remarks>A first reading looks at every row and finds what is wrong, a second one at the times if there are some; what is asked of the
/// samples then reads them again.</remarks>
internal sealed class TextRecording : ISamples
{
    /// <summary>Most letters of a row, 1 Mi: thousands of channels.</summary>
    private const int LongestRow = 1024 * 1024;

    private readonly RecordingBytes _file;
    private readonly string? _channel;
    private ColumnHead[] _heads = [];
    private string? _unit;
    private Frequency? _rate;
    private double _firstTime, _lastTime;
    private int _column = -1, _time = -1;
    private double _scale = 1;
    private bool _steps, _hasHead, _isComma, _mayBeDecimals = true;

    private TextRecording(RecordingBytes file, string? channel) => (_file, _channel) = (file, channel);

    public long Count { get; private set; }

    /// <summary>Reads one channel; throws <see cref="BadRecordingException"/> with the finding where it cannot.</summary>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="designRate">The rate where the text does not say its own.</param>
    public static Recording Read(RecordingBytes file, string? channel, Frequency designRate)
    {
        TextRecording recording = new(file, channel);
        recording.ReadAll();
        if (recording is { _isComma: true, _hasHead: false, _mayBeDecimals: true } && recording._heads.Length % 2 == 0)
        {
            throw new BadRecordingException(RecordingMessages.DecimalCommas(file.Path, recording._heads.Length));
        }

        return recording.Count == 0
            ? throw new BadRecordingException(RecordingMessages.NoRows(file.Path))
            : recording.Whole(designRate);
    }

    public void Read(Action<ReadOnlySpan<double>> take)
    {
        double[] held = new double[4096];
        int count = 0;
        Again(_column, sample =>
        {
            held[count++] = _scale * sample;
            if (count == held.Length)
            {
                take(held);
                count = 0;
            }
        });
        take(held.AsSpan(0, count));
    }

    /// <summary>The first reading.</summary>
    private void ReadAll()
    {
        _file.Expect(2);
        CsvReader reader = Reader();
        while (reader.Next())
        {
            if (reader.IsRemark)
            {
                TakeRemark(reader[0].ToString(), reader.Line);
            }
            else if (0 <= _column || !IsHead(reader))
            {
                TakeSample(reader);
            }
        }

        if (reader.IsTooLong)
        {
            throw new BadRecordingException(RecordingMessages.LongRow(_file.Path, reader.Line, LongestRow));
        }
    }

    private CsvReader Reader() => new(_file.Text(), remarks: true, LongestRow);

    /// <summary>A further reading: one column, its rows known to be numbers.</summary>
    private void Again(int column, Action<double> take)
    {
        CsvReader reader = Reader();
        long rows = _hasHead ? -1 : 0;
        while (reader.Next())
        {
            if (reader.IsRemark || ++rows == 0)
            {
                continue;
            }

            if (reader.Count <= column || !SampleNumber.TryParse(reader[column], out double number) || !double.IsFinite(number))
            {
                throw new BadRecordingException(RecordingMessages.Changed(_file.Path));
            }

            take(number);
        }

        if (rows != Count)
        {
            throw new BadRecordingException(RecordingMessages.Changed(_file.Path));
        }
    }

    /// <summary>Takes names and units from the first row; false where that is a sample already.</summary>
    private bool IsHead(CsvReader row)
    {
        string[] cells = row.Cells();
        _isComma = row.Separator == ',';
        _hasHead = !SampleNumber.TryParse(cells[0], out _);
        _heads = _hasHead ? [.. cells.Select(ColumnHead.Of)] : [.. cells.Select((_, at) => new ColumnHead($"{at + 1}", null))];
        _time = Array.FindIndex(_heads, head => head.IsTime);
        int[] channels = [.. Enumerable.Range(0, _heads.Length).Where(at => at != _time)];
        if (channels.Length == 0)
        {
            throw new BadRecordingException(RecordingMessages.Sample(_file.Path, row.Line, string.Join(',', cells)));
        }

        _column = channels[ChannelChoice.Of([.. channels.Select(at => _heads[at].Name)], _channel, _file.Path)];
        _unit = _heads[_column].Unit ?? _unit ?? "V";
        _steps = RecordingUnits.IsSteps(_unit);
        _scale = _steps ? 1 : RecordingUnits.Volts(_unit) ?? throw new BadRecordingException(RecordingMessages.Unit(_file.Path, _unit));
        _file.Expect(_time < 0 ? 2 : 3);
        return _hasHead;
    }

    private void TakeSample(CsvReader cells)
    {
        // A cell too many is a decimal comma that separates; empty ones at the end are a separator too many.
        int count = cells.Count;
        while (_heads.Length < count && cells[count - 1].IsWhiteSpace())
        {
            count--;
        }

        if (count != _heads.Length)
        {
            throw new BadRecordingException(RecordingMessages.Ragged(_file.Path, cells.Line, count, _heads.Length));
        }

        for (int at = 0; at < count && _mayBeDecimals; at++)
        {
            ReadOnlySpan<char> digits = cells[at].Trim();
            digits = at % 2 == 0 ? digits.TrimStart("+-") : digits;
            _mayBeDecimals = !digits.IsEmpty && !digits.ContainsAnyExceptInRange('0', '9');
        }

        Number(cells, _column);
        if (0 <= _time)
        {
            double time = Number(cells, _time);
            if (0 < Count && time < _lastTime)
            {
                throw new BadRecordingException(RecordingMessages.TimeBack(_file.Path, cells.Line, cells[_time].Trim().ToString()));
            }

            (_firstTime, _lastTime) = (Count == 0 ? time : _firstTime, time);
        }

        Count++;
    }

    private Recording Whole(Frequency designRate)
    {
        double timeUnit = 0 <= _time && _heads[_time].Unit is { } written
            ? RecordingUnits.Seconds(written) ?? throw new BadRecordingException(RecordingMessages.TimeUnit(_file.Path, written))
            : 1;
        bool isTimed = _firstTime < _lastTime;
        if (isTimed)
        {
            DemandEven(timeUnit);
        }

        Frequency rate = isTimed ? Frequency.FromHertz((Count - 1) / ((_lastTime - _firstTime) * timeUnit)) : _rate ?? designRate;
        return new Recording(_heads[_column].Name, rate, this, _steps) { Unit = _unit!, IsRateAssumed = !isTimed && _rate is null };
    }

    /// <summary>Samples that were lost leave the times behind them late by as much: more than a packet of samples is a gap.</summary>
    private void DemandEven(double timeUnit)
    {
        const double Packet = 0.25;
        double step = (_lastTime - _firstTime) / (Count - 1);
        long row = 0;
        Again(_time, time =>
        {
            double late = (time - _firstTime - (row++ * step)) * timeUnit;
            if (Packet < Math.Abs(late))
            {
                throw new BadRecordingException(RecordingMessages.Uneven(_file.Path, row, QuantityText.Format(Duration.FromSeconds(Math.Abs(late)))));
            }
        });
    }

    private double Number(CsvReader cells, int at) =>
        SampleNumber.TryParse(cells[at], out double value) && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Sample(_file.Path, cells.Line, cells[at].Trim().ToString()));

    private void TakeRemark(string remark, int line)
    {
        int colon = remark.IndexOf(':', StringComparison.Ordinal);
        string word = colon < 0 ? "" : remark[..colon].Trim(), value = remark[(colon + 1)..].Trim();
        if (string.Equals(word, "rate", StringComparison.OrdinalIgnoreCase))
        {
            _rate = QuantityText.TryParse(value, out Frequency read, out ParseProblem? problem) && 0 < read.Hertz
                ? read
                : throw new BadRecordingException((problem?.ToFinding("rate", value)
                    ?? RecordingMessages.Sample(_file.Path, line, value)) with { File = _file.Path, Line = line });
        }
        else if (string.Equals(word, "unit", StringComparison.OrdinalIgnoreCase))
        {
            _unit = value;
        }
    }
}
