using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about steps, bits and data.</summary>
internal static class ConverterProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("converter-step", Topic.Converter, 1, "Step at the input", d =>
        {
            (VoltagePeakToPeak scale, BitCount bits, Ratio gain) = Chain(d);
            TextbookFigure step = ConverterFormulas.Step(scale, bits);
            double value = step.Value / gain.Fraction;
            return new ProblemText("How large is one step of the converter, referred to the electrodes?")
                .Step("N bits make 2^N steps of the full scale", step)
                .Step("At the electrodes it is smaller by the gain", "LSB/G", $"{Put.In(step.Value, "V")}/{Put.In(gain.Fraction)}", value,
                    "V")
                .Answers<Voltage>(value)
                .Slip(Slips.NotReferred, step.Value)
                .Slip(Slips.GainTwice, step.Value * gain.Fraction)
                .Slip(Slips.WrongStep, 2 * value);
        }),
        new("converter-ideal-ratio", Topic.Converter, 1, "Ideal signal-to-noise ratio", d =>
        {
            BitCount bits = d.OneOf<BitCount>("N", "resolution", 8, 10, 12, 14, 16, 18, 20);
            Decibels below = d.Stepped<Decibels>("A", "how far the sine stays below full scale", 0, 24, 0.5);
            TextbookFigure figure = ConverterFormulas.IdealSignalToNoise(bits);
            double value = figure.Value - below.Value;
            return new ProblemText("What is the best signal-to-noise ratio of an ideal converter, with a sine that stays below full scale by so many decibels?")
                .Step("A full-scale sine's rms FS/(2√2) over the quantisation noise LSB/√12", figure)
                .Step("The noise of the steps stays the same, so the ratio falls as the sine does", "ratio − A",
                    $"{Put.In(figure.Value, "dB")} − {Put.In(below)}", value, "dB")
                .AnswersWithin<Decibels>(value, 0.2, 4)
                .Slip(Slips.NoOffsetOfSine, (TradeConstants.DecibelsPerBit * bits.Bits) - below.Value)
                .Slip(Slips.FullScaleTaken, figure.Value)
                .Slip(Slips.TenForTwentyLog, value / 2);
        }),
        new("converter-data-rate", Topic.Converter, 1, "Data rate", d =>
        {
            int channels = (int)d.OneOf<Ratio>("N", "channels", 1, 2, 4, 6, 8, 12, 16, 19, 24, 32).Fraction;
            Frequency rate = d.OneOf<Frequency>("f_s", "sampling rate of each channel", 125, 250, 256, 500, 512, 1000, 2000);
            BitCount bits = d.OneOf<BitCount>("b", "bits of a sample", 12, 14, 16, 18, 24);
            Ratio overhead = d.OneOf<Ratio>("overhead", "framing and counters", 0.1, 0.15, 0.2, 0.25);
            TextbookFigure figure = ConverterFormulas.DataRate(channels, rate, bits, overhead);
            return new ProblemText("How many bits a second must the radio carry?")
                .Step("Channels times samples times bits, and the overhead", figure)
                .Answers<DataRate>(figure.Value)
                .Slip(Slips.NoOverhead, figure.Value / (1 + overhead.Fraction))
                .Slip(Slips.Bytes, figure.Value / 8)
                .Slip(Slips.OneChannel, figure.Value / channels);
        }),
        new("converter-quantisation", Topic.Converter, 2, "Quantisation noise at the input", d =>
        {
            (VoltagePeakToPeak scale, BitCount bits, Ratio gain) = Chain(d);
            TextbookFigure step = ConverterFormulas.Step(scale, bits);
            TextbookFigure noise = ConverterFormulas.QuantisationNoise(Voltage.FromVolts(step.Value));
            double value = noise.Value / gain.Fraction;
            return new ProblemText("How large is the quantisation noise over 0…f_s/2, referred to the electrodes, rms? Other noise dithers the steps.")
                .Step("One step", step)
                .Step("An error that is uniform over one step has this rms", noise)
                .Step("At the electrodes it is smaller by the gain", "q/G", $"{Put.In(noise.Value, "V")}/{Put.In(gain.Fraction)}", value,
                    "V")
                .Answers<VoltageRms>(value)
                .Slip(Slips.NotReferred, noise.Value)
                .Slip(Slips.HalfStep, step.Value / 2 / gain.Fraction)
                .Slip(Slips.NoSquareRootOfTwelve, step.Value / 12 / gain.Fraction)
                .Slip(Slips.WrongStep, 2 * value);
        }),
        new("converter-noise-free-bits", Topic.Converter, 2, "Noise-free bits", d =>
        {
            VoltagePeakToPeak span =
            d.OneOf<VoltagePeakToPeak>("span", "full scale, peak-to-peak, at the input", 0.075, 0.1, 0.15, 0.2, 0.3, 0.375, 0.6, 0.8, 1.2, 2.4);
            VoltageRms noise = d.Part<VoltageRms>("σ", "noise at the input, rms", 0.2e-6, 330e-6, PreferredSeries.E24);
            TextbookFigure figure = ConverterFormulas.NoiseFreeBits(span, noise);
            return new ProblemText("How many noise-free bits does the reading have?")
                .Step($"The span over the noise's peak-to-peak, {TradeConstants.NoisePeakToPeak}·σ, in powers of two", figure)
                .AnswersWithin<BitCount>(figure.Value, 0.1)
                .Slip(Slips.EffectiveForNoiseFree, Math.Log2(span.Volts / noise.Volts))
                .Slip(Slips.TwoForTenLog, Math.Log10(span.Volts / noise.Volts / TradeConstants.NoisePeakToPeak))
                .Slip(Slips.OneSidedPeak, Math.Log2(span.Volts / noise.Volts / 3.3));
        }),
        new("converter-enob", Topic.Converter, 2, "Effective number of bits", d =>
        {
            Decibels ratio = d.Stepped<Decibels>("SINAD", "signal over noise and distortion, full-scale sine", 36, 96, 0.1);
            TextbookFigure figure = ConverterFormulas.EffectiveNumberOfBits(ratio);
            return new ProblemText("A data sheet gives the ratio of a full-scale sine to noise and distortion. How many bits does an ideal converter need for it?")
                .Step("The ideal ratio 6.02·N + 1.76, solved for N", figure)
                .AnswersWithin<BitCount>(figure.Value, 0.05)
                .Slip(Slips.NoOffsetOfSine, ratio.Value / TradeConstants.DecibelsPerBit)
                .Slip(Slips.PowerForBit, (ratio.Value - TradeConstants.DecibelsOfSine) / (TradeConstants.DecibelsPerBit / 2));
        }),
        new("converter-dynamic-range", Topic.Converter, 3, "Dynamic range of a chain", d =>
        {
            (VoltagePeakToPeak scale, Ratio gain) =
            (d.OneOf<VoltagePeakToPeak>("FS", "full scale of the converter, peak-to-peak", 2.5, 3, 3.3, 4.096, 5, 9),
                d.OneOf<Ratio>("G", "gain in front of it", 4, 6, 12, 24, 100, 500));
            VoltageRms noise = d.Part<VoltageRms>("σ", "total noise at the electrodes, rms", 0.3e-6, 3.3e-6);
            VoltagePeakToPeak atInput = VoltagePeakToPeak.FromVolts(scale.Volts / gain.Fraction);
            TextbookFigure figure = ConverterFormulas.DynamicRange(atInput, noise);
            double ratio = atInput.Volts / noise.Volts;
            return new ProblemText("What is the dynamic range of the chain: the largest sine's rms over the noise?")
                .Step("The full scale at the electrodes", "FS/G", $"{Put.In(scale.Volts, "V")}/{Put.In(gain.Fraction)}", atInput.Volts, "V")
                .Step("A full-scale sine has the rms FS/(2√2)", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.3, 4)
                .Slip(Slips.PeakToPeakForSine, 20 * Math.Log10(ratio))
                .Slip(Slips.PeakForSine, 20 * Math.Log10(ratio / 2))
                .Slip(Slips.TenForTwentyLog, figure.Value / 2)
                .Slip(Slips.NotReferred, 20 * Math.Log10(scale.Volts / (2 * Math.Sqrt(2) * noise.Volts)));
        }),
    ];

    private static (VoltagePeakToPeak Scale, BitCount Bits, Ratio Gain) Chain(Draw d) =>
        (d.OneOf<VoltagePeakToPeak>("FS", "full scale, peak-to-peak", 1.2, 1.8, 2.048, 2.5, 3, 3.3, 4.096, 5),
            d.OneOf<BitCount>("N", "resolution", 10, 12, 14, 16, 18), d.OneOf<Ratio>("G", "gain in front of it", 5, 12, 24, 60, 101, 200, 330, 505, 1001));
}
