using System.Text.Json;
using System.Xml.Linq;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using FrontEnd.Head;
using FrontEnd.Reporting;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Problem sheets, marking, glossary and sites as a shell sees them.</summary>
public sealed class TeachingCommandTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>Where nothing is drawn, a secret that is missing is nobody's concern.</summary>
    [Fact]
    public void Problems_ThatCannotBeDrawn_SayNothingOfASecret()
    {
        Outcome refused = Shell.Run("problems", Write("homework.toml", "topics = [\"nosie\"]\n"), "-o", In("refused"));
        Assert.Equal(2, refused.Code);
        Assert.Contains("FE0809 error", refused.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("FE1086", refused.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(In("refused")));
    }

    [Fact]
    public void Workflow_ThirtyStudentsTwelveQuestions_IsPrintedAndMarked()
    {
        string students = Write("class.csv", "id,name\n" + string.Concat(Enumerable.Range(1, 30).Select(i => $"s{i:00},\"Student, {i}\"\n")));
        string homework = In("homework");
        Outcome made = Shell.Run("problems", "--count", "12", "--seed", "2026", "--students", students, "-o", homework);
        Assert.True(made.Code == 0, made.Messages);
        string page = File.ReadAllText(Path.Combine(homework, "problems.html"));
        Assert.Equal(30, page.Split("<section class=\"sheet\">").Length - 1);
        Assert.Equal(360, page.Split("class=\"question\"").Length - 1);
        Assert.Contains("Student, 7 (s07)", page, StringComparison.Ordinal);
        Assert.Contains("FE1086 warning", made.Messages, StringComparison.Ordinal);
        Assert.Equal(60, Directory.GetFiles(Path.Combine(homework, "sheets")).Length);

        // The key's own answers, but for student 3, who takes each question's first slip, and student 4, who writes nonsense.
        string key = Path.Combine(homework, "key", "key.json");
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(key));
        List<string> lines = ["student,question,answer"];
        foreach (JsonElement sheet in document.RootElement.GetProperty("sheets").EnumerateArray())
        {
            string id = sheet.GetProperty("student").GetString()!;
            lines.AddRange(sheet.GetProperty("questions").EnumerateArray().Select(question => $"{id},{question.GetProperty("id").GetString()},{Answer(id, question)}"));
        }

        lines.Add("s99,q1,1 V");
        lines.Add("s05,q1");
        string answers = Write("answers.csv", string.Join("\n", lines) + "\n"), marks = In("marks.csv");
        Outcome marked = Shell.Run("mark", key, answers, "-o", marks);
        Assert.True(marked.Code == 0, marked.Messages);
        string[] totals = [.. File.ReadAllLines(marks).Where(line => line.Contains(",total,", StringComparison.Ordinal))];
        Assert.Equal(30, totals.Length);
        Assert.All(totals.Where(line => !line.StartsWith("s03", StringComparison.Ordinal) && !line.StartsWith("s04", StringComparison.Ordinal)), line =>
        {
            string[] end = line.Split(',')[^4..];
            Assert.Equal(end[1], end[0]);
        });
        Assert.Contains("slips", marked.Output, StringComparison.Ordinal);
        Assert.Contains("30 students, 360 answers", marked.Output, StringComparison.Ordinal);
        Assert.Contains("FE0802", marked.Messages, StringComparison.Ordinal);
        Assert.Contains("FE0805", marked.Messages, StringComparison.Ordinal);
        Assert.Contains("FE0801", marked.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(marked.Messages.Split('\n'), line => line.Contains("error", StringComparison.Ordinal));
    }

    [Fact]
    public void Problems_WithoutStudents_IsOneSheetAndTheSameAgain()
    {
        Shell.Run("problems", "--topic", "noise", "--topic", "cmrr", "--level", "2", "--count", "4", "--seed", "7", "-o", In("a"));
        Shell.Run("problems", "--topic", "cmrr", "--topic", "noise", "--level", "2", "--count", "4", "--seed", "7", "-o", In("b"));
        foreach (string name in new[] { "problems.html", "problems.md", "key/key.json", "key/key.md" })
        {
            Assert.Equal(File.ReadAllText(Path.Combine(In("a"), name)), File.ReadAllText(Path.Combine(In("b"), name)));
        }

        string sheet = File.ReadAllText(Path.Combine(In("a"), "problems.md"));
        Assert.DoesNotContain("accepted", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("Solution", sheet, StringComparison.Ordinal);
    }

    /// <summary>Whoever has the sheet and this program finds nothing on it to draw the key with.</summary>
    [Fact]
    public void Problems_WithASecret_PrintACodeAndNothingThatGivesTheSheetAway()
    {
        string students = Write("class.csv", "id,name\ns1,One\ns2,Two\n");
        string[] call = ["problems", "--count", "40", "--seed", "918273645", "--students", students];
        Outcome made = Shell.Run([.. call, "--secret", Write("secret.txt", "  a secret of some length\r\n"), "-o", In("a")]);
        Assert.Equal(0, made.Code);
        Assert.DoesNotContain("FE", made.Messages, StringComparison.Ordinal);
        string[] names = ["problems.html", "answers-blank.csv", "sheets/s1.md", "sheets/s2.html"];
        string[] sheets = [.. names.Select(name => File.ReadAllText(Path.Combine(In("a"), name)))];
        string[] telling = ["918273645", "a secret", Numbers.SeededRandom.Name, .. TemplateSet.All.Select(template => template.Id).Where(id => id != "gain-bandwidth")];   // the product's own name
        Assert.All(sheets, sheet => Assert.All(telling, one => Assert.DoesNotContain(one, sheet, StringComparison.OrdinalIgnoreCase)));
        string[] codes = [.. sheets[0].Split(">Sheet ").Skip(1).Select(text => text[..SheetCode.Length])];
        Assert.Equal(2, codes.Distinct().Count());
        Assert.DoesNotContain("a secret", File.ReadAllText(Path.Combine(In("a"), "key", "key.json")), StringComparison.Ordinal);

        // The same secret, however its file ends, gives the same sheets; another one gives others.
        Shell.Run([.. call, "--secret", Write("again.txt", "\uFEFFa secret of some length"), "-o", In("b")]);
        Assert.Equal(sheets[0], File.ReadAllText(Path.Combine(In("b"), "problems.html")));
        Shell.Run([.. call, "--secret", Write("other.txt", "a secret of some Length"), "-o", In("c")]);
        Assert.NotEqual(sheets[0], File.ReadAllText(Path.Combine(In("c"), "problems.html")));
    }

    [Theory]
    [InlineData("FE1087 error", "secret.txt", " \n", 2)]
    [InlineData("FE1088 warning", "secret.txt", "short\n", 0)]
    [InlineData("FE1089 warning", "h/secret.txt", "a secret of some length", 0)]
    public void Problems_WithAPoorSecret_SaysSo(string finding, string file, string secret, int code)
    {
        Directory.CreateDirectory(In("h"));
        Outcome outcome = Shell.Run("problems", "--count", "1", "--secret", Write(file, secret), "-o", In("h"));
        Assert.Equal(code, outcome.Code);
        Assert.Contains(finding, outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Problems_OfAHomeworkFile_AsksWhatItSaysAndNothingBesideIt()
    {
        string plan = Write("homework.toml", "course = \"Front ends\"\ndue = \"noon\"\ntemplates = [\"gain-stage\"]\ncount = 3\nseed = 5\npaper = \"letter\"\nspace = \"side\"\n");
        Outcome made = Shell.Run("problems", "--homework", plan, "-o", In("h"));
        Assert.True(made.Code == 0, made.Messages);
        string[] names = ["problems.md", "problems.html"];
        Assert.All(names, name =>
        {
            string page = File.ReadAllText(Path.Combine(In("h"), name));
            Assert.Contains("Gain of a stage", page, StringComparison.Ordinal);
            Assert.Contains("Front ends; due noon", page, StringComparison.Ordinal);
        });
        Outcome twice = Shell.Run("problems", "--homework", plan, "--count", "4", "-o", In("i"));
        Assert.Equal(2, twice.Code);
        Assert.Contains("FE1132 error", twice.Messages, StringComparison.Ordinal);
        Outcome wrong = Shell.Run("problems", "--homework", Write("bad.toml", "counts = 3\n"), "-o", In("i"));
        Assert.Equal(2, wrong.Code);
        Assert.Contains("bad.toml:1", wrong.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(In("i")));
    }

    [Theory]
    [InlineData("FE0111", "--secret", "no-such-file.txt")]
    [InlineData("FE0809", "--topic", "nois")]
    [InlineData("FE0815", "--count", "0")]
    [InlineData("FE0815", "--count", "1e9")]
    [InlineData("FE0815", "--seed", "1.5")]
    [InlineData("FE0815", "--level", "4")]
    [InlineData("FE0111", "--students", "no-such-file.csv")]
    public void Problems_WrongCall_IsAFinding(string code, string option, string value)
    {
        Outcome outcome = Shell.Run("problems", option, value, "-o", In("x"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(code == "FE0111" ? "FE01" : $"{code} error", outcome.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(In("x")));
    }

    [Fact]
    public void Problems_BadStudentRows_AreFindingsAndLeftOut()
    {
        string students = Write("class.csv", "\uFEFFid;name\na/1;A\na/1;again\n;nobody\na_1;B\n\"open;C\n");
        Outcome outcome = Shell.Run("problems", "--count", "1", "--students", students, "-o", In("h"));
        Assert.Equal(0, outcome.Code);
        Assert.Equal(2, outcome.Messages.Split("FE0807").Length - 1);
        Assert.Contains("FE0814", outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(["a_1.md", "a_1_2.md"], Directory.GetFiles(Path.Combine(In("h"), "sheets"), "*.md").Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("[1]")]
    [InlineData("{\"format\":\"frontend-key\",\"version\":1,\"seed\":1,\"templates\":\"1\",\"sheets\":[{\"student\":\"\",\"name\":\"\",\"questions\":[{\"id\":\"q1\"}]}]}")]
    [InlineData("{\"format\":\"frontend-key\",\"version\":2}")]
    public void Mark_UnusableKey_IsAFinding(string text)
    {
        Outcome outcome = Shell.Run("mark", Write("key.json", text), Write("answers.csv", "student,question,answer\n"), "-o", In("marks.csv"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("FE0808", outcome.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(In("marks.csv")));
    }

    [Fact]
    public void Mark_AnswersThatASpreadsheetWouldRun_AreWrittenAsText()
    {
        Shell.Run("problems", "--count", "1", "-o", In("h"));
        Outcome outcome = Shell.Run("mark", Path.Combine(In("h"), "key", "key.json"), Write("answers.csv", "student,question,answer\n=cmd(),q1,\"=1+1,\"\"x\"\"\"\n"), "-o", In("marks.csv"));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("'=cmd(),,q1,\"'=1+1,\"\"x\"\"\"", File.ReadAllText(In("marks.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void Glossary_TermSymbolAndMisspelling()
    {
        Assert.Contains("1 + Rf/Rg", Shell.Run("glossary", "noise gain").Output, StringComparison.Ordinal);
        Assert.Equal(Glossary.All.Count * 2, Shell.Run("glossary").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Outcome unknown = Shell.Run("glossary", "noise gian");
        Assert.Equal(2, unknown.Code);
        Assert.Contains("`noise gain`", unknown.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Sites_DistanceMontageAndMap()
    {
        Outcome outcome = Shell.Run("sites", "--nasion-inion", "36cm", "--preauricular", "37.5cm", "--circumference", "56cm", "--from", "C3", "--to", "t8", "--montage", "chains", "--svg", In("head.svg"));
        Assert.True(outcome.Code == 0, outcome.Messages);
        Assert.StartsWith("C3 to T4/T8\n  along the preauricular arc, as a tape reads it   22.50 cm\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("O1 25.20 cm", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("Fp1-F7", outcome.Output, StringComparison.Ordinal);
        Assert.All(outcome.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        XDocument svg = XDocument.Load(In("head.svg"));
        Assert.Equal(18, svg.Descendants().Count(element => element.Name.LocalName == "line"));

        // The ear lobes' circles stood across the edges.
        double Number(XElement element, string name) => double.Parse(element.Attribute(name)?.Value ?? "0", System.Globalization.CultureInfo.InvariantCulture);
        XElement paper = svg.Descendants().First(element => element.Name.LocalName == "rect");
        double left = Number(paper, "x"), right = left + Number(paper, "width");
        Assert.All(svg.Descendants().Where(element => element.Name.LocalName == "circle"), circle =>
            Assert.True(left + 1 < Number(circle, "cx") - Number(circle, "r") && Number(circle, "cx") + Number(circle, "r") < right - 1, circle.ToString()));
        Assert.Equal(25, svg.Descendants().Count(element => element.Name.LocalName == "text"));
    }

    [Fact]
    public void Sites_Json_HasTheSphereAndTheDistancesByTheNamesAsked()
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run("sites", "--from", "fp1", "--to", "t7", "--json").Output);
        Dictionary<string, double> results = json.RootElement.GetProperty("results").EnumerateArray().ToDictionary(result => result.GetProperty("id").GetString()!, result => result.GetProperty("value").GetDouble());
        Assert.Equal(["head.distance.fp1.t7.skin", "head.distance.fp1.t7.straight", "head.distance.fp1.t7.tape", "head.radius", "head.ring.front", "head.ring.side"], results.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(0.112, results["head.distance.fp1.t7.tape"], 1e-12);
        Assert.Equal(0.0892788758897, results["head.radius"], 1e-11);
        Assert.Equal(92.41371116811, results["head.ring.front"], 1e-8);
    }

    /// <summary>No name on the map is overwritten by another, whichever rule and set.</summary>
    [Theory]
    [InlineData(25)]
    [InlineData(77, "--ten-ten")]
    [InlineData(25, "--halfway-fp-c")]
    public void Sites_TextMap_ShowsEverySiteOnce(int count, params string[] options)
    {
        string[] lines = Shell.Run(["sites", .. options]).Output.Split('\n');
        string[] map = lines[Array.FindIndex(lines, line => line.Trim() is "/\\")..];
        string[] names = [.. map.SelectMany(line => line.Split([' ', '.'], StringSplitOptions.RemoveEmptyEntries)).Where(word => char.IsAsciiLetter(word[0]))];
        Assert.Equal(count, names.Length);
        Assert.All(names, name => Assert.NotNull(Sites.Find(name)));
        Assert.Equal(count, names.Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [InlineData("FE0811", "--from", "X3")]
    [InlineData("FE0811", "--montage", "Fp1 Q9")]
    [InlineData("FE0812", "--circumference", "5.6 m")]
    [InlineData("FE0812", "--mastoid-back", "20 cm")]
    [InlineData("FE0440", "--circumference", "78 cm")]
    [InlineData("FE0102", "--nasion-inion", "36 kg")]
    public void Sites_WrongCall_IsAFinding(string code, string option, string value)
    {
        Outcome outcome = Shell.Run("sites", option, value);
        Assert.Equal(2, outcome.Code);
        Assert.Contains($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Explanations_EveryResultOfEveryDesign_HasOne()
    {
        List<string> missing = [];
        foreach (string file in Directory.GetFiles(Repository.Designs, "*.toml"))
        {
            DesignDocument document = DesignDocument.Read(file);
            missing.AddRange(Evaluator.Evaluate(document.Design).Results.Select(result => result.Id).Where(id => Explanations.Of(id) is null).Select(id => id.Text));
        }

        Assert.Equal([], missing);
    }

    private static string Answer(string student, JsonElement question)
    {
        bool choice = question.TryGetProperty("choices", out _);
        if (student == "s04")
        {
            return "no idea";
        }

        if (student == "s03")
        {
            double value = question.GetProperty("slips")[0].GetProperty("value").GetDouble();
            return choice ? ChoiceAnswer.Letter((int)value) : FormattableString.Invariant($"{value:R} {Unit(question)}");
        }

        string answer = question.GetProperty("answer").GetString()!;
        return choice ? answer[..1] : answer.Replace("µ", "u", StringComparison.Ordinal);
    }

    private static string Unit(JsonElement question)
    {
        Text.QuantityKind kind = Text.QuantityKind.Find(question.GetProperty("kind").GetString())!;
        return kind.Is<Quantities.Ratio>() ? "" : kind.SiUnit;
    }

    private string In(string name) => Path.Combine(_folder.FullName, name);

    private string Write(string name, string text)
    {
        File.WriteAllText(In(name), text);
        return In(name);
    }
}
