using FrontEnd.Circuits;
using FrontEnd.Quantities;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Fits;

/// <summary>White noise and corner from points of a plot.</summary>
public sealed class NoiseFitTests
{
    private static NoisePoint[] Points(double white, double corner, double low, double high, int count, Func<double> error) =>
        [.. Enumerable.Range(0, count).Select(at => low * Math.Pow(high / low, at / (count - 1.0)))
            .Select(f => new NoisePoint(Frequency.FromHertz(f), VoltageNoiseDensity.FromVoltsPerRootHertz(white * Math.Sqrt(1 + (corner / f)) * Math.Exp(error()))))];

    [Property(MaxTest = 100)]
    public void Fit_ExactPoints_IsTheModel(int seed)
    {
        var random = new Random(seed);
        double white = Math.Pow(10, -9 + (2 * random.NextDouble())), corner = Math.Pow(10, 4 * random.NextDouble());
        NoiseFit fit = NoiseFit.Of(Points(white, corner, corner / 30, corner * 30, random.Next(3, 40), () => 0));
        Assert.Equal(white, fit.White.SiValue, 1e-8 * white);
        Assert.Equal(corner, fit.Corner.Hertz, 1e-7 * corner);
        Assert.True(fit.Rms.Value < 1e-6 && fit.IsWhiteSeen && fit.IsCornerSeen);
    }

    /// <summary>Read off to 3 %: the corner is good to some times that, as each point tells of it and of the white level at once.</summary>
    [Property(MaxTest = 100)]
    public void Fit_PointsReadOff_IsNearTheModel(int seed)
    {
        var random = new Random(seed);
        double white = Math.Pow(10, -9 + (2 * random.NextDouble())), corner = Math.Pow(10, 4 * random.NextDouble());
        NoiseFit fit = NoiseFit.Of(Points(white, corner, corner / 30, corner * 100, 25, () => 0.06 * (random.NextDouble() - 0.5)));
        Assert.Equal(1, fit.White.SiValue / white, 0.05);
        Assert.Equal(1, fit.Corner.Hertz / corner, 0.15);
        Assert.InRange(fit.Rms.Value, 0.01, 0.3);
    }

    /// <summary>The slow plain way: no other pair of values within a tenth leaves less.</summary>
    [Property(MaxTest = 30)]
    public void Fit_AnyPoints_LeavesLeast(int seed)
    {
        var random = new Random(seed);
        NoisePoint[] points = Points(1e-8, 50, 1, 1e4, 15, () => 0.5 * (random.NextDouble() - 0.5));
        NoiseFit fit = NoiseFit.Of(points);
        double Left(double white, double corner) => points.Sum(point => Math.Pow(Math.Log(point.Density.SiValue / (white * Math.Sqrt(1 + (corner / point.Frequency.Hertz)))), 2));
        double least = Left(fit.White.SiValue, fit.Corner.Hertz);
        for (int at = 0; at < 200; at++)
        {
            Assert.True(least <= Left(fit.White.SiValue * (0.9 + (0.2 * random.NextDouble())), fit.Corner.Hertz * (0.9 + (0.2 * random.NextDouble()))) + 1e-12);
        }
    }

    [Fact]
    public void Fit_FlatPoints_HaveNoCorner()
    {
        NoiseFit fit = NoiseFit.Of(Points(6e-8, 0, 0.1, 1e3, 20, () => 0));
        Assert.Equal(0, fit.Corner.Hertz);
        Assert.Equal(6e-8, fit.White.SiValue, 1e-17);
    }

    /// <summary>Points that end before white noise begins, or begin behind the corner, say so.</summary>
    [Fact]
    public void Fit_CornerBeyondThePoints_IsTold()
    {
        NoiseFit flicker = NoiseFit.Of(Points(1e-8, 1000, 0.1, 30, 10, () => 0));
        Assert.True(!flicker.IsWhiteSeen && flicker.IsCornerSeen);
        NoiseFit white = NoiseFit.Of(Points(1e-8, 1, 10, 1e4, 10, () => 0));
        Assert.True(white.IsWhiteSeen && !white.IsCornerSeen);
        Assert.Equal(1, white.Corner.Hertz, 1e-5);
    }

    [Fact]
    public void Fit_TooFewPoints_Throws() => Assert.Throws<ArgumentException>(() => NoiseFit.Of(Points(1e-8, 1, 1, 10, 2, () => 0)));
}
