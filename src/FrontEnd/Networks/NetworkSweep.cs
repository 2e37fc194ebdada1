using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace FrontEnd.Networks;

/// <summary>
/// Solves one network for many lanes (a lane is a frequency, or a frequency and a set of slot values). All memory is taken at the start;
/// solving allocates nothing. Not for use by two threads at a time.
/// </summary>
/// <remarks>
/// The adjoint solve (of the transposed system) gives the transfer from every port to one output at once, and is more accurate than
/// the forward solve where a small output is the difference of large voltages.
/// </remarks>
public sealed partial class NetworkSweep
{
    /// <summary>Largest residual |Yᵀz − b| against the largest Σ|Y||z| at which the fixed pivot order is trusted; a well-behaved lane has
    /// about 1e-16.</summary>
    private const double ResidualLimit = 1e-11;

    private readonly NetworkProgram _program;
    private readonly double[] _omega;
    private readonly double[] _slotRe;
    private readonly double[] _slotIm;
    private readonly double[] _transferRe;
    private readonly double[] _transferIm;
    private readonly Vector<double>[] _workspace;
    private readonly int _width = Vector<double>.Count;
    private DenseSolver? _dense;

    internal NetworkSweep(NetworkProgram program, int capacity, int outputs)
    {
        _program = program;
        Capacity = (capacity + _width - 1) / _width * _width;
        _omega = new double[Capacity];
        _slotRe = new double[Capacity * Math.Max(1, program.Slots)];
        _slotIm = new double[_slotRe.Length];
        int transfers = Math.Max(1, program.Ports.Length * outputs);
        _transferRe = new double[Capacity * transfers];
        _transferIm = new double[_transferRe.Length];
        _workspace = new Vector<double>[(4 * program.Entries) + (4 * program.Unknowns)];
    }

    /// <summary>Most lanes at a time; a multiple of the vector width.</summary>
    public int Capacity { get; }

    /// <summary>Lanes that took the pivoted fallback since the sweep was made.</summary>
    public int Fallbacks { get; private set; }

    /// <summary>ω = 2πf [rad/s] of each lane.</summary>
    public Span<double> Omega => _omega;

    public Span<double> SlotReal(int slot) => _slotRe.AsSpan(slot * Capacity, Capacity);

    public Span<double> SlotImaginary(int slot) => _slotIm.AsSpan(slot * Capacity, Capacity);

    /// <summary>Transfer from a port to an output, real part: V per V or V per A.</summary>
    public ReadOnlySpan<double> TransferReal(int output, int port) =>
        _transferRe.AsSpan(((output * _program.Ports.Length) + port) * Capacity, Capacity);

    public ReadOnlySpan<double> TransferImaginary(int output, int port) =>
        _transferIm.AsSpan(((output * _program.Ports.Length) + port) * Capacity, Capacity);

    public Complex Transfer(int output, int port, int lane) => new(TransferReal(output, port)[lane], TransferImaginary(output, port)[lane]);

    /// <summary>Solves the adjoint for outputs 0…<paramref name="outputs"/> − 1 on the first <paramref name="lanes"/> lanes: all ports'
    /// transfers.</summary>
    public void SolveAdjoint(int lanes, int outputs)
    {
        Pad(lanes);
        for (int lane = 0; lane < lanes; lane += _width)
        {
            Assemble(lane);
            Factorise();
            for (int output = 0; output < outputs; output++)
            {
                AdjointSolve(_program.Outputs[output]);
                uint bad = Residual(_program.Outputs[output]);
                StoreAdjoint(lane, output);
                if (bad != 0)
                {
                    FallBack(lane, lanes, output, bad);
                }
            }
        }
    }

    /// <summary>Solves forward for one port on the first <paramref name="lanes"/> lanes: that port's transfers to all outputs.</summary>
    public void SolveForward(int lanes, int port)
    {
        Pad(lanes);
        for (int lane = 0; lane < lanes; lane += _width)
        {
            Assemble(lane);
            Factorise();
            ForwardSolve(_program.Ports[port]);
            for (int output = 0; output < _program.Outputs.Length; output++)
            {
                (Vector<double> re, Vector<double> im) = Dot(_program.Outputs[output]);
                int at = (((output * _program.Ports.Length) + port) * Capacity) + lane;
                re.CopyTo(_transferRe, at);
                im.CopyTo(_transferIm, at);
            }
        }
    }

    /// <summary>The last group of lanes is filled up with copies of the last lane, so that no lane divides by zero.</summary>
    private void Pad(int lanes)
    {
        int end = (lanes + _width - 1) / _width * _width;
        for (int lane = lanes; lane < end; lane++)
        {
            _omega[lane] = _omega[lanes - 1];
            for (int slot = 0; slot < _program.Slots; slot++)
            {
                _slotRe[(slot * Capacity) + lane] = _slotRe[(slot * Capacity) + lanes - 1];
                _slotIm[(slot * Capacity) + lane] = _slotIm[(slot * Capacity) + lanes - 1];
            }
        }
    }

    private Span<Vector<double>> OriginalRe => _workspace.AsSpan(0, _program.Entries);

    private Span<Vector<double>> OriginalIm => _workspace.AsSpan(_program.Entries, _program.Entries);

    private Span<Vector<double>> FactorRe => _workspace.AsSpan(2 * _program.Entries, _program.Entries);

    private Span<Vector<double>> FactorIm => _workspace.AsSpan(3 * _program.Entries, _program.Entries);

    private Span<Vector<double>> SolutionRe => _workspace.AsSpan(4 * _program.Entries, _program.Unknowns);

    private Span<Vector<double>> SolutionIm => _workspace.AsSpan((4 * _program.Entries) + _program.Unknowns, _program.Unknowns);

    private Span<Vector<double>> InverseRe => _workspace.AsSpan((4 * _program.Entries) + (2 * _program.Unknowns), _program.Unknowns);

    private Span<Vector<double>> InverseIm => _workspace.AsSpan((4 * _program.Entries) + (3 * _program.Unknowns), _program.Unknowns);

    private void Assemble(int lane)
    {
        Span<Vector<double>> re = OriginalRe, im = OriginalIm;
        var omega = new Vector<double>(_omega, lane);
        ReadOnlySpan<double> g = _program.G, c = _program.C;
        for (int i = 0; i < g.Length; i++)
        {
            re[i] = new Vector<double>(g[i]);
            im[i] = omega * c[i];
        }

        ReadOnlySpan<int> targets = _program.SlotEntries;
        ReadOnlySpan<double> weights = _program.SlotWeights;
        for (int i = 0; i < weights.Length; i++)
        {
            int at = (targets[(2 * i) + 1] * Capacity) + lane;
            re[targets[2 * i]] += new Vector<double>(_slotRe, at) * weights[i];
            im[targets[2 * i]] += new Vector<double>(_slotIm, at) * weights[i];
        }

        re.CopyTo(FactorRe);
        im.CopyTo(FactorIm);
    }

    private void Factorise()
    {
        // Indices come from the compiled program and are right by construction; the references save the bounds checks of the inner loop.
        ref Vector<double> re = ref MemoryMarshal.GetReference(FactorRe);
        ref Vector<double> im = ref MemoryMarshal.GetReference(FactorIm);
        Span<Vector<double>> inverseRe = InverseRe, inverseIm = InverseIm;
        ReadOnlySpan<int> tape = _program.Factor;
        int at = 0;
        for (int k = 0; k < inverseRe.Length; k++)
        {
            Vector<double> pr = Unsafe.Add(ref re, tape[at]), pi = Unsafe.Add(ref im, tape[at]);
            Vector<double> scale = Vector<double>.One / ((pr * pr) + (pi * pi));
            Vector<double> ir = pr * scale, ii = -pi * scale;
            inverseRe[k] = ir;
            inverseIm[k] = ii;
            int rows = tape[at + 1];
            at += 2;
            for (int row = 0; row < rows; row++)
            {
                int entry = tape[at], columns = tape[at + 1];
                at += 2;
                Vector<double> ar = Unsafe.Add(ref re, entry), ai = Unsafe.Add(ref im, entry);
                Vector<double> lr = (ar * ir) - (ai * ii), li = (ar * ii) + (ai * ir);
                Unsafe.Add(ref re, entry) = lr;
                Unsafe.Add(ref im, entry) = li;
                for (int column = 0; column < columns; column++)
                {
                    int target = tape[at], source = tape[at + 1];
                    at += 2;
                    Vector<double> ur = Unsafe.Add(ref re, source), ui = Unsafe.Add(ref im, source);
                    Unsafe.Add(ref re, target) -= (lr * ur) - (li * ui);
                    Unsafe.Add(ref im, target) -= (lr * ui) + (li * ur);
                }
            }
        }
    }

    private void LoadRightSide((int Unknown, double Weight)[] weights)
    {
        Span<Vector<double>> re = SolutionRe, im = SolutionIm;
        re.Clear();
        im.Clear();
        foreach ((int unknown, double weight) in weights)
        {
            re[unknown] = new Vector<double>(weight);
        }
    }

    private void AdjointSolve((int Unknown, double Weight)[] output)
    {
        LoadRightSide(output);
        Span<Vector<double>> re = SolutionRe, im = SolutionIm;
        ReadOnlySpan<int> upper = _program.Upper, lower = _program.Lower;
        int at = 0;
        for (int k = 0; k < re.Length; k++)
        {
            MultiplyByInverse(re, im, k);
            for (; at < upper.Length && upper[at] == k; at += 3)
            {
                Subtract(re, im, upper[at + 1], upper[at + 2], k);
            }
        }

        for (at = lower.Length - 3; 0 <= at; at -= 3)
        {
            Subtract(re, im, lower[at + 1], lower[at + 2], lower[at]);
        }
    }

    private void ForwardSolve((int Unknown, double Weight)[] port)
    {
        LoadRightSide(port);
        Span<Vector<double>> re = SolutionRe, im = SolutionIm;
        ReadOnlySpan<int> upper = _program.Upper, lower = _program.Lower;
        for (int at = 0; at < lower.Length; at += 3)
        {
            Subtract(re, im, lower[at], lower[at + 2], lower[at + 1]);
        }

        int last = upper.Length - 3;
        for (int k = re.Length - 1; 0 <= k; k--)
        {
            for (; 0 <= last && upper[last] == k; last -= 3)
            {
                Subtract(re, im, k, upper[last + 2], upper[last + 1]);
            }

            MultiplyByInverse(re, im, k);
        }
    }

    /// <summary>x[target] −= factor[entry]·x[source].</summary>
    private void Subtract(Span<Vector<double>> re, Span<Vector<double>> im, int target, int entry, int source)
    {
        Vector<double> ar = FactorRe[entry], ai = FactorIm[entry], xr = re[source], xi = im[source];
        re[target] -= (ar * xr) - (ai * xi);
        im[target] -= (ar * xi) + (ai * xr);
    }

    private void MultiplyByInverse(Span<Vector<double>> re, Span<Vector<double>> im, int k)
    {
        Vector<double> ar = InverseRe[k], ai = InverseIm[k], xr = re[k], xi = im[k];
        re[k] = (ar * xr) - (ai * xi);
        im[k] = (ar * xi) + (ai * xr);
    }

    /// <summary>A bit for every lane of the group whose residual is too large.</summary>
    private uint Residual((int Unknown, double Weight)[] output)
    {
        Span<Vector<double>> zr = SolutionRe, zi = SolutionIm, yr = OriginalRe, yi = OriginalIm;
        ReadOnlySpan<int> pattern = _program.Pattern;
        Vector<double> worst = Vector<double>.Zero, largest = Vector<double>.Zero;
        int at = 0;
        for (int column = 0; column < zr.Length; column++)
        {
            Vector<double> sumRe = Vector<double>.Zero, sumIm = Vector<double>.Zero, size = Vector<double>.Zero;
            for (; at < pattern.Length && pattern[at + 1] == column; at += 3)
            {
                int row = pattern[at], entry = pattern[at + 2];
                Vector<double> a = yr[entry] * zr[row], b = yi[entry] * zi[row], c = yr[entry] * zi[row], d = yi[entry] * zr[row];
                sumRe += a - b;
                sumIm += c + d;
                size += Vector.Abs(a) + Vector.Abs(b) + Vector.Abs(c) + Vector.Abs(d);
            }

            foreach ((int unknown, double weight) in output)
            {
                if (unknown == column)
                {
                    sumRe -= new Vector<double>(weight);
                }
            }

            Vector<double> residual = Vector.Abs(sumRe) + Vector.Abs(sumIm);
            largest = Vector.Max(largest, size);
            worst = Vector.Max(worst, residual);

            // A NaN is no number's equal: mark the lane.
            worst = Vector.ConditionalSelect(Vector.Equals(residual, residual), worst, new Vector<double>(double.MaxValue));
        }

        // All equations are voltages per volt or per ampere of the same output, so the largest is the measure for all.
        Vector<double> excess = worst - (largest * ResidualLimit);
        if (Vector.LessThanOrEqualAll(excess, Vector<double>.Zero))
        {
            return 0;
        }

        uint bits = 0;
        for (int lane = 0; lane < _width; lane++)
        {
            bits |= excess[lane] <= 0 ? 0 : 1u << lane;
        }

        return bits;
    }

    private (Vector<double> Re, Vector<double> Im) Dot((int Unknown, double Weight)[] weights)
    {
        Vector<double> re = Vector<double>.Zero, im = Vector<double>.Zero;
        foreach ((int unknown, double weight) in weights)
        {
            re += SolutionRe[unknown] * weight;
            im += SolutionIm[unknown] * weight;
        }

        return (re, im);
    }

    private void StoreAdjoint(int lane, int output)
    {
        int at = (output * _program.Ports.Length * Capacity) + lane;
        foreach ((int Unknown, double Weight)[] port in _program.Ports)
        {
            (Vector<double> re, Vector<double> im) = Dot(port);
            re.CopyTo(_transferRe, at);
            im.CopyTo(_transferIm, at);
            at += Capacity;
        }
    }

    /// <summary>Solves the marked lanes again with pivoting. Rare: allocation of the dense solver is put off until it happens.</summary>
    private void FallBack(int lane, int lanes, int output, uint bad)
    {
        _dense ??= new DenseSolver(_program.Unknowns);
        for (int i = 0; i < _width && lane + i < lanes; i++)
        {
            if ((bad & (1u << i)) == 0)
            {
                continue;
            }

            Fallbacks++;
            _dense.Clear();
            for (int at = 0; at < _program.Pattern.Length; at += 3)
            {
                int entry = _program.Pattern[at + 2];
                _dense.Add(_program.Pattern[at + 1], _program.Pattern[at], new Complex(OriginalRe[entry][i], OriginalIm[entry][i]));
            }

            foreach ((int unknown, double weight) in _program.Outputs[output])
            {
                _dense.RightSide[unknown] += weight;
            }

            _dense.Solve();
            for (int port = 0; port < _program.Ports.Length; port++)
            {
                Complex transfer = Complex.Zero;
                foreach ((int unknown, double weight) in _program.Ports[port])
                {
                    transfer += _dense.Solution[unknown] * weight;
                }

                int at = (((output * _program.Ports.Length) + port) * Capacity) + lane + i;
                _transferRe[at] = transfer.Real;
                _transferIm[at] = transfer.Imaginary;
            }
        }
    }
}
