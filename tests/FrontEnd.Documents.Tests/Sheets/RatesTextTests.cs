using System.Text.Json;
using FrontEnd.Documents.Sheets;
using FrontEnd.Quantities;
using FrontEnd.Rates;
using Xunit;

namespace FrontEnd.Documents.Tests.Sheets;

public sealed class RatesTextTests
{
    private static RateComparison Engineer { get; } = RateStudy.Compare(
        DesignDocument.Read(Path.Combine(Repository.Designs, "engineer.toml")).Design, [Frequency.FromHertz(250), Frequency.FromHertz(256), Frequency.FromHertz(500)]);

    [Fact]
    public void Text_EngineersQuestion_IsTheExpectedScreen() =>
        ExpectedText.Matches(RatesText.Of(Engineer), "FrontEnd.Documents.Tests", "rates-engineer.txt");

    [Theory]
    [InlineData("engineer.toml")]
    [InlineData("minimal.toml")]
    [InlineData("hobbyist.toml")]
    public void Text_AllRates_IsNotWiderThanEightyColumns(string file)
    {
        string text = RatesText.Of(RateStudy.Compare(DesignDocument.Read(Path.Combine(Repository.Designs, file)).Design, null, TestContext.Current.CancellationToken));
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void Json_EngineersQuestion_HoldsTheFoldingFacts()
    {
        using JsonDocument json = JsonDocument.Parse(AnswerJson.Of(Engineer));
        JsonElement harmonic = json.RootElement.GetProperty("rates")[0].GetProperty("mains")[0].GetProperty("harmonics")[3];
        Assert.Equal(240, harmonic.GetProperty("frequency").GetDouble());
        Assert.Equal(10, harmonic.GetProperty("lands_at").GetDouble(), 1e-9);
    }
}
