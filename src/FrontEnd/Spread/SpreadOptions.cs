namespace FrontEnd.Spread;

/// <summary>How the values of resistors and capacitors lie within their tolerance.</summary>
public enum PartDistribution
{
    /// <summary>Every value within the tolerance alike.</summary>
    Uniform,

    /// <summary>Normal, the tolerance being three standard deviations.</summary>
    Normal,
}

/// <summary>What a spread run is asked for.</summary>
public sealed record SpreadOptions
{
    /// <summary>The largest number of devices that may be drawn: its memory is what a desktop machine has.</summary>
    public const int MostBuilds = 10_000_000;

    /// <summary>From here on the memory is worth a word.</summary>
    public const int ManyBuilds = 1_000_000;

    /// <summary>Number of devices that are drawn, 1 to <see cref="MostBuilds"/>.</summary>
    public int Builds { get; init; } = 10_000;

    public ulong Seed { get; init; } = 1;

    public PartDistribution Distribution { get; init; } = PartDistribution.Uniform;

    public SpreadRanges Ranges { get; init; } = new();

    /// <summary>Most threads at a time; null for as many as there are processors. The result does not depend on it.</summary>
    public int? Threads { get; init; }
}

/// <summary>How far what is neither a resistor nor a capacitor goes from device to device and from room to room, where neither card nor
/// design gives a range (common practice, no source).</summary>
public sealed record SpreadRanges
{
    /// <summary>Nothing moves but resistors and capacitors.</summary>
    public static readonly SpreadRanges None =
        new() { Cmrr = 0, Gain = 0, Noise = 0, Electrodes = false, Surroundings = 1, MainsVoltage = 0 };

    /// <summary>Amplifier's CMRR about the card's figure, ± this many dB, evenly in dB.</summary>
    public double Cmrr { get; init; } = 6;

    /// <summary>Share by which the amplifier's gain may be off, ±.</summary>
    public double Gain { get; init; } = 0.005;

    /// <summary>Share by which the amplifier's voltage noise may be off, ±; input and output stage together.</summary>
    public double Noise { get; init; } = 0.2;

    /// <summary>True where each of the three electrodes is drawn evenly within 1 ± m/2 of its impedance, m being the mismatch.</summary>
    public bool Electrodes { get; init; } = true;

    /// <summary>Stray capacitances of body, amplifier and leads go from the given value over this factor to the value times it, evenly in
    /// the logarithm.</summary>
    public double Surroundings { get; init; } = 2;

    /// <summary>Share by which the mains voltage may be off, ±; supply voltages within ±10 % are EN 50160's limit.</summary>
    public double MainsVoltage { get; init; } = 0.1;
}
