using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Every number a command prints is in its <c>--json</c>.</summary>
public class EveryNumberTests
{
    public static TheoryData<string> Designs => [.. Directory.GetFiles(Path.Combine(Repository.Root, "designs"), "*.toml")
        .Where(file => !file.EndsWith("-requirements.toml", StringComparison.Ordinal) && !file.EndsWith("wrong-in-six-ways.toml", StringComparison.Ordinal)).Select(file => "designs/" + Path.GetFileName(file)).Order()];

    [Theory]
    [MemberData(nameof(Designs))]
    public void Check_AnyDesign_HasEveryNumberInJson(string design) => EveryNumberInJson.HoldsOf("check", design);

    [Fact]
    public void Spread_Design_HasEveryNumberInJson() => EveryNumberInJson.HoldsOf("spread", "designs/dry-headband.toml", "--builds", "200");

    [Fact]
    public void Compare_Designs_HasEveryNumberInJson() => EveryNumberInJson.HoldsOf("compare", "designs/dry-headband.toml", "designs/gel-cap.toml");

    [Theory]
    [InlineData("designs/engineer.toml")]
    [InlineData("designs/dry-headband.toml")]
    public void Rates_Design_HasEveryNumberInJson(string design) => EveryNumberInJson.HoldsOf("rates", design);

    [Theory]
    [InlineData("designs/engineer.toml")]
    [InlineData("designs/dry-headband.toml")]
    public void Bench_Design_HasEveryNumberInJson(string design) => EveryNumberInJson.HoldsOf("bench", design);

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    public void Size_Requirements_HasEveryNumberInJson(string name) => EveryNumberInJson.HoldsOf("size", $"designs/{name}-requirements.toml");
}
