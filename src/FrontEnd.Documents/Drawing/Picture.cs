namespace FrontEnd.Documents.Drawing;

/// <summary>A vector drawing: lines, outlines and texts, one after the other, of which every format writes its own
/// (<see cref="Svg"/>).</summary>
/// <param name="width">In units of its own; a page that shows it scales it.</param>
/// <param name="height">In the same units; y runs from 0 at the top downwards.</param>
/// <param name="label">What it shows, for a reader who does not see it.</param>
internal sealed class Picture(double width, double height, string label)
{
    private readonly List<Operation> _operations = [];

    public double Width => width;

    public double Height => height;

    public string Label => label;

    public IReadOnlyList<Operation> Operations => _operations;

    public void Line(double x1, double y1, double x2, double y2, Pen pen) => _operations.Add(new Operation.Line(x1, y1, x2, y2, pen));

    /// <param name="radius">Of its corners.</param>
    public void Rectangle(double x, double y, double width, double height, Pen? pen, Fill? fill = null, double radius = 0) =>
        _operations.Add(new Operation.Rectangle(new Box(x, y, width, height), radius, pen, fill));

    public void Circle(double x, double y, double radius, Pen? pen, Fill? fill = null) => _operations.Add(new Operation.Circle(x, y, radius, pen, fill));

    /// <param name="clip">What lies outside is not drawn.</param>
    public void Path(Outline outline, Pen? pen, Fill? fill = null, Box? clip = null) => _operations.Add(new Operation.Path(outline, pen, fill, clip));

    /// <summary>Straight lines from corner to corner and back to the first.</summary>
    public void Polygon(Pen? pen, Fill? fill, params ReadOnlySpan<(double X, double Y)> corners)
    {
        Outline outline = new();
        for (int at = 0; at < corners.Length; at++)
        {
            _ = at == 0 ? outline.Move(corners[at].X, corners[at].Y) : outline.Line(corners[at].X, corners[at].Y);
        }

        Path(outline.Close(), pen, fill);
    }

    /// <param name="y">The line that the letters stand on.</param>
    /// <param name="colour">#rgb or #rrggbb; null for black.</param>
    public void Text(double x, double y, string text, Anchor anchor = Anchor.Start, double size = 11, bool bold = false, string? colour = null)
    {
        if (text.Length > 0)
        {
            _operations.Add(new Operation.Text(x, y, [new Run(text)], anchor, size, bold, colour, 0));
        }
    }

    /// <summary>Text that runs upwards, for a y axis, with its middle at this place.</summary>
    public void TextUp(double x, double y, string text, double size = 11) =>
        _operations.Add(new Operation.Text(x, y, [new Run(text)], Anchor.Middle, size, false, null, -90));

    /// <summary>Text in which what follows a low line is set low: f_c, V_cm.</summary>
    public void Formula(double x, double y, string text, Anchor anchor, double size) =>
        _operations.Add(new Operation.Text(x, y, Runs(text, size), anchor, size, false, null, 0));

    /// <summary>Another picture, with its left upper corner at this place.</summary>
    public void Place(Picture picture, double x, double y, double scale = 1) => _operations.Add(new Operation.Placed(picture, x, y, scale));

    /// <summary>Its own texts and those of the pictures in it, in the order of drawing, each at its place in its own picture.</summary>
    public IEnumerable<Operation.Text> AllTexts() => _operations.SelectMany(operation => operation switch
    {
        Operation.Text text => [text],
        Operation.Placed placed => placed.Picture.AllTexts(),
        _ => (IEnumerable<Operation.Text>)[],
    });

    private static List<Run> Runs(string text, double size)
    {
        const double Lower = 2.5;
        List<Run> runs = [];
        int at = 0;
        for (int low = text.IndexOf('_', StringComparison.Ordinal); 0 <= low; low = text.IndexOf('_', at))
        {
            int end = low + 1;
            while (end < text.Length && char.IsLetterOrDigit(text[end]))
            {
                end++;
            }

            runs.Add(new Run(text[at..low]));
            runs.Add(new Run(text[(low + 1)..end], Lower, size * 0.75));

            // The shift stays for what follows, so the next letter, if any, takes it back. A blank alone in an element may get lost.
            at = end;
            while (end < text.Length && text[end] == ' ')
            {
                end++;
            }

            if (end < text.Length)
            {
                runs.Add(new Run(text[at..(end + 1)], -Lower));
                at = end + 1;
            }
        }

        runs.Add(new Run(text[at..]));
        runs.RemoveAll(run => run.Text.Length == 0);
        return runs;
    }
}
