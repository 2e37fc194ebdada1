namespace FrontEnd.Quantities;

/// <summary>A ratio on a logarithmic scale. Made from a voltage ratio or a power ratio, so that 20 log and 10 log cannot be
/// confused, or by <see cref="FromStated"/> from a number of decibels that stands somewhere.</summary>
/// <remarks>A level with a reference (dBV) is another thing and not this type.</remarks>
public readonly record struct Decibels : IQuantity
{
    private Decibels(double value) => Value = Require.Finite(value);

    /// <summary>The number of decibels.</summary>
    public double Value { get; }
    double IQuantity.SiValue => Value;
    string IQuantity.SiUnit => "dB";

    /// <summary>The voltage ratio that this is, 10^(dB/20).</summary>
    public double VoltageRatio => Math.Pow(10, Value / 20);

    public static Decibels FromVoltageRatio(double ratio) => new(20 * Math.Log10(Require.Positive(ratio)));

    public static Decibels FromPowerRatio(double ratio) => new(10 * Math.Log10(Require.Positive(ratio)));

    /// <summary>A figure that someone already stated in decibels, such as a data sheet's rejection.</summary>
    public static Decibels FromStated(double decibels) => new(decibels);
}
