namespace FrontEnd.Documents.Sheets;

/// <summary>The forms of a sheet by the extension of the file.</summary>
public static class SheetFormats
{
    public static IReadOnlyList<string> Extensions { get; } = [".json"];

    public static bool Knows(string path) => Extensions.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    public static string Write(Sheet sheet, string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".JSON" => JsonSheet.Of(sheet),
        _ => throw new ArgumentException($"{path} has no known extension.", nameof(path)),
    };
}
