namespace FrontEnd.Terminal;

/// <summary>A page of text as a command prints it, in as many columns as the screen has room for; a narrow screen has it written for its own
/// width. Where a line is wider all the same, such as one of a drawing, the screen is moved over it sideways.</summary>
public abstract record TextPage : ScrolledPage
{
    /// <summary>Columns of a page that the commands print.</summary>
    internal const int PageWidth = 80;

    private const int SidewaysStep = 8, Narrowest = 40;

    /// <summary>Columns that are left of the screen.</summary>
    public int Sideways { get; init; }

    /// <summary>True where Tab goes to the next paragraph.</summary>
    protected virtual bool HasParagraphs => false;

    /// <inheritdoc/>
    public override int ScrollEnd(Canvas canvas, Model model, Frame frame)
    {
        IReadOnlyList<string> lines = LinesOf(frame.Width, canvas.Ascii);
        return Math.Max(0, lines.Count - (Math.Max(1, TextFrame(canvas, frame).Rows) * ColumnsOf(frame.Width)));
    }

    /// <inheritdoc/>
    public override string Hint(Model model) => Sideward(model) > 0 ? "left and right move the page sideways" : "";

    /// <summary>The text in lines of so many columns, 80 at most; empty where there is none yet.</summary>
    protected abstract IReadOnlyList<string> TextIn(int width);

    /// <summary>The rows of the text: those below what else stands on the page.</summary>
    protected abstract Frame TextFrame(Canvas canvas, Frame frame);

    /// <summary>Draws the text.</summary>
    protected void PaintText(Canvas canvas, Model model, Frame whole)
    {
        Frame frame = TextFrame(canvas, whole);
        IReadOnlyList<string> lines = LinesOf(frame.Width, canvas.Ascii);
        int columns = ColumnsOf(frame.Width), rows = Math.Max(1, frame.Rows), end = ScrollEnd(canvas, model, whole);
        int first = Math.Clamp(Scroll, 0, end);
        for (int i = 0; i < rows * columns && first + i < lines.Count; i++)
        {
            string line = canvas.Say(lines[first + i]);
            int x = i / rows * (frame.Width / columns);
            string seen = line[Math.Min(line.Length, columns == 1 ? Sideways : 0)..];
            canvas.Put(x, frame.Top + (i % rows), seen, Ink.Plain, columns == 1 ? frame.Width : PageWidth);
        }

        Drawing.MoreBelow(canvas, frame, end - first);
    }

    /// <summary>The page after a key that moves its text; null for another key. Tab goes to the next paragraph.</summary>
    protected TextPage? Moved(Model model, Keystroke key)
    {
        return key switch
        {
            { Alt: true } or { Ctrl: true } => null,
            { Key: KeyName.Left } => this with { Sideways = Math.Max(0, Sideways - SidewaysStep) },
            { Key: KeyName.Right } => this with { Sideways = Math.Min(Sideward(model), Sideways + SidewaysStep) },
            { Key: KeyName.Tab } when HasParagraphs => this with { Scroll = NextParagraph(LinesOf(model.Width, model.Ascii), key.Shift ? -1 : 1) },
            _ => Scrolled(key) is { } line ? this with { Scroll = line } : null,
        };
    }

    private static int ColumnsOf(int window) => Math.Clamp((window + 3) / (PageWidth + 3), 1, 3);

    /// <summary>The text for a window: as wide as leaves room for all of it where some letters are written as words; where a few columns less do
    /// not help, as with a drawing, as wide as there is room.</summary>
    internal IReadOnlyList<string> LinesOf(int window, bool ascii)
    {
        int most = Math.Min(PageWidth, window), room = ColumnsOf(window) == 1 ? window : PageWidth;
        for (int width = most; ascii && Math.Min(Narrowest, most) <= width; width -= 2)
        {
            if (TextIn(width) is var lines && Widest(lines, ascii) <= room)
            {
                return lines;
            }
        }

        return TextIn(most);
    }

    /// <summary>Columns of the longest line.</summary>
    internal static int Widest(IReadOnlyList<string> lines, bool ascii) => lines.Select(line => Lettering.Columns(Lettering.Say(line, ascii))).DefaultIfEmpty().Max();

    /// <summary>Columns that the longest line stands out of the window.</summary>
    private int Sideward(Model model) => Math.Max(0, Widest(LinesOf(model.Width, model.Ascii), model.Ascii) - model.Width);

    private int NextParagraph(IReadOnlyList<string> lines, int by)
    {
        for (int at = Scroll + by; 0 < at && at < lines.Count; at += by)
        {
            if (lines[at - 1].Length == 0 && lines[at].Length > 0)
            {
                return at;
            }
        }

        return by < 0 ? 0 : Scroll;
    }
}
