namespace FrontEnd.Terminal;

/// <summary>The steps of the tour below the form.</summary>
public static class TourPainter
{
    /// <summary>Draws the step; the lesson is cut where it has no room.</summary>
    public static void TourText(Canvas canvas, Model model, int step, int y, int rows)
    {
        // In the smallest window not all of it has room: the lesson's text is cut, what to do and what to watch never.
        List<(string Text, Ink Ink)> lines = TourLines(canvas, model, step);
        int dropped = Math.Max(0, lines.Count - rows), text = lines.Count(line => line.Ink == Ink.Plain);
        int kept = Math.Max(1, text - dropped);
        int at = 0;
        foreach ((string line, Ink ink) in lines)
        {
            if (ink != Ink.Plain || ++at <= kept)
            {
                bool cut = ink == Ink.Plain && at == kept && kept < text;
                int room = Math.Max(4, Math.Min(Lettering.Columns(line) + 2, canvas.Width - 2));
                canvas.Put(1, y++, cut ? canvas.Fit(line + " ......", room) : line, ink);
            }
        }
    }

    /// <summary>What stands under the form in a step of the tour, wrapped: title and what j does, the lesson, the figure to
    /// watch.</summary>
    public static List<(string Text, Ink Ink)> TourLines(Canvas canvas, Model model, int step)
    {
        TourStep shown = Tour.Steps[step];
        int width = canvas.Width - 2;
        List<(string, Ink)> lines = [];
        void Add(string text, Ink ink) =>
            lines.AddRange(canvas.Wrap(text, width).Where(line => line.Length > 0).Select(line => (line, ink)));
        Add($"tour {step + 1} of {Tour.Steps.Count}: {shown.Title}", Ink.Title);
        if (shown.Field.Length > 0)
        {
            Add($"j sets {shown.Field} to {shown.Try}", Ink.Key);
        }

        Add(shown.Text + (model.Complaint is { } complaint ? $" {complaint.Message}" : ""), Ink.Plain);
        Add(Tour.Watch(shown, model.Here), Ink.Changed);
        return lines;
    }
}
