using System.Numerics;
using FrontEnd.Networks;
using MathNet.Numerics.LinearAlgebra;
using ComplexVector = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace FrontEnd.Tests.Networks;

/// <summary>The slow plain way to solve a network: one dense matrix of <see cref="Complex"/> a frequency, stamped element by element, solved forward with the
/// maths library's LU. Op-amps and sources have a current unknown of their own, so that not even the unknowns are those of the clever solver.</summary>
internal sealed class PlainNetwork
{
    public const int Common = -1;

    private readonly List<(int From, int To, Func<Complex, Complex> Admittance)> _branches = [];
    private readonly List<(int Plus, int Minus, int Out, int Against, Func<Complex, Complex> InverseGain)> _opAmps = [];
    private readonly List<(int Node, int Against)> _sources = [];

    public int Nodes { get; private set; }

    public int Node() => Nodes++;

    public void Resistor(int from, int to, double ohms) => _branches.Add((from, to, _ => 1 / ohms));

    public void Capacitor(int from, int to, double farads) => _branches.Add((from, to, s => s * farads));

    public void Branch(int from, int to, Func<Complex, Complex> admittance) => _branches.Add((from, to, admittance));

    /// <summary>v(out)·inverseGain = v(plus) − v(minus) + source.</summary>
    public int OpAmp(int output, int plus, int minus, Func<Complex, Complex> inverseGain) => OpAmp(output, Common, plus, minus, inverseGain);

    /// <summary>(v(out) − v(against))·inverseGain = v(plus) − v(minus) + source; the output's current returns to the node it is against.</summary>
    public int OpAmp(int output, int against, int plus, int minus, Func<Complex, Complex> inverseGain)
    {
        _opAmps.Add((plus, minus, output, against, inverseGain));
        return _opAmps.Count - 1;
    }

    public int Source(int node, int against = Common)
    {
        _sources.Add((node, against));
        return _sources.Count - 1;
    }

    /// <summary>Node voltages for currents into nodes, op-amp input voltages and source voltages.</summary>
    public ComplexVector Solve(Complex s, IEnumerable<(int Node, Complex Amperes)> currents, IEnumerable<(int OpAmp, Complex Volts)> opAmps, IEnumerable<(int Source, Complex Volts)> sources)
    {
        int size = Nodes + _opAmps.Count + _sources.Count;
        Matrix<Complex> a = Matrix<Complex>.Build.Dense(size, size);
        ComplexVector b = ComplexVector.Build.Dense(size);
        foreach ((int from, int to, Func<Complex, Complex> admittance) in _branches)
        {
            Complex y = admittance(s);
            Add(a, from, from, y);
            Add(a, to, to, y);
            Add(a, from, to, -y);
            Add(a, to, from, -y);
        }

        for (int i = 0; i < _opAmps.Count; i++)
        {
            (int plus, int minus, int output, int against, Func<Complex, Complex> inverse) = _opAmps[i];
            int row = Nodes + i;
            Add(a, output, row, 1);
            Add(a, against, row, -1);
            Add(a, row, output, inverse(s));
            Add(a, row, against, -inverse(s));
            Add(a, row, plus, -1);
            Add(a, row, minus, 1);
        }

        for (int i = 0; i < _sources.Count; i++)
        {
            int row = Nodes + _opAmps.Count + i;
            Add(a, _sources[i].Node, row, 1);
            Add(a, _sources[i].Against, row, -1);
            Add(a, row, _sources[i].Node, 1);
            Add(a, row, _sources[i].Against, -1);
        }

        foreach ((int node, Complex amperes) in currents.Where(current => 0 <= current.Node))
        {
            b[node] += amperes;
        }

        foreach ((int opAmp, Complex volts) in opAmps)
        {
            b[Nodes + opAmp] += volts;
        }

        foreach ((int source, Complex volts) in sources)
        {
            b[Nodes + _opAmps.Count + source] += volts;
        }

        return a.LU().Solve(b);
    }

    private static void Add(Matrix<Complex> a, int row, int column, Complex value)
    {
        if (0 <= row && 0 <= column)
        {
            a[row, column] += value;
        }
    }
}

/// <summary>A random network of resistors and capacitors, the same for both solvers.</summary>
internal sealed class RandomNetwork
{
    public RandomNetwork(int seed, int nodes, bool opAmp)
    {
        var random = new Random(seed);
        int[] clever = [.. Enumerable.Range(0, nodes).Select(i => Clever.Node($"n{i}"))];
        for (int i = 0; i < nodes; i++)
        {
            Plain.Node();
        }

        // A spanning tree of resistors so that every node has a dc way to common, then branches at will.
        for (int i = 0; i < nodes; i++)
        {
            AddResistor(i, i == 0 ? -1 : random.Next(-1, i), Log(random, 1e2, 1e7));
        }

        for (int i = 0; i < 2 * nodes; i++)
        {
            int from = random.Next(nodes), to = random.Next(-1, nodes);
            if (from == to)
            {
                continue;
            }

            if (random.Next(2) == 0)
            {
                AddResistor(from, to, Log(random, 1e2, 1e7));
            }
            else
            {
                double farads = Log(random, 1e-12, 1e-6);
                Clever.Capacitor(from, to, farads);
                Plain.Capacitor(from, to, farads);
                MostFarads = Math.Max(MostFarads, farads);
            }
        }

        if (opAmp)
        {
            // A follower of the first node that drives a new one through which it feeds the last.
            int output = Clever.Node("out");
            int plainOutput = Plain.Node();
            OpAmpPort = Clever.OpAmp(output, 0, output, 1e6, 1e6);
            PlainOpAmp = Plain.OpAmp(plainOutput, 0, plainOutput, s => 1e-6 + (s / (2 * Math.PI * 1e6)));
            AddResistor(output, nodes - 1, Log(random, 1e3, 1e5));
        }

        for (int i = 0; i < nodes; i++)
        {
            Ports.Add(Clever.CurrentPort(Network.Common, i));
            Outputs.Add(Clever.Output(i));
        }
    }

    public Network Clever { get; } = new();

    public PlainNetwork Plain { get; } = new();

    public List<int> Ports { get; } = [];

    public List<int> Outputs { get; } = [];

    public int OpAmpPort { get; } = -1;

    public int PlainOpAmp { get; } = -1;

    public List<(int From, int To, double Ohms)> Resistors { get; } = [];

    /// <summary>Largest capacitance [F].</summary>
    public double MostFarads { get; private set; }

    /// <summary>
    /// What two ways of adding the same branches can agree to, at best: a matrix entry that holds 60 S and 0.1 µS keeps the small one to the large one's last bit, so the
    /// branches' spread times the rounding unit is lost before anything is solved. 1e-9 wherever the spread allows it.
    /// </summary>
    public double Agreement(double hertz)
    {
        double least = Resistors.Min(resistor => 1 / resistor.Ohms), most = Math.Max(Resistors.Max(resistor => 1 / resistor.Ohms), 2 * Math.PI * hertz * MostFarads);
        return 1e-9 + (16 * Math.Pow(2, -52) * most / least);
    }

    private static double Log(Random random, double low, double high) => low * Math.Pow(high / low, random.NextDouble());

    private void AddResistor(int from, int to, double ohms)
    {
        Clever.Resistor(from, to, ohms);
        Plain.Resistor(from, to, ohms);
        Resistors.Add((from, to, ohms));
    }
}
