namespace FrontEnd.Documents.Drawing;

/// <summary>How a line is drawn.</summary>
/// <param name="Colour">#rgb or #rrggbb.</param>
/// <param name="Width">In the picture's units.</param>
/// <param name="Dash">Lengths of strokes and gaps by turns, in the picture's units; null for a line without gaps.</param>
/// <param name="IsRound">Where lines meet their corner is rounded.</param>
internal sealed record Pen(string Colour, double Width = 1, double[]? Dash = null, bool IsRound = false);

/// <summary>What a closed outline is filled with.</summary>
/// <param name="Colour">#rgb or #rrggbb.</param>
internal sealed record Fill(string Colour)
{
    public static readonly Fill White = new("#fff");

    public static readonly Fill Black = new("#000");
}
