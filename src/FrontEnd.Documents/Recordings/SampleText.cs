using System.Globalization;
using FrontEnd.Bench;
using FrontEnd.Documents.Files;
using FrontEnd.Quantities;
using FrontEnd.Text;

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
    private int _column = -1, _time = -1;
    private double _scale = 1, _firstTime, _lastTime;
    private bool _steps;

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
            else if (0 <= reader._column || !reader.IsHead(row.Cells, line))
            {
                reader.TakeSample(row.Cells, line);
            }
        }

        return reader._samples.Count == 0
            ? throw new BadRecordingException(RecordingMessages.Sample(path, line, ""))
            : reader.Whole(designRate);
    }

    /// <summary>Takes names and units from the first row; false where that is a sample already.</summary>
    private bool IsHead(IReadOnlyList<string> cells, int line)
    {
        bool isHead = !double.TryParse(cells[0], NumberStyles.Float, CultureInfo.InvariantCulture, out _);
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
        _samples.Add(_scale * Number(cells, _column, line));
        if (0 <= _time)
        {
            _lastTime = Number(cells, _time, line);
            _firstTime = _samples.Count == 1 ? _lastTime : _firstTime;
        }
    }

    private Recording Whole(Frequency designRate)
    {
        double timeUnit = 0 <= _time && _heads[_time].Unit is { } written
            ? RecordingUnits.Seconds(written) ?? throw new BadRecordingException(RecordingMessages.TimeUnit(_path, written))
            : 1;
        Frequency rate = 0 <= _time && _firstTime < _lastTime
            ? Frequency.FromHertz((_samples.Count - 1) / ((_lastTime - _firstTime) * timeUnit))
            : _rate ?? designRate;
        return new Recording(_heads[_column].Name, rate, _samples, _steps) { Unit = _unit! };
    }

    private double Number(IReadOnlyList<string> cells, int at, int line) =>
        at < cells.Count && double.TryParse(cells[at], NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Sample(_path, line, at < cells.Count ? cells[at].Trim() : ""));

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
