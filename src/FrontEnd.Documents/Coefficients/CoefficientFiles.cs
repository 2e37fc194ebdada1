using FrontEnd.Digital;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Documents.Coefficients;

/// <summary>The forms of a coefficient file by the extension of the file.</summary>
internal static class CoefficientFiles
{
    /// <summary>A C header that runs, JSON for programs, CSV for a spreadsheet.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".h", ".json", ".csv"];

    public static bool Knows(string path) => Extensions.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    /// <param name="design">The design's name, for the file's first lines.</param>
    public static string Write(FilterExport export, string design, string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".H" => CoefficientHeader.Of(export, design, Path.GetFileNameWithoutExtension(path)),
        ".JSON" => CoefficientJson.Of(export, design),
        ".CSV" => CoefficientCsv.Of(export),
        _ => throw new ArgumentException($"{path} has no known extension.", nameof(path)),
    };
}
