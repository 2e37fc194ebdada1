using System.Globalization;
using FrontEnd.Findings;
using FrontEnd.Teaching;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Answers without sheet codes that belong to another homework, or to other sheets of this one; and those of classes that did badly.</summary>
public class OtherHomeworkTests
{
    private static Homework Of(ulong seed, int students, int questions = 12, int? level = null) => students == 0
        ? Homework.Make([], level, questions, seed, [])
        : Homework.Make([], level, questions, seed, [.. Enumerable.Range(1, students).Select(at => new Student($"s{at:00}", ""))]);

    /// <summary>What the class of a homework answers, each student with some of it right by its own sheet and the rest as the function has it.</summary>
    private static List<GivenAnswer> Answers(Homework homework, Func<int, int, Question, string> text, int students = 0)
    {
        List<GivenAnswer> answers = [];
        for (int student = 0; student < Math.Max(students, homework.Sheets.Count); student++)
        {
            ProblemSheet sheet = homework.Sheets[Math.Min(student, homework.Sheets.Count - 1)];
            answers.AddRange(sheet.Questions.Select((question, at) => new GivenAnswer(sheet.Student?.Id ?? $"s{student + 1:00}", question.Id, text(student, at, question), answers.Count + 2)));
        }

        return answers;
    }

    private static Finding? Told(Homework key, IReadOnlyList<GivenAnswer> answers) =>
        Marker.Mark(Key.Of(key), answers).Findings.FirstOrDefault(finding => finding.Code is Messages.AnotherHomework or Messages.SheetsExchanged);

    private static string Right(int student, int at, Question question) => question.Problem.Answer.Text;

    [Theory]
    [InlineData(30, 12)]
    [InlineData(8, 10)]
    [InlineData(60, 6)]
    [InlineData(4, 12)]
    public void AnswersOfAnotherSeed_AreToldBeforeAllElse(int students, int questions)
    {
        int told = 0;
        for (ulong seed = 20; seed < 30; seed++)
        {
            List<GivenAnswer> answers = Answers(Of(seed, students, questions), Right);
            Marks marks = Marker.Mark(Key.Of(Of(seed + 100, students, questions)), answers);
            told += marks.Findings is [{ Code: Messages.AnotherHomework, Severity: Severity.Warning, Line: 2 or 3 or 4 or 5 }, ..] ? 1 : 0;
            Assert.NotEmpty(marks.Rows);
            Assert.Null(Told(Of(seed, students, questions), answers));
        }

        Assert.InRange(told, students == 4 ? 6 : 9, 10);
    }

    /// <summary>One sheet that all share: everyone has the same wrong values.</summary>
    [Fact]
    public void AnswersToAnotherSharedSheet_AreTold()
    {
        int told = 0;
        for (ulong seed = 20; seed < 30; seed++)
        {
            List<GivenAnswer> answers = Answers(Of(seed, 0), Right, 25);
            told += Told(Of(seed + 100, 0), answers) is { Code: Messages.AnotherHomework } ? 1 : 0;
            Assert.Null(Told(Of(seed, 0), answers));
        }

        Assert.InRange(told, 6, 10);
    }

    /// <summary>A class that did badly: most wrong altogether, a tenth right, a tenth with known slips, and the wrong ones near or far.</summary>
    [Theory]
    [InlineData(30, 0.05, 0.15)]
    [InlineData(30, 0.1, 0.1)]
    [InlineData(10, 0.1, 0.15)]
    [InlineData(5, 0.2, 0)]
    [InlineData(3, 0.2, 0)]
    [InlineData(100, 0.04, 0.1)]
    public void ClassThatDidBadly_IsNotSuspected(int students, double right, double slips)
    {
        for (ulong seed = 1; seed <= (students < 100 ? 12UL : 2UL); seed++)
        {
            Random random = new((int)seed);
            Homework homework = Of(seed, students);
            Assert.Null(Told(homework, Answers(homework, (_, _, question) => Badly(question, random, right, slips))));
        }
    }

    private static string Badly(Question question, Random random, double right, double slips)
    {
        double chance = random.NextDouble();
        Problem problem = question.Problem;
        if (problem.Answer is not QuantityAnswer answer)
        {
            return "A";
        }

        return chance < right ? answer.Text
            : chance < right + slips && problem.Slips.Count > 0 ? answer.Write(problem.Slips[random.Next(problem.Slips.Count)].Value)
            : answer.Write(answer.Value * Math.Exp(3 * (random.NextDouble() - 0.5)));
    }

    /// <summary>A student or two may be wrong in everything.</summary>
    [Fact]
    public void OneStudentAlone_IsNotSuspected() => Assert.Null(Told(Of(7, 1, 30), Answers(Of(8, 1, 30), Right)));

    /// <summary>The column of students has slipped by a row.</summary>
    [Fact]
    public void AnswersOfTheNeighbour_AreToldAsThose()
    {
        Homework homework = Of(5, 30);
        List<GivenAnswer> answers = [.. Answers(homework, Right).Select(answer => answer with
        {
            Student = $"s{(int.Parse(answer.Student[1..], CultureInfo.InvariantCulture) % 30) + 1:00}",
        })];
        Finding told = Told(homework, answers)!;
        Assert.Equal(Messages.SheetsExchanged, told.Code);
        Assert.Contains("those of `s02` the sheet of `s01`", told.Message, StringComparison.Ordinal);
    }

    /// <summary>Other kinds of problems: the units do not fit.</summary>
    [Fact]
    public void AnswersInOtherUnits_AreTold()
    {
        Homework key = Homework.Make([Topic.Filters], null, 8, 3, [new Student("a", ""), new Student("b", ""), new Student("c", "")]);
        Homework other = Homework.Make([Topic.Electrodes, Topic.Cmrr], null, 8, 3, [new Student("a", ""), new Student("b", ""), new Student("c", "")]);
        Assert.Equal(Messages.AnotherHomework, Told(key, Answers(other, Right))?.Code);
    }

    /// <summary>A sheet's code tells for certain, whatever the answers are worth.</summary>
    [Fact]
    public void WrongAnswersWithTheirSheetsCode_AreNotSuspected()
    {
        Homework homework = Of(5, 30);
        List<GivenAnswer> wrong = [.. Answers(Of(6, 30), Right).Select(answer => answer with { Sheet = SheetCode.Of(homework.Code, answer.Student) })];
        Assert.Null(Told(homework, wrong));
    }
}
