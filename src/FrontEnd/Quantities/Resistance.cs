namespace FrontEnd.Quantities;

/// <summary>A resistance. Symbol R, held in ohms.</summary>
public readonly record struct Resistance : IQuantity
{
    private Resistance(double ohms) => Ohms = Require.Finite(ohms);

    public double Ohms { get; }
    public double Kilohms => Ohms / 1e3;
    public double Megohms => Ohms / 1e6;
    double IQuantity.SiValue => Ohms;
    string IQuantity.SiUnit => "Ω";

    public static Resistance FromOhms(double ohms) => new(ohms);
    public static Resistance FromKilohms(double kilohms) => new(kilohms * 1e3);
    public static Resistance FromMegohms(double megohms) => new(megohms * 1e6);

    public static double operator /(Resistance left, Resistance right) => left.Ohms / right.Ohms;
    public static Resistance operator +(Resistance left, Resistance right) => new(left.Ohms + right.Ohms);
    public static Duration operator *(Resistance left, Capacitance right) => Duration.FromSeconds(left.Ohms * right.Farads);
}
