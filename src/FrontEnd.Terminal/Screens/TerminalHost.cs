using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace FrontEnd.Terminal.Screens;

/// <summary>Runs the interface on the real terminal: puts the terminal back however the program ends, and keeps unsaved work.</summary>
internal static class TerminalHost
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);
    private const int LeastThreads = 8;
    private static bool _prepared;

    /// <summary>Sets what is process-wide in the widget library. Once, before any application is made.</summary>
    public static void Prepare()
    {
        if (_prepared)
        {
            return;
        }

        _prepared = true;

        // The library's own quit keys would end the program before we see them; a key that no keyboard has takes their place.
        Application.SetDefaultKeyBinding(Command.Quit, Bind.All(Key.F24));
        // How often the loop turns while it has something to do; while there is nothing it rests.
        Application.MaximumIterationsPerSecond = 250;

        // The sixteen colours that the terminal's owner has chosen; the library would otherwise send its own shades of them.
        Driver.Force16Colors = true;
    }

    /// <summary>Runs the interface until the user leaves. Returns the exit code.</summary>
    public static int Run(DesignDocument document, string? path, bool ascii, bool colour)
    {
        if (!Driver.IsAttachedToTerminal(out _, out _))
        {
            Console.Error.WriteLine("frontend: there is no terminal to show screens on.");
            Console.Error.WriteLine("  do       `frontend check DESIGN` prints the verdicts, `frontend --help` lists the commands");
            return ExitCode.Unusable;
        }

        Prepare();

        // The reader of the terminal and the search for advice wait in threads of the pool; with as few threads as processors the first
        // figures would wait for them.
        ThreadPool.GetMinThreads(out int threads, out int ports);
        ThreadPool.SetMinThreads(Math.Max(threads, LeastThreads), ports);
        string? folder = StateFolder.Path;
        RecoveryFiles? recovery = folder is null ? null : new RecoveryFiles(folder);
        RecentFiles? recent = folder is null ? null : new RecentFiles(folder);
        using Suspension suspension = new();
        using Rest rest = new();
        TerminalFactory factory = new();
        IApplication app = factory.CreateApplication();
        int code = 0;
        Exception? error = null;
        using Performer performer = new(recovery, recent, text => app.Clipboard?.TrySetClipboardData(text), looks: BetweenLooks,
            presence: folder is null ? null : new Presence(folder));
        using EndingSignals signals = new(exit =>
        {
            code = exit;
            performer.Rescue();
            Post(() => StopAll(app));
            Watchdog(exit);
        });
        using Timer? alive = EndWithTheTerminal(performer);

        // A crash on another thread passes no `finally`, and the runtime would end the process by a signal, with its own report. The work is kept here; the
        // loop puts the terminal back and reports, as after its own faults: a picture that it still draws would undo what another thread puts back.
        TaskCompletionSource reported = new();
        AppDomain.CurrentDomain.UnhandledException += (_, crash) =>
        {
            performer.Rescue();
            error = crash.ExceptionObject as Exception;
            code = ExitCode.Internal;
            Post(() => StopAll(app));
            if (!reported.Task.Wait(Patience))
            {
                // The loop hangs, so it draws nothing either.
                PutBack(ExitCode.Internal);
                Report(error);
            }

            Environment.Exit(ExitCode.Internal);
        };

        try
        {
            app.Init();
            (Model model, Effect first) = Model.Start(document, path);
            Session session = new(model with { Ascii = ascii }, performer, Post);
            session.Ended = () => StopAll(app);
            using MainScreen screen = new(session, new Palette(colour), ascii);
            Connect(app, factory.Input!, suspension, session, screen, rest, Post);
            session.Perform(first);
            if (recovery?.Find() is { IsNothing: false } found)
            {
                session.Send(new Message.FoundRecovery(found));
            }

            app.Run(screen);
            if (session.Model.Quitting)
            {
                performer.Forget();
            }
            else
            {
                performer.Rescue();
            }
        }
        // Whatever it is: the work is kept and the terminal put back before it is reported.
        catch (Exception problem)
        {
            performer.Rescue();
            error = problem;
            code = ExitCode.Internal;
        }

        PutBack(code);
        if (error is not null)
        {
            Report(error);
        }

        reported.SetResult();
        return code;

        // The terminal, as it was before.
        void PutBack(int exit)
        {
            Watchdog(exit);
            factory.Input?.End();
            app.Dispose();
        }

        // From any thread: on the loop's own, which is woken for it.
        void Post(Action action)
        {
            if (app.Initialized)
            {
                app.Invoke(action);
                rest.Wake();
            }
        }
    }

    /// <summary>Says what ended the program, once the terminal is put back.</summary>
    private static void Report(Exception? error)
    {
        Console.Error.WriteLine($"frontend: {(error is null ? "" : FindingText.Of(Fault.Of(error)))}the terminal was restored and unsaved work was kept");
        if (Fault.IsTraced && error is not null)
        {
            Console.Error.WriteLine(error);
        }
    }

    /// <summary>Joins the screen with the terminal: what is read there, and stopping and going on as a job of the shell.</summary>
    private static void Connect(IApplication app, TerminalInput input, Suspension suspension, Session session, MainScreen screen,
        Rest rest, Action<Action> post)
    {
        screen.HasUnread = () => input.HasUnread;
        screen.Wake = rest.Wake;
        input.Came = rest.Wake;
        app.Iteration += (_, _) =>
        {
            // Until the first picture is there the library waits for the terminal, and needs its turns.
            if (screen.Picture is not null)
            {
                rest.Wait();
            }

            screen.Hear(input.AllHeard());
        };
        session.Redraw = () =>
        {
            app.ClearScreenNextIteration = true;
            rest.Wake();
        };
        session.Suspend = () =>
        {
            bool stopped = suspension.Stop();
            session.Redraw();
            if (!stopped)
            {
                session.Send(new Message.Told("no shell here could bring a suspended program back; q quits"));
            }
        };
        suspension.Begin(
            app.Driver!.GetOutput(),
            asked: () => post(session.Suspend),
            back: () => post(() =>
            {
                suspension.TakeTerminal();
                session.Redraw();
            }));
    }

    /// <summary>Ends the program where its terminal is gone while SIGHUP is ignored: a dead terminal is none any more.</summary>
    private static Timer? EndWithTheTerminal(Performer performer) => !OperatingSystem.IsWindows() && Libc.IsTerminal(0) + Libc.IsTerminal(1) > 0
        ? new Timer(
            _ =>
            {
                if (Libc.IsTerminal(0) + Libc.IsTerminal(1) == 0)
                {
                    performer.Rescue();
                    Environment.Exit(129);
                }
            },
            null, BetweenLooks, BetweenLooks)
        : null;

    private static void StopAll(IApplication app)
    {
        foreach (SessionToken token in app.SessionStack!)
        {
            if (token.Runnable is { } runnable)
            {
                app.RequestStop(runnable);
            }
        }
    }

    /// <summary>Ends the process where putting the terminal back hangs.</summary>
    private static void Watchdog(int code) => _ = Task.Delay(700).ContinueWith(_ => Environment.Exit(code), TaskScheduler.Default);
}
