using System.Numerics;
using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Circuits;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Inputs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Spread;
using FrontEnd.Tests.Budgets;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>Builds against the full evaluation of the same build, and what holds of every run.</summary>
public class SpreadRunTests
{
    /// <summary>The designs of the tests, and one in which everything that may have a range has one.</summary>
    private static readonly IReadOnlyList<Design> Several = [.. Designs.All, Ranged()];

    public static TheoryData<string> Names => [.. Several.Select(design => design.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Builds_TwoHundred_AgreeWithTheFullEvaluation(string name)
    {
        Design design = Several.Single(one => one.Name == name);
        var options = new SpreadOptions { Builds = 200, Seed = 7 };
        var parts = new PartList(design, options);
        double[][] factors = SpreadRun.Draw(parts, options, 200);
        SpreadResult result = Run(design, options)!;
        var worst = new Dictionary<string, double>();
        Parallel.For(0, 200, build =>
        {
            (Design built, BuiltParts own) = parts.Apply([.. factors.Select(factor => factor[build])]);
            var full = new Evaluation(built, own);
            foreach ((string id, double? value) in Full(full, own))
            {
                double? ours = result.Find(id)?.Values[build];
                Assert.True(value is null == ours is null, id);
                double error = value is null ? 0 : Error(result.Find(id)!.Unit, ours!.Value, value.Value);
                lock (worst)
                {
                    worst[id] = Math.Max(error, worst.GetValueOrDefault(id));
                }
            }
        });
        Assert.Equal(SpreadKernel.Ids.Select(id => id.Text).Order(), worst.Keys.Order());
        Assert.True(worst.All(pair => pair.Value < Allowed(pair.Key)), string.Join(", ", worst.Select(pair => $"{pair.Key} {pair.Value:E1}")));
    }

    /// <summary>The lanes' fixed order at all but zero hertz against the pivoted solve without capacitors, and the sums of dc along the path.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void DirectCurrent_OfTwoHundredBuilds_IsThatOfTheFullEvaluation(string name)
    {
        Design design = Several.Single(one => one.Name == name);
        var options = new SpreadOptions { Builds = 200, Seed = 7 };
        var parts = new PartList(design, options);
        double[][] factors = SpreadRun.Draw(parts, options, 200);
        var setup = new SpreadSetup(design, parts);
        var drawn = new DrawnBuilds(setup);
        var path = new PathLanes(setup.Nominal.Path.Model, isChecked: false);
        var levels = new LevelLanes(design);
        for (int first = 0; first < 200; first += Vector<double>.Count)
        {
            drawn.Put(factors, first);
            path.Set(drawn.Lanes);
            DirectLanes ours = DirectLanes.At(path.Input, design, drawn.Lanes);
            levels.Add(drawn.Lanes, ours);
            for (int lane = 0; lane < Vector<double>.Count; lane++)
            {
                (Design built, BuiltParts own) = parts.Apply([.. factors.Select(factor => factor[first + lane])]);
                var model = new PathModel(built, own);
                DirectLanes full = PivotedDirect.Of(built, model.Input, own);
                Near(full.Difference.Offset, ours.Difference.Offset, lane, 1);
                Near(full.Mean.Offset, ours.Mean.Offset, lane, 1);
                Near(full.Drive.Offset, ours.Drive.Offset, lane, full.Drive.Offset[0]);
                Near(full.FirstBuffer.Offset, ours.FirstBuffer.Offset, lane, 1);
                Near(full.SecondBuffer.Offset, ours.SecondBuffer.Offset, lane, 1);
                Near(full.Difference.Own, ours.Difference.Own, lane, full.Mean.Own[0]);
                Near(full.Mean.Own, ours.Mean.Own, lane, full.Mean.Own[0]);
                Near(full.Drive.Own, ours.Drive.Own, lane, full.Drive.Own[0]);
                Near(full.FirstBuffer.Own, ours.FirstBuffer.Own, lane, full.FirstBuffer.Own[0]);
                Near(full.SecondBuffer.Own, ours.SecondBuffer.Own, lane, full.SecondBuffer.Own[0]);
                var alone = new LevelLanes(built);
                alone.Add(new BuildLanes(model, own), full);
                for (int node = 0; node < levels.Nodes.Length; node++)
                {
                    Near(alone.Nodes[node].Offset, levels.Nodes[node].Offset, lane, alone.Nodes[node].Total[0]);
                    Near(alone.Nodes[node].OtherDc, levels.Nodes[node].OtherDc, lane, alone.Nodes[node].Total[0]);
                }
            }
        }

        static void Near(Vector<double> full, Vector<double> ours, int lane, double size) =>
            Assert.Equal(full[0], ours[lane], 1e-9 * Math.Max(Math.Abs(full[0]), Math.Abs(size)));
    }

    /// <summary>The same formulas give the same figure but for rounding; 1e-3 where the spread's few frequencies stand for an integral, for the largest gain in the band, or for all surroundings of the loop.</summary>
    private static double Allowed(string id) => id switch
    {
        "noise.total" or "noise.board_share" or "converter.enob" or "converter.bits_needed" => 1e-3,

        // The noise at the node is an integral, its signal the largest over the band.
        "levels.offset_survived" or "levels.least_headroom" => 1e-3,
        "drive.worst_phase_margin" => 1e-3,

        // The search for the crossing stops at |ln|T|| = 1e-6.
        "drive.phase_margin" => 1e-6,
        _ => 1e-9,
    };

    /// <summary>Series resistance of each kind of lead of one device, without the budgets' help: the buffer's skin resistor where there is a buffer.</summary>
    private static double[] FittedOhms(Design built, BuiltParts own)
    {
        bool isFitted = 0 < built.Input.SeriesResistor.Ohms;
        double active = built.Electrodes.ActiveBuffer?.SkinResistor.Ohms ?? (isFitted ? own.ActiveOhms : 0);
        double reference = built.Electrodes.ReferenceBuffer?.SkinResistor.Ohms ?? (isFitted ? own.ReferenceOhms : 0);
        return built.Electrodes.Ground is null ? [active, reference] : [active, reference, built.GroundDrive.SeriesResistor.Ohms];
    }

    /// <summary>By the skin's voltage: what all measuring leads put in against what they and the ground lead take; without a voltage there where the earth takes it all.</summary>
    private static double SharedAmperes(Design built, double[] ohms)
    {
        double into = built.Supply.Highest.Volts * ((built.Channels / ohms[0]) + (1 / ohms[1])), conductance = (built.Channels / ohms[0]) + (1 / ohms[1]) + (1 / ohms[2]);
        return built.Mains.AmplifierToEarth.Farads < 1e-8 ? into / conductance / ohms[2] : into;
    }

    /// <summary>Decibels and bits are compared as the ratios that they stand for: near 0 dB a share of the figure says nothing.</summary>
    private static double Error(string unit, double ours, double expected) => unit switch
    {
        "dB" => Math.Abs(ours - expected) * Math.Log(10) / 20,
        "bit" => Math.Abs(ours - expected) * Math.Log(2),
        _ => expected == 0 ? Math.Abs(ours) : Math.Abs((ours / expected) - 1),
    };

    private static (string Id, double? Value)[] Full(Evaluation full, BuiltParts own)
    {
        var list = new ResultList();
        NoiseReport.AddTo(list, full);
        ConverterReport.AddTo(list, full);
        MainsReportFigures(full, out double systemCmrr, out double fold);
        Design built = full.Design;
        double clock = built.Converter.ModulatorClock.Hertz - built.Band.High.Hertz, volts = built.Supply.Highest.Volts;
        return
        [
            ("gain.mid", full.GainMid), ("noise.total", full.Noise.Total), ("noise.board_share", list[new("noise.board_share")].Si), ("converter.enob", list[new("converter.enob")].Si), ("converter.bits_needed", list[new("converter.bits_needed")].Si),
            ("mains.total", full.Mains.AtInput.Total), ("mains.system_cmrr", systemCmrr), ("mains.recorded", full.Mains.Recorded), ("levels.offset_survived", full.Levels.OffsetSurvived),
            ("levels.least_headroom", full.Levels.Nodes.Min(node => node.Headroom)), ("drive.phase_margin", full.Drive?.PhaseMarginDegrees), ("drive.worst_phase_margin", full.Drive?.WorstPhaseMargin),
            ("alias.fold_attenuation", fold),
            ("alias.modulator_fold_attenuation", built.Converter.Kind == Converter.ConverterKind.DeltaSigma ? 20 * Math.Log10(full.GainMid / full.PathAndConverter([clock])[0]) : null),
            ("safety.fault_current", volts / FittedOhms(built, own).Min()),
            ("safety.driven_ground_current", full.Drive is null ? null : volts / FittedOhms(built, own)[^1]),
            ("safety.shared_fault_current", SharedAmperes(built, FittedOhms(built, own))),
        ];
    }

    private static Design Ranged()
    {
        static PartRanges Of(params (string Key, double Low, double High)[] ranges) => new(ranges.Select(range => new PartRange(range.Key, range.Low, range.High)));
        Design dry = Designs.Dry;
        PartRanges opAmp = Of(("voltage-noise", 40e-9, 90e-9), ("current-noise", 1e-15, 1e-13), ("offset-voltage", -3e-3, 3e-3), ("bias-current", -1e-9, 2e-9));
        OpAmp noisy = new() { OffsetVoltage = Voltage.FromMillivolts(2), BiasCurrent = default, Ranges = opAmp };
        PartRanges electrode = Of(("contact-resistance", 10e3, 1e6), ("excess-density", 1e-13, 1e-11));
        return dry with
        {
            Name = "ranged",
            Electrodes = dry.Electrodes with
            {
                Active = dry.Electrodes.Active with { Ranges = electrode },
                Reference = dry.Electrodes.Reference with { Ranges = electrode },
                Offset = Voltage.FromMillivolts(100),
                Ranges = Of(("offset", 20e-3, 150e-3)),
                ReferenceBuffer = new Electrodes.ElectrodeBuffer { SkinResistor = Resistance.FromKilohms(68), OpAmp = noisy },
            },
            Amplifier = dry.Amplifier with
            {
                CurrentNoise = CurrentNoiseDensity.FromFemtoamperesPerRootHertz(100),
                Ranges = Of(("gain", 4.8, 5.3), ("input-noise", 30e-9, 80e-9), ("output-noise", 100e-9, 300e-9), ("current-noise", 5e-14, 2e-13), ("cmrr", 80, 110), ("bias-current", -1e-9, 1e-9), ("offset-voltage", -1e-3, 1e-3)),
            },
            Stages =
            [
                (FrontEnd.Topologies.GainStage)dry.Stages[0] with { OpAmp = noisy },
                new FrontEnd.Topologies.MultipleFeedbackSection { Name = "anti-alias 1", OpAmp = noisy },
                new FrontEnd.Topologies.RcSection { Name = "anti-alias 2", R = Resistance.FromKilohms(10), C = Capacitance.FromNanofarads(100), OpAmp = noisy },
            ],
            Mains = dry.Mains with
            {
                Ranges = Of(("voltage", 207, 253), ("body-to-mains", 1e-12, 6e-12), ("body-to-earth", 100e-12, 500e-12), ("amplifier-to-earth", 5e-12, 20e-12), ("amplifier-to-mains", 1e-14, 1e-13), ("lead-to-mains", 1e-15, 5e-15),
                    ("field", 1e-8, 3e-7), ("loop-area", 1e-3, 4e-3)),
            },
            Converter = dry.Converter with { Ranges = Of(("noise", 200e-6, 400e-6), ("full-scale", 2.9, 3.1)) },
        };
    }

    [Theory]
    [InlineData("dry", 16)]
    [InlineData("gel", 14)]
    [InlineData("earthed", 16)]
    public void Spread_AllTolerancesAndRangesZero_IsTheAssessmentWithoutThem(string name, int figures)
    {
        // The dry designs have no modulator, the gel design has no driven ground.
        Design design = Exact(Designs.All.Single(one => one.Name == name));
        SpreadResult result = Run(design, new SpreadOptions { Builds = 8, Ranges = SpreadRanges.None })!;
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.Equal(figures, result.Figures.Count);
        foreach (SpreadFigure figure in result.Figures)
        {
            double expected = figure.Id.Text == "levels.least_headroom"
                ? assessment.Results.Where(one => one.Id.Text.EndsWith(".headroom", StringComparison.Ordinal)).Min(one => one.Si)
                : assessment[figure.Id].Si * (assessment[figure.Id].Value is Angle && figure.Unit == "°" ? AngleScale(assessment[figure.Id].Value!) : 1);
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
            Assert.Equal(a.Least, b.Least);
            Assert.Equal(a.Yield, b.Yield);
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

    [Theory]
    [InlineData(0, 0.05)]
    [InlineData(0.05, 0)]
    [InlineData(0.01, 0.05)]
    public void Rejection_FromUnequalInputFilters_IsTheWorstCaseOfTheFormula(double resistors, double capacitors)
    {
        // An R-C low-pass in each lead turns common mode into difference as f/f1·δ below the corner, δ the time constants' difference, at worst twice each tolerance:
        // the formula that reference/mains/rejection.txt holds with its figures. The electrodes are a short circuit here, the amplifier perfect.
        const double R = 100e3, C = 100e-12, F0 = 50;
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
            Input = new InputNetwork { SeriesResistor = Resistance.FromOhms(R), ShuntCapacitor = Capacitance.FromFarads(C), CapacitorTolerance = Ratio.FromFraction(capacitors), ResistorTolerance = Ratio.FromFraction(resistors) },
            Amplifier = Designs.Gel.Amplifier with { Cmrr = Decibels.FromStated(200), CmrrCorner = Frequency.FromHertz(1e9), CommonModeCapacitance = default, DifferentialCapacitance = default },
        };
        Assert.Empty(DesignCheck.Run(design).Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Message));
        SpreadFigure cmrr = Run(design, new SpreadOptions { Builds = 2000, Ranges = SpreadRanges.None })!.Find("mains.system_cmrr")!;
        double worst = FrontEnd.Textbook.MainsFormulas.LowPassMismatch(Frequency.FromHertz(F0), Frequency.FromHertz(1 / (2 * Math.PI * R * C)), Ratio.FromFraction(2 * (resistors + capacitors))).Value;
        Assert.Equal(worst, cmrr.Least, 0.02);
        Assert.All(cmrr.Values, value => Assert.True(worst - 0.02 < value));
    }

    [Fact]
    public void Limits_OfEveryJudgedResult_AreTheAssessments()
    {
        foreach (Design design in Designs.All)
        {
            SpreadResult result = Run(design, new SpreadOptions { Builds = 16 })!;
            Assessment assessment = Evaluator.Evaluate(design);
            foreach (Result judged in assessment.Judged.Where(one => one.Verdict.Limit is not null))
            {
                string id = judged.Id.Text.EndsWith(".headroom", StringComparison.Ordinal) ? "levels.least_headroom" : judged.Id.Text;
                SpreadFigure figure = result.Find(id)!;
                Assert.Equal(judged.Verdict.Requirement, figure.Requirement);
                Assert.Equal(judged.Verdict.LimitIsGreatest, figure.LimitIsGreatest);
                Assert.Equal(judged.Verdict.Limit is Angle angle ? angle.Degrees : judged.Verdict.Limit!.SiValue, figure.Limit);
                Assert.Equal(figure.Values.Count(value => figure.LimitIsGreatest ? value <= figure.Limit : figure.Limit <= value) / 16.0, figure.Yield);
            }
        }
    }

    [Fact]
    public void Quantity_OfEveryFigure_IsTheAssessmentsKind()
    {
        foreach (Design design in Designs.All)
        {
            Assessment assessment = Evaluator.Evaluate(design);
            foreach (SpreadFigure figure in Run(design, new SpreadOptions { Builds = 16 })!.Figures)
            {
                string id = figure.Id.Text == "levels.least_headroom" ? "levels.converter.headroom" : figure.Id.Text;
                IQuantity theirs = assessment[id].Value!, ours = figure.Quantity(figure.Unit == "°" ? AngleScale(theirs) * theirs.SiValue : theirs.SiValue);
                Assert.Equal(FrontEnd.Text.QuantityText.Format(theirs), FrontEnd.Text.QuantityText.Format(ours));
                Assert.Equal(theirs.GetType(), ours.GetType());
            }
        }
    }

    [Fact]
    public void FaultCurrent_WithoutAResistor_HasNoBoundAndFails()
    {
        SpreadResult result = Run(Designs.Dry with { Input = Designs.Dry.Input with { SeriesResistor = default } }, new SpreadOptions { Builds = 16 })!;
        SpreadFigure current = result.Find("safety.fault_current")!;
        Assert.All(current.Values, value => Assert.Equal(double.PositiveInfinity, value));
        Assert.Equal(0, current.Yield);
        Assert.Equal(0, result.Yield);
        Assert.Null(current.InBins(10));
    }

    [Fact]
    public void FaultCurrent_OfUniformResistors_HasTheQuantilesOfItsFormula()
    {
        // Two leads of 100 kΩ, uniform within 5 %, ground far larger: the current is V over the smaller, whose share below x is 1 − (1 − F(x))², F uniform.
        Design design = Exact(Designs.Dry) with { Input = Designs.Dry.Input with { ResistorTolerance = Ratio.FromPercent(5), CapacitorTolerance = default } };
        SpreadFigure current = Run(design, new SpreadOptions { Builds = 40_000, Ranges = SpreadRanges.None })!.Find("safety.fault_current")!;
        for (int i = 0; i < current.Percentiles.Count; i++)
        {
            // The current's percentile p is the smaller resistor's 1 − p.
            double share = 1 - (SpreadFigure.Percents[i] / 100), at = 1 - Math.Sqrt(1 - share);
            double expected = design.Supply.Highest.Volts / (100e3 * (0.95 + (0.1 * at)));

            // A quarter of a per cent in rank at most, times the range of 10 %, times the slope of the square root's end.
            Assert.Equal(1, current.Percentiles[i] / expected, 2e-3);
        }
    }

    [Fact]
    public void FaultCurrent_OfANormalResistor_HasTheQuantilesOfItsFormula()
    {
        // One resistor, normal with tolerance = 3σ: the current's percentile p is V/(R·(1 + t/3·z(1 − p))); z from a table of the normal distribution.
        double[] z = [2.3263, 1.6449, 0.6745, 0, -0.6745, -1.6449, -2.3263];
        Design design = Exact(Designs.Dry) with { GroundDrive = Designs.Dry.GroundDrive with { ResistorTolerance = Ratio.FromPercent(6) } };
        SpreadFigure current = Run(design, new SpreadOptions { Builds = 40_000, Ranges = SpreadRanges.None, Distribution = PartDistribution.Normal })!.Find("safety.driven_ground_current")!;
        for (int i = 0; i < z.Length; i++)
        {
            double expected = design.Supply.Highest.Volts / (design.GroundDrive.SeriesResistor.Ohms * (1 + (0.02 * z[i])));

            // The standard error of the outermost percentile is √(p(1 − p)/n)/φ(z), 0.019 standard deviations; five times that of 2 %.
            Assert.Equal(1, current.Percentiles[i] / expected, 2e-3);
        }
    }

    [Fact]
    public void Range_OfTheGain_IsDrawnFromEndToEnd()
    {
        // From half to twice, evenly in the logarithm: percentile p stands at 0.5·4^p.
        Design design = Exact(Designs.Gel);
        design = design with { Amplifier = design.Amplifier with { Ranges = new PartRanges([new PartRange("gain", 0.5 * design.Amplifier.Gain, 2 * design.Amplifier.Gain)]) } };
        SpreadFigure gain = Run(design, new SpreadOptions { Builds = 40_000, Ranges = SpreadRanges.None })!.Find("gain.mid")!;
        for (int i = 0; i < gain.Percentiles.Count; i++)
        {
            Assert.Equal(0.5 * Math.Pow(4, SpreadFigure.Percents[i] / 100), gain.Percentiles[i] / gain.Nominal, 0.02);
        }

        Assert.Equal(0.5, gain.Least / gain.Nominal, 1e-9);
        Assert.Equal(2, gain.Most / gain.Nominal, 1e-9);
    }

    [Fact]
    public void Corners_OfAnElectrodeThatMayBeAShort_AreNumbers()
    {
        PartRanges ranges = new([new PartRange("contact-resistance", 0, 1e6), new PartRange("excess-density", 0, 1e-11)]);
        Design design = Designs.Dry with { Electrodes = Designs.Dry.Electrodes with { Active = Designs.Dry.Electrodes.Active with { Ranges = ranges } } };
        Assert.All(Run(design, new SpreadOptions { Builds = 64 })!.Figures, figure => Assert.True(double.IsFinite(figure.Least + figure.Most), figure.Id.Text));
    }

    [Fact]
    public void Histogram_OfAFigure_CountsEveryBuildOnce()
    {
        SpreadFigure gain = Run(Designs.Dry, new SpreadOptions { Builds = 1001 })!.Find("gain.mid")!;
        Histogram bins = gain.InBins(12)!;
        Assert.Equal(1001, bins.Counts.Sum());
        Assert.Equal(gain.Values.Count(value => value < bins.Low + ((bins.High - bins.Low) / 12)), bins.Counts[0]);
        Assert.Equal(gain.Values.Min(), bins.Low);
        Assert.Equal(gain.Values.Max(), bins.High);
    }

    [Fact]
    public void Histogram_OfWholeBits_HasABinForEachNumber()
    {
        SpreadFigure bits = Run(Several[^1], new SpreadOptions { Builds = 1001 })!.Find("converter.bits_needed")!;
        Histogram bins = bits.InBins(12)!;
        Assert.True(bins.IsWhole);
        Assert.Equal(bits.Values.Min(), bins.Least);
        Assert.Equal(bits.Values.Max(), bins.Greatest);
        for (int bin = 0; bin < bins.Counts.Count; bin++)
        {
            Assert.Equal(bits.Values.Count(value => value == bins.Middle(bin)), bins.Counts[bin]);
        }
    }

    /// <summary>The stepped bits included: uniform draws stay within the corners. The system CMRR is not in it: the walk does not always find its worst imbalance, and the text says how far the builds reach.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Corners_OfUniformParts_BoundWhatIsDrawn(string name)
    {
        SpreadResult result = Run(Several.Single(one => one.Name == name), new SpreadOptions { Builds = 2000 })!;
        foreach (SpreadFigure figure in result.Figures.Where(figure => figure.Id.Text is "converter.bits_needed" or "noise.total" or "safety.fault_current"))
        {
            Assert.True(figure.Least <= figure.LeastDrawn * (1 + 1e-9), $"{figure.Id}: {figure.LeastDrawn} is below {figure.Least}");
            Assert.True(figure.MostDrawn <= figure.Most * (1 + 1e-9), $"{figure.Id}: {figure.MostDrawn} is above {figure.Most}");
        }
    }

    /// <summary>The current through the driven ground depends on its resistor alone: whatever else correlates with it does so by chance.</summary>
    [Fact]
    public void Ranks_OfPartsThatDoNotMatter_AreLeftOut()
    {
        SpreadResult result = Run(Designs.Dry, new SpreadOptions { Builds = 400 })!;
        Assert.All(result.Figures.SelectMany(figure => figure.Ranks), rank => Assert.True(0.15 < Math.Abs(rank.Coefficient)));
        Assert.All(result.Find("safety.driven_ground_current")!.Ranks, rank => Assert.Equal("ground-drive.series-resistor", rank.Key));
        Assert.NotEmpty(result.Find("safety.driven_ground_current")!.Ranks);
    }

    /// <summary>One lead's place in the room says nothing of the other's.</summary>
    [Fact]
    public void Leads_AreDrawnApart_AndBothMatter()
    {
        var options = new SpreadOptions { Builds = 2000, Seed = 4 };
        var parts = new PartList(Designs.Gel, options);
        double[][] factors = SpreadRun.Draw(parts, options, 2000);
        double together = Statistics.Correlation(Statistics.Ranks(factors[parts.ActiveLeadToMains]), Statistics.Ranks(factors[parts.ReferenceLeadToMains]));
        Assert.True(Math.Abs(together) < SpreadFigure.Chance(2000), $"{together}");
        Assert.Equal(parts.Parts[parts.ActiveLeadToMains].Low, parts.Parts[parts.ReferenceLeadToMains].Low);
        string[] keys = [.. parts.Parts.Select(part => part.Key)];
        Assert.Contains("mains.lead-to-mains (active)", keys);
        Assert.Contains("mains.lead-to-mains (reference)", keys);
        Assert.Equal(keys.Length, keys.Distinct().Count());
        (_, BuiltParts own) = parts.Apply([.. factors.Select(factor => factor[0])]);
        Assert.Equal(factors[parts.ActiveLeadToMains][0], own.ActiveLeadFactor);
        Assert.Equal(factors[parts.ReferenceLeadToMains][0], own.ReferenceLeadFactor);

        // The leads' pick-up is all that is left where the body picks up nothing: both leads' draws show in it.
        Design leads = Designs.Gel with { Mains = Designs.Gel.Mains with { BodyToMains = default, AmplifierToMains = default, LoopArea = default } };
        string[] ranked = [.. Run(leads, options)!.Find("mains.total")!.Ranks.Select(rank => rank.Key)];
        Assert.Contains("mains.lead-to-mains (active)", ranked);
        Assert.Contains("mains.lead-to-mains (reference)", ranked);
    }

    /// <summary>What the parts alone give is a run in which nothing else has a range: the same builds, the same share.</summary>
    [Fact]
    public void Yield_OfPartsAlone_IsThatOfARunWithoutTheRest()
    {
        foreach (Design design in new[] { Designs.Dry, Designs.Gel })
        {
            var options = new SpreadOptions { Builds = 600, Seed = 3 };
            SpreadResult all = Run(design, options)!;
            SpreadResult alone = Run(design, options with { Ranges = options.Ranges with { Electrodes = false, Surroundings = 1, MainsVoltage = 0 } })!;
            Assert.Equal(alone.Yield, all.YieldOfParts);
            Assert.Equal(alone.Yield, alone.YieldOfParts);
            Assert.Equal(alone.Yield, alone.YieldWithoutElectrodesAndLeads);
            Assert.All(all.Figures, figure => Assert.Equal(alone.Find(figure.Id)!.Yield, figure.YieldOfParts));
        }
    }

    /// <summary>More contact resistance goes with less capacitance, and the run says so.</summary>
    [Fact]
    public void Ties_AreSaid_AndHold()
    {
        SpreadResult result = Run(Designs.Dry, new SpreadOptions { Builds = 8 })!;
        Assert.Contains(result.Ties, tie => tie.Contains("more contact resistance goes with less contact capacitance", StringComparison.Ordinal));
        Assert.Contains(result.Ties, tie => tie.Contains("each lead's coupling to the mains is drawn separately", StringComparison.Ordinal));
        var impedance = new Electrodes.ElectrodeImpedance(Designs.Dry.Electrodes.Active);
        (var one, _) = impedance.At(new(300.0), new(1.0));
        (var two, _) = impedance.At(new(300.0), new(2.0));
        Assert.Equal(one.Magnitude[0], 2 * two.Magnitude[0], 1e-12 * one.Magnitude[0]);
        Assert.All(Enum.GetValues<SpreadPlace>(), place => Assert.Contains(result.Parts, part => part.Place == place));
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
