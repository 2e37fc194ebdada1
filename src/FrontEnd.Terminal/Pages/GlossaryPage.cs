using FrontEnd.Documents.Teaching;
using FrontEnd.Teaching;

namespace FrontEnd.Terminal;

/// <summary>The glossary: a line to search with, and the terms that fit.</summary>
/// <param name="Line">What is searched for.</param>
internal sealed record GlossaryPage(Line Line) : Page
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "glossary of terms and symbols", model => Open(model, new GlossaryPage(Line.Of("")))) { Under = 'g' };

    private const int PageWidth = 80;

    /// <summary>The term in hand.</summary>
    public int Selected { get; init; }

    /// <inheritdoc/>
    public override bool TakesText => true;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [new("letters", "search"), new("up/dn", "choose"), KeyHint.Back];

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        int count = Glossary.Search(Line.Text).Count;
        if (key.Key is not (KeyName.Home or KeyName.End) && Picked(key, Selected, Math.Max(1, count)) is { } row)
        {
            return Show(model, this with { Selected = row });
        }

        return key switch
        {
            { Key: KeyName.Escape } when Line.Text.Length > 0 => Show(model, new GlossaryPage(Line.Of(""))),
            { Key: KeyName.Escape or KeyName.Enter } => Close(model),
            { Alt: true } or { Ctrl: true, Letter: not ('a' or 'u') } or { Key: KeyName.F1 or KeyName.F5 or KeyName.F10 } => null,
            _ => Show(model, new GlossaryPage(Line.Press(key))),
        };
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Paste(Model model, string line) => Show(model, new GlossaryPage(Line.Insert(line)));

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        int at = canvas.Put(1, frame.Top, "glossary", Ink.Title);
        Drawing.TypedLine(canvas, at + 3, frame.Top, Math.Min(40, frame.Width - at - 4), Line, Ink.Typed);
        IReadOnlyList<Term> found = Glossary.Search(Line.Text);
        if (found.Count == 0)
        {
            string near = string.Join(", ", Glossary.NearestTo(Line.Text));
            canvas.Put(
                1, frame.Top + 1, canvas.Fit(near.Length == 0 ? "no such term" : $"no such term; the nearest: {near}", frame.Width - 2),
                Ink.Dim);
            return;
        }

        // Names at the left, the term in hand at the right.
        int names = Math.Clamp(frame.Width * 2 / 5, 24, 34), room = frame.Rows - 1;
        int chosen = Math.Clamp(Selected, 0, found.Count - 1);
        int first = Drawing.FirstLine(chosen, found.Count, room);
        for (int i = 0; i < room && first + i < found.Count; i++)
        {
            bool inHand = first + i == chosen;
            canvas.Put(0, frame.Top + 1 + i, inHand ? ">" : " ", Ink.Key);
            canvas.Put(2, frame.Top + 1 + i, canvas.Fit(found[first + i].Name, names - 3), inHand ? Ink.Chosen : Ink.Plain);
        }

        Drawing.ScrollMarks(canvas, names, frame.Top, frame.Bottom, first, found.Count, room);
        int y = frame.Top + 1;
        foreach (string line in GlossaryText.Of(found[chosen], others: true).TrimEnd('\n').Split('\n'))
        {
            foreach (string part in canvas.Wrap(line.Trim(), Math.Min(PageWidth, frame.Width - names - 2)))
            {
                canvas.Put(names, y, part, y == frame.Top + 1 ? Ink.Strong : Ink.Plain);
                y++;
            }
        }
    }
}
