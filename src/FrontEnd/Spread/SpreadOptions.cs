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

    public SpreadRanges Ranges { get; init => field = value ?? new(); } = new();

    /// <summary>Most threads at a time, 1 or more; null for as many as there are processors. The result does not depend on it.</summary>
    public int? Threads { get; init; }

    /// <summary>What cannot be drawn; empty where all of it can. <see cref="SpreadRun.Run"/> gives null where there is any.</summary>
    public IReadOnlyList<Finding> Check() =>
    [
        .. new[]
        {
            SpreadMessages.Outside("builds", Builds, 1, MostBuilds), Threads is { } threads ? SpreadMessages.Outside("threads", threads, 1, int.MaxValue) : null,
            Enum.IsDefined(Distribution) ? null : SpreadMessages.NoDistribution(Distribution),
        }.OfType<Finding>(),
        .. Ranges.Check(),
    ];
}

/// <summary>How far what is neither a resistor nor a capacitor goes from device to device and from room to room, where neither card nor
/// design gives a range (common practice, no source).</summary>
public sealed record SpreadRanges
{
    /// <summary>Nothing moves but resistors and capacitors.</summary>
    public static readonly SpreadRanges None =
        new() { Cmrr = 0, Gain = 0, Noise = 0, Electrodes = false, Surroundings = 1, MainsVoltage = 0 };

    private const double MostDecibels = 100, MostFactor = 1000, MostShare = 0.99;

    /// <summary>Amplifier's CMRR about the card's figure, ± this many dB, evenly in dB; 0 to 100.</summary>
    public double Cmrr { get; init; } = 6;

    /// <summary>Share by which the amplifier's gain may be off, ±; 0 to 0.99.</summary>
    public double Gain { get; init; } = 0.005;

    /// <summary>Share by which the amplifier's voltage noise may be off, ±; input and output stage together; 0 to 0.99.</summary>
    public double Noise { get; init; } = 0.2;

    /// <summary>True where each of the three electrodes is drawn evenly within 1 ± m/2 of its impedance, m being the mismatch.</summary>
    public bool Electrodes { get; init; } = true;

    /// <summary>Stray capacitances of body, amplifier and leads go from the given value over this factor to the value times it, evenly in
    /// the logarithm; 1 to 1000.</summary>
    public double Surroundings { get; init; } = 2;

    /// <summary>Share by which the mains voltage may be off, ±; supply voltages within ±10 % are EN 50160's limit; 0 to 0.99.</summary>
    public double MainsVoltage { get; init; } = 0.1;

    internal IEnumerable<Finding> Check() => new[]
    {
        SpreadMessages.Outside("ranges.cmrr", Cmrr, 0, MostDecibels), SpreadMessages.Outside("ranges.gain", Gain, 0, MostShare),
        SpreadMessages.Outside("ranges.noise", Noise, 0, MostShare), SpreadMessages.Outside("ranges.surroundings", Surroundings, 1, MostFactor),
        SpreadMessages.Outside("ranges.mains-voltage", MainsVoltage, 0, MostShare),
    }.OfType<Finding>();
}
