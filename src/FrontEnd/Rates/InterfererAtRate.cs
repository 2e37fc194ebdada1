namespace FrontEnd.Rates;

/// <summary>What an interferer other than the mains leaves at one sampling rate.</summary>
/// <param name="LandsAt">Where it lands, in words.</param>
/// <param name="Folded">What folds into the band, or what is left of a single frequency, rms RTI.</param>
/// <param name="Direct">What lies in the band itself, rms RTI; null for a single frequency.</param>
internal sealed record InterfererAtRate(string Name, string LandsAt, VoltageRms Folded, VoltageRms? Direct);
