using System.Globalization;
using System.Text;

namespace FrontEnd.Documents.Drawing;

/// <summary>A picture as SVG. All texts are escaped here.</summary>
internal sealed class Svg
{
    private readonly StringBuilder _text = new();
    private readonly Dictionary<(Picture Picture, Box Box), string> _clips = [];

    private Svg()
    {
    }

    /// <summary>An element for a page or, as it names its namespace, for a file of its own.</summary>
    public static string Of(Picture picture)
    {
        Svg svg = new();
        svg._text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ").Append(N(picture.Width)).Append(' ').Append(N(picture.Height)).Append("\" aria-label=\"").Append(Escape(picture.Label)).Append("\">\n");
        svg.Clips(picture);
        svg.Write(picture);
        return svg._text.Append("</svg>\n").ToString();
    }

    /// <summary>A file of its own, with what a reader of the file must know in front of the picture.</summary>
    public static string File(Picture picture, IEnumerable<string> comments)
    {
        // Two hyphens would end a comment.
        string comment = string.Join('\n', comments.Select(one => Escape(one).Replace("--", "- -", StringComparison.Ordinal).TrimEnd('-')));
        return $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!--\n{comment}\n-->\n" + Of(picture).Replace("<svg ", "<svg font-family=\"DejaVu Sans, Verdana, sans-serif\" ", StringComparison.Ordinal);
    }

    public static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Escape(string text)
    {
        StringBuilder safe = new(text.Length);
        foreach (char letter in text)
        {
            _ = letter switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                _ when letter != '\n' && letter != '\t' && char.IsControl(letter) => safe.Append('\uFFFD'),
                _ => safe.Append(letter),
            };
        }

        return safe.ToString();
    }

    /// <summary>The rectangles outside which nothing is drawn stand first and have names, of which a page with many pictures has each
    /// once.</summary>
    private void Clips(Picture picture)
    {
        foreach (Operation operation in picture.Operations)
        {
            if (operation is Operation.Placed placed)
            {
                Clips(placed.Picture);
            }
            else if (operation is Operation.Path { Clip: { } area } && !_clips.ContainsKey((picture, area)))
            {
                string name = $"plot-{Slug.Of(picture.Label)}", own = name;
                for (int number = 2; _clips.ContainsValue(own); number++)
                {
                    own = $"{name}-{number}";
                }

                _clips.Add((picture, area), own);
                Open("<defs><clipPath id=\"").Append(own).Append("\"><rect");
                Place(area);
                _text.Append("/></clipPath></defs>\n");
            }
        }
    }

    private void Write(Picture picture)
    {
        foreach (Operation operation in picture.Operations)
        {
            switch (operation)
            {
                case Operation.Line line:
                    Open("<line");
                    Number("x1", line.X1);
                    Number("y1", line.Y1);
                    Number("x2", line.X2);
                    Number("y2", line.Y2);
                    Close(line.Pen);
                    break;
                case Operation.Rectangle rectangle:
                    Open("<rect");
                    Place(rectangle.Box);
                    if (rectangle.Radius > 0)
                    {
                        Number("rx", rectangle.Radius);
                    }

                    Close(rectangle.Pen, rectangle.Fill);
                    break;
                case Operation.Circle circle:
                    Open("<circle");
                    Number("cx", circle.X);
                    Number("cy", circle.Y);
                    Number("r", circle.Radius);
                    Close(circle.Pen, circle.Fill);
                    break;
                case Operation.Path path:
                    Open("<path d=\"");
                    Write(path.Outline);
                    _text.Append('"');
                    Close(path.Pen, path.Fill, path.Clip is { } area ? _clips[(picture, area)] : null);
                    break;
                case Operation.Text text:
                    Write(text);
                    break;
                case Operation.Placed placed:
                    Open("<g transform=\"translate(").Append(N(placed.X)).Append(' ').Append(N(placed.Y)).Append(") scale(").Append(placed.Scale.ToString("0.#####", CultureInfo.InvariantCulture)).Append(")\">\n");
                    Write(placed.Picture);
                    _text.Append("</g>\n");
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(picture), operation, "Operation is not handled.");
            }
        }
    }

    private void Write(Outline outline)
    {
        foreach (OutlineStep step in outline.Steps)
        {
            _ = step.Kind == OutlineStepKind.Close
                ? _text.Append('Z')
                : _text.Append(step.Kind == OutlineStepKind.Move ? 'M' : 'L').Append(N(step.X)).Append(' ').Append(N(step.Y));
        }
    }

    private void Write(Operation.Text text)
    {
        Open("<text");
        if (text.Turn == 0)
        {
            Number("x", text.X);
            Number("y", text.Y);
        }
        else
        {
            _text.Append(" transform=\"translate(").Append(N(text.X)).Append(' ').Append(N(text.Y)).Append(") rotate(").Append(N(text.Turn)).Append(")\"");
        }

        Attribute("text-anchor", text.Anchor switch { Anchor.Start => "start", Anchor.Middle => "middle", _ => "end" });
        Number("font-size", text.Size);
        if (text.IsBold)
        {
            Attribute("font-weight", "bold");
        }

        if (text.Colour is { } colour)
        {
            Attribute("fill", colour);
        }

        _text.Append('>');
        foreach (Run run in text.Runs)
        {
            if (run is { Lower: 0, Size: null })
            {
                _text.Append(Escape(run.Text));
                continue;
            }

            _text.Append("<tspan");
            Number("dy", run.Lower);
            if (run.Size is { } size)
            {
                Number("font-size", size);
            }

            _text.Append('>').Append(Escape(run.Text)).Append("</tspan>");
        }

        _text.Append("</text>\n");
    }

    private StringBuilder Open(string tag) => _text.Append(tag);

    private void Place(Box area)
    {
        Number("x", area.X);
        Number("y", area.Y);
        Number("width", area.Width);
        Number("height", area.Height);
    }

    private void Number(string name, double value) => Attribute(name, N(value));

    private void Attribute(string name, string value) => _text.Append(' ').Append(name).Append("=\"").Append(value).Append('"');

    /// <summary>A shape's looks: what is filled first, then the line around it.</summary>
    private void Close(Pen? pen, Fill? fill, string? clip = null)
    {
        Attribute("fill", fill?.Colour ?? "none");
        Close(pen, clip);
    }

    private void Close(Pen? pen, string? clip = null)
    {
        if (pen is not null)
        {
            Attribute("stroke", pen.Colour);
            if (pen.Width != 1)
            {
                Number("stroke-width", pen.Width);
            }

            if (pen.IsRound)
            {
                Attribute("stroke-linejoin", "round");
            }
        }

        if (clip is not null)
        {
            Attribute("clip-path", $"url(#{clip})");
        }

        if (pen?.Dash is { } dash)
        {
            Attribute("stroke-dasharray", string.Join(' ', dash.Select(N)));
        }

        _text.Append("/>\n");
    }
}
