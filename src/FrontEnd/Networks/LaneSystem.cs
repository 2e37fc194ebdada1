using System.Numerics;

namespace FrontEnd.Networks;

/// <summary>A small dense system of equations on all lanes, for circuits of a dozen unknowns.</summary>
/// <remarks>The order of the pivots is found on the first lane and kept: lanes are builds of one circuit, a tolerance apart.</remarks>
internal sealed class LaneSystem(int unknowns, int rightSides)
{
    private readonly Vector<double>[,] _a = new Vector<double>[unknowns, unknowns + rightSides];

    /// <summary>An entry of the matrix.</summary>
    public void Add(int row, int column, Vector<double> value)
    {
        if (0 <= row && 0 <= column)
        {
            _a[row, column] += value;
        }
    }

    /// <summary>An entry of a right side.</summary>
    public void AddRight(int row, int side, Vector<double> value)
    {
        if (0 <= row)
        {
            _a[row, unknowns + side] += value;
        }
    }

    public void Clear() => Array.Clear(_a);

    /// <summary>After <see cref="Solve"/>: an unknown for one of the right sides.</summary>
    public Vector<double> Value(int unknown, int side) => _a[unknown, unknowns + side];

    /// <summary>Gauss's elimination to the unit matrix, the pivot of each column the entry that is largest in its row and column.</summary>
    /// <exception cref="NetworkHasNoAnswer">There is none, or it is no number.</exception>
    public void Solve()
    {
        int width = unknowns + rightSides;
        for (int column = 0; column < unknowns; column++)
        {
            Exchange(column, PivotOf(column));
            if (!(0 < Math.Abs(_a[column, column][0])))
            {
                throw new NetworkHasNoAnswer();
            }

            Vector<double> inverse = Vector<double>.One / _a[column, column];
            for (int j = column; j < width; j++)
            {
                _a[column, j] *= inverse;
            }

            for (int row = 0; row < unknowns; row++)
            {
                Vector<double> factor = _a[row, column];
                if (row == column || factor == Vector<double>.Zero)
                {
                    continue;
                }

                for (int j = column; j < width; j++)
                {
                    _a[row, j] -= factor * _a[column, j];
                }
            }
        }
    }

    private int PivotOf(int column)
    {
        int best = column;
        double most = -1;
        for (int row = column; row < unknowns; row++)
        {
            // Against the row's largest, so that a row of conductances counts as much as an op-amp's row of ones.
            double largest = 0;
            for (int j = column; j < unknowns; j++)
            {
                largest = Math.Max(largest, Math.Abs(_a[row, j][0]));
            }

            double size = largest == 0 ? 0 : Math.Abs(_a[row, column][0]) / largest;
            (best, most) = most < size ? (row, size) : (best, most);
        }

        return best;
    }

    private void Exchange(int first, int second)
    {
        for (int j = 0; first != second && j < unknowns + rightSides; j++)
        {
            (_a[first, j], _a[second, j]) = (_a[second, j], _a[first, j]);
        }
    }
}
