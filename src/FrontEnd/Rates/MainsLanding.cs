namespace FrontEnd.Rates;

/// <summary>Where one harmonic of the mains is recorded at one sampling rate, and what is left of it.</summary>
/// <param name="Harmonic">h.</param>
/// <param name="Frequency">h·f0.</param>
/// <param name="LandsAt">|f − fs·round(f/fs)| of h·f0.</param>
/// <param name="Low">Lower end of where it lands while the mains deviates by ±δ.</param>
/// <param name="High">Upper end.</param>
/// <param name="InBand">True where that range meets the design band.</param>
/// <param name="Residue">What is recorded at the worse end of the deviation, RTI, worst case, after all filters.</param>
internal sealed record MainsLanding(int Harmonic, Frequency Frequency, Frequency LandsAt, Frequency Low, Frequency High, bool InBand,
    VoltageRms Residue);
