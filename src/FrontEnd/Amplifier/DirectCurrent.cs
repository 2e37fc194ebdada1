using FrontEnd.Designs;
using FrontEnd.Networks;

namespace FrontEnd.Amplifier;

/// <summary>The input network at dc: what the electrodes' offset and the bias currents do to the amplifier's inputs and to the driven ground.</summary>
/// <remarks>Capacitors are open; nodes that only capacitors reach (earth, the mains) drop out.</remarks>
internal sealed class DirectCurrent
{
    private readonly Design _design;
    private readonly InputModel _input;
    private readonly BuiltParts _built;

    /// <param name="design">The design.</param>
    /// <param name="input">Its input network with nothing varying.</param>
    /// <param name="open">An electrode that has come off: 0 active, 1 reference, 2 ground; −1 for none.</param>
    /// <param name="built">The device's own parts; null for the worst case.</param>
    public DirectCurrent(Design design, InputModel input, int open = -1, BuiltParts? built = null)
    {
        _design = design;
        _built = built ?? BuiltParts.Worst(design);
        _input = input;
        (OffsetDifference, OffsetMean, OffsetDrive) = Solve(1, 0, open);
        (BiasDifference, BiasMean, BiasDrive) = Solve(0, design.Amplifier.BiasCurrent.Amperes, open);
    }

    /// <summary>Per volt of electrode offset: difference and mean of the amplifier's inputs, and the driven ground [V/V].</summary>
    public double OffsetDifference { get; }

    public double OffsetMean { get; }

    public double OffsetDrive { get; }

    /// <summary>From the bias currents [V].</summary>
    public double BiasDifference { get; }

    public double BiasMean { get; }

    public double BiasDrive { get; }

    private (double Difference, double Mean, double Drive) Solve(double offset, double bias, int open)
    {
        NetworkProgram program = _input.Program;
        double active = Conductance(_design.Electrodes.Active.DcResistance.Ohms * _built.ActiveFactor, open == 0);
        double reference = Conductance(_design.Electrodes.Reference.DcResistance.Ohms * _built.ReferenceFactor, open == 1);
        double[] slots = new double[program.Slots];
        slots[_input.ActiveElectrode] = active;
        slots[_input.ReferenceElectrode] = reference;
        if (_design.Electrodes.Ground is { } ground)
        {
            slots[_input.GroundElectrode] = Conductance(ground.DcResistance.Ohms * _built.GroundFactor, open == 2);
        }

        if (0 <= _input.DriveSlot)
        {
            slots[_input.DriveSlot] = 1 / _design.GroundDrive.DcGain;
        }

        (int, double)[] sources =
        [
            (_input.SignalPort, offset * active), (_input.ActiveInputPort, bias), (_input.ReferenceInputPort, bias * _design.EffectiveReferenceInputs),
        ];
        double[] outputs = program.SolveDirectCurrent(slots, sources);
        return (outputs[_input.Difference], outputs[_input.Mean], 0 <= _input.Drive ? outputs[_input.Drive] : 0);
    }

    private static double Conductance(double ohms, bool isOpen) => isOpen ? 1e-18 : 1 / Math.Max(1e-3, ohms);
}
