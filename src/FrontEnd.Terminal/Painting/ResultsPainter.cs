using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>What the design does: the figures of the place in hand, worst first.</summary>
public static class ResultsPainter
{
    /// <summary>Draws the figures.</summary>
    public static void Results(Canvas canvas, Model model, Place place, int x, int top, int width, int height)
    {
        IReadOnlyList<Result> results = Whereabouts.ResultsOf(model);
        const string Order = "worst first; cautions last", Whole = "what it does, " + Order;
        canvas.Put(x, top, canvas.Fit(place.Id == Place.Verdicts || width < Whole.Length ? Order : Whole, width), model.OnResults ? Ink.Title : Ink.Dim);
        if (model.Here.Shown is not { } shown)
        {
            canvas.Put(x, top + 1, "working out", Ink.Dim);
            return;
        }

        int y = top + 1;
        foreach (string line in Withheld(canvas, model, shown, width).Take(Math.Max(3, height / 2)))
        {
            canvas.Put(x, y++, line, Ink.Fail);
        }

        IReadOnlyList<string> cautions = Whereabouts.CautionsOf(model);
        int chosen = Math.Clamp(model.ResultRow, 0, Math.Max(0, results.Count + cautions.Count - 1));
        List<(int Index, string Text, Ink Ink, string? Value)> lines = [];
        for (int i = 0; i < results.Count; i++)
        {
            ResultLines(canvas, model, results[i], i, i == chosen && model.OnResults, width, lines);
        }

        for (int i = 0; i < cautions.Count; i++)
        {
            int row = results.Count + i;
            Ink ink = row == chosen && model.OnResults ? Ink.Strong : Ink.Plain;
            lines.AddRange(canvas.Wrap(cautions[i], width - 2).Select(line => (row, line, ink, (string?)null)));
        }

        int room = top + height - y;
        int at = Math.Max(0, lines.FindIndex(line => line.Index == chosen));
        int extent = lines.Count(line => line.Index == chosen);
        int first = model.OnResults ? Drawing.FirstLine(Math.Min(lines.Count - 1, at + extent - 1), lines.Count, room) : 0;
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

        Drawing.ScrollMarks(canvas, x + width, top, top + height, first, lines.Count, room);
    }

    /// <summary>Why figures are missing: the file's errors, and where there are none the evaluation's.</summary>
    private static IEnumerable<string> Withheld(Canvas canvas, Model model, Assessment shown, int width)
    {
        const int Most = 3;
        // What the errors are the foot says, one after the other.
        IEnumerable<string> texts = Errors.Counted(model.Here) is { } errors
            ? [$"{errors} in the file: what rests on {(errors[0] == '1' && errors[1] == ' ' ? "it" : "them")} is not computed; , goes to the next error"]
            : shown.Findings.Where(finding => finding.Severity == Severity.Error).Take(Most)
                .Select(finding => finding.Message + (finding.Help is null ? "" : $"; {finding.Help}"));
        return texts.SelectMany(text => canvas.Wrap("x " + text, width));
    }

    /// <summary>A result's lines: sign, name and figure; for a judged one what is asked, what dominates, what helps; for a moved one what
    /// it was.</summary>
    private static void ResultLines(
        Canvas canvas, Model model, Result result, int index, bool inHand, int width, List<(int, string, Ink, string?)> lines)
    {
        bool judged = result.Verdict.Requirement is not null;
        string value = canvas.Fit(ResultText.Value(result), result.State == ResultState.Number ? 18 : Math.Max(12, width / 2));
        string sign = judged ? $"{Wording.Sign(result.Verdict.Kind)} " : "  ";
        Ink ink = judged ? ResultText.Ink(result.Verdict.Kind) : Ink.Dim;
        int nameRoom = width - Lettering.Columns(value) - 1;
        string name = canvas.Say(sign + result.Name);
        if (judged && nameRoom < Lettering.Columns(name) && canvas.Wrap(name, nameRoom) is { Count: > 0 } wrapped)
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

        string? was = model.Here.Before?.Find(result.Id) is { } before && ResultText.Value(before) is var old
            && old != ResultText.Value(result)
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
                    Add(Advising.FixInHand(model)?.Id == result.Id ? $"h: {helps}" : helps, Ink.Key, 3);
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
            else if (inHand && Lettering.Columns(canvas.Say(ResultText.Value(result))) > Lettering.Columns(value))
            {
                Add(ResultText.Value(result), Ink.Plain, 4);
            }
        }

        void Add(string text, Ink color, int most) =>
            lines.AddRange(canvas.Wrap(text, width - 2).Take(most).Select(line => (index, line, color, (string?)null)));
    }
}
