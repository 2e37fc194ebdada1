using FrontEnd.Documents.Teaching;
using FrontEnd.Fields;
using FrontEnd.Teaching;

namespace FrontEnd.App.Terminal;

/// <summary>Pages of text: a field's help, studies, glossary, sites.</summary>
public static partial class Painter
{
    /// <summary>Columns of a page that the commands print.</summary>
    private const int PageWidth = 80;

    private const int BarWidth = 40;

    private static void FieldHelp(Canvas canvas, Model model, Overlay.FieldHelp help, Frame frame)
    {
        if (DesignFields.Find(model.Design, help.Key) is not { } field)
        {
            canvas.Put(1, frame.Top, "this design has no such field any more; Esc goes back", Ink.Dim);
            return;
        }

        canvas.Put(1, frame.Top, canvas.Fit(field.Key, frame.Width - 2), Ink.Title);
        List<(string Label, string Line)> lines = [];
        foreach ((string label, string text) in FormRow.Parts(field, model.Here.Document))
        {
            lines.AddRange(canvas.Wrap(text, frame.Width - 2 - LabelColumn).Select((line, at) => (at == 0 ? label : "", line)));
        }

        Scrolled(canvas, frame, lines.Count, help.Scroll, (i, y) =>
        {
            canvas.Put(1, y, lines[i].Label, Ink.Dim);
            canvas.Put(1 + LabelColumn, y, lines[i].Line, Ink.Plain);
        });
    }

    private static void More(Canvas canvas, Overlay.More more, Frame frame)
    {
        canvas.Put(1, frame.Top, "more", Ink.Title);
        Picked(canvas, frame, KeyMap.More.Count, more.Selected, (i, y, ink) =>
        {
            canvas.Put(2, y, KeyMap.More[i].Under.ToString(), Ink.Key);
            canvas.Put(4, y, canvas.Fit(KeyMap.More[i].Does, frame.Width - 5), ink);
        });
    }

    private static void Study(Canvas canvas, Model model, Overlay.Study study, Frame frame)
    {
        (string title, string does) = Studies.Words(study.Kind);
        int end = canvas.Put(1, frame.Top, title, Ink.Title);
        if (study.Outcome is { Choices.Count: > 0 } found)
        {
            string hand = $"in hand ({study.Choice + 1} of {found.Choices.Count}): {found.Choices[study.Choice].Word}";
            canvas.Put(end + 3, frame.Top, canvas.Fit(hand, frame.Width - end - 4), Ink.Key);
        }
        else
        {
            canvas.Put(end + 3, frame.Top, canvas.Fit(Wish(model, study), frame.Width - end - 4), Ink.Strong);
        }

        if (study.Progress is { } share)
        {
            // The short ones do not say how far they are.
            string bar = new string('#', (int)(share * BarWidth)).PadRight(BarWidth, '.');
            canvas.Put(1, frame.Top + 2, Studies.WaitsForStart(study.Kind) ? $"[{bar}] {(int)(100 * share),3} %" : "working out", Ink.Changed);
            canvas.Put(1, frame.Top + 3, "Esc breaks it off", Ink.Dim);
        }
        else if (study.Outcome is { } outcome)
        {
            PageText(canvas, frame with { Top = frame.Top + 1 }, outcome.Lines, study.Scroll, study.Sideways);
        }
        else
        {
            int y = frame.Top + 2;
            foreach (string line in canvas.Wrap(does + "\n\nEnter starts.", Math.Min(PageWidth, frame.Width) - 2))
            {
                canvas.Put(1, y++, line, Ink.Plain);
            }
        }
    }

    private static string Wish(Model model, Overlay.Study study) => study.Kind switch
    {
        StudyKind.Spread => $"{study.Wish.Builds} builds, seed {study.Wish.Seed}, parts {(study.Wish.Normal ? "normal, tolerance = 3 sigma" : "uniform within tolerance")}",
        StudyKind.Sizing => $"amplifier {(study.Wish.KeepAmplifier ? "kept: " + Named(model.Design.Amplifier.Card) : "free")}, converter {(study.Wish.KeepConverter ? "kept: " + Named(model.Design.Converter.Card) : "free")}",
        _ => "",
    };

    private static string Named(string card) => card.Length == 0 ? "this design's" : card;

    private static IEnumerable<(string Key, string Does, Message? Message)> StudyKeys(Overlay.Study study)
    {
        static Message Key(KeyName key) => new Message.Pressed(new Keystroke(key));
        if (study.Progress is not null)
        {
            return [("Esc", "break off", Key(KeyName.Escape))];
        }

        IEnumerable<(string, string, Message?)> own = study.Kind switch
        {
            StudyKind.Spread => [("+-", "builds", null), ("d", "distribution", null), ("e", "seed", null)],
            StudyKind.Sizing when study.Outcome is null or { Choices.Count: 0 } => [("a", "amplifier", null), ("c", "converter", null)],
            _ => [],
        };
        return study.Outcome switch
        {
            null => [("Enter", "start", Key(KeyName.Enter)), .. own, ("Esc", "back", Key(KeyName.Escape))],
            { Choices.Count: > 0 } => [("+-", "choose", null), ("Enter", "take over", Key(KeyName.Enter)), ("up/dn Tab", "scroll", null), .. own, ("Esc", "back", Key(KeyName.Escape))],
            _ => [("up/dn Tab", "scroll", null), .. own, ("Esc", "back", Key(KeyName.Escape))],
        };
    }

    private static void Terms(Canvas canvas, Overlay.Terms terms, Frame frame)
    {
        int at = canvas.Put(1, frame.Top, "glossary", Ink.Title);
        TypedLine(canvas, at + 3, frame.Top, Math.Min(40, frame.Width - at - 4), terms.Line, Ink.Typed);
        IReadOnlyList<Term> found = Glossary.Search(terms.Line.Text);
        if (found.Count == 0)
        {
            string near = string.Join(", ", Glossary.NearestTo(terms.Line.Text));
            canvas.Put(1, frame.Top + 1, canvas.Fit(near.Length == 0 ? "no such term" : $"no such term; the nearest: {near}", frame.Width - 2), Ink.Dim);
            return;
        }

        // Names at the left, the term in hand at the right.
        int names = Math.Clamp(frame.Width * 2 / 5, 24, 34), room = frame.Rows - 1;
        int chosen = Math.Clamp(terms.Selected, 0, found.Count - 1);
        int first = FirstLine(chosen, found.Count, room);
        for (int i = 0; i < room && first + i < found.Count; i++)
        {
            bool inHand = first + i == chosen;
            canvas.Put(0, frame.Top + 1 + i, inHand ? ">" : " ", Ink.Key);
            canvas.Put(2, frame.Top + 1 + i, canvas.Fit(found[first + i].Name, names - 3), inHand ? Ink.Chosen : Ink.Plain);
        }

        ScrollMarks(canvas, names, frame.Top, frame.Bottom, first, found.Count, room);
        int y = frame.Top + 1;
        foreach (string line in GlossaryText.Of(found[chosen], others: true).TrimEnd('\n').Split('\n'))
        {
            foreach (string part in canvas.Wrap(line.Trim(), Math.Min(PageWidth, frame.Width - names - 2)))
            {
                canvas.Put(names, y, part, y == frame.Top + 1 ? Ink.Strong : Ink.Plain);
                y++;
            }
        }
    }

    private static void Sites(Canvas canvas, Overlay.Head head, Frame frame)
    {
        int x = canvas.Put(1, frame.Top, "sites", Ink.Title) + 3, y = frame.Top;
        for (int i = 0; i < SitesForm.Fields.Count; i++)
        {
            SitesField field = SitesForm.Fields[i];
            string value = field.Get(head.Request) is { Length: > 0 } text ? text : "-";
            int width = Canvas.Columns(field.Label) + 1 + Math.Max(6, Canvas.Columns(value));
            if (head.Field == i && head.Typing is not null)
            {
                width = Canvas.Columns(field.Label) + 1 + TypedRoom;
            }

            if (frame.Width < x + width)
            {
                (x, y) = (1, y + 1);
            }

            int at = canvas.Put(x, y, field.Label, head.Field == i ? Ink.Strong : Ink.Dim) + 1;
            if (head.Field == i && head.Typing is { } line)
            {
                TypedLine(canvas, at, y, Math.Min(TypedRoom, frame.Width - at - 1), line, Ink.Typed);
            }
            else
            {
                canvas.Put(at, y, canvas.Fit(value, frame.Width - at - 1), head.Field == i ? Ink.Chosen : Ink.Plain);
            }

            x += width + 2;
        }

        PageText(canvas, frame with { Top = y + 2 }, head.Answer.Text.TrimEnd('\n').Split('\n'), head.Scroll, head.Sideways);
    }

    private const int TypedRoom = 24;

    /// <summary>A page of text as the command prints it, in as many columns as the screen has room for; a narrow screen is moved over it.</summary>
    private static void PageText(Canvas canvas, Frame frame, IReadOnlyList<string> lines, int scroll, int sideways)
    {
        int columns = Math.Clamp((frame.Width + 3) / (PageWidth + 3), 1, 3), rows = Math.Max(1, frame.Rows);
        canvas.ScrollEnd = Math.Max(0, lines.Count - (rows * columns));
        int first = Math.Clamp(scroll, 0, canvas.ScrollEnd);
        for (int i = 0; i < rows * columns && first + i < lines.Count; i++)
        {
            string line = canvas.Say(lines[first + i]);
            int x = i / rows * (frame.Width / columns);
            canvas.Put(x, frame.Top + (i % rows), line[Math.Min(line.Length, columns == 1 ? sideways : 0)..], Ink.Plain, columns == 1 ? frame.Width : PageWidth);
        }

        if (first < canvas.ScrollEnd)
        {
            canvas.PutRight(frame.Width - 1, frame.Bottom, $" {canvas.ScrollEnd - first} more below ", Ink.Key);
        }
    }
}
