namespace FrontEnd.Quantities;

/// <summary>A length, held in metres.</summary>
public readonly record struct Length : IQuantity
{
    private Length(double metres) => Metres = Require.Finite(metres);

    public double Metres { get; }
    public double Centimetres => Metres * 1e2;
    double IQuantity.SiValue => Metres;
    string IQuantity.SiUnit => "m";

    public static Length FromMetres(double metres) => new(metres);
    public static Length FromCentimetres(double centimetres) => new(centimetres / 1e2);
}
