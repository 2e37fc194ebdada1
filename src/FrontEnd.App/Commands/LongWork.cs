using System.Runtime.InteropServices;
using FrontEnd.Reporting;
using FrontEnd.Spread;
using FrontEnd.Teaching;
using Spectre.Console;

namespace FrontEnd.App.Commands;

/// <summary>Work that a user waits for: a bar where the messages go to a terminal, one plain line elsewhere, and Ctrl-C ends it.</summary>
internal static class LongWork
{
    /// <summary>Draws the builds of a usable design; null where it was cancelled or cannot be done, and the outlet has been told.</summary>
    /// <param name="exit">What the shell is told where there is no result.</param>
    public static SpreadResult? Spread(Design design, SpreadOptions options, Outlet outlet, out int exit)
    {
        SpreadResult? result = Run($"drawing {options.Builds} builds", options.Builds, outlet, (progress, cancellation) =>
            SpreadRun.Run(design, options, progress, cancellation), out bool cancelled);
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

    /// <summary>Works out why a figure is what it is, without a word while it lasts; null where there is no such figure, and where it was
    /// cancelled, of which the outlet has been told.</summary>
    public static Explained? Explain(Assessment assessment, string id, Outlet outlet, out bool cancelled) => Interruptible(
        // Not waited for once it is cancelled: it would go on to the end of the evaluation that it is in.
        cancellation => Task.Run(() => Explained.Of(assessment, id, cancellation), cancellation).WaitAsync(cancellation).GetAwaiter().GetResult(),
        () => outlet.Tell(CallMessages.ExplanationInterrupted(id)), out cancelled);

    private static T? Run<T>(string what, int total, Outlet outlet, Func<IProgress<int>?, CancellationToken, T?> work, out bool cancelled)
        where T : class => Interruptible(
        cancellation =>
        {
            if (Console.IsErrorRedirected)
            {
                outlet.Messages.WriteLine(what);
                return work(null, cancellation);
            }

            T? result = null;
            Terminal().Progress().AutoClear(true).Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(),
                new RemainingTimeColumn())
                .Start(context => result = work(new Bar(context.AddTask(what, maxValue: total)), cancellation));
            return result;
        },
        () => outlet.Tell(CallMessages.Interrupted(what)), out cancelled);

    /// <summary>Ctrl-C ends the work, and what was cancelled is told.</summary>
    private static T? Interruptible<T>(Func<CancellationToken, T?> work, Action tell, out bool cancelled)
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
            return work(source.Token);
        }
        catch (OperationCanceledException)
        {
            cancelled = true;
            tell();
            return null;
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
