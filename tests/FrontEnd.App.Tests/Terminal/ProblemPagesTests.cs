using FrontEnd.Documents.Teaching;
using FrontEnd.Findings;
using FrontEnd.Teaching.Problems;
using FrontEnd.Terminal;
using Xunit;
using static FrontEnd.Terminal.KeyName;
using Key = Terminal.Gui.Input.Key;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The pages of problems and of marking: a sheet is chosen, shown, worked out and written; answers are marked by files, and marks
/// written.</summary>
public sealed class ProblemPagesTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Problems_Opened_ShowsQuestionsAndNoAnswer_UntilSolutionsAreAskedFor()
    {
        Model model = Setup.Start(Setup.Headband, 80, 50).Type("zh");
        string screen = model.Screen(), solved = model.Type("v").Screen();
        Assert.Contains("all topics, all levels, 5 questions, seed 1", screen, StringComparison.Ordinal);
        Question first = Homework.Make(((ProblemsPage)model.Page!).Plan, new Teaching.DrawSource(1), []).Sheets[0].Questions[0];
        Assert.Contains(first.Problem.Title, screen, StringComparison.Ordinal);
        Assert.DoesNotContain(first.Problem.Answer.Text, screen, StringComparison.Ordinal);
        Assert.Contains($"answer  {first.Problem.Answer.Text}", solved, StringComparison.Ordinal);
        Assert.Equal(screen, model.Type("vv").Screen());
    }

    [Theory]
    [InlineData("t", "noise, all levels")]
    [InlineData("lll", "all topics, level 3")]
    [InlineData("n", "10 questions")]
    [InlineData("++-", "seed 2")]
    [InlineData("--", "seed 0")]
    public void Problems_AfterAKey_AreDrawnAnew(string keys, string says)
    {
        Model before = Setup.Start(Setup.Headband, 100, 30).Type("zh"), after = before.Type(keys);
        Assert.Contains(says, after.Screen(), StringComparison.Ordinal);
        Assert.NotEqual(((ProblemsStudy)((ProblemsPage)before.Page!).Outcome!).Text, ((ProblemsStudy)((ProblemsPage)after.Page!).Outcome!).Text);
        Assert.True(after.Here.Undo.IsEmpty);
    }

    /// <summary>A topic that has no problem of a level says so, and the next key goes on.</summary>
    [Fact]
    public void Problems_OfEveryTopicAndLevel_AreShownOrRefused()
    {
        Model model = Setup.Start(Setup.Headband, 80, 24).Type("zh");
        for (int at = 0; at <= Teaching.Topics.Words.Count; at++)
        {
            for (int level = 0; level < 4; level++)
            {
                Assert.NotNull(((StudyPage)model.Page!).Outcome);
                model = model.Type("l");
            }

            model = model.Type("t");
        }

        Assert.Contains("all topics, all levels", model.Screen(), StringComparison.Ordinal);
    }

    [Fact]
    public void Files_OfBothPages_AreWrittenAndNothingIsLost()
    {
        string folder = Path.Combine(_folder.FullName, "h"), keyFile = Path.Combine(folder, "key", "key.json");
        using Harness screens = new(100, 30);
        screens.Type("zhw").Press(Key.U.WithCtrl).Type(folder).Press(Key.Enter);
        Assert.Contains("written to", screens.Screen, StringComparison.Ordinal);
        Assert.Contains("5 questions", screens.Screen, StringComparison.Ordinal);
        FrontEnd.Teaching.Problems.Key key = KeyFile.Read(File.ReadAllText(keyFile), keyFile, out Finding? finding)!;
        Assert.Null(finding);
        Assert.Equal(5, key.Sheets[0].Questions.Count);

        string answers = Path.Combine(folder, "answers.csv"), marks = Path.Combine(folder, "marks.csv");
        File.WriteAllText(answers, "student,question,answer\n" + string.Concat(key.Sheets[0].Questions.Select(one => $"a,{one.Id},\"{one.Answer.Replace("\"", "", StringComparison.Ordinal)}\"\n")));
        screens.Type("w").Press(Key.U.WithCtrl).Type(folder).Press(Key.Enter);
        Assert.Contains("FE1074", screens.Screen, StringComparison.Ordinal);

        screens.Press(Key.Esc, Key.Esc).Type("zm").Press(Key.U.WithCtrl).Type(keyFile).Press(Key.Enter);
        Assert.Contains("which answers?", screens.Screen, StringComparison.Ordinal);
        screens.Press(Key.U.WithCtrl).Type(answers).Press(Key.Enter);
        Assert.Contains("1 student, 5 answers asked for, 100 % of the points", screens.Screen, StringComparison.Ordinal);

        // Never over what it reads; an older file only after a question.
        screens.Type("w").Press(Key.U.WithCtrl).Type(answers).Press(Key.Enter);
        Assert.Contains("FE1073", screens.Screen, StringComparison.Ordinal);
        File.WriteAllText(marks, "older");
        screens.Type("w").Press(Key.U.WithCtrl).Type(marks).Press(Key.Enter);
        Assert.Contains("already exists", screens.Screen, StringComparison.Ordinal);
        Assert.Equal("older", File.ReadAllText(marks));
        screens.Type("r");
        Assert.True(screens.Screen.Contains("marks written to", StringComparison.Ordinal), screens.Screen);
        Assert.StartsWith("student,name,question", File.ReadAllText(marks), StringComparison.Ordinal);
    }

    [Fact]
    public void Marking_OfAFileThatIsNoKey_SaysSo()
    {
        string no = Path.Combine(_folder.FullName, "no.json");
        File.WriteAllText(no, "{}");
        Model model = MarkingPage.Begin(Setup.Start(), no, no) is var (begun, effect) ? Setup.Settle(begun, effect) : throw new InvalidOperationException();
        Assert.Contains("FE0808", model.Screen(), StringComparison.Ordinal);
        Assert.IsType<MarkingPage>(model.Type("w").Page);
        Assert.Null(model.Press(Escape).Page);
    }
}
