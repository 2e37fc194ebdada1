namespace FrontEnd.Documents.Sizing;

/// <summary>Wording about requirements files.</summary>
internal static class SizingMessages
{
    public const string Decided = "FE0751";
    public const string NothingFound = "FE0752";

    internal static Finding DecidedByTheSearch(string key) =>
        new(Decided, Severity.Warning, key, $"`{key}` is decided by the search and is ignored here", null,
            "leave it out, or set it in the design that is found");

    /// <summary>No design passes; nothing is written.</summary>
    public static Finding Nothing(string path) =>
        new(NothingFound, Severity.Error, "", "no design meets all requirements, so none is written",
            "the list above shows what stopped them", "relax one of them") { File = path };
}
