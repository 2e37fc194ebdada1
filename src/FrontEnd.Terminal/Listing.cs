namespace FrontEnd.Terminal;

/// <summary>What a half-typed path can become.</summary>
internal static class Listing
{
    private const int Most = 200;

    /// <summary>Folders (with a slash at their end) and files that begin as typed; an empty text lists the folder we are in and the files
    /// opened lately.</summary>
    public static IReadOnlyList<string> Of(string typed, FilePurpose purpose, RecentFiles? recent)
    {
        try
        {
            int slash = typed.LastIndexOf('/');
            string folder = slash < 0 ? "" : typed[..(slash + 1)], beginning = typed[(slash + 1)..];
            DirectoryInfo place = new(folder.Length == 0 ? "." : folder);
            IEnumerable<string> folders = !place.Exists
                ? []
                : place.EnumerateDirectories().Where(one =>
                    Fits(one.Name)).Select(one => folder + one.Name + "/").Order(StringComparer.Ordinal);
            IEnumerable<string> files = !place.Exists
                ? []
                : place.EnumerateFiles().Where(one =>
                    Fits(one.Name) && IsWanted(one.Name, purpose)).Select(one => folder + one.Name).Order(StringComparer.Ordinal);
            IEnumerable<string> lately = typed.Length == 0 && purpose == FilePurpose.Open && recent is not null
                ? recent.All.Where(File.Exists)
                : [];
            return [.. files.Concat(lately).Concat(folders).Distinct(StringComparer.Ordinal).Take(Most)];

            bool Fits(string name) =>
                name.StartsWith(beginning, StringComparison.OrdinalIgnoreCase) && (name[0] != '.' || beginning.StartsWith('.'));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or System.Security.SecurityException)
        {
            // A folder that may not be looked into offers nothing; opening says why.
            return [];
        }
    }

    private static bool IsWanted(string name, FilePurpose purpose) => purpose switch
    {
        FilePurpose.Sheet or FilePurpose.Coefficients or FilePurpose.Secret => true,
        FilePurpose.Problems => false,
        FilePurpose.Key => Ends(name, ".json"),
        FilePurpose.Answers or FilePurpose.Students => Ends(name, ".csv"),
        FilePurpose.Marks => Ends(name, ".csv") || Ends(name, ".html") || Ends(name, ".pdf"),
        FilePurpose.Open or FilePurpose.SaveAs => Ends(name, ".toml") || Ends(name, ".json"),
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, "Purpose is not handled."),
    };

    private static bool Ends(string name, string extension) => name.EndsWith(extension, StringComparison.OrdinalIgnoreCase);
}
