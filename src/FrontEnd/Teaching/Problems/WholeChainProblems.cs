using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about the whole chain: totals of several parts.</summary>
internal static class WholeChainProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("chain-noise", Topic.WholeChain, 3, "Noise budget of a chain", d =>
        {
            Resistance electrode = d.Part<Resistance>("R_e", "each of two electrodes, resistive", 10e3, 330e3);
            Resistance protection = d.Part<Resistance>("R_p", "protection resistor in each of the two leads", 10e3, 100e3);
            VoltageNoiseDensity e = d.Part<VoltageNoiseDensity>("e", "voltage noise density of the amplifier, white", 15e-9, 82e-9);
            CurrentNoiseDensity i = d.Part<CurrentNoiseDensity>("i", "current noise density of each input, white", 10e-15, 220e-15);
            Ratio gain = d.OneOf<Ratio>("G", "gain up to the converter", 5, 8, 12, 24);
            VoltageRms converter = d.Part<VoltageRms>("σ_adc", "noise of the converter in the band, at its pin, rms", 2e-6, 15e-6);
            Temperature t = d.OneOf<Temperature>("T", "temperature of skin and board", 298.15);
            (Frequency low, Frequency high) = NoiseProblems.Band(d);
            Resistance two = Resistance.FromOhms(2 * electrode.Ohms), both = Resistance.FromOhms(2 * protection.Ohms);
            TextbookFigure skin = NoiseFormulas.Thermal(two, t, low, high), board = NoiseFormulas.Thermal(both, t, low, high);
            TextbookFigure voltage = NoiseFormulas.Amplifier(e, default, low, high);
            TextbookFigure one = NoiseFormulas.Current(i, electrode + protection, default, low, high);
            double currents = Math.Sqrt(2) * one.Value, referred = converter.Volts / gain.Fraction;
            VoltageRms[] parts = [.. new[] { skin.Value, board.Value, voltage.Value, currents, referred }.Select(VoltageRms.FromVolts)];
            TextbookFigure total = NoiseFormulas.Together(parts);
            double Without(int part) => Math.Sqrt(parts.Where((_, k) => k != part).Sum(p => p.Volts * p.Volts));
            return new ProblemText("How large is the noise of the whole chain in the band, referred to the electrodes, rms? Skin noise beyond the thermal one is left out.")
                .Step("Thermal noise of both electrodes in series", skin)
                .Step("Thermal noise of both protection resistors", board)
                .Step("The amplifier's voltage noise", voltage)
                .Step("One input's current through its electrode and resistor", one)
                .Step("Both inputs' currents are independent", "√2·σ", $"√2 · {Put.In(one.Value, "V")}", currents, "V")
                .Step("The converter's noise, referred to the electrodes", "σ_adc/G",
                    $"{Put.In(converter.Volts, "V")}/{Put.In(gain.Fraction)}", referred, "V", Sources.CommonPractice)
                .Step("Independent noises add as squares", total)
                .Answers<VoltageRms>(total.Value)
                .Slip(Slips.LinearSum, parts.Sum(part => part.Volts))
                .Slip(Slips.NotReferred, Math.Sqrt(Math.Pow(Without(4), 2) + (converter.Volts * converter.Volts)))
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * total.Value)
                .Slip(Slips.HalfTheBand, Math.Sqrt((Math.Pow(Without(4), 2) / 2) + (referred * referred)))
                .Slip(Slips.LargestAlone, parts.Max(part => part.Volts));
        }),
        new("chain-mains", Topic.WholeChain, 3, "Mains budget of a chain", d =>
        {
            (VoltageRms mains, Frequency line) = CmrrProblems.Mains(d);
            Capacitance body = d.Part<Capacitance>("C_p", "capacitance from the mains to the body", 1e-12, 4.7e-12);
            Resistance ground = d.Part<Resistance>("Z_g", "ground electrode with its resistor; the box is earthed", 10e3, 100e3);
            Resistance difference = d.Part<Resistance>("ΔZ", "difference of the two electrodes", 10e3, 100e3);
            Capacitance input = d.Part<Capacitance>("C_in", "capacitance from each input to common", 10e-12, 100e-12);
            Decibels rejection = d.OneOf<Decibels>("CMRR", "of the amplifier at the mains", 70, 80, 86, 90, 100);
            TextbookFigure current = MainsFormulas.DisplacementCurrent(mains, line, body);
            double common = current.Value * ground.Ohms;
            double reactance = 1 / (2 * Math.PI * line.Hertz * input.Farads);
            TextbookFigure divider = MainsFormulas.DividerVoltage(VoltageRms.FromVolts(common), reactance, difference.Ohms);
            TextbookFigure amplifier = MainsFormulas.Residue(VoltageRms.FromVolts(common), rejection);
            double total = divider.Value + amplifier.Value;
            return new ProblemText("How much mains stands at the electrodes as if it were signal, rms, in the worst case? Leads and loop are left out.")
                .Step("The current through the body", current)
                .Step("Its voltage at the ground electrode is the common mode", "i·Z_g",
                    $"{Put.In(current.Value, "A")} · {Put.In(ground)}", common, "V", Sources.BodyCurrent)
                .Step("Unequal electrodes turn a share of it into signal", divider)
                .Step("The amplifier's rejection leaves a share too", amplifier)
                .Step("In the worst case the two add", "divider + amplifier",
                    $"{Put.In(divider.Value, "V")} + {Put.In(amplifier.Value, "V")}", total, "V")
                .Answers<VoltageRms>(total)
                .Slip(Slips.DividerAlone, divider.Value)
                .Slip(Slips.AmplifierAlone, amplifier.Value)
                .Slip(Slips.RootSumForWorst, Math.Sqrt((divider.Value * divider.Value) + (amplifier.Value * amplifier.Value)))
                .Slip(Slips.NoTwoPi, (divider.Value / Math.Pow(2 * Math.PI, 2)) + (amplifier.Value / (2 * Math.PI)))
                .Slip(Slips.RmsForPeak, Math.Sqrt(2) * total);
        }),
        new("chain-noise-free-bits", Topic.WholeChain, 3, "Noise-free bits of a chain", d =>
        {
            VoltagePeakToPeak scale = d.OneOf<VoltagePeakToPeak>("FS", "full scale of the converter, peak-to-peak", 1.2, 1.8, 2.048, 2.5, 3, 3.3, 4.096, 5);
            Ratio gain = d.OneOf<Ratio>("G", "gain in front of it", 2, 4, 6, 12, 24);
            VoltageRms board = d.Part<VoltageRms>("σ_in", "noise of electrodes and amplifier at the electrodes, rms", 0.3e-6, 15e-6);
            VoltageRms converter = d.Part<VoltageRms>("σ_adc", "noise of the converter at its pin, rms", 10e-6, 820e-6, PreferredSeries.E24);
            double referred = converter.Volts / gain.Fraction, span = scale.Volts / gain.Fraction;
            TextbookFigure total = NoiseFormulas.Together(board, VoltageRms.FromVolts(referred));
            TextbookFigure figure = ConverterFormulas.NoiseFreeBits(VoltagePeakToPeak.FromVolts(span), VoltageRms.FromVolts(total.Value));
            return new ProblemText("How many noise-free bits has the whole chain?")
                .Step("The converter's noise at the electrodes", "σ_adc/G", $"{Put.In(converter.Volts, "V")}/{Put.In(gain.Fraction)}",
                    referred, "V", Sources.CommonPractice)
                .Step("Both noises together", total)
                .Step("The full scale at the electrodes", "FS/G", $"{Put.In(scale.Volts, "V")}/{Put.In(gain.Fraction)}", span, "V",
                    Sources.CommonPractice)
                .Step("The full scale over the peak-to-peak value of the noise, in powers of two", figure)
                .AnswersWithin<BitCount>(figure.Value, 0.1)
                .Slip(Slips.EffectiveForNoiseFree, Math.Log2(span / total.Value))
                .Slip(Slips.NotReferred, Math.Log2(scale.Volts / TradeConstants.NoisePeakToPeak / total.Value))
                .Slip(Slips.TwoForTenLog, Math.Log10(span / TradeConstants.NoisePeakToPeak / total.Value));
        }),
    ];
}
