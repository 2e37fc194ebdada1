using FrontEnd.App.Commands;
using FrontEnd.Terminal;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The small parts: lines, keys, canvas, plots, recovery files.</summary>
public class PartsTests
{
    /// <summary>What is written anywhere as something that can be done stands in the one list, once: nothing is without a key.</summary>
    [Fact]
    public void KeyMap_HoldsEveryAct()
    {
        IEnumerable<Act> written = typeof(Act).Assembly.GetTypes()
            .SelectMany(type => type.GetFields(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static))
            .Where(field => field.FieldType == typeof(Act)).Select(field => (Act)field.GetValue(null)!);
        Assert.Equal(written.Select(act => act.Does).Order(), KeyMap.Acts.Select(act => act.Does).Order());
        Assert.All(KeyMap.Acts, act => Assert.NotEqual("", act.Keys));
    }

    [Fact]
    public void KeyMap_EveryKeyMeansOneThing()
    {
        List<Keystroke> keys = [.. KeyMap.Acts.SelectMany(row => row.Others.Concat(row.Letter == '\0' ? [] : [Keystroke.Of(row.Letter)]))];
        Assert.Equal(keys.Count, keys.Distinct().Count());
        foreach (Act row in KeyMap.Acts.Where(row => row.Letter != '\0'))
        {
            Assert.Equal(row, KeyMap.MeaningWhileTyping(new Keystroke(KeyName.Letter, row.Letter, Alt: true)));
        }
    }

    [Fact]
    public void Line_TypesDeletesAndPastes()
    {
        Line line = Line.Of("10 kΩ").Press(Keystroke.Of('4'));
        Assert.Equal("4", line.Text);   // all was selected
        line = line.Insert("7 kΩ\nrest of a paste\u0007");
        Assert.Equal("47 kΩ", line.Text);
        line = line.Press(new Keystroke(KeyName.Home)).Press(new Keystroke(KeyName.Delete)).Press(new Keystroke(KeyName.Right)).Press(new Keystroke(KeyName.Backspace));
        Assert.Equal(" kΩ", line.Text);
        Assert.Equal("", Line.Of("x").Press(new Keystroke(KeyName.Backspace)).Text);
        Assert.Equal("a", Line.Of("").Insert("a😀").Press(new Keystroke(KeyName.Backspace)).Text);
    }

    [Theory]
    [InlineData("4.70 kΩ", "4.70 kohm")]
    [InlineData("38.3 µV/√Hz", "38.3 uV/rtHz")]
    [InlineData("±300 mV", "+/-300 mV")]
    public void Canvas_Ascii_WritesUnitsInLetters(string text, string expected) => Assert.Equal(expected, new Canvas(40, 1, ascii: true).Say(text));

    [Fact]
    public void Canvas_WideCharacters_TakeTwoColumnsAndAreNeverHalved()
    {
        Canvas canvas = new(5, 1, ascii: false);
        canvas.Put(0, 0, "日本語");
        Assert.Equal("日本…\n", canvas.ToString());
        Assert.Equal("日…", canvas.Fit("日本語", 4));
    }

    [Fact]
    public void Canvas_Wrap_BreaksBetweenWordsAndLongWordsWhereTheyMust()
    {
        Canvas canvas = new(10, 1, ascii: false);
        Assert.Equal(["one two", "three", "verylongwo", "rdindeed"], canvas.Wrap("one two three verylongwordindeed", 10));
    }

    [Fact]
    public void DotPlot_AFlatLine_StandsInItsRow()
    {
        // Two curves at 0 and 100 dB; with 5 % of air on both sides, 100 lies in the top eighth and 0 in the bottom one.
        double[] x = [1, 10, 100], low = [0, 0, 0], high = [100, 100, 100];
        PlotData data = new("t", "Hz", "dB", [new Curve("high", "Hz", "dB", x, high), new Curve("low", "Hz", "dB", x, low)], [], LogX: true, LogY: false);
        Canvas canvas = new(60, 12, ascii: true);
        DotPlot.Draw(canvas, 0, 0, 60, 12, data);
        string[] lines = canvas.ToString().Split('\n');
        Assert.Contains("*****", lines[1], StringComparison.Ordinal);
        Assert.Contains("+++++", lines[10], StringComparison.Ordinal);
        Assert.DoesNotContain("*", string.Concat(lines[3..10]), StringComparison.Ordinal);
        Assert.Contains("10 Hz", lines[11], StringComparison.Ordinal);
        Assert.Equal(10, DotPlot.ValueAt(data, 0.5), 9);   // the middle of a logarithmic axis from 1 to 100
        Assert.Equal("10.0 Hz: high 100 dB, low 0.00 dB", Plots.Readout(data, 0.5));
    }

    /// <summary>Curves are told apart without colour: each has its own character along it, the one its name has in the legend.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void DotPlot_EveryCurve_HasTheMarkOfItsName(bool ascii)
    {
        double[] x = [1, 10, 100];
        PlotData data = new("t", "Hz", "V", [.. Enumerable.Range(0, 4).Select(at => new Curve($"c{at}", "Hz", "V", x, [at, at, at]))], [], LogX: true, LogY: false);
        Canvas canvas = new(60, 14, ascii);
        DotPlot.Draw(canvas, 0, 0, 60, 14, data);
        string[] lines = canvas.ToString().Split('\n');
        for (int at = 0; at < 4; at++)
        {
            // Values rise, so the first curve lies lowest.
            char mark = "*+ox"[at];
            Assert.Contains($"{mark} c{at}", lines[0], StringComparison.Ordinal);
            int row = Assert.Single(Enumerable.Range(1, 12), row => lines[row][9..].Contains(mark, StringComparison.Ordinal));
            Assert.InRange(row, 12 - (4 * at), 13 - (3 * at));
        }
    }

    /// <summary>In a small plot the title gives way to the names: each curve's mark stands beside the beginning of its name.</summary>
    [Fact]
    public void DotPlot_Narrow_StillNamesEveryCurve()
    {
        Canvas canvas = new(40, 8, ascii: true);
        DotPlot.Draw(canvas, 0, 0, 40, 8, new PlotData("a title that is long", "Hz", "V", [.. "abc".Select(letter => new Curve($"{letter} long name of a curve", "Hz", "V", [1, 10], [letter, letter]))], [], LogX: true, LogY: false));
        string legend = canvas.ToString().Split('\n')[0];
        Assert.Matches(@"^a title\.\. +\* a .* +\+ b.* +o c", legend);
    }

    /// <summary>An axis within one decade has no round value on it, or one: its ends are named then.</summary>
    [Theory]
    [InlineData(2.1, 2.4, true)]
    [InlineData(0.9, 1.1, true)]
    [InlineData(2.1, 8.9, true)]
    [InlineData(1, 1e6, true)]
    [InlineData(3, 3, true)]
    [InlineData(-3, 7, false)]
    public void DotPlot_TheVerticalAxis_HasTwoLabelsAtLeast(double low, double high, bool log)
    {
        for (int height = 4; height < 30; height++)
        {
            Canvas canvas = new(60, height, ascii: true);
            DotPlot.Draw(canvas, 0, 0, 60, height, new PlotData("t", "Hz", "V", [new Curve("c", "Hz", "V", [1, 100], [low, high])], [], LogX: true, LogY: log));
            Assert.True(canvas.ToString().Split('\n')[1..(height - 1)].Count(line => line.Length > 8 && line[..8].EndsWith('V')) >= 2, $"{height}\n{canvas}");
        }
    }

    [Fact]
    public void DotPlot_NothingFinite_SaysSo()
    {
        Canvas canvas = new(60, 8, ascii: true);
        DotPlot.Draw(canvas, 0, 0, 60, 8, new PlotData("t", "Hz", "dB", [new Curve("c", "Hz", "dB", [1, 2], [double.NaN, double.NaN])], [], true, false));
        Assert.Contains("nothing to draw", canvas.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void RecoveryFile_FormatThenParse_GivesTheSame()
    {
        RecoveredDesign[] designs = [new("/home/x/my design.toml", "name = \"a\"\n== 3 fake\n"), new(null, ""), new("b.toml", "µ\n日本")];
        Assert.Equal(designs, RecoveryFiles.Parse(RecoveryFiles.Format(designs), out string rest));
        Assert.Empty(rest);
        Assert.Empty(RecoveryFiles.Parse("== 99 x\nshort", out rest));
        Assert.Equal("== 99 x\nshort", rest);
        Assert.Empty(RecoveryFiles.Parse("nonsense", out rest));
        Assert.Equal("nonsense", rest);
    }

    [Fact]
    public void RecoveryFiles_KeepUnsavedWorkAndDropItWhenSaved()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            Model changed = Setup.Start().At("input", "input.series-resistor").Type("+");
            using RecoveryFiles mine = new(folder);
            mine.Now(changed);

            using RecoveryFiles next = new(folder + "/");   // another session looks into the same folder
            Assert.Equal(changed.Here.Document.Text, Assert.Single(next.Find().Designs).Text);
            next.DropFound();
            Assert.Empty(Directory.GetFiles(folder));

            mine.Now(changed);
            mine.Now(changed.Type("u"));   // nothing unsaved any more
            Assert.Empty(Directory.GetFiles(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A file that was cut off, one of bytes that are no text, one whose text is no design, and one whose second part is damaged: none is
    /// offered as a design, none is deleted when other work is dropped, and each is named.</summary>
    [Fact]
    public void RecoveryFile_ThatCannotBeRead_IsNamedAndSetAside_AndNeverDeleted()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string text = FrontEnd.Documents.DesignDocument.StarterText;
            byte[][] damaged = [[.. "== 9999 x\nname"u8], [0xFF, 0xFE, 0, 1, 2], [.. "== 12 \nhello there!\n"u8],
                System.Text.Encoding.UTF8.GetBytes(RecoveryFiles.Format([new(null, text)]) + "== 5")];
            for (int i = 0; i < damaged.Length; i++)
            {
                File.WriteAllBytes(Path.Combine(folder, $"session-4194305-{i}.recovery"), damaged[i]);
            }

            File.WriteAllText(Path.Combine(folder, "session-4194305-whole.recovery"), RecoveryFiles.Format([new("a.toml", text)]));
            using RecoveryFiles files = new(folder);

            FoundWork found = files.Find();

            Assert.Equal(2, found.Designs.Count);
            Assert.All(found.Designs, design => Assert.Equal(text, design.Text));
            Assert.Equal(damaged.Length, found.SetAside.Count);
            Model told = Updater.Update(Setup.Start(), new Message.FoundRecovery(found with { Designs = [] })).Model;
            Assert.Null(told.Page);
            Assert.All(found.SetAside, path => Assert.Contains(path, told.Status, StringComparison.Ordinal));
            files.DropFound();
            Assert.Equal(damaged.Length, Directory.GetFiles(folder, "*.unreadable").Length);
            Assert.Empty(Directory.GetFiles(folder, "*.recovery"));
            Assert.True(files.Find().IsNothing);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Background_ThatFails_IsToldToTheSession_AndTheNextWorkStillRuns()
    {
        using System.Collections.Concurrent.BlockingCollection<Action> posted = [];
        int calls = 0;
        using Performer performer = new(null, null, _ => { }, design => calls++ == 0 ? throw new NotSupportedException("ours") : Evaluator.Evaluate(design), TimeSpan.Zero);
        (Model model, Effect first) = Model.Start(FrontEnd.Documents.DesignDocument.Read(Setup.Headband), Setup.Headband);
        Session session = new(model, performer, posted.Add);

        session.Perform(first);
        Assert.True(posted.TryTake(out Action? news, TimeSpan.FromSeconds(20)));
        news();
        Assert.Equal("FE0070", session.Model.Complaint?.Code);
        Assert.True(posted.TryTake(out news, TimeSpan.FromSeconds(20)));
        news();
        Assert.All(session.Model.Here.Shown!.Results, result => Assert.Equal("FE0070", result.FindingCode));

        session.Perform(first);
        Assert.True(posted.TryTake(out news, TimeSpan.FromSeconds(20)));
        news();
        Assert.True(100 < session.Model.Here.Shown!.Results.Count);
    }

    /// <summary>While one job runs only the newest of those that come is kept.</summary>
    [Fact]
    public async Task LatestOnly_ForgetsWhatCameBetween()
    {
        List<int> done = [];
        using ManualResetEventSlim gate = new();
        using LatestOnly worker = new(problem => throw problem);
        worker.Submit(() =>
        {
            gate.Wait(TestContext.Current.CancellationToken);
            done.Add(0);
        });
        for (int i = 1; i <= 5; i++)
        {
            int number = i;
            worker.Submit(() => done.Add(number));
        }

        gate.Set();
        await worker.Idle.WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);
        Assert.Equal(5, done[^1]);
        Assert.True(done.Count <= 2 + 1);   // the first may not have begun before the second came
    }

    [Theory]
    [InlineData("headset.toml", true)]
    [InlineData("a/b", true)]
    [InlineData("check", false)]
    [InlineData("--version", false)]
    public void OneArgument_IsADesignOrACommand(string argument, bool design) => Assert.Equal(design, DesignInput.IsDesign(argument));
}
