using System.Collections.Concurrent;
using System.Numerics;
using FrontEnd.Bench;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using MathNet.Numerics.IntegralTransforms;
using Xunit;

namespace FrontEnd.Tests.Bench;

public sealed class BenchTests
{
    private static Design Board { get; } = Designs.Gel;

    private static BenchReading Test(string name, Design? design = null) => Plan(design ?? Board).Single(test => test.Name == name);

    private static readonly ConcurrentDictionary<Design, IReadOnlyList<BenchReading>> Plans = new(ReferenceEqualityComparer.Instance);

    /// <summary>Each design's plan once.</summary>
    private static IReadOnlyList<BenchReading> Plan(Design design) => Plans.GetOrAdd(design, one => BenchPlan.Of(one).Readings);

    /// <summary>Gaussian noise of a test's predicted density, 60 s, made in the frequency domain: not by the estimator that it is compared with.</summary>
    private static double[] Synthesised(Design design, string name, int seed, double factor = 1, bool? filtered = null)
    {
        BenchReading test = Test(name, design);
        Design fixture = test.Design;
        double rate = design.Converter.Rate.Hertz;
        int n = (int)(60 * rate);
        var random = new Random(seed);
        double[] hertz = [.. Enumerable.Range(1, (n / 2) - 1).Select(k => k * rate / n)];
        double[] density = new PredictedSpectrum(new Evaluation(fixture), filtered ?? test.Filtered, test.Gain).At(hertz);
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
        (BenchResult? result, IReadOnlyList<Finding> findings) = BenchComparison.Recording(Plan(design), name, new Recording("1", design.Converter.Rate, samples));
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
        Design design = Designs.Dry;
        BenchReading test = Plan(design).First(one => one.Name.StartsWith("alias", StringComparison.Ordinal) && !one.IsBound);
        double rms = test.Expected!.SiValue, rate = design.Converter.Rate.Hertz;
        double[] noise = Synthesised(design, test.Name, 1);
        BenchResult result = Compare(design, test.Name, WithLine(noise, rate, test.Line!.Value.Hertz, rms));
        Assert.True(result.Verdict == VerdictKind.Pass, result.Because);
        Assert.Equal(rms, result.Measured.SiValue, 0.02 * rms);
        Assert.Equal(VerdictKind.Fail, Compare(design, test.Name, WithLine(noise, rate, test.Line.Value.Hertz, 2 * rms)).Verdict);
    }

    [Fact]
    public void Recording_ThatCannotBeUsed_IsAFinding()
    {
        static string Code(string name, Recording recording) => BenchComparison.Recording(Plan(Board), name, recording).Findings.Single().Code;
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
        foreach (Design design in Designs.All)
        {
            BenchReading test = Test("shorted", design);
            Assert.Equal(Evaluator.Evaluate(design)["noise.shorted"].Si, test.Expected!.SiValue);
            Assert.Equal(ResultIds.Noise.Shorted, test.Id);

            // What wires read is within the range: the same network without the electrodes, by its own evaluation.
            var wires = new Evaluation(test.Design);
            Assert.InRange(wires.Noise.Total * wires.GainMid / test.Gain, test.Least!.Value, test.Greatest!.Value);
        }
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
        Assert.Contains("never wear", Test("rejection-earthed").Remark, StringComparison.Ordinal);
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
        Assert.True(1e-3 * expected < Test("crosstalk").Expected!.SiValue);
        Assert.True(Test("crosstalk").IsBound, "81 nV is lost in the noise of a minute");
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
    [InlineData("polarity", -1, SuspectKind.Polarity)]
    [InlineData("dc-forced-active", 3, SuspectKind.InputLoad)]
    [InlineData("dc-forced-active", 0.01, SuspectKind.Fixture)]
    [InlineData("supply-current", 3, SuspectKind.LouderPart)]
    public void Reading_FarOff_NamesWhatItsTestExercises(string name, double factor, object kind)
    {
        BenchReading test = Test(name, Designs.Dry);
        double value = factor * (name == "drift" ? Math.Max(test.Expected!.SiValue, test.Greatest!.Value) : test.Expected!.SiValue);
        IQuantity measured = test.Expected switch
        {
            VoltageRms => VoltageRms.FromVolts(value),
            VoltagePeakToPeak => VoltagePeakToPeak.FromVolts(value),
            Duration => Duration.FromSeconds(value),
            Current => Current.FromAmperes(value),
            _ => Voltage.FromVolts(value),
        };
        BenchResult result = BenchComparison.Reading(test, measured).Result!;
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal((SuspectKind)kind, result.Suspects[0].Kind);
        if (name is not ("sine" or "shorted" or "offset") && !name.StartsWith("dc-", StringComparison.Ordinal) && name != "supply-current")
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
            IReadOnlyList<BenchReading> plan = Plan(design);
            Assert.True(14 <= plan.Count);
            Assert.Equal(plan.Count, plan.Select(test => test.Name).Distinct().Count());
            Assert.All(plan, test => Assert.True(test.Expected is not null || test.Remark is not null, test.Name));
            Assert.All(plan.Where(test => test.Expected is not null), test => Assert.True(double.IsFinite(test.Expected!.SiValue) && (0 <= test.Expected.SiValue || test.Name == "polarity"), test.Name));
        }
    }

    public static TheoryData<string, string> Tones
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (Design design in new[] { Designs.Gel, Designs.Dry })
            {
                foreach (string name in Plan(design).Where(test => test.Kind == ReadingKind.Tone && (design == Designs.Gel || test.Name.StartsWith("alias", StringComparison.Ordinal))).Select(test => test.Name))
                {
                    data.Add(design.Name, name);
                }
            }

            return data;
        }
    }

    /// <summary>The law of all tone tests: what is predicted passes; the same cut at seven tenths of its height, half as long or dead does not.</summary>
    [Theory]
    [MemberData(nameof(Tones))]
    public void Tone_AsPredicted_Passes_AndItsSpoiltFormsDoNot(string designName, string name)
    {
        Design design = Designs.All.Single(one => one.Name == designName);
        BenchReading test = Test(name, design);
        double rate = design.Converter.Rate.Hertz, rms = test.IsBound ? 0 : test.Expected!.SiValue;
        double[] samples = WithLine(Synthesised(design, name, 11), rate, test.Line!.Value.Hertz, rms);
        BenchResult result = Compare(design, name, samples);
        Assert.True(result.Verdict == VerdictKind.Pass, result.Because);
        Assert.DoesNotContain("but", result.Because, StringComparison.Ordinal);
        Assert.DoesNotContain("not as predicted", result.Because, StringComparison.Ordinal);
        double[] sorted = [.. samples.Order()];
        double limit = 0.7 * sorted[(int)(0.99 * samples.Length)];
        BenchResult cut = Compare(design, name, [.. samples.Select(sample => Math.Clamp(sample, -limit, limit))]);
        if ((test.Least is not null && rms * rms * 10 > samples.Average(sample => sample * sample) * 8.5) || test.IsBound)
        {
            Assert.Equal(VerdictKind.Fail, cut.Verdict);
            Assert.Equal(SuspectKind.Clipping, cut.Suspects[0].Kind);
        }

        (BenchResult? half, IReadOnlyList<Finding> findings) = BenchComparison.Recording(Plan(design), name, new Recording("1", design.Converter.Rate, samples[..(samples.Length / 2)]));
        Assert.NotEqual(VerdictKind.Pass, half!.Verdict);
        Assert.Equal("FE0717", findings.Single().Code);
        BenchResult dead = Compare(design, name, new double[samples.Length]);
        Assert.Equal(VerdictKind.Fail, dead.Verdict);
        Assert.Equal(SuspectKind.DeadChannel, dead.Suspects[0].Kind);
    }

    [Fact]
    public void Noise_CutAtTwoSigmas_IsClipping()
    {
        foreach (double sigmas in new[] { 1.0, 2, 3 })
        {
            double[] samples = Synthesised(Board, "shorted", 5);
            double limit = sigmas * Math.Sqrt(samples.Average(sample => sample * sample));
            BenchResult cut = Compare(Board, "shorted", [.. samples.Select(sample => Math.Min(sample, limit))]);
            Assert.Equal(VerdictKind.Fail, cut.Verdict);
            Assert.Equal(SuspectKind.Clipping, cut.Suspects[0].Kind);
        }
    }

    /// <summary>Whole steps of a converter are no limit: noise of 0.7 to 5 steps has its largest value some times.</summary>
    [Theory]
    [InlineData(0.7)]
    [InlineData(1.3)]
    [InlineData(5)]
    public void Noise_InWholeSteps_IsNoClipping(double sigma)
    {
        var random = new Random(3);
        double[] samples = [.. Enumerable.Range(0, 15000).Select(_ => Math.Round(sigma * Gaussian(random)))];
        Assert.Equal(0, RecordingChecks.AtLimits(RecordingSums.Of(new HeldSamples(samples))));
        Assert.NotEqual(0, RecordingChecks.AtLimits(RecordingSums.Of(new HeldSamples([.. samples.Select(sample => Math.Min(sample, Math.Round(sigma)))]))));
    }

    [Fact]
    public void Recording_WithoutItsDigitalFilters_FailsAndSaysSo()
    {
        foreach (Design design in new[] { Designs.Gel, Designs.Dry })
        {
            double[] bare = Synthesised(design, "shorted", 8, filtered: false);
            BenchResult result = Compare(design, "shorted", bare);
            Assert.Equal(VerdictKind.Fail, result.Verdict);
            Assert.Equal(SuspectKind.DigitalFilter, result.Suspects[0].Kind);
            Assert.Contains("without the digital filters", result.Suspects[0].Text, StringComparison.Ordinal);
            BenchReading sine = Test("sine", design);
            double[] tone = WithLine(Synthesised(design, "sine", 8, filtered: false), design.Converter.Rate.Hertz, sine.Line!.Value.Hertz, sine.Expected!.SiValue);
            BenchResult gain = Compare(design, "sine", tone);
            Assert.Equal(VerdictKind.Fail, gain.Verdict);
            Assert.Equal(SuspectKind.DigitalFilter, gain.Suspects[0].Kind);
            Assert.Equal(VerdictKind.Pass, BenchComparison.Recording(Plan(design), "shorted", new Recording("1", design.Converter.Rate, bare), raw: true).Result!.Verdict);
            BenchResult on = BenchComparison.Recording(Plan(design), "shorted", new Recording("1", design.Converter.Rate, Synthesised(design, "shorted", 8)), raw: true).Result!;
            Assert.Equal(VerdictKind.Fail, on.Verdict);
        }
    }

    [Fact]
    public void Pulses_TellThePolarity_AndNothingElseIsClaimedTo()
    {
        foreach (Design design in Designs.All)
        {
            BenchReading test = Test("polarity", design);
            if (test.Kind != ReadingKind.Pulse)
            {
                Assert.NotNull(test.Remark);
                continue;
            }

            // Pulses of the predicted size, a tenth of the time: what the path does to their edges is not in it.
            double rate = design.Converter.Rate.Hertz, height = test.Expected!.SiValue;
            double[] noise = Synthesised(design, "polarity", 4);
            double[] samples = [.. noise.Select((sample, i) => sample + (i * 10 / rate % 5 < 0.5 ? height : 0))];
            Assert.Equal(VerdictKind.Pass, Compare(design, "polarity", samples).Verdict);
            BenchResult inverse = Compare(design, "polarity", [.. samples.Select(sample => -sample)]);
            Assert.Equal(VerdictKind.Fail, inverse.Verdict);
            Assert.Equal(SuspectKind.Polarity, inverse.Suspects[0].Kind);
        }

        Assert.All(Plan(Board).Where(test => test.Kind == ReadingKind.Tone), test => Assert.DoesNotContain("polarity", test.Title, StringComparison.Ordinal));
    }

    /// <summary>A line at another frequency than the test's: the rate or the generator, not the gain.</summary>
    [Fact]
    public void Tone_ElsewhereInTheSpectrum_NamesWhereItStands()
    {
        BenchReading test = Test("sine");
        BenchResult result = Compare(Board, "sine", WithLine(Synthesised(Board, "sine", 2), Board.Converter.Rate.Hertz, test.Line!.Value.Hertz * 2, test.Expected!.SiValue));
        Assert.Equal(VerdictKind.Fail, result.Verdict);
        Assert.Equal(SuspectKind.Fixture, result.Suspects[0].Kind);
    }

    /// <summary>No test asks for what no recording can show.</summary>
    [Fact]
    public void Tones_LostInTheNoise_AreBounds()
    {
        foreach (Design design in Designs.All)
        {
            foreach (BenchReading test in Plan(design).Where(test => test.Kind == ReadingKind.Tone))
            {
                double floor = BenchFloor.Of(new Evaluation(test.Design), test.Filtered, test.Gain, test.Line!.Value.Hertz);
                Assert.True(floor <= test.Expected!.SiValue || test.Name.StartsWith("impedance", StringComparison.Ordinal), $"{design.Name} {test.Name}");
                Assert.True(test.Expected.SiValue <= test.Greatest, $"{design.Name} {test.Name}");
            }
        }
    }

    /// <summary>Forced, a fault shows what the resistor lets through; without a fault that current is a fault.</summary>
    [Fact]
    public void Direct_CurrentOfAShortedInput_PassesTheForcedTestAlone()
    {
        foreach (Design design in Designs.All)
        {
            IReadOnlyList<BenchReading> plan = Plan(design);
            foreach (BenchReading forced in plan.Where(test => test.Name.StartsWith("dc-forced-", StringComparison.Ordinal) && test.Name != "dc-forced-shared"))
            {
                BenchReading healthy = plan.Single(test => test.Name == "dc-" + forced.Name["dc-forced-".Length..]);
                Assert.Contains("nobody connected", forced.Fixture, StringComparison.Ordinal);
                Assert.Contains("that you built yourself", healthy.Fixture, StringComparison.Ordinal);
                if (forced.Expected is not Current fault)
                {
                    Assert.NotNull(forced.Remark);
                    continue;
                }

                // V over R by hand, of a resistor at its nominal value.
                Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(forced, fault).Result!.Verdict);
                Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(healthy, fault).Result!.Verdict);
                Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(healthy, Current.FromAmperes(0)).Result!.Verdict);
                Assert.Equal(VerdictKind.Fail, BenchComparison.Reading(forced, Current.FromAmperes(0)).Result!.Verdict);
                Assert.Equal(VerdictKind.Pass, BenchComparison.Reading(healthy, healthy.Expected!).Result!.Verdict);
            }

            if (Evaluator.Evaluate(design)["safety.shared_fault_current"] is { State: ResultState.Number } figure && design.Electrodes.Ground is not null)
            {
                Assert.Equal(figure.Si, plan.Single(test => test.Name == "dc-forced-shared").Expected!.SiValue);
            }

            BenchReading active = plan.Single(test => test.Name == "dc-forced-active");
            if (design.Electrodes.ActiveBuffer is null && active.Expected is not null)
            {
                double nominal = design.Supply.Highest.Volts / design.Input.SeriesResistor.Ohms;
                Assert.InRange(nominal, active.Least!.Value, active.Greatest!.Value);
            }
        }
    }
}
