using FrontEnd.Digital;
using FrontEnd.Filters;

namespace FrontEnd.DesignedFilters;

/// <summary>What taps cost a microcontroller, a channel.</summary>
/// <param name="Multiplies">Multiplications per sample, symmetric taps folded.</param>
/// <param name="MultipliesPerSecond">Multiplications per second [1/s].</param>
/// <param name="Samples">Samples kept.</param>
/// <param name="Words">What rounding to words of whole numbers does.</param>
public sealed record FirCost(int Multiplies, double MultipliesPerSecond, int Samples, IReadOnlyList<RoundedTaps> Words)
{
    internal static FirCost Of(FirFilter filter) => new(
        filter.Multiplies, filter.MultipliesPerSecond, filter.Length,
            [RoundedTaps.Of(filter, DigitalWord.Q31), RoundedTaps.Of(filter, DigitalWord.Q15)]);
}

/// <summary>Taps rounded to a word.</summary>
/// <param name="Word">The word.</param>
/// <param name="LargestChange">The response changes at no frequency by more than this share of a full-scale input.</param>
public sealed record RoundedTaps(DigitalWord Word, double LargestChange)
{
    internal static RoundedTaps Of(FirFilter filter, DigitalWord word) =>
        new(word, QuantisedTaps.Of(filter, new DigitalArithmetic { Word = word }.Format).LargestChange);
}
