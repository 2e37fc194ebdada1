using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using FrontEnd.Documents.Teaching;
using FrontEnd.Documents.Tests;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>An instructor's term in README.md's commands: a homework's file, two hundred students, sheets to print and to upload, answers as they come
/// in, marks, and pages to hand back.</summary>
public sealed class HomeworkTermTests : IDisposable
{
    private const int Students = 200, Spellings = 60;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    private static readonly string[] Befores = ["", "= ", "about ", "answer: ", "x ≈ "];
    private static readonly string[] Betweens = [" ", "", "\u00A0", "\u2009"];
    private static readonly string[] Afters = ["", ".", " (worked out)"];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>The same answers, in sixty spellings and four files as programs save them, earn the same marks: all points, but for one student's slips, by
    /// the file's own rubric.</summary>
    [Fact]
    public void Term_OfTwoHundredStudents_IsSetMarkedAndHandedBack()
    {
        Stopwatch clock = Stopwatch.StartNew();
        File.Copy(Path.Combine(Repository.Designs, "classroom", "own-problems.toml"), In("own.toml"));
        Write("homework.toml", "course = \"Front ends\"\nown = [\"own.toml\"]\ntemplates = [\"own-contact-noise\", \"gain-stage\", \"converter-enob\"]\ncount = 8\nseed = 31\nfields = [\"name\", \"number\"]\npaper = \"letter\"\n[points]\ngain-stage = 5\n[rubric]\nslip = 0.25\n[rubric.q1]\nslip = 0\n");
        Write("secret.txt", "a secret that is long enough");
        Write("class.csv", "id,name\n" + string.Concat(Enumerable.Range(1, Students).Select(i => $"s{i:000},Student {i}\n")));
        Works("problems", "--homework", In("homework.toml"), "--secret", In("secret.txt"), "--students", In("class.csv"), "-o", In("h"), "--qti", In("items.zip"), "--bank", In("bank.csv"));
        Assert.StartsWith("%PDF", Encoding.Latin1.GetString(File.ReadAllBytes(Path.Combine(In("h"), "problems.pdf"))[..8]), StringComparison.Ordinal);
        using (ZipArchive items = ZipFile.OpenRead(In("items.zip")))
        {
            Assert.True(Students * 8 <= items.Entries.Count, $"{items.Entries.Count} items");
        }

        string keyFile = Path.Combine(In("h"), "key", "key.json");
        Key key = KeyFile.Read(File.ReadAllText(keyFile), keyFile, out Finding? finding)!;
        Assert.Null(finding);
        string[] marks = [.. Files(key).Select((file, at) =>
        {
            string place = In($"marks-{at}.csv");
            string[] back = at < 3 ? [] : ["-o", In("returned.html"), "-o", In("returned.pdf"), "--solutions"];
            Works(["mark", keyFile, file, "-o", place, .. back]);
            return place;
        })];
        Assert.All(marks, file => Holds(File.ReadAllLines(file), key));
        Assert.Equal(Students - 1, File.ReadAllText(In("returned.html")).Split("<section class=\"sheet").Length - 1);
        Assert.True(File.Exists(In("returned.pdf")));
        Assert.True(clock.Elapsed < Longest, $"the term takes {clock.Elapsed.TotalSeconds:0.0} s");
    }

    /// <summary>Everyone but the first, who answers nothing, has all points; the second, who makes a slip in each question, those of the rubric.</summary>
    private static void Holds(string[] lines, Key key)
    {
        List<string> wrong = [];
        foreach (string[] cells in lines.Skip(1).Select(Cells).Where(cells => cells[2] != "total" && cells[0] != "s001"))
        {
            KeyQuestion question = key.Sheets[int.Parse(cells[0][1..], CultureInfo.InvariantCulture) - 1].Questions.First(one => one.Id == cells[2]);
            double share = cells[0] != "s002" ? 1 : question.Id == "q1" || question.Kind is null ? 0 : 0.25;
            if (double.Parse(cells[4], CultureInfo.InvariantCulture) != share * question.Points)
            {
                wrong.Add(string.Join(" | ", cells) + " for " + question.Answer);
            }
        }

        Assert.Equal([], wrong);
        Assert.Equal((Students - 1) * 8, lines.Skip(1).Select(Cells).Count(cells => cells[2] != "total" && cells[0] != "s001"));
    }

    /// <summary>The answers as four programs save them.</summary>
    private IEnumerable<string> Files(Key key)
    {
        string[][] rows = [.. key.Sheets.Skip(1).SelectMany((sheet, student) => sheet.Questions.Select((question, at) =>
            (string[])[sheet.Student, question.Id, student == 0 && question.Slips.Count > 0 ? Slip(question) : Answer(question, ((student * sheet.Questions.Count) + at) % Spellings)]))];
        yield return Write("utf-8.csv", Table(rows, ','), new UTF8Encoding());
        yield return Write("utf-16.csv", Table(rows, '\t'), Encoding.Unicode);
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        yield return Write("windows-1252.csv", WithoutGreek(Table(rows, ';')), Encoding.GetEncoding(1252, EncoderFallback.ExceptionFallback, DecoderFallback.ExceptionFallback));
        yield return Write("separated.csv", "sep=;\n" + Table(rows, ';'), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
    }

    private static string Table(string[][] rows, char separator) =>
        string.Concat(rows.Prepend(["student", "question", "answer"]).Select(row => string.Join(separator, row.Select(cell => $"\"{cell}\"")) + "\r\n"));

    /// <summary>As whoever has only the letters of western Europe writes it.</summary>
    private static string WithoutGreek(string text) => text.Replace("Ω", "ohm", StringComparison.Ordinal).Replace("√Hz", "sqrt(Hz)", StringComparison.Ordinal)
        .Replace('≈', '~').Replace('\u2009', '\u00A0').Replace("−", "-", StringComparison.Ordinal);

    private static string Slip(KeyQuestion question) =>
        question.Kind is { } kind ? FormattableString.Invariant($"{question.Slips[0].Value:R} {Unit(kind)}").Trim() : ChoiceAnswer.Letter((int)question.Slips[0].Value);

    /// <summary>The right answer, spelt in one of sixty ways.</summary>
    private static string Answer(KeyQuestion question, int spelling)
    {
        if (question.Kind is not { } kind)
        {
            return spelling % 2 == 0 ? question.Answer[..1] : WithoutQuotes(question.Answer);
        }

        (string before, int form, string after) = (Befores[spelling % 5], spelling / 5 % 4, Afters[spelling / 20]);

        // Three digits behind a comma could be thousands, which is told and not guessed.
        int digits = form == 1 ? 3 : 4;
        string plain = kind.Is<Ratio>() ? QuantityText.FormatTrimmed(question.Value, "1", digits) : QuantityText.FormatTrimmed(kind.FromSi(question.Value), digits);
        int space = plain.IndexOf(' ', StringComparison.Ordinal);
        (string number, string unit) = (space < 0 ? plain : plain[..space], form < 2 ? space < 0 ? "" : plain[(space + 1)..] : Unit(kind));
        number = form switch
        {
            0 => number,
            1 => number.Replace('.', ','),
            2 => question.Value.ToString("0.####e0", CultureInfo.InvariantCulture),
            _ => question.Value.ToString("0.####E0", CultureInfo.InvariantCulture).Replace("E", "×10^", StringComparison.Ordinal),
        };
        return before + number + (unit.Length == 0 ? "" : Betweens[spelling % 4] + unit) + after;
    }

    private static string WithoutQuotes(string text) => text.Replace("\"", "", StringComparison.Ordinal);

    private static string Unit(QuantityKind kind) => kind.Is<Ratio>() ? "" : kind.SiUnit;

    private static string[] Cells(string line)
    {
        List<string> cells = [""];
        bool isQuoted = false;
        foreach (char letter in line)
        {
            isQuoted ^= letter == '"';
            if (letter == ',' && !isQuoted)
            {
                cells.Add("");
            }
            else if (letter != '"')
            {
                cells[^1] += letter;
            }
        }

        return [.. cells];
    }

    private static void Works(params string[] call)
    {
        Outcome outcome = Shell.Run(call);
        Assert.True(outcome.Code == 0 && !outcome.Messages.Contains("FE0801", StringComparison.Ordinal), $"{string.Join(" ", call)}\n{outcome.Messages}");
    }

    private string In(string name) => Path.Combine(_folder.FullName, name);

    private string Write(string name, string text, Encoding? encoding = null)
    {
        File.WriteAllText(In(name), text, encoding ?? new UTF8Encoding());
        return In(name);
    }
}
