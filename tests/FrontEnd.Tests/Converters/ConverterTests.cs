using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Converters;

/// <summary>What a converter is where the design does not say: its own noise, what of its range lies between its rails.</summary>
public sealed class ConverterTests
{
    // A pin goes from rail to rail: a single-ended range is at most the supply, that of two pins twice it.
    [Theory]
    [InlineData(ConverterKind.SuccessiveApproximation, null, 3.0, 3.0, null, true)]     // just so
    [InlineData(ConverterKind.SuccessiveApproximation, null, 4.096, 3.0, null, false)]
    [InlineData(ConverterKind.SuccessiveApproximation, true, 4.096, 3.0, null, true)]
    [InlineData(ConverterKind.SuccessiveApproximation, null, 4.096, 2.7, 5.0, true)]    // the supply of its own counts, not the rails
    [InlineData(ConverterKind.DeltaSigma, null, 5.4, 2.7, null, true)]
    [InlineData(ConverterKind.DeltaSigma, null, 9.0, 3.0, null, false)]
    [InlineData(ConverterKind.DeltaSigma, false, 4.8, 3.0, null, false)]
    [InlineData(ConverterKind.DeltaSigma, null, 5.0, 3.0, 2.4, false)]                  // also where it is below them
    public void FullScale_AndItsSupply_FitOrAreAFailAndAWarning(ConverterKind kind, bool? differential, double fullScale, double lowest, double? own, bool fits)
    {
        Design design = Designs.Gel with
        {
            Converter = Designs.Gel.Converter with
            {
                Kind = kind, Differential = differential, FullScale = VoltagePeakToPeak.FromVolts(fullScale),
                OwnSupply = own is { } volts ? Voltage.FromVolts(volts) : null,
            },
            Supply = new Supply { Lowest = Voltage.FromVolts(lowest), Highest = Voltage.FromVolts(6) },
        };
        double most = (differential ?? kind == ConverterKind.DeltaSigma ? 2 : 1) * (own ?? lowest);
        Assert.Equal(most, ConverterSupply.Largest(design.Converter, design.Supply.Lowest).Volts, 12);
        Assert.Equal(Math.Min(most, fullScale) / 2, ConverterSupply.Swing(design.Converter, design.Supply.Lowest).Volts, 12);

        Assessment assessment = Evaluator.Evaluate(design);
        Result result = assessment.Find(ResultIds.Converter.FitsSupply)!;
        Assert.Equal(ResultState.Word, result.State);
        Assert.Equal(fits ? VerdictKind.Pass : VerdictKind.Fail, result.Verdict.Kind);
        Assert.Equal("yes", result.Verdict.Wanted);
        Assert.Equal(DesignKeys.Converter.FullScale, result.Verdict.Requirement);
        Assert.Equal(fits, !assessment.Findings.Any(finding => finding.Code == Messages.ConverterAboveSupply));
        Assert.True(assessment.Findings.All(finding => finding.Severity != Severity.Error));
        if (fits)
        {
            Assert.Equal("yes", result.Text);
        }
        else
        {
            Assert.Equal($"no: {fullScale} V p-p of at most {most} V", result.Text);
        }
    }

    // At the pin: ± half the smaller of full scale and what fits, whatever the mid-rail.
    [Theory]
    [InlineData(4.0, null)]
    [InlineData(6.0, null)]
    [InlineData(9.0, null)]
    [InlineData(9.0, 1.0)]
    public void Swing_AtThePin_EndsAtTheSmallerOfFullScaleAndSupply(double fullScale, double? midRail)
    {
        Design design = Designs.Gel with
        {
            Converter = Designs.Gel.Converter with { FullScale = VoltagePeakToPeak.FromVolts(fullScale) },
            Supply = Designs.Gel.Supply with { MidRail = midRail is { } volts ? Voltage.FromVolts(volts) : null },
        };
        var levels = new Evaluation(design).Levels;
        Assert.Equal(Math.Min(fullScale, 6) / 2, levels.Nodes.Single(node => node.Node == NodeId.Converter).Swing, 12);
    }

    [Fact]
    public void FitsSupply_WhereItDoesNot_IsNeverSearchedOver()
    {
        Assessment assessment = FrontEnd.Advice.Advisor.Advise(Evaluator.Evaluate(Designs.Gel), cancellation: TestContext.Current.CancellationToken);
        Result result = assessment.Find(ResultIds.Converter.FitsSupply)!;
        Assert.Equal(VerdictKind.Fail, result.Verdict.Kind);
        Assert.Null(result.Verdict.Improvement);
    }

    [Fact]
    public void OwnSupply_AboveTheHighestVoltage_IsAWarning()
    {
        Design design = Designs.Gel with { Converter = Designs.Gel.Converter with { OwnSupply = Voltage.FromVolts(5) } };
        Assert.Contains(Evaluator.Evaluate(design).Findings, finding => finding.Code == Messages.OwnSupplyAboveHighest && finding.Severity == Severity.Warning);
        Assert.DoesNotContain(Evaluator.Evaluate(design with { Supply = design.Supply with { Highest = Voltage.FromVolts(5) } }).Findings,
            finding => finding.Code == Messages.OwnSupplyAboveHighest);
    }

    // The larger of 0.4 steps and full scale/(6.6·2^19); by hand.
    [Theory]
    [InlineData(12, 3.0, 292.96875e-6)]           // 0.4 · 3 V/4096
    [InlineData(16, 4.096, 25e-6)]                // 0.4 · 62.5 µV
    [InlineData(24, 4.8, 1.38716264e-6)]          // 4.8 V/(6.6 · 524288)
    [InlineData(18, 2.6214400, 4.0e-6)]           // 0.4 · 10 µV against 0.76 µV
    public void Noise_NotGiven_FollowsTheConverter(double bits, double fullScale, double rms)
    {
        var converter = new AnalogDigitalConverter { Bits = bits, FullScale = VoltagePeakToPeak.FromVolts(fullScale) };
        Assert.Null(converter.Noise);
        Assert.Equal(rms, converter.NoiseVolts, rms * 1e-7);

        // Given, it is what is given, and 0 V is given too.
        Assert.Equal(0, (converter with { Noise = default(VoltageRms) }).NoiseVolts);
        Design design = Designs.Dry with { Converter = converter };
        Result own = Evaluator.Evaluate(design).Find(ResultIds.Noise.Source(SourceId.Converter))!;
        Result same = Evaluator.Evaluate(design with { Converter = converter with { Noise = VoltageRms.FromVolts(converter.NoiseVolts) } })
            .Find(ResultIds.Noise.Source(SourceId.Converter))!;
        Assert.Equal(same.Si, own.Si);
    }

    [Fact]
    public void Noise_NotGivenBesideAStep_GoesByTheStep() =>
        Assert.Equal(0.4e-3, new AnalogDigitalConverter { Lsb = Voltage.FromMillivolts(1) }.NoiseVolts, 1e-15);

    /// <summary>A sinc decimator's nulls are exact: six times the rate leaves nothing, and the clock itself all.</summary>
    [Fact]
    public void Response_AtWholeMultiplesOfTheRate_IsZeroAndOneAtTheClock()
    {
        AnalogDigitalConverter converter = new() { Kind = ConverterKind.DeltaSigma, Rate = Frequency.FromHertz(250), Oversampling = 256, SincOrder = 5 };
        Assert.All([250.0, 1500, 63750], hertz => Assert.Equal(0, converter.Response(hertz)));
        Assert.Equal(1, converter.Response(64000), 1e-12);

        // By hand, a fifth of the rate: sin 36°/(256·sin(36°/256)) = 0.587785/0.628317, to the fifth power.
        Assert.Equal(Math.Pow(0.5877852523 / (256 * Math.Sin(Math.PI / 5 / 256)), 5), converter.Response(50), 1e-9);
    }
}
