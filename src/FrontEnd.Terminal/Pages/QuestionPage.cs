namespace FrontEnd.Terminal;

/// <summary>A question with a few answers, each on its letter.</summary>
public sealed record QuestionPage(string Question, IReadOnlyList<Answer> Answers) : Page
{
    /// <summary>True where the key that asked answers as well: nothing would be lost.</summary>
    public bool AskedAgainIsYes { get; init; }

    /// <inheritdoc/>
    public override bool IsOverTheForm => true;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [KeyHint.Back];

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        if (key.Key == KeyName.Escape)
        {
            return Close(model);
        }

        char letter = char.ToLowerInvariant(key.Letter);
        return key is { Key: KeyName.Letter, Ctrl: false } ? Pick(model, Answers.ToList().FindIndex(answer => answer.Letter == letter))
            : AskedAgainIsYes && KeyMap.Meaning(key) is { } act && (act == Act.Quit || act == Act.Copy) ? Pick(model, 0)
            : (model, null);
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect) Pick(Model model, int row) =>
        0 <= row && row < Answers.Count ? Updater.Update(model with { Page = null }, Answers[row].Message) : (model, null);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        int width = Math.Min(frame.Width - 4, 64);
        IReadOnlyList<string> lines = canvas.Wrap(Question, width - 4);
        int height = lines.Count + Answers.Count + 3;
        int left = (frame.Width - width) / 2, top = Math.Max(frame.Top, frame.Top + ((frame.Rows - height) / 2));
        canvas.Clear(left, top, width, height);
        string edge = "+" + new string('-', width - 2) + "+";
        canvas.Put(left, top, edge, Ink.Dim);
        canvas.Put(left, top + height - 1, edge, Ink.Dim);
        for (int y = top + 1; y < top + height - 1; y++)
        {
            canvas.Put(left, y, "|", Ink.Dim);
            canvas.Put(left + width - 1, y, "|", Ink.Dim);
        }

        int row = top + 1;
        foreach (string line in lines)
        {
            canvas.Put(left + 2, row++, line, Ink.Strong);
        }

        for (int i = 0; i < Answers.Count; i++)
        {
            canvas.Put(left + 2, row, Answers[i].Letter.ToString(), Ink.Key);
            canvas.Put(left + 4, row, canvas.Fit(Answers[i].Words, width - 6));
            canvas.Zone(left, row++, width, 1, new Message.PickChoice(i));
        }
    }

    /// <summary>The question in a window too small for the form.</summary>
    public string InFewRows => $"{Question}\n{string.Join('\n', Answers.Select(answer => $"{answer.Letter}: {answer.Words}"))}";
}

/// <summary>An answer to a question: its letter, its words, what it does.</summary>
public sealed record Answer(char Letter, string Words, Message Message);
