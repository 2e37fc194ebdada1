using System.Text;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Tests.Reference;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>What a seed promises.</summary>
public class HomeworkTests
{
    private static readonly Student[] Class = [new("s1", "One"), new("s2", "Two"), new("Zoë", "Three")];

    [Fact]
    public void Make_AnotherStudent_ChangesNobodyElse()
    {
        Homework few = Homework.Make([], null, 12, 9, Class), more = Homework.Make([], null, 12, 9, [new("new", "New"), .. Class]);
        Assert.Equal(few.Sheets.Select(Text), more.Sheets.Skip(1).Select(Text));
    }

    [Fact]
    public void Make_MoreQuestions_BeginWithTheSameOnes()
    {
        Homework few = Homework.Make([], null, 7, 9, Class), more = Homework.Make([], null, 20, 9, Class);
        foreach ((ProblemSheet a, ProblemSheet b) in few.Sheets.Zip(more.Sheets))
        {
            Assert.Equal(a.Questions.Select(Text), b.Questions.Take(7).Select(Text));
        }
    }

    [Fact]
    public void Make_Students_GetDifferentNumbers()
    {
        Homework homework = Homework.Make([Topic.Noise], null, 5, 9, Class);
        Assert.Equal(3, homework.Sheets.Select(Text).Distinct().Count());
    }

    [Fact]
    public void Make_MoreThanThereAreTemplates_AsksThemAgainWithOtherNumbers()
    {
        Homework homework = Homework.Make([Topic.Electrodes], 1, 3, 4, []);
        Assert.Single(homework.Sheets[0].Questions.Select(question => question.Problem.TemplateId).Distinct());
        Assert.True(1 < homework.Sheets[0].Questions.Select(question => question.Problem.Answer.Text).Distinct().Count());
    }

    [Fact]
    public void Make_TwelveQuestions_CoverAllTopics() =>
        Assert.Equal(Enum.GetValues<Topic>().Length, Homework.Make([], null, 12, 2026, []).Sheets[0].Questions.Select(question => question.Problem.Topic).Distinct().Count());

    [Fact]
    public void Make_AnotherSecret_GivesOtherQuestionsNumbersAndCodes()
    {
        Homework Made(string secret) => Homework.Make([], null, 12, new DrawSource(9, Encoding.UTF8.GetBytes(secret)), Class);
        Homework one = Made("one"), again = Made(" one\r\n"), other = Made("two"), none = Homework.Make([], null, 12, 9, Class);
        Assert.Equal(one.Sheets.Select(Text), again.Sheets.Select(Text));
        Assert.Equal(one.Sheets.Select(sheet => sheet.Code), again.Sheets.Select(sheet => sheet.Code));
        Homework[] all = [one, other, none];
        Assert.Equal(3, all.Select(homework => string.Join(",", homework.Sheets[0].Questions.Select(question => question.Problem.TemplateId))).Distinct().Count());
        Assert.Equal(3, all.Select(homework => homework.Code).Distinct().Count());
        Assert.Equal(9, all.SelectMany(homework => homework.Sheets).Select(sheet => sheet.Code).Distinct().Count());
        Assert.Equal([true, true, false], all.Select(homework => homework.HasSecret));
        Problem Of(string secret) => TemplateSet.Find("noise-thermal")!.For(new DrawSource(9, Encoding.UTF8.GetBytes(secret)), "s1");
        Assert.NotEqual(Text(Of("one")), Text(Of("two")));
    }

    /// <summary>A sheet's code tells its homework: whatever makes other questions makes another code, and the class does not.</summary>
    [Fact]
    public void Code_FollowsFromTheHomeworkAndTheStudent()
    {
        Homework homework = Homework.Make([], null, 12, 9, Class);
        Assert.Equal(homework.Code, Homework.Make([], null, 12, 9, [Class[1]]).Code);
        string[] codes = [homework.Code, Homework.Make([], null, 13, 9, Class).Code, Homework.Make([], null, 12, 10, Class).Code, Homework.Make([Topic.Noise], null, 12, 9, Class).Code];
        Assert.Equal(codes.Length, codes.Distinct().Count());
        Assert.All(homework.Sheets, sheet => Assert.Equal(SheetCode.Of(homework.Code, sheet.Student!.Id), sheet.Code));
        Assert.All(homework.Sheets.Select(sheet => sheet.Code).Concat(codes), code => Assert.Matches("^[3-9A-Y]{8}$", code));
        Assert.All("01258BILOSUZ", sign => Assert.DoesNotContain(sign, string.Concat(homework.Sheets.Select(sheet => sheet.Code).Concat(codes))));
        Assert.Equal(homework.Sheets[0].Code, SheetCode.Plain($" {homework.Sheets[0].Code[..4].ToLowerInvariant()}-{homework.Sheets[0].Code[4..]}. "));
    }

    /// <summary>A seed makes no sheet heavier: from 42 to 62 points before the levels were mixed.</summary>
    [Theory]
    [InlineData(12, 4)]
    [InlineData(6, 4)]
    [InlineData(20, 4)]
    [InlineData(33, 10)]   // some topics have no template left to balance with
    public void Choose_AnySeed_WeighsNearlyTheSame(int count, int most)
    {
        int[] points = [.. Enumerable.Range(0, 300).Select(seed => TemplateSet.Choose([], null, count, new DrawSource((ulong)seed)).Sum(one => one.Template.Points))];
        Assert.InRange(points.Max() - points.Min(), 0, most);
    }

    /// <summary>Easy, middle and hard ones are all there, and no template is favoured.</summary>
    [Fact]
    public void Choose_TwelveQuestions_MixesLevelsAndTemplates()
    {
        Template[][] sheets = [.. Enumerable.Range(0, 300).Select(seed => TemplateSet.Choose([], null, 12, new DrawSource((ulong)seed)).Select(one => one.Template).ToArray())];
        Assert.All(sheets, sheet => Assert.All(Enumerable.Range(1, 3), level => Assert.InRange(sheet.Count(one => one.Level == level), 2, 6)));
        Dictionary<string, int> times = sheets.SelectMany(sheet => sheet).GroupBy(one => one.Id).ToDictionary(group => group.Key, group => group.Count());
        Assert.Equal(TemplateSet.All.Count, times.Count);
    }

    /// <summary>The golden homework: every template for three students. The same secret and seed give these sheets for ever; whoever changes
    /// one raises the template set's version, and the file's name with it.</summary>
    [Fact]
    public void Make_GoldenHomework_IsAsTheExpectedFile()
    {
        Homework homework = Homework.Make([], null, TemplateSet.All.Count, new DrawSource(2026, "a golden secret, never to change"u8), Class);
        StringBuilder text = new($"homework {homework.Code}, template set {homework.TemplateVersion}\n");
        foreach (ProblemSheet sheet in homework.Sheets)
        {
            text.Append($"\n{sheet.Student!.Id}, sheet {sheet.Code}\n");
            foreach (Question question in sheet.Questions)
            {
                text.Append($"{question.Id} {question.Problem.TemplateId}: {Text(question.Problem)}\n");
            }
        }

        string path = Path.Combine(ReferenceTable.Root, "tests", "FrontEnd.Tests", "Teaching", "Expected", $"template-set-{TemplateSet.Version}.txt");
        if (Environment.GetEnvironmentVariable("FRONTEND_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text.ToString());
        }

        Assert.Equal(File.ReadAllText(path), text.ToString());
    }

    private static string Text(ProblemSheet sheet) => string.Join("\n", sheet.Questions.Select(Text));

    private static string Text(Question question) => question.Id + " " + Text(question.Problem);

    private static string Text(Problem problem) =>
        $"{string.Join(", ", problem.Givens.Select(given => $"{given.Symbol} = {given.Text}"))} -> {problem.Answer.Text}; {string.Join(", ", problem.Slips.Select(slip => slip.Kind.Code))}";
}
