using System.Text.Json;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>What <c>frontend filter</c> and the commands below it print for a person is in what they print for a program.</summary>
public sealed class FilterNumbersTests
{
    /// <summary>Words of the pages that hold a number which is no figure of the filter.</summary>
    private static readonly string[] Labels =
    [
        "-3 dB (half power)", "-3 dB width", "-3 dB  ", "1 % more of a part moves f0", "1 % more of one part", "rings to 1 % in", "to 1 %", "more than 1 dB down", "more than 3 dB down",
        "largest deviation from gain 1 up to", "loss against 0 Hz", "largest loss from 0 Hz to", "gain at 0 Hz", "land at 0 Hz", "where its gain is 1;", "Sallen-Key, gain 1:",
    ];

    /// <summary>Each way through the pages: every circuit, shape and family, a filter whose parts cannot be had, words that fail, limit cycles, a rising stop band, losses without bound.</summary>
    public static TheoryData<string> Calls =>
    [
        "--family butterworth --shape low-pass --order 4 --corner 40Hz",
        "--family butterworth --shape low-pass --order 4 --corner 40Hz --topology sallen-key-equal --op-amp micropower-cmos",
        "--family butterworth --shape low-pass --order 5 --corner 40Hz --topology multiple-feedback --op-amp micropower-cmos",
        "--family chebyshev --shape low-pass --order 8 --corner 40Hz --ripple 1dB --op-amp micropower-cmos",
        "--family bessel --shape low-pass --order 3 --corner 20kHz",
        "--family elliptic --shape low-pass --order 5 --corner 40Hz --ripple 0.5dB --attenuation 60dB",
        "--family butterworth --shape low-pass --corner 40Hz --stop-frequency 100Hz --attenuation 50dB",
        "--family butterworth --shape high-pass --order 2 --corner 0.5Hz",
        "--family chebyshev --shape band-pass --order 3 --corner 8Hz,13Hz --ripple 0.5dB",
        "--family critically-damped --shape low-pass --corner 10Hz --stop-frequency 50Hz --attenuation 40dB --rate 500Hz",
        "--family elliptic --shape low-pass --corner 40Hz --stop-frequency 50Hz --ripple 0.5dB --attenuation 60dB --rate 250Hz",
        "--family butterworth --shape high-pass --order 2 --corner 0.5Hz --rate 1kHz",
        "--family inverse-chebyshev --shape band-stop --order 2 --corner 45Hz,55Hz --attenuation 40dB --rate 250Hz",
        "notch",
        "notch --mains 60Hz --q 5 --op-amp micropower-cmos",
        "notch --q 0.2",
        "notch --topology state-variable --q 20",
        "notch --rate 250Hz",
        "notch --rate 1kHz --mains 60Hz --edge 200Hz --common-width",
        "fir --shape low-pass --pass 40Hz --stop 50Hz --ripple 0.1dB --attenuation 60dB --rate 250Hz",
        "fir --method kaiser --shape band-pass --pass 8Hz,13Hz --stop 6Hz,15Hz --ripple 1dB --attenuation 40dB --rate 250Hz",
        "fir --shape low-pass --pass 40Hz --stop 50Hz --rate 250Hz --taps 32",
        "comb --rate 250Hz",
        "comb --rate 480Hz --mains 60Hz --periods 4",
        "sinc --rate 250Hz",
        "sinc --rate 250Hz --edge 80Hz --order 5 --ratio 64 --taps 21",
    ];

    [Theory]
    [MemberData(nameof(Calls))]
    public void Page_AnyFilter_HasNoNumberThatTheJsonLacks(string call)
    {
        string[] words = ["filter", .. call.Split(' ')];
        Outcome page = Shell.Run(words), json = Shell.Run([.. words, "--json"]);
        Assert.Equal((0, 0), (page.Code, json.Code));
        EveryNumberInJson.Holds(page.Output, json.Output, Labels);
        using JsonDocument document = JsonDocument.Parse(json.Output);
        Assert.Equal(call[0] == '-' ? "filter" : $"filter {words[1]}", document.RootElement.GetProperty("command").GetString());
    }

    /// <summary>The keys that the order of 2026-11 asked for, where the page has what they stand for.</summary>
    [Theory]
    [InlineData("--family butterworth --shape low-pass --order 4 --corner 40Hz", "parts", "as_built", "noise", "tolerances")]
    [InlineData("notch", "parts", "as_built", "noise", "tolerances")]
    [InlineData("notch --topology state-variable", "parts", "as_built", "tolerances")]
    [InlineData("--family butterworth --shape low-pass --order 4 --corner 40Hz --rate 250Hz", "words", "growth")]
    [InlineData("notch --rate 250Hz", "words", "growth")]
    [InlineData("fir --shape low-pass --pass 40Hz --stop 50Hz --rate 250Hz --taps 32", "words")]
    [InlineData("sinc --rate 250Hz", "words")]
    public void Json_WhatThePageSays_HasItsKeys(string call, params string[] keys)
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run(["filter", .. call.Split(' '), "--json"]).Output);
        Assert.All(keys, key => Assert.Contains(json.RootElement.GetProperty(key).ValueKind, new[] { JsonValueKind.Object, JsonValueKind.Array }));
    }
}
