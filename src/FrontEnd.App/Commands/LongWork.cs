using System.Runtime.InteropServices;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using Spectre.Console;

namespace FrontEnd.App.Commands;

/// <summary>Work that a user waits for: a bar where the messages go to a terminal, one plain line elsewhere, and Ctrl-C ends it.</summary>
internal static class LongWork
{
    /// <summary>Draws the builds of a usable design; null where it was cancelled or cannot be done, and the outlet has been told.</summary>
    /// <param name="exit">What the shell is told where there is no result.</param>
    public static SpreadResult? Spread(Design design, SpreadOptions options, Outlet outlet, out int exit)
    {
        SpreadResult? result = Run($"drawing {options.Builds} builds", CallMessages.BuildsWant(options.Builds), options.Builds, outlet,
            (progress, cancellation) => SpreadRun.Run(design, options, progress, cancellation), out bool cancelled);
        exit = cancelled ? ExitCode.Interrupted : ExitCode.Unusable;
        if (result is null && !cancelled)
        {
            Finding[] errors = [.. Evaluator.Evaluate(design).Findings.Where(finding => finding.Severity == Severity.Error)];
            outlet.Tell(errors.Length != 0
                ? errors
                : [CallMessages.Call("some build of this design makes a network without an answer", "frontend spread")]);
        }

        return result;
    }

    private static T? Run<T>(
        string what, string? note, int total, Outlet outlet, Func<IProgress<int>?, CancellationToken, T?> work, out bool cancelled)
        where T : class
    {
        using CancellationTokenSource source = new();
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal =>
        {
            signal.Cancel = true;
            source.Cancel();
        });
        cancelled = false;
        try
        {
            if (Console.IsErrorRedirected)
            {
                outlet.Messages.WriteLine(what);
                Tell(note);
                return work(null, source.Token);
            }

            Tell(note);

            T? result = null;
            Terminal().Progress().AutoClear(true).Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(),
                new RemainingTimeColumn())
                .Start(context => result = work(new Bar(context.AddTask(what, maxValue: total)), source.Token));
            return result;
        }
        catch (OperationCanceledException)
        {
            cancelled = true;
            outlet.Tell(CallMessages.Interrupted(what));
            return null;
        }

        void Tell(string? line)
        {
            if (line is not null)
            {
                outlet.Messages.WriteLine(line);
            }
        }
    }

    private static IAnsiConsole Terminal() =>
        AnsiConsole.Create(new AnsiConsoleSettings { ColorSystem = ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(Console.Error) });

    /// <summary>Reports come from any thread and out of order; the bar never goes back.</summary>
    private sealed class Bar(ProgressTask task) : IProgress<int>
    {
        private readonly Lock _lock = new();

        public void Report(int value)
        {
            lock (_lock)
            {
                task.Value = Math.Max(task.Value, value);
            }
        }
    }
}
