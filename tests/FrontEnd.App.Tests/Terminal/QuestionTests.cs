using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>Questions have one style, and none is asked where nothing would be lost.</summary>
public class QuestionTests
{
    private static readonly Model Changed = Setup.Start(Setup.Headband).Type("+");

    /// <summary>Every question there is, each on the screen.</summary>
    private static IEnumerable<Model> Asked()
    {
        yield return Changed.Type("q");
        yield return Changed.Press(new Keystroke(KeyName.Letter, 'w', Ctrl: true));
        yield return Updater.Update(Changed, new Message.Exists(FilePurpose.SaveAs, "x.toml")).Model;
        yield return Updater.Update(Setup.Start(), new Message.FoundRecovery(new FoundWork([new RecoveredDesign(null, "name = \"a\"\n")], []))).Model;
        yield return Updater.Update(Changed, new Message.Pasted("35 %")).Model;
        Model cards = Setup.Start().At(Place.Electrodes, "electrodes.active.card").Press(KeyName.Enter);
        yield return Updater.Update(cards, new Message.PickChoice(Assert.IsType<ChoosePage>(cards.Page).Choices.ToList().FindIndex(choice => choice.Word == "dry-multipin"))).Model;
    }

    private static (Model, Effect?) Done(Model model, KeyName key) => Updater.Update(model, new Message.Pressed(new Keystroke(key)));

    /// <summary>A list with one answer in hand: arrows go through it, Enter takes it, Esc and n leave everything as it is, each letter takes its answer.</summary>
    [Fact]
    public void Questions_AllOfThem_AreListsWithOneAnswerInHand()
    {
        int questions = 0;
        foreach (Model asked in Asked())
        {
            QuestionPage page = Assert.IsType<QuestionPage>(asked.Page);
            questions++;
            Assert.Equal(0, page.Selected);
            Assert.Equal(page.Answers.Count, page.Answers.Select(answer => answer.Letter).Distinct().Count());

            // In the smallest window too it is whole, with all its answers.
            string small = (asked with { Width = 60, Height = 18 }).Screen();
            string inBox = string.Join(' ', small.Split('\n').Where(row => row.Contains('|', StringComparison.Ordinal)).Select(row => row[(row.IndexOf('|', StringComparison.Ordinal) + 1)..row.LastIndexOf('|')].Trim()));
            Assert.Contains(page.Question, inBox, StringComparison.Ordinal);
            Assert.All(page.Answers, answer => Assert.Contains(answer.Words, inBox, StringComparison.Ordinal));
            Assert.Single(page.Answers, answer => answer.Leaves);
            for (int row = 0; row < page.Answers.Count; row++)
            {
                Model there = asked.Press([.. Enumerable.Repeat(KeyName.Down, row)]);
                Assert.Equal(row, Assert.IsType<QuestionPage>(there.Page).Selected);
                Assert.Contains($"> {page.Answers[row].Letter} {page.Answers[row].Words}", there.Screen(), StringComparison.Ordinal);
                Assert.Equal(Updater.Update(asked, new Message.PickChoice(row)).Effect?.GetType(), Done(there, KeyName.Enter).Item2?.GetType());
                Assert.Equal(there.Press(KeyName.Enter).Page?.GetType(), asked.Type(page.Answers[row].Letter.ToString()).Page?.GetType());
            }

            Assert.Equal(0, Assert.IsType<QuestionPage>(asked.Press(KeyName.Up).Page).Selected);
            foreach (Model left in (Model[])[asked.Press(KeyName.Escape), asked.Type("n")])
            {
                Assert.Null(left.Page);
                Assert.False(left.Quitting);
                Assert.Equal(asked.Here.Document.Text, left.Here.Document.Text);
            }

            // Whatever else is pressed answers nothing.
            Assert.IsType<QuestionPage>(asked.Type("j7 ").Press(KeyName.Backspace, KeyName.F1, KeyName.Left).Page);

            // y goes on where one answer alone does, or has that letter; among several it answers nothing.
            (Model gone, Effect? effect) = Updater.Update(asked, new Message.Pressed(Keystroke.Of('y')));
            bool goesOn = page.Answers.Any(answer => answer.Letter == 'y') || page.Answers.Count(answer => !answer.Leaves) == 1;
            Assert.Equal(goesOn, effect is not null || gone.Page is FileNamePage);
        }

        Assert.Equal(6, questions);
    }

    /// <summary>Enter by habit loses nothing: no design, no file, no change that cannot be undone.</summary>
    [Fact]
    public void Questions_TheFirstAnswer_LosesNothing()
    {
        foreach (Model asked in Asked())
        {
            (Model done, Effect? effect) = Done(asked, KeyName.Enter);
            IEnumerable<Effect> effects = effect is Effect.Several several ? several.Effects : effect is null ? [] : [effect];
            Assert.DoesNotContain(effects, one => one is Effect.Quit or Effect.Save or Effect.Sheet or Effect.Coefficients);
            Assert.True(done.Designs.Count >= asked.Designs.Count);
            Assert.True(done.Here.Document.Text == asked.Here.Document.Text || !done.Here.Undo.IsEmpty, ((QuestionPage)asked.Page!).Question);
        }
    }

    [Theory]
    [InlineData('q', false)]
    [InlineData('q', true)]
    [InlineData('c', true)]
    [InlineData('w', true)]
    public void Quit_WithNothingChanged_JustQuits(char letter, bool ctrl)
    {
        Model model = Setup.Start(Setup.Headband);
        (Model left, Effect? effect) = Updater.Update(model, new Message.Pressed(new Keystroke(KeyName.Letter, letter, Ctrl: ctrl)));
        Assert.IsType<Effect.Quit>(effect);
        Assert.True(left.Quitting);
        Assert.Null(left.Page);

        // A change that was taken back is none.
        Assert.IsType<Effect.Quit>(Updater.Update(Changed.Type("u"), new Message.Pressed(new Keystroke(KeyName.Letter, letter, Ctrl: ctrl))).Effect);
    }

    /// <summary>What concerns the terminal means the same in a field, on a page and in a question, and leaves them as they are.</summary>
    [Fact]
    public void SuspendAndRedraw_AreTheSameEverywhere()
    {
        Keystroke suspend = new(KeyName.Letter, 'z', Ctrl: true), redraw = new(KeyName.Letter, 'l', Ctrl: true);
        foreach (Model model in (Model[])[Changed, Changed.Press(KeyName.Enter).Type("3"), Changed.Type("q"), Changed.Type("?"), Changed.Type("o"), Changed with { Width = 20 }])
        {
            (Model stopped, Effect? stop) = Updater.Update(model, new Message.Pressed(suspend));
            Assert.IsType<Effect.Suspend>(stop);
            Assert.Equal(model.Editing, stopped.Editing);
            Assert.Equal(model.Page, stopped.Page);
            Assert.IsType<Effect.Redraw>(Updater.Update(model, new Message.Pressed(redraw)).Effect);
        }

        Assert.DoesNotContain(suspend, Act.Undo.Others);
    }

    /// <summary>A pasted text: into what is typed, into a file's name with what fits it listed, into a search; into the field in hand after one question; nowhere else, and said so.</summary>
    [Fact]
    public void Paste_GoesWhereItIsWanted()
    {
        Model typing = Updater.Update(Changed.Press(KeyName.Enter), new Message.Pasted(" 45 % \r\n50 %\r\n")).Model;
        Assert.Equal("45 %", typing.Editing!.Line.Text);
        Assert.Contains("2 lines were pasted", typing.Status, StringComparison.Ordinal);

        (Model named, Effect? list) = Updater.Update(Changed.Type("o"), new Message.Pasted("'some folder/a b.toml'\n"));
        Assert.Equal("some folder/a b.toml", Assert.IsType<FileNamePage>(named.Page).Line.Text);
        Assert.Equal("some folder/a b.toml", Assert.IsType<Effect.List>(list).Typed);
        Assert.Equal("dipole", Assert.IsType<GlossaryPage>(Updater.Update(Changed.Type("zg"), new Message.Pasted("dipole")).Model.Page).Line.Text);

        Model asked = Updater.Update(Changed, new Message.Pasted("45 %")).Model;
        Assert.Contains("Set it to the pasted value, 45 %?", asked.Screen(), StringComparison.Ordinal);
        Assert.Contains("45 %", asked.Press(KeyName.Enter).Screen(), StringComparison.Ordinal);
        Assert.Equal(Changed.Here.Document.Text, asked.Type("n").Here.Document.Text);

        // What will not do is said at once, without a question; what is so already too.
        Model refused = Updater.Update(Changed, new Message.Pasted("45 kg")).Model;
        Assert.Null(refused.Page);
        Assert.Equal("FE0102", refused.Complaint?.Code);
        Assert.Null(Updater.Update(Changed, new Message.Pasted("25 %")).Model.Page);

        foreach (Model model in (Model[])[Changed.Type("v"), Changed.Type("?"), Changed.Type("q"), Updater.Update(Changed, new Message.Pasted(new string('7', 5000))).Model])
        {
            Model left = Updater.Update(model, new Message.Pasted("45 %")).Model;
            Assert.Equal(Changed.Here.Document.Text, left.Here.Document.Text);
        }

        Assert.Contains("longer than", Updater.Update(Changed, new Message.Pasted(new string('7', 5000))).Model.Status, StringComparison.Ordinal);
        Assert.Contains("Tab goes to the fields", Updater.Update(Changed.Type("v"), new Message.Pasted("45 %")).Model.Status, StringComparison.Ordinal);
    }

    /// <summary>Save and close closes once the file is written, and not where it could not be; quitting likewise.</summary>
    [Fact]
    public void SaveAndClose_ClosesOnceTheFileIsWritten()
    {
        Model two = Updater.Update(Setup.Start(), new Message.Opened(FrontEnd.Documents.DesignDocument.Read(Setup.Headband), Setup.Headband)).Model.Type("+");
        Assert.Equal(2, two.Designs.Count);
        (Model asked, Effect? save) = Updater.Update(two.Press(new Keystroke(KeyName.Letter, 'w', Ctrl: true)), new Message.Pressed(Keystroke.Of('s')));
        Assert.IsType<Effect.Save>(save);
        Assert.Equal(2, asked.Designs.Count);

        Model saved = Updater.Update(asked, new Message.Saved(two.Here.Slot, Setup.Headband, two.Here.Document)).Model;
        Assert.Single(saved.Designs);

        // It could not be written; what is saved later by hand closes nothing.
        Model failed = asked.Press(KeyName.Down);
        Assert.Equal(2, Updater.Update(failed, new Message.Saved(two.Here.Slot, Setup.Headband, two.Here.Document)).Model.Designs.Count);
    }
}
