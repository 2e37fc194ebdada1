namespace FrontEnd.Terminal;

/// <summary>Which rows of the screen belong to the form or the page.</summary>
/// <param name="Top">First row of the body.</param>
/// <param name="Bottom">The rule below the body.</param>
/// <param name="Width">Columns.</param>
public readonly record struct Frame(int Top, int Bottom, int Width)
{
    /// <summary>Rows of the body.</summary>
    public int Rows => Bottom - Top;

    /// <summary>What the design says of its own danger, above all else and on every page. Only where the screen has no room for its body is it
    /// cut short.</summary>
    public static IReadOnlyList<string> Head(Canvas canvas, Model model)
    {
        // Title, rules, foot, key line and as many rows of the body as make sense.
        const int Others = 10;
        if (model.Design.Caution.Length == 0)
        {
            return [];
        }

        IReadOnlyList<string> lines = canvas.Wrap("caution: " + model.Design.Caution, Math.Max(4, canvas.Width - 2));
        int room = Math.Max(1, model.Height - Others - StripPainter.RowsOf(model));
        return lines.Count <= room ? lines : [.. lines.Take(room - 1), canvas.Fit(string.Join(' ', lines.Skip(room - 1)), canvas.Width - 2)];
    }

    /// <summary>The body between strip and foot; the foot grows with the tour's text and with what there is to say.</summary>
    public static Frame Of(Canvas canvas, Model model)
    {
        // In a low window the tour's text goes before the form: it cannot be read elsewhere.
        int least = model is { TourStep: not null, Page: null } && StripPainter.IsFolded(model) ? 0 : 4;
        int first = 1 + Head(canvas, model).Count + StripPainter.RowsOf(model) + 1;
        int foot = model is { TourStep: { } step, Page: null } ? TourPainter.TourLines(canvas, model, step).Count
            : Math.Max(FootPainter.UsualRows(canvas, model), FootPainter.RowsOf(canvas, model));
        return new Frame(first, Math.Max(first + least, model.Height - 2 - foot), model.Width);
    }
}
