using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>Changes to values of the design in hand, each one step of undo.</summary>
internal static class Changes
{
    /// <summary>Sets a field to a text, as if it were typed.</summary>
    public static (Model Model, Effect? Effect) SetValue(Model model, Field<Design> field, string text) =>
        SetDone(model, field, Edits.Set(model.Here.Document, field, text), new Message.SetField(field.Key, text));

    /// <summary>Takes an edit of one field over, or says why it cannot be made.</summary>
    /// <param name="again">The same edit, for when cards must be read first.</param>
    public static (Model Model, Effect? Effect) SetDone(Model model, Field<Design> field, EditResult edit, Message again) =>
        edit.CardsWanted.Count > 0 ? Disk.AskForCards(model, edit.CardsWanted, again)
        : edit.Finding is { } finding ? (model.Complain(finding), null)
        : SetDone(model, field, edit.Document);

    private static (Model Model, Effect? Effect) SetDone(Model model, Field<Design> field, DesignDocument document)
    {
        string before = FormRow.Said(field, model.Here.Document);
        string after = DesignFields.Find(document.Design, field.Key) is { } there
            ? FieldText.Format(there, there.Get(document.Design))
            : "";
        string label = $"{field.Key} {(before.Length == 0 ? "none" : before)} -> {(after.Length == 0 ? "none" : after)}";
        return Change(
            model with { Editing = null }, document, label,
            field.Kind == FieldKind.Card ? $"{label}: the card's values apply; u undoes it" : Others(model.Design, field, before));
    }

    /// <summary>That the other electrodes keep a value which they shared with the one that was changed; "" where they did not.</summary>
    private static string Others(Design design, Field<Design> field, string before)
    {
        if (field.Kind != FieldKind.Quantity || ChoosePage.ElectrodeCards.FirstOrDefault(card => Table(card) == Table(field.Key)) is not { } own)
        {
            return "";
        }

        string[] alike = [.. ChoosePage.ElectrodeCards.Where(card => card != own).Select(Table)
            .Where(table => DesignFields.Find(design, table + field.Key[Table(own).Length..]) is { } other && FieldText.Format(other, other.Get(design)) == before).Select(Last)];
        return alike.Length == 0 ? ""
            : $"only the {Last(Table(own))} electrode changes: {string.Join(" and ", alike)} still {(alike.Length == 1 ? "has" : "have")} {before}; a card sets all that belongs to a kind of contact";

        static string Table(string key) => key[..Math.Max(0, key.LastIndexOf('.'))];

        static string Last(string table) => table[(table.LastIndexOf('.') + 1)..];
    }

    /// <summary>Takes a new document in hand, one step of undo.</summary>
    public static (Model Model, Effect? Effect) Change(Model model, DesignDocument document, string label, string status)
    {
        OpenDesign here = model.Here;
        if (string.Equals(document.Text, here.Document.Text, StringComparison.Ordinal)
            && document.Cards.DifferingFrom(here.Document.Cards).Count == 0)
        {
            return (model with { Status = status }, null);
        }

        return Take(model, here with { Undo = here.Undo.Push(new Past(here.Document, label)), Redo = [] }, document, status);
    }

    /// <summary>Takes a document in hand and asks for its figures.</summary>
    /// <param name="here">The open design with its way back and forth as it is to be.</param>
    public static (Model Model, Effect? Effect) Take(Model model, OpenDesign here, DesignDocument document, string status)
    {
        OpenDesign next = here with { Document = document, Run = here.Run + 1 };
        Model changed = model with { Designs = model.Designs.SetItem(model.Current, next), Status = status, Complaint = null };

        // A stage may be gone: the place in hand must be one that there is.
        changed = changed with
        {
            PlaceId = Place.Find(document.Design, changed.PlaceId).Id, BlockId = Place.Find(document.Design, changed.BlockId).Id,
        };
        changed = changed with { FieldRow = Math.Clamp(changed.FieldRow, 0, Math.Max(0, Whereabouts.FormOf(changed).Count - 1)) };
        return (changed, Effect.Evaluate.Of(next.Slot, next.Run, document));
    }

    /// <summary>Takes the last change back.</summary>
    public static (Model Model, Effect? Effect) UndoOne(Model model)
    {
        OpenDesign here = model.Here;
        if (here.Undo.IsEmpty)
        {
            return (model.Tell("nothing to undo"), null);
        }

        Past past = here.Undo.Peek();
        return Take(
            model with { Editing = null, Page = null },
            here with { Undo = here.Undo.Pop(), Redo = here.Redo.Push(new Past(here.Document, past.Label)) }, past.Document,
            $"undone: {past.Label}");
    }

    /// <summary>Makes the change again that was taken back last.</summary>
    public static (Model Model, Effect? Effect) RedoOne(Model model)
    {
        OpenDesign here = model.Here;
        if (here.Redo.IsEmpty)
        {
            return (model.Tell("nothing to redo"), null);
        }

        Past past = here.Redo.Peek();
        return Take(
            model with { Editing = null, Page = null },
            here with { Redo = here.Redo.Pop(), Undo = here.Undo.Push(new Past(here.Document, past.Label)) }, past.Document,
            $"done again: {past.Label}");
    }

    /// <summary>The field in hand to its next preferred value.</summary>
    public static (Model Model, Effect? Effect) StepValue(Model model, bool up)
    {
        if (model.OnResults || Whereabouts.FieldInHand(model) is not { } row)
        {
            return (model.Tell("+ and - change the selected field; Tab goes to the fields"), null);
        }

        if (Errors.InPlaceOfValue(model.Here.Document, row.Field.Key) is not null)
        {
            return (model.Tell($"{row.Label}: its present value cannot be read; Enter types a value"), null);
        }

        return Stepping.Next(row.Field, model.Design, up, ChoosePage.Words(row.Field)) is { } text
            ? SetValue(model, row.Field, text)
            : (model.Tell($"{row.Label}: nothing further {(up ? "up" : "down")}; Enter types a value"), null);
    }

    /// <summary>The field in hand to its default or its card's value.</summary>
    public static (Model Model, Effect? Effect) ToDefault(Model model)
    {
        if (model.OnResults || Whereabouts.FieldInHand(model) is not { } row)
        {
            return (model, null);
        }

        EditResult edit = model.Here.Document.Clear(row.Field.Key);
        return edit.Finding is { } finding ? (model.Complain(finding), null)
            : ReferenceEquals(edit.Document, model.Here.Document) ? (model.Tell($"{row.Label} is already at its default"), null)
            : SetDone(model, row.Field, edit.Document);
    }

    /// <summary>The field in hand to its value in the saved file.</summary>
    public static (Model Model, Effect? Effect) ToSaved(Model model)
    {
        if (model.OnResults || Whereabouts.FieldInHand(model) is not { } row
            || DesignFields.Find(model.Here.Saved.Design, row.Field.Key) is not { } saved)
        {
            return (model, null);
        }

        OpenDesign here = model.Here;
        if (Errors.Problem(here.Saved, row.Field.Key) is not null)
        {
            return (model.Tell($"{row.Label}: the saved file's value cannot be read; u goes back change by change"), null);
        }

        if (row.Field.Kind == FieldKind.Card)
        {
            // The saved file's card as it was read with the file, should it be held no more.
            here = here with { Document = here.Document.WithCards(here.Document.Cards.And(here.Saved.Cards)) };
        }

        string wanted = FieldText.Format(saved, saved.Get(here.Saved.Design));
        int list = row.Field.Key.IndexOf('[');
        if (Edits.States(here.Saved, row.Field.Key) || (list > 0 && !Edits.States(here.Saved, row.Field.Key[..(list + 1)])))
        {
            return Back(Edits.Set(here.Document, row.Field, wanted));
        }

        // What the saved file does not state follows a card or the default again: it must not be pinned to today's value.
        // Inside a shared line a key cannot be taken out alone; there the saved value is written.
        return Edits.States(here.Document, row.Field.Key) ? Back(
            here.Document.Clear(row.Field.Key) is { Finding: null } cleared ? cleared : Edits.Set(here.Document, row.Field, wanted))
            : (model.Tell(wanted == FieldText.Format(row.Field, row.Field.Get(model.Design))
                ? $"{row.Label} is already at its saved value"
                : $"the saved file does not state {row.Label}: it follows its card or another field; b there brings it back"), null);

        (Model Model, Effect? Effect) Back(EditResult edit) => edit.Finding is { } finding
            ? (model.Complain(finding), null)
            : SetDone(model, row.Field, Edits.AsSaved(edit.Document, here.Saved, row.Field.Key));
    }

    /// <summary>The same card for several parts, one step of undo.</summary>
    public static (Model Model, Effect? Effect) SetCards(Model model, Message.SetCards set)
    {
        EditResult edit = new(model.Here.Document, null);
        foreach (string key in set.Keys)
        {
            if (edit is { Finding: null, CardsWanted.Count: 0 } && DesignFields.Find(edit.Document.Design, key) is { } field)
            {
                edit = Edits.Set(edit.Document, field, set.Card);
            }
        }

        return edit.CardsWanted.Count > 0 ? Disk.AskForCards(model, edit.CardsWanted, set)
            : edit.Finding is { } finding ? (model.Complain(finding), null)
            : Change(
                model, edit.Document, $"{string.Join(", ", set.Keys)} -> {set.Card}",
                $"{set.Card}: {(set.Keys.Count == 1 ? "its values apply" : $"{set.Keys.Count} electrodes")}; u undoes it");
    }
}
