using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>Every number a command prints is in its <c>--json</c>.</summary>
public class EveryNumberTests
{
    [Fact]
    public void Compare_Designs_HasEveryNumberInJson() => EveryNumberInJson.HoldsOf("compare", "designs/dry-headband.toml", "designs/gel-cap.toml");

    [Theory]
    [InlineData("designs/engineer.toml")]
    [InlineData("designs/dry-headband.toml")]
    public void Bench_Design_HasEveryNumberInJson(string design) => EveryNumberInJson.HoldsOf("bench", design);

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    public void Size_Requirements_HasEveryNumberInJson(string name) => EveryNumberInJson.HoldsOf("size", $"designs/{name}-requirements.toml");
}
