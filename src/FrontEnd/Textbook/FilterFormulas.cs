namespace FrontEnd.Textbook;

/// <summary>Corners, settling, folding and notches by the formulas of the textbooks.</summary>
internal static class FilterFormulas
{
    /// <summary>−3 dB frequency of one resistor and one capacitor, low-pass or high-pass, 1/(2πRC) [Hz].</summary>
    /// <remarks>Source: common practice, every circuit text.</remarks>
    public static TextbookFigure RcCorner(Resistance resistance, Capacitance capacitance) =>
        TextbookFigure.Of(1 / (2 * Math.PI * (resistance * capacitance).Seconds), "Hz", "1/(2πRC)",
            () => $"1/(2π · {Put.In(resistance)} · {Put.In(capacitance)})", Sources.CommonPractice);

    /// <summary>Pole frequency of a unity-gain Sallen–Key low-pass, f0 = 1/(2π√(R1R2C1C2)) [Hz].</summary>
    /// <remarks>R1 in–X, R2 X–P, C1 X–out, C2 P–common. Source: SLOD006, section 16.3.</remarks>
    public static TextbookFigure SallenKeyFrequency(Resistance r1, Resistance r2, Capacitance c1, Capacitance c2) =>
        TextbookFigure.Of(
            1 / (2 * Math.PI * Math.Sqrt((r1 * c1).Seconds * (r2 * c2).Seconds)),
            "Hz",
            "1/(2π√(R1·R2·C1·C2))",
            () => $"1/(2π√({Put.In(r1)} · {Put.In(r2)} · {Put.In(c1)} · {Put.In(c2)}))",
            Sources.SallenKey);

    /// <summary>Q of a Sallen–Key low-pass with the gain K = 1 + Rf/Rg, √(R1R2C1C2)/(C2·(R1 + R2) + R1C1·(1 − K)); 1/(3 − K) with equal
    /// resistors and equal capacitors.</summary>
    /// <remarks>R1 in–X, R2 X–P, C1 X–out, C2 P–common. Source: SLOD006, section 16.3.</remarks>
    public static TextbookFigure SallenKeyQ(Resistance r1, Resistance r2, Capacitance c1, Capacitance c2, double gain) =>
        TextbookFigure.Of(
            Math.Sqrt((r1 * c1).Seconds * (r2 * c2).Seconds) / (((r1 + r2) * c2).Seconds + ((r1 * c1).Seconds * (1 - gain))),
            "1",
            "√(R1·R2·C1·C2)/(C2·(R1 + R2) + R1·C1·(1 − K))",
            () => $"√({Put.In(r1)} · {Put.In(r2)} · {Put.In(c1)} · {Put.In(c2)})/({Put.In(c2)} · ({Put.In(r1)} + {Put.In(r2)}) + {Put.In(r1)} · {Put.In(c1)} · (1 − {Put.In(gain)}))",
            Sources.SallenKey);

    /// <summary>Loss that is left of a Sallen–Key's stop band far above the op-amp's bandwidth, against its gain at 0 Hz: 20·log10[K·(1 +
    /// R1/R2 + R1/Ro + R1/(Rf + Rg))] [dB]; a follower has no last term.</summary>
    /// <remarks>There the capacitors are shorts and the output is tied to common by Ro alone: input – R1 – node X, which is the output,
    /// with R2, Ro and the gain's resistors to common. Derived; the figure for a follower stands in the application report "Analysis of the
    /// Sallen-Key Architecture", SLOA024 (from memory).</remarks>
    /// <param name="load">Rf + Rg; null for a follower.</param>
    public static TextbookFigure SallenKeyFloor(Resistance r1, Resistance r2, Resistance output, double gain, Resistance? load)
    {
        double sum = 1 + (r1 / r2) + (r1 / output);
        return load is { } all
            ? TextbookFigure.Of(
                Put.Decibels(gain * (sum + (r1 / all))), "dB", "20·log10[K·(1 + R1/R2 + R1/Ro + R1/(Rf + Rg))]",
                () => $"20·log10[{Put.In(gain)} · (1 + {Put.In(r1)}/{Put.In(r2)} + {Put.In(r1)}/{Put.In(output)} + {Put.In(r1)}/{Put.In(all)})]",
                Sources.StopBandRise)
            : TextbookFigure.Of(
                Put.Decibels(sum), "dB", "20·log10(1 + R1/R2 + R1/Ro)",
                () => $"20·log10(1 + {Put.In(r1)}/{Put.In(r2)} + {Put.In(r1)}/{Put.In(output)})", Sources.StopBandRise);
    }

    /// <summary>Where a Sallen–Key's stop band turns up again, (√2·f0²·R1·GBW/Ro)^⅓ [Hz].</summary>
    /// <remarks>The wanted response falls as K·(f0/f)²; what comes through R1 to the closed-loop output impedance Ro·K·jf/GBW grows as
    /// K·f·Ro/(R1·GBW), a quarter turn away. The sum of the squares is least there. Derived; the growth with f is the argument of SLOA024
    /// (from memory). It holds where f0 is far below it and it is far below GBW.</remarks>
    public static TextbookFigure SallenKeyTurn(Frequency pole, Resistance r1, Resistance output, Frequency gainBandwidth) =>
        TextbookFigure.Of(
            Math.Cbrt(Math.Sqrt(2) * pole.Hertz * pole.Hertz * gainBandwidth.Hertz * (r1 / output)), "Hz", "(√2·f0²·GBW·R1/Ro)^⅓",
            () => $"(√2 · {Put.In(pole)}² · {Put.In(gainBandwidth)} · {Put.In(r1)}/{Put.In(output)})^⅓", Sources.StopBandRise);

    /// <summary>Q of a unity-gain Sallen–Key low-pass, √(R1R2C1C2)/(C2·(R1 + R2)).</summary>
    /// <remarks>R1 in–X, R2 X–P, C1 X–out, C2 P–common. Source: SLOD006, section 16.3.</remarks>
    public static TextbookFigure SallenKeyQ(Resistance r1, Resistance r2, Capacitance c1, Capacitance c2) =>
        TextbookFigure.Of(
            Math.Sqrt((r1 * c1).Seconds * (r2 * c2).Seconds) / ((r1 + r2) * c2).Seconds,
            "1",
            "√(R1·R2·C1·C2)/(C2·(R1 + R2))",
            () => $"√({Put.In(r1)} · {Put.In(r2)} · {Put.In(c1)} · {Put.In(c2)})/({Put.In(c2)} · ({Put.In(r1)} + {Put.In(r2)}))",
            Sources.SallenKey);

    /// <summary>Pole frequency of a multiple-feedback low-pass, f0 = 1/(2π√(R2R3C1C2)) [Hz].</summary>
    /// <remarks>R1 in–X, R3 X–out, R2 X–(−), C1 X–common, C2 (−)–out. Source: SLOD006, section 16.3, in our numbering of the
    /// parts.</remarks>
    public static TextbookFigure MultipleFeedbackFrequency(Resistance r2, Resistance r3, Capacitance c1, Capacitance c2) =>
        TextbookFigure.Of(
            1 / (2 * Math.PI * Math.Sqrt((r2 * c1).Seconds * (r3 * c2).Seconds)),
            "Hz",
            "1/(2π√(R2·R3·C1·C2))",
            () => $"1/(2π√({Put.In(r2)} · {Put.In(r3)} · {Put.In(c1)} · {Put.In(c2)}))",
            Sources.SallenKey);

    /// <summary>Q of a multiple-feedback low-pass, √(R2R3C1C2)/(C2·(R2 + R3 + R2R3/R1)).</summary>
    /// <remarks>Numbering as in <see cref="MultipleFeedbackFrequency"/>. Source: SLOD006, section 16.3.</remarks>
    public static TextbookFigure MultipleFeedbackQ(Resistance r1, Resistance r2, Resistance r3, Capacitance c1, Capacitance c2)
    {
        double loss = r2.Ohms + r3.Ohms + (r2.Ohms * (r3 / r1));
        return TextbookFigure.Of(
            Math.Sqrt((r2 * c1).Seconds * (r3 * c2).Seconds) / (c2.Farads * loss),
            "1",
            "√(R2·R3·C1·C2)/(C2·(R2 + R3 + R2·R3/R1))",
            () => $"√({Put.In(r2)} · {Put.In(r3)} · {Put.In(c1)} · {Put.In(c2)})/({Put.In(c2)} · {Put.In(loss, "Ω")})",
            Sources.SallenKey);
    }

    /// <summary>−3 dB frequency of a second-order low-pass, f0·√(a + √(a² + 1)), a = 1 − 1/(2Q²) [Hz].</summary>
    /// <remarks>f0 itself for Q = 1/√2. Source: derived from |H|² = 1/2.</remarks>
    public static TextbookFigure SecondOrderCorner(Frequency poleFrequency, double q)
    {
        double a = 1 - (1 / (2 * q * q));
        return TextbookFigure.Of(
            poleFrequency.Hertz * Math.Sqrt(a + Math.Sqrt((a * a) + 1)),
            "Hz",
            "f0·√(a + √(a² + 1)), a = 1 − 1/(2Q²)",
            () => $"{Put.In(poleFrequency)} · √({Put.In(a)} + √({Put.In(a)}² + 1))",
            Sources.Derived);
    }

    /// <summary>Factor by which the −3 dB frequency of one section lies above that of n equal ones in a row, 1/√(2^(1/n) − 1).</summary>
    /// <remarks>Source: SLOD006, section 16.2.</remarks>
    public static TextbookFigure EqualPoleFactor(int sections) =>
        TextbookFigure.Of(1 / Math.Sqrt(Math.Pow(2, 1.0 / Require.InRange(sections, 1, 100)) - 1), "1", "1/√(2^(1/n) − 1)",
            () => $"1/√(2^(1/{sections}) − 1)", Sources.OpAmpsCascade);

    /// <summary>Attenuation of a Butterworth low-pass, 10·log10(1 + (f/f_c)^2n) [dB].</summary>
    /// <remarks>Source: SLOD006, section 16.2.</remarks>
    public static TextbookFigure ButterworthAttenuation(int order, Frequency frequency, Frequency corner) =>
        TextbookFigure.Of(
            10 * Math.Log10(1 + Math.Pow(frequency / corner, 2 * Require.InRange(order, 1, 100))),
            "dB",
            "10·log10(1 + (f/f_c)^2n)",
            () => $"10·log10(1 + ({Put.In(frequency)}/{Put.In(corner)})^{2 * order})",
            Sources.Butterworth);

    /// <summary>Order of a Butterworth low-pass for an attenuation, log10(10^(A/10) − 1)/(2·log10(f_s/f_c)); the next whole number is to be
    /// built.</summary>
    /// <remarks>Source: derived from <see cref="ButterworthAttenuation"/>.</remarks>
    public static TextbookFigure ButterworthOrder(Decibels attenuation, Frequency stop, Frequency corner) =>
        TextbookFigure.Of(
            Math.Log10(Math.Pow(10, attenuation.Value / 10) - 1) / (2 * Math.Log10(stop / corner)),
            "1",
            "log10(10^(A/10) − 1)/(2·log10(f_stop/f_c))",
            () => $"log10(10^({Put.In(attenuation)}/10) − 1)/(2·log10({Put.In(stop)}/{Put.In(corner)}))",
            Sources.Derived);

    /// <summary>Time until a step through one high-pass has died down, RC·ln(V0/V_tol) [s].</summary>
    /// <remarks>Several poles in a row take longer and undershoot. Source: derived.</remarks>
    public static TextbookFigure Settling(Resistance resistance, Capacitance capacitance, Voltage step, Voltage tolerance) =>
        Settling(resistance * capacitance, step, tolerance);

    /// <summary>Time until a decaying exponential of time constant τ has died down, τ·ln(V0/V_tol) [s].</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure Settling(Duration timeConstant, Voltage step, Voltage tolerance) =>
        TextbookFigure.Of(
            timeConstant.Seconds * Math.Log(step / tolerance),
            "s",
            "RC·ln(V0/V_tol)",
            () => $"{Put.In(timeConstant)} · ln({Put.In(step)}/{Put.In(tolerance)})",
            Sources.Derived);

    /// <summary>Lowest frequency that folds into the band, f_s − f₂ [Hz].</summary>
    /// <remarks>Source: sampling theorem; common practice.</remarks>
    public static TextbookFigure FoldFrequency(Frequency rate, Frequency bandHigh) =>
        TextbookFigure.Of(rate.Hertz - bandHigh.Hertz, "Hz", "f_s − f₂", () => $"{Put.In(rate)} − {Put.In(bandHigh)}", Sources.CommonPractice);

    /// <summary>Where a frequency lands after sampling, |f − f_s·round(f/f_s)| [Hz].</summary>
    /// <remarks>Source: sampling theorem; common practice.</remarks>
    public static TextbookFigure LandsAt(Frequency frequency, Frequency rate)
    {
        double turns = Math.Round(frequency / rate, MidpointRounding.AwayFromZero);
        return TextbookFigure.Of(
            Math.Abs(frequency.Hertz - (rate.Hertz * turns)),
            "Hz",
            "|f − f_s·round(f/f_s)|",
            () => $"|{Put.In(frequency)} − {Put.In(turns)} · {Put.In(rate)}|",
            Sources.CommonPractice);
    }

    /// <summary>Time constant of a digital notch's ringing, −1/(f_s·ln r), r the size of its larger pole [s]; about Q/(π·f0).</summary>
    /// <remarks>
    /// b = 1/(1 + tan(π·Δf/f_s)), Δf = f0/Q; the poles are those of z² − 2b·cos ω0·z + (2b − 1), so r = √(2b − 1) where they are a pair,
    /// which all but the widest notches have. Infinite from Δf = f_s/2 on, where there is no such notch.
    /// <para>Source: Orfanidis 1996, Eqs. 8.2.22 and 8.2.23 (cited by another library's source; book not seen).</para>
    /// </remarks>
    public static TextbookFigure NotchTimeConstant(Frequency centre, double q, Frequency rate)
    {
        double width = centre.Hertz / q;
        double b = 1 / (1 + Math.Tan(Math.PI * width / rate.Hertz));
        double middle = b * Math.Cos(centre.RadiansPerSample(rate));
        double apart = (middle * middle) - ((2 * b) - 1);
        double radius = apart < 0 ? Math.Sqrt((2 * b) - 1) : Math.Abs(middle) + Math.Sqrt(apart);
        bool none = rate.Hertz <= 2 * width || 1 <= radius;
        return TextbookFigure.Of(
            none ? double.PositiveInfinity : -1 / (rate.Hertz * Math.Log(radius)),
            "s",
            "−1/(f_s·ln r), r² = 2/(1 + tan(π·f0/(Q·f_s))) − 1",
            () => $"−1/({Put.In(rate)} · ln {Put.In(none ? 1 : radius)})",
            Sources.Notch);
    }

    /// <summary>Time until a digital notch's ringing has fallen to a share of its start, τ·ln(1/share) [s]; 4.6 τ to 1 %.</summary>
    /// <remarks>Source: derived from <see cref="NotchTimeConstant"/>.</remarks>
    public static TextbookFigure NotchRingTime(Frequency centre, double q, Frequency rate, Ratio share)
    {
        double tau = NotchTimeConstant(centre, q, rate).Value;
        return TextbookFigure.Of(tau * Math.Log(1 / share.Fraction), "s", "τ·ln(1/share)", () => $"{Put.In(tau, "s")} · ln(1/{Put.In(share)})",
            Sources.Derived);
    }

    /// <summary>Attenuation of an analogue notch beside its centre, 10·log10(1 + 1/x²), x = Q·(f/f0 − f0/f) [dB]; infinite at the
    /// centre.</summary>
    /// <remarks>A digital notch well below half the rate is close to it. Source: derived.</remarks>
    public static TextbookFigure NotchAttenuation(Frequency frequency, Frequency centre, double q)
    {
        double x = q * ((frequency / centre) - (centre / frequency));
        return TextbookFigure.Of(
            10 * Math.Log10(1 + (1 / (x * x))),
            "dB",
            "10·log10(1 + 1/x²), x = Q·(f/f0 − f0/f)",
            () => $"10·log10(1 + 1/({Put.In(q)} · ({Put.In(frequency)}/{Put.In(centre)} − {Put.In(centre)}/{Put.In(frequency)}))²)",
            Sources.Derived);
    }

    /// <summary>Gain of a delta-sigma converter's sinc filter, 20·log10 |sin(πf/f_d)/(M·sin(πf/(M·f_d)))|^K [dB].</summary>
    /// <param name="frequency">f.</param>
    /// <param name="outputRate">f_d: the rate after decimation.</param>
    /// <param name="decimation">M: modulator clocks an output.</param>
    /// <param name="order">K.</param>
    /// <remarks>−3 dB at 0.262 f_d for K = 3 and 0.227 f_d for K = 4. Source: SBASAK4B, Table 7-14, for the corners.</remarks>
    public static TextbookFigure SincGain(Frequency frequency, Frequency outputRate, int decimation, int order)
    {
        double x = Math.PI * (frequency / outputRate);
        double below = decimation * Math.Sin(x / decimation);
        double gain = Math.Abs(below) < 1e-15 ? 1 : Math.Abs(Math.Sin(x) / below);
        return TextbookFigure.Of(
            order * Put.Decibels(gain),
            "dB",
            "K·20·log10 |sin(πf/f_d)/(M·sin(πf/(M·f_d)))|",
            () => $"{order} · 20·log10 |sin(π · {Put.In(frequency)}/{Put.In(outputRate)})/({decimation} · sin(π · {Put.In(frequency)}/({decimation} · {Put.In(outputRate)})))|",
            Sources.Sinc);
    }
}
