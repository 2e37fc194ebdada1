namespace FrontEnd.Text;

/// <summary>Wording about filters in finite words. Codes FE062x.</summary>
internal static class WordMessages
{
    internal const string LongerWords = "use longer coefficient words, or decimate before this filter so that its corner is a larger share of the rate";
    internal const string LessFraction = "give the section's coefficients one fraction bit less";
    internal const string KeepDcZero = "force b1 = -(b0 + b2) after rounding, so that the zero at 0 Hz survives";
    internal const string DirectForm = "use direct form I or double, or take the offset off first: a large constant rounds coarsely in the transposed form's sums";

    internal static string MoreStateBits(int bits) => $"keep {bits} more bit{(bits == 1 ? "" : "s")} below the LSB in the states, or decimate before this filter";
}
