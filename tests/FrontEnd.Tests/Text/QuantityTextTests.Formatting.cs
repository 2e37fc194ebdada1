using FrontEnd.Quantities;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Text;

/// <summary>Printing quantities: round first, then choose the prefix.</summary>
public class QuantityTextFormattingTests
{
    public static TheoryData<IQuantity, int, string> Cases => new()
    {
        // Rounding carries into the next prefix, and does not where it need not.
        { Voltage.FromVolts(0.99996), 4, "1.000 V" },
        { Voltage.FromVolts(0.99994), 4, "999.9 mV" },
        { Voltage.FromVolts(0.9999), 3, "1.00 V" },
        { Voltage.FromVolts(-0.99996), 4, "-1.000 V" },
        { Resistance.FromOhms(999.5), 3, "1.00 kΩ" },
        { Resistance.FromOhms(999.4), 3, "999 Ω" },

        // Digits: fewer than the whole part needs, one, many.
        { Resistance.FromOhms(47123), 1, "50 kΩ" },
        { Resistance.FromOhms(47123), 3, "47.1 kΩ" },
        { Resistance.FromOhms(471230), 2, "470 kΩ" },
        { Resistance.FromOhms(4700), 6, "4.70000 kΩ" },
        { Resistance.FromOhms(4700), 0, "5 kΩ" },
        { Resistance.FromOhms(4700), 99, "4.7000000000000000 kΩ" },

        // Zero has no prefix, negative zero no sign; beyond the prefixes zeros, then a power of ten.
        { Voltage.FromVolts(0), 3, "0 V" },
        { Voltage.FromVolts(-0.0), 3, "0 V" },
        { BitCount.FromBits(-0.0), 3, "0 bit" },
        { Decibels.FromStated(-0.0), 3, "0.00 dB" },
        { Voltage.FromVolts(5e-324), 3, "4.94e-324 V" },
        { VoltageRms.FromVolts(1.234e-16), 3, "0.123 fV rms" },
        { Voltage.FromVolts(1e9), 3, "1.00e9 V" },
        { Voltage.FromVolts(12000), 3, "12.0 kV" },

        // Kinds with a word, a sign or a unit of their own.
        { VoltageRms.FromMicrovolts(1.5), 3, "1.50 µV rms" },
        { VoltagePeakToPeak.FromMicrovolts(1.5), 3, "1.50 µV p-p" },
        { MagneticFluxDensity.FromMicroteslas(0.1), 3, "100 nT rms" },
        { VoltageNoiseDensity.FromNanovoltsPerRootHertz(50), 3, "50.0 nV/√Hz" },
        { CurrentNoiseDensity.FromFemtoamperesPerRootHertz(0.1), 3, "100 aA/√Hz" },
        { ExcessNoise.FromVoltsSquaredPerHertz(1.251e-11), 3, "1.25e-11 V²/Hz" },
        { Decibels.FromStated(-110), 3, "-110 dB" },
        { Decibels.FromStated(-3.0103), 3, "-3.01 dB" },
        { Decibels.FromStated(45.234), 3, "45.2 dB" },
        { Decibels.FromStated(0.004), 3, "0.00 dB" },
        { Decibels.FromStated(-0.004), 3, "0.00 dB" },
        { Decibels.FromStated(0.996), 3, "1.00 dB" },
        { Angle.FromDegrees(45), 3, "45.0°" },
        { Angle.FromDegrees(-179.96), 4, "-180.0°" },
        { Temperature.FromCelsius(25), 3, "25.0 °C" },
        { Temperature.FromKelvins(306.15), 3, "33.0 °C" },
        { BitCount.FromBits(24), 3, "24 bit" },
        { BitCount.FromBits(17.456), 3, "17.5 bit" },
        { Ratio.FromPercent(5), 3, "5.00 %" },
        { Ratio.FromFraction(0.9996), 3, "1.00 ×" },
        { Ratio.FromFraction(1003.66), 3, "1000 ×" },
        { Ratio.FromFraction(0), 3, "0 %" },
        { Charge.FromMilliampereHours(200), 3, "200 mAh" },
        { Charge.FromMilliampereHours(12000), 3, "12.0 Ah" },
        { Charge.FromCoulombs(1e-9), 3, "1.00 nC" },
        { Duration.FromSeconds(0.0315), 3, "31.5 ms" },
        { Duration.FromSeconds(90), 3, "90.0 s" },
        { Duration.FromSeconds(600), 3, "10.0 min" },
        { Duration.FromHours(20), 3, "20.0 h" },
        { Area.FromSquareCentimetres(20), 3, "20.0 cm²" },
        { Area.FromSquareCentimetres(0.126), 3, "12.6 mm²" },
        { Area.FromSquareMetres(1.5), 3, "1.50 m²" },
        { DataRate.FromBitsPerSecond(57600), 3, "57.6 kbit/s" },
        { Frequency.FromHertz(240), 3, "240 Hz" },
        { Length.FromCentimetres(20), 3, "200 mm" },
        { Current.FromNanoamperes(216.77), 4, "216.8 nA" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Format_RoundsFirstAndChoosesThePrefixAfter(IQuantity quantity, int digits, string expected) =>
        Assert.Equal(expected, QuantityText.Format(quantity, digits));

    /// <summary>Below 1 Hz people write decimals: a band begins at 0.5 Hz, not at 500 mHz. Below a thousandth a prefix reads better again.</summary>
    [Theory]
    [InlineData(0.5, "0.500 Hz", "0.5 Hz")]
    [InlineData(0.1592, "0.159 Hz", "0.1592 Hz")]
    [InlineData(0.99996, "1.00 Hz", "0.99996 Hz")]
    [InlineData(0.05, "0.0500 Hz", "0.05 Hz")]
    [InlineData(-0.5, "-0.500 Hz", "-0.5 Hz")]
    [InlineData(0.001, "0.00100 Hz", "0.001 Hz")]
    [InlineData(0.0009, "900 µHz", "900 µHz")]
    [InlineData(1, "1.00 Hz", "1 Hz")]
    [InlineData(0, "0 Hz", "0 Hz")]
    public void Format_FrequencyBelowOneHertz_HasDecimals(double hertz, string three, string part)
    {
        var frequency = Frequency.FromHertz(hertz);
        Assert.Equal((three, three), (QuantityText.Format(frequency), QuantityText.Format(hertz, "Hz")));
        Assert.Equal((part, part), (QuantityText.FormatPart(frequency), QuantityText.FormatExact(frequency)));
        Assert.True(QuantityText.TryParse(part, out Frequency read, out _));
        Assert.Equal(frequency, read);
    }

    [Fact]
    public void Format_NoDigitsNamed_GivesThree() => Assert.Equal("4.70 kΩ", QuantityText.Format(Resistance.FromOhms(4700)));

    [Fact]
    public void Format_Nothing_GivesNothing() => Assert.Equal("", QuantityText.Format(null));

    [Theory]
    [InlineData(4700, "4.7 kΩ")]
    [InlineData(10000, "10 kΩ")]
    [InlineData(1e6, "1 MΩ")]
    [InlineData(0.47, "470 mΩ")]
    [InlineData(604e3, "604 kΩ")]
    [InlineData(0.1 + 0.2, "300 mΩ")]
    public void FormatPart_Resistance_IsAsOnThePart(double ohms, string expected) => Assert.Equal(expected, QuantityText.FormatPart(Resistance.FromOhms(ohms)));

    [Theory]
    [InlineData(2.2e-7, "220 nF")]
    [InlineData(4.7e-9, "4.7 nF")]
    [InlineData(1e-11, "10 pF")]
    public void FormatExact_ValueFromAText_IsThatText(double farads, string expected) => Assert.Equal(expected, QuantityText.FormatExact(Capacitance.FromFarads(farads)));

    [Fact]
    public void FormatExact_ValueFromArithmetic_KeepsEveryDigit() =>
        Assert.Equal("300.00000000000004 mΩ", QuantityText.FormatExact(Resistance.FromOhms(0.1 + 0.2)));

    [Theory]
    [InlineData(1.5e-6, "V", "1.50 µV")]
    [InlineData(1234, "1", "1230")]
    [InlineData(0.0345, "1", "0.0345")]
    [InlineData(1.380649e-23, "1", "1.38e-23")]
    [InlineData(942, "V/s", "942 V/s")]
    [InlineData(-84.83, "dBV", "-84.8 dBV")]
    [InlineData(12.34, "dB", "12.3 dB")]
    [InlineData(double.NaN, "V", "no number")]
    [InlineData(double.PositiveInfinity, "dB", "∞")]
    [InlineData(double.NegativeInfinity, "dB", "-∞")]
    public void Format_NumberInAnSiUnit_TakesThePrefixOfTheUnit(double value, string unit, string expected) => Assert.Equal(expected, QuantityText.Format(value, unit));

    [Fact]
    public void FormatPercentAndFactor_AnyRatio_KeepTheirForm()
    {
        Assert.Equal("120 %", QuantityText.FormatPercent(Ratio.FromFraction(1.2)));
        Assert.Equal("0.500 ×", QuantityText.FormatFactor(Ratio.FromFraction(0.5)));
        Assert.Equal("0 %", QuantityText.FormatPercent(default));
    }

    [Fact]
    public void Kinds_EveryQuantityStruct_HasOne()
    {
        Type[] structs = [.. typeof(IQuantity).Assembly.GetTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type))];
        Assert.Equal(QuantityKind.All.Count, structs.Length);
        Type[] reached = [.. QuantityKind.All.Select(kind => kind.FromSi(1).GetType())];
        Assert.Equal(structs.OrderBy(type => type.Name, StringComparer.Ordinal), reached.OrderBy(type => type.Name, StringComparer.Ordinal));
        Assert.All(QuantityKind.All, kind => Assert.Equal(kind, QuantityKind.Of(kind.FromSi(1))));
    }
}
