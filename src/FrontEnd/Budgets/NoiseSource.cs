namespace FrontEnd.Budgets;

/// <summary>What a noise contribution is, for the sums that leave some of them out.</summary>
internal enum NoiseKind
{
    ElectrodeThermal,
    ElectrodeExcess,
    Board,
}

/// <summary>One row of the noise budget, or one part of it: parts of the same name add up.</summary>
/// <param name="Name">"active electrode", "gain 2 voltage" …</param>
/// <param name="Block">0 for the input with the amplifier, then the stages in order.</param>
internal sealed record NoiseSource(string Name, NoiseKind Kind, int Block);
