using FrontEnd.Identity;

namespace FrontEnd.Budgets;

/// <summary>What a noise contribution is, for the sums that leave some of them out.</summary>
internal enum NoiseKind
{
    ElectrodeThermal,
    ElectrodeExcess,
    Board,
}

/// <summary>One row of the noise budget, or one part of it: parts of the same source add up.</summary>
/// <param name="Id">Which source it is.</param>
/// <param name="Name">For the reader: "active electrode", "gain 2 voltage" …</param>
/// <param name="Block">0 for the input with the amplifier, then the stages in order.</param>
internal sealed record NoiseSource(SourceId Id, string Name, NoiseKind Kind, int Block);

/// <summary>One row of the noise budget with its size.</summary>
/// <param name="Id">Which source it is.</param>
/// <param name="Name">For the reader.</param>
/// <param name="Rms">Rms in the band, RTI [V].</param>
internal readonly record struct NoiseRow(SourceId Id, string Name, double Rms);
