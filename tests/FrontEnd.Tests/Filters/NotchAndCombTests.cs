using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

public class NotchAndCombTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);
    private static readonly Frequency Mains = Frequency.FromHertz(50);

    /// <summary>50 Hz at 250 S/s: width, time constant, 1 % ring time, attenuation at ±0.05/0.1/0.2/0.5 Hz, and what it does at 40 Hz. Worked out independently, printed with two or three digits.</summary>
    [Theory]
    [InlineData(5, 10, 31.5, 0.15, 40, 34, 28, 20, -0.87, 6.7)]
    [InlineData(10, 5, 63.5, 0.29, 34, 28, 22, 14, -0.23, 3.9)]
    [InlineData(30, 1.67, 191, 0.88, 24.5, 18.5, 12.6, 5.8, -0.03, 1.4)]
    [InlineData(50, 1.0, 318, 1.47, 20, 14, 8.6, 3, -0.01, 0.8)]
    public void Figures_FiftyHertzAt250_AgreeWithIndependentTable(
        double q, double width, double tau, double ring, double at005, double at01, double at02, double at05, double lossAt40, double delayAt40)
    {
        NotchFigures figures = NotchFigures.Of(Mains, Frequency.FromHertz(50 / q), Rate);
        Assert.Equal(width, figures.Bandwidth.Hertz, 0.005);
        Assert.Equal(tau, figures.TimeConstant.Milliseconds, 0.005 * tau);
        Assert.Equal(ring, figures.RingTime.Seconds, 0.006);
        double[] printed = [at005, at01, at02, at05];
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(printed[i], figures.Depths[i].Attenuation!.Value, 0.55);
        }

        var sections = new SecondOrderSections([Notch.WithQ(Mains, q, Rate)]);
        Assert.Equal(lossAt40, 10 * Math.Log10(sections.PowerResponse(40, 250)), 0.0051);
        Assert.Equal(delayAt40, sections.GroupDelay(40, 250) * 1e3, 0.051);
    }

    [Fact]
    public void DepthAt_ExactCentre_IsUnbounded() =>
        Assert.Null(NotchFigures.Of(Mains, Frequency.FromHertz(5), Rate, [Frequency.FromHertz(0)]).Depths[0].Attenuation);

    /// <summary>The ring-down forecast against the runner: after a burst of mains ends, the output falls to 1 % in the ring time.</summary>
    [Fact]
    public void RingTime_AfterABurst_IsWhatTheRunnerShows()
    {
        NotchFigures figures = NotchFigures.Of(Mains, Frequency.FromHertz(50.0 / 30), Rate);
        double[] x = new double[4000];
        for (int n = 0; n < 2000; n++)
        {
            x[n] = Math.Sin(2 * Math.PI * 50 / 250 * n);
        }

        new SectionRunner(new SecondOrderSections([Notch.WithQ(Mains, 30, Rate)])).Run(x, x);
        double start = x.Skip(2000).Take(10).Max(Math.Abs);
        int last = Array.FindLastIndex(x, v => 0.01 * start < Math.Abs(v));
        Assert.Equal(figures.RingTime.Seconds, (last - 2000) / 250.0, 0.03);
    }

    [Fact]
    public void AtHarmonics_UpToTheBandEdge_HasANotchAtEach()
    {
        SecondOrderSections notches = Notch.AtHarmonics(Mains, 10, Frequency.FromHertz(100), Frequency.FromHertz(500));
        // Second section worked out independently (NumPy/SciPy): 100 Hz at 500 S/s, Q 10; the first 50 Hz.
        Assert.Equal(2, notches.Count);
        Assert.Equal(0.9695312529087462, notches[0].B0, 1e-12);
        Assert.Equal(0.9408092961815945, notches[1].B0, 1e-12);
        Assert.True(notches.PowerResponse(50, 500) < 1e-25 && notches.PowerResponse(100, 500) < 1e-25);
        // 125 Hz is half the rate: 100 Hz is the last below it, whatever the edge.
        Assert.Equal(2, Notch.AtHarmonics(Mains, 10, Frequency.FromHertz(400), Rate).Count);
    }

    [Theory]
    // Mains harmonics at common rates, worked out by hand.
    [InlineData(240, 250, 10)]
    [InlineData(250, 256, 6)]
    [InlineData(300, 250, 50)]
    [InlineData(480, 500, 20)]
    [InlineData(60, 250, 60)]
    public void Landing_MainsHarmonic_IsKnown(double f, double rate, double lands) =>
        Assert.Equal(lands, Notch.Landing(Frequency.FromHertz(f), Frequency.FromHertz(rate)).Hertz, 1e-9);

    [Theory]
    [InlineData(250, 50, 5)]
    [InlineData(250, 60, null)]
    [InlineData(480, 60, 8)]
    [InlineData(960, 60, 16)]
    [InlineData(1000, 60, null)]
    [InlineData(300, 60, 5)]
    public void PeriodOf_RateAndMains_IsWholeOrNothing(double rate, double mains, int? period) =>
        Assert.Equal(period, PeriodComb.PeriodOf(Frequency.FromHertz(mains), Frequency.FromHertz(rate)));

    [Fact]
    public void MeanForm_IsTheMeanOfOnePeriodAndDroops()
    {
        var comb = new PeriodComb(5, 1, Rate);
        Assert.Equal([0.2, 0.2, 0.2, 0.2, 0.2], comb.Taps(), (a, b) => Math.Abs(a - b) < 1e-15);
        // sin(5x)/(5·sin x), x = π·40/250: -10.1 dB at 40 Hz (by hand: sin 144° / (5·sin 28.8°) = 0.5878/2.4088 = 0.2440).
        Assert.Equal(0.2440, Math.Sqrt(comb.PowerResponse(40)), 5e-5);
        Assert.Equal(0.008, comb.GroupDelay(17), 1e-12);
        Assert.Equal(12.25, FrequencyResponse.LargestLoss(comb, Frequency.FromHertz(0), Frequency.FromHertz(40), Frequency.FromHertz(0)), 0.005);
    }

    [Fact]
    public void SubtractForm_TenPeriods_KeepsTheBandFlat()
    {
        var comb = new PeriodComb(5, 10, Rate);
        // Between harmonics at most 1/K is taken away where the running mean has side lobes: within 2.5 dB up to 40 Hz against 12 dB of the mean form.
        double mean = FrequencyResponse.LargestLoss(new PeriodComb(5, 1, Rate), Frequency.FromHertz(0), Frequency.FromHertz(40), Frequency.FromHertz(0));
        double subtract = FrequencyResponse.LargestLoss(comb, Frequency.FromHertz(0), Frequency.FromHertz(40), Frequency.FromHertz(0));
        Assert.True(subtract < 2.5 && 12 < mean, $"{subtract} dB and {mean} dB");
        Assert.Equal(0.2, comb.RingTime.Seconds, 1e-12);
        Assert.True(15 < FrequencyResponse.DepthAt(comb, Mains, Frequency.FromHertz(0.1)));
    }
}
