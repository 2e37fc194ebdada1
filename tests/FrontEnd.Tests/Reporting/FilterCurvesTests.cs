using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Topologies;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Reporting;

/// <summary>The filters' own plots against other ways to the same figures.</summary>
public class FilterCurvesTests
{
    private static readonly Design Design = Designs.Dry with
    {
        Stages =
        [
            .. Designs.Dry.Stages.Where(stage => stage is GainStage),
            new SallenKeySection
            {
                Name = "anti-alias 1",
                R1 = Resistance.FromKilohms(27.4), R2 = Resistance.FromKilohms(9.31), C1 = Capacitance.FromNanofarads(220), C2 = Capacitance.FromNanofarads(100),
            },
        ],
        Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q15, StateFraction = 8 },
        Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(250) },
    };

    private static Curve Of(IReadOnlyList<Curve> curves, string name) => curves.Single(curve => string.Equals(curve.Name, name, StringComparison.Ordinal));

    private static double At(Curve curve, double hertz)
    {
        int i = Array.FindIndex(curve.X, x => hertz <= x);
        double share = Math.Log(hertz / curve.X[i - 1]) / Math.Log(curve.X[i] / curve.X[i - 1]);
        return curve.Y[i - 1] + (share * (curve.Y[i] - curve.Y[i - 1]));
    }

    /// <summary>Ideal Sallen–Key by hand: f0 = 1/(2π√(R1·R2·C1·C2)), Q = √(R1·R2·C1·C2)/(C2·(R1 + R2)), |H|² = 1/((1 − x²)² + (x/Q)²).</summary>
    [Fact]
    public void Response_IdealAntiAlias_IsTheTextbooksSection()
    {
        Curve curve = Of(Evaluator.Evaluate(Design).Curves.FilterResponse, "anti-alias, ideal");
        double tau = Math.Sqrt(27.4e3 * 9.31e3 * 220e-9 * 100e-9), f0 = 1 / (2 * Math.PI * tau), q = tau / (100e-9 * (27.4e3 + 9.31e3));
        double[] expected = [.. curve.X.Select(f => f / f0).Select(x => -10 * Math.Log10(Math.Pow(1 - (x * x), 2) + Math.Pow(x / q, 2)))];
        double top = expected.Max();
        Assert.All(curve.Y.Zip(expected), pair => Assert.Equal(pair.Second - top, pair.First, 1e-9));
    }

    /// <summary>The closed form of a section against the network's own sweep of the path: group delay of the stage at the band's centre, to what 400 points resolve.</summary>
    [Fact]
    public void Delay_OfSectionsAndDigitalFilters_IsThatOfTheResults()
    {
        Assessment assessment = Evaluator.Evaluate(Design);
        double centre = assessment["gain.mid_frequency"].Si, stage = assessment["filter.anti-alias-1.group_delay"].Si;
        Assert.Equal(stage, At(Of(assessment.Curves.FilterDelay, "anti-alias, as built"), centre), stage * 1e-3);
        double digital = assessment.Results.Where(r => r.Id.Text.StartsWith("digital.", StringComparison.Ordinal) && r.Id.Text.EndsWith(".group_delay", StringComparison.Ordinal)).Sum(r => r.Si);
        Assert.Equal(digital, At(Of(assessment.Curves.FilterDelay, "digital"), centre), Math.Abs(digital) * 1e-2);
    }

    /// <summary>Sixteen bits move the 0.5 Hz high-pass at 250 S/s to 0.509 Hz (WordTests): 0.2 dB at 0.3 Hz, and the difference is that of the two lines.</summary>
    [Fact]
    public void Difference_OfRoundedWords_IsThatOfTheLines()
    {
        Curves curves = Evaluator.Evaluate(Design).Curves;
        Assert.Equal(["anti-alias, as built", "digital, as rounded to q15"], curves.FilterDifference.Select(curve => curve.Name));
        Curve difference = curves.FilterDifference[1], ideal = Of(curves.FilterResponse, "digital, ideal"), built = Of(curves.FilterResponse, "digital, as rounded to q15");
        Assert.Equal(At(built, 0.3) - At(ideal, 0.3), At(difference, 0.3), 1e-9);
        Assert.InRange(Math.Abs(At(difference, 0.3)), 0.05, 1);
        Assert.Contains(Evaluator.Evaluate(Design with { Arithmetic = new DigitalArithmetic() }).Curves.FilterDifference, curve => curve.Name.StartsWith("anti-alias", StringComparison.Ordinal));
        Assert.DoesNotContain(Evaluator.Evaluate(Design with { Arithmetic = new DigitalArithmetic() }).Curves.FilterDifference, curve => curve.Name.StartsWith("digital", StringComparison.Ordinal));
    }

    /// <summary>The section comes to rest at 1 with Butterworth's few per cent of overshoot, the chain with its high-pass at 0.</summary>
    [Fact]
    public void Step_OfSectionsAndChain_EndsAtTheGainAtZeroHertz()
    {
        Curves curves = Evaluator.Evaluate(Design).Curves;
        Curve analog = Of(curves.FilterStep, "anti-alias"), both = Of(curves.FilterStep, "anti-alias and digital");
        Assert.Equal(1, analog.Y[^1], 1e-4);
        Assert.InRange(analog.Y.Max(), 1.02, 1.08);
        Assert.Equal(0, both.Y[^1], 1e-3);
        Assert.True(analog.X.Zip(analog.X.Skip(1)).All(pair => pair.First < pair.Second) && 0 < analog.X[0]);
    }

    [Fact]
    public void Curves_WithoutFilters_AreNone()
    {
        Curves curves = Evaluator.Evaluate(Designs.Dry with { Stages = [], Digital = [] }).Curves;
        Assert.Empty(curves.FilterResponse);
        Assert.Empty(curves.FilterDelay);
        Assert.Empty(curves.FilterStep);
    }

    /// <summary>Bits below the LSB from 0 to 16: the finding is there exactly where the round-off is above a tenth of the noise, and names a remedy and both voltages.</summary>
    [Fact]
    public void RoundOff_AboveATenthOfTheNoise_IsFindingWithRemedy()
    {
        int with = 0, between = 0;
        for (int fraction = 0; fraction <= 16; fraction++)
        {
            Assessment assessment = Evaluator.Evaluate(Design with { Arithmetic = new DigitalArithmetic { Word = DigitalWord.Q31, StateFraction = fraction } });
            double noise = assessment["noise.total"].Si;
            foreach (int index in (int[])[0, 1])
            {
                double roundOff = assessment[$"digital.{Slug.Of(Design.Digital[index].Name)}.round_off"].Si;
                Finding? finding = assessment.Findings.SingleOrDefault(f => f.Code == "FE0622" && f.Field == $"digital[{index + 1}]");
                Assert.Equal(0.1 * noise < roundOff, finding is not null);
                Assert.True(finding is null || (finding.Help!.Length > 10 && finding.Message.Contains("tenth", StringComparison.Ordinal)));
                with += finding is null ? 0 : 1;
                between += 0.1 * noise < roundOff && roundOff < 0.5 * noise ? 1 : 0;
            }
        }

        Assert.True(0 < with && with < 34 && 0 < between, $"{with} with a finding, {between} between a tenth and a half");
    }

    /// <summary>A twin-T tuned to the second harmonic is judged at the second harmonic, moved by twice what the mains has: at the mains it would take off nothing.</summary>
    [Fact]
    public void NotchDepth_OfATwinTAtTheSecondHarmonic_IsThere()
    {
        var notch = new TwinTNotch
        {
            Name = "analogue notch 1",
            R1 = Resistance.FromKilohms(15.9155), R2 = Resistance.FromKilohms(15.9155), R3 = Resistance.FromKilohms(7.95775),
            C1 = Capacitance.FromNanofarads(100), C2 = Capacitance.FromNanofarads(100), C3 = Capacitance.FromNanofarads(200),
        };
        Design design = Designs.Dry with
        {
            Stages = [.. Designs.Dry.Stages, notch],
            Mains = Designs.Dry.Mains with { Frequency = Frequency.FromHertz(50), Deviation = Ratio.FromFraction(0.01) },
        };
        double Loss(double f) => -20 * Math.Log10(System.Numerics.Complex.Abs(notch.AsBuilt().Response(f)) / System.Numerics.Complex.Abs(notch.AsBuilt().Response(1e-3)));
        Assert.Equal(Math.Min(Loss(99), Loss(101)), Evaluator.Evaluate(design)["filter.analogue-notch-1.notch_depth"].Si, 1e-3);
        Assert.True(10 < Loss(99) && Loss(50) < 10);
    }
}
