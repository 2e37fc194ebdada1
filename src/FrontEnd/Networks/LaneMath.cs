using System.Numerics;

namespace FrontEnd.Networks;

/// <summary>Formulas that are worked out for many lanes at once.</summary>
internal static class LaneMath
{
    /// <summary>Voltage ratio in decibels, 20·log10.</summary>
    public static Vector<double> Decibels(Vector<double> ratio) => Vector.Log(ratio) * (20 / Math.Log(10));

    /// <summary>f^-α.</summary>
    public static Vector<double> InversePower(Vector<double> f, double slope)
    {
        switch (slope)
        {
            case 2:
                return Vector<double>.One / (f * f);
            case 1:
                return Vector<double>.One / f;
            case 0:
                return Vector<double>.One;
            default:
                {
                    Span<double> power = stackalloc double[Vector<double>.Count];
                    for (int lane = 0; lane < power.Length; lane++)
                    {
                        power[lane] = lane != 0 && f[lane] == f[lane - 1] ? power[lane - 1] : Math.Pow(f[lane], -slope);
                    }

                    return new Vector<double>(power);
                }
        }
    }
}
