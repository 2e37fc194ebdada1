using FrontEnd.Converter;
using FrontEnd.Quantities;
using Xunit;

namespace FrontEnd.Tests.Budgets;

/// <summary>A step size says the word length.</summary>
public sealed class ConverterStepTests
{
    private static readonly AnalogDigitalConverter ThreeVolts = new() { FullScale = VoltagePeakToPeak.FromVolts(3), Bits = 24 };

    /// <summary>3 V over 2^12 is 4096 steps; by hand.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Step_OfAWholeWordLength_GivesIt(bool wholeSaysIt)
    {
        AnalogDigitalConverter converter = ThreeVolts.WithBitsOf(Voltage.FromVolts(3.0 / 4096), wholeSaysIt);
        Assert.Equal(12, converter.Bits);
        Assert.Equal(wholeSaysIt, converter.Lsb is null);
        Assert.Equal(3.0 / 4096, converter.LsbVolts);
    }

    /// <summary>3000 steps are log2 3000 = 11.5507 bits.</summary>
    [Fact]
    public void Step_OfAnotherSize_StaysWithTheBitsItMakes()
    {
        AnalogDigitalConverter converter = ThreeVolts.WithBitsOf(Voltage.FromMillivolts(1), wholeSaysIt: true);
        Assert.Equal(11.5507, converter.Bits, 4);
        Assert.Equal(1e-3, converter.LsbVolts);
    }

    /// <summary>More steps than 64 bits count are no word length.</summary>
    [Fact]
    public void Step_OfMoreThanSixtyFourBits_SaysNothing() => Assert.Same(ThreeVolts, ThreeVolts.WithBitsOf(Voltage.FromVolts(1e-20), wholeSaysIt: true));
}
