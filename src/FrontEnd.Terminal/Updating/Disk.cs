using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>What other programs do to the files of an open design: told, and taken over when asked for; never by itself.</summary>
internal static class Disk
{
    /// <summary>Has cards read that an edit names, so that it can be made again.</summary>
    public static (Model Model, Effect? Effect) AskForCards(Model model, IReadOnlyList<string> names, Message again) =>
        ((model with { Editing = null }).Tell($"reading {string.Join(", ", names)}"), new Effect.ReadCards(
            model.Here.Slot, model.Here.Document.Cards, names, again));

    /// <summary>Makes an edit once more, with the cards that it asked for; where it is refused all the same, nothing of them
    /// stays.</summary>
    public static (Model, Effect?) EditAgain(Model model, Message.CardsRead read)
    {
        OpenDesign here = model.Here;
        if (here.Slot != read.Slot)
        {
            return (model, null);
        }

        DesignDocument with = here.Document.WithCards(here.Document.Cards.And(read.Cards));
        (Model next, Effect? effect) = Updater.Next(
            model.WithDesign(read.Slot, design => design with { Document = with }) with { Status = "" }, read.Again);
        return ReferenceEquals(next.Here.Document, with)
            ? (next.WithDesign(read.Slot, design => design with { Document = here.Document }), effect)
            : (next, effect);
    }

    /// <summary>Takes note of what stands on the disk, and says what is new.</summary>
    public static Model Seen(Model model, Message.SeenOnDisk seen)
    {
        if (model.Designs.Find(design => design.Slot == seen.Slot && design.Path == seen.Path) is not { } before
            || !ReferenceEquals(before.Saved, seen.Known))
        {
            return model;
        }

        OpenDesign after = before with { FileOnDisk = seen.File, CardsOnDisk = seen.Cards,
            IsGone = seen is { Path: not null, File: null } };
        if (News(after) is not { } news)
        {
            return News(before) is null ? model : model.WithDesign(seen.Slot, _ => after);
        }

        Model next = model.WithDesign(seen.Slot, _ => after);
        bool told = News(before) == news && before.FileOnDisk?.Text == after.FileOnDisk?.Text;
        return told ? next : next.Tell(model.Here.Slot == seen.Slot ? news : $"{after.Title}: {news}");
    }

    /// <summary>What is to be said about a design's files on the disk; null for nothing.</summary>
    public static string? News(OpenDesign design)
    {
        IReadOnlyList<string> cards = design.CardsChanged;
        string what = string.Join(" and ", (string[])
        [
            .. design.FileChanged ? ["the design's file"] : Array.Empty<string>(),
            .. cards.Count > 0 ? [$"{(cards.Count == 1 ? "the card" : "the cards")} {string.Join(", ", cards)}"] : Array.Empty<string>(),
        ]);
        IReadOnlyList<string> gone = design.CardsGone;
        return design.FileOnDisk is { IsNoDesign: true } && design.FileChanged
            ? "the design's file on disk is no longer a design; what you have here is kept, and w asks before it writes"
            : design.IsGone ? "the design's file is gone from the disk; w writes it again"
            : what.Length == 0 && gone.Count > 0
                ? $"{(gone.Count == 1 ? "the card" : "the cards")} {string.Join(", ", gone)} {(gone.Count == 1 ? "is" : "are")} gone from the disk; the figures are still those with {(gone.Count == 1 ? "it" : "them")}"
            : what.Length == 0 ? null
            : $"changed on disk: {what}. The figures are still the old ones; ! takes {(cards.Count + (design.FileChanged ? 1 : 0) == 1 ? "it" : "them")} over"
                + (design is { FileChanged: true, IsChanged: true } ? ", and u brings your changes back; w shows both" : "");
    }

    /// <summary>Takes note of who else has the designs open.</summary>
    public static Model Elsewhere(Model model, IReadOnlyDictionary<int, int> processes)
    {
        Model next = model;
        foreach (OpenDesign design in model.Designs)
        {
            int? now = processes.TryGetValue(design.Slot, out int process) ? process : null;
            if (now == design.Elsewhere)
            {
                continue;
            }

            next = next.WithDesign(design.Slot, one => one with { Elsewhere = now });
            next = now is null ? next.Tell($"{design.Title} is now open only here")
                : next.Tell($"{design.Title} is also open in another frontend (process {process}): each is told when the other saves");
        }

        return next;
    }

    /// <summary>Takes a file over as it was found, one step of undo.</summary>
    public static (Model Model, Effect? Effect) TakeFile(Model model, DesignDocument theirs) =>
        TakeOver(model.WithDesign(model.Here.Slot, design => design with { FileOnDisk = theirs, IsGone = false }));

    /// <summary>Takes a merged document in hand, one step of undo, and has it saved.</summary>
    /// <param name="model">The interface as it stands.</param>
    /// <param name="theirs">What the file says.</param>
    /// <param name="merged">The same with one's own changes.</param>
    /// <param name="path">The file.</param>
    public static (Model Model, Effect? Effect) Merge(Model model, DesignDocument theirs, DesignDocument merged, string path)
    {
        OpenDesign here = model.Here;
        OpenDesign taken = here with
        {
            Undo = here.Undo.Push(new Past(here.Document, "merged with the file as it was on disk")), Redo = [], Saved = theirs, SavedShown = null,
            FileOnDisk = null,
        };
        (Model next, Effect? effect) = Changes.Take(model with { Editing = null, Page = null }, taken, merged, "");
        Effect save = new Effect.Save(here.Slot, path, merged, MayReplace: true) { Known = theirs.Text };
        return (next, effect is null ? save : new Effect.Several([effect, save]));
    }

    /// <summary>Takes over what has changed on disk, one step of undo.</summary>
    public static (Model Model, Effect? Effect) TakeOver(Model model)
    {
        OpenDesign here = model.Here;
        IReadOnlyList<string> cards = here.CardsChanged;
        if (here is { FileOnDisk.IsNoDesign: true, FileChanged: true } || here.IsGone || (!here.FileChanged && cards.Count == 0))
        {
            return (model.Tell(News(here) ?? "nothing has changed on disk"), null);
        }

        DesignDocument document = here.FileChanged
            ? here.FileOnDisk!
            : here.Document.WithCards(cards.Aggregate(here.Document.Cards, (held, name) => held.With(name, here.CardsOnDisk!.Of(name)!)));
        string label = here.FileChanged ? "the file as it is on disk" : $"{string.Join(", ", cards)} as on disk";
        OpenDesign taken = here with { Undo = here.Undo.Push(new Past(here.Document, label)), Redo = [] };
        if (here.FileChanged)
        {
            taken = taken with { Saved = document, SavedShown = null };
        }

        (Model next, Effect? effect) = Changes
            .Take(model with { Editing = null, Page = null }, taken, document, $"taken over: {label}; u goes back");
        return (Errors.AtFirst(next), effect);
    }
}
