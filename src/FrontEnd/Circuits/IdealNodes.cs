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

    private readonly JoinedNodes _joined;
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    public IdealNodes(Circuit circuit)
    {
        _joined = new JoinedNodes(circuit);
        IEnumerable<string> names = circuit.Parts.SelectMany(part => new[] { part.From, part.To })
            .Concat(circuit.OpAmps.SelectMany(opAmp => new[] { opAmp.Output, opAmp.Plus, opAmp.Minus }));
        int common = Register(Circuit.Common, Common), input = Register(Circuit.Input, Input);
        foreach (string name in names)
        {
            if (!_numbers.ContainsKey(_joined.Root(name)))
            {
                _numbers.Add(_joined.Root(name), Count++);
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
    public int Of(string name) => _numbers[_joined.Root(name)];

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
        _numbers.TryAdd(_joined.Root(name), number);
        return number;
    }
}
