using System.Diagnostics;
using System.Text;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace FrontEnd.Terminal.Screens;

/// <summary>The one view: shows the painter's picture and turns keys and clicks into messages.</summary>
internal sealed class MainScreen : Runnable
{
    private readonly Session _session;
    private readonly Palette _palette;
    private readonly bool _ascii;
    private readonly StringBuilder _run = new();
    private readonly WordWatch _words = new();
    private Canvas? _painted;
    private Canvas? _shown;
    private bool _drawAll = true;
    private object? _asked;
    private long _askedAt;

    /// <summary>A view of a session.</summary>
    public MainScreen(Session session, Palette palette, bool ascii)
    {
        (_session, _palette, _ascii) = (session, palette, ascii);
        Width = Dim.Fill();
        Height = Dim.Fill();
        CanFocus = true;
        session.Changed = NeedsDrawing;
        session.Redraw = DrawAll;

        // Every key is ours: none of the library's own bindings may act first.
        KeyBindings.Clear();
        HotKeyBindings.Clear();
    }

    /// <summary>The picture that is on the screen.</summary>
    public Canvas? Picture => _shown;

    /// <summary>Whether the terminal has sent something that is not read yet.</summary>
    public Func<bool> HasUnread { get; set; } = () => false;

    /// <summary>Tells the loop that there is something to do.</summary>
    public Action Wake { get; set; } = () => { };

    /// <summary>Takes what came from the terminal.</summary>
    /// <param name="all">Each with the moment at which it was read; what was read in one piece has the same.</param>
    public void Hear(IReadOnlyList<(Heard What, long Read)> all)
    {
        for (int at = 0; at < all.Count; at++)
        {
            Hear(all[at].What, all[at].Read, all.Count == 1 ? "" : Ahead(all, at));
        }
    }

    /// <summary>The letters and blanks behind a key that were read in one piece with it.</summary>
    private static string Ahead(IReadOnlyList<(Heard What, long Read)> all, int at) => string.Concat(
        all.Skip(at + 1).TakeWhile(one => one.Read == all[at].Read).Select(one => one.What).TakeWhile(
            what => what is Heard.Key key && (WordWatch.IsLetter(key.Stroke) || key.Stroke == Keystroke.Of(' ')))
            .Select(what => ((Heard.Key)what).Stroke.Letter));

    /// <param name="read">When it was read: what was sent ahead of a question is no answer to it.</param>
    private void Hear(Heard what, long read, string ahead)
    {
        if (_session.Model.Page?.Asked is { } asked && (!ReferenceEquals(_asked, asked) || read < _askedAt))
        {
            return;
        }

        switch (what)
        {
            case Heard.Key key:
                _session.Send(_words.Hear(key.Stroke, _session.Model, read, ahead));
                break;
            case Heard.Paste paste:
                _session.Send(new Message.Pasted(paste.Text));
                break;
            case Heard.Wheel wheel:
                _session.Send(new Message.Scrolled(wheel.Lines, _shown?.PaneAt(wheel.X, wheel.Y) ?? Pane.None));
                break;
            case Heard.Click click when _shown?.Hit(click.X, click.Y) is { } message:
                _session.Send(message);
                break;
        }
    }

    // Keys and clicks come by another way than the library's.
    protected override bool OnKeyDown(Key key) => true;

    protected override bool OnMouseEvent(Mouse mouse) => true;

    protected override void OnIsRunningChanged(bool newIsRunning)
    {
        base.OnIsRunningChanged(newIsRunning);
        if (newIsRunning && App?.Driver is { } driver)
        {
            // Whoever empties the driver's cells, such as a resize, takes our picture with them.
            driver.ClearedContents += (_, _) => DrawAll();
        }
    }

    protected override void OnSubViewLayout(LayoutEventArgs args)
    {
        base.OnSubViewLayout(args);
        if (Viewport.Width != _session.Model.Width || Viewport.Height != _session.Model.Height)
        {
            _drawAll = true;
            _session.Send(new Message.Resized(Viewport.Width, Viewport.Height));
        }
    }

    // The picture covers everything; clearing first would touch every cell on every key.
    protected override bool OnClearingViewport() => true;

    protected override bool OnDrawingContent(DrawContext? context)
    {
        Canvas canvas = Paint();
        Canvas? before = _drawAll || _painted is null || _painted.Width != canvas.Width || _painted.Height != canvas.Height
            ? null
            : _painted;
        for (int y = 0; y < canvas.Height; y++)
        {
            DrawRow(canvas, before, y);
        }

        (_painted, _shown, _drawAll) = (canvas, canvas, false);
        NoteQuestion();
        Cursor = canvas.Cursor is { } place
            ? new Cursor { Position = new System.Drawing.Point(place.X, place.Y), Style = CursorStyle.SteadyBar }
            : new Cursor { Position = null };
        return true;
    }

    /// <summary>A question is on the screen once the picture with it has gone out; what was sent before that does not answer it.</summary>
    private void NoteQuestion()
    {
        object? asked = _session.Model.Page?.Asked;
        if (asked is null || ReferenceEquals(asked, _asked))
        {
            _asked = asked;
            return;
        }

        // The library writes the picture after this, and runs its timers after that.
        App?.AddTimeout(TimeSpan.Zero, () =>
        {
            _asked = asked;
            _askedAt = Stopwatch.GetTimestamp() + (HasUnread() ? Stopwatch.Frequency / 20 : 0);
            return false;
        });
    }

    private Canvas Paint()
    {
        try
        {
            return Painter.Paint(_session.Model, _ascii);
        }
#pragma warning disable CA1031 // A page of ours that cannot be painted must not take the others with it.
        catch (Exception fault) when (_session.Leave(fault))
#pragma warning restore CA1031
        {
            return Painter.Paint(_session.Model, _ascii);
        }
    }

    private void DrawAll()
    {
        _drawAll = true;
        NeedsDrawing();
    }

    private void NeedsDrawing()
    {
        SetNeedsDraw();
        Wake();
    }

    /// <summary>Writes the cells of a row that differ from what is there, a run of one ink at a time.</summary>
    private void DrawRow(Canvas canvas, Canvas? before, int y)
    {
        int x = 0;
        while (x < canvas.Width)
        {
            if (before is not null && Same(canvas, before, x, y))
            {
                x++;
                continue;
            }

            Ink ink = canvas.InkAt(x, y);
            int start = x;
            _run.Clear();
            while (x < canvas.Width && canvas.InkAt(x, y) == ink && (before is null || !Same(canvas, before, x, y)))
            {
                Rune rune = canvas.RuneAt(x, y);
                if (rune.Value != 0)
                {
                    _run.Append(rune.ToString());
                }

                x++;
            }

            SetAttribute(_palette[ink]);
            AddStr(start, y, _run.ToString());
        }
    }

    private static bool Same(Canvas canvas, Canvas before, int x, int y) =>
        canvas.RuneAt(x, y) == before.RuneAt(x, y) && canvas.InkAt(x, y) == before.InkAt(x, y);
}
