using FrontEnd.Identity;

namespace FrontEnd.Teaching;

/// <summary>What can be learned at one value of a design: what it is, what to change, and which figure tells.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Text">What is told, with the design's own values and figures.</param>
/// <param name="Field">The key of the field to change.</param>
/// <param name="Tries">What to set it to, as it is typed; the first that the design takes.</param>
/// <param name="Result">The figure to watch.</param>
internal sealed record TourStop(TourSubject Subject, string Title, string Text, string Field, IReadOnlyList<string> Tries, ResultId Result);

/// <summary>What stops are about, in their order.</summary>
internal enum TourSubject
{
    Offset,
    Imbalance,
    Skin,
    Leads,
    Aliases,
    AntiAlias,
    Bits,
    SeriesResistor,
}
