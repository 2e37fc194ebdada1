using System.Globalization;
using PdfSharp.Drawing;

namespace FrontEnd.Documents.Drawing;

/// <summary>A picture's operations on a page of a PDF.</summary>
internal sealed class PdfPainter(XGraphics graphics)
{
    private static readonly XStringFormat OnTheLine = new() { Alignment = XStringAlignment.Near, LineAlignment = XLineAlignment.BaseLine };

    private readonly Dictionary<(double Size, bool IsBold), XFont> _fonts = [];

    public void Draw(Picture picture)
    {
        foreach (Operation operation in picture.Operations)
        {
            Draw(operation);
        }
    }

    private void Draw(Operation operation)
    {
        switch (operation)
        {
            case Operation.Line line:
                graphics.DrawLine(Line(line.Pen), line.X1, line.Y1, line.X2, line.Y2);
                break;
            case Operation.Rectangle { Radius: > 0 } rectangle:
                Shape(rectangle.Pen, rectangle.Fill, (pen, brush) =>
                    graphics.DrawRoundedRectangle(pen, brush, Rectangle(rectangle.Box), new XSize(2 * rectangle.Radius, 2 * rectangle.Radius)));
                break;
            case Operation.Rectangle rectangle:
                Shape(rectangle.Pen, rectangle.Fill, (pen, brush) => graphics.DrawRectangle(pen, brush, Rectangle(rectangle.Box)));
                break;
            case Operation.Circle circle:
                Shape(circle.Pen, circle.Fill, (pen, brush) =>
                    graphics.DrawEllipse(pen, brush, circle.X - circle.Radius, circle.Y - circle.Radius, 2 * circle.Radius, 2 * circle.Radius));
                break;
            case Operation.Path path:
                Draw(path);
                break;
            case Operation.Text text:
                Draw(text);
                break;
            case Operation.Placed placed:
                XGraphicsState before = graphics.Save();
                graphics.TranslateTransform(placed.X, placed.Y);
                graphics.ScaleTransform(placed.Scale);
                Draw(placed.Picture);
                graphics.Restore(before);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(operation), operation, "Operation is not handled.");
        }
    }

    private void Draw(Operation.Path path)
    {
        XGraphicsState? before = null;
        if (path.Clip is { } clip)
        {
            before = graphics.Save();
            graphics.IntersectClip(Rectangle(clip));
        }

        Shape(path.Pen, path.Fill, (pen, brush) =>
        {
            foreach ((XPoint[] points, bool isClosed) in Figures(path.Outline))
            {
                if (isClosed || brush is not null)
                {
                    graphics.DrawPolygon(pen, brush, points, XFillMode.Winding);
                }
                else
                {
                    graphics.DrawLines(pen!, points);
                }
            }
        });
        if (before is not null)
        {
            graphics.Restore(before);
        }
    }

    /// <summary>The pieces of an outline one by one: a path of the library's joins pieces that are not closed.</summary>
    private static IEnumerable<(XPoint[] Points, bool IsClosed)> Figures(Outline outline)
    {
        List<XPoint> points = [];
        foreach (OutlineStep step in outline.Steps)
        {
            if (step.Kind != OutlineStepKind.Line && points.Count > 1)
            {
                yield return ([.. points], step.Kind == OutlineStepKind.Close);
            }

            if (step.Kind == OutlineStepKind.Close)
            {
                // What goes on without a move begins where the closed piece began.
                points = [.. points.Take(1)];
                continue;
            }

            if (step.Kind == OutlineStepKind.Move)
            {
                points.Clear();
            }

            points.Add(new XPoint(step.X, step.Y));
        }

        if (points.Count > 1)
        {
            yield return ([.. points], false);
        }
    }

    private void Draw(Operation.Text text)
    {
        double x = text.Anchor switch { Anchor.Start => 0, Anchor.Middle => -TextWidth.Of(text) / 2, _ => -TextWidth.Of(text) }, y = 0;
        XGraphicsState? before = null;
        if (text.Turn == 0)
        {
            (x, y) = (text.X + x, text.Y);
        }
        else
        {
            before = graphics.Save();
            graphics.TranslateTransform(text.X, text.Y);
            graphics.RotateTransform(text.Turn);
        }

        XSolidBrush brush = new(Colour(text.Colour ?? "#000"));
        foreach (Run run in text.Runs)
        {
            double size = run.Size ?? text.Size;
            y += run.Lower;
            graphics.DrawString((text.IsBold ? FontFile.Bold : FontFile.Regular).Drawable(run.Text), Font(size, text.IsBold), brush, x, y, OnTheLine);
            x += TextWidth.Of(run.Text, size, text.IsBold);
        }

        if (before is not null)
        {
            graphics.Restore(before);
        }
    }

    private XFont Font(double size, bool isBold)
    {
        if (!_fonts.TryGetValue((size, isBold), out XFont? font))
        {
            font = new XFont(FontFile.Regular.Name, size, isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular, XPdfFontOptions.UnicodeDefault);
            _fonts.Add((size, isBold), font);
        }

        return font;
    }

    private static void Shape(Pen? pen, Fill? fill, Action<XPen?, XBrush?> draw)
    {
        if (pen is not null || fill is not null)
        {
            draw(pen is null ? null : Line(pen), fill is null ? null : new XSolidBrush(Colour(fill.Colour)));
        }
    }

    private static XPen Line(Pen pen)
    {
        XPen line = new(Colour(pen.Colour), pen.Width) { LineJoin = pen.IsRound ? XLineJoin.Round : XLineJoin.Miter };
        if (pen.Dash is { } dash)
        {
            // The library counts dashes in widths of the line.
            line.DashPattern = [.. dash.Select(length => length / pen.Width)];
        }

        return line;
    }

    private static XRect Rectangle(Box box) => new(box.X, box.Y, box.Width, box.Height);

    private static XColor Colour(string text)
    {
        string digits = text.Length == 4 ? string.Concat(text[1..].Select(digit => new string(digit, 2))) : text[1..];
        return XColor.FromArgb(int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture) | unchecked((int)0xFF000000));
    }
}
