using FrontEnd.Compare;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
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
}
