namespace FrontEnd.Quantities;

/// <summary>An absolute temperature. Symbol T, held in kelvins. The default value is 0 K.</summary>
public readonly record struct Temperature : IQuantity
{
    /// <summary>0 °C in kelvins, exact by definition. SI Brochure, 9th edition (2019), section 2.3.1; from memory.</summary>
    public const double ZeroCelsius = 273.15;

    private Temperature(double kelvins) => Kelvins = Require.Finite(kelvins);

    public double Kelvins { get; }
    double IQuantity.SiValue => Kelvins;
    string IQuantity.SiUnit => "K";

    public static Temperature FromKelvins(double kelvins) => new(kelvins);

    public double Celsius => Kelvins - ZeroCelsius;

    public static Temperature FromCelsius(double celsius) => new(celsius + ZeroCelsius);
}
