using System.Text;

namespace FrontEnd.Terminal;

/// <summary>A picture in character cells, with the places that a click acts on. Knows no terminal.</summary>
public sealed class Canvas
{
    private readonly Rune[] _runes;
    private readonly Ink[] _inks;
    private readonly List<(int X, int Y, int Width, int Height, Message Message)> _zones = [];
    private readonly List<(int X, int Y, int Width, int Height, Pane Pane)> _panes = [];

    /// <param name="ascii">True where the terminal shows only the ASCII characters.</param>
    public Canvas(int width, int height, bool ascii)
    {
        (Width, Height, Ascii) = (width, height, ascii);
        _runes = new Rune[width * height];
        _inks = new Ink[width * height];
        Array.Fill(_runes, new Rune(' '));
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>True where only ASCII characters can be shown.</summary>
    public bool Ascii { get; }

    /// <summary>Where the terminal's cursor stands; null for nowhere.</summary>
    public (int X, int Y)? Cursor { get; set; }

    /// <summary>The cell's character; a zero rune is the right half of a wide one.</summary>
    public Rune RuneAt(int x, int y) => _runes[(y * Width) + x];

    /// <summary>The cell's ink.</summary>
    public Ink InkAt(int x, int y) => _inks[(y * Width) + x];

    /// <summary>Writes a text from a cell on; what does not fit into <paramref name="room"/> columns or the picture is cut off, and a mark says so.</summary>
    /// <returns>The column behind the text.</returns>
    public int Put(int x, int y, string text, Ink ink = Ink.Plain, int room = int.MaxValue)
    {
        int end = (int)Math.Min(Width, (long)x + Math.Max(0, room)), start = x;
        bool isCut = false;
        if (y < 0 || Height <= y)
        {
            return x;
        }

        foreach (Rune rune in Say(text).EnumerateRunes())
        {
            int wide = Lettering.WidthOf(rune);
            if (wide == 0)
            {
                continue;
            }

            if (end < x + wide)
            {
                isCut |= rune.Value != ' ';
                x = end;
                continue;
            }

            if (0 <= x)
            {
                int at = (y * Width) + x;
                (_runes[at], _inks[at]) = (rune, ink);
                if (wide == 2)
                {
                    (_runes[at + 1], _inks[at + 1]) = (default, ink);
                }
            }

            x += wide;
        }

        if (isCut && Lettering.Mark(Ascii) is var mark && Math.Max(0, start) + mark.Length <= end)
        {
            int from = end - mark.Length;
            if (from > 0 && _runes[(y * Width) + from].Value == 0)
            {
                // The left half of a wide character does not stand alone.
                _runes[(y * Width) + from - 1] = new Rune(' ');
            }

            for (int i = 0; i < mark.Length; i++)
            {
                (_runes[(y * Width) + from + i], _inks[(y * Width) + from + i]) = (new Rune(mark[i]), ink);
            }
        }

        return x;
    }

    /// <summary>Writes a text so that it ends before a column.</summary>
    /// <returns>The text's first column.</returns>
    public int PutRight(int end, int y, string text, Ink ink = Ink.Plain)
    {
        string said = Say(text);
        Put(end - Lettering.Columns(said), y, said, ink);
        return end - Lettering.Columns(said);
    }

    /// <summary>One cell, for dots and rules.</summary>
    public void Set(int x, int y, Rune rune, Ink ink)
    {
        if (0 <= x && x < Width && 0 <= y && y < Height)
        {
            (_runes[(y * Width) + x], _inks[(y * Width) + x]) = (rune, ink);
        }
    }

    /// <summary>Changes the ink of a run of cells and leaves their characters.</summary>
    public void Tint(int x, int y, int width, Ink ink)
    {
        for (int i = Math.Max(0, x); i < Math.Min(Width, x + width) && 0 <= y && y < Height; i++)
        {
            _inks[(y * Width) + i] = ink;
        }
    }

    /// <summary>Empties a rectangle.</summary>
    public void Clear(int x, int y, int width, int height)
    {
        for (int row = Math.Max(0, y); row < Math.Min(Height, y + height); row++)
        {
            for (int column = Math.Max(0, x); column < Math.Min(Width, x + width); column++)
            {
                Set(column, row, new Rune(' '), Ink.Plain);
            }
        }
    }

    /// <summary>A rule across the whole picture.</summary>
    public void Rule(int y) => Put(0, y, new string(Ascii ? '-' : '─', Width), Ink.Dim);

    /// <summary>What a click on these cells says. Later zones lie above earlier ones.</summary>
    public void Zone(int x, int y, int width, int height, Message message) => _zones.Add((x, y, width, height, message));

    /// <summary>What the wheel scrolls over these cells.</summary>
    public void Scrolls(int x, int y, int width, int height, Pane pane) => _panes.Add((x, y, width, height, pane));

    /// <summary>What the wheel scrolls over this cell.</summary>
    public Pane PaneAt(int x, int y) =>
        _panes.Find(one => one.X <= x && x < one.X + one.Width && one.Y <= y && y < one.Y + one.Height).Pane;

    /// <summary>What a click on this cell says; null for nothing.</summary>
    public Message? Hit(int x, int y)
    {
        for (int i = _zones.Count - 1; 0 <= i; i--)
        {
            (int left, int top, int width, int height, Message message) = _zones[i];
            if (left <= x && x < left + width && top <= y && y < top + height)
            {
                // A click into a plot places its cursor; every other zone says the same wherever it is hit.
                return message is Message.CursorAt ? new Message.CursorAt((x - left) / (double)Math.Max(1, width - 1)) : message;
            }
        }

        return null;
    }

    /// <summary>The whole picture as lines, trailing blanks cut off.</summary>
    public override string ToString()
    {
        StringBuilder text = new();
        for (int y = 0; y < Height; y++)
        {
            StringBuilder line = new();
            for (int x = 0; x < Width; x++)
            {
                Rune rune = RuneAt(x, y);
                if (rune.Value != 0)
                {
                    line.Append(rune.ToString());
                }
            }

            text.Append(line.ToString().TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The text as this terminal can show it.</summary>
    public string Say(string text) => Lettering.Say(text, Ascii);

    /// <summary>The text cut to a number of columns, with a mark where something is missing.</summary>
    public string Fit(string text, int columns) => Lettering.Fit(text, columns, Ascii);

    /// <summary>The text broken into lines between words.</summary>
    public IReadOnlyList<string> Wrap(string text, int columns) => Lettering.Wrap(text, columns, Ascii);
}
