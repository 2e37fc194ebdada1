namespace FrontEnd.Filters;

/// <summary>Wording about filters in finite words. Codes FE062x.</summary>
internal static class WordMessages
{
    internal const string LongerWords = "use longer coefficient words, or decimate before this filter so that its corner is a larger share of the rate";
    internal const string LessFraction = "give the section's coefficients one fewer fraction bit";
    internal const string KeepDcZero = "force b1 = -(b0 + b2) after rounding, so that the zero at 0 Hz survives";
    internal const string DirectForm = "use direct form I or double, or remove the offset first: a large constant rounds coarsely in the transposed form's sums";

    internal static Finding Unstable(string field, string name, string word, PoleStanding standing) => new("FE0620", Severity.Error, field,
        $"rounded to {word}, a pole of `{name}` lies {(standing == PoleStanding.OnCircle ? "on" : "outside")} the unit circle",
        standing == PoleStanding.OnCircle
            ? "the response of such a filter never decays, and its order is one less than designed"
            : "the output grows without bound", LongerWords);

    internal static Finding DcZeroLost(string field, string name, string word) => new("FE0621", Severity.Warning, field,
        $"rounded to {word}, `{name}` no longer has gain 0 at 0 Hz", "drift and electrode offset pass through", KeepDcZero);

    internal static Finding RoundOffLarge(string field, string name, string roundOff, string noise, string remedy) =>
        new("FE0622", Severity.Warning, field,
        $"the round-off of `{name}`, {roundOff}, is more than a tenth of the design's noise, {noise}",
            "both rms in the design band, at the electrodes", remedy);

    internal static Finding DeadBandLarge(string field, string name, string band, string signal, string remedy) =>
        new("FE0623", Severity.Warning, field,
        $"a limit cycle of `{name}` can reach {band}, more than the smallest signal, {signal}",
            "with no input, a fixed-point filter can stay at a level where its rounding cancels its decay; the level is a bound for all of its sections together",
            remedy);

    internal static Finding RoundOffNotWhite(string field, string name, string output, string band, string white, string simulated, string remedy) =>
        new("FE0625", Severity.Warning, field,
        $"the round-off of `{name}` is not white noise: {simulated} in simulation, where white rounding would give {white}",
            $"the filter's output, {output}, stays below its dead band, {band}, so its rounding follows the signal; all rms in the design band, at the electrodes",
            remedy);

    internal static Finding MayOverflow(string field, string name, int needed, int there, string remedy) => new("FE0624", Severity.Warning, field,
        $"`{name}` needs {needed} bits for its states, but they have {there}",
        "sample bits + bits below the LSB + headroom for the worst input (L1 norm); a state beyond its word saturates", remedy);

    /// <summary>What fits: so many bits below the LSB that neither round-off nor dead band counts, and still no overflow.</summary>
    /// <param name="wanted">Least number of bits below the LSB for which no filter's round-off or dead band counts.</param>
    /// <param name="room">Greatest number for which no filter can overflow; below 0 where none is.</param>
    internal static string StateBitsThatFit(int wanted, int room) => wanted <= room
        ? $"keep {(wanted == room ? $"{room}" : $"{wanted} to {room}")} bit{(wanted == 1 && room == 1 ? "" : "s")} below the LSB in the states (digital-state-fraction), which suits all digital filters of the design"
        : $"use double (digital-word): the filters need {wanted} bits below the LSB in their states, but {(room < 0 ? "the states are too short even without any" : $"there is room for only {room} besides sample and headroom")}; or decimate before the filter";

    /// <param name="bits">Bits more than there are now.</param>
    /// <param name="samples">What they leave of the state's word for the samples.</param>
    /// <param name="mayBeKept">False where a filter may not be given so many.</param>
    internal static string MoreStateBits(int bits, int samples, bool mayBeKept) => LeastSample <= samples && mayBeKept
        ? $"keep {bits} more bit{(bits == 1 ? "" : "s")} below the LSB in the states, which leaves {samples} for the samples, or decimate before this filter"
        : $"use double, or decimate before this filter: {bits} more bit{(bits == 1 ? "" : "s")} below the LSB would be needed in the states, which is more than they have room for";

    // Fewer bits than any converter in use has.
    private const int LeastSample = 8;
}
