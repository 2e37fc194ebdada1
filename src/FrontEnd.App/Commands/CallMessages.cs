using System.Globalization;
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

    public static Finding Call(string message, string command) =>
        Finding.Error(NotUnderstood, "", Lower(Plain(message)), null, $"`{command} --help` lists its arguments and options");

    /// <summary>The parser's message in words of ours where it names a type of the framework.</summary>
    private static string Plain(string message)
    {
        int type = message.IndexOf(" as expected type '", StringComparison.Ordinal);
        string[] quoted = message.Split('\'');
        return type < 0 || quoted.Length < 4 ? message
            : $"`{quoted[1]}` is not {(message.Contains("Double", StringComparison.Ordinal) ? "a number" : "a whole number in range")} for `{quoted[3]}`";
    }

    public static Finding TooManyBuilds(int builds) =>
        Finding.Error(
            ManyBuilds, "", $"{builds} builds are more than the limit of {SpreadOptions.MostBuilds}",
            $"{SpreadOptions.MostBuilds} already need {Memory(SpreadOptions.MostBuilds)} of memory",
            "use fewer: ten thousand give the yield to within half a per cent, a million to within a twentieth of one");

    /// <summary>What so many builds take, said before they are drawn; null where it is not worth a word.</summary>
    public static string? BuildsWant(int builds) =>
        SpreadOptions.ManyBuilds < builds ? $"{builds} builds need up to {Memory(builds)} of memory" : null;

    private static string Memory(int builds) => string.Create(CultureInfo.InvariantCulture, $"{SpreadRun.Memory(builds) / 1e9:0.0} GB");

    public static Finding NoCommand(string word, string? nearest) =>
        Finding.Error(NotUnderstood, "", $"there is no command `{word}`", nearest is null
            ? null
            : $"the nearest is `{nearest}`", "`frontend --help` lists the commands");

    public static Finding NoOption(string option, string? nearest, string command) =>
        Finding.Error(
            UnknownOption, "", $"there is no option `{option}`", nearest is null
                ? "a file name that begins with a hyphen must follow `--`"
                : $"the nearest is `{nearest}`",
            $"`{command} --help` lists its arguments and options");

    public static Finding NoResult(string id, IReadOnlyList<string> nearest) =>
        Finding.Error(
            UnknownResult, "", $"this design has no result `{id}`", nearest.Count == 0
                ? null
                : $"the nearest are {string.Join(", ", nearest.Select(one => $"`{one}`"))}",
            "`frontend check` shows the ids next to their figures");

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

    public static Finding NotInRange(string option, int value, int least, int most) =>
        Finding.Error(UnknownWord, option, $"{value} is outside {least}..{most}", null, "choose a number in this range");

    public static Finding OptionAlone(string option, string needs) =>
        Finding.Error(NotUnderstood, option, $"`{option}` needs `{needs}`, which is not given", null, $"give `{needs}` too, or leave `{option}` out");

    public static Finding Twice(string path) =>
        Finding.Error(SameFileTwice, "", "the same file is given twice", null, "give each file once") with { File = path };

    /// <summary>Of each file that is named more than once.</summary>
    public static IEnumerable<Finding> NamedTwice(IEnumerable<string> files) =>
        files.GroupBy(Path.GetFullPath, StringComparer.Ordinal).Where(group => 1 < group.Count()).Select(group => Twice(group.First()));

    public static Finding NoWord(string option, string word, IEnumerable<string> known, string? nearest) =>
        Finding.Error(UnknownWord, option, $"`{word}` is not a value of `{option}`", nearest is null
            ? null
            : $"the nearest is `{nearest}`", $"use one of {string.Join(", ", known)}");

    public static Finding SaysNothing(string option, string about) =>
        Finding.Error(NotUnderstood, option, $"`{option}` does not apply to {about}", null, "leave it out");

    public static Finding NotADay(string option, string text) =>
        Finding.Error(NoDay, option, $"`{text}` is not a date", null, "write year, month and day with hyphens: 2026-11-26");

    public static Finding Interrupted(string what, string remedy) => Finding.Error(
        Stopped, "", $"interrupted while {what}", "nothing is printed or written: figures from part of the work would be wrong", remedy);

    public static Finding Output(string reason) =>
        Finding.Error(OutputFails, "", $"the output cannot be written: {Lower(reason)}", null, "free some space, or write somewhere else");

    public static Finding NoScreens(string program, string folder) =>
        Finding.Error(ScreensMissing, "", $"the screens cannot be opened: `{program}` is not in the folder of `frontend`, or cannot be run", $"looked in {folder}",
            "keep the files that were published together in one folder; `frontend --help` lists the commands, which need no screens");

    private static string Lower(string text)
    {
        string trimmed = text.TrimEnd('.', ' ');
        return trimmed.Length > 1 && char.IsUpper(trimmed[0]) && !char.IsUpper(trimmed[1])
            ? char.ToLowerInvariant(trimmed[0]) + trimmed[1..]
            : trimmed;
    }
}
