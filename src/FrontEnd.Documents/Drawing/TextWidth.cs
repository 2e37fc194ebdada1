namespace FrontEnd.Documents.Drawing;

/// <summary>How much room a text takes, by the widths of the font that comes with the program. A PDF is drawn in it; where SVG is shown in
/// another font the text may be some per cent wider or narrower.</summary>
internal static class TextWidth
{
    /// <summary>What capitals, digits and most letters reach above the line they stand on, over the letters' size.</summary>
    public const double Above = 0.76;

    /// <summary>What a g or a comma reaches below that line, over the letters' size.</summary>
    public const double Below = 0.24;

    /// <param name="size">Of the letters; the width is in the same unit.</param>
    public static double Of(string text, double size, bool bold = false)
    {
        FontFile font = bold ? FontFile.Bold : FontFile.Regular;
        double width = 0;
        foreach (char letter in text)
        {
            width += font.Advance(letter);
        }

        return width * size;
    }

    /// <summary>Of all its pieces, along the line.</summary>
    public static double Of(Operation.Text text) => text.Runs.Sum(run => Of(run.Text, run.Size ?? text.Size, text.IsBold));

    /// <summary>The rectangle that a text fills, whatever its anchor; for texts that run along or upwards.</summary>
    public static Box Around(Operation.Text text)
    {
        double width = Of(text), start = text.Anchor switch { Anchor.Start => 0, Anchor.Middle => -width / 2, _ => -width };
        double above = Above * text.Size, below = Below * text.Size;

        // Pieces set low reach further down.
        double low = 0, lowest = 0;
        foreach (Run run in text.Runs)
        {
            low += run.Lower;
            lowest = Math.Max(lowest, low + (Below * ((run.Size ?? text.Size) - text.Size)));
        }

        below += lowest;
        return text.Turn switch
        {
            0 => new Box(text.X + start, text.Y - above, width, above + below),
            -90 => new Box(text.X - above, text.Y - start - width, above + below, width),
            _ => throw new ArgumentOutOfRangeException(nameof(text), text.Turn, "Only texts along and upwards have an upright rectangle of their own."),
        };
    }
}
