using System.Text.RegularExpressions;
using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>What the guide for contributors names is there.</summary>
public partial class GuideTests
{
    private static readonly string[] Projects = ["FrontEnd", "FrontEnd.Documents", "FrontEnd.Terminal", "FrontEnd.App"];

    private static readonly string Guide = File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md"));

    private static readonly string[] Sources =
    [
        .. new[] { "src", "tests" }.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories))
            .Where(path => !path.Contains(Path.Combine("obj", ""), StringComparison.Ordinal)),
    ];

    /// <summary>A room without a row is one that a stranger does not find.</summary>
    [Fact]
    public void Map_EveryRoom_HasARow()
    {
        string map = string.Join(' ', Guide.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Select(line => line.Split('|')[1]));
        string[] rows = [.. Folder().Matches(map).Select(match => match.Value.TrimEnd('/'))];
        IEnumerable<string> rooms = Projects.SelectMany(RoomOrder.Of)
            .Where(room => room != RoomOrder.Top && !room.Contains('.', StringComparison.Ordinal));
        Assert.Empty(rooms.Except(rows));
    }

    [Fact]
    public void Files_ThatAreNamed_AreThere()
    {
        HashSet<string> names = [.. Sources.Select(path => Path.GetFileName(path))];
        Assert.Equal([], SourceFile().Matches(Guide).Select(match => match.Groups["name"].Value).Except(names));
    }

    /// <summary>Every test that is said to guard something is a class or a method of the tests.</summary>
    [Fact]
    public void Tests_ThatAreNamed_AreThere()
    {
        string[] named = [.. TestName().Matches(Guide).Select(match => match.Groups["name"].Value).Distinct()];
        Assert.True(30 < named.Length, $"{named.Length} tests named");
        string tests = string.Join('\n', Sources.Where(path => path.Contains(Path.Combine(Repository.Root, "tests"), StringComparison.Ordinal)).Select(File.ReadAllText));
        Assert.Equal([], named.Where(IsGone));

        bool IsGone(string name) => !tests.Contains($"class {name}", StringComparison.Ordinal) && !tests.Contains($" {name}(", StringComparison.Ordinal);
    }

    [GeneratedRegex("[A-Z][A-Za-z]+/", RegexOptions.None, 1000)]
    private static partial Regex Folder();

    [GeneratedRegex("(?<name>[A-Z][A-Za-z]+\\.cs)\\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SourceFile();

    /// <summary>`NameTests`, `Architecture/NameTests`, `What_When_Then`.</summary>
    [GeneratedRegex("`([A-Z][A-Za-z]+/)?(?<name>[A-Z][A-Za-z]*Tests|[A-Z][a-z][A-Za-z]*(_[A-Z][A-Za-z]*)+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TestName();
}
