using System.Text.Json;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>Every figure of ten random legal designs with all options, and of one whose channels stand at sites and are unlike each other, against an independent program's (reference/worked/random, reference/worked/channels): 1e-5, delays 1e-3, settling and recovery 2 %.</summary>
public sealed class RandomFigureTests
{
    /// <summary>Below this volts, amperes and seconds are rounding in either program.</summary>
    private const double Zero = 1e-15;

    public static IEnumerable<TheoryDataRow<string>> Files => from folder in (string[])["random", "channels"]
        from path in Directory.GetFiles(Path.Combine(Repository.Worked, folder), "*.json").Order()
        select new TheoryDataRow<string>(Path.Combine(folder, Path.GetFileName(path)));

    [Theory]
    [MemberData(nameof(Files))]
    public void Figures_OfARandomDesign_AgreeWithTheIndependentProgram(string file)
    {
        string path = Path.Combine(Repository.Worked, file);
        DesignDocument document = DesignDocument.Read(path);
        Assert.False(document.HasErrors);
        Assessment assessment = Evaluator.Evaluate(document.Design);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(path));
        JsonProperty[] compared = [.. json.RootElement.GetProperty("expected").EnumerateObject()];
        Assert.True(80 < compared.Length, $"only {compared.Length} figures were compared");
        string[] wrong = [.. compared.Select(property => Difference(assessment, property)).OfType<string>()];
        Assert.True(wrong.Length == 0, $"{wrong.Length} of {compared.Length}:\n{string.Join('\n', wrong)}");
    }

    private static string? Difference(Assessment assessment, JsonProperty expected)
    {
        string id = expected.Name;
        if (assessment.Find(id) is not { } result)
        {
            return $"{id}: the program does not give it";
        }

        string got = result.Value is { } value ? $"{value.SiValue:R}" : result.State == ResultState.Word ? $"\"{result.Text}\"" : $"{result.State}";
        bool agrees = expected.Value.ValueKind == JsonValueKind.String ? Says(result, expected.Value.GetString()!) : result.Value is { } number && Near(id, expected.Value.GetDouble(), number.SiValue);
        return agrees ? null : $"{id}: expected {expected.Value}, got {got}";
    }

    /// <summary>A text stands for a state or for how a word begins.</summary>
    private static bool Says(Result result, string text) =>
        text == "unbounded" ? result.State == ResultState.Unbounded : result.Value is null && result.Text?.StartsWith(text, StringComparison.Ordinal) == true;

    private static bool Near(string id, double expected, double actual)
    {
        double tolerance = id.EndsWith("group_delay", StringComparison.Ordinal) || id.StartsWith("latency", StringComparison.Ordinal) ? 1e-3
            : id.EndsWith("settling", StringComparison.Ordinal) || id.EndsWith("recovery", StringComparison.Ordinal) ? 2e-2 : 1e-5;
        return Math.Abs(actual - expected) <= Math.Max(Zero, tolerance * Math.Max(Math.Abs(expected), Math.Abs(actual)));
    }
}
