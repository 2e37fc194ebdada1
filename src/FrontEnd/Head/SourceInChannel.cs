namespace FrontEnd.Head;

/// <summary>What one derivation shows of one source.</summary>
/// <param name="Channel">The derivation with its noise.</param>
internal sealed record SourceInChannel(NoisyChannel Channel)
{
    /// <summary>V_d of the stated rhythm, signed, in the statement's kind (peak-to-peak or rms); null without a statement, or where the stated
    /// derivation sees nothing of the source.</summary>
    public IQuantity? Seen { get; init; }

    /// <summary>V_d for a density of 1 nA·m/mm², signed.</summary>
    public Voltage PerDensity { get; init; }

    /// <summary>k = V_d/V_A; null where the active site hardly sees the source.</summary>
    public Share? Kept { get; init; }

    /// <summary>t = 1 − k; null as k.</summary>
    public Share? ReferenceTakes { get; init; }

    /// <summary>V_d over what the same site shows against both ears; null as k.</summary>
    public Share? AgainstEars { get; init; }

    /// <summary>|V_d|/V_0.</summary>
    public Share OfPeak { get; init; }

    /// <summary>Least and greatest k over the skulls of <see cref="Shells.SkullRatios"/>; null where one of them has none.</summary>
    public (Share Least, Share Greatest)? KeptSpan { get; init; }

    /// <summary>What the reference does to the source; null where k is.</summary>
    public ReferencePart? Part { get; init; }

    /// <summary>B·√(wᵀρw) in the band.</summary>
    public VoltageRms Background { get; init; }

    /// <summary>The rhythm's rms in this derivation; null as <see cref="Seen"/>.</summary>
    public VoltageRms? Signal { get; init; }

    /// <summary>Signal over background and front-end noise together, rms over rms; null as <see cref="Seen"/>, or where there is neither.</summary>
    public double? SignalToNoise { get; init; }

    /// <summary>Least and greatest of it over the skulls.</summary>
    public (double Least, double Greatest)? SignalToNoiseSpan { get; init; }

    /// <summary>True where the front end's noise is more than the background.</summary>
    public bool FrontEndLimits => Channel.Noise is { } noise && Background.Volts < noise.Volts;

    /// <summary>20·log10 of <see cref="SignalToNoise"/>; null as it, or where nothing is seen.</summary>
    public Decibels? SignalToNoiseLevel => Level(SignalToNoise);

    /// <summary>The same of its least and greatest.</summary>
    public (Decibels? Least, Decibels? Greatest) SignalToNoiseLevels => (Level(SignalToNoiseSpan?.Least), Level(SignalToNoiseSpan?.Greatest));

    /// <summary>Below 1e-6 of the noise nothing is seen but rounding.</summary>
    private static Decibels? Level(double? ratio) => ratio is > 1e-6 ? Decibels.FromVoltageRatio(ratio.Value) : null;
}
