namespace FrontEnd.Bench;

/// <summary>Samples of one channel.</summary>
/// <param name="Channel">The channel's name; "" for none.</param>
/// <param name="Rate">Samples a second.</param>
/// <param name="Samples">Volts referred to the electrodes, or converter steps.</param>
/// <param name="AreSteps">True where the samples are whole steps of the converter.</param>
internal sealed record Recording(string Channel, Frequency Rate, ISamples Samples, bool AreSteps = false)
{
    /// <summary>A recording that is in memory.</summary>
    public Recording(string channel, Frequency rate, IReadOnlyList<double> samples, bool areSteps = false)
        : this(channel, rate, new HeldSamples(samples), areSteps)
    {
    }

    /// <summary>The unit in which the file has the samples, as it is written there; they are volts or steps here whatever it is.</summary>
    public string Unit { get; init; } = "V";

    /// <summary>True where the file does not say how fast its samples were taken, and the design's rate stands in.</summary>
    public bool IsRateAssumed { get; init; }

    public Duration Length => Duration.FromSeconds(Samples.Count / Rate.Hertz);
}
