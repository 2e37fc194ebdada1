using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Fields;

namespace FrontEnd.App.Terminal;

/// <summary>Typing, choosing, stepping, undoing: everything that changes the design.</summary>
public static partial class Updater
{
    /// <summary>The elements that can be put into a design.</summary>
    private static readonly IReadOnlyList<Insertion> Insertions =
        [.. DesignFields.Lists.SelectMany(list => list.Variants.Select((variant, index) => new Insertion(list.Key, index, variant.Noun)))];

    /// <summary>What stands in a list, in words.</summary>
    public static string ElementsOf(string listKey) => listKey switch
    {
        "stages" => "stages before the converter",
        "digital" => "digital filters",
        _ => listKey,
    };

    private static (Model, Effect?) BeginTyping(Model model, string? first)
    {
        if (FieldInHand(model) is not { } row)
        {
            return (model, null);
        }

        if (first is null && row.Field.Kind is FieldKind.Choice or FieldKind.Flag or FieldKind.Card)
        {
            return (model with { Overlay = ChooseFor(model, row.Field) }, null);
        }

        string text = FieldText.Format(row.Field, row.Field.Get(model.Design));
        FieldEditor editor = new(row.Field.Key, Line.Of(text), null);
        return (model with { Editing = first is null ? editor : editor.With(first.Length == 0 ? new Line("", 0, false) : Line.Of("").Insert(first), row.Field) }, null);
    }

    private static Overlay.Choose ChooseFor(Model model, Field<Design> field)
    {
        List<string> words = Stepping.Words(field);
        string now = FieldText.Format(field, field.Get(model.Design));
        IReadOnlyList<Choice> choices = [.. words.Select(word => new Choice(word, field.CardClass is { } cards ? Cards.Figures(cards, word) : ""))];
        return new Overlay.Choose(field.Key, field.Meaning, choices, Math.Max(0, words.IndexOf(now)));
    }

    private static (Model, Effect?) TypeInField(Model model, FieldEditor editor, Keystroke key)
    {
        if (DesignFields.Find(model.Design, editor.Key) is not { } field)
        {
            return (model with { Editing = null }, null);
        }

        switch (key)
        {
            case { Key: KeyName.Escape }:
                return (model with { Editing = null }, null);
            case { Key: KeyName.Enter or KeyName.Tab or KeyName.Up or KeyName.Down }:
                (Model kept, Effect? effect) = Keep(model, field, editor.Line.Text);
                return kept.Editing is null && key.Key is KeyName.Up or KeyName.Down && kept.Editing is null ? (Step(kept, key.Key == KeyName.Up ? -1 : +1), effect) : (kept, effect);
            case { Key: KeyName.Letter, Ctrl: true, Letter: 'c' }:
                return (Tell(model, $"copied {editor.Line.Text}"), new Effect.Copy(editor.Line.Text));
            default:
                if (key.Ctrl && key.Letter is 'a' or 'u')
                {
                    break;
                }

                if (KeyMap.MeaningWhileTyping(key) is { } act)
                {
                    // Leaving a field by a command keeps what is typed where it will do, and drops it where it will not.
                    (Model left, Effect? change) = editor.Problem is null ? Keep(model, field, editor.Line.Text) : (model with { Editing = null }, null);
                    (Model next, Effect? then) = Perform(left with { Editing = null }, act);
                    return (next, change is null ? then : then is null ? change : new Effect.Several([change, then]));
                }

                break;
        }

        return (model with { Editing = editor.With(editor.Line.Press(key), field) }, null);
    }

    private static Model Paste(Model model, string text)
    {
        if (model.Editing is { } editor && DesignFields.Find(model.Design, editor.Key) is { } field)
        {
            return model with { Editing = editor.With(editor.Line.Insert(text), field) };
        }

        if (model.Overlay is Overlay.FileName file)
        {
            return model with { Overlay = file with { Line = file.Line.Insert(text), Selected = -1 } };
        }

        return model.Overlay is null && BeginTyping(model, "").Item1 is { Editing: not null } begun ? Paste(begun, text) : model;
    }

    /// <summary>Puts a typed text into the design; where it will not do, the editor stays open and says why.</summary>
    private static (Model, Effect?) Keep(Model model, Field<Design> field, string text)
    {
        if (string.Equals(text.Trim(), FieldText.Format(field, field.Get(model.Design)), StringComparison.Ordinal))
        {
            return (model with { Editing = null }, null);
        }

        EditResult edit = Edits.Set(model.Here.Document, field, text);
        if (edit.Finding is { } finding)
        {
            return (Complain(model with { Editing = new FieldEditor(field.Key, model.Editing?.Line ?? Line.Of(text), finding) }, finding), null);
        }

        return SetDone(model, field, edit.Document);
    }

    private static (Model, Effect?) SetValue(Model model, Field<Design> field, string text)
    {
        EditResult edit = Edits.Set(model.Here.Document, field, text);
        return edit.Finding is { } finding ? (Complain(model, finding), null) : SetDone(model, field, edit.Document);
    }

    private static (Model, Effect?) SetDone(Model model, Field<Design> field, DesignDocument document)
    {
        string before = FieldText.Format(field, field.Get(model.Design));
        string after = DesignFields.Find(document.Design, field.Key) is { } there ? FieldText.Format(there, there.Get(document.Design)) : "";
        string label = $"{field.Key} {(before.Length == 0 ? "none" : before)} -> {(after.Length == 0 ? "none" : after)}";
        return Change(model with { Editing = null }, document, label, field.Kind == FieldKind.Card ? $"{label}: the card's values hold; u undoes it" : "");
    }

    /// <summary>Takes a new document in hand, one step of undo.</summary>
    private static (Model, Effect?) Change(Model model, DesignDocument document, string label, string status)
    {
        OpenDesign here = model.Here;
        if (string.Equals(document.Text, here.Document.Text, StringComparison.Ordinal))
        {
            return (model with { Status = status }, null);
        }

        return Take(model, here with { Undo = here.Undo.Push(new Past(here.Document, label)), Redo = [] }, document, status);
    }

    private static (Model, Effect?) Take(Model model, OpenDesign here, DesignDocument document, string status)
    {
        OpenDesign next = here with { Document = document, Run = here.Run + 1 };
        Model changed = model with { Designs = model.Designs.SetItem(model.Current, next), Status = status, Complaint = null };

        // A stage may be gone: the place in hand must be one that there is.
        changed = changed with { PlaceId = Place.Find(document.Design, changed.PlaceId).Id, BlockId = Place.Find(document.Design, changed.BlockId).Id };
        changed = changed with { FieldRow = Math.Clamp(changed.FieldRow, 0, Math.Max(0, FormOf(changed).Count - 1)) };
        return (changed, new Effect.Evaluate(next.Slot, next.Run, document.Design));
    }

    private static (Model, Effect?) UndoOne(Model model)
    {
        OpenDesign here = model.Here;
        if (here.Undo.IsEmpty)
        {
            return (Tell(model, "nothing to undo"), null);
        }

        Past past = here.Undo.Peek();
        return Take(model with { Editing = null, Overlay = null }, here with { Undo = here.Undo.Pop(), Redo = here.Redo.Push(new Past(here.Document, past.Label)) }, past.Document, $"undone: {past.Label}");
    }

    private static (Model, Effect?) RedoOne(Model model)
    {
        OpenDesign here = model.Here;
        if (here.Redo.IsEmpty)
        {
            return (Tell(model, "nothing to redo"), null);
        }

        Past past = here.Redo.Peek();
        return Take(model with { Editing = null, Overlay = null }, here with { Redo = here.Redo.Pop(), Undo = here.Undo.Push(new Past(here.Document, past.Label)) }, past.Document, $"done again: {past.Label}");
    }

    private static (Model, Effect?) StepValue(Model model, bool up)
    {
        if (model.OnResults || FieldInHand(model) is not { } row)
        {
            return (Tell(model, "+ and - change the field in hand; Tab goes to the fields"), null);
        }

        return Stepping.Next(row.Field, model.Design, up) is { } text
            ? SetValue(model, row.Field, text)
            : (Tell(model, $"{row.Label}: nothing further {(up ? "up" : "down")}; Enter types a value"), null);
    }

    private static (Model, Effect?) ToDefault(Model model)
    {
        if (model.OnResults || FieldInHand(model) is not { } row)
        {
            return (model, null);
        }

        EditResult edit = model.Here.Document.Clear(row.Field.Key);
        return edit.Finding is { } finding ? (Complain(model, finding), null)
            : ReferenceEquals(edit.Document, model.Here.Document) ? (Tell(model, $"{row.Label} is at its default already"), null)
            : SetDone(model, row.Field, edit.Document);
    }

    private static (Model, Effect?) ToSaved(Model model)
    {
        if (model.OnResults || FieldInHand(model) is not { } row || DesignFields.Find(model.Here.Saved.Design, row.Field.Key) is not { } saved)
        {
            return (model, null);
        }

        OpenDesign here = model.Here;
        string wanted = FieldText.Format(saved, saved.Get(here.Saved.Design));
        int list = row.Field.Key.IndexOf('[');
        if (Edits.States(here.Saved, row.Field.Key) || (list > 0 && !Edits.States(here.Saved, row.Field.Key[..(list + 1)])))
        {
            return Back(Edits.Set(here.Document, row.Field, wanted));
        }

        // What the saved file does not state follows a card or the default again: it must not be pinned to today's value.
        // Inside a shared line a key cannot be taken out alone; there the saved value is written.
        return Edits.States(here.Document, row.Field.Key) ? Back(here.Document.Clear(row.Field.Key) is { Finding: null } cleared ? cleared : Edits.Set(here.Document, row.Field, wanted))
            : (Tell(model, wanted == FieldText.Format(row.Field, row.Field.Get(model.Design)) ? $"{row.Label} is at its saved value already" : $"the saved file does not state {row.Label}: it follows its card or another field; b there brings it back"), null);

        (Model, Effect?) Back(EditResult edit) => edit.Finding is { } finding ? (Complain(model, finding), null) : SetDone(model, row.Field, Edits.AsSaved(edit.Document, here.Saved, row.Field.Key));
    }

    private static (Model, Effect?) PickChoice(Model model, int row) => model.Overlay switch
    {
        Overlay.Choose choose when 0 <= row && row < choose.Choices.Count => Chosen(model, choose, row),
        Overlay.More when 0 <= row && row < KeyMap.More.Count => Perform(model with { Overlay = null }, KeyMap.More[row].Act),
        Overlay.Insert insert when 0 <= row && row < insert.Choices.Count => InsertElement(model, insert.Choices[row]),
        Overlay.FileName file when file.Entries is { } entries && 0 <= row && row < entries.Count => FileChosen(model, file, entries[row]),
        Overlay.Ask ask when 0 <= row && row < ask.Answers.Count => Update(model with { Overlay = null }, ask.Answers[row].Message),
        _ => (model, null),
    };

    private static (Model, Effect?) Chosen(Model model, Overlay.Choose choose, int row)
    {
        Model closed = model with { Overlay = null };
        if (DesignFields.Find(model.Design, choose.Key) is not { } field)
        {
            return (closed, null);
        }

        string word = choose.Choices[row].Word, now = FieldText.Format(field, field.Get(model.Design));
        List<string> alike = [.. ElectrodeCards.Where(key => Card(model.Design, key) == now)];
        return word == now || now.Length == 0 || alike.Count < 2 || !alike.Contains(choose.Key) ? SetValue(closed, field, word) : (closed with
        {
            Overlay = new Overlay.Ask($"{(alike.Count == 2 ? "Two" : "Three")} electrodes are alike now. Which are to be {word}?",
            [
                new('a', $"all {alike.Count}", new Message.SetCards(alike, word)), new('t', $"this one only: {choose.Key.Split('.')[1]}", new Message.SetCards([choose.Key], word)), new('b', "back", new Message.Dismiss()),
            ]),
        }, null);
    }

    // Electrodes are bought alike and swapped alike; one by one it would be three walks to three lists.
    private static readonly string[] ElectrodeCards = ["electrodes.active.card", "electrodes.reference.card", "electrodes.ground.card"];

    private static string Card(Design design, string key) => DesignFields.IsPresent(design, key) && DesignFields.Find(design, key) is { } field ? FieldText.Format(field, field.Get(design)) : "absent";

    private static (Model, Effect?) SetCards(Model model, Message.SetCards set)
    {
        EditResult edit = new(model.Here.Document, null);
        foreach (string key in set.Keys)
        {
            if (edit.Finding is null && DesignFields.Find(edit.Document.Design, key) is { } field)
            {
                edit = Edits.Set(edit.Document, field, set.Card);
            }
        }

        return edit.Finding is { } finding
            ? (Complain(model, finding), null)
            : Change(model, edit.Document, $"{string.Join(", ", set.Keys)} -> {set.Card}", $"{set.Card}: {(set.Keys.Count == 1 ? "its values hold" : $"{set.Keys.Count} electrodes")}; u undoes it");
    }

    private static (Model, Effect?) InsertElement(Model model, Insertion insertion)
    {
        EditResult edit = Edits.Insert(model.Here.Document, insertion);
        if (edit.Finding is { } finding)
        {
            return (Complain(model with { Overlay = null }, finding), null);
        }

        (Model next, Effect? effect) = Change(model with { Overlay = null }, edit.Document, $"{insertion.Name} put in", $"{insertion.Name} put in, last of the {ElementsOf(insertion.ListKey)}; < moves it forward, u takes it out");

        // To the new element's first field.
        int last = DesignFields.Lists.First(list => list.Key == insertion.ListKey).Count(next.Design);
        return (AtField(next, $"{insertion.ListKey}[{last}]."), effect);
    }

    /// <summary>The model at the first field whose key begins like this, here or wherever it stands.</summary>
    private static Model AtField(Model model, string beginning)
    {
        foreach (Place place in Place.Blocks(model.Design).Concat(Place.Views).OrderBy(place => place.Id != model.PlaceId))
        {
            int row = FormRow.Of(model.Design, place).ToList().FindIndex(one => one.Field.Key.StartsWith(beginning, StringComparison.Ordinal));
            if (0 <= row)
            {
                return GoTo(model, place.Id) with { FieldRow = row, Status = model.Status };
            }
        }

        return model;
    }

    /// <summary>The element of a list whose field is in hand: the list, its number from 0, and the rest of the field's key.</summary>
    private static (DesignList List, int Index, string Field)? ElementInHand(Model model)
    {
        string key = model.OnResults ? "" : FieldInHand(model)?.Field.Key ?? "";
        int open = key.IndexOf('['), close = key.IndexOf(']');
        return open > 0 && int.TryParse(key.AsSpan(open + 1, close - open - 1), out int number)
            ? (DesignFields.Lists.First(list => list.Key == key[..open]), number - 1, key[(close + 1)..])
            : null;
    }

    private static (Model, Effect?) MoveElement(Model model, int by)
    {
        if (ElementInHand(model) is not var (list, index, field))
        {
            return (Tell(model, "< and > move a gain stage, a filter, a band or an interferer: go to one of its fields first"), null);
        }

        string name = list.NameOf(list.Elements(model.Design)[index]);
        if (index + by < 0 || list.Count(model.Design) <= index + by)
        {
            return (Tell(model, $"{name} is the {(by < 0 ? "first" : "last")} already"), null);
        }

        EditResult edit = Edits.Move(model.Here.Document, list, index, by);
        if (edit.Finding is { } finding)
        {
            return (Complain(model, finding), null);
        }

        string label = $"{name} moved {(by < 0 ? "nearer the scalp" : "nearer the samples")}";
        (Model next, Effect? effect) = Change(model, edit.Document, label, $"{label}; u moves it back");
        return (AtField(next, $"{list.Key}[{index + by + 1}]{field}"), effect);
    }

    private static (Model, Effect?) RemoveElement(Model model)
    {
        if (ElementInHand(model) is not var (list, index, _))
        {
            return (Tell(model, "x removes a gain stage, a filter, a band or an interferer: go to one of its fields first"), null);
        }

        string name = list.NameOf(list.Elements(model.Design)[index]);
        EditResult edit = Edits.Remove(model.Here.Document, list, index);
        return edit.Finding is { } finding ? (Complain(model, finding), null) : Change(model, edit.Document, $"{name} removed", $"{name} removed; u brings it back");
    }
}
