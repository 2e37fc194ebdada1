using System.Collections;
using FrontEnd.Documents.Files;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>A homework's files, whatever the size of the class.</summary>
public sealed class HomeworkFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static Student[] Class(int count) => [.. Enumerable.Range(1, count).Select(i => new Student($"s{i}", $"Student {i}"))];

    /// <summary>Sheets that are watched: how often each is asked for, and whether somebody holds it still.</summary>
    private sealed class Watched(IReadOnlyList<ProblemSheet> sheets) : IReadOnlyList<ProblemSheet>
    {
        private readonly WeakReference<ProblemSheet>?[] _given = new WeakReference<ProblemSheet>?[sheets.Count];

        public int[] Asked { get; } = new int[sheets.Count];

        public int MostAlive { get; private set; }

        public int Count => sheets.Count;

        public ProblemSheet this[int index]
        {
            get
            {
                ProblemSheet sheet = sheets[index];
                lock (_given)
                {
                    Asked[index]++;
                    _given[index] = new WeakReference<ProblemSheet>(sheet);
                    if (index % 100 == 99)
                    {
                        GC.Collect();
                        MostAlive = Math.Max(MostAlive, _given.Count(one => one is not null && one.TryGetTarget(out _)));
                    }
                }

                return sheet;
            }
        }

        public IEnumerator<ProblemSheet> GetEnumerator() => throw new NotSupportedException("A whole class is drawn again.");

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }

    [Fact]
    public void Write_OfALargeClass_DrawsEachSheetOnceAndLetsItGo()
    {
        const int Students = 500;
        Homework homework = Homework.Make([FrontEnd.Teaching.Topic.Gain], 1, 2, 7, Class(Students));
        Watched watched = new(homework.Sheets);
        Assert.Null(HomeworkFiles.Write(_folder.Path, homework with { Sheets = watched }));
        Assert.All(watched.Asked, times => Assert.Equal(1, times));
        Assert.InRange(watched.MostAlive, 1, 200);
    }

    /// <summary>The pages of the class are those of the students one after the other, and nothing temporary is left.</summary>
    [Fact]
    public void Write_OfAClass_PutsEverySheetIntoEveryFile()
    {
        Homework homework = Homework.Make([], null, 3, 7, [.. Class(70), new Student("a/b", "One"), new Student("a_b", "Two")]);
        Assert.Null(HomeworkFiles.Write(_folder.Path, homework));
        string[] names = [.. Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(_folder.Path, file)).Order(StringComparer.Ordinal)];
        Assert.Equal(7 + (2 * 72), names.Length);
        Assert.DoesNotContain(names, name => Path.GetFileName(name).StartsWith('.'));
        Assert.Contains(Path.Combine("sheets", "a_b_2.html"), names);
        string Text(string name) => File.ReadAllText(Path.Combine(_folder.Path, name));
        Assert.Equal(ProblemHtml.Page(homework.Sheets.Select(sheet => ProblemHtml.Sheet(sheet))), Text("problems.html"));
        Assert.Equal(ProblemHtml.Page([ProblemHtml.Sheet(homework.Sheets[9])]), Text(Path.Combine("sheets", "s10.html")));
        Assert.Equal(ClassFiles.AnswersTable(homework), Text("answers-blank.csv"));
        Key key = Key.Of(homework);
        Assert.Equal(KeyFile.Write(key), Text(Path.Combine("key", "key.json")));
        KeyBook book = new(homework);
        foreach (ProblemSheet sheet in homework.Sheets)
        {
            book.Add(sheet);
        }

        Assert.NotEmpty(book.Sources);
        Assert.All(book.Sources, one => Assert.Contains(one.Source.Split(',')[0], ProblemHtml.Key(book), StringComparison.Ordinal));
        Assert.Equal(ProblemHtml.Key(book), Text(Path.Combine("key", "key.html")));
        Assert.Equal(ProblemMarkdown.KeyHead(homework) + string.Concat(homework.Sheets.Select(ProblemMarkdown.KeySheet)) + ProblemMarkdown.KeyFoot(book), Text(Path.Combine("key", "key.md")));
        Key? read = KeyFile.Read(TextFiles.BytesOfClass(Path.Combine(_folder.Path, "key", "key.json"), out _)!.Value, "key.json", out Finding? finding);
        Assert.Null(finding);
        Assert.Equal(key.Sheets.Select(sheet => (sheet.Student, sheet.Questions[2].Answer, sheet.Questions[2].Low)), read!.Sheets.Select(sheet => (sheet.Student, sheet.Questions[2].Answer, sheet.Questions[2].Low)));
    }

    [Fact]
    public void Write_WhereAFolderIsInTheWay_IsAFindingAndLeavesNothingHalf()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "sheets", "s3.md"));
        Assert.Equal("FE0144", HomeworkFiles.Write(_folder.Path, Homework.Make([], 1, 1, 7, Class(5)))!.Code);
        Directory.CreateDirectory(Path.Combine(_folder.Path, "key", "key.html"));
        Assert.Equal("FE0144", HomeworkFiles.Write(_folder.Path, Homework.Make([], 1, 1, 7, Class(2)))!.Code);
        Assert.DoesNotContain(Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories), file => Path.GetFileName(file).StartsWith('.'));
        Assert.False(File.Exists(Path.Combine(_folder.Path, "problems.html")));
    }

    [Fact]
    public void KeyBytes_AsTheyAreFound_AreReadOrSaidToBeNoText()
    {
        string mark = Path.Combine(_folder.Path, "mark"), zero = Path.Combine(_folder.Path, "zero"), latin = Path.Combine(_folder.Path, "latin");
        File.WriteAllBytes(mark, [0xEF, 0xBB, 0xBF, (byte)'{']);
        File.WriteAllBytes(zero, [(byte)'{', 0]);
        File.WriteAllBytes(latin, [(byte)'{', 0xB5]);
        Assert.Equal("{"u8.ToArray(), TextFiles.BytesOfClass(mark, out _)!.Value.ToArray());
        foreach (string path in new[] { zero, latin })
        {
            Assert.Null(TextFiles.BytesOfClass(path, out Finding? finding));
            TextFiles.ReadOfClass(path, out Finding? text);
            Assert.Equal(text, finding);
        }
    }
}
