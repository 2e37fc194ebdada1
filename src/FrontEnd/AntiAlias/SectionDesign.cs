namespace FrontEnd.AntiAlias;

/// <summary>Exact part values of a low-pass section for given capacitors, with an ideal op-amp.</summary>
/// <remarks>Source: B. Carter, R. Mancini (eds.), Op Amps for Everyone, design reference SLOD006, section 16.3; S. Franco, Design with
/// Operational Amplifiers and Analog Integrated Circuits, chapter 3
/// (worked examples of both are checked). The section is 1/(1 + a·s + b·s²), a = 1/(Q·ω0), b = 1/ω0².</remarks>
internal static class SectionDesign
{
    /// <summary>First order: R = 1/(2π·f0·C).</summary>
    public static Resistance Rc(Frequency pole, Capacitance c) => Resistance.FromOhms(1 / (2 * Math.PI * pole.Hertz * c.Farads));

    /// <summary>Unity-gain Sallen–Key: R1 and R2 are the roots of C1·C2·R² − a·C1·R + b = 0; null where C1 &lt; 4Q²·C2.</summary>
    /// <param name="c1">To the output.</param>
    /// <param name="c2">To common; the smaller.</param>
    /// <returns>R1 the larger; exchanging the two leaves the ideal response as it is.</returns>
    public static (Resistance R1, Resistance R2)? SallenKey(Frequency pole, double q, Capacitance c1, Capacitance c2)
    {
        double w0 = 2 * Math.PI * pole.Hertz;
        double sum = 1 / (q * w0 * c2.Farads);
        double product = 1 / (w0 * w0 * c1.Farads * c2.Farads);
        double discriminant = 0.25 - (product / (sum * sum));
        // C1 = 4Q²·C2 exactly gives equal resistors; rounding must not forbid it.
        if (discriminant < -1e-12)
        {
            return null;
        }

        double larger = sum * (0.5 + Math.Sqrt(Math.Max(0, discriminant)));
        return (Resistance.FromOhms(larger), Resistance.FromOhms(product / larger));
    }

    /// <summary>Gain of an equal-component Sallen–Key for a Q: K = 3 − 1/Q, from Q ½ (K = 1) up; below 3 at any Q.</summary>
    /// <remarks>With R1 = R2 and C1 = C2 the section is K/(1 + (3 − K)·sRC + (sRC)²). Source: SLOD006, section 16.3, special case of equal
    /// components (from memory).</remarks>
    public static double EqualGain(double q) => Math.Max(1, 3 - (1 / q));

    /// <summary>Multiple feedback with gain −H0: null where C1 &lt; 4Q²·(1 + H0)·C2.</summary>
    /// <param name="c1">From the middle node to common; the larger.</param>
    /// <param name="c2">From the inverting input to the output.</param>
    /// <param name="gain">H0 = R3/R1, above 0.</param>
    /// <remarks>b = R2·R3·C1·C2, a = C2·(R3 + R2·(1 + H0)). Of the two roots the smaller R2 is taken: the op-amp then sees the smaller
    /// resistance.</remarks>
    public static (Resistance R1, Resistance R2, Resistance R3)? MultipleFeedback(
        Frequency pole, double q, double gain, Capacitance c1, Capacitance c2)
    {
        double w0 = 2 * Math.PI * pole.Hertz;
        double a = 1 / (q * w0 * c2.Farads);
        double b = 1 / (w0 * w0 * c1.Farads * c2.Farads);
        double discriminant = 0.25 - (b * (1 + gain) / (a * a));
        if (discriminant < -1e-12)
        {
            return null;
        }

        double r3 = a * (0.5 + Math.Sqrt(Math.Max(0, discriminant)));
        double r2 = b / r3;
        return (Resistance.FromOhms(r3 / gain), Resistance.FromOhms(r2), Resistance.FromOhms(r3));
    }
}
