using FrontEnd.Documents.Sheets;
using FrontEnd.Fields;
using FrontEnd.Findings;
using FrontEnd.Results;

namespace FrontEnd.App.Terminal;

/// <summary>From a model to the picture of the screen. Pure: the same model gives the same picture.</summary>
public static partial class Painter
{
    private const int StripRows = 4;

    /// <param name="ascii">True where only ASCII characters can be shown.</param>
    public static Canvas Paint(Model model, bool ascii)
    {
        Canvas canvas = new(Math.Max(1, model.Width), Math.Max(1, model.Height), ascii);
        if (model.TooSmall)
        {
            TooSmall(canvas, model.Overlay as Overlay.Ask);
            return canvas;
        }

        Frame frame = Frame.Of(canvas, model);
        Title(canvas, model);
        Strip(canvas, model);
        canvas.Rule(frame.Top - 1);
        canvas.Rule(frame.Bottom);
        switch (model.Overlay)
        {
            case null:
                Body(canvas, model, frame);
                break;
            case Overlay.Ask ask:
                Body(canvas, model, frame);
                Question(canvas, ask, frame);
                break;
            case Overlay.Why why:
                Why(canvas, model, why, frame);
                break;
            case Overlay.FieldHelp field:
                FieldHelp(canvas, model, field, frame);
                break;
            case Overlay.More more:
                More(canvas, more, frame);
                break;
            case Overlay.Study study:
                Study(canvas, model, study, frame);
                break;
            case Overlay.Terms terms:
                Terms(canvas, terms, frame);
                break;
            case Overlay.Head head:
                Sites(canvas, head, frame);
                break;
            case Overlay.Help help:
                Help(canvas, help, frame);
                break;
            case Overlay.Choose choose:
                Choose(canvas, choose, frame);
                break;
            case Overlay.Insert insert:
                Insert(canvas, insert, frame);
                break;
            case Overlay.FileName file:
                FileName(canvas, file, frame);
                break;
            case Overlay.Compare compare:
                Compare(canvas, model, compare, frame);
                break;
            case Overlay.Graph graph:
                Graph(canvas, model, graph, frame);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(model), model.Overlay, "Overlay is not handled.");
        }

        Foot(canvas, model, frame);
        return canvas;
    }

    /// <summary>Which rows belong to what.</summary>
    /// <param name="Top">First row of the body.</param>
    /// <param name="Bottom">The rule below the body.</param>
    private readonly record struct Frame(int Top, int Bottom, int Width)
    {
        public int Rows => Bottom - Top;

        public static Frame Of(Canvas canvas, Model model)
        {
            const int First = 1 + StripRows + 1, Least = 4;
            int foot = model is { TourStep: { } step, Overlay: null } ? TourLines(canvas, model, step).Count : 2;
            return new Frame(First, Math.Max(First + Least, model.Height - 2 - foot), model.Width);
        }
    }

    /// <param name="ask">A question that waits for its answer; null for none.</param>
    private static void TooSmall(Canvas canvas, Overlay.Ask? ask)
    {
        string text = ask is null
            ? $"The terminal is {canvas.Width} x {canvas.Height}. It needs 60 x 18: make it larger, nothing is lost. q quits."
            : $"{ask.Question}\n{string.Join('\n', ask.Answers.Select(answer => $"{answer.Letter}: {answer.Words}"))}";
        int row = ask is null ? Math.Max(0, (canvas.Height / 2) - 1) : 0;
        foreach (string line in canvas.Wrap(text, Math.Max(4, canvas.Width - 1)))
        {
            canvas.Put(0, row++, line, Ink.Strong);
        }
    }

    private static void Title(Canvas canvas, Model model)
    {
        OpenDesign here = model.Here;
        int right = here.Shown is null ? canvas.PutRight(canvas.Width - 1, 0, "working out", Ink.Dim) : Counts(canvas, here, here.Shown);
        string many = model.Designs.Count > 1 ? $"{model.Current + 1}/{model.Designs.Count} " : "";
        int room = right - 2 - (here.IsChanged ? 9 : 0);
        int at = canvas.Put(1, 0, canvas.Fit(many + here.Title, Math.Max(4, room)), Ink.Title);
        if (here.IsChanged)
        {
            canvas.Put(at + 1, 0, "*changed", Ink.Changed);
        }
    }

    /// <summary>How many requirements stand how; returns the first column taken.</summary>
    private static int Counts(Canvas canvas, OpenDesign here, Assessment shown)
    {
        int right = canvas.Width - 1;
        foreach (VerdictKind kind in (VerdictKind[])[VerdictKind.NotJudged, VerdictKind.Pass, VerdictKind.Marginal, VerdictKind.Fail])
        {
            int count = shown.Judged.Count(result => result.Verdict.Kind == kind);
            string text = $"{Wording.Sign(kind)} {count} {Wording.Word(kind)}";
            if (count == 0)
            {
                continue;
            }

            canvas.PutRight(right, 0, text, ResultText.Ink(kind));
            canvas.Zone(right - text.Length, 0, text.Length, 1, new Message.Do(Act.ViewVerdicts));
            right -= text.Length + 2;
        }

        if (!here.IsFresh)
        {
            canvas.PutRight(right, 0, "...", Ink.Changed);
        }

        return right - 4;
    }

    // --- the strip ----------------------------------------------------------------------------------------------

    private static void Strip(Canvas canvas, Model model)
    {
        IReadOnlyList<Place> blocks = Place.Blocks(model.Design);
        int inHand = Math.Max(0, blocks.ToList().FindIndex(block => block.Id == model.BlockId));
        List<Cell> cells = [.. blocks.Select(block => CellOf(canvas, model, block, wide: true))];
        if (canvas.Width < cells.Sum(cell => cell.Width + 1))
        {
            cells = [.. blocks.Select(block => CellOf(canvas, model, block, wide: false))];
        }

        int first = 0, last = cells.Count - 1, left = 0;
        if (canvas.Width + 1 < cells.Sum(cell => cell.Width + 1))
        {
            // The block in hand and as many neighbours on both sides as fit whole.
            left = 4;
            int room = canvas.Width - 8 - cells[inHand].Width - 1;
            (first, last) = (inHand, inHand);
            for (bool grew = true; grew;)
            {
                grew = false;
                if (last + 1 < cells.Count && cells[last + 1].Width + 1 <= room)
                {
                    room -= cells[++last].Width + 1;
                    grew = true;
                }

                if (0 < first && cells[first - 1].Width + 1 <= room)
                {
                    room -= cells[--first].Width + 1;
                    grew = true;
                }
            }

            Hidden(canvas, 0, first, $"< {first}", blocks[Math.Max(0, inHand - 1)].Id);
            Hidden(canvas, canvas.Width - 4, cells.Count - 1 - last, $"{cells.Count - 1 - last} >", blocks[Math.Min(blocks.Count - 1, inHand + 1)].Id);
        }

        int used = cells[first..(last + 1)].Sum(cell => cell.Width + 1);
        int gap = 1 + Math.Clamp((canvas.Width - (2 * left) - used) / Math.Max(1, last - first + 1), 0, 8);
        int x = left;
        bool here = Updater.PlaceOf(model).IsBlock;
        for (int i = first; i <= last; i++)
        {
            Block(canvas, cells[i], blocks[i].Id, x, Math.Min(cells[i].Width + gap - 1, canvas.Width - x), blocks[i].Id == model.BlockId, here);
            x += cells[i].Width + gap;
        }
    }

    /// <summary>What stands in one cell of the strip.</summary>
    private sealed record Cell(string Title, string Figure, string Second, string Verdict, Ink Ink, int Width);

    private static Cell CellOf(Canvas canvas, Model model, Place block, bool wide)
    {
        (string figure, string second) = BlockText.Of(block, model.Design, model.Here.Shown, wide);
        VerdictKind kind = model.Here.Shown is { } shown ? block.Worst(shown) : VerdictKind.NotJudged;
        string sign = Wording.Sign(kind).ToString(), word = Wording.Word(kind);
        string verdict = wide || sign.Length + word.Length + 1 < 10 ? $"{sign} {word}" : kind == VerdictKind.NotJudged ? ".no limit" : sign + word;
        string[] lines = [canvas.Fit(block.Title, 12), canvas.Fit(figure, 12), canvas.Fit(second, 12), verdict];
        return new Cell(lines[0], lines[1], lines[2], verdict, ResultText.Ink(kind), lines.Max(Canvas.Columns));
    }

    private static void Hidden(Canvas canvas, int x, int count, string text, string next)
    {
        if (count > 0)
        {
            canvas.Put(x, 1, text, Ink.Key);
            canvas.Zone(x, 1, 4, StripRows, new Message.GoTo(next));
        }
    }

    private static void Block(Canvas canvas, Cell cell, string id, int x, int room, bool chosen, bool here)
    {
        // The name's whole cell, so that the block in hand stands out without colour as well.
        Ink ink = !chosen ? Ink.Strong : here ? Ink.Chosen : Ink.ChosenDim;
        int end = canvas.Put(x, 1, cell.Title, ink, room);
        if (chosen)
        {
            canvas.Put(end, 1, new string(' ', Math.Max(0, x + Math.Min(room, cell.Width) - end)), ink);
        }

        canvas.Put(x, 2, cell.Figure, Ink.Plain, room);
        canvas.Put(x, 3, cell.Second, Ink.Dim, room);
        canvas.Put(x, 4, cell.Verdict, cell.Ink, room);
        canvas.Zone(x, 1, room, StripRows, new Message.GoTo(id));
    }

    // --- the form and what it does ------------------------------------------------------------------------------

    private static void Body(Canvas canvas, Model model, Frame frame)
    {
        Place place = Updater.PlaceOf(model);
        int form = frame.Width >= 110 ? Math.Min(52, frame.Width * 3 / 8) : Math.Clamp(frame.Width * 19 / 40, 30, 46);
        bool beside = frame.Width >= 140;
        int plot = beside ? Math.Min(90, (frame.Width - form) * 9 / 20) : 0;
        int results = frame.Width - form - 1 - plot;
        IReadOnlyList<FormRow> rows = Updater.FormOf(model);
        int needed = rows.Count + rows.Count(row => row.Heading is not null) + 1;
        int below = beside ? 0 : Math.Min(frame.Rows - Math.Min(needed, frame.Rows * 3 / 5), 14);
        below = below < 7 ? frame.Rows >= 20 ? 8 : 0 : below;
        Form(canvas, model, place, rows, 0, frame.Top, form - 1, frame.Rows - below);
        for (int y = frame.Top; y < frame.Bottom; y++)
        {
            canvas.Put(form, y, canvas.Ascii ? "|" : "│", Ink.Dim);
        }

        Results(canvas, model, place, form + 2, frame.Top, results - 2, frame.Rows);
        if (model.Here.Shown is { } shown)
        {
            PlotData data = Plots.Of(place.Plot, shown, place.Plot != PlotKind.Step, true);
            if (data.Curves.Count == 0)
            {
                data = Plots.Of(PlotKind.Response, shown, true, true);
            }

            if (beside)
            {
                int x = form + 1 + results;
                DotPlot.Draw(canvas, x + 1, frame.Top, plot - 2, Math.Min(frame.Rows, 24), data);
                canvas.Zone(x, frame.Top, plot, frame.Rows, new Message.Do(Act.Plot));
            }
            else if (below > 0)
            {
                DotPlot.Draw(canvas, 0, frame.Bottom - below + 1, form - 1, below - 1, data);
                canvas.Zone(0, frame.Bottom - below + 1, form, below - 1, new Message.Do(Act.Plot));
            }
        }
    }

    private static void Form(Canvas canvas, Model model, Place place, IReadOnlyList<FormRow> rows, int x, int top, int width, int height)
    {
        canvas.Put(x + 1, top, canvas.Fit(place.IsBlock ? place.Title : $"{place.Title}: what decides it", width - 1), model.OnResults ? Ink.Dim : Ink.Title);
        if (rows.Count == 0)
        {
            int line = top + 1;
            foreach (string text in canvas.Wrap(place.Id == Place.Digital ? "No digital filter yet; i puts one in." : "Nothing to set here.", width - 2))
            {
                canvas.Put(x + 1, line++, text, Ink.Dim);
            }

            return;
        }

        // Headings take rows of their own: lines, not fields, are scrolled.
        List<(FormRow? Row, int Index, string? Heading)> lines = [];
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].Heading is { } heading)
            {
                lines.Add((null, i, heading));
            }

            lines.Add((rows[i], i, null));
        }

        int chosen = Math.Clamp(model.FieldRow, 0, rows.Count - 1);
        int at = lines.FindIndex(line => line.Row is not null && line.Index == chosen);
        int first = FirstLine(at, lines.Count, height - 1);
        for (int i = 0; i < height - 1 && first + i < lines.Count; i++)
        {
            (FormRow? row, int index, string? heading) = lines[first + i];
            int y = top + 1 + i;
            if (row is null)
            {
                canvas.Put(x + 1, y, canvas.Fit(heading!, width - 2), Ink.Strong);
                continue;
            }

            Field(canvas, model, row, x, y, width, index == chosen);
            canvas.Zone(x, y, width, 1, new Message.PickField(index));
        }

        ScrollMarks(canvas, x + width - 1, top, top + height, first, lines.Count, height - 1);
    }

    private static void Field(Canvas canvas, Model model, FormRow row, int x, int y, int width, bool inHand)
    {
        const int Indent = 2;
        int labelRoom = Math.Min(24, Math.Max(width / 2, width - 16));
        bool changed = FormRow.IsChanged(row.Field, model.Here);
        bool given = model.Here.Document.OriginOf(row.Field.Key)?.Kind != Documents.OriginKind.Default;
        canvas.Put(x, y, inHand && !model.OnResults ? ">" : " ", Ink.Key);
        canvas.Put(x + Indent, y, canvas.Fit(row.Label, labelRoom - Indent), inHand && !model.OnResults ? Ink.Strong : Ink.Plain);
        int at = x + labelRoom + 1, room = width - labelRoom - 3;
        if (model.Editing is { } editor && editor.Key == row.Field.Key)
        {
            TypedLine(canvas, at, y, room + 2, editor.Line, editor.Problem is null ? Ink.Typed : Ink.Fail);
            return;
        }

        string value = canvas.Fit(row.Value(model.Design), room);
        Ink ink = inHand && !model.OnResults ? Ink.Chosen : changed ? Ink.Changed : given ? Ink.Plain : Ink.Dim;
        int end = canvas.Put(at, y, value, ink);
        if (changed)
        {
            canvas.Put(end + 1, y, "*", Ink.Changed);
        }
    }

    /// <summary>A line that is typed in, its caret kept in sight.</summary>
    private static void TypedLine(Canvas canvas, int x, int y, int room, Line line, Ink ink)
    {
        int caret = Canvas.Columns(canvas.Say(line.Text[..line.Caret]));
        string said = canvas.Say(line.Text);
        int skip = Math.Max(0, caret - room + 1);
        int used = 0, from = 0;
        while (from < said.Length && used < skip)
        {
            System.Text.Rune.DecodeFromUtf16(said.AsSpan(from), out System.Text.Rune rune, out int taken);
            used += Canvas.WidthOf(rune);
            from += taken;
        }

        canvas.Put(x, y, new string(' ', Math.Max(0, room)), ink, room);
        canvas.Put(x, y, said[from..], line.AllSelected ? Ink.Selected : ink, room);
        canvas.Cursor = (Math.Min(x + caret - used, x + room - 1), y);
    }

    private static void Results(Canvas canvas, Model model, Place place, int x, int top, int width, int height)
    {
        IReadOnlyList<Result> results = Updater.ResultsOf(model);
        string heading = place.Id == Place.Verdicts ? "worst first" : "what it does, worst first";
        canvas.Put(x, top, heading, model.OnResults ? Ink.Title : Ink.Dim);
        if (model.Here.Shown is not { } shown)
        {
            canvas.Put(x, top + 1, "working out", Ink.Dim);
            return;
        }

        List<Finding> errors = [.. shown.Findings.Where(finding => finding.Severity == Severity.Error)];
        int y = top + 1;
        foreach (Finding finding in errors.Take(3))
        {
            foreach (string line in canvas.Wrap($"x {finding.Message}" + (finding.Help is null ? "" : $"; {finding.Help}"), width))
            {
                canvas.Put(x, y++, line, Ink.Fail);
            }
        }

        int chosen = Math.Clamp(model.ResultRow, 0, Math.Max(0, results.Count - 1));
        List<(int Index, string Text, Ink Ink, string? Value)> lines = [];
        for (int i = 0; i < results.Count; i++)
        {
            ResultLines(canvas, model, results[i], i, i == chosen && model.OnResults, width, lines);
        }

        int room = top + height - y;
        int at = Math.Max(0, lines.FindIndex(line => line.Index == chosen));
        int extent = lines.Count(line => line.Index == chosen);
        int first = model.OnResults ? FirstLine(Math.Min(lines.Count - 1, at + extent - 1), lines.Count, room) : 0;
        first = model.OnResults ? Math.Min(first, at) : first;
        for (int i = 0; i < room && first + i < lines.Count; i++)
        {
            (int index, string text, Ink ink, string? value) = lines[first + i];
            bool inHand = model.OnResults && index == chosen;
            if (value is null)
            {
                canvas.Put(x + 2, y + i, text, ink);
            }
            else
            {
                canvas.Put(x, y + i, text, inHand ? Ink.Chosen : ink);
                canvas.PutRight(x + width, y + i, value, inHand ? Ink.Chosen : ink == Ink.Dim ? Ink.Plain : ink);
            }

            canvas.Zone(x, y + i, width, 1, new Message.PickResult(index));
        }

        ScrollMarks(canvas, x + width, top, top + height, first, lines.Count, room);
    }

    /// <summary>A result's lines: sign, name and figure; for a judged one what is asked, what dominates, what helps; for a moved one what it was.</summary>
    private static void ResultLines(Canvas canvas, Model model, Result result, int index, bool inHand, int width, List<(int, string, Ink, string?)> lines)
    {
        bool judged = result.Verdict.Requirement is not null;
        string value = canvas.Fit(ResultText.Value(result), result.State == ResultState.Number ? 18 : Math.Max(12, width / 2));
        string sign = judged ? $"{Wording.Sign(result.Verdict.Kind)} " : "  ";
        Ink ink = judged ? ResultText.Ink(result.Verdict.Kind) : Ink.Dim;
        int nameRoom = width - Canvas.Columns(value) - 1;
        string name = canvas.Say(sign + result.Name);
        if (judged && nameRoom < Canvas.Columns(name) && canvas.Wrap(name, nameRoom) is { Count: > 0 } wrapped)
        {
            lines.Add((index, wrapped[0], ink, value));
            if (wrapped.Count > 1)
            {
                lines.Add((index, canvas.Fit(string.Join(' ', wrapped.Skip(1)), width - 2), ink, null));
            }
        }
        else
        {
            lines.Add((index, canvas.Fit(name, nameRoom), ink, value));
        }

        string? was = model.Here.Before?.Find(result.Id) is { } before && ResultText.Value(before) is var old && old != ResultText.Value(result)
            ? $"was {old}" + (judged && before.Verdict.Kind != result.Verdict.Kind ? $", {Wording.Word(before.Verdict.Kind)}" : "")
            : null;
        if (judged)
        {
            Add(ResultText.Margin(result), Ink.Plain, 2);
            if (was is not null)
            {
                Add(was, Ink.Changed, 1);
            }

            if (result.Verdict.Kind is VerdictKind.Fail or VerdictKind.Marginal || inHand)
            {
                if (result.Verdict.Dominates is { } dominates)
                {
                    Add($"most of it: {dominates}", Ink.Dim, 1);
                }

                if (ResultText.Helps(result) is { } helps)
                {
                    // The figure that h acts on says so.
                    Add(Updater.FixInHand(model)?.Id == result.Id ? $"h: {helps}" : helps, Ink.Key, 3);
                }
            }
        }
        else
        {
            if (was is not null)
            {
                Add(was, Ink.Changed, 1);
            }

            if (inHand && result.Text is { } text && result.State == ResultState.Number)
            {
                Add(text, Ink.Dim, 2);
            }
            else if (inHand && Canvas.Columns(canvas.Say(ResultText.Value(result))) > Canvas.Columns(value))
            {
                Add(ResultText.Value(result), Ink.Plain, 4);
            }
        }

        void Add(string text, Ink color, int most) => lines.AddRange(canvas.Wrap(text, width - 2).Take(most).Select(line => (index, line, color, (string?)null)));
    }

    private static int FirstLine(int at, int count, int room) => count <= room ? 0 : Math.Clamp(at - (room * 2 / 3), 0, Math.Max(0, count - room));

    /// <param name="bottom">The row below the last line: the rule, or the gap above the plot.</param>
    private static void ScrollMarks(Canvas canvas, int x, int top, int bottom, int first, int count, int room)
    {
        if (first > 0)
        {
            canvas.PutRight(x, top, $"{first} more above", Ink.Dim);
        }

        if (first + room < count)
        {
            canvas.PutRight(x, bottom, $" {count - first - room} more ", Ink.Key);
        }
    }

    // --- the foot -----------------------------------------------------------------------------------------------

    private static void Foot(Canvas canvas, Model model, Frame frame)
    {
        int y = frame.Bottom + 1, rows = canvas.Height - 2 - frame.Bottom;
        int width = canvas.Width - 2;
        if (model.TourStep is { } step && model.Overlay is null)
        {
            TourText(canvas, model, step, y, rows);
        }
        else
        {
            (string text, Ink ink) = HelpText(model);
            IReadOnlyList<string> lines = canvas.Wrap(text, width);
            for (int i = 0; i < Math.Min(rows, lines.Count); i++)
            {
                // What does not fit is one key away.
                string all = model.Editing is null ? "Space: all" : "F1: all";
                bool cut = i == rows - 1 && rows < lines.Count && ink == Ink.Dim && model.Overlay is null;
                canvas.Put(1, y, cut ? canvas.Fit(lines[i] + " " + lines[i + 1], width - all.Length - 1) : lines[i], ink);
                if (cut)
                {
                    canvas.PutRight(canvas.Width - 1, y, all, Ink.Key);
                    canvas.Zone(canvas.Width - 1 - all.Length, y, all.Length, 1, new Message.Do(Act.FieldHelp));
                }

                y++;
            }
        }

        Keys(canvas, model);
    }

    private static (string Text, Ink Ink) HelpText(Model model)
    {
        Finding? complaint = model.Editing?.Problem ?? model.Complaint;
        if (complaint is not null)
        {
            return ($"{complaint.Code} {complaint.Message}" + (complaint.Help is null ? "" : $"; {complaint.Help}"), Ink.Fail);
        }

        if (model.Status.Length > 0)
        {
            return (model.Status, Ink.Changed);
        }

        if (model.Overlay is Overlay.Choose choose && DesignFields.Find(model.Design, choose.Key) is { } chosen)
        {
            // A card's figures are longer than its row.
            Choice choice = choose.Choices[Math.Clamp(choose.Selected, 0, choose.Choices.Count - 1)];
            return (choice.Note.Length > 0 ? $"{choice.Word}: {choice.Note}" : FormRow.Describe(chosen, model.Here.Document), Ink.Dim);
        }

        if (model.Overlay is Overlay.Study { Outcome.Choices.Count: > 0 } study)
        {
            return (study.Outcome.Choices[study.Choice].Note, Ink.Dim);
        }

        if (model.Overlay is Overlay.Study or Overlay.Head && model.Width < PageWidth)
        {
            return ("left and right move the page sideways", Ink.Dim);
        }

        if (model.Overlay is not null)
        {
            return ("", Ink.Dim);
        }

        if (model.OnResults)
        {
            return Updater.ResultsOf(model) is { Count: > 0 } results && results[Math.Clamp(model.ResultRow, 0, results.Count - 1)] is { } result
                ? ($"{result.Id}: {result.Equation.Text}  [{ResultText.Source(result.Equation.Source)}]", Ink.Dim) : ("", Ink.Dim);
        }

        IReadOnlyList<FormRow> rows = Updater.FormOf(model);
        return rows.Count == 0 ? ("", Ink.Dim) : (FormRow.Describe(rows[Math.Clamp(model.FieldRow, 0, rows.Count - 1)].Field, model.Here.Document), Ink.Dim);
    }

    private static void TourText(Canvas canvas, Model model, int step, int y, int rows)
    {
        // In the smallest window not all of it has room: the lesson's text is cut, what to do and what to watch never.
        List<(string Text, Ink Ink)> lines = TourLines(canvas, model, step);
        int dropped = Math.Max(0, lines.Count - rows), text = lines.Count(line => line.Ink == Ink.Plain), kept = Math.Max(1, text - dropped);
        int at = 0;
        foreach ((string line, Ink ink) in lines)
        {
            if (ink != Ink.Plain || ++at <= kept)
            {
                canvas.Put(1, y++, ink == Ink.Plain && at == kept && kept < text ? canvas.Fit(line + " ......", Math.Max(4, Math.Min(Canvas.Columns(line) + 2, canvas.Width - 2))) : line, ink);
            }
        }
    }

    /// <summary>What stands under the form in a step of the tour, wrapped: title and what j does, the lesson, the figure to watch.</summary>
    private static List<(string Text, Ink Ink)> TourLines(Canvas canvas, Model model, int step)
    {
        TourStep shown = Tour.Steps[step];
        int width = canvas.Width - 2;
        List<(string, Ink)> lines = [];
        void Add(string text, Ink ink) => lines.AddRange(canvas.Wrap(text, width).Where(line => line.Length > 0).Select(line => (line, ink)));
        Add($"tour {step + 1} of {Tour.Steps.Count}: {shown.Title}", Ink.Title);
        if (shown.Field.Length > 0)
        {
            Add($"j sets {shown.Field} to {shown.Try}", Ink.Key);
        }

        Add(shown.Text + (model.Complaint is { } complaint ? $" {complaint.Message}" : ""), Ink.Plain);
        Add(Tour.Watch(shown, model.Here), Ink.Changed);
        return lines;
    }

    private static void Keys(Canvas canvas, Model model)
    {
        int y = canvas.Height - 1, x = 1;
        foreach ((string key, string does, Message? message) in Fitting(canvas, [.. KeyLine(model)]))
        {
            string text = canvas.Say($"{key} {does}");
            if (canvas.Width < x + Canvas.Columns(text))
            {
                break;
            }

            int end = canvas.Put(x, y, key, Ink.Key);
            canvas.Put(end + 1, y, does, Ink.Plain);
            if (message is not null)
            {
                canvas.Zone(x, y, Canvas.Columns(text), 1, message);
            }

            x += Canvas.Columns(text) + 2;
        }
    }

    /// <summary>The keys that have room, one after the other; the one that leads to all others has it before the rest.</summary>
    private static List<(string Key, string Does, Message? Message)> Fitting(Canvas canvas, List<(string Key, string Does, Message? Message)> line)
    {
        int help = line.FindIndex(item => item.Key == "?");
        while (0 < help && canvas.Width - 1 < line.Take(help + 1).Sum(item => Canvas.Columns(canvas.Say($"{item.Key} {item.Does}")) + 2) - 2)
        {
            line.RemoveAt(--help);
        }

        return line;
    }

    private static IEnumerable<(string Key, string Does, Message? Message)> KeyLine(Model model)
    {
        static Message Act(Act act) => new Message.Do(act);
        static Message Key(KeyName key) => new Message.Pressed(new Keystroke(key));
        return model switch
        {
            { Editing: not null } => [("Enter", "keep", Key(KeyName.Enter)), ("Esc", "drop", Key(KeyName.Escape)), ("Tab", "keep", Key(KeyName.Tab)), ("Ctrl+C", "copy", null), ("Alt+letter", "goes elsewhere", null)],
            { Overlay: Overlay.Why } => [("a", "make the change that helps most", new Message.Pressed(Keystroke.Of('a'))), ("up/dn", "scroll", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.Graph } => [("<-/->", "cursor", null), ("PgUp/PgDn", "faster", null), ("up/dn", "other plot", null), ("x", "log x", null), ("y", "log y", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.Compare } => [("c", "with the next one", Act(Terminal.Act.Compare)), ("up/dn", "scroll", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.FileName { Purpose: FilePurpose.Open } } => [("Enter", "open", Key(KeyName.Enter)), ("up/dn", "choose", null), ("Tab", "complete the name", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.FileName } => [("Enter", "write", Key(KeyName.Enter)), ("up/dn", "choose", null), ("Tab", "complete the name", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.Ask } => [("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.FieldHelp } => [("up/dn", "scroll", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.More } => [("letter", "opens", null), ("up/dn", "move", null), ("Enter", "take", Key(KeyName.Enter)), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.Study study } => StudyKeys(study),
            { Overlay: Overlay.Terms } => [("letters", "search", null), ("up/dn", "choose", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: Overlay.Head { Typing: not null } } => [("Enter", "keep", Key(KeyName.Enter)), ("Tab", "keep, next field", Key(KeyName.Tab)), ("Esc", "drop", Key(KeyName.Escape))],
            { Overlay: Overlay.Head } => [("Tab", "field", Key(KeyName.Tab)), ("Enter", "edit", Key(KeyName.Enter)), ("+-", "montage, rule", null), ("up/dn", "scroll", null), ("Esc", "back", Key(KeyName.Escape))],
            { Overlay: not null } => [("up/dn", "move", null), ("Enter", "take", Key(KeyName.Enter)), ("Esc", "back", Key(KeyName.Escape))],
            { TourStep: not null } => [("Space", "next", new Message.Pressed(Keystroke.Of(' '))), ("j", "do it", new Message.Pressed(Keystroke.Of('j'))), ("Backspace", "back", Key(KeyName.Backspace)), ("u", "undo", Act(Terminal.Act.Undo)), ("Esc", "leave the tour", Key(KeyName.Escape))],
            { OnResults: true } => [("Enter", "why", Act(Terminal.Act.Enter)), ("h", "fix", Act(Terminal.Act.Apply)), ("Tab", "fields", Act(Terminal.Act.SwitchPane)), .. Everywhere(model)],
            _ => [("<->", "block", null), ("+-", "step", null), ("Enter", "edit", Act(Terminal.Act.Enter)), ("Tab", "why", Act(Terminal.Act.SwitchPane)), ("h", "fix", Act(Terminal.Act.Apply)), .. Everywhere(model)],
        };
    }

    /// <summary>The keys that act on the form and on the figures alike; the views one by one where there is room.</summary>
    private static IEnumerable<(string Key, string Does, Message? Message)> Everywhere(Model model)
    {
        if (model.Width < 120)
        {
            // The first of the views; the help's first row names the others.
            yield return ("v", "verdicts", new Message.Do(Act.ViewVerdicts));
        }

        yield return ("z", "more", new Message.Do(Act.More));
        yield return ("?", "all keys", new Message.Do(Act.Help));
        yield return ("t", "tour", new Message.Do(Act.Tour));
        yield return ("u", "undo", new Message.Do(Act.Undo));
        yield return ("w", "save", new Message.Do(Act.Save));
        yield return ("g", "graph", new Message.Do(Act.Plot));
        foreach (Place view in model.Width < 120 ? [] : Place.Views)
        {
            yield return (view.Letter.ToString(), view.Title, new Message.Pressed(Keystroke.Of(view.Letter)));
        }

        yield return ("c", "compare", new Message.Do(Act.Compare));
        yield return ("o", "open", new Message.Do(Act.Open));
        yield return ("q", "quit", new Message.Do(Act.Quit));
    }
}
