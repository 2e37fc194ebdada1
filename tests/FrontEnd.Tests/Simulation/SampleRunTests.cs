using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Simulation;
using Xunit;

namespace FrontEnd.Tests.Simulation;

/// <summary>Simulated samples against what can be worked out without them: lines, clipped sines, recovery, correlation, and one way of folding against the
/// other.</summary>
public sealed class SampleRunTests
{
    private static readonly string[] Silence = [LeftOut.ElectrodesWord, .. SourceId.BuiltIn.Select(source => source.Text)];

    private static double[][] Volts(Design design, SampleWish wish)
    {
        List<Finding> findings = [];
        SampleRun run = SampleRun.Prepare(design, wish, findings)!;
        Assert.Empty(findings);
        double[][] volts = [.. run.Channels.Select(_ => new double[run.Count])];
        foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
        {
            for (int channel = 0; channel < volts.Length; channel++)
            {
                for (int i = 0; i < block.Length; i++)
                {
                    volts[channel][block.First + i] = block.Steps[channel][i] * run.VoltsPerStep[channel];
                }
            }
        }

        return volts;
    }

    /// <summary>Without any noise at all, rounding included.</summary>
    private static SampleWish Silent(Design design, double seconds, bool steps = false, params HeadSignal[] signals) => new()
    {
        Length = Duration.FromSeconds(seconds), StepByStep = steps, Signals = signals,
        Without = [.. Silence, .. design.Stages.SelectMany(stage => SourceId.Of(stage.Name)).Select(source => source.Text)],
    };

    /// <summary>Amplitude of a sine of a frequency with whole periods in the samples.</summary>
    private static double Line(double[] volts, double hertz, double rate)
    {
        double real = 0, imaginary = 0;
        for (int i = 0; i < volts.Length; i++)
        {
            (double sine, double cosine) = Math.SinCos(2 * Math.PI * hertz * i / rate);
            (real, imaginary) = (real + (volts[i] * cosine), imaginary + (volts[i] * sine));
        }

        return 2 * Math.Sqrt((real * real) + (imaginary * imaginary)) / volts.Length;
    }

    private static Design Steady(Design design, params double[] harmonics) => design with
    {
        Mains = design.Mains with { Deviation = Ratio.FromFraction(0), Harmonics = harmonics, FieldHarmonics = null },
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void LinesOfTheMains_AreTheBudgetsAndLandWhereItSays(bool steps)
    {
        foreach (Design design in new[] { Steady(Designs.Dry, 1, 0.02, 0.05, 0, 0.06, 0, 0, 0, 0, 0, 0.035), Steady(Designs.Gel, 1, 0, 0.05, 0, 0.06, 0, 0.05) })
        {
            Design odd = design with { Channels = 1, Mains = design.Mains with { Frequency = Frequency.FromHertz(61) } };
            double[] volts = Volts(odd, Silent(odd, 20, steps))[0];
            MainsBudget mains = new Evaluation(odd).Mains;
            double rate = odd.Converter.Rate.Hertz;
            foreach (MainsHarmonic harmonic in mains.Harmonics.Where(one => 0 < one.Recorded))
            {
                double expected = Math.Sqrt(2) * harmonic.Recorded, actual = Line(volts, harmonic.LandsAt, rate);

                // The mean of 17 values a sample stands for the sinc filter's, as often as its order says.
                double turn = Math.PI * harmonic.Hertz / rate, fine = turn / odd.Converter.Oversampling;
                expected *= steps && odd.Converter.Kind == ConverterKind.DeltaSigma
                    ? Math.Pow(odd.Converter.Oversampling * Math.Sin(fine) / (17 * Math.Sin(turn / 17)), odd.Converter.SincOrder) : 1;

                // Parabolas between steps lose the fourth power of the frequency over theirs, block by block.
                double tolerance = steps ? 1e-3 + (20 * Math.Pow(harmonic.Hertz / (17 * rate), 3)) : 1e-6;
                Assert.True(Math.Abs((actual / expected) - 1) < tolerance, $"{odd.Name} {steps} h = {harmonic.Order}: {actual / expected}");
            }
        }
    }

    /// <summary>Fourier's series of a sine that is cut at c of its height: 2/π·(asin c + c√(1 − c²)), and its third; at 0.6 they are 0.71524 and 0.13038 (derived).</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.6)]
    [InlineData(0.95)]
    public void ASineCutByTheConverter_HasTheClosedFormsLines(double share)
    {
        Design design = Steady(Designs.Dry, 1) with { Channels = 1, Digital = [], Stages = [] };
        design = design with { Mains = design.Mains with { Frequency = Frequency.FromHertz(0.9), Voltage = VoltageRms.FromVolts(230) }, Converter = design.Converter with { Rate = Frequency.FromHertz(2000), Bits = 24 } };
        double peak = Math.Sqrt(2) * new Evaluation(design).Mains.Harmonics[0].Converter * new Evaluation(design).GainMid;
        design = design with { Converter = design.Converter with { FullScale = VoltagePeakToPeak.FromVolts(2 * share * peak) } };
        double[] volts = Volts(design, Silent(design, 10))[0];
        double height = Math.Sqrt(2) * new Evaluation(design).Mains.Harmonics[0].Converter, c = share;
        double first = 2 / Math.PI * (Math.Asin(c) + (c * Math.Sqrt(1 - (c * c))));
        double angle = Math.Asin(c), third = 4 / Math.PI * ((Math.Sin(2 * angle) / 4) - (Math.Sin(4 * angle) / 8) + (c * Math.Cos(3 * angle) / 3));
        Assert.Equal(first, Line(volts, 0.9, 2000) / height, 1e-4);
        Assert.Equal(Math.Abs(third), Line(volts, 2.7, 2000) / height, 1e-4);
    }

    [Fact]
    public void AnOffsetStep_RecoversWhenTheBudgetSays()
    {
        foreach (Design design in new[] { Designs.Dry with { Channels = 1 }, Designs.Gel with { Channels = 1 } })
        {
            Design quiet = design with { Mains = design.Mains with { Voltage = VoltageRms.FromVolts(1e-9), Field = default } };
            Recovery recovery = new Evaluation(quiet).Recovery;
            if (recovery.Seconds is not { } seconds)
            {
                continue;
            }

            double length = 4 * Math.Ceiling(Math.Max(4, 1.5 * seconds));
            double[] volts = Volts(quiet, Silent(quiet, length, true, new HeadSignal(HeadSignalKind.Offset)) with { StepByStep = true })[0];
            double rate = quiet.Converter.Rate.Hertz, end = recovery.FinalVolts;
            int start = (int)Math.Round(length / 4 * rate), last = start;
            for (int i = start; i < (int)(3 * length / 4 * rate); i++)
            {
                last = Math.Abs(Math.Abs(volts[i]) - Math.Abs(end)) > Recovery.Tolerance ? i : last;
            }

            Assert.True(Math.Abs(((last - start) / rate) - seconds) < (0.02 * seconds) + (3 / rate), $"{quiet.Name}: {(last - start) / rate} s, budget {seconds} s");
        }
    }

    [Fact]
    public void WhatFoldsByItself_IsTheBudgetsFold()
    {
        // Little filtering before the converter: what folds is a good part of the noise.
        Design open = Designs.Dry with { Channels = 1, Stages = [Designs.Dry.Stages[0]], Bands = [] };
        NoiseBudget noise = new Evaluation(open).Noise;
        double folded = noise.Rows().First(row => row.Id == SourceId.Folded).Rms;
        foreach (bool steps in new[] { false, true })
        {
            List<Finding> findings = [];
            SampleRun run = SampleRun.Prepare(open, new SampleWish { Length = Duration.FromSeconds(600), Without = ["hum"], StepByStep = steps }, findings)!;
            var summary = new SampleSummary.Builder(run);
            foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
            {
                summary.Take(block);
            }

            SampledBand band = summary.Whole().Channels[0].Bands[0];
            Assert.True(band.IsInside, $"steps {steps}, folded {folded / noise.Total:p1}: {band}");
        }
    }

    [Fact]
    public void TheReferencesNoise_IsInAllChannelsAlike()
    {
        Design design = Designs.Gel with { Channels = 3 };
        double[][] volts = Volts(design, new SampleWish { Length = Duration.FromSeconds(900), Without = ["hum"] });
        double Mean(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Average();
        double correlation = Mean(volts[0], volts[2]) / Math.Sqrt(Mean(volts[0], volts[0]) * Mean(volts[2], volts[2]));
        NoiseBudget noise = new Evaluation(design).Noise;
        double expected = noise.Shared * noise.Shared / (noise.Total * noise.Total);
        Assert.Equal(expected, correlation, 0.05);
    }

    [Fact]
    public void TheSameSeed_GivesTheSameSamples_AndLeavingSomethingOutMovesNothingElse()
    {
        Design design = Designs.Dry;
        SampleWish wish = new() { Length = Duration.FromSeconds(12), Without = ["quantisation"] };
        double[][] first = Volts(design, wish), again = Volts(design, wish), other = Volts(design, wish with { Seed = 2 });
        double[][] withoutHum = Volts(design, wish with { Without = ["quantisation", "hum"] }), hum = Volts(design, Silent(design, 12));
        Assert.Equal(first[0], again[0]);
        Assert.NotEqual(first[0][100], other[0][100]);
        for (int i = 0; i < first[1].Length; i += 97)
        {
            Assert.Equal(first[1][i], withoutHum[1][i] + hum[1][i], 1e-12);
        }
    }

    [Fact]
    public void NoiseWithinAStepOfTheConverter_IsNotHeldAgainstTheBudget()
    {
        Design coarse = Designs.Dry with { Channels = 1, Converter = Designs.Dry.Converter with { Bits = 4, Noise = VoltageRms.FromVolts(0) } };
        SampleRun run = SampleRun.Prepare(coarse, new SampleWish { Length = Duration.FromSeconds(40) }, [])!;
        var summary = new SampleSummary.Builder(run);
        foreach (SampleBlock block in run.Blocks(TestContext.Current.CancellationToken))
        {
            summary.Take(block);
        }

        Assert.Contains("half a step", summary.Whole().NotCompared, StringComparison.Ordinal);
    }

    [Fact]
    public void FixedPointFilters_GiveWholeNumbers()
    {
        Design design = Designs.Dry with { Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q31, Form = FilterForm.DirectI, StateFraction = 8 } };
        SampleRun run = SampleRun.Prepare(design, new SampleWish { Length = Duration.FromSeconds(9) }, [])!;
        Assert.True(run.AreWhole);
        Assert.All(run.Blocks(TestContext.Current.CancellationToken).SelectMany(block => block.Steps[0].Take(block.Length)), step => Assert.Equal(Math.Round(step), step));
    }

    [Theory]
    [InlineData(HeadSignalKind.Background)]
    [InlineData(HeadSignalKind.Alpha)]
    [InlineData(HeadSignalKind.Blink)]
    [InlineData(HeadSignalKind.Heart)]
    [InlineData(HeadSignalKind.Muscle)]
    [InlineData(HeadSignalKind.Evoked)]
    [InlineData(HeadSignalKind.Offset)]
    [InlineData(HeadSignalKind.LeadOff)]
    [InlineData(HeadSignalKind.Calibration)]
    public void EverySignal_IsSeenInTheSamples(object signal)
    {
        // A test's signature is public, the kind is not.
        var kind = (HeadSignalKind)signal;
        Design design = Designs.Gel with { Channels = 2, Montage = new Montage { Sites = ["Fp1", "Pz"], Reference = "ear-left" } };
        double[][] with = Volts(design, new SampleWish { Length = Duration.FromSeconds(30), Signals = [new HeadSignal(kind, kind == HeadSignalKind.Evoked ? Voltage.FromMicrovolts(50) : null)] });
        double[][] without = Volts(design, new SampleWish { Length = Duration.FromSeconds(30) });
        double More(int channel) => Math.Sqrt(with[channel].Average(x => x * x)) / Math.Sqrt(without[channel].Average(x => x * x));
        Assert.True(1.2 < Math.Max(More(0), More(1)), $"{kind}: {More(0)}, {More(1)}");
        if (kind == HeadSignalKind.Blink)
        {
            Assert.True(More(1) < More(0), "a blink is largest at the front");
        }
    }
}
