using FrontEnd.Documents.Files;
using FrontEnd.Documents.Sheets;
using FrontEnd.Numbers;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Teaching;

/// <summary>The files of a homework: the page to print, a sheet for each student, the list of answers to fill in, and the key apart from
/// them.</summary>
internal static class HomeworkFiles
{
    /// <summary>Sheets that one PDF holds: more are a stack that nobody prints at once, and memory.</summary>
    public const int SheetsOfPdf = 250;

    /// <summary>Sheets that are drawn and written as text at once.</summary>
    private const int Batch = 64;

    /// <summary>The list of answers to fill in, in the homework's folder.</summary>
    internal const string BlankList = "answers-blank.csv";

    /// <summary>The key, there.</summary>
    internal static readonly string KeyPlace = Path.Combine("key", "key.json");

    /// <summary>Writes all of them, making the folders; the first problem, or null.</summary>
    /// <param name="written">Takes up every file that is written; null for nobody.</param>
    /// <remarks>Every sheet is drawn once, goes into all files and is let go, so that the memory needed hardly grows with the class.</remarks>
    public static Finding? Write(string folder, Homework homework, SheetLook? printed = null, WrittenHomework? written = null)
    {
        SheetLook look = printed ?? new SheetLook();
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
            using ClassWriter whole = new(folder, homework, look);
            HashSet<string> used = new(StringComparer.OrdinalIgnoreCase);
            List<string> own = [];
            foreach (int[] batch in Enumerable.Range(0, homework.Sheets.Count).Chunk(Batch))
            {
                foreach (SheetTexts texts in InParallel.Map(batch, at => SheetTexts.Of(homework.Sheets[at], homework, look)))
                {
                    whole.Add(texts);
                    string name = texts.Student is { } student ? Path.Combine("sheets", FileName(student.Id, used)) : "problems";
                    Add(name + ".md", texts.Markdown);
                    if (texts.Student is not null)
                    {
                        Add(name + ".html", ProblemHtml.Page([texts.Html], look));
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
            written?.Files.AddRange([.. whole.ForAll.Select(name => Path.Combine(folder, name)), .. own]);
            foreach (string key in ClassWriter.OfKey)
            {
                written?.AddKey(Path.Combine(folder, key));
            }

            return null;

            void Add(string name, string text)
            {
                string path = Path.Combine(folder, name);
                sheets.Add(path, text);
                own.Add(path);
            }
        }
        catch (Exception error) when (TextFiles.IsOfFile(error))
        {
            return FileMessages.Unwritable(folder, error);
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
    private sealed record SheetTexts(ProblemSheet Sheet, string Html, PrintedSheet Pages, string Markdown, string KeyMarkdown, string Answers, KeySheet Key)
    {
        public Student? Student => Sheet.Student;

        public static SheetTexts Of(ProblemSheet sheet, Homework homework, SheetLook look) => new(sheet, ProblemHtml.Sheet(sheet, look), ProblemPdf.Sheet(sheet, look),
            ProblemMarkdown.Sheet(homework, sheet), ProblemMarkdown.KeySheet(sheet),
            ClassFiles.AnswerRows(sheet), FrontEnd.Teaching.Problems.Key.Of(sheet));
    }

    /// <summary>The files that hold something of every sheet.</summary>
    private sealed class ClassWriter : IDisposable
    {
        public static readonly string[] Names =
        [
            "problems.html", BlankList, Path.Combine("key", "key.md"), Path.Combine("key", "key.html"), KeyPlace,
            "problems.pdf", Path.Combine("key", "key.pdf"),
        ];

        /// <summary>Those with answers.</summary>
        public static IEnumerable<string> OfKey => Names.Where(name => Path.GetDirectoryName(name) is { Length: > 0 });

        private readonly string _folder;
        private readonly Homework _homework;
        private readonly SheetLook _look;
        private readonly List<AtomicFile> _files = [];
        private readonly AtomicFile _page, _keyMarkdown, _keyHtml, _keyJson, _answers, _keyPdf;
        private readonly List<KeySheet> _key = [];
        private readonly KeyBook _book;
        private readonly List<PrintedSheet> _pages = [];
        private int _volumes;

        public ClassWriter(string folder, Homework homework, SheetLook look)
        {
            (_folder, _homework, _look, _book) = (folder, homework, look, new KeyBook(homework));
            foreach (string name in Names)
            {
                _files.Add(new AtomicFile(Path.Combine(folder, name)));
            }

            (_page, _answers, _keyMarkdown, _keyHtml, _keyJson, _keyPdf) = (_files[0], _files[1], _files[2], _files[3], _files[4], _files[6]);
            _page.Text.Write(ProblemHtml.Begin(look));
            _answers.Text.Write(ClassFiles.AnswersHead);
            _keyMarkdown.Text.Write(ProblemMarkdown.KeyHead(homework));
        }

        /// <summary>Those without, by their names in the folder; of a large class with every volume that there is by now.</summary>
        public IEnumerable<string> ForAll => [.. Names.Except(OfKey), .. Enumerable.Range(2, Math.Max(0, _volumes - 1)).Select(VolumeName)];

        private static string VolumeName(int volume) => $"problems-{volume}.pdf";

        public void Add(SheetTexts texts)
        {
            _page.Text.Write(texts.Html);
            _keyMarkdown.Text.Write(texts.KeyMarkdown);
            _answers.Text.Write(texts.Answers);
            _key.Add(texts.Key);
            _book.Add(texts.Sheet);
            if (_pages.Count == SheetsOfPdf)
            {
                WriteVolume();
            }

            _pages.Add(texts.Pages);
        }

        public void Finish()
        {
            _page.Text.Write(PrintedPage.End);
            _keyMarkdown.Text.Write(ProblemMarkdown.KeyFoot(_book));
            Key key = Key.Of(_homework, _key);
            _keyHtml.Text.Write(ProblemHtml.Key(_book, _look));
            KeyFile.Write(key, _keyJson.Text.BaseStream);
            WriteVolume();
            _keyPdf.Write(PrintedSheet.Document($"Key: {PrintedPage.Subject}", [KeyPdf.Of(_book, _look)]));
            _files.ForEach(file => file.Finish());
        }

        public void Dispose() => _files.ForEach(file => file.Dispose());

        /// <summary>The pages so far, into problems.pdf or, of a large class, into problems-2.pdf and so on.</summary>
        private void WriteVolume()
        {
            AtomicFile file = _files[5];
            if (_volumes++ > 0)
            {
                file = new AtomicFile(Path.Combine(_folder, VolumeName(_volumes)));
                _files.Add(file);
            }

            file.Write(PrintedSheet.Document($"Problems: {PrintedPage.Subject}", _pages));
            _pages.Clear();
        }
    }
}
