using System.Numerics;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using MathNet.Numerics.IntegralTransforms;
using Xunit;

namespace FrontEnd.Tests.Bench;

public sealed class BenchTests
{
    private static Design Board { get; } = Designs.Gel;

    private static BenchReading Test(string name, Design? design = null) => BenchPlan.Of(design ?? Board).Readings.Single(test => test.Name == name);

    /// <summary>Gaussian noise of a test's predicted density, 60 s, made in the frequency domain: not by the estimator that it is compared with.</summary>
    private static double[] Synthesised(Design design, string name, int seed, double factor = 1)
    {
        Design fixture = Test(name, design).Design;
        double rate = design.Converter.Rate.Hertz;
        int n = (int)(60 * rate);
        var random = new Random(seed);
        double[] hertz = [.. Enumerable.Range(1, (n / 2) - 1).Select(k => k * rate / n)];
        double[] density = new PredictedSpectrum(fixture).At(hertz);
        var bins = new Complex[n];
        for (int k = 1; k < n / 2; k++)
        {
            // Power of one bin S·fs/n, half in each of the two conjugate bins: E|X|² = S·fs·n/2.
            double sigma = Math.Sqrt(density[k - 1] * rate * n / 4);
            bins[k] = new Complex(sigma * Gaussian(random), sigma * Gaussian(random));
            bins[n - k] = Complex.Conjugate(bins[k]);
        }

        Fourier.Inverse(bins, FourierOptions.NoScaling);
        return [.. bins.Select(bin => bin.Real / n * factor)];
    }

    private static double Gaussian(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double[] WithLine(double[] samples, double rate, double hertz, double rms) =>
        [.. samples.Select((sample, i) => sample + (Math.Sqrt(2) * rms * Math.Sin(2 * Math.PI * hertz * i / rate)))];

    private static BenchResult Compare(Design design, string name, double[] samples)
    {
        (BenchResult? result, IReadOnlyList<Finding> findings) = BenchComparison.Recording(design, name, new Recording("1", design.Converter.Rate, samples));
        Assert.Empty(findings);
        return result!;
    }

    [Theory]
    [InlineData("shorted", 1)]
    [InlineData("shorted", 2)]
    [InlineData("51k-47n", 3)]
    [InlineData("620k-4.7n", 4)]
    public void Recording_OfThePredictedSpectrum_Passes(string name, int seed)
    {
        foreach (Design design in new[] { Designs.Gel, Designs.Dry })
        {
            BenchResult result = Compare(design, name, Synthesised(design, name, seed));
            Assert.True(result.Verdict == VerdictKind.Pass, $"{design.Name}: {result.Because} {string.Join("; ", result.Suspects.Select(suspect => suspect.Kind + " " + suspect.Evidence))} {string.Join("; ", result.Lines)}");
            Assert.Empty(result.Suspects);
            Assert.Equal(2, result.Spectra.Count);
        }
    }

    [Theory]
    [InlineData("shorted", 1)]
    [InlineData("10k", 5)]
    [InlineData("620k-4.7n", 4)]
    public void Recording_SixDecibelsLouder_FailsWithALouderPartFirst(string name, int seed)
    {
        BenchResult result = Compare(Board, name, Synthesised(Board, name, seed, factor: 2));
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(SuspectKind.LouderPart, result.Suspects[0].Kind);
        Assert.Equal(2, ((VoltageRms)result.Measured).Volts / ((VoltageRms)result.Reading.Expected!).Volts, 0.08);
    }

    [Fact]
    public void Recording_WithAMainsLine_FailsWithMainsPickupFirst()
    {
        double sigma = Test("shorted").Expected!.SiValue;
        BenchResult result = Compare(Board, "shorted", WithLine(Synthesised(Board, "shorted", 1), Board.Converter.Rate.Hertz, 50.1, 2 * sigma));
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(SuspectKind.MainsPickup, result.Suspects[0].Kind);
        Assert.Equal(1, result.Lines[0].Harmonic);
        Assert.Equal(50.1, result.Lines[0].Frequency.Hertz, 0.1);
        Assert.Equal(2 * sigma, result.Lines[0].Rms.Volts, 0.05 * sigma);
    }

    [Fact]
    public void Recording_WithAFoldedHarmonicInTheBand_FailsWithAliasingFirst()
    {
        // The fifth harmonic of 60 Hz, 300 Hz, lands at 44 Hz at 256 S/s, the fourth at 16 Hz: only an even harmonic folds into the band.
        Design design = Board with { Converter = Board.Converter with { Rate = Frequency.FromHertz(256) }, Mains = Board.Mains with { Frequency = Frequency.FromHertz(60) } };
        double sigma = Test("shorted", design).Expected!.SiValue;
        BenchResult result = Compare(design, "shorted", WithLine(Synthesised(design, "shorted", 1), 256, 16, sigma));
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(SuspectKind.Aliasing, result.Suspects[0].Kind);
        Assert.Equal(4, result.Lines[0].Harmonic);
    }

    [Fact]
    public void Recording_HalfAsLoud_IsTooQuiet()
    {
        BenchResult result = Compare(Board, "shorted", Synthesised(Board, "shorted", 1, factor: 0.5));
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(SuspectKind.TooQuiet, result.Suspects[0].Kind);
    }

    [Fact]
    public void Recording_WithFlicker_PointsToLowFrequencies()
    {
        double[] samples = Synthesised(Board, "shorted", 1);
        var random = new Random(9);
        double walk = 0, sigma = Test("shorted").Expected!.SiValue;
        for (int i = 0; i < samples.Length; i++)
        {
            walk = (0.99 * walk) + (0.4 * sigma * Gaussian(random));
            samples[i] += walk;
        }

        Assert.Equal(SuspectKind.LowFrequency, Compare(Board, "shorted", samples).Suspects[0].Kind);
    }

    [Fact]
    public void Recording_OfZeros_IsADeadChannel() =>
        Assert.Equal(SuspectKind.DeadChannel, Compare(Board, "shorted", new double[15000]).Suspects[0].Kind);

    [Fact]
    public void Recording_OfAnAliasTone_IsReadToOnePercent()
    {
        BenchReading test = Test("alias-240");
        double rms = test.Expected!.SiValue;
        double[] samples = WithLine(new double[15000], 250, test.Line!.Value.Hertz, rms);
        BenchResult result = Compare(Board, "alias-240", samples);
        Assert.Equal(VerdictKind.Pass, result.Verdict);
        Assert.Equal(rms, result.Measured.SiValue, 0.01 * rms);
        Assert.Equal(VerdictKind.Fail, Compare(Board, "alias-240", WithLine(new double[15000], 250, test.Line.Value.Hertz, 2 * rms)).Verdict);
    }

    [Fact]
    public void Recording_ThatCannotBeUsed_IsAFinding()
    {
        static string Code(string name, Recording recording) => BenchComparison.Recording(Board, name, recording).Findings.Single().Code;
        Frequency rate = Board.Converter.Rate;
        Assert.Equal("FE0711", Code("shorted", new Recording("", rate, new double[100])));
        Assert.Equal("FE0712", Code("shorted", new Recording("", Frequency.FromHertz(200), new double[15000])));
        Assert.Equal("FE0713", Code("step", new Recording("", rate, new double[15000])));
        Assert.Equal("FE0714", Code("short", new Recording("", rate, new double[15000])));
        Assert.Equal("FE0716", Code("shorted", new Recording("", rate, [.. Enumerable.Repeat(double.NaN, 15000)])));
    }

    [Fact]
    public void Shorted_IsTheEvaluatorsNoiseWithoutElectrodes()
    {
        // noise.shorted leaves out the electrodes' noise and keeps their loading; with shorts the two differ by the amplifier's current in the electrodes.
        double shorted = Test("shorted").Expected!.SiValue, evaluated = Evaluator.Evaluate(Board)["noise.shorted"].Si;
        Assert.Equal(evaluated, shorted, 0.01 * evaluated);
    }

    [Fact]
    public void Noise_LargerPartsAtTheInputs_ReadsHigher()
    {
        double[] readings = [Test("shorted").Expected!.SiValue, Test("10k").Expected!.SiValue, Test("620k-4.7n").Expected!.SiValue];
        Assert.Equal(readings.Order(), readings);

        // Re Z of two 10 kΩ resistors at 298.15 K adds 18.15 nV/√Hz, in 39.5 Hz 0.114 µV rms, to what shorted inputs read (4kTR, worked out by hand);
        // the digital high-pass and the converter's droop take some percent of it.
        double added = Math.Sqrt((readings[1] * readings[1]) - (readings[0] * readings[0]));
        Assert.Equal(0.114e-6, added, 0.012e-6);
    }

    [Fact]
    public void Spread_FlatBand_IsOneOverRootFourBandTime()
    {
        // 1/√(4BT): 40 Hz, 30 s, 1.44 % (derived). The converter's droop makes the band a little narrower.
        Design design = Board with { Digital = [], Band = Board.Band with { High = Frequency.FromHertz(40) }, Converter = Board.Converter with { Rate = Frequency.FromHertz(2000), Oversampling = 64 } };
        double spread = new PredictedSpectrum(Test("shorted", design).Design).Spread(0.5, 40, 30);
        Assert.Equal(1 / Math.Sqrt(4 * 39.5 * 30), spread, 0.0003);
    }

    [Fact]
    public void Sine_DividerOf100KilohmsAnd10Ohms_IsTenMicrovolts()
    {
        // 100 mV · 10/100 010 = 9.999 µV; gain is referred to mid-band, and the high-pass does nothing there.
        Assert.Equal(9.999e-6, Test("sine").Expected!.SiValue, 0.01e-6);
    }

    [Fact]
    public void Rejection_EqualParts_IsBetterThanOneBridged()
    {
        Assert.True(Test("rejection").Expected!.SiValue <= Test("rejection-active").Expected!.SiValue * 1.0001);
        Assert.True(0 < Test("rejection-reference").Expected!.SiValue);
    }

    [Fact]
    public void Rejection_OfAnEarthedRecorder_IsWorse()
    {
        Assert.True(Test("rejection").Expected!.SiValue < Test("rejection-earthed").Expected!.SiValue);
        Assert.Contains("never worn", Test("rejection-earthed").Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void Crosstalk_OverASharedReference_IsTheDividerOfItsCircuit()
    {
        // Eight inputs on one reference pin: 3 pF and 100 GΩ across, into 51 kΩ ∥ 47 nF and 68 kΩ; at 40 Hz 0.754 nS over 8.6 µS (worked out by hand, the pin's own 140 pF left out).
        double hertz = Board.Band.High.Hertz, w = 2 * Math.PI * hertz;
        System.Numerics.Complex z = (51e3 / new System.Numerics.Complex(1, w * 51e3 * 47e-9)) + Board.Input.SeriesResistor.Ohms;
        double expected = w * (Board.Amplifier.DifferentialCapacitance.Farads + Board.Input.DifferentialCapacitor.Farads) * z.Magnitude;
        Design fixture = Fixture.With(Board, Fixture.Of(Resistance.FromKilohms(51), Capacitance.FromNanofarads(47)));
        Assert.Equal(expected, BenchPlan.SharedReference(fixture, hertz), 0.02 * expected);
        Assert.Equal(1e-3 * expected, Test("crosstalk").Expected!.SiValue, 0.3e-3 * expected);
        Assert.Equal(0, BenchPlan.SharedReference(fixture with { Input = fixture.Input with { ReferenceInputs = 1 } }, hertz));
        Assert.DoesNotContain(BenchPlan.Of(Board with { Channels = 1 }).Readings, test => test.Name == "crosstalk");
    }

    [Fact]
    public void Drift_OfWhiteNoiseAlone_IsTheBandsPeakToPeak()
    {
        // Without flicker two minutes add nothing below the band: √((f2 − 1/120)/(f2 − f1)) times the rms of the band without filters.
        double high = Board.Band.High.Hertz, low = Board.Band.Low.Hertz;
        double rms = new FrontEnd.Reporting.Evaluation(Test("51k-47n").Design with { Digital = [] }).Noise.Total;
        Assert.Equal(6.6 * rms * Math.Sqrt((high - (1 / 120.0)) / (high - low)), Test("drift").Expected!.SiValue, 0.01 * 6.6 * rms);
        Design flickering = Board with { Amplifier = Board.Amplifier with { NoiseCorner = Frequency.FromHertz(1000) } };
        Assert.True(1.2 < Test("drift", flickering).Expected!.SiValue / Test("51k-47n", flickering).Expected!.SiValue / 6.6);
    }

    [Fact]
    public void Ring_OfANotch_IsItsRingTime()
    {
        BenchReading ring = Test("ring-notch", Designs.Dry);
        Assert.Equal(Evaluator.Evaluate(Designs.Dry)["digital.notch.ring_time"].Si, ring.Expected!.SiValue, 1e-9);
    }

    [Fact]
    public void Reading_InsideAndOutside_IsPassAndFail()
    {
        BenchReading test = Test("shorted");
        double expected = test.Expected!.SiValue;
        Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(test, VoltageRms.FromVolts(1.1 * expected)).Result!.Verdict);
        BenchResult loud = BenchComparison.Reading(test, VoltageRms.FromVolts(1.5 * expected)).Result!;
        Assert.Equal(VerdictKind.Fail, loud.Verdict);
        Assert.NotEmpty(loud.Suspects);
        Assert.Equal("FE0715", BenchComparison.Reading(test, Duration.FromSeconds(1)).Finding!.Code);
    }

    [Theory]
    [InlineData("alias-rate", 5, SuspectKind.Aliasing)]
    [InlineData("alias-above", 0.3, SuspectKind.Aliasing)]
    [InlineData("ring-notch", 3, SuspectKind.DigitalFilter)]
    [InlineData("drift", 50, SuspectKind.LowFrequency)]
    [InlineData("impedance", 0.3, SuspectKind.InputLoad)]
    [InlineData("sine", 0.5, SuspectKind.TooQuiet)]
    [InlineData("offset", 0.5, SuspectKind.Clipping)]
    [InlineData("shorted", 1e6, SuspectKind.Unit)]
    [InlineData("sine", 1.02e-3, SuspectKind.Unit)]
    public void Reading_FarOff_NamesWhatItsTestExercises(string name, double factor, SuspectKind kind)
    {
        BenchReading test = Test(name, Designs.Dry);
        double value = factor * Math.Max(test.Expected!.SiValue, name == "drift" ? test.Greatest!.Value : 0);
        IQuantity measured = test.Expected switch
        {
            VoltageRms => VoltageRms.FromVolts(value),
            VoltagePeakToPeak => VoltagePeakToPeak.FromVolts(value),
            Duration => Duration.FromSeconds(value),
            _ => Voltage.FromVolts(value),
        };
        BenchResult result = BenchComparison.Reading(test, measured).Result!;
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(kind, result.Suspects[0].Kind);
        if (name is not ("sine" or "shorted" or "offset"))
        {
            Assert.DoesNotContain(result.Suspects, suspect => suspect.Text.Contains("gain", StringComparison.Ordinal) || suspect.Text.Contains("supply", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Recording_InAnotherUnit_HasTheUnitAsFirstSuspect() =>
        Assert.Equal(SuspectKind.Unit, Compare(Board, "shorted", Synthesised(Board, "shorted", 1, factor: 1e6)).Suspects[0].Kind);

    [Fact]
    public void Impedance_OfEveryDesign_TellsATenthOfItApart()
    {
        // A second way: the part against the designed impedance as a plain divider, resistive or capacitive, whichever loses less.
        foreach (Design design in Designs.All)
        {
            BenchReading test = Test("impedance", design);
            double part = test.Design.Electrodes.Active.ContactResistance.Ohms, impedance = Evaluator.Evaluate(design)["input.impedance_at_mains"].Si;
            Assert.InRange(test.Expected!.SiValue, 0.2e-3, 0.995e-3); // what a differential capacitor or a buffer does to the plain divider is in the network
            double tenth = 1e-3 / Math.Sqrt(1 + Math.Pow(part / (impedance / 10), 2));
            Assert.True(tenth < test.Least, $"{design.Name}: {tenth} against {test.Least}");
            Assert.True(test.Least < test.Expected.SiValue && test.Expected.SiValue < test.Greatest);
        }
    }

    [Fact]
    public void Impedance_HalfTheDesigned_FailsAndItsGainDropsOut()
    {
        // Twice the shunt and amplifier capacitance is half the impedance of a capacitive input; another gain changes nothing.
        BenchReading test = Test("impedance", Designs.Dry);
        Design dry = Designs.Dry, louder = dry with
        {
            Amplifier = dry.Amplifier with { CommonModeCapacitance = Capacitance.FromFarads(3 * dry.Amplifier.CommonModeCapacitance.Farads) },
            Input = dry.Input with { ShuntCapacitor = Capacitance.FromFarads(3 * dry.Input.ShuntCapacitor.Farads) },
        };
        double share = Evaluator.Evaluate(louder)["input.impedance_at_mains"].Si / Evaluator.Evaluate(dry)["input.impedance_at_mains"].Si;
        double part = test.Design.Electrodes.Active.ContactResistance.Ohms;
        Assert.True(share < 0.7, $"{share}");
        Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(test, VoltageRms.FromVolts(1e-3 / Math.Sqrt(1 + Math.Pow(part / (share * 2 * part), 2)))).Result!.Verdict);
    }

    [Fact]
    public void Welch_SineOverNoise_GivesItsRms()
    {
        double[] samples = WithLine(Synthesised(Board, "shorted", 7), 250, 30.06, 5e-6);
        Assert.Equal(5e-6, WelchSpectrum.Of(samples, 250).ToneRms(30), 0.05e-6);
    }

    [Fact]
    public void Plan_EveryDesign_SaysWhatEachTestNeeds()
    {
        foreach (Design design in Designs.All)
        {
            IReadOnlyList<BenchReading> plan = BenchPlan.Of(design).Readings;
            Assert.True(14 <= plan.Count);
            Assert.Equal(plan.Count, plan.Select(test => test.Name).Distinct().Count());
            Assert.All(plan, test => Assert.True(test.Expected is not null || test.Remark is not null, test.Name));
            Assert.All(plan.Where(test => test.Expected is not null), test => Assert.True(double.IsFinite(test.Expected!.SiValue) && 0 <= test.Expected.SiValue, test.Name));
        }
    }
}
