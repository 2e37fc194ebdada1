using System.Collections.Concurrent;
using System.Diagnostics;
using FrontEnd.Advice;
using FrontEnd.Terminal;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using FrontEnd.Fields;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Terminal.Gui.Input;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Studies, sites, glossary and explanations in the interface: the same as the commands print, and what can be done from there.</summary>
public class StudyTests
{
    private static readonly Keystroke Enter = new(KeyName.Enter);
    private static readonly Keystroke Escape = new(KeyName.Escape);
    private static readonly Keystroke PageDown = new(KeyName.PageDown);

    /// <summary>The lines of a page, gathered by scrolling through it at 80×24 as a user would.</summary>
    private static List<string> Walk(Model model, int firstRow)
    {
        List<string> seen = [];

        // A design's own caution stands above the strip and moves all that is below it.
        firstRow += Array.FindIndex(model.Screen().Split('\n'), line => line.StartsWith("──", StringComparison.Ordinal)) - 5;
        int pages = 0;
        for (Model? last = null; last is null || !Equals(last.Page, model.Page); last = model, model = model.Press(PageDown))
        {
            string[] rows = model.Screen().Split('\n')[firstRow..20];
            int overlap = Enumerable.Range(0, rows.Length + 1).Reverse().First(count => count <= seen.Count && seen.TakeLast(count).SequenceEqual(rows.Take(count)));
            seen.AddRange(rows.Skip(overlap));
            Assert.True(++pages < 200, "the page has no end");
        }

        return seen;
    }

    private static string[] Printed(params string[] call) => [.. Shell.Run(call).Output.TrimEnd('\n').Split('\n')];

    /// <summary>The same but for what names a way onwards: a command there, a key here. Compared are the words, as the lines break elsewhere.</summary>
    private static void SameButForTheWay(IEnumerable<string> printed, IEnumerable<string> shown, string command, string key)
    {
        static string Words(IEnumerable<string> lines) => string.Join(' ', string.Join(' ', lines).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(command, Words(printed), StringComparison.Ordinal);
        Assert.Equal(Words(printed).Replace(command, key, StringComparison.Ordinal), Words(shown));
    }

    /// <summary>What is read on the screens names keys and pages: a command or an option of one cannot be typed there.</summary>
    [Theory]
    [InlineData("hobbyist.toml", "zr", "zs------\r", "zv", "zb", "zp", "zu", "ztv", "ze", "zhv", "zl\r", "zl+\r", "zl++\r", "zl+++\r", "zl----\r", "zl---\r", "zl--\r", "zl-\r")]
    [InlineData("starter.toml", "zv", "zb", "zp", "zpb", "zl\rn\r")]
    [InlineData("mixed-headset.toml", "zb", "zp")]
    [InlineData("bought-headband.toml", "zu", "zb", "zp", "zs", "h")]
    public void Pages_NameKeysAndNoCommands(string file, params string[] pages)
    {
        Model start = Setup.Start(Path.Combine(Setup.Root, "designs", file), 80, 40);
        foreach (string keys in pages)
        {
            Model model = keys.Aggregate(start, (now, key) => key == '\r' ? now.Press(Enter) : now.Type(key.ToString()));
            string text = string.Join('\n', model.Page is TextPage page ? page.LinesOf(80, ascii: false) : []) + "\n" + model.Screen();
            Assert.DoesNotMatch(@"\bfrontend\s+[a-z]|(^|[\s`(])--[a-z]", text);
        }
    }

    /// <summary>A design without sites is told where they are entered.</summary>
    [Fact]
    public void Pairs_WithoutSites_NameTheKeyOfTheirFields()
    {
        Model model = Setup.Start(Path.Combine(Setup.Root, "designs", "hobbyist.toml")).Type("zp");
        Assert.Contains("Esc, then s, shows the fields `sites` and `reference`", string.Join(' ', Outcome(model).Text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal);
        Model there = model.Press(Escape).Type("s");
        Assert.Contains("  sites ", there.Screen(), StringComparison.Ordinal);
        Assert.Contains("  reference ", there.Screen(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("r", "rates")]
    [InlineData("b", "bench")]
    public void Study_ShowsWhatTheCommandPrints(string letter, string command)
    {
        foreach (string file in (string[])["dry-headband.toml", "gel-cap.toml", "starter.toml"])
        {
            Model shown = Setup.Start(Path.Combine(Setup.Root, "designs", file)).Type("z" + letter);

            // Title, then the page from row 7 on; it is walked to its end.
            string[] printed = Printed(command, "designs/" + file);
            List<string> seen = Walk(shown, 7);
            if (command == "bench")
            {
                SameButForTheWay(printed, seen, "`frontend check`", "the sheet (Esc, then y writes it)");
            }
            else
            {
                Assert.Equal(printed, seen.SkipLastWhile(line => line.Length == 0));
            }
        }
    }

    /// <summary>Every page that a study fills, in windows narrower than what the commands print: written for the window, in either form of its letters, and with
    /// every figure of the wide page.</summary>
    [Theory]
    [InlineData("starter.toml", "zr")]
    [InlineData("eight-channel-cap.toml", "zr")]
    [InlineData("dry-headband.toml", "zb")]
    [InlineData("eight-channel-cap.toml", "zb")]
    [InlineData("hobbyist.toml", "zv")]
    [InlineData("dry-headband.toml", "zs-----\r")]
    [InlineData("starter.toml", "ztv")]
    [InlineData("eight-channel-cap.toml", "zthv")]
    [InlineData("mixed-headset.toml", "zp")]
    [InlineData("starter.toml", "zp+b")]
    [InlineData("bought-headband.toml", "zu")]
    [InlineData("starter.toml", "ze")]
    [InlineData("starter.toml", "zl")]
    [InlineData("starter.toml", "zl+a")]
    [InlineData("starter.toml", "zl--b")]
    [InlineData("starter.toml", "zhnnnn")]
    [InlineData("starter.toml", "zhnnnnv")]
    public void Page_InANarrowWindow_IsWrittenForIt_WithEveryFigure(string file, string keys)
    {
        Model model = keys.Aggregate(Setup.Start(Path.Combine(Setup.Root, "designs", file)), (now, key) => key == '\r' ? now.Press(Enter) : now.Type(key.ToString()));
        TextPage page = Assert.IsAssignableFrom<TextPage>(model.Page);
        string[] figures = [.. page.LinesOf(80, ascii: false).SelectMany(line => line.Split(' ')).Where(word => word.Any(char.IsAsciiDigit)).Distinct()];
        Assert.NotEmpty(figures);
        foreach ((int width, bool ascii) in ((int, bool)[])[(60, false), (60, true), (63, false), (70, true), (79, false), (80, true)])
        {
            IReadOnlyList<string> lines = page.LinesOf(width, ascii);
            Assert.All(lines, line => Assert.True(TextPage.Widest([line], ascii) <= width, $"{width}: {line}"));
            string all = string.Concat(lines.Select(line => line.Replace(" ", "", StringComparison.Ordinal)));
            Assert.All(figures, figure => Assert.Contains(figure, all, StringComparison.Ordinal));
        }
    }

    /// <summary>A source under a site where the design has none, and the best of all pairs.</summary>
    [Theory]
    [InlineData("mixed-headset.toml", "zp", "--under O1")]
    [InlineData("starter.toml", "zp", "--under O1")]
    [InlineData("starter.toml", "zp+b", "--under Oz --best 10")]
    public void Pairs_ShowsWhatTheCommandPrints(string file, string keys, string options)
    {
        Model shown = Setup.Start(Path.Combine(Setup.Root, "designs", file)).Type(keys);
        string[] printed = Printed(["pairs", "designs/" + file, .. options.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        Assert.Equal(printed, Outcome(shown).Lines.Take(printed.Length));
    }

    [Fact]
    public void Bought_ShowsWhatTheCommandPrints_AndTakesTheValuesOver()
    {
        Model shown = Setup.Start(Path.Combine(Setup.Root, "designs", "hobbyist.toml")).Type("zv");
        SameButForTheWay(Printed("size", "--as-built", "designs/hobbyist.toml"), Outcome(shown).Lines, "frontend size --as-built DESIGN -o FILE", "Enter takes them over");
        Assert.Equal(3.48756, shown.Press(Enter).Design.Amplifier.Gain, 1e-5);
        Assert.Equal(3.5, shown.Press(Enter).Type("u").Design.Amplifier.Gain);
    }

    [Fact]
    public void Spread_AfterStart_ShowsWhatTheCommandPrints()
    {
        Model waiting = Setup.Start(Setup.Headband).Type("zs--");   // 10000 builds, 3000, 1000
        Assert.Null(Assert.IsAssignableFrom<StudyPage>(waiting.Page).Outcome);

        const string Command = "`frontend explain DESIGN FIGURE`", Key = "Enter on a figure of the verdicts (Esc, then v)";
        SameButForTheWay(Printed("spread", "designs/dry-headband.toml", "--builds", "1000"), Walk(waiting.Press(Enter), 7), Command, Key);
        SameButForTheWay(
            Printed("spread", "designs/dry-headband.toml", "--builds", "300", "--seed", "2", "--distribution", "normal"), Outcome(waiting.Type("-ed").Press(Enter)).Lines, Command, Key);
    }

    [Fact]
    public void Study_OfADesignWithErrors_SaysWhatIsWrong()
    {
        foreach (string letter in (string[])["s", "b"])
        {
            Model model = Setup.Start(Path.Combine(Setup.Root, "designs", "wrong-in-six-ways.toml")).Type("z" + letter).Press(Enter);
            Design wrong = new Design() with { Band = new Design().Band with { High = FrontEnd.Quantities.Frequency.FromHertz(1e6) } };
            StudyOutcome outcome = (letter == "s" ? new SpreadPage(10) : (StudyPage)new BenchPage()).Work(wrong, _ => { }, TestContext.Current.CancellationToken);

            Assert.Contains(" error: ", outcome.Text, StringComparison.Ordinal);
            Assert.Empty(outcome.Choices);
            Assert.NotNull(model.Screen());
        }
    }

    [Fact]
    public void Rates_TakenOver_ChangeTheRate_AndUndoTakesItBack()
    {
        Model model = Setup.Start(Setup.Headband).Type("zr");
        StudyOutcome outcome = Outcome(model);
        string word = outcome.Choices[outcome.Pick].Word;
        Assert.Contains(outcome.Lines, line => line.StartsWith("recommended:", StringComparison.Ordinal) && line.EndsWith(word, StringComparison.Ordinal));

        Model other = model.Type("+");
        int choice = Assert.IsAssignableFrom<StudyPage>(other.Page).Choice;
        Assert.NotEqual(outcome.Pick, choice);
        Model taken = other.Press(Enter);

        Assert.Null(taken.Page);
        Assert.Equal(outcome.Choices[choice].Design.Converter.Rate, taken.Design.Converter.Rate);
        Assert.Equal(model.Here.Document.Text, taken.Type("u").Here.Document.Text);
    }

    /// <summary>Where the rate in hand is the design's own nothing changes, and undo has nothing new to take back.</summary>
    [Fact]
    public void Rates_TheDesignsOwn_IsAlreadySet_AndIsNoStepOfUndo()
    {
        Model before = Setup.Start(Setup.Headband).At("input", "input.series-resistor").Type("+");
        Model model = before.Type("zr");
        StudyOutcome outcome = Outcome(model);
        int own = outcome.Choices.ToList().FindIndex(choice => choice.Design.Converter.Rate == model.Design.Converter.Rate);
        Assert.NotEqual(-1, own);

        Model same = (model with { Page = Assert.IsAssignableFrom<StudyPage>(model.Page) with { Choice = own } }).Press(Enter);

        Assert.Equal($"{outcome.Choices[own].Word} is already set", same.Status);
        Assert.Null(same.Page);
        Assert.Equal(before.Here.Undo, same.Here.Undo);
        Assert.Equal(before.Here.Document.Text, same.Here.Document.Text);
    }

    [Fact]
    public void Sizing_TakenOver_IsTheDesignFound_KeepsEveryComment_AndUndoTakesItBack()
    {
        Model model = Setup.Start(Path.Combine(Setup.Root, "designs", "hobbyist.toml"));
        SizedOutcomes sized = SizedOutcomes.Of(model.Design);
        Model found = model with { Page = new SizingPage { Number = 1, Outcome = sized.Free } };

        Model taken = found.Type("2").Press(Enter);

        Design wanted = sized.Free.Choices[1].Design;
        Assert.Equal(DesignWriter.ToToml(wanted), DesignWriter.ToToml(taken.Design));
        AssertKeepsComments(model.Here.Document.Text, taken.Here.Document.Text);
        Assert.DoesNotContain("comments of the file as it was", taken.Here.Document.Text, StringComparison.Ordinal);
        Assert.Equal(model.Here.Document.Text, taken.Type("u").Here.Document.Text);

        // Everything found meets what is asked, by the core's own word.
        Assert.All(sized.Free.Choices, choice => Assert.DoesNotContain(Evaluator.Evaluate(choice.Design).Judged, result => result.Verdict.Kind == VerdictKind.Fail));
    }

    [Fact]
    public void Sizing_WithTheAmplifierKept_FindsOnlyDesignsWithIt()
    {
        Design design = DesignDocument.Read(Path.Combine(Setup.Root, "designs", "hobbyist.toml")).Design;
        StudyOutcome kept = SizedOutcomes.Of(design).Kept;

        Assert.NotEmpty(kept.Choices);
        Assert.All(kept.Choices, choice => Assert.Equal(design.Amplifier.Card, choice.Design.Amplifier.Card));
    }

    [Fact]
    public void Study_News_OfAnotherRun_AreDropped_AndProgressIsShown()
    {
        (Model running, Effect? effect) = Updater.Update(Setup.Start(Setup.Headband).Type("zs"), new Message.Pressed(Enter));
        Effect.Study study = Assert.IsType<Effect.Study>(effect);
        StudyOutcome outcome = new(_ => "done", [], 0);

        Assert.Contains(" 42 %", Updater.Update(running, new Message.Progressed(study.Number, 0.42)).Model.Screen(), StringComparison.Ordinal);
        Assert.Same(running, Updater.Update(running, new Message.Progressed(study.Number - 1, 0.5)).Model);
        Assert.Same(running, Updater.Update(running, new Message.Studied(study.Number + 1, outcome)).Model);
        Assert.Same(outcome, Outcome(Updater.Update(running, new Message.Studied(study.Number, outcome)).Model));
    }

    [Fact]
    public void Study_BrokenOffOrLeft_IsCancelled()
    {
        Model running = Updater.Update(Setup.Start(Setup.Headband).Type("zs"), new Message.Pressed(Enter)).Model;

        (Model stopped, Effect? stop) = Updater.Update(running, new Message.Pressed(Escape));
        Assert.IsType<Effect.CancelStudy>(stop);
        Assert.Null(Assert.IsAssignableFrom<StudyPage>(stopped.Page).Progress);

        (Model left, Effect? leave) = Updater.Update(running, new Message.GoTo("noise"));
        Assert.IsType<Effect.CancelStudy>(leave);
        Assert.Null(left.Page);
    }

    /// <summary>While a study is worked out, and when it is there, no key acts on the form below it: what cannot be seen is not changed, saved or
    /// left. Letters of the page's own begin it anew.</summary>
    [Theory]
    [InlineData("zs", "+-=dbhx<>weq")]
    [InlineData("zt", "+-=dbhx<>weq")]
    [InlineData("zr", "+-=dbhx<>weq")]
    public void Keys_WhileAStudyIsWorkedOut_LeaveTheFormAlone(string open, string keys)
    {
        Model start = Setup.Start(Setup.Headband);
        Model working = open.Aggregate(start, (model, letter) => Updater.Update(model, new Message.Pressed(Keystroke.Of(letter))).Model);
        working = working.Page is StudyPage { Progress: null } ? Updater.Update(working, new Message.Pressed(Enter)).Model : working;
        Assert.NotNull(Assert.IsAssignableFrom<StudyPage>(working.Page).Progress);
        foreach (char letter in keys)
        {
            (Model pressed, Effect? effect) = Updater.Update(working, new Message.Pressed(Keystroke.Of(letter)));
            Assert.Equal(start.Here.Document.Text, pressed.Here.Document.Text);
            Assert.IsAssignableFrom<StudyPage>(pressed.Page);
            Assert.False(pressed.Quitting);
            Assert.True(effect is null or Effect.Study or Effect.Several, $"{letter}: {effect}");
        }
    }

    /// <summary>A spread of many builds ends soon after it is broken off, and nothing of it arrives.</summary>
    [Fact]
    public async Task Performer_CancelledStudy_EndsSoonAndSaysNothing()
    {
        ConcurrentQueue<Message> news = [];
        using Performer performer = new(null, null, _ => { }, patience: TimeSpan.Zero);
        performer.Attach(news.Enqueue, problem => throw problem);
        performer.Perform(new Effect.Study(1, new SpreadPage(100_000), DesignDocument.Read(Setup.Headband).Design));
        Stopwatch clock = Stopwatch.StartNew();
        while (!news.OfType<Message.Progressed>().Any() && clock.Elapsed < TimeSpan.FromSeconds(60))
        {
            await Task.Delay(5, TestContext.Current.CancellationToken);
        }

        Assert.NotEmpty(news);
        performer.Perform(new Effect.CancelStudy());
        clock.Restart();
        await performer.Idle.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);

        TestContext.Current.TestOutputHelper?.WriteLine($"ended {clock.ElapsedMilliseconds} ms after it was broken off");
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), $"{clock.Elapsed}");   // all 100000 builds take about 20 s
        Assert.DoesNotContain(news, message => message is Message.Studied);
    }

    [Fact]
    public void Sites_ShowWhatTheCommandPrints_AndRefuseWhatWillNotDo()
    {
        Model sites = Setup.Start().Type("ze");
        Assert.Equal(Printed("sites"), Walk(sites, 9).SkipLastWhile(line => line.Length == 0));

        Keystroke tab = new(KeyName.Tab);
        Model asked = sites.Type("40 cm").Press(tab, tab, tab).Type("F3").Press(tab).Type("p4").Press(tab).Type("+").Press(tab).Type("+");
        SitesPage head = Assert.IsType<SitesPage>(asked.Page);
        Assert.Equal(Printed("sites", "--nasion-inion", "40 cm", "--from", "F3", "--to", "p4", "--montage", "chains", "--halfway-fp-c"), head.Answer.Text.TrimEnd('\n').Split('\n'));

        Model refused = sites.Type("4 V").Press(Enter);
        Assert.NotNull(refused.Complaint);
        Assert.Equal("4 V", Assert.IsType<SitesPage>(refused.Page).Typing?.Text);
        Assert.Null(Assert.IsType<SitesPage>(refused.Press(Escape).Page).Typing);
    }

    [Fact]
    public void Glossary_SearchesAndShowsTheEntryOfTheCommand()
    {
        Model found = Setup.Start().Type("zgnoise g");
        string screen = found.Screen();

        foreach (string line in Printed("glossary", "noise gain"))
        {
            // The entry is wrapped beside the names; its words stand there in order.
            Assert.All(line.Split(' ', StringSplitOptions.RemoveEmptyEntries), word => Assert.Contains(word, screen, StringComparison.Ordinal));
        }

        Assert.Contains("no such term", found.Type("xyz").Screen(), StringComparison.Ordinal);
        Assert.Contains("common-mode rejection", Setup.Start().Type("zgcmrr").Screen(), StringComparison.Ordinal);
        Assert.IsType<GlossaryPage>(found.Press(Escape).Page);   // first the search is emptied
        Assert.Null(found.Press(Escape, Escape).Page);
    }

    /// <summary>Every paragraph of `frontend explain` stands in the page of a figure, to the word.</summary>
    [Fact]
    public void Why_HoldsEveryParagraphOfTheExplanation()
    {
        Model model = Setup.Start(Setup.Headband, 80, 60).Type("v");
        Assessment advised = Advisor.Advise(model.Here.Shown!, TestContext.Current.CancellationToken);
        model = Updater.Update(model, new Message.Advised(0, model.Here.Run, advised)).Model;
        foreach (int row in (int[])[0, 1, Whereabouts.ResultsOf(model).Count - 1])
        {
            Result result = Whereabouts.ResultsOf(model)[row];
            Model why = (model with { ResultRow = row }).Press(Enter);
            why = Updater.Update(why, new Message.Moved(0, model.Here.Run, result.Id, Sensitivity.Of(advised, result.Id, TestContext.Current.CancellationToken))).Model;
            string page = Words(why.Screen()), rest = Words(why.Press(PageDown, PageDown, PageDown).Screen());

            string[] printed = Shell.Run("explain", "designs/dry-headband.toml", result.Id.Text).Output.Split("\n\n");
            foreach (string line in Paragraphs(printed[1]))
            {
                Assert.True(page.Contains(Words(line), StringComparison.Ordinal) || rest.Contains(Words(line), StringComparison.Ordinal), $"{result.Id}: {line}\n{why.Screen()}");
            }
        }

        static string Words(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));

        // A paragraph begins with a label in the first twelve columns.
        static IEnumerable<string> Paragraphs(string text)
        {
            string paragraph = "";
            foreach (string line in text.Split('\n'))
            {
                if (line.Length > 12 && line[0] != ' ' && paragraph.Length > 0)
                {
                    yield return paragraph;
                    paragraph = "";
                }

                paragraph += line.Length > 12 ? " " + line[12..] : "";
            }

            yield return paragraph;
        }
    }

    [Fact]
    public void FieldHelp_ShowsAllOfWhatIsCutAtTheFoot()
    {
        Model model = Setup.Start(Setup.Headband).At(Place.Electrodes, "electrodes.mismatch");
        Field<Design> field = DesignFields.Find(model.Design, "electrodes.mismatch")!;
        Assert.Contains("Space: all", model.Screen(), StringComparison.Ordinal);

        Model help = model.Type(" ");
        string page = string.Join(' ', help.Screen().Split('\n').Select(line => line.Trim()));
        Assert.Contains(string.Join(' ', field.DefaultSource.Split(' ')), page, StringComparison.Ordinal);
        Assert.Contains("20 %, as in the file", page, StringComparison.Ordinal);
        Assert.Null(help.Type(" ").Page);
        Assert.IsType<FieldHelpPage>(model.Press(KeyName.F1).Page);
    }

    [Fact]
    public void Page_ScrollsNoFurtherThanItsEnd()
    {
        Model model = Setup.Start(Setup.Headband).Type("?");
        Model end = model.Press([.. Enumerable.Repeat(KeyName.PageDown, 30)]);
        Assert.Equal(end.Page, model.Press(KeyName.End).Page);
        Assert.NotEqual(end.Page, end.Press(KeyName.Up).Page);   // one up is one up, however often down was pressed
    }

    [Fact]
    public void Coefficients_FromTheInterface_AreTheCommandsFile()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string mine = Path.Combine(folder, "a", "filters.h"), theirs = Path.Combine(folder, "b", "filters.h");
            Directory.CreateDirectory(Path.GetDirectoryName(mine)!);
            Directory.CreateDirectory(Path.GetDirectoryName(theirs)!);
            using Harness harness = new(80, 24, Setup.Headband);
            harness.Type("zc").Press(Key.U.WithCtrl).Type(mine).Press(Key.Enter);
            Assert.Contains("coefficients written to", harness.Screen, StringComparison.Ordinal);

            Assert.Equal(0, Shell.Run("coefficients", Setup.Headband, "-o", theirs).Code);
            Assert.Equal(File.ReadAllText(theirs), File.ReadAllText(mine));

            // A file that is there is asked about; what is no form of a coefficient file is refused.
            harness.Type("zc").Press(Key.U.WithCtrl).Type(mine).Press(Key.Enter);
            Assert.Contains("already exists", harness.Screen, StringComparison.Ordinal);
            harness.Press(Key.Esc).Type("zc").Press(Key.U.WithCtrl).Type(Path.Combine(folder, "x.txt")).Press(Key.Enter);
            Assert.Contains("FE0004", harness.Screen, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    [InlineData(200, 60)]
    [InlineData(60, 15)]
    public void NewViews_LookAsExpected(int width, int height)
    {
        Model model = Setup.Start(Setup.Headband, width, height);
        void Same(Model shown, string name) => ExpectedText.Matches(shown.Screen(), Path.Combine("FrontEnd.App.Tests", "Terminal"), $"{name}-{width}x{height}.txt");

        Same(model.Type("z"), "more");
        Same(model.Type("zr"), "rates");
        Same(model.Type("zs"), "spread-before");
        Same(model.Type("zs--").Press(Enter), "spread");
        Same(model.Type("zz"), "sizing-before");
        Model hobbyist = Setup.Start(Path.Combine(Setup.Root, "designs", "hobbyist.toml"), width, height);
        Same(hobbyist with { Page = new SizingPage { Number = 1, Outcome = SizedOutcomes.Of(hobbyist.Design).Free, Choice = 1 } }, "sizing");
        Same(model.Type("zb"), "bench");
        Same(model.Type("ze"), "sites");
        Same(model.Type("zgnoise"), "glossary");
        Same(model.Type(" "), "field-help");
    }

    private static StudyOutcome Outcome(Model model) => Assert.IsAssignableFrom<StudyPage>(model.Page).Outcome!;

    internal static void AssertKeepsComments(string before, string after)
    {
        foreach (string line in before.Split('\n').Select(line => line.Trim()).Where(line => line.Contains('#', StringComparison.Ordinal)))
        {
            string comment = line[line.LastIndexOf('#')..];
            Assert.True(after.Contains(comment, StringComparison.Ordinal), $"lost: {comment}");
        }
    }
}

/// <summary>Searches that take seconds, made once.</summary>
internal sealed record SizedOutcomes(StudyOutcome Free, StudyOutcome Kept)
{
    private static readonly ConcurrentDictionary<string, Lazy<SizedOutcomes>> Known = new();

    public static SizedOutcomes Of(Design design) => Known.GetOrAdd(design.Name, _ => new(() => new SizedOutcomes(Run(design, new SizingPage()), Run(design, new SizingPage(KeepAmplifier: true))))).Value;

    private static StudyOutcome Run(Design design, SizingPage page) => page.Work(design, _ => { }, CancellationToken.None);
}

internal static class Lines
{
    public static IEnumerable<T> SkipLastWhile<T>(this IReadOnlyList<T> list, Func<T, bool> condition) => list.Take(list.Count - list.Reverse().TakeWhile(condition).Count());
}
