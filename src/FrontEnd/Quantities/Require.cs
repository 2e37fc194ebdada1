using System.Runtime.CompilerServices;

namespace FrontEnd.Quantities;

/// <summary>The one guard class: our own mistakes throw here, with name, value and allowed range. The user's mistakes never come this
/// far.</summary>
internal static class Require
{
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "The value must be a finite number.");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        0 < value && double.IsFinite(value)
            ? value : throw new ArgumentOutOfRangeException(name, value, "The value must be above zero and finite.");

    public static int InRange(int value, int least, int greatest, [CallerArgumentExpression(nameof(value))] string name = "") =>
        least <= value && value <= greatest
            ? value : throw new ArgumentOutOfRangeException(name, value, $"The value must be in {least}..{greatest}.");
}
