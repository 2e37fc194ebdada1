namespace FrontEnd.Quantities;

/// <summary>A number of bits: a word length or a resolution. Need not be whole.</summary>
public readonly record struct BitCount : IQuantity
{
    private BitCount(double bits) => Bits = Require.Finite(bits);

    public double Bits { get; }
    double IQuantity.SiValue => Bits;
    string IQuantity.SiUnit => "bit";

    public static BitCount FromBits(double bits) => new(bits);
}
