using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Inputs;
using FrontEnd.Networks;

namespace FrontEnd.Budgets;

/// <summary>The input network, electrodes and driven ground included, solved for a group of lanes.</summary>
internal sealed class InputLanes
{
    /// <summary>The electrodes in the order in which everything here numbers them.</summary>
    public const int Active = 0, Reference = 1, Ground = 2;

    private readonly NetworkLanes _network;
    private readonly ElectrodeImpedance[] _electrodes;
    private readonly int[] _slots;
    private readonly Vector<double>[] _factor = new Vector<double>[3];
    private readonly GroundDriveGain _drive;
    private readonly InputMemory? _memory;
    private readonly bool _isKept;
    private readonly ComplexLanes[] _updated;
    private bool _isUpdated;
    private ComplexLanes[]? _slope;

    /// <param name="design">The design.</param>
    /// <param name="model">Its input network.</param>
    /// <param name="isChecked">See <see cref="NetworkLanes"/>.</param>
    /// <param name="late">Elements that change from group to group, see there.</param>
    public InputLanes(Design design, InputModel model, bool isChecked, params ReadOnlySpan<int> late)
        : this(design, model, isChecked, null, isKept: false, late)
    {
    }

    /// <param name="design">The design.</param>
    /// <param name="model">Its input network.</param>
    /// <param name="isChecked">See <see cref="NetworkLanes"/>.</param>
    /// <param name="memory">Solutions of a network that differs in the active electrode alone; null for none.</param>
    /// <param name="isKept">True where this network's solutions are those that are kept there.</param>
    /// <param name="late">Elements that change from group to group, see there.</param>
    public InputLanes(Design design, InputModel model, bool isChecked, InputMemory? memory, bool isKept, params ReadOnlySpan<int> late)
    {
        Model = model;
        (_memory, _isKept) = (memory, isKept);
        _updated = memory is null || isKept ? [] : new ComplexLanes[model.Program.Ports.Length];
        _network = new NetworkLanes(model.Program, isChecked, late);
        ElectrodeSet set = design.Electrodes;
        _electrodes = [.. new[] { set.Active, set.Reference, set.Ground }.OfType<Electrode>().Select(one => new ElectrodeImpedance(one))];
        _slots = [model.ActiveElectrode, model.ReferenceElectrode, model.GroundElectrode];
        _drive = new GroundDriveGain(design);
    }

    public InputModel Model { get; }

    /// <summary>See <see cref="NetworkLanes.Live"/>.</summary>
    public int Live
    {
        set => _network.Live = value;
    }

    /// <summary>See <see cref="NetworkLanes.Fallbacks"/>.</summary>
    public int Fallbacks => _network.Fallbacks;

    /// <summary>H_front: from the site to the amplifier's input, as <see cref="SolveDifference"/> found it.</summary>
    public ComplexLanes Front { get; private set; }

    /// <summary>Re Z of an electrode at the frequency of the last <see cref="Factor"/> [Ω].</summary>
    public Vector<double>[] Resistance { get; } = new Vector<double>[3];

    /// <summary>Puts a build on each lane.</summary>
    public void Set(BuildLanes builds)
    {
        _network.Begin();
        Resistor(Model.Part(InputCircuit.ActiveResistor), builds.ActiveSiemens);
        Resistor(Model.Part(InputCircuit.ReferenceResistor), builds.ReferenceSiemens);
        for (int i = 0; i < Model.Buffers.Count; i++)
        {
            Resistor(Model.Part(InputCircuit.SkinResistor(Model.Buffers[i].OpAmp.Role)), builds.SkinSiemens[i]);
        }

        Resistor(Model.Part(InputCircuit.ActiveBias), builds.ActiveBiasSiemens);
        Resistor(Model.Part(InputCircuit.ReferenceBias), builds.ReferenceBiasSiemens);
        Resistor(Model.Part(InputCircuit.GroundResistor), builds.GroundSiemens);
        _network.Vary(Model.Part(InputCircuit.ActiveShunt)!.Element, builds.ActiveFarads);
        _network.Vary(Model.Part(InputCircuit.ReferenceShunt)!.Element, builds.ReferenceFarads);
        Surround(builds);
        SetElectrodes(builds.ActiveFactor, builds.ReferenceFactor, builds.GroundFactor);
    }

    /// <summary>Puts the couplings to mains and earth of a group of builds on the lanes.</summary>
    public void Surround(BuildLanes builds)
    {
        _network.Vary(Model.BodyToMainsElement, builds.BodyToMains);
        Surround(builds.BodyToEarth, builds.CommonToEarth);
        _network.Vary(Model.CommonToMainsElement, builds.CommonToMains);
        SetLeads(builds.ActiveLeadToMains, builds.ReferenceLeadToMains);
    }

    /// <summary>Puts the electrodes' sizes on each lane: impedance over the nominal one.</summary>
    public void SetElectrodes(Vector<double> active, Vector<double> reference, Vector<double> ground) =>
        (_factor[Active], _factor[Reference], _factor[Ground]) = (active, reference, ground);

    /// <summary>Puts what each lead couples to the mains on the lanes [F].</summary>
    public void SetLeads(Vector<double> active, Vector<double> reference)
    {
        _network.Vary(Model.ActiveLeadElement, active);
        _network.Vary(Model.ReferenceLeadElement, reference);
    }

    /// <summary>Puts capacitances to earth on the lanes [F].</summary>
    public void Surround(Vector<double> bodyToEarth, Vector<double> commonToEarth)
    {
        _network.Vary(Model.BodyToEarthElement, bodyToEarth);
        _network.Vary(Model.CommonToEarthElement, commonToEarth);
    }

    /// <summary>Factors the network at a frequency of each lane [Hz].</summary>
    public void Factor(Vector<double> hertz)
    {
        SetSlots(hertz);
        _network.Factor(2 * Math.PI * hertz);
    }

    /// <summary>Factors and solves for the difference of the amplifier's inputs, or takes it from what another channel's network was solved
    /// to.</summary>
    public void FactorAndSolve(Vector<double> hertz)
    {
        if (_memory is not null && !_isKept && _memory.At(hertz) is { } known)
        {
            SetSlots(hertz);
            Update(known);
            return;
        }

        Factor(hertz);
        if (_memory is null || !_isKept)
        {
            SolveDifference();
            return;
        }

        // The voltage across the electrode first: what is asked for is the difference's transfers.
        _network.SolveAdjoint(Model.AcrossActive);
        ComplexLanes[] across = Transfers();
        SolveDifference();
        _memory.Keep(hertz, new InputSolution(Admittance(Active), Transfers(), across));
    }

    private ComplexLanes[] Transfers()
    {
        var transfers = new ComplexLanes[Model.Program.Ports.Length];
        for (int port = 0; port < transfers.Length; port++)
        {
            transfers[port] = _network.Transfer(port);
        }

        return transfers;
    }

    private void Update(InputSolution known)
    {
        ComplexLanes change = Admittance(Active) - known.Electrode, one = new(Vector<double>.One, Vector<double>.Zero);
        ComplexLanes scale = known.Difference[Model.SignalPort] * change / (one + (change * known.Across[Model.SignalPort]));
        for (int port = 0; port < _updated.Length; port++)
        {
            _updated[port] = known.Difference[port] - (scale * known.Across[port]);
        }

        _isUpdated = true;
        Front = Admittance(Active) * _updated[Model.SignalPort];
    }

    private void SetSlots(Vector<double> hertz)
    {
        _isUpdated = false;
        Vector<double> omega = 2 * Math.PI * hertz;
        for (int i = 0; i < _electrodes.Length; i++)
        {
            (ComplexLanes admittance, Resistance[i]) = _electrodes[i].At(omega, _factor[i]);
            _network.SetSlot(_slots[i], admittance);
        }

        if (0 <= Model.DriveSlot)
        {
            _network.SetSlot(Model.DriveSlot, _drive.Inverse(omega));
        }
    }

    /// <summary>An electrode's admittance at the frequency of the last <see cref="Factor"/> [S].</summary>
    public ComplexLanes Admittance(int electrode) => _network.Slot(_slots[electrode]);

    /// <summary>Conductance of a resistor of the network on each lane [S].</summary>
    public Vector<double> Conductance(int element) => _network.Value(element);

    /// <summary>Solves for one output: <see cref="Transfer"/> of every port to it.</summary>
    public void Solve(int output) => _network.SolveAdjoint(output);

    /// <summary>Solves for the difference of the amplifier's inputs.</summary>
    public void SolveDifference()
    {
        _network.SolveAdjoint(Model.Difference);
        Front = Admittance(Active) * _network.Transfer(Model.SignalPort);
    }

    /// <summary>Group delay from the site to the amplifier's inputs at the frequency of the last <see cref="SolveDifference"/> [s].</summary>
    public Vector<double> FrontDelay(Vector<double> hertz)
    {
        Vector<double> omega = 2 * Math.PI * hertz;
        ComplexLanes[] slots = _slope ??= new ComplexLanes[Model.Program.Slots];
        for (int i = 0; i < _electrodes.Length; i++)
        {
            slots[_slots[i]] = _electrodes[i].Slope(omega, _factor[i], Admittance(i));
        }

        if (0 <= Model.DriveSlot)
        {
            slots[Model.DriveSlot] = _drive.InverseSlope(omega);
        }

        // H_front = Y·T: the signal stands in series with the active electrode.
        ComplexLanes transfer = _network.Transfer(Model.SignalPort), slope = _network.Slope(Model.SignalPort, slots);
        return ComplexLanes.Delay(Front, (slots[_slots[Active]] * transfer) + (Admittance(Active) * slope));
    }

    /// <summary>Solves for one port: its transfer to every <see cref="Output"/>.</summary>
    public void SolveForward(int port) => _network.SolveForward(port);

    /// <summary>Transfer of the port last solved for to an output [V/V or V/A].</summary>
    public ComplexLanes Output(int output) => _network.Output(output);

    /// <summary>Transfer of a port to the output last solved for [V/V or V/A].</summary>
    public ComplexLanes Transfer(int port) => _isUpdated ? _updated[port] : _network.Transfer(port);

    /// <summary>Solves for the driven ground's source at the frequency of the last <see cref="Factor"/>: mean of the amplifier's inputs
    /// and driven ground's output. Their ratio is β = ½(v(A2) + v(R2))/v(D), what the network leaves of the driven ground's output at the
    /// amplifier's inputs.</summary>
    public (ComplexLanes Mean, ComplexLanes Drive) SolveDrive()
    {
        SolveForward(Model.DrivePort);
        return (Output(Model.Mean), Output(Model.Drive));
    }

    private void Resistor(NetworkPart? part, Vector<double> siemens)
    {
        if (part is not null)
        {
            _network.Vary(part.Element, siemens);
        }
    }
}
