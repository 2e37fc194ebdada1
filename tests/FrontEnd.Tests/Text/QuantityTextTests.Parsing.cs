using FrontEnd.Findings;
using FrontEnd.Quantities;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Text;

/// <summary>Reading quantities as people write them.</summary>
public class QuantityTextParsingTests
{
    [Theory]
    // Parts: unit, prefix alone, code with the letter for the point, all spellings of ohm and micro.
    [InlineData(typeof(Resistance), "4.7 kΩ", 4700)]
    [InlineData(typeof(Resistance), "4.7kΩ", 4700)]
    [InlineData(typeof(Resistance), "4.7 k\u2126", 4700)]
    [InlineData(typeof(Resistance), "4k7", 4700)]
    [InlineData(typeof(Resistance), "4K7", 4700)]
    [InlineData(typeof(Resistance), "4k7 Ω", 4700)]
    [InlineData(typeof(Resistance), "4.7k", 4700)]
    [InlineData(typeof(Resistance), "4.7 K", 4700)]
    [InlineData(typeof(Resistance), "4.7 kohm", 4700)]
    [InlineData(typeof(Resistance), "4.7 kOhm", 4700)]
    [InlineData(typeof(Resistance), "4700", 4700)]
    [InlineData(typeof(Resistance), "4.7e3", 4700)]
    [InlineData(typeof(Resistance), "470 ohm", 470)]
    [InlineData(typeof(Resistance), "470R", 470)]
    [InlineData(typeof(Resistance), "R47", 0.47)]
    [InlineData(typeof(Resistance), "4R7", 4.7)]
    [InlineData(typeof(Resistance), "1 Meg", 1e6)]
    [InlineData(typeof(Resistance), "2.2MEG", 2.2e6)]
    [InlineData(typeof(Resistance), "1 MegΩ", 1e6)]
    [InlineData(typeof(Resistance), "2M2", 2.2e6)]
    [InlineData(typeof(Resistance), "2m2", 2.2e-3)]
    [InlineData(typeof(Resistance), "10 MΩ", 1e7)]
    [InlineData(typeof(Resistance), "10 mΩ", 1e-2)]
    [InlineData(typeof(Resistance), "1G", 1e9)]
    [InlineData(typeof(Resistance), "0", 0)]
    [InlineData(typeof(Capacitance), "220n", 220e-9)]
    [InlineData(typeof(Capacitance), "220 nF", 220e-9)]
    [InlineData(typeof(Capacitance), "10p", 10e-12)]
    [InlineData(typeof(Capacitance), "4n7", 4.7e-9)]
    [InlineData(typeof(Capacitance), "4µ7", 4.7e-6)]
    [InlineData(typeof(Capacitance), "4\u03BC7", 4.7e-6)]
    [InlineData(typeof(Capacitance), "4u7", 4.7e-6)]
    [InlineData(typeof(Capacitance), "1 uF", 1e-6)]
    [InlineData(typeof(Capacitance), "1 µF", 1e-6)]
    [InlineData(typeof(Capacitance), "1 \u03BCF", 1e-6)]
    [InlineData(typeof(Capacitance), "0 F", 0)]
    // Voltages: the kind decides; the words rms and peak-to-peak may stand there but need not.
    [InlineData(typeof(Voltage), "300mV", 0.3)]
    [InlineData(typeof(Voltage), "-300 mV", -0.3)]
    [InlineData(typeof(Voltage), "\u2212300 mV", -0.3)]
    [InlineData(typeof(Voltage), "+3.3 V", 3.3)]
    [InlineData(typeof(Voltage), " 5 v ", 5)]
    [InlineData(typeof(Voltage), ".5 V", 0.5)]
    [InlineData(typeof(Voltage), "5. V", 5)]
    [InlineData(typeof(VoltageRms), "1.5 µV", 1.5e-6)]
    [InlineData(typeof(VoltageRms), "1.5 uVrms", 1.5e-6)]
    [InlineData(typeof(VoltageRms), "1.5 µV rms", 1.5e-6)]
    [InlineData(typeof(VoltageRms), "230 V", 230)]
    [InlineData(typeof(VoltagePeakToPeak), "1.5 µVpp", 1.5e-6)]
    [InlineData(typeof(VoltagePeakToPeak), "1.5 µV p-p", 1.5e-6)]
    [InlineData(typeof(VoltagePeakToPeak), "1.5 µV P\u2013P", 1.5e-6)]
    [InlineData(typeof(VoltagePeakToPeak), "1.5 µV", 1.5e-6)]
    // Densities: every way to type a root.
    [InlineData(typeof(VoltageNoiseDensity), "50 nV/√Hz", 50e-9)]
    [InlineData(typeof(VoltageNoiseDensity), "50 nV/rtHz", 50e-9)]
    [InlineData(typeof(VoltageNoiseDensity), "50 nV/sqrt(Hz)", 50e-9)]
    [InlineData(typeof(VoltageNoiseDensity), "50nV / √Hz", 50e-9)]
    [InlineData(typeof(VoltageNoiseDensity), "50 nV/Hz^0.5", 50e-9)]
    [InlineData(typeof(CurrentNoiseDensity), "100 fA/√Hz", 100e-15)]
    [InlineData(typeof(CurrentNoiseDensity), "0.1 pA/rtHz", 0.1e-12)]
    [InlineData(typeof(ExcessNoise), "2.5e-12 V²/Hz", 2.5e-12)]
    [InlineData(typeof(ExcessNoise), "2.5e-12 V^2/Hz", 2.5e-12)]
    [InlineData(typeof(ExcessNoise), "2.5 µV²/Hz", 2.5e-12)]
    [InlineData(typeof(ExcessNoise), "0", 0)]
    // The others.
    [InlineData(typeof(Decibels), "-110 dB", -110)]
    [InlineData(typeof(Decibels), "-110dB", -110)]
    [InlineData(typeof(Ratio), "5 %", 0.05)]
    [InlineData(typeof(Ratio), "5%", 0.05)]
    [InlineData(typeof(Ratio), "±1 %", 0.01)]
    [InlineData(typeof(Ratio), "0.05", 0.05)]
    [InlineData(typeof(Ratio), "12 ×", 12)]
    [InlineData(typeof(Ratio), "12x", 12)]
    [InlineData(typeof(Ratio), "100 ppm", 1e-4)]
    [InlineData(typeof(Charge), "1 mC", 1e-3)]
    [InlineData(typeof(Charge), "200 mAh", 720)]
    [InlineData(typeof(Charge), "1.2 Ah", 4320)]
    [InlineData(typeof(Temperature), "25 °C", 298.15)]
    [InlineData(typeof(Temperature), "25 C", 298.15)]
    [InlineData(typeof(Temperature), "25°C", 298.15)]
    [InlineData(typeof(Temperature), "298.15 K", 298.15)]
    [InlineData(typeof(Temperature), "-10 degC", 263.15)]
    [InlineData(typeof(Area), "20 cm²", 20e-4)]
    [InlineData(typeof(Area), "20 cm2", 20e-4)]
    [InlineData(typeof(Area), "20 cm^2", 20e-4)]
    [InlineData(typeof(Area), "50 mm²", 50e-6)]
    [InlineData(typeof(Length), "20 cm", 0.2)]
    [InlineData(typeof(Length), "1.2 m", 1.2)]
    [InlineData(typeof(MagneticFluxDensity), "0.1 µT", 1e-7)]
    [InlineData(typeof(BitCount), "12 bit", 12)]
    [InlineData(typeof(BitCount), "12", 12)]
    [InlineData(typeof(Frequency), "500 S/s", 500)]
    [InlineData(typeof(Frequency), "500 Hz", 500)]
    [InlineData(typeof(Frequency), "2 kS/s", 2000)]
    [InlineData(typeof(Frequency), "1 MHz", 1e6)]
    [InlineData(typeof(Frequency), "1 mHz", 1e-3)]
    [InlineData(typeof(Frequency), "50 hz", 50)]
    [InlineData(typeof(Frequency), "10 KHz", 1e4)]
    [InlineData(typeof(Angle), "45 deg", 45)]
    [InlineData(typeof(Angle), "45°", 45)]
    [InlineData(typeof(DataRate), "96 kbit/s", 96e3)]
    [InlineData(typeof(DataRate), "96 kbps", 96e3)]
    [InlineData(typeof(Current), "50 µA", 50e-6)]
    [InlineData(typeof(Duration), "20 ms", 0.02)]
    [InlineData(typeof(Duration), "1.5 h", 5400)]
    [InlineData(typeof(Duration), "2 min", 120)]
    public void Parse_AsPeopleWrite_GivesTheValueExactly(Type type, string text, double si)
    {
        QuantityKind kind = QuantityKind.Find(type)!;
        Assert.True(QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem), problem?.Message);
        Assert.Equal(si, value!.SiValue);
        Assert.Equal(kind, QuantityKind.Of(value));
    }

    [Theory]
    [InlineData(typeof(Voltage), "", Messages.Empty, 0)]
    [InlineData(typeof(Voltage), "   ", Messages.Empty, 0)]
    [InlineData(typeof(Voltage), "abc", Messages.NotANumber, 0)]
    [InlineData(typeof(Voltage), "1.2.3 V", Messages.NotANumber, 0)]
    [InlineData(typeof(Voltage), "NaN", Messages.NotANumber, 0)]
    [InlineData(typeof(Voltage), "- 5 V", Messages.NotANumber, 0)]
    [InlineData(typeof(Voltage), "1,5 V", Messages.DecimalComma, 1)]
    [InlineData(typeof(Resistance), "4,7k", Messages.DecimalComma, 1)]
    [InlineData(typeof(Voltage), "40 uW", Messages.NotThisQuantity, 3)]
    [InlineData(typeof(Resistance), "10 nF", Messages.NotThisQuantity, 3)]
    [InlineData(typeof(Voltage), "25 C", Messages.NotThisQuantity, 3)]
    [InlineData(typeof(VoltageRms), "1.5 µV p-p", Messages.NotThisQuantity, 4)]
    [InlineData(typeof(VoltagePeakToPeak), "1.5 µV rms", Messages.NotThisQuantity, 4)]
    [InlineData(typeof(Temperature), "77 °F", Messages.NotThisQuantity, 3)]
    [InlineData(typeof(Resistance), "4k7k", Messages.NotThisQuantity, 1)]
    [InlineData(typeof(Frequency), "16 mhz", Messages.SeveralReadings, 3)]
    [InlineData(typeof(Capacitance), "10 MF", Messages.SeveralReadings, 3)]
    [InlineData(typeof(Voltage), "10 MV", Messages.SeveralReadings, 3)]
    [InlineData(typeof(Voltage), "1e400 V", Messages.OutOfRange, 0)]
    [InlineData(typeof(Voltage), "1e99999999999 V", Messages.OutOfRange, 0)]
    [InlineData(typeof(Voltage), "1e-400 V", Messages.OutOfRange, 0)]
    [InlineData(typeof(Voltage), "5", Messages.UnitMissing, 1)]
    [InlineData(typeof(Capacitance), "220", Messages.UnitMissing, 3)]
    [InlineData(typeof(Frequency), "500", Messages.UnitMissing, 3)]
    [InlineData(typeof(Temperature), "25", Messages.UnitMissing, 2)]
    [InlineData(typeof(Temperature), "0", Messages.UnitMissing, 1)]
    [InlineData(typeof(Decibels), "-110", Messages.UnitMissing, 4)]
    public void Parse_WhatDoesNotFit_IsAProblemWithItsPlace(Type type, string text, string code, int position)
    {
        QuantityKind kind = QuantityKind.Find(type)!;
        Assert.False(QuantityText.TryParse(kind, text, out IQuantity? value, out ParseProblem? problem));
        Assert.Null(value);
        Assert.Equal((code, position), (problem!.Code, problem.Position));
        Assert.NotEqual("", problem.Help);
        Assert.True(QuantityText.TryParse(kind, problem.Expected, out _, out _), $"the example {problem.Expected} is read");
    }

    [Theory]
    [InlineData(typeof(VoltageRms), "551e-9", 551e-9)]
    [InlineData(typeof(VoltageRms), "0.000000551", 551e-9)]
    [InlineData(typeof(Capacitance), "4.7E-9", 4.7e-9)]
    [InlineData(typeof(VoltageRms), "0.5", 0.5e-6)] // a number as people write it: the example's unit
    public void Parse_NumberWithoutUnit_SuggestsTheUnitThatItIsMeantIn(Type type, string text, double si)
    {
        QuantityKind kind = QuantityKind.Find(type)!;
        Assert.False(QuantityText.TryParse(kind, text, out _, out ParseProblem? problem));
        Assert.Equal(Messages.UnitMissing, problem!.Code);
        Assert.True(QuantityText.TryParse(kind, problem.Help.Split('`')[1], out IQuantity? suggested, out _), problem.Help);
        Assert.Equal(si, suggested!.SiValue, 1e-6 * si);
    }

    [Fact]
    public void Parse_MegaOrMilliHertz_ListsBothReadings()
    {
        Assert.False(QuantityText.TryParse("16 mhz", out Frequency _, out ParseProblem? problem));
        Assert.Contains("`16 mHz` or `16 MHz`", problem!.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_UnitOfAnotherQuantity_SaysWhose()
    {
        Assert.False(QuantityText.TryParse("10 nF", out Resistance _, out ParseProblem? problem));
        Assert.Equal("`10 nF` is not a resistance", problem!.Message);
        Assert.Equal("the unit `nF` belongs to a capacitance", problem.Note);
    }

    [Fact]
    public void Parse_DecimalComma_ShowsTheTextWithAPoint()
    {
        Assert.False(QuantityText.TryParse("  4,7 kΩ", out Resistance _, out ParseProblem? problem));
        Assert.Contains("`4.7 kΩ`", problem!.Help, StringComparison.Ordinal);
        Assert.Equal("\"  4^,7 kΩ\"", problem.Excerpt("  4,7 kΩ"));
    }

    [Fact]
    public void Problem_AsFinding_KeepsItsPartsAndPointsAtThePlace()
    {
        Assert.False(QuantityText.TryParse("40 uW", out Voltage _, out ParseProblem? problem));
        Finding finding = problem!.ToFinding("signal.largest", "40 uW");
        Assert.Equal(("FE0102", Severity.Error, "signal.largest", "`40 uW` is not a voltage"), (finding.Code, finding.Severity, finding.Field, finding.Message));
        Assert.Equal("\"40 ^uW\"", finding.Excerpt);
        Assert.Contains("`40 µV` or `40 uV`", finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Kinds_EveryOne_ReadsItsExampleAndPrintsIt()
    {
        foreach (QuantityKind kind in QuantityKind.All)
        {
            string example = kind.Example;
            Assert.True(QuantityText.TryParse(kind, example, out IQuantity? value, out ParseProblem? problem), $"{kind}: {problem?.Message}");
            Assert.True(QuantityText.TryParse(kind, QuantityText.FormatPart(value), out IQuantity? again, out _));
            Assert.Equal(value, again);
        }
    }
}
