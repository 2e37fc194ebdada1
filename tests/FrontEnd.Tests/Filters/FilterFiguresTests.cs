using System.Numerics;
using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>What is printed of filters, against plain sweeps of their coefficients.</summary>
public class FilterFiguresTests
{
    /// <summary>Gain 1 is the top of every prototype: a first-order low-pass is 3 dB down at its corner and not 4e-5 of it beside, as where the top is sought on a grid that begins above 0 Hz.</summary>
    [Theory]
    [InlineData(FilterFamily.Butterworth)]
    [InlineData(FilterFamily.Bessel)]
    [InlineData(FilterFamily.CriticallyDamped)]
    public void HalfPower_OfEveryShapeAndLowOrder_IsTheCorner(FilterFamily family)
    {
        foreach (FilterShape shape in Enum.GetValues<FilterShape>())
        {
            foreach (double? rate in (double?[])[null, 250])
            {
                foreach (int order in (int[])[1, 2, 5])
                {
                    double[] corners = FilterWords.CornerCount(shape) == 1 ? [40] : [40, 40.01];
                    FilterFigures figures = Figures(new FilterWish { Family = family, Shape = shape, Order = order, Corners = [.. corners.Select(Frequency.FromHertz)] }, rate);
                    Assert.Equal(corners.Length, figures.HalfPower.Count);
                    Assert.All(corners.Zip(figures.HalfPower), pair => Assert.Equal(pair.First, pair.Second.Hertz, 40 * 1e-8));
                    Assert.All(figures.AtCorners, at => Assert.Equal(10 * Math.Log10(2), at.Loss!.Value.Value, 1e-6));
                }
            }
        }
    }

    /// <summary>A Chebyshev with a millionth of a decibel of ripple has its half power far beyond its edge: Ω = 1/ε = 2084 for order 1, ε² = 10^(1e-7) − 1.</summary>
    [Fact]
    public void HalfPower_FarFromTheCorner_IsFound()
    {
        FilterWish wish = new() { Family = FilterFamily.Chebyshev, Shape = FilterShape.LowPass, Order = 1, Corners = [Frequency.FromHertz(40)], Ripple = Decibels.FromStated(1e-6) };
        double expected = 40 / Math.Sqrt(Math.Pow(10, 1e-7) - 1);
        Assert.Equal(expected, Assert.Single(Figures(wish, null).HalfPower).Hertz, expected * 1e-6);
        // A high-pass of the same: mirrored.
        Assert.Equal(1600 / expected, Assert.Single(Figures(wish with { Shape = FilterShape.HighPass }, null).HalfPower).Hertz, 1600 / expected * 1e-6);
    }

    /// <summary>The delay of a band-pass a ten-thousandth wide peaks within its band, between any points of a grid over decades: 2/(π·width) of the pole pair in the middle for order 1.</summary>
    [Fact]
    public void LargestDelay_OfANarrowBand_IsThePolesOwn()
    {
        FilterWish wish = new() { Family = FilterFamily.Butterworth, Shape = FilterShape.BandPass, Order = 1, Corners = [Frequency.FromHertz(10), Frequency.FromHertz(10.001)] };
        FilterFigures figures = Figures(wish, null);
        Assert.Equal(1 / (Math.PI * 0.001), figures.LargestDelay.Seconds, 1e-3 / (Math.PI * 0.001));
        Assert.Equal(10.0005, figures.LargestDelayAt.Hertz, 1e-4);
    }

    /// <summary>Every figure of an FIR is one that its response takes, and none is exceeded between the points of a sweep of 400 points a lobe.</summary>
    [Fact]
    public void FirExtremes_AnyTaps_AreTheTrueOnes()
    {
        Random random = new(3);
        for (int draw = 0; draw < 24; draw++)
        {
            FilterShape shape = (FilterShape)(draw % 4);
            double[] edges = [.. Enumerable.Range(0, 4).Select(i => 8 + (28 * i) + (20 * random.NextDouble()))];
            (double[] pass, double[] stop) = shape switch
            {
                FilterShape.LowPass => ([edges[0]], [edges[1]]),
                FilterShape.HighPass => ([edges[1]], [edges[0]]),
                FilterShape.BandPass => ((double[])[edges[1], edges[2]], (double[])[edges[0], edges[3]]),
                _ => ([edges[0], edges[3]], [edges[1], edges[2]]),
            };
            FirWish wish = new()
            {
                Shape = shape,
                Method = draw % 3 == 0 ? FirMethod.Kaiser : FirMethod.Equiripple,
                PassEdges = [.. pass.Select(Frequency.FromHertz)],
                StopEdges = [.. stop.Select(Frequency.FromHertz)],
                Ripple = Decibels.FromStated(0.5),
                Attenuation = Decibels.FromStated(20 + (50 * random.NextDouble())),
                Rate = Frequency.FromHertz(256),
                Taps = draw % 2 == 0 ? null : 15 + (2 * random.Next(20)),
            };
            FirAnswer answer = wish.Design();
            if (answer.Figures is not { } figures)
            {
                continue;
            }

            double[] taps = answer.Filter!.Taps.ToArray();
            double top = 0, bottom = 9, leak = 0;
            (double Low, double High, bool Passes)[] bands = shape switch
            {
                FilterShape.LowPass => [(0, pass[0], true), (stop[0], 128, false)],
                FilterShape.HighPass => [(0, stop[0], false), (pass[0], 128, true)],
                FilterShape.BandPass => [(0, stop[0], false), (pass[0], pass[1], true), (stop[1], 128, false)],
                _ => [(0, pass[0], true), (stop[0], stop[1], false), (pass[1], 128, true)],
            };
            foreach ((double low, double high, bool passes) in bands)
            {
                int steps = 100 + (int)(800 * taps.Length * (high - low) / 256);
                for (int i = 0; i <= steps; i++)
                {
                    double f = low + ((high - low) * i / steps), sum = 0;
                    for (int k = 0; k < taps.Length; k++)
                    {
                        sum += taps[k] * Math.Cos(2 * Math.PI * f * (k - ((taps.Length - 1) / 2.0)) / 256);
                    }

                    (top, bottom) = passes ? (Math.Max(top, Math.Abs(sum)), Math.Min(bottom, Math.Abs(sum))) : (top, bottom);
                    leak = passes ? leak : Math.Max(leak, Math.Abs(sum));
                }
            }

            double ripple = 20 * Math.Log10(top / bottom), loss = 20 * Math.Log10(top / leak);
            Assert.InRange(figures.StopLoss!.Value, loss - 1e-3, loss + 1e-6);
            Assert.InRange(figures.PassLoss, ripple - 1e-6, ripple + 1e-4);
        }
    }

    /// <summary>A pass band so narrow that points spread over all bands miss it, and three taps: both have a best filter, whose errors alternate at their largest. They were refused.</summary>
    [Theory]
    [InlineData(FilterShape.BandPass, 53, 125, new[] { 26.321, 27.093 }, new[] { 15.951, 36.298 })]
    [InlineData(FilterShape.BandPass, 19, 500, new[] { 80.377, 88.301 }, new[] { 42.272, 110.78 })]
    [InlineData(FilterShape.BandStop, 3, 500, new[] { 45.19, 148.23 }, new[] { 77.16, 120.1 })]
    public void Equiripple_NarrowBand_HasABestFilter(FilterShape shape, int taps, double rate, double[] pass, double[] stop)
    {
        FirAnswer answer = new FirWish
        {
            Shape = shape, PassEdges = [.. pass.Select(Frequency.FromHertz)], StopEdges = [.. stop.Select(Frequency.FromHertz)], Rate = Frequency.FromHertz(rate), Taps = taps,
        }.Design();
        Assert.Empty(answer.Findings);
        double[] h = answer.Filter!.Taps.ToArray();
        (double Low, double High, double Wanted)[] bands = shape == FilterShape.BandPass
            ? [(0, stop[0], 0), (pass[0], pass[1], 1), (stop[1], rate / 2, 0)]
            : [(0, pass[0], 1), (stop[0], stop[1], 0), (pass[1], rate / 2, 1)];
        List<double> errors = [];
        foreach ((double low, double high, double wanted) in bands)
        {
            for (int i = 0; i <= 2000; i++)
            {
                double f = low + ((high - low) * i / 2000);
                errors.Add(h.Select((tap, k) => tap * Math.Cos(2 * Math.PI * f * (k - ((taps - 1) / 2.0)) / rate)).Sum() - wanted);
            }
        }

        // Chebyshev's theorem: (L + 1)/2 + 1 extremes of alternating sign, all within the grid's accuracy of the largest.
        double largest = errors.Max(Math.Abs);
        int alternations = 0, sign = 0;
        foreach (double error in errors.Where(e => largest * 0.98 < Math.Abs(e)))
        {
            alternations += Math.Sign(error) == sign ? 0 : 1;
            sign = Math.Sign(error);
        }

        Assert.True(((taps + 1) / 2) + 1 <= alternations, $"{alternations} alternations of {largest}");
    }

    /// <summary>What is met is met on the page: the least loss that is printed is not below what was asked for.</summary>
    [Fact]
    public void Equiripple_Sought_MeetsWhatWasAskedForToAMillionthOfADecibel()
    {
        for (int i = 0; i < 12; i++)
        {
            FirWish wish = new()
            {
                Shape = FilterShape.LowPass, PassEdges = [Frequency.FromHertz(40)], StopEdges = [Frequency.FromHertz(50 + i)], Rate = Frequency.FromHertz(250),
                Ripple = Decibels.FromStated(0.1), Attenuation = Decibels.FromStated(40.03),
            };
            FirFigures figures = wish.Design().Figures!;
            Assert.True(40.03 - 2e-6 <= figures.StopLoss && figures.PassLoss <= 0.1 + 2e-6, $"{figures.StopLoss} and {figures.PassLoss} dB");
        }
    }

    /// <summary>The notch's own loss, from its poles and zeros: |H| of z = e^(jω), where harmonic h is off by h times what the mains is. With one Q for all the depth hardly changes with h; with one width it loses 20·log10 h.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void NotchDepth_AtAHarmonic_IsWithTheHarmonicMovedAlong(bool commonWidth)
    {
        NotchAnswer answer = new NotchWish { Rate = Frequency.FromHertz(2000), Edge = Frequency.FromHertz(160), Q = 25, CommonWidth = commonWidth }.Design();
        NotchesFigures figures = answer.Figures;
        foreach (HarmonicDepth depth in figures.Depths)
        {
            foreach (NotchDepth at in depth.Depths)
            {
                double worst = new[] { -1, 1 }.Max(sign =>
                {
                    Complex z = Complex.FromPolarCoordinates(1, 2 * Math.PI * depth.Harmonic * (50 + (sign * at.Deviation.Hertz)) / 2000);
                    return answer.Sections!.Sections.Aggregate(1.0, (gain, s) => gain * Complex.Abs(((s.B0 * z * z) + (s.B1 * z) + s.B2) / ((z * z) + (s.A1 * z) + s.A2)));
                });
                Assert.Equal(-20 * Math.Log10(worst), at.Attenuation!.Value, 1e-6);
            }
        }

        double first = figures.Depths[0].Depths[0].Attenuation!.Value, third = figures.Depths[2].Depths[0].Attenuation!.Value;
        Assert.Equal(commonWidth ? 20 * Math.Log10(3) : 0, first - third, 0.3);
    }

    /// <summary>At 1 kS/s no harmonic of 60 Hz up to the fourteenth lands below 150 Hz, and the fifteenth to nineteenth do: 900, 960, 1020, 1080, 1140 Hz against 1000 Hz. The fourth and fifth lie above the band.</summary>
    [Fact]
    public void Notches_HarmonicsFarAboveTheRate_AreLookedAtToo()
    {
        NotchAnswer answer = new NotchWish { Mains = Frequency.FromHertz(60), Rate = Frequency.FromHertz(1000), Edge = Frequency.FromHertz(150) }.Design();
        string message = Assert.Single(answer.Findings).Message;
        foreach ((int harmonic, double lands) in ((int, double)[])[(15, 100), (16, 40), (17, 20), (18, 80), (19, 140)])
        {
            Assert.Contains($"harmonic {harmonic}, ", message, StringComparison.Ordinal);
            Assert.Contains($"lands at {lands} Hz", message, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("harmonic 14,", message, StringComparison.Ordinal);
        Assert.DoesNotContain("harmonic 20,", message, StringComparison.Ordinal);
    }

    /// <summary>A band that holds a null is lost there without bound, wherever the points of a sweep fall; and the lost widths are those between the bisected levels.</summary>
    [Fact]
    public void CombDroop_BandWithANull_IsWithoutBound()
    {
        CombFigures figures = new CombWish { Rate = Frequency.FromHertz(250), Edge = Frequency.FromHertz(60) }.Design().Figures;
        Assert.Null(figures.Droop.Largest);
        Assert.Equal(50, figures.Droop.At.Hertz, 1e-6);
        static double Gain(double f) => Math.Abs(Math.Sin(Math.PI * f / 50) / (5 * Math.Sin(Math.PI * f / 250)));
        double below = MathExtra.Bisect(f => Gain(f) - Math.Pow(10, -0.05), 1, 40);
        Assert.Equal(60 - below, figures.Droop.LostOne.Hertz, 1e-9);
        // Ten periods: the first half power on the flank of the first null.
        CombFigures ten = new CombWish { Rate = Frequency.FromHertz(250), Periods = 1000 }.Design().Figures;
        Assert.InRange(ten.HalfPower!.Value.Hertz, 49.9, 50);
    }

    private static FilterFigures Figures(FilterWish wish, double? rate) =>
        FilterFigures.Of((wish with { Rate = rate is { } fs ? Frequency.FromHertz(fs) : null }).Design());
}
