using System.Numerics;
using System.Text.Json;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend filter</c>: the JSON's conventions, the order that is chosen, and what is said where there is no filter.</summary>
public sealed class FilterCommandTests
{
    private static readonly string[] Families = ["butterworth", "chebyshev", "inverse-chebyshev", "elliptic", "bessel", "critically-damped"];

    public static TheoryData<string, string, string?> Combinations()
    {
        TheoryData<string, string, string?> all = [];
        foreach (string family in Families)
        {
            foreach (string shape in (string[])["low-pass", "high-pass", "band-pass", "band-stop"])
            {
                all.Add(family, shape, null);
                all.Add(family, shape, "250Hz");
            }
        }

        return all;
    }

    /// <summary>Both forms are one filter, with a0 = 1, first-order sections as stated, and as many poles as the order says.</summary>
    [Theory]
    [MemberData(nameof(Combinations))]
    public void Json_AnyFamilyAndShape_SectionsAndRootsAreOneFilter(string family, string shape, string? rate)
    {
        bool band = shape.StartsWith("band", StringComparison.Ordinal);
        string[] call = ["filter", "--family", family, "--shape", shape, "--order", "5", "--corner", band ? "8Hz,13Hz" : "8 Hz", "--json", .. rate is null ? Array.Empty<string>() : ["--rate", rate]];
        call = family is "chebyshev" or "elliptic" ? [.. call, "--ripple", "0.5dB"] : call;
        call = family is "inverse-chebyshev" or "elliptic" ? [.. call, "--attenuation", "60dB"] : call;
        Outcome outcome = Shell.Run(call);
        Assert.True(outcome.Code == 0, outcome.Messages);
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        JsonElement root = json.RootElement;
        Assert.Subset(root.EnumerateObject().Select(one => one.Name).ToHashSet(), new HashSet<string> { "sections", "zeros", "poles", "gain", "order", "rate" });
        Assert.Equal(5, root.GetProperty("order").GetInt32());
        Assert.Equal(band ? 10 : 5, root.GetProperty("poles").GetArrayLength());
        Assert.Equal(rate is null ? JsonValueKind.Null : JsonValueKind.Number, root.GetProperty("rate").ValueKind);
        foreach (double f in (double[])[0.3, 7.9, 10.5, 14, 60, 110])
        {
            Complex x = rate is null ? new Complex(0, 2 * Math.PI * f) : Complex.FromPolarCoordinates(1, 2 * Math.PI * f / 250);
            Complex fromRoots = Roots(root, x);
            Complex fromSections = Sections(root, x, rate is not null);
            Assert.True(Complex.Abs(fromRoots - fromSections) < 1e-9, $"{fromRoots} from roots, {fromSections} from sections at {f} Hz");
        }
    }

    private static Complex Roots(JsonElement root, Complex x)
    {
        // One zero by one pole: the product of ten analogue zeros alone is large.
        Complex value = root.GetProperty("gain").GetDouble();
        Complex[] zeros = [.. root.GetProperty("zeros").EnumerateArray().Select(z => new Complex(z[0].GetDouble(), z[1].GetDouble()))];
        Complex[] poles = [.. root.GetProperty("poles").EnumerateArray().Select(p => new Complex(p[0].GetDouble(), p[1].GetDouble()))];
        for (int i = 0; i < poles.Length; i++)
        {
            value *= (i < zeros.Length ? x - zeros[i] : 1) / (x - poles[i]);
        }

        return value;
    }

    private static Complex Sections(JsonElement root, Complex x, bool digital)
    {
        Complex value = 1;
        foreach (JsonElement section in root.GetProperty("sections").EnumerateArray())
        {
            double[] b = [.. section.GetProperty("b").EnumerateArray().Select(c => c.GetDouble())];
            double[] a = [.. section.GetProperty("a").EnumerateArray().Select(c => c.GetDouble())];
            if (digital)
            {
                Assert.Equal(1, a[0]);
                value *= (b[0] + (b[1] / x) + (b[2] / x / x)) / (a[0] + (a[1] / x) + (a[2] / x / x));
            }
            else
            {
                Assert.True(a[0] == 1 || (a[0] == 0 && b[0] == 0 && a[1] == 1));
                value *= ((b[0] * x * x) + (b[1] * x) + b[2]) / ((a[0] * x * x) + (a[1] * x) + a[2]);
            }
        }

        return value;
    }

    /// <summary>Textbook orders. Butterworth: ln(√(10⁶ − 1)/√(10^0.1 − 1))/ln 2 = 10.94 for 1 dB, 60 dB, an octave (from memory, worked by hand).</summary>
    [Theory]
    [InlineData("butterworth", 11)]
    [InlineData("chebyshev", 7)]
    [InlineData("inverse-chebyshev", 7)]
    [InlineData("elliptic", 5)]
    public void Order_OctaveWithOneAndSixtyDecibels_IsTheTextbooks(string family, int order)
    {
        Outcome outcome = Shell.Run("filter", "--family", family, "--shape", "low-pass", "--corner", "1kHz", "--stop-frequency", "2kHz", "--ripple", "1dB", "--attenuation", "60dB", "--json");
        Assert.True(outcome.Code == 0, outcome.Messages);
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        Assert.Equal(order, json.RootElement.GetProperty("order").GetInt32());
        Assert.True(Decibels(json.RootElement, 1000) >= -1 - 1e-9, "too much is lost at the pass edge");
        Assert.True(Decibels(json.RootElement, 2000) <= -60 + 1e-9, "too little is lost at the stop edge");
    }

    private static double Decibels(JsonElement root, double hertz) => 20 * Math.Log10(Complex.Abs(Roots(root, new Complex(0, 2 * Math.PI * hertz))));

    [Fact]
    public void Corner_BesselDelayNormalisation_HasThatGroupDelay()
    {
        Outcome outcome = Shell.Run("filter", "--family", "bessel", "--shape", "low-pass", "--corner", "10Hz", "--order", "4", "--normalisation", "delay", "--json");
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        double step = 1e-3;
        double delay = -Roots(json.RootElement, new Complex(0, step)).Phase / step;
        Assert.Equal(1 / (2 * Math.PI * 10), delay, 1e-9);
    }

    [Theory]
    [InlineData("FE0008", "--family", "eliptic", "--shape", "low-pass", "--order", "4", "--corner", "10Hz")]
    [InlineData("FE0102", "--family", "bessel", "--shape", "low-pass", "--order", "4", "--corner", "10 V")]
    [InlineData("FE0610", "--family", "bessel", "--shape", "band-pass", "--order", "4", "--corner", "10Hz")]
    [InlineData("FE0610", "--family", "bessel", "--shape", "low-pass", "--order", "4", "--corner", "8Hz,10Hz")]
    [InlineData("FE0611", "--family", "bessel", "--shape", "low-pass", "--corner", "10Hz")]
    [InlineData("FE0612", "--family", "bessel", "--shape", "low-pass", "--corner", "10Hz", "--order", "3", "--stop-frequency", "30Hz", "--attenuation", "20dB")]
    [InlineData("FE0613", "--family", "bessel", "--shape", "low-pass", "--corner", "10Hz", "--order", "3", "--rate", "0Hz")]
    [InlineData("FE0614", "--family", "chebyshev", "--shape", "low-pass", "--corner", "10Hz", "--order", "3")]
    [InlineData("FE0616", "--family", "butterworth", "--shape", "low-pass", "--corner", "10Hz", "--order", "3", "--normalisation", "delay")]
    [InlineData("FE0601", "--family", "butterworth", "--shape", "low-pass", "--corner", "10Hz", "--order", "21")]
    [InlineData("FE0601", "--family", "butterworth", "--shape", "low-pass", "--corner", "10Hz", "--order", "0")]
    [InlineData("FE0601", "--family", "butterworth", "--shape", "band-stop", "--corner", "10Hz,20Hz", "--order", "11")]
    [InlineData("FE0603", "--family", "butterworth", "--shape", "low-pass", "--corner", "125Hz", "--order", "2", "--rate", "250Hz")]
    [InlineData("FE0604", "--family", "butterworth", "--shape", "band-pass", "--corner", "13Hz,8Hz", "--order", "2")]
    [InlineData("FE0607", "--family", "elliptic", "--shape", "low-pass", "--corner", "10Hz", "--order", "3", "--ripple", "3dB", "--attenuation", "2dB")]
    [InlineData("FE0608", "--family", "butterworth", "--shape", "low-pass", "--corner", "10Hz", "--stop-frequency", "5Hz", "--attenuation", "40dB")]
    [InlineData("FE0609", "--family", "butterworth", "--shape", "low-pass", "--corner", "10Hz", "--stop-frequency", "11Hz", "--attenuation", "60dB")]
    public void Call_WhatCannotBe_IsFindingAndTwo(string code, params string[] call)
    {
        Outcome outcome = Shell.Run(["filter", .. call]);
        Assert.Equal(2, outcome.Code);
        Assert.Equal("", outcome.Output);
        Assert.Contains($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Page_AnalogueLowPass_NamesOrderNormalisationPartsAndNoise()
    {
        Outcome outcome = Shell.Run("filter", "--family", "butterworth", "--shape", "low-pass", "--corner", "40Hz", "--stop-frequency", "210Hz", "--attenuation", "55dB");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("order 4", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("-3 dB (half power)", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("anti-alias 2, Sallen-Key, gain 1: R1 ", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("own noise", outcome.Output, StringComparison.Ordinal);
        Assert.All(outcome.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    /// <summary>A high-pass of 0.5 Hz at 1 kHz in 14 fraction bits has a pole on the unit circle: a1 = −32695/16384 and a2 = 16311/16384, so that 1 + a1 + a2 = 0 (worked by hand).</summary>
    [Fact]
    public void Page_LowHighPassInSixteenBits_SaysThatAPoleIsOnTheCircleAndWhatToDo()
    {
        Outcome outcome = Shell.Run("filter", "--family", "butterworth", "--shape", "high-pass", "--corner", "0.5Hz", "--order", "2", "--rate", "1kHz");
        Assert.Contains("ON the circle", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("q15: use longer coefficient words", outcome.Output, StringComparison.Ordinal);
    }

    private static readonly string[] LowPass = ["filter", "--family", "butterworth", "--shape", "low-pass", "--order", "4", "--corner", "40Hz"];

    /// <summary>What the default op-amp does not say is "not given", never 0; a card's figures are used: (2 mV + 10 pA·(R1 + R2)) a section, two of them.</summary>
    [Fact]
    public void Parts_DcErrorAndStopBand_AreNotGivenOrTheCards()
    {
        string plain = Shell.Run(LowPass).Output;
        Assert.Matches("own dc error, worst signs +not given", plain);
        Assert.Matches("output resistance, for the stop band +not given", plain);
        Assert.DoesNotContain("0 V", plain, StringComparison.Ordinal);
        string card = Shell.Run([.. LowPass, "--op-amp", "micropower-cmos"]).Output;
        Assert.Matches("own dc error, worst signs +4.00 mV", card);
        Assert.Contains("stop band rises again at", card, StringComparison.Ordinal);
        Assert.Contains("by formula", card, StringComparison.Ordinal);
        Assert.DoesNotContain("not given", card, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sallen-key", "Sallen-Key, gain 1: R1")]
    [InlineData("sallen-key-equal", "equal-component Sallen-Key, gain 2.2")]
    [InlineData("multiple-feedback", "multiple feedback: R1")]
    public void Topology_OfALowPass_IsBuilt(string topology, string words)
    {
        Outcome outcome = Shell.Run([.. LowPass, "--topology", topology]);
        Assert.Equal(0, outcome.Code);
        Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("twin-t", "twin-T, amplifier of gain 1.9")]
    [InlineData("state-variable", "4 op-amps")]
    public void Notch_CentreAndQ_PartsDepthToleranceAndSensitivity(string topology, string words)
    {
        Outcome outcome = Shell.Run("filter", "notch", "--mains", "50Hz", "--q", "10", "--topology", topology);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("a notch at 50 Hz, Q 10", outcome.Output, StringComparison.Ordinal);
        Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
        Assert.Matches(@"±1 % .*\n +±0.1 % ", outcome.Output);
        Assert.Contains("1 % more of one part", outcome.Output, StringComparison.Ordinal);
    }

    /// <summary>A digital notch by --q is the notch of the design's digital filters, zero exactly at its centre: Eqs. 8.2.22 and 8.2.23 worked out here again.</summary>
    [Fact]
    public void Notch_Digital_IsTheNotchOfCentreAndWidth()
    {
        Outcome outcome = Shell.Run("filter", "notch", "--mains", "60Hz", "--q", "8", "--rate", "250Hz", "--json");
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        double[] b = [.. json.RootElement.GetProperty("sections")[0].GetProperty("b").EnumerateArray().Select(one => one.GetDouble())];
        double gain = 1 / (1 + Math.Tan(Math.PI * 60 / 8 / 250)), cosine = Math.Cos(2 * Math.PI * 60 / 250);
        Assert.Equal(gain, b[0], 1e-12);
        Assert.Equal(-2 * gain * cosine, b[1], 1e-12);
    }

    [Theory]
    [InlineData("FE0648", "notch", "--q", "0")]
    [InlineData("FE0602", "notch", "--mains", "0Hz")]
    [InlineData("`--edge`", "notch", "--edge", "100Hz")]
    [InlineData("`--topology`", "notch", "--rate", "250Hz", "--topology", "twin-t")]
    [InlineData("`--op-amp`", "notch", "--rate", "250Hz", "--op-amp", "micropower-cmos")]
    [InlineData("an analogue filter has parts", "notch", "-o", "notch.h")]
    [InlineData("--family", "--shape", "low-pass", "--order", "2", "--corner", "50Hz")]
    [InlineData("`--topology`", "notch", "--topology", "sallen-key")]
    [InlineData("part card", "notch", "--op-amp", "micropower")]
    [InlineData("--op-amp", "notch", "--op-amp", "a\\\"\n[[x")]
    public void Notch_CallThatCannotBe_IsSaid(string words, params string[] call)
    {
        Outcome outcome = Shell.Run(["filter", .. call]);
        Assert.Equal(2, outcome.Code);
        Assert.Contains(words, outcome.Messages, StringComparison.Ordinal);
        Assert.Equal("", outcome.Output);
    }
}
