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
}

internal sealed record Outcome(int Code, string Output, string Messages);
