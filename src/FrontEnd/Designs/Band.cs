namespace FrontEnd.Designs;

/// <summary>A named range of frequencies and, if wanted, what is looked for in it.</summary>
public sealed record Band(string Name, Frequency Low, Frequency High)
{
    /// <summary>The usual names; edges are a convention and sources disagree: 0.5-4, 4-8, 8-13, 13-30, 30-80 Hz).</summary>
    public static readonly IReadOnlyList<Band> Conventional =
    [
        new("delta", Frequency.FromHertz(0.5), Frequency.FromHertz(4)),
        new("theta", Frequency.FromHertz(4), Frequency.FromHertz(8)),
        new("alpha", Frequency.FromHertz(8), Frequency.FromHertz(13)),
        new("beta", Frequency.FromHertz(13), Frequency.FromHertz(30)),
        new("gamma", Frequency.FromHertz(30), Frequency.FromHertz(80)),
    ];

    /// <summary>Smallest signal looked for in this band; null where the design's smallest signal counts.</summary>
    public VoltageRms? SmallestSignal { get; init; }

    /// <summary>Amplitude of an evoked response to be averaged out of the noise; null for none.</summary>
    public Voltage? EvokedAmplitude { get; init; }

    /// <summary>Amplitude over the noise of the average that is asked for, S.</summary>
    public double EvokedRatio { get; init; } = 3;

    /// <summary>Stimuli per second, for the time that the sweeps take.</summary>
    public Frequency EvokedRate { get; init; } = Frequency.FromHertz(1);

    /// <summary>√(f1·f2), the geometric centre.</summary>
    public Frequency Centre => Frequency.FromHertz(Math.Sqrt(Low.Hertz * High.Hertz));
}
