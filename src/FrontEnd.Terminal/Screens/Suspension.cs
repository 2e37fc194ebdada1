using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using Terminal.Gui.Drivers;

namespace FrontEnd.Terminal.Screens;

/// <summary>The program as a job of its shell: puts the terminal back as it was found, stops, and takes it again when it goes on. Also takes
/// it again where another program stopped this one, without asking.</summary>
/// <remarks>What the widget library has for it sets the terminal to what it thinks sane, not to what it was.</remarks>
internal sealed class Suspension : IDisposable
{
    // Longer than a stop takes to arrive; where none comes, nobody keeps jobs here.
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(400), Moment = TimeSpan.FromMilliseconds(100);

    private const string Leave = "\u001b[?2004l\u001b[?1003l\u001b[?1015l\u001b[?1006l\u001b[0m\u001b[?25h\u001b[?1049l";
    private const string Enter = "\u001b[?1049h\u001b[2J\u001b[?25l\u001b[?1003h\u001b[?1015h\u001b[?1006h\u001b[?2004h";

    private readonly byte[] _found = new byte[Libc.SettingsLength];
    private readonly byte[] _ours = new byte[Libc.SettingsLength];
    private readonly AutoResetEvent _goesOn = new(initialState: false);
    private readonly int _terminal;
    private readonly bool _known;
    private Action _asked = () => { };
    private PosixSignalRegistration? _stop;
    private PosixSignalRegistration? _continue;
    private Action<ReadOnlySpan<char>>? _write;
    private volatile bool _away;

    /// <summary>Takes note of the terminal as it is. Before anything changes it.</summary>
    public Suspension()
    {
        _terminal = UnixTerminal.Descriptor;
        _known = 0 <= _terminal && Libc.GetSettings(_terminal, _found) == 0;
    }

    private static int StopSignal => OperatingSystem.IsLinux() ? 20 : 18;

    /// <summary>Begins to listen: the terminal is ours now.</summary>
    /// <param name="asked">Another program asks this one to stop. From any thread.</param>
    /// <param name="back">This program goes on after something stopped it. From any thread.</param>
    public void Begin(IOutput output, Action asked, Action back)
    {
        if (OperatingSystem.IsWindows() || !_known || Libc.GetSettings(_terminal, _ours) != 0)
        {
            return;
        }

        _write = text => output.Write(text);
        _stop = Asked(asked);
        _continue = PosixSignalRegistration.Create(PosixSignal.SIGCONT, signal =>
        {
            // The runtime would set the terminal to what it takes for right.
            signal.Cancel = true;
            if (_away)
            {
                _goesOn.Set();
            }
            else
            {
                back();
            }
        });
        _asked = asked;
    }

    /// <summary>Puts the terminal back, stops, and comes back when the program goes on; false where no shell here would let it go on.</summary>
    public bool Stop()
    {
        if (OperatingSystem.IsWindows() || _write is null || Libc.GroupOf(Libc.SessionOf(0)) == Libc.GroupOf(0))
        {
            // The session's first process is of our own job: nobody is there to bring a stopped one back.
            return false;
        }

        _away = true;
        _goesOn.Reset();
        _write(Leave);
        _ = Libc.SetSettings(_terminal, Libc.Now, _found);
        _stop?.Dispose();
        _ = Libc.Signal(0, StopSignal);

        // The clock goes on while the program does not: a wait that is over says nothing by itself.
        bool stopped = _goesOn.WaitOne(Patience) || _goesOn.WaitOne(Moment);
        _stop = Asked(_asked);
        _away = false;
        TakeTerminal();
        return stopped;
    }

    /// <summary>Takes the terminal again after the program was stopped.</summary>
    public void TakeTerminal()
    {
        _ = Libc.SetSettings(_terminal, Libc.Now, _ours);
        _write?.Invoke(Enter);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _stop?.Dispose();
        _continue?.Dispose();
        _goesOn.Dispose();
    }

    [UnsupportedOSPlatform("windows")]
    private static PosixSignalRegistration Asked(Action asked) => PosixSignalRegistration.Create(PosixSignal.SIGTSTP, signal =>
    {
        signal.Cancel = true;
        asked();
    });
}
