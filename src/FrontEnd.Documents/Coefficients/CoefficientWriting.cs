using FrontEnd.Catalogue;
using FrontEnd.Digital;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Coefficients;

/// <summary>Writes a design's digital filters for the firmware, in its word format and structure: a C header that runs, JSON or CSV.</summary>
public static class CoefficientWriting
{
    /// <summary>What the file's name ends with where none is typed.</summary>
    internal const string Extension = ".h";

    /// <summary>The forms, by the extension of the file.</summary>
    public static IReadOnlyList<string> Extensions => CoefficientFiles.Extensions;

    /// <summary>Writes the filters in the form that the file's extension says.</summary>
    /// <param name="designPath">The design's own file, for messages; null where it has none.</param>
    /// <returns>What went wrong, with the design too; null for nothing.</returns>
    public static Finding? Write(string path, Design design, string? designPath = null) =>
        !CoefficientFiles.Knows(path) ? WritingMessages.CoefficientFormat(path, CoefficientFiles.Extensions)
        : DesignCheck.Run(design).FirstOrDefault(finding => finding.Severity == Severity.Error) is { } error ? error
        : SectionsExport.Of(design.Digital, design.Converter.Rate, design.Arithmetic, design.Converter.Bits) is not { } export
            ? WritingMessages.NoFilters(designPath)
        : TextFiles.WriteAtomically(path, CoefficientFiles.Write(export, design.Name, path));
}
