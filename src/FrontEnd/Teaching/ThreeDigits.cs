namespace FrontEnd.Teaching;

/// <summary>The digits that a sheet asks for: three, as its instruction says. Whatever is rounded to them is right.</summary>
internal static class ThreeDigits
{
    /// <summary>Half a unit of a value's third digit, the most that rounding to three digits moves it; 0 for 0.</summary>
    public static double HalfUnit(double value) => value == 0 ? 0 : 0.5 * Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))) - 2);
}
