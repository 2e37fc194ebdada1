using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FrontEnd.Documents;
using FrontEnd.Documents.Tests;
using FrontEnd.Reporting;
using FrontEnd.Results;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary><c>frontend samples</c> as a shell sees it: what is printed, what is written, what is left where something goes wrong.</summary>
public sealed class SamplesCommandTests : IDisposable
{
    private const string Design = "designs/minimal.toml";

    private const string Nobody = "simulated, nobody was recorded";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string At(string name) => Path.Combine(_folder.Path, name);

    /// <summary>No file is claimed to show a person, and what is printed neither.</summary>
    [Fact]
    public void Samples_WrittenAndPrinted_SayThatNobodyWasRecorded()
    {
        Outcome outcome = Shell.Run("samples", Design, "-o", At("a.edf"), "-o", At("a.csv"));
        Assert.Equal(0, outcome.Code);
        Assert.Equal($"wrote {At("a.edf")}\nwrote {At("a.csv")}\n", outcome.Messages);
        Assert.Contains(Nobody, outcome.Output, StringComparison.Ordinal);
        Assert.Contains(Nobody, Shell.Run("samples", Design, "--json").Output, StringComparison.Ordinal);
        Assert.Contains(Nobody, Encoding.Latin1.GetString(File.ReadAllBytes(At("a.edf"))), StringComparison.Ordinal);
        Assert.Contains(Nobody, File.ReadAllText(At("a.csv")), StringComparison.Ordinal);
        Assert.Matches(@"one count of the file is [0-9.]+ nV at the electrodes; the design's step is\s+71\.64 nV", outcome.Output);
    }

    /// <summary>A file of samples travels alone: what the design says of its danger, that it is not to be worn, and the cautions go with it.</summary>
    [Fact]
    public void Files_OfADesignNotToBeWorn_SayAllOfIt()
    {
        Assert.Equal(0, Shell.Run("samples", "designs/dry-headband.toml", "--length", "60s", "-o", At("a.edf"), "-o", At("a.csv")).Code);
        string caution = Cautions.OfFile(Evaluator.Evaluate(DesignDocument.Read("designs/dry-headband.toml").Design));
        Assert.Contains("NOT TO BE WORN", caution, StringComparison.Ordinal);
        Assert.Contains(CautionTests.Own, caution, StringComparison.Ordinal);
        Assert.Contains(caution, File.ReadAllText(At("a.csv")), StringComparison.Ordinal);

        // In pieces, one annotation each, over the first records.
        string notes = string.Join(' ', Encoding.UTF8.GetString(File.ReadAllBytes(At("a.edf"))).Split("+0\x14").Skip(1).Select(note => note.Split('\x14')[0]));
        Assert.Contains(caution, notes, StringComparison.Ordinal);
    }

    /// <summary>The same seed gives the same bytes, another one others.</summary>
    [Theory]
    [InlineData("edf")]
    [InlineData("csv")]
    public void Samples_OfTheSameSeed_AreTheSameFile(string form)
    {
        byte[] Bytes(params string[] more)
        {
            Assert.Equal(0, Shell.Run(["samples", Design, "--length", "8s", "-o", At("x." + form), .. more]).Code);
            return File.ReadAllBytes(At("x." + form));
        }

        byte[] first = Bytes();
        Assert.Equal(first, Bytes("--seed", "1"));
        Assert.NotEqual(first, Bytes("--seed", "2"));
        Assert.NotEqual(first, Bytes("--without", "hum"));
        Assert.NotEqual(first, Bytes("--signal", "blink=80uV"));
        Assert.Equal(Bytes("--signal", "blink=80uV", "--signal", "heart", "--without", "hum", "--without", "folded"), Bytes("--signal", "blink=80uV, heart", "--without", "hum,folded"));
        Assert.NotEqual(first, Bytes("--counts"));
        Assert.Equal(["x." + form], Directory.GetFiles(_folder.Path).Select(Path.GetFileName));
    }

    /// <summary>Both forms hold the same samples, and <c>bench</c> reads both: a design is a test of itself where what it reads is its own noise.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("--counts")]
    public void Samples_OfBothForms_AreReadByBenchAlike(string counts)
    {
        Assert.Equal(0, Shell.Run(["samples", Design, "--without", "hum", "-o", At("a.edf"), "-o", At("a.csv"), .. counts.Length > 0 ? [counts] : (string[])[]]).Code);
        double edf = Measured("a.edf"), csv = Measured("a.csv");
        Assert.InRange(edf, 1e-6, 10e-6);
        Assert.Equal(1, edf / csv, counts.Length > 0 ? 0.001 : 0.0001);

        double Measured(string file)
        {
            Outcome bench = Shell.Run("bench", Design, "--measured", At(file), "--test", "shorted", "--json");
            using JsonDocument json = JsonDocument.Parse(bench.Output);
            Assert.Equal(0, json.RootElement.GetProperty("findings").GetArrayLength());
            return json.RootElement.GetProperty("results")[0].GetProperty("measured").GetDouble();
        }
    }

    [Theory]
    [InlineData("FE0004", "-o", "a.wav")]
    [InlineData("FE0005", "-o", "a.edf", "-o", "./a.edf")]
    [InlineData("FE0107", "--length", "60")]
    [InlineData("FE1094", "--length", "0 s")]
    [InlineData("FE1094", "--length", "25 h", "-o", "a.edf")]
    [InlineData("FE1090", "--signal", "alfa")]
    [InlineData("FE1092", "--signal", "alpha=0 V")]
    [InlineData("FE1093", "--without", "humm")]
    [InlineData("FE1062", "--length", "60.001 s", "-o", "a.edf")]
    [InlineData("FE1040", "--date", "26.11.2026", "-o", "a.edf")]
    [InlineData("FE1064", "--date", "2085-01-01", "-o", "a.edf")]
    [InlineData("FE0001", "--date", "2026-11-26")]
    [InlineData("FE0001", "--counts")]
    [InlineData("FE0140", "--beside", "none.toml")]
    [InlineData("FE0146", "-o", "/no/such/folder/a.edf")]
    [InlineData("FE0146", "-o", "/no/such/folder/a.csv")]
    public void Call_ThatCannotBeUsed_IsTwoWithItsCodeAndWritesNothing(string code, params string[] args)
    {
        string[] placed = [.. args.Select(arg => arg is "a.edf" or "a.wav" or "./a.edf" ? At(arg) : arg)];
        Outcome outcome = Shell.Run(["samples", Design, .. placed]);
        Assert.Equal(2, outcome.Code);
        Assert.Equal("", outcome.Output);
        Assert.StartsWith($"{code} error: ", outcome.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(".toml, --", outcome.Messages, StringComparison.Ordinal); // an option stands in no file
        Assert.Empty(Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Samples_IntoAFolder_SaysSo()
    {
        Directory.CreateDirectory(At("a.edf"));
        Outcome outcome = Shell.Run("samples", Design, "-o", At("b.csv"), "-o", At("a.edf"));
        Assert.Equal(2, outcome.Code);
        Assert.StartsWith("FE0144 error: ", outcome.Messages, StringComparison.Ordinal);
        Assert.Equal(["a.edf"], Directory.GetFileSystemEntries(_folder.Path).Select(Path.GetFileName));
    }

    /// <summary>A rate that no record has is refused for EDF alone, and the nearest are named.</summary>
    [Fact]
    public void Samples_OfAnOddRate_AreATableAndNoEdf()
    {
        string design = _folder.Write("odd.toml", File.ReadAllText(Path.Combine(Repository.Designs, "minimal.toml")).Replace("rate = \"250 Hz\"", "rate = \"250.1237 Hz\"", StringComparison.Ordinal));
        Outcome refused = Shell.Run("samples", design, "-o", At("a.edf"));
        Assert.StartsWith("FE1061 error: ", refused.Messages, StringComparison.Ordinal);
        Assert.Contains("set converter.rate to 250.12 Hz or 250.14 Hz", refused.Messages, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run("samples", design, "-o", At("a.csv")).Code);
    }

    [Fact]
    public void Samples_BesideAnotherDesign_ShowBoth()
    {
        Outcome outcome = Shell.Run("samples", Design, "--beside", "designs/engineer.toml", "--length", "8s");
        Assert.Contains("samples of minimal: ", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(3, outcome.Output.Split(Nobody).Length - 1 + (outcome.Output.Contains("nobody\nwas", StringComparison.Ordinal) ? 1 : 0));
    }

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public async Task Samples_EndedByASignal_LeaveNoFile(string signal, int code)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string program = Path.Combine(AppContext.BaseDirectory, "frontend.dll");
        ProcessStartInfo start = new("dotnet", [program, "samples", Design, "--length", "24 h", "-o", At("a.edf"), "-o", At("a.csv")])
        {
            UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Repository.Root,
        };
        using Process process = Process.Start(start)!;
        try
        {
            Assert.Equal("simulating 24 h of 1 channel", await process.StandardError.ReadLineAsync(TestContext.Current.CancellationToken));
            for (int waited = 0; waited < 600 && !Directory.GetFiles(_folder.Path).Any(file => 0 < new FileInfo(file).Length); waited++)
            {
                await Task.Delay(50, TestContext.Current.CancellationToken);
            }

            Assert.Equal(2, Directory.GetFiles(_folder.Path).Length);
            using (Process kill = Process.Start("kill", ["-" + signal, process.Id.ToString(CultureInfo.InvariantCulture)]))
            {
                await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
            }

            string messages = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            Assert.Equal("", await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(code, process.ExitCode);
            Assert.Contains("FE0010 error: interrupted while simulating 24 h of 1 channel", messages, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(_folder.Path));
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
    }

    /// <summary>A disk with room for a hundred kilobytes, as the system tells a program of it.</summary>
    [Fact]
    public async Task Samples_OnAFullDisk_LeaveNoFile()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        string program = Path.Combine(AppContext.BaseDirectory, "frontend.dll");
        ProcessStartInfo start = new("bash", ["-c", $"trap '' XFSZ; ulimit -f 100; exec dotnet '{program}' samples {Design} --length 600s -o '{At("a.edf")}'"])
        {
            UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Repository.Root,
        };
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0"; // the runtime's own double mapping is a file, and would not fit either
        using Process process = Process.Start(start)!;
        string messages = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.Equal("", await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, process.ExitCode);
        Assert.StartsWith($"FE0146 error: `{At("a.edf")}` cannot be written", messages, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }
}
