using System.CommandLine;

namespace FrontEnd.App.Commands;

/// <summary>The program's front door: reads the call, runs the command, turns whatever happens into an exit code.</summary>
internal static class CommandLine
{
    /// <param name="openTerminal">Opens the screens and returns their exit code; null, or a null answer, where there is no terminal to open them on.</param>
    public static int Run(string[] args, Outlet outlet, Func<int?>? openTerminal = null)
    {
        try
        {
            int code = Dispatch(args, outlet, openTerminal);
            outlet.Results.Flush();
            return code;
        }
        catch (IOException problem)
        {
            // A reader that has gone away does not come here: the runtime takes a closed pipe as written. A full disk does.
            outlet.Tell(CallMessages.Output(problem.Message));
            return ExitCode.Unusable;
        }
#pragma warning disable CA1031 // The outermost frame: a fault of ours is told in one line, not as a crash.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            outlet.Tell(CallMessages.Broken(fault.Message));
            if (!string.IsNullOrEmpty(Environment.GetEnvironmentVariable("FRONTEND_TRACE")))
            {
                outlet.Messages.WriteLine(fault);
            }

            return ExitCode.Internal;
        }
    }

    private static int Dispatch(string[] args, Outlet outlet, Func<int?>? openTerminal)
    {
        RootCommand root = new("Works out what a scalp-biopotential front end records, from the electrodes to the digital filters, and whether that meets what is asked of it.");
        root.Subcommands.Add(CheckCommand.Make(outlet));
        root.Subcommands.Add(ExplainCommand.Make(outlet));
        root.Subcommands.Add(SheetCommand.Make(outlet));
        root.Subcommands.Add(NewCommand.Make(outlet));
        if (args.Length == 0)
        {
            if (openTerminal?.Invoke() is { } code)
            {
                return code;
            }

            args = ["--help"];
        }

        // Response files (@file) would make a design called "@home.toml" unreadable.
        ParseResult call = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (call.Errors.Count > 0)
        {
            string command = call.CommandResult.Command is RootCommand ? "frontend" : $"frontend {call.CommandResult.Command.Name}";
            outlet.Tell(call.Errors.Select(error => CallMessages.Call(error.Message, command)));
            return ExitCode.Unusable;
        }

        return call.Invoke(new InvocationConfiguration { Output = outlet.Results, Error = outlet.Messages, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
    }
}
