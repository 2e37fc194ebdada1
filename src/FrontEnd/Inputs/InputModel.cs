using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Inputs;

/// <summary>
/// Mains, body, electrodes and input parts as one network: common is the reference node, and the mains is held at earth, its voltage
/// being put in as the currents that its couplings carry.
/// </summary>
/// <remarks>What other builds have instead of the parts given is put in lane by lane (<see cref="Budgets.InputLanes"/>). With the mains
/// merged into earth, one matrix serves signal, noise, loop and mains; only the ports differ.</remarks>
internal sealed class InputModel
{
    private readonly Dictionary<string, NetworkPart> _parts;

    public InputModel(Design design, BuiltParts built)
    {
        Mains mains = design.Mains;
        InputNetwork input = design.Input;
        DifferentialAmplifier amplifier = design.Amplifier;
        var network = new Network();
        int earth = network.Node("earth"), body = network.Node("body");
        Circuit whole = InputCircuit.Of(design, built);
        var nodes = new InputNodes(whole, network);
        (int active1, int reference1) = nodes.Pair(InputCircuit.ActiveLead, InputCircuit.ReferenceLead);
        (int active2, int reference2) = nodes.Pair(InputCircuit.ActiveInput, InputCircuit.ReferenceInput);

        double shield = 1 - input.DrivenShield.Fraction;
        double leadToMains = mains.LeadToMains.Farads * shield;
        double leadToCommon = input.LeadToCommon.Farads * shield;
        BodyToMainsElement = network.Capacitor(body, earth, mains.BodyToMains.Farads);
        CommonToMainsElement = network.Capacitor(Network.Common, earth, mains.AmplifierToMains.Farads);
        BodyToEarthElement = network.Capacitor(body, earth, mains.BodyToEarth.Farads);
        CommonToEarthElement = network.Capacitor(Network.Common, earth, mains.AmplifierToEarth.Farads);
        int activeTop = design.Electrodes.ActiveBuffer is null ? active1 : network.Node(InputCircuit.Top(InputCircuit.ActiveSide));
        int referenceTop = design.Electrodes.ReferenceBuffer is null
            ? reference1
            : network.Node(InputCircuit.Top(InputCircuit.ReferenceSide));
        ActiveElectrode = network.Admittance(body, activeTop);
        ReferenceElectrode = network.Admittance(body, referenceTop);
        SignalPort = network.CurrentPort(body, activeTop);
        ReferencePort = network.CurrentPort(body, referenceTop);
        double differential = whole.Find(InputCircuit.Differential)!.Value;
        (string, int)[] known =
        [
            (InputCircuit.ActiveLead, active1), (InputCircuit.ReferenceLead, reference1), (InputCircuit.ActiveInput, active2),
            (InputCircuit.ReferenceInput, reference2),
            (InputCircuit.Top(InputCircuit.ActiveSide), activeTop), (InputCircuit.Top(InputCircuit.ReferenceSide), referenceTop),
        ];

        // Buffer by buffer, then the leads: a pair's branches are added one after the other, and what stands between the inputs in one
        // element with the amplifier's own.
        CircuitNetwork[] buffers = [.. whole.OpAmps.Select(opAmp => new CircuitNetwork(InputCircuit.Buffer(whole, opAmp), network, known))];
        var circuit = new CircuitNetwork(InputCircuit.Leads(whole), network, known);
        _parts = buffers.Append(circuit).SelectMany(one => one.Parts).ToDictionary(part => part.Part.Role, StringComparer.Ordinal);
        Buffers = [.. buffers.SelectMany(one => one.OpAmps)];
        BufferOutputs = [.. buffers.SelectMany(one => one.OpAmps.Select(opAmp => network.Output(one.Node(opAmp.OpAmp.Output))))];
        BufferInputs = [.. buffers.SelectMany(one => one.OpAmps.Select(opAmp => network.Output(one.Node(opAmp.OpAmp.Plus))))];
        ActiveLeadElement = network.Capacitor(active1, earth, leadToMains * built.ActiveLeadFactor);
        ReferenceLeadElement = network.Capacitor(reference1, earth, leadToMains * built.ReferenceLeadFactor);
        network.Capacitor(active1, Network.Common, leadToCommon);
        network.Capacitor(reference1, Network.Common, leadToCommon);
        int n = design.EffectiveReferenceInputs;
        network.Resistor(active2, Network.Common, amplifier.CommonModeResistance.Ohms);
        network.Resistor(reference2, Network.Common, amplifier.CommonModeResistance.Ohms / n);
        network.Capacitor(active2, Network.Common, amplifier.CommonModeCapacitance.Farads);
        network.Capacitor(reference2, Network.Common, amplifier.CommonModeCapacitance.Farads * n);
        network.Resistor(active2, reference2, amplifier.DifferentialResistance.Ohms);
        network.Capacitor(active2, reference2, amplifier.DifferentialCapacitance.Farads + differential);

        ActiveInputPort = network.CurrentPort(active2, Network.Common);
        ReferenceInputPort = network.CurrentPort(reference2, Network.Common);
        BodyMainsPort = network.CurrentPort(earth, body);
        CommonMainsPort = network.CurrentPort(earth, Network.Common);
        ActiveLeadPort = network.CurrentPort(earth, active1);
        ReferenceLeadPort = network.CurrentPort(earth, reference1);

        AcrossActive = network.Output(activeTop, body);
        Difference = network.Output(active2, reference2);
        Mean = network.MeanOutput(active2, reference2);
        Body = network.Output(body);
        Earth = network.Output(earth);
        AddGround(network, design, body, circuit, active2, reference2);
        Program = NetworkProgram.Compile(network);
    }

    public NetworkProgram Program { get; }

    /// <summary>A part of <see cref="InputCircuit"/> by its role; null where it is not fitted.</summary>
    public NetworkPart? Part(string role) => _parts.GetValueOrDefault(role);

    public int ActiveElectrode { get; }

    public int ReferenceElectrode { get; }

    // Elements whose value changes from build to build.
    public int BodyToMainsElement { get; }

    public int CommonToMainsElement { get; }

    public int BodyToEarthElement { get; }

    public int CommonToEarthElement { get; }

    public int ActiveLeadElement { get; }

    public int ReferenceLeadElement { get; }

    /// <summary>Slot of the ground electrode; −1 without one.</summary>
    public int GroundElectrode { get; private set; } = -1;

    /// <summary>Slot of 1/K(s); −1 without a driven ground.</summary>
    public int DriveSlot { get; private set; } = -1;

    /// <summary>Currents from the body into the electrodes' tops: times the electrode's admittance, a voltage in series with the
    /// electrode.</summary>
    public int SignalPort { get; }

    public int ReferencePort { get; }

    public int GroundPort { get; private set; } = -1;

    /// <summary>The contact check's current between common and the active electrode: at the amplifier's input, behind the protection
    /// resistor, or at the input of the electrode's buffer, behind its skin resistor.</summary>
    public int ContactPort =>
        Buffers.FirstOrDefault(buffer => buffer.OpAmp.Role == InputCircuit.ActiveSide)?.CurrentPorts[0] ?? ActiveInputPort;

    public int ActiveInputPort { get; }

    public int ReferenceInputPort { get; }

    public int BodyMainsPort { get; }

    public int CommonMainsPort { get; }

    public int ActiveLeadPort { get; }

    public int ReferenceLeadPort { get; }

    /// <summary>Source in the driven ground's constraint; −1 without one.</summary>
    public int DrivePort { get; private set; } = -1;

    /// <summary>Op-amps of the buffers that are there, active before reference.</summary>
    public IReadOnlyList<NetworkOpAmp> Buffers { get; }

    /// <summary>The same buffers' outputs, and their + inputs.</summary>
    public IReadOnlyList<int> BufferOutputs { get; }

    public IReadOnlyList<int> BufferInputs { get; }

    /// <summary>Voltage across the active electrode.</summary>
    public int AcrossActive { get; }

    public int Difference { get; }

    public int Mean { get; }

    public int Body { get; }

    public int Earth { get; }

    /// <summary>Output at the driven node; −1 without a driven ground.</summary>
    public int Drive { get; private set; } = -1;

    private void AddGround(Network network, Design design, int body, CircuitNetwork circuit, int active2, int reference2)
    {
        if (design.Electrodes.Ground is null)
        {
            return;
        }

        int ground = circuit.Node(InputCircuit.GroundLead);
        GroundElectrode = network.Admittance(body, ground);
        GroundPort = network.CurrentPort(body, ground);
        if (design.GroundIsDriven)
        {
            int drive = circuit.Node(InputCircuit.Drive);
            DriveSlot = network.Slot();
            DrivePort = network.Drive(drive, DriveSlot, (active2, -0.5), (reference2, -0.5));
            Drive = network.Output(drive);
        }
    }
}

/// <summary>The nodes of the two leads in the network: a pair, so that a balanced input's difference is exactly zero, unless a buffer without
/// any output resistance holds one of them.</summary>
internal sealed class InputNodes(Circuit circuit, Network network)
{
    private readonly JoinedNodes _joined = new(circuit);
    private readonly Dictionary<string, int> _nodes = new(StringComparer.Ordinal);

    /// <summary>Numbers of the active and the reference side's node; nodes that a resistance of zero joins have one.</summary>
    public (int Active, int Reference) Pair(string active, string reference)
    {
        (string left, string right) = (_joined.Root(active), _joined.Root(reference));
        if (!_nodes.ContainsKey(left) && !_nodes.ContainsKey(right) && !IsHeld(left) && !IsHeld(right))
        {
            (_nodes[left], _nodes[right]) = network.NodePair(active, reference);
        }

        return (Node(left), Node(right));
    }

    private int Node(string root)
    {
        if (!_nodes.TryGetValue(root, out int node))
        {
            _nodes.Add(root, node = network.Node(root));
        }

        return node;
    }

    private bool IsHeld(string root) =>
        circuit.OpAmps.Any(opAmp => opAmp.Model.OutputResistance.Ohms == 0 && _joined.Root(opAmp.Output) == root);
}
