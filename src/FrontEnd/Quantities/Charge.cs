namespace FrontEnd.Quantities;

/// <summary>An electric charge, such as a battery's capacity, held in coulombs.</summary>
public readonly record struct Charge : IQuantity
{
    private Charge(double coulombs) => Coulombs = Require.Finite(coulombs);

    public double Coulombs { get; }
    public double MilliampereHours => Coulombs / 3.6;
    double IQuantity.SiValue => Coulombs;
    string IQuantity.SiUnit => "C";

    public static Charge FromCoulombs(double coulombs) => new(coulombs);
    public static Charge FromMilliampereHours(double milliampereHours) => new(milliampereHours * 3.6);

    public static Duration operator /(Charge left, Current right) => Duration.FromSeconds(left.Coulombs / right.Amperes);
}
