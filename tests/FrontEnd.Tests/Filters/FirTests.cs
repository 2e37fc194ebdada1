using System.Globalization;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

public class FirTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    [Fact]
    public void KaiserFormulas_ReferenceTable_Agree()
    {
        foreach (string[] row in FilterReference.Rows("fir.csv").Where(r => r[0] is "kaiser-formula"))
        {
            double[] parameters = FilterReference.Numbers(row[3]);
            Assert.Equal(double.Parse(row[4], CultureInfo.InvariantCulture), KaiserDesign.Beta(parameters[0]), 1e-12);
            // The table's width is a share of half the rate.
            Assert.Equal(int.Parse(row[2], CultureInfo.InvariantCulture), KaiserDesign.ForecastLength(parameters[0], parameters[1] * Math.PI));
        }
    }

    [Fact]
    public void KaiserWindow_ReferenceTaps_Agree()
    {
        foreach (string[] row in FilterReference.Rows("fir.csv").Where(r => r[0].StartsWith("kaiser-", StringComparison.Ordinal) && r[0] is not "kaiser-formula"))
        {
            double[] p = FilterReference.Numbers(row[3]);
            FilterRequirement requirement = row[0] switch
            {
                "kaiser-low-pass" => LowPass(p[0], p[1], 0.1, p[2]),
                "kaiser-high-pass" => new(new HighPass(Frequency.FromHertz(p[0])), new HighPass(Frequency.FromHertz(p[1])), Decibels.FromStated(0.1), Decibels.FromStated(p[2])),
                _ => new(new BandStop(Frequency.FromHertz(p[0]), Frequency.FromHertz(p[3])), new BandStop(Frequency.FromHertz(p[1]), Frequency.FromHertz(p[2])), Decibels.FromStated(0.1), Decibels.FromStated(p[4])),
            };
            FirFilter filter = KaiserDesign.Windowed(requirement, Rate, int.Parse(row[2], CultureInfo.InvariantCulture), KaiserDesign.Beta(p[^1]));
            AssertTaps(FilterReference.Numbers(row[4]), filter, 1e-13, row[0]);
        }
    }

    [Fact]
    public void Equiripple_ReferenceTaps_Agree()
    {
        int rows = 0;
        foreach (string[] row in FilterReference.Rows("fir.csv").Where(r => r[0].StartsWith("equiripple", StringComparison.Ordinal)))
        {
            double[] p = FilterReference.Numbers(row[3]);
            FirBand[] bands = row[0] is "equiripple-low-pass"
                ? [Band(0, p[0], 1, p[2]), Band(p[1], 125, 0, p[3])]
                : [Band(0, p[0], 0, p[4]), Band(p[1], p[2], 1, p[5]), Band(p[3], 125, 0, p[6])];
            FirFilter? filter = EquirippleDesign.Taps(int.Parse(row[2], CultureInfo.InvariantCulture), bands, Rate);
            Assert.NotNull(filter);
            // Two grids, 32 and 128 points per ripple: their best filters differ by 1e-4 of the ripple.
            AssertTaps(FilterReference.Numbers(row[4]), filter, 2e-5, row[0]);
            rows++;
        }

        Assert.Equal(4, rows);
    }

    [Theory]
    [InlineData(40, 50, 0.1, 60)]
    [InlineData(30, 45, 1, 40)]
    [InlineData(10, 30, 0.5, 80)]
    public void Designs_LowPassRequirement_AreMetAndEquirippleIsShorter(double pass, double stop, double ripple, double attenuation)
    {
        FilterRequirement requirement = LowPass(pass, stop, ripple, attenuation);
        FirFilter kaiser = KaiserDesign.Design(requirement, Rate)!;
        FirFilter equiripple = EquirippleDesign.Design(requirement, Rate)!;
        Assert.True(equiripple.Length < kaiser.Length, $"{equiripple.Length} against {kaiser.Length}");
        foreach (FirFilter filter in new[] { kaiser, equiripple })
        {
            double top = 0;
            double bottom = 2;
            double leak = 0;
            for (double f = 0; f <= 125; f += 0.05)
            {
                double gain = Math.Sqrt(filter.PowerResponse(f));
                (top, bottom) = f <= pass ? (Math.Max(top, gain), Math.Min(bottom, gain)) : (top, bottom);
                leak = stop <= f ? Math.Max(leak, gain) : leak;
            }

            Assert.True(20 * Math.Log10(top / bottom) <= ripple * 1.0001, $"{20 * Math.Log10(top / bottom)} dB");
            Assert.True(attenuation * 0.9999 <= 20 * Math.Log10(top / leak), $"{20 * Math.Log10(top / leak)} dB");
        }

        Assert.True(equiripple.IsSymmetric && kaiser.IsSymmetric);
    }

    [Fact]
    public void BandStopAndHighPass_Requirements_AreMet()
    {
        var stop = new FilterRequirement(new BandStop(Frequency.FromHertz(45), Frequency.FromHertz(55)), new BandStop(Frequency.FromHertz(49), Frequency.FromHertz(51)), Decibels.FromStated(0.5), Decibels.FromStated(40));
        FirFilter notch = EquirippleDesign.Design(stop, Rate)!;
        Assert.True(notch.PowerResponse(50) < 1e-4 && 0.89 < notch.PowerResponse(45) && notch.PowerResponse(44) < 1.13);
        var high = new FilterRequirement(new HighPass(Frequency.FromHertz(4)), new HighPass(Frequency.FromHertz(1)), Decibels.FromStated(0.5), Decibels.FromStated(40));
        Assert.True(KaiserDesign.Design(high, Rate)!.PowerResponse(0.9) < 1.1e-4);
    }

    [Fact]
    public void Cost_251TapsAt250_IsHalfASecondOfDelay()
    {
        // Linear phase delays (L - 1)/2 samples: 251 taps at 250 S/s cost 0.5 s.
        FirFilter filter = KaiserDesign.Windowed(LowPass(40, 50, 0.1, 60), Rate, 251, 5);
        Assert.Equal(0.5, filter.Delay.Seconds);
        Assert.Equal(126, filter.Multiplies);
        Assert.Equal(31500, filter.MultipliesPerSecond);
        Assert.Equal(0.5, filter.GroupDelay(33));
    }

    /// <summary>sinc³ at 250 S/s: 10 Hz −0.07, 40 −1.11, 50 −1.74, 65.5 −3.01, 125 −11.8, 205 −40.9, 240 −82.9 dB; at 1 kS/s 40 Hz −0.07, 100 Hz −0.43. Independent figures of two to four digits.</summary>
    [Theory]
    [InlineData(250, 10, 0.07, 0.005)]
    [InlineData(250, 40, 1.11, 0.005)]
    [InlineData(250, 50, 1.74, 0.0051)]
    [InlineData(250, 65.5, 3.01, 0.01)]
    [InlineData(250, 125, 11.8, 0.05)]
    [InlineData(250, 205, 40.9, 0.05)]
    [InlineData(250, 240, 82.9, 0.06)]
    [InlineData(1000, 40, 0.07, 0.005)]
    [InlineData(1000, 100, 0.43, 0.005)]
    public void SincDecimator_Droop_AgreesWithIndependentFigures(double rate, double hertz, double loss, double tolerance) =>
        Assert.Equal(loss, new SincDecimator(3, 256, Frequency.FromHertz(rate)).Droop(Frequency.FromHertz(hertz)), tolerance);

    /// <summary>−3 dB at 0.262 (sinc³) and 0.227 (sinc⁴) of the output rate: converters' data sheets, reference/sampling/sinc.txt T3-19 and TV-E3k3, TV-E3k4.</summary>
    [Theory]
    [InlineData(3, 0.262)]
    [InlineData(4, 0.227)]
    public void SincDecimator_HalfPower_IsAtThePublishedShare(int order, double share)
    {
        var sinc = new SincDecimator(order, 64, Frequency.FromHertz(1));
        Assert.Equal(share, MathExtra.Bisect(f => (sinc.Gain(f) * sinc.Gain(f)) - Math.Sqrt(0.5) * Math.Sqrt(0.5), 0.01, 0.5), 0.0006);
    }

    [Fact]
    public void Compensation_ElevenTapsTo80Hertz_FlattensTheBand()
    {
        var sinc = new SincDecimator(3, 256, Rate);
        FirFilter filter = sinc.Compensation(11, Frequency.FromHertz(80));
        double worst = 0;
        for (double f = 0; f <= 80; f += 0.5)
        {
            worst = Math.Max(worst, Math.Abs(20 * Math.Log10(sinc.Gain(f) * Math.Sqrt(filter.PowerResponse(f)))));
        }

        Assert.True(4.4 < sinc.Droop(Frequency.FromHertz(80)));
        Assert.True(worst < 0.05, $"{worst} dB");
        Assert.Equal(0.02, filter.Delay.Seconds, 1e-12);
    }

    private static FilterRequirement LowPass(double pass, double stop, double ripple, double attenuation) =>
        new(new LowPass(Frequency.FromHertz(pass)), new LowPass(Frequency.FromHertz(stop)), Decibels.FromStated(ripple), Decibels.FromStated(attenuation));

    private static FirBand Band(double low, double high, double gain, double weight) => FirBand.Flat(Frequency.FromHertz(low), Frequency.FromHertz(high), gain, weight);

    private static void AssertTaps(double[] expected, FirFilter actual, double tolerance, string name)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.True(Math.Abs(expected[i] - actual.Taps[i]) <= tolerance, $"{name} tap {i}: expected {expected[i]}, actual {actual.Taps[i]}, difference {actual.Taps[i] - expected[i]:g3}");
        }
    }
}
