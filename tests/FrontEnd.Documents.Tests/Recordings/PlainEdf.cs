using System.Globalization;
using System.Text;
using Xunit;

namespace FrontEnd.Documents.Tests.Recordings;

/// <summary>A second reader of EDF+, written from the specification's text alone and sharing nothing with the program: it takes a whole file apart, and
/// fails at whatever the specification does not allow.</summary>
/// <remarks>Source: B. Kemp, J. Olivan, European data format 'plus' (EDF+), Clin. Neurophysiol. 114 (2003) 1755 (the place from memory), by the open specification of that name: header
/// of 256 bytes and 256 a signal, fields of printable ASCII; records of little-endian 16-bit numbers; time-stamped annotation lists.</remarks>
internal sealed class PlainEdf
{
    public sealed record Signal(string Label, string Transducer, string Dimension, decimal PhysicalLeast, decimal PhysicalMost, int DigitalLeast, int DigitalMost, string Filters, int Samples)
    {
        public List<short> Digital { get; } = [];

        /// <summary>physical = pmin + (d − dmin)(pmax − pmin)/(dmax − dmin).</summary>
        public double Physical(int digital) => (double)(PhysicalLeast + ((digital - DigitalLeast) * (PhysicalMost - PhysicalLeast) / (DigitalMost - DigitalLeast)));
    }

    public sealed record Annotation(long Record, decimal Onset, decimal? Length, string Text);

    /// <summary>Of a signal's fields: label, transducer, dimension, physical least and most, digital least and most, filters, samples of a record, reserved.</summary>
    private static readonly int[] Widths = [16, 80, 8, 8, 8, 8, 8, 80, 8, 32];

    private readonly byte[] _bytes;
    private int _at;

    public PlainEdf(byte[] bytes)
    {
        _bytes = bytes;
        Assert.Equal("0", Field(8));
        Patient = Field(80);
        Recording = Field(80);
        Date = Field(8);
        Time = Field(8);
        int header = Whole(Field(8));
        Reserved = Field(44);
        Records = Whole(Field(8));
        RecordSeconds = decimal.Parse(Field(8), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        int signals = Whole(Field(4));
        Assert.Equal(256 * (signals + 1), header);
        string[][] fields = [.. Widths.Select(width => Enumerable.Range(0, signals).Select(_ => Field(width)).ToArray())];
        All = [.. Enumerable.Range(0, signals).Select(i => new Signal(fields[0][i], fields[1][i], fields[2][i], Number(fields[3][i]), Number(fields[4][i]), Whole(fields[5][i]),
            Whole(fields[6][i]), fields[7][i], Whole(fields[8][i])))];
        Assert.All(fields[9], reserved => Assert.Equal("", reserved));
        foreach (Signal signal in All)
        {
            Assert.True(signal.DigitalLeast < signal.DigitalMost && short.MinValue <= signal.DigitalLeast && signal.DigitalMost <= short.MaxValue);
            Assert.NotEqual(signal.PhysicalLeast, signal.PhysicalMost);
        }

        Assert.Equal(header, _at);
        RecordBytes = 2 * All.Sum(signal => signal.Samples);
        Assert.Equal(header + (Records * (long)RecordBytes), bytes.Length);
        Assert.InRange(RecordBytes, 1, 61_440);
        for (int record = 0; record < Records; record++)
        {
            foreach (Signal signal in All)
            {
                if (signal.Label == "EDF Annotations")
                {
                    Annotate(record, bytes.AsSpan(_at, 2 * signal.Samples));
                    _at += 2 * signal.Samples;
                    continue;
                }

                for (int i = 0; i < signal.Samples; i++, _at += 2)
                {
                    short digital = (short)(bytes[_at] + (256 * bytes[_at + 1]));
                    Assert.InRange(digital, signal.DigitalLeast, signal.DigitalMost);
                    signal.Digital.Add(digital);
                }
            }
        }
    }

    public string Patient { get; }

    public string Recording { get; }

    public string Date { get; }

    public string Time { get; }

    public string Reserved { get; }

    public int Records { get; }

    public decimal RecordSeconds { get; }

    public int RecordBytes { get; }

    public IReadOnlyList<Signal> All { get; }

    /// <summary>Those with samples.</summary>
    public IReadOnlyList<Signal> Signals => [.. All.Where(signal => signal.Label != "EDF Annotations")];

    public List<Annotation> Annotations { get; } = [];

    public IEnumerable<string> Texts => Annotations.Select(one => one.Text);

    /// <summary>Printable ASCII, left-justified, filled with blanks.</summary>
    private string Field(int width)
    {
        ReadOnlySpan<byte> field = _bytes.AsSpan(_at, width);
        _at += width;
        Assert.True(field.IndexOfAnyExceptInRange((byte)32, (byte)126) < 0, $"byte {_at}");
        string text = Encoding.ASCII.GetString(field).TrimEnd(' ');
        Assert.False(text.StartsWith(' '), text);
        return text;
    }

    private static int Whole(string text) => int.Parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    private static decimal Number(string text) => decimal.Parse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>Lists <c>+onset[\x15length]\x14text\x14…\0</c>, the first of which keeps the time, and nothing but zeros behind them.</summary>
    private void Annotate(int record, ReadOnlySpan<byte> area)
    {
        bool isFirst = true;
        while (area.Length > 0 && area[0] != 0)
        {
            int end = area.IndexOf((byte)0);
            Assert.True(0 <= end, "a list goes on behind its record");
            string list = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(area[..end]);
            area = area[(end + 1)..];
            Assert.True(list[0] is '+' or '-');
            Assert.Equal('\x14', list[^1]);
            string[] parts = list[..^1].Split('\x14');
            string[] stamp = parts[0].Split('\x15');
            decimal onset = Number(stamp[0]);
            decimal? length = stamp.Length == 1 ? null : Number(stamp[1]);
            Assert.True(stamp.Length <= 2 && length is null or >= 0);
            if (isFirst)
            {
                Assert.Equal("", parts[1]);
                Assert.Equal(record * RecordSeconds, onset);
            }
            else
            {
                Assert.DoesNotContain("", parts);
            }

            isFirst = false;
            foreach (string text in parts.Skip(1).Where(text => text.Length > 0))
            {
                Assert.DoesNotContain(text, char.IsControl);
                Annotations.Add(new Annotation(record, onset, length, text));
            }
        }

        Assert.False(isFirst, "no annotation keeps the time");
        Assert.True(area.IndexOfAnyExcept((byte)0) < 0, "something stands behind the last list");
    }
}
