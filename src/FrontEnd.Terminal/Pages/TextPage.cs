namespace FrontEnd.Terminal;

/// <summary>A page of text as a command prints it, in as many columns as the screen has room for; a narrow screen is moved over it
/// sideways.</summary>
public abstract record TextPage : ScrolledPage
{
    /// <summary>Columns of a page that the commands print.</summary>
    protected const int PageWidth = 80;

    private const int SidewaysStep = 8;

    /// <summary>Columns that are left of the screen.</summary>
    public int Sideways { get; init; }

    /// <summary>True where Tab goes to the next paragraph.</summary>
    protected virtual bool HasParagraphs => false;

    /// <inheritdoc/>
    public override int ScrollEnd(Canvas canvas, Model model, Frame frame)
    {
        IReadOnlyList<string> lines = Text;
        return Math.Max(0, lines.Count - (Math.Max(1, TextFrame(canvas, frame).Rows) * ColumnsOf(frame)));
    }

    /// <inheritdoc/>
    public override string Hint(Model model) => model.Width < PageWidth ? "left and right move the page sideways" : "";

    /// <summary>The text; empty where there is none yet.</summary>
    protected abstract IReadOnlyList<string> Text { get; }

    /// <summary>The rows of the text: those below what else stands on the page.</summary>
    protected abstract Frame TextFrame(Canvas canvas, Frame frame);

    /// <summary>Draws the text.</summary>
    protected void PaintText(Canvas canvas, Model model, Frame whole)
    {
        Frame frame = TextFrame(canvas, whole);
        IReadOnlyList<string> lines = Text;
        int columns = ColumnsOf(frame), rows = Math.Max(1, frame.Rows), end = ScrollEnd(canvas, model, whole);
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
        int widest = Math.Max(0, Text.Max(line => line.Length) - model.Width + 2);
        return key switch
        {
            { Alt: true } or { Ctrl: true } => null,
            { Key: KeyName.Left } => this with { Sideways = Math.Max(0, Sideways - SidewaysStep) },
            { Key: KeyName.Right } => this with { Sideways = Math.Min(widest, Sideways + SidewaysStep) },
            { Key: KeyName.Tab } when HasParagraphs => this with { Scroll = NextParagraph(key.Shift ? -1 : 1) },
            _ => Scrolled(key) is { } line ? this with { Scroll = line } : null,
        };
    }

    private static int ColumnsOf(Frame frame) => Math.Clamp((frame.Width + 3) / (PageWidth + 3), 1, 3);

    private int NextParagraph(int by)
    {
        IReadOnlyList<string> lines = Text;
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
