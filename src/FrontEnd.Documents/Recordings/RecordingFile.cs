using System.Globalization;
using System.Text;
using FrontEnd.Bench;
using FrontEnd.Documents.Reading;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;

namespace FrontEnd.Documents.Recordings;

/// <summary>Recordings from the open formats: samples as text (.csv), and the two of the European Data Format's family with 16-bit (.edf)
/// and 24-bit samples (.bdf).</summary>
/// <remarks>Layout of the latter: a header of 256 bytes and of 256 more for each signal, ASCII fields of fixed width; then records, in each
/// the signals one after the other, samples little-endian. Source: B. Kemp et al., A simple format for exchange of digitized polygraphic
/// recordings, Electroenceph. Clin. Neurophysiol. 82 (1992) 391 (from memory); the 24-bit form differs in its first byte, 255, and in the
/// width of a sample.</remarks>
public static class RecordingFile
{
    /// <summary>Largest file that is read, 256 MiB: an hour of 32 channels at 500 S/s and 24 bit has 173 MB.</summary>
    public const long Limit = 256L * 1024 * 1024;

    private const int FixedHeader = 256;
    private const int MostSignals = 512;

    /// <summary>Reads one channel.</summary>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="designRate">The rate of a text file that does not say its own.</param>
    public static (Recording? Recording, IReadOnlyList<Finding> Findings) Read(string path, string? channel, Frequency designRate)
    {
        byte[]? bytes = Bytes(path, out Finding? finding);
        if (bytes is null)
        {
            return (null, [finding!]);
        }

        try
        {
            return Path.GetExtension(path).ToUpperInvariant() switch
            {
                ".EDF" => (Binary(bytes, path, channel, 2), []),
                ".BDF" => (Binary(bytes, path, channel, 3), []),
                _ => (SampleText.Read(Encoding.UTF8.GetString(bytes), path, channel, designRate), []),
            };
        }
        catch (BadRecordingException problem)
        {
            return (null, [problem.Finding]);
        }
    }

    private static byte[]? Bytes(string path, out Finding? finding)
    {
        finding = null;
        try
        {
            if (Directory.Exists(path))
            {
                finding = ReadingMessages.Folder(path);
                return null;
            }

            var file = new FileInfo(path);
            if (!file.Exists)
            {
                finding = ReadingMessages.Missing(path);
                return null;
            }

            if (Limit < file.Length)
            {
                finding = RecordingMessages.TooLarge(path, file.Length, Limit);
                return null;
            }

            return File.ReadAllBytes(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or System.Security.SecurityException)
        {
            finding = ReadingMessages.Unreadable(path, error.Message);
            return null;
        }
    }

    private static Recording Binary(byte[] bytes, string path, string? channel, int width)
    {
        if (bytes.Length < FixedHeader)
        {
            throw new BadRecordingException(RecordingMessages.Header(path,
                $"it has {bytes.Length} bytes, and the header alone has {FixedHeader}"));
        }

        bool is24 = bytes[0] == 255;
        if (is24 != (width == 3))
        {
            throw new BadRecordingException(RecordingMessages.Header(path,
                $"its first byte is {bytes[0]}, that of the {(is24 ? "24" : "16")}-bit form"));
        }

        int signals = (int)Whole(bytes, 252, 4, "number of signals", path);
        if (signals < 1 || MostSignals < signals)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, $"it says that it has {signals} signals"));
        }

        int header = FixedHeader * (signals + 1);
        if (bytes.Length < header)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, $"it ends inside its header: {bytes.Length} of {header} bytes"));
        }

        double seconds = Real(bytes, 244, 8, "duration of a record", path);
        if (seconds <= 0)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, "the duration of a record is not above 0 s"));
        }

        string[] names = [.. Enumerable.Range(0, signals).Select(i => Field(bytes, FixedHeader + (16 * i), 16))];
        int signal = Choose(names, channel, path);
        int At(int before, int fieldWidth) => FixedHeader + (before * signals) + (fieldWidth * signal);

        // Widths before: label 16, transducer 80, dimension 8, physical minimum 8 and maximum 8, digital minimum 8 and maximum 8, prefilter
        // 80, samples 8.
        string dimension = Field(bytes, At(96, 8), 8);
        double physicalLow = Real(bytes, At(104, 8), 8, "physical minimum", path),
            physicalHigh = Real(bytes, At(112, 8), 8, "physical maximum", path);
        double digitalLow = Real(bytes, At(120, 8), 8, "digital minimum", path),
            digitalHigh = Real(bytes, At(128, 8), 8, "digital maximum", path);
        long[] counts = [.. Enumerable.Range(0, signals)
            .Select(i => Whole(bytes, FixedHeader + (216 * signals) + (8 * i), 8, "samples in a record", path))];
        if (digitalHigh <= digitalLow || physicalHigh == physicalLow || Array.Exists(counts, count => count < 0) || counts[signal] < 1)
        {
            throw new BadRecordingException(RecordingMessages.Header(path,
                $"the ranges or the number of samples of `{names[signal]}` make no sense"));
        }

        double unit = RecordingUnits.Volts(dimension) ?? throw new BadRecordingException(RecordingMessages.Unit(path, dimension));
        long record = counts.Sum() * width, before = counts.Take(signal).Sum() * width;
        if (record <= 0 || bytes.Length - header < record)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, "it holds no whole record"));
        }

        // The number of records may be −1 while recording; the file's length says how many there are.
        long records = (bytes.Length - header) / record;
        var samples = new List<double>((int)Math.Min(int.MaxValue / 2, records * counts[signal]));
        double step = (physicalHigh - physicalLow) / (digitalHigh - digitalLow);
        for (long r = 0; r < records; r++)
        {
            int at = (int)(header + (r * record) + before);
            for (long i = 0; i < counts[signal]; i++, at += width)
            {
                int value = width == 2 ? (short)(bytes[at] | (bytes[at + 1] << 8))
                    : (bytes[at] << 8 | (bytes[at + 1] << 16) | (bytes[at + 2] << 24)) >> 8;
                samples.Add((physicalLow + ((value - digitalLow) * step)) * unit);
            }
        }

        return new Recording(names[signal], Frequency.FromHertz(counts[signal] / seconds), samples) { Unit = dimension };
    }

    internal static int Choose(string[] names, string? channel, string path)
    {
        if (channel is null)
        {
            return 0;
        }

        int at = Array.FindIndex(names, name => string.Equals(name, channel, StringComparison.OrdinalIgnoreCase));
        if (0 <= at)
        {
            return at;
        }

        return int.TryParse(channel, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && 1 <= number
            && number <= names.Length
            ? number - 1
            : throw new BadRecordingException(RecordingMessages.NoChannel(path, channel, Nearest.Of(channel, names), names));
    }

    private static string Field(byte[] bytes, int at, int width) => Encoding.ASCII.GetString(bytes, at, width).Trim(' ', '\0');

    private static double Real(byte[] bytes, int at, int width, string what, string path) =>
        double.TryParse(Field(bytes, at, width), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Header(path,
                $"its {what} is `{Field(bytes, at, width)}`, which is no number"));

    private static long Whole(byte[] bytes, int at, int width, string what, string path) =>
        Real(bytes, at, width, what, path) is var value && value == Math.Floor(value) && Math.Abs(value) < 1e8
            ? (long)value
            : throw new BadRecordingException(RecordingMessages.Header(path,
                $"its {what} is `{Field(bytes, at, width)}`, which is no whole number"));
}
