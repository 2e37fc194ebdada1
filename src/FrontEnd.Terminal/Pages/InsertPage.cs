namespace FrontEnd.Terminal;

/// <summary>A list to choose an element from that is put into the design.</summary>
internal sealed record InsertPage : ListPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new('i', [], "insert a gain stage, a filter, a band", model => Open(model, new InsertPage()));

    /// <inheritdoc/>
    protected override int Count => Elements.Insertions.Count;

    /// <inheritdoc/>
    protected override string Title => "insert what? It is added last of its kind; < moves it nearer the scalp";

    /// <inheritdoc/>
    protected override (Model Model, Effect? Effect) Take(Model model, int row) =>
        Elements.Insert(model with { Page = null }, Elements.Insertions[row]);

    /// <inheritdoc/>
    protected override void PaintRow(Canvas canvas, Frame frame, int row, int y, Ink ink)
    {
        canvas.Put(2, y, Elements.Insertions[row].Name, ink);
        canvas.Put(40, y, canvas.Fit($"last of the {Elements.NameOf(Elements.Insertions[row].ListKey)}", frame.Width - 41), Ink.Dim);
    }
}
