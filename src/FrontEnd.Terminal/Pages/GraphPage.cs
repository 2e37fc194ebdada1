namespace FrontEnd.Terminal;

/// <summary>One plot over the whole screen with a cursor.</summary>
/// <param name="Kind">What is plotted.</param>
internal sealed record GraphPage(PlotKind Kind) : Page
{
    /// <summary>The way to it: the plot of the place in hand.</summary>
    public static readonly Act Way = new(
        'g', [], "graph over the whole screen",
        model => Open(model, new GraphPage(Whereabouts.PlaceOf(model).Plot) { LogX = Whereabouts.PlaceOf(model).Plot != PlotKind.Step }));

    /// <summary>Where the cursor is: share of the axis, 0 to 1.</summary>
    public double Cursor { get; init; } = 0.5;

    /// <summary>True for a logarithmic axis of frequency or time.</summary>
    public bool LogX { get; init; } = true;

    /// <summary>True for a logarithmic axis of values.</summary>
    public bool LogY { get; init; } = true;

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) =>
    [
        new("<-/->", "cursor"), new("PgUp/PgDn", "faster"), new("up/dn", "other plot"), new("x", "log x"), new("y", "log y"), KeyHint.Back,
    ];

    /// <inheritdoc/>
    public override string Hint(Model model) => model.Here.Shown is { } shown ? Plots.Of(Kind, shown, LogX, LogY).Note : "";

    /// <inheritdoc/>
    public override Page Hear(Model model, Message news) => news is Message.CursorAt at ? this with { Cursor = at.Share } : this;

    /// <inheritdoc/>
    public override (Model Model, Effect? Effect)? Press(Model model, Keystroke key)
    {
        const double Small = 1 / 160.0, Large = 1 / 16.0;
        GraphPage? next = key switch
        {
            { Key: KeyName.Left, Shift: true } or { Key: KeyName.PageUp } => At(Cursor - Large),
            { Key: KeyName.Right, Shift: true } or { Key: KeyName.PageDown } => At(Cursor + Large),
            { Key: KeyName.Left } => At(Cursor - Small),
            { Key: KeyName.Right } => At(Cursor + Small),
            { Key: KeyName.Home } => At(0),
            { Key: KeyName.End } => At(1),
            { Key: KeyName.Up } => Neighbour(model, -1),
            { Key: KeyName.Down or KeyName.Tab } => Neighbour(model, +1),
            { Key: KeyName.Letter, Letter: 'x' or 'X', Ctrl: false } => this with { LogX = !LogX },
            { Key: KeyName.Letter, Letter: 'y' or 'Y', Ctrl: false } => this with { LogY = !LogY },
            _ => null,
        };
        return next is not null ? Show(model, next)
            : key.Key is KeyName.Escape or KeyName.Enter || KeyMap.Meaning(key) == Way ? Close(model)
            : null;
    }

    /// <inheritdoc/>
    public override void Paint(Canvas canvas, Model model, Frame frame)
    {
        if (model.Here.Shown is not { } shown)
        {
            canvas.Put(1, frame.Top, "computing", Ink.Dim);
            return;
        }

        PlotData data = Plots.Of(Kind, shown, LogX, LogY);
        if (data.Curves.Count == 0)
        {
            string why = Errors.InTheWay(model.Here) is not null ? "not drawn while the file has errors or unknown values" : "this design has none; up and down go to the other plots";
            canvas.Put(1, frame.Top, canvas.Fit($"{data.Title}: {why}", frame.Width - 2), Ink.Dim);
            return;
        }

        DotPlot.Draw(canvas, 0, frame.Top, frame.Width - 1, frame.Rows - 1, data, Cursor);
        canvas.Put(1, frame.Bottom - 1, canvas.Fit(Plots.Readout(data, Cursor), frame.Width - 2), Ink.Changed);
        canvas.Zone(9, frame.Top, frame.Width - 10, frame.Rows, new Message.CursorAt(0));
    }

    private GraphPage At(double share) => this with { Cursor = Math.Clamp(share, 0, 1) };

    private GraphPage Neighbour(Model model, int by)
    {
        PlotKind kind = Plots.Neighbour(model, Kind, by);
        return this with { Kind = kind, LogX = kind != PlotKind.Step };
    }
}
