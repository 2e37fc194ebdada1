namespace FrontEnd.Terminal;

/// <summary>A question as a list of answers with one in hand. The first is the one that loses nothing: Enter pressed by habit does no harm.</summary>
internal sealed record QuestionPage(string Question, IReadOnlyList<Answer> Answers) : Page
{
    /// <summary>The answer in hand.</summary>
    public int Selected { get; init; }

    /// <summary>The question in a window too small for the form.</summary>
    public string InFewRows => $"{Question}\n{string.Join('\n', Answers.Select((answer, row) =>
        $"{(row == Selected ? '>' : ' ')} {answer.Letter}: {answer.Words}"))}";

    /// <inheritdoc/>
    public override bool IsOverTheForm => true;

    /// <inheritdoc/>
    public override object? Asked => Answers;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) =>
    [
        new("up/dn", "choose"), KeyHint.Of(KeyName.Enter, "Enter", "take"),
        .. Answers.Select(answer => KeyHint.Of(answer.Letter, answer.Letter.ToString(), answer.Words.Split([',', ':', ' '])[0])), KeyHint.Back,
    ];

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) => key switch
    {
        { Key: KeyName.Escape } => Close(model),
        { Key: KeyName.Enter } => Pick(model, Selected),
        { Key: KeyName.Tab } => Show(model, this with { Selected = (Selected + (key.Shift ? Answers.Count - 1 : 1)) % Answers.Count }),
        { Key: KeyName.Letter, Ctrl: false } => Pick(model, RowOf(char.ToLowerInvariant(key.Letter))),
        _ => Show(model, this with { Selected = Picked(key, Selected, Answers.Count) ?? Selected }),
    };

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect) Pick(Model model, int row) =>
        0 <= row && row < Answers.Count ? Updater.Update(model with { Page = null }, Answers[row].Message) : (model, null);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        int width = Math.Min(frame.Width - 4, 64);
        IReadOnlyList<string> lines = canvas.Wrap(Question, width - 4);

        // Over the form where that is large enough; a question that is longer takes what it needs of the rest but the title and the key line.
        (int first, int rows) = lines.Count + Answers.Count + 3 <= frame.Rows ? (frame.Top, frame.Rows) : (1, canvas.Height - 2);
        int most = Math.Max(1, rows - Answers.Count - 3);
        if (most < lines.Count)
        {
            lines = [.. lines.Take(most - 1), canvas.Fit(string.Join(' ', lines.Skip(most - 1)), width - 4)];
        }

        int height = lines.Count + Answers.Count + 3;
        int left = (frame.Width - width) / 2, top = Math.Max(first, first + ((rows - height) / 2));
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

        row++;
        for (int i = 0; i < Answers.Count; i++)
        {
            bool inHand = i == Selected;
            canvas.Put(left + 2, row, inHand ? ">" : " ", Ink.Key);
            canvas.Put(left + 4, row, Answers[i].Letter.ToString(), Ink.Key);
            canvas.Put(left + 6, row, canvas.Fit(Answers[i].Words, width - 8), inHand ? Ink.Chosen : Ink.Plain);
            canvas.Zone(left, row++, width, 1, new Message.PickChoice(i));
        }
    }

    /// <summary>The answer of a letter. Every question knows n, the answer that leaves things as they are, and y where one answer alone goes
    /// on: among several, y says nothing.</summary>
    private int RowOf(char letter)
    {
        List<Answer> answers = [.. Answers];
        int own = answers.FindIndex(answer => answer.Letter == letter);
        return 0 <= own ? own
            : letter == 'n' ? answers.FindIndex(answer => answer.Leaves)
            : letter == 'y' && answers.Count(answer => !answer.Leaves) == 1 ? answers.FindIndex(answer => !answer.Leaves)
            : -1;
    }
}

/// <summary>An answer to a question: its letter, its words, what it does.</summary>
internal sealed record Answer(char Letter, string Words, Message Message)
{
    /// <summary>True for the answer that leaves things as they are.</summary>
    public bool Leaves => Message is Message.Dismiss;
}
