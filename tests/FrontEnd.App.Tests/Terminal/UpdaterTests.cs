using FrontEnd.Advice;
using FrontEnd.Terminal;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Fields;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>What happens to the model, as plain values.</summary>
public class UpdaterTests
{
    private static string Text(Model model, string key)
    {
        Field<Design> field = DesignFields.Find(model.Design, key)!;
        return FieldText.Format(field, field.Get(model.Design));
    }

    [Fact]
    public void Typing_AValueAndEnter_ChangesTheDesignAndAsksForFigures()
    {
        Model model = Setup.Start().At("input", "input.series-resistor");

        (Model typed, Effect? none) = Updater.Update(model.Type("220"), new Message.Pressed(Keystroke.Of('k')));
        (Model kept, Effect? effect) = Updater.Update(typed, new Message.Pressed(new Keystroke(KeyName.Enter)));

        Assert.Null(none);
        Assert.Equal("220 kΩ", Text(kept, "input.series-resistor"));
        Effect.Evaluate evaluate = Assert.IsType<Effect.Evaluate>(effect);
        Assert.Equal(kept.Here.Run, evaluate.Run);
        Assert.Null(kept.Editing);
        Assert.True(kept.Here.IsChanged);
        Assert.False(kept.Here.IsFresh);   // the last figures stay while new ones come
        Assert.NotNull(kept.Here.Shown);
    }

    [Theory]
    [InlineData("40 uW", "FE0102")]      // a unit of another kind
    [InlineData("-5 kΩ", "FE0110")]      // just outside the range
    [InlineData("", "FE0106")]           // nothing
    public void Typing_WhatWillNotDo_SaysWhyOnTheSpotAndKeepsTheField(string text, string code)
    {
        Model model = Setup.Start().At("input", "input.series-resistor").Press(KeyName.Enter, KeyName.Backspace).Type(text);
        Model refused = model.Press(KeyName.Enter);

        Assert.Equal(code, refused.Editing?.Problem?.Code);
        Assert.Equal("68 kΩ", Text(refused, "input.series-resistor"));
        Assert.Contains(refused.Editing!.Problem!.Message, string.Join(' ', refused.Screen().Split('\n').TakeLast(4).Select(line => line.Trim())), StringComparison.Ordinal);
    }

    [Fact]
    public void Typing_Escape_DropsWhatWasTyped()
    {
        Model model = Setup.Start().At("input", "input.series-resistor").Type("1M").Press(KeyName.Escape);

        Assert.Null(model.Editing);
        Assert.False(model.Here.IsChanged);
    }

    [Fact]
    public void Letters_WhileTyping_AreText_AndTheirAltFormsAct()
    {
        Model typing = Setup.Start().At("input", "input.series-resistor").Press(KeyName.Enter).Type("n");
        Assert.Equal("n", typing.Editing!.Line.Text);

        Model gone = typing.Press(new Keystroke(KeyName.Letter, 'n', Alt: true));
        Assert.Null(gone.Editing);
        Assert.Equal("noise", gone.PlaceId);
        Assert.False(gone.Here.IsChanged);   // `n` is no resistance, so nothing was kept
    }

    [Fact]
    public void CtrlC_InAField_Copies_ElsewhereQuits_AndAsksWhereSomethingWouldBeLost()
    {
        Keystroke copy = new(KeyName.Letter, 'c', Ctrl: true);
        Model typing = Setup.Start().At("input", "input.series-resistor").Press(KeyName.Enter);

        Assert.Equal("68 kΩ", Assert.IsType<Effect.Copy>(Updater.Update(typing, new Message.Pressed(copy)).Effect).Text);
        Assert.IsType<Effect.Quit>(Updater.Update(Setup.Start(), new Message.Pressed(copy)).Effect);
        Assert.IsType<QuestionPage>(Setup.Start().At("input", "input.series-resistor").Type("+").Press(copy).Page);
    }

    [Fact]
    public void StepUp_WalksThroughPreferredValues()
    {
        // E24 above 68 k: 75 k, 82 k (IEC 60063).
        Model model = Setup.Start().At("input", "input.series-resistor").Type("+");
        Assert.Equal("75 kΩ", Text(model, "input.series-resistor"));
        Assert.Equal("82 kΩ", Text(model.Type("+"), "input.series-resistor"));
        Assert.Equal("62 kΩ", Text(model.Type("--"), "input.series-resistor"));
    }

    /// <summary>The saved value of a key that the file does not state is no key at all: the file is as it was, and the value follows its card again.</summary>
    [Fact]
    public void ToSaved_OfAValueTheFileDoesNotState_TakesTheKeyOut()
    {
        Model saved = Setup.Start().At(Place.Electrodes, "electrodes.active.series-resistance");
        Assert.NotEqual(OriginKind.Given, saved.Here.Document.OriginOf("electrodes.active.series-resistance")!.Kind);
        Model changed = saved.Type("+");
        Assert.Contains("series-resistance", changed.Here.Document.Text, StringComparison.Ordinal);

        Model back = changed.Type("b");

        Assert.Equal(saved.Here.Document.Text, back.Here.Document.Text);
        Assert.False(back.Here.IsChanged);
        Assert.Equal(changed.Here.Document.Text, back.Type("u").Here.Document.Text);
        Assert.Contains("already at its saved value", saved.Type("b").Status, StringComparison.Ordinal);
    }

    /// <summary>A step and back to the saved value is the saved file, to the character, for every number of a form.</summary>
    [Theory]
    [InlineData("dry-headband.toml")]
    [InlineData("starter.toml")]
    public void ToSaved_AfterAStep_IsTheSavedFile(string file)
    {
        Model start = Setup.Start(Path.Combine(Setup.Root, "designs", file));
        int stepped = 0;
        foreach (Place place in Place.Blocks(start.Design))
        {
            foreach (FormRow row in FormRow.Of(start.Design, place).Where(row => row.Field.IsNumeric))
            {
                // Figures do not matter here: without them it is quick.
                Model there = start.At(place.Id, row.Field.Key);
                Model changed = Updater.Update(there, new Message.Do(Act.StepUp)).Model;
                Model back = Updater.Update(changed, new Message.Do(Act.ToSaved)).Model;
                Assert.True(start.Here.Document.Text == back.Here.Document.Text, $"{row.Field.Key}: {changed.Status} / {back.Status}");
                stepped += changed.Here.IsChanged ? 1 : 0;
            }
        }

        Assert.True(stepped > 20, $"{stepped}");
    }

    /// <summary>A figure that meets its limit is left alone; in the form the figure that is acted on is marked.</summary>
    [Fact]
    public void Apply_OnAFigureThatPasses_ChangesNothing_AndTheFormShowsWhichFigureItActsOn()
    {
        Model model = Setup.Start(Setup.Headband);
        Model advised = Updater.Update(model, new Message.Advised(0, model.Here.Run, Advisor.Advise(model.Here.Shown!, TestContext.Current.CancellationToken))).Model;
        Model verdicts = Updater.Update(advised, new Message.Do(Act.ViewVerdicts)).Model;
        int pass = Whereabouts.ResultsOf(verdicts).ToList().FindIndex(result => result.Verdict.Kind == VerdictKind.Pass);

        Model left = (verdicts with { ResultRow = pass }).Type("h");
        Assert.Equal(model.Here.Document.Text, left.Here.Document.Text);
        Assert.Contains("already meets its limit", left.Status, StringComparison.Ordinal);

        // In the form: one mark, at the figure whose change is made.
        Assert.Equal(2, advised.Screen().Split("h: helps most: ").Length);
        Result marked = Advising.FixInHand(advised)!;
        Assert.Equal($"done: {marked.Verdict.Improvement!.Change}. u undoes it.", advised.Type("h").Status);
        Assert.Contains($"h: helps most: {marked.Verdict.Improvement.Change[..10]}", advised.Screen(), StringComparison.Ordinal);
    }

    [Fact]
    public void Evaluated_OfAnOlderRun_DoesNotReplaceNewerFigures()
    {
        Model model = Setup.Start().At("input", "input.series-resistor").Type("+");
        Assessment newest = model.Here.Shown!;

        Model late = Updater.Update(model, new Message.Evaluated(0, 1, Evaluator.Evaluate(new Design()))).Model;

        Assert.Same(newest, late.Here.Shown);
    }

    [Fact]
    public void Card_Chosen_TakesOverFromTheValuesInLine()
    {
        Model model = Setup.Start(Setup.Headband).At(Place.Electrodes, "electrodes.active.card").Press(KeyName.Enter);
        ChoosePage choose = Assert.IsType<ChoosePage>(model.Page);
        int row = choose.Choices.ToList().FindIndex(choice => choice.Word == "gel-prepared");

        (Model next, Effect? effect) = Updater.Update(model, new Message.PickChoice(row));

        Assert.IsType<Effect.Evaluate>(effect);
        Assert.Equal("5 kΩ", Text(next, "electrodes.active.contact-resistance"));   // the card's figure, not the file's 620 kΩ
        Assert.Equal(OriginKind.Card, next.Here.Document.OriginOf("electrodes.active.contact-resistance")!.Kind);
        Assert.Contains("# It teaches that dry skin", next.Here.Document.Text, StringComparison.Ordinal);
        Assert.Equal("51 kΩ", Text(next, "electrodes.reference.contact-resistance"));
    }

    /// <summary>Electrodes that are alike are swapped alike, after a question, in one step of undo.</summary>
    [Fact]
    public void Card_OfElectrodesThatAreAlike_AsksForWhich()
    {
        Model model = Setup.Start().At(Place.Electrodes, "electrodes.active.card").Press(KeyName.Enter);
        int row = Assert.IsType<ChoosePage>(model.Page).Choices.ToList().FindIndex(choice => choice.Word == "dry-multipin");
        Model asked = Updater.Update(model, new Message.PickChoice(row)).Model;
        Assert.IsType<QuestionPage>(asked.Page);

        Model all = asked.Type("a");
        Assert.All((string[])["active", "reference", "ground"], part => Assert.Equal("dry-multipin", Text(all, $"electrodes.{part}.card")));
        Assert.Equal(model.Here.Document.Text, all.Type("u").Here.Document.Text);

        Model one = asked.Type("t");
        Assert.Equal("dry-multipin", Text(one, "electrodes.active.card"));
        Assert.Equal("gel-prepared", Text(one, "electrodes.reference.card"));
        Assert.False(asked.Type("b").Here.IsChanged);
    }

    /// <summary>A plain-number design saved under a .toml name is TOML, with the same design in it.</summary>
    [Fact]
    public void SaveAs_AJsonDesignUnderATomlName_WritesToml()
    {
        const string Json = "{ \"channels\": 3, \"band\": [1, 30] }";
        (Model model, _) = Model.Start(DesignDocument.Parse(Json, DocumentFormat.Json), null);

        (Model saved, Effect? effect) = Updater.Update(
            model with { Page = new FileNamePage(FilePurpose.SaveAs, Line.Of("x.toml")) }, new Message.Pressed(new Keystroke(KeyName.Enter)));

        Effect.Save save = Assert.Single(Assert.IsType<Effect.Several>(effect).Effects.OfType<Effect.Save>());
        Assert.Equal(DesignWriter.ToToml(model.Design), DesignWriter.ToToml(DesignDocument.Parse(save.Document.Text, DocumentFormat.Toml).Design));
        Assert.Equal(3, saved.Design.Channels);
        Assert.Equal(Json, saved.Type("u").Here.Document.Text);

        Model refused = Updater.Update(Setup.Start() with { Page = new FileNamePage(FilePurpose.SaveAs, Line.Of("x.json")) }, new Message.Pressed(new Keystroke(KeyName.Enter))).Model;
        Assert.Equal("FE0191", refused.Complaint?.Code);
    }

    [Fact]
    public void Apply_WritesTheChangeIntoTheDocument_AndKeepsItsComments()
    {
        Model model = Setup.Start(Setup.Headband);
        Model advised = Updater.Update(model, new Message.Advised(0, model.Here.Run, Advisor.Advise(model.Here.Shown!, TestContext.Current.CancellationToken))).Model;
        Result helped = advised.Here.Shown!.Judged.First(result => result.Verdict.Improvement is not null);
        Model why = Updater.Update(advised, new Message.Do(Act.ViewVerdicts)).Model;
        int row = Whereabouts.ResultsOf(why).ToList().FindIndex(result => result.Id == helped.Id);

        Model applied = (why with { ResultRow = row }).Press(new Keystroke(KeyName.Enter)).Type("h");

        Assert.True(applied.Here.IsChanged);
        Assert.Null(applied.Page);
        Design wanted = helped.Verdict.Improvement!.Design;
        foreach (Field<Design> field in DesignFields.Of(wanted))
        {
            Assert.Equal(FieldText.Format(field, field.Get(wanted)), FieldText.Format(field, field.Get(applied.Design)));
        }

        Assert.Contains("# Two channels, dry electrodes on the forehead", applied.Here.Document.Text, StringComparison.Ordinal);
        Assert.Equal(DesignDocument.Read(Setup.Headband).Text, applied.Type("u").Here.Document.Text);
    }

    [Theory]
    [InlineData("stages", 0)]
    [InlineData("stages", 3)]
    [InlineData("digital", 2)]
    [InlineData("bands", 0)]
    [InlineData("interferers", 0)]
    [InlineData("patches", 0)]
    public void Insert_ThenRemove_GivesTheSameDesign(string list, int variant)
    {
        DesignDocument before = DesignDocument.Read(Setup.Headband);
        DesignList owner = DesignFields.Lists.First(one => one.Key == list);

        EditResult inserted = Edits.Insert(before, new Insertion(list, variant, ""));
        EditResult removed = Edits.Remove(inserted.Document, owner, owner.Count(inserted.Document.Design) - 1);

        Assert.Null(inserted.Finding);
        Assert.Null(removed.Finding);
        Assert.Equal(owner.Count(before.Design) + 1, owner.Count(inserted.Document.Design));
        Assert.Equal(DesignWriter.ToToml(before.Design), DesignWriter.ToToml(removed.Document.Design));
    }

    [Fact]
    public void Remove_TheFirstOfTwoStages_LeavesTheSecondWithItsValues()
    {
        DesignDocument before = DesignDocument.Read(Setup.Headband);
        DesignDocument after = Edits.Remove(before, DesignFields.Lists[0], 0).Document;

        Assert.Equal(before.Design.Stages[1], Assert.Single(after.Design.Stages));
        Assert.Equal(before.Design.Converter, after.Design.Converter);
    }

    [Fact]
    public void Save_WithoutAFile_AsksForAName_AndAFileThatIsThereIsAskedAbout()
    {
        Model asked = Setup.Start().Type("w");
        FileNamePage file = Assert.IsType<FileNamePage>(asked.Page);
        Assert.EndsWith(".toml", file.Line.Text, StringComparison.Ordinal);

        (_, Effect? effect) = Updater.Update(asked, new Message.Pressed(new Keystroke(KeyName.Enter)));
        Assert.False(Assert.IsType<Effect.Save>(effect).MayReplace);

        Model exists = Updater.Update(asked, new Message.Exists(FilePurpose.SaveAs, "x.toml")).Model;
        Assert.True(Assert.IsType<Effect.Save>(Updater.Update(exists, new Message.Pressed(Keystroke.Of('r'))).Effect).MayReplace);
    }

    [Fact]
    public void Quit_WithUnsavedWork_NamesItAndDoesNotQuit()
    {
        Model model = Setup.Start().At("input", "input.series-resistor").Type("+q");

        QuestionPage ask = Assert.IsType<QuestionPage>(model.Page);
        Assert.Contains("Not saved", ask.Question, StringComparison.Ordinal);
        Assert.False(model.Quitting);
        Assert.IsType<Effect.Quit>(Updater.Update(model, new Message.Pressed(Keystroke.Of('y'))).Effect);
    }

    /// <summary>The screen that is too small says that q quits: so it must, with unsaved work as well.</summary>
    [Fact]
    public void Quit_InATerminalThatIsTooSmall_AsksWhereItCanBeSeen()
    {
        Model small = Setup.Start().At("input", "input.series-resistor").Type("+") with { Width = 30, Height = 10 };
        Model asked = small.Type("q");
        Assert.Contains("y: yes, without saving", asked.Screen(), StringComparison.Ordinal);
        Assert.IsType<Effect.Quit>(Updater.Update(asked, new Message.Pressed(Keystroke.Of('y'))).Effect);
        Assert.Null(asked.Type("n").Page);
    }

    [Fact]
    public void Compare_TwoDesigns_ShowsWhatIsDifferentAndTheVerdicts()
    {
        Model one = Setup.Start(Setup.Headband, 120, 40);
        (Model two, Effect? effect) = Updater.Update(one, new Message.Opened(DesignDocument.Read(Path.Combine(Setup.Root, "designs", "gel-cap.toml")), "gel-cap.toml"));
        string screen = Setup.Settle(two, effect).Type("c").Screen();

        Assert.Contains("electrodes.mismatch", screen, StringComparison.Ordinal);
        Assert.Contains("20 %", screen, StringComparison.Ordinal);   // the headband's
        Assert.Contains("50 %", screen, StringComparison.Ordinal);   // the cap's
        Assert.Contains("x 38.3 µV rms", Setup.Settle(two, effect).Type("c").Press(KeyName.PageDown, KeyName.PageDown, KeyName.PageDown, KeyName.PageDown, KeyName.PageDown, KeyName.PageDown, KeyName.PageDown, KeyName.PageDown).Screen(), StringComparison.Ordinal);
    }

    /// <summary>Every key's words can be read to their end by scrolling; the first row names the views.</summary>
    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(140)]
    public void Help_IsWrappedAndNotCut(int width)
    {
        Model model = Setup.Start(width: width, height: 120).Type("?");
        string[] rows = model.Screen().Split('\n')[7..115];
        int half = width >= 130 ? width / 2 : width;
        string text = string.Join(' ', rows.Select(row => Part(row, 18, half)).Concat(rows.Select(row => Part(row, half + 18, width))).Where(part => part.Length > 0));
        Assert.DoesNotContain("…", text, StringComparison.Ordinal);
        Assert.All(KeyMap.Acts, row => Assert.Contains(row.Does, text, StringComparison.Ordinal));
        Assert.Contains("then the room up to the rails, then the worst verdict of the block's nodes", text, StringComparison.Ordinal);
        Assert.Contains(string.Join(", ", Place.Views.Select(view => $"{view.Letter} {view.Title}")), text, StringComparison.Ordinal);

        static string Part(string row, int from, int to) => row.Length <= from ? "" : row[from..Math.Min(row.Length, to)].Trim();
    }

    /// <summary>Rows of a comparison can be told apart: keys longer than their column show their end, what they have in common stands above.</summary>
    [Fact]
    public void Compare_LongKeys_ShowTheirEnds()
    {
        Model model = Setup.Start(Setup.Headband);
        Candidate buffers = Candidates.For(model.Design, model.Here.Shown!).First(one => one.Change.StartsWith("a buffer at each electrode", StringComparison.Ordinal));
        (Model taken, Effect? effect) = Advising.TakeOver(model, buffers.Design, buffers.Change, "");
        Model buffered = Setup.Settle(taken, effect);
        List<string> keys = [.. DesignFields.Of(buffered.Design).Select(field => field.Key).Where(key => key.StartsWith("electrodes.active-buffer.opamp.", StringComparison.Ordinal))];
        Assert.NotEmpty(keys);

        string screen = (buffered with { Height = 300 }).Type("c").Screen();

        Assert.DoesNotContain("opamp.…", screen, StringComparison.Ordinal);
        string[] rows = screen.Split('\n');
        int owner = Array.FindIndex(rows, row => row.Trim() == "electrodes.active-buffer.opamp.");
        Assert.NotEqual(-1, owner);
        Assert.Single(rows, row => row.Trim() == "electrodes.active-buffer.opamp.");
        Assert.All(keys.Where(key => key.Length > 32), key => Assert.Contains(rows, row => row.StartsWith($"   {key[(key.LastIndexOf('.') + 1)..]} ", StringComparison.Ordinal)));
    }

    /// <summary>Words of the key line and of the list to insert from are plain.</summary>
    [Fact]
    public void Insert_SaysWhereTheElementGoes()
    {
        Model list = Setup.Start(Setup.Headband).Type("i");
        Assert.DoesNotContain("[[", list.Screen(), StringComparison.Ordinal);
        Assert.Contains("last of the digital filters", list.Screen(), StringComparison.Ordinal);
        Assert.Contains("last of the stages before the converter", list.Press(KeyName.Enter).Status, StringComparison.Ordinal);
        Assert.Contains("v verdicts  z more  ? all keys", Setup.Start(Setup.Headband).Screen(), StringComparison.Ordinal);
        Assert.Contains("Tab complete the name", Setup.Start().Type("w").Screen(), StringComparison.Ordinal);
    }

    [Fact]
    public void Recovery_Recovered_IsOpenAndCountsAsUnsaved()
    {
        string text = DesignDocument.Read(Setup.Headband).Text.Replace("620 kΩ", "470 kΩ", StringComparison.Ordinal);
        RecoveredDesign found = new(Setup.Headband, text) { FileText = File.ReadAllText(Setup.Headband) };
        Model offered = Updater.Update(Setup.Start(), new Message.FoundRecovery(new FoundWork([found], []))).Model;

        Model recovered = offered.Type("r");

        Assert.Equal(2, recovered.Designs.Count);
        Assert.Contains(((Effect.Several)Updater.Update(offered, new Message.Pressed(Keystroke.Of('r'))).Effect!).Effects, effect => effect is Effect.DropRecovery);
        Assert.Equal("electrodes.active.contact-resistance", Assert.Single(DesignFields.Of(recovered.Design), field => FormRow.IsChanged(field, recovered.Here)).Key);

        // Where its file is open already it goes in there, one step of undo.
        Model there = Updater.Update(Setup.Start(Setup.Headband), new Message.FoundRecovery(new FoundWork([found], []))).Model.Type("r");
        Assert.Single(there.Designs);
        Assert.Equal(text, there.Here.Document.Text);
        Assert.Equal(found.FileText, there.Type("u").Here.Document.Text);

        Assert.Equal(text, recovered.Here.Document.Text);
        Assert.True(recovered.Here.IsChanged);
        Assert.Equal(Setup.Headband, recovered.Here.Path);
    }

    /// <summary>A value that the other electrodes had too is told to be theirs still; one that they did not have is not spoken of.</summary>
    [Fact]
    public void Edit_OfOneOfLikeElectrodes_SaysThatTheOthersStay()
    {
        Model alike = Setup.Start().At(Place.Electrodes, "electrodes.active.contact-resistance").Type("400 kΩ").Press(KeyName.Enter);
        Assert.Contains("only the active electrode changes: reference and ground still have 5 kΩ", alike.Status, StringComparison.Ordinal);
        Model alone = alike.At(Place.Electrodes, "electrodes.active.contact-resistance").Type("300 kΩ").Press(KeyName.Enter);
        Assert.DoesNotContain("still ha", alone.Status, StringComparison.Ordinal);
    }

    /// <summary>A change that no figure follows says so; one that moves a figure does not.</summary>
    [Fact]
    public void Edit_ThatMovesNoFigure_SaysSo()
    {
        // What the design is for is in no formula.
        Model still = Setup.Start().At("sheet", "purpose").Type("\"another").Press(KeyName.Enter);
        Assert.Contains("no figure moves", still.Status, StringComparison.Ordinal);
        Assert.DoesNotContain("no figure moves", Setup.Start().Type("+").Status, StringComparison.Ordinal);
    }
}
