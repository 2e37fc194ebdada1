namespace FrontEnd.Networks;

/// <summary>
/// A small-signal network under construction: nodes, resistors, capacitors, admittances whose value changes from lane to lane, and
/// nodes driven by sources or op-amps. Node voltages are against <see cref="Common"/>.
/// </summary>
/// <remarks>
/// Nodal analysis with one unknown a node: the Kirchhoff row of a driven node is replaced by its constraint
/// <c>slot·v(node) − Σ weight·v(control) = source</c>: with 1/A(s) in place of the slot an op-amp, with 1 and no control an ideal source.
/// <para>
/// Two nodes can be declared a pair. Their unknowns are then the mean and the difference of the two voltages, so that a balanced
/// network's difference is exactly zero instead of the rounding of two volts. Add a pair's branches one after the other.
/// </para>
/// </remarks>
internal sealed class Network
{
    /// <summary>The reference node.</summary>
    public const int Common = -1;

    private readonly List<string> _names = [];
    private readonly List<(int Unknown, double Weight)[]> _functionals = [];
    private readonly HashSet<int> _driven = [];
    private readonly Dictionary<(int Row, int Column), (double G, double C)> _fixed = [];
    private readonly List<(int Row, int Column, int Slot, double Weight)> _varying = [];
    private readonly Dictionary<(int Row, int Column), (double G, double C)> _constraints = [];
    private readonly List<(int Row, int Slot)> _constraintSlots = [];
    private readonly List<(bool IsConstraint, (int Unknown, double Weight)[] Weights)> _ports = [];
    private readonly List<(int Unknown, double Weight)[]> _outputs = [];
    private readonly List<NetworkElement> _elements = [];
    private int _slots;

    /// <summary>Node voltages and op-amp outputs to be solved for.</summary>
    public int Unknowns => _names.Count;

    /// <summary>Admittances that change from lane to lane.</summary>
    public int Slots => _slots;

    /// <summary>Places where a current or voltage is put in.</summary>
    public int Ports => _ports.Count;

    /// <summary>Voltages that are read off.</summary>
    public int Outputs => _outputs.Count;

    internal IReadOnlySet<int> Driven => _driven;

    /// <summary>Entries of the matrix that do not change from lane to lane: conductance and capacitance.</summary>
    internal IEnumerable<(int Row, int Column, double G, double C)> Fixed =>
        _fixed.Where(entry => !_driven.Contains(entry.Key.Row)).Select(
            entry => (entry.Key.Row, entry.Key.Column, entry.Value.G, entry.Value.C))
            .Concat(_constraints.Select(entry => (entry.Key.Row, entry.Key.Column, entry.Value.G, entry.Value.C)));

    /// <summary>Entries that take a slot's value times a weight, in the order in which the branches were added.</summary>
    internal IEnumerable<(int Row, int Column, int Slot, double Weight)> Varying =>
        _varying.Where(entry => !_driven.Contains(entry.Row)).Concat(
            _constraintSlots.Select(entry => (entry.Row, entry.Row, entry.Slot, 1.0)));

    /// <summary>The right-hand side that each port makes; a current into a driven node is lost in its source.</summary>
    internal IEnumerable<(int Unknown, double Weight)[]> PortWeights =>
        _ports.Select(port => port.IsConstraint ? port.Weights : [.. port.Weights.Where(weight => !_driven.Contains(weight.Unknown))]);

    internal IReadOnlyList<(int Unknown, double Weight)[]> OutputWeights => _outputs;

    /// <summary>Adds a node and returns its number.</summary>
    public int Node(string name)
    {
        _names.Add(name);
        _functionals.Add([(_names.Count - 1, 1)]);
        return _names.Count - 1;
    }

    /// <summary>Adds two nodes whose difference matters more than their mean.</summary>
    public (int First, int Second) NodePair(string first, string second)
    {
        _names.Add($"mean of {first} and {second}");
        _names.Add($"{first} less {second}");
        int mean = _names.Count - 2;
        _functionals.Add([(mean, 1), (mean + 1, 0.5)]);
        _functionals.Add([(mean, 1), (mean + 1, -0.5)]);
        return (mean, mean + 1);
    }

    /// <summary>Resistors and capacitors in the order in which they were added.</summary>
    internal IReadOnlyList<NetworkElement> Elements => _elements;

    /// <summary>Adds a resistor [Ω], above zero.</summary>
    /// <returns>The element's number, by which its value can be changed from build to build.</returns>
    public int Resistor(int from, int to, double ohms) => Stamp(from, to, 1 / ohms, 0);

    /// <summary>Adds a capacitor [F].</summary>
    /// <returns>The element's number.</returns>
    public int Capacitor(int from, int to, double farads) => Stamp(from, to, 0, farads);

    /// <summary>Reserves a complex number whose value is set for every lane.</summary>
    public int Slot() => _slots++;

    /// <summary>Adds a branch whose admittance [S] is a slot's value.</summary>
    public int Admittance(int from, int to)
    {
        int slot = Slot();
        foreach ((int row, double left) in Between(from, to))
        {
            foreach ((int column, double right) in Between(from, to))
            {
                _varying.Add((row, column, slot, left * right));
            }
        }

        return slot;
    }

    /// <summary>Makes a node obey <c>slot·v(node) − Σ weight·v(control) = source</c>; the node must not be one of a pair.</summary>
    /// <returns>The port of the source.</returns>
    public int Drive(int node, int slot, params ReadOnlySpan<(int Node, double Weight)> controls)
    {
        int row = DrivenRow(node);
        _constraintSlots.Add((row, slot));
        return AddConstraint(row, controls);
    }

    /// <summary>Makes a node the output of an op-amp: <c>(1/A0 + s/(2π·GBW))·v(node) − v(plus) + v(minus) = source</c>.</summary>
    /// <returns>The port of the source, which is a voltage in series with the + input.</returns>
    public int OpAmp(int node, int plus, int minus, double dcGain, double gainBandwidth)
    {
        int row = DrivenRow(node);
        _constraints[(row, row)] = (1 / dcGain, 1 / (2 * Math.PI * gainBandwidth));
        return AddConstraint(row, (plus, 1), (minus, -1));
    }

    /// <summary>Makes a node an ideal voltage source against common.</summary>
    /// <returns>The port of the source.</returns>
    public int Source(int node)
    {
        int row = DrivenRow(node);
        _constraints[(row, row)] = (1, 0);
        _ports.Add((true, [(row, 1)]));
        return _ports.Count - 1;
    }

    /// <summary>A current source that takes its current out of one node and puts it into another.</summary>
    /// <returns>The port.</returns>
    public int CurrentPort(int from, int to)
    {
        _ports.Add((false, Between(to, from)));
        return _ports.Count - 1;
    }

    /// <summary>An output: the voltage of one node against another.</summary>
    public int Output(int node, int against = Common)
    {
        _outputs.Add(Between(node, against));
        return _outputs.Count - 1;
    }

    /// <summary>An output: the mean of two nodes' voltages against common.</summary>
    public int MeanOutput(int first, int second)
    {
        _outputs.Add(Sum(Functional(first), 0.5, Functional(second), 0.5));
        return _outputs.Count - 1;
    }

    private static (int Unknown, double Weight)[] Sum(
        (int Unknown, double Weight)[] left, double a, (int Unknown, double Weight)[] right, double b)
    {
        // A node is one unknown or a pair's two, so there are four terms at most.
        Span<(int Unknown, double Weight)> sum = stackalloc (int, double)[left.Length + right.Length];
        int count = 0;
        foreach ((int unknown, double weight) in left)
        {
            sum[count++] = (unknown, a * weight);
        }

        foreach ((int unknown, double weight) in right)
        {
            int at = 0;
            while (at < count && sum[at].Unknown != unknown)
            {
                at++;
            }

            sum[at] = (unknown, (at < count ? sum[at].Weight : 0) + (b * weight));
            count = Math.Max(count, at + 1);
        }

        int kept = 0;
        for (int i = 0; i < count; i++)
        {
            if (sum[i].Weight != 0)
            {
                sum[kept++] = sum[i];
            }
        }

        (int, double)[] terms = sum[..kept].ToArray();
        Array.Sort(terms, (x, y) => x.Item1.CompareTo(y.Item1));
        return terms;
    }

    private (int Unknown, double Weight)[] Functional(int node) => node == Common ? [] : _functionals[node];

    private (int Unknown, double Weight)[] Between(int node, int against) => Sum(Functional(node), 1, Functional(against), -1);

    private int Stamp(int from, int to, double g, double c)
    {
        (int Unknown, double Weight)[] branch = Between(from, to);
        _elements.Add(new NetworkElement(branch, c == 0 && g != 0 ? g : c, g == 0, _varying.Count));
        foreach ((int row, double left) in branch)
        {
            foreach ((int column, double right) in branch)
            {
                (double oldG, double oldC) = _fixed.GetValueOrDefault((row, column));
                _fixed[(row, column)] = (oldG + (left * right * g), oldC + (left * right * c));
            }
        }

        return _elements.Count - 1;
    }

    private int AddConstraint(int row, params ReadOnlySpan<(int Node, double Weight)> controls)
    {
        foreach ((int control, double weight) in controls)
        {
            foreach ((int column, double share) in Functional(control))
            {
                (double g, double c) = _constraints.GetValueOrDefault((row, column));
                _constraints[(row, column)] = (g - (weight * share), c);
            }
        }

        _ports.Add((true, [(row, 1)]));
        return _ports.Count - 1;
    }

    private int DrivenRow(int node)
    {
        if (_functionals[node].Length != 1 || !_driven.Add(_functionals[node][0].Unknown))
        {
            throw new ArgumentException("A node of a pair, or one that is driven already, cannot be driven.", nameof(node));
        }

        return _functionals[node][0].Unknown;
    }
}

/// <summary>A resistor or a capacitor by the unknowns that it stands between.</summary>
/// <param name="Branch">Its voltage in the unknowns.</param>
/// <param name="Value">Conductance [S] or capacitance [F].</param>
/// <param name="SlotsBefore">Entries of slots that stood in the network before it.</param>
internal sealed record NetworkElement((int Unknown, double Weight)[] Branch, double Value, bool IsCapacitor, int SlotsBefore);
