namespace FrontEnd.Designs;

/// <summary>What is asked of the design. Null takes the default of the requirement's table; a limit that is not set judges
/// nothing.</summary>
public sealed record Requirements
{
    /// <summary>Greatest noise at the electrodes, the board's share, peak-to-peak. Default for wet electrodes 1.5 µV · √((f2 − f1)/99.5
    /// Hz); none for dry ones.</summary>
    public VoltagePeakToPeak? Noise { get; init; }

    /// <summary>Greatest mains residue at the electrodes (<c>mains.total</c>).</summary>
    public VoltageRms MainsAtElectrodes { get; init; } = VoltageRms.FromMicrovolts(3.5);

    /// <summary>Greatest mains residue in the recording (<c>mains.recorded</c>). Default half the smallest signal.</summary>
    public VoltageRms? MainsRecorded { get; init; }

    /// <summary>The residue that <c>mains.cmrr_needed</c> is worked out for. Default the smallest signal.</summary>
    public VoltageRms? MainsResidue { get; init; }

    /// <summary>Least electrode offset that the path survives.</summary>
    public Voltage Offset { get; init; } = Voltage.FromMillivolts(300);

    /// <summary>Least headroom at any node.</summary>
    public Decibels Headroom { get; init; } = Decibels.FromStated(1);

    /// <summary>Least attenuation at the fold frequency.</summary>
    public Decibels Fold { get; init; } = Decibels.FromStated(40);

    /// <summary>Least phase margin of the driven ground over its whole range of loads.</summary>
    public Angle PhaseMargin { get; init; } = Angle.FromDegrees(45);

    /// <summary>Greatest dc current through one electrode after a single fault.</summary>
    public Current FaultCurrent { get; init; } = Current.FromAmperes(TradeConstants.FaultAmperes);

    /// <summary>Greatest dc current through the driven ground in normal operation, its amplifier at the rail.</summary>
    public Current DrivenGroundCurrent { get; init; } = Current.FromAmperes(TradeConstants.NormalAmperes);

    /// <summary>Sources that channels have to show.</summary>
    public IReadOnlyList<SeeRequirement> See { get; init; } = [];

    /// <summary>How much quantisation may raise the noise: √(1 + q²/σ0²) stays below this.</summary>
    public Ratio QuantisationRise { get; init; } = Ratio.FromFraction(1.1);
}
