using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Recordings;

/// <summary>Writes samples as a European Data Format file with annotations (EDF+, continuous), record by record.</summary>
/// <remarks>
/// A header of 256 bytes and of 256 more for each signal, ASCII fields of fixed width; then records, in each the signals one after the
/// other, samples as little-endian 16-bit numbers; the last signal holds the annotations. Source: B. Kemp, J. Olivan, European data format
/// 'plus' (EDF+), an EDF alike standard format for the exchange of physiological data, Clin. Neurophysiol. 114 (2003) 1755 (the place from
/// memory; fields and widths by the open specification of the same name). Nobody is recorded: the patient's fields are the sign for unknown, and an annotation says so.
/// </remarks>
internal sealed class EdfFile : ISampleWriter
{
    private const int HeaderBytes = 256, LabelLetters = 16;

    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    private readonly ByteSink _write;
    private readonly RecordingHead _head;
    private readonly EdfScale[] _scales;
    private readonly EdfLayout _layout;
    private readonly string[] _labels;
    private readonly byte[] _record;
    private int _filled;
    private long _records;

    private EdfFile(ByteSink write, RecordingHead head, EdfScale[] scales, EdfLayout layout)
    {
        (_write, _head, _scales, _layout, _labels) = (write, head, scales, layout, Labels(head.Channels));
        _record = new byte[(2 * layout.Samples * scales.Length) + layout.Notes.Width];
        _write(Header());
    }

    /// <summary>First year that the two digits of a start date stand for, and the last.</summary>
    public const int FirstYear = 1985, LastYear = 2084;

    /// <summary>Seconds of a record as the header says them.</summary>
    public string RecordSeconds => _layout.Seconds;

    /// <summary>Records of the whole file.</summary>
    public long Records => _head.Count / _layout.Samples;

    public IReadOnlyList<WrittenChannel> Channels =>
        [.. _head.Channels.Select((channel, at) => new WrittenChannel(channel.Name, _labels[at],
            Voltage.FromVolts(_scales[at].StepsPerCount * channel.Step.Volts), channel.Step, _scales[at].IsStep, _scales[at].Held))];

    /// <summary>What has to be known before the first byte: scales and records; null with what is wrong. What it gives makes one
    /// file.</summary>
    /// <param name="path">The file's name, for the finding.</param>
    public static Func<ByteSink, EdfFile>? Prepare(RecordingHead head, string path, out Finding? finding)
    {
        EdfScale?[] scales = [.. head.Channels.Select(channel => EdfScale.Of(channel, head.AreWhole, head.InSteps))];
        if (Array.IndexOf(scales, null) is >= 0 and var wide)
        {
            finding = RecordingMessages.WideSteps(path, head.Channels[wide].Name, head.Channels[wide].Largest);
            return null;
        }

        if (head.Day.Year is < FirstYear or > LastYear)
        {
            finding = RecordingMessages.Year(path, head.Day.Year, FirstYear, LastYear);
            return null;
        }

        EdfScale[] known = [.. scales.OfType<EdfScale>()];
        EdfLayout? layout = EdfLayout.Of(head, [.. Remarks(head, known)], path, out finding);
        return layout is null ? null : write => new EdfFile(write, head, known, layout);
    }

    public void Write(IReadOnlyList<double[]> steps, int length)
    {
        for (int from = 0; from < length;)
        {
            int taken = Math.Min(length - from, _layout.Samples - _filled);
            for (int channel = 0; channel < _scales.Length; channel++)
            {
                Span<byte> into = _record.AsSpan(2 * ((channel * _layout.Samples) + _filled), 2 * taken);
                ReadOnlySpan<double> samples = steps[channel].AsSpan(from, taken);
                for (int i = 0; i < samples.Length; i++)
                {
                    BinaryPrimitives.WriteInt16LittleEndian(into[(2 * i)..], _scales[channel].Of(samples[i]));
                }
            }

            (from, _filled) = (from + taken, _filled + taken);
            if (_filled == _layout.Samples)
            {
                WriteRecord();
            }
        }
    }

    public void Note(RecordingNote note) => _layout.Notes.Add(note);

    /// <summary>Throws where other samples were written than the header says.</summary>
    public void Finish()
    {
        if (_filled != 0 || _records != Records)
        {
            throw new InvalidOperationException($"The header says {Records} records, and {_records} and {_filled} samples were written.");
        }
    }

    private void WriteRecord()
    {
        _layout.Notes.Fill(_records, _scales.Sum(scale => scale.Held), _record.AsSpan(2 * _layout.Samples * _scales.Length));
        _write(_record);
        (_filled, _records) = (0, _records + 1);
    }

    private byte[] Header()
    {
        StringBuilder text = new();
        void Put(string value, int width) => text.Append((value.Length <= width ? value : value[..width]).PadRight(width));
        void Each(int width, Func<int, string> signal, string annotations)
        {
            for (int at = 0; at < _scales.Length; at++)
            {
                Put(signal(at), width);
            }

            Put(annotations, width);
        }

        CultureInfo culture = CultureInfo.InvariantCulture;
        DateOnly day = _head.Day;
        int signals = _scales.Length + 1;
        Put("0", 8);
        Put("X X X X", 80);
        Put(string.Create(culture, $"Startdate {day.Day:00}-{Months[day.Month - 1]}-{day.Year} X X {_head.Program} seed_{_head.Seed} simulated"), 80);
        Put(string.Create(culture, $"{day.Day:00}.{day.Month:00}.{day.Year % 100:00}"), 8);
        Put("00.00.00", 8);
        Put((HeaderBytes * (signals + 1)).ToString(culture), 8);
        Put("EDF+C", 44);
        Put(Records.ToString(culture), 8);
        Put(_layout.Seconds, 8);
        Put(signals.ToString(culture), 4);
        Each(LabelLetters, at => _labels[at], BinaryRecording.Annotations);
        Each(80, _ => RecordingHead.Simulated, "");
        Each(8, at => _scales[at].Unit, "");
        Each(8, at => _scales[at].Physical.Least, "-1");
        Each(8, at => _scales[at].Physical.Most, "1");
        Each(8, at => _scales[at].Digital.Least.ToString(culture), "-32768");
        Each(8, at => _scales[at].Digital.Most.ToString(culture), "32767");
        Each(80, _ => _head.Filters, "");
        Each(8, _ => _layout.Samples.ToString(culture), (_layout.Notes.Width / 2).ToString(culture));
        Each(32, _ => "", "");
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    /// <summary>How samples stand in the file, in words; then what a file carries which travels alone.</summary>
    private static IEnumerable<string> Remarks(RecordingHead head, EdfScale[] scales) =>
        [
            .. head.Channels.Select((channel, at) => RecordingWording.Scale(scales[at].StepsPerCount * channel.Step.Volts, channel.Step, scales[at].IsStep)).Distinct(),
            $"design: {head.Design}",
            .. head.Caution.Length > 0 ? (string[])[head.Caution] : [],
        ];

    /// <summary>A label for each channel: what kind of signal, a blank, the sites; or the channel's name. No two are alike, and none is that of
    /// the annotations.</summary>
    private static string[] Labels(IReadOnlyList<RecordedChannel> channels)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase) { BinaryRecording.Annotations };
        return [.. channels.Select(channel =>
        {
            string whole = Letters(channel.Sites.Length > 0 ? $"EEG {channel.Sites}" : channel.Name), label = Cut(whole, LabelLetters);
            for (int number = 2; !taken.Add(label); number++)
            {
                string end = string.Create(CultureInfo.InvariantCulture, $" {number}");
                label = Cut(whole, LabelLetters - end.Length) + end;
            }

            return label;
        })];
    }

    private static string Cut(string text, int letters) => (text.Length <= letters ? text : text[..letters]).TrimEnd();

    /// <summary>The letters that a header may have: those of ASCII that can be seen; others are spelt with them, or left blank.</summary>
    private static string Letters(string text) =>
        new string([.. text.Normalize(NormalizationForm.FormD).Where(letter => !IsMark(letter)).Select(letter => letter is 'µ' or 'μ' ? 'u' : letter is >= ' ' and <= '~' ? letter : '_')]).Trim();

    private static bool IsMark(char letter) => CharUnicodeInfo.GetUnicodeCategory(letter) == UnicodeCategory.NonSpacingMark;
}
