namespace FrontEnd.Documents.Sheets;

/// <summary>The forms of a sheet by the extension of the file.</summary>
public static class SheetFormats
{
    /// <summary>HTML for print, Markdown for a repository, CSV for the parts, JSON for programs.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".html", ".md", ".csv", ".json"];

    public static bool Knows(string path) => Extensions.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    public static string Write(Sheet sheet, string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HTML" => HtmlSheet.Of(sheet),
        ".MD" => MarkdownSheet.Of(sheet),
        ".CSV" => CsvSheet.Of(sheet),
        ".JSON" => AnswerJson.Of(sheet, "sheet"),
        _ => throw new ArgumentException($"{path} has no known extension.", nameof(path)),
    };
}
