using FrontEnd.Digital;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>Counts of up to 20 bits, taps and combs of any size.</summary>
public static class WholeNumberCases
{
    public static Arbitrary<int[]> Samples() => Gen.Choose(-500_000, 500_000).ArrayOf(200).ToArbitrary();

    public static Arbitrary<double[]> Taps() => (
        from length in Gen.Choose(1, 40)
        from taps in Gen.Choose(-1000, 1000).ArrayOf(length)
        select taps.Select(t => t / 1000.0).ToArray()).ToArbitrary();

    public static Arbitrary<PeriodComb> Comb() => (
        from period in Gen.Choose(2, 20)
        from periods in Gen.Choose(1, 8)
        select new PeriodComb(period, periods, Frequency.FromHertz(1000))).ToArbitrary();
}

/// <summary>FIRs, combs, notches and decimators as someone asks for them, and their runners against plain sums.</summary>
public class DigitalWishTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(250);

    private static readonly FirWish LowPass = new()
    {
        Shape = FilterShape.LowPass,
        PassEdges = [Frequency.FromHertz(40)],
        StopEdges = [Frequency.FromHertz(50)],
        Ripple = Decibels.FromStated(0.1),
        Attenuation = Decibels.FromStated(60),
        Rate = Rate,
    };

    /// <summary>The figures against a sweep of 20 000 plain sums Σ h·e^(−jωk).</summary>
    [Theory]
    [InlineData(FirMethod.Equiripple, FilterShape.LowPass)]
    [InlineData(FirMethod.Kaiser, FilterShape.LowPass)]
    [InlineData(FirMethod.Equiripple, FilterShape.BandPass)]
    [InlineData(FirMethod.Kaiser, FilterShape.BandStop)]
    public void Fir_ByRequirement_ReachesWhatItSays(FirMethod method, FilterShape shape)
    {
        double[] pass = shape == FilterShape.LowPass ? [40] : shape == FilterShape.BandPass ? [20, 40] : [35, 65];
        double[] stop = shape == FilterShape.LowPass ? [50] : shape == FilterShape.BandPass ? [12, 50] : [45, 55];
        FirWish wish = LowPass with { Method = method, Shape = shape, PassEdges = [.. pass.Select(Frequency.FromHertz)], StopEdges = [.. stop.Select(Frequency.FromHertz)] };
        FirAnswer answer = wish.Design();
        Assert.Empty(answer.Findings);
        double top = 0, bottom = 9, leak = 0;
        for (int i = 0; i <= 20_000; i++)
        {
            double f = 125.0 * i / 20_000, re = 0, im = 0;
            for (int k = 0; k < answer.Filter!.Length; k++)
            {
                re += answer.Filter.Taps[k] * Math.Cos(2 * Math.PI * f * k / 250);
                im += answer.Filter.Taps[k] * Math.Sin(2 * Math.PI * f * k / 250);
            }

            double gain = Math.Sqrt((re * re) + (im * im));
            (bool passes, bool stops) = shape switch
            {
                FilterShape.LowPass => (f <= pass[0], stop[0] <= f),
                FilterShape.BandPass => (pass[0] <= f && f <= pass[1], f <= stop[0] || stop[1] <= f),
                _ => (f <= pass[0] || pass[1] <= f, stop[0] <= f && f <= stop[1]),
            };
            (top, bottom) = passes ? (Math.Max(top, gain), Math.Min(bottom, gain)) : (top, bottom);
            leak = stops ? Math.Max(leak, gain) : leak;
        }

        Assert.Equal(20 * Math.Log10(top / bottom), answer.Figures!.PassLoss, 1e-3);
        Assert.Equal(20 * Math.Log10(top / leak), answer.Figures.StopLoss!.Value, 5e-3);
        Assert.True(answer.Figures.PassLoss <= 0.1001 && 59.999 <= answer.Figures.StopLoss);
    }

    /// <summary>Fewest means: two taps less do not meet it.</summary>
    [Fact]
    public void Fir_EquirippleByRequirement_IsTheShortest()
    {
        FirAnswer fewest = LowPass.Design(), fewer = (LowPass with { Taps = fewest.Filter!.Length - 2 }).Design();
        Assert.Equal("FE0644", Assert.Single(fewer.Findings).Code);
        Assert.True(fewer.Figures!.PassLoss > 0.1 || fewer.Figures.StopLoss < 60);
    }

    [Fact]
    public void Fir_EvenTapsWithoutLosses_CountsErrorsAlike()
    {
        FirAnswer answer = (LowPass with { Taps = 32, Ripple = null, Attenuation = null }).Design();
        Assert.Empty(answer.Findings);
        // Equal weights: the same deviation δ in both bands; pass (1 + δ)/(1 − δ), stop (1 + δ)/δ.
        double ratio = Math.Pow(10, answer.Figures!.PassLoss / 20), delta = (ratio - 1) / (ratio + 1);
        Assert.Equal((1 + delta) / delta, Math.Pow(10, answer.Figures.StopLoss!.Value / 20), 0.01 / delta);
        Assert.True(answer.Filter!.PowerResponse(125) < 1e-25);
    }

    [Fact]
    public void Fir_WhatCannotBe_IsFinding()
    {
        static string Code(FirWish wish) => Assert.Single(wish.Design().Findings).Code;
        Assert.Equal("FE0610", Code(LowPass with { StopEdges = [] }));
        Assert.Equal("FE0608", Code(LowPass with { StopEdges = [Frequency.FromHertz(30)] }));
        Assert.Equal("FE0603", Code(LowPass with { StopEdges = [Frequency.FromHertz(125)] }));
        Assert.Equal("FE0613", Code(LowPass with { Rate = default }));
        Assert.Equal("FE0614", Code(LowPass with { Attenuation = null }));
        Assert.Equal("FE0614", Code(LowPass with { Ripple = null }));
        Assert.Equal("FE0605", Code(LowPass with { Ripple = Decibels.FromStated(0) }));
        Assert.Equal("FE0640", Code(LowPass with { Taps = 2 }));
        Assert.Equal("FE0640", Code(LowPass with { Taps = 4002 }));
        Assert.Equal("FE0641", Code(LowPass with { Taps = 32, Method = FirMethod.Kaiser }));
        // Kaiser: 1 + (60 − 7.95)/(2.285·2π·0.01/250) = 90 634 taps.
        Assert.Equal("FE0642", Code(LowPass with { StopEdges = [Frequency.FromHertz(40.01)] }));
        Assert.Equal("FE0642", Code(LowPass with { StopEdges = [Frequency.FromHertz(40.01)], Method = FirMethod.Kaiser }));
    }

    /// <summary>Exact fractions by hand: Σ w·x in 128 bits, rounded half up; the program's runner goes sample by sample over the same words.</summary>
    [Property(Arbitrary = [typeof(WholeNumberCases)])]
    public void FirRunner_WholeNumbers_IsTheSumRoundedOnce(double[] taps, int[] samples)
    {
        foreach (NumberFormat format in new[] { NumberFormat.Q15, NumberFormat.Q31 })
        {
            var words = QuantisedTaps.Of(new FirFilter(taps, Rate), format);
            int[] output = new int[samples.Length];
            new FirRunner(words).Run(samples, output);
            for (int n = 0; n < samples.Length; n++)
            {
                decimal sum = 0;
                for (int k = 0; k < taps.Length && k <= n; k++)
                {
                    sum += words.Words[k] * (decimal)samples[n - k];
                }

                decimal expected = Math.Floor((sum / (1L << words.FractionBits!.Value)) + 0.5m);
                Assert.Equal((int)Math.Clamp(expected, int.MinValue, int.MaxValue), output[n]);
            }
        }
    }

    /// <summary>Running sums against the plain convolution with the comb's own impulse response.</summary>
    [Property(Arbitrary = [typeof(WholeNumberCases)])]
    public void CombRunner_AnyComb_IsTheConvolutionWithItsTaps(PeriodComb comb, int[] samples)
    {
        int[] output = new int[samples.Length];
        var runner = new CombRunner(comb);
        runner.Run(samples.AsSpan(0, 33), output);
        runner.Run(samples.AsSpan(33), output.AsSpan(33));
        double[] taps = comb.Taps();
        for (int n = 0; n < samples.Length; n++)
        {
            double sum = 0;
            for (int k = 0; k < taps.Length && k <= n; k++)
            {
                sum += taps[k] * samples[n - k];
            }

            Assert.True(Math.Abs(sum - output[n]) <= 0.5 + 1e-6, $"sample {n}: {output[n]} and not {sum}");
        }
    }

    /// <summary>Mean of one period by hand: sin(5x)/(5·sin x), x = π·f/250: 12.25 dB at 40 Hz, half power at 22.54 Hz; depth near 50 Hz |sin(π·5·f/250)/(5·sin(π·f/250))|. The second harmonic has moved by twice what the mains has.</summary>
    [Fact]
    public void Comb_MeanOfOnePeriod_HasTheTextbooksFigures()
    {
        CombAnswer answer = new CombWish { Rate = Rate }.Design();
        CombFigures figures = answer.Figures;
        static double Gain(double f) => Math.Abs(Math.Sin(Math.PI * f / 50) / (5 * Math.Sin(Math.PI * f / 250)));
        Assert.Equal(-20 * Math.Log10(Gain(40)), figures.Droop.Largest!.Value, 1e-9);
        Assert.Equal(Math.Sqrt(0.5), Gain(figures.HalfPower!.Value.Hertz), 1e-9);
        Assert.Equal(40 - figures.HalfPower.Value.Hertz, figures.Droop.LostThree.Hertz, 0.011);
        Assert.Equal([1, 2], figures.Depths.Select(d => d.Harmonic));
        Assert.Equal(-20 * Math.Log10(Math.Max(Gain(49.5), Gain(50.5))), figures.Depths[0].Depths[3].Attenuation!.Value, 1e-6);
        Assert.Equal(-20 * Math.Log10(Math.Max(Gain(99), Gain(101))), figures.Depths[1].Depths[3].Attenuation!.Value, 1e-6);
        Assert.Equal(0.02, answer.Comb!.RingTime.Seconds, 1e-12);
    }

    [Fact]
    public void Comb_WhatCannotBe_IsFindingWithARateThatCan()
    {
        Finding whole = Assert.Single((new CombWish { Rate = Rate, Mains = Frequency.FromHertz(60) }).Design().Findings);
        Assert.Equal("FE0645", whole.Code);
        Assert.Contains("240 Hz or 300 Hz", whole.Help, StringComparison.Ordinal);
        Assert.Equal("FE0640", Assert.Single(new CombWish { Rate = Rate, Periods = 0 }.Design().Findings).Code);
        Assert.Equal("FE0646", Assert.Single(new CombWish { Rate = Frequency.FromHertz(16_000), Periods = 1000 }.Design().Findings).Code);
        Assert.Equal("FE0647", Assert.Single(new CombWish { Rate = Rate, Edge = Frequency.FromHertz(126) }.Design().Findings).Code);
        Assert.Equal("FE0603", Assert.Single(new CombWish { Rate = Rate, Mains = Frequency.FromHertz(125) }.Design().Findings).Code);
    }

    /// <summary>Alone at 50 Hz with Q 10 the notch has the figures of the independent table in NotchAndCombTests; two of them at 500 S/s let 50 and 100 Hz through nowhere.</summary>
    [Fact]
    public void Notches_AtMainsAndHarmonics_HaveTheFiguresOfTheTable()
    {
        NotchesFigures one = new NotchWish { Rate = Rate }.Design().Figures;
        Assert.Equal(0.23, one.Droop.Largest!.Value, 0.0051);
        Assert.Equal(3.9, one.DelayAtEdge.Milliseconds, 0.051);
        double[] printed = [34, 28, 22, 14];
        Assert.All(printed.Zip(one.Depths[0].Depths), p => Assert.Equal(p.First, p.Second.Attenuation!.Value, 0.55));
        NotchAnswer two = new NotchWish { Rate = Frequency.FromHertz(500), Edge = Frequency.FromHertz(100), CommonWidth = true }.Design();
        Assert.Equal(["notch 50 Hz", "notch 100 Hz"], two.Names);
        Assert.All(two.Figures.Notches, n => Assert.Equal(5, n.Bandwidth.Hertz, 1e-12));
        Assert.True(two.Sections!.PowerResponse(100, 500) < 1e-25 && two.Sections.PowerResponse(50, 500) < 1e-25);
        // Both are 5 Hz wide: of 0 to 100 Hz some 5 + 2.5 Hz lie more than 3 dB down.
        Assert.Equal(7.5, two.Figures.Droop.LostThree.Hertz, 0.2);
    }

    /// <summary>At 256 S/s the fifth harmonic, 250 Hz, lands at 6 Hz: in the band, and no notch is there. At 500 S/s it is none of the samples' business before the tenth, 500 Hz, at 0 Hz.</summary>
    [Fact]
    public void Notches_HarmonicFoldsIntoTheBand_IsSaid()
    {
        Finding finding = Assert.Single(new NotchWish { Rate = Frequency.FromHertz(256) }.Design().Findings);
        Assert.Equal(("FE0650", Severity.Warning), (finding.Code, finding.Severity));
        Assert.Contains("harmonic 5, 250 Hz, lands at 6 Hz", finding.Message, StringComparison.Ordinal);
        // 250 S/s, band to 100 Hz: harmonics 3, 4, 6, 7 land on the notches at 100 and 50 Hz; the fifth becomes a constant. 180 S/s: the second lands at 80 Hz.
        Assert.Contains("harmonic 5, 250 Hz, lands at 0 Hz", Assert.Single(new NotchWish { Rate = Rate, Edge = Frequency.FromHertz(100) }.Design().Findings).Message, StringComparison.Ordinal);
        Assert.Contains(new NotchWish { Rate = Frequency.FromHertz(180), Edge = Frequency.FromHertz(85) }.Design().Findings, f => f.Message.Contains("harmonic 2, 100 Hz, lands at 80 Hz", StringComparison.Ordinal));
        Assert.Equal("FE0648", Assert.Single(new NotchWish { Rate = Rate, Q = 0 }.Design().Findings).Code);
        Assert.Equal("FE0649", Assert.Single(new NotchWish { Rate = Rate, Q = 0.3 }.Design().Findings).Code);
    }

    /// <summary>sinc³ at 250 S/s: 1.11 dB at 40 Hz (independent figure of FirTests); eleven taps leave less than 0.01 dB.</summary>
    [Fact]
    public void Sinc_Order3_DroopsAndIsMadeFlat()
    {
        SincAnswer answer = new SincWish { Rate = Rate, Edge = Frequency.FromHertz(80) }.Design();
        SincFigures figures = answer.Figures;
        Assert.Equal(1.11, figures.Points.Single(p => p.At.Hertz == 40).Decimator, 0.005);
        Assert.True(figures.LargestDeviation < 0.01 && 0 < figures.RiseAtHalfRate);
        Assert.Equal(24, figures.GrowthBits);
        // What folds from 170 to 250 Hz meets the taps where it lands: a plain sweep of sinc times taps.
        Assert.Equal(answer.Sinc!.Droop(Frequency.FromHertz(170)), figures.DecimatorFoldLoss, 1e-12);
        double through = Enumerable.Range(0, 8001).Max(i =>
        {
            double f = 170 + (i / 50.0), sum = 0;
            for (int k = -5; k <= 5; k++)
            {
                sum += answer.Compensation!.Taps[k + 5] * Math.Cos(2 * Math.PI * k * f / 250);
            }

            return Math.Abs(sum * Math.Pow(Math.Sin(Math.PI * f / 250) / (256 * Math.Sin(Math.PI * f / 64_000)), 3));
        });
        Assert.Equal(-20 * Math.Log10(through), figures.FoldLoss, 1e-3);
        Assert.True(4 < figures.DecimatorFoldLoss - figures.FoldLoss);
        Assert.Equal(["FE0640", "FE0640", "FE0641", "FE0647"], new SincWish { Rate = Rate, Order = 0, Ratio = 1, Taps = 10, Edge = Frequency.FromHertz(125) }.Design().Findings.Select(f => f.Code));
    }

    /// <summary>In whole numbers both forms give the same bits; in floating point they do not, and the forecast says which is worse: the transposed form behind a large constant.</summary>
    [Fact]
    public void Words_BothForms_AreForecastAndRun()
    {
        SecondOrderSections sections = Butterworth.HighPass(2, Frequency.FromHertz(0.5), Rate).Sections;
        WordFigures Of(NumberFormat format, FilterForm form) => WordFigures.Of(sections, format, form);
        Assert.Equal(Of(NumberFormat.Q31, FilterForm.DirectI).RoundOff, Of(NumberFormat.Q31, FilterForm.TransposedDirectII).RoundOff);
        foreach (NumberFormat format in new[] { NumberFormat.Single, NumberFormat.Double })
        {
            double direct = Of(format, FilterForm.DirectI).ConstantRoundOff!.Value, transposed = Of(format, FilterForm.TransposedDirectII).ConstantRoundOff!.Value;
            Assert.True(100 * direct < transposed, $"{direct} and {transposed}");
        }

        // 29 bits of mantissa between the words.
        Assert.Equal(Math.Pow(2, 29), Of(NumberFormat.Single, FilterForm.DirectI).ConstantRoundOff!.Value / Of(NumberFormat.Double, FilterForm.DirectI).ConstantRoundOff!.Value, Math.Pow(2, 29) * 1e-2);
        LimitCycleSearch cycle = Of(NumberFormat.Q31, FilterForm.DirectI).SearchLimitCycles();
        Assert.True(cycle.IsComplete);
        Assert.Equal(LimitCycle.Search(QuantisedFilter.Of(sections, NumberFormat.Q31).Details[0], NumberFormat.Q31), cycle.Largest);
    }

    /// <summary>0.1 Hz at 16 kS/s: 1 + a1 + a2 is two units of 2^−30 and a dead band 2.7e8 LSB; the states are too long for the search, and it says so.</summary>
    [Fact]
    public void LimitCycles_PolesNextToTheCircle_EndsEarly()
    {
        SecondOrderSections sections = Butterworth.HighPass(2, Frequency.FromHertz(0.1), Frequency.FromHertz(16_000)).Sections;
        WordFigures figures = WordFigures.Of(sections, NumberFormat.Q31, FilterForm.DirectI);
        Assert.True(figures.IsStable);
        Assert.False(figures.SearchLimitCycles().IsComplete);
    }

    [Fact]
    public void Exports_OfTapsAndCombs_AnswerAsTheRunners()
    {
        foreach (DigitalWord word in Enum.GetValues<DigitalWord>())
        {
            DigitalArithmetic arithmetic = new() { Word = word };
            FilterExport fir = TapsExport.Of(LowPass.Design().Filter!, "FIR", arithmetic), comb = CombExport.Of(new PeriodComb(5, 4, Rate), "comb", arithmetic);
            Assert.Equal(arithmetic.IsFixed, comb is CombExport);
            // Every tap is met from both sides: the vector is longer than the filter.
            Assert.True(73 < fir.TestInput.Count && fir.TestInput.Count == fir.TestOutput.Count);
            Assert.True(fir.TestOutput.Max(Math.Abs) > fir.TestInput.Max(Math.Abs) / 10);
        }
    }
}
