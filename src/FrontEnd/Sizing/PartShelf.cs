using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;

namespace FrontEnd.Sizing;

/// <summary>The parts that a search may take, each with the name of its card in it.</summary>
/// <param name="Amplifiers">Differential amplifiers.</param>
/// <param name="OpAmps">For gain stages and filters.</param>
/// <param name="Converters">Converters; a delta-sigma converter's noise is that at its own rate.</param>
internal sealed record PartShelf(IReadOnlyList<DifferentialAmplifier> Amplifiers, IReadOnlyList<OpAmp> OpAmps,
    IReadOnlyList<AnalogDigitalConverter> Converters)
{
    /// <summary>The chip that each amplifier's and each converter's card says it is on; cards of parts of their own are left out.</summary>
    public IReadOnlyDictionary<string, string> Chips { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>True where a converter whose full scale does not fit the supply may be given a smaller reference.</summary>
    public bool MayChangeReference { get; init; } = true;

    /// <summary>An amplifier on a converter's chip is used with a converter of that chip only.</summary>
    internal bool Belong(DifferentialAmplifier amplifier, AnalogDigitalConverter converter) =>
        !Chips.TryGetValue(amplifier.Card, out string? chip) || Chips.GetValueOrDefault(converter.Card) == chip;
}
