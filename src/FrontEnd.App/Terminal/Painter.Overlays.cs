using FrontEnd.Advice;
using FrontEnd.Designs;
using FrontEnd.Documents;
using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Results;
using FrontEnd.Text;

namespace FrontEnd.App.Terminal;

/// <summary>What lies over the form.</summary>
public static partial class Painter
{
    private const int LabelColumn = 12;

    private static void Why(Canvas canvas, Model model, Overlay.Why why, Frame frame)
    {
        if (model.Here.Shown?.Find(why.ResultId) is not { } result)
        {
            canvas.Put(1, frame.Top, "this design has no such figure any more; Esc goes back", Ink.Dim);
            return;
        }

        int width = frame.Width - 2;
        List<(string Label, string Text, Ink Ink)> parts = [];
        bool judged = result.Verdict.Requirement is not null;
        if (judged)
        {
            // The words are those of the command.
            foreach (ExplainLine line in ExplainText.Judgement(result.Verdict))
            {
                Ink ink = line.Label switch { "verdict" => ResultText.Ink(result.Verdict.Kind), "helps most" => Ink.Key, "limit from" => Ink.Dim, _ => Ink.Plain };
                parts.Add((line.Label, line.Text + (line.Label == "helps most" ? "   (a makes the change)" : ""), ink));
            }

            if (result.Verdict.Improvement is null && result.Verdict.Kind is VerdictKind.Fail or VerdictKind.Marginal)
            {
                parts.Add(("helps most", model.Here.Advised ? "no single change was found that helps" : "being looked for", Ink.Dim));
            }
        }

        if (model.Here.Before?.Find(result.Id) is { } before && ResultText.Value(before) != ResultText.Value(result))
        {
            parts.Add(("was", $"{ResultText.Value(before)} before the last change", Ink.Changed));
        }

        parts.AddRange(ExplainText.Reasons(result).Select(line => (line.Label, line.Text, line.Label switch { "equation" or "why" => Ink.Strong, "source" or "to read" => Ink.Dim, _ => Ink.Plain })));
        parts.Add(("moves by", Moves(result, why.Sensitivities), Ink.Plain));
        canvas.Put(1, frame.Top, canvas.Fit(result.Name, width - Canvas.Columns(result.Id.Text) - 22), Ink.Title);
        canvas.PutRight(frame.Width - 1, frame.Top, canvas.Say($"{canvas.Fit(ResultText.Value(result), 24)}   {result.Id}"), Ink.Strong);
        List<(string Label, string Text, Ink Ink)> lines = [];
        foreach ((string label, string text, Ink ink) in InReadingOrder(parts))
        {
            lines.AddRange(canvas.Wrap(text, width - LabelColumn).Select((line, at) => (at == 0 ? label : "", line, ink)));
        }

        Scrolled(canvas, frame, lines.Count, why.Scroll, (i, y) =>
        {
            canvas.Put(1, y, lines[i].Label, Ink.Dim);
            canvas.Put(1 + LabelColumn, y, lines[i].Text, lines[i].Ink);
        });
    }

    private static readonly string[] ReadingOrder = ["verdict", "most of it", "helps most", "was", "why", "takes", "equation", "numbers", "figure", "by hand", "source", "limit from", "to read", "moves by"];

    /// <summary>What to do and the plain words first, sources last: a screen of 24 rows shows the beginning only. A paragraph without a label stays with the one above it.</summary>
    private static IEnumerable<(string Label, string Text, Ink Ink)> InReadingOrder(List<(string Label, string Text, Ink Ink)> parts)
    {
        List<(int Rank, (string Label, string Text, Ink Ink) Part)> ranked = [];
        foreach ((string Label, string Text, Ink Ink) part in parts)
        {
            ranked.Add((part.Label.Length == 0 ? ranked[^1].Rank : Array.IndexOf(ReadingOrder, part.Label), part));
        }

        return ranked.OrderBy(one => one.Rank).Select(one => one.Part);
    }

    /// <summary>What each input's tenth does, the largest first.</summary>
    private static string Moves(Result result, IReadOnlyList<Sensitivity>? moves)
    {
        if (moves is null)
        {
            return "being worked out";
        }

        return moves.Count == 0 ? "nothing that is set moves it by itself" : string.Join("\n", moves.Take(ExplainText.Rows).Select(move =>
            $"{move.Key} {QuantityText.FormatTrimmed(move.From, 3)} -> {QuantityText.FormatTrimmed(move.To, 3)}: {(move.After is null ? "no number" : QuantityText.Format(move.After))} {ExplainText.Change(result, move)}".TrimEnd()));
    }

    private static void Help(Canvas canvas, Overlay.Help help, Frame frame)
    {
        List<(string Keys, string Does)> lines = [.. KeyMap.Rows.Select(row => (row.Keys, row.Does))];
        lines.Insert(0, ("views", $"each across the whole path: {string.Join(", ", Place.Views.Select(view => $"{view.Letter} {view.Title}"))}"));
        lines.Add(("0-9", "begin typing a value; Enter keeps, Esc drops"));
        lines.Add(("Alt+letter", "the same as the letter, also while typing"));
        lines.Add(("mouse", "click a block, a field, a figure; once more edits or says why; wheel scrolls"));
        lines.Add(("signs", "+ pass   ~ marginal   x fail   . not judged   * changed against the saved file"));
        lines.Add(("strip", "gain or level, then dB of headroom (up to the rails), then the block's worst verdict"));
        int columns = frame.Width >= 130 ? 2 : 1, room = (frame.Width / columns) - 19;
        lines = [.. lines.SelectMany(row => canvas.Wrap(row.Does, room).Select((line, at) => (at == 0 ? row.Keys : "", line)))];
        int rows = (lines.Count + columns - 1) / columns;
        while (rows < lines.Count && lines[rows].Keys.Length == 0)
        {
            // A row is not torn apart between the columns.
            rows++;
        }

        canvas.Put(1, frame.Top, "keys", Ink.Title);
        Scrolled(canvas, frame, rows, help.Scroll, (i, y) =>
        {
            for (int column = 0; column < columns && i + (column * rows) < lines.Count; column++)
            {
                (string keys, string does) = lines[i + (column * rows)];
                int x = 1 + (column * (frame.Width / columns));
                canvas.Put(x, y, keys, Ink.Key, 16);
                canvas.Put(x + 17, y, does);
            }
        });
    }

    private static void Choose(Canvas canvas, Overlay.Choose choose, Frame frame)
    {
        canvas.Put(1, frame.Top, canvas.Fit($"{choose.Key}: {choose.Title}", frame.Width - 2), Ink.Title);
        int name = Math.Min(34, choose.Choices.Max(choice => choice.Word.Length) + 2);
        Picked(canvas, frame, choose.Choices.Count, choose.Selected, (i, y, ink) =>
        {
            Choice choice = choose.Choices[i];
            canvas.Put(2, y, canvas.Fit(choice.Word.Length == 0 ? "(none)" : choice.Word, name), ink);
            canvas.Put(2 + name, y, canvas.Fit(choice.Note, frame.Width - name - 3), Ink.Dim);
        });
    }

    private static void Insert(Canvas canvas, Overlay.Insert insert, Frame frame)
    {
        canvas.Put(1, frame.Top, "insert what? It comes last of its kind; < moves it nearer the scalp", Ink.Title);
        Picked(canvas, frame, insert.Choices.Count, insert.Selected, (i, y, ink) =>
        {
            canvas.Put(2, y, insert.Choices[i].Name, ink);
            canvas.Put(40, y, canvas.Fit($"last of the {Updater.ElementsOf(insert.Choices[i].ListKey)}", frame.Width - 41), Ink.Dim);
        });
    }

    private static void FileName(Canvas canvas, Overlay.FileName file, Frame frame)
    {
        string title = file.Purpose switch
        {
            FilePurpose.Open => "open which design?",
            FilePurpose.SaveAs => "save as",
            FilePurpose.Sheet => "write the sheet to (.html prints, .md, .csv the parts, .json)",
            FilePurpose.Coefficients => "write the digital filters to (.h runs and tests itself, .json, .csv)",
            _ => throw new ArgumentOutOfRangeException(nameof(file), file.Purpose, "Purpose is not handled."),
        };
        canvas.Put(1, frame.Top, title, Ink.Title);
        TypedLine(canvas, 2, frame.Top + 1, frame.Width - 4, file.Line, Ink.Typed);
        IReadOnlyList<string> entries = file.Entries ?? [];
        canvas.Put(1, frame.Top + 2, file.Entries is null ? "looking" : entries.Count == 0 ? file.Purpose == FilePurpose.Open ? "no file of that name" : "" : file.Line.Text.Length == 0 ? "here, and opened lately" : "what there is", Ink.Dim);
        Picked(canvas, frame with { Top = frame.Top + 2 }, entries.Count, file.Selected, (i, y, ink) => canvas.Put(2, y, canvas.Fit(entries[i], frame.Width - 4), ink));
    }

    private static void Question(Canvas canvas, Overlay.Ask ask, Frame frame)
    {
        int width = Math.Min(frame.Width - 4, 64);
        List<string> lines = [.. canvas.Wrap(ask.Question, width - 4)];
        int height = lines.Count + ask.Answers.Count + 3;
        int left = (frame.Width - width) / 2, top = Math.Max(frame.Top, frame.Top + ((frame.Rows - height) / 2));
        canvas.Clear(left, top, width, height);
        string edge = "+" + new string('-', width - 2) + "+";
        canvas.Put(left, top, edge, Ink.Dim);
        canvas.Put(left, top + height - 1, edge, Ink.Dim);
        for (int y = top + 1; y < top + height - 1; y++)
        {
            canvas.Put(left, y, "|", Ink.Dim);
            canvas.Put(left + width - 1, y, "|", Ink.Dim);
        }

        int row = top + 1;
        foreach (string line in lines)
        {
            canvas.Put(left + 2, row++, line, Ink.Strong);
        }

        for (int i = 0; i < ask.Answers.Count; i++)
        {
            canvas.Put(left + 2, row, ask.Answers[i].Letter.ToString(), Ink.Key);
            canvas.Put(left + 4, row, canvas.Fit(ask.Answers[i].Words, width - 6));
            canvas.Zone(left, row++, width, 1, new Message.PickChoice(i));
        }
    }

    private static void Graph(Canvas canvas, Model model, Overlay.Graph graph, Frame frame)
    {
        if (model.Here.Shown is not { } shown)
        {
            canvas.Put(1, frame.Top, "working out", Ink.Dim);
            return;
        }

        PlotData data = Plots.Of(graph.Kind, shown, graph.LogX, graph.LogY);
        if (data.Curves.Count == 0)
        {
            canvas.Put(1, frame.Top, $"{data.Title}: this design has none; up and down go to the other plots", Ink.Dim);
            return;
        }

        DotPlot.Draw(canvas, 0, frame.Top, frame.Width - 1, frame.Rows - 1, data, graph.Cursor);
        canvas.Put(1, frame.Bottom - 1, canvas.Fit(Plots.Readout(data, graph.Cursor), frame.Width - 2), Ink.Changed);
        canvas.Zone(9, frame.Top, frame.Width - 10, frame.Rows, new Message.CursorAt(0));
    }

    private static void Compare(Canvas canvas, Model model, Overlay.Compare compare, Frame frame)
    {
        OpenDesign here = model.Here;
        OpenDesign? other = compare.OtherSlot is { } slot ? model.Designs.Find(design => design.Slot == slot) : null;
        DesignDocument theirs = other?.Document ?? here.Saved;
        string name = other?.Title ?? "saved file";
        int width = frame.Width, value = Math.Max(12, (width - 4) * 3 / 10), key = width - 4 - (2 * value);
        List<(string Text, string Left, string Right, Ink Ink)> lines = [];
        string above = "";
        void Add(string field, string left, string right)
        {
            // A key longer than its column is broken at a dot: its end tells it from the next one. What it has in common with the one above stands once.
            int dot = Canvas.Columns(field) <= key ? -1 : field.LastIndexOf('.', Math.Max(0, Math.Min(field.Length - 1, key - 1)));
            string owner = field[..(dot + 1)];
            if (owner.Length > 0 && owner != above)
            {
                lines.Add((owner, "", "", Ink.Plain));
            }

            above = owner;
            lines.Add((owner.Length > 0 ? $"  {field[(dot + 1)..]}" : field, left, right, Ink.Plain));
        }

        foreach (Field<Design> field in DesignFields.Of(here.Document.Design))
        {
            string mine = FieldText.Format(field, field.Get(here.Document.Design));
            string old = DesignFields.Find(theirs.Design, field.Key) is { } their && DesignFields.IsPresent(theirs.Design, field.Key) ? FieldText.Format(their, their.Get(theirs.Design)) : "not there";
            if (mine != old)
            {
                Add(field.Key, old.Length == 0 ? "-" : old, mine.Length == 0 ? "-" : mine);
            }
        }

        foreach (Field<Design> field in DesignFields.Of(theirs.Design).Where(field => DesignFields.Find(here.Document.Design, field.Key) is null && field.Key.EndsWith(".name", StringComparison.Ordinal)))
        {
            Add(field.Key, FieldText.Format(field, field.Get(theirs.Design)), "not there");
        }

        if (lines.Count == 0)
        {
            lines.Add(("nothing is different", "", "", Ink.Dim));
        }

        // Another open design has figures of its own; the saved file's are those before all changes, if they were ever shown.
        Assessment? before = other?.Shown ?? here.SavedShown;
        if (here.Shown is { } now && before is not null)
        {
            lines.Add(("", "", "", Ink.Plain));
            foreach (Result result in now.Judged)
            {
                Result? was = before.Find(result.Id);
                string Told(Result? one) => one is null ? "not there" : $"{Wording.Sign(one.Verdict.Kind)} {ResultText.Value(one)}";
                bool moved = was is null || ResultText.Value(was) != ResultText.Value(result) || was.Verdict.Kind != result.Verdict.Kind;
                Ink ink = moved ? ResultText.Ink(result.Verdict.Kind) : Ink.Dim;
                lines.AddRange(canvas.Wrap(result.Name, key - 2).Select((line, at) => at == 0 ? (line, Told(was), Told(result), ink) : ($"  {line}", "", "", ink)));
            }
        }

        canvas.Put(1, frame.Top, "what is different", Ink.Title);
        canvas.Put(1 + key + 1, frame.Top, canvas.Fit(name, value - 1), Ink.Title);
        canvas.Put(1 + key + 1 + value + 1, frame.Top, canvas.Fit(here.Title + " now", value), Ink.Title);
        Scrolled(canvas, frame, lines.Count, compare.Scroll, (i, y) =>
        {
            canvas.Put(1, y, canvas.Fit(lines[i].Text, key));
            canvas.Put(1 + key + 1, y, canvas.Fit(lines[i].Left, value - 1), Ink.Dim);
            canvas.Put(1 + key + 1 + value + 1, y, canvas.Fit(lines[i].Right, value), lines[i].Ink);
        });
    }

    private static void Scrolled(Canvas canvas, Frame frame, int count, int scroll, Action<int, int> line)
    {
        int room = frame.Rows - 1;
        canvas.ScrollEnd = Math.Max(0, count - room);
        int first = Math.Clamp(scroll, 0, canvas.ScrollEnd);
        for (int i = 0; i < room && first + i < count; i++)
        {
            line(first + i, frame.Top + 1 + i);
        }

        if (first + room < count)
        {
            canvas.PutRight(frame.Width - 1, frame.Bottom, $" {count - first - room} more below ", Ink.Key);
        }
    }

    private static void Picked(Canvas canvas, Frame frame, int count, int selected, Action<int, int, Ink> line)
    {
        int room = frame.Rows - 1;
        int first = FirstLine(Math.Max(0, selected), count, room);
        for (int i = 0; i < room && first + i < count; i++)
        {
            int y = frame.Top + 1 + i;
            bool chosen = first + i == selected;
            canvas.Put(0, y, chosen ? ">" : " ", Ink.Key);
            line(first + i, y, chosen ? Ink.Chosen : Ink.Plain);
            canvas.Zone(0, y, frame.Width, 1, new Message.PickChoice(first + i));
        }

        if (first + room < count)
        {
            canvas.PutRight(frame.Width - 1, frame.Bottom, $" {count - first - room} more below ", Ink.Key);
        }
    }
}
