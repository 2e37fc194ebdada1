namespace FrontEnd.Quantities;

/// <summary>A length of time. Symbol t, held in seconds.</summary>
public readonly record struct Duration : IQuantity
{
    private Duration(double seconds) => Seconds = Require.Finite(seconds);

    public double Seconds { get; }
    public double Milliseconds => Seconds * 1e3;
    public double Hours => Seconds / 3600;
    double IQuantity.SiValue => Seconds;
    string IQuantity.SiUnit => "s";

    public static Duration FromSeconds(double seconds) => new(seconds);
    public static Duration FromMilliseconds(double milliseconds) => new(milliseconds / 1e3);
    public static Duration FromHours(double hours) => new(hours * 3600);
}
