using FrontEnd.Compare;
using FrontEnd.Documents;

namespace FrontEnd.Terminal;

/// <summary>Two designs side by side.</summary>
/// <param name="OtherSlot">The other open design; null for the saved file.</param>
internal sealed record ComparePage(int? OtherSlot) : LinesPage
{
    /// <summary>The way to it: with one design open against its saved file, else against the next one.</summary>
    public static readonly Act Way = new(
        'c', [], "compare two designs; with one open: against its saved file",
        model => Open(model, new ComparePage(
            model.Designs.Count == 1 ? null : model.Designs[(model.Current + 1) % model.Designs.Count].Slot)));

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [KeyHint.Of(Way, "c", "with the next one"), KeyHint.Scroll, KeyHint.Back];

    /// <summary>The key that led here goes on to the next: the saved file, then every other open design, round and round.</summary>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key)
    {
        if (KeyMap.Meaning(key) != Way)
        {
            return null;
        }

        List<int?> others = [.. model.Designs.Where(design => design.Slot != model.Here.Slot).Select(design => (int?)design.Slot), null];
        return Show(model, new ComparePage(others[(others.IndexOf(OtherSlot) + 1) % others.Count]));
    }

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame)
    {
        (int left, int right, int room) = Columns(frame);
        canvas.Put(1, frame.Top, "differences", Ink.Title);
        canvas.Put(left, frame.Top, canvas.Fit(Other(model)?.Title ?? "saved file", room - 1), Ink.Title);
        canvas.Put(right, frame.Top, canvas.Fit(model.Here.Title + " now", room), Ink.Title);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame)
    {
        (int left, int right, int room) = Columns(frame);
        int key = left - 2;
        List<Piece[]> lines = [];
        void Add(string what, string old, string mine, Ink ink) => lines.Add(
        [
            new Piece(1, canvas.Fit(what, key), Ink.Plain), new Piece(left, canvas.Fit(old, room - 1), Ink.Dim),
            new Piece(right, canvas.Fit(mine, room), ink),
        ]);

        // Whole, in as many rows as it takes: of two figures with a sign before them the end tells most.
        void Figure(Result? was, Result? result, Ink ink)
        {
            bool moved = was is null || result is null || ResultText.Was(was, result, most: 4) is not null || was.Verdict.Kind != result.Verdict.Kind;
            int digits = QuantityText.DigitsApart(was?.Value, result?.Value, most: 4);
            IReadOnlyList<string> name = canvas.Wrap((result ?? was)!.Name, key - 2), old = canvas.Wrap(Told(was, digits), room - 1), mine = canvas.Wrap(Told(result, digits), room);
            for (int row = 0; row < Math.Max(name.Count, Math.Max(old.Count, mine.Count)); row++)
            {
                Add(row == 0 ? name[0] : "  " + At(name, row), At(old, row), At(mine, row), moved ? ink : Ink.Dim);
            }
        }

        static string At(IReadOnlyList<string> rows, int row) => row < rows.Count ? rows[row] : "";

        string above = "";
        DesignDocument other = Other(model)?.Document ?? model.Here.Saved;
        Design theirs = other.Design;
        foreach (FieldPair one in Comparison.Differing(theirs, model.Design).SelectMany(Fields))
        {
            // A key longer than its column is broken at a dot: its end tells it from the next one. What it has in common with the one above
            // stands once.
            int dot = Lettering.Columns(one.Key) <= key ? -1 : one.Key.LastIndexOf('.', Math.Max(0, Math.Min(one.Key.Length - 1, key - 1)));
            string owner = one.Key[..(dot + 1)];
            if (owner.Length > 0 && owner != above)
            {
                Add(owner, "", "", Ink.Plain);
            }

            above = owner;
            Add(owner.Length > 0 ? $"  {one.Key[(dot + 1)..]}" : one.Key, Of(other, one.Key, one.From), Of(model.Here.Document, one.Key, one.To), Ink.Plain);
        }

        if (lines.Count == 0)
        {
            lines.Add([new Piece(1, "nothing is different", Ink.Plain)]);
        }

        // Another open design has figures of its own; the saved file's are those before all changes, if they were ever shown.
        Assessment? before = Other(model) is { } open ? open.Shown : model.Here.SavedShown;
        if (model.Here.Shown is { } now && before is not null)
        {
            Add("", "", "", Ink.Plain);
            foreach (Result result in now.Judged)
            {
                Figure(before.Find(result.Id), result, ResultText.Ink(result.Verdict.Kind));
            }

            // What is not judged, and often decides all the same.
            foreach (Headline one in Headline.Of(before, now))
            {
                Figure(one.Before, one.After, Ink.Plain);
            }

            lines.Add([]);
            lines.AddRange(Cautions.Own(theirs).Select(caution => "caution of the other: " + caution).Concat(Cautions.All)
                .SelectMany(caution => canvas.Wrap("- " + caution, frame.Width - 2)).Select(line => (Piece[])[new Piece(1, line, Ink.Plain)]));
        }

        return lines;
    }

    /// <summary>A part or list that only one design has is told by what stands in it.</summary>
    private static IEnumerable<FieldPair> Fields(Differing one) =>
        one.Within.Count > 0 ? one.Within : [new FieldPair(one.Key, one.From, one.To)];

    /// <summary>What the file says where that cannot be read.</summary>
    private static string Of(DesignDocument document, string key, string? value) => Errors.InPlaceOfValue(document, key) ?? Said(value);

    private static string Said(string? value) => value switch { null => "absent", "" => "-", _ => value };

    private OpenDesign? Other(Model model) => OtherSlot is { } slot ? model.Designs.Find(design => design.Slot == slot) : null;

    private static (int Left, int Right, int Room) Columns(Frame frame)
    {
        int value = Math.Max(12, (frame.Width - 4) * 3 / 10), key = frame.Width - 4 - (2 * value);
        return (1 + key + 1, 1 + key + 1 + value + 1, value);
    }

    private static string Told(Result? one, int digits) => one is null ? "absent"
        : $"{(one.Verdict.Kind == VerdictKind.NotJudged ? "" : $"{Documents.Sheets.Wording.Sign(one.Verdict.Kind)} ")}{(one.State == ResultState.Number ? QuantityText.Format(one.Value, digits) : ResultText.Value(one))}";
}
