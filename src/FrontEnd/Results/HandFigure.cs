using FrontEnd.Citations;

namespace FrontEnd.Results;

/// <summary>A headline figure worked out a second time, by the textbook formula.</summary>
/// <param name="Value">The formula's figure, in the result's own unit.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Source">Where the formula is written down.</param>
/// <param name="Difference">Formula less network, as a share of the network's figure; for decibels, degrees and bits the plain
/// difference.</param>
/// <param name="Assumption">The assumption that fails in this design and explains the difference; null where it holds.</param>
public sealed record HandFigure(IQuantity Value, string Formula, SourceRef Source, double Difference, string? Assumption)
{
    /// <summary>Makes <see cref="Substituted"/>.</summary>
    internal Func<string> Numbers { get; init; } = static () => "";

    /// <summary>The formula with the numbers put in; made when it is first read.</summary>
    public string Substituted => field ??= Numbers();
}
