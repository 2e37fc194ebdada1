using FrontEnd.Catalogue;
using FrontEnd.Fields;

namespace FrontEnd.Terminal;

/// <summary>The whole help of a field.</summary>
/// <param name="Key">The field's key in the design.</param>
internal sealed record FieldHelpPage(string Key) : LinesPage
{
    /// <summary>The way to it; on a figure it leads to its reason.</summary>
    public static readonly Act Way = new(
        '\0', [new(KeyName.Letter, ' '), new(KeyName.F1)], "the full help of the selected field or figure",
        model => model.OnResults ? WhyPage.Open(model)
            : Whereabouts.FieldInHand(model) is { } row ? Show(model, new FieldHelpPage(row.Field.Key))
            : (model, null));

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [KeyHint.Scroll, KeyHint.Back];

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) =>
        KeyMap.Meaning(key) == Way ? Close(model) : null;

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame)
    {
        if (Field(model) is { } field)
        {
            canvas.Put(1, frame.Top, canvas.Fit(field.Key, frame.Width - 2), Ink.Title);
        }
        else
        {
            canvas.Put(1, frame.Top, "this design no longer has this field; Esc goes back", Ink.Dim);
        }
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame) => Field(model) is { } field
        ? [.. FormRow.Parts(field, model.Here.Document).SelectMany(part => Labelled(canvas, frame, part.Label, part.Text, Ink.Plain))]
        : [];

    private Field<Design>? Field(Model model) => DesignFields.Find(model.Design, Key);
}
