using System.Globalization;
using FrontEnd.Documents.Files;
using FrontEnd.Spread;

namespace FrontEnd.App.Commands;

/// <summary>All wording about calls of the program.</summary>
internal static class CallMessages
{
    public const string NotUnderstood = "FE0001";
    public const string UnknownResult = "FE0002";
    public const string FileExists = "FE0003";
    public const string SameFileTwice = "FE0005";
    public const string OutputFails = "FE0006";
    public const string UnknownOption = "FE0007";
    public const string UnknownWord = "FE0008";
    public const string NothingToWrite = FrontEnd.Documents.WritingMessages.NothingToWrite;
    public const string Stopped = "FE0010";
    public const string ScreensMissing = "FE0970";

    /// <summary>More devices than may be drawn.</summary>
    public const string ManyBuilds = "FE0975";

    /// <summary>A day that is written in another way, or that no calendar has.</summary>
    public const string NoDay = "FE1040";

    /// <summary>A number that is not whole, or not in its range.</summary>
    public const string WholeNumber = "FE0815";

    /// <summary>A value behind an option that takes none.</summary>
    public const string FlagWithValue = "FE1081";

    /// <summary>A word of the call that is empty or holds a sign that nobody can see.</summary>
    public const string EmptyWord = "FE1082";

    /// <summary>Sampling rates none of which can be worked out.</summary>
    public const string RatesUnusable = "FE1099";

    /// <summary>JSON of what is no answer.</summary>
    public const string NoJson = "FE1083";

    /// <summary>A call that is not understood, told by what it lacks or has too much.</summary>
    /// <param name="because">The fact; null where the message is the fact.</param>
    public static Finding Call(string message, string command, string? because = null) =>
        Finding.Error(NotUnderstood, command, message, because, Help(command));

    /// <param name="what">What the command's help says of it.</param>
    public static Finding NoArgument(string name, string? what, string command) =>
        Call($"`{name}` is missing", command, what is null ? null : $"{name}: {what}");

    /// <inheritdoc cref="NoArgument"/>
    public static Finding OptionMissing(string option, string? what, string command) =>
        Call($"`{option}` is missing", command, what is null ? null : $"{option}: {what}");

    /// <inheritdoc cref="NoArgument"/>
    public static Finding NoValue(string option, string? what, string command) =>
        Finding.Error(NotUnderstood, option, $"`{option}` is given without a value", what is null ? null : $"{option}: {what}", Help(command));

    public static Finding ManyValues(string option, string command) =>
        Finding.Error(NotUnderstood, option, $"`{option}` is given more than once", "it takes one value", $"give it once; {Help(command)}");

    public static Finding TooMuch(string word, string command) =>
        Call($"`{word}` is one word too many", command, "the command takes no further argument");

    public static Finding NoInner(string word, IReadOnlyList<string> known, string? nearest, string command) =>
        Call($"`{command}` has no command `{word}`", command, nearest is null ? $"the commands below it are {string.Join(", ", known)}" : $"the nearest is `{nearest}`");

    /// <summary>What the library that reads calls refuses for a reason that is not looked for.</summary>
    public static Finding NotTaken(string command) => Call("the call is not understood", command);

    /// <summary>A flag is written alone.</summary>
    public static Finding NoValueTaken(string option, string value, string command) =>
        Finding.Error(FlagWithValue, option, $"`{option}` takes no value, and is given `{value}`", "it is on where it is written, and off where it is not",
            $"write `{option}` alone, or leave it out; {Help(command)}");

    /// <param name="place">The option or argument.</param>
    public static Finding Empty(string place, bool isEmpty, string command) =>
        Finding.Error(EmptyWord, place, isEmpty ? "its value is empty" : "its value holds a sign that nobody can see", "no file, name or number is written so",
            $"write a value, or leave it out; {Help(command)}");

    /// <summary>What is printed is no answer that JSON could hold.</summary>
    /// <param name="printed">What it is: "a script for a shell".</param>
    public static Finding JsonOf(string printed, string command, string? withFiles = null) =>
        Finding.Error(NoJson, "--json", $"`--json` does not apply to {printed}", withFiles, $"leave `--json` out; {Help(command)}");

    public static Finding NotWhole(string option, string text, string range) =>
        Finding.Error(WholeNumber, option, $"`{text}` is not a whole number", "it is written in digits, without a point, a comma, a unit or a power of ten",
            text.AsSpan().Count('.') == 1 && NumberMeant.Ungrouped(text) is { } many && text.Split('.')[0] is var few ? $"write `{many}` if the point groups thousands, `{few}` if it is a decimal sign"
            : NumberMeant.Whole(text) is { } whole ? $"write `{whole}`" : range.Length == 0 ? "give a whole number" : $"give a whole number from {range}");

    private static string Help(string command) => $"`{command} --help` lists its arguments and options";

    public static Finding TooManyBuilds(long builds) =>
        Finding.Error(
            ManyBuilds, "--builds", $"{builds} builds are more than the limit of {SpreadOptions.MostBuilds}",
            $"{SpreadOptions.MostBuilds} already need {Memory(SpreadOptions.MostBuilds)} of memory",
            "use fewer: ten thousand give the yield to within half a per cent, a million to within a twentieth of one");

    /// <summary>What so many builds take, said before they are drawn; null where it is not worth a word.</summary>
    public static string? BuildsWant(int builds) =>
        SpreadOptions.ManyBuilds < builds ? $"{builds} builds need up to {Memory(builds)} of memory" : null;

    private static string Memory(int builds) => string.Create(CultureInfo.InvariantCulture, $"{SpreadRun.Memory(builds) / 1e9:0.0} GB");

    public static Finding NoCommand(string word, string? nearest) =>
        Finding.Error(NotUnderstood, "frontend", $"there is no command `{word}`", nearest is null
            ? null
            : $"the nearest is `{nearest}`", "`frontend --help` lists the commands");

    /// <summary>A design, over which the screens open, with words behind it.</summary>
    public static Finding DesignAndMore(string design, IReadOnlyList<string> more) =>
        Finding.Error(NotUnderstood, "frontend", $"a design alone opens the screens, and `{more[0]}` stands behind it", "what is done with a design without the screens is a command in front of it",
            $"leave `{more[0]}` out, or write a command, such as `frontend check {design}`");

    public static Finding NoOption(string option, string? nearest, string command) =>
        Finding.Error(
            UnknownOption, command, $"there is no option `{option}`", nearest is null
                ? "a file name that begins with a hyphen must follow `--`"
                : $"the nearest is `{nearest}`",
            $"`{command} --help` lists its arguments and options");

    public static Finding NoResult(string id, IReadOnlyList<string> nearest) =>
        Finding.Error(
            UnknownResult, id, $"this design has no result `{id}`", nearest.Count == 0
                ? null
                : $"the nearest are {string.Join(", ", nearest.Select(one => $"`{one}`"))}",
            "`frontend check --all` shows the ids next to their figures");

    public static Finding Exists(string path) =>
        Finding.Error(FileExists, "", "the file already exists", "a design is never overwritten",
            "choose another name, or remove the file first") with { File = path };

    public static Finding NoCoefficients(string path) =>
        Finding.Error(NothingToWrite, "", "an analogue filter has parts, not coefficients", null,
            "give the sampling rate, `--rate`, for a digital filter") with { File = path };

    public static Finding RoundedUnstable(string word) =>
        Finding.Error(NothingToWrite, "", $"rounded to {word}, a pole lies on or outside the unit circle",
            "the response of such a filter never decays",
            "use a longer word, or decimate first so that the corner is a larger share of the rate");

    public static Finding NotInRange(string option, string value, string range, string code = WholeNumber) =>
        Finding.Error(code, option, $"`{value}` is outside {range}", null, $"give {option} a whole number from {range}");

    public static Finding OptionAlone(string option, string needs) =>
        Finding.Error(NotUnderstood, option, $"`{option}` needs `{needs}`, which is not given", null, $"give `{needs}` too, or leave `{option}` out");

    public static Finding Twice(string path) =>
        Finding.Error(SameFileTwice, "", "the same file is given twice", null, "give each file once") with { File = path };

    /// <summary>Of each file that is named more than once.</summary>
    public static IEnumerable<Finding> NamedTwice(IEnumerable<string> files) =>
        files.Where(file => file.Length != 0).GroupBy(Path.GetFullPath, StringComparer.Ordinal).Where(group => 1 < group.Count()).Select(group => Twice(group.First()));

    public static Finding NoWord(string option, string word, IEnumerable<string> known, string? nearest) =>
        Finding.Error(UnknownWord, option, $"`{word}` is not a value of `{option}`", nearest is null
            ? null
            : $"the nearest is `{nearest}`", $"use one of {string.Join(", ", known)}");

    public static Finding SaysNothing(string option, string about) =>
        Finding.Error(NotUnderstood, option, $"`{option}` does not apply to {about}", null, "leave it out");

    /// <param name="place">What names the rates.</param>
    public static Finding NoRate(string place, string because) =>
        Finding.Error(RatesUnusable, place, "no sampling rate can be recommended", because, "compare rates above twice the upper edge of the band");

    public static Finding NotAShare(string option, string text) =>
        Finding.Error(NotUnderstood, option, $"`{text}` is not a share", "a share is a number from 0 to 100, in per cent",
            NumberMeant.Readings(text) is [var one] && one != text && double.TryParse(one.TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double share) && share is >= 0 and <= 100
                ? $"write `{one}`: the decimal sign is a point" : "write it as 99%");

    /// <summary>Frequencies that are not written with commas between them.</summary>
    public static string Listed(IEnumerable<string> frequencies) => $"write `{string.Join(',', frequencies)}`";

    public static Finding NotADay(string option, string text) =>
        Finding.Error(NoDay, option, $"`{text}` is not a date", null, "write year, month and day with hyphens: 2026-11-26");

    public static Finding Interrupted(string what, string remedy) => Finding.Error(
        Stopped, "", $"interrupted while {what}", "nothing is printed or written: figures from part of the work would be wrong", remedy);

    public static Finding Output(IOException problem)
    {
        (string because, string help) = FileTrouble.Of(problem, "", isWritten: true);
        return Finding.Error(OutputFails, "the standard output", "the output cannot be written", because, help);
    }

    public static Finding NoScreens(string program, string folder) =>
        Finding.Error(ScreensMissing, "", $"the screens cannot be opened: `{program}` is not in the folder of `frontend`, or cannot be run", $"looked in {folder}",
            "keep the files that were published together in one folder; `frontend --help` lists the commands, which need no screens");
}
