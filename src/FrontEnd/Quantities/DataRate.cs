namespace FrontEnd.Quantities;

/// <summary>A data rate, held in bits per second.</summary>
public readonly record struct DataRate : IQuantity
{
    private DataRate(double bitsPerSecond) => BitsPerSecond = Require.Finite(bitsPerSecond);

    public double BitsPerSecond { get; }
    double IQuantity.SiValue => BitsPerSecond;
    string IQuantity.SiUnit => "bit/s";

    public static DataRate FromBitsPerSecond(double bitsPerSecond) => new(bitsPerSecond);
}
