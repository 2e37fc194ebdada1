namespace FrontEnd.Quantities;

/// <summary>An area. Symbol A, held in square metres.</summary>
public readonly record struct Area : IQuantity
{
    private Area(double squareMetres) => SquareMetres = Require.Finite(squareMetres);

    public double SquareMetres { get; }
    public double SquareCentimetres => SquareMetres * 1e4;
    double IQuantity.SiValue => SquareMetres;
    string IQuantity.SiUnit => "m²";

    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);
    public static Area FromSquareCentimetres(double squareCentimetres) => new(squareCentimetres / 1e4);
}
