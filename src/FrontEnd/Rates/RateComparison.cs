using FrontEnd.Designs;

namespace FrontEnd.Rates;

/// <summary>A design at several sampling rates.</summary>
/// <param name="Corner">Half-power frequency that the orders are for.</param>
/// <param name="CornerIs">Where the corner comes from, in words.</param>
/// <param name="Options">In the order of the rates.</param>
/// <param name="Pick">The recommended one; null where none can be worked out.</param>
/// <param name="RunnerUp">The next best.</param>
/// <param name="Because">Why, in a sentence.</param>
/// <param name="Findings">About the design or the rates as a whole.</param>
internal sealed record RateComparison(
    Design Design, Frequency Corner, string CornerIs, IReadOnlyList<RateOption> Options, RateOption? Pick, RateOption? RunnerUp,
    string Because, IReadOnlyList<Finding> Findings)
{
    /// <summary>What leaks of a common mode at the design's mains between neighbouring channels as the design samples them.</summary>
    public SamplingSkew SkewAsDesigned => SamplingSkew.Of(Design.Mains.Frequency, Design.Converter.Skew);

    /// <summary>The same where a multiplexer spreads all channels over one period of a rate; null for a single channel.</summary>
    /// <remarks>The leak depends on the time between samples, not on the rate; a multiplexer that spreads them is what the rate
    /// decides.</remarks>
    public SamplingSkew? SkewSpreadEvenly(RateOption option) => Design.Channels < 2
        ? null
        : SamplingSkew.Of(Design.Mains.Frequency, Duration.FromSeconds(1 / (option.Rate.Hertz * Design.Channels)));
}
