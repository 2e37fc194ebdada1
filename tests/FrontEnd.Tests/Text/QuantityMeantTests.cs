using FrontEnd.Quantities;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Text;

/// <summary>Quantities that are not read and whose meaning is plain all the same: what is proposed is read, as the value meant.</summary>
public sealed class QuantityMeantTests
{
    /// <summary>Kind, text, what is proposed, its value in SI units.</summary>
    public static TheoryData<string, string, string, double> Meant => new()
    {
        // Decimal commas, and signs between thousands.
        { "Resistance", "4,7 kΩ", "4.7 kΩ", 4700 }, { "Frequency", "0,5 Hz", "0.5 Hz", 0.5 }, { "Resistance", "1,000,000 Ω", "1000000 Ω", 1e6 },
        { "Resistance", "1.000.000 Ω", "1000000 Ω", 1e6 }, { "Resistance", "1.234,5 Ω", "1234.5 Ω", 1234.5 }, { "Resistance", "1,234.5 Ω", "1234.5 Ω", 1234.5 },
        { "Resistance", "2_200 Ω", "2200 Ω", 2200 }, { "Resistance", "1'000'000 Ω", "1000000 Ω", 1e6 }, { "Frequency", "12 500 Hz", "12500 Hz", 12500 },

        // Other scripts, full width, signs that nobody sees.
        { "Resistance", "10 кОм", "10 kΩ", 1e4 }, { "Capacitance", "100 нФ", "100 nF", 1e-7 }, { "Capacitance", "0.1 мкФ", "0.1 µF", 1e-7 }, { "Frequency", "250 Гц", "250 Hz", 250 },
        { "Voltage", "3.3 В", "3.3 V", 3.3 }, { "Resistance", "10 κΩ", "10 kΩ", 1e4 }, { "Capacitance", "100 ηF", "100 nF", 1e-7 }, { "Frequency", "５０ Ｈｚ", "50 Hz", 50 },
        { "Resistance", "68\u200Bk\u200BΩ", "68kΩ", 68e3 }, { "Ratio", "1 ％", "1 %", 0.01 },

        // Powers of ten, fractions, other names of units.
        { "Resistance", "2.2*10^3 Ω", "2.2e3 Ω", 2200 }, { "Capacitance", "1 × 10⁻⁷ F", "1e-7 F", 1e-7 }, { "Resistance", "1/2 kΩ", "0.5 kΩ", 500 }, { "Resistance", "1½ kΩ", "1.5 kΩ", 1500 },
        { "Capacitance", "0.1 mcF", "0.1 µF", 1e-7 }, { "Capacitance", "100 uuF", "100 pF", 1e-10 }, { "Resistance", "2.2 kE", "2.2 kΩ", 2200 }, { "Frequency", "250 1/s", "250 Hz", 250 },
        { "Frequency", "250 cps", "250 Hz", 250 }, { "Ratio", "1 prozent", "1 %", 0.01 }, { "Ratio", "+/-1 %", "±1 %", 0.01 }, { "Charge", "800 mA*h", "800 mA·h", 2880 },
        { "VoltageNoiseDensity", "20 nV/rootHz", "20 nV/√Hz", 2e-8 }, { "VoltageNoiseDensity", "20 nV per root Hz", "20 nV/√Hz", 2e-8 }, { "VoltageNoiseDensity", "20 nV Hz^-0.5", "20 nV/√Hz", 2e-8 },
        { "Frequency", "60 cycles", "60 Hz", 60 }, { "Frequency", "60 Herz", "60 hertz", 60 }, { "Area", "20 sq cm", "20 cm²", 20e-4 }, { "Area", "20 qcm", "20 cm²", 20e-4 },
        { "Voltage", "2V7", "2.7 V", 2.7 }, { "Voltage", "2 x 10-3 V", "2e-3 V", 2e-3 }, { "Voltage", "2 e-3 V", "2e-3 V", 2e-3 }, { "Voltage", "±300 mV", "300 mV", 0.3 }, { "Frequency", "16⅔ Hz", "16.666667 Hz", 16.666667 },
        { "Capacitance", "100 nano", "100 nF", 1e-7 }, { "Resistance", "kΩ 2.2", "2.2 kΩ", 2200 },

        // Words and signs around one value.
        { "Resistance", "about 10k", "10k", 1e4 }, { "Resistance", "~10 kΩ", "10 kΩ", 1e4 }, { "Resistance", "10k or so", "10k", 1e4 }, { "Resistance", "≥ 1M", "1M", 1e6 },
        { "Resistance", "10k ± 5 %", "10k", 1e4 }, { "Capacitance", "100 nF X7R", "100 nF", 1e-7 }, { "Capacitance", "100nF/50V", "100nF", 1e-7 }, { "Resistance", "R = 2.2 kΩ", "2.2 kΩ", 2200 },
        { "Resistance", "10kOhm.", "10kOhm", 1e4 }, { "Decibels", "at least 90 dB", "90 dB", 90 },
    };

    [Theory]
    [MemberData(nameof(Meant))]
    public void Quantity_WhoseMeaningIsPlain_IsProposedAsItIsToBeWritten(string name, string text, string proposed, double si)
    {
        QuantityKind kind = QuantityKind.Find(name)!;
        Assert.False(QuantityText.TryParse(kind, text, out _, out ParseProblem? problem));
        Assert.StartsWith($"write `{proposed}`", problem!.Help, StringComparison.Ordinal);
        Assert.NotNull(problem.Note);
        Assert.True(QuantityText.TryParse(kind, proposed, out IQuantity? value, out _));
        Assert.Equal(si, value!.SiValue, Math.Abs(si) * 1e-12);
    }

    [Theory]
    [InlineData("1k..10k", "1k", "10k")]
    [InlineData("1k-10k", "1k", "10k")]
    [InlineData("1 – 10 kΩ", "1 kΩ", "10 kΩ")]
    [InlineData("10k to 1k", "1k", "10k")]
    [InlineData("between 1 kΩ and 10 kΩ", "1 kΩ", "10 kΩ")]
    public void Quantity_OfTwoValues_NamesTheRange(string text, string low, string high)
    {
        Assert.False(QuantityText.TryParse(QuantityKind.Find("Resistance")!, text, out _, out ParseProblem? problem));
        Assert.Equal((low, high), problem!.Ends);
    }

    /// <summary>Commas that part no thousands, and are no decimal sign either, may mean anything: 0,000,001 is no 1.</summary>
    [Theory]
    [InlineData("10,5,3k")]
    [InlineData("0,000,001 Ω")]
    [InlineData("1,5,000.2 Ω")]
    [InlineData("1.5,3 Ω")]
    public void Quantity_WithCommasOfAnyOtherKind_IsNotGuessed(string text)
    {
        Assert.False(QuantityText.TryParse(QuantityKind.Find("Resistance")!, text, out _, out ParseProblem? problem));
        Assert.Null(problem!.Meant);
        Assert.Equal("write the number with a point as its decimal sign, and no comma", problem.Help);
    }

    /// <summary>Where a proposal could mean another value, there is none: other units, sums, two values, a point too many.</summary>
    [Theory]
    [InlineData("Resistance", "2.2 kΩ/m")]
    [InlineData("Resistance", "10 kΩ²")]
    [InlineData("Resistance", "10 kHz")]
    [InlineData("Resistance", "2.2 kΩ + 100 Ω")]
    [InlineData("Resistance", "2 × 1.1 kΩ")]
    [InlineData("Resistance", "2..2 kΩ")]
    [InlineData("Resistance", "2.2.0 kΩ")]
    [InlineData("Resistance", "ten kilohms")]
    [InlineData("Resistance", "0x10")]
    [InlineData("Frequency", "250 rad/s")]
    [InlineData("Frequency", "50/60 Hz")]
    [InlineData("Area", "4 cm x 5 cm")]
    [InlineData("VoltageRms", "-126 dBV")]
    [InlineData("VoltageRms", "0.5 µV^2")]
    [InlineData("Voltage", "1.5 V/µs")]
    [InlineData("Voltage", "nan")]
    [InlineData("Ratio", "5 apples")]
    [InlineData("Resistance", "10 kΩ/2")]
    [InlineData("Resistance", "the resistor which my colleague measured] 5 kΩ")]
    public void Quantity_ThatMayMeanAnother_IsNotGuessed(string name, string text)
    {
        Assert.False(QuantityText.TryParse(QuantityKind.Find(name)!, text, out _, out ParseProblem? problem));
        Assert.Contains("such as", problem!.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Quantity_WithOneCommaBeforeThreeDigits_MayBeEither()
    {
        Assert.False(QuantityText.TryParse(QuantityKind.Find("Resistance")!, "1,000 Ω", out _, out ParseProblem? problem));
        Assert.Equal("write `1.000 Ω` if the comma is a decimal sign, `1000 Ω` if it groups thousands", problem!.Help);
    }
}
