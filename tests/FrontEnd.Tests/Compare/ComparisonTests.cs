using FrontEnd.Compare;
using FrontEnd.Designs;
using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Tests.Compare;

/// <summary>Differences alone and together.</summary>
public class ComparisonTests
{
    [Fact]
    public void Designs_Alike_HaveNoDifferences() =>
        Assert.Empty(Comparison.Of(Designs.Dry, Designs.Dry with { }, TestContext.Current.CancellationToken).Differences);

    [Fact]
    public void OneField_Alone_IsTheSecondDesign()
    {
        Design other = Designs.Dry with { SmallestSignal = VoltageRms.FromMicrovolts(7), Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromKilohms(47) } };
        Comparison comparison = Comparison.Of(Designs.Dry, other, TestContext.Current.CancellationToken);
        Assert.Equal(["signal.smallest", "input.series-resistor"], comparison.Differences.Select(difference => difference.Key));
        Difference resistor = comparison.Differences[1];
        Assert.Equal(("100 kΩ", "47 kΩ"), (resistor.From, resistor.To));
        Assert.Equal(Evaluator.Evaluate(other)["safety.fault_current"].Si, resistor.Alone["safety.fault_current"].Si);
        Assert.Equal(comparison.From["safety.fault_current"].Si, comparison.Differences[0].Alone["safety.fault_current"].Si);
    }

    [Theory]
    [InlineData(1 + 1e-12, null, null)]
    [InlineData(1 + 1e-7, "100 kΩ", "100.00001 kΩ")]
    [InlineData(1.0 / 3, "100 kΩ", "33.3333 kΩ")]
    public void AValueFromArithmetic_BelowItsOwnDigits_IsNoDifference(double factor, string? from, string? to)
    {
        Design other = Designs.Dry with { Input = Designs.Dry.Input with { SeriesResistor = Resistance.FromOhms(100e3 * factor) } };
        Difference? difference = Comparison.Of(Designs.Dry, other, TestContext.Current.CancellationToken).Differences.SingleOrDefault();
        Assert.Equal((from, to), (difference?.From, difference?.To));
    }

    [Fact]
    public void ACoefficient_OfADigitalFilter_IsComparedToItsLastDigits()
    {
        Design With(double b0) => Designs.Dry with { Digital = [new FrontEnd.Digital.DigitalSections { Name = "own", Rows = [[b0, 0, 0, 1, 0, 0]] }] };
        Assert.Empty(Comparison.Of(With(0.3), With(0.1 + 0.2), TestContext.Current.CancellationToken).Differences);
        Assert.Single(Comparison.Of(With(0.3), With(0.3 + 1e-11), TestContext.Current.CancellationToken).Differences);
    }

    [Fact]
    public void AnotherNumberOfStages_IsOneDifference_AndAllAloneIsAllTogether()
    {
        Comparison comparison = Comparison.Of(Designs.Dry, Designs.Dry with { Stages = [Designs.Dry.Stages[0]] }, TestContext.Current.CancellationToken);
        Difference difference = Assert.Single(comparison.Differences);
        Assert.Equal("stages", difference.Key);
        Assert.All(comparison.JudgedIds, id => Assert.Equal(comparison.To.Find(id)?.Value?.SiValue, difference.Alone.Find(id)?.Value?.SiValue));
    }

    [Fact]
    public void ASecondStageThatClips_IsTheFirstThingTold()
    {
        // The stages' op-amps lose 1 V at each rail: another node clips first, and its headroom is judged in the first one's place.
        Design first = Designs.Dry, to = first with
        {
            Stages = [.. first.Stages.Select(stage => stage.FittedOpAmp is { } opAmp ? stage.WithOpAmp(opAmp with { OutputMargin = Voltage.FromVolts(1.4) }) : stage)],
        };
        Comparison comparison = Comparison.Of(first, to, TestContext.Current.CancellationToken);
        Assert.True(comparison.From.AllRequirementsMet || comparison.From.Judged[0].Verdict.Kind == VerdictKind.Fail);
        FigureChange worst = comparison.Together[0];
        Assert.Equal(VerdictKind.Fail, worst.After!.Verdict.Kind);
        Assert.True(worst.Kind is ChangeKind.NewlyFails or ChangeKind.FailsByMore);
        Assert.Contains(comparison.Together, change => change.Kind is ChangeKind.NewlyFails or ChangeKind.FailsByMore && change.After!.Verdict.Requirement == "requirements.headroom");
    }

    [Fact]
    public void ALimitThatMoves_IsTold_ThoughItsFigureStands()
    {
        Design first = Designs.Dry, to = first with { Requirements = first.Requirements with { FaultCurrent = Current.FromAmperes(8 * first.Requirements.FaultCurrent.Amperes) } };
        FigureChange change = Assert.Single(Comparison.Of(first, to, TestContext.Current.CancellationToken).Together, change => change.Id.Text == "safety.fault_current");
        Assert.Equal(change.Before!.Si, change.After!.Si);
        Assert.True(change.Kind is ChangeKind.OtherLimit or ChangeKind.Better);
    }

    [Fact]
    public void AnUnjudgedFigure_IsToldFromATenthOn()
    {
        Design a = Designs.Gel with { Electrodes = Designs.Gel.Electrodes with { Mismatch = Ratio.FromFraction(0.5) } };
        Assert.All(FigureChanges.Between(Evaluator.Evaluate(Designs.Gel), Evaluator.Evaluate(a)).Where(change => change.Kind == ChangeKind.Unjudged), change =>
            Assert.True(change.Before?.State != ResultState.Number || change.After?.State != ResultState.Number || Moved(change)));

        static bool Moved(FigureChange change) => change.Before!.Value is Decibels
            ? 20 * Math.Log10(1.1) < Math.Abs(change.Before.Si - change.After!.Si) * 1.1
            : 0.1 * Math.Abs(change.Before.Si) < Math.Abs(change.Before.Si - change.After!.Si) || change.Before.Value is BitCount;
    }

    [Fact]
    public void AnInvalidHalfwayDesign_HasNoFiguresAndItsFinding()
    {
        // A lower rate with a lower band is a design; the rate alone is below twice the band's edge.
        Design first = Designs.Gel, to = first with
        {
            Band = first.Band with { High = Frequency.FromHertz(10) },
            Converter = first.Converter with { Rate = Frequency.FromHertz(50) },
        };
        Comparison comparison = Comparison.Of(first, to, TestContext.Current.CancellationToken);
        Difference rate = Assert.Single(comparison.Differences, difference => difference.Key == "converter.rate");
        Assert.False(rate.Alone.HasFigures);
        Assert.Empty(comparison.Of(rate));
        Assert.Equal(Severity.Error, comparison.NewFindings(rate.Alone)[0].Severity);
    }

    /// <summary>Whatever two designs are compared: a verdict that changed is never left out, and nothing better stands before a new failure.</summary>
    [Fact]
    public void EveryVerdictThatChanged_IsListed_WorstFirst()
    {
        Assessment[] all = [.. Designs.All.Select(Evaluator.Evaluate)];
        foreach (Assessment before in all)
        {
            foreach (Assessment to in all)
            {
                IReadOnlyList<FigureChange> changes = FigureChanges.Between(before, to);
                Assert.Equal(changes.Select(change => change.Kind).Order(), changes.Select(change => change.Kind));
                Assert.All(to.Judged.Where(result => result.Verdict.Kind == VerdictKind.Fail && !before.Judged.Any(one => one.Verdict.Requirement == result.Verdict.Requirement && one.Verdict.Kind == VerdictKind.Fail)), result =>
                    Assert.Contains(changes, change => change.After == result && change.Kind == ChangeKind.NewlyFails));
                Assert.All(to.Judged.Where(result => result.Verdict.Kind != before.Find(result.Id)?.Verdict.Kind), result =>
                    Assert.Contains(changes, change => change.After == result));
                Assert.All(before.Judged.Where(result => result.Verdict.Kind != to.Find(result.Id)?.Verdict.Kind), result =>
                    Assert.Contains(changes, change => change.Before == result));
                Assert.Empty(FigureChanges.Between(to, to));
            }
        }
    }
}
