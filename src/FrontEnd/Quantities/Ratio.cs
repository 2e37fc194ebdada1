namespace FrontEnd.Quantities;

/// <summary>A number without a unit: a gain, a share, a tolerance. Held as a fraction (5 % is 0.05).</summary>
public readonly record struct Ratio : IQuantity
{
    private Ratio(double fraction) => Fraction = Require.Finite(fraction);

    public double Fraction { get; }
    public double Percent => Fraction * 1e2;
    double IQuantity.SiValue => Fraction;
    string IQuantity.SiUnit => "1";

    public static Ratio FromFraction(double fraction) => new(fraction);
    public static Ratio FromPercent(double percent) => new(percent / 1e2);
}
