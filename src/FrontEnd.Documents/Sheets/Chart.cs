using System.Text;

namespace FrontEnd.Documents.Sheets;

/// <summary>A line chart as a vector drawing: axes with units, ticks in decades, the legend beside the plot so that it covers
/// nothing.</summary>
/// <remarks>Our own and small, because a sheet must look the same wherever it is opened: plotting packages place every letter by the
/// measures of one font, which the reader may not have, and bring a native drawing library that does not fit into a single native
/// executable. Here text is anchored and its width never matters to the layout.</remarks>
internal sealed class Chart(string title, Axis x, Axis y)
{
    private const double Width = 760, Height = 200, Left = 78, Right = 190, Top = 24, Bottom = 42;
    private const int LegendLetters = 27;
    private const double PlotWidth = Width - Left - Right, PlotHeight = Height - Top - Bottom;

    // Colours that stay apart for every kind of colour vision (Okabe and Ito, from memory), each with a dash of its own for print without
    // colour.
    private static readonly (string Colour, string Dash)[] Styles =
    [
        ("#000000", ""), ("#d55e00", "7 3"), ("#0072b2", "2 2"), ("#009e73", "9 3 2 3"), ("#cc79a7", "4 2"), ("#e69f00", "1 3"),
        ("#56b4e9", "12 3"), ("#7f7f7f", "6 2 1 2 1 2"),
    ];

    private int _explained;
    private readonly List<(string Name, int Style)> _legend = [];
    private readonly List<Action<Svg>> _behind = [];
    private readonly List<Action<Svg>> _lines = [];

    /// <summary>Most lines that styles tell apart.</summary>
    public static int MostLines => Styles.Length;

    /// <summary>A range of x shaded and named.</summary>
    public void Shade(double from, double to, string name)
    {
        double left = X(Math.Clamp(from, x.Low, x.High)), right = X(Math.Clamp(to, x.Low, x.High));
        _behind.Add(svg =>
        {
            svg.Rectangle(left, Top, right - left, PlotHeight, "fill=\"#eef3f8\"");
            svg.Text((left + right) / 2, Top - 6, name, "middle", 10, "fill=\"#456\"");
        });
    }

    /// <summary>A level across the plot with its name in the legend.</summary>
    public void Level(double value, string name)
    {
        if (y.Low <= value && value <= y.High)
        {
            const string Style = "stroke=\"#a00\" stroke-width=\"1\" stroke-dasharray=\"3 3\"";
            double at = NextMark();
            _lines.Add(svg =>
            {
                svg.Line(Left, Y(value), Left + PlotWidth, Y(value), Style);
                svg.Line(Left + PlotWidth + 8, at, Left + PlotWidth + 32, at, Style);
                svg.Text(Left + PlotWidth + 37, at + 3.5, name, "start", 10);
            });
        }
    }

    public void Curve(string name, double[] xs, double[] ys)
    {
        (string colour, string dash) = Styles[_legend.Count % Styles.Length];
        string data = Data(xs, ys);
        string width = _legend.Count == 0 ? "2" : "1.5";
        _legend.Add((name, _legend.Count));
        _lines.Add(svg =>
            svg.Path(data,
                $"fill=\"none\" stroke=\"{colour}\" stroke-width=\"{width}\" stroke-linejoin=\"round\" clip-path=\"url(#{Clip})\"{(dash.Length == 0 ? "" : $" stroke-dasharray=\"{dash}\"")}"));
    }

    /// <summary>A stem from the bottom with a mark on top: filled or open.</summary>
    public void Stem(double at, double value, bool filled)
    {
        if (at < x.Low || x.High < at)
        {
            return;
        }

        double top = Y(Math.Clamp(value, y.Low, y.High));
        _lines.Add(svg =>
        {
            if (filled)
            {
                svg.Line(X(at), Top + PlotHeight, X(at), top, "stroke=\"#000\" stroke-width=\"2\"");
                svg.Circle(X(at), top, 3.5, "fill=\"#000\"");
            }
            else
            {
                svg.Line(X(at), Top + PlotHeight, X(at), top, "stroke=\"#0072b2\" stroke-width=\"1\" stroke-dasharray=\"2 2\"");
                svg.Circle(X(at), top, 3.5, "fill=\"#fff\" stroke=\"#0072b2\" stroke-width=\"1.5\"");
            }
        });
    }

    /// <summary>A text above a mark, kept inside the plot.</summary>
    public void Label(double at, double value, string text)
    {
        double share = x.At(at);
        string anchor = share < 0.05 ? "start" : 0.95 < share ? "end" : "middle";
        _lines.Add(svg =>
            svg.Text(X(at) + (share < 0.05 ? 6 : 0.95 < share ? -6 : 0), Math.Max(Top + 10, Y(Math.Clamp(value, y.Low, y.High)) - 7), text,
                anchor, 10));
    }

    /// <summary>A legend entry for marks: filled or open.</summary>
    public void Explain(string name, bool filled)
    {
        double at = NextMark();
        _lines.Add(svg =>
        {
            svg.Circle(Left + PlotWidth + 20, at, 3.5, filled ? "fill=\"#000\"" : "fill=\"#fff\" stroke=\"#0072b2\" stroke-width=\"1.5\"");
            svg.Text(Left + PlotWidth + 37, at + 3.5, name, "start", 10);
        });
    }

    public string Draw()
    {
        Svg svg = new(Width, Height, title);
        svg.Raw($"<defs><clipPath id=\"{Clip}\"><rect x=\"{Svg.N(Left)}\" y=\"{Svg.N(Top)}\" width=\"{Svg.N(PlotWidth)}\" height=\"{Svg.N(PlotHeight)}\"/></clipPath></defs>\n");
        foreach (Action<Svg> behind in _behind)
        {
            behind(svg);
        }

        Grid(svg);
        foreach (Action<Svg> line in _lines)
        {
            line(svg);
        }

        svg.Rectangle(Left, Top, PlotWidth, PlotHeight, "fill=\"none\" stroke=\"#333\"");
        Legend(svg);
        return svg.Close();
    }

    private void Grid(Svg svg)
    {
        foreach ((double value, string label) in x.Ticks())
        {
            svg.Line(X(value), Top, X(value), Top + PlotHeight, label.Length > 0
                ? "stroke=\"#bbb\" stroke-width=\"0.8\""
                : "stroke=\"#e4e4e4\" stroke-width=\"0.6\"");
            svg.Text(X(value), Top + PlotHeight + 14, label, "middle", 10);
        }

        foreach ((double value, string label) in y.Ticks())
        {
            svg.Line(Left, Y(value), Left + PlotWidth, Y(value), label.Length > 0
                ? "stroke=\"#bbb\" stroke-width=\"0.8\""
                : "stroke=\"#e4e4e4\" stroke-width=\"0.6\"");
            svg.Text(Left - 5, Y(value) + 3.5, label, "end", 10);
        }

        svg.Text(Left + (PlotWidth / 2), Height - 8, x.Title, "middle");
        svg.TextUp(12, Top + (PlotHeight / 2), y.Title);
    }

    private void Legend(Svg svg)
    {
        if (_legend.Count < 2)
        {
            return;
        }

        double line = Top + 8;
        foreach ((string name, int style) in _legend)
        {
            (string colour, string dash) = Styles[style % Styles.Length];
            svg.Line(Left + PlotWidth + 8, line, Left + PlotWidth + 32, line,
                $"stroke=\"{colour}\" stroke-width=\"2\"{(dash.Length == 0 ? "" : $" stroke-dasharray=\"{dash}\"")}");
            foreach (string part in TextPage.Wrap(name, LegendLetters))
            {
                svg.Text(Left + PlotWidth + 37, line + 3.5, part, "start", 10);
                line += 13;
            }

            line += 5;
        }
    }

    /// <summary>Points outside the plot are kept one step out, so that a line leaves the frame where it should; gaps stay gaps.</summary>
    private string Data(double[] xs, double[] ys)
    {
        StringBuilder data = new();
        bool down = false;
        for (int i = 0; i < xs.Length; i++)
        {
            if (!double.IsFinite(ys[i]) || (y.IsLog && ys[i] <= 0) || xs[i] < x.Low * (x.IsLog ? 1 - 1e-9 : 1)
                || x.High * (1 + 1e-9) < xs[i])
            {
                down = false;
                continue;
            }

            double height = Math.Clamp(Y(ys[i]), Top - PlotHeight, Top + (2 * PlotHeight));
            data.Append(down ? 'L' : 'M').Append(Svg.N(X(xs[i]))).Append(' ').Append(Svg.N(height));
            down = true;
        }

        return data.ToString();
    }

    private double NextMark() => Top + 8 + (18 * _explained++);

    private string Clip => "plot-" + Slug.Of(title);

    private double X(double value) => Left + (PlotWidth * x.At(value));

    private double Y(double value) => Top + (PlotHeight * (1 - y.At(value)));
}
