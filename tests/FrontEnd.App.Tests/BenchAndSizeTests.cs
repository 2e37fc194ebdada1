using FrontEnd.Documents.Tests;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend bench</c> and <c>frontend size</c>: the texts that people read.</summary>
public class BenchAndSizeTests
{
    private const string Project = "FrontEnd.App.Tests";

    [Theory]
    [InlineData("dry-headband")]
    [InlineData("engineer")]
    public void Bench_Design_PrintsTheExpectedTests(string name) =>
        ExpectedText.Matches(Shell.Run("bench", $"designs/{name}.toml").Output, Project, $"bench-{name}.txt");

    [Theory]
    [InlineData("hobbyist")]
    [InlineData("engineer")]
    [InlineData("instructor")]
    public void Size_Requirements_PrintsTheExpectedDesigns(string name) =>
        ExpectedText.Matches(Shell.Run("size", $"designs/{name}-requirements.toml").Output, Project, $"size-{name}.txt");
}
