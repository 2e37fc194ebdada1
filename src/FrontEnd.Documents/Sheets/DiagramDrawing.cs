using FrontEnd.Documents.Drawing;
using FrontEnd.Teaching;

namespace FrontEnd.Documents.Sheets;

/// <summary>A diagram's grid of letters as a vector drawing: lines, parts, arrows and text stand where the letters stand.</summary>
internal static class DiagramDrawing
{
    /// <summary>Letters of the widest diagram; all drawings are as wide, so that their text has one size.</summary>
    public const int Columns = 58;

    private const double CellWidth = 6.4, CellHeight = 14, TextSize = 10.5, Plate = 2.2;
    
    private static readonly Pen Ink = new("#222", 1.1);

    [Flags]
    private enum Way
    {
        None = 0,
        Up = 1,
        Right = 2,
        Down = 4,
        Left = 8,
    }

    public static Picture Of(Diagram diagram, Assessment assessment) => new Grid(diagram.Lines(assessment), Columns).Draw(diagram.Title);

    /// <summary>A picture of its own, as wide as its letters.</summary>
    public static Picture Of(IReadOnlyList<string> lines, string title) => new Grid(lines, 1 + lines.Max(line => line.Length)).Draw(title);

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
        private readonly int _columns;
        private Picture _picture = new(0, 0, "");

        public Grid(IReadOnlyList<string> lines, int columns)
        {
            _columns = columns;
            _rows = [.. lines.Select(line => line.PadRight(columns))];
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

        public Picture Draw(string title)
        {
            _picture = new Picture(_columns * CellWidth, (_rows.Length * CellHeight) + 2, title);
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

            return _picture;
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
                    // A lowered letter such as the g of R_g would stand on the frame's lower line.
                    string name = line[(column + 1)..(end - 1)];
                    double more = name.Contains('_', StringComparison.Ordinal) ? 1.6 : 0;
                    _picture.Rectangle(X(column) + 1, Y(row) + 1 - more, ((end - column) * CellWidth) - 2, CellHeight - 2 + (2 * more), Ink, Fill.White);
                    _picture.Formula(X((column + end) / 2.0), Y(row) + 10.6 - (more / 2), name, Anchor.Middle, TextSize - 1);
                    Take(row, column, end - column);
                }
                else if (line[column] == '(' && At(row, column + 2) == ')' && !char.IsLetterOrDigit(At(row, column - 1)))
                {
                    _picture.Circle(X(column + 1.5), Y(row + 0.5), 8, Ink);
                    _picture.Formula(X(column + 1.5), Y(row) + 10.6, line[(column + 1)..(column + 2)], Anchor.Middle, TextSize);
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
                _picture.Path(new Outline().Move(X(column), y).Line(middle - Plate, y).Move(middle + Plate, y).Line(X(column + 2), y)
                    .Move(middle - Plate, y - 6).LineBy(0, 12).Move(middle + Plate, y - 6).LineBy(0, 12), Ink);
                Take(row, column, 2);
            }
            else if (At(row, column) == '┴' && At(row + 1, column) == '┬' && At(row, column - 1) == '─' && At(row, column + 1) == '─'
                && At(row + 1, column - 1) == '─' && At(row + 1, column + 1) == '─')
            {
                double x = X(column + 0.5), between = Y(row + 1);
                _picture.Path(new Outline().Move(x, Y(row)).Line(x, between - Plate).Move(x, between + Plate).Line(x, Y(row + 2))
                    .Move(x - 8, between - Plate).LineBy(16, 0).Move(x - 8, between + Plate).LineBy(16, 0), Ink);
                Take(row, column - 1, 3);
                Take(row + 1, column - 1, 3);
            }
        }

        private void Head(int row, int column)
        {
            double x = X(column), y = Y(row), middle = X(column + 0.5), centre = Y(row + 0.5);
            Outline? head = At(row, column) switch
            {
                '>' when Goes(row, column - 1, Way.Right) => new Outline().Move(x, centre).LineBy(CellWidth, 0).MoveBy(-6, -3.2).LineBy(6, 3.2).LineBy(-6, 3.2),
                '<' when Goes(row, column + 1, Way.Left) =>
                    new Outline().Move(x + CellWidth, centre).LineBy(-CellWidth, 0).MoveBy(6, -3.2).LineBy(-6, 3.2).LineBy(6, 3.2),
                '^' when Goes(row + 1, column, Way.Up) || At(row + 1, column) == '[' || At(row + 1, column - 1) == '['
                    || At(row + 1, column - 2) == '[' =>
                    new Outline().Move(middle, y + CellHeight).Line(middle, y).MoveBy(-3.2, 6).LineBy(3.2, -6).LineBy(3.2, 6),
                'v' when Goes(row - 1, column, Way.Down) =>
                    new Outline().Move(middle, y).LineBy(0, CellHeight).MoveBy(-3.2, -6).LineBy(3.2, 6).LineBy(3.2, -6),
                _ => null,
            };
            if (head is not null)
            {
                _picture.Path(head, Ink);
                _taken[row, column] = true;
            }
        }

        /// <summary>Common is one thick bar, earth three.</summary>
        private void End(int row, int column)
        {
            double x = X(column + 0.5), y = Y(row + 0.5);
            if (At(row, column) == '┷')
            {
                _picture.Path(new Outline().Move(x - 8, y).LineBy(16, 0), Ink with { Width = 2.2 });
            }
            else if (At(row, column) == '╧')
            {
                _picture.Path(new Outline().Move(x - 8, y).LineBy(16, 0).Move(x - 5, y + 3).LineBy(10, 0).Move(x - 2, y + 6).LineBy(4, 0), Ink);
            }
            else if (At(row, column) == '┆')
            {
                _picture.Path(new Outline().Move(x, Y(row)).LineBy(0, CellHeight), Ink with { Dash = [3, 3] });
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

            if (OpAmp(row, column, bottom, right))
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

        /// <summary>A box with ▷ in it is drawn as a triangle: its left side is the box's, its tip is where the output leaves.</summary>
        private bool OpAmp(int row, int column, int bottom, int right)
        {
            (int Row, int Column)[] marks = [.. Enumerable.Range(row + 1, bottom - row - 1).SelectMany(y =>
                Enumerable.Range(column + 1, right - column - 1).Where(x => At(y, x) == '▷').Select(x => (y, x)))];
            if (marks.Length == 0)
            {
                return false;
            }

            double left = X(column + 0.5), tip = X(right + 0.5), middle = Y(marks[0].Row + 0.5), half = Y(bottom + 0.5) - middle;
            _picture.Polygon(Ink, Fill.White, (left, middle - half), (left, middle + half), (tip, middle));
            _taken[marks[0].Row, marks[0].Column] = true;
            for (int y = row; y <= bottom; y++)
            {
                for (int x = column; x <= right; x++)
                {
                    bool isEdge = y == row || y == bottom || x == column || x == right;
                    _ways[y, x] = !isEdge ? _ways[y, x]
                        : x == column ? _ways[y, x] & Way.Left : x == right ? _ways[y, x] & Way.Right : Way.None;
                }
            }

            return true;
        }

        private void Lines()
        {
            Outline path = new();
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

                        path.Move(ways.HasFlag(Way.Left) ? X(column) : x, y).Line(X(end + (_ways[row, end].HasFlag(Way.Right) ? 1 : 0.5)), y);
                    }
                    else if (ways.HasFlag(Way.Left) && !ways.HasFlag(Way.Right)
                        && !(column > 0 && _ways[row, column - 1].HasFlag(Way.Right)))
                    {
                        path.Move(X(column), y).Line(x, y);
                    }

                    if (ways.HasFlag(Way.Down) && !(ways.HasFlag(Way.Up) && row > 0 && _ways[row - 1, column].HasFlag(Way.Down)))
                    {
                        int end = row;
                        while (end + 1 < _rows.Length && _ways[end, column].HasFlag(Way.Down) && _ways[end + 1, column].HasFlag(Way.Up))
                        {
                            end++;
                        }

                        path.Move(x, ways.HasFlag(Way.Up) ? Y(row) : y).Line(x, Y(end + (_ways[end, column].HasFlag(Way.Down) ? 1 : 0.5)));
                    }
                    else if (ways.HasFlag(Way.Up) && !ways.HasFlag(Way.Down) && !(row > 0 && _ways[row - 1, column].HasFlag(Way.Down)))
                    {
                        path.Move(x, Y(row)).Line(x, y);
                    }
                }
            }

            if (path.Steps.Count > 0)
            {
                _picture.Path(path, Ink);
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
                        _picture.Circle(X(column + 0.5), Y(row + 0.5), 2.2, null, new Fill("#222"));
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
                _picture.Formula(centred
                    ? X((left + right + 1) / 2.0)
                    : X(column) + 1, Y(row) + 10.6, text, centred
                    ? Anchor.Middle
                    : Anchor.Start, TextSize);
                column = end;
            }
        }
    }
}
