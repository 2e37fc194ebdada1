using System.Text;
using FrontEnd.Documents;

namespace FrontEnd.App.Terminal;

/// <summary>Where a sheet is written from the terminal. The seam to the sheet writers: their one caller here.</summary>
public static class SheetWriting
{
    /// <summary>What a sheet's file name ends with where none is typed.</summary>
    public const string Extension = ".txt";

    /// <summary>Writes the sheet.</summary>
    /// <returns>What went wrong; null for nothing.</returns>
    public static Finding? Write(string path, DesignDocument document, Assessment assessment) => TextFiles.WriteAtomically(path, Text(document, assessment));

    /// <summary>The sheet as text.</summary>
    private static string Text(DesignDocument document, Assessment assessment)
    {
        StringBuilder text = new();
        Design design = assessment.Design;
        text.AppendLine(design.Name).AppendLine(design.Purpose).AppendLine(design.Caution).AppendLine();
        foreach (Result result in assessment.Judged)
        {
            text.AppendLine($"{ResultText.Sign(result.Verdict.Kind)} {result.Name}: {ResultText.Value(result)}; {ResultText.Margin(result)}");
        }

        text.AppendLine();
        foreach (Result result in assessment.Results)
        {
            text.AppendLine($"{result.Id,-44} {ResultText.Value(result)}   {result.Equation.Text} [{ResultText.Source(result.Equation.Source)}]");
        }

        text.AppendLine();
        foreach (FieldOrigin origin in document.Origins)
        {
            text.AppendLine($"{origin.Key,-44} {origin.Text}   {(origin.Kind == OriginKind.Given ? "given" : origin.Source)}");
        }

        return text.ToString();
    }
}
