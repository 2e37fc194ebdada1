using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace FrontEnd.Networks;

/// <summary>
/// One network solved for one group of lanes, as many as a vector of the machine holds. A lane is a frequency and a build of the circuit:
/// every element may have a value of the lane's own. All memory is taken at the start; solving allocates nothing. Not for use by two
/// threads at a time.
/// </summary>
/// <remarks>
/// The adjoint solve (of the transposed system) gives the transfer from every port to one output at once, and is more accurate than
/// the forward solve where a small output is the difference of large voltages.
/// </remarks>
internal sealed class NetworkLanes
{
    /// <summary>Largest residual |Yᵀz − b| against the largest Σ|Y||z| at which the fixed pivot order is trusted; a well-behaved lane has
    /// about 1e-16.</summary>
    private const double ResidualLimit = 1e-11;

    private readonly NetworkProgram _program;
    private readonly bool _isChecked;
    private readonly Vector<double>[] _g;
    private readonly Vector<double>[] _c;
    private readonly Vector<double>[] _value;
    private readonly Vector<double>[] _startG;
    private readonly Vector<double>[] _startC;
    private readonly Vector<double>[] _startValue;
    private readonly int[] _late;
    private readonly ComplexLanes[] _slot;
    private readonly Vector<double>[] _originalRe;
    private readonly Vector<double>[] _originalIm;
    private readonly Vector<double>[] _factorRe;
    private readonly Vector<double>[] _factorIm;
    private readonly Vector<double>[] _inverseRe;
    private readonly Vector<double>[] _inverseIm;
    private readonly Vector<double>[] _solutionRe;
    private readonly Vector<double>[] _solutionIm;
    private DenseSolver? _dense;
    private ComplexLanes[]? _slope;
    private ComplexLanes[]? _adjoint;
    private uint _badLanes;

    /// <param name="program">The network.</param>
    /// <param name="isChecked">True to check every adjoint solve's residual and to solve lanes again, with pivoting, that fail it; false
    /// where a network of nearly the same values has been solved with the check.</param>
    /// <param name="late">Elements that change from group to group, in rising order: they are added at every factoring, in their place
    /// among the slots, so that changing them costs nothing and leaves no rounding.</param>
    public NetworkLanes(NetworkProgram program, bool isChecked, params ReadOnlySpan<int> late)
    {
        _program = program;
        _isChecked = isChecked;
        _late = late.ToArray();
        _g = new Vector<double>[program.Entries];
        _c = new Vector<double>[program.Entries];
        _value = new Vector<double>[program.Elements.Length];
        _startG = new Vector<double>[program.Entries];
        _startC = new Vector<double>[program.Entries];
        _startValue = new Vector<double>[program.Elements.Length];
        _slot = new ComplexLanes[program.Slots];
        _factorRe = new Vector<double>[program.Entries];
        _factorIm = new Vector<double>[program.Entries];
        _originalRe = isChecked ? new Vector<double>[program.Entries] : _factorRe;
        _originalIm = isChecked ? new Vector<double>[program.Entries] : _factorIm;
        _inverseRe = new Vector<double>[program.Unknowns];
        _inverseIm = new Vector<double>[program.Unknowns];
        _solutionRe = new Vector<double>[program.Unknowns];
        _solutionIm = new Vector<double>[program.Unknowns];
        Stamp(_startG, program.BaseG, capacitors: false);
        Stamp(_startC, program.BaseC, capacitors: true);
        for (int i = 0; i < _value.Length; i++)
        {
            _startValue[i] = new Vector<double>(program.Elements[i].Value);
        }

        Begin();
    }

    /// <summary>Lanes in a group.</summary>
    public static int Width => Vector<double>.Count;

    /// <summary>Lanes of the group that count; the rest are copies to fill it up.</summary>
    public int Live { get; set; } = Width;

    /// <summary>Lanes that took the pivoted fallback since the start.</summary>
    public int Fallbacks { get; private set; }

    /// <summary>Gives every element the program's own value on all lanes.</summary>
    public void Begin()
    {
        _startG.CopyTo(_g, 0);
        _startC.CopyTo(_c, 0);
        _startValue.CopyTo(_value, 0);
    }

    /// <summary>An element's value on each lane: conductance [S] or capacitance [F].</summary>
    public Vector<double> Value(int element) => _value[element];

    /// <summary>Gives an element a value [S or F] on each lane.</summary>
    public void Vary(int element, Vector<double> value)
    {
        PlacedElement placed = _program.Elements[element];
        Vector<double> change = value - _value[element];
        _value[element] = value;
        if (_late.AsSpan().Contains(element))
        {
            return;
        }

        Vector<double>[] matrix = placed.IsCapacitor ? _c : _g;
        for (int i = 0; i < placed.Entries.Length; i++)
        {
            matrix[placed.Entries[i]] += change * placed.Weights[i];
        }
    }

    /// <summary>A slot's value on each lane [S, or 1/gain of a driven node].</summary>
    public ComplexLanes Slot(int slot) => _slot[slot];

    public void SetSlot(int slot, ComplexLanes value) => _slot[slot] = value;

    /// <summary>Puts the matrix together at ω [rad/s] of each lane and factors it.</summary>
    public void Factor(Vector<double> omega)
    {
        for (int i = 0; i < _g.Length; i++)
        {
            _originalRe[i] = _g[i];
            _originalIm[i] = omega * _c[i];
        }

        ReadOnlySpan<int> targets = _program.SlotEntries;
        ReadOnlySpan<double> weights = _program.SlotWeights;
        int late = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            for (; late < _late.Length && _program.Elements[_late[late]].SlotsBefore <= i; late++)
            {
                AddLate(_late[late], omega);
            }

            ComplexLanes slot = _slot[targets[(2 * i) + 1]];
            _originalRe[targets[2 * i]] += slot.Re * weights[i];
            _originalIm[targets[2 * i]] += slot.Im * weights[i];
        }

        for (; late < _late.Length; late++)
        {
            AddLate(_late[late], omega);
        }

        if (_isChecked)
        {
            _originalRe.CopyTo(_factorRe, 0);
            _originalIm.CopyTo(_factorIm, 0);
        }

        Factorise();
    }

    private void AddLate(int element, Vector<double> omega)
    {
        PlacedElement placed = _program.Elements[element];
        Vector<double> value = placed.IsCapacitor ? omega * _value[element] : _value[element];
        Vector<double>[] matrix = placed.IsCapacitor ? _originalIm : _originalRe;
        for (int i = 0; i < placed.Entries.Length; i++)
        {
            matrix[placed.Entries[i]] += value * placed.Weights[i];
        }
    }

    /// <summary>Solves the transposed system for one output: every port's <see cref="Transfer"/> to it.</summary>
    public void SolveAdjoint(int output)
    {
        Load(_program.Outputs[output]);
        Substitute();
        if (_isChecked)
        {
            _badLanes = Residual(_program.Outputs[output]);
            FallBack(_program.Outputs[output], _badLanes, isAdjoint: true);
        }
    }

    private void Substitute()
    {
        ref Vector<double> re = ref MemoryMarshal.GetArrayDataReference(_solutionRe);
        ref Vector<double> im = ref MemoryMarshal.GetArrayDataReference(_solutionIm);
        ref Vector<double> fr = ref MemoryMarshal.GetArrayDataReference(_factorRe);
        ref Vector<double> fi = ref MemoryMarshal.GetArrayDataReference(_factorIm);
        ReadOnlySpan<int> upper = _program.Upper, lower = _program.Lower;
        int at = 0;
        for (int k = 0; k < _inverseRe.Length; k++)
        {
            Vector<double> ir = _inverseRe[k], ii = _inverseIm[k], vr = Unsafe.Add(ref re, k), vi = Unsafe.Add(ref im, k);
            Vector<double> xr = (ir * vr) - (ii * vi), xi = (ir * vi) + (ii * vr);
            Unsafe.Add(ref re, k) = xr;
            Unsafe.Add(ref im, k) = xi;
            for (; at < upper.Length && upper[at] == k; at += 3)
            {
                int target = upper[at + 1], entry = upper[at + 2];
                Vector<double> ar = Unsafe.Add(ref fr, entry), ai = Unsafe.Add(ref fi, entry);
                Unsafe.Add(ref re, target) -= (ar * xr) - (ai * xi);
                Unsafe.Add(ref im, target) -= (ar * xi) + (ai * xr);
            }
        }

        for (at = lower.Length - 3; 0 <= at; at -= 3)
        {
            Subtract(ref re, ref im, ref fr, ref fi, lower[at + 1], lower[at + 2], lower[at]);
        }
    }

    /// <summary>Transfer from a port to the output of the last adjoint solve: V per V or V per A.</summary>
    public ComplexLanes Transfer(int port) => Dot(_program.Ports[port]);

    /// <summary>Solves for one port: its transfer to every <see cref="Output"/>. There is no check of the residual here.</summary>
    public void SolveForward(int port)
    {
        Load(_program.Ports[port]);
        ref Vector<double> re = ref MemoryMarshal.GetArrayDataReference(_solutionRe);
        ref Vector<double> im = ref MemoryMarshal.GetArrayDataReference(_solutionIm);
        ref Vector<double> fr = ref MemoryMarshal.GetArrayDataReference(_factorRe);
        ref Vector<double> fi = ref MemoryMarshal.GetArrayDataReference(_factorIm);
        ReadOnlySpan<int> upper = _program.Upper, lower = _program.Lower;
        for (int at = 0; at < lower.Length; at += 3)
        {
            Subtract(ref re, ref im, ref fr, ref fi, lower[at], lower[at + 2], lower[at + 1]);
        }

        int last = upper.Length - 3;
        for (int k = _inverseRe.Length - 1; 0 <= k; k--)
        {
            for (; 0 <= last && upper[last] == k; last -= 3)
            {
                Subtract(ref re, ref im, ref fr, ref fi, k, upper[last + 2], upper[last + 1]);
            }

            Vector<double> ir = _inverseRe[k], ii = _inverseIm[k], xr = Unsafe.Add(ref re, k), xi = Unsafe.Add(ref im, k);
            Unsafe.Add(ref re, k) = (ir * xr) - (ii * xi);
            Unsafe.Add(ref im, k) = (ir * xi) + (ii * xr);
        }
    }

    /// <summary>d/dω [s] of the transfer from a port to the output of the last adjoint solve: −yᵀ·(dA/dω)·x, y being that solve's solution, x
    /// the port's own. Exact.</summary>
    /// <param name="port">The port.</param>
    /// <param name="slots">d/dω of each slot's value.</param>
    public ComplexLanes Slope(int port, ReadOnlySpan<ComplexLanes> slots)
    {
        ComplexLanes[] slope = _slope ??= new ComplexLanes[_c.Length], adjoint = _adjoint ??= new ComplexLanes[_solutionRe.Length];
        for (int i = 0; i < slope.Length; i++)
        {
            slope[i] = new(Vector<double>.Zero, _c[i]);
        }

        for (int i = 0; i < _program.SlotWeights.Length; i++)
        {
            slope[_program.SlotEntries[2 * i]] += new Vector<double>(_program.SlotWeights[i]) * slots[_program.SlotEntries[(2 * i) + 1]];
        }

        foreach (int element in _late)
        {
            PlacedElement placed = _program.Elements[element];
            for (int i = 0; placed.IsCapacitor && i < placed.Entries.Length; i++)
            {
                slope[placed.Entries[i]] += new ComplexLanes(Vector<double>.Zero, _value[element] * placed.Weights[i]);
            }
        }

        for (int i = 0; i < adjoint.Length; i++)
        {
            adjoint[i] = new(_solutionRe[i], _solutionIm[i]);
        }

        SolveForward(port);
        FallBack(_program.Ports[port], _badLanes, isAdjoint: false);
        var sum = new ComplexLanes(Vector<double>.Zero, Vector<double>.Zero);
        ReadOnlySpan<int> pattern = _program.Pattern;
        for (int at = 0; at < pattern.Length; at += 3)
        {
            int row = pattern[at], column = pattern[at + 1];
            sum -= adjoint[row] * slope[pattern[at + 2]] * new ComplexLanes(_solutionRe[column], _solutionIm[column]);
        }

        for (int i = 0; i < adjoint.Length; i++)
        {
            (_solutionRe[i], _solutionIm[i]) = (adjoint[i].Re, adjoint[i].Im);
        }

        return sum;
    }

    /// <summary>Transfer from the port of the last forward solve to an output.</summary>
    public ComplexLanes Output(int output) => Dot(_program.Outputs[output]);

    /// <summary>Puts the program's conductances or capacitances together without the late elements, in the order in which the network was
    /// built.</summary>
    private void Stamp(Vector<double>[] matrix, double[] start, bool capacitors)
    {
        for (int i = 0; i < matrix.Length; i++)
        {
            matrix[i] = new Vector<double>(start[i]);
        }

        for (int element = 0; element < _program.Elements.Length; element++)
        {
            PlacedElement placed = _program.Elements[element];
            for (int i = 0; placed.IsCapacitor == capacitors && !_late.AsSpan().Contains(element) && i < placed.Entries.Length; i++)
            {
                matrix[placed.Entries[i]] += new Vector<double>(placed.Value * placed.Weights[i]);
            }
        }
    }

    private void Factorise()
    {
        // Indices come from the compiled program and are right by construction; the references save the bounds checks of the inner loops,
        // here and in the solves.
        ref Vector<double> re = ref MemoryMarshal.GetArrayDataReference(_factorRe);
        ref Vector<double> im = ref MemoryMarshal.GetArrayDataReference(_factorIm);
        ReadOnlySpan<int> tape = _program.Factor;
        int at = 0;
        for (int k = 0; k < _inverseRe.Length; k++)
        {
            Vector<double> pr = Unsafe.Add(ref re, tape[at]), pi = Unsafe.Add(ref im, tape[at]);
            Vector<double> scale = Vector<double>.One / ((pr * pr) + (pi * pi));
            Vector<double> ir = pr * scale, ii = -pi * scale;
            _inverseRe[k] = ir;
            _inverseIm[k] = ii;
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

    private void Load((int Unknown, double Weight)[] weights)
    {
        _solutionRe.AsSpan().Clear();
        _solutionIm.AsSpan().Clear();
        foreach ((int unknown, double weight) in weights)
        {
            _solutionRe[unknown] = new Vector<double>(weight);
        }
    }

    /// <summary>x[target] −= factor[entry]·x[source].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Subtract(
        ref Vector<double> re, ref Vector<double> im, ref Vector<double> factorRe, ref Vector<double> factorIm, int target, int entry,
        int source)
    {
        Vector<double> ar = Unsafe.Add(ref factorRe, entry), ai = Unsafe.Add(ref factorIm, entry);
        Vector<double> xr = Unsafe.Add(ref re, source), xi = Unsafe.Add(ref im, source);
        Unsafe.Add(ref re, target) -= (ar * xr) - (ai * xi);
        Unsafe.Add(ref im, target) -= (ar * xi) + (ai * xr);
    }

    /// <summary>A bit for every lane of the group whose residual is too large.</summary>
    private uint Residual((int Unknown, double Weight)[] output)
    {
        ReadOnlySpan<int> pattern = _program.Pattern;
        Vector<double> worst = Vector<double>.Zero, largest = Vector<double>.Zero;
        int at = 0;
        for (int column = 0; column < _solutionRe.Length; column++)
        {
            Vector<double> sumRe = Vector<double>.Zero, sumIm = Vector<double>.Zero, size = Vector<double>.Zero;
            for (; at < pattern.Length && pattern[at + 1] == column; at += 3)
            {
                int row = pattern[at], entry = pattern[at + 2];
                Vector<double> yr = _originalRe[entry], yi = _originalIm[entry], zr = _solutionRe[row], zi = _solutionIm[row];
                Vector<double> a = yr * zr, b = yi * zi, c = yr * zi, d = yi * zr;
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
        for (int lane = 0; lane < Width; lane++)
        {
            bits |= excess[lane] <= 0 ? 0 : 1u << lane;
        }

        return bits;
    }

    private ComplexLanes Dot((int Unknown, double Weight)[] weights)
    {
        Vector<double> re = Vector<double>.Zero, im = Vector<double>.Zero;
        foreach ((int unknown, double weight) in weights)
        {
            re += _solutionRe[unknown] * weight;
            im += _solutionIm[unknown] * weight;
        }

        return new(re, im);
    }

    /// <summary>Solves the marked lanes again with pivoting, the transposed system or the system itself. Rare: allocation of the dense solver
    /// is put off until it happens.</summary>
    private void FallBack((int Unknown, double Weight)[] rightSide, uint bad, bool isAdjoint)
    {
        for (int lane = 0; bad != 0 && lane < Width; lane++)
        {
            if ((bad & (1u << lane)) == 0)
            {
                continue;
            }

            Fallbacks += isAdjoint && lane < Live ? 1 : 0;
            _dense ??= new DenseSolver(_program.Unknowns);
            _dense.Clear();
            for (int at = 0; at < _program.Pattern.Length; at += 3)
            {
                (int row, int column, int entry) = (_program.Pattern[at], _program.Pattern[at + 1], _program.Pattern[at + 2]);
                var value = new Complex(_originalRe[entry][lane], _originalIm[entry][lane]);
                _dense.Add(isAdjoint ? column : row, isAdjoint ? row : column, value);
            }

            foreach ((int unknown, double weight) in rightSide)
            {
                _dense.RightSide[unknown] += weight;
            }

            _dense.Solve();
            for (int unknown = 0; unknown < _solutionRe.Length; unknown++)
            {
                _solutionRe[unknown] = Vector.WithElement(_solutionRe[unknown], lane, _dense.Solution[unknown].Real);
                _solutionIm[unknown] = Vector.WithElement(_solutionIm[unknown], lane, _dense.Solution[unknown].Imaginary);
            }
        }
    }
}
