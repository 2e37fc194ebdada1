namespace FrontEnd.Networks;

/// <summary>Formulas that are worked out for many lanes at once.</summary>
internal static class LaneMath
{
    /// <summary>f^-α.</summary>
    public static double InversePower(double f, double slope) => slope switch
    {
        2 => 1 / (f * f),
        1 => 1 / f,
        0 => 1,
        _ => Math.Pow(f, -slope),
    };
}
