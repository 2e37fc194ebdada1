using FrontEnd.Findings;

namespace FrontEnd.Filters;

/// <summary>Wording about filters in finite words. Codes FE062x.</summary>
internal static class WordMessages
{
    internal const string LongerWords = "use longer coefficient words, or decimate before this filter so that its corner is a larger share of the rate";
    internal const string LessFraction = "give the section's coefficients one fraction bit less";
    internal const string KeepDcZero = "force b1 = -(b0 + b2) after rounding, so that the zero at 0 Hz survives";
    internal const string DirectForm = "use direct form I or double, or take the offset off first: a large constant rounds coarsely in the transposed form's sums";

    internal static Finding Unstable(string field, string name, string word, PoleStanding standing) => new("FE0620", Severity.Error, field,
        $"rounded to {word}, a pole of `{name}` lies {(standing == PoleStanding.OnCircle ? "on" : "outside")} the unit circle",
        standing == PoleStanding.OnCircle
            ? "what once is in such a filter stays for ever, and its order is one less than it was designed for"
            : "the output grows without bound", LongerWords);

    internal static Finding DcZeroLost(string field, string name, string word) => new("FE0621", Severity.Warning, field,
        $"rounded to {word}, `{name}` no longer has gain 0 at 0 Hz", "drift and electrode offset come through", KeepDcZero);

    internal static Finding RoundOffLarge(string field, string name, string roundOff, string noise, string remedy) =>
        new("FE0622", Severity.Warning, field,
        $"the round-off of `{name}`, {roundOff}, is more than a tenth of the design's noise, {noise}",
            "both rms in the design band, at the electrodes", remedy);

    internal static Finding DeadBandLarge(string field, string name, string band, string signal, string remedy) =>
        new("FE0623", Severity.Warning, field,
        $"`{name}` can hang at up to {band}, more than the smallest signal, {signal}",
            "with nothing at its input a section in whole numbers stays at the level where its rounding cancels its decay", remedy);

    internal static Finding MayOverflow(string field, string name, int needed, int there) => new("FE0624", Severity.Warning, field,
        $"`{name}` needs {needed} bits for its states, and they have {there}",
        "sample bits + bits below the LSB + headroom for the worst input (L1 norm); a state beyond its word saturates",
        "keep fewer bits below the LSB (digital-state-fraction), or use fewer converter bits");

    internal static string MoreStateBits(int bits) =>
        $"keep {bits} more bit{(bits == 1 ? "" : "s")} below the LSB in the states, or decimate before this filter";
}
