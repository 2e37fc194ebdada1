using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Which of a Bessel filter's frequencies the corner is.</summary>
public enum BesselNormalisation
{
    /// <summary>Half power at the corner.</summary>
    Magnitude,

    /// <summary>Group delay 1/ω0 at 0 Hz: the corner is f0 = 1/(2π·delay).</summary>
    Delay,
}

/// <summary>Maximally flat group delay: H = θ_n(0)/θ_n(s), θ_n the reverse Bessel polynomial.</summary>
/// <remarks>Source: W. E. Thomson, Delay networks having maximally flat frequency characteristics, Proc. IEE 96 (1949) 487 (from memory).
/// Accuracy of the poles: 2e-10 (all printed digits) against C. R. Bond's tables, orders 1 to 10; a few units in the last place up to order
/// 20.</remarks>
internal sealed record BesselPrototype(int Order, BesselNormalisation Normalisation = BesselNormalisation.Magnitude) : Prototype(Order)
{
    private static readonly Lazy<Complex[]>[] DelayPoles =
        [.. Enumerable.Range(0, 21).Select(n => new Lazy<Complex[]>(() => n == 0 ? [] : BesselPolynomial.UpperRoots(n)))];

    private static readonly Lazy<double>[] HalfPower =
        [.. Enumerable.Range(0, 21).Select(n => new Lazy<double>(() => n == 0 ? 1 : HalfPowerFrequency(n)))];

    public override string Family => "Bessel";

    public override string CornerMeaning => Normalisation switch
    {
        BesselNormalisation.Magnitude => "-3 dB (half power)",
        BesselNormalisation.Delay => "1/(2π·group delay at 0 Hz)",
        _ => throw new InvalidOperationException($"Normalisation {Normalisation} is not handled."),
    };

    public override ZeroPoleGain Normalised() => Normalisation switch
    {
        BesselNormalisation.Magnitude => Scaled(Order, HalfPower[Order].Value),
        BesselNormalisation.Delay => Scaled(Order, 1),
        _ => throw new InvalidOperationException($"Normalisation {Normalisation} is not handled."),
    };

    /// <summary>Half-power frequency over 1/delay: what one normalisation is in terms of the other.</summary>
    public double HalfPowerOverDelayFrequency => HalfPower[Order].Value;

    private static ZeroPoleGain Scaled(int order, double divisor)
    {
        Complex[] upper = DelayPoles[order].Value;
        double? real = order % 2 == 1 ? upper[^1].Real / divisor : null;
        return FromHalves([], upper.Take(order / 2).Select(p => p / divisor), real, 1);
    }

    private static double HalfPowerFrequency(int order)
    {
        ZeroPoleGain delay = Scaled(order, 1);
        return MathExtra.Bisect(w => Complex.Abs(delay.At(new Complex(0, w))) - Math.Sqrt(0.5), 0.1, 20);
    }
}
