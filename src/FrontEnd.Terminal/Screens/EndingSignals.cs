using System.Runtime.InteropServices;

namespace FrontEnd.Terminal.Screens;

/// <summary>The signals that would end the program where it stands, with the terminal left as the screens had it. What a fault of the program
/// itself raises, and what cannot be heard, is not among them; nor a pipe without a reader, which ends nothing here.</summary>
internal sealed class EndingSignals : IDisposable
{
    // Signals 1, 2, 3, 14, 15 and 24 to 27 are alike everywhere: hang-up, interrupt, quit, alarm, terminate, two limits, two timers. The
    // others, user's 1 and 2 first, have numbers of their own. From memory.
    private static readonly int[] Everywhere = [1, 2, 3, 14, 15, 24, 25, 26, 27], OnLinux = [10, 12, 16, 29, 30, 31], Elsewhere = [12, 30, 31];

    private readonly List<PosixSignalRegistration> _heard = [];

    /// <summary>Listens for them all.</summary>
    /// <param name="leave">Ends the program with an exit code: 128 and the signal's number, as shells have it. From any thread.</param>
    public EndingSignals(Action<int> leave)
    {
        if (OperatingSystem.IsWindows())
        {
            Listen(PosixSignal.SIGTERM, 15);
            Listen(PosixSignal.SIGINT, 2);
            Listen(PosixSignal.SIGHUP, 1);
            Listen(PosixSignal.SIGQUIT, 3);
            return;
        }

        foreach (int signal in (int[])[.. Everywhere, .. OperatingSystem.IsLinux() ? OnLinux : Elsewhere])
        {
            Listen((PosixSignal)signal, signal);
        }

        void Listen(PosixSignal signal, int number) => _heard.Add(PosixSignalRegistration.Create(signal, heard =>
        {
            heard.Cancel = true;
            leave(128 + number);
        }));
    }

    /// <inheritdoc/>
    public void Dispose() => _heard.ForEach(one => one.Dispose());
}
