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

    /// <summary>How any test of a device is done.</summary>
    internal const string OnTheTable = "with nobody wearing the device, running from its battery on a table";

    /// <summary>The simplest fixture.</summary>
    internal const string JoinedByWire = "all its electrodes joined by wire";

    /// <summary>A recording on it.</summary>
    internal const string ShortedMinute = JoinedByWire + ", record a minute";

    private const int MostNamed = 4;

    /// <summary>A command that wants every value.</summary>
    /// <param name="keys">What is not known, what the owner can ask for first.</param>
    public static Finding NeedsAll(IReadOnlyList<string> keys) =>
        Finding.Error(PartlyKnown, "", NotKnown(keys), "a single figure for an unknown value would be invented",
            "`frontend check DESIGN` shows what can be said in intervals, `frontend sheet DESIGN --plain -o page.html` as a page; `frontend bench DESIGN` says how a recording narrows them; a value that you learn goes into the file");

    /// <summary>The same on the screens.</summary>
    /// <param name="keys">What is not known.</param>
    /// <param name="way">The keys that lead to the intervals.</param>
    public static Finding NeedsAllOnScreens(IReadOnlyList<string> keys, string way) => NeedsAll(keys) with { Help = $"{way} shows what can be said in intervals; a value that you learn goes into its field" };

    /// <summary>How much is not known, as a sentence without its full stop.</summary>
    internal static string NotKnown(IReadOnlyList<string> keys)
    {
        string[] named = [.. keys.Take(keys.Count <= MostNamed ? MostNamed : MostNamed - 1)];
        string all = Listed(named).Replace(" or `", " and `", StringComparison.Ordinal);
        return keys.Count == 1 ? $"1 value of the design is not known: {all}"
            : $"{keys.Count} values of the design are not known{(named.Length < keys.Count ? ", such as" : ":")} {all}";
    }

    /// <summary>Why nothing is said of a figure whose limit could not be read.</summary>
    internal const string LimitUnread = "its limit could not be read";

    /// <summary>No design that the unknown values allow can be worked out.</summary>
    internal static Finding NothingDrawn(int draws) =>
        Finding.Error(NoSuchDevice, "", $"none of {draws} designs that the unknown values allow can be evaluated", "the known values contradict the usual ranges",
            "check the known values, or give ranges of your own");
}

/// <summary>A recording that could be made, and what it would narrow.</summary>
/// <param name="Fixture">What stands in the electrodes' place: "all its electrodes joined by wire".</param>
/// <param name="Option">What <c>--fixture</c> takes for it.</param>
/// <param name="Share">In how many of the readings that the file allows it narrows anything.</param>
/// <param name="Keys">What it narrows, the most first.</param>
internal sealed record WorthRecording(string Fixture, string Option, Ratio Share, IReadOnlyList<string> Keys)
{
    /// <summary>"narrows amplifier.gain in 65 % of the readings that the file allows".</summary>
    public string Effect => $"narrows {string.Join(", ", Keys)} in {QuantityText.FormatPercent(Share, 2)} of the readings that the file allows";

    public override string ToString() => $"{Fixture} (`--fixture {Option}`) {Effect}";
}
