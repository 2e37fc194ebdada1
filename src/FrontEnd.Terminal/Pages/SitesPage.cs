using FrontEnd.Documents.Teaching;

namespace FrontEnd.Terminal;

/// <summary>The sites on a head: what is asked, and the answer as the command prints it.</summary>
internal sealed record SitesPage(SitesRequest Request, SitesAnswer Answer) : TextPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        '\0', [], "sites on the head, distances, montages",
        model => Open(model, new SitesPage(new SitesRequest(), new SitesRequest().Work().Answer!))) { Under = 'e' };

    private const int TypedRoom = 24;

    /// <summary>Which of <see cref="SitesForm.Fields"/> is in hand.</summary>
    public int Field { get; init; }

    /// <summary>The line that is typed into it; null while none is.</summary>
    public Line? Typing { get; init; }

    /// <inheritdoc/>
    public override bool TakesText => Typing is not null || !SitesForm.Fields[Field].IsWord;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => Typing is not null
        ?
        [
            KeyHint.Of(KeyName.Enter, "Enter", "keep"), KeyHint.Of(KeyName.Tab, "Tab", "keep, next field"),
            KeyHint.Of(KeyName.Escape, "Esc", "drop"),
        ]
        :
        [
            KeyHint.Of(KeyName.Tab, "Tab", "field"), KeyHint.Of(KeyName.Enter, "Enter", "edit"), new("+-", "montage, rule"),
            KeyHint.Scroll, KeyHint.Back,
        ];

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        SitesField field = SitesForm.Fields[Field];
        string now = field.Get(Request);
        if (Typing is { } line)
        {
            return key switch
            {
                { Key: KeyName.Escape } => Show(model, this with { Typing = null }),
                { Key: KeyName.Enter } => Ask(model, field.Set(Request, line.Text.Trim()), 0),
                { Key: KeyName.Tab } => Ask(model, field.Set(Request, line.Text.Trim()), key.Shift ? -1 : 1),
                { Alt: true } => null,
                _ => Show(model, this with { Typing = line.Press(key) }),
            };
        }

        if (Moved(model, key) is { } moved)
        {
            return Show(model, moved);
        }

        int by = key.Letter is '+' or '=' ? 1 : key.Letter == '-' ? -1 : 0;
        return key switch
        {
            { Key: KeyName.Escape } => Close(model),
            { Key: KeyName.Tab } => Show(model, this with { Field = Around(Field + (key.Shift ? -1 : 1)) }),
            { Key: KeyName.Enter } when field.IsWord => Ask(model, field.Set(Request, Neighbour(field, now, 1)), 0),
            { Key: KeyName.Enter } => Show(model, this with { Typing = Line.Of(now) }),
            { Alt: false, Ctrl: false } when by != 0 && field.Words.Count > 0 => Ask(
                model, field.Set(Request, Neighbour(field, now, by)), 0),
            { Key: KeyName.Letter, Alt: false, Ctrl: false } when !field.IsWord && char.IsLetterOrDigit(key.Letter) =>
                Show(model, this with { Typing = Line.Of("").Insert(key.Letter.ToString()) }),
            { Key: KeyName.Letter, Alt: false, Ctrl: false } => (model, null),
            _ => null,
        };
    }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Paste(Model model, string line) =>
        SitesForm.Fields[Field].IsWord ? null : Show(model, this with { Typing = (Typing ?? Line.Of("")).Insert(line) });

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        canvas.Put(1, frame.Top, "sites", Ink.Title);
        foreach ((int at, int x, int y) in Places(frame))
        {
            SitesField field = SitesForm.Fields[at];
            int value = canvas.Put(x, y, field.Label, Field == at ? Ink.Strong : Ink.Dim) + 1;
            if (Field == at && Typing is { } line)
            {
                Drawing.TypedLine(canvas, value, y, Math.Min(TypedRoom, frame.Width - value - 1), line, Ink.Typed);
            }
            else
            {
                canvas.Put(value, y, canvas.Fit(Value(field), frame.Width - value - 1), Field == at ? Ink.Chosen : Ink.Plain);
            }
        }

        PaintText(canvas, model, frame);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> TextIn(int width) => Answer.TextIn(width).TrimEnd('\n').Split('\n');

    /// <inheritdoc/>
    protected override Frame TextFrame(Canvas canvas, Frame frame) => frame with { Top = Places(frame)[^1].Y + 2 };

    /// <summary>Where each field of the question stands: a row is broken where the screen ends.</summary>
    private List<(int Field, int X, int Y)> Places(Frame frame)
    {
        const string Title = "sites";
        List<(int, int, int)> places = [];
        int x = 1 + Title.Length + 3, y = frame.Top;
        for (int i = 0; i < SitesForm.Fields.Count; i++)
        {
            SitesField field = SitesForm.Fields[i];
            int room = Field == i && Typing is not null ? TypedRoom : Math.Max(6, Lettering.Columns(Value(field)));
            int width = Lettering.Columns(field.Label) + 1 + room;
            if (frame.Width < x + width)
            {
                (x, y) = (1, y + 1);
            }

            places.Add((i, x, y));
            x += width + 2;
        }

        return places;
    }

    private string Value(SitesField field) => field.Get(Request) is { Length: > 0 } text ? text : "-";

    private static int Around(int field) => (field + SitesForm.Fields.Count) % SitesForm.Fields.Count;

    private static string Neighbour(SitesField field, string now, int by) =>
        field.Words[(field.Words.ToList().IndexOf(now) + by + field.Words.Count) % field.Words.Count];

    /// <summary>Asks anew; where the question cannot be answered the line stays open and says why.</summary>
    private (Model, Effect?) Ask(Model model, SitesRequest request, int step)
    {
        (SitesAnswer? answer, IReadOnlyList<Finding> findings) = request.Work();
        return answer is null
            ? (model.Complain(findings[0]), null)
            : Show(model, this with { Request = request, Answer = answer, Typing = null, Field = Around(Field + step), Scroll = 0 });
    }
}
