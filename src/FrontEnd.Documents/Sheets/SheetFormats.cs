namespace FrontEnd.Documents.Sheets;

/// <summary>The forms of a sheet by the extension of the file.</summary>
public static class SheetFormats
{
    /// <summary>HTML for print, Markdown for a repository, CSV for the parts, JSON for programs.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".html", ".md", ".csv", ".json"];

    /// <summary>Those that show a page to be read: of the one for a layman, and of a design of which something is not known.</summary>
    public static IReadOnlyList<string> Pages { get; } = [".html", ".md"];

    public static bool Knows(string path) => Knows(path, Extensions);

    /// <param name="path">The file.</param>
    /// <param name="known">The extensions that there are.</param>
    public static bool Knows(string path, IReadOnlyList<string> known) => known.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    public static string Write(Sheet sheet, string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HTML" => HtmlSheet.Of(sheet),
        ".MD" => MarkdownSheet.Of(sheet),
        ".CSV" => CsvSheet.Of(sheet),
        ".JSON" => AnswerJson.Of(sheet, "sheet"),
        _ => throw new ArgumentException($"{path} has no known extension.", nameof(path)),
    };
}
