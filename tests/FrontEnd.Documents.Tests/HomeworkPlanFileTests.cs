using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>A homework's file: read like a design, and what it asks is what the sheets have.</summary>
public class HomeworkPlanFileTests
{
    private static readonly string Example = Path.Combine(Repository.Designs, "classroom", "homework.toml");

    [Fact]
    public void Read_OfTheClassroomsFile_IsWhatItSays()
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Read(Example);
        Assert.Empty(findings);
        Assert.Equal(("Biopotential front ends", 12, 2026, SheetPaper.A4, WorkingSpace.Line), (plan!.Course, plan.Questions, plan.Seed, plan.Paper, plan.Space));
        ProblemSheet sheet = Homework.Make(plan, new DrawSource(2026), []).Sheets[0];
        Assert.Equal(["noise-thermal", "gain-first-stage", "own-contact-noise"], sheet.Questions.Take(3).Select(question => question.Problem.TemplateId));
        Assert.Equal((4, 2), (sheet.Questions[2].Problem.Points, sheet.Questions[0].Problem.Points));
        Assert.Equal(((double?)null, 0.75, 0.5), (plan.Rubric.All.Slip, plan.Rubric.All.UnitLeftOut, plan.Rubric.All.Rounding));
        Assert.Equal((0, 0.75), (plan.Rubric.Of("Q1").Slip, plan.Rubric.Of("q1").UnitLeftOut));
        Assert.Equal(12, sheet.Questions.Select(question => question.Problem.TemplateId).Distinct().Count());
        Topic[] topics = [Topic.Noise, Topic.Gain, Topic.Cmrr, Topic.Electrodes, Topic.Safety, Topic.Filters];
        Assert.All(sheet.Questions, question => Assert.Contains(question.Problem.Topic, topics));
    }

    [Theory]
    [InlineData("topic = [\"noise\"]", "FE", "`topics`")]
    [InlineData("count = 0", "FE", "count")]
    [InlineData("count = \"ten\"", "FE", "count")]
    [InlineData("level = 4", "FE", "level")]
    [InlineData("paper = \"a5\"", "FE", "paper")]
    [InlineData("topics = [\"nois\"]", "FE0809", "`noise`")]
    [InlineData("templates = [\"noise-thermel\"]", "FE1130", "`noise-thermal`")]
    [InlineData("templates = [\"noise-thermal\", \"gain-stage\"]\ncount = 1", "FE1131", "count")]
    [InlineData("topics = [\"whole-chain\"]\nlevel = 1", "FE0816", "topics")]
    [InlineData("course = ", "FE", "")]
    [InlineData("rubric = 0.5", "FE", "rubric")]
    [InlineData("[rubric]\nslips = 0.5", "FE", "`slip`")]
    [InlineData("[rubric]\nslip = 1.5", "FE", "rubric.slip")]
    [InlineData("[rubric]\nunit = \"110 %\"", "FE", "rubric.unit")]
    [InlineData("[rubric]\nkind = \"half\"", "FE", "rubric.kind")]
    [InlineData("[rubric.q1]\nsigns = 0", "FE", "rubric.q1.signs `sign`")]
    [InlineData("count = 3\n[rubric.q4]\nslip = 0", "FE1133", "rubric.q4 q3")]
    [InlineData("[points]\nnoise-thermel = 4", "FE1130", "`noise-thermal`")]
    [InlineData("[points]\nnoise-thermal = 0", "FE", "points.noise-thermal")]
    [InlineData("[points]\nnoise-thermal = 2.5", "FE", "points.noise-thermal")]
    [InlineData("count = twelve", "FE0120", "count `twelve` is not a whole number value like 8")]
    [InlineData("count: 12", "FE0120", "count `:` stands where write count = 12")]
    [InlineData("paper = a5", "FE0120", "paper not in quotes `a4`")]
    [InlineData("count = 3\n[rubric q1]\nslip = 0", "FE0120", "is not how a table starts write [rubric.q1]")]
    [InlineData("fields = [\"name\", \" \"]", "FE1134", "fields")]
    [InlineData("fields = [\"a\", \"b\", \"c\", \"d\", \"e\", \"f\", \"g\"]", "FE1134", "7 fields")]
    public void Parse_OfAWrongLine_TellsWhereAndWhatIsMeant(string text, string code, string says)
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Parse("# a comment\n" + text, "homework.toml");
        Assert.Null(plan);
        Finding finding = findings[0];
        Assert.True(finding.Code.StartsWith(code, StringComparison.Ordinal), finding.Code);
        string told = $"{finding.Field} {finding.Message} {finding.Note} {finding.Help}";
        Assert.All(says.Split(' '), word => Assert.Contains(word, told, StringComparison.Ordinal));
        Assert.True(2 <= finding.Line, $"{finding.Code} {finding.Line}");
    }

    /// <summary>What the file says that answers earn is in the key, sealed with it, and decides the marks; another file's marks differ.</summary>
    [Fact]
    public void Rubric_OfAFile_IsInTheKeyAndDecidesMarks()
    {
        const string Asks = "templates = [\"noise-thermal\", \"noise-thermal\"]\nseed = 4\n";
        const string Says = "[points]\nnoise-thermal = 10\n[rubric]\nslip = 0.3\nunit = 0\nsign = \"80 %\"\n[rubric.Q2]\nslip = 0\n";
        Homework usual = Made(Asks), own = Made(Asks + Says);
        Assert.Equal(usual.Code, own.Code);
        Key key = Key.Of(own), read = KeyFile.Read(KeyFile.Write(key), "key.json", out Finding? finding)!;
        Assert.Null(finding);
        Assert.Equal((KeySeal.Of(key), KeyFile.Write(key)), (KeySeal.Of(read), KeyFile.Write(read)));
        Assert.DoesNotContain("rubric", KeyFile.Write(Key.Of(usual)), StringComparison.Ordinal);
        string changed = KeyFile.Write(key).Replace("\"sign\": 0.8", "\"sign\": 0.9", StringComparison.Ordinal);
        Assert.Null(KeyFile.Read(changed, "key.json", out finding));
        Assert.Equal(Messages.KeyEdited, finding!.Code);

        foreach ((string text, double first, double second) in new (string, double, double)[] { ("right", 10, 10), ("slip", 3, 0), ("bare", 0, 0), ("sign", 8, 8) })
        {
            GivenAnswer[] answers = [.. read.Sheets[0].Questions.Select((one, at) => new GivenAnswer("a", one.Id, Answer(one, text), at + 2))];
            Assert.Equal([first, second], Marker.Mark(read, answers).Rows.Select(row => row.Points));
            Assert.Equal(text == "right" ? [10, 10] : [0, 0], Marker.Mark(read, answers, Rubric.RightOnly).Rows.Select(row => row.Points));
        }

        static string Answer(KeyQuestion one, string how) => FormattableString.Invariant($"{(how == "slip" ? one.Slips[0].Value : how == "sign" ? -one.Value : one.Value):R} {(how == "bare" ? "" : one.Kind!.SiUnit)}");
    }

    /// <summary>Own templates lie beside the homework's file, are listed and chosen like the program's, and what is wrong in them is told with their
    /// own file's lines, once.</summary>
    [Fact]
    public void Own_OfAFileInAnotherFolder_JoinTheProgramsTemplates()
    {
        string folder = Directory.CreateTempSubdirectory("frontend-test-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "mine"));
            File.Copy(Path.Combine(Repository.Designs, "classroom", "own-problems.toml"), Path.Combine(folder, "mine", "own.toml"));
            string file = Path.Combine(folder, "homework.toml");
            File.WriteAllText(file, "own = [\"mine/own.toml\"]\ntemplates = [\"own-hum-left\"]\ntopics = [\"filters\"]\ncount = 30\n[points]\nown-first-corner = 7\n");
            (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Read(file);
            Assert.Empty(findings);
            IReadOnlyList<Question> asked = Homework.Make(plan!, new DrawSource(1), []).Sheets[0].Questions;
            Assert.Equal("own-hum-left", asked[0].Problem.TemplateId);
            Assert.Equal(7, asked.First(one => one.Problem.TemplateId == "own-first-corner").Problem.Points);
            Assert.DoesNotContain(asked, one => one.Problem.TemplateId == "own-contact-noise");

            // The same file twice is one.
            Assert.Empty(HomeworkPlanFile.Read(file, [Path.Combine(folder, "mine", "..", "mine", "own.toml")]).Findings);

            File.WriteAllText(Path.Combine(folder, "mine", "own.toml"), "[[templates]]\nid = \"own-hum-left\"\n");
            (plan, findings) = HomeworkPlanFile.Read(file);
            Assert.Null(plan);
            Assert.All(findings, finding => Assert.EndsWith("own.toml", finding.File, StringComparison.Ordinal));
            File.Delete(Path.Combine(folder, "mine", "own.toml"));
            Assert.Single(HomeworkPlanFile.Read(file).Findings);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Fields of the file's own stand on every form of a sheet: to fill in, or with the list's name and id.</summary>
    [Fact]
    public void Fields_OfAFile_StandAtTheTopOfTheSheets()
    {
        (HomeworkPlan? plan, _) = HomeworkPlanFile.Parse("fields = [\"name\", \"matriculation number\", \"seat\"]\ncount = 1\n");
        foreach (Student? student in new Student?[] { null, new Student("s1", "Ada <i>") })
        {
            Homework homework = Homework.Make(plan!, new DrawSource(1), student is null ? [] : [student]);
            string markdown = ProblemMarkdown.Sheet(homework, homework.Sheets[0]), html = ProblemHtml.Sheet(homework.Sheets[0], SheetLook.Of(plan!));
            Assert.Contains(student is null ? "Matriculation number: ___" : "Matriculation number: s1", markdown, StringComparison.Ordinal);
            Assert.Contains("Seat: ___", markdown, StringComparison.Ordinal);
            Assert.Contains(student is null ? "Name: <span" : "Name: Ada &lt;i&gt;&emsp;Matriculation number: s1&emsp;Seat: <span class=\"line\">", html, StringComparison.Ordinal);
        }
    }

    private static Homework Made(string text)
    {
        (HomeworkPlan? plan, IReadOnlyList<Finding> findings) = HomeworkPlanFile.Parse(text, "homework.toml");
        Assert.Empty(findings);
        return Homework.Make(plan!, new DrawSource((ulong)plan!.Seed), []);
    }

    /// <summary>What is listed is asked first, twice where it is listed twice, and the rest is balanced with it.</summary>
    [Fact]
    public void Choose_OfListedTemplates_AsksThemFirst()
    {
        HomeworkPlan plan = new() { Templates = ["gain-stage", "noise-thermal", "gain-stage"] };
        Assert.Equal([("gain-stage", 1), ("noise-thermal", 1), ("gain-stage", 2)], plan.Choose(new DrawSource(5)).Select(one => (one.Template.Id, one.Copy)));
        int[] points = [.. Enumerable.Range(0, 100).Select(seed => (plan with { Count = 12 }).Choose(new DrawSource((ulong)seed)).Sum(one => one.Template.Points))];
        Assert.InRange(points.Max() - points.Min(), 0, 4);
    }
}
