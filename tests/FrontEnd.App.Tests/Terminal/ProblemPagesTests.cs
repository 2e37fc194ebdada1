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

    /// <summary>A class and a secret, chosen as any file is: the same files as the command's.</summary>
    [Fact]
    public void Problems_OfAClassWithASecret_AreTheFilesOfTheCommand()
    {
        string list = Path.Combine(_folder.FullName, "class.csv"), secret = Path.Combine(_folder.FullName, "secret.txt");
        string here = Path.Combine(_folder.FullName, "here"), there = Path.Combine(_folder.FullName, "there");
        File.WriteAllText(list, "id,name\ns1,Ada\ns2,Ben\ns3,Cem\n");
        File.WriteAllText(secret, "nobody can guess these letters");
        using Harness screens = new(110, 40);
        screens.Type("zhc");
        Assert.Contains("sheets for which class?", screens.Screen, StringComparison.Ordinal);
        screens.Press(Key.U.WithCtrl).Type(Path.Combine(_folder.FullName, "cl")).Press(Key.Tab).Press(Key.Enter);
        Assert.Contains("The sheet of Ada (s1), the first of 3.", screens.Screen, StringComparison.Ordinal);
        Assert.Contains("class.csv", screens.Screen, StringComparison.Ordinal);
        screens.Type("k").Press(Key.U.WithCtrl).Type(secret).Press(Key.Enter);
        Assert.Contains("class.csv, secret.txt", screens.Screen, StringComparison.Ordinal);
        screens.Type("w").Press(Key.U.WithCtrl).Type(here).Press(Key.Enter);
        Assert.Contains("3 sheets written to", screens.Screen, StringComparison.Ordinal);

        Assert.Equal(0, Shell.Run("problems", "--count", "5", "--students", list, "--secret", secret, "-o", there).Code);
        string[] files = [.. Directory.EnumerateFiles(there, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(there, file)).Order(StringComparer.Ordinal)];
        Assert.Equal(files, Directory.EnumerateFiles(here, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(here, file)).Order(StringComparer.Ordinal));
        Assert.Contains(Path.Combine("sheets", "s3.html"), files);
        Assert.All(files, file => Assert.Equal(File.ReadAllBytes(Path.Combine(there, file)), File.ReadAllBytes(Path.Combine(here, file))));

        // An empty name takes the class away again.
        screens.Type("c").Press(Key.U.WithCtrl).Press(Key.Enter);
        Assert.DoesNotContain("class.csv", screens.Screen, StringComparison.Ordinal);
        screens.Type("w").Press(Key.U.WithCtrl).Type(_folder.FullName + "/new").Press(Key.Enter);
        Assert.Contains("1 sheet written to", screens.Screen, StringComparison.Ordinal);
    }

    /// <summary>A list of students that cannot be read stands in the sheet's place, and the way back is a key.</summary>
    [Fact]
    public void Problems_OfAListThatIsNone_SaySo()
    {
        string list = Path.Combine(_folder.FullName, "class.csv");
        File.WriteAllText(list, "name,points\nAda,1\n");
        using Harness screens = new(100, 30);
        screens.Type("zhc").Press(Key.U.WithCtrl).Type(list).Press(Key.Enter);
        Assert.Contains("FE0806", screens.Screen, StringComparison.Ordinal);
        screens.Type("c").Press(Key.U.WithCtrl).Press(Key.Enter);
        Assert.Contains("Answer", screens.Screen, StringComparison.Ordinal);
    }

    /// <summary>Another list of answers, or another key, without leaving the page.</summary>
    [Fact]
    public void Marking_WithOtherFiles_IsDoneAnew()
    {
        string folder = Path.Combine(_folder.FullName, "h"), list = Path.Combine(_folder.FullName, "class.csv"), first = Path.Combine(folder, "a.csv"), second = Path.Combine(folder, "b.csv");
        File.WriteAllText(list, "id,name\n" + string.Concat(Enumerable.Range(1, 6).Select(at => $"s{at},x\n")));
        Assert.Equal(0, Shell.Run("problems", "--students", list, "-o", folder).Code);
        Assert.Equal(0, Shell.Run("problems", "--students", list, "--seed", "2", "-o", folder + "2").Code);
        foreach ((string file, string of) in new[] { (first, folder), (second, folder + "2") })
        {
            string keyOf = Path.Combine(of, "key", "key.json");
            File.WriteAllText(file, "student,question,answer\n" + string.Concat(KeyFile.Read(File.ReadAllText(keyOf), keyOf, out _)!.Sheets
                .SelectMany(sheet => sheet.Questions.Select(one => $"{sheet.Student},{one.Id},\"{one.Answer}\"\n"))));
        }

        using Harness screens = new(100, 30);
        screens.Type("zm").Press(Key.U.WithCtrl).Type(Path.Combine(folder, "key", "key.json")).Press(Key.Enter).Press(Key.U.WithCtrl).Type(first).Press(Key.Enter);
        Assert.Contains("100 % of the points", screens.Screen, StringComparison.Ordinal);
        screens.Type("a").Press(Key.U.WithCtrl).Type(second).Press(Key.Enter);
        Assert.Contains("FE1150", screens.Screen, StringComparison.Ordinal);
        screens.Type("k").Press(Key.U.WithCtrl).Type(Path.Combine(folder + "2", "key", "key.json")).Press(Key.Enter);
        Assert.Contains("100 % of the points", screens.Screen, StringComparison.Ordinal);
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
