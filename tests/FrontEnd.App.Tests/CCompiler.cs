using System.Diagnostics;
using Xunit;

namespace FrontEnd.App.Tests;

/// <summary>The machine's C compiler, where there is one, run in a folder.</summary>
internal sealed class CCompiler(string path, string folder)
{
    private static readonly string[] Names = ["cc", "gcc", "clang"];

    /// <summary>The compiler's path; null where there is none.</summary>
    public static string? Find() =>
        Names.SelectMany(name => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(one => Path.Combine(one, name))).FirstOrDefault(File.Exists);

    /// <summary>The compiler for a folder; the test is skipped where there is none.</summary>
    public static CCompiler For(string folder)
    {
        string? found = Find();
        Assert.SkipWhen(found is null, "there is no C compiler on this machine");
        return new CCompiler(found!, folder);
    }

    /// <summary>Every warning an error, no fused multiply-add; then runs what was made.</summary>
    /// <returns>What it prints and its exit code.</returns>
    public (string Output, int Code) CompileAndRun(params string[] arguments)
    {
        (string messages, int code) = Start(path, ["-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-O2", "-ffp-contract=off", .. arguments, "-o", "main"]);
        Assert.True(code == 0, messages);
        return Start(Path.Combine(folder, "main"));
    }

    /// <summary>A line as someone types it, such as a compilation and a run; what it prints.</summary>
    public static string Shell(string line, string folder) => new CCompiler("", folder).Start("/bin/sh", "-c", line).Output;

    private (string Output, int Code) Start(string file, params string[] arguments)
    {
        ProcessStartInfo start = new(file, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false, WorkingDirectory = folder };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{file} does not start.");
        Task<string> messages = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(60_000));
        return (output + messages.Result, process.ExitCode);
    }
}
