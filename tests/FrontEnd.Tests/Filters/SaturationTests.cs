using FrontEnd.Filters;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>A word of 16 bits with 14 behind the point holds −2 to 2 − 2⁻¹⁴; what lies beyond goes to the nearer end and is told, be it one coefficient or several.</summary>
public sealed class SaturationTests
{
    private const double Most = 2 - (1 / 16384.0);

    [Theory]
    [InlineData(Most, 0.5, false)]
    [InlineData(-2, 0.5, false)]
    [InlineData(2, 0.5, true)]
    [InlineData(2.5, 0.5, true)]
    [InlineData(2.5, 2.5, true)]
    [InlineData(-2.5, 0.5, true)]
    [InlineData(-2.5, -2.5, true)]
    public void Fixed_CoefficientsAtTheWordsEnds_TellWhetherTheyFit(double b0, double b2, bool saturates)
    {
        var filter = QuantisedFilter.Of(new SecondOrderSections([new Biquad(b0, 0.25, b2, -0.5, 0.25)]), new FixedFormat(16) { CoefficientFraction = 14 });
        QuantisedSection section = Assert.Single(filter.Details);
        Assert.Equal(saturates, section.Saturated);
        Biquad rounded = Assert.Single(filter.Sections.Sections.ToArray());
        Assert.Equal(Math.Clamp(b0, -2, Most), rounded.B0);
        Assert.Equal(Math.Clamp(b2, -2, Most), rounded.B2);
        Assert.Equal(-0.5, rounded.A1);
    }
}
