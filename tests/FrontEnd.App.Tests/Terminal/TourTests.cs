using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Fields;
using FrontEnd.Results;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The tour works on a copy, speaks of the design that is open, and lets no key through.</summary>
public class TourTests
{
    public static TheoryData<string> Designs => [.. Directory.GetFiles(Path.Combine(Setup.Root, "designs"), "*.toml").Select(path => Path.GetFileName(path))
        .Where(name => !name.Contains("requirements", StringComparison.Ordinal) && name != "wrong-in-six-ways.toml")];

    private static Model Open(string file) => Setup.Start(Path.Combine(Setup.Root, "designs", file));

    /// <summary>Each step: real controls, a figure that moves or is said not to, text with the design's own values and nothing cut at 80 columns.</summary>
    [Theory]
    [MemberData(nameof(Designs))]
    public void Steps_OfAnyDesign_PointAtRealControls_AndSpeakOfIt(string file)
    {
        Model own = Open(file), model = own.Type("t");
        Tour tour = Assert.IsType<Tour>(model.Tour);

        // Of a device of which not everything is known the figures are spans: nothing moves that could be watched.
        int lessons = own.Here.Document.NotAllKnown is null ? 3 : 0;
        Assert.True(tour.Steps.Count >= lessons + 2, $"{tour.Steps.Count} steps");
        int moved = 0;
        for (int step = 0; step < tour.Steps.Count; step++)
        {
            TourStep shown = tour.Steps[step];
            Assert.Equal(step, model.TourStep);
            Assert.Equal(own.Here.Document.Text, model.Here.Document.Text);   // each step begins with the design as it is
            IsWhole(model, shown, ascii: false);
            if (shown.Field.Length > 0)
            {
                Field<FrontEnd.Designs.Design> field = DesignFields.Find(own.Design, shown.Field)!;
                Assert.Equal(shown.Field, Whereabouts.FormOf(model)[model.FieldRow].Field.Key);
                string before = ResultText.Value(model.Here.Shown!.Find(shown.Result)!);
                Model done = model.Type("j");
                Assert.Null(done.Complaint);
                Assert.NotEqual(FieldText.Format(field, field.Get(own.Design)), FieldText.Format(field, field.Get(done.Design)));
                bool moves = before != ResultText.Value(done.Here.Shown!.Find(shown.Result)!);
                moved += moves ? 1 : 0;
                Assert.Contains(moves ? $"was {before}" : "something else decides it", Tour.Watch(shown, done.Here), StringComparison.Ordinal);
                IsWhole(done, shown, ascii: true);
                Assert.Equal(own.Here.Document.Text, done.Type("u").Here.Document.Text);
                model = done;
            }

            model = model.Type(" ");
        }

        Assert.True(moved >= lessons, $"{moved} moved");
        IsBack(own, model);
    }

    /// <summary>The figures in the text are the open design's: no two designs are told the same.</summary>
    [Fact]
    public void Texts_CarryTheOpenDesignsFigures()
    {
        Model starter = Open("starter.toml").Type("t"), headband = Open("dry-headband.toml").Type("t");
        foreach (TourStep step in starter.Tour!.Steps.SkipLast(1).Skip(1))
        {
            TourStep? other = headband.Tour!.Steps.Find(one => one.Field == step.Field && one.Result == step.Result);
            Assert.NotEqual(step.Text, other?.Text);
        }

        string all = string.Join(' ', headband.Tour!.Steps.Select(step => step.Text));
        foreach (string figure in (string[])["38.3 µV rms", "20 %", "10 kΩ", "2 fF", "12 bits", "500 times a second"])
        {
            Assert.Contains(figure, all, StringComparison.Ordinal);
        }

        // The last step names what is worst, and where one goes on.
        TourStep last = headband.Tour.Steps[^1];
        Result worst = headband.Here.Shown!.Judged[0];
        Assert.Equal("what next", last.Title);
        Assert.Contains(worst.Name, last.Text, StringComparison.Ordinal);
        Assert.Contains(ResultText.Value(worst), last.Text, StringComparison.Ordinal);
    }

    /// <summary>Whatever is pressed, clicked or pasted: only the tour's own keys do anything, and the user's design is given back as it was, unsaved changes and all.</summary>
    [Fact]
    public void Keys_InTheTour_AreNotLetThrough()
    {
        Model own = Open("dry-headband.toml").Type("+").At(Place.Input, "input.series-resistor").Press(KeyName.Tab);
        Model tour = own.Type("t   ");
        Keystroke[] keys =
        [
            .. "abcdefghiklmnopqrstvwxyzABQWZ0123456789+-<>!?,.\"=".Select(Keystroke.Of), .. Enum.GetValues<KeyName>().Except(
                [KeyName.Letter, KeyName.Enter, KeyName.Escape, KeyName.Backspace, KeyName.None, KeyName.F5]).Select(name => new Keystroke(name)),
            .. "abdefghijkmnoprstuvwxy".Select(letter => new Keystroke(KeyName.Letter, letter, Ctrl: true)),
            .. "abcdefghiklmnopqrstvwxyz".Select(letter => new Keystroke(KeyName.Letter, letter, Alt: true)),
        ];
        Message[] others = [new Message.Pasted("35 %"), new Message.GoTo(Place.Converter), new Message.PickField(2), new Message.PickResult(1), new Message.Do(Act.Save), new Message.Do(Act.Tour)];
        foreach (Message message in keys.Select(key => (Message)new Message.Pressed(key)).Concat(others))
        {
            (Model after, Effect? effect) = Updater.Update(tour, message);
            Assert.Null(effect);
            Assert.Null(after.Page);
            Assert.Null(after.Editing);
            Assert.Equal((tour.TourStep, tour.PlaceId, tour.FieldRow, tour.Here.Document.Text), (after.TourStep, after.PlaceId, after.FieldRow, after.Here.Document.Text));
            Assert.Contains("Esc brings your design back", after.Screen().Replace("\n ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        }

        // Too small to see it: nothing of it is saved.
        Assert.Null(Updater.Update(tour with { Width = 30 }, new Message.Pressed(Keystroke.Of('w'))).Effect);
        Assert.Null((tour with { Width = 30 }).Type("w").Page);

        // A change of the tour is nobody's unsaved work; that of the user still is.
        Model changed = tour.Type("j");
        Assert.NotEqual(own.Here.Document.Text, changed.Here.Document.Text);
        Assert.Equal([own.Here.Slot], changed.Designs.Where(design => design.IsChanged).Select(design => design.Slot));
        QuestionPage asked = Assert.IsType<QuestionPage>(changed.Press(new Keystroke(KeyName.Letter, 'c', Ctrl: true)).Page);
        Assert.Contains("Not saved: dry-headband. Quit?", asked.Question, StringComparison.Ordinal);
        Assert.DoesNotContain(asked.Answers, answer => answer.Message is Message.Do);

        IsBack(own, changed.Press(KeyName.Escape));
        IsBack(own, tour.Type("j ju").Press(KeyName.Backspace, KeyName.Escape));
    }

    /// <summary>Without figures there is no tour, and none on a file with errors.</summary>
    [Fact]
    public void Start_WithoutFigures_SaysSo()
    {
        (Model model, _) = Model.Start(DesignDocument.Read(Setup.Headband), Setup.Headband);
        Assert.Null(model.Type("t").Tour);
        Assert.Contains("being computed", model.Type("t").Status, StringComparison.Ordinal);
        Assert.Null(Open("wrong-in-six-ways.toml").Type("t").Tour);
    }

    private static void IsBack(Model own, Model model)
    {
        Assert.Null(model.Tour);
        Assert.Null(model.TourStep);
        Assert.Same(own.Here.Document, model.Here.Document);
        Assert.Equal(own.Designs.Count, model.Designs.Count);
        Assert.Equal(own.Here.Path, model.Here.Path);
        Assert.Equal(own.Here.Undo.Count(), model.Here.Undo.Count());
        Assert.Equal((own.PlaceId, own.FieldRow, own.ResultRow, own.OnResults), (model.PlaceId, model.FieldRow, model.ResultRow, model.OnResults));
        Assert.Contains("your design as you left it", model.Status, StringComparison.Ordinal);
    }

    /// <summary>At 80 columns nothing of a step is cut, the form has room above it, and in the smallest window what to do and what to watch are there as well.</summary>
    private static void IsWhole(Model model, TourStep step, bool ascii)
    {
        string[] rows = model.Screen(ascii).Split('\n');
        int top = Array.FindIndex(rows, row => row.TrimStart().StartsWith("tour ", StringComparison.Ordinal) && row.Contains(step.Title, StringComparison.Ordinal));
        string foot = string.Join(' ', rows[top..23].Select(row => row.Trim()));
        Canvas canvas = new(80, 24, ascii);
        Assert.Contains(canvas.Say(step.Text), foot, StringComparison.Ordinal);
        Assert.Contains(canvas.Say(step.Field.Length > 0 ? $"j sets {step.Field} to {step.Try}" : ""), foot, StringComparison.Ordinal);
        Assert.EndsWith(canvas.Say(Tour.Watch(step, model.Here)), foot, StringComparison.Ordinal);
        Assert.True(top >= 11, $"{step.Title}: begins in row {top}");
        string small = (model with { Width = 60, Height = 18 }).Screen(ascii);
        Assert.Contains(step.Field.Length > 0 ? "j sets" : step.Title, small, StringComparison.Ordinal);
        Assert.Contains(canvas.Say(ResultText.Value(model.Here.Shown!.Find(step.Result)!)), string.Join(' ', small.Split('\n')[10..17].Select(row => row.Trim())), StringComparison.Ordinal);
    }
}
