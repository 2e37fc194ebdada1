using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Textbook;

namespace FrontEnd.Reporting;

/// <summary>What the converter makes of the signal.</summary>
internal static class ConverterReport
{
    public static void AddTo(ResultList list, Evaluation evaluation)
    {
        Design design = evaluation.Design;
        AnalogDigitalConverter converter = design.Converter;
        double gain = evaluation.GainMid, sigma = evaluation.Noise.Total, lsb = converter.LsbVolts;
        VoltagePeakToPeak fullScale = VoltagePeakToPeak.FromVolts(converter.FullScale.Volts / gain);
        VoltageRms noise = VoltageRms.FromVolts(sigma);
        list.Number(ResultIds.Converter.Lsb, "one step at the electrodes", "LSB_rti", Voltage.FromVolts(lsb / gain), Equations.Lsb,
            () => $"{QuantityText.Format(lsb, "V", 4)}/{QuantityText.FormatNumber(gain, 4)}");
        list.Number(
            ResultIds.Converter.FullScale, "full scale at the electrodes, peak-to-peak", "FS_rti", fullScale, Equations.FullScale,
                () => $"{QuantityText.Format(converter.FullScale, 4)}/{QuantityText.FormatNumber(gain, 4)}");
        AddFit(list, design);
        TextbookFigure range = ConverterFormulas.DynamicRange(fullScale, noise);
        list.Decibel(ResultIds.Converter.DynamicRange, "dynamic range: a full-scale sine over the noise", "DR",
            fullScale.Volts / (2 * Math.Sqrt(2)) / sigma, Equations.DynamicRange, "no noise at all", range);
        if (sigma <= 0)
        {
            return;
        }

        double decibels = 20 * Math.Log10(ConverterFigures.DynamicRange(new(fullScale.Volts), new(sigma))[0]);
        double bits = ConverterFigures.EffectiveBits(new(fullScale.Volts), new(sigma))[0];
        double shortedBits = ConverterFigures.EffectiveBits(new(fullScale.Volts), new(evaluation.Noise.Shorted))[0];
        list.Number(
            ResultIds.Converter.Enob, "bits of the whole chain, electrodes included", "ENOB", BitCount.FromBits(bits), Equations.Enob,
            hand: ConverterFormulas.EffectiveNumberOfBits(Decibels.FromStated(decibels)),
            text: $"with shorted inputs {QuantityText.FormatNumber(shortedBits, 4)} bit");
        list.Number(ResultIds.Converter.EnobShorted, "bits of the chain with shorted inputs", "ENOB_short", BitCount.FromBits(shortedBits),
            Equations.Enob);
        list.Number(ResultIds.Converter.NoiseFreeBits, "noise-free bits", "",
            BitCount.FromBits(Math.Log2(fullScale / noise.NoisePeakToPeak)), Equations.NoiseFreeBits,
            hand: ConverterFormulas.NoiseFreeBits(fullScale, noise));
        AddBitsNeeded(list, evaluation);
    }

    /// <summary>"yes", or "no: 9 V p-p of at most 6 V".</summary>
    private static string FitsSupply(AnalogDigitalConverter converter, Voltage lowest) => ConverterSupply.Fits(converter, lowest)
        ? "yes"
        : $"no: {QuantityText.FormatPart(converter.FullScale)} of at most {QuantityText.FormatPart(Voltage.FromVolts(ConverterSupply.Largest(converter, lowest).Volts))}";

    /// <summary>Whether the full scale fits the converter's supply.</summary>
    public static void AddFit(ResultList list, Design design) => list.Word(
        ResultIds.Converter.FitsSupply, "full scale fits the converter's supply", FitsSupply(design.Converter, design.Supply.Lowest),
        Equations.FitsSupply);

    /// <summary>The resolution that is needed; nothing where there is no noise to hold it against.</summary>
    public static void AddBitsNeeded(ResultList list, Evaluation evaluation)
    {
        if (evaluation.Noise.Total <= 0)
        {
            return;
        }

        AnalogDigitalConverter converter = evaluation.Design.Converter;
        double rest = evaluation.Noise.WithoutQuantisation, limit = evaluation.Design.Requirements.QuantisationRise.Fraction;
        double perStep = evaluation.Noise.Quantisation / converter.LsbVolts;
        double bits = ConverterFigures.BitsNeeded(ConverterFigures.BitsWanted(perStep * converter.FullScale.Volts / rest, limit));
        if (double.IsFinite(bits))
        {
            double q = perStep * converter.FullScale.Volts / Math.Pow(2, bits);
            list.Number(
                ResultIds.Converter.BitsNeeded, "resolution needed", "N", BitCount.FromBits(bits), Equations.BitsNeeded,
                () => $"√(1 + ({QuantityText.Format(q, "V")}/{QuantityText.Format(rest, "V")})²) < {QuantityText.FormatNumber(limit)}",
                text: $"the converter has {QuantityText.Format(BitCount.FromBits(converter.Bits))}");
            return;
        }

        list.Unbounded(ResultIds.Converter.BitsNeeded, "resolution needed", "N", "bit", Equations.BitsNeeded,
            "more than 40 bit: quantisation is the only noise");
    }
}
