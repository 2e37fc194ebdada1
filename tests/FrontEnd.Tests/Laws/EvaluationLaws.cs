using FrontEnd.Amplifier;
using FrontEnd.Budgets;
using FrontEnd.Catalogue;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Electrodes;
using FrontEnd.Fields;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FsCheck;
using FsCheck.Xunit;
using Xunit;
using Result = FrontEnd.Results.Result;

namespace FrontEnd.Tests.Laws;

/// <summary>Statements that hold for every design.</summary>
public sealed class EvaluationLaws
{
    private static double Total(Design design) => Evaluator.Evaluate(design)["noise.total"].Si;

    [Property(MaxTest = 60)]
    public void Evaluate_AnyLegalDesign_DoesNotThrowAndAlwaysAnswers(int seed, PositiveInt changes)
    {
        Assessment assessment = Evaluator.Evaluate(Designs.Varied(seed, changes.Get % 20));
        Assert.NotNull(assessment.Find("noise.total"));
        Assert.NotNull(assessment.Find("safety.fault_current"));
        foreach (Result result in assessment.Results)
        {
            Assert.Equal(result.State == ResultState.Number, result.Value is not null);
            Assert.True(result.State != ResultState.Missing || assessment.Findings.Any(finding => finding.Code == result.FindingCode), $"{result.Id} is missing without a finding");
            Assert.True(result.Value is null || double.IsFinite(result.Si), result.Id.Text);
        }
    }

    [Property(MaxTest = 60)]
    public void Evaluate_ExtremeValuesWithinTheirRanges_DoesNotThrow(int seed)
    {
        var random = new Random(seed);
        Design design = Designs.All[random.Next(3)];
        for (int i = 0; i < 4; i++)
        {
            Field<Design>[] fields = [.. DesignFields.Numeric(design)];
            Field<Design> field = fields[random.Next(fields.Length)];
            if (field.Range is { } range)
            {
                double value = random.Next(2) == 0 ? range.Least : range.Greatest;
                design = range.Contains(value) ? field.WithSiValue(design, value) : design;
            }
        }

        Assert.NotEmpty(Evaluator.Evaluate(design).Results);
    }

    [Property(MaxTest = 10)]
    public void Evaluate_SameDesignTwice_GivesTheSameFigures(int seed)
    {
        Design design = Designs.Varied(seed, 3);
        Assessment first = Evaluator.Evaluate(design), second = Evaluator.Evaluate(design);
        Assert.Equal(first.Results.Select(result => (result.Id, result.Value, result.Text)), second.Results.Select(result => (result.Id, result.Value, result.Text)));
    }

    [Property(MaxTest = 25)]
    public void Noise_MakingAnySourceLouder_NeverLowersTheTotal(int seed)
    {
        Design design = Designs.Varied(seed, 2);
        Field<Design>[] noisy = [.. DesignFields.Numeric(design).Where(field => field.Holds<VoltageNoiseDensity>() || field.Holds<CurrentNoiseDensity>() || field.Holds<ExcessNoise>())];
        Field<Design> field = noisy[new Random(seed).Next(noisy.Length)];
        Design louder = field.WithSiValue(design, Math.Min((field.SiValue(design) ?? 0) * 3, field.Range?.Greatest ?? double.MaxValue));
        Assessment before = Evaluator.Evaluate(design), after = Evaluator.Evaluate(louder);
        if (before["noise.total"].State == ResultState.Number)
        {
            Assert.True(before["noise.total"].Si <= after["noise.total"].Si * (1 + 1e-7), $"{field.Key}: {before["noise.total"].Si} -> {after["noise.total"].Si}");
        }
    }

    [Property(MaxTest = 20)]
    public void Noise_RowsOfTheBudget_AddUpToTheTotal(int seed)
    {
        Assessment assessment = Evaluator.Evaluate(Designs.Varied(seed, 3));
        if (assessment["noise.total"].State != ResultState.Number)
        {
            return;
        }

        double sum = assessment.Results.Where(result => result.Id.Text.StartsWith("noise.source.", StringComparison.Ordinal)).Sum(result => result.Si * result.Si);
        Assert.Equal(assessment["noise.total"].Si, Math.Sqrt(sum), 1e-9 * assessment["noise.total"].Si);
    }

    [Fact]
    public void Noise_HotterEverywhere_RisesWithTheRootOfTemperature()
    {
        // Thermal noise alone: no amplifier, converter or excess noise; four times the absolute temperature doubles it.
        Design quiet = Designs.Gel with
        {
            Amplifier = Designs.Gel.Amplifier with { InputNoise = default, OutputNoise = default, CurrentNoise = default },
            Converter = Designs.Gel.Converter with { Noise = default(VoltageRms), Bits = 40 },
            BoardTemperature = Temperature.FromKelvins(75),
            SkinTemperature = Temperature.FromKelvins(75),
        };
        double cold = new Evaluation(quiet).Noise.Total;
        double hot = new Evaluation(quiet with { BoardTemperature = Temperature.FromKelvins(300), SkinTemperature = Temperature.FromKelvins(300) }).Noise.Total;
        Assert.Equal(2, hot / cold, 1e-6);
    }

    [Fact]
    public void ImpedanceLevel_TimesFour_DoublesThermalNoiseAndKeepsTheGain()
    {
        // Every resistance × 4 and every capacitance ÷ 4, amplifier noise off: the transfer stays and 4kTR doubles the voltage.
        Design design = Designs.Gel with { Amplifier = Designs.Gel.Amplifier with { InputNoise = default, OutputNoise = default, CurrentNoise = default }, Converter = Designs.Gel.Converter with { Noise = default(VoltageRms), Bits = 40 } };
        Design scaled = design;
        foreach (Field<Design> field in DesignFields.Numeric(design))
        {
            if (field.Holds<Resistance>())
            {
                scaled = field.WithSiValue(scaled, field.SiValue(design)!.Value * 4);
            }
            else if (field.Holds<Capacitance>())
            {
                scaled = field.WithSiValue(scaled, field.SiValue(design)!.Value / 4);
            }
        }

        Evaluation one = new(design), four = new(scaled);
        Assert.Equal(one.GainMid, four.GainMid, 1e-9 * one.GainMid);
        Assert.Equal(2, four.Noise.Total / one.Noise.Total, 1e-6);
    }

    [Fact]
    public void Divider_PerfectSymmetry_IsBelow1e15OfTheCommonMode()
    {
        Electrode electrode = Designs.Dry.Electrodes.Active;
        Design design = Designs.Dry with
        {
            Electrodes = Designs.Dry.Electrodes with { Active = electrode, Reference = electrode, Mismatch = Ratio.FromFraction(0) },
            Input = Designs.Dry.Input with { ResistorTolerance = default, CapacitorTolerance = default, ReferenceInputs = 1 },
        };
        MainsPartsAtInput at = new Evaluation(design).Mains.AtInput;
        Assert.True(0 < at.BodyCommonMode);
        Assert.True(at.Divider <= 1e-15 * at.BodyCommonMode, $"{at.Divider} of {at.BodyCommonMode}");
    }

    [Property(MaxTest = 30)]
    public void Mains_TwiceTheVoltage_DoublesEverythingButTheLoop(int seed)
    {
        Design design = Designs.Varied(seed, 2);
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        Design twice = design with { Mains = design.Mains with { Voltage = VoltageRms.FromVolts(2 * design.Mains.Voltage.Volts) } };
        MainsPartsAtInput one = new Evaluation(design).Mains.AtInput, two = new Evaluation(twice).Mains.AtInput;
        Assert.Equal(2 * one.BodyCommonMode, two.BodyCommonMode, 1e-9 * two.BodyCommonMode);
        Assert.Equal(2 * one.Imbalance, two.Imbalance, (1e-9 * two.Imbalance) + 1e-25);
        Assert.Equal(one.Loop, two.Loop);
    }

    [Property(MaxTest = 20)]
    public void Mains_ChosenSigns_AreTheWorstOfAllEight(int seed)
    {
        Design design = Designs.Varied(seed, 2);
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        // Either mismatch built by hand, without any left to choose: neither may be worse than what was chosen.
        Evaluation chosen = new(design);
        double m = design.Electrodes.EffectiveMismatch;
        foreach (double sign in new[] { 0.999, -0.999 })
        {
            Electrode active = design.Electrodes.Active.Scaled(1 + (sign * m / 2)), reference = design.Electrodes.Reference.Scaled(1 - (sign * m / 2));
            Evaluation built = new(design with { Electrodes = design.Electrodes with { Active = active, Reference = reference, Mismatch = Ratio.FromFraction(0) } });
            Assert.True(built.Mains.AtInput.Total <= chosen.Mains.AtInput.Total * 1.005, $"{sign}: {built.Mains.AtInput.Total} above {chosen.Mains.AtInput.Total}");
        }
    }

    [Property(MaxTest = 200)]
    public void Folding_WithinTheFirstZone_IsAnInvolution(PositiveInt rate, NormalFloat share)
    {
        double fs = rate.Get, f = Math.Abs(share.Get) % 0.5 * fs;
        Assert.Equal(f, Folding.LandsAt(f, fs), 1e-9 * fs);
        Assert.Equal(f, Folding.LandsAt(fs - Folding.LandsAt(f, fs), fs), 1e-9 * fs);
    }

    [Property(MaxTest = 200)]
    public void Folding_AnyFrequency_LandsBetweenZeroAndHalfTheRate(PositiveInt rate, NormalFloat frequency)
    {
        double landing = Folding.LandsAt(Math.Abs(frequency.Get) * 1e3, rate.Get);
        Assert.InRange(landing, 0, rate.Get / 2.0);
    }

    [Property(MaxTest = 100)]
    public void Folding_ARange_ContainsTheLandingOfEveryFrequencyInIt(PositiveInt rate, NormalFloat low, NormalFloat width, NormalFloat share)
    {
        double fs = rate.Get, a = Math.Abs(low.Get) * 100, b = a + (Math.Abs(width.Get) * fs), f = a + ((b - a) * (Math.Abs(share.Get) % 1));
        (double least, double most) = Folding.LandsWithin(a, b, fs);
        Assert.InRange(Folding.LandsAt(f, fs), least - (1e-9 * fs), most + (1e-9 * fs));
    }

    [Fact]
    public void Levels_LessOffset_NeverLessHeadroom()
    {
        double last = double.NegativeInfinity;
        foreach (double millivolts in new[] { 500.0, 300, 100, 30, 0 })
        {
            double headroom = Evaluator.Evaluate(Designs.Dry with { Electrodes = Designs.Dry.Electrodes with { Offset = Voltage.FromMillivolts(millivolts) } })["levels.amplifier.headroom"].Si;
            Assert.True(last <= headroom);
            last = headroom;
        }
    }

    [Property(MaxTest = 15)]
    public void Levels_OffsetSurvived_MakesTheFirstNodeJustClip(int seed)
    {
        Design design = Designs.Varied(seed, 1);
        if (Evaluator.Evaluate(design).Find("levels.offset_survived") is not { State: ResultState.Number, Si: > 0 } survived)
        {
            return;
        }

        Design atLimit = design with { Electrodes = design.Electrodes with { Offset = Voltage.FromVolts(survived.Si) } };

        // Nodes behind an ac coupling never see the offset and may clip for other reasons.
        double least = new Evaluation(atLimit).Levels.Nodes.Where(node => node.OffsetSurvived is not null).Min(node => node.Headroom!.Value);
        Assert.Equal(0, least, 1e-6);
    }

    [Fact]
    public void Safety_LargerResistor_NeverMoreCurrent()
    {
        double last = double.PositiveInfinity;
        foreach (double kilohms in new[] { 1.0, 10, 68, 100, 1000 })
        {
            double current = Evaluator.Evaluate(Designs.Dry with { Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromKilohms(kilohms) } })["safety.fault_current.active-electrode"].Si;
            Assert.True(current < last);
            last = current;
        }
    }

    [Fact]
    public void Safety_NoResistor_IsAFail()
    {
        Result result = Evaluator.Evaluate(Designs.Dry with { Input = Designs.Dry.Input with { SeriesResistor = default } })["safety.fault_current"];
        Assert.Equal(ResultState.Unbounded, result.State);
        Assert.Equal(VerdictKind.Fail, result.Verdict.Kind);
    }

    [Fact]
    public void Verdict_NoLimitSet_IsNotJudged()
    {
        Assert.Equal(VerdictKind.NotJudged, Evaluator.Evaluate(Designs.Dry)["noise.board_share"].Verdict.Kind);
        Assert.NotEqual(VerdictKind.NotJudged, Evaluator.Evaluate(Designs.Gel)["noise.board_share"].Verdict.Kind);
    }

    [Theory]
    [InlineData(50.0, VerdictKind.Fail)] // 3.3 V/49.5 kΩ = 66.7 µA
    [InlineData(68.0, VerdictKind.Marginal)] // 49.0 µA: less than a tenth of 50 µA to spare
    [InlineData(100.0, VerdictKind.Pass)]
    public void Verdict_FaultCurrent_FollowsTheMargin(double kilohms, VerdictKind expected) =>
        Assert.Equal(expected, Evaluator.Evaluate(Designs.Dry with { Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromKilohms(kilohms) } })["safety.fault_current"].Verdict.Kind);

    [Property(MaxTest = 20)]
    public void DrivenGround_WorstPhaseMargin_IsNotAboveAnyCornerTried(int seed)
    {
        var random = new Random(seed);
        Design design = Designs.Dry;
        double worst = Evaluator.Evaluate(design)["drive.worst_phase_margin"].Si;
        double factor = 1e3 * Math.Pow(1000, random.Next(9) / 8.0) / design.Electrodes.Ground!.DcResistance.Ohms;
        Design corner = design with
        {
            Mains = design.Mains with { BodyToEarth = Capacitance.FromFarads(100e-12 * Math.Pow(10, random.Next(9) / 8.0)), AmplifierToEarth = random.Next(2) == 0 ? design.Mains.AmplifierToEarth : Capacitance.FromMicrofarads(1) },
            Electrodes = design.Electrodes with { Active = design.Electrodes.Active.Scaled(factor), Reference = design.Electrodes.Reference.Scaled(factor), Ground = design.Electrodes.Ground.Scaled(factor) },
        };
        Assert.True(worst <= Evaluator.Evaluate(corner)["drive.phase_margin"].Si + 1e-6);
    }

    [Fact]
    public void Montage_Weights_SumToZeroWhereTheReferenceCancels()
    {
        foreach (MontageKind kind in new[] { MontageKind.Bipolar, MontageKind.Average, MontageKind.MeanOfOthers })
        {
            Assert.All(Montage.Weights(kind, 4), row => Assert.Equal(0, row.Sum(), 1e-12));
        }
    }

    /// <summary>Noise √(Σc²): average with itself √(1 − 1/N), mean of N others √(1 + 1/N). Derived; the values are those of a Monte-Carlo run of 4e5 samples.</summary>
    [Theory]
    [InlineData(MontageKind.Average, 8, 0.935)]
    [InlineData(MontageKind.Average, 19, 0.973)]
    [InlineData(MontageKind.MeanOfOthers, 3, 1.225)]
    [InlineData(MontageKind.MeanOfOthers, 9, 1.061)]
    [InlineData(MontageKind.MeanOfOthers, 20, 1.026)]
    public void Montage_Weights_HaveTheNoiseWorkedOutApart(MontageKind kind, int sites, double expected)
    {
        double[] row = Montage.Weights(kind, sites).First();
        Assert.Equal(expected, Math.Sqrt(row.Sum(c => c * c)), 5e-4);
    }

    [Property(MaxTest = 10)]
    public void Hand_ResistorNoiseOfAFlatPath_AgreesWithTheNetwork(PositiveInt ohms)
    {
        // Short electrodes, no filters, a wide flat path: the textbook's assumptions hold, so must the figure.
        double r = 1e3 * (1 + (ohms.Get % 100));
        Design design = new()
        {
            Electrodes = new ElectrodeSet
            {
                Active = new Electrode { ContactResistance = Resistance.FromOhms(1), ContactCapacitance = default }, Reference = new Electrode { ContactResistance = Resistance.FromOhms(1), ContactCapacitance = default },
                Mismatch = Ratio.FromFraction(0),
            },
            Input = new InputNetwork { SeriesResistor = Resistance.FromOhms(r), ShuntCapacitor = default, ResistorTolerance = default },
            Converter = new AnalogDigitalConverter { Rate = Frequency.FromKilohertz(100) },
        };
        Result row = Evaluator.Evaluate(design)["noise.source.protection-resistors"];
        Assert.True(Math.Abs(row.Hand!.Difference) < 1e-3, $"{row.Hand.Difference}");
    }

    [Fact]
    public void DigitalNotch_AtTheMains_LowersWhatIsRecordedByItsDepth()
    {
        Design with = Designs.Dry, without = with with { Digital = [new DigitalHighPass { Name = "high-pass" }] };
        Assessment a = Evaluator.Evaluate(with), b = Evaluator.Evaluate(without);
        double ratio = 20 * Math.Log10(b["mains.harmonic.1.recorded"].Si / a["mains.harmonic.1.recorded"].Si);
        Assert.Equal(a["digital.notch.notch_depth"].Si, ratio, 0.05);
    }

    [Fact]
    public void Converter_OneBitMore_HalvesTheStep()
    {
        double step = Evaluator.Evaluate(Designs.Dry)["converter.lsb"].Si;
        double half = Evaluator.Evaluate(Designs.Dry with { Converter = Designs.Dry.Converter with { Bits = Designs.Dry.Converter.Bits + 1 } })["converter.lsb"].Si;
        Assert.Equal(step / 2, half, 1e-12 * step);
    }

    [Property(MaxTest = 10)]
    public void FallbackLanes_AreRare(int seed)
    {
        Design design = Designs.Varied(seed, 1);
        if (DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return;
        }

        Assert.True(new Evaluation(design).Path.Fallbacks <= 20);
    }

    [Fact]
    public void Finding_DrivenGroundWithoutMargin_SaysThatItOscillates()
    {
        Design fast = Designs.Dry with
        {
            GroundDrive = Designs.Dry.GroundDrive with { UnityGainFrequency = Frequency.FromKilohertz(200), AveragingUnlimited = false, AveragingBandwidth = Frequency.FromKilohertz(1) },
            Mains = Designs.Dry.Mains with { AmplifierToEarth = Capacitance.FromMicrofarads(1) },
        };
        Assert.Contains(Evaluator.Evaluate(fast).Findings, finding => finding.Code == FrontEnd.Text.Messages.DrivenGroundOscillates);
        Assert.DoesNotContain(Evaluator.Evaluate(Designs.Dry).Findings, finding => finding.Code == FrontEnd.Text.Messages.DrivenGroundOscillates);
    }

    /// <summary>The noise that dithers the steps stands at the converter's pin, before any digital filter.</summary>
    [Fact]
    public void Finding_FewSteps_DoesNotDependOnTheDigitalFilters()
    {
        Design narrow = Designs.Dry with { Band = new Band("design", Frequency.FromHertz(20), Frequency.FromHertz(21)) };
        Assert.DoesNotContain(Evaluator.Evaluate(narrow).Findings, finding => finding.Code == FrontEnd.Text.Messages.NotQuantisationLimited);
        Design coarse = Designs.Dry with { Converter = Designs.Dry.Converter with { Bits = 4, Noise = default(VoltageRms) } };
        Assert.Contains(Evaluator.Evaluate(coarse).Findings, finding => finding.Code == FrontEnd.Text.Messages.NotQuantisationLimited);
    }
}
