using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>Who gets sheets, and what their numbers are drawn with: both read from files.</summary>
/// <param name="Students">Empty for one sheet that all share.</param>
internal sealed record HomeworkClass(IReadOnlyList<Student> Students, DrawSource Source)
{
    /// <param name="list">File of the students; null for one sheet that all share.</param>
    /// <param name="secret">File of the secret; null for none, which is told.</param>
    /// <param name="folder">Where the sheets will be written; null where that is not known.</param>
    public static HomeworkClass Read(string? list, string? secret, string? folder, ulong seed, List<Finding> findings)
    {
        DrawSource source;
        if (secret is null)
        {
            findings.Add(Messages.NoSecret());
            source = new DrawSource(seed);
        }
        else
        {
            source = new DrawSource(seed, SecretFile.Read(secret, folder, findings).Span);
        }

        return new HomeworkClass(list is null ? [] : ReadStudents(list, findings), source);
    }

    private static IReadOnlyList<Student> ReadStudents(string path, List<Finding> findings)
    {
        string? text = Files.TableText.Read(path, out Finding? unread);
        if (text is null)
        {
            findings.Add(unread!);
            return [];
        }

        IReadOnlyList<Student> students = ClassFiles.Students(text, path, findings);
        if (students.Count == 0 && !findings.Exists(finding => finding.Severity == Severity.Error))
        {
            findings.Add(Messages.EmptyTable(path));
        }

        return students;
    }
}
