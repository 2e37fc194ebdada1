namespace FrontEnd.Quantities;

/// <summary>A part of something, told in percent also where it is more than the whole: a mismatch of 135 %. Held as a fraction.</summary>
public readonly record struct Share : IQuantity
{
    private Share(double fraction) => Fraction = Require.Finite(fraction);

    public double Fraction { get; }
    double IQuantity.SiValue => Fraction;
    string IQuantity.SiUnit => "1";

    public static Share FromFraction(double fraction) => new(fraction);
}
