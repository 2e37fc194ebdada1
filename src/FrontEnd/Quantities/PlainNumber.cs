namespace FrontEnd.Quantities;

/// <summary>A number that is neither a gain nor a share: a count, an exponent, a correlation.</summary>
public readonly record struct PlainNumber : IQuantity
{
    private PlainNumber(double number) => Number = Require.Finite(number);

    public double Number { get; }
    double IQuantity.SiValue => Number;
    string IQuantity.SiUnit => "1";

    public static PlainNumber FromNumber(double number) => new(number);
}
