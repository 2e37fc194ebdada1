using System.Runtime.InteropServices;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace FrontEnd.Terminal.Screens;

/// <summary>Runs the interface on the real terminal: puts the terminal back however the program ends, and keeps unsaved work.</summary>
public static class TerminalHost
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);
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
        Application.MaximumIterationsPerSecond = 60;

        // The sixteen colours that the terminal's owner has chosen; the library would otherwise send its own shades of them.
        Driver.Force16Colors = true;
    }

    /// <summary>Runs the interface until the user leaves. Returns the exit code.</summary>
    public static int Run(DesignDocument document, string? path, bool ascii, bool colour)
    {
        if (!Driver.IsAttachedToTerminal(out _, out _))
        {
            Console.Error.WriteLine("frontend: there is no terminal here to show screens on.");
            Console.Error.WriteLine("  do       `frontend check DESIGN` prints the verdicts, `frontend --help` lists the commands");
            return ExitCode.Unusable;
        }

        Prepare();
        string? folder = StateFolder.Path;
        RecoveryFiles? recovery = folder is null ? null : new RecoveryFiles(folder);
        IApplication app = Application.Create();
        int code = 0;
        Exception? error = null;
        RecentFiles? recent = folder is null ? null : new RecentFiles(folder);
        using Performer performer = new(recovery, recent, text => app.Clipboard?.TrySetClipboardData(text), looks: BetweenLooks,
            presence: folder is null ? null : new Presence(folder));

        void Leave(PosixSignalContext signal, int exit)
        {
            signal.Cancel = true;
            code = exit;
            performer.Rescue();
            if (app.Initialized)
            {
                app.Invoke(() => StopAll(app));
            }

            Watchdog(exit);
        }

        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal => Leave(signal, 143));
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => Leave(signal, 130));

        // Terminal gone: the library's input thread spins for ever on a hung-up terminal and its end waits for that thread; the watchdog
        // ends both.
        using PosixSignalRegistration hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, signal => Leave(signal, 129));
        using PosixSignalRegistration quit = PosixSignalRegistration.Create(PosixSignal.SIGQUIT, signal => Leave(signal, 131));

        // The same for a terminal that goes while SIGHUP is ignored: a dead one is no terminal any more.
        using Timer? alive = !OperatingSystem.IsWindows() && IsTerminal(0) + IsTerminal(1) > 0
            ? new Timer(
                _ =>
                {
                    if (IsTerminal(0) + IsTerminal(1) == 0)
                    {
                        performer.Rescue();
                        Environment.Exit(129);
                    }
                },
                null, 2000, 2000)
            : null;

        // A crash on another thread passes no `finally`: keep the work, put the terminal back, then let the runtime report.
        AppDomain.CurrentDomain.UnhandledException += (_, _) =>
        {
            performer.Rescue();
            Watchdog(ExitCode.Internal);
            app.Dispose();
        };

        try
        {
            app.Init();
            (Model model, Effect first) = Model.Start(document, path);
            Session session = new(model, performer, action =>
            {
                if (app.Initialized)
                {
                    app.Invoke(action);
                }
            });
            session.Ended = () => StopAll(app);
            using MainScreen screen = new(session, new Palette(colour), ascii);
            session.Perform(first);
            if (recovery?.Find() is { Count: > 0 } found)
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

        Watchdog(code);
        app.Dispose();
        if (error is not null)
        {
            Console.Error.WriteLine($"frontend: {FindingText.Of(Fault.Of(error))}the terminal was put back and unsaved work was kept");
            if (Fault.IsTraced)
            {
                Console.Error.WriteLine(error);
            }
        }

        return code;
    }

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

    // One blittable call; the generated form would need unsafe code in the whole project.
    [DllImport("libc", EntryPoint = "isatty")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int IsTerminal(int descriptor);
}
