using System.Globalization;
using System.Text;

namespace FrontEnd.Documents.Recordings;

/// <summary>The annotations of an EDF+ file, record by record: what is known before the first sample, and what is found on the way.</summary>
/// <remarks>
/// Each record begins with its own time. A known event stands in its record. Remarks about the whole file go into the first records that
/// have room. What is found stands in its record or, where that is written already, in the next that has room. As the width of the
/// annotations is said in the header, room is kept for a few findings: where there are more, those of the same words become one with their
/// number, and what still has no room waits for the next record. What has none at the end is counted.
/// </remarks>
internal sealed class EdfNotes
{
    /// <summary>Room that every record keeps for one finding.</summary>
    private const int FindingRoom = 80;

    /// <summary>Findings that every record has room for, however few channels there are: a channel's nodes clip together.</summary>
    private const int LeastFindings = 3;

    /// <summary>Letters of a remark: some readers show no more of one.</summary>
    private const int RemarkLetters = 80;

    private readonly decimal _recordSeconds;
    private readonly long _records;
    private readonly int _capacity, _timeRoom;
    private readonly Dictionary<long, List<byte[]>> _planned = [];
    private List<Found> _found = [];

    private EdfNotes(decimal recordSeconds, long records, int channels)
    {
        (_recordSeconds, _records, _capacity) = (recordSeconds, records, Math.Max(LeastFindings, channels));
        _timeRoom = Time(0).Length + Text(Math.Floor(records * recordSeconds)).Length + Text(recordSeconds).Length;
    }

    /// <summary>Bytes of a record's annotations, an even number.</summary>
    public int Width { get; private set; }

    /// <param name="head">Its notes are the events that are known.</param>
    /// <param name="remarks">Of the whole file, in their order.</param>
    /// <param name="samples">Samples of a record.</param>
    /// <param name="recordSeconds">Length of a record.</param>
    public static EdfNotes Of(RecordingHead head, IEnumerable<string> remarks, int samples, decimal recordSeconds)
    {
        EdfNotes notes = new(recordSeconds, head.Count / samples, head.Channels.Count);
        notes.Plan(0, Tal(0, null, RecordingHead.Simulated));
        notes.Plan(0, Tal(0, null, string.Create(CultureInfo.InvariantCulture, $"seed {head.Seed}")));
        foreach (RecordingNote note in head.Notes)
        {
            long record = (long)Math.Floor(note.Start.Seconds * head.Rate.Hertz / samples);
            notes.Plan(Math.Clamp(record, 0, notes._records - 1), Tal(Seconds(note.Start), note.Length is { } length ? Seconds(length) : null, note.Text));
        }

        int events = notes._planned.Values.Max(tals => tals.Sum(tal => tal.Length));
        notes.Width = notes._timeRoom + events + notes.Reserved;
        notes.Place([.. remarks.SelectMany(Pieces).Select(remark => Tal(0, null, remark))]);
        notes.Width += notes.Width % 2;
        return notes;
    }

    /// <summary>Takes what was found.</summary>
    public void Add(RecordingNote note)
    {
        decimal start = Seconds(note.Start);
        _found.Add(new Found(note.Text, start, start + (note.Length is { } length ? Seconds(length) : 0), 1));
    }

    /// <summary>Fills the annotations of the next record.</summary>
    /// <param name="record">Counted from 0.</param>
    /// <param name="held">Samples of the whole file that were held at an edge so far.</param>
    public void Fill(long record, long held, Span<byte> bytes)
    {
        bytes.Clear();
        Span<byte> left = Put(Time(record), bytes);
        if (_planned.TryGetValue(record, out List<byte[]>? planned))
        {
            foreach (byte[] tal in planned)
            {
                left = Put(tal, left);
            }
        }

        bool isLast = record == _records - 1;
        if (0 < _found.Count)
        {
            left = PutFound(record, left, isLast ? left.Length - FindingRoom : left.Length);
        }

        if (isLast && Last(held) is { } last)
        {
            Put(Tal(0, null, Cut(last, FindingRoom - Tal(0, null, "").Length)), left);
        }
    }

    /// <summary>Writes what was found up to the record's end and has room.</summary>
    private Span<byte> PutFound(long record, Span<byte> left, int room)
    {
        bool isLast = record == _records - 1;
        ILookup<bool, Found> due = _found.ToLookup(one => isLast || one.Start < (record + 1) * _recordSeconds);
        Found[] now = [.. due[true].OrderBy(one => one.Start)];
        if (room < now.Sum(one => one.Tal().Length))
        {
            now = [.. now.GroupBy(one => one.Text, StringComparer.Ordinal).Select(group => group.Aggregate((one, other) => one.And(other)))];
        }

        List<Found> waiting = [.. due[false]];
        foreach (Found one in now)
        {
            byte[] tal = one.Tal();
            if (tal.Length <= room)
            {
                left = Put(tal, left);
                room -= tal.Length;
            }
            else
            {
                waiting.Add(one);
            }
        }

        _found = waiting;
        return left;
    }

    private static Span<byte> Put(byte[] tal, Span<byte> into)
    {
        tal.CopyTo(into);
        return into[tal.Length..];
    }

    /// <summary>Room that is kept in every record: for what may be found, and for what is said at the end.</summary>
    private int Reserved => FindingRoom * (_capacity + 1);

    /// <summary>What is known only at the end; null for nothing.</summary>
    private string? Last(long held)
    {
        long unnoted = _found.Sum(one => one.Number);
        string[] said =
        [
            .. held == 0 ? [] : (string[])[string.Create(CultureInfo.InvariantCulture, $"{held} samples beyond the range, held at its edge")],
            .. unnoted == 0 ? [] : (string[])[string.Create(CultureInfo.InvariantCulture, $"{unnoted} more events")],
        ];
        return said.Length == 0 ? null : string.Join("; ", said);
    }

    private void Plan(long record, byte[] tal)
    {
        if (!_planned.TryGetValue(record, out List<byte[]>? tals))
        {
            _planned[record] = tals = [];
        }

        tals.Add(tal);
    }

    /// <summary>Puts remarks into the first records with room; widens all where the file ends before.</summary>
    private void Place(IReadOnlyList<byte[]> remarks)
    {
        if (remarks.Count == 0)
        {
            return;
        }

        int longest = remarks.Max(tal => tal.Length) + Reserved;
        Width = Math.Max(Width, _timeRoom + longest);
        int next = 0;
        for (long record = 0; record < _records && next < remarks.Count; record++)
        {
            int room = Width - Reserved - _timeRoom - _planned.GetValueOrDefault(record, []).Sum(tal => tal.Length);
            for (; next < remarks.Count && remarks[next].Length <= room; next++)
            {
                room -= remarks[next].Length;
                Plan(record, remarks[next]);
            }
        }

        // What is left goes into the last record: a file so short that nothing else has room.
        int left = remarks.Skip(next).Sum(tal => tal.Length);
        Width += left;
        foreach (byte[] tal in remarks.Skip(next))
        {
            Plan(_records - 1, tal);
        }
    }

    /// <summary>The annotation that says when a record begins.</summary>
    private byte[] Time(long record) => Encoding.ASCII.GetBytes($"+{Text(record * _recordSeconds)}\x14\x14\0");

    private static byte[] Tal(decimal onset, decimal? length, string text) =>
        Encoding.UTF8.GetBytes($"+{Text(onset)}{(length is { } seconds ? $"\x15{Text(seconds)}" : "")}\x14{Clean(text)}\x14\0");

    private static string Text(decimal seconds) => seconds.ToString("0.###########", CultureInfo.InvariantCulture);

    /// <summary>To a microsecond, more than any rate asks for.</summary>
    private static decimal Seconds(Duration time) => Math.Round((decimal)Math.Max(0, time.Seconds), 6);

    private static string Clean(string text) =>
        string.Create(text.Length, text, static (letters, from) =>
        {
            for (int i = 0; i < letters.Length; i++)
            {
                letters[i] = char.IsControl(from[i]) ? ' ' : from[i];
            }
        });

    /// <summary>As many whole letters as fit into some bytes.</summary>
    private static string Cut(string text, int bytes)
    {
        while (bytes < Encoding.UTF8.GetByteCount(text))
        {
            text = char.IsLowSurrogate(text[^1]) ? text[..^2] : text[..^1];
        }

        return text;
    }

    /// <summary>A text in pieces that are short enough, broken at blanks.</summary>
    private static IEnumerable<string> Pieces(string text)
    {
        StringBuilder piece = new();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (0 < piece.Length && RemarkLetters < piece.Length + 1 + word.Length)
            {
                yield return piece.ToString();
                piece.Clear();
            }

            piece.Append(piece.Length == 0 ? "" : " ").Append(word);
        }

        if (0 < piece.Length)
        {
            yield return piece.ToString();
        }
    }

    /// <summary>What was found and no record has yet: one finding, or several of the same words.</summary>
    private sealed record Found(string Text, decimal Start, decimal End, long Number)
    {
        public Found And(Found other) => this with { Start = Math.Min(Start, other.Start), End = Math.Max(End, other.End), Number = Number + other.Number };

        public byte[] Tal()
        {
            decimal? length = Start < End ? End - Start : null;
            string number = Number == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", {Number} times");
            int taken = EdfNotes.Tal(Start, length, number).Length;
            return EdfNotes.Tal(Start, length, Cut(Text, FindingRoom - taken) + number);
        }
    }
}
