namespace FrontEnd.Documents.Drawing;

/// <summary>Which of a text's points stands at its place.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>An upright rectangle, in the picture's units; y runs downwards.</summary>
internal readonly record struct Box(double X, double Y, double Width, double Height);

/// <summary>A piece of a text.</summary>
/// <param name="Lower">So much below the piece before it, in the picture's units; what follows stays as low.</param>
/// <param name="Size">Its own size; null for the text's.</param>
internal sealed record Run(string Text, double Lower = 0, double? Size = null);

/// <summary>One thing that a picture is drawn from. All places are in the picture's units, y runs downwards.</summary>
internal abstract record Operation
{
    public sealed record Line(double X1, double Y1, double X2, double Y2, Pen Pen) : Operation;

    /// <param name="Radius">Of its corners; 0 for sharp ones.</param>
    public sealed record Rectangle(Box Box, double Radius, Pen? Pen, Fill? Fill) : Operation;

    public sealed record Circle(double X, double Y, double Radius, Pen? Pen, Fill? Fill) : Operation;

    /// <param name="Clip">What lies outside is not drawn; null for no such limit.</param>
    public sealed record Path(Outline Outline, Pen? Pen, Fill? Fill, Box? Clip) : Operation;

    /// <param name="Y">The line that the letters stand on.</param>
    /// <param name="Size">Of the letters, in the picture's units.</param>
    /// <param name="Colour">#rgb or #rrggbb; null for the writer's own, which is black.</param>
    /// <param name="Turn">Around its place, in degrees, to the right.</param>
    public sealed record Text(double X, double Y, IReadOnlyList<Run> Runs, Anchor Anchor, double Size, bool IsBold, string? Colour, double Turn) : Operation;

    /// <summary>Another picture, with its left upper corner at this place.</summary>
    /// <param name="Scale">Its size here over its own.</param>
    public sealed record Placed(Picture Picture, double X, double Y, double Scale) : Operation;
}
