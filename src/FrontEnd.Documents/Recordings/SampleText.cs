using System.Globalization;
using FrontEnd.Bench;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>
/// Samples as text: one row a sample, columns with name and unit at their head, <c>time [s], ch1 [µV]</c> (see <see cref="ColumnHead"/>);
/// lines <c># rate: 250 Hz</c> and <c># unit: µV</c> may stand before.
/// </summary>
internal sealed class SampleText
{
    private readonly string _path;
    private readonly string? _channel;
    private readonly List<double> _samples = [];
    private ColumnHead[] _heads = [];
    private string? _unit;
    private Frequency? _rate;
    private readonly List<double> _times = [];
    private int _column = -1, _time = -1;
    private double _scale = 1;
    private bool _steps, _hasHead, _isComma, _mayBeDecimals = true;

    private SampleText(string path, string? channel) => (_path, _channel) = (path, channel);

    /// <summary>Reads one channel; throws <see cref="BadRecordingException"/> with the finding where it cannot.</summary>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="designRate">The rate where the text does not say its own.</param>
    public static Recording Read(string text, string path, string? channel, Frequency designRate)
    {
        SampleText reader = new(path, channel);
        int line = 0;
        foreach (CsvRow row in CsvText.Rows(text, remarks: true))
        {
            line = row.Line;
            if (row.Remark is { } remark)
            {
                reader.TakeRemark(remark, line);
            }
            else if (0 <= reader._column || !reader.IsHead(row, line))
            {
                reader.TakeSample(row.Cells, line);
            }
        }

        if (reader is { _isComma: true, _hasHead: false, _mayBeDecimals: true } && reader._heads.Length % 2 == 0)
        {
            throw new BadRecordingException(RecordingMessages.DecimalCommas(path, reader._heads.Length));
        }

        return reader._samples.Count == 0
            ? throw new BadRecordingException(RecordingMessages.Sample(path, line, ""))
            : reader.Whole(designRate);
    }

    /// <summary>Takes names and units from the first row; false where that is a sample already.</summary>
    private bool IsHead(CsvRow row, int line)
    {
        IReadOnlyList<string> cells = row.Cells;
        _isComma = row.Separator == ',';
        bool isHead = !TryNumber(cells[0], out _);
        _hasHead = isHead;
        _heads = isHead ? [.. cells.Select(ColumnHead.Of)] : [.. cells.Select((_, at) => new ColumnHead($"{at + 1}", null))];
        _time = Array.FindIndex(_heads, head => head.IsTime);
        int[] channels = [.. Enumerable.Range(0, _heads.Length).Where(at => at != _time)];
        if (channels.Length == 0)
        {
            throw new BadRecordingException(RecordingMessages.Sample(_path, line, string.Join(',', cells)));
        }

        _column = channels[RecordingFile.Choose([.. channels.Select(at => _heads[at].Name)], _channel, _path)];
        _unit = _heads[_column].Unit ?? _unit ?? "V";
        _steps = RecordingUnits.IsSteps(_unit);
        _scale = _steps ? 1 : RecordingUnits.Volts(_unit) ?? throw new BadRecordingException(RecordingMessages.Unit(_path, _unit));
        return isHead;
    }

    private void TakeSample(IReadOnlyList<string> cells, int line)
    {
        // A cell too many is a decimal comma that separates; empty ones at the end are a separator too many.
        int count = cells.Count;
        while (_heads.Length < count && string.IsNullOrWhiteSpace(cells[count - 1]))
        {
            count--;
        }

        if (count != _heads.Length)
        {
            throw new BadRecordingException(RecordingMessages.Ragged(_path, line, count, _heads.Length));
        }

        for (int at = 0; at < count && _mayBeDecimals; at++)
        {
            ReadOnlySpan<char> digits = cells[at].AsSpan().Trim();
            digits = at % 2 == 0 ? digits.TrimStart("+-") : digits;
            _mayBeDecimals = !digits.IsEmpty && !digits.ContainsAnyExceptInRange('0', '9');
        }

        _samples.Add(_scale * Number(cells, _column, line));
        if (0 <= _time)
        {
            _times.Add(Number(cells, _time, line));
            if (2 <= _times.Count && _times[^1] < _times[^2])
            {
                throw new BadRecordingException(RecordingMessages.TimeBack(_path, line, cells[_time].Trim()));
            }
        }
    }

    private Recording Whole(Frequency designRate)
    {
        double timeUnit = 0 <= _time && _heads[_time].Unit is { } written
            ? RecordingUnits.Seconds(written) ?? throw new BadRecordingException(RecordingMessages.TimeUnit(_path, written))
            : 1;
        bool isTimed = 0 < _times.Count && _times[0] < _times[^1];
        if (isTimed)
        {
            DemandEven(timeUnit);
        }

        Frequency rate = isTimed
            ? Frequency.FromHertz((_samples.Count - 1) / ((_times[^1] - _times[0]) * timeUnit))
            : _rate ?? designRate;
        return new Recording(_heads[_column].Name, rate, _samples, _steps) { Unit = _unit!, IsRateAssumed = !isTimed && _rate is null };
    }

    /// <summary>Samples that were lost leave the times behind them late by as much: more than a packet of samples is a gap.</summary>
    private void DemandEven(double timeUnit)
    {
        const double Packet = 0.25;
        double first = _times[0], step = (_times[^1] - first) / (_times.Count - 1);
        for (int i = 0; i < _times.Count; i++)
        {
            double late = (_times[i] - first - (i * step)) * timeUnit;
            if (Packet < Math.Abs(late))
            {
                throw new BadRecordingException(RecordingMessages.Uneven(_path, i + 1, QuantityText.Format(Duration.FromSeconds(Math.Abs(late)))));
            }
        }
    }

    private double Number(IReadOnlyList<string> cells, int at, int line) =>
        at < cells.Count && TryNumber(cells[at], out double value) && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Sample(_path, line, at < cells.Count ? cells[at].Trim() : ""));

    /// <summary>With a decimal point; with a decimal comma where no comma separates.</summary>
    private bool TryNumber(string cell, out double value)
    {
        string text = !_isComma && cell.Count(letter => letter == ',') == 1 ? cell.Replace(',', '.') : cell;
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }

    private void TakeRemark(string remark, int line)
    {
        int colon = remark.IndexOf(':', StringComparison.Ordinal);
        string word = colon < 0 ? "" : remark[..colon].Trim(), value = remark[(colon + 1)..].Trim();
        if (string.Equals(word, "rate", StringComparison.OrdinalIgnoreCase))
        {
            _rate = QuantityText.TryParse(value, out Frequency read, out ParseProblem? problem) && 0 < read.Hertz
                ? read
                : throw new BadRecordingException((problem?.ToFinding("rate", value)
                    ?? RecordingMessages.Sample(_path, line, value)) with { File = _path, Line = line });
        }
        else if (string.Equals(word, "unit", StringComparison.OrdinalIgnoreCase))
        {
            _unit = value;
        }
    }
}
