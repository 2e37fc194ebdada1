using FrontEnd.Designs;
using FrontEnd.Interference;
using FrontEnd.Quantities;
using FrontEnd.Rates;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Rates;

/// <summary>Who says where harmonics of the mains land says up to which it looked, and looks to the 25th unless the design says otherwise.</summary>
public sealed class HarmonicsLookedAtTests
{
    /// <summary>At 1 kS/s the 17th harmonic of 60 Hz, 1020 Hz, lands at 20 Hz: with nine harmonics nothing seemed to.</summary>
    private static readonly Design At1000 = Designs.Dry with
    {
        Band = new Band("band", Frequency.FromHertz(0.5), Frequency.FromHertz(39)),
        Bands = [new Band("beta", Frequency.FromHertz(13), Frequency.FromHertz(30)), new Band("delta", Frequency.FromHertz(0.5), Frequency.FromHertz(4))],
        Converter = Designs.Dry.Converter with { Rate = Frequency.FromHertz(1000) },
        Mains = Designs.Dry.Mains with { Frequency = Frequency.FromHertz(60) },
    };

    private static Design With(int harmonics) => At1000 with { Mains = At1000.Mains with { Harmonics = [.. Mains.StandardHarmonics.Take(harmonics)] } };

    [Fact]
    public void StandardHarmonics_AreTheLimitsOfTheStandardTo25()
    {
        // Odd ones that are no multiples of three, odd multiples of three, even ones, h = 2 to 25.
        double[] shares = [0, 1, 0.02, 0.05, 0.01, 0.06, 0.005, 0.05, 0.005, 0.015, 0.005, 0.035, 0.005, 0.03, 0.005, 0.005, 0.005, 0.02, 0.005, 0.015, 0.005, 0.005, 0.005, 0.015, 0.005, 0.015];
        Assert.Equal(shares[1..], Mains.StandardHarmonics);
        Assert.Equal(25, new Mains().HighestHarmonic);
    }

    [Fact]
    public void Assessment_AtOneKilohertz_FindsThe17thHarmonicInTheBand()
    {
        Assessment assessment = Evaluator.Evaluate(At1000);
        Assert.Equal(20, assessment["mains.harmonic.17.lands_at"].Si, 1e-9);
        Assert.True(assessment["mains.harmonic.17.lands_at"].LandsInBand);
        Assert.Contains("(h = 1 to 25): 17", assessment["noise.band.beta"].Text, StringComparison.Ordinal);
        Assert.Contains("no mains harmonic lands in it (h = 1 to 25)", assessment["noise.band.delta"].Text, StringComparison.Ordinal);
        Assert.Contains("h = 1 to 25", assessment["mains.recorded"].Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Assessment_WithNineHarmonics_SaysThatItLookedAtNine()
    {
        Assessment assessment = Evaluator.Evaluate(With(9));
        Assert.Contains("no mains harmonic lands in it (h = 1 to 9)", assessment["noise.band.beta"].Text, StringComparison.Ordinal);
        Assert.Equal("no harmonic lands in the band (checked: h = 1 to 9)", assessment["mains.recorded"].Verdict.Dominates);
        Assert.Contains("h = 1 alone", Evaluator.Evaluate(With(1))["mains.recorded"].Name, StringComparison.Ordinal);
    }

    /// <summary>A field with more harmonics than the voltage reaches as far as the longer list.</summary>
    [Fact]
    public void Mains_FieldWithMoreHarmonicsThanTheVoltage_CountsThem()
    {
        Design design = At1000 with { Mains = At1000.Mains with { Harmonics = [1], FieldHarmonics = [1, 0.5, 0.2] } };
        Assessment assessment = Evaluator.Evaluate(design);
        Assert.NotNull(assessment.Find("mains.harmonic.3.recorded"));
        Assert.Contains("h = 1 to 3", assessment["mains.recorded"].Name, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9, "no harmonic of 60 Hz, h = 1 to 9, folds into")]
    [InlineData(25, "1.02 kHz lands at 20 Hz (beta)")]
    [InlineData(25, "left (of h = 1 to 25)")]
    public void RateStudy_AtOneKilohertz_SaysHowFarItLooked(int harmonics, string sentence)
    {
        RateComparison comparison = RateStudy.Compare(With(harmonics), [Frequency.FromHertz(1000)], cancellation: TestContext.Current.CancellationToken);
        RateOption option = Assert.Single(comparison.Options);
        Assert.Contains(sentence, option.Because, StringComparison.Ordinal);
        Assert.All(option.Mains, mains => Assert.Equal(harmonics, mains.HighestHarmonic));
    }
}
