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
public sealed class NetworkProgram
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
        Pattern = PatternList(pattern, order, entry);
        Factor = FactorTape(filled, entry, Unknowns);
        (Lower, Upper) = SolveTapes(filled, entry, Unknowns);
        Diagonal = new int[Unknowns];
        for (int i = 0; i < Unknowns; i++)
        {
            Diagonal[i] = entry[i, i];
        }

        Ports = [.. Ports.Select(weights => weights.Select(weight => (position[weight.Unknown], weight.Weight)).ToArray())];
        Outputs = [.. Outputs.Select(weights => weights.Select(weight => (position[weight.Unknown], weight.Weight)).ToArray())];
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

    /// <summary>The original (unfilled) matrix by columns: triples of row, column, entry.</summary>
    internal int[] Pattern { get; }

    /// <summary>For each pivot: diagonal entry, rows below; for each row: its entry, columns right; for each: target and pivot-row
    /// entry.</summary>
    internal int[] Factor { get; }

    /// <summary>Triples (row, column, entry) of the unit lower factor, by columns.</summary>
    internal int[] Lower { get; }

    /// <summary>Triples (row, column, entry) of the upper factor right of the diagonal, by rows.</summary>
    internal int[] Upper { get; }

    internal int[] Diagonal { get; }

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
        for (int at = 0; at < Pattern.Length; at += 3)
        {
            solver.Add(Pattern[at], Pattern[at + 1], entries[Pattern[at + 2]]);
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
                int rows = left.Count(i => i != candidate && work[i, candidate]);
                int columns = left.Count(j => j != candidate && work[candidate, j]);
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

    private static int[] PatternList(bool[,] pattern, int[] order, int[,] entry)
    {
        int n = order.Length;
        var list = new List<int>();
        for (int j = 0; j < n; j++)
        {
            for (int i = 0; i < n; i++)
            {
                if (pattern[order[i], order[j]])
                {
                    list.AddRange([i, j, entry[i, j]]);
                }
            }
        }

        return [.. list];
    }

    private static int[] FactorTape(bool[,] filled, int[,] entry, int n)
    {
        var tape = new List<int>();
        for (int k = 0; k < n; k++)
        {
            int[] rows = [.. Enumerable.Range(k + 1, n - k - 1).Where(i => filled[i, k])];
            int[] columns = [.. Enumerable.Range(k + 1, n - k - 1).Where(j => filled[k, j])];
            tape.AddRange([entry[k, k], rows.Length]);
            foreach (int i in rows)
            {
                tape.AddRange([entry[i, k], columns.Length]);
                foreach (int j in columns)
                {
                    tape.AddRange([entry[i, j], entry[k, j]]);
                }
            }
        }

        return [.. tape];
    }

    private static (int[] Lower, int[] Upper) SolveTapes(bool[,] filled, int[,] entry, int n)
    {
        var lower = new List<int>();
        var upper = new List<int>();
        for (int k = 0; k < n; k++)
        {
            for (int i = k + 1; i < n; i++)
            {
                if (filled[i, k])
                {
                    lower.AddRange([i, k, entry[i, k]]);
                }

                if (filled[k, i])
                {
                    upper.AddRange([k, i, entry[k, i]]);
                }
            }
        }

        return ([.. lower], [.. upper]);
    }
}

/// <summary>The matrix entries that an element's conductance or capacitance is added to, each times its weight.</summary>
/// <param name="SlotsBefore">Entries of slots that the network had when the element was added.</param>
internal sealed record PlacedElement(int[] Entries, double[] Weights, double Value, bool IsCapacitor, int SlotsBefore);
