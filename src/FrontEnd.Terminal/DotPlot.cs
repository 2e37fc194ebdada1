using System.Text;

namespace FrontEnd.Terminal;

/// <summary>What a plot shows: lines, marks, axes. Plain numbers in SI units.</summary>
/// <param name="YUnit">Unit of the vertical axis, for its labels.</param>
internal sealed record PlotData(
    string Title, string XUnit, string YUnit, IReadOnlyList<Curve> Curves, IReadOnlyList<PlotMark> Marks, bool LogX, bool LogY)
{
    /// <summary>Bars from the bottom instead of lines; each curve's points stand by themselves.</summary>
    public bool Bars { get; init; }

    /// <summary>How what is drawn goes together with the figures beside the form; "" where that is plain. Stands at the foot.</summary>
    public string Note { get; init; } = "";

    /// <summary>The most decades that a logarithmic vertical axis shows below its top; what lies lower is cut off.</summary>
    public int Decades { get; init; } = 6;
}

/// <summary>A line at one value of the horizontal axis.</summary>
internal sealed record PlotMark(double X, string Label);

/// <summary>Draws a plot into character cells, eight dots a cell where the terminal has them.</summary>
internal sealed class DotPlot
{
    private const int LabelWidth = 9;
    private static readonly byte[] Bits = [0x01, 0x02, 0x04, 0x40, 0x08, 0x10, 0x20, 0x80];

    private readonly PlotData _data;
    private readonly int _columns;
    private readonly int _rows;
    private readonly byte[] _dots;
    private readonly sbyte[] _layers;
    private readonly double _xLow;
    private readonly double _xHigh;
    private readonly double _yLow;
    private readonly double _yHigh;

    private DotPlot(PlotData data, int columns, int rows)
    {
        (_data, _columns, _rows) = (data, columns, rows);
        _dots = new byte[columns * rows];
        _layers = new sbyte[columns * rows];
        Array.Fill(_layers, (sbyte)-1);
        (_xLow, _xHigh) = Limits(data.Curves.SelectMany(curve => curve.X), data.LogX, 30);
        (_yLow, _yHigh) = Limits(data.Curves.SelectMany(curve => curve.Y), data.LogY, data.Decades);
        if (!data.LogY)
        {
            // A little air above and below the curves.
            double air = (_yHigh - _yLow) * 0.05;
            (_yLow, _yHigh) = data.Bars ? (Math.Min(0, _yLow), _yHigh + air) : (_yLow - air, _yHigh + air);
        }
    }

    /// <summary>Draws into a part of the canvas; below a usable size it says so.</summary>
    /// <param name="cursor">Share of the horizontal axis where the cursor stands; null for none.</param>
    public static void Draw(Canvas canvas, int x, int y, int width, int height, PlotData data, double? cursor = null)
    {
        if (width < LabelWidth + 12 || height < 4)
        {
            return;
        }

        if (!data.Curves.Any(curve => curve.Y.Any(double.IsFinite)))
        {
            canvas.Put(x, y, canvas.Fit($"{data.Title}: nothing to draw", width), Ink.Dim);
            return;
        }

        DotPlot plot = new(data, width - LabelWidth, height - 2);
        plot.Grid(canvas, x, y + 1);
        plot.Curves();
        plot.Paint(canvas, x + LabelWidth, y + 1);
        plot.Legend(canvas, x, y, width);
        if (cursor is { } share)
        {
            plot.Cursor(canvas, x + LabelWidth, y + 1, share);
        }
    }

    /// <summary>The horizontal value at a share of the axis.</summary>
    public static double ValueAt(PlotData data, double share)
    {
        (double low, double high) = Limits(data.Curves.SelectMany(curve => curve.X), data.LogX, 30);
        double at = low + ((high - low) * share);
        return data.LogX ? Math.Pow(10, at) : at;
    }

    /// <summary>The curve's point nearest to a horizontal value; null where it has none.</summary>
    public static (double X, double Y)? Nearest(Curve curve, double x, bool log)
    {
        int best = -1;
        double least = double.PositiveInfinity;
        for (int i = 0; i < curve.X.Length; i++)
        {
            double away = log && curve.X[i] > 0 && x > 0 ? Math.Abs(Math.Log(curve.X[i] / x)) : Math.Abs(curve.X[i] - x);
            if (away < least && double.IsFinite(curve.Y[i]))
            {
                (best, least) = (i, away);
            }
        }

        return best < 0 ? null : (curve.X[best], curve.Y[best]);
    }

    private static (double Low, double High) Limits(IEnumerable<double> values, bool log, int decades)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (double value in values)
        {
            if (double.IsFinite(value) && (!log || value > 0))
            {
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }
        }

        if (high < low)
        {
            return (0, 1);
        }

        if (log)
        {
            (low, high) = (Math.Log10(low), Math.Log10(high));
            low = Math.Max(low, high - decades);
        }

        return high - low < 1e-9 * Math.Max(1, Math.Abs(high)) ? (low - 0.5, high + 0.5) : (low, high);
    }

    private double DotX(double x) =>
        ((_data.LogX ? Math.Log10(Math.Max(x, double.Epsilon)) : x) - _xLow) / (_xHigh - _xLow) * ((_columns * 2) - 1);

    private double DotY(double y) =>
        (_yHigh - (_data.LogY ? Math.Log10(Math.Max(y, double.Epsilon)) : y)) / (_yHigh - _yLow) * ((_rows * 4) - 1);

    private void Dot(int x, int y, int layer)
    {
        if (x < 0 || y < 0 || _columns * 2 <= x || _rows * 4 <= y)
        {
            return;
        }

        int at = ((y >> 2) * _columns) + (x >> 1);
        byte bit = Bits[((x & 1) * 4) + (y & 3)];
        if (_layers[at] < layer)
        {
            (_layers[at], _dots[at]) = ((sbyte)layer, bit);
        }
        else if (_layers[at] == layer)
        {
            _dots[at] |= bit;
        }
    }

    private void Segment(double x0, double y0, double x1, double y1, int layer)
    {
        double top = (_rows * 4) + 1;
        if ((y0 < -1 && y1 < -1) || (top < y0 && top < y1))
        {
            return;
        }

        // Clipped in y, so that a steep piece costs no more than the plot is high.
        (x0, y0) = Clip(x0, y0, x1, y1, top);
        (x1, y1) = Clip(x1, y1, x0, y0, top);
        int steps = (int)Math.Ceiling(Math.Max(Math.Abs(x1 - x0), Math.Abs(y1 - y0)));
        for (int i = 0; i <= steps; i++)
        {
            double t = steps == 0 ? 0 : i / (double)steps;
            Dot((int)Math.Round(x0 + ((x1 - x0) * t)), (int)Math.Round(y0 + ((y1 - y0) * t)), layer);
        }
    }

    private static (double X, double Y) Clip(double x, double y, double otherX, double otherY, double top)
    {
        double limit = y < -1 ? -1 : top < y ? top : y;
        return limit == y || y == otherY ? (x, y) : (x + ((otherX - x) * (limit - y) / (otherY - y)), limit);
    }

    private void Curves()
    {
        for (int number = _data.Curves.Count - 1; 0 <= number; number--)
        {
            Curve curve = _data.Curves[number];
            int layer = 2 + Math.Min(3, number);
            for (int i = 0; i < curve.X.Length; i++)
            {
                if (!double.IsFinite(curve.Y[i]) || (_data.LogX && curve.X[i] <= 0))
                {
                    continue;
                }

                double x = DotX(curve.X[i]), y = DotY(curve.Y[i]);
                if (_data.Bars)
                {
                    Segment(x, Math.Max(-1, y), x, (_rows * 4) - 1, layer);
                }
                else if (i > 0 && double.IsFinite(curve.Y[i - 1]) && (!_data.LogX || curve.X[i - 1] > 0))
                {
                    Segment(DotX(curve.X[i - 1]), DotY(curve.Y[i - 1]), x, y, layer);
                }
                else
                {
                    Dot((int)Math.Round(x), (int)Math.Round(y), layer);
                }
            }
        }
    }

    private void Grid(Canvas canvas, int left, int top)
    {
        int last = -2;
        foreach (double tick in Ticks(_xLow, _xHigh, _data.LogX, Math.Max(2, _columns / 10)))
        {
            double x = DotX(_data.LogX ? Math.Pow(10, tick) : tick);
            for (int y = 0; y < _rows * 4; y += 4)
            {
                Dot((int)Math.Round(x), y, 0);
            }

            string label = canvas.Say(Label(_data.LogX ? Math.Pow(10, tick) : tick, _data.XUnit));
            int at = Math.Clamp(((int)Math.Round(x) / 2) - (label.Length / 2), 0, Math.Max(0, _columns - label.Length));
            if (last + 1 < at)
            {
                canvas.Put(left + LabelWidth + at, top + _rows, label, Ink.Dim);
                last = at + label.Length;
            }
        }

        int lastRow = -1, labels = 0;
        foreach (double tick in Ticks(_yLow, _yHigh, _data.LogY, Math.Max(2, _rows / 2)).Reverse())
        {
            double y = DotY(_data.LogY ? Math.Pow(10, tick) : tick);
            for (int x = 0; x < _columns * 2; x += 4)
            {
                Dot(x, (int)Math.Round(y), 0);
            }

            int row = Math.Clamp((int)Math.Round(y) / 4, 0, _rows - 1);
            if (lastRow < row)
            {
                canvas.PutRight(
                    left + LabelWidth - 1, top + row,
                    canvas.Fit(Label(_data.LogY ? Math.Pow(10, tick) : tick, _data.YUnit), LabelWidth - 1), Ink.Dim);
                (lastRow, labels) = (row, labels + 1);
            }
        }

        // Within one decade there may be no round value or one: then the ends of the axis are named.
        foreach (int row in labels < 2 ? (int[])[0, _rows - 1] : [])
        {
            double share = row / (double)Math.Max(1, _rows - 1), at = _yHigh - (share * (_yHigh - _yLow));
            canvas.PutRight(
                left + LabelWidth - 1, top + row, canvas.Fit(Label(_data.LogY ? Math.Pow(10, at) : at, _data.YUnit), LabelWidth - 1),
                Ink.Dim);
        }

        foreach (PlotMark mark in _data.Marks)
        {
            double x = DotX(mark.X);
            for (int y = 0; y < _rows * 4; y += 2)
            {
                Dot((int)Math.Round(x), y, 1);
            }
        }
    }

    private static string Label(double value, string unit) =>
        Math.Abs(value) < 1e-12 && unit is not ("V/√Hz" or "F")
            ? "0 " + unit
            : QuantityText.FormatTrimmed(value, unit, 3).Replace("/√Hz", "/√Hz");

    private static IEnumerable<double> Ticks(double low, double high, bool log, int most)
    {
        double step = log ? Math.Max(1, Math.Ceiling((high - low) / most)) : Nice((high - low) / most);
        for (double tick = Math.Ceiling((low / step) - 1e-9) * step; tick <= high + (step * 1e-9); tick += step)
        {
            yield return tick;
        }
    }

    private static double Nice(double raw)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double lead = raw / power;
        return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
    }

    private void Paint(Canvas canvas, int left, int top)
    {
        for (int row = 0; row < _rows; row++)
        {
            for (int column = 0; column < _columns; column++)
            {
                int at = (row * _columns) + column;
                if (_dots[at] == 0)
                {
                    continue;
                }

                int layer = _layers[at];
                Rune rune = canvas.Ascii ? new Rune(layer switch { 0 => '.', 1 => '|', _ => MarkOf(layer) }) : new Rune(0x2800 + _dots[at]);
                canvas.Set(left + column, top + row, rune, InkOf(layer));
            }
        }

        if (_data.Curves.Count > 1 && !canvas.Ascii)
        {
            for (int number = 0; number < Math.Min(4, _data.Curves.Count); number++)
            {
                MarkCurve(canvas, left, top, number);
            }
        }

        foreach (PlotMark mark in _data.Marks)
        {
            int column = (int)Math.Round(DotX(mark.X)) / 2;
            if (0 <= column && column < _columns)
            {
                string label = canvas.Say(mark.Label);
                canvas.Put(left + Math.Clamp(column + 1, 0, Math.Max(0, _columns - label.Length)), top, label, Ink.Marker);
            }
        }
    }

    /// <summary>The curve's own character here and there along it, at other columns than its neighbours': colour alone does not tell curves
    /// apart.</summary>
    private void MarkCurve(Canvas canvas, int left, int top, int number)
    {
        const int Apart = 16;
        int layer = 2 + number, since = Apart - 2 - (number * Apart / 4);
        for (int column = 0; column < _columns; column++, since++)
        {
            List<int> rows = [.. Enumerable.Range(0, _rows).Where(row => _layers[(row * _columns) + column] == layer)];
            if (rows.Count > 0 && Apart <= since)
            {
                canvas.Set(left + column, top + rows[rows.Count / 2], new Rune(MarkOf(layer)), InkOf(layer));
                since = 0;
            }
        }
    }

    private static char MarkOf(int layer) => layer switch
    {
        2 => '*',
        3 => '+',
        4 => 'o',
        _ => 'x',
    };

    private static Ink InkOf(int layer) => layer switch
    {
        0 => Ink.Grid,
        1 => Ink.Marker,
        2 => Ink.Curve1,
        3 => Ink.Curve2,
        4 => Ink.Curve3,
        _ => Ink.Curve4,
    };

    private void Legend(Canvas canvas, int x, int y, int width)
    {
        List<string> names = [.. _data.Curves.Select((curve, number) => canvas.Say(
            $"{(canvas.Ascii || _data.Curves.Count > 1 ? MarkOf(2 + number).ToString() : "⠒⠒")} {curve.Name}"))];

        // Where room is scarce the title gives way: without its name a curve's mark says nothing.
        const int LeastTitle = 9, LeastName = 5;
        int at = canvas.Put(
            x, y,
            canvas.Fit(_data.Title, Math.Clamp(width - names.Sum(name => 2 + Lettering.Columns(name)), Math.Min(width, LeastTitle), width)),
            Ink.Strong);
        for (int number = 0; number < names.Count; number++)
        {
            // The names behind it must have some room as well.
            int room = x + width - at - 2 - ((names.Count - 1 - number) * (LeastName + 2));
            if (room < LeastName)
            {
                break;
            }

            at = canvas.Put(at + 2, y, canvas.Fit(names[number], room), InkOf(2 + Math.Min(3, number)));
        }
    }

    private void Cursor(Canvas canvas, int left, int top, double share)
    {
        int column = (int)Math.Round(Math.Clamp(share, 0, 1) * (_columns - 1));
        for (int row = 0; row < _rows; row++)
        {
            if (canvas.RuneAt(left + column, top + row).Value == ' ')
            {
                canvas.Set(left + column, top + row, new Rune(canvas.Ascii ? '|' : '│'), Ink.Key);
            }
            else
            {
                canvas.Tint(left + column, top + row, 1, Ink.Selected);
            }
        }
    }
}
