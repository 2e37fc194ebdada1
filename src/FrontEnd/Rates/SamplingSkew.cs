namespace FrontEnd.Rates;

/// <summary>What is left of a common mode where two channels are sampled one after the other and subtracted later.</summary>
/// <param name="Apart">Time between the two samples, Δt; 0 for simultaneous sampling.</param>
/// <param name="Leak">Share of the common mode that leaks, 2·sin(πf·Δt).</param>
internal sealed record SamplingSkew(Duration Apart, Ratio Leak)
{
    /// <summary>The common mode over what leaks of it [dB], below 0 where more leaks than there is; null where nothing leaks.</summary>
    public Decibels? Rejection => 0 < Leak.Fraction ? Decibels.FromVoltageRatio(1 / Leak.Fraction) : null;

    /// <summary>Of a common mode at one frequency.</summary>
    public static SamplingSkew Of(Frequency frequency, Duration apart) => new(apart, RateStudy.SkewLeak(frequency, apart));
}
