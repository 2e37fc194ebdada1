using FrontEnd.Quantities;
using FrontEnd.Teaching.Problems;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Teaching;

/// <summary>Answers as people write them.</summary>
public class AnswerReaderTests
{
    [Theory]
    [InlineData("27 nanovolts")]
    [InlineData("27 Nanovolts")]
    [InlineData("27 NANOVOLTS RMS")]
    [InlineData("27 nano-volts")]
    [InlineData("27 nano volt")]
    [InlineData("27 nanoV")]
    [InlineData("2.7×10^-8 V")]
    [InlineData("2.7x10^-8 V")]
    [InlineData("2.7*10^-8 V")]
    [InlineData("2.7 * 10**-8 V")]
    [InlineData("2.7·10⁻⁸ V")]
    [InlineData("2,7·10⁻⁸ V")]
    [InlineData("2,700·10⁻⁸ V")]
    [InlineData("2.7 × 10−8 V")]
    [InlineData("2.7 10^-8 V")]
    [InlineData("2.7·10^(-8) V")]
    [InlineData("$2.7 \\cdot 10^{-8}\\,\\mathrm{V}$")]
    [InlineData("2.7E-8 V")]
    [InlineData("2.7E-08V")]
    [InlineData("2.7 e -8 V")]
    [InlineData("27E-3 µV")]
    [InlineData("V = 27 nV")]
    [InlineData("V_n=27nV")]
    [InlineData("σ ≈ 27 nV")]
    [InlineData("V = √(4kTRB) = 27 nV")]
    [InlineData("27 nV = 0.027 µV")]
    [InlineData("27 nV = 2.7E-8")]
    [InlineData("answer: 27 nV")]
    [InlineData("The noise is 27 nV.")]
    [InlineData("approx. 27 nV")]
    [InlineData("~27 nV")]
    [InlineData("≈27 nV")]
    [InlineData("ca 27 nV")]
    [InlineData("27 nV.")]
    [InlineData("27 nV !")]
    [InlineData("27. nV")]
    [InlineData("27 nV (rms)")]
    [InlineData("27 nV, rms")]
    [InlineData("27 nV rms noise")]
    [InlineData("27 nV at the input")]
    [InlineData("27 nV (thermal)")]
    [InlineData("(27 nV)")]
    [InlineData("[27 nV]")]
    [InlineData("27 [nV]")]
    [InlineData("\"27 nV\"")]
    [InlineData("“27 nV”")]
    [InlineData("'27 nV")]
    [InlineData("27\u202FnV")]
    [InlineData("27\u00A0nV")]
    [InlineData("27\u2009nV")]
    [InlineData("\u200B27 nV\uFEFF")]
    [InlineData("２７ nV")]
    [InlineData("+27 nV")]
    [InlineData("27 nV?")]
    [InlineData("27 ± 1 nV")]
    [InlineData("(27 ± 1) nV")]
    [InlineData("27 nV ± 5 %")]
    [InlineData("0.000 027 mV")]
    [InlineData("27 000 pV")]
    [InlineData("27'000 pV")]
    [InlineData("27 nV (2.7e-8 V)")]
    [InlineData("27 nV_rms")]
    [InlineData("27-nV")]
    [InlineData("27nVrms")]
    public void Voltage_InAnySpelling_IsRead(string text) => IsRead<VoltageRms>(27e-9, text);

    [Theory]
    [InlineData("110 kΩ (E24)")]
    [InlineData("110 kΩ E24")]
    [InlineData("110 \u043AΩ")]
    [InlineData("110 000 Ω")]
    [InlineData("110\u2009000 Ω")]
    [InlineData("110\u202F000\u00A0ohm")]
    [InlineData("110'000 Ohm")]
    [InlineData("110’000 Ω")]
    [InlineData("110000")]
    [InlineData("110k")]
    [InlineData("0.11 megohm")]
    [InlineData("110 kilohms")]
    [InlineData("110 kiloohms")]
    [InlineData("110 kohm")]
    [InlineData("110 KΩ")]
    [InlineData("110 k?")]
    [InlineData("110 kO")]
    [InlineData("R = 110 k\u2126")]
    [InlineData("1.1·10⁵ Ω")]
    [InlineData("M11")]
    [InlineData("110 kΩ, 1 of the E24 series")]
    public void Resistance_InAnySpelling_IsReadOrSaidToBeUnread(string text)
    {
        if (text.Contains(", 1 of", StringComparison.Ordinal))
        {
            Assert.Equal(AnswerState.Failed, AnswerReader.Quantity(QuantityKind.Of<Resistance>(), text).State);
            return;
        }

        IsRead<Resistance>(110e3, text);
    }

    [Theory]
    [InlineData("236 kb/s")]
    [InlineData("236 kbit/s")]
    [InlineData("236 kbps")]
    [InlineData("29.5 kB/s")]
    [InlineData("29.5 kbyte/s")]
    [InlineData("29.5 kilobytes per second")]
    [InlineData("236 kilobits per second")]
    [InlineData("236 kilobits/second")]
    [InlineData("236 000 bits/s")]
    [InlineData("0.236 Mbit/s")]
    [InlineData("29500 B/s")]
    public void DataRate_InBitsOrBytes_IsTheSame(string text) => IsRead<DataRate>(236e3, text);

    [Theory]
    [InlineData("74 sweeps", 74)]
    [InlineData("N = 74", 74)]
    [InlineData("74 Sweeps.", 74)]
    [InlineData("at 74", 74)]
    [InlineData("1 600 sweeps", 1600)]
    [InlineData("6th", 6)]
    [InlineData("6th order", 6)]
    [InlineData("6th-order", 6)]
    [InlineData("order 6", 6)]
    [InlineData("n=6", 6)]
    [InlineData("six", 6)]
    [InlineData("sixth order", 6)]
    [InlineData("3rd", 3)]
    [InlineData("12", 12)]
    [InlineData("12 ×", 12)]
    [InlineData("12x", 12)]
    [InlineData("× 12", 12)]
    [InlineData("12 times", 12)]
    [InlineData("12-fold", 12)]
    [InlineData("6-pole", 6)]
    [InlineData("12 V/V", 12)]
    [InlineData("50 %", 0.5)]
    [InlineData("1.2e2", 120)]
    public void Number_WithWhatIsCounted_IsRead(string text, double value) => IsRead<Ratio>(value, text);

    [Theory]
    [InlineData("86.1 decibels")]
    [InlineData("86.1 Decibel")]
    [InlineData("86.1 db")]
    [InlineData("86.1")]
    [InlineData("86,1 dB")]
    [InlineData("A = 86.1 dB of attenuation")]
    public void Decibels_InAnySpelling_AreRead(string text) => IsRead<Decibels>(86.1, text);

    [Fact]
    public void OtherKinds_InFull_AreRead()
    {
        IsRead<VoltageNoiseDensity>(8e-9, "8 nV per root hertz");
        IsRead<VoltageNoiseDensity>(8e-9, "8 nanovolts/√Hz");
        IsRead<VoltageNoiseDensity>(8e-9, "8 nV/sqrt(Hz)");
        IsRead<VoltageNoiseDensity>(8e-9, "8 nV/?Hz");
        IsRead<VoltagePeakToPeak>(27e-9, "27 nV peak to peak");
        IsRead<VoltagePeakToPeak>(27e-9, "27 nV (p-p)");
        IsRead<BitCount>(17.5, "17.5 noise-free bits");
        IsRead<Angle>(45, "45 degrees lag");
        IsRead<Decibels>(-34, "minus 34 dB");
        IsRead<Decibels>(-34, "– 34 dB");
        IsRead<Frequency>(0.5, "0,5 hertz");
        IsRead<Current>(5e-6, "5 microamperes");
        IsRead<Voltage>(12.5e-6, "12.5 ÂµV");   // µ in UTF-8, opened as Windows-1252 and saved
        Assert.Equal(AnswerState.OtherKind, AnswerReader.Quantity(QuantityKind.Of<VoltageRms>(), "27 nV p-p noise").State);
        Assert.Equal((AnswerState.Bare, 2.7e-8), (AnswerReader.Quantity(QuantityKind.Of<VoltageRms>(), "2.7E-8").State, AnswerReader.Quantity(QuantityKind.Of<VoltageRms>(), "2.7×10⁻⁸").Value));
    }

    /// <summary>Two values, a range, a doubt about thousands, another unit, another quantity: none of them is an answer.</summary>
    [Theory]
    [InlineData("27 nV or 28 nV")]
    [InlineData("27 nV, 28 nV")]
    [InlineData("27 nV = 35 nV")]
    [InlineData("27-28 nV")]
    [InlineData("27 to 28 nV")]
    [InlineData("not 27 nV")]
    [InlineData("less than 27 nV")]
    [InlineData("< 27 nV")]
    [InlineData("27,000 pV")]
    [InlineData("1.2.3 nV")]
    [InlineData("27 NV")]
    [InlineData("27 nV per root hertz")]
    [InlineData("27 nV/√Hz")]
    [InlineData("27 nV squared")]
    [InlineData("27 nV peak")]
    [InlineData("27 nA")]
    [InlineData("27 bananas")]
    [InlineData("27 nV million")]
    [InlineData("q1")]
    [InlineData("see back")]
    [InlineData("=")]
    [InlineData("2.7e999 V")]
    public void Voltage_ThatIsNoneOrMoreThanOne_IsNotRead(string text)
    {
        AnswerReading read = AnswerReader.Quantity(QuantityKind.Of<VoltageRms>(), text);
        Assert.True(read.State is AnswerState.Failed or AnswerState.Bare && read.Problem.Length > 0 || text == "27 bananas", $"{text}: {read}");
        Assert.NotEqual(AnswerState.Read, read.State);
    }

    [Theory]
    [InlineData("74 V")]
    [InlineData("74 bits")]
    [InlineData("74 dB")]
    [InlineData("5 or 6")]
    [InlineData("74 million")]
    [InlineData("74 to 80 sweeps")]
    public void Number_WithAnotherUnit_IsNotRead(string text) =>
        Assert.Equal(AnswerState.Failed, AnswerReader.Quantity(QuantityKind.Of<Ratio>(), text).State);

    private static readonly string[] Options =
    [
        "an amplifier with half the voltage noise", "electrodes of half the impedance", "a converter with twice the rate", "A bigger shield",
    ];

    [Theory]
    [InlineData("B", 1)]
    [InlineData("b", 1)]
    [InlineData("(b)", 1)]
    [InlineData("\u0412", 1)]
    [InlineData("B.", 1)]
    [InlineData("[B]", 1)]
    [InlineData("B)", 1)]
    [InlineData("answer B", 1)]
    [InlineData("Answer: B", 1)]
    [InlineData("Option (B)", 1)]
    [InlineData("It is B", 1)]
    [InlineData("B: electrodes of half the impedance", 1)]
    [InlineData("B) Electrodes of half  the impedance.", 1)]
    [InlineData("B - electrodes of half the impedance", 1)]
    [InlineData("B electrodes of half the impedance", 1)]
    [InlineData("b, because they make most of the noise", 1)]
    [InlineData("B (not C)", 1)]
    [InlineData("electrodes of half the impedance", 1)]
    [InlineData("“Electrodes of half the impedance”", 1)]
    [InlineData("electrodes of half", 1)]
    [InlineData("I choose electrodes of half the impedance", 1)]
    [InlineData("a bigger shield", 3)]
    [InlineData("A converter with twice the rate", 2)]
    [InlineData("A: an amplifier with half the voltage noise", 0)]
    [InlineData("A", 0)]
    public void Choice_ByLetterTextOrBoth_IsRead(string text, int choice) =>
        Assert.Equal(new AnswerReading(AnswerState.Read, choice, ""), AnswerReader.Choice(Options, text));

    [Theory]
    [InlineData("E")]
    [InlineData("B or C")]
    [InlineData("B, C")]
    [InlineData("A/B")]
    [InlineData("A and D")]
    [InlineData("B: a converter with twice the rate")]
    [InlineData("not electrodes of half the impedance")]
    [InlineData("not B")]
    [InlineData("no idea")]
    [InlineData("2")]
    [InlineData("")]
    public void Choice_ThatIsNoneOrMoreThanOne_IsNotRead(string text) =>
        Assert.Equal(AnswerState.Failed, AnswerReader.Choice(Options, text).State);

    private static void IsRead<T>(double value, string text)
        where T : struct, IQuantity
    {
        AnswerReading read = AnswerReader.Quantity(QuantityKind.Of<T>(), text);
        Assert.True(read.State == AnswerState.Read, $"`{text}`: {read}");
        Assert.True(Math.Abs(read.Value - value) <= 1e-12 * Math.Abs(value), $"`{text}` is read as {read.Value:r}");
    }

    [Theory]
    [InlineData("0,027 Mikrovolt")]
    [InlineData("27 Nanovolt effektiv")]
    [InlineData("27 nVeff")]
    [InlineData("27 nV_eff")]
    [InlineData("27 nanovolts efficaces")]
    [InlineData("0.027 Mikro-Volt")]
    [InlineData("2,7 mal 10 hoch -8 V")]
    [InlineData("2,7 mal 10 hoch minus 8 Volt")]
    [InlineData("2,7 fois 10 puissance -8 V")]
    [InlineData("2.7 times 10 to the -8 V")]
    [InlineData("2.7 times 10 to the power of minus 8 V")]
    [InlineData("environ 27 nV")]
    [InlineData("ungefähr 27 nV")]
    public void Voltage_InGermanAndFrenchWords_IsRead(string text) => IsRead<VoltageRms>(27e-9, text);

    [Theory]
    [InlineData("27 nV/Wurzel Hz")]
    [InlineData("27 nV/Wurzel(Hz)")]
    [InlineData("27 Nanovolt pro Wurzel Hertz")]
    [InlineData("27 nV pro Wurzel aus Hz")]
    [InlineData("27 nV par racine de hertz")]
    [InlineData("27 nV par racine carrée de hertz")]
    [InlineData("27 nV/root(Hz)")]
    [InlineData("27 nV / Hz^1/2")]
    [InlineData("27 nV/Hz^(1/2)")]
    [InlineData("27 nV/Hz^0,5")]
    [InlineData("27 nV Hz^-1/2")]
    [InlineData("27 nV·Hz^(-1/2)")]
    public void Density_HoweverItsRootIsWritten_IsRead(string text) => IsRead<VoltageNoiseDensity>(27e-9, text);

    [Theory]
    [InlineData("464 Millisekunden")]
    [InlineData("464 millisecondes")]
    [InlineData("0,464 Sekunden")]
    [InlineData("0.464 seconde")]
    public void Duration_InGermanAndFrenchWords_IsRead(string text) => IsRead<Duration>(0.464, text);

    [Theory]
    [InlineData("64,5 Dezibel")]
    [InlineData("64,5 décibels")]
    [InlineData("64.5 dBs")]
    public void Decibels_InGermanAndFrenchWords_AreRead(string text) => IsRead<Decibels>(64.5, text);

    [Theory]
    [InlineData("moins 64,5 dB")]
    [InlineData("minus 64,5 Dezibel")]
    public void Decibels_WithTheirSignInWords_KeepIt(string text) => IsRead<Decibels>(-64.5, text);

    [Theory]
    [InlineData("13 mal")]
    [InlineData("x13")]
    [InlineData("13:1")]
    [InlineData("13 : 1")]
    [InlineData("13-fach")]
    public void Ratio_AsAFactor_IsRead(string text) => IsRead<Ratio>(13, text);

    [Theory]
    [InlineData("170-180 nV")]
    [InlineData("170 to 180 nV")]
    [InlineData("170 bis 180 nV")]
    [InlineData("170...180 nV")]
    [InlineData("174 nV, 348 nV")]
    [InlineData("174 nV oder 348 nV")]
    public void Values_MoreThanOne_AreToldAsThat(string text) =>
        Assert.Equal("more than one value stands on the line", AnswerReader.Quantity(QuantityKind.Of<VoltageRms>(), text).Problem);

    [Theory]
    [InlineData("A+B")]
    [InlineData("A|B")]
    [InlineData("A, but maybe B")]
    [InlineData("A, vielleicht C")]
    [InlineData("A und C")]
    [InlineData("A oder B")]
    [InlineData("a et b")]
    public void Choices_MoreThanOne_AreNone(string text)
    {
        string[] options = ["half the gain", "twice the supply", "a smaller electrode"];
        Assert.Equal("more than one choice stands on the line", AnswerReader.Choice(options, text).Problem);
    }

    [Theory]
    [InlineData("Antwort A")]
    [InlineData("Lösung: a")]
    [InlineData("réponse A")]
    [InlineData("A, not B")]
    [InlineData("A because B only lowers noise")]
    [InlineData("A (a smaller one)")]
    public void Choice_WithAWordAboutIt_IsRead(string text)
    {
        string[] options = ["half the gain", "twice the supply", "a third"];
        AnswerReading read = AnswerReader.Choice(options, text);
        Assert.Equal((AnswerState.Read, 0.0), (read.State, read.Value));
    }
}
