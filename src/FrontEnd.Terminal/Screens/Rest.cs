using System.Runtime.InteropServices;

namespace FrontEnd.Terminal.Screens;

/// <summary>Where the loop waits while there is nothing to do. The widget library's own loop turns many times a second for ever, and writes
/// to the terminal each time.</summary>
internal sealed class Rest : IDisposable
{
    // On Windows no signal tells of another size: it is looked for.
    private static readonly TimeSpan Longest = OperatingSystem.IsWindows() ? TimeSpan.FromMilliseconds(100) : Timeout.InfiniteTimeSpan;

    private readonly AutoResetEvent _woken = new(initialState: true);
    private readonly PosixSignalRegistration? _otherSize;

    /// <summary>A loop that has something to do at once.</summary>
    public Rest() => _otherSize = OperatingSystem.IsWindows() ? null : PosixSignalRegistration.Create(PosixSignal.SIGWINCH, _ => Wake());

    /// <summary>There is something to do. From any thread.</summary>
    public void Wake()
    {
        try
        {
            _woken.Set();
        }
        catch (ObjectDisposedException)
        {
            // The program ends: whoever wakes it then, such as a calculation that is done, comes too late.
        }
    }

    /// <summary>Waits until there is something to do.</summary>
    public void Wait() => _woken.WaitOne(Longest);

    /// <inheritdoc/>
    public void Dispose()
    {
        _otherSize?.Dispose();
        _woken.Dispose();
    }
}
