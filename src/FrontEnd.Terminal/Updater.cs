using FrontEnd.Catalogue;

namespace FrontEnd.Terminal;

/// <summary>From a model and what happened to the next model and at most one thing to do. Pure: no file, no console, no clock.</summary>
internal static class Updater
{
    /// <summary>The model after a message, and what is wanted done outside it; null for nothing.</summary>
    public static (Model Model, Effect? Effect) Update(Model model, Message message) =>
        StudyPage.StopForgotten(model, Next(model, message));

    internal static (Model Model, Effect? Effect) Next(Model model, Message message) =>
        model is { Tour: { } tour, TourStep: { } step } && Touring.Hear(model, tour, step, message) is { } toured ? toured : Perform(model, message);

    private static (Model Model, Effect? Effect) Perform(Model model, Message message) => message switch
    {
        Message.Pressed pressed when KeyMap.Meaning(pressed.Key) == FieldHelpPage.Way && MessagePage.OpenIfCut(model) is { Page: MessagePage } whole => (whole, null),
        Message.Pressed pressed => Press(Silent(model), pressed.Key, pressed.MidWord),
        Message.Do { Act: var act } when act == FieldHelpPage.Way && MessagePage.OpenIfCut(model) is { Page: MessagePage } whole => (whole, null),
        Message.Do act => act.Act.Perform(Silent(model)),
        Message.Pasted pasted => Typing.Paste(Silent(model), pasted.Text),
        Message.Resized size => (model with { Width = size.Width, Height = size.Height }, null),
        Message.GoTo go => (Whereabouts.GoTo(model, go.PlaceId), null),
        Message.PickField pick => Typing.PickField(model, pick.Row),
        Message.PickResult pick => PickResult(model, pick.Row),
        Message.PickChoice pick => model.Page?.Pick(model, pick.Row) ?? (model, null),
        Message.Scrolled scrolled => Scroll(Silent(model), scrolled),
        Message.Word word => Words.TakeBack(model, word),
        Message.Evaluated done => (NothingMoved(model.WithDesign(done.Slot, design => Shown(design, done)), done), null),
        Message.Advised done => (
            model.WithDesign(
                done.Slot, design => design.ShownRun == done.Run ? design with { Shown = done.Assessment, Advised = true } : design),
            null),
        Message.Moved or Message.Progressed or Message.Studied or Message.Listed or Message.CursorAt => (Tell(model, message), null),
        Message.Told told => (model.Tell(told.Text), null),
        Message.Failed failed => (model.Complain(failed.Finding), null),
        Message.SetField set => DesignFields.Find(model.Design, set.Key) is { } field ? Typing.Keep(model, field, set.Text) : (model, null),
        Message.SetCards set => Changes.SetCards(model with { Page = null }, set),
        Message.Take take => Changes.Change(model with { Page = null }, take.Document, take.Label, $"done: {take.Label}. u undoes it."),
        Message.Opened or Message.Saved or Message.Exists or Message.SaveTo or Message.SheetTo or Message.CoefficientsTo or Message.MarksTo or Message.Close =>
            Files.Hear(model, message),
        Message.FoundRecovery found => (Files.Offer(model, found.Work), null),
        Message.Recover recover => Files.Recover(model, recover.Designs),
        Message.DropRecovery => (model with { Page = null }, new Effect.DropRecovery()),
        Message.FoundOther found => ConflictPage.Open(model, found),
        Message.OpenElsewhere elsewhere => (Disk.Elsewhere(model, elsewhere.Processes), null),
        Message.SeenOnDisk seen => (Disk.Seen(model, seen), null),
        Message.CardsRead read => Disk.EditAgain(model, read),
        Message.SaveThen save => Files.Save(model with { Page = null, AfterSave = save.Next }),
        Message.LeaveNow => (model with { Quitting = true }, new Effect.Quit()),
        Message.Dismiss => (model with { Page = null }, null),
        _ => throw new ArgumentOutOfRangeException(nameof(message), message, "Message is not handled."),
    };

    /// <summary>What was said last is read once the next key is pressed; a save that did not come about is waited for no longer.</summary>
    private static Model Silent(Model model) =>
        model with { Status = "", Complaint = null, AfterSave = model.Page is null ? null : model.AfterSave };

    /// <summary>News for the page, where it still wants them.</summary>
    private static Model Tell(Model model, Message news) =>
        model.Page is { } page && page.Hear(model, news) is var next && !ReferenceEquals(next, page) ? model with { Page = next } : model;

    /// <summary>The design with new figures; those of an older run than is shown, or of none that was asked for, are dropped.</summary>
    private static OpenDesign Shown(OpenDesign design, Message.Evaluated done) =>
        done.Run < design.ShownRun || design.Run < done.Run ? design : design with
    {
        Before = design.ShownRun < done.Run ? design.Shown : design.Before,
        Shown = done.Assessment,
        ShownRun = done.Run,
        Advised = false,
        SavedShown = ReferenceEquals(done.Assessment.Design, design.Saved.Design) ? done.Assessment : design.SavedShown,
    };

    /// <summary>A change that no figure follows says so: else one waits for what never comes.</summary>
    private static Model NothingMoved(Model model, Message.Evaluated done) =>
        model.Here is { Before: { } before, Shown: { } now } here && here.Slot == done.Slot && here.ShownRun == done.Run && ReferenceEquals(now, done.Assessment)
        && model.Status.Length == 0 && model.Complaint is null && model.Tour is null && !here.Undo.IsEmpty && !ReferenceEquals(before.Design, now.Design)
        && now.Results.All(result => before.Find(result.Id) is { } was && was.State == result.State && was.Text == result.Text
            && (result.State != ResultState.Number || was.Si.Equals(result.Si)) && was.Verdict.Kind == result.Verdict.Kind)
            ? model with { Status = WhyNothingMoved(here, now) }
            : model;

    /// <summary>What is not worked out may depend on the change: nothing is said of it.</summary>
    private static string WhyNothingMoved(OpenDesign here, Assessment now) =>
        now.HasFigures && Errors.Of(here).Count == 0 ? "no figure moves: none of them depends on this as the design stands"
        : now.HasFigures ? "none of the figures that are shown moves; the others wait until the file's errors are mended"
        : Errors.Of(here).Count > 0 ? "changed; what it moves is seen once the file's errors are mended"
        : "changed; what it moves is not seen, as no figures can be given for the design as it stands";

    private static (Model, Effect?) Press(Model model, Keystroke key, bool midWord)
    {
        if (KeyMap.MeaningWhileTyping(key) is { IsOfTheTerminal: true } everywhere)
        {
            return everywhere.Perform(model);
        }

        if (midWord && Words.Held(model, key) is { } held)
        {
            return (held, null);
        }

        if (model.TooSmall)
        {
            // Nothing that cannot be seen is changed.
            return model.Page is QuestionPage question && question.Press(model, key) is { } answered ? answered
                : KeyMap.Meaning(key) is { } known && (known == Act.Quit || known == Act.Save) ? known.Perform(model)
                : (model, null);
        }

        if (model.Editing is { } editor)
        {
            return Typing.Press(model, editor, key);
        }

        if (PressOnPage(model, key) is { } paged)
        {
            return paged;
        }

        return model is { Page: null, OnResults: false } && Typing.Begins(key) ? Typing.Begin(
            model, key.Letter == '"' ? "" : key.Letter.ToString())
            : KeyMap.Meaning(key) is { } act && (model.Page is null or { IsOverTheForm: true } || !act.NeedsTheForm) ? act.Perform(model)
            : (model, null);
    }

    private static (Model, Effect?)? PressOnPage(Model model, Keystroke key) =>
        model.Page?.Press(model, key) is var (next, effect) ? (ScrolledPage.Within(next), effect) : null;

    private static (Model, Effect?) PickResult(Model model, int row)
    {
        Model picked = Silent(model) with { ResultRow = row, OnResults = true, Editing = null };
        return model.ResultRow == row && model.OnResults ? WhyPage.Open(picked) : (picked, null);
    }

    /// <summary>The page, or what the wheel points at, which is then in hand: its row in hand is the one that moves.</summary>
    private static (Model, Effect?) Scroll(Model model, Message.Scrolled scrolled) =>
        model.Page is not null ? PressOnPage(model, new Keystroke(scrolled.Lines < 0 ? KeyName.Up : KeyName.Down)) ?? (model, null)
        : model.Editing is null && scrolled.Over != Pane.None ? (Whereabouts.Step(model with { OnResults = scrolled.Over == Pane.Figures }, scrolled.Lines), null)
        : (model, null);
}
