using FrontEnd.Documents;
using FrontEnd.Simulation;
using FrontEnd.Terminal;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The page of simulated samples: what its keys leave out is left out, and what turns the page works nothing out anew.</summary>
public sealed class SamplesPageTests
{
    private static SamplesOutcome Work(SamplesPage page) =>
        Assert.IsType<SamplesOutcome>(page.Work(DesignDocument.Read(Setup.Headband).Design, _ => { }, TestContext.Current.CancellationToken));

    [Fact]
    public void Page_WithNothingSwitchedOff_HoldsTheNoiseAgainstTheBudget()
    {
        SamplesOutcome outcome = Work(new SamplesPage());
        Assert.Null(outcome.Without);
        Assert.Null(outcome.With.Summary.NotCompared);
        Assert.Contains("nobody was recorded", outcome.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("h")]
    [InlineData("fq")]
    [InlineData("e")]
    [InlineData("d")]
    public void Page_WithSomethingSwitchedOff_HasBoth(string off)
    {
        SamplesOutcome outcome = Work(new SamplesPage { Off = off });
        SampleLook without = outcome.Without!;
        Assert.NotEqual(outcome.With.Traces[0].Y, without.Traces[0].Y);
        Assert.Equal(outcome.With.Traces[0].X, without.Traces[0].X);
    }

    [Fact]
    public void Page_OfAHead_ShowsMoreThanNoise() =>
        Assert.True(Work(new SamplesPage()).With.Summary.Channels[0].Rms.Volts * 2 < Work(new SamplesPage { HasHead = true }).With.Summary.Channels[0].Rms.Volts);
}
