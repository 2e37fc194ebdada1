namespace FrontEnd.Terminal;

/// <summary>A message that has no room below the form, whole.</summary>
internal sealed record MessagePage(string Text, Ink Ink) : LinesPage
{
    /// <summary>The page for what stands at the foot, where it is cut there; the model as it is where it is not.</summary>
    public static Model OpenIfCut(Model model)
    {
        if (model is not { Page: null, Editing: null, TooSmall: false })
        {
            return model;
        }

        Canvas canvas = new(model.Width, model.Height, ascii: false);
        Frame frame = Frame.Of(canvas, model);
        (string text, Ink ink) = FootPainter.HelpText(model);
        return ink != Ink.Dim && FootPainter.RowsOf(canvas, model) > canvas.Height - 2 - frame.Bottom
            ? model with { Page = new MessagePage(text, ink) }
            : model;
    }

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [KeyHint.Scroll, KeyHint.Back];

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) =>
        KeyMap.Meaning(key) == FieldHelpPage.Way ? Close(model) : null;

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame) => canvas.Put(1, frame.Top, "the whole message", Ink.Title);

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame) =>
        [.. canvas.Wrap(Text, frame.Width - 2).Select(line => (Piece[])[new Piece(1, line, Ink)])];
}
