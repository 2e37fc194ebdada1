using BenchmarkDotNet.Attributes;
using FrontEnd.Circuits;
using FrontEnd.Networks;

namespace FrontEnd.Benchmarks;

/// <summary>The kernel alone: 400 frequencies of a network of 12 unknowns with three op-amps and 25 noise ports, one adjoint solve each.</summary>
[MemoryDiagnoser]
public class NetworkBenchmarks
{
    private const int Frequencies = 400;
    private readonly double[] _noise = new double[Frequencies];
    private NetworkSweep? _sweep;
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
        _sweep = NetworkProgram.Compile(network).CreateSweep(Frequencies);
        for (int i = 0; i < Frequencies; i++)
        {
            _sweep.Omega[i] = 2 * Math.PI * 0.1 * Math.Pow(1e5, i / (Frequencies - 1.0));
        }

        void Resistor(int from, int to, double ohms)
        {
            network.Resistor(from, to, ohms);
            network.CurrentPort(from, to);
        }
    }

    [Benchmark]
    public double Sweep()
    {
        NetworkSweep sweep = _sweep!;
        sweep.SolveAdjoint(Frequencies, 1);
        Array.Clear(_noise);
        for (int port = 0; port < _ports; port++)
        {
            ReadOnlySpan<double> re = sweep.TransferReal(0, port), im = sweep.TransferImaginary(0, port);
            for (int i = 0; i < _noise.Length; i++)
            {
                _noise[i] += (re[i] * re[i]) + (im[i] * im[i]);
            }
        }

        return _noise[0];
    }
}
