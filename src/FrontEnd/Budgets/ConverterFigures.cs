using System.Numerics;
using FrontEnd.Networks;
using FrontEnd.Quantities;

namespace FrontEnd.Budgets;

/// <summary>What the converter makes of the signal.</summary>
internal static class ConverterFigures
{
    /// <summary>Bits beyond which the resolution needed counts as unbounded.</summary>
    public const int MostBits = 40;

    /// <summary>A full-scale sine's rms over the noise, as a voltage ratio: FS/(2√2·σ).</summary>
    public static Vector<double> DynamicRange(Vector<double> fullScale, Vector<double> noise) => fullScale / (2 * Math.Sqrt(2) * noise);

    /// <summary>Effective number of bits, (DR − 1.76 dB)/6.02 dB.</summary>
    /// <param name="fullScale">Full scale at the electrodes [V p-p].</param>
    /// <param name="noise">Noise at the electrodes [V rms].</param>
    public static Vector<double> EffectiveBits(Vector<double> fullScale, Vector<double> noise) =>
        (LaneMath.Decibels(DynamicRange(fullScale,
            noise)) - new Vector<double>(TradeConstants.DecibelsOfSine)) / TradeConstants.DecibelsPerBit;

    /// <summary>The resolution at which quantisation raises the noise by just the factor asked for, not rounded [bit]: √(1 + q²/σ0²) with
    /// q = q1/2^N.</summary>
    /// <param name="oneStep">Noise of quantisation with a single step, q1, over all other noise, σ0: both at the same place.</param>
    /// <param name="rise">Greatest rise, above 1.</param>
    public static double BitsWanted(double oneStep, double rise) => Math.Log2(oneStep / Math.Sqrt((rise * rise) - 1));

    /// <summary>The least whole number of bits above, at least 1; infinite beyond <see cref="MostBits"/> or where there is no other
    /// noise.</summary>
    public static double BitsNeeded(double wanted) =>
        Math.Max(1, Math.Floor(wanted) + 1) is var bits && bits <= MostBits ? bits : double.PositiveInfinity;
}
