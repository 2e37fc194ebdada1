using System.Globalization;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>How many different problems there are, and who gets which.</summary>
public class VarietyTests
{
    private const int Enough = 200;

    public static TheoryData<string> Numeric => [.. Ids];

    private static string[] Ids => [.. TemplateSet.All.Where(template => template.Topic != Topic.WholeChain || !template.Id.Contains("judge", StringComparison.Ordinal)).Select(template => template.Id)];

    private static Student[] Class(int count) => [.. Enumerable.Range(1, count).Select(i => new Student(FormattableString.Invariant($"s{i}"), ""))];

    /// <summary>Counted in draws as students get them, at the digits that are printed.</summary>
    [Theory]
    [MemberData(nameof(Numeric))]
    public void Template_ThatIsNumeric_HasTwoHundredAnswersOrSaysWhyNot(string id)
    {
        Template template = TemplateSet.Find(id)!;
        HashSet<string> answers = new(StringComparer.Ordinal);
        for (int draw = 0; draw < 6000 && answers.Count < Enough; draw++)
        {
            answers.Add(template.For(new DrawSource(7), draw.ToString(CultureInfo.InvariantCulture)).Answer.Text);
        }

        Assert.True(answers.Count < Enough == template.FewAnswers is not null, $"{id}: {answers.Count} answers, {template.FewAnswers ?? "no reason"}");
    }

    /// <summary>The templates that a preferred series keeps from it, all of them.</summary>
    [Fact]
    public void Templates_WithFewAnswers_AreThoseOfPreferredSeries() =>
        Assert.Equal(
            ["filter-choose-capacitor: the E12 series has 12 values a decade", "safety-resistor: the E24 series has 24 values a decade"],
            TemplateSet.All.Where(template => template.FewAnswers is not null).Select(template => $"{template.Id}: {template.FewAnswers}"));

    /// <summary>A class as large as there are answers: none comes twice.</summary>
    [Fact]
    public void Class_OfTwoHundred_HasNoAnswerTwice()
    {
        (Template, int)[] questions = [.. TemplateSet.All.Where(template => Ids.Contains(template.Id) && template.FewAnswers is null).Select(template => (template, 1))];
        ClassDraws draws = new(new DrawSource(3), questions, [.. Class(Enough).Select(student => student.Id)]);
        for (int question = 0; question < questions.Length; question++)
        {
            string[] answers = [.. Enumerable.Range(0, Enough).Select(student => draws.Of(student, question).Answer.Text)];
            Assert.True(answers.Distinct().Count() == Enough, $"{questions[question].Item1.Id}: {answers.Distinct().Count()} of {Enough}");
        }
    }

    /// <summary>Where there are fewer answers than students, each comes as seldom as it can.</summary>
    [Theory]
    [InlineData("safety-resistor")]
    [InlineData("filter-choose-capacitor")]
    public void Class_LargerThanThereAreAnswers_GetsEachAsSeldomAsPossible(string id)
    {
        Template template = TemplateSet.Find(id)!;
        int answers = template.Answers(int.MaxValue).Count();
        ClassDraws draws = new(new DrawSource(3), [(template, 1)], [.. Class(150).Select(student => student.Id)]);
        int[] times = [.. Enumerable.Range(0, 150).GroupBy(student => draws.Of(student, 0).Answer.Text).Select(group => group.Count())];
        Assert.Equal(answers, times.Length);
        Assert.InRange(times.Max() - times.Min(), 0, 1);
    }

    /// <summary>Asked again on a sheet, a template has another answer.</summary>
    [Fact]
    public void Copies_OnOneSheet_HaveDifferentAnswers()
    {
        Template template = TemplateSet.Find("safety-resistor")!;
        ClassDraws draws = new(new DrawSource(3), [(template, 1), (template, 2), (template, 3)], [.. Class(40).Select(student => student.Id)]);
        Assert.All(Enumerable.Range(0, 40), student => Assert.Equal(3, Enumerable.Range(0, 3).Select(copy => draws.Of(student, copy).Answer.Text).Distinct().Count()));
    }

    /// <summary>Students who come later change nothing, wherever their draws meet those of others.</summary>
    [Fact]
    public void Class_ThatGrowsAtItsEnd_KeepsItsSheets()
    {
        Homework small = Homework.Make([Topic.Safety, Topic.Gain], null, 12, 9, Class(40)), large = Homework.Make([Topic.Safety, Topic.Gain], null, 12, 9, Class(150));
        Assert.Equal(small.Sheets.Select(Text), large.Sheets.Take(40).Select(Text));
    }

    /// <summary>Others in front change only what meets theirs.</summary>
    [Fact]
    public void Class_InAnotherOrder_ChangesOnlyWhereAnswersMeet()
    {
        Student[] students = Class(40);
        Homework forth = Homework.Make([Topic.Noise], null, 5, 9, students), back = Homework.Make([Topic.Noise], null, 5, 9, [.. students.Reverse()]);
        int same = 0, all = 0;
        foreach ((ProblemSheet a, ProblemSheet b) in forth.Sheets.Zip(back.Sheets.Reverse()))
        {
            Assert.Equal(a.Code, b.Code);
            all += a.Questions.Count;
            same += a.Questions.Zip(b.Questions).Count(pair => pair.First.Problem.Answer.Text == pair.Second.Problem.Answer.Text);
        }

        Assert.InRange((double)same / all, 0.7, 1);
    }

    private static string Text(ProblemSheet sheet) => string.Join("\n", sheet.Questions.Select(question => $"{question.Id} {question.Problem.TemplateId} {string.Join(", ", question.Problem.Givens.Select(given => given.Text))} {question.Problem.Answer.Text}"));

    /// <summary>No choice is there only to be wrong, and no letter is right more often than another.</summary>
    [Theory]
    [InlineData("chain-judge-noise")]
    [InlineData("chain-judge-mains")]
    [InlineData("chain-judge-fold")]
    [InlineData("chain-judge-offset")]
    [InlineData("chain-judge-dominant")]
    public void Judgement_EachChoice_IsRightOftenEnough(string id)
    {
        const int Draws = 400;
        const double Share = 0.6;
        string[] rights = new string[Draws];
        int[] letters = new int[Draws];
        int choices = 0;
        Parallel.For(0, Draws, draw =>
        {
            ChoiceAnswer answer = (ChoiceAnswer)TemplateSet.Find(id)!.For(new DrawSource(11), $"s{draw}").Answer;
            (rights[draw], letters[draw], choices) = (Kind(answer.Options[answer.Right]), answer.Right, answer.Options.Count);
        });
        Dictionary<string, int> times = rights.GroupBy(right => right).ToDictionary(group => group.Key, group => group.Count());
        string told = string.Join("; ", times.Select(one => $"{one.Key}: {one.Value}"));
        Assert.True(times.Count == choices, told);
        Assert.True(times.Values.Min() >= Share / choices * Draws, told);
        Assert.All(Enumerable.Range(0, choices), letter => Assert.True(letters.Count(one => one == letter) >= Share / choices * Draws, $"{ChoiceAnswer.Letter(letter)}"));
    }

    /// <summary>What kind of change it is, however large it is drawn.</summary>
    private static string Kind(string option) => new[] { "sampling rate", "RC section", "capacitor", "gain", "supply" } is var kinds && option.Contains("capacitor", StringComparison.Ordinal)
        ? "capacitor"
        : kinds.FirstOrDefault(kind => option.Contains(kind, StringComparison.Ordinal)) ?? option;
}
