namespace FrontEnd.Textbook;

/// <summary>Resolution of the converter by the formulas of the textbooks.</summary>
/// <remarks>
/// Three numbers of bits are in use: <see cref="EffectiveNumberOfBits"/> from signal over noise and distortion, <see cref="EffectiveBits"/>
/// from rms noise,
/// <see cref="NoiseFreeBits(VoltagePeakToPeak, VoltageRms)"/> from peak-to-peak noise. The last two differ by 2.72 bits.
/// </remarks>
internal static class ConverterFormulas
{
    /// <summary>One step, LSB = FS/2^N [V].</summary>
    /// <param name="fullScale">FS, peak-to-peak; at the input or at the converter, the step is at the same place.</param>
    /// <remarks>Source: definition; common practice.</remarks>
    public static TextbookFigure Step(VoltagePeakToPeak fullScale, BitCount bits) =>
        TextbookFigure.Of(fullScale.Volts / Math.Pow(2, bits.Bits), "V", "FS/2^N", () => $"{Put.In(fullScale.Volts, "V")}/2^{Put.In(bits.Bits)}",
            Sources.CommonPractice);

    /// <summary>Quantisation noise, q = LSB/√12 [V rms].</summary>
    /// <remarks>White and of this size where about half a step of other noise is there. Source: Franco, Example 12.2.</remarks>
    public static TextbookFigure QuantisationNoise(Voltage step) =>
        TextbookFigure.Of(step.Volts / Math.Sqrt(12), "V", "LSB/√12", () => $"{Put.In(step)}/√12", Sources.FrancoConverter);

    /// <summary>Signal-to-noise ratio of an ideal converter with a full-scale sine, 20·log10(2^N·√1.5), which is 6.02·N + 1.76
    /// [dB].</summary>
    /// <remarks>The exact form is worked out; with the rounded constants it is 0.02 dB lower at 24 bits. Source: note MT-001.</remarks>
    public static TextbookFigure IdealSignalToNoise(BitCount bits) =>
        TextbookFigure.Of(Put.Decibels(Math.Pow(2, bits.Bits) * Math.Sqrt(1.5)), "dB", "6.02·N + 1.76",
            () => $"6.02 · {Put.In(bits.Bits)} + 1.76", Sources.IdealSnr);

    /// <summary>Effective number of bits from the ratio of a full-scale sine to noise and distortion, (SINAD − 1.76)/6.02 [bit].</summary>
    /// <remarks>Source: Franco, Example 12.2.</remarks>
    public static TextbookFigure EffectiveNumberOfBits(Decibels signalToNoiseAndDistortion) =>
        TextbookFigure.Of(TradeConstants.EffectiveBits(signalToNoiseAndDistortion.Value), "bit", "(SINAD − 1.76)/6.02",
            () => $"({Put.In(signalToNoiseAndDistortion)} − 1.76)/6.02", Sources.FrancoConverter);

    /// <summary>Effective resolution, log2(span/σ) [bit]. Never more than the word length of the converter: the caller caps it.</summary>
    /// <remarks>Source: SBAS350G, definitions of its noise tables.</remarks>
    public static TextbookFigure EffectiveBits(VoltagePeakToPeak span, VoltageRms noise) =>
        TextbookFigure.Of(Math.Log2(span.Volts / noise.Volts), "bit", "log2(span/σ)",
            () => $"log2({Put.In(span.Volts, "V")}/{Put.In(noise.Volts, "V")})", Sources.ConverterBits);

    /// <summary>Noise-free bits, log2(span/pp) [bit], pp = <see cref="TradeConstants.NoisePeakToPeak"/>·σ.</summary>
    /// <remarks>Source: SBAS350G, definitions of its noise tables; the factor from Baker 2008.</remarks>
    public static TextbookFigure NoiseFreeBits(VoltagePeakToPeak span, VoltageRms noise) =>
        NoiseFreeBits(span, noise.NoisePeakToPeak);

    /// <summary>Noise-free bits from a peak-to-peak noise that was measured, log2(span/pp) [bit].</summary>
    /// <remarks>Source: SBAS350G, definitions of its noise tables.</remarks>
    public static TextbookFigure NoiseFreeBits(VoltagePeakToPeak span, VoltagePeakToPeak noise) =>
        TextbookFigure.Of(Math.Log2(span / noise), "bit", "log2(span/pp)", () => $"log2({Put.In(span.Volts, "V")}/{Put.In(noise.Volts, "V")})",
            Sources.ConverterBits);

    /// <summary>Dynamic range of a chain, 20·log10(FS/(2√2·σ)) [dB]: the largest sine's rms over the noise.</summary>
    /// <remarks>Source: common practice.</remarks>
    public static TextbookFigure DynamicRange(VoltagePeakToPeak fullScale, VoltageRms noise) =>
        TextbookFigure.Of(Put.Decibels(fullScale.Volts / (2 * Math.Sqrt(2) * noise.Volts)), "dB", "20·log10(FS/(2√2·σ))",
            () => $"20·log10({Put.In(fullScale.Volts, "V")}/(2√2 · {Put.In(noise.Volts, "V")}))", Sources.CommonPractice);

    /// <summary>What averaging or oversampling by M gains, 10·log10 M [dB]; half a bit for each doubling.</summary>
    /// <remarks>Holds for white noise. Source: note MT-001, process gain.</remarks>
    public static TextbookFigure AveragingGain(double samples) =>
        TextbookFigure.Of(10 * Math.Log10(samples), "dB", "10·log10 M", () => $"10·log10 {Put.In(samples)}", Sources.IdealSnr);

    /// <summary>Bits that are sent, N·f_s·b·(1 + overhead) [bit/s].</summary>
    /// <remarks>Source: arithmetic.</remarks>
    public static TextbookFigure DataRate(int channels, Frequency rate, BitCount bits, Ratio overhead) =>
        TextbookFigure.Of(
            channels * rate.Hertz * bits.Bits * (1 + overhead.Fraction),
            "bit/s",
            "N·f_s·b·(1 + overhead)",
            () => $"{channels} · {Put.In(rate)} · {Put.In(bits)} · (1 + {Put.In(overhead)})",
            Sources.Derived);
}
