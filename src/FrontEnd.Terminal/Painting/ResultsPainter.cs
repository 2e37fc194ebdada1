using FrontEnd.Documents.Sheets;
using FrontEnd.Reporting;

namespace FrontEnd.Terminal;

/// <summary>What the design does: the figures of the place in hand, worst first.</summary>
internal static class ResultsPainter
{
    /// <summary>Draws the figures.</summary>
    public static void Results(Canvas canvas, Model model, Place place, int x, int top, int width, int height)
    {
        IReadOnlyList<Result> results = Whereabouts.ResultsOf(model);
        const string Order = "worst first; cautions last", Whole = "what it does, " + Order;
        canvas.Put(x, top, canvas.Fit(place.Id == Place.Verdicts || width < Whole.Length ? Order : Whole, width), model.OnResults ? Ink.Title : Ink.Dim);
        if (model.Here.Shown is not { } shown)
        {
            canvas.Put(x, top + 1, "computing", Ink.Dim);
            return;
        }

        int y = top + 1;
        // Where there are no figures, why not is worth more than their names.
        foreach (string line in Drawing.Cut(canvas, [.. Withheld(canvas, model, shown, width)], Math.Max(3, shown.HasFigures || model.OnResults ? height / 2 : height - 2), width))
        {
            canvas.Put(x, y++, line, Ink.Fail);
        }

        IReadOnlyList<string> cautions = Whereabouts.CautionsOf(model);
        int chosen = Math.Clamp(model.ResultRow, 0, Math.Max(0, results.Count + cautions.Count - 1));
        List<(int Index, string Text, Ink Ink, string? Value)> lines = [];
        int inHandRow = chosen;
        for (int i = 0; i < results.Count; i++)
        {
            if (0 < i && ResultPairs.FigureAt(shown, results[i])?.Id == results[i - 1].Id)
            {
                // It stands in the row above.
                inHandRow = i == chosen ? i - 1 : inHandRow;
                continue;
            }

            bool isNext = chosen == i + 1 && chosen < results.Count && ResultPairs.FigureAt(shown, results[chosen])?.Id == results[i].Id;
            ResultLines(canvas, model, isNext ? results[chosen] : results[i], results[i], i, (i == chosen || isNext) && model.OnResults, width, lines);
        }

        for (int i = 0; i < cautions.Count; i++)
        {
            int row = results.Count + i;
            Ink ink = row == chosen && model.OnResults ? Ink.Strong : Ink.Plain;
            lines.AddRange(canvas.Wrap(cautions[i], width - 2).Select(line => (row, line, ink, (string?)null)));
        }

        int room = top + height - y;
        int at = Math.Max(0, lines.FindIndex(line => line.Index == inHandRow));
        int extent = lines.Count(line => line.Index == inHandRow);
        int first = model.OnResults ? Drawing.FirstLine(Math.Min(lines.Count - 1, at + extent - 1), lines.Count, room) : 0;
        first = model.OnResults ? Math.Min(first, at) : first;
        for (int i = 0; i < room && first + i < lines.Count; i++)
        {
            (int index, string text, Ink ink, string? value) = lines[first + i];
            bool inHand = model.OnResults && index == inHandRow, isWhole = inHandRow == chosen;
            if (value is null)
            {
                canvas.Put(x + 2, y + i, text, ink);
            }
            else
            {
                canvas.Put(x, y + i, text, inHand && isWhole ? Ink.Chosen : ink);
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
    /// <param name="picked">The one of the row's two figures that is in hand; the first one where neither is.</param>
    private static void ResultLines(
        Canvas canvas, Model model, Result picked, Result result, int index, bool inHand, int width, List<(int, string, Ink, string?)> lines)
    {
        bool judged = result.Verdict.Requirement is not null;
        string figure = Figure(model, result, width);
        string value = result.State == ResultState.Number ? canvas.Say(figure) : canvas.Fit(figure, Math.Max(12, width / 2));
        VerdictKind kind = model.Here.Shown is { } shown ? NodeVerdicts.Of(shown, result) : result.Verdict.Kind;
        bool signed = judged || kind != VerdictKind.NotJudged;
        string sign = signed ? $"{Wording.Sign(kind)} " : "  ";
        Ink ink = signed ? ResultText.Ink(kind) : Ink.Dim;
        int nameRoom = width - Lettering.Columns(value) - 1;
        string name = canvas.Say(sign + result.Name);
        bool isShort = nameRoom < Lettering.Columns(name);
        if (isShort)
        {
            name = canvas.Say(sign + (model.Here.Shown?.ShortNames.GetValueOrDefault(result.Id) ?? result.Name));
        }

        if (Lettering.Columns(name) <= nameRoom)
        {
            lines.Add((index, name, ink, value));
        }
        else
        {
            // Name and figure below each other: neither is cut.
            IReadOnlyList<string> rows = canvas.Wrap(name, width - 2);
            lines.Add((index, rows[0], ink, ""));
            lines.AddRange(rows.Skip(1).Select(row => (index, row, ink, (string?)null)));
            lines.Add((index, "", ink, value));
        }

        if (inHand && (isShort || picked != result))
        {
            Add(picked.Name, Ink.Dim, 4);
        }

        const int most = 4;
        Result? before = model.Here.Before?.Find(result.Id);
        string? was = ResultText.Was(before, result, most) is var (old, now)
            ? $"was {old}{(now is null ? "" : $", now {now}")}" + (judged && before!.Verdict.Kind != result.Verdict.Kind ? $", {Wording.Word(before.Verdict.Kind)}" : "")
            : null;
        if (judged)
        {
            // What a current without a limit means for the wearer is said whole.
            Add(ResultText.Margin(result), Ink.Plain, Wording.IsNotLimited(result) ? 12 : 2);
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
            else if (inHand && Lettering.Columns(canvas.Say(figure)) > Lettering.Columns(value))
            {
                Add(ResultText.Value(result), Ink.Plain, 4);
            }
        }

        void Add(string text, Ink color, int most)
        {
            IReadOnlyList<string> wrapped = canvas.Wrap(text, width - 2);
            for (int i = 0; i < Math.Min(most, wrapped.Count); i++)
            {
                bool isLast = i == most - 1 && most < wrapped.Count;
                lines.Add((index, isLast ? canvas.Fit(string.Join(' ', wrapped.Skip(i)), width - 2) : wrapped[i], color, null));
            }
        }
    }

    /// <summary>The figure, and where it belongs to one the frequency that it is at.</summary>
    private static string Figure(Model model, Result result, int width)
    {
        const int WideEnough = 60;
        if (result.State == ResultState.Missing && width < WideEnough)
        {
            return "not computed";
        }

        return model.Here.Shown is { } shown && ResultPairs.FrequencyOf(shown, result) is { } frequency
            ? $"{ResultText.Value(result)} at {ResultText.Value(frequency)}"
            : ResultText.Value(result);
    }
}
