using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

public class ResponseTests
{
    [Fact]
    public void Crossings_ButterworthBandPass_AreTheStatedCorners()
    {
        DigitalFilter filter = FilterDesign.Digital(new ButterworthPrototype(3), new BandPass(Frequency.FromHertz(1), Frequency.FromHertz(40)), Frequency.FromHertz(250));
        IReadOnlyList<Frequency> corners = FrequencyResponse.Crossings(filter, Frequency.FromHertz(0.01), Frequency.FromHertz(125), FrequencyResponse.HalfPower, reference: 1);
        Assert.Equal(2, corners.Count);
        Assert.Equal(1, corners[0].Hertz, 1e-9);
        Assert.Equal(40, corners[1].Hertz, 1e-9);
    }

    [Fact]
    public void Sweep_FourthOrderLowPass_UnwrapsItsPhase()
    {
        AnalogFilter filter = FilterDesign.Analog(new ButterworthPrototype(4), new LowPass(Frequency.FromHertz(10)));
        IReadOnlyList<ResponsePoint> points = FrequencyResponse.Sweep(filter, [.. Enumerable.Range(0, 400).Select(i => 0.01 * Math.Pow(1.04, i))]);
        Assert.All(points.Zip(points.Skip(1)), p => Assert.True(p.Second.PhaseDegrees < p.First.PhaseDegrees));
        // Four poles turn by 360°.
        Assert.Equal(-360, points[^1].PhaseDegrees, 1);
        // Delay at 0 Hz: Σ 1/(ω0·Q) = (1.8478 + 0.7654)/(2π·10), from the handbook's section table.
        Assert.Equal((1.8478 + 0.7654) / (20 * Math.PI), points[0].GroupDelay, 1e-5);
    }

    [Fact]
    public void Sweep_AtANull_HasNoDecibels()
    {
        // 1 − z⁻² at 0 Hz: exactly 0.
        var difference = new FirFilter([1, 0, -1], Frequency.FromHertz(100));
        Assert.Null(FrequencyResponse.Sweep(difference, [0])[0].Decibels);
        Assert.Equal(20 * Math.Log10(2), FrequencyResponse.Sweep(difference, [25])[0].Decibels!.Value, 1e-12);
    }

    /// <summary>Unit step of 1 − e^(−t/τ): 0.1 % after τ·ln 1000.</summary>
    [Fact]
    public void Step_FirstOrderLowPass_SettlesAfterSevenTimeConstants()
    {
        AnalogFilter filter = FilterDesign.Analog(new ButterworthPrototype(1), new LowPass(Frequency.FromHertz(10)));
        double tau = 1 / (20 * Math.PI);
        StepFigures step = StepResponse.Figures(filter);
        Assert.Equal(tau * Math.Log(1000), step.Settling.Seconds, tau * 2e-3);
        Assert.Equal(0, step.Overshoot, 1e-6);
        double[] values = StepResponse.Of(filter, Duration.FromSeconds(tau / 10), 50);
        for (int i = 0; i < 50; i++)
        {
            Assert.Equal(1 - Math.Exp(-i / 10.0), values[i], 1e-12);
        }
    }

    /// <summary>Butterworth overshoots: second order 4.3 % (e^−π, exact), fourth 10.8 %, sixth 14.3 % (the orders above 2 from memory, three digits); critically damped not at all.</summary>
    [Fact]
    public void Step_Overshoot_IsAsKnown()
    {
        Assert.Equal(Math.Exp(-Math.PI), Overshoot(new ButterworthPrototype(2)), 1e-5);
        Assert.Equal(0.108, Overshoot(new ButterworthPrototype(4)), 0.001);
        Assert.Equal(0.143, Overshoot(new ButterworthPrototype(6)), 0.001);
        Assert.Equal(0, Overshoot(new CriticallyDampedPrototype(5)), 1e-9);

        static double Overshoot(Prototype prototype) => StepResponse.Figures(FilterDesign.Analog(prototype, new LowPass(Frequency.FromHertz(40)))).Overshoot;
    }

    /// <summary>A 0.5 Hz second-order high-pass undershoots by 21 % after a step.</summary>
    [Theory]
    [InlineData(250)]
    [InlineData(1000)]
    public void Step_SlowHighPass_UndershootsByAFifth(double rate)
    {
        StepFigures step = StepResponse.Figures(Butterworth.HighPass(2, Frequency.FromHertz(0.5), Frequency.FromHertz(rate)).Sections, Frequency.FromHertz(rate));
        Assert.Equal(-0.21, step.Least, 0.005);
        Assert.Equal(0, step.Final);
    }

    /// <summary>Second way: the analogue step by state equations against the digital filter's at a high rate.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Step_AnalogAndFastDigital_Agree(int shape)
    {
        ResponseShape response = shape switch
        {
            0 => new LowPass(Frequency.FromHertz(20)),
            1 => new HighPass(Frequency.FromHertz(5)),
            2 => new BandPass(Frequency.FromHertz(5), Frequency.FromHertz(20)),
            _ => new BandStop(Frequency.FromHertz(5), Frequency.FromHertz(20)),
        };
        var prototype = new EllipticPrototype(3, Decibels.FromStated(1), Decibels.FromStated(40));
        const double Rate = 100_000;
        double[] analog = StepResponse.Of(FilterDesign.Analog(prototype, response), Duration.FromSeconds(100 / Rate), 300);
        double[] digital = StepResponse.Of(FilterDesign.Digital(prototype, response, Frequency.FromHertz(Rate)).Sections, 30_000);
        for (int i = 1; i < 300; i++)
        {
            // The bilinear transform takes the mean of the step over one sample: half a sample of delay, 1e-3 of the fastest slope.
            double between = 0.5 * (digital[100 * i] + digital[(100 * i) - 1]);
            Assert.Equal(analog[i], between, 2e-3);
        }
    }

    /// <summary>1–40 Hz of second order, forwards and backwards: −6.02 dB where −3.01 dB was asked for.</summary>
    [Fact]
    public void ZeroPhase_BandPass_HasSixDecibelsAtItsCornersAndNoPhase()
    {
        DigitalFilter filter = FilterDesign.Digital(new ButterworthPrototype(1), new BandPass(Frequency.FromHertz(1), Frequency.FromHertz(40)), Frequency.FromHertz(250));
        var both = new ZeroPhase(filter);
        Assert.Equal(-6.02, 10 * Math.Log10(both.PowerResponse(1)), 0.005);
        Assert.Equal(-6.02, 10 * Math.Log10(both.PowerResponse(40)), 0.005);

        // Second way: a sine of 10 Hz on an offset comes out without offset, in phase, times |H|².
        double[] record = [.. Enumerable.Range(0, 5000).Select(n => 1000 + Math.Sin(2 * Math.PI * 10 * n / 250))];
        both.Run(record);
        for (int n = 2000; n < 3000; n++)
        {
            Assert.Equal(filter.PowerResponse(10) * Math.Sin(2 * Math.PI * 10 * n / 250), record[n], 1e-6);
        }

        Assert.True(record.Max(Math.Abs) < 2, "the offset rings at the ends");
    }

    [Fact]
    public void Check_EveryMistake_IsAFindingWithItsNumbers()
    {
        IReadOnlyList<Finding> findings = FilterDesign.Check(
            new EllipticPrototype(11, Decibels.FromStated(-1), Decibels.FromStated(0)), new BandPass(Frequency.FromHertz(200), Frequency.FromHertz(0)), Frequency.FromHertz(250), "digital.bandpass");
        Assert.Equal((string[])["FE0601", "FE0602", "FE0603", "FE0604", "FE0605", "FE0606"], findings.Select(f => f.Code).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(findings, f => Assert.Equal("digital.bandpass", f.Field));
        Assert.Contains("11", findings.Single(f => f.Code is "FE0601").Message, StringComparison.Ordinal);
        Finding half = findings.Single(f => f.Code is "FE0603");
        Assert.Contains("200 Hz", half.Message, StringComparison.Ordinal);
        Assert.Contains("125 Hz", half.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_AttenuationBelowRipple_IsFinding() =>
        Assert.Equal("FE0607", Assert.Single(FilterDesign.Check(new EllipticPrototype(3, Decibels.FromStated(3), Decibels.FromStated(2)), new LowPass(Frequency.FromHertz(10)))).Code);

    [Fact]
    public void Requirement_StopEdgeInPassBand_IsFinding()
    {
        var requirement = new FilterRequirement(new BandPass(Frequency.FromHertz(5), Frequency.FromHertz(20)), new BandPass(Frequency.FromHertz(6), Frequency.FromHertz(30)), Decibels.FromStated(1), Decibels.FromStated(40));
        Assert.Equal("FE0608", Assert.Single(MinimumOrder.Find(FilterFamily.Butterworth, requirement).Findings).Code);
    }

    /// <summary>A Gaussian's edge has a limit: no Bessel of any order does 60 dB within a factor of 1.5.</summary>
    [Fact]
    public void MinimumOrder_BesselTooSteep_IsFinding()
    {
        var requirement = new FilterRequirement(new LowPass(Frequency.FromHertz(10)), new LowPass(Frequency.FromHertz(15)), Decibels.FromStated(1), Decibels.FromStated(60));
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Bessel, requirement);
        Assert.Null(choice.Order);
        Assert.Equal("FE0609", Assert.Single(choice.Findings).Code);
    }

    /// <summary>Anti-alias orders: 240 Hz down 40 dB with 60 Hz corner 3.32 -> 4; 205 Hz, 70 Hz corner, 46 dB 4.93 -> 5; 955 Hz, 100 Hz corner, 46 dB 2.35 -> 3 (worked by hand from the Butterworth formula).</summary>
    [Theory]
    [InlineData(60, 240, 40, 3.32, 4)]
    [InlineData(70, 205, 46, 4.93, 5)]
    [InlineData(100, 955, 46, 2.35, 3)]
    public void MinimumOrder_AntiAlias_AgreesWithHandCalculation(double corner, double stop, double attenuation, double exact, int order)
    {
        var requirement = new FilterRequirement(new LowPass(Frequency.FromHertz(corner)), new LowPass(Frequency.FromHertz(stop)), FrequencyResponse.HalfPower, Decibels.FromStated(attenuation));
        OrderChoice choice = MinimumOrder.Find(FilterFamily.Butterworth, requirement);
        Assert.Equal(exact, choice.Exact!.Value, 0.01);
        Assert.Equal(order, choice.Order);
        Assert.Equal(corner, choice.Shape!.Corners[0].Hertz, 1e-9);
    }
}
