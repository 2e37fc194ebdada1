using FrontEnd.Documents.Reading;
using FrontEnd.Documents.Sheets;

namespace FrontEnd.Terminal;

/// <summary>The form of the place in hand with its plot.</summary>
internal static class FormPainter
{
    /// <summary>Draws form, figures and plot: side by side where there is room, the plot below the form elsewhere.</summary>
    public static void Body(Canvas canvas, Model model, Frame frame)
    {
        Place place = Whereabouts.PlaceOf(model);
        int form = frame.Width >= 110 ? Math.Min(52, frame.Width * 3 / 8) : Math.Clamp(frame.Width * 19 / 40, 30, 46);
        bool beside = frame.Width >= 140;
        int plot = beside ? (frame.Width - form) * 9 / 20 : 0;
        int results = frame.Width - form - 1 - plot;
        IReadOnlyList<FormRow> rows = Whereabouts.FormOf(model);
        int needed = rows.Count + rows.Count(row => row.Heading is not null) + 1;
        int below = beside ? 0 : Math.Min(frame.Rows - Math.Min(needed, frame.Rows * 3 / 5), 14);
        below = below < 7 ? frame.Rows >= 20 ? 8 : 0 : below;
        Form(canvas, model, place, rows, 0, frame.Top, form - 1, frame.Rows - below);
        canvas.Scrolls(0, frame.Top, form, frame.Rows, Pane.Fields);
        canvas.Scrolls(form, frame.Top, results + 1, frame.Rows, Pane.Figures);
        for (int y = frame.Top; y < frame.Bottom; y++)
        {
            canvas.Put(form, y, canvas.Ascii ? "|" : "│", Ink.Dim);
        }

        ResultsPainter.Results(canvas, model, place, form + 2, frame.Top, results - 2, frame.Rows);
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
                DotPlot.Draw(canvas, x + 1, frame.Top, plot - 2, Math.Min(frame.Rows, Math.Max(24, plot / 2)), data);
                canvas.Zone(x, frame.Top, plot, frame.Rows, new Message.Do(GraphPage.Way));
            }
            else if (below > 0)
            {
                DotPlot.Draw(canvas, 0, frame.Bottom - below + 1, form - 1, below - 1, data);
                canvas.Zone(0, frame.Bottom - below + 1, form, below - 1, new Message.Do(GraphPage.Way));
            }
        }
    }

    private static void Form(Canvas canvas, Model model, Place place, IReadOnlyList<FormRow> rows, int x, int top, int width, int height)
    {
        canvas.Put(
            x + 1, top, canvas.Fit(place.IsBlock ? place.Title : $"{place.Title}: what decides it", width - 1),
            model.OnResults ? Ink.Dim : Ink.Title);
        if (rows.Count == 0)
        {
            int line = top + 1;
            foreach (string text in canvas.Wrap(
                place.Id == Place.Digital ? "No digital filter yet; i inserts one." : "Nothing to set here.", width - 2))
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
        int first = Drawing.FirstLine(at, lines.Count, height - 1);
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

        Drawing.ScrollMarks(canvas, x + width - 1, top, top + height, first, lines.Count, height - 1);
    }

    private static void Field(Canvas canvas, Model model, FormRow row, int x, int y, int width, bool inHand)
    {
        const int Indent = 2;
        int labelRoom = Math.Min(24, Math.Max(width / 2, width - 16));
        bool changed = FormRow.IsChanged(row.Field, model.Here);
        bool given = model.Here.Document.OriginOf(row.Field.Key)?.Kind != OriginKind.Default;
        canvas.Put(x, y, inHand && !model.OnResults ? ">" : " ", Ink.Key);
        canvas.Put(x + Indent, y, canvas.Fit(row.Label, labelRoom - Indent), inHand && !model.OnResults ? Ink.Strong : Ink.Plain);
        int at = x + labelRoom + 1, room = width - labelRoom - 3;
        if (model.Editing is { } editor && editor.Key == row.Field.Key)
        {
            Drawing.TypedLine(canvas, at, y, room + 2, editor.Line, editor.Problem is null ? Ink.Typed : Ink.Fail);
            return;
        }

        string value = canvas.Fit(row.Value(model.Here.Document), room);
        bool wrong = Errors.Problem(model.Here.Document, row.Field.Key) is not null;
        Ink ink = inHand && !model.OnResults ? Ink.Chosen : wrong ? Ink.Fail : changed ? Ink.Changed : given ? Ink.Plain : Ink.Dim;
        int end = canvas.Put(at, y, value, ink);
        if (wrong)
        {
            canvas.Put(end + 1, y, Wording.Sign(VerdictKind.Fail).ToString(), Ink.Fail);
        }
        else if (changed)
        {
            canvas.Put(end + 1, y, "*", Ink.Changed);
        }
    }
}
