using FrontEnd.Digital;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Coefficients;

/// <summary>Writes a design's digital filters for the firmware: the one way, for the command and for the screens.</summary>
internal static class CoefficientWriting
{
    /// <summary>What the file's name ends with where none is typed.</summary>
    public const string Extension = ".h";

    /// <summary>Writes the filters in the form that the file's extension says.</summary>
    /// <param name="designPath">The design's own file, for messages; null where it has none.</param>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? Write(string path, Design design, string? designPath) =>
        !CoefficientFiles.Knows(path) ? WritingMessages.CoefficientFormat(path, CoefficientFiles.Extensions)
        : SectionsExport.Of(design.Digital, design.Converter.Rate, design.Arithmetic, design.Converter.Bits) is not { } export
            ? WritingMessages.NoFilters(designPath)
        : TextFiles.WriteAtomically(path, CoefficientFiles.Write(export, design.Name, path));
}
