using System.Numerics;
using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about mains, common mode and its rejection.</summary>
internal static class CmrrProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("cmrr-residue", Topic.Cmrr, 1, "What a rejection leaves", d =>
        {
            VoltageRms common = d.Part<VoltageRms>("V_cm", "common-mode voltage, rms", 1e-3, 100e-3, PreferredSeries.E24);
            Decibels rejection = d.OneOf<Decibels>("CMRR", "common-mode rejection", 60, 66, 74, 80, 86, 94, 100, 106);
            TextbookFigure figure = MainsFormulas.Residue(common, rejection);
            return new ProblemText("How much of the common-mode voltage appears as if it were signal, at the input, rms?")
                .Step("The rejection is a ratio of voltages", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.TenForTwentyLog, common.Volts / Math.Pow(10, rejection.Value / 10))
                .Slip(Slips.RmsForPeak, figure.Value * Math.Sqrt(2));
        }),
        new("cmrr-needed", Topic.Cmrr, 1, "Rejection needed", d =>
        {
            VoltageRms common = d.Part<VoltageRms>("V_cm", "common-mode voltage, rms", 1e-3, 100e-3, PreferredSeries.E24);
            VoltageRms residue = d.OneOf<VoltageRms>("V", "what may be left of it, rms", 0.1e-6, 0.2e-6, 0.3e-6, 0.4e-6, 0.5e-6, 0.7e-6, 1e-6, 1.5e-6, 2e-6);
            TextbookFigure figure = MainsFormulas.RejectionNeeded(common, residue);
            return new ProblemText("Which common-mode rejection is needed, in decibels?")
                .Step("A ratio of two voltages of the same kind", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.2, 4)
                .Slip(Slips.TenForTwentyLog, figure.Value / 2)
                .Slip(Slips.NaturalForTenLog, 20 * Math.Log(common / residue));
        }),
        new("cmrr-body-current", Topic.Cmrr, 1, "Displacement current through the body", d =>
        {
            (VoltageRms mains, Frequency line) = Mains(d);
            Capacitance body = d.Part<Capacitance>("C_p", "capacitance from the mains to the body", 0.3e-12, 9.1e-12, PreferredSeries.E96);
            TextbookFigure figure = MainsFormulas.DisplacementCurrent(mains, line, body);
            return new ProblemText("Which current flows from the mains through the body, rms? The body is near earth compared with the mains.")
                .Step("The current through a capacitor", figure)
                .Answers<Current>(figure.Value)
                .Slip(Slips.NoTwoPi, figure.Value / (2 * Math.PI))
                .Slip(Slips.RmsForPeak, figure.Value * Math.Sqrt(2))
                .Slip(Slips.PeakToPeakForRms, figure.Value * 2 * Math.Sqrt(2));
        }),
        new("cmrr-divider", Topic.Cmrr, 2, "Unequal electrodes", d =>
        {
            Frequency line = d.OneOf<Frequency>("f", "mains frequency", 50, 60);
            Resistance electrode = d.Part<Resistance>("Z", "impedance of each electrode, about, resistive", 150e3, 470e3);
            Resistance difference = d.Part<Resistance>("ΔZ", "difference of the two electrodes, resistive", 10e3, 68e3, PreferredSeries.E24);
            Capacitance input = d.Part<Capacitance>("C_in", "capacitance from each input to common, cable included", 10e-12, 220e-12);
            Complex reactance = new(0, -1 / (2 * Math.PI * line.Hertz * input.Farads));
            TextbookFigure figure = MainsFormulas.DividerRejection(reactance, difference.Ohms);
            return new ProblemText("Each electrode and its input form a divider. Which rejection do unequal electrodes leave, in decibels, whatever the amplifier? The inputs are taken as capacitances alone, far above the electrodes' impedance.")
                .Step("The impedance of one input", "1/(2πf·C_in)", $"1/(2π · {Put.In(line)} · {Put.In(input)})", reactance.Magnitude, "Ω",
                    Sources.CommonPractice)
                .Step("The difference of the two dividers", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.2)
                .Slip(Slips.WholeImpedance, 20 * Math.Log10(reactance.Magnitude / electrode.Ohms))
                .Slip(Slips.NoTwoPi, 20 * Math.Log10(reactance.Magnitude * 2 * Math.PI / difference.Ohms))
                .Slip(Slips.TenForTwentyLog, figure.Value / 2);
        }),
        new("cmrr-common-mode", Topic.Cmrr, 2, "Common mode at a ground electrode", d =>
        {
            (VoltageRms mains, Frequency line) = Mains(d);
            Capacitance body = d.Part<Capacitance>("C_p", "capacitance from the mains to the body", 1e-12, 4.7e-12);
            Resistance ground = d.Part<Resistance>("Z_g", "ground electrode with its resistor", 10e3, 470e3);
            TextbookFigure current = MainsFormulas.DisplacementCurrent(mains, line, body);
            double value = current.Value * ground.Ohms;
            return new ProblemText("The amplifier is earthed, so that the whole displacement current returns through the ground electrode. Which common-mode voltage does it make, rms?")
                .Step("The current through the body", current)
                .Step("Ohm's law at the ground electrode", "i·Z_g", $"{Put.In(current.Value, "A")} · {Put.In(ground)}", value, "V",
                    Sources.BodyCurrent)
                .Answers<VoltageRms>(value)
                .Slip(Slips.NoTwoPi, value / (2 * Math.PI))
                .Slip(Slips.RmsForPeak, value * Math.Sqrt(2))
                .Slip(Slips.PeakToPeakForRms, value * 2 * Math.Sqrt(2));
        }),
        new("cmrr-resistors", Topic.Cmrr, 2, "Difference amplifier of four resistors", d =>
        {
            Ratio gain = d.Stepped<Ratio>("G", "gain of the difference amplifier", 1, 200, 1);
            Ratio tolerance = d.OneOf<Ratio>("tol", "tolerance of each resistor", 0.0001, 0.0002, 0.0005, 0.001, 0.0025, 0.005, 0.01);
            TextbookFigure figure = MainsFormulas.RejectionOfFourResistors(gain.Fraction, tolerance);
            return new ProblemText("Four resistors make a difference amplifier. Which rejection is left in the worst case, in decibels? First order in the tolerance.")
                .Step("All four are off in the worst way", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.2)
                .Slip(Slips.OneResistor, 20 * Math.Log10((1 + gain.Fraction) / tolerance.Fraction))
                .Slip(Slips.TwoRatios, 20 * Math.Log10((1 + gain.Fraction) / (2 * tolerance.Fraction)))
                .Slip(Slips.TenForTwentyLog, figure.Value / 2);
        }),
        new("cmrr-loop", Topic.Cmrr, 2, "The leads' loop", d =>
        {
            Frequency line = d.OneOf<Frequency>("f", "mains frequency", 50, 60);
            MagneticFluxDensity field = d.Part<MagneticFluxDensity>("B", "flux density square to the loop, rms", 0.05e-6, 1e-6, PreferredSeries.E24);
            Area loop = d.OneOf<Area>("A", "area between the leads", 10e-4, 20e-4, 30e-4, 50e-4, 80e-4, 100e-4);
            TextbookFigure figure = MainsFormulas.LoopVoltage(line, field, loop);
            return new ProblemText("The field of a mains transformer passes the loop of the leads. Which voltage does it induce, rms? The field is even over the loop.")
                .Step("The flux changes 2πf times its size in a second", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.NoTwoPi, figure.Value / (2 * Math.PI))
                .Slip(Slips.RmsForPeak, figure.Value * Math.Sqrt(2));
        }),
        new("cmrr-combined", Topic.Cmrr, 3, "Several rejections in a row", d =>
        {
            Decibels electrodes = d.Stepped<Decibels>("CMRR₁", "left by unequal electrodes", 60, 84, 1);
            Decibels parts = d.Stepped<Decibels>("CMRR₂", "left by the input filters' mismatch", 62, 88, 1);
            Decibels amplifier = d.Stepped<Decibels>("CMRR₃", "of the amplifier", 66, 96, 1);
            Decibels[] all = [electrodes, parts, amplifier];
            TextbookFigure figure = MainsFormulas.RejectionsWorstCase(all);
            return new ProblemText("Three leaks turn common mode into signal. Which rejection is left in the worst case, in decibels?")
                .Step("Each leak is a ratio; in the worst case all are in phase and add", figure)
                .AnswersWithin<Decibels>(figure.Value, 0.15)
                .Slip(Slips.AveragedRejections, all.Min(one => one.Value))
                .Slip(Slips.RootSumForWorst, MainsFormulas.RejectionsRootSum(all).Value)
                .Slip(Slips.TenForTwentyLog, -10 * Math.Log10(all.Sum(one => Math.Pow(10, -one.Value / 20))));
        }),
        new("cmrr-shared-reference", Topic.Cmrr, 3, "A reference that carries all channels", d =>
        {
            Frequency line = d.OneOf<Frequency>("f", "mains frequency", 50, 60);
            Capacitance input = d.Part<Capacitance>("C", "capacitance of one input to common", 4.7e-12, 22e-12);
            Resistance electrode = d.Part<Resistance>("Z_e", "each electrode, resistive", 10e3, 100e3);
            int channels = (int)d.OneOf<Ratio>("N", "channels whose inputs hang on the reference", 4, 8, 16, 32).Fraction;
            TextbookFigure figure = MainsFormulas.SharedReferenceRejection(line, input, electrode.Ohms, channels);
            double load = 2 * Math.PI * line.Hertz * input.Farads * electrode.Ohms;
            return new ProblemText("All electrodes are alike, but the reference electrode carries the inputs of all channels. Which rejection is left, in decibels?")
                .Step("An active electrode carries one input, the reference N; the difference of the two dividers", figure)
                .Say("As long as the load is small this is −20·log10((N − 1)·2πf·C·Z_e)")
                .AnswersWithin<Decibels>(figure.Value, 0.2)
                .Slip(Slips.NoShared, -20 * Math.Log10(load))
                .Slip(Slips.NoTwoPi, -20 * Math.Log10((channels - 1) * load / (2 * Math.PI)))
                .Slip(Slips.TenForTwentyLog, figure.Value / 2);
        }),
    ];

    internal static (VoltageRms Mains, Frequency Line) Mains(Draw d)
    {
        VoltageRms mains = d.OneOf<VoltageRms>("V", "mains to earth, rms", 120, 230);
        return (mains, d.Give<Frequency>("f", "mains frequency", mains.Volts == 120 ? 60 : 50));
    }
}
