using System.Diagnostics;
using FrontEnd.App.Commands;
using FrontEnd.Documents.Tests;

namespace FrontEnd.App.Tests;

/// <summary>Runs the program in this process, in the repository's folder, and keeps what it writes.</summary>
internal static class Shell
{
    static Shell() => Directory.SetCurrentDirectory(Repository.Root);

    public static Outcome Run(params string[] args) => Run(args, null);

    public static Outcome Run(string[] args, Func<int?>? openTerminal)
    {
        using StringWriter output = new(), messages = new();
        int code = CommandLine.Run(args, new Outlet(output, messages), openTerminal);
        return new Outcome(code, output.ToString(), messages.ToString());
    }

    /// <summary>The command of this build.</summary>
    public static string Program => Path.Combine(AppContext.BaseDirectory, "frontend.dll");

    /// <summary>Runs another process in the repository's folder, without input.</summary>
    public static (int Code, string Output, string Messages) Process(string file, params string[] args)
    {
        ProcessStartInfo start = new(file, args) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, WorkingDirectory = Repository.Root, StandardOutputEncoding = System.Text.Encoding.UTF8 };
        start.Environment["LC_ALL"] = "C";
        using Process process = System.Diagnostics.Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> messages = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, messages.Result);
    }
}

internal sealed record Outcome(int Code, string Output, string Messages);
