using FrontEnd.Teaching;
using FrontEnd.Terminal;
using Xunit;
using static FrontEnd.Terminal.KeyName;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The page of lessons: choose one, predict by a key, see the figures before and after; the open design stays as it is.</summary>
public sealed class LessonPageTests
{
    [Fact]
    public void Page_Opened_AsksAndShowsNoAnswer()
    {
        Model model = Setup.Start(Setup.Headband).Type("zl");
        string screen = model.Screen();
        Assert.Contains("1 of 8: electrode noise", screen, StringComparison.Ordinal);
        Assert.Contains("electrodes.active.contact-resistance: 100 kΩ -> 400 kΩ", screen, StringComparison.Ordinal);
        Assert.Contains("c  it gets about four times as large", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("1.94 times", screen, StringComparison.Ordinal);
    }

    /// <summary>On the smallest terminal in use the question of every lesson stands whole, with its answers.</summary>
    [Fact]
    public void Question_AtEightyByTwentyFour_StandsWhole()
    {
        Model model = Setup.Start(Setup.Headband, 80, 24).Type("zl");
        foreach (Lesson lesson in Lessons.All)
        {
            string screen = model.Screen();
            Assert.All(lesson.Choices, choice => Assert.Contains(choice.Text, screen, StringComparison.Ordinal));
            model = model.Type("+");
        }
    }

    [Theory]
    [InlineData("b", "you said b, and so it is.")]
    [InlineData("a", "you said a; the figures say b:")]
    [InlineData("C", "you said c; the figures say b:")]
    [InlineData("arb", "you said b, and so it is.")]
    public void Page_AfterAPrediction_ShowsTheFiguresBeforeAndAfter(string keys, string said)
    {
        string screen = Setup.Start(Setup.Headband, 80, 40).Type("zl" + keys).Screen();
        Assert.Contains(said, screen, StringComparison.Ordinal);
        Assert.Contains("248 nV rms", screen, StringComparison.Ordinal);
        Assert.Contains("480 nV rms", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_WithoutAPrediction_ShowsTheAnswer_AndThenCloses()
    {
        Model shown = Setup.Start(Setup.Headband, 80, 40).Type("zl").Press(Enter);
        Assert.Contains("answer    b:", shown.Screen(), StringComparison.Ordinal);
        Assert.Null(shown.Press(Enter).Page);
    }

    /// <summary>Who answers twice stays in the lesson; the next step that the lesson proposes, another value or another lesson, is a key away.</summary>
    [Fact]
    public void Page_AfterTheAnswer_StaysAndLeadsOn()
    {
        Model answered = Setup.Start(Setup.Headband, 80, 60).Type("zl").Press(Enter);
        foreach (string letter in (string[])["a", "b", "c", "A"])
        {
            Model again = answered.Type(letter);
            Assert.Equal(answered.Page, again.Page);
            Assert.Contains("r asks for a prediction again", again.Status, StringComparison.Ordinal);
        }

        Assert.Contains("n tries it: electrodes.active.contact-resistance 25 kΩ", answered.Screen(), StringComparison.Ordinal);
        Model tried = answered.Type("n");
        Assert.Contains("electrodes.active.contact-resistance: 100 kΩ -> 25 kΩ", tried.Screen(), StringComparison.Ordinal);
        Assert.Contains($"n opens it: {Lessons.All[1].Title}", tried.Press(Enter).Screen(), StringComparison.Ordinal);
        foreach (int number in Enumerable.Range(0, Lessons.All.Count))
        {
            Lesson lesson = Lessons.All[number];
            Model next = Setup.Start(Setup.Headband, 80, 60).Type("zl" + new string('+', number)).Press(Enter).Type("n");
            LessonPage page = Assert.IsType<LessonPage>(next.Page);
            Assert.IsType<LessonStudy>(page.Outcome);
            Assert.Equal(lesson.NextLesson.Length > 0 ? lesson.NextLesson : lesson.Name, Lessons.All[page.Lesson].Name);
        }
    }

    [Fact]
    public void Lessons_AllOfThem_AreReachedAndTheDesignStaysAsItIs()
    {
        Model start = Setup.Start(Setup.Headband, 80, 24), model = start.Type("zl");
        foreach (Lesson lesson in Lessons.All)
        {
            Assert.Contains(lesson.Title, model.Screen(), StringComparison.Ordinal);
            model = model.Type("c+");
        }

        Assert.Contains(Lessons.All[0].Title, model.Screen(), StringComparison.Ordinal);
        Assert.Contains(Lessons.All[^1].Title, model.Type("-").Screen(), StringComparison.Ordinal);
        Assert.Equal(start.Here.Document.Text, model.Here.Document.Text);
        Assert.True(model.Here.Undo.IsEmpty);
    }

    /// <summary>A lesson has a design of its own: errors of the open one are no hindrance.</summary>
    [Fact]
    public void Page_OverADesignWithErrors_Opens() =>
        Assert.Contains("electrode noise", Setup.Start(Path.Combine(Setup.Root, "designs", "wrong-in-six-ways.toml")).Type("zl").Screen(), StringComparison.Ordinal);
}
