using FrontEnd.Textbook;

namespace FrontEnd.Teaching.Problems;

/// <summary>Problems about noise.</summary>
internal static class NoiseProblems
{
    public static IReadOnlyList<Template> All { get; } =
    [
        new("noise-thermal", Topic.Noise, 1, "Noise of a resistor", d =>
        {
            Resistance r = d.Part<Resistance>("R", "resistance", 1e3, 1e6);
            Temperature t = d.OneOf<Temperature>("T", "its temperature", 298.15);
            (Frequency low, Frequency high) = Band(d);
            TextbookFigure figure = NoiseFormulas.Thermal(r, t, low, high);
            return new ProblemText("A protection resistor stands in series with an amplifier input. How large is its own noise in the band, rms?")
                .Step("A resistor makes noise of the one-sided density 4kTR; over a band the variance is the density times the width",
                    figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.HalfTheBand, figure.Value / Math.Sqrt(2))
                .Slip(Slips.NoFour, figure.Value / 2)
                .Slip(Slips.PeakToPeakForRms, figure.Value * TradeConstants.NoisePeakToPeak)
                .Slip(Slips.NoRootOfBand, figure.Value * Math.Sqrt(high.Hertz - low.Hertz));
        }),
        new("noise-peak-to-peak", Topic.Noise, 1, "Peak-to-peak of noise", d =>
        {
            VoltageRms noise = d.Part<VoltageRms>("σ", "noise at the electrodes, rms", 0.05e-6, 22e-6, PreferredSeries.E96);
            TextbookFigure figure = NoiseFormulas.PeakToPeak(noise);
            return new ProblemText("A recording shows only Gaussian noise. What peak-to-peak value is printed for it (0.1 % of the time may lie outside)?")
                .Step("For Gaussian noise 3.3σ to each side leave 0.1 % outside", figure)
                .Answers<VoltagePeakToPeak>(figure.Value)
                .Slip(Slips.SineForNoise, 2 * Math.Sqrt(2) * noise.Volts)
                .Slip(Slips.OneSidedPeak, 3.3 * noise.Volts)
                .Slip(Slips.SigmaForPeak, 2 * noise.Volts);
        }),
        new("noise-together", Topic.Noise, 1, "Independent noises together", d =>
        {
            VoltageRms a = d.Part<VoltageRms>("σ₁", "noise of the electrodes, rms", 0.3e-6, 1.2e-6, PreferredSeries.E24);
            VoltageRms b = d.Part<VoltageRms>("σ₂", "noise of the amplifier, rms", 0.2e-6, 0.9e-6, PreferredSeries.E24);
            VoltageRms c = d.Part<VoltageRms>("σ₃", "noise of the converter, rms", 0.1e-6, 0.6e-6, PreferredSeries.E24);
            TextbookFigure figure = NoiseFormulas.Together(a, b, c);
            return new ProblemText("Three independent noises are known, all referred to the input. How large is the total, rms?")
                .Step("Variances of independent noises add", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.LinearSum, a.Volts + b.Volts + c.Volts)
                .Slip(Slips.LargestAlone, Math.Max(a.Volts, Math.Max(b.Volts, c.Volts)))
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * figure.Value);
        }),
        new("noise-amplifier", Topic.Noise, 2, "Amplifier noise with flicker", d =>
        {
            VoltageNoiseDensity e = d.Part<VoltageNoiseDensity>("e", "white voltage noise density", 5e-9, 100e-9);
            Frequency corner = d.Part<Frequency>("f_c", "flicker corner", 5, 150);
            (Frequency low, Frequency high) = Band(d);
            TextbookFigure figure = NoiseFormulas.Amplifier(e, corner, low, high);
            double width = high.Hertz - low.Hertz, ratio = high / low;
            return new ProblemText("An amplifier's voltage noise is white above a corner and rises as 1/f in power below it. How large is it in the band, rms?")
                .Step("The integral of e²·(1 + f_c/f) from f₁ to f₂ is e²·(f₂ − f₁ + f_c·ln(f₂/f₁))", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.NoFlicker, e.VoltsPerRootHertz * Math.Sqrt(width))
                .Slip(Slips.TenForNaturalLog, e.VoltsPerRootHertz * Math.Sqrt(width + (corner.Hertz * Math.Log10(ratio))))
                .Slip(Slips.HalfTheBand, figure.Value / Math.Sqrt(2))
                .Slip(Slips.NoRoot, e.VoltsPerRootHertz * (width + (corner.Hertz * Math.Log(ratio))));
        }),
        new("noise-current", Topic.Noise, 2, "Current noise in an electrode", d =>
        {
            CurrentNoiseDensity i = d.Part<CurrentNoiseDensity>("i", "input current noise density, white", 10e-15, 500e-15);
            Resistance source = d.Part<Resistance>("R", "resistance of the electrode", 100e3, 2.2e6);
            (Frequency low, Frequency high) = Band(d);
            TextbookFigure figure = NoiseFormulas.Current(i, source, default, low, high);
            return new ProblemText("An amplifier's input current noise flows through a dry electrode. What noise voltage does it make in the band, rms?")
                .Step("The current's density times the resistance is a voltage density; the root of the width makes it an rms", figure)
                .Answers<VoltageRms>(figure.Value)
                .Slip(Slips.HalfTheBand, figure.Value / Math.Sqrt(2))
                .Slip(Slips.NoRootOfBand, figure.Value * Math.Sqrt(high.Hertz - low.Hertz))
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * figure.Value);
        }),
        new("noise-referred", Topic.Noise, 2, "Density referred to the input", d =>
        {
            VoltageNoiseDensity input = d.Part<VoltageNoiseDensity>("e_ni", "noise density of the input stage", 8e-9, 68e-9);
            VoltageNoiseDensity output = d.Part<VoltageNoiseDensity>("e_no", "noise density of the output stage", 100e-9, 680e-9);
            Ratio gain = d.OneOf<Ratio>("G", "gain", 2, 3, 5, 8, 12, 20, 33);
            TextbookFigure figure = NoiseFormulas.InputReferredDensity(input, output, gain.Fraction);
            (double ni, double no) = (input.VoltsPerRootHertz, output.VoltsPerRootHertz);
            return new ProblemText("A data sheet gives the noise of an instrumentation amplifier's input stage and output stage apart. What density stands at the input?")
                .Step("The output stage's part is divided by the gain; the two are independent", figure)
                .Answers<VoltageNoiseDensity>(figure.Value)
                .Slip(Slips.NotReferred, Math.Sqrt((ni * ni) + (no * no)))
                .Slip(Slips.LinearSum, ni + (no / gain.Fraction))
                .Slip(Slips.GainTwice, Math.Sqrt((ni * ni) + (no * no * gain.Fraction * gain.Fraction)));
        }),
        new("noise-sweeps", Topic.Noise, 2, "Sweeps to average", d =>
        {
            Ratio ratio = d.OneOf<Ratio>("S", "wanted ratio of the response's amplitude to the rms noise of the average", 2, 3, 4, 5);
            VoltageRms noise = d.Part<VoltageRms>("σ", "noise of one sweep, rms", 3e-6, 18e-6);
            Voltage amplitude = d.Part<Voltage>("A", "amplitude of the response", 0.5e-6, 2.7e-6);
            TextbookFigure figure = NoiseFormulas.SweepsToAverage(ratio.Fraction, noise, amplitude);
            double sweeps = Math.Ceiling(figure.Value - 1e-9);
            return new ProblemText("An evoked response is smaller than the noise of one sweep. How many sweeps must be averaged, as a whole number?")
                .Step("After N sweeps the noise is σ/√N; solve A/(σ/√N) = S for N", figure)
                .Say("Only a whole number of sweeps can be averaged: round up")
                .Answers<Ratio>(sweeps, 0.01, 6)
                .RoundedFrom(figure.Value)
                .Slip(Slips.NoSquare, Math.Ceiling(ratio.Fraction * noise.Volts / amplitude.Volts))
                .Slip(Slips.Product, Math.Ceiling(Math.Pow(noise.Volts / amplitude.Volts / ratio.Fraction, 2)));
        }),
        new("noise-bandwidth", Topic.Noise, 3, "Noise bandwidth of a filter", d =>
        {
            VoltageNoiseDensity e = d.Part<VoltageNoiseDensity>("e", "white noise density at the filter's input", 20e-9, 200e-9, PreferredSeries.E24);
            Frequency corner = d.OneOf<Frequency>("f_c", "−3 dB corner of the low-pass", 40, 70, 100, 150, 200);
            int order = (int)d.OneOf<Ratio>("n", "order of the Butterworth low-pass", 1, 2, 3).Fraction;
            TextbookFigure factor = NoiseFormulas.BandwidthFactorButterworth(order);
            double width = factor.Value * corner.Hertz;
            double value = e.VoltsPerRootHertz * Math.Sqrt(width);
            return new ProblemText("White noise passes a Butterworth low-pass of gain 1. How large is the noise behind it from 0 Hz upwards, rms?")
                .Step("A brick wall that passes as much noise is wider than the −3 dB corner by this factor", factor)
                .Step("Its width is the noise bandwidth", "B = factor·f_c", $"{Put.In(factor.Value)} · {Put.In(corner)}", width, "Hz",
                    Sources.NoiseBandwidth)
                .Step("The rms is the density times the root of that width", "e·√B", $"{Put.In(e)} · √{Put.In(width, "Hz")}", value, "V")
                .Answers<VoltageRms>(value)
                .Slip(Slips.NoNoiseBandwidth, e.VoltsPerRootHertz * Math.Sqrt(corner.Hertz))
                .Slip(Slips.NoRootOfBand, e.VoltsPerRootHertz * width)
                .Slip(Slips.PeakToPeakForRms, TradeConstants.NoisePeakToPeak * value);
        }),
        new("noise-corner", Topic.Noise, 3, "Flicker corner from a data sheet", d =>
        {
            VoltageNoiseDensity white = d.Part<VoltageNoiseDensity>("e", "density well above the corner", 8e-9, 33e-9, PreferredSeries.E24);
            VoltageNoiseDensity point = d.Part<VoltageNoiseDensity>("e₁", "density read off the curve", 47e-9, 220e-9, PreferredSeries.E24);
            Frequency at = d.OneOf<Frequency>("f₁", "frequency at which it was read", 0.1, 1, 2, 5);
            TextbookFigure figure = NoiseFormulas.FlickerCorner(point, at, white);
            double ratio = point.VoltsPerRootHertz / white.VoltsPerRootHertz;
            return new ProblemText("A data sheet's noise curve rises towards low frequencies. From one point of it, where is the flicker corner?")
                .Step("At f₁ the flicker part of the variance is e₁² − e²; it falls with 1/f and equals e² at the corner", figure)
                .Answers<Frequency>(figure.Value)
                .Slip(Slips.NoSquare, at.Hertz * (ratio - 1))
                .Slip(Slips.WhiteNotTakenAway, at.Hertz * ratio * ratio)
                .Slip(Slips.Product, at.Hertz / ((ratio * ratio) - 1));
        }),
    ];

    internal static (Frequency Low, Frequency High) Band(Draw d) =>
        (d.OneOf<Frequency>("f₁", "low edge of the band", 0.5, 1, 2, 5),
            d.OneOf<Frequency>("f₂", "high edge of the band", 30, 40, 45, 70, 80, 100));
}
