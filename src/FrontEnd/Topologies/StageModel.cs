using FrontEnd.Circuits;
using FrontEnd.Networks;

namespace FrontEnd.Topologies;

/// <summary>One stage as a network with its noise sources, made from its circuit.</summary>
internal sealed class StageModel
{
    public StageModel(Stage stage, Temperature board)
    {
        Stage = stage;
        Circuit = stage.Circuit();
        var network = new Network();
        int input = network.Node(Circuit.Input);
        SignalPort = network.Source(input);
        var circuit = new CircuitNetwork(Circuit, network, (Circuit.Input, input));
        network.Output(circuit.Node(Circuit.Output));
        InnerNodes = [.. Circuit.InnerClipping];
        foreach (string inner in InnerNodes)
        {
            network.Output(circuit.Node(inner));
        }

        List<(string, int, int)> parts = [];
        List<(int, double)> resistors = [];
        foreach (NetworkPart part in circuit.Parts)
        {
            parts.Add((part.Part.Role, part.Element, part.NoisePort < 0 ? -1 : resistors.Count));
            if (0 <= part.NoisePort)
            {
                resistors.Add((part.NoisePort, CircuitNetwork.ThermalCurrent(part.Part.NetworkValue, board)));
            }
        }

        (Parts, Resistors) = (parts, resistors);
        CurrentPorts = [.. circuit.OpAmps.SelectMany(opAmp => opAmp.CurrentPorts)];
        VoltagePorts = [.. circuit.OpAmps.Select(opAmp => opAmp.VoltagePort)];
        Program = NetworkProgram.Compile(network);
    }

    public Stage Stage { get; }

    public Circuit Circuit { get; }

    /// <summary>Output 0 is the stage's, those behind it are <see cref="InnerNodes"/>.</summary>
    public NetworkProgram Program { get; }

    /// <summary>Nodes besides the output that can clip.</summary>
    public IReadOnlyList<string> InnerNodes { get; }

    /// <summary>Port of the stage's input voltage.</summary>
    public int SignalPort { get; }

    /// <summary>Current ports of the resistors with 4kT/R [A²/Hz].</summary>
    public IReadOnlyList<(int Port, double Density)> Resistors { get; }

    /// <summary>The stage's parts by their key: the network's element, and the number among <see cref="Resistors"/> or −1.</summary>
    public IReadOnlyList<(string Part, int Element, int Resistor)> Parts { get; }

    /// <summary>Ports of the op-amps' input currents.</summary>
    public IReadOnlyList<int> CurrentPorts { get; }

    /// <summary>Ports of the op-amps' en; none for a passive section.</summary>
    public IReadOnlyList<int> VoltagePorts { get; }

    /// <summary>The values of each of its op-amps; null for a passive section.</summary>
    public OpAmp? OpAmp => Stage.FittedOpAmp;
}
