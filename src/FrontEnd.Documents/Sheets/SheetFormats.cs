using System.Text;
using FrontEnd.Documents.Files;

namespace FrontEnd.Documents.Sheets;

/// <summary>The forms of a sheet by the extension of the file.</summary>
public static class SheetFormats
{
    /// <summary>The form that has pages, on which a day can stand.</summary>
    public const string Printed = ".pdf";

    /// <summary>PDF and HTML for print, Markdown for a repository, CSV for the parts, JSON for programs.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".html", Printed, ".md", ".csv", ".json"];

    /// <summary>Those that show a page to be read: of the one for a layman, and of a design of which something is not known.</summary>
    public static IReadOnlyList<string> Pages { get; } = [".html", Printed, ".md"];

    /// <summary>True where the file's extension is one of <see cref="Extensions"/>.</summary>
    public static bool Knows(string path) => Knows(path, Extensions);

    /// <param name="path">The file.</param>
    /// <param name="known">The extensions that there are.</param>
    internal static bool Knows(string path, IReadOnlyList<string> known) => known.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase);

    /// <summary>Writes the sheet so that the file is never half written. One whose design has errors is not written: it would show figures of another.</summary>
    /// <param name="warn">Hears what is written, but not as it stands.</param>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? WriteFile(Sheet sheet, string path, Action<Finding>? warn = null)
    {
        if (Refusal(sheet, path) is { } refused)
        {
            return refused;
        }

        if (!Knows(path, [Printed]))
        {
            return TextFiles.WriteAtomically(path, Text(sheet, path));
        }

        byte[] pages = PdfSheet.Of(sheet, out string lacking);
        if (lacking.Length > 0)
        {
            warn?.Invoke(WritingMessages.Lacking(path, lacking));
        }

        return TextFiles.WriteAtomically(path, pages);
    }

    /// <summary>The sheet as it would be written, for whoever sends it somewhere else than into a file: UTF-8, or a PDF.</summary>
    /// <param name="sheet">One without errors: <see cref="Sheet.HasErrors"/>.</param>
    /// <param name="extension">One of <see cref="Extensions"/>. The order list, <c>.csv</c>, wants a design of which everything is known.</param>
    /// <exception cref="ArgumentException">The sheet has errors, or there is no such form of it.</exception>
    public static byte[] Bytes(Sheet sheet, string extension) =>
        Refusal(sheet, extension) is { } refused ? throw new ArgumentException($"There is no such sheet: {refused.Message}.", nameof(sheet))
        : Knows(extension, [Printed]) ? PdfSheet.Of(sheet, out _) : Encoding.UTF8.GetBytes(Text(sheet, extension));

    /// <summary>Why there is no such sheet; null where there is.</summary>
    private static Finding? Refusal(Sheet sheet, string path) =>
        !Knows(path) ? WritingMessages.Format(path, Extensions)
        : sheet.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) is { } error ? error
        : Knows(path, [".csv"]) ? sheet.Document.NotAllKnown
        : null;

    private static string Text(Sheet sheet, string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HTML" => HtmlSheet.Of(sheet),
        ".MD" => MarkdownSheet.Of(sheet),
        ".CSV" => CsvSheet.Of(sheet.Board is null ? sheet.ForBuilding() : sheet),
        ".JSON" => AnswerJson.Of(sheet, "sheet"),
        _ => throw new ArgumentException($"{path} has no known extension.", nameof(path)),
    };
}
