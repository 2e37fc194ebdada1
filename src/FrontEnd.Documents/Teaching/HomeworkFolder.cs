using FrontEnd.Documents.Files;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>A folder that a homework is to be written to: what it holds already that nobody can draw again.</summary>
internal static class HomeworkFolder
{
    private static readonly string[] AnswerColumns = ["student", "question", "answer"];

    /// <summary>The lists in the folder in which answers are filled in, by their names; so is what stands in the blank list's place and is no
    /// blank list.</summary>
    public static IReadOnlyList<string> Answered(string folder)
    {
        try
        {
            return Directory.Exists(folder)
                ? [.. Directory.EnumerateFiles(folder).Where(IsTable).Where(file => HasAnswers(file)).Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal)]
                : [];
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            // A folder that cannot be looked into is told when it is written to.
            return [];
        }
    }

    /// <summary>What would be lost if a homework were written to the folder: answers, and files that are read for it.</summary>
    /// <param name="again">True where answers may be there, since what is in the way is kept.</param>
    public static IEnumerable<Finding> Wrong(string folder, IEnumerable<string> inputs, bool again)
    {
        foreach (string input in inputs.Where(input => HomeworkFiles.Replaces(folder, input)))
        {
            yield return Messages.FolderHasInput(folder, input);
        }

        if (!again && Answered(folder) is { Count: > 0 } answered)
        {
            yield return Messages.AnswersInFolder(folder, answered);
        }
    }

    /// <summary>What would be lost if a file were written: one of those that are read, or a list of answers or students; null for nothing.</summary>
    public static Finding? Lost(string output, IEnumerable<string> inputs) =>
        inputs.FirstOrDefault(input => SameFile.Is(output, input)) is { } read ? Messages.OutputIsInput(output, read)
        : ListIn(output) is { } list ? Messages.OutputIsList(output, list)
        : null;

    /// <summary>What a file holds that would be lost if marks were written over it, in words; null for nothing.</summary>
    private static string? ListIn(string file)
    {
        if (!IsTable(file) || !File.Exists(file) || TableText.Read(file, out _) is not { } text)
        {
            return null;
        }

        string[] names = Names(text);
        return AnswerColumns.All(names.Contains) && !names.Contains("points") ? "a list of answers"
            : names is ["id", "name", ..] ? "a list of students"
            : null;
    }

    /// <summary>Puts what the homework's files would replace and nobody can draw again under names of its own: a list that is filled in, and the
    /// key of another homework. The new names; a problem ends it.</summary>
    public static IReadOnlyList<string> Keep(string folder, Homework homework, out Finding? problem)
    {
        List<string> kept = [];
        string answers = Path.Combine(folder, HomeworkFiles.BlankList), key = Path.Combine(folder, HomeworkFiles.KeyPlace);
        problem = File.Exists(answers) && HasAnswers(answers) ? Keep(answers, "answers", kept) : null;
        if (problem is null && File.Exists(key) && TextFiles.BytesOfClass(key, out _) is { } bytes
            && KeyFile.Read(bytes, key, out _, trust: true) is { } old && old.Code != homework.Code)
        {
            problem = Keep(key, old.Code.Length == 0 ? "key-old" : $"key-{old.Code}", kept);
        }

        return kept;
    }

    /// <summary>Copies a file beside itself, under a name that nothing has yet.</summary>
    private static Finding? Keep(string file, string name, List<string> kept)
    {
        string folder = Path.GetDirectoryName(file)!, extension = Path.GetExtension(file), place = Path.Combine(folder, name + extension);
        for (int number = 2; Path.Exists(place); number++)
        {
            place = Path.Combine(folder, FormattableString.Invariant($"{name}-{number}{extension}"));
        }

        Finding? problem = TextFiles.Bytes(file, TextFiles.ClassLimit, FileMessages.ClassTooLarge, out Finding? unread) is { } bytes
            ? TextFiles.WriteAtomically(place, bytes.ToArray())
            : unread;
        kept.AddRange(problem is null ? [place] : []);
        return problem;
    }

    private static bool IsTable(string file) => string.Equals(Path.GetExtension(file), ".csv", StringComparison.OrdinalIgnoreCase);

    private static bool HasAnswers(string file)
    {
        bool isBlankList = string.Equals(Path.GetFileName(file), HomeworkFiles.BlankList, StringComparison.OrdinalIgnoreCase);
        if (TableText.Read(file, out _) is not { } text)
        {
            return isBlankList;
        }

        string[] names = Names(text);
        List<Finding> findings = [];
        return names.Contains("points") || !AnswerColumns.All(names.Contains)
            ? isBlankList
            : (ClassFiles.Answers(text, file, findings) ?? []).Any(answer => answer.Text.Length > 0) || (isBlankList && findings.Count > 0);
    }

    private static string[] Names(string text)
    {
        CsvReader reader = new(new StringReader(text), remarks: false, longest: 10_000);
        return reader.Next() ? [.. reader.Cells().Select(name => name.Trim().ToLowerInvariant())] : [];
    }
}
