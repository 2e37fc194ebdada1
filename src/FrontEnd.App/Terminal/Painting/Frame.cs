namespace FrontEnd.App.Terminal;

/// <summary>Which rows of the screen belong to the form or the page.</summary>
/// <param name="Top">First row of the body.</param>
/// <param name="Bottom">The rule below the body.</param>
/// <param name="Width">Columns.</param>
public readonly record struct Frame(int Top, int Bottom, int Width)
{
    /// <summary>Rows of the body.</summary>
    public int Rows => Bottom - Top;

    /// <summary>The body between strip and foot; the foot grows with the tour's text.</summary>
    public static Frame Of(Canvas canvas, Model model)
    {
        const int First = 1 + StripPainter.StripRows + 1, Least = 4;
        int foot = model is { TourStep: { } step, Page: null } ? TourPainter.TourLines(canvas, model, step).Count : 2;
        return new Frame(First, Math.Max(First + Least, model.Height - 2 - foot), model.Width);
    }
}
