namespace FrontEnd.Quantities;

/// <summary>A dc or instantaneous current. Symbol I, held in amperes.</summary>
public readonly record struct Current : IQuantity
{
    private Current(double amperes) => Amperes = Require.Finite(amperes);

    public double Amperes { get; }
    public double Milliamperes => Amperes * 1e3;
    public double Microamperes => Amperes * 1e6;
    public double Nanoamperes => Amperes * 1e9;
    double IQuantity.SiValue => Amperes;
    string IQuantity.SiUnit => "A";

    public static Current FromAmperes(double amperes) => new(amperes);
    public static Current FromMilliamperes(double milliamperes) => new(milliamperes / 1e3);
    public static Current FromMicroamperes(double microamperes) => new(microamperes / 1e6);
    public static Current FromNanoamperes(double nanoamperes) => new(nanoamperes / 1e9);

    public static Voltage operator *(Current left, Resistance right) => Voltage.FromVolts(left.Amperes * right.Ohms);
}
