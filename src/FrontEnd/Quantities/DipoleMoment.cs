namespace FrontEnd.Quantities;

/// <summary>The moment of a current dipole: current times the distance from its sink to its source. Symbol p, held in A·m.</summary>
public readonly record struct DipoleMoment : IQuantity
{
    private DipoleMoment(double ampereMetres) => AmpereMetres = Require.Finite(ampereMetres);

    public double AmpereMetres { get; }
    public double NanoampereMetres => AmpereMetres * 1e9;
    double IQuantity.SiValue => AmpereMetres;
    string IQuantity.SiUnit => "A·m";

    public static DipoleMoment FromAmpereMetres(double ampereMetres) => new(ampereMetres);
    public static DipoleMoment FromNanoampereMetres(double nanoampereMetres) => new(nanoampereMetres / 1e9);
}
