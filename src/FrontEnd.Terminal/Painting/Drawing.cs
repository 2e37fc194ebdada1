namespace FrontEnd.Terminal;

/// <summary>What several pictures are made of: a typed line, rows to choose from, marks of what is out of sight.</summary>
internal static class Drawing
{
    /// <summary>The first so many of wrapped lines; the last of them says by its end that there are more.</summary>
    public static IReadOnlyList<string> Cut(Canvas canvas, IReadOnlyList<string> lines, int most, int width) =>
        lines.Count <= most ? lines : [.. lines.Take(most - 1), canvas.Fit(string.Join(' ', lines.Skip(most - 1)), width)];

    /// <summary>A line that is typed in, its caret kept in sight.</summary>
    public static void TypedLine(Canvas canvas, int x, int y, int room, Line line, Ink ink)
    {
        int caret = Lettering.Columns(canvas.Say(line.Text[..line.Caret]));
        string said = canvas.Say(line.Text);
        int skip = Math.Max(0, caret - room + 1);
        int used = 0, from = 0;
        while (from < said.Length && used < skip)
        {
            System.Text.Rune.DecodeFromUtf16(said.AsSpan(from), out System.Text.Rune rune, out int taken);
            used += Lettering.WidthOf(rune);
            from += taken;
        }

        canvas.Put(x, y, new string(' ', Math.Max(0, room)), ink, room);
        canvas.Put(x, y, said[from..], line.AllSelected ? Ink.Selected : ink, room);
        canvas.Cursor = (Math.Min(x + caret - used, x + room - 1), y);
    }

    /// <summary>Rows to choose from, below the frame's first one; each is clicked as well.</summary>
    /// <param name="line">Draws a row: its number, where it stands, its ink.</param>
    public static void Rows(Canvas canvas, Frame frame, int count, int selected, Action<int, int, Ink> line)
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

        MoreBelow(canvas, frame, count - first - room);
    }

    /// <summary>Says on the rule below how many lines are out of sight; nothing where none are.</summary>
    public static void MoreBelow(Canvas canvas, Frame frame, int lines)
    {
        if (lines > 0)
        {
            canvas.PutRight(frame.Width - 1, frame.Bottom, $" {lines} more below ", Ink.Key);
        }
    }

    /// <summary>The first line to show so that one is in sight, two thirds down where it can be.</summary>
    public static int FirstLine(int at, int count, int room) =>
        count <= room ? 0 : Math.Clamp(at - (room * 2 / 3), 0, Math.Max(0, count - room));

    /// <summary>How many lines are out of sight above and below.</summary>
    /// <param name="bottom">The row below the last line: the rule, or the gap above the plot.</param>
    public static void ScrollMarks(Canvas canvas, int x, int top, int bottom, int first, int count, int room)
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
}
