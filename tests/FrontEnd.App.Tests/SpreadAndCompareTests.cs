using System.Text.Json;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend spread</c> and <c>frontend compare</c>.</summary>
public class SpreadAndCompareTests
{
    private const string Project = "FrontEnd.App.Tests";
    private const string Design = "designs/dry-headband.toml";

    [Fact]
    public void Spread_Design_PrintsTheExpectedText() =>
        ExpectedText.Matches(Shell.Run("spread", Design, "--builds", "1000").Output, Project, "spread-dry-headband.txt");

    [Fact]
    public void Compare_TwoDesigns_PrintsTheExpectedText() =>
        ExpectedText.Matches(Shell.Run("compare", Design, "designs/gel-cap.toml").Output, Project, "compare-dry-headband-gel-cap.txt");

    [Theory]
    [InlineData("100%", 1)]
    [InlineData("0", 0)]
    [InlineData("most", 2)]
    public void Spread_Yield_DecidesTheExitCode(string least, int code) =>
        Assert.Equal(code, Shell.Run("spread", Design, "--builds", "64", "--yield", least).Code);

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    public void Spread_NoBuilds_CannotBeUsed(string builds) => Assert.Equal(2, Shell.Run("spread", Design, $"--builds={builds}").Code);

    [Fact]
    public void Spread_Json_HoldsEveryFigureWithItsPercentiles()
    {
        Outcome outcome = Shell.Run("spread", Design, "--builds", "64", "--worst-phase-margin", "--distribution", "normal", "--json");
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        Assert.Equal(0, outcome.Code);
        Assert.Equal("", outcome.Messages);
        Assert.Equal("normal", json.RootElement.GetProperty("distribution").GetString());
        JsonElement[] figures = [.. json.RootElement.GetProperty("figures").EnumerateArray()];
        Assert.Equal(9, figures.Length);
        Assert.All(figures, figure => Assert.True(figure.GetProperty("percentiles").GetProperty("5").GetDouble() <= figure.GetProperty("percentiles").GetProperty("95").GetDouble()));
    }

    [Fact]
    public void Compare_Json_HoldsEachDifferenceAlone()
    {
        using JsonDocument json = JsonDocument.Parse(Shell.Run("compare", Design, "designs/gel-cap.toml", "--json").Output);
        JsonElement stages = json.RootElement.GetProperty("differences").EnumerateArray().Single(difference => difference.GetProperty("key").GetString() == "stages");
        Assert.NotEqual(
            json.RootElement.GetProperty("from").GetProperty("alias.fold_attenuation").GetProperty("value").GetDouble(),
            stages.GetProperty("alone").GetProperty("alias.fold_attenuation").GetProperty("value").GetDouble());
    }
}
