using FrontEnd.Quantities;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace FrontEnd.Tests.Quantities;

/// <summary>Rounding to parts that can be bought. The lists themselves are compared with reference/parts/preferred-values.txt.</summary>
public class PreferredValuesTests
{
    public sealed class PartValues
    {
        public static Arbitrary<double> Doubles() =>
            (from exponent in Gen.Choose(-1200, 900)
             select Math.Pow(10, exponent / 100.0)).ToArbitrary();

        public static Arbitrary<PreferredSeries> SeriesOf() => Gen.Elements(Enum.GetValues<PreferredSeries>()).ToArbitrary();
    }

    [Theory]
    // A member stays; beside it; over the end of the decade; just under and over the middle by ratio (√(1.0·1.1) = 1.0488).
    [InlineData(4700, PreferredSeries.E24, 4700)]
    [InlineData(4600, PreferredSeries.E12, 4700)]
    [InlineData(9.6e3, PreferredSeries.E24, 10e3)]
    [InlineData(9.53e3, PreferredSeries.E24, 9.1e3)]
    [InlineData(9.55e3, PreferredSeries.E24, 10e3)]
    [InlineData(1.0488, PreferredSeries.E24, 1.0)]
    [InlineData(1.0489, PreferredSeries.E24, 1.1)]
    [InlineData(999.999, PreferredSeries.E3, 1000)]
    [InlineData(0.47, PreferredSeries.E6, 0.47)]
    [InlineData(919, PreferredSeries.E192, 920)]
    public void Nearest_ByRatio(double value, PreferredSeries series, double expected) => Assert.Equal(expected, PreferredValues.Nearest(value, series));

    [Fact]
    public void Nearest_AtATie_TakesTheLarger() =>
        Assert.Equal(22, PreferredValues.Nearest(Math.Sqrt(10 * 22), PreferredSeries.E3));

    [Theory]
    [InlineData(4700, PreferredSeries.E24, 5100, 4300)]
    [InlineData(4699, PreferredSeries.E24, 4700, 4300)]
    [InlineData(4701, PreferredSeries.E24, 5100, 4700)]
    [InlineData(1000, PreferredSeries.E3, 2200, 470)]
    [InlineData(9.1, PreferredSeries.E24, 10, 8.2)]
    [InlineData(0.1, PreferredSeries.E12, 0.12, 0.082)]
    public void Next_UpAndDown_AreTheNeighbours(double value, PreferredSeries series, double up, double down)
    {
        Assert.Equal(up, PreferredValues.NextUp(value, series));
        Assert.Equal(down, PreferredValues.NextDown(value, series));
    }

    [Fact]
    public void AtLeastAndAtMost_KeepALimit()
    {
        // A series resistor against a current limit must not be rounded down: 84 kΩ wants 91 kΩ, where the nearest is 82 kΩ.
        Assert.Equal(Resistance.FromKilohms(82), PreferredValues.Nearest(Resistance.FromKilohms(84), PreferredSeries.E24));
        Assert.Equal(Resistance.FromKilohms(91), PreferredValues.AtLeast(Resistance.FromKilohms(84), PreferredSeries.E24));
        Assert.Equal(Resistance.FromKilohms(82), PreferredValues.AtMost(Resistance.FromKilohms(84), PreferredSeries.E24));
        Assert.Equal(Resistance.FromKilohms(82), PreferredValues.AtLeast(Resistance.FromKilohms(82), PreferredSeries.E24));
    }

    [Fact]
    public void Nearest_ValueWithBinaryNoise_IsTheMember() =>
        Assert.Equal(Capacitance.FromNanofarads(330), PreferredValues.Nearest(Capacitance.FromFarads(0.1e-6 + 0.1e-6 + 0.13e-6), PreferredSeries.E12));

    [Fact]
    public void Between_OneDecade_HasTheSeriesAndTheNextDecadesFirst()
    {
        foreach (PreferredSeries series in Enum.GetValues<PreferredSeries>())
        {
            double[] members = [.. PreferredValues.Between(1e3, 1e4, series)];
            Assert.Equal((int)series + 1, members.Length);
            Assert.Equal(PreferredValues.Decade(series).Select(member => member * 10.0).Append(1e4), members);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Nearest_NoValueAboveZero_IsOurMistake(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PreferredValues.Nearest(value, PreferredSeries.E24));
        Assert.False(PreferredValues.IsMember(value, PreferredSeries.E24));
    }

    [Property(Arbitrary = [typeof(PartValues)], MaxTest = 2000)]
    public void Nearest_AnyValue_IsAMemberAndNoOtherIsNearer(double value, PreferredSeries series)
    {
        double nearest = PreferredValues.Nearest(value, series);
        Assert.True(PreferredValues.IsMember(nearest, series));

        // Second way: every member of three decades, the distance as a ratio.
        double decade = Math.Pow(10, Math.Floor(Math.Log10(value)) - 3);
        double best = new[] { 1.0, 10, 100 }.SelectMany(scale => PreferredValues.Decade(series).Select(member => member * decade * scale)).Min(member => Math.Abs(Math.Log(member / value)));
        Assert.True(Math.Abs(Math.Log(nearest / value)) <= best + 1e-9, $"{value:r} {series}: {nearest:r}");
    }

    [Property(Arbitrary = [typeof(PartValues)], MaxTest = 2000)]
    public void NextDown_OfNextUp_IsTheMember(double value, PreferredSeries series)
    {
        double member = PreferredValues.Nearest(value, series);
        Assert.Equal(member, PreferredValues.NextDown(PreferredValues.NextUp(member, series), series));
        Assert.Equal(member, PreferredValues.NextUp(PreferredValues.NextDown(member, series), series));
        Assert.Equal(member, PreferredValues.Nearest(member, series));
    }

    [Property(Arbitrary = [typeof(PartValues)], MaxTest = 1000)]
    public void AtMost_AnyValue_IsNotAboveAtLeast(double value, PreferredSeries series)
    {
        double below = PreferredValues.AtMost(value, series);
        double above = PreferredValues.AtLeast(value, series);
        Assert.True(below <= value * (1 + 1e-9) && value * (1 - 1e-9) <= above && below <= above);
        Assert.True(above == below || above == PreferredValues.NextUp(below, series));
    }
}
