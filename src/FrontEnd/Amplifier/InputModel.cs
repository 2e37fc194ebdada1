using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Amplifier;

/// <summary>
/// Mains, body, electrodes and input parts as one network: common is the reference node, and the mains is held at earth, its voltage
/// being put in as the currents that its couplings carry.
/// </summary>
/// <remarks>What other builds have instead of the parts given is put in lane by lane (<see cref="Budgets.InputLanes"/>). With the mains merged into earth, one matrix serves signal, noise, loop and mains; only the ports differ.</remarks>
internal sealed class InputModel
{
    public InputModel(Design design, BuiltParts built)
    {
        Mains mains = design.Mains;
        InputNetwork input = design.Input;
        DifferentialAmplifier amplifier = design.Amplifier;
        var network = new Network();
        int earth = network.Node("earth"), body = network.Node("body");
        (int active1, int reference1) = network.NodePair("A1", "R1");
        (int active2, int reference2) = network.NodePair("A2", "R2");

        double shield = 1 - input.DrivenShield.Fraction;
        double leadToMains = mains.LeadToMains.Farads * shield;
        double leadToCommon = input.LeadToCommon.Farads * shield;
        BodyToMainsElement = network.Capacitor(body, earth, mains.BodyToMains.Farads);
        CommonToMainsElement = network.Capacitor(Network.Common, earth, mains.AmplifierToMains.Farads);
        BodyToEarthElement = network.Capacitor(body, earth, mains.BodyToEarth.Farads);
        CommonToEarthElement = network.Capacitor(Network.Common, earth, mains.AmplifierToEarth.Farads);
        ElectrodeBuffer? activeBuffer = design.Electrodes.ActiveBuffer, referenceBuffer = design.Electrodes.ReferenceBuffer;
        int activeTop = activeBuffer is null ? active1 : network.Node("active electrode");
        int referenceTop = referenceBuffer is null ? reference1 : network.Node("reference electrode");
        ActiveElectrode = network.Admittance(body, activeTop);
        ReferenceElectrode = network.Admittance(body, referenceTop);
        SignalPort = network.CurrentPort(body, activeTop);
        ReferencePort = network.CurrentPort(body, referenceTop);
        Buffers = [.. new[] { AddBuffer(network, activeBuffer, activeTop, active1), AddBuffer(network, referenceBuffer, referenceTop, reference1) }.OfType<BufferPorts>()];

        ActiveResistorElement = network.Resistor(active1, active2, built.ActiveOhms);
        ReferenceResistorElement = network.Resistor(reference1, reference2, built.ReferenceOhms);
        ActiveShuntElement = network.Capacitor(active2, Network.Common, built.ActiveFarads);
        ReferenceShuntElement = network.Capacitor(reference2, Network.Common, built.ReferenceFarads);
        ActiveLeadElement = network.Capacitor(active1, earth, leadToMains);
        ReferenceLeadElement = network.Capacitor(reference1, earth, leadToMains);
        network.Capacitor(active1, Network.Common, leadToCommon);
        network.Capacitor(reference1, Network.Common, leadToCommon);
        if (input.BiasResistor is not null)
        {
            ActiveBiasElement = network.Resistor(active2, Network.Common, built.ActiveBiasOhms);
            ReferenceBiasElement = network.Resistor(reference2, Network.Common, built.ReferenceBiasOhms);
        }

        int n = design.EffectiveReferenceInputs;
        network.Resistor(active2, Network.Common, amplifier.CommonModeResistance.Ohms);
        network.Resistor(reference2, Network.Common, amplifier.CommonModeResistance.Ohms / n);
        network.Capacitor(active2, Network.Common, amplifier.CommonModeCapacitance.Farads);
        network.Capacitor(reference2, Network.Common, amplifier.CommonModeCapacitance.Farads * n);
        network.Resistor(active2, reference2, amplifier.DifferentialResistance.Ohms);
        network.Capacitor(active2, reference2, amplifier.DifferentialCapacitance.Farads + input.DifferentialCapacitor.Farads);

        ActiveResistorPort = network.CurrentPort(active1, active2);
        ReferenceResistorPort = network.CurrentPort(reference1, reference2);
        ActiveInputPort = network.CurrentPort(active2, Network.Common);
        ReferenceInputPort = network.CurrentPort(reference2, Network.Common);
        BodyMainsPort = network.CurrentPort(earth, body);
        CommonMainsPort = network.CurrentPort(earth, Network.Common);
        ActiveLeadPort = network.CurrentPort(earth, active1);
        ReferenceLeadPort = network.CurrentPort(earth, reference1);

        Difference = network.Output(active2, reference2);
        Mean = network.MeanOutput(active2, reference2);
        Body = network.Output(body);
        AddGround(network, design, body, active2, reference2);
        Program = NetworkProgram.Compile(network);
    }

    /// <summary>Ports and parts of one buffer at an electrode.</summary>
    /// <param name="SkinElement">The skin resistor among the network's elements; −1 without one.</param>
    internal sealed record BufferPorts(ElectrodeBuffer Buffer, int Voltage, int Current, int? SkinResistor, int SkinElement);

    public NetworkProgram Program { get; }

    public int ActiveElectrode { get; }

    public int ReferenceElectrode { get; }

    // Elements whose value changes from build to build; −1 where there is none.
    public int BodyToMainsElement { get; }

    public int CommonToMainsElement { get; }

    public int BodyToEarthElement { get; }

    public int CommonToEarthElement { get; }

    public int ActiveResistorElement { get; }

    public int ReferenceResistorElement { get; }

    public int ActiveShuntElement { get; }

    public int ReferenceShuntElement { get; }

    public int ActiveLeadElement { get; }

    public int ReferenceLeadElement { get; }

    public int ActiveBiasElement { get; } = -1;

    public int ReferenceBiasElement { get; } = -1;

    public int GroundResistorElement { get; private set; } = -1;

    /// <summary>Slot of the ground electrode; −1 without one.</summary>
    public int GroundElectrode { get; private set; } = -1;

    /// <summary>Slot of 1/K(s); −1 without a driven ground.</summary>
    public int DriveSlot { get; private set; } = -1;

    /// <summary>Currents from the body into the electrodes' tops: times the electrode's admittance, a voltage in series with the electrode.</summary>
    public int SignalPort { get; }

    public int ReferencePort { get; }

    public int GroundPort { get; private set; } = -1;

    public int ActiveResistorPort { get; }

    public int ReferenceResistorPort { get; }

    public int GroundResistorPort { get; private set; } = -1;

    public int ActiveInputPort { get; }

    public int ReferenceInputPort { get; }

    public int BodyMainsPort { get; }

    public int CommonMainsPort { get; }

    public int ActiveLeadPort { get; }

    public int ReferenceLeadPort { get; }

    /// <summary>Source in the driven ground's constraint; −1 without one.</summary>
    public int DrivePort { get; private set; } = -1;

    public IReadOnlyList<BufferPorts> Buffers { get; }

    public int Difference { get; }

    public int Mean { get; }

    public int Body { get; }

    /// <summary>Output at the driven node; −1 without a driven ground.</summary>
    public int Drive { get; private set; } = -1;

    /// <summary>A missing resistor is a short circuit of 1 mΩ to the network (and a fail to the safety budget).</summary>
    public static double ProtectionOhms(Design design) => Math.Max(1e-3, design.Input.SeriesResistor.Ohms);

    public static double GroundOhms(Design design) => Math.Max(1e-3, design.GroundDrive.SeriesResistor.Ohms);

    private static BufferPorts? AddBuffer(Network network, ElectrodeBuffer? buffer, int top, int lead)
    {
        if (buffer is null)
        {
            return null;
        }

        int plus = top;
        int? skinPort = null;
        int skinElement = -1;
        if (0 < buffer.SkinResistor.Ohms)
        {
            plus = network.Node("buffer input");
            skinElement = network.Resistor(top, plus, buffer.SkinResistor.Ohms);
            skinPort = network.CurrentPort(top, plus);
        }

        int output = network.Node("buffer output");
        network.Resistor(plus, Network.Common, buffer.InputResistance.Ohms);
        network.Capacitor(plus, Network.Common, buffer.InputCapacitance.Farads);
        int inner = output;
        if (0 < buffer.OpAmp.OutputResistance.Ohms)
        {
            inner = network.Node("buffer before Ro");
            network.Resistor(inner, output, buffer.OpAmp.OutputResistance.Ohms);
        }

        int voltage = network.OpAmp(inner, plus, output, buffer.OpAmp.DcGain, buffer.OpAmp.GainBandwidth.Hertz);
        network.Resistor(output, lead, Math.Max(1e-3, buffer.OutputResistance.Ohms));
        return new BufferPorts(buffer, voltage, network.CurrentPort(plus, Network.Common), skinPort, skinElement);
    }

    private void AddGround(Network network, Design design, int body, int active2, int reference2)
    {
        if (design.Electrodes.Ground is null)
        {
            return;
        }

        int ground = network.Node("G1");
        GroundElectrode = network.Admittance(body, ground);
        GroundPort = network.CurrentPort(body, ground);
        int end = Network.Common;
        if (design.GroundDrive.Kind == GroundKind.Driven)
        {
            end = network.Node("D");
            DriveSlot = network.Slot();
            DrivePort = network.Drive(end, DriveSlot, (active2, -0.5), (reference2, -0.5));
            Drive = network.Output(end);
        }

        GroundResistorElement = network.Resistor(ground, end, GroundOhms(design));
        GroundResistorPort = network.CurrentPort(ground, end);
    }
}
