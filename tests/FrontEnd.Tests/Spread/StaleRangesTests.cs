using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>A range that came with a part card says nothing any more once the value was changed away from it.</summary>
public class StaleRangesTests
{
    private static readonly Design Changed = new Design { Amplifier = new() { Gain = 3.5, Ranges = new PartRanges([new PartRange("gain", 4.975, 5.025), new PartRange("cmrr", 1, 200)]) } };

    [Fact]
    public void Check_RangeWithoutItsValue_IsAWarning()
    {
        Finding finding = Assert.Single(DesignCheck.Run(Changed), one => one.Code == "FE0325");
        Assert.Equal((Severity.Warning, "amplifier.ranges"), (finding.Severity, finding.Field));
        Assert.DoesNotContain(DesignCheck.Run(Changed with { Amplifier = Changed.Amplifier with { Gain = 5 } }), one => one.Code == "FE0325");
    }

    [Fact]
    public void WithoutStaleRanges_KeepsTheOthers() =>
        Assert.Equal(["cmrr"], DesignFields.WithoutStaleRanges(Changed).Amplifier.Ranges.All.Select(range => range.Key));

    /// <summary>The gain is drawn about the design's own value: builds lie on both sides of it.</summary>
    [Fact]
    public void Spread_RangeWithoutItsValue_IsLeftAside()
    {
        SpreadFigure gain = SpreadRun.Run(Changed, new SpreadOptions { Builds = 400, Seed = 1 }, null, TestContext.Current.CancellationToken)!.Figures.Single(figure => figure.Id.Text == "gain.mid");
        Assert.InRange(gain.Nominal, gain.Values.Min(), gain.Values.Max());
    }

    [Fact]
    public void Advice_ThatChangesAValue_TakesItsRangeOut()
    {
        Design design = Changed with { Amplifier = Changed.Amplifier with { Gain = 5 } };
        Candidate[] all = [.. Candidates.For(design, Evaluator.Evaluate(design))];
        Assert.Contains(all, candidate => candidate.Design.Amplifier.Gain < 4.9);
        Assert.All(all, candidate => Assert.Empty(DesignFields.StaleRanges(candidate.Design)));
    }
}
