namespace FrontEnd.Amplifier;

/// <summary>How the amplifier common is tied to the body.</summary>
public enum GroundKind
{
    /// <summary>The ground electrode is tied to the amplifier's common through its resistor.</summary>
    Passive,

    /// <summary>The ground electrode is driven with the inverted mean of the inputs.</summary>
    Driven,
}

/// <summary>What the ground electrode is tied to.</summary>
public sealed record GroundDrive
{
    public GroundKind Kind { get; init; } = GroundKind.Passive;

    /// <summary>Resistor between the ground electrode and common or the driving amplifier; none unless given.</summary>
    public Resistance SeriesResistor { get; init; }

    public Ratio ResistorTolerance { get; init; } = Ratio.FromPercent(1);

    /// <summary>K0.</summary>
    public double DcGain { get; init; } = 10000;

    /// <summary>f_u.</summary>
    public Frequency UnityGainFrequency { get; init; } = Frequency.FromHertz(2000);

    /// <summary>f_2: bandwidth of the averaging of the two inputs; null for the amplifier's.</summary>
    public Frequency? AveragingBandwidth { get; init; }

    /// <summary>True where the averaging is taken as infinitely fast.</summary>
    public bool AveragingUnlimited { get; init; }

    public Voltage OutputMargin { get; init; } = Voltage.FromMillivolts(50);

    /// <summary>White voltage noise of the driving amplifier.</summary>
    public VoltageNoiseDensity VoltageNoise { get; init; } = VoltageNoiseDensity.FromNanovoltsPerRootHertz(55);

    public Current SupplyCurrent { get; init; } = Current.FromMicroamperes(20);
}
