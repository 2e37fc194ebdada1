using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>Builds against the full evaluation of the same build, and what holds of every run.</summary>
public class SpreadRunTests
{
    public static TheoryData<string> Names => [.. Designs.All.Select(design => design.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Builds_TwoHundred_AgreeWithTheFullEvaluation(string name)
    {
        Design design = Designs.All.Single(one => one.Name == name);
        var options = new SpreadOptions { Builds = 200, Seed = 7 };
        var parts = new PartList(design, options);
        double[][] factors = SpreadRun.Draw(parts, options, 200);
        SpreadResult result = Run(design, options)!;
        var worst = new Dictionary<string, double>();
        Parallel.For(0, 200, build =>
        {
            (Design built, BuiltParts own) = parts.Apply([.. factors.Select(factor => factor[build])]);
            var full = new Evaluation(built, own);
            MainsReportFigures(full, out double systemCmrr, out double fold);
            (string Id, double? Value)[] expected =
            [
                ("gain.mid", full.GainMid), ("noise.total", full.Noise.Total), ("mains.total", full.Mains.AtInput.Total), ("mains.system_cmrr", systemCmrr), ("mains.recorded", full.Mains.Recorded),
                ("levels.offset_survived", full.Levels.OffsetSurvived), ("drive.phase_margin", full.Drive?.PhaseMarginDegrees), ("alias.fold_attenuation", fold),
            ];
            foreach ((string id, double? value) in expected)
            {
                double? ours = result.Find(id)?.Values[build];
                Assert.Equal(value is null, ours is null);
                double error = value is null or 0 ? Math.Abs(ours ?? 0) : Math.Abs((ours!.Value / value.Value) - 1);
                lock (worst)
                {
                    worst[id] = Math.Max(error, worst.GetValueOrDefault(id));
                }
            }
        });
        Assert.True(worst.Values.All(error => error < 1e-3), string.Join(", ", worst.Select(pair => $"{pair.Key} {pair.Value:E1}")));
    }

    [Fact]
    public void Spread_AllTolerancesAndRangesZero_IsTheAssessmentWithoutThem()
    {
        Design design = Exact(Designs.Dry);
        SpreadResult result = Run(design, new SpreadOptions { Builds = 8, Ranges = SpreadRanges.None })!;
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.Equal(8, result.Figures.Count);
        foreach (SpreadFigure figure in result.Figures)
        {
            double expected = assessment[figure.Id].Si * (assessment[figure.Id].Value is Angle && figure.Unit == "°" ? AngleScale(assessment[figure.Id].Value!) : 1);
            Assert.All(figure.Values, value => Assert.Equal(expected, value, 1e-5 * Math.Abs(expected)));
            Assert.Equal(figure.Values[0], figure.Least, 1e-9 * Math.Abs(expected));
            Assert.Equal(figure.Values[0], figure.Most, 1e-9 * Math.Abs(expected));
        }
    }

    [Fact]
    public void Spread_AnyNumberOfThreads_GivesTheSame()
    {
        SpreadResult one = Run(Designs.Dry, new SpreadOptions { Builds = 1001, Threads = 1 })!, four = Run(Designs.Dry, new SpreadOptions { Builds = 1001, Threads = 4 })!;
        foreach ((SpreadFigure a, SpreadFigure b) in one.Figures.Zip(four.Figures))
        {
            Assert.Equal(a.Values, b.Values);
            Assert.Equal(a.Percentiles, b.Percentiles);
            Assert.Equal(a.Ranks, b.Ranks);
        }

        SpreadResult other = Run(Designs.Dry, new SpreadOptions { Builds = 1001, Seed = 2 })!;
        Assert.NotEqual(one.Figures[0].Values, other.Figures[0].Values);
    }

    [Fact]
    public void Mean_OfMoreBuilds_TightensAsTheRootOfTheirNumber()
    {
        double At(int builds, ulong seed) => Run(Designs.Gel, new SpreadOptions { Builds = builds, Seed = seed })!.Find("gain.mid")!.Mean;
        double Deviation(int builds)
        {
            double[] means = [.. Enumerable.Range(1, 60).Select(seed => At(builds, (ulong)seed))];
            double mean = means.Average();
            return Math.Sqrt(means.Sum(value => (value - mean) * (value - mean)) / (means.Length - 1));
        }

        // The ratio of two deviations of 60 means each is uncertain by about 13 %; three times that is allowed.
        Assert.InRange(Deviation(50) / Deviation(800), 4 * 0.6, 4 * 1.4);
    }

    [Fact]
    public void Gain_OfOneUniformPart_HasThePercentilesOfItsFormula()
    {
        // Only the amplifier's gain moves, and the figure is proportional to it: percentile p stands at 1 − t + 2·t·p.
        Design design = Exact(Designs.Gel);
        SpreadFigure gain = Run(design, new SpreadOptions { Builds = 40_000, Ranges = SpreadRanges.None with { Gain = 0.05 } })!.Find("gain.mid")!;
        for (int i = 0; i < gain.Percentiles.Count; i++)
        {
            // Standard error of a percentile's rank is below 0.25 %; four times that times the range of 10 %.
            double p = SpreadFigure.Percents[i] / 100;
            Assert.Equal(0.95 + (0.1 * p), gain.Percentiles[i] / gain.Nominal, 0.001);
        }

        Assert.Equal("amplifier.gain", Assert.Single(gain.Ranks).Key);
        Assert.Equal(1, gain.Ranks[0].Coefficient, 1e-9);
        Assert.Equal(1.05, gain.Most / gain.Nominal, 1e-9);
        Assert.Equal(0.95, gain.Least / gain.Nominal, 1e-9);
    }

    [Fact]
    public void Rejection_FromUnequalShuntCapacitors_IsThePublishedWorstCase()
    {
        // An R-C low-pass in each lead turns common mode into difference as 2πf·R·ΔC with ΔC = 2·t·C at worst, so CMRR = 1/(2πf·R·2·t·C) below the corner
        // (derived; the first-order form of the balanced input filter's rejection). The electrodes are a short circuit here, the amplifier perfect.
        const double T = 0.05, R = 100e3, C = 100e-12, F0 = 50;
        Design design = Designs.Gel with
        {
            Channels = 1,
            Electrodes = Designs.Gel.Electrodes with
            {
                Mismatch = Ratio.FromFraction(0),
                Active = new() { ContactResistance = Resistance.FromOhms(1), ContactCapacitance = default },
                Reference = new() { ContactResistance = Resistance.FromOhms(1), ContactCapacitance = default },
                Ground = new() { ContactResistance = Resistance.FromOhms(1), ContactCapacitance = default },
            },
            Input = new InputNetwork { SeriesResistor = Resistance.FromOhms(R), ShuntCapacitor = Capacitance.FromFarads(C), CapacitorTolerance = Ratio.FromFraction(T), ResistorTolerance = default },
            Amplifier = Designs.Gel.Amplifier with { Cmrr = Decibels.FromStated(200), CmrrCorner = Frequency.FromHertz(1e9), CommonModeCapacitance = default, DifferentialCapacitance = default },
        };
        Assert.Empty(DesignCheck.Run(design).Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Message));
        SpreadFigure cmrr = Run(design, new SpreadOptions { Builds = 2000, Ranges = SpreadRanges.None })!.Find("mains.system_cmrr")!;
        double worst = 20 * Math.Log10(1 / (2 * Math.PI * F0 * R * 2 * T * C));
        Assert.Equal(worst, cmrr.Least, 0.02);
        Assert.All(cmrr.Values, value => Assert.True(worst - 0.02 < value));
    }

    [Fact]
    public void Run_Cancelled_Stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => SpreadRun.Run(Designs.Dry, new SpreadOptions(), null, source.Token));
    }

    [Fact]
    public void Lanes_OfTheKernel_AreAtLeastTwo() => Assert.True(2 <= Vector<double>.Count);

    private static SpreadResult? Run(Design design, SpreadOptions options) => SpreadRun.Run(design, options, null, TestContext.Current.CancellationToken);

    private static double AngleScale(IQuantity value) => ((Angle)value).Degrees / value.SiValue;

    private static Design Exact(Design design) => design with
    {
        Electrodes = design.Electrodes with { Mismatch = Ratio.FromFraction(0) },
        Input = design.Input with { ResistorTolerance = default, CapacitorTolerance = default },
        GroundDrive = design.GroundDrive with { ResistorTolerance = default },
        Stages = [.. design.Stages.Select(stage => stage with { ResistorTolerance = default, CapacitorTolerance = default })],
    };

    private static void MainsReportFigures(Evaluation full, out double systemCmrr, out double fold)
    {
        systemCmrr = 20 * Math.Log10(full.Mains.AtInput.BodyCommonMode / (full.Mains.AtInput.Divider + full.Mains.AtInput.Amplifier));
        fold = 20 * Math.Log10(full.GainMid / full.PathAndConverter([full.Design.Converter.Rate.Hertz - full.Design.Band.High.Hertz])[0]);
    }
}
