using FrontEnd.Amplifier;
using FrontEnd.Circuits;
using FrontEnd.Converter;

namespace FrontEnd.Sizing;

/// <summary>The parts that a search may take, each with the name of its card in it.</summary>
/// <param name="Amplifiers">Differential amplifiers.</param>
/// <param name="OpAmps">For gain stages and filters.</param>
/// <param name="Converters">Converters; a delta-sigma converter's noise is that at its own rate.</param>
public sealed record PartShelf(IReadOnlyList<DifferentialAmplifier> Amplifiers, IReadOnlyList<OpAmp> OpAmps, IReadOnlyList<AnalogDigitalConverter> Converters);
