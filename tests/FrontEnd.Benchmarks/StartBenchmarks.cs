using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;

namespace FrontEnd.Benchmarks;

/// <summary>The native executable from its start to its end, as a shell waits for it; starting a process from here is in the figure, a millisecond or two.</summary>
/// <remarks><c>FRONTEND_NATIVE</c> names the folder that it was published to. Each iteration is one run: nothing is warm but the system's own caches.</remarks>
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 3, iterationCount: 30)]
public class StartBenchmarks
{
    private const string Starter = "designs/starter.toml";

    private string _program = "";

    [GlobalSetup]
    public void Find()
    {
        string folder = Environment.GetEnvironmentVariable("FRONTEND_NATIVE")
            ?? throw new InvalidOperationException("Set FRONTEND_NATIVE to the folder that the native executable was published to.");
        _program = Path.Combine(folder, "frontend");
    }

    [Benchmark]
    public void Version() => Run(_program, "--version");

    [Benchmark]
    public void CheckWithoutAdvice() => Run(_program, "check", Starter, "--no-advice");

    [Benchmark]
    public void Check() => Run(_program, "check", Starter);

    /// <summary>From the call to the first figure that the screens write, on a terminal that <c>script</c> (util-linux) makes.</summary>
    [Benchmark]
    public void FirstFigures()
    {
        using Process screens = Start("script", "--quiet", "--command", $"stty rows 24 cols 80; exec {_program} {Starter}", "/dev/null");
        char[] part = new char[4096];
        string shown = "";
        while (!shown.Contains(" rms", StringComparison.Ordinal))
        {
            int count = screens.StandardOutput.Read(part);
            shown += count == 0 ? throw new InvalidOperationException($"The screens ended without a figure: {shown}") : new string(part, 0, count);
        }

        screens.Kill(entireProcessTree: true);
    }

    private static void Run(string program, params string[] arguments)
    {
        using Process process = Start(program, arguments);
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    }

    private static Process Start(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, WorkingDirectory = Repository.Root };
        start.Environment["TERM"] = "xterm-256color";
        start.Environment["LC_ALL"] = "C.UTF-8";
        start.Environment["XDG_STATE_HOME"] = Path.GetTempPath();
        return Process.Start(start)!;
    }
}
