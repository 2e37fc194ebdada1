using FrontEnd.Catalogue;

namespace FrontEnd.Terminal;

/// <summary>The guided tour. It works on a copy, each step on a fresh one, and gives the user's design back as it was.</summary>
internal static class Touring
{
    private const string HowTo = "in the tour: Space goes on, Backspace goes back, j does the step, u undoes it, Esc brings your design back";

    /// <summary>Begins the tour on a copy of the design in hand.</summary>
    public static (Model Model, Effect? Effect) Start(Model model)
    {
        OpenDesign here = model.Here;
        if (here is not { Shown: { } shown, IsFresh: true })
        {
            return (model.Tell("the figures are being computed; try again in a moment"), null);
        }

        if (here.Document.HasErrors)
        {
            return (model.Tell("the tour needs all figures: fix the errors in the design's file first"), null);
        }

        OpenDesign copy = new()
        {
            Slot = model.NextSlot, Document = here.Document, Saved = here.Document, Run = 1, ShownRun = 1, Shown = shown, Advised = true,
            CopyOf = here.Title,
        };
        return (Show(
            model with
            {
                Designs = model.Designs.Add(copy), Current = model.Designs.Count, NextSlot = model.NextSlot + 1, Page = null, Editing = null,
                Tour = Tour.Of(model, shown),
            },
            0), null);
    }

    /// <summary>What a message does during the tour; null where it means what it means everywhere, as news from the background do.</summary>
    public static (Model Model, Effect? Effect)? Hear(Model model, Tour tour, int step, Message message) => message switch
    {
        // Read before the tour began: the tour is over.
        Message.Opened => Updater.Next(Leave(model, tour).Model, message),
        _ when model.Page is not null => null,
        Message.Pressed pressed when model.TooSmall => KeyMap.Meaning(pressed.Key) == Act.Save ? (model, null) : null,
        Message.Pressed pressed => Press(model with { Status = "", Complaint = null }, tour, step, pressed.Key),
        Message.Do act => act.Act == Act.Undo || act.Act.IsOfTheTerminal ? null
            : act.Act == Act.Back ? Leave(model, tour)
            : act.Act == Act.Quit ? Files.AskQuit(model)
            : (model.Tell(HowTo), null),
        Message.Pasted or Message.GoTo or Message.PickField or Message.PickResult or Message.CursorAt => (model.Tell(HowTo), null),
        Message.Scrolled => (model, null),
        _ => null,
    };

    private static (Model Model, Effect? Effect)? Press(Model model, Tour tour, int step, Keystroke key) => key switch
    {
        { Key: KeyName.Letter, Letter: ' ' } or { Key: KeyName.Enter } => step + 1 < tour.Steps.Count
            ? (Show(AfreshFor(model, tour), step + 1), null)
            : Leave(model, tour),
        { Key: KeyName.Backspace } => (Show(AfreshFor(model, tour), Math.Max(0, step - 1)), null),
        { Key: KeyName.Escape } => Leave(model, tour),
        { Key: KeyName.Letter, Letter: 'j' or 'J', Ctrl: false } => DoStep(model, tour.Steps[step]),
        { Key: KeyName.Letter, Letter: 'u' or 'U', Ctrl: false } => Changes.UndoOne(model),
        { Key: KeyName.Letter, Letter: 'c' or 'q', Ctrl: true } => Files.AskQuit(model),
        _ when KeyMap.MeaningWhileTyping(key) is { IsOfTheTerminal: true } => null,
        _ => (model.Tell(HowTo), null),
    };

    /// <summary>Gives the user's design back, where the user was.</summary>
    private static (Model Model, Effect? Effect) Leave(Model model, Tour tour)
    {
        Model back = tour.From.Back(model with
        {
            Designs = model.Designs.RemoveAll(design => design.CopyOf is not null), TourStep = null, Tour = null, Page = null, Editing = null,
            Complaint = null,
        });
        back = back with { Current = Math.Max(0, back.Designs.FindIndex(design => design.Slot == tour.Slot)), Status = "your design as you left it; t starts the tour again" };

        // What was being looked for when the tour began was broken off by its changes.
        OpenDesign own = back.Here;
        return (back, own is { IsFresh: true, Advised: true } ? null : Effect.Evaluate.Of(own.Slot, own.Run, own.Document));
    }

    /// <summary>The model with the copy as the user's design is.</summary>
    private static Model AfreshFor(Model model, Tour tour)
    {
        OpenDesign own = model.Designs.Find(design => design.Slot == tour.Slot)!;
        return model.WithDesign(model.Here.Slot, copy => copy with
        {
            Document = own.Document, Undo = [], Redo = [], Before = null, Shown = own.Shown, Run = copy.Run + 1, ShownRun = copy.Run + 1,
        });
    }

    private static Model Show(Model model, int step)
    {
        TourStep shown = model.Tour!.Steps[step];
        Model there = Whereabouts.GoTo(model, shown.Place) with { TourStep = step };
        int row = shown.Field.Length == 0
            ? 0
            : Math.Max(0, Whereabouts.FormOf(there).ToList().FindIndex(one => one.Field.Key == shown.Field));
        int result = Math.Max(0, Whereabouts.ResultsOf(there).ToList().FindIndex(one => one.Id == shown.Result));
        return there with { FieldRow = row, ResultRow = result };
    }

    private static (Model, Effect?) DoStep(Model model, TourStep step)
    {
        if (step.Field.Length == 0 || DesignFields.Find(model.Design, step.Field) is not { } field)
        {
            return (model.Tell("nothing to change in this step; Space goes on"), null);
        }

        return model.Here.Undo.IsEmpty
            ? Changes.SetValue(model, field, step.Try)
            : (model.Tell("already done; u undoes it, Space goes on"), null);
    }
}
