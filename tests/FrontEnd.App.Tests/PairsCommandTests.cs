using System.Text.Json;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend pairs</c> as it is called.</summary>
public class PairsCommandTests
{
    private const string Alpha = "--under O1 --area 25cm2 --amplitude 30uV --stated-in O1-ears --band alpha";

    private static JsonElement Json(string call)
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run([.. call.Split(' '), "--json"]).Output);
        return json.RootElement.Clone();
    }

    private static double Of(JsonElement answer, string id) =>
        answer.GetProperty("results").EnumerateArray().Single(one => one.GetProperty("id").GetString() == id).GetProperty("value").GetDouble();

    /// <summary>The figures of the worked table: 1.07 of 25 cm², 0.82 in a neighbouring pair.</summary>
    [Fact]
    public void Sites_OfWrittenPairs_KeepWhatTheTableSays()
    {
        JsonElement answer = Json($"pairs --sites O1-ears,O1-P3 {Alpha} --noise 0.5uV");
        Assert.Equal(1.07, Of(answer, "see.o1.o1-ears.kept"), 0.005);
        Assert.Equal(0.82, Of(answer, "see.o1.o1-p3.kept"), 0.005);
        Assert.Equal(1 - Of(answer, "see.o1.o1-p3.kept"), Of(answer, "see.o1.o1-p3.reference_takes"), 1e-12);
        Assert.Equal(30e-6, Of(answer, "see.o1.o1-ears.seen"), 1e-15);
        Assert.Equal(0.5e-6 * Math.Sqrt(2), Of(answer, "see.o1.o1-p3.front_end"), 1e-12);
        double signal = 30e-6 / (2 * Math.Sqrt(2)), background = Of(answer, "see.o1.o1-ears.background"), noise = Of(answer, "see.o1.o1-ears.front_end");
        Assert.Equal(signal / Math.Sqrt((background * background) + (noise * noise)), Of(answer, "see.o1.o1-ears.snr.alpha"), 1e-9);
        Assert.True(Of(answer, "see.o1.o1-p3.span.kept.least") < Of(answer, "see.o1.o1-p3.kept"));
    }

    [Fact]
    public void Best_OfTheTenTwentySystem_IsRankedAndAsLongAsAsked()
    {
        JsonElement source = Json($"pairs --sites {Alpha} --best 7").GetProperty("sources")[0];
        double[] ratios = [.. source.GetProperty("pairs").EnumerateArray().Select(pair => pair.GetProperty("signal_to_noise").GetDouble())];
        Assert.Equal(300, source.GetProperty("tried").GetInt32());
        Assert.Equal(7, ratios.Length);
        Assert.Equal(ratios.OrderDescending(), ratios);
    }

    /// <summary>A design's recorded channels have its noise; the difference of two is without the reference they share.</summary>
    [Fact]
    public void Design_BestPairs_HaveTheDesignsOwnNoise()
    {
        JsonElement channels = Json("pairs designs/instructor.toml --under O1 --band alpha"), best = Json("pairs designs/instructor.toml --under O1 --band alpha --best 20");
        JsonElement check = Json("check designs/instructor.toml --no-advice");
        Assert.Equal(Of(check, "noise.band.alpha"), Of(channels, "see.o1.o1-a1.front_end"), 1e-12);
        Assert.NotEqual(Of(best, "see.o1.o1-a1.front_end"), Of(best, "see.o1.o1-f3.front_end"), 1e-9);
        Assert.Equal(10, best.GetProperty("sources")[0].GetProperty("pairs").GetArrayLength());   // four channels and six differences
    }

    [Theory]
    [InlineData("pairs", "FE0001")]
    [InlineData("pairs --sites", "FE0943")]
    [InlineData("pairs --sites --amplitude 3uV", "FE0001")]
    [InlineData("pairs designs/minimal.toml --under O1", "FE0930")]
    [InlineData("pairs --sites --under Q2", "FE0931")]
    [InlineData("pairs --sites O1,Q2 --under O1", "FE0931")]
    [InlineData("pairs --sites O1-Q2 --under O1", "FE0932")]
    [InlineData("pairs --sites --under O1 --amplitude 3uV --stated-in O1", "FE0932")]
    [InlineData("pairs --sites --under O1 --area 0cm2", "FE0933")]
    [InlineData("pairs --sites --under O1 --area 1m2", "FE0933")]
    [InlineData("pairs --sites --under ear-left", "FE0934")]
    [InlineData("pairs --sites --under Nz", "FE0934")]
    [InlineData("pairs --sites --under O1 --wall-towards O1", "FE0935")]
    [InlineData("pairs --sites --under O1 --skull-ratio 4", "FE0936")]
    [InlineData("pairs --sites --under O1 --skull-ratio 201", "FE0936")]
    [InlineData("pairs --sites --under O1 --band alfa", "FE0937")]
    [InlineData("pairs --sites --under O1 --amplitude 0V", "FE0939")]
    [InlineData("pairs --sites O1 --under O1", "FE0945")]
    [InlineData("pairs --sites --under O1 --shells five", "FE0008")]
    [InlineData("pairs --sites --under O1 --best 0", "FE0008")]
    public void Call_ThatCannotBeUsed_SaysWhy(string call, string code)
    {
        (int exit, string output, string messages) = Shell.Run(call.Split(' '));
        Assert.Equal(2, exit);
        Assert.Equal("", output);
        Assert.Contains(code, messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pairs --sites --best 300 --under Cz --amplitude 30uV --noise 1uV")]
    [InlineData("pairs --sites T7-mastoid-left,O1-mastoids,Fp1-average,Cz --under T7 --amplitude 30uV --amplitude-kind rms")]
    [InlineData("pairs designs/instructor.toml --under O1 --wall-towards Pz")]
    public void Text_OfAnyCall_IsEightyColumnsWide(string call) =>
        Assert.All(Shell.Run(call.Split(' ')).Output.Split('\n'), line => Assert.True(line.Length <= 80, line));

    /// <summary>The near name that was meant, of several that are one letter away the usual one.</summary>
    [Fact]
    public void Site_OneLetterWrong_IsAnsweredWithTheUsualName() =>
        Assert.Contains("`O2`", Shell.Run("pairs", "--sites", "--under", "Q2").Messages, StringComparison.Ordinal);

    [Theory]
    [InlineData("pairs --sites --under Cz --amplitude 30uV --stated-in O1-O2", "FE0938")]
    [InlineData("pairs --sites --under Cz --area 0.2cm2 --amplitude 100uV", "FE0940")]
    public void Call_OfAnUnlikelyRhythm_IsAnsweredWithAWarning(string call, string code)
    {
        (int exit, string output, string messages) = Shell.Run(call.Split(' '));
        Assert.Equal(0, exit);
        Assert.Contains("limits", output, StringComparison.Ordinal);
        Assert.Contains(code, messages, StringComparison.Ordinal);
    }

    /// <summary>A patch under Cz seen by P3-Cz has no share of P3's: none is given, and what is seen stands.</summary>
    [Fact]
    public void Pair_WhoseActiveSiteHardlySees_HasNoShare()
    {
        JsonElement pair = Json("pairs --sites P3-Cz --under Cz").GetProperty("sources")[0].GetProperty("pairs")[0];
        Assert.Equal(JsonValueKind.Null, pair.GetProperty("kept").ValueKind);
        Assert.InRange(pair.GetProperty("of_peak").GetDouble(), 0.8, 1.2);
    }

    [Theory]
    [InlineData("map.svg", "<svg")]
    [InlineData("map.txt", "[*O1 ")]
    public void Map_OfEitherKind_ShowsTheSource(string name, string start)
    {
        using TemporaryFolder folder = new();
        string file = Path.Combine(folder.Path, name);
        Assert.Equal(0, Shell.Run([.. $"pairs --sites O1-ears {Alpha} --map".Split(' '), file]).Code);
        string text = File.ReadAllText(file);
        Assert.Contains(start, text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }
}
