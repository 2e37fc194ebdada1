using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>Where rounding is white noise, and what it is where it is not.</summary>
public sealed class RoundOffInTimeTests
{
    private static Assessment Of(int stateFraction) => Evaluator.Evaluate(Designs.Dry with
    {
        Digital = [new DigitalHighPass { Name = "high-pass" }],
        Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q31, Form = FilterForm.DirectI, StateFraction = stateFraction },
    });

    [Fact]
    public void BelowItsDeadBand_AFilterSaysThatItsRoundOffIsNotWhite()
    {
        Assessment few = Of(6), many = Of(16);
        Assert.Contains(few.Findings, finding => finding.Code == "FE0625");
        Assert.NotNull(few.Find("digital.high-pass.round_off_simulated"));
        Assert.DoesNotContain(many.Findings, finding => finding.Code == "FE0625");
        Assert.Null(many.Find("digital.high-pass.round_off_simulated"));
    }

    [Fact]
    public void AboveItsDeadBand_TheSimulatedRoundOffIsTheWhiteOne()
    {
        // A larger step against the noise makes the rounding white: the converter's word is long, so that the noise is many steps.
        Design design = Designs.Dry with
        {
            Digital = [new DigitalHighPass { Name = "high-pass" }],
            Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q31, Form = FilterForm.DirectI, StateFraction = 8 },
            Converter = Designs.Dry.Converter with { Bits = 18 },
        };
        var evaluation = new Evaluation(design);
        double white = Evaluator.Evaluate(design)["digital.high-pass.round_off"].Si / design.Converter.LsbVolts * evaluation.GainMid;
        Assert.InRange(RoundOffInTime.Of(evaluation, 0)!.Value / white, 0.8, 1.3);
    }
}
