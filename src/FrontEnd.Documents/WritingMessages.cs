namespace FrontEnd.Documents;

/// <summary>All wording about files that are to be written.</summary>
internal static class WritingMessages
{
    /// <summary>Code of a file name whose extension says no form.</summary>
    public const string UnknownFormat = "FE0004";

    /// <summary>Code of a file that there is nothing to write into.</summary>
    public const string NothingToWrite = "FE0009";

    /// <summary>Code of letters that the font of printed pages does not have.</summary>
    public const string LettersLacking = "FE1041";

    /// <summary>Something of the design's own texts cannot be printed as it stands.</summary>
    /// <param name="letters">Each once.</param>
    public static Finding Lacking(string path, string letters) =>
        new(LettersLacking, Severity.Warning, "", $"the font of the printed pages lacks {letters}", "each is replaced by a mark",
            "spell it in Latin, Greek or Cyrillic letters, or write the sheet as .html") { File = path };

    /// <summary>The extension says no kind of sheet.</summary>
    public static Finding Format(string path, IEnumerable<string> known) => NoForm(path, "sheet", known);

    /// <summary>The extension says no kind of coefficient file.</summary>
    public static Finding CoefficientFormat(string path, IEnumerable<string> known) => NoForm(path, "coefficient file", known);

    /// <summary>The extension says no kind of file for simulated samples.</summary>
    public static Finding SamplesFormat(string path, IEnumerable<string> known) => NoForm(path, "sample file", known);

    /// <summary>A design without a digital filter has no coefficients.</summary>
    /// <param name="path">The design's file; null where it has none.</param>
    public static Finding NoFilters(string? path) =>
        new(NothingToWrite, Severity.Error, "digital", "the design has no digital filter", null, "add one as [[digital]]") { File = path };

    private static Finding NoForm(string path, string what, IEnumerable<string> known) =>
        new(
            UnknownFormat, Severity.Error, "", Path.GetExtension(path) is { Length: > 0 } extension ? $"`{extension}` is not a known extension of a {what}" : $"the name has no extension, so it is not known which {what} it is to be",
            "the file's extension sets the format",
            $"use one of {string.Join(", ", known)}")
        {
            File = path,
        };
}
