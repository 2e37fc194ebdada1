namespace FrontEnd.Textbook;

/// <summary>Gain, bandwidth, gain limits and supply rejection of the amplifiers, by the formulas of the textbooks.</summary>
internal static class AmplifierFormulas
{
    /// <summary>Gain of a non-inverting stage, G = 1 + Rf/Rg; also of an instrumentation amplifier set by one resistor, with Rf its inner
    /// resistance.</summary>
    /// <remarks>Source: common practice, every op-amp text.</remarks>
    public static TextbookFigure StageGain(Resistance feedback, Resistance ground) =>
        TextbookFigure.Of(1 + (feedback / ground), "1", "1 + Rf/Rg", () => $"1 + {Put.In(feedback)}/{Put.In(ground)}", Sources.CommonPractice);

    /// <summary>−3 dB bandwidth of a stage, f = GBW/G [Hz], G the noise gain.</summary>
    /// <remarks>Holds where the open-loop gain falls with one pole. Source: common practice, every op-amp text.</remarks>
    public static TextbookFigure Bandwidth(Frequency gainBandwidth, double noiseGain) =>
        TextbookFigure.Of(gainBandwidth.Hertz / noiseGain, "Hz", "GBW/G", () => $"{Put.In(gainBandwidth)}/{Put.In(noiseGain)}",
            Sources.CommonPractice);

    /// <summary>Slew rate that a sine needs, 2πf·V_pk [V/s].</summary>
    /// <remarks>Source: common practice.</remarks>
    public static TextbookFigure SlewRate(Frequency frequency, Voltage peak) =>
        TextbookFigure.Of(2 * Math.PI * frequency.Hertz * peak.Volts, "V/s", "2πf·V_pk", () => $"2π · {Put.In(frequency)} · {Put.In(peak)}",
            Sources.CommonPractice);

    /// <summary>Greatest gain of a dc-coupled first stage with its reference at mid-rail, G = (V_s/2 − h)/(V_off + V_sig).</summary>
    /// <param name="supply">V_s, both rails together, at its lowest.</param>
    /// <param name="headroom">h: how close to a rail the output swings.</param>
    /// <param name="offset">V_off: electrode offset to be survived.</param>
    /// <param name="signalPeak">V_sig: peak of signal and artefacts.</param>
    /// <remarks>Source: derived.</remarks>
    public static TextbookFigure FirstStageGainLimit(Voltage supply, Voltage headroom, Voltage offset, Voltage signalPeak) =>
        TextbookFigure.Of(
            ((supply.Volts / 2) - headroom.Volts) / (offset.Volts + signalPeak.Volts),
            "1",
            "(V_s/2 − h)/(V_off + V_sig)",
            () => $"({Put.In(supply)}/2 − {Put.In(headroom)})/({Put.In(offset)} + {Put.In(signalPeak)})",
            Sources.Derived);

    /// <summary>Greatest first-stage gain inside a three-op-amp amplifier, G = 2·min(V_s − h − V_cm, V_cm − h)/V_d: each inner node sits at
    /// V_cm ± G·V_d/2.</summary>
    /// <param name="commonMode">V_cm above the negative rail.</param>
    /// <param name="differential">V_d: the greatest input difference, offset and signal.</param>
    /// <remarks>Source: SBAS683B, common-mode requirements (V_cm ± G·V_d/2 within 200 mV of the rails).</remarks>
    public static TextbookFigure InnerNodeGainLimit(Voltage supply, Voltage headroom, Voltage commonMode, Voltage differential)
    {
        double room = Math.Min(supply.Volts - headroom.Volts - commonMode.Volts, commonMode.Volts - headroom.Volts);
        return TextbookFigure.Of(
            2 * room / differential.Volts,
            "1",
            "2·min(V_s − h − V_cm, V_cm − h)/V_d",
            () => $"2 · min({Put.In(supply)} − {Put.In(headroom)} − {Put.In(commonMode)}, {Put.In(commonMode)} − {Put.In(headroom)})/{Put.In(differential)}",
            Sources.InnerNodes);
    }

    /// <summary>Supply ripple as it appears at the input, V/10^(PSRR/20) [V rms].</summary>
    /// <remarks>Source: definition of the supply rejection; common practice.</remarks>
    public static TextbookFigure SupplyRipple(VoltageRms ripple, Decibels rejection) =>
        TextbookFigure.Of(ripple.Volts / rejection.VoltageRatio, "V", "V/10^(PSRR/20)",
            () => $"{Put.In(ripple.Volts, "V")}/10^({Put.In(rejection)}/20)", Sources.CommonPractice);

    /// <summary>Dc at the input from a bias current in a source resistance, I_b·R [V].</summary>
    /// <remarks>Source: Ohm's law.</remarks>
    public static TextbookFigure BiasOffset(Current bias, Resistance source) =>
        TextbookFigure.Of((bias * source).Volts, "V", "I_b·R", () => $"{Put.In(bias)} · {Put.In(source)}", Sources.Derived);

    /// <summary>The same with buffers at the electrodes, whose bias currents flow through theirs: I_b·R + I_1·R_1 + I_2·R_2, every term by
    /// size [V].</summary>
    /// <param name="bias">I_b: of the amplifier's inputs.</param>
    /// <param name="source">R: what they see in one lead less what they see in the other.</param>
    /// <param name="active">I_1: of the buffer at the active electrode; 0 without one.</param>
    /// <param name="activeSource">R_1: that electrode and its skin resistor.</param>
    /// <param name="reference">I_2: of the buffer at the reference electrode; 0 without one.</param>
    /// <param name="referenceSource">R_2: that electrode and its skin resistor.</param>
    /// <remarks>Source: Ohm's law.</remarks>
    public static TextbookFigure BiasOffset(
        Current bias, Resistance source, Current active, Resistance activeSource, Current reference, Resistance referenceSource)
    {
        (Current I, Resistance R, string Term)[] terms =
            [(bias, source, "I_b·R"), (active, activeSource, "I_1·R_1"), (reference, referenceSource, "I_2·R_2")];
        terms = [terms[0], .. terms[1..].Where(term => 0 < term.I.Amperes)];
        return TextbookFigure.Of(
            terms.Sum(term => (term.I * term.R).Volts), "V", string.Join(" + ", terms.Select(term => term.Term)),
            () => string.Join(" + ", terms.Select(term => $"{Put.In(term.I)} · {Put.In(term.R)}")), Sources.Derived);
    }

    /// <summary>Noise of what follows a stage, referred to the stage's input, σ/G [V rms].</summary>
    /// <remarks>Source: common practice.</remarks>
    public static TextbookFigure ReferredToInput(VoltageRms noise, double gain) =>
        TextbookFigure.Of(noise.Volts / gain, "V", "σ/G", () => $"{Put.In(noise.Volts, "V")}/{Put.In(gain)}", Sources.CommonPractice);
}
