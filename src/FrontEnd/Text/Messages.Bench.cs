namespace FrontEnd.Text;

/// <content>About tests at the bench.</content>
internal static partial class Messages
{
    public const string RecordingTooShort = "FE0711";
    public const string RecordingRate = "FE0712";
    public const string NotFromRecording = "FE0713";
    public const string UnknownTest = "FE0714";
    public const string ReadingOfOtherKind = "FE0715";
    public const string SampleNotFinite = "FE0716";
    public const string RecordingEnds = "FE0717";

    /// <summary>A test name that the design's bench does not have.</summary>
    public static Finding NoTest(string name, string? nearest, IReadOnlyList<string> known) => new(
        UnknownTest, Severity.Error, "--test", $"there is no test `{name}`", $"the tests are {Listed(known)}",
        nearest is null ? "name one of them" : $"write `{nearest}` if that is intended");

    internal static Finding TooShort(string length, string least) => new(
        RecordingTooShort, Severity.Error, "", $"the recording lasts {length}, but at least {least} are needed",
        "in less, a line or a band cannot be told from chance", "record 60 s");

    internal static Finding Ends(string length, string asked) => new(
        RecordingEnds, Severity.Warning, "", $"the recording ends after {length}, but the test asks for {asked}",
        "a short recording may be a truncated file, and shows less about noise and lines", $"record {asked}, or export the whole recording");

    internal static Finding OtherRate(string recorded, string designed) => new(
        RecordingRate, Severity.Error, DesignKeys.Converter.Rate, $"the recording has {recorded}, but the design {designed}",
        "what folds and what the digital filters do depend on the rate",
        "record at the design's rate, or set converter.rate to the recording's");

    internal static Finding ByInstrument(string name) => new(
        NotFromRecording, Severity.Error, "--test", $"`{name}` is read from an instrument or by eye, not worked out from a recording",
        null, "give the reading in a file of test and reading");

    internal static Finding OtherKind(string name, string given, string wanted) => new(
        ReadingOfOtherKind, Severity.Error, name, $"the reading of `{name}` is in {given}, but {wanted} is expected", null,
        $"write number and unit, in {wanted}");

    internal static Finding NotFinite(long index) => new(
        SampleNotFinite, Severity.Error, "", $"sample {index} of the recording is not a number", null,
        "leave gaps out of the recording to be compared");
}
