namespace FrontEnd.Documents.Sheets;

/// <summary>Writes a design's sheet into a file: the one way for whoever has a document and its figures.</summary>
internal static class SheetWriting
{
    /// <summary>What a sheet's file name ends with where none is typed.</summary>
    public const string Extension = ".html";

    /// <summary>Writes the sheet in the form that the file's extension says.</summary>
    /// <param name="bench">What the built board is put through.</param>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? Write(string path, DesignDocument document, Assessment assessment, IReadOnlyList<Bench.BenchReading> bench) =>
        SheetFormats.WriteFile(new Sheet(document, assessment) { Bench = bench }, path);
}
