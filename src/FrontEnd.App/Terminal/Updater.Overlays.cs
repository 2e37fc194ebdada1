using FrontEnd.Documents.Coefficients;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.App.Terminal;

/// <summary>Keys while something lies over the form.</summary>
public static partial class Updater
{
    /// <summary>What a key does to an overlay; null where the key means what it means everywhere.</summary>
    private static (Model, Effect?)? PressOver(Model model, Overlay overlay, Keystroke key)
    {
        switch (overlay)
        {
            case Overlay.Ask ask:
                return PressAnswer(model, ask, key);
            case Overlay.FileName file:
                return PressFileName(model, file, key);
            case Overlay.Choose choose:
                return Picked(key, choose.Selected, choose.Choices.Count) is { } row ? (model with { Overlay = choose with { Selected = row } }, null)
                    : key.Key == KeyName.Enter ? PickChoice(model, choose.Selected)
                    : key.Key == KeyName.Escape ? (model with { Overlay = null }, null)
                    : Jump(model, choose, key);
            case Overlay.Insert insert:
                return Picked(key, insert.Selected, insert.Choices.Count) is { } at ? (model with { Overlay = insert with { Selected = at } }, null)
                    : key.Key == KeyName.Enter ? PickChoice(model, insert.Selected)
                    : key.Key == KeyName.Escape ? (model with { Overlay = null }, null)
                    : (model, null);
            case Overlay.More more:
                return Picked(key, more.Selected, KeyMap.More.Count) is { } item ? (model with { Overlay = new Overlay.More(item) }, null)
                    : key.Key == KeyName.Enter ? PickChoice(model, more.Selected)
                    : key.Key == KeyName.Escape ? (model with { Overlay = null }, null)
                    : key is { Key: KeyName.Letter, Ctrl: false, Alt: false } ? PickChoice(model, KeyMap.More.ToList().FindIndex(one => one.Under == char.ToLowerInvariant(key.Letter)))
                    : null;
            case Overlay.FieldHelp field:
                return Scrolled(key, field.Scroll) is { } down ? (model with { Overlay = field with { Scroll = down } }, null)
                    : key.Key is KeyName.Escape or KeyName.Enter || KeyMap.Meaning(key) == Act.FieldHelp ? (model with { Overlay = null }, null) : null;
            case Overlay.Study study:
                return PressStudy(model, study, key);
            case Overlay.Terms terms:
                return PressTerms(model, terms, key);
            case Overlay.Head head:
                return PressHead(model, head, key);
            case Overlay.Help help:
                return Scrolled(key, help.Scroll) is { } line ? (model with { Overlay = help with { Scroll = line } }, null)
                    : key.Key is KeyName.Escape or KeyName.Enter ? (model with { Overlay = null }, null) : null;
            case Overlay.Why why:
                return Scrolled(key, why.Scroll) is { } scroll ? (model with { Overlay = why with { Scroll = scroll } }, null)
                    : key.Key is KeyName.Escape or KeyName.Enter ? (model with { Overlay = null }, null)
                    : key is { Key: KeyName.Letter, Letter: 'a' or 'A', Ctrl: false } ? ApplyAdvice(model) : null;
            case Overlay.Compare compare:
                return Scrolled(key, compare.Scroll) is { } top ? (model with { Overlay = compare with { Scroll = top } }, null)
                    : key.Key is KeyName.Escape or KeyName.Enter ? (model with { Overlay = null }, null)
                    : KeyMap.Meaning(key) == Act.Compare ? (NextComparison(model, compare), null) : null;
            case Overlay.Graph graph:
                return PressGraph(model, graph, key);
            default:
                throw new ArgumentOutOfRangeException(nameof(overlay), overlay, "Overlay is not handled.");
        }
    }

    private static int? Picked(Keystroke key, int selected, int count) => key.Key switch
    {
        KeyName.Up => Math.Max(0, selected - 1),
        KeyName.Down => Math.Min(count - 1, selected + 1),
        KeyName.PageUp => Math.Max(0, selected - Page),
        KeyName.PageDown => Math.Min(count - 1, selected + Page),
        KeyName.Home => 0,
        KeyName.End => count - 1,
        _ => null,
    };

    private static int? Scrolled(Keystroke key, int scroll) => key.Key switch
    {
        KeyName.Up => Math.Max(0, scroll - 1),
        KeyName.Down => scroll + 1,
        KeyName.PageUp => Math.Max(0, scroll - Page),
        KeyName.PageDown => scroll + Page,
        KeyName.Home => 0,
        KeyName.End => FarBelow,
        _ => null,
    };

    /// <summary>More lines than any page has; the page brings it back to its last one.</summary>
    private const int FarBelow = 1_000_000;

    /// <summary>The model with its page scrolled no further than to its last line, which only the picture knows; the longer of both pictures, with and without the letters beyond ASCII.</summary>
    private static Model WithinPage(Model model)
    {
        int? scroll = model.Overlay switch
        {
            Overlay.Why why => why.Scroll,
            Overlay.Help help => help.Scroll,
            Overlay.Compare compare => compare.Scroll,
            Overlay.FieldHelp field => field.Scroll,
            Overlay.Study study => study.Scroll,
            Overlay.Head head => head.Scroll,
            _ => null,
        };
        if (scroll is null or 0)
        {
            return model;
        }

        int end = Math.Min(scroll.Value, Math.Max(Painter.Paint(model, ascii: false).ScrollEnd, Painter.Paint(model, ascii: true).ScrollEnd));
        return model with
        {
            Overlay = model.Overlay switch
            {
                Overlay.Why why => why with { Scroll = end },
                Overlay.Help help => help with { Scroll = end },
                Overlay.Compare compare => compare with { Scroll = end },
                Overlay.FieldHelp field => field with { Scroll = end },
                Overlay.Study study => study with { Scroll = end },
                Overlay.Head head => head with { Scroll = end },
                _ => model.Overlay,
            },
        };
    }

    /// <summary>A letter goes to the next word that begins with it.</summary>
    private static (Model, Effect?) Jump(Model model, Overlay.Choose choose, Keystroke key)
    {
        if (key is not { Key: KeyName.Letter, Ctrl: false, Alt: false })
        {
            return (model, null);
        }

        for (int i = 1; i <= choose.Choices.Count; i++)
        {
            int row = (choose.Selected + i) % choose.Choices.Count;
            if (choose.Choices[row].Word.StartsWith(key.Letter.ToString(), StringComparison.OrdinalIgnoreCase))
            {
                return (model with { Overlay = choose with { Selected = row } }, null);
            }
        }

        return (model, null);
    }

    private static (Model, Effect?) PressAnswer(Model model, Overlay.Ask ask, Keystroke key)
    {
        if (key.Key == KeyName.Escape)
        {
            return (model with { Overlay = null }, null);
        }

        char letter = char.ToLowerInvariant(key.Letter);
        int row = key is { Key: KeyName.Letter, Ctrl: false } ? ask.Answers.ToList().FindIndex(answer => answer.Letter == letter)
            : KeyMap.Meaning(key) is Act.Quit or Act.Copy && ask.Answers[0].Message is Message.LeaveNow && ask.Question == "Quit?" ? 0
            : -1;
        return row < 0 ? (model, null) : PickChoice(model, row);
    }

    private static (Model, Effect?) PressFileName(Model model, Overlay.FileName file, Keystroke key)
    {
        switch (key.Key)
        {
            case KeyName.Escape:
                return (model with { Overlay = null }, null);
            case KeyName.Up or KeyName.Down when file.Entries is { Count: > 0 } entries:
                return (model with { Overlay = file with { Selected = Math.Clamp(file.Selected + (key.Key == KeyName.Up ? -1 : 1), -1, entries.Count - 1) } }, null);
            case KeyName.Tab when file.Entries is { Count: > 0 } some:
                string taken = some[Math.Max(0, file.Selected)];
                return (model with { Overlay = file with { Line = new Line(taken, taken.Length, false), Selected = -1 } }, new Effect.List(file.Purpose, taken));
            case KeyName.Enter:
                return FileChosen(model, file, file.Entries is { } listed && 0 <= file.Selected && file.Selected < listed.Count ? listed[file.Selected] : file.Line.Text.Trim());
            default:
                Line line = file.Line.Press(key);
                return (model with { Overlay = file with { Line = line, Selected = -1 } }, line.Text == file.Line.Text ? null : new Effect.List(file.Purpose, line.Text));
        }
    }

    private static (Model, Effect?) FileChosen(Model model, Overlay.FileName file, string path)
    {
        if (path.Length == 0)
        {
            return (model, null);
        }

        if (path[^1] == System.IO.Path.DirectorySeparatorChar || path[^1] == '/')
        {
            return (model with { Overlay = file with { Line = new Line(path, path.Length, false), Entries = null, Selected = -1 } }, new Effect.List(file.Purpose, path));
        }

        Model closed = model with { Overlay = null };
        switch (file.Purpose)
        {
            case FilePurpose.Open:
                return (closed, new Effect.Open(path));
            case FilePurpose.SaveAs:
                return SaveAs(closed, System.IO.Path.HasExtension(path) ? path : path + ".toml");
            case FilePurpose.Coefficients:
                return WriteCoefficients(closed, System.IO.Path.HasExtension(path) ? path : path + CoefficientWriting.Extension, mayReplace: false);
            case FilePurpose.Sheet:
                return WriteSheet(closed, System.IO.Path.HasExtension(path) ? path : path + SheetWriting.Extension, mayReplace: false);
            default:
                throw new ArgumentOutOfRangeException(nameof(file), file.Purpose, "Purpose is not handled.");
        }
    }

    private static Model NextComparison(Model model, Overlay.Compare compare)
    {
        // The saved file, then every other open design, round and round.
        List<int?> others = [.. model.Designs.Where(design => design.Slot != model.Here.Slot).Select(design => (int?)design.Slot), null];
        int next = (others.IndexOf(compare.OtherSlot) + 1) % others.Count;
        return model with { Overlay = compare with { OtherSlot = others[next], Scroll = 0 } };
    }

    private static (Model, Effect?)? PressGraph(Model model, Overlay.Graph graph, Keystroke key)
    {
        const double Small = 1 / 160.0, Large = 1 / 16.0;
        Overlay.Graph? next = key switch
        {
            { Key: KeyName.Left, Shift: true } => graph with { Cursor = Math.Max(0, graph.Cursor - Large) },
            { Key: KeyName.Right, Shift: true } => graph with { Cursor = Math.Min(1, graph.Cursor + Large) },
            { Key: KeyName.Left } => graph with { Cursor = Math.Max(0, graph.Cursor - Small) },
            { Key: KeyName.Right } => graph with { Cursor = Math.Min(1, graph.Cursor + Small) },
            { Key: KeyName.PageUp } => graph with { Cursor = Math.Max(0, graph.Cursor - Large) },
            { Key: KeyName.PageDown } => graph with { Cursor = Math.Min(1, graph.Cursor + Large) },
            { Key: KeyName.Home } => graph with { Cursor = 0 },
            { Key: KeyName.End } => graph with { Cursor = 1 },
            { Key: KeyName.Up } => graph with { Kind = Plots.Neighbour(model, graph.Kind, -1), LogX = Plots.Neighbour(model, graph.Kind, -1) != PlotKind.Step },
            { Key: KeyName.Down or KeyName.Tab } => graph with { Kind = Plots.Neighbour(model, graph.Kind, +1), LogX = Plots.Neighbour(model, graph.Kind, +1) != PlotKind.Step },
            { Key: KeyName.Letter, Letter: 'x' or 'X', Ctrl: false } => graph with { LogX = !graph.LogX },
            { Key: KeyName.Letter, Letter: 'y' or 'Y', Ctrl: false } => graph with { LogY = !graph.LogY },
            _ => null,
        };
        return next is not null ? (model with { Overlay = next }, null)
            : key.Key is KeyName.Escape or KeyName.Enter || KeyMap.Meaning(key) == Act.Plot ? (model with { Overlay = null }, null) : null;
    }
}
