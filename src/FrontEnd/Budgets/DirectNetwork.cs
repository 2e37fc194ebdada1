using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Inputs;

namespace FrontEnd.Budgets;

/// <summary>One build's input network without its capacitors, solved with pivoting: what each source of direct current or voltage makes at
/// the network's outputs [V] where an electrode has come off.</summary>
/// <remarks>An input that hangs on leaks alone beside a short circuit spans more decades than the lanes' fixed order of pivots bears; all
/// other dc is theirs (<see cref="DirectLanes"/>).</remarks>
internal sealed class DirectNetwork
{
    /// <summary>What an electrode that is off still conducts: nothing beside any leak [S].</summary>
    private const double OpenSiemens = 1e-18;

    private readonly Design _design;
    private readonly InputModel _model;
    private readonly double[] _slots;

    /// <param name="design">The design.</param>
    /// <param name="model">Its input network, with the build in it.</param>
    /// <param name="built">The build.</param>
    /// <param name="open">An electrode that has come off, as <see cref="InputLanes"/> numbers them; −1 for none.</param>
    public DirectNetwork(Design design, InputModel model, BuiltParts built, int open = -1)
    {
        (_design, _model) = (design, model);
        ElectrodeSet set = design.Electrodes;
        _slots = new double[model.Program.Slots];
        _slots[model.ActiveElectrode] = Conductance(set.Active, built.ActiveFactor, open == InputLanes.Active);
        _slots[model.ReferenceElectrode] = Conductance(set.Reference, built.ReferenceFactor, open == InputLanes.Reference);
        if (set.Ground is { } ground)
        {
            _slots[model.GroundElectrode] = Conductance(ground, built.GroundFactor, open == InputLanes.Ground);
        }

        if (0 <= model.DriveSlot)
        {
            _slots[model.DriveSlot] = 1 / design.GroundDrive.DcGain;
        }
    }

    /// <summary>All outputs for 1 A or 1 V at a port.</summary>
    public double[] From(int port, double value = 1) => _model.Program.SolveDirectCurrent(_slots, [(port, value)]);

    /// <summary>Per volt of electrode offset.</summary>
    public double[] FromOffset() => From(_model.SignalPort, _slots[_model.ActiveElectrode]);

    /// <summary>From the bias currents of the amplifier's inputs, which draw alike.</summary>
    public double[] FromAmplifierBias()
    {
        double bias = _design.Amplifier.BiasCurrent.Amperes;
        return _model.Program.SolveDirectCurrent(
            _slots, [(_model.ActiveInputPort, bias), (_model.ReferenceInputPort, bias * _design.EffectiveReferenceInputs)]);
    }

    /// <summary>From the bias current of a buffer.</summary>
    public double[] FromBias(NetworkOpAmp buffer) => From(buffer.CurrentPorts[0], buffer.OpAmp.Model.BiasCurrent.Amperes);

    /// <summary>From the offset voltage of a buffer.</summary>
    public double[] FromOffsetVoltage(NetworkOpAmp buffer) => From(buffer.VoltagePort, buffer.OpAmp.Model.OffsetVoltage.Volts);

    private static double Conductance(Electrode electrode, double factor, bool isOpen) =>
        isOpen ? OpenSiemens : new ElectrodeImpedance(electrode).At(default, new(factor)).Admittance.Re[0];
}
