using System.Globalization;
using System.Text;
using FrontEnd.Bench;

namespace FrontEnd.Documents.Recordings;

/// <summary>Recordings of the European Data Format's family with 16-bit (.edf) and 24-bit samples (.bdf).</summary>
/// <remarks>A header of 256 bytes and of 256 more for each signal, ASCII fields of fixed width; then records, in each the signals one after
/// the other, samples little-endian. Source: B. Kemp et al., A simple format for exchange of digitized polygraphic recordings,
/// Electroenceph. Clin. Neurophysiol. 82 (1992) 391 (from memory); the 24-bit form differs in its first byte, 255, and in the width of a
/// sample.</remarks>
internal static class BinaryRecording
{
    private const int FixedHeader = 256;
    private const int MostSignals = 512;

    /// <summary>How a signal is called that holds texts and no samples; the 24-bit form has a word of its own.</summary>
    public const string Annotations = "EDF Annotations", WideAnnotations = "BDF Annotations";

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

        /// <summary>True for steps of the converter: a unit that says so, or none where the numbers themselves are the values, or a power of
        /// two of them is one. A range of another kind without a unit says nothing.</summary>
        public bool AreSteps => Dimension.Length == 0
            ? double.IsInteger(Math.Log2((Physical.High - Physical.Low) / (Digital.High - Digital.Low)))
                && Math.Abs((Physical.High * Digital.Low) - (Physical.Low * Digital.High)) <= 1e-9 * Math.Abs(Physical.High * Digital.Low)
            : RecordingUnits.IsSteps(Dimension);
    }

    /// <summary>One channel; throws <see cref="BadRecordingException"/> with the finding where it cannot be read.</summary>
    /// <param name="channel">Its name, or its number from 1; null for the first.</param>
    /// <param name="width">Bytes of a sample.</param>
    public static Recording Read(RecordingBytes file, string? channel, int width)
    {
        string path = file.Path;
        Signal signal = Header(file, channel, width);
        bool isSteps = signal.AreSteps;
        double unit = isSteps ? 1 : RecordingUnits.Volts(signal.Dimension)
            ?? throw new BadRecordingException(signal.Dimension.Length == 0
                ? RecordingMessages.NoDimension(path, signal.Name)
                : RecordingMessages.Unit(path, signal.Dimension));
        Demand(0 < signal.Record && signal.Record <= file.Length - signal.Size, path, "it holds no whole record");

        // The number of records may be −1 while recording; the file's length says how many there are.
        (long records, long rest) = Math.DivRem(file.Length - signal.Size, signal.Record);
        if (0 <= signal.Records && (records != signal.Records || rest != 0))
        {
            throw new BadRecordingException(RecordingMessages.Early(path, signal.Records, records, rest != 0));
        }

        if (rest != 0)
        {
            throw new BadRecordingException(RecordingMessages.PartOfRecord(path, records));
        }

        file.Expect(1);
        return new Recording(signal.Name, Frequency.FromHertz(signal.Samples / signal.Seconds),
            new BinarySamples(file, signal, records, unit, width), isSteps) { Unit = isSteps ? "counts" : signal.Dimension };
    }

    /// <summary>The signal's part of every record.</summary>
    private sealed class BinarySamples(RecordingBytes file, Signal signal, long records, double unit, int width) : ISamples
    {
        /// <summary>Bytes that are read at once, of several records where they are short.</summary>
        private const int Piece = 256 * 1024;

        public long Count => records * signal.Samples;

        public void Read(Action<ReadOnlySpan<double>> take)
        {
            byte[] held = new byte[Piece];
            double[] samples = new double[8192];
            long from = 0, to = 0;
            for (long record = 0; record < records; record++)
            {
                long at = signal.Size + (record * signal.Record) + signal.Before, end = at + (signal.Samples * width);
                while (at < end)
                {
                    int bytes = (int)Math.Min(end - at, samples.Length * width);
                    if (to < at + bytes)
                    {
                        (from, to) = (at, Math.Min(file.Length, at + Piece));
                        file.Read(from, held.AsSpan(0, (int)(to - from)));
                    }

                    Decode(held.AsSpan((int)(at - from), bytes), samples);
                    take(samples.AsSpan(0, bytes / width));
                    at += bytes;
                }
            }
        }

        private void Decode(ReadOnlySpan<byte> bytes, Span<double> samples)
        {
            double step = (signal.Physical.High - signal.Physical.Low) / (signal.Digital.High - signal.Digital.Low);
            for (int i = 0, at = 0; at < bytes.Length; i++, at += width)
            {
                int value = width == 2
                    ? (short)(bytes[at] | (bytes[at + 1] << 8))
                    : (bytes[at] << 8 | (bytes[at + 1] << 16) | (bytes[at + 2] << 24)) >> 8;
                samples[i] = (signal.Physical.Low + ((value - signal.Digital.Low) * step)) * unit;
            }
        }
    }

    private static Signal Header(RecordingBytes file, string? channel, int width)
    {
        string path = file.Path;
        Demand(FixedHeader <= file.Length, path, $"it has {file.Length} bytes, and the header alone has {FixedHeader}");
        byte[] bytes = new byte[Math.Min(file.Length, FixedHeader * (MostSignals + 1))];
        file.Read(0, bytes);
        bool is24 = bytes[0] == 255;
        Demand(is24 == (width == 3), path, $"its first byte is {bytes[0]}, that of the {(is24 ? "24" : "16")}-bit form");
        int signals = (int)Whole(bytes, 252, 4, "number of signals", path);
        Demand(signals is >= 1 and <= MostSignals, path, $"it says that it has {signals} signals");
        int size = FixedHeader * (signals + 1);
        Demand(size <= file.Length, path, $"it ends inside its header: {file.Length} of {size} bytes");
        double seconds = Real(bytes, 244, 8, "duration of a record", path);
        Demand(0 < seconds, path, "the duration of a record is not above 0 s");
        string[] names = [.. Enumerable.Range(0, signals).Select(i => Field(bytes, FixedHeader + (16 * i), 16))];
        int signal = SignalOf(names, channel, path);
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
        Demand(makesSense && 1 <= counts[signal], path, $"the ranges or the number of samples of `{names[signal]}` are not valid");
        return new(names[signal], dimension, size, counts[signal], counts.Take(signal).Sum() * width, counts.Sum() * width, seconds)
        {
            Physical = physical, Digital = digital, Records = Whole(bytes, 236, 8, "number of records", path),
        };
    }

    /// <summary>The signal that is asked for; without a wish the first with samples.</summary>
    private static int SignalOf(string[] names, string? channel, string path)
    {
        static bool HoldsTexts(string name) => name is Annotations or WideAnnotations;
        int first = channel is null ? Array.FindIndex(names, name => !HoldsTexts(name)) : -1;
        int signal = 0 <= first ? first : ChannelChoice.Of(names, channel, path);
        return HoldsTexts(names[signal])
            ? throw new BadRecordingException(RecordingMessages.Annotations(path, names[signal], Array.FindAll(names, name => !HoldsTexts(name))))
            : signal;
    }

    private static void Demand(bool holds, string path, string otherwise)
    {
        if (!holds)
        {
            throw new BadRecordingException(RecordingMessages.Header(path, otherwise));
        }
    }

    private static string Field(byte[] bytes, int at, int width) => Encoding.ASCII.GetString(bytes, at, width).Trim(' ', '\0');

    private static double Real(byte[] bytes, int at, int width, string what, string path) =>
        double.TryParse(Field(bytes, at, width), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value)
            ? value
            : throw new BadRecordingException(RecordingMessages.Header(path,
                $"its {what} is `{Field(bytes, at, width)}`, which is not a number"));

    private static long Whole(byte[] bytes, int at, int width, string what, string path) =>
        Real(bytes, at, width, what, path) is var value && value == Math.Floor(value) && Math.Abs(value) < 1e8
            ? (long)value
            : throw new BadRecordingException(RecordingMessages.Header(path,
                $"its {what} is `{Field(bytes, at, width)}`, which is not a whole number"));
}
