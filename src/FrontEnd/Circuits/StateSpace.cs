using System.Numerics;

namespace FrontEnd.Circuits;

/// <summary>dx/dt = A·x + B·u, y = C·x + D·u of a circuit with ideal op-amps; the states are the voltages of its capacitors.</summary>
internal sealed record StateSpace(double[,] A, double[] B, double[] C, double D)
{
    public int Order => B.Length;

    /// <summary>Longest time constant [s]; 0 without any state.</summary>
    public double SlowestSeconds { get; private init; }

    public double FastestSeconds { get; private init; } = double.PositiveInfinity;

    public static StateSpace Constant(double gain) => new(new double[0, 0], [], [], gain);

    /// <summary>through + gain/(1 + s·τ).</summary>
    public static StateSpace First(double tau, double through, double gain)
    {
        double scale = 1 / tau;
        return tau <= 0
            ? Constant(through + gain)
            : new(new[,] { { -scale } }, [scale], [gain], through) { SlowestSeconds = tau, FastestSeconds = tau };
    }

    /// <summary>gain/(1 + s·a1 + s²·a2).</summary>
    public static StateSpace Second(double a1, double a2, double gain) => a2 <= 0 ? First(a1, 0, gain) : Companion(a1, a2, 0, gain, 0);

    /// <summary>gain − gain·s·a1/(1 + s·a1 + s²·a2).</summary>
    public static StateSpace Stop(double a1, double a2, double gain) => Companion(a1, a2, gain, 0, -gain * a1);

    /// <summary>From the circuit's input to its output.</summary>
    /// <remarks>Each capacitor stands as a source of its voltage; the current that flows through it, over its capacitance, is the state's
    /// slope.</remarks>
    public static StateSpace Of(Circuit circuit)
    {
        var nodes = new IdealNodes(circuit);
        CircuitPart[] capacitors = [.. circuit.Parts.Where(part =>
            part is { Kind: PartKind.Capacitor, Value: > 0 } && nodes.Of(part.From) != nodes.Of(part.To))];
        int n = capacitors.Length;

        // Unknown: the nodes' voltages, then the capacitors' currents. Right sides: each capacitor's volt, then the input's.
        var system = new LaneSystem(nodes.Count + n, n + 1);
        foreach (CircuitPart part in circuit.Parts.Where(part => part.Kind == PartKind.Resistor))
        {
            Stamp(nodes.Of(part.From), nodes.Of(part.To), 1 / part.NetworkValue);
        }

        foreach (CircuitOpAmp opAmp in circuit.OpAmps)
        {
            Difference(nodes.Of(opAmp.Output), nodes.Of(opAmp.Minus), nodes.Of(opAmp.Plus));
        }

        for (int k = 0; k < n; k++)
        {
            int from = nodes.Of(capacitors[k].From), to = nodes.Of(capacitors[k].To), current = nodes.Count + k;
            system.Add(nodes.IsFree(from) ? from : -1, current, Vector<double>.One);
            system.Add(nodes.IsFree(to) ? to : -1, current, -Vector<double>.One);
            Difference(current, from, to);
            system.AddRight(current, k, Vector<double>.One);
        }

        system.Solve();
        double Value(int unknown, int side) => system.Value(unknown, side)[0];
        var a = new double[n, n];
        for (int k = 0; k < n; k++)
        {
            for (int j = 0; j < n; j++)
            {
                a[k, j] = Value(nodes.Count + k, j) / capacitors[k].Value;
            }
        }

        int output = nodes.Of(circuit.Output);
        double Output(int side) => 0 <= output ? Value(output, side) : side == n && output == IdealNodes.Input ? 1 : 0;
        var space = new StateSpace(
            a, [.. Enumerable.Range(0, n).Select(k => Value(nodes.Count + k, n) / capacitors[k].Value)],
                [.. Enumerable.Range(0, n).Select(Output)], Output(n));
        (double slowest, double fastest) = space.TimeConstants();
        return space with { SlowestSeconds = slowest, FastestSeconds = fastest };

        void Stamp(int from, int to, double g)
        {
            foreach ((int node, int other) in new[] { (from, to), (to, from) })
            {
                if (from != to && nodes.IsFree(node))
                {
                    system.Add(node, node, new Vector<double>(g));
                    system.Add(node, other, new Vector<double>(-g));
                    system.AddRight(other == IdealNodes.Input ? node : -1, n, new Vector<double>(g));
                }
            }
        }

        // v(left) − v(right) on the left side of a row; the input's volt goes to the right.
        void Difference(int row, int left, int right)
        {
            system.Add(row, left, Vector<double>.One);
            system.Add(row, right, -Vector<double>.One);
            system.AddRight(row, n, new Vector<double>((right == IdealNodes.Input ? 1.0 : 0) - (left == IdealNodes.Input ? 1.0 : 0)));
        }
    }

    private static double Slowest(double a1, double a2) => a1 * a1 < 4 * a2 ? 2 * a2 / a1 : 2 * a2 / (a1 - Math.Sqrt((a1 * a1) - (4 * a2)));

    private static StateSpace Companion(double a1, double a2, double through, double gain, double slope)
    {
        double scale = 1 / a2;
        return new(new[,] { { 0, 1 }, { -scale, -a1 * scale } }, [0, scale], [gain, slope], through) { SlowestSeconds = Slowest(a1, a2),
            FastestSeconds = Math.Sqrt(a2) };
    }

    /// <summary>Longest and shortest time constant of the circuit's independent parts; the short one of several poles that hang together is
    /// the mean of their periods over 2π.</summary>
    private (double Slowest, double Fastest) TimeConstants()
    {
        double slowest = 0, fastest = double.PositiveInfinity;
        bool[,] reach = Reach();
        bool[] done = new bool[Order];
        for (int first = 0; first < Order; first++)
        {
            if (done[first])
            {
                continue;
            }

            int[] block = [.. Enumerable.Range(first, Order - first).Where(i => i == first || (reach[first, i] && reach[i, first]))];
            foreach (int i in block)
            {
                done[i] = true;
            }

            (double slow, double fast) = Block(block);
            (slowest, fastest) = (Math.Max(slowest, slow), Math.Min(fastest, fast));
        }

        return (slowest, fastest);
    }

    /// <summary>Which states act on which, over others too.</summary>
    private bool[,] Reach()
    {
        const double Rounding = 1e-13;
        var reach = new bool[Order, Order];
        for (int i = 0; i < Order; i++)
        {
            double most = Enumerable.Range(0, Order).Max(j => Math.Abs(A[i, j]));
            for (int j = 0; j < Order; j++)
            {
                reach[i, j] = Rounding * most < Math.Abs(A[i, j]);
            }
        }

        for (int k = 0; k < Order; k++)
        {
            for (int i = 0; i < Order; i++)
            {
                for (int j = 0; j < Order; j++)
                {
                    reach[i, j] |= reach[i, k] && reach[k, j];
                }
            }
        }

        return reach;
    }

    private (double Slow, double Fast) Block(int[] block)
    {
        if (block.Length == 1)
        {
            double tau = -1 / A[block[0], block[0]];
            return (tau, tau);
        }

        if (block.Length == 2)
        {
            // 1 + s·a1 + s²·a2.
            int p = block[0], q = block[1];
            double a2 = 1 / ((A[p, p] * A[q, q]) - (A[p, q] * A[q, p])), a1 = -(A[p, p] + A[q, q]) * a2;
            return (Slowest(a1, a2), Math.Sqrt(a2));
        }

        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(block.Length, block.Length, (i, j) => A[block[i], block[j]]);
        Complex[] poles = [.. matrix.Evd().EigenValues];
        return (poles.Max(pole => -1 / pole.Real), Math.Exp(-poles.Average(pole => Math.Log(pole.Magnitude))));
    }
}
