namespace FrontEnd.Text;

/// <summary>Wording about values that nobody knows.</summary>
internal static partial class Messages
{
    public const string CannotBeUnknown = "FE0990";
    public const string RequirementUnknown = "FE0991";
    public const string RangeReversed = "FE0992";
    public const string PartlyKnown = "FE0993";
    public const string NoSuchDevice = "FE0994";

    /// <summary>A field that has no usual range.</summary>
    public static Finding NotUnknown(string key, string example) =>
        Finding.Error(CannotBeUnknown, key, $"{key} cannot be \"unknown\": there is no usual range to draw it from", null,
            $"give the value, or the range in which it lies, such as {example}");

    /// <summary>A limit that is said to be unknown.</summary>
    public static Finding NoLimitUnknown(string key) =>
        Finding.Error(RequirementUnknown, key, $"{key} cannot be unknown or a range: it is a requirement", null,
            "give one value, or leave it out");

    /// <summary>Ends in the wrong order.</summary>
    public static Finding EndsReversed(string key, string least, string greatest) =>
        Finding.Error(RangeReversed, key, $"{key} lies between {least} and {greatest}, and the first is not below the second", null,
            "write the least value first; where they are the same, write one value");

    /// <summary>A command that wants every value.</summary>
    public static Finding NeedsAll(IReadOnlyList<string> keys) =>
        Finding.Error(PartlyKnown, "", $"the design leaves {keys.Count} value{(keys.Count == 1 ? "" : "s")} open: {Listed(keys).Replace(" or `", " and `", StringComparison.Ordinal)}",
            "a single figure for an unknown value would be invented", "give each a single value; `frontend check` shows what can be computed without them");

    /// <summary>Why nothing is said of a figure whose limit could not be read.</summary>
    internal const string LimitUnread = "its limit could not be read";

    /// <summary>No design that the unknown values allow can be worked out.</summary>
    internal static Finding NothingDrawn(int draws) =>
        Finding.Error(NoSuchDevice, "", $"none of {draws} designs that the unknown values allow can be evaluated", "the known values contradict the usual ranges",
            "check the known values, or give ranges of your own");
}
