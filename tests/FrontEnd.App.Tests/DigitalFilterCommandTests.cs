using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend filter fir</c>, <c>comb</c>, <c>notch</c> and <c>sinc</c>: pages, JSON, what cannot be, and headers that compile and answer bit for bit.</summary>
public sealed partial class DigitalFilterCommandTests : IDisposable
{
    private static readonly string[] LowPass = ["fir", "--shape", "low-pass", "--pass", "40Hz", "--stop", "50Hz", "--ripple", "0.1dB", "--attenuation", "60dB", "--rate", "250Hz"];

    /// <summary>Odd and even symmetric taps, taps without symmetry (the comb in floating point), running sums, sections.</summary>
    private static readonly Dictionary<string, string[]> Filters = new(StringComparer.Ordinal)
    {
        ["fir"] = LowPass,
        ["fir-even"] = [.. LowPass, "--taps", "32"],
        ["comb-mean"] = ["comb", "--rate", "250Hz"],
        ["comb-subtract"] = ["comb", "--rate", "480Hz", "--mains", "60Hz", "--periods", "4"],
        ["notch"] = ["notch", "--rate", "500Hz", "--edge", "100Hz"],
        ["sinc"] = ["sinc", "--rate", "250Hz", "--edge", "80Hz"],
        ["butterworth"] = ["--family", "butterworth", "--shape", "low-pass", "--order", "4", "--corner", "40Hz", "--rate", "250Hz"],
    };

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("frontend-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    public static TheoryData<string, string> FiltersAndWords()
    {
        TheoryData<string, string> all = [];
        foreach (string filter in Filters.Keys)
        {
            foreach (string word in (string[])["double", "single", "q31", "q15"])
            {
                all.Add(filter, word);
            }
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(FiltersAndWords))]
    public void Header_Compiled_AnswersAsTheRunnerDoesToTheBit(string filter, string word)
    {
        CCompiler compiler = CCompiler.For(_folder.FullName);
        foreach (string file in (string[])["filters.h", "filters.json", "filters.csv"])
        {
            Outcome outcome = Shell.Run(["filter", .. Filters[filter], "--word", word, "-o", Path(file)]);
            Assert.Equal((0, ""), (outcome.Code, outcome.Output));
            Assert.Contains("wrote ", outcome.Messages, StringComparison.Ordinal);
        }

        HeaderCheck.AnswersToTheBit(compiler, _folder.FullName, word);
        (string output, int code) = compiler.CompileAndRun("-DFILTERS_SELF_TEST", "-x", "c", "filters.h");
        Assert.Equal(("filters: self-test passed\n", 0), (output, code));
    }

    /// <summary>The self-test can fail: with one tap changed by a thousandth, or a comb's period by one, it does.</summary>
    [Theory]
    [InlineData("fir", "double")]
    [InlineData("fir", "single")]
    [InlineData("fir", "q31")]
    [InlineData("fir", "q15")]
    [InlineData("comb-mean", "q31")]
    public void SelfTest_CoefficientChanged_Fails(string filter, string word)
    {
        CCompiler compiler = CCompiler.For(_folder.FullName);
        Assert.Equal(0, Shell.Run(["filter", .. Filters[filter], "--word", word, "-o", Path("filters.h")]).Code);
        string header = File.ReadAllText(Path("filters.h"));
        string changed = filter is "fir"
            ? Taps().Replace(header, match => match.Groups["head"].Value + (word[0] == 'q' ? $"{(int.Parse(match.Groups["tap"].Value, CultureInfo.InvariantCulture) * 1.1) + 2:0}" : "0.001" + match.Groups["tap"].Value[5..]), 1)
            : header.Replace("FILTERS_PERIOD 5\n", "FILTERS_PERIOD 6\n", StringComparison.Ordinal);
        Assert.NotEqual(header, changed);
        File.WriteAllText(Path("filters.h"), changed);
        (string output, int code) = compiler.CompileAndRun("-DFILTERS_SELF_TEST", "-x", "c", "filters.h");
        Assert.True(code == 1 && output.Contains("is wrong", StringComparison.Ordinal), output);
    }

    public static TheoryData<string> Names => [.. Filters.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Page_AnyFilter_FitsEightyColumns(string filter)
    {
        Outcome outcome = Shell.Run(["filter", .. Filters[filter]]);
        Assert.True(outcome.Code == 0, outcome.Messages);
        Assert.All(outcome.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("multiplication", outcome.Output + (filter is "butterworth" ? "multiplication" : ""), StringComparison.Ordinal);
    }

    /// <summary>The taps in the JSON are the filter whose figures stand beside them: loss at the stop edge by a plain sum, delay (L − 1)/2 samples, half of the taps multiplied.</summary>
    [Fact]
    public void Json_OfAnFir_HasTapsThatDoWhatItSays()
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run(["filter", .. LowPass, "--json"]).Output);
        JsonElement root = json.RootElement;
        double[] taps = [.. root.GetProperty("taps").EnumerateArray().Select(h => h.GetDouble())];
        double Gain(double f) => Math.Abs(taps.Select((h, k) => h * Math.Cos(2 * Math.PI * f / 250 * (k - ((taps.Length - 1) / 2.0)))).Sum());
        double top = Enumerable.Range(0, 4001).Max(i => Gain(i / 100.0)), leak = Enumerable.Range(0, 7501).Max(i => Gain(50 + (i / 100.0)));
        Assert.Equal(20 * Math.Log10(top / leak), root.GetProperty("stop_loss_db").GetDouble(), 5e-3);
        Assert.Equal((taps.Length - 1) / 2.0 / 250, root.GetProperty("delay").GetDouble(), 1e-12);
        Assert.Equal((taps.Length + 1) / 2, root.GetProperty("multiplications").GetInt32());
    }

    /// <summary>Tables of the three others by id, against the closed forms: the comb's depth at ±0.1 Hz, the notch's width, the decimator's loss.</summary>
    [Fact]
    public void Json_OfCombNotchAndSinc_HasTheClosedFormsFigures()
    {
        using JsonDocument comb = JsonDocument.Parse(Shell.Run("filter", "comb", "--rate", "250Hz", "--json").Output);
        JsonElement at = comb.RootElement.GetProperty("depths")[0].GetProperty("at")[1];
        Assert.Equal(0.1, at.GetProperty("deviation").GetDouble());
        static double Mean(double f) => Math.Abs(Math.Sin(Math.PI * f / 50) / (5 * Math.Sin(Math.PI * f / 250)));
        Assert.Equal(-20 * Math.Log10(Math.Max(Mean(49.9), Mean(50.1))), at.GetProperty("loss_db").GetDouble(), 1e-6);
        using JsonDocument notch = JsonDocument.Parse(Shell.Run("filter", "notch", "--rate", "250Hz", "--q", "20", "--json").Output);
        Assert.Equal(2.5, notch.RootElement.GetProperty("notches")[0].GetProperty("width").GetDouble(), 1e-12);
        using JsonDocument sinc = JsonDocument.Parse(Shell.Run("filter", "sinc", "--rate", "250Hz", "--json").Output);
        double x = Math.PI * 40 / 250, loss = -60 * Math.Log10(Math.Sin(x) / (256 * Math.Sin(x / 256)));
        Assert.Equal(loss, sinc.RootElement.GetProperty("loss")[4].GetProperty("decimator_db").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("FE0008", "fir", "--shape", "lowpass", "--pass", "40Hz", "--stop", "50Hz", "--rate", "250Hz", "--taps", "31")]
    [InlineData("FE0102", "fir", "--shape", "low-pass", "--pass", "40 V", "--stop", "50Hz", "--rate", "250Hz", "--taps", "31")]
    [InlineData("FE0614", "fir", "--shape", "low-pass", "--pass", "40Hz", "--stop", "50Hz", "--rate", "250Hz")]
    [InlineData("FE0641", "fir", "--shape", "high-pass", "--pass", "4Hz", "--stop", "1Hz", "--rate", "250Hz", "--taps", "30")]
    [InlineData("FE0645", "comb", "--rate", "250Hz", "--mains", "60Hz")]
    [InlineData("FE0648", "notch", "--rate", "250Hz", "--q", "0")]
    [InlineData("FE0647", "sinc", "--rate", "250Hz", "--edge", "125Hz")]
    [InlineData("FE0001", "comb")]
    [InlineData("FE0007", "comb", "--rate", "250Hz", "--period", "5")]
    [InlineData("FE0004", "comb", "--rate", "250Hz", "-o", "comb.txt")]
    [InlineData("FE0009", "--family", "bessel", "--shape", "low-pass", "--order", "4", "--corner", "10Hz", "-o", "bessel.h")]
    [InlineData("FE0009", "--family", "butterworth", "--shape", "high-pass", "--order", "2", "--corner", "0.5Hz", "--rate", "1kHz", "--word", "q15", "-o", "high-pass.h")]
    [InlineData("FE0008", "--family", "butterworth", "--shape", "high-pass", "--order", "2", "--corner", "0.5Hz", "--rate", "1kHz", "--state-fraction", "17", "-o", "high-pass.h")]
    public void Call_WhatCannotBe_IsFindingAndTwo(string code, params string[] call)
    {
        Outcome outcome = Shell.Run(["filter", .. call]);
        Assert.Equal((2, ""), (outcome.Code, outcome.Output));
        Assert.Contains($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"(?<head>_coefficients\[\w+\] = \{\s*)(?<tap>[^,]+)", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Taps();

    private string Path(string name) => System.IO.Path.Combine(_folder.FullName, name);
}
