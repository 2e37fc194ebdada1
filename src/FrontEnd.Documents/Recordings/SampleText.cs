using System.Globalization;
using FrontEnd.Bench;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Documents.Recordings;

/// <summary>Samples as text: one row a sample, columns with name and unit at their head, <c>time [s], ch1 [µV]</c> (see
/// <see cref="ColumnHead"/>); lines <c># rate: 250 Hz</c> and <c># unit: µV</c> may stand before.</summary>
internal static class SampleText
{
    public static Recording Read(string text, string path, string? channel, Frequency designRate)
    {
        ColumnHead[] heads = [];
        string? unit = null;
        Frequency? rate = null;
        int column = -1, time = -1, number = 0;
        double scale = 1;
        bool steps = false;
        var samples = new List<double>();
        double firstTime = 0, lastTime = 0;
        foreach (ReadOnlySpan<char> raw in text.AsSpan().TrimStart('\uFEFF').EnumerateLines())
        {
            number++;
            ReadOnlySpan<char> line = raw.Trim();
            if (line.IsEmpty)
            {
                continue;
            }

            if (line[0] == '#')
            {
                Remark(line[1..].Trim().ToString(), path, number, ref rate, ref unit);
                continue;
            }

            string[] cells = line.ToString().Split(line.Contains(';') ? ';' : line.Contains('\t') ? '\t' : ',',
                StringSplitOptions.TrimEntries);
            if (column < 0)
            {
                bool isHead = !double.TryParse(cells[0], NumberStyles.Float, CultureInfo.InvariantCulture, out _);
                heads = isHead ? [.. cells.Select(ColumnHead.Of)] : [.. cells.Select((_, at) => new ColumnHead($"{at + 1}", null))];
                time = Array.FindIndex(heads, head => head.IsTime);
                int[] channels = [.. Enumerable.Range(0, heads.Length).Where(at => at != time)];
                if (channels.Length == 0)
                {
                    throw new BadRecordingException(RecordingMessages.Sample(path, number, line.ToString()));
                }

                column = channels[RecordingFile.Choose([.. channels.Select(at => heads[at].Name)], channel, path)];
                unit = heads[column].Unit ?? unit ?? "V";
                steps = RecordingUnits.IsSteps(unit);
                scale = steps ? 1 : RecordingUnits.Volts(unit) ?? throw new BadRecordingException(RecordingMessages.Unit(path, unit));
                if (isHead)
                {
                    continue;
                }
            }

            samples.Add(scale * Number(cells, column, path, number));
            if (0 <= time)
            {
                lastTime = Number(cells, time, path, number);
                firstTime = samples.Count == 1 ? lastTime : firstTime;
            }
        }

        if (samples.Count == 0)
        {
            throw new BadRecordingException(RecordingMessages.Sample(path, number, ""));
        }

        double timeUnit = 0 <= time && heads[time].Unit is { } written
            ? RecordingUnits.Seconds(written) ?? throw new BadRecordingException(RecordingMessages.TimeUnit(path, written)) : 1;
        Frequency found = 0 <= time && firstTime < lastTime
            ? Frequency.FromHertz((samples.Count - 1) / ((lastTime - firstTime) * timeUnit)) : rate ?? designRate;
        return new Recording(heads[column].Name, found, samples, steps) { Unit = unit! };
    }

    private static double Number(string[] cells, int at, string path, int line) =>
        at < cells.Length && double.TryParse(cells[at], NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Sample(path, line, at < cells.Length ? cells[at] : ""));

    private static void Remark(string remark, string path, int line, ref Frequency? rate, ref string? unit)
    {
        int colon = remark.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            return;
        }

        string value = remark[(colon + 1)..].Trim();
        switch (remark[..colon].Trim().ToUpperInvariant())
        {
            case "RATE":
                rate = QuantityText.TryParse(value, out Frequency read, out ParseProblem? problem) && 0 < read.Hertz
                    ? read
                    : throw new BadRecordingException((problem?.ToFinding("rate", value)
                        ?? RecordingMessages.Sample(path, line, value)) with { File = path, Line = line });
                break;
            case "UNIT":
                unit = value;
                break;
        }
    }
}
