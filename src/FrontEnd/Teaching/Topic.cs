namespace FrontEnd.Teaching;

/// <summary>What a problem is about.</summary>
internal enum Topic
{
    Noise,
    Gain,
    Converter,
    Sampling,
    Cmrr,
    Electrodes,
    Filters,
    Notch,
    Drive,
    Safety,
    WholeChain,
}

/// <summary>The topics as they are written in calls, sheets and keys.</summary>
internal static class Topics
{
    public static IReadOnlyList<string> Words { get; } = [.. Enum.GetValues<Topic>().Select(Word)];

    public static string Word(Topic topic) => topic switch
    {
        Topic.Noise => "noise",
        Topic.Gain => "gain",
        Topic.Converter => "converter",
        Topic.Sampling => "sampling",
        Topic.Cmrr => "cmrr",
        Topic.Electrodes => "electrodes",
        Topic.Filters => "filters",
        Topic.Notch => "notch",
        Topic.Drive => "drive",
        Topic.Safety => "safety",
        Topic.WholeChain => "whole-chain",
        _ => throw new ArgumentOutOfRangeException(nameof(topic), topic, "Topic is not handled."),
    };

    /// <summary>Null for a word that names none.</summary>
    public static Topic? Find(string word) =>
        Enum.GetValues<Topic>().Where(topic => string.Equals(Word(topic), word, StringComparison.OrdinalIgnoreCase))
            .Select(topic => (Topic?)topic).FirstOrDefault();
}
