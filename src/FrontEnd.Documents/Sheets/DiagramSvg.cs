using System.Text;
using FrontEnd.Results;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>A diagram's grid of letters as a vector drawing: lines, parts, arrows and text stand where the letters stand.</summary>
internal static class DiagramSvg
{
    /// <summary>Letters of the widest diagram; all drawings are as wide, so that their text has one size.</summary>
    public const int Columns = 58;

    private const double CellWidth = 6.4, CellHeight = 14, TextSize = 10.5, Plate = 2.2;
    private const string Stroke = "fill=\"none\" stroke=\"#222\" stroke-width=\"1.1\"";

    [Flags]
    private enum Way
    {
        None = 0,
        Up = 1,
        Right = 2,
        Down = 4,
        Left = 8,
    }

    public static string Of(Diagram diagram, Assessment assessment) => new Grid(diagram.Lines(assessment)).Draw(diagram.Title);

    private static Way Ways(char letter) => letter switch
    {
        '│' => Way.Up | Way.Down,
        '─' => Way.Left | Way.Right,
        '┌' => Way.Right | Way.Down,
        '┐' => Way.Left | Way.Down,
        '└' => Way.Up | Way.Right,
        '┘' => Way.Up | Way.Left,
        '├' => Way.Up | Way.Right | Way.Down,
        '┤' => Way.Up | Way.Down | Way.Left,
        '┬' => Way.Right | Way.Down | Way.Left,
        '┴' => Way.Up | Way.Right | Way.Left,
        '┼' => Way.Up | Way.Right | Way.Down | Way.Left,
        '┷' or '╧' => Way.Up,
        _ => Way.None,
    };

    private sealed class Grid
    {
        private readonly string[] _rows;
        private readonly Way[,] _ways;
        private readonly bool[,] _taken;
        private readonly bool[,] _edge;
        private readonly List<(int Left, int Top, int Right, int Bottom)> _boxes = [];
        private Svg _svg = new(0, 0, "");

        public Grid(IReadOnlyList<string> lines)
        {
            _rows = [.. lines.Select(line => line.PadRight(Columns))];
            int width = _rows.Max(row => row.Length);
            _rows = [.. _rows.Select(row => row.PadRight(width))];
            _ways = new Way[_rows.Length, width];
            _taken = new bool[_rows.Length, width];
            _edge = new bool[_rows.Length, width];
            for (int row = 0; row < _rows.Length; row++)
            {
                for (int column = 0; column < width; column++)
                {
                    _ways[row, column] = Ways(_rows[row][column]);
                    _taken[row, column] = _ways[row, column] != Way.None;
                }
            }
        }

        public string Draw(string title)
        {
            _svg = new Svg(Columns * CellWidth, (_rows.Length * CellHeight) + 2, title);
            for (int row = 0; row < _rows.Length; row++)
            {
                Symbols(row);
                for (int column = 0; column < _rows[row].Length; column++)
                {
                    Capacitor(row, column);
                    Head(row, column);
                    End(row, column);
                    Boxes(row, column);
                }
            }

            Lines();
            Nodes();
            for (int row = 0; row < _rows.Length; row++)
            {
                Texts(row);
            }

            return _svg.Close();
        }

        private static double X(double column) => column * CellWidth;

        private static double Y(double row) => 1 + (row * CellHeight);

        private char At(int row, int column) =>
            0 <= row && row < _rows.Length && 0 <= column && column < _rows[row].Length ? _rows[row][column] : ' ';

        private bool Goes(int row, int column, Way way) => Ways(At(row, column)).HasFlag(way);

        /// <summary>Parts and sources: names in a frame.</summary>
        private void Symbols(int row)
        {
            string line = _rows[row];
            for (int column = 0; column < line.Length; column++)
            {
                int end = line[column] == '[' ? line.IndexOf(']', column) + 1 : 0;
                if (end > 0)
                {
                    _svg.Rectangle(X(column) + 1, Y(row) + 1, ((end - column) * CellWidth) - 2, CellHeight - 2,
                        "fill=\"#fff\" stroke=\"#222\" stroke-width=\"1.1\"");
                    _svg.Formula(X((column + end) / 2.0), Y(row) + 10.6, line[(column + 1)..(end - 1)], "middle", TextSize - 1);
                    Take(row, column, end - column);
                }
                else if (line[column] == '(' && At(row, column + 2) == ')' && !char.IsLetterOrDigit(At(row, column - 1)))
                {
                    _svg.Circle(X(column + 1.5), Y(row + 0.5), 8, Stroke);
                    _svg.Formula(X(column + 1.5), Y(row) + 10.6, line[(column + 1)..(column + 2)], "middle", TextSize);
                    Take(row, column, 3);
                }
            }
        }

        private void Take(int row, int column, int count)
        {
            for (int at = column; at < column + count; at++)
            {
                _taken[row, at] = true;
                _ways[row, at] = Way.None;
            }
        }

        private void Capacitor(int row, int column)
        {
            if (At(row, column) == '┤' && At(row, column + 1) == '├' && At(row, column - 1) == '─' && At(row, column + 2) == '─')
            {
                double middle = X(column + 1), y = Y(row + 0.5);
                _svg.Path($"M{Svg.N(X(column))} {Svg.N(y)}H{Svg.N(middle - Plate)}M{Svg.N(middle + Plate)} {Svg.N(y)}H{Svg.N(X(column + 2))}M{Svg.N(middle - Plate)} {Svg.N(y - 6)}v12M{Svg.N(middle + Plate)} {Svg.N(y - 6)}v12", Stroke);
                Take(row, column, 2);
            }
            else if (At(row, column) == '┴' && At(row + 1, column) == '┬' && At(row, column - 1) == '─' && At(row, column + 1) == '─'
                && At(row + 1, column - 1) == '─' && At(row + 1, column + 1) == '─')
            {
                double x = X(column + 0.5), between = Y(row + 1);
                _svg.Path($"M{Svg.N(x)} {Svg.N(Y(row))}V{Svg.N(between - Plate)}M{Svg.N(x)} {Svg.N(between + Plate)}V{Svg.N(Y(row + 2))}M{Svg.N(x - 8)} {Svg.N(between - Plate)}h16M{Svg.N(x - 8)} {Svg.N(between + Plate)}h16", Stroke);
                Take(row, column - 1, 3);
                Take(row + 1, column - 1, 3);
            }
        }

        private void Head(int row, int column)
        {
            double x = X(column), y = Y(row), middle = X(column + 0.5), centre = Y(row + 0.5);
            string? head = At(row, column) switch
            {
                '>' when Goes(row, column - 1, Way.Right) => $"M{Svg.N(x)} {Svg.N(centre)}h{Svg.N(CellWidth)}m-6 -3.2l6 3.2l-6 3.2",
                '<' when Goes(row, column + 1, Way.Left) =>
                    $"M{Svg.N(x + CellWidth)} {Svg.N(centre)}h{Svg.N(-CellWidth)}m6 -3.2l-6 3.2l6 3.2",
                '^' when Goes(row + 1, column, Way.Up) || At(row + 1, column) == '[' || At(row + 1, column - 1) == '['
                    || At(row + 1, column - 2) == '[' => $"M{Svg.N(middle)} {Svg.N(y + CellHeight)}V{Svg.N(y)}m-3.2 6l3.2 -6l3.2 6",
                'v' when Goes(row - 1, column, Way.Down) => $"M{Svg.N(middle)} {Svg.N(y)}v{Svg.N(CellHeight)}m-3.2 -6l3.2 6l3.2 -6",
                _ => null,
            };
            if (head is not null)
            {
                _svg.Path(head, Stroke);
                _taken[row, column] = true;
            }
        }

        /// <summary>Common is one thick bar, earth three.</summary>
        private void End(int row, int column)
        {
            double x = X(column + 0.5), y = Y(row + 0.5);
            if (At(row, column) == '┷')
            {
                _svg.Path($"M{Svg.N(x - 8)} {Svg.N(y)}h16", "fill=\"none\" stroke=\"#222\" stroke-width=\"2.2\"");
            }
            else if (At(row, column) == '╧')
            {
                _svg.Path($"M{Svg.N(x - 8)} {Svg.N(y)}h16M{Svg.N(x - 5)} {Svg.N(y + 3)}h10M{Svg.N(x - 2)} {Svg.N(y + 6)}h4", Stroke);
            }
            else if (At(row, column) == '┆')
            {
                _svg.Path($"M{Svg.N(x)} {Svg.N(Y(row))}v{Svg.N(CellHeight)}", Stroke + " stroke-dasharray=\"3 3\"");
                _taken[row, column] = true;
            }
        }

        /// <summary>A closed frame of lines without a part in it is a block; wires that touch it make no node.</summary>
        private void Boxes(int row, int column)
        {
            if (At(row, column) is not ('┌' or '├'))
            {
                return;
            }

            int right = column + 1, bottom = row + 1;
            while (Ways(At(row, right)).HasFlag(Way.Left | Way.Right) && !Goes(row, right, Way.Down))
            {
                right++;
            }

            while (Ways(At(bottom, column)).HasFlag(Way.Up | Way.Down) && !Goes(bottom, column, Way.Right))
            {
                bottom++;
            }

            bool closed = Goes(row, right, Way.Left) && Goes(row, right, Way.Down) && Goes(bottom, column, Way.Up)
                && Goes(bottom, column, Way.Right) && Goes(bottom, right, Way.Up) && Goes(bottom, right, Way.Left)
                && Enumerable.Range(column + 1, right - column - 1).All(at => Goes(bottom, at, Way.Left) && Goes(bottom, at, Way.Right))
                && Enumerable.Range(row + 1, bottom - row - 1).All(at => Goes(at, right, Way.Up) && Goes(at, right, Way.Down));
            if (!closed)
            {
                return;
            }

            _boxes.Add((column, row, right, bottom));
            for (int y = row; y <= bottom; y++)
            {
                for (int x = column; x <= right; x++)
                {
                    _edge[y, x] |= y == row || y == bottom || x == column || x == right;
                }
            }
        }

        private void Lines()
        {
            StringBuilder path = new();
            for (int row = 0; row < _rows.Length; row++)
            {
                for (int column = 0; column < _rows[row].Length; column++)
                {
                    double x = X(column + 0.5), y = Y(row + 0.5);
                    Way ways = _ways[row, column];

                    // Half a cell to each side; straight runs are drawn once from their left or upper end.
                    if (ways.HasFlag(Way.Right) && !(ways.HasFlag(Way.Left) && column > 0 && _ways[row, column - 1].HasFlag(Way.Right)))
                    {
                        int end = column;
                        while (end + 1 < _rows[row].Length && _ways[row, end].HasFlag(Way.Right) && _ways[row, end + 1].HasFlag(Way.Left))
                        {
                            end++;
                        }

                        path.Append($"M{Svg.N(ways.HasFlag(Way.Left) ? X(column) : x)} {Svg.N(y)}H{Svg.N(X(end + (_ways[row, end].HasFlag(Way.Right) ? 1 : 0.5)))}");
                    }
                    else if (ways.HasFlag(Way.Left) && !ways.HasFlag(Way.Right)
                        && !(column > 0 && _ways[row, column - 1].HasFlag(Way.Right)))
                    {
                        path.Append($"M{Svg.N(X(column))} {Svg.N(y)}H{Svg.N(x)}");
                    }

                    if (ways.HasFlag(Way.Down) && !(ways.HasFlag(Way.Up) && row > 0 && _ways[row - 1, column].HasFlag(Way.Down)))
                    {
                        int end = row;
                        while (end + 1 < _rows.Length && _ways[end, column].HasFlag(Way.Down) && _ways[end + 1, column].HasFlag(Way.Up))
                        {
                            end++;
                        }

                        path.Append($"M{Svg.N(x)} {Svg.N(ways.HasFlag(Way.Up) ? Y(row) : y)}V{Svg.N(Y(end + (_ways[end, column].HasFlag(Way.Down) ? 1 : 0.5)))}");
                    }
                    else if (ways.HasFlag(Way.Up) && !ways.HasFlag(Way.Down) && !(row > 0 && _ways[row - 1, column].HasFlag(Way.Down)))
                    {
                        path.Append($"M{Svg.N(x)} {Svg.N(Y(row))}V{Svg.N(y)}");
                    }
                }
            }

            if (path.Length > 0)
            {
                _svg.Path(path.ToString(), Stroke);
            }
        }

        private void Nodes()
        {
            for (int row = 0; row < _rows.Length; row++)
            {
                for (int column = 0; column < _rows[row].Length; column++)
                {
                    if (!_edge[row, column] && 3 <= System.Numerics.BitOperations.PopCount((uint)_ways[row, column]))
                    {
                        _svg.Circle(X(column + 0.5), Y(row + 0.5), 2.2, "fill=\"#222\"");
                    }
                }
            }
        }

        /// <summary>What is left is text; two blanks or a line end a piece. In a block it stands in the middle.</summary>
        private void Texts(int row)
        {
            int column = 0;
            string line = _rows[row];
            while (column < line.Length)
            {
                if (_taken[row, column] || line[column] == ' ')
                {
                    column++;
                    continue;
                }

                int end = column;
                while (end < line.Length && !_taken[row, end]
                    && !(line[end] == ' ' && (end + 1 == line.Length || line[end + 1] == ' ' || _taken[row, end + 1])))
                {
                    end++;
                }

                string text = line[column..end];
                (int left, int _, int right, int _) = _boxes.FirstOrDefault(box =>
                    box.Left < column && end <= box.Right && box.Top < row && row < box.Bottom);
                bool centred = right > 0 && left + 1 < column;
                _svg.Formula(centred
                    ? X((left + right + 1) / 2.0)
                    : X(column) + 1, Y(row) + 10.6, text, centred
                    ? "middle"
                    : "start", TextSize);
                column = end;
            }
        }
    }
}
