using System.Globalization;
using System.Text;
using FrontEnd.Bench;
using FrontEnd.Documents.Files;

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
        byte[]? bytes = TextFiles.Bytes(path, Limit, RecordingMessages.TooLarge, out Finding? finding);
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

    /// <summary>What the header says about one signal.</summary>
    /// <param name="Size">Bytes of the header.</param>
    /// <param name="Samples">Samples of the signal in a record.</param>
    /// <param name="Before">Bytes of a record before the signal's.</param>
    /// <param name="Record">Bytes of a record.</param>
    /// <param name="Seconds">Duration of a record.</param>
    private sealed record Signal(string Name, string Dimension, int Size, long Samples, long Before, long Record, double Seconds)
    {
        public required (double Low, double High) Physical { get; init; }

        public required (double Low, double High) Digital { get; init; }

        /// <summary>Number of records; −1 for unknown.</summary>
        public required long Records { get; init; }
    }

    private static Recording Binary(byte[] bytes, string path, string? channel, int width)
    {
        Signal signal = Header(bytes, path, channel, width);
        double unit = RecordingUnits.Volts(signal.Dimension)
            ?? throw new BadRecordingException(RecordingMessages.Unit(path, signal.Dimension));
        Demand(0 < signal.Record && signal.Record <= bytes.Length - signal.Size, path, "it holds no whole record");

        // The number of records may be −1 while recording; the file's length says how many there are.
        (long records, long rest) = Math.DivRem(bytes.Length - signal.Size, signal.Record);
        if (0 <= signal.Records && (records != signal.Records || rest != 0))
        {
            throw new BadRecordingException(RecordingMessages.Early(path, signal.Records, records, rest != 0));
        }

        if (rest != 0)
        {
            throw new BadRecordingException(RecordingMessages.PartOfRecord(path, records));
        }

        var samples = new List<double>((int)Math.Min(int.MaxValue / 2, records * signal.Samples));
        double step = (signal.Physical.High - signal.Physical.Low) / (signal.Digital.High - signal.Digital.Low);
        for (long r = 0; r < records; r++)
        {
            int at = (int)(signal.Size + (r * signal.Record) + signal.Before);
            for (long i = 0; i < signal.Samples; i++, at += width)
            {
                int value = width == 2
                    ? (short)(bytes[at] | (bytes[at + 1] << 8))
                    : (bytes[at] << 8 | (bytes[at + 1] << 16) | (bytes[at + 2] << 24)) >> 8;
                samples.Add((signal.Physical.Low + ((value - signal.Digital.Low) * step)) * unit);
            }
        }

        return new Recording(signal.Name, Frequency.FromHertz(signal.Samples / signal.Seconds), samples) { Unit = signal.Dimension };
    }

    private static Signal Header(byte[] bytes, string path, string? channel, int width)
    {
        Demand(FixedHeader <= bytes.Length, path, $"it has {bytes.Length} bytes, and the header alone has {FixedHeader}");
        bool is24 = bytes[0] == 255;
        Demand(is24 == (width == 3), path, $"its first byte is {bytes[0]}, that of the {(is24 ? "24" : "16")}-bit form");
        int signals = (int)Whole(bytes, 252, 4, "number of signals", path);
        Demand(signals is >= 1 and <= MostSignals, path, $"it says that it has {signals} signals");
        int size = FixedHeader * (signals + 1);
        Demand(size <= bytes.Length, path, $"it ends inside its header: {bytes.Length} of {size} bytes");
        double seconds = Real(bytes, 244, 8, "duration of a record", path);
        Demand(0 < seconds, path, "the duration of a record is not above 0 s");
        string[] names = [.. Enumerable.Range(0, signals).Select(i => Field(bytes, FixedHeader + (16 * i), 16))];
        int signal = Choose(names, channel, path);
        int At(int before, int fieldWidth) => FixedHeader + (before * signals) + (fieldWidth * signal);
        (double, double) Range(int before, string kind) =>
            (Real(bytes, At(before, 8), 8, kind + " minimum", path), Real(bytes, At(before + 8, 8), 8, kind + " maximum", path));

        // Widths before: label 16, transducer 80, dimension 8, physical minimum 8 and maximum 8, digital minimum 8 and maximum 8, prefilter
        // 80, samples 8.
        string dimension = Field(bytes, At(96, 8), 8);
        (double Low, double High) physical = Range(104, "physical"), digital = Range(120, "digital");
        long[] counts = [.. Enumerable.Range(0, signals)
            .Select(i => Whole(bytes, FixedHeader + (216 * signals) + (8 * i), 8, "samples in a record", path))];
        bool makesSense = digital.Low < digital.High && physical.High != physical.Low && Array.TrueForAll(counts, count => 0 <= count);
        Demand(makesSense && 1 <= counts[signal], path, $"the ranges or the number of samples of `{names[signal]}` make no sense");
        return new(names[signal], dimension, size, counts[signal], counts.Take(signal).Sum() * width, counts.Sum() * width, seconds)
        {
            Physical = physical, Digital = digital, Records = Whole(bytes, 236, 8, "number of records", path),
        };
    }

    private static void Demand(bool holds, string path, string otherwise)
    {
        if (!holds)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, otherwise));
        }
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
