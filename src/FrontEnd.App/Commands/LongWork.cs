using System.Runtime.InteropServices;
using FrontEnd.Documents.Recordings;
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
        SpreadResult? result = null;
        string what = $"drawing {options.Builds} builds";
        var shown = new Shown(options.Builds, Bar: true, Line: true, "run it again, with fewer --builds if it takes too long")
        {
            Note = CallMessages.BuildsWant(options.Builds),
        };
        int? ended = Run(what, shown, outlet, (progress, cancellation) =>
            result = SpreadRun.Run(design, options, progress, cancellation));
        exit = ended ?? ExitCode.Unusable;
        if (result is null && ended is null)
        {
            Finding[] errors = [.. Evaluator.Evaluate(design).Findings.Where(finding => finding.Severity == Severity.Error)];
            outlet.Tell(errors.Length != 0
                ? errors
                : [CallMessages.Call("a spread of this design cannot be drawn", "frontend spread", "the network of at least one build has no solution")]);
        }

        return result;
    }

    /// <summary>Reads a recording, with a bar where the file is long and no line elsewhere; false where it was cancelled, and the outlet has
    /// been told.</summary>
    public static bool Recording(MeasuredFile file, Outlet outlet, Action<IProgress<int>?, CancellationToken> work) =>
        Run($"reading {Path.GetFileName(file.Path)}", new Shown(MeasuredFile.ProgressSteps, Bar: file.IsLong, Line: false), outlet, work) is null;

    /// <summary>Makes samples and writes them, with a bar or a line where that takes a while. Whoever ends it by a signal finds no file.</summary>
    /// <returns>What the shell is told where it was ended, of which the outlet has been told; null where it was not.</returns>
    public static int? Samples(string what, bool isLong, Outlet outlet, Action<IProgress<int>?, CancellationToken> work) =>
        Run(what, new Shown(SampleFiles.ProgressSteps, Bar: isLong, Line: isLong) { LeavesFiles = true }, outlet, work);

    /// <summary>Works out why a figure is what it is, without a word while it lasts; null where there is no such figure, and where it was
    /// cancelled, of which the outlet has been told.</summary>
    public static Explained? Explain(Assessment assessment, string id, Outlet outlet, out bool cancelled)
    {
        Explained? explained = null;
        // Not waited for once it is cancelled: it would go on to the end of the evaluation that it is in.
        cancelled = null != Run($"explaining {id}", new Shown(0, Bar: false, Line: false), outlet, (_, cancellation) => explained =
            Task.Run(() => Explained.Of(assessment, id, cancellation), cancellation).WaitAsync(cancellation).GetAwaiter().GetResult());
        return explained;
    }

    /// <summary>What the shell is told where it was cancelled; null where it was not.</summary>
    private static int? Run(string what, Shown shown, Outlet outlet, Action<IProgress<int>?, CancellationToken> work)
    {
        using CancellationTokenSource source = new();
        int exit = ExitCode.Interrupted;
        void End(PosixSignalContext signal)
        {
            exit = signal.Signal == PosixSignal.SIGTERM ? ExitCode.Terminated : ExitCode.Interrupted;
            signal.Cancel = true;
            source.Cancel();
        }

        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
        using PosixSignalRegistration? terminate = shown.LeavesFiles ? PosixSignalRegistration.Create(PosixSignal.SIGTERM, End) : null;
        try
        {
            if (Console.IsErrorRedirected && shown.Line)
            {
                outlet.Messages.WriteLine(what);
            }

            if (shown.Note is { } note)
            {
                outlet.Messages.WriteLine(note);
            }

            if (Console.IsErrorRedirected || !shown.Bar)
            {
                work(null, source.Token);
                return null;
            }

            Terminal().Progress().AutoClear(true).Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(),
                new RemainingTimeColumn())
                .Start(context => work(new Bar(context.AddTask(Markup.Escape(what), maxValue: shown.Total)), source.Token));
            return null;
        }
        catch (OperationCanceledException)
        {
            outlet.Tell(CallMessages.Interrupted(what, shown.Remedy));
            return exit;
        }
    }

    /// <summary>What a user sees of it: a bar to a total on a terminal, a line elsewhere; and what to do where it was cancelled.</summary>
    private readonly record struct Shown(int Total, bool Bar, bool Line, string Remedy = "run it again")
    {
        /// <summary>What is worth a line in either case; null for nothing.</summary>
        public string? Note { get; init; }

        /// <summary>True where a file is being written that must not be left behind, whichever signal ends it.</summary>
        public bool LeavesFiles { get; init; }
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
