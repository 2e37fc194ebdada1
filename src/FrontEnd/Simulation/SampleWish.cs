namespace FrontEnd.Simulation;

/// <summary>What is to be simulated of a design, in time.</summary>
internal sealed record SampleWish
{
    /// <summary>The longest that is made.</summary>
    public static readonly Duration Longest = Duration.FromSeconds(24 * 3600);

    /// <summary>How long.</summary>
    public Duration Length { get; init; } = Duration.FromSeconds(60);

    /// <summary>The same seed gives the same samples on every machine.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Signals on the made-up head, besides the design's patches.</summary>
    public IReadOnlyList<HeadSignal> Signals { get; init; } = [];

    /// <summary>What is left out, by name: <c>hum</c>, a source of noise, a patch, a stage, a digital filter.</summary>
    public IReadOnlyList<string> Without { get; init; } = [];

    /// <summary>What the power of some sources is multiplied by; empty for all as the design has them.</summary>
    internal IReadOnlyDictionary<Identity.SourceId, double> Louder { get; init; } = new Dictionary<Identity.SourceId, double>();

    /// <summary>True for steps from node to node at 17 times the rate, whether anything clips or not.</summary>
    internal bool StepByStep { get; init; }
}

/// <summary>Something that happens in a simulated recording.</summary>
/// <param name="Start">From its first sample on.</param>
/// <param name="Length">Null for something without a length.</param>
/// <param name="Text">What it is.</param>
/// <param name="Channel">The channel, counted from 0; null for all.</param>
internal sealed record SampleEvent(Duration Start, Duration? Length, string Text, int? Channel = null);

/// <summary>The next samples of all channels, in steps of the converter.</summary>
internal sealed class SampleBlock
{
    internal SampleBlock(int channels, int most) => Steps = [.. Enumerable.Range(0, channels).Select(_ => new double[most])];

    /// <summary>Number of the first sample, from 0.</summary>
    public long First { get; internal set; }

    /// <summary>How many samples of each channel.</summary>
    public int Length { get; internal set; }

    /// <summary>Channel by channel; the next block has other samples in the same rows.</summary>
    public IReadOnlyList<double[]> Steps { get; }

    /// <summary>What was found while they were made and has ended: what clipped.</summary>
    public IReadOnlyList<SampleEvent> Found { get; internal set; } = [];
}
