using System.Diagnostics;
using FrontEnd.Terminal;
using FrontEnd.Documents.Tests;
using Terminal.Gui.Input;
using Terminal.Gui.Drivers;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The screens as the driver holds them, against expected files; real keys through the library's own input path.</summary>
public class ScreenTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(200, 50)]
    public void Screens_LookAsExpected(int width, int height)
    {
        using Harness harness = new(width, height, Setup.Headband);
        Same(harness, $"electrodes-{width}x{height}");
        Same(harness.Type("v"), $"verdicts-{width}x{height}");
        Same(harness.Press(Key.Enter), $"why-{width}x{height}");
        Same(harness.Press(Key.Esc).Type("m"), $"mains-{width}x{height}");
        Same(harness.Type("g"), $"graph-{width}x{height}");
        Same(harness.Press(Key.Esc, Key.CursorRight, Key.CursorRight).Type("?"), $"help-{width}x{height}");
    }

    [Fact]
    public void Edit_MovesTheVerdict_AndSaysWhatItWas()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        Assert.Contains("38.3 µV rms", harness.Screen, StringComparison.Ordinal);

        // The lead's coupling to the mains: 2 fF to 0.1 fF.
        harness.Type("m").Press([.. Enumerable.Repeat(Key.CursorDown, 6)]).Type("0.1 fF").Press(Key.Enter);

        Assert.Contains("+ mains at the electrodes", harness.Screen, StringComparison.Ordinal);
        Assert.Contains("was 38.3 µV rms, fail", harness.Screen, StringComparison.Ordinal);
        Assert.Contains("*changed", harness.Screen, StringComparison.Ordinal);
        harness.Type("u");
        Assert.DoesNotContain("*changed", harness.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Mouse_ClickOnABlock_GoesThere()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        string[] lines = harness.Screen.Split('\n');
        int strip = Array.FindIndex(lines, line => line.Contains("converter", StringComparison.Ordinal));

        harness.Click(lines[strip].IndexOf("converter", StringComparison.Ordinal) + 2, strip + 1);

        Assert.Equal(Place.Converter, harness.Session.Model.PlaceId);
    }

    [Fact]
    public void Resize_TooSmall_SaysSo_AndRecovers()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        string before = harness.Screen;
        harness.Resize(50, 12);
        Assert.Contains("needs 60 x 18", harness.Screen, StringComparison.Ordinal);
        harness.Resize(10, 3);
        harness.Resize(80, 24);
        Assert.Equal(before, harness.Screen);
    }

    /// <summary>As a terminal sends it, in brackets: into the field in hand after one question, into what is typed without.</summary>
    [Fact]
    public void Paste_OfTheTerminal_IsAskedAboutOnce_AndGoesIntoWhatIsTyped()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        harness.Send("\u001b[200~35 %\r\nsecond line\u001b[201~").Settle();
        Assert.Contains("mismatch is 20 %. Set it to the pasted value, 35 %?", harness.Screen, StringComparison.Ordinal);
        harness.Press(Key.Enter);
        Assert.Contains("mismatch            35 %*", harness.Screen.Replace(" *", "*", StringComparison.Ordinal), StringComparison.Ordinal);

        harness.Press(Key.Enter);
        harness.Send("\u001b[200~45 %\u001b[201~").Settle();
        Assert.Equal("45 %", harness.Session.Model.Editing?.Line.Text);
    }

    /// <summary>What was sent before a question was on the screen does not answer it; what is sent after does.</summary>
    [Fact]
    public void KeysTypedAhead_DoNotAnswerAQuestion()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        harness.Type("+");
        harness.Send("qy\r\u001b[Ay");
        Assert.False(harness.Session.Model.Quitting);
        Assert.Equal(0, Assert.IsType<QuestionPage>(harness.Session.Model.Page).Selected);

        harness.Settle();
        Assert.Contains("Quit?", harness.Screen, StringComparison.Ordinal);
        harness.Type("y");
        Assert.True(harness.Session.Model.Quitting);
    }

    /// <summary>Our share of a keystroke at 120×40: update, paint, draw into the driver. A measurement and no test: run it by hand on a quiet machine with <c>-explicit only -method "*Keystroke*" -showLiveOutput</c>; 8 ms is asked for.</summary>
    [Fact(Explicit = true)]
    public void Keystroke_At120x40_IsMeasured()
    {
        using Harness harness = new(120, 40, Setup.Headband);
        List<double> times = [];
        for (int i = 0; i < 80; i++)
        {
            Key key = i % 2 == 0 ? Key.CursorDown : Key.CursorUp;
            long start = Stopwatch.GetTimestamp();
            harness.Send(AnsiKeyboardEncoder.Encode(key));
            harness.App.LayoutAndDraw();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        double median = times.Skip(20).Order().ElementAt(30);
        TestContext.Current.TestOutputHelper?.WriteLine($"median of a keystroke at 120x40: {median:0.00} ms");
        Assert.True(median < 8, $"{median:0.00} ms");
    }

    private static void Same(Harness harness, string name) => ExpectedText.Matches(harness.Screen, Path.Combine("FrontEnd.App.Tests", "Terminal"), name + ".txt");
}
