namespace FrontEnd.Documents.Sizing;

/// <summary>Wording about requirements files.</summary>
public static class SizingMessages
{
    public const string Decided = "FE0751";
    public const string NothingFound = "FE0752";

    internal static Finding DecidedByTheSearch(string key) =>
        new(Decided, Severity.Warning, key, $"`{key}` is what the search decides: what is said about it here has no effect", null,
            "leave it out, or write it into the design that was found");

    /// <summary>No design passes; nothing is written.</summary>
    public static Finding Nothing(string path) =>
        new(NothingFound, Severity.Error, "", "no design meets all requirements, and none is written",
            "the list above says what stops them", "relax one of them") { File = path };
}
