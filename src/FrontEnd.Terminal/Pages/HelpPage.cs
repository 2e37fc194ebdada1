namespace FrontEnd.Terminal;

/// <summary>The keys.</summary>
internal sealed record HelpPage : LinesPage
{
    /// <summary>The way to it.</summary>
    public static readonly Act Way = new('?', [], "this help", model => Open(model, new HelpPage()));

    private const int KeysColumn = 1, DoesColumn = 18, KeysRoom = 16;

    /// <inheritdoc/>
    protected override void PaintHeading(Canvas canvas, Model model, Frame frame) => canvas.Put(1, frame.Top, "keys", Ink.Title);

    /// <inheritdoc/>
    protected override IReadOnlyList<Piece[]> Lines(Canvas canvas, Model model, Frame frame)
    {
        int columns = frame.Width >= 130 ? 2 : 1, room = (frame.Width / columns) - 19;
        List<(string Keys, string Does)> lines = [
            .. Rows().SelectMany(row => canvas.Wrap(row.Does, room).Select((line, at) => (at == 0 ? row.Keys : "", line)))];
        int rows = (lines.Count + columns - 1) / columns;
        while (rows < lines.Count && lines[rows].Keys.Length == 0)
        {
            // A row is not torn apart between the columns.
            rows++;
        }

        return [.. Enumerable.Range(0, rows).Select(
            row => (Piece[])[.. Enumerable.Range(0, columns).SelectMany(column => Row(row, column))])];

        IEnumerable<Piece> Row(int row, int column)
        {
            int at = row + (column * rows), x = column * (frame.Width / columns);
            return at < lines.Count
                ? [new Piece(x + KeysColumn, lines[at].Keys, Ink.Key, KeysRoom), new Piece(x + DoesColumn, lines[at].Does, Ink.Plain)]
                : [];
        }
    }

    private static List<(string Keys, string Does)> Rows() =>
    [
        ("views", $"each across the whole path: {string.Join(", ", Place.Views.Select(view => $"{view.Letter} {view.Title}"))}"),
        .. KeyMap.Acts.Select(act => (act.Keys, act.Does)),
        ("0-9", "start typing a value; Enter keeps it, Esc discards it"),
        ("Alt+letter", "the same as the letter, also while typing"),
        ("paste", "goes into what is being typed; elsewhere into the selected field, after one question"),
        ("mouse", "click selects a block, field or figure; a second click edits or explains; the wheel scrolls what it points at"),
        ("words", "letters typed as fast as a word, or sent in one piece, are no commands: nothing is done, and the message line says so"),
        ("signs", "+ pass   ~ marginal   x fail   ? open   . not judged   * differs from the saved file   ! changed on disk"),
        ("first line", "errors in the file (, steps through them), !disk and !gone: its file or a card changed or missing on disk, open twice: also open in another frontend"),
        ("strip", "gain or level, then the room up to the rails, then the worst verdict of the block's nodes; ? where nobody can say"),
    ];
}
