namespace FrontEnd.Documents.Recordings;

/// <summary>All wording about files of samples and readings.</summary>
internal static class RecordingMessages
{
    public const string BadHeader = "FE0741";
    public const string UnknownUnit = "FE0742";
    public const string UnknownChannel = "FE0743";
    public const string BadSample = "FE0744";
    public const string BadReading = "FE0745";
    public const string RecordingTooLarge = "FE0746";
    public const string TestNeeded = "FE0747";
    public const string UnclearDecimals = "FE0753";
    public const string UnevenTimes = "FE0754";
    public const string EndsEarly = "FE0755";
    public const string RecordingChanged = "FE0985";
    public const string RowTooLong = "FE0986";

    /// <summary>The channel asked for holds annotations.</summary>
    public const string NoSamples = "FE1060";

    /// <summary>A rate that no record of whole samples has.</summary>
    public const string RateHasNoRecord = "FE1061";

    /// <summary>A length that is no whole number of records.</summary>
    public const string LengthHasNoRecords = "FE1062";

    /// <summary>Steps that have more digits than a header has room for.</summary>
    public const string StepsTooWide = "FE1063";

    /// <summary>A year that two digits cannot say.</summary>
    public const string YearOutOfRange = "FE1064";

    internal static Finding Header(string path, string what) =>
        Error(BadHeader, $"the recording cannot be read: {what}", "the header is ASCII of fixed widths, 256 bytes and 256 for each signal",
        "export it again", path);

    internal static Finding Unit(string path, string unit) =>
        Error(UnknownUnit, $"`{unit}` is not a unit for samples", "samples are volts at the electrodes, or converter counts",
            "use V, mV, µV, nV or counts, such as `ch1 [µV]` at the head of the column", path);

    internal static Finding Annotations(string path, string label, IReadOnlyList<string> names) =>
        Error(NoSamples, $"`{label}` holds annotations, not samples", names.Count == 0 ? "the file has no other signal" : $"the channels are {Messages.Listed([.. names.Take(24)])}",
            names.Count == 0 ? "export the recording with its samples" : "name one of them, or give its number", path);

    internal static Finding NoDimension(string path, string name) =>
        Error(UnknownUnit, $"`{name}` does not state the unit of its samples", "samples are volts at the electrodes, or converter counts",
            "export it again with its unit: V, mV, uV or nV", path);

    internal static Finding NoRecord(string path, Frequency rate, IReadOnlyList<Frequency> beside) =>
        Error(RateHasNoRecord, $"{QuantityText.FormatExact(rate)} cannot be written as EDF: no record has a whole number of samples, a length of eight characters and at most {EdfLayout.MostBytes} bytes",
            null, $"{(beside.Count == 0 ? "" : $"set {DesignKeys.Converter.Rate} to {Either(beside)}, the nearest that {(beside.Count == 1 ? "fits" : "fit")}, or ")}write a .csv file", path);

    internal static Finding NoRecords(string path, Frequency rate, Duration length, IReadOnlyList<Duration> beside) =>
        Error(LengthHasNoRecords, $"{QuantityText.FormatExact(length)} at {QuantityText.FormatExact(rate)} cannot be written as EDF: it is not a whole number of records",
            "a record has a whole number of samples, a length of eight characters and at most 61440 bytes",
            $"{(beside.Count == 0 ? "" : $"use {Either(beside)}, the nearest that {(beside.Count == 1 ? "fits" : "fit")}, or ")}write a .csv file", path);

    internal static Finding WideSteps(string path, string channel, double largest) =>
        Error(StepsTooWide, $"the counts of `{channel}` go up to {QuantityText.FormatTrimmed(largest, "1", 12)}, but the header has only eight characters for that number",
            null, "leave --counts out, or write a .csv file", path);

    internal static Finding Year(string path, int year, int first, int last) =>
        Error(YearOutOfRange, $"the year {year} cannot be written as EDF, whose two digits stand for {first} to {last}", null, "give --date a day in those years", path);

    private static string Either<T>(IReadOnlyList<T> values)
        where T : struct, IQuantity => string.Join(" or ", values.Select(value => QuantityText.FormatExact(value)));

    internal static Finding TimeUnit(string path, string unit) =>
        Error(UnknownUnit, $"`{unit}` is not a unit for the time column", "the rate follows from the times",
            "use s, ms, µs or min, such as `time [s]` at the head of the column", path);

    internal static Finding NoChannel(string path, string channel, string? nearest, IReadOnlyList<string> names) =>
        Error(UnknownChannel, $"there is no channel `{channel}`", $"the channels are {Messages.Listed([.. names.Take(24)])}",
            nearest is null ? "name one of them, or give its number" : $"did you mean `{nearest}`?", path);

    /// <summary>A table without a single row of numbers.</summary>
    internal static Finding NoRows(string path) =>
        Error(BadSample, "the file holds no samples", "no row of numbers stands in it", "write one row per sample, numbers separated by commas, with decimal points", path);

    internal static Finding Sample(string path, int line, string text) =>
        Error(BadSample, $"`{text}` is not a number", null, "write one row per sample, numbers separated by commas, with decimal points",
            path) with { Line = line };

    /// <summary>A row of more or fewer cells than the first.</summary>
    internal static Finding Ragged(string path, int line, int cells, int first) =>
        Error(BadSample, $"the row has {Cells(cells)}, but the first has {Cells(first)}", "commas separate the columns, so a decimal comma splits a number in two",
            "write one row per sample, numbers separated by commas, with decimal points; or put semicolons between the columns", path) with { Line = line };

    /// <summary>Nothing but whole numbers in pairs, without a heading.</summary>
    internal static Finding DecimalCommas(string path, int cells) =>
        Error(UnclearDecimals, $"every row is {cells} whole numbers with commas between them: columns of counts, or numbers with a decimal comma",
            "no heading shows how many columns there are",
            "give the columns a heading, such as `ch1,ch2`, or write decimal points, or put semicolons between the columns", path);

    internal static Finding TimeBack(string path, int line, string time) =>
        Error(UnevenTimes, $"the time goes back to `{time}`", "the rate follows from the times", "export it in the order in which it was recorded",
            path) with { Line = line };

    internal static Finding Uneven(string path, long sample, string late) =>
        Error(UnevenTimes, $"the times are uneven: sample {sample} is off by {late}", "samples were lost, or the rate changed",
            "cut out a part without a gap", path);

    internal static Finding Early(string path, long said, long there, bool isPart) =>
        Error(EndsEarly, $"the header says {said} records, but {there}{(isPart ? " and a part of one" : "")} are there",
            "the file was cut, or was not closed", "export it again", path);

    internal static Finding PartOfRecord(string path, long there) =>
        Error(EndsEarly, $"the file ends within a record, after {there} whole ones", "the file was cut, or was not closed", "export it again",
            path);

    private static string Cells(int count) => count == 1 ? "1 cell" : $"{count} cells";

    internal static Finding Reading(string path, int line, string what) =>
        Error(BadReading, what, null, "write one test and its reading per line, such as `shorted, 0.5 µV`", path) with { Line = line };

    internal static Finding EndlessPipe(string path, long limit) =>
        Error(RecordingTooLarge, $"the pipe or device sends more than the {limit} bytes that are accepted from one",
            "it may never end, and all of it is held in memory", "write the recording to a file and give that: a file may be of any size",
            path);

    internal static Finding ReadingsTooLarge(string path, long bytes, long limit) =>
        Error(RecordingTooLarge, $"the readings have {bytes} bytes, but at most {limit} are read", null, "check that it is the right file",
            path);

    /// <summary>A file that has other bytes at a further reading than at the first.</summary>
    internal static Finding Changed(string path) =>
        Error(RecordingChanged, "the recording changed while it was being read", "it is read more than once, and is not held in memory",
            "wait until it is complete, or use a copy", path);

    internal static Finding LongRow(string path, int line, int longest) =>
        Error(RowTooLong, $"the row has more than {longest} characters", "a quotation mark is not closed, or the file is not text",
            "write one row per sample, numbers separated by commas, with decimal points", path) with { Line = line };

    /// <summary>A recording without the name of its test.</summary>
    public static Finding NeedsTest(string path) =>
        Error(TestNeeded, "the recorded test is not named",
            "a file of readings begins with the line `test,reading`; anything else is a recording", "add --test, such as `--test shorted`",
            path);

    private static Finding Error(string code, string message, string? note, string? help, string path) =>
        new(code, Severity.Error, "", message, note, help) { File = path };
}
