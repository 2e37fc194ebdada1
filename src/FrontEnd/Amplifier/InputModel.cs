using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Interference;
using FrontEnd.Networks;

namespace FrontEnd.Amplifier;

/// <summary>Which elements of the input network are given anew for every lane.</summary>
[Flags]
internal enum Varying
{
    None = 0,

    /// <summary>Protection resistors, shunt capacitors and the leads' capacitances to the mains.</summary>
    Tolerances = 1,

    /// <summary>Body and amplifier common to earth.</summary>
    Surroundings = 2,
}

/// <summary>
/// Mains, body, electrodes and input parts as one network: common is the reference node, and the mains is held at earth, its voltage
/// being put in as the currents that its couplings carry.
/// </summary>
/// <remarks>With the mains merged into earth, one matrix serves signal, noise, loop and mains; only the ports differ.</remarks>
internal sealed class InputModel
{
    private readonly Design _design;

    public InputModel(Design design, Varying varying, BuiltParts? built = null)
    {
        _design = design;
        built ??= BuiltParts.Worst(design);
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
        if (varying.HasFlag(Varying.Surroundings))
        {
            BodyToEarth = network.Admittance(body, earth);
            CommonToEarth = network.Admittance(Network.Common, earth);
        }
        else
        {
            BodyToEarthElement = network.Capacitor(body, earth, mains.BodyToEarth.Farads);
            CommonToEarthElement = network.Capacitor(Network.Common, earth, mains.AmplifierToEarth.Farads);
        }

        ElectrodeBuffer? activeBuffer = design.Electrodes.ActiveBuffer, referenceBuffer = design.Electrodes.ReferenceBuffer;
        int activeTop = activeBuffer is null ? active1 : network.Node("active electrode");
        int referenceTop = referenceBuffer is null ? reference1 : network.Node("reference electrode");
        ActiveElectrode = network.Admittance(body, activeTop);
        ReferenceElectrode = network.Admittance(body, referenceTop);
        SignalPort = network.CurrentPort(body, activeTop);
        ReferencePort = network.CurrentPort(body, referenceTop);
        Buffers = [.. new[] { AddBuffer(network, activeBuffer, activeTop, active1), AddBuffer(network, referenceBuffer, referenceTop, reference1) }.OfType<BufferPorts>()];

        if (varying.HasFlag(Varying.Tolerances))
        {
            ActiveResistor = network.Admittance(active1, active2);
            ReferenceResistor = network.Admittance(reference1, reference2);
            ActiveShunt = network.Admittance(active2, Network.Common);
            ReferenceShunt = network.Admittance(reference2, Network.Common);
            ActiveLead = network.Admittance(active1, earth);
            ReferenceLead = network.Admittance(reference1, earth);
        }
        else
        {
            ActiveResistorElement = network.Resistor(active1, active2, built.ActiveOhms);
            ReferenceResistorElement = network.Resistor(reference1, reference2, built.ReferenceOhms);
            ActiveShuntElement = network.Capacitor(active2, Network.Common, built.ActiveFarads);
            ReferenceShuntElement = network.Capacitor(reference2, Network.Common, built.ReferenceFarads);
            ActiveLeadElement = network.Capacitor(active1, earth, leadToMains);
            ReferenceLeadElement = network.Capacitor(reference1, earth, leadToMains);
        }

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
    public int BodyToMainsElement { get; } = -1;

    public int CommonToMainsElement { get; } = -1;

    public int BodyToEarthElement { get; } = -1;

    public int CommonToEarthElement { get; } = -1;

    public int ActiveResistorElement { get; } = -1;

    public int ReferenceResistorElement { get; } = -1;

    public int ActiveShuntElement { get; } = -1;

    public int ReferenceShuntElement { get; } = -1;

    public int ActiveLeadElement { get; } = -1;

    public int ReferenceLeadElement { get; } = -1;

    public int ActiveBiasElement { get; } = -1;

    public int ReferenceBiasElement { get; } = -1;

    public int GroundResistorElement { get; private set; } = -1;

    /// <summary>Slot of the ground electrode; −1 without one.</summary>
    public int GroundElectrode { get; private set; } = -1;

    /// <summary>Slot of 1/K(s); −1 without a driven ground.</summary>
    public int DriveSlot { get; private set; } = -1;

    public int BodyToEarth { get; } = -1;

    public int CommonToEarth { get; } = -1;

    public int ActiveResistor { get; } = -1;

    public int ReferenceResistor { get; } = -1;

    public int ActiveShunt { get; } = -1;

    public int ReferenceShunt { get; } = -1;

    public int ActiveLead { get; } = -1;

    public int ReferenceLead { get; } = -1;

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

    /// <summary>Sets the slots of the electrodes and of the driven ground on the first lanes, for a mismatch factor that is the lane's own.</summary>
    public void SetElectrodes(
        NetworkSweep sweep, int lanes, ReadOnlySpan<double> activeFactor, ReadOnlySpan<double> referenceFactor, ReadOnlySpan<double> groundFactor, ElectrodeLanes into)
    {
        ReadOnlySpan<double> omega = sweep.Omega;
        ElectrodeSet set = _design.Electrodes;
        ElectrodeImpedance.Admittance(set.Active, omega, activeFactor, lanes, sweep.SlotReal(ActiveElectrode), sweep.SlotImaginary(ActiveElectrode), into.Active);
        ElectrodeImpedance.Admittance(set.Reference, omega, referenceFactor, lanes, sweep.SlotReal(ReferenceElectrode), sweep.SlotImaginary(ReferenceElectrode), into.Reference);
        if (set.Ground is { } ground)
        {
            ElectrodeImpedance.Admittance(ground, omega, groundFactor, lanes, sweep.SlotReal(GroundElectrode), sweep.SlotImaginary(GroundElectrode), into.Ground);
        }

        if (0 <= DriveSlot)
        {
            SetDrive(sweep, lanes);
        }
    }

    private void SetDrive(NetworkSweep sweep, int lanes)
    {
        // 1/K = (1 + s·K0/(2πf_u))·(1 + s/(2πf_2))/K0.
        GroundDrive drive = _design.GroundDrive;
        double k = 1 / drive.DcGain, first = 1 / (2 * Math.PI * drive.UnityGainFrequency.Hertz);
        double second = _design.EffectiveAveragingBandwidth is { } f2 ? 1 / (2 * Math.PI * f2.Hertz) : 0;
        ReadOnlySpan<double> omega = sweep.Omega;
        Span<double> re = sweep.SlotReal(DriveSlot), im = sweep.SlotImaginary(DriveSlot);
        for (int lane = 0; lane < lanes; lane++)
        {
            double w = omega[lane];
            re[lane] = k - (w * first * w * second);
            im[lane] = w * (first + (k * second));
        }
    }

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

/// <summary>Re Z of the three electrodes on each lane [Ω].</summary>
internal sealed class ElectrodeLanes(int capacity)
{
    public double[] Active { get; } = new double[capacity];

    public double[] Reference { get; } = new double[capacity];

    public double[] Ground { get; } = new double[capacity];
}
