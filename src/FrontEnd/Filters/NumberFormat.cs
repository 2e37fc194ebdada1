namespace FrontEnd.Filters;

/// <summary>The numbers a digital filter is computed with.</summary>
public abstract record NumberFormat
{
    /// <summary>64-bit floating point.</summary>
    public static readonly NumberFormat Double = new DoubleFormat();

    /// <summary>32-bit floating point, 24 bits of mantissa.</summary>
    public static readonly NumberFormat Single = new SingleFormat();

    /// <summary>32-bit words.</summary>
    public static readonly FixedFormat Q31 = new(32);

    /// <summary>16-bit words.</summary>
    public static readonly FixedFormat Q15 = new(16);

    private protected NumberFormat()
    {
    }
}

/// <summary>64-bit floating point.</summary>
internal sealed record DoubleFormat : NumberFormat;

/// <summary>32-bit floating point.</summary>
internal sealed record SingleFormat : NumberFormat;

/// <summary>Fixed point, two's complement.</summary>
/// <param name="WordBits">Bits of a coefficient word, 8…32.</param>
/// <remarks>A section's coefficients share a binary point, chosen so that the largest fits: |a1| is near 2 in most sections, so that 16-bit
/// words have 14 fraction bits ("Q14") and not 15.</remarks>
public sealed record FixedFormat(int WordBits) : NumberFormat
{
    /// <summary>Most bits below the sample's LSB that a filter may be given.</summary>
    public const int MostStateFraction = 16;

    /// <summary>Fraction bits of the coefficients; null to choose them section by section.</summary>
    public int? CoefficientFraction { get; init; }

    /// <summary>Fraction bits kept below the sample's LSB in the states and between sections.</summary>
    public int StateFraction { get; init; }

    /// <summary>Bits of a state word, fraction bits included; a state beyond it saturates. 32 unless set.</summary>
    public int StateBits { get; init; } = 32;
}
