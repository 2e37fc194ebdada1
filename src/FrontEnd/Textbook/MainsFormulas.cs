using System.Numerics;

namespace FrontEnd.Textbook;

/// <summary>Mains interference at the input by the formulas of the textbooks: displacement current, common mode, divider, leads, loop,
/// driven ground.</summary>
/// <remarks>Impedances that may be reactive are complex numbers of ohms at the mains frequency. Rejections are positive decibels.</remarks>
internal static class MainsFormulas
{
    /// <summary>Current from the mains through the body, i = 2πf·C_p·V [A rms].</summary>
    /// <remarks>Holds where body-to-earth is much larger than body-to-mains. Source: Metting van Rijn 1990, section 2.1.</remarks>
    public static TextbookFigure DisplacementCurrent(VoltageRms mains, Frequency frequency, Capacitance bodyToMains) =>
        TextbookFigure.Of(
            Omega(frequency) * bodyToMains.Farads * mains.Volts,
            "A",
            "2πf·C_p·V",
            () => $"2π · {Put.In(frequency)} · {Put.In(bodyToMains)} · {Put.In(mains.Volts, "V")}",
            Sources.BodyCurrent);

    /// <summary>Voltage of a body that touches nothing, V·C_p/(C_p + C_b) [V rms].</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure BodyVoltage(VoltageRms mains, Capacitance bodyToMains, Capacitance bodyToEarth) =>
        TextbookFigure.Of(
            mains.Volts * Share(bodyToMains.Farads, bodyToEarth.Farads),
            "V",
            "V·C_p/(C_p + C_b)",
            () => $"{Put.In(mains.Volts, "V")} · {Put.In(bodyToMains)}/({Put.In(bodyToMains)} + {Put.In(bodyToEarth)})",
            Sources.Derived);

    /// <summary>Voltage between body and amplifier common, |i_g·Z_g| [V rms]: both sides as Thevenin sources, the loop closed through the
    /// ground electrode.</summary>
    /// <param name="amplifierToMains">C_ap.</param>
    /// <param name="amplifierToEarth">C_iso; null where the common is earthed.</param>
    /// <param name="ground">Z_g: ground electrode and its resistor [Ω].</param>
    /// <remarks>
    /// i_g = (V_b − V_a)/(1/jω(C_p + C_b) + 1/jω(C_ap + C_iso) + Z_g), V_b = V·C_p/(C_p + C_b), V_a = V·C_ap/(C_ap + C_iso).
    /// Lead capacitances and the input's load are left out. Source: derived; for the body current alone Metting van Rijn 1990.
    /// </remarks>
    public static TextbookFigure BodyCommonMode(
        VoltageRms mains,
        Frequency frequency,
        Capacitance bodyToMains,
        Capacitance bodyToEarth,
        Capacitance amplifierToMains,
        Capacitance? amplifierToEarth,
        Complex ground)
    {
        Complex current = GroundCurrent(mains, frequency, bodyToMains, bodyToEarth, amplifierToMains, amplifierToEarth, ground);
        return TextbookFigure.Of(
            (current * ground).Magnitude,
            "V",
            "|i_g·Z_g|, i_g = (V_b − V_a)/(1/jω(C_p + C_b) + 1/jω(C_ap + C_iso) + Z_g)",
            () => $"{Put.In(current.Magnitude, "A")} · {Put.In(ground.Magnitude, "Ω")}",
            Sources.Derived);
    }

    /// <summary>Current through the ground electrode, |i_g| [A rms]; see <see cref="BodyCommonMode"/>.</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure BodyToCommonCurrent(
        VoltageRms mains,
        Frequency frequency,
        Capacitance bodyToMains,
        Capacitance bodyToEarth,
        Capacitance amplifierToMains,
        Capacitance? amplifierToEarth,
        Complex ground)
    {
        double body = mains.Volts * Share(bodyToMains.Farads, bodyToEarth.Farads);
        double box = amplifierToEarth is { } iso ? mains.Volts * Share(amplifierToMains.Farads, iso.Farads) : 0;
        Complex current = GroundCurrent(mains, frequency, bodyToMains, bodyToEarth, amplifierToMains, amplifierToEarth, ground);
        string boxSide = amplifierToEarth is { } earth ? $" + 1/jω({Put.In(amplifierToMains)} + {Put.In(earth)})" : "";
        return TextbookFigure.Of(
            current.Magnitude,
            "A",
            "|V_b − V_a|/|1/jω(C_p + C_b) + 1/jω(C_ap + C_iso) + Z_g|",
            () => $"|{Put.In(body, "V")} − {Put.In(box, "V")}|/|1/jω({Put.In(bodyToMains)} + {Put.In(bodyToEarth)}){boxSide} + {Put.In(ground)}|",
            Sources.Derived);
    }

    /// <summary>Rejection that unequal electrodes leave, 20·log10(|Z_c|/|ΔZ|) [dB].</summary>
    /// <param name="commonMode">Z_c: common-mode input impedance of one input [Ω].</param>
    /// <param name="imbalance">ΔZ: difference of the electrodes' impedances [Ω].</param>
    /// <remarks>Holds where ΔZ is small beside Z_c. Source: Haberman and Spinelli 2010, Eq. 1.</remarks>
    public static TextbookFigure DividerRejection(Complex commonMode, Complex imbalance) =>
        TextbookFigure.Of(
            Put.Decibels(commonMode.Magnitude / imbalance.Magnitude),
            "dB",
            "20·log10(|Z_c|/|ΔZ|)",
            () => $"20·log10({Put.In(commonMode.Magnitude, "Ω")}/{Put.In(imbalance.Magnitude, "Ω")})",
            Sources.Divider);

    /// <summary>As <see cref="DividerRejection"/> without the approximation: −20·log10 |Z_c1/(Z_c1 + Z_e1) − Z_c2/(Z_c2 + Z_e2)|
    /// [dB].</summary>
    /// <param name="firstInput">Z_c1: common-mode input impedance of the first input [Ω].</param>
    /// <param name="first">Z_e1: its electrode [Ω].</param>
    /// <remarks>Source: Haberman and Spinelli 2010, Eq. 1, before its simplification.</remarks>
    public static TextbookFigure DividerRejectionExact(Complex firstInput, Complex first, Complex secondInput, Complex second)
    {
        Complex difference = (firstInput / (firstInput + first)) - (secondInput / (secondInput + second));
        return TextbookFigure.Of(
            -Put.Decibels(difference.Magnitude),
            "dB",
            "−20·log10 |Z_c1/(Z_c1 + Z_e1) − Z_c2/(Z_c2 + Z_e2)|",
            () => $"−20·log10 |{Put.In(firstInput)}/({Put.In(firstInput)} + {Put.In(first)}) − {Put.In(secondInput)}/({Put.In(secondInput)} + {Put.In(second)})|",
            Sources.Divider);
    }

    /// <summary>Voltage that the divider turns from common into differential, V_cm·|ΔZ|/|Z_c| [V rms].</summary>
    /// <remarks>Source: Haberman and Spinelli 2010, Eq. 1.</remarks>
    public static TextbookFigure DividerVoltage(VoltageRms commonMode, Complex input, Complex imbalance) =>
        TextbookFigure.Of(
            commonMode.Volts * imbalance.Magnitude / input.Magnitude,
            "V",
            "V_cm·|ΔZ|/|Z_c|",
            () => $"{Put.In(commonMode.Volts, "V")} · {Put.In(imbalance.Magnitude, "Ω")}/{Put.In(input.Magnitude, "Ω")}",
            Sources.Divider);

    /// <summary>Rejection left by a reference pin that carries N inputs, all electrodes alike: −20·log10 |1/(1 + jωC·Z_e) − 1/(1 +
    /// jωN·C·Z_e)| [dB].</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure SharedReferenceRejection(Frequency frequency, Capacitance input, Complex electrode, int channels)
    {
        Complex load = new Complex(0, Omega(frequency) * input.Farads) * electrode;
        Complex difference = (1 / (1 + load)) - (1 / (1 + (channels * load)));
        return TextbookFigure.Of(
            -Put.Decibels(difference.Magnitude),
            "dB",
            "−20·log10 |1/(1 + jωC·Z_e) − 1/(1 + jωN·C·Z_e)|",
            () => $"−20·log10 |1/(1 + jω · {Put.In(input)} · {Put.In(electrode)}) − 1/(1 + jω · {channels} · {Put.In(input)} · {Put.In(electrode)})|",
            Sources.Derived);
    }

    /// <summary>Share of the signal that an electrode lets through into an input, |Z_in/(Z_in + Z_e)|.</summary>
    /// <remarks>Source: Ohm's law.</remarks>
    public static TextbookFigure ElectrodeDivider(Complex input, Complex electrode) =>
        TextbookFigure.Of(
            (input / (input + electrode)).Magnitude,
            "1",
            "|Z_in/(Z_in + Z_e)|",
            () => $"|{Put.In(input)}/({Put.In(input)} + {Put.In(electrode)})|",
            Sources.Derived);

    /// <summary>An amplifier's rejection at a frequency, CMRR_dc − 10·log10(1 + (f/f_c)²) [dB].</summary>
    /// <remarks>One pole, as data sheets mostly show it. Source: from memory.</remarks>
    public static TextbookFigure AmplifierRejection(Decibels atDc, Frequency frequency, Frequency corner) =>
        TextbookFigure.Of(
            atDc.Value - (10 * Math.Log10(1 + Math.Pow(frequency / corner, 2))),
            "dB",
            "CMRR_dc − 10·log10(1 + (f/f_c)²)",
            () => $"{Put.In(atDc)} − 10·log10(1 + ({Put.In(frequency)}/{Put.In(corner)})²)",
            Sources.FromMemory);

    /// <summary>What a finite rejection leaves of a common-mode voltage, V_cm/10^(CMRR/20) [V rms].</summary>
    /// <remarks>Source: definition of the common-mode rejection.</remarks>
    public static TextbookFigure Residue(VoltageRms commonMode, Decibels rejection) =>
        TextbookFigure.Of(
            commonMode.Volts / rejection.VoltageRatio,
            "V",
            "V_cm/10^(CMRR/20)",
            () => $"{Put.In(commonMode.Volts, "V")}/10^({Put.In(rejection)}/20)",
            Sources.CommonPractice);

    /// <summary>Rejection needed, 20·log10(V_cm/V_residue) [dB].</summary>
    /// <remarks>Source: definition of the common-mode rejection.</remarks>
    public static TextbookFigure RejectionNeeded(VoltageRms commonMode, VoltageRms residue) =>
        TextbookFigure.Of(
            Put.Decibels(commonMode / residue),
            "dB",
            "20·log10(V_cm/V_residue)",
            () => $"20·log10({Put.In(commonMode.Volts, "V")}/{Put.In(residue.Volts, "V")})",
            Sources.CommonPractice);

    /// <summary>Rejections in a row, worst case: −20·log10 Σ10^(−CMRR/20) [dB], all leaks in phase.</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure RejectionsWorstCase(params IReadOnlyList<Decibels> parts) =>
        TextbookFigure.Of(
            -Put.Decibels(parts.Sum(part => 1 / part.VoltageRatio)),
            "dB",
            "−20·log10 Σ10^(−CMRR/20)",
            () => $"−20·log10({string.Join(" + ", parts.Select(part => $"10^(−{Put.In(part)}/20)"))})",
            Sources.Derived);

    /// <summary>Rejections in a row as a root sum of squares: −10·log10 Σ10^(−CMRR/10) [dB], the leaks' phases unrelated.</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure RejectionsRootSum(params IReadOnlyList<Decibels> parts) =>
        TextbookFigure.Of(
            -10 * Math.Log10(parts.Sum(part => Math.Pow(10, -part.Value / 10))),
            "dB",
            "−10·log10 Σ10^(−CMRR/10)",
            () => $"−10·log10({string.Join(" + ", parts.Select(part => $"10^(−{Put.In(part)}/10)"))})",
            Sources.Derived);

    /// <summary>Rejection of a difference amplifier whose four resistors are each off by their tolerance in the worst way, (1 + G)/(4·tol)
    /// [dB].</summary>
    /// <remarks>First order: the exact ratio for G = 10 and 1 % is 48.4 dB, this form gives 48.8 dB. Source: Franco, Eq. 2.26.</remarks>
    public static TextbookFigure RejectionOfFourResistors(double gain, Ratio tolerance) =>
        TextbookFigure.Of(Put.Decibels((1 + gain) / (4 * tolerance.Fraction)), "dB", "20·log10((1 + G)/(4·tol))",
            () => $"20·log10((1 + {Put.In(gain)})/(4 · {Put.In(tolerance)}))", Sources.FrancoResistors);

    /// <summary>Rejection of a difference amplifier with one of its two resistor ratios off by δ, (1 + G)/δ [dB].</summary>
    /// <remarks>Source: derived, the one-ratio case of Franco, Eq. 2.26.</remarks>
    public static TextbookFigure RejectionOfOneRatio(double gain, Ratio mismatch) =>
        TextbookFigure.Of(Put.Decibels((1 + gain) / mismatch.Fraction), "dB", "20·log10((1 + G)/δ)",
            () => $"20·log10((1 + {Put.In(gain)})/{Put.In(mismatch)})", Sources.Derived);

    /// <summary>Rejection of a three-op-amp amplifier of gain G whose output stage has unity gain and a total mismatch δ, G/δ
    /// [dB].</summary>
    /// <remarks>The form of instrumentation amplifier guides; at G = 1 it is 6 dB below <see cref="RejectionOfOneRatio"/>. Source: note
    /// MT-061, from memory.</remarks>
    public static TextbookFigure RejectionOfInstrumentationAmplifier(double gain, Ratio mismatch) =>
        TextbookFigure.Of(Put.Decibels(gain / mismatch.Fraction), "dB", "20·log10(G/δ)", () => $"20·log10({Put.In(gain)}/{Put.In(mismatch)})",
            Sources.InAmpGuide);

    /// <summary>Rejection left by low-passes before the amplifier whose corners differ by δ, f_1/(δ·f) [dB], for f well below
    /// f_1.</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure LowPassMismatch(Frequency frequency, Frequency corner, Ratio mismatch) =>
        TextbookFigure.Of(Put.Decibels(corner / frequency / mismatch.Fraction), "dB", "20·log10(f_1/(δ·f))",
            () => $"20·log10({Put.In(corner)}/({Put.In(mismatch)} · {Put.In(frequency)}))", Sources.Derived);

    /// <summary>Rejection left by high-passes before the amplifier whose corners differ by δ, f/(δ·f_1) [dB], for f well above
    /// f_1.</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure HighPassMismatch(Frequency frequency, Frequency corner, Ratio mismatch) =>
        TextbookFigure.Of(Put.Decibels(frequency / corner / mismatch.Fraction), "dB", "20·log10(f/(δ·f_1))",
            () => $"20·log10({Put.In(frequency)}/({Put.In(mismatch)} · {Put.In(corner)}))", Sources.Derived);

    /// <summary>Voltage of a displacement current into one lead across the electrodes' difference, i·|ΔZ| [V].</summary>
    /// <remarks>Source: Huhta and Webster 1973 (first page seen, formula from memory).</remarks>
    public static TextbookFigure LeadVoltage(Current lead, Complex imbalance) =>
        TextbookFigure.Of(lead.Amperes * imbalance.Magnitude, "V", "i·|ΔZ|", () => $"{Put.In(lead)} · {Put.In(imbalance.Magnitude, "Ω")}",
            Sources.LeadCurrent);

    /// <summary>Voltage induced in the loop of the leads, 2πf·B·A [V rms], the field square to the loop.</summary>
    /// <remarks>Source: Faraday's law; common practice.</remarks>
    public static TextbookFigure LoopVoltage(Frequency frequency, MagneticFluxDensity field, Area loop) =>
        TextbookFigure.Of(
            Omega(frequency) * field.Teslas * loop.SquareMetres,
            "V",
            "2πf·B·A",
            () => $"2π · {Put.In(frequency)} · {Put.In(field.Teslas, "T")} · {Put.In(loop)}",
            Sources.CommonPractice);

    /// <summary>Resistance that a driven ground shows, R_o/(1 + 2·R_f/R_a) [Ω], for the inverting stage fed by two averaging
    /// resistors.</summary>
    /// <param name="output">R_o: the resistor in the driven lead.</param>
    /// <param name="feedback">R_f of the inverting stage.</param>
    /// <param name="averaging">R_a: each of the two averaging resistors.</param>
    /// <remarks>Source: Webster, Medical Instrumentation, driven-right-leg figure (inputs read as an exercise, formula from
    /// memory).</remarks>
    public static TextbookFigure DrivenGroundResistance(Resistance output, Resistance feedback, Resistance averaging) =>
        TextbookFigure.Of(
            output.Ohms / (1 + (2 * (feedback / averaging))),
            "Ω",
            "R_o/(1 + 2·R_f/R_a)",
            () => $"{Put.In(output)}/(1 + 2 · {Put.In(feedback)}/{Put.In(averaging)})",
            Sources.DrivenGround);

    /// <summary>Gain of an integrating driven ground at a frequency, T = f_u/f, in decibels.</summary>
    /// <remarks>Holds well below the loop's other poles. Source: derived.</remarks>
    public static TextbookFigure DrivenGroundLoopGain(Frequency unityGain, Frequency frequency) =>
        TextbookFigure.Of(Put.Decibels(unityGain / frequency), "dB", "20·log10(f_u/f)",
            () => $"20·log10({Put.In(unityGain)}/{Put.In(frequency)})", Sources.Derived);

    /// <summary>Where the loop gain of an integrating driven ground with further poles is 1 [Hz], found by halving.</summary>
    /// <param name="unityGain">f_u of the integrator alone.</param>
    /// <param name="poles">The loop's other poles: (R_o + R_e) with the body's capacitance, each electrode with its input's, the
    /// amplifier.</param>
    /// <remarks>T = f_u/(jf)·Π 1/(1 + jf/f_p). Source: derived.</remarks>
    public static TextbookFigure DrivenGroundCrossing(Frequency unityGain, params IReadOnlyList<Frequency> poles)
    {
        double crossing = Crossing(unityGain, poles);
        return TextbookFigure.Of(crossing, "Hz", "|f_u/(jf)·Π 1/(1 + jf/f_p)| = 1",
            () => $"f_u {Put.In(unityGain)}, f_p {string.Join(", ", poles.Select(pole => Put.In(pole)))}: f", Sources.Derived);
    }

    /// <summary>Phase margin there, 90° − Σ atan(f/f_p) [°]; below zero the loop oscillates.</summary>
    /// <remarks>As <see cref="DrivenGroundCrossing"/>. Source: derived.</remarks>
    public static TextbookFigure DrivenGroundPhaseMargin(Frequency unityGain, params IReadOnlyList<Frequency> poles)
    {
        double crossing = Crossing(unityGain, poles);
        double margin = 90 - poles.Sum(pole => Math.Atan(crossing / pole.Hertz) * 180 / Math.PI);
        return TextbookFigure.Of(margin, "°", "90° − Σ atan(f/f_p)",
            () => $"90° − {string.Join(" − ", poles.Select(pole => $"atan({Put.In(crossing, "Hz")}/{Put.In(pole)})"))}", Sources.Derived);
    }

    /// <summary>Common-mode voltage with a driven ground, i·(R_o + R_e)/(1 + T) [V rms].</summary>
    /// <param name="loop">R_o + R_e: resistor and ground electrode.</param>
    /// <param name="loopGain">T as a ratio.</param>
    /// <remarks>Source: derived; Webster's figure is the same with T = 2·R_f/R_a.</remarks>
    public static TextbookFigure DrivenCommonMode(Current body, Resistance loop, double loopGain) =>
        TextbookFigure.Of(
            body.Amperes * loop.Ohms / (1 + loopGain),
            "V",
            "i·(R_o + R_e)/(1 + T)",
            () => $"{Put.In(body)} · {Put.In(loop)}/(1 + {Put.In(loopGain)})",
            Sources.Derived);

    /// <summary>Leak of a common signal between channels that are sampled Δt apart and subtracted later, 2·sin(πf·Δt).</summary>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure SkewLeak(Frequency frequency, Duration skew) =>
        TextbookFigure.Of(
            2 * Math.Abs(Math.Sin(Math.PI * frequency.Hertz * skew.Seconds)),
            "1",
            "2·sin(πf·Δt)",
            () => $"2·sin(π · {Put.In(frequency)} · {Put.In(skew)})",
            Sources.Derived);

    /// <summary>Residual of a harmonic beside that of the fundamental, share·h²: the displacement current and the divider both grow with
    /// h.</summary>
    /// <remarks>Source: derived; worst case, as the electrode's impedance falls with h.</remarks>
    public static TextbookFigure HarmonicGrowth(Ratio share, int harmonic) =>
        TextbookFigure.Of(share.Fraction * harmonic * harmonic, "1", "share·h²", () => $"{Put.In(share)} · {harmonic}²", Sources.Derived);

    private static double Omega(Frequency frequency) => 2 * Math.PI * frequency.Hertz;

    // The loop gain falls steadily, so its crossing lies between nearly 0 Hz and f_u; 200 halvings exhaust a double.
    private static double Crossing(Frequency unityGain, IReadOnlyList<Frequency> poles)
    {
        (double low, double high) = (0, unityGain.Hertz);
        for (int step = 0; step < 200 && low < high; step++)
        {
            double middle = (low + high) / 2;
            double gain = unityGain.Hertz / middle / poles.Aggregate(1.0,
                (product, pole) => product * Math.Sqrt(1 + Math.Pow(middle / pole.Hertz, 2)));
            (low, high) = 1 < gain ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Share(double upper, double lower) => upper == 0 ? 0 : upper / (upper + lower);

    private static Complex GroundCurrent(
        VoltageRms mains,
        Frequency frequency,
        Capacitance bodyToMains,
        Capacitance bodyToEarth,
        Capacitance amplifierToMains,
        Capacitance? amplifierToEarth,
        Complex ground)
    {
        double w = Omega(frequency);
        double body = mains.Volts * Share(bodyToMains.Farads, bodyToEarth.Farads);
        Complex loop = ground + (1 / new Complex(0, w * (bodyToMains.Farads + bodyToEarth.Farads)));
        if (amplifierToEarth is not { } iso)
        {
            return body / loop;
        }

        double box = amplifierToMains.Farads + iso.Farads;
        return box == 0
            ? Complex.Zero   // a box without any capacitance closes no loop
            : (body - (mains.Volts * Share(amplifierToMains.Farads, iso.Farads))) / (loop + (1 / new Complex(0, w * box)));
    }
}
