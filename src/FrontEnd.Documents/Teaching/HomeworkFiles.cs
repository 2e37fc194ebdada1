using FrontEnd.Documents.Files;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The files of a homework.</summary>
public static class HomeworkFiles
{
    /// <summary>Every file with its name below the folder: the page to print, a sheet for each student, the list of answers to fill in, and
    /// the key apart from them.</summary>
    public static IReadOnlyList<(string Name, string Text)> All(Homework homework)
    {
        List<(string, string)> files = [("problems.html", ProblemHtml.Page(homework, homework.Sheets))];
        if (homework.Sheets is [{ Student: null } common])
        {
            files.Add(("problems.md", ProblemMarkdown.Sheet(homework, common)));
        }
        else
        {
            HashSet<string> used = new(StringComparer.OrdinalIgnoreCase);
            foreach (ProblemSheet sheet in homework.Sheets)
            {
                string name = FileName(sheet.Student!.Id, used);
                files.Add(($"sheets/{name}.md", ProblemMarkdown.Sheet(homework, sheet)));
                files.Add(($"sheets/{name}.html", ProblemHtml.Page(homework, [sheet])));
            }
        }

        files.Add(("key/key.json", KeyFile.Write(Key.Of(homework))));
        files.Add(("key/key.md", ProblemMarkdown.Key(homework)));
        files.Add(("key/key.html", ProblemHtml.Key(homework)));
        files.Add(("answers-blank.csv", ClassFiles.AnswersTable(homework)));
        return files;
    }

    /// <summary>Writes all of them, making the folders; the first problem, or null.</summary>
    public static Finding? Write(string folder, Homework homework)
    {
        foreach ((string name, string text) in All(homework))
        {
            string path = Path.Combine(folder, name);
            if (TextFiles.MakeFolder(Path.GetDirectoryName(path)!) is { } noFolder)
            {
                return noFolder;
            }

            if (TextFiles.WriteAtomically(path, text) is { } problem)
            {
                return problem;
            }
        }

        return null;
    }

    /// <summary>A student's id as a file name on any system; two ids that would share one get numbers.</summary>
    private static string FileName(string id, HashSet<string> used)
    {
        string plain = string.Concat(id.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '_'));
        string name = plain;
        for (int number = 2; !used.Add(name); number++)
        {
            name = $"{plain}_{number}";
        }

        return name;
    }
}
