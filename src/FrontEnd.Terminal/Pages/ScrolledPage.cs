namespace FrontEnd.Terminal;

/// <summary>A page that may be longer than the screen.</summary>
public abstract record ScrolledPage : Page
{
    /// <summary>More lines than any page has; <see cref="Within"/> brings it back to the last one.</summary>
    private const int FarBelow = 1_000_000;

    /// <summary>Lines that are above the screen.</summary>
    public int Scroll { get; init; }

    /// <summary>The furthest that it can be scrolled at this size; 0 where all of it is in sight.</summary>
    public abstract int ScrollEnd(Canvas canvas, Model model, Frame frame);

    /// <summary>The model with its page scrolled no further than to its last line; the longer of both forms, with and without the letters
    /// beyond ASCII.</summary>
    public static Model Within(Model model)
    {
        if (model.Page is not ScrolledPage { Scroll: > 0 } page || model.TooSmall)
        {
            return model;
        }

        return model with { Page = page with { Scroll = Math.Min(page.Scroll, Math.Max(End(ascii: false), End(ascii: true))) } };

        int End(bool ascii)
        {
            Canvas canvas = new(model.Width, model.Height, ascii);
            return page.ScrollEnd(canvas, model, Frame.Of(canvas, model));
        }
    }

    /// <summary>Where the page is after a key that scrolls; null for another key.</summary>
    protected int? Scrolled(Keystroke key) => key.Key switch
    {
        KeyName.Up => Math.Max(0, Scroll - 1),
        KeyName.Down => Scroll + 1,
        KeyName.PageUp => Math.Max(0, Scroll - Leap),
        KeyName.PageDown => Scroll + Leap,
        KeyName.Home => 0,
        KeyName.End => FarBelow,
        _ => null,
    };
}

/// <summary>A page of a heading and lines.</summary>
internal abstract record LinesPage : ScrolledPage
{
    /// <inheritdoc/>
    public override int ScrollEnd(Canvas canvas, Model model, Frame frame) =>
        Math.Max(0, Lines(canvas, model, frame).Count - (frame.Rows - 1));

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) =>
        Scrolled(key) is { } line ? Show(model, this with { Scroll = line })
        : key.Key is KeyName.Escape or KeyName.Enter ? Close(model)
        : PressElse(model, key);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        PaintHeading(canvas, model, frame);
        IReadOnlyList<Piece[]> lines = Lines(canvas, model, frame);
        int room = frame.Rows - 1, first = Math.Clamp(Scroll, 0, Math.Max(0, lines.Count - room));
        for (int i = 0; i < room && first + i < lines.Count; i++)
        {
            foreach (Piece piece in lines[first + i])
            {
                canvas.Put(piece.X, frame.Top + 1 + i, piece.Text, piece.Ink, piece.Room);
            }
        }

        Drawing.MoreBelow(canvas, frame, lines.Count - first - room);
    }

    /// <summary>What a key does that neither scrolls nor closes.</summary>
    protected virtual (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) => null;

    /// <summary>Draws the first row.</summary>
    protected abstract void PaintHeading(Canvas canvas, Model model, Frame frame);

    /// <summary>All lines of the page, those above and below the screen too.</summary>
    protected abstract IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame);

    /// <summary>Labelled paragraphs as lines: the label at the first line of each.</summary>
    protected static IEnumerable<Piece[]> Labelled(Canvas canvas, Frame frame, string label, string text, Ink ink)
    {
        const int LabelColumn = 17;
        return canvas.Wrap(text, frame.Width - 2 - LabelColumn)
            .Select((line, at) => (Piece[])[new Piece(1, at == 0 ? label : "", Ink.Dim), new Piece(1 + LabelColumn, line, ink)]);
    }

    /// <summary>A piece of a line.</summary>
    /// <param name="X">Its first column.</param>
    /// <param name="Room">Columns that it may take.</param>
    protected readonly record struct Piece(int X, string Text, Ink Ink, int Room = int.MaxValue);
}
