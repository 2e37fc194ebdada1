using FrontEnd.Advice;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Teaching;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Why one figure is what it is asks only for what that figure needs; the whole way round gives the same.</summary>
public class ExplainedTests
{
    /// <summary>Every twelfth figure of two designs, worked out by its report alone for a design that is moved, is the one of the whole evaluation, to the bit.</summary>
    [Fact]
    public void OneFigure_OfAMovedDesign_IsThatOfItsWholeEvaluation()
    {
        foreach (Design design in (Design[])[FrontEnd.Tests.Designs.Gel, FrontEnd.Tests.Designs.Dry])
        {
            Design moved = design with { Amplifier = design.Amplifier with { Gain = design.Amplifier.Gain * 1.1 } };
            Assessment whole = Evaluator.Evaluate(moved);
            Result[] results = [.. Evaluator.Evaluate(design).Results.Where((_, at) => at % 12 == 0)];
            Assert.True(10 < results.Length);
            foreach (Result result in results)
            {
                Assert.True(OneFigure.Of(design, result.Id).TryOf(moved, out Result? alone));
                Result? same = whole.Find(result.Id);
                Assert.Equal(same?.State, alone?.State);
                Assert.Equal(same?.Value, alone?.Value);
                Assert.Equal(same?.Text, alone?.Text);
            }
        }
    }

    [Fact]
    public void OneFigure_OfADesignThatContradictsItself_IsNone()
    {
        Design design = FrontEnd.Tests.Designs.Gel;
        Assert.False(OneFigure.Of(design, new("noise.total")).TryOf(design with { Band = design.Band with { Low = Frequency.FromKilohertz(1) } }, out Result? none));
        Assert.Null(none);
    }

    /// <summary>A judged figure, one that no requirement judges, and a limit of use.</summary>
    [Theory]
    [InlineData("noise.total")]
    [InlineData("mains.total")]
    [InlineData("levels.recovery")]
    [InlineData("limit.offset")]
    [InlineData("safety.fault_current")]
    public void Explained_OfAFigure_SaysWhatTheWholeAdviceSays(string id)
    {
        Assessment assessment = Evaluator.Evaluate(FrontEnd.Tests.Designs.Dry);
        Result? wanted = Advisor.Advise(assessment, cancellation: TestContext.Current.CancellationToken).Find(id);
        Explained? explained = Explained.Of(assessment, id, TestContext.Current.CancellationToken);
        Assert.Equal(wanted?.Value, explained?.Result.Value);
        Assert.Equal(wanted?.Text, explained?.Result.Text);
        Assert.Equal(wanted?.Verdict.Improvement?.Change, explained?.Result.Verdict.Improvement?.Change);
        Assert.Equal(wanted?.Verdict.Improvement?.After, explained?.Result.Verdict.Improvement?.After);
    }

    [Fact]
    public void Explained_OfALimit_LooksForThatOneAlone()
    {
        Explained explained = Explained.Of(Evaluator.Evaluate(FrontEnd.Tests.Designs.Dry), "limit.offset", TestContext.Current.CancellationToken)!;
        Assert.Equal("limit.offset", Assert.Single(explained.Assessment.Results, result => result.Id.Text.StartsWith("limit.", StringComparison.Ordinal)).Id.Text);
        Assert.Null(Explained.Of(Evaluator.Evaluate(FrontEnd.Tests.Designs.Dry), "limit.nothing", TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("noise.total")]
    [InlineData("limit.contact")]
    [InlineData("levels.recovery")]
    public void Explained_Cancelled_Ends(string id)
    {
        Assessment assessment = Evaluator.Evaluate(FrontEnd.Tests.Designs.Gel);
        Assert.ThrowsAny<OperationCanceledException>(() => Explained.Of(assessment, id, new CancellationToken(canceled: true)));
    }
}
