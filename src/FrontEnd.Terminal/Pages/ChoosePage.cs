using FrontEnd.Catalogue;
using FrontEnd.Documents;
using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>A list to choose one value of a field from.</summary>
/// <param name="Key">The field's key.</param>
/// <param name="Meaning">What the field means.</param>
internal sealed record ChoosePage(string Key, string Meaning, IReadOnlyList<Choice> Choices) : ListPage
{
    // Electrodes are bought alike and swapped alike; one by one it would be three walks to three lists.
    public static readonly IReadOnlyList<string> ElectrodeCards = [DesignKeys.Electrodes.ActiveCard, DesignKeys.Electrodes.ReferenceCard,
        DesignKeys.Electrodes.GroundCard];

    /// <summary>What a field can be set to, its value now in hand.</summary>
    public static ChoosePage For(Model model, Field<Design> field)
    {
        List<string> words = Words(field);
        string now = FieldText.Format(field, field.Get(model.Design));
        IReadOnlyList<Choice> choices = [
            .. words.Select(word => new Choice(word, field.CardClass is { } cards ? CardFigures.Of(cards, word) : ""))];
        return new ChoosePage(field.Key, field.Meaning, choices) { Selected = Math.Max(0, words.IndexOf(now)) };
    }

    /// <summary>What a field with a list can be set to, in order; empty for one that is typed.</summary>
    public static List<string> Words(Field<Design> field) => field.Kind switch
    {
        FieldKind.Card => [.. DesignDocument.CardNames(field.CardClass!.Value)],
        FieldKind.Flag => ["false", "true"],
        _ => [.. FieldText.Words(field)],
    };

    /// <inheritdoc/>
    public override bool TakesText => true;

    /// <inheritdoc/>
    public override string Hint(Model model)
    {
        if (DesignFields.Find(model.Design, Key) is not { } field)
        {
            return "";
        }

        // A card's figures are longer than its row.
        Choice choice = Choices[Math.Clamp(Selected, 0, Choices.Count - 1)];
        return choice.Note.Length > 0 ? $"{choice.Word}: {choice.Note}" : FormRow.Describe(field, model.Here.Document);
    }

    /// <inheritdoc/>
    protected override int Count => Choices.Count;

    /// <inheritdoc/>
    protected override string Title => $"{Key}: {Meaning}";

    /// <inheritdoc/>
    protected override void PaintRow(Canvas canvas, Frame frame, int row, int y, Ink ink)
    {
        int name = Math.Min(34, Choices.Max(choice => choice.Word.Length) + 2);
        canvas.Put(2, y, canvas.Fit(Choices[row].Word.Length == 0 ? "(none)" : Choices[row].Word, name), ink);
        canvas.Put(2 + name, y, canvas.Fit(Choices[row].Note, frame.Width - name - 3), Ink.Dim);
    }

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect) Take(Model model, int row)
    {
        Model closed = model with { Page = null };
        if (DesignFields.Find(model.Design, Key) is not { } field)
        {
            return (closed, null);
        }

        string word = Choices[row].Word, now = FieldText.Format(field, field.Get(model.Design));
        List<string> alike = [.. ElectrodeCards.Where(key => Card(model.Design, key) == now)];
        return word == now || now.Length == 0 || alike.Count < 2 || !alike.Contains(Key)
            ? Changes.SetValue(closed, field, word)
            : Show(closed, new QuestionPage(
                $"{(alike.Count == 2 ? "Two" : "Three")} electrodes are alike now. Which should be {word}?",
                [
                    new('t', $"this one only: {Key.Split('.')[1]}", new Message.SetCards([Key], word)),
                    new('a', $"all {alike.Count}", new Message.SetCards(alike, word)),
                    new('b', "back", new Message.Dismiss()),
                ]));
    }

    /// <summary>A letter goes to the next word that begins with it.</summary>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key)
    {
        for (int i = 1; key is { Key: KeyName.Letter, Ctrl: false, Alt: false } && i <= Choices.Count; i++)
        {
            int row = (Selected + i) % Choices.Count;
            if (Choices[row].Word.StartsWith(key.Letter.ToString(), StringComparison.OrdinalIgnoreCase))
            {
                return Show(model, this with { Selected = row });
            }
        }

        return (model, null);
    }

    private static string Card(Design design, string key) =>
        DesignFields.IsPresent(design, key) && DesignFields.Find(design, key) is { } field
            ? FieldText.Format(field, field.Get(design))
            : "absent";
}

/// <summary>A word to choose and the figures that matter about it.</summary>
internal sealed record Choice(string Word, string Note);
