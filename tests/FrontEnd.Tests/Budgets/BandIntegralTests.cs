using FrontEnd.Budgets;
using FrontEnd.Designs;
using FrontEnd.Reporting;
using MathNet.Numerics.Integration;
using Xunit;

namespace FrontEnd.Tests.Budgets;

public sealed class BandIntegralTests
{
    [Fact]
    public void Over_FlickerAndWhite_IsTheClosedForm()
    {
        // ∫(1 + fc/f) df = f2 − f1 + fc·ln(f2/f1).
        BandIntegral integral = BandIntegral.Over([0.1, 100], 1, (hertz, values) =>
        {
            for (int i = 0; i < hertz.Length; i++)
            {
                values[0][i] = 1 + (7 / hertz[i]);
            }
        }, 1e-10);
        Assert.Equal(99.9 + (7 * Math.Log(1000)), integral.Sum(0), 1e-9);
        Assert.True(integral.Converged);
    }

    /// <summary>An integrand with a rounding of its own above the tolerance ends all the same, and at the right figure.</summary>
    [Fact]
    public void Over_AnIntegrandThatRounds_StopsAtItsRounding()
    {
        int points = 0;
        BandIntegral integral = BandIntegral.Over([0.1, 1, 10, 100], 1, (hertz, values) =>
        {
            points += hertz.Length;
            for (int i = 0; i < hertz.Length; i++)
            {
                values[0][i] = 1 + (1e-7 * Math.Sin(1e9 * hertz[i]));
            }
        }, 1e-9);
        Assert.Equal(99.9, integral.Sum(0), 99.9 * 5e-8);
        Assert.True(integral.Converged);
        Assert.InRange(points, 45, 3000);
    }

    [Fact]
    public void Over_NarrowPeak_IsFoundByRefinement()
    {
        // A 0.1 Hz wide Lorentzian at 50 Hz inside 1…1000 Hz: π·w less the tails.
        const double Width = 0.05;
        BandIntegral integral = BandIntegral.Over([1, 50, 1000], 1, (hertz, values) =>
        {
            for (int i = 0; i < hertz.Length; i++)
            {
                values[0][i] = 1 / (1 + Math.Pow((hertz[i] - 50) / Width, 2));
            }
        }, 1e-9);
        double exact = Width * (Math.Atan(950 / Width) + Math.Atan(49 / Width));
        Assert.Equal(exact, integral.Sum(0), 1e-7 * exact);
    }

    [Fact]
    public void Over_PanelsAddUp_OverSubranges()
    {
        BandIntegral integral = BandIntegral.Over([1, 4, 13, 40], 1, (hertz, values) => hertz.CopyTo(values[0]), 1e-10);
        Assert.Equal((169 - 16) / 2.0, integral.Sum(0, 4, 13), 1e-8);
        Assert.Equal(integral.Sum(0), integral.Sum(0, 1, 40), 1e-8);
    }

    /// <summary>The noise integral a second time: one frequency at a time through the general-purpose library's double-exponential rule.</summary>
    [Fact]
    public void NoiseTotal_AgreesWithThePlainQuadrature()
    {
        foreach (Design design in Designs.All)
        {
            var evaluation = new Evaluation(design);
            double fs = design.Converter.Rate.Hertz, white = ((design.Converter.LsbVolts * design.Converter.LsbVolts / 12) + Math.Pow(design.Converter.NoiseVolts, 2)) / (fs / 2);
            double Integrand(double logF)
            {
                double f = Math.Exp(logF);
                evaluation.Path.Sweep([f]);
                double s = evaluation.Path.Density[0], response = design.Converter.Response(f);
                return f * evaluation.Digital.Power(f) * ((s * response * response) + evaluation.Noise.Folds.Exact([f])[0] + white);
            }

            double sum = DoubleExponentialTransformation.Integrate(Integrand, Math.Log(design.Band.Low.Hertz), Math.Log(design.Band.High.Hertz), 1e-9);
            double expected = Math.Sqrt(sum) / evaluation.GainMid;
            Assert.Equal(expected, evaluation.Noise.Total, 1e-6 * expected);
        }
    }

    [Fact]
    public void FoldedNoise_Interpolated_AgreesWithTermByTerm()
    {
        foreach (Design design in Designs.All)
        {
            var evaluation = new Evaluation(design);
            foreach (double f in new[] { 0.5, 0.9, 7.3, 21, 39.9 })
            {
                double exact = evaluation.Noise.Folds.Exact([f])[0];
                Assert.Equal(exact, evaluation.Noise.Folds.At(f), 1e-7 * exact);
            }
        }
    }
}
