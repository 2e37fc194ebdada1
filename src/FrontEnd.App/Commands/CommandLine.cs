using System.CommandLine;

namespace FrontEnd.App.Commands;

/// <summary>The program's front door: reads the call, runs the command, turns whatever happens into an exit code.</summary>
internal static class CommandLine
{
    /// <summary>Every command, in the order of the help: a new one is its file and a line here.</summary>
    internal static readonly IReadOnlyList<Func<Outlet, Command>> Makers =
    [
        CheckCommand.Make,
        ExplainCommand.Make,
        SheetCommand.Make,
        SpreadCommand.Make,
        CompareCommand.Make,
        NewCommand.Make,
        CardsCommand.Make,
        FilterCommand.Make,
        CoefficientsCommand.Make,
        ProblemsCommand.Make,
        MarkCommand.Make,
        SitesCommand.Make,
        PairsCommand.Make,
        GlossaryCommand.Make,
        LessonCommand.Make,
        RatesCommand.Make,
        BenchCommand.Make,
        SamplesCommand.Make,
        SizeCommand.Make,
        SchemaCommand.Make,
        CompletionCommand.Make,
        ManualCommand.Make,
    ];

    /// <param name="openTerminal">Opens the screens and returns their exit code; null, or a null answer, where there is no terminal to open
    /// them on.</param>
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
            outlet.Tell(CallMessages.Output(problem));
            return ExitCode.Unusable;
        }
        // The outermost frame: a fault of ours is told in one line, not as a crash.
        catch (Exception fault)
        {
            outlet.Tell(Fault.Of(fault));
            if (Fault.IsTraced)
            {
                outlet.Messages.WriteLine(fault);
            }

            return ExitCode.Internal;
        }
    }

    private static int Dispatch(string[] args, Outlet outlet, Func<int?>? openTerminal)
    {
        RootCommand root = new("Works out what a scalp-biopotential front end records, from the electrodes to the digital filters, and whether it meets its requirements.");
        foreach (Func<Outlet, Command> make in Makers)
        {
            root.Subcommands.Add(make(outlet));
        }

        if (args.Length == 0)
        {
            if (openTerminal?.Invoke() is { } code)
            {
                return code;
            }

            args = ["--help"];
        }

        if (args[0].StartsWith(Completions.Directive, StringComparison.Ordinal))
        {
            return Completions.Print(root, args, outlet);
        }

        // Response files (@file) would make a design called "@home.toml" unreadable.
        ParseResult call = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (WrongCalls.In(call, args) is { Count: > 0 } problems)
        {
            outlet.Tell(problems);
            return ExitCode.Unusable;
        }

        return call.Invoke(new InvocationConfiguration { Output = outlet.Results, Error = outlet.Messages,
            EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
    }
}
