using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using FrontEnd.App.Commands;
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
        Outcome outcome = Shell.Run("spread", Design, "--builds", "64", "--distribution", "normal", "--json");
        using JsonDocument json = JsonDocument.Parse(outcome.Output);
        Assert.Equal(0, outcome.Code);
        Assert.Equal("drawing 64 builds\n", outcome.Messages);
        Assert.Equal("normal", json.RootElement.GetProperty("distribution").GetString());
        JsonElement[] figures = [.. json.RootElement.GetProperty("figures").EnumerateArray()];
        Assert.Equal(16, figures.Length);
        Assert.All(figures, figure => Assert.True(figure.GetProperty("percentiles").GetProperty("5").GetDouble() <= figure.GetProperty("percentiles").GetProperty("95").GetDouble()));
    }

    [Fact]
    public void Sheet_WithBuilds_HasYieldPercentilesAndHistograms()
    {
        using TemporaryFolder folder = new();
        string[] files = [Path.Combine(folder.Path, "sheet.html"), Path.Combine(folder.Path, "sheet.md"), Path.Combine(folder.Path, "sheet.json")];
        Assert.Equal(0, Shell.Run("sheet", Design, "--builds", "200", "--seed", "3", "-o", files[0], "-o", files[1], "-o", files[2]).Code);
        Assert.All(files[..2], file =>
        {
            string text = File.ReadAllText(file).Replace("\\_", "_", StringComparison.Ordinal);
            Assert.Contains("200 builds, seed 3", text, StringComparison.Ordinal);
            Assert.Contains("safety.fault_current", text, StringComparison.Ordinal);
            Assert.Contains("no mismatch", text, StringComparison.Ordinal);
            Assert.Contains("the worst signs of the stated mismatch", text, StringComparison.Ordinal);
            Assert.Contains("at most 250 nV rms", text, StringComparison.Ordinal);
            Assert.Matches("4\\.[0-9]+ µV p-p", text);
        });
        using JsonDocument sheet = JsonDocument.Parse(File.ReadAllText(files[2])), command = JsonDocument.Parse(Shell.Run("spread", Design, "--builds", "200", "--seed", "3", "--json").Output);
        Assert.Equal(
            command.RootElement.GetProperty("figures")[0].GetProperty("percentiles").GetProperty("50").GetDouble(), sheet.RootElement.GetProperty("spread").GetProperty("figures")[0].GetProperty("percentiles").GetProperty("50").GetDouble());

        // The sheet is a design file still.
        Assert.Equal(1, Shell.Run("check", files[2], "--no-advice").Code);
        Assert.Equal(2, Shell.Run("sheet", Design, "--builds", "0", "-o", files[0]).Code);
    }

    [Theory]
    [InlineData("spread")]
    [InlineData("sheet")]
    public void Builds_MoreThanMayBeDrawn_AreRefusedWithTheirMemory(string command)
    {
        string[] call = command == "sheet" ? [command, Design, "-o", Path.Combine(Path.GetTempPath(), "never-written.md")] : [command, Design];
        Outcome outcome = Shell.Run([.. call, "--builds", "10000001"]);
        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Output);
        Assert.Matches("FE0975 error: 10000001 builds are more than the limit of 10000000[\\s\\S]*GB of memory", outcome.Messages);
    }

    [Fact]
    public void Builds_BeyondAMillion_TellTheirMemory()
    {
        Assert.Null(CallMessages.BuildsWant(1_000_000));
        Assert.Matches("^1000001 builds need up to 0\\.[0-9] GB of memory$", CallMessages.BuildsWant(1_000_001));
    }

    // The signal goes to the program itself: in this process it would end the tests.
    [Fact]
    public async Task Spread_Interrupted_SaysSoAndPrintsNothing()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string program = Path.Combine(AppContext.BaseDirectory, "frontend.dll");
        ProcessStartInfo start = new("dotnet", [program, "spread", Design, "--builds", "10000000"]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Repository.Root };
        using Process process = Process.Start(start)!;
        try
        {
            Assert.Equal("drawing 10000000 builds", await process.StandardError.ReadLineAsync(TestContext.Current.CancellationToken));
            using (Process kill = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)]))
            {
                await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
            }

            string messages = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            Assert.Equal("", await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(130, process.ExitCode);
            Assert.Contains("interrupted while drawing 10000000 builds", messages, StringComparison.Ordinal);
            Assert.Contains("nothing is printed", messages, StringComparison.Ordinal);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
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
