namespace FrontEnd.Quantities;

/// <summary>An angle, such as a phase or a phase margin, held in degrees.</summary>
public readonly record struct Angle : IQuantity
{
    private Angle(double degrees) => Degrees = Require.Finite(degrees);

    public double Degrees { get; }
    public double Radians => Degrees / (180 / Math.PI);
    double IQuantity.SiValue => Degrees;
    string IQuantity.SiUnit => "°";

    public static Angle FromDegrees(double degrees) => new(degrees);
    public static Angle FromRadians(double radians) => new(radians * (180 / Math.PI));
}
