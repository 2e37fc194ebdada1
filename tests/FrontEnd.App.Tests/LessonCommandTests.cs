using System.Net;
using System.Text;
using System.Text.Json;
using FrontEnd.App.Commands;
using FrontEnd.Documents.Tests;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The command of lessons: list, text, JSON, pages, and the question on a terminal.</summary>
public sealed class LessonCommandTests
{
    public static TheoryData<string> Names => [.. Lessons.All.Select(lesson => lesson.Name)];

    [Fact]
    public void List_NamesEveryLesson()
    {
        Outcome list = Shell.Run("lesson");
        Assert.Equal(0, list.Code);
        Assert.All(Lessons.All, lesson => Assert.Contains(lesson.Title, list.Output, StringComparison.Ordinal));
        using JsonDocument json = JsonDocument.Parse(Shell.Run("lesson", "--json").Output);
        Assert.Equal(Lessons.All.Select(lesson => lesson.Name), json.RootElement.GetProperty("lessons").EnumerateArray().Select(one => one.GetProperty("name").GetString()!));
    }

    /// <summary>Where nobody can answer, the question comes first and the answer after it.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Lesson_InAScript_PrintsQuestionAndAnswer(string name)
    {
        Outcome printed = Shell.Run("lesson", name);
        Assert.Equal((0, ""), (printed.Code, printed.Messages));
        Assert.InRange(printed.Output.IndexOf("Predict first", StringComparison.Ordinal), 1, printed.Output.IndexOf("\nanswer ", StringComparison.Ordinal));
        Assert.Equal(printed.Output, Shell.Run("lesson", name, "--answers").Output);
        using JsonDocument json = JsonDocument.Parse(Shell.Run("lesson", name, "--json").Output);
        Assert.Equal(1, json.RootElement.GetProperty("choices").EnumerateArray().Count(choice => choice.GetProperty("holds").GetBoolean()));
    }

    /// <summary>The prediction stands on the first sheet of paper, the outcome on the second: neither the figure nor the answer shows on the first.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Page_ToPrint_HasTheAnswerOnASheetOfItsOwn(string name)
    {
        using TemporaryFolder folder = new();
        string html = Path.Combine(folder.Path, "lesson.html"), pdf = Path.Combine(folder.Path, "lesson.pdf");
        Outcome written = Shell.Run("lesson", name, "-o", html, "-o", pdf);
        Assert.Equal((0, ""), (written.Code, written.Output));
        string[] sections = WebUtility.HtmlDecode(File.ReadAllText(html)).Split("<section class=\"page\">");
        Assert.Equal(3, sections.Length);
        using JsonDocument json = JsonDocument.Parse(Shell.Run("lesson", name, "--json").Output);
        string why = json.RootElement.GetProperty("why").GetString()!, said = json.RootElement.GetProperty("sentences")[0].GetString()!;
        Assert.Contains("Predict first", sections[1], StringComparison.Ordinal);
        Assert.DoesNotContain(why, sections[1], StringComparison.Ordinal);
        Assert.DoesNotContain(said, sections[1], StringComparison.Ordinal);
        Assert.Contains(why, sections[2], StringComparison.Ordinal);
        Assert.Contains(said, sections[2], StringComparison.Ordinal);
        bool pictured = Lessons.Find(name)!.HasPicture;
        Assert.Equal(pictured ? 1 : 0, sections[1].Split("<svg").Length - 1);
        Assert.Equal(pictured, sections[2].Contains("nobody was recorded", StringComparison.Ordinal));
        Assert.Equal(2, Encoding.Latin1.GetString(File.ReadAllBytes(pdf)).Split("/MediaBox").Length - 1);
    }

    [Fact]
    public void Lesson_ItsDesign_CanBeWrittenAndGivenBack()
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, "aliasing.toml");
        Assert.Equal(0, Shell.Run("lesson", "aliasing", "-o", file).Code);
        Outcome again = Shell.Run("lesson", "aliasing", "--design", file, "--to", "250 Hz");
        Assert.Equal((0, ""), (again.Code, again.Messages));
        Assert.Contains("500 Hz -> 250 Hz", again.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("b\n", "you said b, and so it is.")]
    [InlineData("B\n", "you said b, and so it is.")]
    [InlineData("x\nbb\nc\n", "you said c; the figures say b:")]
    [InlineData("\n", "answer    b:")]
    [InlineData("", "answer    b:")]
    public void Lesson_OnATerminal_AsksAndWaits(string typed, string said)
    {
        using StringWriter output = new(), messages = new();
        using StringReader person = new(typed);
        Assert.Equal(0, CommandLine.Run(["lesson", "electrode-noise"], new Outlet(output, messages) { Answers = person }));
        string[] halves = output.ToString().Split("Your prediction (a, b, c; Enter alone shows the answer): ");
        Assert.Equal(1 + Math.Max(1, typed.Count(letter => letter == '\n')), halves.Length);
        Assert.DoesNotContain("1.94 times", halves[0], StringComparison.Ordinal);
        Assert.Contains(said, halves[^1], StringComparison.Ordinal);
        Assert.DoesNotContain("Your prediction", Run(person, "--answers"), StringComparison.Ordinal);
        Assert.DoesNotContain("Your prediction", Run(person, "--json"), StringComparison.Ordinal);

        static string Run(TextReader person, string option)
        {
            using StringWriter output = new(), messages = new();
            CommandLine.Run(["lesson", "electrode-noise", option], new Outlet(output, messages) { Answers = person });
            return output.ToString();
        }
    }

    [Theory]
    [InlineData("lesson aliasin", "FE1110")]
    [InlineData("lesson aliasing --to 500Hz", "FE1112")]
    [InlineData("lesson referential-bipolar --design designs/starter.toml", "FE1113")]
    [InlineData("lesson aliasing -o lesson.csv", "FE0004")]
    [InlineData("lesson --to 3", "FE0001")]
    [InlineData("lesson aliasing --design designs/bought-headband.toml", "FE")]
    [InlineData("lesson aliasing --design designs/wrong-in-six-ways.toml", "FE")]
    public void Lesson_ThatCannotBeRun_SaysWhy(string call, string code)
    {
        Outcome refused = Shell.Run(call.Split(' '));
        Assert.Equal((2, ""), (refused.Code, refused.Output));
        Assert.StartsWith(code, refused.Messages, StringComparison.Ordinal);
    }
}
