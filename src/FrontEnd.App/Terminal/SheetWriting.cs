using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Findings;
using FrontEnd.Results;

namespace FrontEnd.App.Terminal;

/// <summary>Where a sheet is written from the terminal: the one caller of the sheet writers here.</summary>
public static class SheetWriting
{
    /// <summary>What a sheet's file name ends with where none is typed.</summary>
    public const string Extension = ".html";

    /// <summary>Writes the sheet in the form that the file's extension says.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? Write(string path, DesignDocument document, Assessment assessment)
    {
        if (!SheetFormats.Knows(path))
        {
            return Commands.CallMessages.Format(path, SheetFormats.Extensions);
        }

        Sheet sheet = new(document, assessment);
        return sheet.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) ?? TextFiles.WriteAtomically(path, SheetFormats.Write(sheet, path));
    }
}
