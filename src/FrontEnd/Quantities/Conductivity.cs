namespace FrontEnd.Quantities;

/// <summary>How well a tissue conducts. Symbol σ, held in S/m.</summary>
public readonly record struct Conductivity : IQuantity
{
    private Conductivity(double siemensPerMetre) => SiemensPerMetre = Require.Finite(siemensPerMetre);

    public double SiemensPerMetre { get; }
    double IQuantity.SiValue => SiemensPerMetre;
    string IQuantity.SiUnit => "S/m";

    public static Conductivity FromSiemensPerMetre(double siemensPerMetre) => new(siemensPerMetre);
}
