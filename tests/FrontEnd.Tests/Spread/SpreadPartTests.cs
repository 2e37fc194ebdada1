using System.Globalization;
using FrontEnd.Numbers;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>Drawn values against the distributions that they are said to have.</summary>
public class SpreadPartTests
{
    private const int Draws = 100_000;

    // The limits are five standard errors of the mean and of the variance.
    [Fact]
    public void Normal_ManyDraws_HaveAThirdOfTheToleranceAsDeviation()
    {
        (double mean, double variance) = Moments(new SpreadPart("r", SpreadLaw.Normal, 0.94, 1.06), x => x);
        Assert.Equal(1, mean, 5 * 0.02 / Math.Sqrt(Draws));
        Assert.Equal(0.02 * 0.02, variance, 5 * 0.02 * 0.02 * Math.Sqrt(2.0 / Draws));
    }

    [Fact]
    public void Uniform_ManyDraws_HaveTheRangeOverRootTwelveAsDeviation()
    {
        (double mean, double variance) = Moments(new SpreadPart("r", SpreadLaw.Uniform, 0.9, 1.1), x => x);
        Assert.Equal(1, mean, 5 * 0.2 / Math.Sqrt(12.0 * Draws));
        Assert.Equal(0.2 * 0.2 / 12, variance, 5 * 0.2 * 0.2 / 12 / Math.Sqrt(Draws));
    }

    [Fact]
    public void LogUniform_ManyDraws_AreUniformInTheLogarithm()
    {
        (double mean, double variance) = Moments(new SpreadPart("c", SpreadLaw.LogUniform, 0.5, 2), x => Math.Log2(x));
        Assert.Equal(0, mean, 5 * 2 / Math.Sqrt(12.0 * Draws));
        Assert.Equal(4.0 / 12, variance, 5 * 4.0 / 12 / Math.Sqrt(Draws));
    }

    private static (double Mean, double Variance) Moments(SpreadPart part, Func<double, double> of)
    {
        double[] values = [.. Enumerable.Range(0, Draws).Select(build => of(part.Draw(SeededRandom.For(3, "build", build.ToString(CultureInfo.InvariantCulture)))))];
        double mean = values.Average();
        return (mean, values.Sum(value => (value - mean) * (value - mean)) / Draws);
    }
}
