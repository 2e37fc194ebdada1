using FrontEnd.Filters;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Filters;

/// <summary>A corner that lies too near to an end of what a sampling rate carries is refused by the end that it is near to.</summary>
public sealed class CornerRangeTests
{
    [Theory]
    [InlineData(0.001, "0 Hz at a rate of 20 kHz")]
    [InlineData(9999.9995, "half the sampling rate")]
    public void Design_CornerAtAnEnd_NamesThatEnd(double corner, string end)
    {
        FilterAnswer answer = new FilterWish { Family = FilterFamily.Butterworth, Shape = FilterShape.LowPass, Order = 2, Corners = [Frequency.FromHertz(corner)], Rate = Frequency.FromHertz(20e3) }.Design();
        Assert.Null(answer.Digital);
        Assert.Contains(answer.Findings, finding => finding.Message.Contains(end, StringComparison.Ordinal));
    }
}
