using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>A file that another program has written since it was read, and that is to be saved: what either says, and what is to be done.</summary>
/// <param name="Slot">The open design.</param>
/// <param name="Path">Its file.</param>
/// <param name="Theirs">What the file says now.</param>
internal sealed record ConflictPage(int Slot, string Path, DesignDocument Theirs) : LinesPage
{
    /// <summary>The choice in hand; the first one writes nothing.</summary>
    public int Selected { get; init; }

    /// <inheritdoc/>
    public override object? Asked => Theirs;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) =>
        [new("up/dn", "choose"), KeyHint.Of(KeyName.Enter, "Enter", "do it"), new("PgUp PgDn", "scroll the differences"), KeyHint.Back];

    /// <inheritdoc/>
    public override string Hint(Model model) => "Nothing has been written yet. Whichever version you give up can be brought back with undo.";

    /// <summary>The page for a save that found another text than it knew of.</summary>
    public static (Model Model, Effect? Effect) Open(Model model, Message.FoundOther found) =>
        model.Here.Slot == found.Slot
            ? Open(model with { Status = "", Complaint = null }, new ConflictPage(found.Slot, found.Path, found.Theirs))
            : (model.Tell($"{found.Path} has changed on disk and was not saved"), null);

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        int count = Choices(model).Count;
        return key.Key switch
        {
            KeyName.Up or KeyName.Down => Show(model, this with { Selected = Math.Clamp(Selected + (key.Key == KeyName.Up ? -1 : 1), 0, count - 1) }),
            KeyName.Enter => Pick(model, Selected),
            KeyName.Escape => Close(model),
            _ => Scrolled(key) is { } line ? Show(model, this with { Scroll = line }) : (model, null),
        };
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect) Pick(Model model, int row) =>
        Choices(model) is var choices && 0 <= row && row < choices.Count ? choices[row].Do(model with { Page = null }) : (model, null);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        PaintHeading(canvas, model, frame);
        List<(string Words, Func<Model, (Model, Effect?)> Do)> choices = Choices(model);
        for (int i = 0; i < choices.Count; i++)
        {
            int y = frame.Top + 1 + i;
            canvas.Put(1, y, i == Selected ? ">" : " ", Ink.Key);
            canvas.Put(3, y, canvas.Fit(choices[i].Words, frame.Width - 4), i == Selected ? Ink.Chosen : Ink.Plain);
            canvas.Zone(0, y, frame.Width, 1, new Message.PickChoice(i));
        }

        Frame below = Below(model, frame);
        IReadOnlyList<Piece[]> lines = Lines(canvas, model, frame);
        int room = below.Rows, first = Math.Clamp(Scroll, 0, Math.Max(0, lines.Count - room));
        for (int i = 0; i < room && first + i < lines.Count; i++)
        {
            foreach (Piece piece in lines[first + i])
            {
                canvas.Put(piece.X, below.Top + i, piece.Text, piece.Ink, piece.Room);
            }
        }

        Drawing.MoreBelow(canvas, frame, lines.Count - first - room);
    }

    /// <inheritdoc/>
    public override int ScrollEnd(Canvas canvas, Model model, Frame frame) =>
        Math.Max(0, Lines(canvas, model, frame).Count - Below(model, frame).Rows);

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame) =>
        canvas.Put(1, frame.Top, canvas.Fit($"{System.IO.Path.GetFileName(Path)} has changed on disk since it was read; nothing is saved yet", frame.Width - 2), Ink.Title);

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame)
    {
        OpenDesign here = model.Here;
        if (Theirs.IsNoDesign)
        {
            string why = Theirs.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error)?.Message ?? "it contains no design";
            return [.. canvas.Wrap($"The file on disk is no longer a design: {why}", frame.Width - 2).Select(line => (Piece[])[new Piece(1, line, Ink.Fail)])];
        }

        Merging merging = Merging.Of(here.Saved, Theirs, here.Document);
        List<Piece[]> lines = [];
        if (Theirs.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) is { } wrong)
        {
            lines.AddRange(canvas.Wrap($"The file on disk has errors: {wrong.Message}", frame.Width - 2).Select(line => (Piece[])[new Piece(1, line, Ink.Fail)]));
        }

        if (merging.Rows.Count == 0)
        {
            lines.AddRange(canvas.Wrap("Both have the same values in every key: only comments or blanks differ.", frame.Width - 2)
                .Select(line => (Piece[])[new Piece(1, line, Ink.Plain)]));
            return lines;
        }

        int value = Math.Max(10, (frame.Width - 4) / 5), key = frame.Width - 4 - (3 * value);
        void Add(string what, string before, string theirs, string mine, Ink ink, Ink left, Ink right) => lines.Add(
        [
            new Piece(1, canvas.Fit(what, key - 1), ink), new Piece(1 + key, canvas.Fit(before, value - 1), Ink.Dim),
            new Piece(1 + key + value, canvas.Fit(theirs, value - 1), left), new Piece(1 + key + (2 * value), canvas.Fit(mine, value), right),
        ]);
        Add("", "was", "on disk", "here", Ink.Strong, Ink.Strong, Ink.Strong);
        foreach (MergeRow row in merging.Rows.OrderBy(row => !(row.TheirsChanged && row.MineChanged)))
        {
            bool both = row is { TheirsChanged: true, MineChanged: true };
            Add((both ? "x " : "  ") + row.Key, Said(row.Before), Said(row.Theirs), Said(row.Mine), both ? Ink.Fail : Ink.Plain,
                row.TheirsChanged ? Ink.Changed : Ink.Dim, row.MineChanged ? Ink.Changed : Ink.Dim);
        }

        if (merging.Collides)
        {
            lines.Add([new Piece(1, canvas.Fit("x: changed in both, so they cannot be merged automatically", frame.Width - 2), Ink.Fail)]);
        }

        return lines;
    }

    private static string Said(string? value) => value switch { null => "absent", "" => "-", _ => value };

    private Frame Below(Model model, Frame frame) => frame with { Top = Math.Min(frame.Bottom, frame.Top + 2 + Choices(model).Count) };

    private List<(string Words, Func<Model, (Model, Effect?)> Do)> Choices(Model model)
    {
        List<(string Words, Func<Model, (Model, Effect?)> Do)> choices = [("back: write nothing", now => (now, null))];
        OpenDesign here = model.Here;
        if (!Theirs.IsNoDesign)
        {
            if (Merging.Of(here.Saved, Theirs, here.Document).Merged is { } merged)
            {
                choices.Add(("merge: save the version on disk with your changes in it", now => Disk.Merge(now, Theirs, merged, Path)));
            }

            choices.Add(("take the version on disk; u brings yours back", now => Disk.TakeFile(now, Theirs)));
        }

        choices.Add((
            "save yours over the version on disk",
            now => (now, new Effect.Save(Slot, Path, now.Here.Document, MayReplace: true) { Known = Theirs.Text, IsKnownUnreadable = Theirs.IsNoDesign })));
        return choices;
    }
}
