using FrontEnd.Terminal;
using FrontEnd.Terminal.Screens;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Time;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>The whole interface on the library's in-memory driver: real keys in, the driver's own picture out; no terminal, no loop.</summary>
internal sealed class Harness : IDisposable
{
    private readonly VirtualTimeProvider _time = new();
    private readonly IApplication _app;
    private readonly Performer _performer;
    private readonly MainScreen _screen;
    private readonly InputParser _parser;
    private readonly SessionToken _token;
    private readonly List<(Heard, long)> _heard = [];
    private long _read = System.Diagnostics.Stopwatch.GetTimestamp();

    public Harness(int width, int height, string? path = null, RecoveryFiles? recovery = null, bool ascii = false, bool colour = true)
    {
        _app = Application.Create(_time);
        _app.Init(DriverRegistry.Names.ANSI);
        _app.Driver!.SetScreenSize(width, height);
        DesignDocument document = path is null ? DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml) : DesignDocument.Read(path);
        _performer = new Performer(recovery, null, text => Copied = text, patience: TimeSpan.Zero);
        (Model model, Effect first) = Model.Start(document, path);
        Session = new Session(model, _performer, action => _app.Invoke(action));
        _screen = new MainScreen(Session, new Palette(colour), ascii);
        _parser = new InputParser(what => _heard.Add((what, _read)));
        _token = _app.Begin(_screen)!;
        Session.Perform(first);
        Settle();
    }

    public Session Session { get; }

    public string? Copied { get; private set; }

    /// <summary>What the driver holds, trailing blanks cut off.</summary>
    public string Screen => string.Join('\n', _app.Driver!.ToString()!.Split('\n').Select(line => line.TrimEnd('\r', ' '))).TrimEnd('\n') + "\n";

    /// <summary>The same with what sets the colours, the escape written as \e.</summary>
    public string Coded => _app.Driver!.ToAnsi().Replace("\u001b", "\\e", StringComparison.Ordinal).Replace("\r", "", StringComparison.Ordinal) + "\n";

    public IApplication App => _app;

    public Harness Press(params Key[] keys)
    {
        foreach (Key key in keys)
        {
            Send(AnsiKeyboardEncoder.Encode(key)).Settle();
        }

        return this;
    }

    /// <summary>What a terminal would send, through the program's own reader, in one piece: nothing is drawn in between.</summary>
    public Harness Send(string text) => Send(System.Text.Encoding.UTF8.GetBytes(text));

    public Harness Send(ReadOnlySpan<byte> bytes)
    {
        // As fast as a person's commands at the most, whatever the machine: each piece half a second after the last.
        _read = Math.Max(_read, System.Diagnostics.Stopwatch.GetTimestamp()) + (long)(0.5 * System.Diagnostics.Stopwatch.Frequency);
        return Feed(bytes);
    }

    /// <summary>The same so many milliseconds after what was sent last.</summary>
    public Harness SendAfter(int milliseconds, string text)
    {
        _read += milliseconds * System.Diagnostics.Stopwatch.Frequency / 1000;
        return Feed(System.Text.Encoding.UTF8.GetBytes(text));
    }

    private Harness Feed(ReadOnlySpan<byte> bytes)
    {
        _heard.Clear();
        _parser.Feed(bytes);
        _parser.Quiet();
        _screen.Hear(_heard);
        return this;
    }

    public Harness Type(string text) => Press([.. text.Select(letter => new Key(letter))]);

    public Harness Click(int x, int y)
    {
        Send($"\u001b[<0;{x + 1};{y + 1}M\u001b[<0;{x + 1};{y + 1}m").Settle();
        return this;
    }

    public void Resize(int width, int height)
    {
        _app.Driver!.SetScreenSize(width, height);
        Settle();
    }

    /// <summary>Has the files looked at, as the clock would.</summary>
    public void LookAtDisk()
    {
        _performer.LookAtDisk();
        Settle();
    }

    /// <summary>Waits for the background, takes in its news, lays out and draws; until nothing comes any more.</summary>
    public void Settle()
    {
        for (int round = 0; round < 6; round++)
        {
            Assert.True(_performer.Idle.Wait(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken), "the background did not come to rest");
            Pump();
            if (!_performer.IsBusy && round >= 2)
            {
                break;
            }
        }
    }

    public void Pump()
    {
        _time.Advance(TimeSpan.FromMilliseconds(20));
        _app.TimedEvents!.RunTimers();
        _app.LayoutAndDraw();
    }

    public void Dispose()
    {
        _app.End(_token);
        _screen.Dispose();
        _app.Dispose();
        _performer.Dispose();
    }
}
