using System.Runtime.CompilerServices;

namespace FrontEnd.Networks;

/// <summary>
/// A network made ready for solving: the order of elimination and the fill are worked out once from the topology, and the
/// elimination is a flat program over the matrix's entries.
/// </summary>
/// <remarks>
/// Pivots are taken from the diagonal, ordinary nodes first (least fill), driven nodes last. The ordinary nodes' part is complex
/// symmetric with a real and an imaginary part that are both positive semidefinite, for which elimination without pivoting is stable with
/// a growth below 3 (Higham 1998, from memory); a driven node's pivot is then 1/A plus its feedback factor. Every lane's residual is
/// checked all the same.
/// </remarks>
internal sealed class NetworkProgram
{
    private NetworkProgram(Network network)
    {
        Unknowns = network.Unknowns;
        Slots = network.Slots;
        Ports = [.. network.PortWeights];
        Outputs = [.. network.OutputWeights];

        var pattern = new bool[Unknowns, Unknowns];
        (int Row, int Column, double G, double C)[] fixedEntries = [.. network.Fixed];
        (int Row, int Column, int Slot, double Weight)[] varying = [.. network.Varying];
        for (int i = 0; i < Unknowns; i++)
        {
            pattern[i, i] = true;
        }

        foreach ((int row, int column, _, _) in fixedEntries)
        {
            pattern[row, column] = true;
        }

        foreach ((int row, int column, _, _) in varying)
        {
            pattern[row, column] = true;
        }

        int[] order = Order(pattern, network.Driven);
        int[] position = new int[Unknowns];
        for (int i = 0; i < Unknowns; i++)
        {
            position[order[i]] = i;
        }

        EliminationOrder = order;
        var filled = new bool[Unknowns, Unknowns];
        for (int i = 0; i < Unknowns; i++)
        {
            for (int j = 0; j < Unknowns; j++)
            {
                filled[i, j] = pattern[order[i], order[j]];
            }
        }

        Fill(filled);
        var entry = new int[Unknowns, Unknowns];
        int count = 0;
        for (int i = 0; i < Unknowns; i++)
        {
            for (int j = 0; j < Unknowns; j++)
            {
                entry[i, j] = filled[i, j] ? count++ : -1;
            }
        }

        Entries = count;
        G = new double[count];
        C = new double[count];
        foreach ((int row, int column, double g, double c) in fixedEntries)
        {
            G[entry[position[row], position[column]]] += g;
            C[entry[position[row], position[column]]] += c;
        }

        SlotEntries = new int[2 * varying.Length];
        SlotWeights = new double[varying.Length];
        for (int i = 0; i < varying.Length; i++)
        {
            SlotEntries[2 * i] = entry[position[varying[i].Row], position[varying[i].Column]];
            SlotEntries[(2 * i) + 1] = varying[i].Slot;
            SlotWeights[i] = varying[i].Weight;
        }

        BaseG = new double[count];
        BaseC = new double[count];
        for (int i = 0; i < Unknowns; i++)
        {
            for (int j = 0; network.Driven.Contains(order[i]) && j < Unknowns; j++)
            {
                if (0 <= entry[i, j])
                {
                    (BaseG[entry[i, j]], BaseC[entry[i, j]]) = (G[entry[i, j]], C[entry[i, j]]);
                }
            }
        }

        Elements = [.. network.Elements.Select(element => Place(element, network.Driven, position, entry))];
        int n = Unknowns;
        var places = new List<(int Row, int Column)>(count);
        var elimination = new SumsMaker();
        for (int row = 0; row < n; row++)
        {
            for (int column = 0; column < n; column++)
            {
                if (filled[row, column])
                {
                    places.Add((row, column));
                    for (int k = 0; k < Math.Min(row, column); k++)
                    {
                        elimination.Add(filled[row, k] && filled[k, column], entry[row, k], entry[k, column]);
                    }

                    elimination.End();
                }
            }
        }

        Places = [.. places];
        Elimination = elimination.Make();
        SumsMaker lowerRows = new(), lowerColumns = new(), upperRows = new(), upperColumns = new(), columns = new();
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                lowerRows.Add(k < i && filled[i, k], entry[i, k], k);
                lowerColumns.Add(i < k && filled[k, i], entry[k, i], k);
                upperRows.Add(i < k && filled[i, k], entry[i, k], k);
                upperColumns.Add(k < i && filled[k, i], entry[k, i], k);
                columns.Add(pattern[order[k], order[i]], entry[k, i], k);
            }

            lowerRows.End();
            lowerColumns.End();
            upperRows.End();
            upperColumns.End();
            columns.End();
        }

        (LowerRows, LowerColumns) = (lowerRows.Make(), lowerColumns.Make());
        (UpperRows, UpperColumns, Columns) = (upperRows.Make(), upperColumns.Make(), columns.Make());
        Ports = Array.ConvertAll(Ports, Placed);
        Outputs = Array.ConvertAll(Outputs, Placed);

        (int, double)[] Placed((int Unknown, double Weight)[] weights) =>
            Array.ConvertAll(weights, weight => (position[weight.Unknown], weight.Weight));
    }

    public int Unknowns { get; }

    public int Slots { get; }

    /// <summary>Entries of the factored matrix, fill included.</summary>
    public int Entries { get; }

    /// <summary>Right-hand side of each port, in the order of elimination.</summary>
    internal (int Unknown, double Weight)[][] Ports { get; }

    internal (int Unknown, double Weight)[][] Outputs { get; }

    /// <summary>Unknown eliminated first, second, ….</summary>
    internal int[] EliminationOrder { get; }

    internal double[] G { get; }

    internal double[] C { get; }

    /// <summary>What stands in the matrix without any element: the constraints of driven nodes.</summary>
    internal double[] BaseG { get; }

    internal double[] BaseC { get; }

    /// <summary>Pairs of entry and slot.</summary>
    internal int[] SlotEntries { get; }

    internal double[] SlotWeights { get; }

    /// <summary>Where each resistor and capacitor stands in the matrix.</summary>
    internal PlacedElement[] Elements { get; }

    /// <summary>Row and column of each entry, row after row, in the order of elimination.</summary>
    internal (int Row, int Column)[] Places { get; }

    /// <summary>What each entry loses by the elimination: an entry of the lower factor times one of the upper.</summary>
    internal Sums Elimination { get; }

    /// <summary>The unit lower factor left of the diagonal: the entries of each row with the unknown of their column.</summary>
    internal Sums LowerRows { get; }

    /// <summary>The same by columns, with the unknown of their row.</summary>
    internal Sums LowerColumns { get; }

    /// <summary>The upper factor right of the diagonal, by rows and by columns.</summary>
    internal Sums UpperRows { get; }

    internal Sums UpperColumns { get; }

    /// <summary>The original (unfilled) matrix: the entries of each column with the unknown of their row.</summary>
    internal Sums Columns { get; }

    public static NetworkProgram Compile(Network network) => new(network);

    /// <summary>All outputs at dc, capacitors open, for given slot values and port sources; with pivoting.</summary>
    public double[] SolveDirectCurrent(ReadOnlySpan<double> slots, ReadOnlySpan<(int Port, double Value)> sources)
    {
        var entries = (double[])G.Clone();
        for (int i = 0; i < SlotWeights.Length; i++)
        {
            entries[SlotEntries[2 * i]] += slots[SlotEntries[(2 * i) + 1]] * SlotWeights[i];
        }

        var solver = new DenseSolver(Unknowns);
        for (int column = 0; column < Unknowns; column++)
        {
            foreach (Term term in Columns.Of(column))
            {
                solver.Add(term.With, column, entries[term.Entry]);
            }
        }

        foreach ((int port, double value) in sources)
        {
            foreach ((int unknown, double weight) in Ports[port])
            {
                solver.RightSide[unknown] += weight * value;
            }
        }

        solver.Solve();
        return [.. Outputs.Select(output => output.Sum(weight => solver.Solution[weight.Unknown].Real * weight.Weight))];
    }

    private static PlacedElement Place(NetworkElement element, IReadOnlySet<int> driven, int[] position, int[,] entry)
    {
        var entries = new List<int>();
        var weights = new List<double>();
        foreach ((int row, double left) in element.Branch.Where(end => !driven.Contains(end.Unknown)))
        {
            foreach ((int column, double right) in element.Branch)
            {
                entries.Add(entry[position[row], position[column]]);
                weights.Add(left * right);
            }
        }

        return new PlacedElement([.. entries], [.. weights], element.Value, element.IsCapacitor, element.SlotsBefore);
    }

    /// <summary>Least-fill order (Markowitz on the structure), driven nodes after all others.</summary>
    private static int[] Order(bool[,] pattern, IReadOnlySet<int> driven)
    {
        int n = pattern.GetLength(0);
        var work = (bool[,])pattern.Clone();
        var left = new List<int>(Enumerable.Range(0, n));
        var order = new int[n];
        for (int step = 0; step < n; step++)
        {
            int best = -1;
            (bool Driven, int Cost) bestKey = default;
            foreach (int candidate in left)
            {
                int rows = 0, columns = 0;
                foreach (int other in left)
                {
                    rows += other != candidate && work[other, candidate] ? 1 : 0;
                    columns += other != candidate && work[candidate, other] ? 1 : 0;
                }

                (bool, int) key = (driven.Contains(candidate), rows * columns);
                if (best < 0 || key.CompareTo(bestKey) < 0)
                {
                    (best, bestKey) = (candidate, key);
                }
            }

            order[step] = best;
            left.Remove(best);
            foreach (int i in left)
            {
                foreach (int j in left)
                {
                    work[i, j] |= work[i, best] && work[best, j];
                }
            }
        }

        return order;
    }

    private static void Fill(bool[,] a)
    {
        int n = a.GetLength(0);
        for (int k = 0; k < n; k++)
        {
            for (int i = k + 1; i < n; i++)
            {
                for (int j = k + 1; a[i, k] && j < n; j++)
                {
                    a[i, j] |= a[k, j];
                }
            }
        }
    }
}

/// <summary>One product of a sum: an entry of the matrix, and the unknown or the other entry that it is multiplied by.</summary>
internal readonly record struct Term(int Entry, int With);

/// <summary>Sums of products, one after another; a sum is worked out in registers and stored once.</summary>
internal sealed class Sums
{
    public Sums(Term[] terms, int[] starts) => (Terms, Starts) = (terms, starts);

    public Term[] Terms { get; }

    /// <summary>Where each sum begins among the terms, and where the last one ends.</summary>
    public int[] Starts { get; }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<Term> Of(int sum) => Terms.AsSpan(Starts[sum], Starts[sum + 1] - Starts[sum]);
}

/// <summary>Puts <see cref="Sums"/> together term by term.</summary>
internal sealed class SumsMaker
{
    private readonly List<Term> _terms = [];
    private readonly List<int> _starts = [0];

    /// <summary>Adds a product to the sum at hand where there is one.</summary>
    public void Add(bool isThere, int entry, int with)
    {
        if (isThere)
        {
            _terms.Add(new Term(entry, with));
        }
    }

    /// <summary>Ends the sum at hand.</summary>
    public void End() => _starts.Add(_terms.Count);

    public Sums Make() => new([.. _terms], [.. _starts]);
}

/// <summary>The matrix entries that an element's conductance or capacitance is added to, each times its weight.</summary>
/// <param name="SlotsBefore">Entries of slots that the network had when the element was added.</param>
internal sealed record PlacedElement(int[] Entries, double[] Weights, double Value, bool IsCapacitor, int SlotsBefore);
