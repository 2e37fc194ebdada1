using System.Text.Json;
using FrontEnd.Tests.Plain;
using Xunit;

namespace FrontEnd.Documents.Tests;

/// <summary>The tests' plain second way itself, against the independent program's figures (reference/worked/random): what it gives agrees, or it could prove nothing.</summary>
public sealed class PlainWayTests
{
    /// <summary>The plain way knows one channel and its copies; a design of channels that differ is the independent program's alone.</summary>
    public static IEnumerable<TheoryDataRow<string>> Files => RandomFigureTests.Files.Where(row => row.Data.StartsWith("random/", StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Files))]
    public void PlainWay_OfARandomDesign_AgreesWithTheIndependentProgram(string file)
    {
        string path = Path.Combine(Repository.Worked, file);
        IReadOnlyDictionary<string, object> plain = PlainFigures.Of(DesignDocument.Read(path).Design);
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(path));
        List<string> wrong = [];
        foreach (JsonProperty expected in json.RootElement.GetProperty("expected").EnumerateObject())
        {
            if (!plain.TryGetValue(expected.Name, out object? got))
            {
                wrong.Add($"{expected.Name}: not given");
                continue;
            }

            object wanted = expected.Value.ValueKind == JsonValueKind.String ? expected.Value.GetString()! : expected.Value.GetDouble();
            if (!PlainComparison.Agree(expected.Name, wanted, got))
            {
                wrong.Add($"{expected.Name}: expected {wanted}, got {got}");
            }
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count} wrong or missing:\n{string.Join('\n', wrong)}");
    }
}
