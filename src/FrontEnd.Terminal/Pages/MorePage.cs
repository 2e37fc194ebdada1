namespace FrontEnd.Terminal;

/// <summary>What else there is, each on its letter.</summary>
internal sealed record MorePage : ListPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new(
        Act.MoreLetter, [], "more: studies of the design, sites, glossary, files", model => Open(model, new MorePage()));

    /// <inheritdoc/>
    public override IEnumerable<KeyHint> Keys(Model model) => [new("letter", "opens"), .. base.Keys(model)];

    /// <inheritdoc/>
    public override string Hint(Model model) => KeyMap.More[Selected].Does is var does && model.Width - 5 < does.Length ? does : "";

    /// <inheritdoc/>
    protected override int Count => KeyMap.More.Count;

    /// <inheritdoc/>
    protected override string Title => "more";

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect) Take(Model model, int row) => KeyMap.More[row].Perform(model with { Page = null });

    /// <inheritdoc/>
    protected override void PaintRow(Canvas canvas, Frame frame, int row, int y, Ink ink)
    {
        canvas.Put(2, y, KeyMap.More[row].Under.ToString(), Ink.Key);
        canvas.Put(4, y, canvas.Fit(KeyMap.More[row].Does, frame.Width - 5), ink);
    }

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect)? PressElse(Model model, Keystroke key) =>
        key is { Key: KeyName.Letter, Ctrl: false, Alt: false }
        ? Pick(model, KeyMap.More.ToList().FindIndex(act => act.Under == char.ToLowerInvariant(key.Letter)))
        : null;
}
