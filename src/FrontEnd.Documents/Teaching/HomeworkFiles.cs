using FrontEnd.Documents.Files;
using FrontEnd.Numbers;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The files of a homework: the page to print, a sheet for each student, the list of answers to fill in, and the key apart from
/// them.</summary>
public static class HomeworkFiles
{
    /// <summary>Sheets that are drawn and written as text at once.</summary>
    private const int Batch = 64;

    /// <summary>The list of answers to fill in, in the homework's folder.</summary>
    internal const string BlankList = "answers-blank.csv";

    /// <summary>The key, there.</summary>
    internal static readonly string KeyPlace = Path.Combine("key", "key.json");

    /// <summary>Writes all of them, making the folders; the first problem, or null.</summary>
    /// <remarks>Every sheet is drawn once, goes into all files and is let go, so that the memory needed hardly grows with the class.</remarks>
    public static Finding? Write(string folder, Homework homework)
    {
        bool isCommon = homework.Sheets is [{ Student: null }];
        foreach (string place in (string[])[folder, Path.Combine(folder, "key"), .. isCommon ? [] : new[] { Path.Combine(folder, "sheets") }])
        {
            if (TextFiles.MakeFolder(place) is { } noFolder)
            {
                return noFolder;
            }
        }

        if (ClassWriter.Names.Select(name => Path.Combine(folder, name)).FirstOrDefault(Directory.Exists) is { } inTheWay)
        {
            return FileMessages.Folder(inTheWay);
        }

        try
        {
            using FileWriters sheets = new();
            using ClassWriter whole = new(folder, homework);
            HashSet<string> used = new(StringComparer.OrdinalIgnoreCase);
            foreach (int[] batch in Enumerable.Range(0, homework.Sheets.Count).Chunk(Batch))
            {
                foreach (SheetTexts texts in InParallel.Map(batch, at => SheetTexts.Of(homework, homework.Sheets[at])))
                {
                    whole.Add(texts);
                    string name = texts.Student is { } student ? Path.Combine("sheets", FileName(student.Id, used)) : "problems";
                    sheets.Add(Path.Combine(folder, name + ".md"), texts.Markdown);
                    if (texts.Student is not null)
                    {
                        sheets.Add(Path.Combine(folder, name + ".html"), ProblemHtml.Page([texts.Html]));
                    }
                }

                if (sheets.Problem is not null)
                {
                    break;
                }
            }

            if (sheets.Finish() is { } problem)
            {
                return problem;
            }

            whole.Finish();
            return null;
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            return FileMessages.Unwritable(folder, error.Message);
        }
    }

    /// <summary>True where a file is one of those that are written, or lies among the sheets or with the key.</summary>
    public static bool Replaces(string folder, string file) =>
        ((string[])["problems.md", .. ClassWriter.Names]).Any(name => SameFile.Is(Path.Combine(folder, name), file))
        || ((string[])["sheets", "key"]).Any(name => Path.GetDirectoryName(Path.GetFullPath(file)) is { } place
            && string.Equals(place, Path.GetFullPath(Path.Combine(folder, name)), StringComparison.Ordinal));

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

    /// <summary>What one sheet puts into the files.</summary>
    private sealed record SheetTexts(Student? Student, string Html, string Markdown, string KeyMarkdown, string KeyHtml, string Answers,
        KeySheet Key)
    {
        public static SheetTexts Of(Homework homework, ProblemSheet sheet) => new(sheet.Student, ProblemHtml.Sheet(homework, sheet),
            ProblemMarkdown.Sheet(homework, sheet), ProblemMarkdown.KeySheet(sheet), ProblemHtml.Solutions(sheet),
            ClassFiles.AnswerRows(sheet), FrontEnd.Teaching.Problems.Key.Of(sheet));
    }

    /// <summary>The files that hold something of every sheet.</summary>
    private sealed class ClassWriter : IDisposable
    {
        public static readonly string[] Names =
        [
            "problems.html", BlankList, Path.Combine("key", "key.md"), Path.Combine("key", "key.html"), KeyPlace,
        ];

        private readonly Homework _homework;
        private readonly List<AtomicFile> _files = [];
        private readonly AtomicFile _page, _keyMarkdown, _keyHtml, _keyJson, _answers;
        private readonly List<KeySheet> _key = [];

        /// <summary>The key's worked solutions, which stand behind a table that all sheets must be known for.</summary>
        private readonly StreamWriter _solutions;

        public ClassWriter(string folder, Homework homework)
        {
            _homework = homework;
            foreach (string name in Names)
            {
                _files.Add(new AtomicFile(Path.Combine(folder, name)));
            }

            (_page, _answers, _keyMarkdown, _keyHtml, _keyJson) = (_files[0], _files[1], _files[2], _files[3], _files[4]);
            _solutions = new StreamWriter(new FileStream(Path.Combine(folder, "key", $".solutions.{Path.GetRandomFileName()}"), FileMode.CreateNew,
                FileAccess.ReadWrite, FileShare.None, 4096, FileOptions.DeleteOnClose));
            _page.Text.Write(ProblemHtml.Begin());
            _answers.Text.Write(ClassFiles.AnswersHead);
            _keyMarkdown.Text.Write(ProblemMarkdown.KeyHead(homework));
        }

        public void Add(SheetTexts texts)
        {
            PrintedPage.Section(_page.Text, texts.Html);
            PrintedPage.Section(_solutions, texts.KeyHtml);
            _keyMarkdown.Text.Write(texts.KeyMarkdown);
            _answers.Text.Write(texts.Answers);
            _key.Add(texts.Key);
        }

        public void Finish()
        {
            _page.Text.Write(PrintedPage.End);
            Key key = new(_homework.Seed, _homework.TemplateVersion, _key) { Code = _homework.Code };
            _keyHtml.Text.Write(ProblemHtml.BeginKey());
            PrintedPage.Section(_keyHtml.Text, ProblemHtml.Glance(_homework, key));
            _keyHtml.Text.Flush();
            _solutions.Flush();
            _solutions.BaseStream.Position = 0;
            _solutions.BaseStream.CopyTo(_keyHtml.Text.BaseStream);
            _keyHtml.Text.Write(PrintedPage.End);
            KeyFile.Write(key, _keyJson.Text.BaseStream);
            _files.ForEach(file => file.Finish());
        }

        public void Dispose()
        {
            _solutions.Dispose();
            _files.ForEach(file => file.Dispose());
        }
    }
}
