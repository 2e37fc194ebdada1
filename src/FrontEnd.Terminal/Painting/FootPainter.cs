namespace FrontEnd.Terminal;

/// <summary>The foot: help, complaints and news, and the key line.</summary>
internal static class FootPainter
{
    /// <summary>Draws the rows below the body.</summary>
    public static void Foot(Canvas canvas, Model model, Frame frame)
    {
        int y = frame.Bottom + 1, rows = canvas.Height - 2 - frame.Bottom;
        int width = canvas.Width - 2;
        if (model.TourStep is { } step && model.Page is null)
        {
            TourPainter.TourText(canvas, model, step, y, rows);
        }
        else
        {
            (string text, Ink ink) = HelpText(model);
            IReadOnlyList<string> lines = canvas.Wrap(text, width);
            for (int i = 0; i < Math.Min(rows, lines.Count); i++)
            {
                // What does not fit is one key away.
                string all = model.Page is not null ? "" : model.Editing is null ? "Space: all" : "F1: all";
                bool cut = i == rows - 1 && rows < lines.Count;
                canvas.Put(1, y, cut ? canvas.Fit(string.Join(' ', lines.Skip(i)), width - all.Length - 1) : lines[i], ink);
                if (cut && all.Length > 0)
                {
                    canvas.PutRight(canvas.Width - 1, y, all, Ink.Key);
                    canvas.Zone(canvas.Width - 1 - all.Length, y, all.Length, 1, new Message.Do(FieldHelpPage.Way));
                }

                y++;
            }
        }

        Keys(canvas, model);
    }

    /// <summary>Rows of the foot whatever there is to say: two, so that the form does not jump; a page in a low window leaves itself those that
    /// it does not need.</summary>
    public static int UsualRows(Canvas canvas, Model model) => model.Page is { IsOverTheForm: false } && StripPainter.IsFolded(model)
        ? Math.Min(2, canvas.Wrap(HelpText(model).Text, canvas.Width - 2).Count(line => line.Length > 0))
        : 2;

    /// <summary>Rows that what there is to say takes; of help, which is one key away, as many as there are without it.</summary>
    public static int RowsOf(Canvas canvas, Model model) =>
        HelpText(model) is (var text, not Ink.Dim) ? canvas.Wrap(text, canvas.Width - 2).Count : 0;

    /// <summary>What stands at the foot.</summary>
    public static (string Text, Ink Ink) HelpText(Model model)
    {
        Finding? complaint = model.Editing?.Problem ?? model.Complaint;
        if (complaint is not null)
        {
            return ($"{Errors.Heading(model.Here, complaint)}{complaint.Code} {complaint.Message}" + (complaint.Help is null ? "" : $"; {complaint.Help}"), Ink.Fail);
        }

        if (model.Status.Length > 0)
        {
            return (model.Status, Ink.Changed);
        }

        if (model.Page is { } page)
        {
            return (page.Hint(model), Ink.Dim);
        }

        if (model.OnResults)
        {
            return Whereabouts.ResultInHand(model) is { } result
                ? ($"{result.Id}: {result.Equation.Text}  [{ResultText.Source(result.Equation.Source)}]", Ink.Dim) : ("", Ink.Dim);
        }

        return Whereabouts.FieldInHand(model) is not { } row ? ("", Ink.Dim)
            : Errors.Problem(model.Here.Document, row.Field.Key) is { } wrong
                ? ($"{Errors.Heading(model.Here, wrong)}{wrong.Code} {wrong.Message}" + (wrong.Help is null ? "" : $"; {wrong.Help}"), Ink.Fail)
            : (FormRow.Describe(row.Field, model.Here.Document), Ink.Dim);
    }

    private static void Keys(Canvas canvas, Model model)
    {
        int y = canvas.Height - 1, x = 1;
        foreach (KeyHint hint in Fitting(canvas, [.. KeyLine(model)]))
        {
            int width = Width(canvas, hint);
            if (canvas.Width < x + width)
            {
                break;
            }

            int end = canvas.Put(x, y, hint.Key, Ink.Key);
            canvas.Put(end + 1, y, hint.Does, Ink.Plain);
            if (hint.Message is not null)
            {
                canvas.Zone(x, y, width, 1, hint.Message);
            }

            x += width + 2;
        }
    }

    private static int Width(Canvas canvas, KeyHint hint) => Lettering.Columns(canvas.Say($"{hint.Key} {hint.Does}".TrimEnd()));

    /// <summary>The keys that have room, one after the other; the one that leads to all others has it before the rest.</summary>
    private static List<KeyHint> Fitting(Canvas canvas, List<KeyHint> line)
    {
        // Esc leads out of everything and ? to all keys: one of them has room before all others.
        int kept = line.FindLastIndex(item => item.Key is "?" or "Esc");
        KeyHint? last = kept < 0 ? null : line[kept];
        bool Fit(IReadOnlyCollection<KeyHint> shown) => shown.Sum(item => Width(canvas, item) + 2) - 2 <= canvas.Width - 2;
        if (last is null || Fit(line))
        {
            return line;
        }

        List<KeyHint> shown = [.. line];
        // All keys are behind the question mark; where it is not shown, a mark says that there are more.
        KeyHint[] more = last.Key == "?" ? [] : [new(canvas.Ascii ? ".." : "…", "")];
        while (shown.Count > 1 && !Fit([.. shown, .. more]))
        {
            shown.RemoveAt(shown.FindLastIndex(item => !ReferenceEquals(item, last)));
        }

        return [.. shown.Where(item => !ReferenceEquals(item, last)), .. more, last];
    }

    private static IEnumerable<KeyHint> KeyLine(Model model) => model switch
    {
        { Editing: not null } =>
        [
            KeyHint.Of(KeyName.Enter, "Enter", "keep"), KeyHint.Of(KeyName.Escape, "Esc", "drop"), KeyHint.Of(KeyName.Tab, "Tab", "keep"),
            new("Ctrl+C", "copy"), new("Alt+letter", "goes elsewhere"),
        ],
        { Page: { } page } => page.Keys(model),
        { Tour: { } tour, TourStep: { } step } =>
        [
            KeyHint.Of(' ', "Space", step + 1 < tour.Steps.Count ? "next" : "your design"),
            .. tour.Steps[step].Field.Length == 0 ? (KeyHint[])[] : [KeyHint.Of('j', "j", "do it"), KeyHint.Of(Act.Undo, "u", "undo")],
            KeyHint.Of(KeyName.Backspace, "Backspace", "back"), KeyHint.Of(KeyName.Escape, "Esc", "leave the tour"),
        ],
        { OnResults: true } => [
            KeyHint.Of(Act.Enter, "Enter", "why"), KeyHint.Of(Act.Apply, "h", "fix"), KeyHint.Of(Act.SwitchPane, "Tab", "fields"),
            .. Everywhere(model)],
        _ =>
        [
            new("<->", "block"), new("+-", "step"), KeyHint.Of(Act.Enter, "Enter", "edit"), KeyHint.Of(Act.SwitchPane, "Tab", "why"),
            KeyHint.Of(Act.Apply, "h", "fix"), .. Everywhere(model),
        ],
    };

    /// <summary>The keys that act on the form and on the figures alike; the views one by one where there is room.</summary>
    private static IEnumerable<KeyHint> Everywhere(Model model)
    {
        if (Errors.Counted(model.Here) is not null)
        {
            yield return KeyHint.Of(Errors.Way, ",", "next error");
        }

        if (model.Width < 120)
        {
            // The first of the views; the help's first row names the others.
            yield return KeyHint.Of(Act.ViewVerdicts, "v", "verdicts");
        }

        yield return KeyHint.Of(MorePage.Way, "z", "more");
        yield return KeyHint.Of(HelpPage.Way, "?", "all keys");
        yield return KeyHint.Of(Act.Tour, "t", "tour");
        yield return KeyHint.Of(Act.Undo, "u", "undo");
        yield return KeyHint.Of(Act.Save, "w", "save");
        yield return KeyHint.Of(GraphPage.Way, "g", "graph");
        foreach (Place view in model.Width < 120 ? [] : Place.Views)
        {
            yield return KeyHint.Of(view.Letter, view.Letter.ToString(), view.Title);
        }

        yield return KeyHint.Of(ComparePage.Way, "c", "compare");
        yield return KeyHint.Of(Act.Open, "o", "open");
        yield return KeyHint.Of(Act.Quit, "q", "quit");
    }
}
