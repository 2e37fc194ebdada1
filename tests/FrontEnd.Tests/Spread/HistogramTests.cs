using FrontEnd.Spread;
using Xunit;

namespace FrontEnd.Tests.Spread;

/// <summary>Histograms of a spread.</summary>
public class HistogramTests
{
    private static SpreadFigure Of(params double[] values) => new("x", "V", 0, values, [], 0, 0, null, null, null, [], 0, 0);

    /// <summary>Counted by hand: steps of 1 from 0 to 4; the greatest value belongs to the last step.</summary>
    [Fact]
    public void Histogram_CountsEveryValueOnce()
    {
        IReadOnlyList<HistogramBin> bins = Of(0, 0.5, 1, 1.99, 3.2, 4).Histogram(4);

        Assert.Equal([2, 2, 0, 2], bins.Select(bin => bin.Count));
        Assert.Equal([0.5, 1.5, 2.5, 3.5], bins.Select(bin => bin.Middle));
    }

    [Fact]
    public void Histogram_OfEqualValues_IsEmpty() => Assert.Empty(Of(2, 2, 2).Histogram(20));
}
