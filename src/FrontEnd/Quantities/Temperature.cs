namespace FrontEnd.Quantities;

/// <summary>An absolute temperature. Symbol T, held in kelvins. The default value is 0 K.</summary>
public readonly record struct Temperature : IQuantity
{
    private Temperature(double kelvins) => Kelvins = Require.Finite(kelvins);

    public double Kelvins { get; }
    double IQuantity.SiValue => Kelvins;
    string IQuantity.SiUnit => "K";

    public static Temperature FromKelvins(double kelvins) => new(kelvins);

    public double Celsius => Kelvins - 273.15;

    public static Temperature FromCelsius(double celsius) => new(celsius + 273.15);
}
