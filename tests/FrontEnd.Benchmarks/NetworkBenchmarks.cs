using System.Numerics;
using BenchmarkDotNet.Attributes;
using FrontEnd.Networks;

namespace FrontEnd.Benchmarks;

/// <summary>The kernel alone: 400 frequencies of a network of 12 unknowns with three op-amps and 25 noise ports, one adjoint solve each.</summary>
[MemoryDiagnoser]
public class NetworkBenchmarks
{
    private const int Frequencies = 400;
    private readonly double[] _omega = [.. Enumerable.Range(0, Frequencies).Select(i => 2 * Math.PI * 0.1 * Math.Pow(1e5, i / (Frequencies - 1.0)))];
    private readonly double[] _noise = new double[Frequencies];
    private NetworkLanes? _lanes;
    private int _ports;

    [GlobalSetup]
    public void Make()
    {
        var network = new Network();
        int input = network.Node("in");
        network.Source(input);
        int previous = input;
        for (int stage = 0; stage < 3; stage++)
        {
            int x = network.Node("X"), p = network.Node("P"), output = network.Node("out");
            Resistor(previous, x, 22e3);
            Resistor(x, p, 22e3);
            network.Capacitor(x, output, 150e-9);
            network.Capacitor(p, Network.Common, 68e-9);
            if (stage == 0)
            {
                int minus = network.Node("minus");
                Resistor(output, minus, 200e3);
                Resistor(minus, Network.Common, 1e3);
                network.OpAmp(output, p, minus, 1e7, 350e3);
            }
            else
            {
                network.OpAmp(output, p, output, 1e7, 350e3);
            }

            network.CurrentPort(p, Network.Common);
            network.CurrentPort(x, Network.Common);
            network.CurrentPort(x, p);
            previous = output;
        }

        int last = network.Node("load");
        Resistor(previous, last, 1e3);
        network.Capacitor(last, Network.Common, 1e-9);
        while (network.Ports < 25)
        {
            network.CurrentPort(last, Network.Common);
        }

        network.Output(last);
        _ports = network.Ports;
        _lanes = new NetworkLanes(NetworkProgram.Compile(network), isChecked: true);

        void Resistor(int from, int to, double ohms)
        {
            network.Resistor(from, to, ohms);
            network.CurrentPort(from, to);
        }
    }

    [Benchmark]
    public double Sweep()
    {
        NetworkLanes lanes = _lanes!;
        for (int first = 0; first < Frequencies; first += NetworkLanes.Width)
        {
            lanes.Factor(new Vector<double>(_omega, first));
            lanes.SolveAdjoint(0);
            Vector<double> sum = Vector<double>.Zero;
            for (int port = 0; port < _ports; port++)
            {
                sum += lanes.Transfer(port).Power;
            }

            sum.CopyTo(_noise, first);
        }

        return _noise[0];
    }
}
