namespace FrontEnd.Rates;

/// <summary>One mains frequency at one sampling rate.</summary>
/// <param name="Frequency">f0: 50 or 60 Hz, or the design's own.</param>
/// <param name="Voltage">Rms to earth; the design's own, or 230 V with 50 Hz and 120 V with 60 Hz.</param>
/// <param name="Landings">One for each harmonic.</param>
/// <param name="Recorded">Sum of the residues that land in the band (<c>mains.recorded</c>).</param>
/// <param name="Everywhere">Sum of all residues.</param>
/// <param name="Comb">fs/f0 where that is a whole number: a filter of that many samples nulls every harmonic; null otherwise.</param>
/// <param name="Skew">Share of the common mode that leaks between neighbouring channels that are not sampled at the same time,
/// 2·sin(πf0·Δt); 0 for simultaneous sampling.</param>
internal sealed record MainsAtRate(Frequency Frequency, VoltageRms Voltage, IReadOnlyList<MainsLanding> Landings, VoltageRms Recorded,
    VoltageRms Everywhere, int? Comb, Ratio Skew)
{
    /// <summary>The highest harmonic that was looked at; nothing is said of those above.</summary>
    public int HighestHarmonic => Landings.Count;
}
