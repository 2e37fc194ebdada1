namespace FrontEnd.Designs;

/// <summary>Battery and rails. Levels are judged at the lowest voltage, safety at the highest.</summary>
public sealed record Supply
{
    /// <summary>Lowest voltage at the analogue rails while the device works (both rails of a split supply together).</summary>
    public Voltage Lowest { get; init; } = Voltage.FromVolts(3.0);

    /// <summary>Highest voltage anywhere in the box: battery full, charger input, boost or inverting converters, the whole of a split
    /// supply.</summary>
    public Voltage Highest { get; init; } = Voltage.FromVolts(3.3);

    /// <summary>Highest voltage at the analogue rails, where a regulator keeps it below <see cref="Highest"/>; null for that.</summary>
    public Voltage? RailsHighest { get; init; }

    /// <summary>Mid-rail of the analogue path above the negative rail; null for half the lowest voltage.</summary>
    public Voltage? MidRail { get; init; }

    /// <summary>Capacity of the battery; null where not given.</summary>
    public Charge? BatteryCapacity { get; init; }

    /// <summary>Share of the capacity that can be used.</summary>
    public Ratio UsableShare { get; init; } = Ratio.FromFraction(0.8);

    /// <summary>Everything that is not in the path: microcontroller, radio.</summary>
    public Current OtherCurrent { get; init; } = Current.FromMilliamperes(5);

    /// <summary>Ripple on the analogue supply; null where not given.</summary>
    public VoltageRms? Ripple { get; init; }

    /// <summary>Frequency of that ripple [Hz].</summary>
    public Frequency RippleFrequency { get; init; } = Frequency.FromHertz(33);

    /// <summary>Noise of the mid-rail or reference buffer in the band; null where not given.</summary>
    public VoltageRms? MidRailNoise { get; init; }

    /// <summary>Bits sent beyond the samples, as a share of them.</summary>
    public Ratio DataOverhead { get; init; } = Ratio.FromPercent(20);

    /// <summary>The mid-rail, half the lowest supply where none is given [V].</summary>
    internal double MidRailVolts => MidRail?.Volts ?? (Lowest.Volts / 2);

    /// <summary>From the mid-rail to the nearer rail at the lowest voltage: what a node could swing if nothing kept it from the
    /// rails.</summary>
    internal double HalfRailVolts => Math.Min(MidRailVolts, Lowest.Volts - MidRailVolts);

    /// <summary>From the mid-rail to the farther rail at the lowest voltage: beyond it nothing goes.</summary>
    internal double FarRailVolts => Math.Max(MidRailVolts, Lowest.Volts - MidRailVolts);
}
