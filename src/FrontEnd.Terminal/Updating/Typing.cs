using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>Typing into a field: beginning, each key, a pasted text, keeping what was typed.</summary>
internal static class Typing
{
    /// <summary>True for a key that begins typing by itself.</summary>
    public static bool Begins(Keystroke key) =>
        key is { Key: KeyName.Letter, Alt: false, Ctrl: false } && (char.IsAsciiDigit(key.Letter) || key.Letter is '.' or '"');

    /// <summary>Begins typing into the field in hand, or opens the list of what it can be.</summary>
    /// <param name="first">What is typed already; null for the value as it is.</param>
    public static (Model Model, Effect? Effect) Begin(Model model, string? first)
    {
        if (Whereabouts.FieldInHand(model) is not { } row)
        {
            return (model, null);
        }

        if (first is null && row.Field.Kind is FieldKind.Choice or FieldKind.Flag or FieldKind.Card)
        {
            return (model with { Page = ChoosePage.For(model, row.Field) }, null);
        }

        string text = FormRow.Said(row.Field, model.Here.Document);
        FieldEditor editor = new(row.Field.Key, Line.Of(text), null);
        Line begun = first is null or "" ? new Line("", 0, false) : Line.Of("").Insert(first);
        return (model with { Editing = first is null ? editor : editor.With(begun, row.Field) }, null);
    }

    /// <summary>What a key does while a field is typed in.</summary>
    public static (Model Model, Effect? Effect) Press(Model model, FieldEditor editor, Keystroke key)
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
                return kept.Editing is null && key.Key is KeyName.Up or KeyName.Down
                    ? (Whereabouts.Step(kept, key.Key == KeyName.Up ? -1 : +1), effect)
                    : (kept, effect);
            case { Key: KeyName.Letter, Ctrl: true, Letter: 'c' }:
                return (model.Tell($"copied {editor.Line.Text}"), new Effect.Copy(editor.Line.Text));
            default:
                if (key.Ctrl && key.Letter is 'a' or 'u')
                {
                    break;
                }

                if (KeyMap.MeaningWhileTyping(key) is { } act)
                {
                    // Leaving a field by a command keeps what is typed where it will do, and drops it where it will not.
                    (Model left, Effect? change) = editor.Problem is null
                        ? Keep(model, field, editor.Line.Text)
                        : (model with { Editing = null }, null);
                    (Model next, Effect? then) = act.Perform(left with { Editing = null });
                    return (next, change is null ? then : then is null ? change : new Effect.Several([change, then]));
                }

                break;
        }

        return (model with { Editing = editor.With(editor.Line.Press(key), field) }, null);
    }

    /// <summary>Puts a pasted text into what is being typed. Where nothing is, a value for the field in hand is checked and asked about.</summary>
    /// <param name="text">Of its lines the first that is not blank counts: a value, and a file's name, is one line.</param>
    public static (Model Model, Effect? Effect) Paste(Model model, string text)
    {
        List<string> lines = [.. text.Split('\n', '\r').Select(one => one.Trim()).Where(one => one.Length > 0)];
        if (lines is not [var line, ..] || model.TooSmall)
        {
            return (model.Tell("nothing was pasted that could be used"), null);
        }

        if (line.Length > Line.Most)
        {
            return (model.Tell($"the pasted text is longer than the {Line.Most} characters that a value may have; nothing was inserted"), null);
        }

        (Model pasted, Effect? effect) = PasteLine(model, line);
        return lines.Count > 1 && !ReferenceEquals(pasted, model) && pasted.Status.Length == 0
            ? (pasted.Tell($"{lines.Count} lines were pasted; only the first is used"), effect)
            : (pasted, effect);
    }

    private static (Model Model, Effect? Effect) PasteLine(Model model, string line)
    {
        if (model.Editing is { } editor && DesignFields.Find(model.Design, editor.Key) is { } typed)
        {
            return (model with { Editing = editor.With(editor.Line.Insert(line), typed) }, null);
        }

        if (model.Page is { } page)
        {
            return page.Paste(model, line) ?? (model.Tell("nothing can be pasted here; Esc goes back"), null);
        }

        if (model.OnResults || Whereabouts.FieldInHand(model) is not { } row)
        {
            return (model.Tell("a pasted value goes to the selected field; Tab goes to the fields"), null);
        }

        string now = FieldText.Format(row.Field, row.Field.Get(model.Design));
        EditResult edit = Edits.Set(model.Here.Document, row.Field, line);
        return edit.Finding is { } finding ? (model.Complain(finding), null)
            : line == now ? (model.Tell($"{row.Label} is already {now}"), null)
            : (model with
            {
                Page = new QuestionPage(
                    $"{row.Label} is {(now.Length == 0 ? "not set" : Shortened(now))}. Set it to the pasted value, {Shortened(line)}?",
                    [new('y', "yes, set it; u undoes it", new Message.SetField(row.Field.Key, line)),
                        new('n', "no, leave it as it is", new Message.Dismiss())]),
            }, null);
    }

    private static string Shortened(string text)
    {
        const int Most = 100;
        return text.Length <= Most ? text : $"{text[..(Most - 1)]}…";
    }

    /// <summary>Puts a typed text into the design; where it will not do, the editor stays open and says why.</summary>
    public static (Model Model, Effect? Effect) Keep(Model model, Field<Design> field, string text)
    {
        if (Errors.InPlaceOfValue(model.Here.Document, field.Key) is null && string.Equals(text.Trim(), FieldText.Format(field, field.Get(model.Design)), StringComparison.Ordinal))
        {
            return (model with { Editing = null }, null);
        }

        EditResult edit = Edits.Set(model.Here.Document, field, text);
        if (edit.Finding is { } finding)
        {
            FieldEditor open = new(field.Key, model.Editing?.Line ?? Line.Of(text), finding);
            return ((model with { Editing = open }).Complain(finding), null);
        }

        return Changes.SetDone(model, field, edit, new Message.SetField(field.Key, text));
    }

    /// <summary>A click on a field: once takes it in hand, once more begins typing.</summary>
    public static (Model Model, Effect? Effect) PickField(Model model, int row)
    {
        Model picked = model with { FieldRow = row, OnResults = false, Editing = null, Status = "", Complaint = null };
        return model.FieldRow == row && !model.OnResults && model.Editing is null ? Begin(picked, null) : (picked, null);
    }
}
