namespace FrontEnd.Quantities;

/// <summary>The rms of an alternating magnetic flux density. Symbol B, held in teslas rms.</summary>
public readonly record struct MagneticFluxDensity : IQuantity
{
    private MagneticFluxDensity(double teslas) => Teslas = Require.Finite(teslas);

    public double Teslas { get; }
    public double Microteslas => Teslas * 1e6;
    double IQuantity.SiValue => Teslas;
    string IQuantity.SiUnit => "T";

    public static MagneticFluxDensity FromTeslas(double teslas) => new(teslas);
    public static MagneticFluxDensity FromMicroteslas(double microteslas) => new(microteslas / 1e6);
}
