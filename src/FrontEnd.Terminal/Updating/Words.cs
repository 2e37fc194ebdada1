using System.Collections.Immutable;

namespace FrontEnd.Terminal;

/// <summary>A word that was typed where each letter is a command.</summary>
internal static class Words
{
    /// <summary>A letter in the middle of what looks like a word, where it would answer a question, save, end or remove: it does nothing, and says so; null where it may act.</summary>
    public static Model? Held(Model model, Keystroke key)
    {
        if (model.Page is QuestionPage question)
        {
            return question.Answers.Any(answer => answer.Letter == char.ToLowerInvariant(key.Letter))
                ? model.Tell($"{key.Letter}: no answer, as it came in the middle of what looks like a word; press it again if it is one")
                : null;
        }

        // A page with a use of its own for the letter has it.
        return model.Editing is null && KeyMap.Meaning(key) is { StandsAlone: true } act && (model.TooSmall || model.Page?.Press(model, key) is null)
            ? model.Tell($"{key.Letter}: not taken for \"{act.Does}\", as it came in the middle of what looks like a word; press it again if you mean it")
            : null;
    }

    /// <summary>The model as it was before the word, but for news from the background; says what happened.</summary>
    public static (Model Model, Effect? Effect) TakeBack(Model model, Message.Word word)
    {
        Model before = word.Before;
        bool saved = before.Here.IsChanged && word.Text.Any(letter => KeyMap.Meaning(Keystroke.Of(letter)) == Act.Save) && !ReferenceEquals(model, before);
        string text = $"\"{word.Text}\" was typed as a word, and here each letter is a command: {(saved ? "it may have saved the design, and nothing else was done" : "nothing was done")}. Enter types into the selected field, ? lists the keys.";

        // A copy that the word opened goes again; a design that it closed, which asks first, cannot come back.
        ImmutableList<OpenDesign> designs = [.. model.Designs.Where(design => before.Designs.Exists(one => one.Slot == design.Slot))];
        if (designs.Count < before.Designs.Count)
        {
            return (model.Tell(text), null);
        }

        Page? page = before.Page is StudyPage { Progress: not null } study && !(model.Page is StudyPage other && other.Number == study.Number)
            ? study with { Progress = null }
            : before.Page;
        Model back = (model with
        {
            Designs = designs, Current = before.Current, PlaceId = before.PlaceId, BlockId = before.BlockId, FieldRow = before.FieldRow,
            ResultRow = before.ResultRow, OnResults = before.OnResults, Editing = null, Page = page, TourStep = before.TourStep, Tour = before.Tour,
        }).Tell(text);
        OpenDesign was = before.Here, now = back.Here;
        return ReferenceEquals(now.Document, was.Document) ? (back, null)
            : Changes.Take(back, now with { Undo = was.Undo, Redo = was.Redo }, was.Document, text);
    }
}
