namespace FrontEnd.Filters;

/// <summary>What is lost at one frequency.</summary>
/// <param name="At">The frequency.</param>
/// <param name="Loss">Loss against the gain that counts as 0 dB; null where it is without bound.</param>
public sealed record LossAt(Frequency At, Decibels? Loss);
