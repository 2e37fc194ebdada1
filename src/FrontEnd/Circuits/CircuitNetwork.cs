using FrontEnd.Networks;

namespace FrontEnd.Circuits;

/// <summary>A part of a circuit in a network.</summary>
/// <param name="Element">Its number among the network's elements, by which its value is changed from build to build.</param>
/// <param name="NoisePort">Port of a resistor's thermal current; −1 for a capacitor.</param>
internal sealed record NetworkPart(CircuitPart Part, int Element, int NoisePort);

/// <summary>An op-amp of a circuit in a network.</summary>
/// <param name="VoltagePort">Port of its noise voltage, in series with the + input.</param>
/// <param name="CurrentPorts">Ports of its inputs' noise currents, those that do something.</param>
internal sealed record NetworkOpAmp(CircuitOpAmp OpAmp, int VoltagePort, IReadOnlyList<int> CurrentPorts);

/// <summary>A circuit put into a network, with its noise sources.</summary>
/// <remarks>Nodes that a resistance of zero joins are one, and the resistance is no part of the network: a short circuit of some milliohms in
/// its place would cost the digits of a leak beside it.</remarks>
internal sealed class CircuitNetwork
{
    private readonly Network _network;
    private readonly JoinedNodes _joined;
    private readonly Dictionary<string, int> _nodes = new(StringComparer.Ordinal) { [Circuit.Common] = Network.Common };

    /// <param name="known">Nodes of the circuit that the network has already.</param>
    public CircuitNetwork(Circuit circuit, Network network, params IReadOnlyList<(string Name, int Node)> known)
    {
        (_network, _joined) = (network, new JoinedNodes(circuit));
        foreach ((string name, int node) in known)
        {
            _nodes[_joined.Root(name)] = node;
        }

        Parts = [.. circuit.Parts.Where(part => !part.IsJoint).Select(Add)];
        OpAmps = [.. circuit.OpAmps.Select(Add)];
    }

    /// <summary>In the circuit's order, without those that join nodes.</summary>
    public IReadOnlyList<NetworkPart> Parts { get; }

    public IReadOnlyList<NetworkOpAmp> OpAmps { get; }

    /// <summary>The network's number of one of the circuit's nodes.</summary>
    public int Node(string name)
    {
        name = _joined.Root(name);
        if (!_nodes.TryGetValue(name, out int node))
        {
            _nodes.Add(name, node = _network.Node(name));
        }

        return node;
    }

    /// <summary>4kT/R of a resistor [A²/Hz].</summary>
    public static double ThermalCurrent(double ohms, Temperature board) => PhysicalConstants.ThermalPower(board) / ohms;

    private NetworkPart Add(CircuitPart part)
    {
        int from = Node(part.From), to = Node(part.To);
        return part.Kind == PartKind.Capacitor
            ? new NetworkPart(part, _network.Capacitor(from, to, part.NetworkValue), -1)
            : new NetworkPart(part, _network.Resistor(from, to, part.NetworkValue), _network.CurrentPort(from, to));
    }

    private NetworkOpAmp Add(CircuitOpAmp opAmp)
    {
        int output = Node(opAmp.Output), plus = Node(opAmp.Plus), minus = Node(opAmp.Minus), inner = output;
        if (0 < opAmp.Model.OutputResistance.Ohms)
        {
            // No part of the board and no noise: it is not among the circuit's resistors.
            inner = _network.Node($"before Ro of {opAmp.Role}");
            _network.Resistor(inner, output, opAmp.Model.OutputResistance.Ohms);
        }

        int voltage = _network.OpAmp(inner, plus, minus, opAmp.Model.DcGain, opAmp.Model.GainBandwidth.Hertz);

        // A current into common does nothing, nor does that of a follower's − input, which hangs on its output.
        int[] inputs = [.. new[] { plus, minus }.Where(node => node != Network.Common && node != output)];
        return new NetworkOpAmp(opAmp, voltage, [.. inputs.Select(node => _network.CurrentPort(node, Network.Common))]);
    }
}
