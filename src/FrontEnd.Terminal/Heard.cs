namespace FrontEnd.Terminal;

/// <summary>What a terminal sent, understood. A closed set.</summary>
internal abstract record Heard
{
    private Heard()
    {
    }

    /// <summary>A key was pressed.</summary>
    public sealed record Key(Keystroke Stroke) : Heard;

    /// <summary>A text was pasted, of however many lines.</summary>
    public sealed record Paste(string Text) : Heard;

    /// <summary>The left button went down and up in the same cell; columns and rows from 0, not always on the screen.</summary>
    public sealed record Click(int X, int Y) : Heard;

    /// <summary>The wheel was turned: −1 up, 1 down; columns and rows from 0, not always on the screen.</summary>
    public sealed record Wheel(int Lines, int X, int Y) : Heard;
}
