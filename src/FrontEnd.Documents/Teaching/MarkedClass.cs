using FrontEnd.Documents.Files;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A class's answers marked by a key: both read from their files, and the marks written.</summary>
/// <param name="Marks">Without the findings of reading, which stand beside them.</param>
internal sealed record MarkedClass(Key Key, Marks Marks)
{
    /// <summary>The endings of files that marks are written to.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".csv", ".html", ".pdf"];

    /// <summary>Null where the files cannot be used, or an answer belongs to another homework; the findings say why.</summary>
    /// <param name="rubric">Null for the key's own.</param>
    public static MarkedClass? Read(string keyPath, string answersPath, bool trust, Rubric? rubric, List<Finding> findings)
    {
        Key? key = TextFiles.BytesOfClass(keyPath, out Finding? noKey) is { } keyText
            ? KeyFile.Read(keyText, keyPath, out noKey, trust)
            : null;
        IReadOnlyList<GivenAnswer>? answers = TableText.Read(answersPath, out Finding? noAnswers) is { } text
            ? ClassFiles.Answers(text, answersPath, findings)
            : null;
        findings.AddRange(new[] { noKey, noAnswers }.OfType<Finding>());
        if (key is null || answers is null)
        {
            return null;
        }

        Marks marks = Marker.Mark(key, answers, rubric);
        findings.AddRange(marks.Findings.Select(finding => finding with { File = answersPath }));
        return findings.Exists(finding => finding.Severity == Severity.Error) ? null : new MarkedClass(key, marks);
    }

    /// <summary>What is wrong with a file that is to be written: its form, or that something would be lost.</summary>
    public static IEnumerable<Finding> Wrong(string output, params IEnumerable<string> inputs)
    {
        if (!Extensions.Contains(Path.GetExtension(output), StringComparer.OrdinalIgnoreCase))
        {
            yield return WritingMessages.Format(output, [.. Extensions]);
        }

        if (HomeworkFolder.Lost(output, inputs) is { } lost)
        {
            yield return lost;
        }
    }

    /// <summary>Writes marks as a list, or pages to hand back, by the file's ending.</summary>
    public Finding? Write(string output, bool solutions, SheetLook look) => Path.GetExtension(output).ToLowerInvariant() switch
    {
        ".pdf" => TextFiles.WriteAtomically(output, ReturnedPdf.Of(Key, Marks, solutions, look)),
        ".html" => TextFiles.WriteAtomically(output, ReturnedHtml.Page(Key, Marks, solutions, look.Paper)),
        _ => TextFiles.WriteAtomically(output, ClassFiles.MarksTable(Marks)),
    };
}
