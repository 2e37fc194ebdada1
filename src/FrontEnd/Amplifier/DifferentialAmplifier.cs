using FrontEnd.Fields;
using FrontEnd.Quantities;

namespace FrontEnd.Amplifier;

/// <summary>The differential (instrumentation) amplifier: the path's first gain.</summary>
public sealed record DifferentialAmplifier
{
    public string Card { get; init; } = "";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    public double Gain { get; init; } = 5;

    /// <summary>−3 dB bandwidth at this gain.</summary>
    public Frequency Bandwidth { get; init; } = Frequency.FromKilohertz(35);

    /// <summary>eni: white noise of the input stage.</summary>
    public VoltageNoiseDensity InputNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(50);

    /// <summary>eno: white noise of the output stage, divided by the gain at the input.</summary>
    public VoltageNoiseDensity OutputNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(150);

    /// <summary>f_ce: where flicker and white voltage noise are equal.</summary>
    public Frequency NoiseCorner { get; init; }

    public CurrentNoiseDensity CurrentNoise { get; init; } = CurrentNoiseDensity.FromFemtoamperesPerRootHertz(1);

    public Frequency CurrentNoiseCorner { get; init; }

    public Resistance CommonModeResistance { get; init; } = Resistance.FromOhms(1e11);
    public Capacitance CommonModeCapacitance { get; init; } = Capacitance.FromPicofarads(5);
    public Resistance DifferentialResistance { get; init; } = Resistance.FromOhms(1e11);
    public Capacitance DifferentialCapacitance { get; init; } = Capacitance.FromPicofarads(3);

    /// <summary>CMRR at dc.</summary>
    public Decibels Cmrr { get; init; } = Decibels.FromStated(100);

    /// <summary>f_cm: where the CMRR is 3 dB down.</summary>
    public Frequency CmrrCorner { get; init; } = Frequency.FromHertz(150);

    /// <summary>Largest dc current into each input.</summary>
    public Current BiasCurrent { get; init; }

    public Voltage OffsetVoltage { get; init; }

    /// <summary>How close to the rails its output may go.</summary>
    public Voltage OutputMargin { get; init; } = Voltage.FromMillivolts(100);

    /// <summary>How close to the rails its inner nodes V_cm ± G·V_d/2 may go.</summary>
    public Voltage InnerMargin { get; init; } = Voltage.FromMillivolts(100);

    /// <summary>Rejection of ripple on the supply.</summary>
    public Decibels SupplyRejection { get; init; } = Decibels.FromStated(80);

    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(50);
}
