using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The helper finds what is there and misses what is not: an instrument that is never wrong in the comfortable direction.</summary>
public sealed class EveryNumberInJsonTests
{
    [Theory]
    [InlineData("noise 4.70 µV rms", """{ "noise": 4.7049e-6 }""")]
    [InlineData("R1 4.7 kΩ, C1 220 nF", """{ "r": [4700, 2.2e-7] }""")]
    [InlineData("offset 25.0 °C, ±1 %, -3.01 dB, 50.1 nV/√Hz", """{ "t": 298.15, "p": 0.01, "d": -3.0103, "n": 5.006e-8 }""")]
    [InlineData("moves by +0.50 %; 12.5 %", """{ "share": 0.5, "other": 0.125 }""")]
    [InlineData("poles move 1.3e-5", """{ "m": 1.349e-5 }""")]
    [InlineData("lives 2.00 h on 200 mAh, 6.50 cm²", """{ "t": 7200, "q": 720, "a": 6.5e-4 }""")]
    [InlineData("no. 1, 2, 3 of 4 and 45.0°", """{ "of": 4, "list": [1, 2, 3], "angle": 44.96 }""")]
    [InlineData("the names C1, q31, E96, FE0301 and notch-2 are none", "{ }")]
    [InlineData("none: no parts within\n  the limits make 12 Hz", """{ "message": "no parts within the limits make 12 Hz" }""")]
    public void Missing_NumbersThatAreThere_AreFound(string text, string json) => Assert.Empty(EveryNumberInJson.Missing(text, json));

    [Theory]
    [InlineData("noise 4.70 µV rms", """{ "noise": 4.706e-6 }""")]
    [InlineData("noise 4.70 µV rms", """{ "noise": 4.7e-9, "text": "4.70 µV" }""")]
    [InlineData("50 Hz", """{ "f": 50.4 }""")]
    [InlineData("-3.01 dB", """{ "d": 3.01 }""")]
    [InlineData("R 10 kΩ", """{ "r": 10 }""")]
    [InlineData("gain 1.90", """{ }""")]
    public void Missing_NumberThatIsNotThere_IsTold(string text, string json) => Assert.Single(EveryNumberInJson.Missing(text, json));

    [Fact]
    public void Missing_LabelsOfThePage_AreNoNumbers() => Assert.Empty(EveryNumberInJson.Missing("-3 dB (half  power)  12.0 Hz", """{ "f": 12.04 }""", "-3 dB (half power)"));
}
