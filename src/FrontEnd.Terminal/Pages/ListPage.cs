namespace FrontEnd.Terminal;

/// <summary>A page with a list to choose one row from.</summary>
internal abstract record ListPage : Page
{
    /// <summary>The row in hand.</summary>
    public int Selected { get; init; }

    /// <summary>How many rows there are.</summary>
    protected abstract int Count { get; }

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key) =>
        Picked(key, Selected, Count) is { } row ? Show(model, this with { Selected = row })
        : key.Key == KeyName.Enter ? Pick(model, Selected)
        : key.Key == KeyName.Escape ? Close(model)
        : PressElse(model, key);

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect) Pick(Model model, int row) => 0 <= row && row < Count ? Take(model, row) : (model, null);

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        canvas.Put(1, frame.Top, canvas.Fit(Title, frame.Width - 2), Ink.Title);
        Drawing.Rows(canvas, frame, Count, Selected, (row, y, ink) => PaintRow(canvas, frame, row, y, ink));
    }

    /// <summary>What is asked.</summary>
    protected abstract string Title { get; }

    /// <summary>Takes a row.</summary>
    protected abstract (Model Model, Effect? Effect) Take(Model model, int row);

    /// <summary>Draws a row.</summary>
    protected abstract void PaintRow(Canvas canvas, Frame frame, int row, int y, Ink ink);

    /// <summary>What a key does that neither moves, takes nor closes; null where it means what it means everywhere.</summary>
    protected virtual (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) => (model, null);
}
