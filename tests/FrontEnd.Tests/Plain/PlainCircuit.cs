using System.Numerics;

namespace FrontEnd.Tests.Plain;

/// <summary>A small-signal circuit by named nodes, solved plainly: one dense complex matrix a frequency, a row and an unknown for every controlled and every
/// independent source, partial pivoting of equilibrated rows, forward only. Resistances of 0 Ω join their nodes.</summary>
internal sealed class PlainCircuit
{
    public const string Common = "C";

    private readonly Dictionary<string, string> _joined = [];
    private readonly List<(string From, string To, Func<Complex, Complex> Admittance)> _branches = [];
    private readonly List<(string Plus, string Minus, Func<Complex, Complex> Inverse, (string Node, double Weight)[] Controls)> _sources = [];
    private (int From, int To, Func<Complex, Complex> Admittance)[]? _numbered;
    private (int Plus, int Minus, Func<Complex, Complex> Inverse, (int Node, double Weight)[] Controls)[] _numberedSources = [];
    private Dictionary<string, int> _numbers = [];

    public void Join(string a, string b)
    {
        (a, b) = (Find(a), Find(b));
        if (a != b)
        {
            // Common keeps its name.
            _joined[a == Common ? b : a] = a == Common ? a : b;
        }
    }

    public void Resistor(string from, string to, double ohms)
    {
        if (ohms == 0)
        {
            Join(from, to);
        }
        else
        {
            _branches.Add((from, to, _ => 1 / ohms));
        }
    }

    public void Capacitor(string from, string to, double farads)
    {
        if (farads != 0)
        {
            _branches.Add((from, to, s => s * farads));
        }
    }

    public void Impedance(string from, string to, Func<Complex, Complex> ohms) => _branches.Add((from, to, s => 1 / ohms(s)));

    /// <summary>v(plus) − v(minus) is what is asked for; its number is what <see cref="PlainSolution.OfSource"/> wants.</summary>
    public int Source(string plus, string minus) => Controlled(plus, minus, _ => 1);

    /// <summary>(v(plus) − v(minus))·inverse = Σ weight·v(node) + what is asked for.</summary>
    public int Controlled(string plus, string minus, Func<Complex, Complex> inverse, params (string Node, double Weight)[] controls)
    {
        _sources.Add((plus, minus, inverse, controls));
        return _sources.Count - 1;
    }

    /// <summary>A(s) = A0/(1 + s·A0/(2π·GBW)) behind Ro; what is asked for lies in series with the + input.</summary>
    public int OpAmp(string output, string plus, string minus, Circuits.OpAmp model)
    {
        string inner = output + " inner";
        Resistor(inner, output, model.OutputResistance.Ohms);
        return Controlled(inner, Common, s => (1 / model.DcGain) + (s / (2 * Math.PI * model.GainBandwidth.Hertz)), (plus, 1), (minus, -1));
    }

    public PlainSolution At(Complex s)
    {
        Number();
        int nodes = _numbers.Count, size = nodes + _numberedSources.Length;
        var a = new Complex[size, size];
        foreach ((int from, int to, Func<Complex, Complex> admittance) in _numbered!)
        {
            Complex y = admittance(s);
            Add(a, from, from, y);
            Add(a, to, to, y);
            Add(a, from, to, -y);
            Add(a, to, from, -y);
        }

        for (int i = 0; i < _numberedSources.Length; i++)
        {
            (int plus, int minus, Func<Complex, Complex> inverse, (int Node, double Weight)[] controls) = _numberedSources[i];
            int row = nodes + i;
            Complex x = inverse(s);
            Add(a, plus, row, 1);
            Add(a, minus, row, -1);
            Add(a, row, plus, x);
            Add(a, row, minus, -x);
            foreach ((int node, double weight) in controls)
            {
                Add(a, row, node, -weight);
            }
        }

        return new PlainSolution(this, a, nodes);
    }

    /// <summary>The matrices of G + s·C over all unknowns, and the columns of every source: what a response over time is made from.</summary>
    public (double[,] G, double[,] C, int Nodes) Descriptor()
    {
        Number();
        int size = _numbers.Count + _numberedSources.Length;
        double[,] g = new double[size, size], c = new double[size, size];
        Complex[,] zero = At(0).Matrix, one = At(1).Matrix;
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
            {
                g[i, j] = zero[i, j].Real;
                c[i, j] = one[i, j].Real - zero[i, j].Real;
            }
        }

        return (g, c, _numbers.Count);
    }

    /// <summary>The node's unknown; −1 for common.</summary>
    public int IndexOf(string node)
    {
        Number();
        string root = Find(node);
        return root == Common ? -1 : _numbers[root];
    }

    public bool Same(string a, string b) => Find(a) == Find(b);

    private static void Add(Complex[,] a, int row, int column, Complex value)
    {
        if (0 <= row && 0 <= column)
        {
            a[row, column] += value;
        }
    }

    private string Find(string node)
    {
        while (_joined.TryGetValue(node, out string? next))
        {
            node = next;
        }

        return node;
    }

    private void Number()
    {
        if (_numbered is not null)
        {
            return;
        }

        _numbers = [];
        int Of(string node)
        {
            string root = Find(node);
            return root == Common ? -1 : _numbers.TryGetValue(root, out int number) ? number : _numbers[root] = _numbers.Count;
        }

        _numbered = [.. _branches.Where(b => Find(b.From) != Find(b.To)).Select(b => (Of(b.From), Of(b.To), b.Admittance))];
        _numberedSources = [.. _sources.Select(x => (Of(x.Plus), Of(x.Minus), x.Inverse, x.Controls.Select(c => (Of(c.Node), c.Weight)).ToArray()))];
    }
}

/// <summary>A circuit at one frequency, its matrix taken apart once.</summary>
internal sealed class PlainSolution
{
    private readonly PlainCircuit _circuit;
    private readonly Complex[,] _lu;
    private readonly double[] _scale;
    private readonly int[] _rows;
    private readonly int _nodes;

    public PlainSolution(PlainCircuit circuit, Complex[,] matrix, int nodes)
    {
        (_circuit, Matrix, _nodes) = (circuit, matrix, nodes);
        int size = matrix.GetLength(0);
        _lu = (Complex[,])matrix.Clone();
        _scale = new double[size];
        _rows = [.. Enumerable.Range(0, size)];
        for (int i = 0; i < size; i++)
        {
            double most = 0;
            for (int j = 0; j < size; j++)
            {
                most = Math.Max(most, Size(_lu[i, j]));
            }

            _scale[i] = most == 0 ? 1 : 1 / most;
            for (int j = 0; j < size; j++)
            {
                _lu[i, j] *= _scale[i];
            }
        }

        for (int k = 0; k < size; k++)
        {
            Eliminate(k, size);
        }
    }

    public Complex[,] Matrix { get; }

    /// <summary>All unknowns for one volt asked of a source.</summary>
    public Complex[] OfSource(int source)
    {
        var b = new Complex[_scale.Length];
        b[_nodes + source] = 1;
        return Substitute(b);
    }

    /// <summary>The same in two parts, of which the second holds what the first rounds away: for small differences of large voltages.</summary>
    public (Complex[] Main, Complex[] Lost) PreciselyOfSource(int source)
    {
        var b = new Complex[_scale.Length];
        b[_nodes + source] = 1;
        Complex[] main = Substitute(b), rest = new Complex[b.Length];
        for (int pass = 0; pass < 3; pass++)
        {
            Complex[] correction = Substitute(Residual(b, main, rest));
            for (int i = 0; i < rest.Length; i++)
            {
                rest[i] += correction[i];
            }
        }

        return (main, rest);
    }

    /// <summary>v(a) − v(b) of an answer in two parts.</summary>
    public Complex Between((Complex[] Main, Complex[] Lost) unknowns, string a, string b) =>
        Volts(unknowns.Main, a) - Volts(unknowns.Main, b) + (Volts(unknowns.Lost, a) - Volts(unknowns.Lost, b));

    /// <summary>All unknowns for one ampere out of one node into another.</summary>
    public Complex[] OfCurrent(string from, string to)
    {
        var b = new Complex[_scale.Length];
        int f = _circuit.IndexOf(from), t = _circuit.IndexOf(to);
        if (0 <= f)
        {
            b[f] -= 1;
        }

        if (0 <= t)
        {
            b[t] += 1;
        }

        return Substitute(b);
    }

    public Complex Volts(Complex[] unknowns, string node) => _circuit.IndexOf(node) is var i && i < 0 ? 0 : unknowns[i];

    private static double Size(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);

    private void Eliminate(int k, int size)
    {
        int pivot = k;
        for (int i = k + 1; i < size; i++)
        {
            if (Size(_lu[pivot, k]) < Size(_lu[i, k]))
            {
                pivot = i;
            }
        }

        if (pivot != k)
        {
            (_rows[k], _rows[pivot]) = (_rows[pivot], _rows[k]);
            for (int j = 0; j < size; j++)
            {
                (_lu[k, j], _lu[pivot, j]) = (_lu[pivot, j], _lu[k, j]);
            }
        }

        Complex inverse = 1 / _lu[k, k];
        for (int i = k + 1; i < size; i++)
        {
            if (_lu[i, k] == 0)
            {
                continue;
            }

            Complex factor = _lu[i, k] *= inverse;
            for (int j = k + 1; j < size; j++)
            {
                _lu[i, j] -= factor * _lu[k, j];
            }
        }
    }

    /// <summary>b − A·(x + y), summed in twice the digits.</summary>
    private Complex[] Residual(Complex[] right, Complex[] x, Complex[] y)
    {
        int size = right.Length;
        var rest = new Complex[size];
        for (int i = 0; i < size; i++)
        {
            LongSum real = default, imaginary = default;
            real.Add(right[i].Real, 1);
            imaginary.Add(right[i].Imaginary, 1);
            for (int j = 0; j < size; j++)
            {
                Complex a = Matrix[i, j];
                foreach (Complex one in (ReadOnlySpan<Complex>)[x[j], y[j]])
                {
                    real.Add(-a.Real, one.Real);
                    real.Add(a.Imaginary, one.Imaginary);
                    imaginary.Add(-a.Real, one.Imaginary);
                    imaginary.Add(-a.Imaginary, one.Real);
                }
            }

            rest[i] = new Complex(real.Value, imaginary.Value);
        }

        return rest;
    }

    private Complex[] Substitute(Complex[] right)
    {
        int size = right.Length;
        var x = new Complex[size];
        for (int i = 0; i < size; i++)
        {
            Complex sum = right[_rows[i]] * _scale[_rows[i]];
            for (int j = 0; j < i; j++)
            {
                sum -= _lu[i, j] * x[j];
            }

            x[i] = sum;
        }

        for (int i = size - 1; 0 <= i; i--)
        {
            for (int j = i + 1; j < size; j++)
            {
                x[i] -= _lu[i, j] * x[j];
            }

            x[i] /= _lu[i, i];
        }

        return x;
    }
}

/// <summary>A sum of products that keeps what each rounding loses.</summary>
internal struct LongSum
{
    private double _high;
    private double _low;

    public readonly double Value => _high + _low;

    public void Add(double a, double b)
    {
        double product = a * b, lost = Math.FusedMultiplyAdd(a, b, -product), sum = _high + product, part = sum - _high;
        _low += lost + (_high - (sum - part)) + (product - part);
        _high = sum;
    }
}
