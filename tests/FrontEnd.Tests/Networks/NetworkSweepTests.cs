using System.Numerics;
using FrontEnd.Networks;
using FsCheck;
using FsCheck.Xunit;
using Xunit;
using ComplexVector = MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>;

namespace FrontEnd.Tests.Networks;

public sealed class NetworkSweepTests
{
    private static readonly double[] Hertz = [0.01, 0.3, 10, 50, 1e3, 4.7e4, 1e7];

    private static NetworkSweep Adjoint(RandomNetwork network)
    {
        NetworkSweep sweep = NetworkProgram.Compile(network.Clever).CreateSweep(Hertz.Length);
        for (int i = 0; i < Hertz.Length; i++)
        {
            sweep.Omega[i] = 2 * Math.PI * Hertz[i];
        }

        sweep.SolveAdjoint(Hertz.Length, network.Outputs.Count);
        return sweep;
    }

    private static void Near(Complex expected, Complex actual, double scale, string what, double agreement = 1e-9) =>
        Assert.True((expected - actual).Magnitude <= agreement * scale, $"{what}: expected {expected}, got {actual}");

    [Property(MaxTest = 60)]
    public void Adjoint_AnyNetwork_AgreesWithThePlainWay(int seed, PositiveInt size, bool opAmp)
    {
        var network = new RandomNetwork(seed, 1 + (size.Get % 9), opAmp);
        NetworkSweep sweep = Adjoint(network);
        for (int lane = 0; lane < Hertz.Length; lane++)
        {
            for (int port = 0; port < network.Ports.Count; port++)
            {
                ComplexVector v = network.Plain.Solve(new Complex(0, 2 * Math.PI * Hertz[lane]), [(port, 1)], [], []);
                double scale = network.Outputs.Max(output => v[output].Magnitude);
                for (int output = 0; output < network.Outputs.Count; output++)
                {
                    Near(v[output], sweep.Transfer(output, network.Ports[port], lane), scale, $"{Hertz[lane]} Hz, {port} -> {output}", network.Agreement(Hertz[lane]));
                }
            }

            if (opAmp)
            {
                ComplexVector v = network.Plain.Solve(new Complex(0, 2 * Math.PI * Hertz[lane]), [], [(network.PlainOpAmp, 1)], []);
                Near(v[0], sweep.Transfer(0, network.OpAmpPort, lane), v.AbsoluteMaximum().Magnitude, "op-amp source", network.Agreement(Hertz[lane]));
            }
        }
    }

    [Property(MaxTest = 40)]
    public void Forward_AnyNetwork_AgreesWithTheAdjoint(int seed, PositiveInt size)
    {
        var network = new RandomNetwork(seed, 1 + (size.Get % 9), true);
        NetworkSweep adjoint = Adjoint(network), forward = NetworkProgram.Compile(network.Clever).CreateSweep(Hertz.Length);
        adjoint.Omega[..Hertz.Length].CopyTo(forward.Omega);
        foreach (int port in network.Ports)
        {
            forward.SolveForward(Hertz.Length, port);
            for (int lane = 0; lane < Hertz.Length; lane++)
            {
                double scale = network.Outputs.Max(output => adjoint.Transfer(output, port, lane).Magnitude);
                foreach (int output in network.Outputs)
                {
                    Near(adjoint.Transfer(output, port, lane), forward.Transfer(output, port, lane), scale, $"port {port}");
                }
            }
        }
    }

    [Property(MaxTest = 40)]
    public void Passive_AnyNetwork_IsReciprocal(int seed, PositiveInt size)
    {
        var network = new RandomNetwork(seed, 2 + (size.Get % 8), false);
        NetworkSweep sweep = Adjoint(network);
        for (int lane = 0; lane < Hertz.Length; lane++)
        {
            for (int i = 0; i < network.Ports.Count; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    Complex one = sweep.Transfer(i, network.Ports[j], lane), other = sweep.Transfer(j, network.Ports[i], lane);
                    Near(one, other, Math.Max(one.Magnitude, 1e-12 * sweep.Transfer(i, network.Ports[i], lane).Magnitude), "reciprocity");
                }
            }
        }
    }

    [Property(MaxTest = 40)]
    public void Passive_AnyNetwork_TakesPowerAtEveryPort(int seed, PositiveInt size)
    {
        var network = new RandomNetwork(seed, 1 + (size.Get % 9), false);
        NetworkSweep sweep = Adjoint(network);
        for (int lane = 0; lane < Hertz.Length; lane++)
        {
            for (int i = 0; i < network.Ports.Count; i++)
            {
                Complex z = sweep.Transfer(i, network.Ports[i], lane);
                Assert.True(0 <= z.Real + (1e-12 * z.Magnitude), $"Re Z = {z.Real}");
            }
        }
    }

    /// <summary>Nyquist's theorem: the resistors' noise currents make 4kT·Re Z at every node (Nyquist 1928, Phys. Rev. 32, 110).</summary>
    [Property(MaxTest = 40)]
    public void ThermalNoise_AnyPassiveNetwork_Is4kTReZ(int seed, PositiveInt size)
    {
        var network = new RandomNetwork(seed, 1 + (size.Get % 9), false);
        int[] ports = [.. network.Resistors.Select(resistor => network.Clever.CurrentPort(resistor.From, resistor.To))];
        NetworkSweep sweep = Adjoint(network);
        for (int lane = 0; lane < Hertz.Length; lane++)
        {
            for (int output = 0; output < network.Outputs.Count; output++)
            {
                double sum = network.Resistors.Select((resistor, i) => Math.Pow(sweep.Transfer(output, ports[i], lane).Magnitude, 2) / resistor.Ohms).Sum();
                double z = sweep.Transfer(output, network.Ports[output], lane).Real;
                Assert.True(Math.Abs(sum - z) <= 1e-8 * sum + 1e-14 * sweep.Transfer(output, network.Ports[output], lane).Magnitude, $"{sum} against Re Z {z}");
            }
        }
    }

    [Property(MaxTest = 40)]
    public void Transfer_TwoSourcesTogether_IsTheSumOfEach(int seed, PositiveInt size)
    {
        var network = new RandomNetwork(seed, 2 + (size.Get % 8), true);
        NetworkSweep sweep = Adjoint(network);
        var s = new Complex(0, 2 * Math.PI * Hertz[3]);
        ComplexVector both = network.Plain.Solve(s, [(0, 2), (1, new Complex(0, -3))], [], []);
        Complex sum = (2 * sweep.Transfer(0, network.Ports[0], 3)) + (new Complex(0, -3) * sweep.Transfer(0, network.Ports[1], 3));
        Near(both[0], sum, both.AbsoluteMaximum().Magnitude, "superposition");
    }

    [Property(MaxTest = 30)]
    public void ImpedanceLevel_TimesTen_MultipliesEveryImpedanceByTen(int seed)
    {
        Network Make(double level)
        {
            var random = new Random(seed);
            var network = new Network();
            int a = network.Node("a"), b = network.Node("b");
            network.Resistor(a, Network.Common, level * (100 + random.Next(1000)));
            network.Resistor(a, b, level * (100 + random.Next(1000)));
            network.Capacitor(b, Network.Common, 1e-6 / level);
            network.CurrentPort(Network.Common, a);
            network.Output(b);
            return network;
        }

        Complex At(Network network)
        {
            NetworkSweep sweep = NetworkProgram.Compile(network).CreateSweep(1);
            sweep.Omega[0] = 700;
            sweep.SolveAdjoint(1, 1);
            return sweep.Transfer(0, 0, 0);
        }

        Complex one = At(Make(1)), ten = At(Make(10));
        Near(10 * one, ten, ten.Magnitude, "impedance level");
    }

    [Fact]
    public void Follower_AtDc_HasTheLoopGainsError()
    {
        // v_out = A/(1 + A)·v_in with A = 1000.
        var network = new Network();
        int input = network.Node("in"), output = network.Node("out");
        int port = network.Source(input);
        network.OpAmp(output, input, output, 1000, 1e9);
        network.Output(output);
        NetworkSweep sweep = NetworkProgram.Compile(network).CreateSweep(1);
        sweep.Omega[0] = 0;
        sweep.SolveAdjoint(1, 1);
        Assert.Equal(1000.0 / 1001, sweep.Transfer(0, port, 0).Real, 12);
    }

    [Fact]
    public void Fallback_WhenTheFixedOrderMeetsAZeroPivot_StillSolves()
    {
        // The slot makes the first pivot exactly zero (g − g); only an exchange of rows can go on.
        var network = new Network();
        int a = network.Node("a"), b = network.Node("b");
        int slot = network.Admittance(a, Network.Common);
        network.Capacitor(a, b, 1e-6);
        network.Resistor(b, Network.Common, 1e3);
        int port = network.CurrentPort(Network.Common, b);
        network.Output(a);
        NetworkSweep sweep = NetworkProgram.Compile(network).CreateSweep(1);
        sweep.Omega[0] = 1000;
        sweep.SlotImaginary(slot)[0] = -1e-3;
        sweep.SolveAdjoint(1, 1);
        Assert.True(0 < sweep.Fallbacks, "the zero pivot must be noticed");

        var plain = new PlainNetwork();
        plain.Node();
        plain.Node();
        plain.Branch(0, -1, _ => new Complex(0, -1e-3));
        plain.Capacitor(0, 1, 1e-6);
        plain.Resistor(1, -1, 1e3);
        Complex expected = plain.Solve(new Complex(0, 1000), [(1, 1)], [], [])[0];
        Near(expected, sweep.Transfer(0, port, 0), expected.Magnitude, "fallback");
    }

    [Fact]
    public void Pair_BalancedNetwork_HasNoDifferenceAtAll()
    {
        var network = new Network();
        int top = network.Node("top");
        (int left, int right) = network.NodePair("left", "right");
        foreach (int side in new[] { left, right })
        {
            network.Resistor(top, side, 12345.6);
            network.Capacitor(side, Network.Common, 1.234e-10);
        }

        network.Resistor(left, right, 777);
        int port = network.CurrentPort(Network.Common, top);
        network.Resistor(top, Network.Common, 1e6);
        network.Output(left, right);
        NetworkSweep sweep = NetworkProgram.Compile(network).CreateSweep(1);
        sweep.Omega[0] = 314.159;
        sweep.SolveAdjoint(1, 1);
        Assert.Equal(Complex.Zero, sweep.Transfer(0, port, 0));
    }

    [Fact]
    public void Drive_NodeOfAPair_IsRefused()
    {
        var network = new Network();
        (int first, _) = network.NodePair("a", "b");
        Assert.Throws<ArgumentException>(() => network.Source(first));
    }
}
