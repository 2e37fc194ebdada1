using FrontEnd.Catalogue;
using FrontEnd.DesignedFilters;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using FrontEnd.Topologies;
using Xunit;

namespace FrontEnd.Tests.Library;

/// <summary>What a user of a program may wish for, as it comes out of a file or a request: numbers of any size, no list at all, a choice that is none. It is
/// told, and nothing throws.</summary>
public class WrongWishTests
{
    private static readonly FilterWish LowPass = new() { Corners = [Frequency.FromHertz(100)], Order = 2 };

    public static TheoryData<string, FilterWish, string> Wishes => new()
    {
        { "no corners", LowPass with { Corners = null! }, "FE0610" },
        { "a shape that is none", LowPass with { Shape = (FilterShape)77 }, "FE1183" },
        { "a family that is none", LowPass with { Family = (FilterFamily)(-1) }, "FE1183" },
        { "a family that is none, by what it has to do", LowPass with { Family = (FilterFamily)77, Order = null, StopEdges = [Frequency.FromHertz(400)], Attenuation = Decibels.FromStated(40) }, "FE1183" },
        { "a normalisation that is none", LowPass with { Family = FilterFamily.Bessel, Normalisation = (BesselNormalisation)2 }, "FE1183" },
        { "a corner above half the rate", LowPass with { Rate = Frequency.FromHertz(150) }, "FE0603" },
        { "a negative corner", LowPass with { Corners = [Frequency.FromHertz(-1)] }, "FE0602" },
        { "an absurd order", LowPass with { Order = int.MaxValue }, "FE0601" },
        { "an absurd loss", LowPass with { Order = null, StopEdges = [Frequency.FromHertz(400)], Attenuation = Decibels.FromStated(1e300) }, "FE0618" },
        { "hardly a ripple", LowPass with { Family = FilterFamily.Chebyshev, Ripple = Decibels.FromStated(1e-9) }, "FE0618" },
    };

    [Theory]
    [MemberData(nameof(Wishes))]
    public void Design_OfAnImpossibleWish_TellsWhy(string what, FilterWish wish, string code)
    {
        FilterAnswer answer = wish.Design();
        Assert.False(answer.IsUsable, what);
        Finding finding = Assert.Single(answer.Findings, one => one.Severity == Severity.Error);
        Assert.Equal(code, finding.Code);
        Assert.DoesNotContain("000000000", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(" 0 dB is not between", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Going on with an answer that has no filter is the program's mistake, and the exception says whose and why.</summary>
    [Fact]
    public void DesignedSections_OfNoFilter_ThrowsWhatWasWrongAndWhatToAsk()
    {
        FilterAnswer answer = (LowPass with { Rate = Frequency.FromHertz(150) }).Design();
        string message = Assert.Throws<ArgumentException>(() => DesignedSections.Of(answer, new FilterParts())).Message;
        Assert.Contains(answer.Findings[0].Message, message, StringComparison.Ordinal);
        Assert.Contains(nameof(FilterAnswer.IsUsable), message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fir_ImpossibleWishes_TellWhy()
    {
        FirWish wish = new() { PassEdges = [Frequency.FromHertz(10)], StopEdges = [Frequency.FromHertz(20)], Rate = Frequency.FromHertz(100), Ripple = Decibels.FromStated(1), Attenuation = Decibels.FromStated(40) };
        Assert.NotNull(wish.Design().Filter);
        Assert.Equal(["FE0610"], (wish with { PassEdges = null! }).Design().Findings.Select(finding => finding.Code));
        Assert.Equal(["FE0610"], (wish with { StopEdges = null! }).Design().Findings.Select(finding => finding.Code));
        Assert.Equal(["FE1183"], (wish with { Shape = (FilterShape)4 }).Design().Findings.Select(finding => finding.Code));
        Assert.Equal(["FE1183"], (wish with { Method = (FirMethod)2 }).Design().Findings.Select(finding => finding.Code));
    }

    [Theory]
    [InlineData(-50)]
    [InlineData(0)]
    public void AnalogNotch_OfNoFrequency_IsOneFindingAboutIt(double hertz) =>
        Assert.Equal("FE0602", Assert.Single(new NotchWish { Mains = Frequency.FromHertz(hertz) }.DesignAnalog().Findings).Code);

    /// <summary>Where there are no parts, it is said why.</summary>
    [Theory]
    [InlineData(FilterShape.HighPass, 2, "a high-pass")]
    [InlineData(FilterShape.BandPass, 2, "a band-pass")]
    [InlineData(FilterShape.BandStop, 3, "a band-stop")]
    [InlineData(FilterShape.LowPass, 9, "a low-pass of order 9")]
    public void Parts_OfWhatNoneAreSoughtFor_AreSaidToBeNone(FilterShape shape, int order, string what)
    {
        Frequency[] corners = shape is FilterShape.BandPass or FilterShape.BandStop ? [Frequency.FromHertz(8), Frequency.FromHertz(13)] : [Frequency.FromHertz(100)];
        DesignedSections filter = DesignedSections.Of(new FilterWish { Shape = shape, Corners = corners, Order = order }.Design(), new FilterParts());
        Assert.Null(filter.LowPass);
        Finding finding = Assert.Single(filter.PartFindings);
        Assert.Equal(("FE1184", Severity.Warning), (finding.Code, finding.Severity));
        Assert.Contains(what, finding.Message, StringComparison.Ordinal);
    }

    public static TheoryData<FilterParts> UnknownParts =>
        [new FilterParts { Topology = SectionKind.Rc }, new FilterParts { Topology = (SectionKind)99 }, new FilterParts { ResistorSeries = (PreferredSeries)7 }, new FilterParts { CapacitorSeries = (PreferredSeries)1 }];

    [Theory]
    [MemberData(nameof(UnknownParts))]
    public void Parts_OfAChoiceThatIsNone_AreTold(FilterParts parts) =>
        Assert.Equal("FE1183", Assert.Single(DesignedSections.Of(LowPass.Design(), parts).PartFindings).Code);

    [Theory]
    [InlineData(PreferredSeries.E24, PreferredSeries.E6)]
    [InlineData(PreferredSeries.E12, PreferredSeries.E12)]
    [InlineData(PreferredSeries.E96, PreferredSeries.E3)]
    public void Parts_OfAnySeries_AreItsMembers(PreferredSeries resistors, PreferredSeries capacitors)
    {
        FilterParts parts = new() { ResistorSeries = resistors, CapacitorSeries = capacitors };
        IEnumerable<BuiltPart> lowPass = DesignedSections.Of((LowPass with { Order = 3 }).Design(), parts).LowPass!.Sections.SelectMany(section => section.Parts);
        Assert.All(lowPass, part => Assert.True(PreferredValues.IsMember(part.Value.SiValue, part.Value is Resistance ? resistors : capacitors), $"{part}"));
        BuiltNotch notch = DesignedSections.Of(new NotchWish { Q = 5 }.DesignAnalog(), parts with { Notch = FrontEnd.AntiAlias.NotchKind.StateVariable }).Notch!;
        Assert.NotEmpty(notch.Parts);
        Assert.All(notch.Parts, part => Assert.True(PreferredValues.IsMember(part.Value.SiValue, part.Value is Resistance ? resistors : capacitors), $"{part}"));
    }

    public static TheoryData<string, SpreadOptions> Options => new()
    {
        { "builds", new() { Builds = 0 } }, { "builds", new() { Builds = -5 } }, { "builds", new() { Builds = int.MaxValue } },
        { "threads", new() { Threads = 0 } }, { "threads", new() { Threads = -1 } }, { "distribution", new() { Distribution = (PartDistribution)7 } },
        { "ranges.gain", new() { Ranges = new() { Gain = double.NaN } } }, { "ranges.gain", new() { Ranges = new() { Gain = -1 } } },
        { "ranges.noise", new() { Ranges = new() { Noise = 5 } } }, { "ranges.cmrr", new() { Ranges = new() { Cmrr = double.PositiveInfinity } } },
        { "ranges.surroundings", new() { Ranges = new() { Surroundings = 0.5 } } }, { "ranges.mains-voltage", new() { Ranges = new() { MainsVoltage = 1 } } },
    };

    /// <summary>Ranges that are no numbers were drawn all the same, and gave a yield of 0 that was nobody's.</summary>
    [Theory]
    [MemberData(nameof(Options))]
    public void Spread_OfOptionsThatCannotBeDrawn_IsNoneAndToldWhy(string key, SpreadOptions options)
    {
        Finding finding = Assert.Single(options.Check());
        Assert.Equal((key, Severity.Error), (finding.Field, finding.Severity));
        Assert.Null(SpreadRun.Run(new Design(), options, cancellation: TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Spread_OfOptionsThatCan_HasNothingToTell()
    {
        Assert.Empty(new SpreadOptions().Check());
        Assert.Empty(new SpreadOptions { Ranges = SpreadRanges.None, Threads = 1, Builds = SpreadOptions.MostBuilds }.Check());
        Assert.Empty(new SpreadOptions { Ranges = null! }.Check());
    }

    /// <summary>A design that contradicts itself has no figures, and meets nothing.</summary>
    [Fact]
    public void Requirements_OfADesignWithoutFigures_AreNotMet()
    {
        Assert.False(Evaluator.Evaluate(new Design { Channels = 0 }).AllRequirementsMet);
        Design met = new() { Requirements = new() { Noise = null } };
        Assert.NotEmpty(DesignCheck.Run(met with { Channels = -1 }));
        Assert.False(Evaluator.Evaluate(met with { Channels = -1 }).AllRequirementsMet);
    }

    /// <summary>Zeros that cancel leave 0, and not −0, in a header.</summary>
    [Fact]
    public void Coefficients_OfABandPass_HaveNoNegativeZero()
    {
        FilterAnswer answer = new FilterWish { Shape = FilterShape.BandPass, Corners = [Frequency.FromHertz(8), Frequency.FromHertz(13)], Order = 2, Rate = Frequency.FromHertz(250) }.Design();
        Assert.All(answer.Digital!.Sections.Coefficients.ToArray(), one => Assert.False(one == 0 && double.IsNegative(one)));
    }
}
