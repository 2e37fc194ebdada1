namespace FrontEnd.Quantities;

/// <summary>Dipole moment of cortex by its area. Symbol m, held in A·m/m², which is A/m; 1 nA·m/mm² is 1e-3 of it.</summary>
public readonly record struct DipoleDensity : IQuantity
{
    private DipoleDensity(double amperesPerMetre) => AmperesPerMetre = Require.Finite(amperesPerMetre);

    public double AmperesPerMetre { get; }
    public double NanoampereMetresPerSquareMillimetre => AmperesPerMetre * 1e3;
    double IQuantity.SiValue => AmperesPerMetre;
    string IQuantity.SiUnit => "A/m";

    public static DipoleDensity FromAmperesPerMetre(double amperesPerMetre) => new(amperesPerMetre);
    public static DipoleDensity FromNanoampereMetresPerSquareMillimetre(double nanoampereMetres) => new(nanoampereMetres / 1e3);
}
