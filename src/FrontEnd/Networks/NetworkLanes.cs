using System.Numerics;
using System.Runtime.CompilerServices;

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
    private readonly bool[] _isLate;
    private readonly ComplexLanes[] _slot;
    private readonly Addition[] _additions;
    private readonly ComplexLanes[] _original;
    private readonly Vector<double>[] _size;
    private readonly ComplexLanes[] _factor;
    private readonly ComplexLanes[] _inverse;
    private readonly ComplexLanes[] _solution;
    private readonly double[] _rightSide;
    private int _firstRight;
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
        _isLate = new bool[program.Elements.Length];
        foreach (int element in late)
        {
            _isLate[element] = true;
        }

        _g = new Vector<double>[program.Entries];
        _c = new Vector<double>[program.Entries];
        _value = new Vector<double>[program.Elements.Length];
        _startG = new Vector<double>[program.Entries];
        _startC = new Vector<double>[program.Entries];
        _startValue = new Vector<double>[program.Elements.Length];
        _slot = new ComplexLanes[program.Slots + _late.Length];
        _additions = Additions();
        _factor = new ComplexLanes[program.Entries];
        _original = isChecked ? new ComplexLanes[program.Entries] : [];
        _size = new Vector<double>[_original.Length];
        _inverse = new ComplexLanes[program.Unknowns];
        _solution = new ComplexLanes[program.Unknowns];
        _rightSide = new double[program.Unknowns];
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
        if (_isLate[element])
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
    /// <remarks>Row after row, each entry in registers from the sum of its parts to its factor. Every index comes from the compiled
    /// program.</remarks>
    public void Factor(Vector<double> omega)
    {
        for (int i = 0; i < _late.Length; i++)
        {
            Vector<double> value = _value[_late[i]];
            _slot[_program.Slots + i] = _program.Elements[_late[i]].IsCapacitor ? new(Vector<double>.Zero, omega * value) : new(value, default);
        }

        ReadOnlySpan<(int Row, int Column)> places = _program.Places;
        Sums elimination = _program.Elimination;
        ReadOnlySpan<Addition> additions = _additions;
        ReadOnlySpan<Vector<double>> g = _g, c = _c;
        Span<ComplexLanes> factor = _factor, inverse = _inverse;
        int added = 0;
        for (int entry = 0; entry < places.Length; entry++)
        {
            Vector<double> re = g[entry], im = omega * c[entry];
            for (; added < additions.Length && additions[added].Entry == entry; added++)
            {
                Addition addition = additions[added];
                ref readonly ComplexLanes slot = ref _slot[addition.Slot];
                re += slot.Re * addition.Weight;
                im += slot.Im * addition.Weight;
            }

            if (_isChecked)
            {
                _original[entry] = new(re, im);
                _size[entry] = Vector.Abs(re) + Vector.Abs(im);
            }

            ComplexLanes value = Less(new(re, im), elimination.Of(entry), factor, factor);
            (int row, int column) = places[entry];
            if (column == row)
            {
                Vector<double> scale = Vector<double>.One / value.Power;
                inverse[row] = new(value.Re * scale, -value.Im * scale);
            }

            factor[entry] = column < row ? value * inverse[column] : value;
        }
    }

    /// <summary>What slots and late elements add to the matrix, entry by entry, in the order in which the network was built.</summary>
    private Addition[] Additions()
    {
        var list = new List<Addition>();
        int late = 0;
        for (int i = 0; i <= _program.SlotWeights.Length; i++)
        {
            for (; late < _late.Length && (i == _program.SlotWeights.Length || _program.Elements[_late[late]].SlotsBefore <= i); late++)
            {
                PlacedElement placed = _program.Elements[_late[late]];
                list.AddRange(placed.Entries.Zip(placed.Weights, (entry, weight) => new Addition(entry, _program.Slots + late, weight)));
            }

            if (i < _program.SlotWeights.Length)
            {
                list.Add(new(_program.SlotEntries[2 * i], _program.SlotEntries[(2 * i) + 1], _program.SlotWeights[i]));
            }
        }

        return [.. list.OrderBy(addition => addition.Entry)];
    }

    /// <summary>Solves the transposed system for one output: every port's <see cref="Transfer"/> to it.</summary>
    public void SolveAdjoint(int output)
    {
        Load(_program.Outputs[output]);
        Substitute();
        if (_isChecked)
        {
            _badLanes = Residual();
            FallBack(_program.Outputs[output], _badLanes, isAdjoint: true);
        }
    }

    /// <summary>The transposed upper factor, then the transposed lower.</summary>
    private void Substitute()
    {
        Span<ComplexLanes> solution = _solution;
        ReadOnlySpan<ComplexLanes> factor = _factor, inverse = _inverse;
        Sums upper = _program.UpperColumns, lower = _program.LowerColumns;
        solution[.._firstRight].Clear();
        for (int k = _firstRight; k < solution.Length; k++)
        {
            solution[k] = Less(new(new(_rightSide[k]), Vector<double>.Zero), upper.Of(k), factor, solution) * inverse[k];
        }

        for (int k = solution.Length - 2; 0 <= k; k--)
        {
            solution[k] = Less(solution[k], lower.Of(k), factor, solution);
        }
    }

    /// <summary>value − Σ left[entry]·right[with]: the sums stay in registers, products of real and of imaginary parts each in their
    /// own.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ComplexLanes Less(
        ComplexLanes value, ReadOnlySpan<Term> terms, ReadOnlySpan<ComplexLanes> left, ReadOnlySpan<ComplexLanes> right)
    {
        Vector<double> re = value.Re, reRe = Vector<double>.Zero, reIm = Vector<double>.Zero, imRe = Vector<double>.Zero;
        foreach (Term term in terms)
        {
            ref readonly ComplexLanes a = ref left[term.Entry];
            ref readonly ComplexLanes b = ref right[term.With];
            re = Vector.MultiplyAddEstimate(a.Im, b.Im, re);
            reRe = Vector.MultiplyAddEstimate(a.Re, b.Re, reRe);
            reIm = Vector.MultiplyAddEstimate(a.Re, b.Im, reIm);
            imRe = Vector.MultiplyAddEstimate(a.Im, b.Re, imRe);
        }

        return new(re - reRe, value.Im - (reIm + imRe));
    }

    /// <summary>Transfer from a port to the output of the last adjoint solve: V per V or V per A.</summary>
    public ComplexLanes Transfer(int port) => Dot(_program.Ports[port]);

    /// <summary>Solves for one port: its transfer to every <see cref="Output"/>. There is no check of the residual here.</summary>
    public void SolveForward(int port)
    {
        Load(_program.Ports[port]);
        Span<ComplexLanes> solution = _solution;
        ReadOnlySpan<ComplexLanes> factor = _factor, inverse = _inverse;
        Sums lower = _program.LowerRows, upper = _program.UpperRows;
        solution[.._firstRight].Clear();
        for (int k = _firstRight; k < solution.Length; k++)
        {
            solution[k] = Less(new(new(_rightSide[k]), Vector<double>.Zero), lower.Of(k), factor, solution);
        }

        for (int k = solution.Length - 1; 0 <= k; k--)
        {
            solution[k] = Less(solution[k], upper.Of(k), factor, solution) * inverse[k];
        }
    }

    /// <summary>d/dω [s] of the transfer from a port to the output of the last adjoint solve: −yᵀ·(dA/dω)·x, y being that solve's solution, x
    /// the port's own. Exact.</summary>
    /// <param name="port">The port.</param>
    /// <param name="slots">d/dω of each slot's value.</param>
    public ComplexLanes Slope(int port, ReadOnlySpan<ComplexLanes> slots)
    {
        ComplexLanes[] slope = _slope ??= new ComplexLanes[_c.Length], adjoint = _adjoint ??= new ComplexLanes[_solution.Length];
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

        _solution.CopyTo(adjoint, 0);
        SolveForward(port);
        FallBack(_program.Ports[port], _badLanes, isAdjoint: false);
        var sum = new ComplexLanes(Vector<double>.Zero, Vector<double>.Zero);
        for (int column = 0; column < adjoint.Length; column++)
        {
            foreach (Term term in _program.Columns.Of(column))
            {
                sum -= adjoint[term.With] * slope[term.Entry] * _solution[column];
            }
        }

        adjoint.CopyTo(_solution, 0);
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
            for (int i = 0; placed.IsCapacitor == capacitors && !_isLate[element] && i < placed.Entries.Length; i++)
            {
                matrix[placed.Entries[i]] += new Vector<double>(placed.Value * placed.Weights[i]);
            }
        }
    }

    /// <summary>Sets the right side; <see cref="_firstRight"/> is where it begins, before it the first half of a solve has nothing to
    /// do.</summary>
    private void Load((int Unknown, double Weight)[] weights)
    {
        Array.Clear(_rightSide);
        _firstRight = _rightSide.Length;
        foreach ((int unknown, double weight) in weights)
        {
            _rightSide[unknown] = weight;
            _firstRight = Math.Min(_firstRight, unknown);
        }
    }

    /// <summary>A bit for every lane of the group whose residual is too large.</summary>
    private uint Residual()
    {
        ReadOnlySpan<ComplexLanes> original = _original, solution = _solution;
        ReadOnlySpan<Vector<double>> size = _size;
        Vector<double> worst = Vector<double>.Zero, largest = Vector<double>.Zero;
        for (int column = 0; column < solution.Length; column++)
        {
            ReadOnlySpan<Term> terms = _program.Columns.Of(column);
            ComplexLanes left = Less(new(new(_rightSide[column]), Vector<double>.Zero), terms, original, solution);
            Vector<double> sum = Vector<double>.Zero;
            foreach (Term term in terms)
            {
                ref readonly ComplexLanes z = ref solution[term.With];
                sum = Vector.MultiplyAddEstimate(size[term.Entry], Vector.Abs(z.Re) + Vector.Abs(z.Im), sum);
            }

            Vector<double> residual = Vector.Abs(left.Re) + Vector.Abs(left.Im);
            largest = Vector.Max(largest, sum);
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
            ref readonly ComplexLanes value = ref _solution[unknown];
            re += value.Re * weight;
            im += value.Im * weight;
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
            for (int column = 0; column < _solution.Length; column++)
            {
                foreach (Term term in _program.Columns.Of(column))
                {
                    _dense.Add(isAdjoint ? column : term.With, isAdjoint ? term.With : column, _original[term.Entry][lane]);
                }
            }

            foreach ((int unknown, double weight) in rightSide)
            {
                _dense.RightSide[unknown] += weight;
            }

            _dense.Solve();
            for (int unknown = 0; unknown < _solution.Length; unknown++)
            {
                Complex value = _dense.Solution[unknown];
                ComplexLanes solution = _solution[unknown];
                _solution[unknown] = new(
                    Vector.WithElement(solution.Re, lane, value.Real), Vector.WithElement(solution.Im, lane, value.Imaginary));
            }
        }
    }

    /// <summary>A slot, or a late element behind the slots, that is added to an entry of the matrix times a weight.</summary>
    private readonly record struct Addition(int Entry, int Slot, double Weight);
}
