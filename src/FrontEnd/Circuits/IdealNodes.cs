using System.Numerics;

namespace FrontEnd.Circuits;

/// <summary>The nodes of a circuit with ideal op-amps: which of them are one, which are unknown, and which op-amp holds which.</summary>
/// <remarks>Nodes that a resistance of zero joins are one. A node that an op-amp drives has, in place of Kirchhoff's row, the op-amp's: its
/// inputs are equal.</remarks>
internal sealed class IdealNodes
{
    /// <summary>Of <see cref="Circuit.Common"/>.</summary>
    public const int Common = -1;

    /// <summary>Of <see cref="Circuit.Input"/>, which a source holds.</summary>
    public const int Input = -2;

    private readonly Dictionary<string, string> _joined = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    public IdealNodes(Circuit circuit)
    {
        foreach (CircuitPart part in circuit.Parts.Where(part => part is { Kind: PartKind.Resistor, Value: 0 }))
        {
            Join(part.From, part.To);
        }

        IEnumerable<string> names = circuit.Parts.SelectMany(part => new[] { part.From, part.To })
            .Concat(circuit.OpAmps.SelectMany(opAmp => new[] { opAmp.Output, opAmp.Plus, opAmp.Minus }));
        int common = Register(Circuit.Common, Common), input = Register(Circuit.Input, Input);
        foreach (string name in names)
        {
            if (!_numbers.ContainsKey(Root(name)))
            {
                _numbers.Add(Root(name), Count++);
            }
        }

        Driver = new int[Count];
        Array.Fill(Driver, -1);
        for (int i = 0; i < circuit.OpAmps.Count; i++)
        {
            if (Of(circuit.OpAmps[i].Output) is var node and >= 0)
            {
                Driver[node] = i;
            }
        }
    }

    /// <summary>Unknown nodes.</summary>
    public int Count { get; private set; }

    /// <summary>The op-amp that drives each unknown node; −1 where none does.</summary>
    public int[] Driver { get; }

    /// <summary>The number of a node.</summary>
    public int Of(string name) => _numbers[Root(name)];

    /// <summary>The largest nominal resistance at each unknown node [Ω]; 1 where there is none.</summary>
    public double[] LargestOhms(Circuit circuit)
    {
        double[] largest = new double[Count];
        foreach (CircuitPart part in circuit.Parts.Where(part => part.Kind == PartKind.Resistor))
        {
            foreach (int node in new[] { Of(part.From), Of(part.To) }.Where(node => 0 <= node))
            {
                largest[node] = Math.Max(largest[node], part.NetworkValue);
            }
        }

        return [.. largest.Select(ohms => ohms == 0 ? 1 : ohms)];
    }

    /// <summary>True for a node whose row is Kirchhoff's.</summary>
    public bool IsFree(int node) => 0 <= node && Driver[node] < 0;

    private int Register(string name, int number)
    {
        _numbers.TryAdd(Root(name), number);
        return number;
    }

    private void Join(string left, string right)
    {
        (left, right) = (Root(left), Root(right));
        if (left == right)
        {
            return;
        }

        // The ports keep their names.
        (string kept, string gone) = right is Circuit.Common or Circuit.Input ? (right, left) : (left, right);
        _joined[gone] = kept;
    }

    private string Root(string name)
    {
        while (_joined.TryGetValue(name, out string? kept))
        {
            name = kept;
        }

        return name;
    }
}

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
    public void Solve()
    {
        int width = unknowns + rightSides;
        for (int column = 0; column < unknowns; column++)
        {
            Exchange(column, PivotOf(column));
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
