using FrontEnd.Documents.Drawing;

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
    private static readonly Pen[] Styles =
    [
        new("#000000"), new("#d55e00", Dash: [7, 3]), new("#0072b2", Dash: [2, 2]), new("#009e73", Dash: [9, 3, 2, 3]),
        new("#cc79a7", Dash: [4, 2]), new("#e69f00", Dash: [1, 3]), new("#56b4e9", Dash: [12, 3]), new("#7f7f7f", Dash: [6, 2, 1, 2, 1, 2]),
    ];

    private static readonly Pen Stem1 = new("#000", 2), Stem2 = new("#0072b2", Dash: [2, 2]), Ring = new("#0072b2", 1.5);
    private static readonly Pen Frame = new("#333"), Limit = new("#a00", Dash: [3, 3]), Labelled = new("#bbb", 0.8), Fine = new("#e4e4e4", 0.6);

    private int _explained;
    private readonly List<(string Name, int Style)> _legend = [];
    private readonly List<Action<Picture>> _behind = [];
    private readonly List<Action<Picture>> _lines = [];

    /// <summary>Most lines that styles tell apart.</summary>
    public static int MostLines => Styles.Length;

    /// <summary>A range of x shaded and named.</summary>
    public void Shade(double from, double to, string name)
    {
        double left = X(Math.Clamp(from, x.Low, x.High)), right = X(Math.Clamp(to, x.Low, x.High));
        _behind.Add(picture =>
        {
            picture.Rectangle(left, Top, right - left, PlotHeight, null, new Fill("#eef3f8"));
            picture.Text((left + right) / 2, Top - 6, name, Anchor.Middle, 10, colour: "#456");
        });
    }

    /// <summary>A level across the plot with its name in the legend.</summary>
    public void Level(double value, string name)
    {
        if (y.Low <= value && value <= y.High)
        {
            double at = NextMark();
            _lines.Add(picture =>
            {
                picture.Line(Left, Y(value), Left + PlotWidth, Y(value), Limit);
                picture.Line(Left + PlotWidth + 8, at, Left + PlotWidth + 32, at, Limit);
                picture.Text(Left + PlotWidth + 37, at + 3.5, name, Anchor.Start, 10);
            });
        }
    }

    public void Curve(string name, double[] xs, double[] ys)
    {
        Pen pen = Styles[_legend.Count % Styles.Length] with { Width = _legend.Count == 0 ? 2 : 1.5, IsRound = true };
        Outline data = Data(xs, ys);
        _legend.Add((name, _legend.Count));
        _lines.Add(picture => picture.Path(data, pen, clip: new Box(Left, Top, PlotWidth, PlotHeight)));
    }

    /// <summary>A stem from the bottom with a mark on top: filled or open.</summary>
    public void Stem(double at, double value, bool filled)
    {
        if (at < x.Low || x.High < at)
        {
            return;
        }

        double top = Y(Math.Clamp(value, y.Low, y.High));
        _lines.Add(picture =>
        {
            if (filled)
            {
                picture.Line(X(at), Top + PlotHeight, X(at), top, Stem1);
                picture.Circle(X(at), top, 3.5, null, Fill.Black);
            }
            else
            {
                picture.Line(X(at), Top + PlotHeight, X(at), top, Stem2);
                picture.Circle(X(at), top, 3.5, Ring, Fill.White);
            }
        });
    }

    /// <summary>A text above a mark, kept inside the plot.</summary>
    public void Label(double at, double value, string text)
    {
        double share = x.At(at);
        Anchor anchor = share < 0.05 ? Anchor.Start : 0.95 < share ? Anchor.End : Anchor.Middle;
        _lines.Add(picture =>
            picture.Text(X(at) + (share < 0.05 ? 6 : 0.95 < share ? -6 : 0), Math.Max(Top + 10, Y(Math.Clamp(value, y.Low, y.High)) - 7), text,
                anchor, 10));
    }

    /// <summary>A legend entry for marks: filled or open.</summary>
    public void Explain(string name, bool filled)
    {
        double at = NextMark();
        _lines.Add(picture =>
        {
            picture.Circle(Left + PlotWidth + 20, at, 3.5, filled ? null : Ring, filled ? Fill.Black : Fill.White);
            picture.Text(Left + PlotWidth + 37, at + 3.5, name, Anchor.Start, 10);
        });
    }

    public Picture Draw()
    {
        Picture picture = new(Width, Height, title);
        foreach (Action<Picture> behind in _behind)
        {
            behind(picture);
        }

        Grid(picture);
        foreach (Action<Picture> line in _lines)
        {
            line(picture);
        }

        picture.Rectangle(Left, Top, PlotWidth, PlotHeight, Frame);
        Legend(picture);
        return picture;
    }

    private void Grid(Picture picture)
    {
        foreach ((double value, string label) in x.Ticks())
        {
            picture.Line(X(value), Top, X(value), Top + PlotHeight, label.Length > 0 ? Labelled : Fine);
            picture.Text(X(value), Top + PlotHeight + 14, label, Anchor.Middle, 10);
        }

        foreach ((double value, string label) in y.Ticks())
        {
            picture.Line(Left, Y(value), Left + PlotWidth, Y(value), label.Length > 0 ? Labelled : Fine);
            picture.Text(Left - 5, Y(value) + 3.5, label, Anchor.End, 10);
        }

        picture.Text(Left + (PlotWidth / 2), Height - 8, x.Title, Anchor.Middle);
        picture.TextUp(12, Top + (PlotHeight / 2), y.Title);
    }

    private void Legend(Picture picture)
    {
        if (_legend.Count < 2)
        {
            return;
        }

        double line = Top + 8;
        foreach ((string name, int style) in _legend)
        {
            picture.Line(Left + PlotWidth + 8, line, Left + PlotWidth + 32, line, Styles[style % Styles.Length] with { Width = 2 });
            foreach (string part in TextPage.Wrap(name, LegendLetters))
            {
                picture.Text(Left + PlotWidth + 37, line + 3.5, part, Anchor.Start, 10);
                line += 13;
            }

            line += 5;
        }
    }

    /// <summary>Points outside the plot are kept one step out, so that a line leaves the frame where it should; gaps stay gaps. Of a line over
    /// time, whose first points lie far apart on a logarithmic axis, what lies between them is drawn too.</summary>
    private Outline Data(double[] xs, double[] ys)
    {
        Outline data = new();
        List<(double X, double Y)> piece = [];
        for (int i = 0; i < xs.Length; i++)
        {
            if (!double.IsFinite(ys[i]) || (y.IsLog && ys[i] <= 0) || xs[i] < x.Low * (x.IsLog ? 1 - 1e-9 : 1)
                || x.High * (1 + 1e-9) < xs[i])
            {
                Draw();
                continue;
            }

            piece.Add((X(xs[i]), Math.Clamp(Y(ys[i]), Top - PlotHeight, Top + (2 * PlotHeight))));
        }

        Draw();
        return data;

        void Draw()
        {
            bool down = false;
            foreach ((double at, double height) in x.Unit == "s" ? SmoothLine.Through(piece) : piece)
            {
                _ = down ? data.Line(at, height) : data.Move(at, height);
                down = true;
            }

            piece.Clear();
        }
    }

    private double NextMark() => Top + 8 + (18 * _explained++);

    private double X(double value) => Left + (PlotWidth * x.At(value));

    private double Y(double value) => Top + (PlotHeight * (1 - y.At(value)));
}
