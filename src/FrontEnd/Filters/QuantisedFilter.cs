using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>Where a section's poles stand.</summary>
public enum PoleStanding
{
    InsideCircle,

    /// <summary>On the unit circle: what goes in stays for ever; a pole at 1 turns a high-pass of second order into one of first.</summary>
    OnCircle,

    /// <summary>Outside: the output grows without bound.</summary>
    OutsideCircle,
}

/// <summary>A section before and after its coefficients were rounded.</summary>
/// <param name="Ideal">As designed.</param>
/// <param name="Rounded">As the machine holds it.</param>
/// <param name="FractionBits">Binary places of the coefficients; null for floating point.</param>
/// <param name="Words">b0 b1 b2 a1 a2 as whole numbers, coefficient × 2^fraction bits; empty for floating point.</param>
/// <param name="PoleMovement">Largest distance a pole has moved.</param>
/// <param name="Standing">Where the rounded poles are, decided exactly.</param>
/// <param name="DcZeroLost">The design has gain 0 at 0 Hz and the rounded section has not: drift comes through.</param>
/// <param name="Saturated">A coefficient did not fit into its word.</param>
public sealed record QuantisedSection(
    Biquad Ideal, Biquad Rounded, int? FractionBits, IReadOnlyList<long> Words, double PoleMovement, PoleStanding Standing, bool DcZeroLost,
    bool Saturated);

/// <summary>A digital filter with its coefficients rounded to a number format, analysed anew.</summary>
public sealed class QuantisedFilter
{
    private QuantisedFilter(SecondOrderSections ideal, NumberFormat format, IReadOnlyList<QuantisedSection> details)
    {
        Ideal = ideal;
        Format = format;
        Details = details;
        Sections = new SecondOrderSections(details.Select(d => d.Rounded));
    }

    /// <summary>As designed.</summary>
    public SecondOrderSections Ideal { get; }

    /// <summary>The word that its coefficients are rounded to.</summary>
    public NumberFormat Format { get; }

    /// <summary>The filter as the machine holds it; its response is the one to be shown.</summary>
    public SecondOrderSections Sections { get; }

    /// <summary>Section by section, before and after rounding.</summary>
    public IReadOnlyList<QuantisedSection> Details { get; }

    /// <summary>Gain at 0 Hz of the rounded filter; null with a pole there.</summary>
    public double? DcGain => Details.Any(d => 1 + d.Rounded.A1 + d.Rounded.A2 == 0) ? null : Sections.DcGain;

    /// <summary>The worst section's.</summary>
    public PoleStanding Standing => Details.Count == 0 ? PoleStanding.InsideCircle : Details.Max(d => d.Standing);

    /// <param name="keepDcZero">Force b1 = −(b0 + b2) where the design has gain 0 at 0 Hz, so that rounding cannot let the drift
    /// through.</param>
    public static QuantisedFilter Of(SecondOrderSections sections, NumberFormat format, bool keepDcZero = true) =>
        new(sections, format, [.. sections.Sections.Select(s => Round(s, format, keepDcZero))]);

    /// <summary>Binary places that let the largest coefficient of a section fit into a word: word − 1 − ⌈log2 |c|⌉, and one less where c
    /// rounds up to the bound.</summary>
    public static int FractionFor(Biquad section, int wordBits) =>
        FractionFor([section.B0, section.B1, section.B2, section.A1, section.A2], wordBits);

    internal static int FractionFor(ReadOnlySpan<double> coefficients, int wordBits)
    {
        double largest = 0;
        foreach (double coefficient in coefficients)
        {
            largest = Math.Max(largest, Math.Abs(coefficient));
        }

        int bits = wordBits - 1;
        while (Math.Pow(2, wordBits - 1) - 1 < Math.Round(largest * Math.Pow(2, bits)) && -wordBits < bits)
        {
            bits--;
        }

        return bits;
    }

    private static QuantisedSection Round(Biquad ideal, NumberFormat format, bool keepDcZero)
    {
        bool hasDcZero = ideal.HasDcZero;
        (Biquad rounded, int? fraction, IReadOnlyList<long> words, bool saturated) = format switch
        {
            DoubleFormat => (ideal, null, (IReadOnlyList<long>)[], false),
            SingleFormat => (Single(ideal, keepDcZero && hasDcZero), null, (IReadOnlyList<long>)[], false),
            FixedFormat f => Fixed(ideal, f, keepDcZero && hasDcZero),
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "The format is not handled."),
        };
        return new QuantisedSection(ideal, rounded, fraction, words, Movement(ideal, rounded), StandingOf(rounded),
            hasDcZero && rounded.B0 + rounded.B1 + rounded.B2 != 0, saturated);
    }

    private static Biquad Single(Biquad s, bool keep)
    {
        var rounded = new Biquad((float)s.B0, (float)s.B1, (float)s.B2, (float)s.A1, (float)s.A2);
        return keep ? rounded with { B1 = (float)-(rounded.B0 + rounded.B2) } : rounded;
    }

    private static (Biquad Rounded, int? Fraction, IReadOnlyList<long> Words, bool Saturated) Fixed(Biquad s, FixedFormat format, bool keep)
    {
        int fraction = format.CoefficientFraction ?? FractionFor(s, format.WordBits);
        double unit = Math.Pow(2, fraction);
        double bound = Math.Pow(2, format.WordBits - 1);
        bool saturated = false;
        long[] words = [Word(s.B0), Word(s.B1), Word(s.B2), Word(s.A1), Word(s.A2)];
        if (keep)
        {
            words[1] = -(words[0] + words[2]);
            saturated |= words[1] < -bound || bound - 1 < words[1];
        }

        double[] c = [.. words.Select(w => w / unit)];
        return (new Biquad(c[0], c[1], c[2], c[3], c[4]), fraction, words, saturated);

        long Word(double value)
        {
            double whole = Math.Round(value * unit, MidpointRounding.AwayFromZero);
            saturated |= whole < -bound || bound - 1 < whole;
            return (long)Math.Clamp(whole, -bound, bound - 1);
        }
    }

    /// <summary>Inside where |a2| &lt; 1 and |a1| &lt; 1 + a2. Rounded coefficients are short binary numbers, so the comparison is
    /// exact.</summary>
    private static PoleStanding StandingOf(Biquad s)
    {
        if (Math.Abs(s.A2) < 1 && Math.Abs(s.A1) < 1 + s.A2)
        {
            return PoleStanding.InsideCircle;
        }

        return Math.Abs(s.A2) <= 1 && Math.Abs(s.A1) <= 1 + s.A2 ? PoleStanding.OnCircle : PoleStanding.OutsideCircle;
    }

    private static double Movement(Biquad ideal, Biquad rounded)
    {
        (Complex a, Complex b) = ideal.Poles;
        (Complex c, Complex d) = rounded.Poles;
        double straight = Math.Max(Complex.Abs(a - c), Complex.Abs(b - d));
        double crossed = Math.Max(Complex.Abs(a - d), Complex.Abs(b - c));
        return Math.Min(straight, crossed);
    }
}
