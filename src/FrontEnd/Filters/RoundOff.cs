namespace FrontEnd.Filters;

/// <summary>How large a node can grow for an input of at most 1.</summary>
/// <param name="L1">Σ|h|: the bound for any input that stays within ±1. Scaling by it makes overflow impossible.</param>
/// <param name="L2">√(Σh²): rms growth of white noise.</param>
/// <param name="LInfinity">max|H|: growth of a sine. Scaling by it suffices for steady sines.</param>
public sealed record OverflowNorms(double L1, double L2, double LInfinity)
{
    /// <summary>Bits of headroom that rule out overflow: ⌈log2 L1⌉, at least 0.</summary>
    public int SafeBits => Math.Max(0, (int)Math.Ceiling(Math.Log2(L1)));
}

/// <summary>What becomes of the rounding in each section: of h, the impulse response of 1/A_i·Π H_j, j &gt; i.</summary>
/// <param name="Gains">Σh², section by section.</param>
/// <param name="Growths">Σ|h|, section by section.</param>
internal sealed record RoundOffPaths(IReadOnlyList<double> Gains, IReadOnlyList<double> Growths)
{
    /// <summary>Each rounding is at most half a step: ½·Σ_i Σ|h_i|.</summary>
    internal double StateBound => 0.5 * Growths.Sum();

    /// <summary>Bits below the LSB for the section that needs most: ½·log2 Σh².</summary>
    internal double ExtraBits => Gains.Count == 0 ? 0 : Gains.Max(gain => 0.5 * Math.Log2(gain));

    /// <summary>Variance at the output in LSB² of the sample, the last rounding included.</summary>
    internal double Variance(FixedFormat format) => RoundOff.Variance(Gains, format);
}

/// <summary>The levels at which a fixed-point section by itself hangs with zero input, in LSB of the sample: what to expect, from the rounding
/// of one word. <see cref="RoundOff.HangingBound"/> is the bound, and holds for cascades.</summary>
/// <param name="Constant">A constant level up to this stays for ever: 0.5/|1 + a1 + a2|.</param>
/// <param name="Alternating">The same for a level of alternating sign: 0.5/|1 − a1 + a2|.</param>
/// <param name="Oscillating">Amplitude of an oscillation at the pole frequency, complex poles only: 0.5/(1 − a2); null for real
/// poles.</param>
/// <remarks>Source: L. B. Jackson, An analysis of limit cycles due to multiplication rounding in recursive digital filters, Proc. 7th
/// Allerton Conf. (1969) (from memory). With a single rounding of the sum, as here,
/// a constant is no larger than the first; oscillations up to 1.6 times the third have been found (a notch at 50 Hz, Q 10, 500
/// S/s).</remarks>
internal sealed record DeadBand(double Constant, double Alternating, double? Oscillating);

/// <summary>Round-off: what finite words add to the output, forecast from the coefficients.</summary>
internal static class RoundOff
{
    /// <summary>Variance at the filter's output for unit variance of the rounding in one section: Σh², h the impulse response of 1/A_i·Π
    /// H_j, j &gt; i.</summary>
    /// <remarks>Rounding enters where the section's sum is rounded and passes through its own poles and all that follows. ½·log2 of it is
    /// the number of extra bits the states need.
    /// Source: A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, section 6.9 (from memory).</remarks>
    public static double NoiseGain(SecondOrderSections sections, int section) => Gains(sections)[section];

    /// <summary>The same of all sections together.</summary>
    internal static double NoiseGain(SecondOrderSections sections) => Gains(sections).Sum();

    /// <summary>Level above which a filter in fixed point cannot stay with nothing at its input, in LSB of the sample: a whole number of
    /// them.</summary>
    /// <param name="filter">Rounded to fixed point, poles inside the circle.</param>
    /// <param name="behind">Sections that its output passes besides.</param>
    /// <remarks>Once the start has died away the output is what the roundings make, each at most half a step of the states: ½·2^(−F)·Σ_i
    /// Σ|h_i|, h_i the impulse response of 1/A_i·Π H_j, j &gt; i; rounding F bits to the sample takes at most to the next whole number. It holds
    /// for any cycle, in both forms, as both round the same sum once. Derived; a simulation may stay below it.</remarks>
    public static double HangingBound(QuantisedFilter filter, SecondOrderSections? behind = null)
    {
        FixedFormat format = filter.Format as FixedFormat
            ?? throw new ArgumentOutOfRangeException(nameof(filter), filter.Format, "The filter must be rounded to fixed point.");
        return HangingAt(StateBound(filter, behind), format.StateFraction);
    }

    /// <summary>The same for another number of bits below the LSB, from the bound in steps of the states.</summary>
    internal static double HangingAt(double steps, int stateFraction) => Math.Floor(
        (steps * Math.Pow(2, -stateFraction) * (1 + 1e-9)) + (stateFraction == 0 ? 0 : 0.5));

    /// <summary>½·Σ_i Σ|h_i|: the bound in steps of the states.</summary>
    internal static double StateBound(QuantisedFilter filter, SecondOrderSections? behind = null) =>
        0.5 * Growths(SecondOrderSections.Cascade(filter.Sections, behind ?? SecondOrderSections.Empty)).Take(filter.Sections.Count).Sum();

    /// <summary>From the rounding in every section of a filter to its output.</summary>
    internal static RoundOffPaths Paths(QuantisedFilter filter) => new(Gains(filter.Sections), Growths(filter.Sections));

    /// <summary>Bits below the LSB that a section's states need to keep its round-off at the size of one rounding: ½·log2 of the noise
    /// gain.</summary>
    public static double ExtraBits(SecondOrderSections sections, int section) => 0.5 * Math.Log2(NoiseGain(sections, section));

    /// <summary>Variance of the round-off at the output of a fixed-point runner, in LSB² of the sample: Σ G_i·2^(−2F)/12 + (1 −
    /// 2^(−2F))/12, the second for the last rounding from F bits below the LSB.</summary>
    /// <remarks>Rounding half up from F bits also shifts the mean, by 2^(−F)/2 LSB where F &gt; 0; the shift is not in the
    /// variance.</remarks>
    public static double FixedVariance(QuantisedFilter filter)
    {
        if (filter.Format is not FixedFormat format)
        {
            throw new ArgumentOutOfRangeException(nameof(filter), filter.Format, "The filter must be rounded to fixed point.");
        }

        return Variance(Gains(filter.Sections), format);
    }

    /// <summary>Forecast variance of the round-off of a floating-point filter whose input carries a large constant, in the sample's units
    /// squared.</summary>
    /// <param name="sections">The filter; the constant is followed through its gains at 0 Hz.</param>
    /// <param name="offset">The constant at the input, such as an electrode offset in counts.</param>
    /// <param name="format"><see cref="NumberFormat.Single"/> or <see cref="NumberFormat.Double"/>.</param>
    /// <remarks>Each product or sum of size v is rounded with variance ulp(v)²/12. The transposed form adds numerator products of the size
    /// of the constant to its sums: their rounding meets the poles alone, gain Σh²(1/A).
    /// Direct form I forms b0·x, b1·x, b2·x: with b = b0·(1, ∓2, 1) the three roundings of one sample are multiples of each other and pass
    /// through the numerator's own zeros; what they leave is one rounding of the size of the
    /// input times Σh²((1 ∓ z⁻¹)²/A). Holds within a factor of about 2 (measured); a constant that never varies rounds always alike and is
    /// not noise. Derived.</remarks>
    public static double FloatVariance(SecondOrderSections sections, FilterForm form, double offset, NumberFormat format)
    {
        double Rounding(double value) => RoundingOf(value, format);
        CascadeSpectrum spectrum = CascadeSpectrum.Of(TurnedRound(sections));
        double[] alone = Turn(spectrum.Means(PolesOf));
        double[] shapes = form == FilterForm.DirectI ? Turn(spectrum.Means(s => IsShaped(s) ? new Biquad(1, s.B1 / s.B0, 1, s.A1, s.A2) : PolesOf(s))) : alone;
        double variance = 0;
        double level = Math.Abs(offset);
        for (int i = 0; i < sections.Count; i++)
        {
            Biquad s = sections[i];
            double output = level * Math.Abs(s.DcGain);
            double poles = alone[i];
            if (form == FilterForm.TransposedDirectII)
            {
                double second = Math.Abs((s.B2 * level) - (s.A2 * output));
                double first = Math.Abs((s.B1 * level) - (s.A1 * output) + (s.B2 * level) - (s.A2 * output));
                variance += poles * (
                Rounding(s.B2 * level) + Rounding(second) + Rounding(s.B1 * level) + Rounding(first) + Rounding(s.B0 * level)
                    + Rounding(output));
            }
            else
            {
                double numerator = IsShaped(s) ? shapes[i] : 3 * poles;
                variance += (numerator * Rounding(s.B0 * level)) + (poles * Rounding(output) * 3);
            }

            level = output;
        }

        return variance;
    }

    /// <summary>Norms from the input to the output of each section, in order.</summary>
    public static IReadOnlyList<OverflowNorms> Overflow(SecondOrderSections sections)
    {
        (double[] means, double[] peaks) = CascadeSpectrum.Of(sections).AtOutputs();
        double[] growth = CascadeGrowth.Of(sections, polesAlone: false);
        return [.. growth.Select((l1, i) => new OverflowNorms(l1, Math.Sqrt(means[i]), peaks[i]))];
    }

    /// <summary>The levels at which a section can hang, for a runner with so many bits below the LSB.</summary>
    public static DeadBand DeadBandOf(Biquad section, int stateFraction = 0)
    {
        double half = 0.5 * Math.Pow(2, -stateFraction);
        bool complex = section.A1 * section.A1 < 4 * section.A2;
        return new DeadBand(
            half / Math.Abs(1 + section.A1 + section.A2), half / Math.Abs(1 - section.A1 + section.A2), complex
                ? half / (1 - section.A2)
                : null);
    }

    /// <summary>Σh² of every section's rounding. What follows a section may as well stand before it: in the cascade turned round each rounding's
    /// path ends behind the section's own poles, and the products up to there serve all.</summary>
    private static double[] Gains(SecondOrderSections sections) => Turn(CascadeSpectrum.Of(TurnedRound(sections)).Means(PolesOf));

    /// <summary>Σ|h| likewise.</summary>
    private static double[] Growths(SecondOrderSections sections) => Turn(CascadeGrowth.Of(TurnedRound(sections), polesAlone: true));

    private static double[] Turn(double[] values)
    {
        Array.Reverse(values);
        return values;
    }

    /// <summary>1/A.</summary>
    private static Biquad PolesOf(Biquad s) => new(1, 0, 0, s.A1, s.A2);

    private static SecondOrderSections TurnedRound(SecondOrderSections sections) => new(sections.Sections.Reverse());

    internal static double Variance(IReadOnlyList<double> gains, FixedFormat format)
    {
        double step = Math.Pow(2, -2 * format.StateFraction) / 12;
        return (1.0 / 12) - step + (step * gains.Sum());
    }

    /// <summary>True for b0·(1, ∓2, 1); a section that lets nothing through has no zeros to pass through either.</summary>
    private static bool IsShaped(Biquad s) => s.B0 != 0 && s.B2 == s.B0 && Math.Abs(s.B1) == 2 * Math.Abs(s.B0);

    private static double RoundingOf(double value, NumberFormat format)
    {
        double size = Math.Abs(value);
        double ulp = format switch
        {
            SingleFormat => (double)MathF.BitIncrement((float)size) - (float)size,
            DoubleFormat => Math.BitIncrement(size) - size,
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "The format is not floating point."),
        };
        return ulp * ulp / 12;
    }
}
