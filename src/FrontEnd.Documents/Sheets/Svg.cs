using System.Globalization;
using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>Elements of a vector drawing, written one after the other. All texts are escaped here.</summary>
internal sealed class Svg
{
    private readonly StringBuilder _text = new();

    public Svg(double width, double height, string label)
    {
        _text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ").Append(N(width)).Append(' ').Append(N(height)).Append("\" aria-label=\"").Append(Escape(label)).Append("\">\n");
    }

    public string Close() => _text.Append("</svg>\n").ToString();

    public void Rectangle(double x, double y, double width, double height, string style) =>
        _text.Append("<rect x=\"").Append(N(x)).Append("\" y=\"").Append(N(y)).Append("\" width=\"").Append(N(width)).Append("\" height=\"").Append(N(height)).Append("\" ").Append(style).Append("/>\n");

    public void Line(double x1, double y1, double x2, double y2, string style) =>
        _text.Append("<line x1=\"").Append(N(x1)).Append("\" y1=\"").Append(N(y1)).Append("\" x2=\"").Append(N(x2)).Append("\" y2=\"").Append(N(y2)).Append("\" ").Append(style).Append("/>\n");

    public void Circle(double x, double y, double radius, string style) =>
        _text.Append("<circle cx=\"").Append(N(x)).Append("\" cy=\"").Append(N(y)).Append("\" r=\"").Append(N(radius)).Append("\" ").Append(style).Append("/>\n");

    public void Path(string data, string style) => _text.Append("<path d=\"").Append(data).Append("\" ").Append(style).Append("/>\n");

    /// <param name="anchor">start, middle or end.</param>
    public void Text(double x, double y, string text, string anchor = "start", double size = 11, string style = "") =>
        _text.Append("<text x=\"").Append(N(x)).Append("\" y=\"").Append(N(y)).Append("\" text-anchor=\"").Append(anchor).Append("\" font-size=\"").Append(N(size)).Append("\" ").Append(style).Append('>')
            .Append(Escape(text)).Append("</text>\n");

    /// <summary>Text in which what follows a low line is set low: f_c, V_cm.</summary>
    /// <param name="anchor">start, middle or end.</param>
    public void Formula(double x, double y, string text, string anchor, double size)
    {
        _text.Append("<text x=\"").Append(N(x)).Append("\" y=\"").Append(N(y)).Append("\" text-anchor=\"").Append(anchor).Append("\" font-size=\"").Append(N(size)).Append("\">");
        int at = 0;
        for (int low = text.IndexOf('_', StringComparison.Ordinal); 0 <= low; low = text.IndexOf('_', at))
        {
            int end = low + 1;
            while (end < text.Length && char.IsLetterOrDigit(text[end]))
            {
                end++;
            }

            _text.Append(Escape(text[at..low])).Append("<tspan dy=\"2.5\" font-size=\"").Append(N(size * 0.75)).Append("\">").Append(Escape(text[(low + 1)..end])).Append("</tspan>");

            // The shift stays for what follows, so the next letter, if any, takes it back. A blank alone in an element may get lost.
            at = end;
            while (end < text.Length && text[end] == ' ')
            {
                end++;
            }

            if (end < text.Length)
            {
                _text.Append("<tspan dy=\"-2.5\">").Append(Escape(text[at..(end + 1)])).Append("</tspan>");
                at = end + 1;
            }
        }

        _text.Append(Escape(text[at..])).Append("</text>\n");
    }

    /// <summary>Text that runs upwards, for the y axis.</summary>
    public void TextUp(double x, double y, string text) =>
        _text.Append("<text transform=\"translate(").Append(N(x)).Append(' ').Append(N(y)).Append(") rotate(-90)\" text-anchor=\"middle\" font-size=\"11\">").Append(Escape(text)).Append("</text>\n");

    public void Raw(string text) => _text.Append(text);

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
}
