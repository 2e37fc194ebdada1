using System.Diagnostics;
using FrontEnd.Terminal;
using FrontEnd.Documents.Sheets;
using FrontEnd.Documents.Tests;
using FrontEnd.Results;
using FrontEnd.Text;
using Terminal.Gui.Input;
using Terminal.Gui.Drivers;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The screens as the driver holds them, against expected files; real keys through the library's own input path.</summary>
public class ScreenTests
{
    [Theory]
    [InlineData(60, 15, false)]
    [InlineData(80, 24, false)]
    [InlineData(120, 40, false)]
    [InlineData(200, 60, false)]
    [InlineData(60, 15, true)]
    [InlineData(80, 24, true)]
    [InlineData(120, 40, true)]
    [InlineData(200, 60, true)]
    public void Screens_LookAsExpected(int width, int height, bool ascii)
    {
        using Harness harness = new(width, height, Setup.Headband, ascii: ascii);
        string size = $"{width}x{height}{(ascii ? "-ascii" : "")}";
        Same(harness, $"electrodes-{size}");
        Same(harness.Type("v"), $"verdicts-{size}");
        Same(harness.Press(Key.Enter), $"why-{size}");
        Same(harness.Press(Key.Esc).Type("m"), $"mains-{size}");
        Same(harness.Type("g"), $"graph-{size}");
        Same(harness.Press(Key.Esc, Key.CursorRight, Key.CursorRight).Type("?"), $"help-{size}");
        if (ascii)
        {
            Assert.All(harness.Screen, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        }
    }

    /// <summary>As the driver would send it, its escape codes made visible: the terminal's own sixteen colours, or none at all.</summary>
    [Theory]
    [InlineData(60, 15, true)]
    [InlineData(80, 24, true)]
    [InlineData(120, 40, true)]
    [InlineData(200, 60, true)]
    [InlineData(60, 15, false)]
    [InlineData(80, 24, false)]
    [InlineData(120, 40, false)]
    [InlineData(200, 60, false)]
    public void Colours_AreAsExpected(int width, int height, bool colour)
    {
        using Harness harness = new(width, height, Setup.Headband, colour: colour);
        string size = $"{width}x{height}-{(colour ? "colour" : "none")}", screens = harness.Coded + harness.Type("v").Coded;
        ExpectedText.Matches(screens, Path.Combine("FrontEnd.App.Tests", "Terminal"), $"coded-{size}.txt");
        if (!colour)
        {
            // 39 and 49 are the terminal's own foreground and background.
            Assert.DoesNotMatch(@"\\e\[(?:[0-9]+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])[;m]", screens);
        }
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
        Assert.Contains("needs 60 x 15", harness.Screen, StringComparison.Ordinal);
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

    /// <summary>The graph of the mains shows every harmonic, the form those in the band: each says which, and the graph says both, in every size.</summary>
    [Theory]
    [InlineData(60, 15)]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void GraphOfTheMains_SaysBothFigures(int width, int height)
    {
        Model model = Setup.Start(Setup.Headband, width, height).Type("mg");
        Result all = model.Here.Shown!["mains.recorded_everywhere"], inBand = model.Here.Shown!["mains.recorded"];
        Assert.NotEqual(ResultText.Value(all), ResultText.Value(inBand));
        string screen = string.Join(' ', model.Screen().Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("mains recorded anywhere, h = 1 to 9", screen, StringComparison.Ordinal);
        Assert.Contains($"all bars: {ResultText.Value(all)}", screen, StringComparison.Ordinal);
        Assert.Contains($"in the band 0.5 Hz to 40 Hz, which are judged: {ResultText.Value(inBand)}", screen, StringComparison.Ordinal);
        Assert.Equal("mains recorded in band", model.Here.Shown.ShortNames[inBand.Id]);
        Assert.Equal("mains recorded anywhere", model.Here.Shown.ShortNames[all.Id]);
    }

    /// <summary>What moved by less than three digits show is said with as many as show it, in the figures and in the reasons.</summary>
    [Fact]
    public void SmallMoves_AreToldWithTheDigitsThatShowThem()
    {
        Model model = Setup.Start(Setup.Headband);
        Result now = model.Here.Shown!["noise.total"];
        Result Moved(double by) => now with { Value = Quantities.VoltageRms.FromVolts(now.Si * (1 + by)) };
        Assert.Null(ResultText.Was(now, now, 6));
        Assert.Null(ResultText.Was(Moved(1e-9), now, 6));
        (string before, string? after) = ResultText.Was(Moved(2e-4), now, 6)!.Value;
        Assert.NotEqual(before, after);
        Assert.NotNull(after);
        Assert.Equal((QuantityText.Format(Moved(0.1).Value), null), ResultText.Was(Moved(0.1), now, 6));

        // The noise figure, a few hundredths of a decibel.
        model = Setup.Start(Path.Combine(Setup.Root, "designs", "starter.toml"));
        Result figure = model.Here.Shown!["noise.figure"];
        IReadOnlyList<FrontEnd.Advice.Sensitivity> moves = FrontEnd.Advice.Sensitivity.Of(model.Here.Shown, figure.Id, TestContext.Current.CancellationToken);
        Assert.Contains(moves, one => Math.Abs(one.Change) < 0.005);
        foreach (FrontEnd.Advice.Sensitivity one in moves.Where(one => one.After is not null))
        {
            Assert.NotEqual(QuantityText.Format(figure.Value), ExplainText.After(one));
            Assert.Matches("[1-9]", ExplainText.Change(figure, one));
        }
    }

    /// <summary>A line ends between words, but not between a number and its unit; a word that is no unit goes its own way.</summary>
    [Theory]
    [InlineData("lead to mains 2.00 fF -> 0.667 fF", 31, "lead to mains 2.00 fF ->|0.667 fF")]
    [InlineData("at least 40 dB, 12 days", 11, "at least|40 dB, 12|days")]
    [InlineData("R1 100 kΩ", 7, "R1|100 kΩ")]
    public void Wrap_KeepsANumberWithItsUnit(string text, int columns, string lines)
    {
        Assert.Equal(lines, string.Join('|', Lettering.Wrap(text, columns, ascii: false)));
        Assert.All(Lettering.Wrap(text, columns, ascii: true), line => Assert.True(System.Text.Ascii.IsValid(line), line));
    }

    /// <summary>A sign that is a word in ASCII brings the blank that it needs, and no second one.</summary>
    [Theory]
    [InlineData("25 °C", "25 degC")]
    [InlineData("45°", "45 deg")]
    [InlineData("a °C", "a degC")]
    [InlineData("√(4kT·Σ∫Re Z df)", "rt(4kT*sum int Re Z df)")]
    [InlineData("1/G² · ∫ |H|²", "1/G^2 * int |H|^2")]
    [InlineData("≈ 5 and ≈5", "about 5 and about 5")]
    public void Ascii_HasOneBlankBetweenWords(string text, string plain) => Assert.Equal(plain, Lettering.Say(text, ascii: true));

    /// <summary>A figure's name that the heading of its why has no room for stands below it, whole.</summary>
    [Fact]
    public void Why_OfALongName_HasItWhole()
    {
        Model model = Setup.Start(Setup.Headband, 80, 24).Type("v");
        Result longest = model.Here.Shown!.Results.MaxBy(result => result.Name.Length)!;
        string Words(int width) => string.Join(' ', (model with { Width = width, Page = new WhyPage(longest.Id) }).Screen().Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains($"name {longest.Name}", Words(80), StringComparison.Ordinal);
        Assert.DoesNotContain($"name {longest.Name}", Words(200), StringComparison.Ordinal);
    }

    /// <summary>The wheel scrolls what it points at, and takes it in hand; over the strip it scrolls nothing.</summary>
    [Fact]
    public void Wheel_ScrollsWhatItPointsAt()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        Model start = harness.Session.Model;
        harness.Send("\u001b[<65;60;12M\u001b[<65;60;12M").Settle();
        Assert.Equal((true, 2, start.FieldRow), (harness.Session.Model.OnResults, harness.Session.Model.ResultRow, harness.Session.Model.FieldRow));
        harness.Send("\u001b[<65;5;12M").Settle();
        Assert.Equal((false, 2, start.FieldRow + 1), (harness.Session.Model.OnResults, harness.Session.Model.ResultRow, harness.Session.Model.FieldRow));
        harness.Send("\u001b[<64;5;2M").Settle();
        Assert.Equal(start.FieldRow + 1, harness.Session.Model.FieldRow);
    }

    /// <summary>A word where letters are commands: nothing of it is done, whether it comes in one piece, as from a terminal that does not say that it pastes, or letter
    /// by letter as someone types; and the message line says so.</summary>
    [Theory]
    [InlineData("hello", 0)]
    [InlineData("hello", 30)]
    [InlineData("hello", 120)]
    [InlineData("quit", 0)]
    [InlineData("delete it\r", 0)]
    [InlineData("delete it\r", 100)]
    [InlineData("WHAT", 0)]
    [InlineData("redo", 60)]
    [InlineData("mains up", 60)]
    [InlineData("buy", 40)]
    [InlineData("is it on", 40)]
    public void Word_WhereLettersAreCommands_DoesNothing_AndIsTold(string word, int milliseconds)
    {
        // On a copy: a word with a w in it must not come to the designs, should it be taken for commands.
        string folder = Directory.CreateTempSubdirectory("frontend-test-").FullName, file = Path.Combine(folder, "design.toml");
        File.Copy(Setup.Headband, file);
        foreach (string before in (string[])["", "\t", "?"])
        {
            using Harness harness = new(80, 24, file);
            harness.Type("+" + before);
            Model start = harness.Session.Model;
            if (milliseconds == 0)
            {
                harness.Send(word);
            }
            else
            {
                harness.Send(word[..1]);
                word[1..].ToList().ForEach(letter => harness.SendAfter(milliseconds, letter.ToString()));
            }

            harness.Settle();
            Model end = harness.Session.Model;
            Assert.Equal(start.Here.Document.Text, end.Here.Document.Text);
            Assert.Equal(start.Here.Undo.Count(), end.Here.Undo.Count());
            Assert.Equal(
                (start.PlaceId, start.OnResults, start.FieldRow, start.ResultRow, start.Page, start.Designs.Count, start.Tour),
                (end.PlaceId, end.OnResults, end.FieldRow, end.ResultRow, end.Page, end.Designs.Count, end.Tour));
            Assert.False(end.Quitting);
            Assert.Contains($"\"{word.Trim()}\" was typed as a word", end.Status, StringComparison.Ordinal);
            Assert.True(end.Here.IsFresh);
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A word typed so slowly that its letters act one by one: none in its middle saves, ends, removes or answers a question; pressed once more, or after a pause, it does.</summary>
    [Theory]
    [InlineData("naw", "save", 250)]
    [InlineData("naw", "save", 400)]
    [InlineData("avW", "save", 300)]
    [InlineData("vaq", "quit", 250)]
    [InlineData("nmfx", "remove the selected stage, filter or band", 250)]
    public void Letter_InTheMiddleOfASlowWord_NeitherSavesNorEndsNorRemoves(string word, string does, int milliseconds)
    {
        string folder = Directory.CreateTempSubdirectory("frontend-test-").FullName, file = Path.Combine(folder, "design.toml");
        File.Copy(Setup.Headband, file);
        string before = File.ReadAllText(file);
        using Harness harness = new(80, 24, file);
        harness.Type("+").Settle();
        string text = harness.Session.Model.Here.Document.Text;
        harness.Send(word[..1]);
        word[1..].ToList().ForEach(letter => harness.SendAfter(milliseconds, letter.ToString()));
        harness.Settle();
        Model end = harness.Session.Model;
        Assert.Contains($"not taken for \"{does}\"", end.Status, StringComparison.Ordinal);
        Assert.Equal((text, before, false), (end.Here.Document.Text, File.ReadAllText(file), end.Quitting));
        Assert.Null(end.Page);
        harness.SendAfter(milliseconds, word[^1..]).Settle();
        Assert.DoesNotContain("not taken for", harness.Session.Model.Status, StringComparison.Ordinal);
        Assert.Equal(does == "save", File.ReadAllText(file) != before);
        Assert.Equal(does == "quit", harness.Session.Model.Page is QuestionPage);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A word whose first letter brings a question is no answer to it.</summary>
    [Fact]
    public void Letter_InTheMiddleOfASlowWord_AnswersNoQuestion()
    {
        string folder = Directory.CreateTempSubdirectory("frontend-test-").FullName, file = Path.Combine(folder, "design.toml");
        File.Copy(Setup.Headband, file);
        using Harness harness = new(80, 24, file);
        harness.Type("+").Send("q").Settle();
        QuestionPage question = Assert.IsType<QuestionPage>(harness.Session.Model.Page);
        foreach (Answer answer in question.Answers)
        {
            harness.Send("i").SendAfter(300, "o").SendAfter(300, answer.Letter.ToString()).Settle();
            Assert.IsType<QuestionPage>(harness.Session.Model.Page);
            Assert.Contains("no answer", harness.Session.Model.Status, StringComparison.Ordinal);
        }

        Assert.False(harness.Session.Model.Quitting);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Commands as a person gives them, a held key and keys pressed again and again are no words; nor are the letters of a text or a key's second letter.</summary>
    [Fact]
    public void Commands_ThatAPersonGives_AreNoWord()
    {
        using Harness harness = new(80, 24, Setup.Headband);
        harness.Send("m").SendAfter(160, "n").SendAfter(160, "p").Settle();
        Assert.Equal("power", harness.Session.Model.PlaceId);
        harness.Send("vvvvvv").SendAfter(30, "v").SendAfter(30, "v").Settle();
        Assert.Equal(Place.Verdicts, harness.Session.Model.PlaceId);
        harness.Send("zg").SendAfter(30, "hum").Settle();
        Assert.Equal("hum", Assert.IsType<GlossaryPage>(harness.Session.Model.Page).Line.Text);
        harness.Press(Key.Esc, Key.Esc).Send("e").SendAfter(30, "name").Settle();
        Assert.EndsWith("name", Assert.IsType<FileNamePage>(harness.Session.Model.Page).Line.Text, StringComparison.Ordinal);
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
