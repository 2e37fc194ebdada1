using FrontEnd.Fields;

namespace FrontEnd.Circuits;

/// <summary>A voltage-feedback op-amp: A(s) = A0/(1 + s·A0/(2π·GBW)) behind an output resistance, white and flicker noise, dc
/// errors.</summary>
public sealed record OpAmp
{
    /// <summary>Figures typical of the class micropower CMOS op-amp (common practice, no source).</summary>
    public static readonly OpAmp MicropowerCmos = new();

    /// <summary>Name of the part card; "" for none.</summary>
    public string Card { get; init; } = "";

    /// <summary>How far its values go from piece to piece; see <see cref="PartRanges"/>.</summary>
    public PartRanges Ranges { get; init; } = PartRanges.None;

    /// <summary>A0.</summary>
    public double DcGain { get; init; } = 1e7;

    /// <summary>GBW.</summary>
    public Frequency GainBandwidth { get; init; } = Frequency.FromKilohertz(350);

    /// <summary>Open-loop output resistance Ro, between the amplifier that A(s) describes and its output pin; 0 for an ideal output. It
    /// makes no noise of its own: en is measured with it in place.</summary>
    public Resistance OutputResistance { get; init; }

    /// <summary>White voltage noise at the input, e_n [V/√Hz].</summary>
    public VoltageNoiseDensity VoltageNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(55);

    /// <summary>Where flicker and white voltage noise are equal [Hz]; 0 for no flicker.</summary>
    public Frequency NoiseCorner { get; init; }

    /// <summary>White current noise of each input, i_n [A/√Hz].</summary>
    public CurrentNoiseDensity CurrentNoise { get; init; } = CurrentNoiseDensity.FromFemtoamperesPerRootHertz(1);

    /// <summary>Where flicker and white current noise are equal [Hz]; 0 for no flicker.</summary>
    public Frequency CurrentNoiseCorner { get; init; }

    /// <summary>Dc offset at the input, worst case [V].</summary>
    public Voltage OffsetVoltage { get; init; }

    /// <summary>Dc current into each input, worst case [A].</summary>
    public Current BiasCurrent { get; init; }

    /// <summary>How close to the rails its output may go.</summary>
    public Voltage OutputMargin { get; init; } = Voltage.FromMillivolts(50);

    /// <summary>Supply current of one amplifier [A].</summary>
    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(20);

    /// <summary>The supply that its figures hold on and that it stands.</summary>
    public SupplyRange SupplyRange { get; init; } = SupplyRange.Any;
}
