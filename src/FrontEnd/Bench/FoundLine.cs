namespace FrontEnd.Bench;

/// <summary>A line that stands out of the noise of a recording.</summary>
/// <param name="Frequency">Where it was found.</param>
/// <param name="Rms">Its rms, the noise beneath it taken off.</param>
/// <param name="Harmonic">The mains harmonic that lands there; null where none does.</param>
/// <param name="Mains">The mains frequency of that harmonic.</param>
/// <param name="Folded">True where that harmonic lies above half the rate.</param>
internal sealed record FoundLine(Frequency Frequency, VoltageRms Rms, int? Harmonic, Frequency? Mains, bool Folded);
