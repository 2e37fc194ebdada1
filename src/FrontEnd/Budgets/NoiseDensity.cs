using System.Numerics;

namespace FrontEnd.Budgets;

/// <summary>Densities of the noise sources, one-sided.</summary>
internal static class NoiseDensity
{
    /// <summary>White noise with a flicker corner: level·(1 + fc/f).</summary>
    public static Vector<double> Flicker(Vector<double> level, double corner, Vector<double> hertz) =>
        corner == 0 ? level : level * (Vector<double>.One + (new Vector<double>(corner) / hertz));

    /// <summary>Power of quantisation, q²/12 for a step q [V]: evenly spread from dc to half the sampling rate (Bennett 1948, from
    /// memory).</summary>
    public static double Quantisation(double step) => step * step / 12;
}
