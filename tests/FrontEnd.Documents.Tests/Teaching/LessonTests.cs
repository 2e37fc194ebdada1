using FrontEnd.Catalogue;
using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Results;
using FrontEnd.Teaching;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Lessons: what each claims is what the evaluation shows.</summary>
public sealed class LessonTests
{
    public static TheoryData<string> Names => [.. Lessons.All.Select(lesson => lesson.Name)];

    private static LessonOutcome Run(string name, DesignDocument? own = null, string? value = null)
    {
        List<Finding> findings = [];
        LessonOutcome? outcome = LessonRun.Work(Lessons.Find(name)!, own, value, findings);
        Assert.Empty(findings);
        return Assert.IsType<LessonOutcome>(outcome);
    }

    private static string Refused(string name, DesignDocument? own, string? value)
    {
        List<Finding> findings = [];
        Assert.Null(LessonRun.Work(Lessons.Find(name)!, own, value, findings));
        return Assert.Single(findings).Code;
    }

    private static DesignDocument Design(string text) => DesignDocument.Parse(text, DocumentFormat.Toml);

    /// <summary>The right answer, and how many times as large the figure is by a textbook's law: √4 less what the capacitance shorts, a tenth of
    /// the mismatch, 1/(1 + |T|) of a loop with 20 dB, a quarter for four times the gain, 180 − 200 Hz, 2^6.</summary>
    [Theory]
    [InlineData("electrode-noise", 'b', 1.85, 2)]
    [InlineData("mains-and-imbalance", 'c', 8, 10)]
    [InlineData("driven-ground", 'b', 0.09, 0.11)]
    [InlineData("offset-and-gain", 'a', 0.23, 0.25)]
    [InlineData("aliasing", 'c', 0.111, 0.112)]
    [InlineData("quantisation", 'b', 4, 16)]
    [InlineData("referential-bipolar", 'b', 0.1, 0.3)]
    [InlineData("fixed-point", 'c', 63.9, 64.1)]
    public void Lesson_RightAnswer_IsWhatTheEvaluationShows(string name, char right, double least, double greatest)
    {
        LessonOutcome outcome = Run(name);
        Assert.Equal(right, LessonText.Letter(outcome.Right!.Value));
        Assert.Single(outcome.Choices, choice => choice.Holds(outcome));
        Assert.InRange(outcome.Asked.Ratio!.Value, least, greatest);
    }

    [Fact]
    public void Lessons_AllOfThem_AreInTheTableAboveAndHaveAFile()
    {
        Assert.Equal(8, Lessons.All.Count);
        Assert.Equal(Lessons.All.Count, Lessons.All.Select(lesson => lesson.Name).Distinct(StringComparer.Ordinal).Count());
        string[] files = [.. Directory.GetFiles(Path.Combine(Repository.Root, "designs", "lessons"), "*.toml").Select(file => Path.GetFileNameWithoutExtension(file))];
        Assert.Equal(Lessons.All.Select(lesson => lesson.Name).Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Lesson_ItsDesign_HasNeitherErrorsNorWarnings(string name)
    {
        LessonOutcome outcome = Run(name);
        Assert.Empty(LessonRun.DesignOf(outcome.Lesson).Findings);
        Assert.True(outcome.Before.HasFigures && outcome.After.HasFigures);
        Assert.DoesNotContain(outcome.After.Findings, finding => finding.Severity == Severity.Error);
    }

    /// <summary>Whatever else may fail for the lesson's sake, nothing that protects the wearer does.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Lesson_BeforeAndAfter_StaysBelowTheLimitsOfSafety(string name)
    {
        LessonOutcome outcome = Run(name);
        foreach (Assessment assessment in (Assessment[])[outcome.Before, outcome.After])
        {
            Result[] safety = [.. assessment.Judged.Where(result => ResultIds.Safety.All.Has(result.Id))];
            Assert.NotEmpty(safety);
            Assert.All(safety, result => Assert.NotEqual(VerdictKind.Fail, result.Verdict.Kind));
        }
    }

    /// <summary>Every figure beside the predicted one is there before the change or after it, and every key that is shown is a key.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Lesson_EveryFigureAndKey_IsThere(string name)
    {
        LessonOutcome outcome = Run(name);
        Assert.Equal(outcome.Lesson.Figures, outcome.Figures.Select(figure => figure.Id));
        Assert.NotNull(outcome.Reason);
        Assert.All(outcome.Lesson.Shown, key => Assert.True(DesignFields.IsPresent(outcome.Before.Design, key), key));
        Assert.Equal(3, outcome.Lesson.Choices.Count);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Text_OfALesson_HasQuestionAnswerSourceAndWhatIsNext(string name)
    {
        LessonOutcome outcome = Run(name);
        string question = Flat(LessonText.Question(outcome)), answer = Flat(LessonText.Answer(outcome, 0));
        string before = QuantityText.Format(outcome.Asked.Before!.Value), after = QuantityText.Format(outcome.Asked.After!.Value);
        Assert.Contains(outcome.Lesson.Question, question, StringComparison.Ordinal);
        Assert.Contains(before, question, StringComparison.Ordinal);
        Assert.DoesNotContain(after, question, StringComparison.Ordinal);
        Assert.Contains($"from {before} to {after}", answer, StringComparison.Ordinal);
        Assert.Contains(outcome.Lesson.Why, answer, StringComparison.Ordinal);
        Assert.Contains($"equation {outcome.Reason!.Name}: {outcome.Reason.Equation.Text}", answer, StringComparison.Ordinal);
        Assert.Contains(SourceList.Of(outcome.Reason.Equation.Source), answer, StringComparison.Ordinal);
        Assert.Contains(outcome.Right == 0 ? "you said a, and so it is" : "you said a; the figures say", answer, StringComparison.Ordinal);
        Assert.Contains("frontend lesson", answer, StringComparison.Ordinal);
        Assert.All(LessonText.Of(outcome).Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    /// <summary>The command that is proposed next is a lesson, or another value that the lesson takes.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Next_OfALesson_CanBeRun(string name)
    {
        Lesson lesson = Lessons.Find(name)!;
        LessonOutcome next = lesson.NextLesson.Length > 0 ? Run(lesson.NextLesson) : Run(name, value: lesson.NextValue);
        Assert.NotNull(next.Right);
    }

    /// <summary>On another value or another design the lesson's own answers would speak of something else.</summary>
    [Fact]
    public void Lesson_OnAUsersDesign_AsksWhetherItRises()
    {
        DesignDocument starter = DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml);
        LessonOutcome outcome = Run("offset-and-gain", starter);
        Assert.Equal("it falls", outcome.Choices[outcome.Right!.Value].Text);
        Assert.DoesNotContain("four times the gain", LessonText.Of(outcome, "my.toml"), StringComparison.Ordinal);
        Assert.Contains("frontend explain my.toml levels.offset_survived", LessonText.Of(outcome, "my.toml"), StringComparison.Ordinal);
        Assert.Equal("it falls", Right(Run("electrode-noise", value: "25 kΩ")));
        Assert.Equal("it stays about the same, within a tenth", Right(Run("mains-and-imbalance", value: "5.1 %")));

        static string Right(LessonOutcome outcome) => outcome.Choices[outcome.Right!.Value].Text;
    }

    [Fact]
    public void Lesson_ThatCannotBeRun_SaysWhy()
    {
        Assert.Equal(Messages.LessonChangesNothing, Refused("quantisation", null, "18"));
        Assert.Equal(Messages.LessonFigureAbsent, Refused("referential-bipolar", Design(DesignDocument.StarterText), null));
        Assert.Equal("FE0110", Refused("quantisation", null, "99"));
        List<Finding> findings = [];
        Assert.Null(LessonRun.Work(Lessons.Find("aliasing")!, null, "fast", findings));
        Assert.NotEmpty(findings);
    }

    /// <summary>Only what the figure does decides: a lesson whose design does the opposite has another answer.</summary>
    [Fact]
    public void Right_FollowsTheFigures()
    {
        LessonOutcome outcome = Run("offset-and-gain");
        LessonOutcome turned = outcome with { Before = outcome.After, After = outcome.Before };
        Assert.Equal('c', LessonText.Letter(turned.Right!.Value));
        Assert.Null((outcome with { After = outcome.Before, Lesson = outcome.Lesson with { Choices = [outcome.Lesson.Choices[0]] } }).Right);
    }

    private static string Flat(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
