using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about gain, bandwidth and what a stage can carry.</summary>
internal static class GainProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("gain-stage", Topic.Gain, 1, "Gain of a stage", d =>
        {
            Resistance rf = d.Part<Resistance>("Rf", "feedback resistor", 22e3, 220e3, PreferredSeries.E24);
            Resistance rg = d.Part<Resistance>("Rg", "resistor from the inverting input to common", 4.7e3, 33e3);
            TextbookFigure figure = AmplifierFormulas.StageGain(rf, rg);
            return new ProblemText("What is the gain of this non-inverting op-amp stage?")
                .Step("The whole output stands over Rf + Rg, the input over Rg", figure)
                .Answers<Ratio>(figure.Value, 0.01, 4)
                .Slip(Slips.InvertingGain, rf / rg)
                .Slip(Slips.SwappedResistors, 1 + (rg / rf));
        }),
        new("gain-decibels", Topic.Gain, 1, "Gain in decibels", d =>
        {
            Ratio gain = d.Part<Ratio>("G", "voltage gain", 2, 2000, PreferredSeries.E96);
            double value = 20 * Math.Log10(gain.Fraction);
            return new ProblemText("What is this voltage gain in decibels?")
                .Step("A ratio of voltages", "20·log10 G", $"20·log10 {Put.In(gain.Fraction)}", value, "dB", Sources.CommonPractice)
                .AnswersWithin<Decibels>(value, 0.1)
                .Slip(Slips.TenForTwentyLog, value / 2)
                .Slip(Slips.NaturalForTenLog, 20 * Math.Log(gain.Fraction));
        }),
        new("gain-bandwidth", Topic.Gain, 2, "Bandwidth of an inverting stage", d =>
        {
            Frequency product = d.OneOf<Frequency>("GBW", "gain-bandwidth product of the op-amp", 100e3, 350e3, 1e6, 2.2e6, 5.5e6, 10e6, 18e6);
            Resistance rf = d.Part<Resistance>("Rf", "feedback resistor", 22e3, 180e3, PreferredSeries.E24);
            Resistance rg = d.Part<Resistance>("Rin", "input resistor", 10e3, 33e3);
            double noiseGain = 1 + (rf / rg);
            TextbookFigure figure = AmplifierFormulas.Bandwidth(product, noiseGain);
            return new ProblemText("An inverting stage has an input resistor and a feedback resistor. At which frequency is its gain 3 dB down?")
                .Step("The loop sees the noise gain, also where the signal is inverted", AmplifierFormulas.StageGain(rf, rg))
                .Step("The corner is where the open-loop gain has fallen to the noise gain", figure)
                .Answers<Frequency>(figure.Value)
                .Slip(Slips.SignalForNoiseGain, product.Hertz / (rf / rg))
                .Slip(Slips.Product, product.Hertz * noiseGain);
        }),
        new("gain-first-stage", Topic.Gain, 2, "Greatest gain of a dc-coupled stage", d =>
        {
            Voltage supply = d.OneOf<Voltage>("V_s", "supply at its lowest, the reference at half of it", 1.8, 2.4, 2.7, 3, 3.3, 3.6, 4.5, 5);
            Voltage margin = d.OneOf<Voltage>("h", "margin of the output to each rail", 0.05, 0.08, 0.1, 0.15, 0.2);
            Voltage offset = d.OneOf<Voltage>("V_off", "electrode offset to be survived", 0.1, 0.15, 0.2, 0.25, 0.3);
            Voltage signal = d.OneOf<Voltage>("V_sig", "peak of signal and artefacts", 0.001, 0.002, 0.005);
            TextbookFigure figure = AmplifierFormulas.FirstStageGainLimit(supply, margin, offset, signal);
            double carried = offset.Volts + signal.Volts;
            return new ProblemText("How large may the gain of a dc-coupled first stage be so that it does not clip?")
                .Step("Half the supply less the margin must carry offset and signal, amplified", figure)
                .Answers<Ratio>(figure.Value)
                .Slip(Slips.NoHalfSupply, (supply.Volts - margin.Volts) / carried)
                .Slip(Slips.NoOffset, ((supply.Volts / 2) - margin.Volts) / signal.Volts)
                .Slip(Slips.NoHeadroom, supply.Volts / 2 / carried);
        }),
        new("gain-supply-ripple", Topic.Gain, 2, "Supply ripple at the input", d =>
        {
            VoltageRms ripple = d.Part<VoltageRms>("V", "ripple on the supply, rms", 2e-3, 91e-3, PreferredSeries.E24);
            Decibels rejection = d.OneOf<Decibels>("PSRR", "supply rejection at its frequency", 54, 60, 66, 70, 74, 77, 80, 86, 94);
            TextbookFigure figure = AmplifierFormulas.SupplyRipple(ripple, rejection);
            return new ProblemText("Radio bursts make ripple on the supply. How large does it appear at the amplifier's input, rms?")
                .Step("The rejection is a ratio of voltages", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.TenForTwentyLog, ripple.Volts / Math.Pow(10, rejection.Value / 10))
                .Slip(Slips.RmsForPeak, figure.Value * Math.Sqrt(2));
        }),
        new("gain-inner-nodes", Topic.Gain, 3, "Inner nodes of an instrumentation amplifier", d =>
        {
            Voltage supply = d.OneOf<Voltage>("V_s", "supply at its lowest", 2.4, 2.7, 3, 3.3, 3.6, 5);
            Voltage margin = d.OneOf<Voltage>("h", "margin of each inner node to each rail", 0.05, 0.1, 0.15, 0.2);
            Voltage common = d.Stepped<Voltage>("V_cm", "common mode above the negative rail", 0.6, 1.4, 0.05);
            Voltage difference = d.Stepped<Voltage>("V_d", "greatest input difference, offset and signal", 0.102, 0.352, 0.01);
            TextbookFigure figure = AmplifierFormulas.InnerNodeGainLimit(supply, margin, common, difference);
            double low = common.Volts - margin.Volts, high = supply.Volts - margin.Volts - common.Volts;
            return new ProblemText("The two inner nodes of a three-op-amp instrumentation amplifier sit at V_cm ± G·V_d/2. How large may its first-stage gain be?")
                .Step("The nearer rail limits; each node moves by half of G·V_d", figure)
                .Answers<Ratio>(figure.Value)
                .Slip(Slips.InnerFactor, figure.Value / 2)
                .Slip(Slips.FarRail, 2 * Math.Max(low, high) / difference.Volts)
                .Slip(Slips.NoHeadroom, 2 * Math.Min(supply.Volts - common.Volts, common.Volts) / difference.Volts);
        }),
        new("gain-settling", Topic.Gain, 3, "Settling of an ac coupling", d =>
        {
            Resistance r = d.Part<Resistance>("R", "resistor to common", 1e6, 10e6);
            Capacitance c = d.Part<Capacitance>("C", "coupling capacitor", 100e-9, 1e-6, PreferredSeries.E6);
            Voltage step = d.OneOf<Voltage>("V₀", "step of the electrode's offset", 0.1, 0.2, 0.3);
            Voltage tolerance = d.OneOf<Voltage>("V_tol", "what may be left of it", 10e-6, 20e-6, 50e-6, 100e-6);
            TextbookFigure figure = FilterFormulas.Settling(r, c, step, tolerance);
            double tau = (r * c).Seconds;
            return new ProblemText("An electrode is pressed on and its offset jumps. How long until a first-order ac coupling leaves no more of the jump than wanted?")
                .Step("The step decays with exp(−t/RC)", figure)
                .Answers<Duration>(figure.Value)
                .Slip(Slips.TenForNaturalLog, tau * Math.Log10(step / tolerance))
                .Slip(Slips.OneTimeConstant, tau)
                .Slip(Slips.TwoPiTooMuch, 2 * Math.PI * figure.Value);
        }),
    ];
}
