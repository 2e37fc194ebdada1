using System.Globalization;

namespace FrontEnd.Documents.Recordings;

/// <summary>How samples are parted into the records of an EDF file.</summary>
/// <param name="Samples">Samples of each channel in a record.</param>
/// <param name="Seconds">Length of a record as the header says it.</param>
/// <param name="Notes">The annotations, which need room in every record.</param>
/// <remarks>
/// A record holds a whole number of samples, its length is a number of at most eight letters, and it has at most 61440 bytes; the file is a
/// whole number of records. Whole seconds are taken where they can be, as EDF recommends, the fewest; else the longest record that fits.
/// </remarks>
internal sealed record EdfLayout(int Samples, string Seconds, EdfNotes Notes)
{
    /// <summary>Most bytes of a record.</summary>
    public const int MostBytes = 61_440;

    /// <summary>Most records that eight letters can count.</summary>
    private const long MostRecords = 99_999_999;

    /// <summary>How far a record's samples over its seconds may be from the rate: the rounding of a double; and of a rate that was written
    /// with ten digits, such as a third of 100, where whole seconds fit it, which is a tenth of a millisecond in a day.</summary>
    private const double SameRate = 1e-14, SameWrittenRate = 1e-9;

    /// <summary>What is no part of a sample, but the rounding of a length times a rate.</summary>
    private const double NoSample = 1e-6;

    /// <summary>The layout of a file; null with a finding where there is none.</summary>
    /// <param name="head">The file.</param>
    /// <param name="remarks">Remarks on the whole file.</param>
    /// <param name="path">The file's name, for the finding.</param>
    public static EdfLayout? Of(RecordingHead head, IReadOnlyList<string> remarks, string path, out Finding? finding)
    {
        finding = null;
        bool isWhole = Math.Abs((head.Length.Seconds * head.Rate.Hertz) - head.Count) <= NoSample;
        IEnumerable<(int Samples, string Seconds)> records = Records(head.Rate.Hertz, head.Channels.Count);
        foreach ((int samples, string seconds) in records.Where(one => isWhole && head.Count % one.Samples == 0 && head.Count / one.Samples <= MostRecords))
        {
            EdfNotes notes = EdfNotes.Of(head, remarks, samples, decimal.Parse(seconds, CultureInfo.InvariantCulture));
            if ((2L * samples * head.Channels.Count) + notes.Width <= MostBytes)
            {
                return new EdfLayout(samples, seconds, notes);
            }
        }

        finding = !records.Any()
            ? RecordingMessages.NoRecord(path, head.Rate, RatesBeside(head.Rate.Hertz, head.Channels.Count))
            : RecordingMessages.NoRecords(path, head.Rate, head.Length, LengthsBeside(head, [.. records]));
        return null;
    }

    /// <summary>Every record that a rate can be parted into, best first: whole seconds, the fewest first, then the longest.</summary>
    private static IEnumerable<(int Samples, string Seconds)> Records(double rate, int channels)
    {
        int most = MostBytes / 2 / channels;
        for (int seconds = 1; Math.Round(rate * seconds) <= most; seconds++)
        {
            double samples = Math.Round(rate * seconds);
            if (1 <= samples && Math.Abs((samples / seconds) - rate) <= SameWrittenRate * rate)
            {
                yield return ((int)samples, seconds.ToString(CultureInfo.InvariantCulture));
            }
        }

        for (int samples = most; 1 <= samples; samples--)
        {
            if (EdfNumber.Text(samples / rate) is { } seconds && seconds.Contains('.', StringComparison.Ordinal)
                && Math.Abs((samples / EdfNumber.Value(seconds)) - rate) <= SameRate * rate)
            {
                yield return (samples, seconds);
            }
        }
    }

    /// <summary>The nearest rates for which there is a record, below and above.</summary>
    private static Frequency[] RatesBeside(double rate, int channels)
    {
        List<decimal> below = [], above = [];
        foreach (decimal seconds in Enumerable.Range(-4, 7).SelectMany(power => (decimal[])[1, 2, 5], (power, one) => one * (decimal)Math.Pow(10, power)))
        {
            decimal samples = Math.Floor((decimal)rate * seconds);

            // A quarter is left for annotations.
            if (2 * (samples + 1) * channels <= MostBytes * 3 / 4)
            {
                below.Add(samples / seconds);
                above.Add((samples + 1) / seconds);
            }
        }

        return [.. below.Where(one => 0 < one).OrderDescending().Take(1).Concat(above.Order().Take(1)).Select(one => Frequency.FromHertz((double)one))];
    }

    /// <summary>The nearest lengths that are a whole number of records, below and above.</summary>
    private static Duration[] LengthsBeside(RecordingHead head, IReadOnlyList<(int Samples, string Seconds)> records)
    {
        decimal exact = Math.Round((decimal)(head.Length.Seconds * head.Rate.Hertz), 6);
        decimal Length((int Samples, string Seconds) one, int more) =>
            (Math.Floor(exact / one.Samples) + more) * decimal.Parse(one.Seconds, CultureInfo.InvariantCulture);
        decimal below = records.Max(one => Length(one, 0)), above = records.Min(one => Length(one, 1));
        return [.. new[] { below, above }.Where(seconds => 0 < seconds).Select(seconds => Duration.FromSeconds((double)seconds))];
    }
}
