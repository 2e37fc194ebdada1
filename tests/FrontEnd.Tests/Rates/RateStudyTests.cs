using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Digital;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Rates;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Rates;

public sealed class RateStudyTests
{
    private static RateOption At(Design design, double rate) => RateStudy.Compare(design, [Frequency.FromHertz(rate)], TestContext.Current.CancellationToken).Options.Single();

    private static MainsAtRate Mains(RateOption option, double hertz) => option.Mains.Single(mains => mains.Frequency.Hertz == hertz);

    /// <summary>Folding worked out apart: reference/sampling/aliasing.txt, rows T8-07 (240 Hz at 256 S/s is 16 Hz, 300 Hz at 256 S/s is 44 Hz, 150 Hz at 250 S/s
    /// is 100 Hz, 250 Hz at 250 S/s is 0 Hz, 300 Hz at 250 S/s is 50 Hz) and TV-E2.</summary>
    [Theory]
    [InlineData(250, 60, 4, 10)]     // the fourth harmonic in the alpha band
    [InlineData(250, 60, 3, 70)]
    [InlineData(250, 60, 5, 50)]
    [InlineData(250, 60, 8, 20)]
    [InlineData(250, 50, 5, 0)]
    [InlineData(250, 50, 3, 100)]
    [InlineData(256, 60, 4, 16)]     // in the beta band
    [InlineData(256, 60, 5, 44)]
    [InlineData(256, 60, 8, 32)]
    [InlineData(256, 50, 5, 6)]      // in the theta band
    [InlineData(256, 50, 6, 44)]
    [InlineData(500, 60, 8, 20)]
    [InlineData(500, 60, 9, 40)]
    [InlineData(500, 50, 9, 50)]
    public void Landing_RateAndMains_IsTheTablesFrequency(double rate, double mains, int harmonic, double landing)
    {
        MainsLanding found = Mains(At(Designs.Dry, rate), mains).Landings[harmonic - 1];
        Assert.Equal(harmonic, found.Harmonic);
        Assert.Equal(landing, found.LandsAt.Hertz, 1e-9);
        Assert.InRange(found.LandsAt.Hertz, found.Low.Hertz - 1e-9, found.High.Hertz + 1e-9);
    }

    [Fact]
    public void Landing_FifthOf50HertzAt250_WandersWithTheMains()
    {
        // 50.02 Hz: its fifth harmonic is at 250.1 Hz and recorded at 0.1 Hz (derived).
        Design design = Designs.Dry with { Mains = new Mains { Deviation = Ratio.FromFraction(0.0004) } };
        MainsLanding fifth = Mains(At(design, 250), 50).Landings[4];
        Assert.Equal(0, fifth.Low.Hertz, 1e-9);
        Assert.Equal(0.1, fifth.High.Hertz, 1e-9);
    }

    [Theory]
    [InlineData(250, 50, 5)]
    [InlineData(250, 60, null)]
    [InlineData(480, 60, 8)]
    [InlineData(960, 60, 16)]
    [InlineData(1000, 60, null)]
    [InlineData(300, 60, 5)]
    public void Comb_WholeNumberOfSamplesInAPeriod_IsPossible(double rate, double mains, int? samples) => Assert.Equal(samples, Mains(At(Designs.Dry, rate), mains).Comb);

    /// <summary>Op Amps for Everyone, chapter 16, gives n from 10·log10(1 + (f/fc)^2n); the figures here worked out from it: 3.32, 4.93 and 2.35.</summary>
    [Theory]
    [InlineData(60, 240, 40, 4)]
    [InlineData(70, 205, 46, 5)]
    [InlineData(100, 955, 46, 3)]
    [InlineData(100, 90, 40, null)]
    [InlineData(100, 200, -3, 0)]
    public void Order_Butterworth_IsTheFormulasNextWholeNumber(double corner, double stop, double decibels, int? order) =>
        Assert.Equal(order, AntiAliasOrder.Least("Butterworth", Frequency.FromHertz(corner), Frequency.FromHertz(stop), Decibels.FromStated(decibels)));

    [Theory]
    [InlineData(70, 205, 46)]
    [InlineData(60, 300, 60)]
    [InlineData(100, 955, 40)]
    public void Order_SteeperFamilies_NeverNeedMore(double corner, double stop, double decibels)
    {
        var orders = AntiAliasOrder.For(Frequency.FromHertz(corner), Frequency.FromHertz(stop), Decibels.FromStated(decibels)).ToDictionary(row => row.Family, row => row.Order ?? 99);
        Assert.True(orders["elliptic"] <= orders["Chebyshev"]);
        Assert.True(orders["Chebyshev"] <= orders["Butterworth"]);
        Assert.True(orders["Butterworth"] <= orders["Bessel"]);
        Assert.True(orders["Bessel"] <= orders["critically damped"]);
    }

    [Fact]
    public void Skew_EightChannelsSpreadOver250_LeaksSixteenDecibels()
    {
        // 2·sin(π·50 Hz·500 µs) = 0.157: 16.1 dB (worked out apart from this program).
        Ratio leak = RateStudy.SkewLeak(Frequency.FromHertz(50), Duration.FromSeconds(500e-6));
        Assert.Equal(16.1, -20 * Math.Log10(leak.Fraction), 0.05);
        Assert.Equal(0, RateStudy.SkewLeak(Frequency.FromHertz(50), default).Fraction);
    }

    [Fact]
    public void DeltaSigma_OtherRate_KeepsClockAndNoiseDensity()
    {
        AnalogDigitalConverter before = Designs.Gel.Converter, after = RateStudy.AtRate(Designs.Gel, Frequency.FromHertz(1000)).Converter;
        Assert.Equal(before.ModulatorClock.Hertz, after.ModulatorClock.Hertz, 1e-6);
        Assert.Equal(before.NoiseVolts * before.NoiseVolts / before.Rate.Hertz, after.NoiseVolts * after.NoiseVolts / after.Rate.Hertz, 1e-24);
    }

    [Fact]
    public void DeltaSigma_Sinc3At250_AttenuatesTheFoldByItself()
    {
        // Third-order sinc at 250 S/s: −40.9 dB at 205 Hz (worked out from the formula of data sheet SBAS660C's filter); 4.47 Hz, mid-band, loses 0.01 dB.
        Design design = Designs.Gel with { Band = Designs.Gel.Band with { High = Frequency.FromHertz(45) } };
        RateOption option = At(design, 250);
        Assert.Equal(40.9, option.ConverterShare.Value, 0.1);
        Assert.Equal(0, option.Orders[0].Order);
    }

    [Fact]
    public void Figures_RateReplaced_AreTheEvaluators()
    {
        Design design = Designs.Dry with { Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(256) } };
        RateOption option = At(Designs.Dry, 256);
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.Equal(assessment["alias.fold_attenuation"].Si, option.FoldAttenuation!.Value.Value, 1e-9);
        Assert.Equal(assessment["mains.recorded"].Si, option.Mains[0].Recorded.Volts, 1e-15);
        Assert.Equal(assessment["noise.total"].Si, option.Noise.Volts, 1e-15);
        Assert.Equal(assessment["latency.total"].Si, option.Delay.Seconds, 1e-12);
        Assert.Equal(assessment["mains.harmonic.4.recorded"].Si, option.Mains[0].Landings[3].Residue.Volts, 1e-18);
    }

    [Fact]
    public void Compare_RateBelowTheBand_SaysWhyAndPicksAnother()
    {
        RateComparison comparison = RateStudy.Compare(Designs.Dry, [Frequency.FromHertz(60), Frequency.FromHertz(1000)], TestContext.Current.CancellationToken);
        Assert.False(comparison.Options[0].IsWorkedOut);
        Assert.NotEmpty(comparison.Options[0].Findings);
        Assert.Equal(1000, comparison.Pick!.Rate.Hertz);
        Assert.Null(comparison.RunnerUp);
    }

    [Fact]
    public void Compare_EveryOption_FailsExactlyWhereItsFoldIsTooWeakOrMainsTooLarge()
    {
        RateComparison comparison = RateStudy.Compare(Designs.Dry, null, TestContext.Current.CancellationToken);
        Assert.Equal(RateStudy.Candidates.Count, comparison.Options.Count);
        foreach (RateOption option in comparison.Options.Where(option => option.IsWorkedOut && option.FoldAttenuation!.Value.Value < 40))
        {
            Assert.Equal(VerdictKind.Fail, option.Verdict);
            Assert.NotEmpty(option.Because);
        }

        // What the pick meets nothing below it meets.
        if (comparison.Pick!.Verdict != VerdictKind.Fail)
        {
            Assert.All(comparison.Options.Where(option => option.Rate.Hertz < comparison.Pick.Rate.Hertz), option => Assert.Equal(VerdictKind.Fail, option.Verdict));
        }
    }

    [Fact]
    public void Compare_SectionsAsNumbers_AreAFinding()
    {
        Design design = Designs.Dry with { Digital = [new DigitalSections { Name = "own", Rows = [[1, 0, 0, 1, 0, 0]] }] };
        Assert.Contains(RateStudy.Compare(design, [Frequency.FromHertz(250)], TestContext.Current.CancellationToken).Findings, finding => finding.Code == "FE0701");
    }
}
