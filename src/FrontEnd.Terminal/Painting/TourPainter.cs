namespace FrontEnd.Terminal;

/// <summary>The steps of the tour below the form.</summary>
internal static class TourPainter
{
    /// <summary>Draws the step. In the smallest windows not all of it has room: the lesson is cut first, then what was said last and the title
    /// go; what to do and what to watch never.</summary>
    public static void TourText(Canvas canvas, Model model, int step, int y, int rows)
    {
        Parts parts = PartsOf(canvas, model, step);
        List<string> text = [.. parts.Text], said = [.. parts.Said], title = [.. parts.Title];
        int over = parts.All.Count - rows;
        int kept = Math.Max(1, text.Count - Math.Max(0, over));
        if (kept < text.Count)
        {
            over -= text.Count - kept;
            int room = Math.Max(4, Math.Min(Lettering.Columns(text[kept - 1]) + 2, canvas.Width - 2));
            text = [.. text.Take(kept - 1), canvas.Fit(text[kept - 1] + " ......", room)];
        }

        foreach (List<string> part in (List<string>[])[said, title, text])
        {
            if (over > 0)
            {
                over -= part.Count;
                part.Clear();
            }
        }

        foreach ((string line, Ink ink) in new Parts(title, parts.Does, text, said, parts.Watch).All)
        {
            canvas.Put(1, y++, line, ink);
        }
    }

    /// <summary>What stands under the form in a step of the tour, wrapped: title and what j does, the lesson, what was said last, the figure to
    /// watch.</summary>
    public static IReadOnlyList<(string Text, Ink Ink)> TourLines(Canvas canvas, Model model, int step) => PartsOf(canvas, model, step).All;

    private static Parts PartsOf(Canvas canvas, Model model, int step)
    {
        Tour tour = model.Tour!;
        TourStep shown = tour.Steps[step];
        return new Parts(
            Lines($"tour {step + 1} of {tour.Steps.Count}: {shown.Title}"), Lines(shown.Field.Length == 0 ? "" : $"j sets {shown.Field} to {shown.Try}"),
            Lines(shown.Text), Lines(model.Complaint?.Message ?? model.Status), Lines(Tour.Watch(shown, model.Here)));

        IReadOnlyList<string> Lines(string text) => [.. canvas.Wrap(text, canvas.Width - 2).Where(line => line.Length > 0)];
    }

    private sealed record Parts(
        IReadOnlyList<string> Title, IReadOnlyList<string> Does, IReadOnlyList<string> Text, IReadOnlyList<string> Said, IReadOnlyList<string> Watch)
    {
        public IReadOnlyList<(string Text, Ink Ink)> All =>
        [
            .. Title.Select(line => (line, Ink.Title)), .. Does.Select(line => (line, Ink.Key)), .. Text.Select(line => (line, Ink.Plain)),
            .. Said.Select(line => (line, Ink.Key)), .. Watch.Select(line => (line, Ink.Changed)),
        ];
    }
}
