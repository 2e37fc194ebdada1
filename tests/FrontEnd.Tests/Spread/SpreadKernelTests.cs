using System.Globalization;
using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Numbers;
using FrontEnd.Quantities;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>What surroundings and figures share is the same as each worked out by itself.</summary>
public class SpreadKernelTests
{
    public static TheoryData<string> Names => [.. Designs.All.Select(design => design.Name)];

    private static (SpreadSetup Setup, double[][] Factors) Of(string name)
    {
        Design design = Designs.All.Single(one => one.Name == name);
        var options = new SpreadOptions { Seed = 3 };
        var parts = new PartList(design, options);
        return (new SpreadSetup(design, parts), SpreadRun.Draw(parts, options, 3 * Vector<double>.Count));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Surroundings_WithTheStagesOfTheFirst_AreThoseOfBuildsWhosePlacesAreNominal(string name)
    {
        (SpreadSetup setup, double[][] factors) = Of(name);
        SpreadPlace[][] held = [[], [SpreadPlace.Electrodes, SpreadPlace.Leads], [SpreadPlace.Electrodes, SpreadPlace.Leads, SpreadPlace.Surroundings]];
        SpreadKernel together = new(setup, SpreadKernel.Surroundings), alone = new(setup);
        for (int first = 0; first < factors[0].Length; first += Vector<double>.Count)
        {
            together.Evaluate(factors, first, SpreadNeeds.All, SpreadNeeds.All);
            for (int surrounding = 0; surrounding < held.Length; surrounding++)
            {
                double[][] own =
                [
                    .. factors.Select((row, part) => held[surrounding].Contains(setup.Parts.Parts[part].Place)
                        ? [.. row.Select(_ => setup.Parts.Parts[part].Nominal)]
                        : row),
                ];
                alone.Evaluate(own, first, SpreadNeeds.All);
                for (int figure = 0; figure < SpreadKernel.Rows; figure++)
                {
                    Same(alone.Figure(SpreadKernel.Drawn, figure), together.Figure(surrounding, figure), $"{surrounding} {figure}");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Figure_AskedForAlone_IsTheOneOfAll(string name)
    {
        (SpreadSetup setup, double[][] factors) = Of(name);
        SpreadKernel all = new(setup), alone = new(setup);
        all.Evaluate(factors, 0, SpreadNeeds.All);
        for (int figure = 0; figure < SpreadKernel.Ids.Length; figure++)
        {
            int walked = SpreadKernel.Walked(figure);
            alone.Evaluate(factors, Vector<double>.Count, SpreadNeeds.All);
            alone.Evaluate(factors, 0, SpreadKernel.Needs(figure));
            Same(all.Figure(SpreadKernel.Drawn, figure), alone.Figure(SpreadKernel.Drawn, figure), $"{figure}");
            Same(all.Figure(SpreadKernel.Drawn, walked), alone.Figure(SpreadKernel.Drawn, walked), $"{walked}");
        }
    }

    /// <summary>Builds that have missed a limit are not worked out any further: their yield is that of builds of which everything is.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void YieldWithoutElectrodesAndLeads_IsThatOfWholeBuilds(string name)
    {
        (SpreadSetup setup, double[][] factors) = Of(name);
        int builds = factors[0].Length;
        foreach (Requirements requirements in new[] { setup.Design.Requirements, Wide(setup.Design.Requirements) })
        {
            Design design = setup.Design with { Requirements = requirements };
            SpreadLimit[] limits = SpreadLimit.Of(design);
            var whole = new SpreadKernel(setup, SpreadKernel.Surroundings);
            int good = 0;
            for (int first = 0; first < builds; first += Vector<double>.Count)
            {
                whole.Evaluate(factors, first, SpreadNeeds.All, SpreadNeeds.All);
                for (int lane = 0; lane < Vector<double>.Count; lane++)
                {
                    good += limits.All(limit => whole.Figure(SpreadKernel.Inside, limit.Figure)[lane] is var value && (double.IsNaN(value) || limit.IsMet(value))) ? 1 : 0;
                }
            }

            SpreadResult result = SpreadRun.Run(design, new SpreadOptions { Seed = 3, Builds = builds }, null, TestContext.Current.CancellationToken)!;
            Assert.Equal(good / (double)builds, result.YieldWithoutElectrodesAndLeads);
        }
    }

    /// <summary>The yields, counted as the builds go by, are those of the values.</summary>
    [Fact]
    public void Yields_CountedAsTheBuildsGoBy_AreThoseOfTheValues()
    {
        foreach (Design design in Designs.All)
        {
            const int Builds = 301;
            var options = new SpreadOptions { Builds = Builds, Seed = 11 };
            SpreadResult result = SpreadRun.Run(design, options, null, TestContext.Current.CancellationToken)!;
            SpreadFigure[] judged = [.. result.Figures.Where(figure => figure.Limit is not null)];
            bool Meets(SpreadFigure figure, int build) => figure.LimitIsGreatest ? figure.Values[build] <= figure.Limit : figure.Limit <= figure.Values[build];
            Assert.Equal(Enumerable.Range(0, Builds).Count(build => judged.All(figure => Meets(figure, build))) / (double)Builds, result.Yield);
            Assert.All(judged, figure => Assert.Equal(Enumerable.Range(0, Builds).Count(build => Meets(figure, build)) / (double)Builds, figure.Yield));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(99_999)]
    [InlineData(int.MaxValue)]
    public void Stream_OfABuild_IsTheGeneratorsOfItsNames(int build)
    {
        SeededRandom named = SeededRandom.For(42, "build", build.ToString(CultureInfo.InvariantCulture));
        RandomStream numbered = RandomStream.Numbered(42, "build", build);
        for (int i = 0; i < 100; i++)
        {
            Assert.Equal(named.NextBits(), numbered.NextBits());
        }
    }

    [Fact]
    public void Run_MoreBuildsThanMayBeDrawn_IsRefused() =>
        Assert.Null(SpreadRun.Run(Designs.Dry, new SpreadOptions { Builds = SpreadOptions.MostBuilds + 1 }, null, TestContext.Current.CancellationToken));

    /// <summary>Limits that safety and loop meet, so that some builds fail by noise and mains alone.</summary>
    private static Requirements Wide(Requirements requirements) => requirements with
    {
        FaultCurrent = Current.FromAmperes(0.9),
        DrivenGroundCurrent = Current.FromAmperes(1),
        PhaseMargin = Angle.FromDegrees(1),
        Headroom = Decibels.FromStated(0),
        Offset = Voltage.FromMillivolts(1),
        MainsAtElectrodes = VoltageRms.FromMicrovolts(30),
    };

    private static void Same(Vector<double> expected, Vector<double> actual, string what)
    {
        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            Assert.True(expected[lane].Equals(actual[lane]), $"{what}: {expected[lane]:R} against {actual[lane]:R}");
        }
    }
}
