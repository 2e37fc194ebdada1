using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using Terminal.Gui.Drivers;

namespace FrontEnd.Terminal.Screens;

/// <summary>Reads the terminal in place of the widget library: its parser throws on keys that it does not know (a null reference on rxvt's
/// Home, an overflow on a mouse report beyond 2³¹) and tears letters apart at every 256th byte. It is handed nothing, and hears of nothing that
/// comes from the terminal.</summary>
/// <remarks>The library's class below it sets the terminal's raw mode and puts it back, and on Windows reads as well.</remarks>
internal sealed class TerminalInput : AnsiInput
{
    private static readonly TimeSpan LoneEscape = TimeSpan.FromMilliseconds(50), LostEndOfPaste = TimeSpan.FromSeconds(5);

    private const int ForEver = -1, HungUpMilliseconds = 40, EscapeMilliseconds = 20;

    private readonly ConcurrentQueue<(Heard What, long Read)> _heard = new();
    private readonly InputParser _parser;
    private readonly byte[] _buffer = new byte[4096];
    private readonly Libc.Waiting[] _waiting = new Libc.Waiting[2];

    // Closing its second end ends the waiting for the terminal.
    private readonly int[] _end = [-1, -1];
    private readonly int _descriptor;
    private bool _hungUp;
    private long _last = Stopwatch.GetTimestamp();

    /// <summary>Begins to read the terminal; where there is none, as in tests, nothing ever comes.</summary>
    public TerminalInput()
    {
        _parser = new InputParser(what =>
        {
            _heard.Enqueue((what, _last));
            Came();
        });
        _descriptor = IsAttachedToTerminal ? UnixTerminal.Descriptor : -1;
        if (0 <= _descriptor && Libc.Pipe(_end) != 0)
        {
            throw new InvalidOperationException("no pipe can be had to end the reading of the terminal with");
        }
    }

    /// <summary>Called where something was heard, on the thread that reads.</summary>
    public Action Came { get; set; } = () => { };

    /// <summary>What was heard since it was asked last, and when it was read. From any thread.</summary>
    public IReadOnlyList<(Heard What, long Read)> AllHeard()
    {
        List<(Heard, long)> all = [];
        while (_heard.TryDequeue(out (Heard What, long Read) heard))
        {
            all.Add(heard);
        }

        return all;
    }

    /// <summary>True where the terminal has sent something that nobody has read yet. From any thread.</summary>
    public bool HasUnread => 0 <= _descriptor && Ready(new Libc.Waiting[1], 0);

    /// <summary>Nothing is read any more. Before the application is disposed of, which waits for the reader. From any thread.</summary>
    public void End()
    {
        int end = Interlocked.Exchange(ref _end[1], -1);
        if (0 <= end)
        {
            _ = Libc.Close(end);
        }
    }

    /// <inheritdoc/>
    public override bool Peek()
    {
        if (_hungUp)
        {
            // Always ready, and never anything to read: the library's loop must see that it is to end.
            _hungUp = false;
            Thread.Sleep(HungUpMilliseconds);
            return false;
        }

        if (_descriptor < 0 ? base.Peek() : Ready(_waiting, _parser.IsWaiting ? EscapeMilliseconds : ForEver))
        {
            return true;
        }

        if (_parser.IsWaiting && (_parser.IsPasting ? LostEndOfPaste : LoneEscape) < Stopwatch.GetElapsedTime(_last))
        {
            _parser.Quiet();
        }

        return false;
    }

    /// <inheritdoc/>
    public override IEnumerable<char> Read()
    {
        ReadOnlySpan<byte> came = _descriptor < 0 ? Encoding.UTF8.GetBytes([.. base.Read()]) : Bytes();
        _last = Stopwatch.GetTimestamp();
        _parser.Feed(came);
        return [];
    }

    private ReadOnlySpan<byte> Bytes()
    {
        nint length = Libc.Read(_descriptor, _buffer, (nuint)_buffer.Length);
        _hungUp = length == 0;
        return _buffer.AsSpan(0, (int)Math.Max(0, length));
    }

    private bool Ready(Libc.Waiting[] waiting, int milliseconds)
    {
        waiting[0] = new Libc.Waiting { Descriptor = _descriptor, Wanted = Libc.ToRead };
        if (1 < waiting.Length)
        {
            waiting[1] = new Libc.Waiting { Descriptor = _end[0], Wanted = Libc.ToRead };
        }

        return Libc.Poll(waiting, (nuint)waiting.Length, milliseconds) > 0 && (waiting[0].Came & Libc.ToRead) != 0;
    }
}
