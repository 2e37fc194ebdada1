using System.Buffers;

namespace FrontEnd.Documents.Sheets;

/// <summary>Breaks texts into lines of a printed page, by the widths of its font.</summary>
internal static class PrintLines
{
    /// <summary>Behind these a word that is too long is broken rather than elsewhere.</summary>
    private static readonly SearchValues<char> Breaks = SearchValues.Create("-._/, ");

    /// <summary>Lines that are no wider than a column. No line ends between a number and its unit; a word that is wider than the column is broken
    /// behind a hyphen, a point or the like, or where the column ends.</summary>
    /// <param name="text">A line end in it ends a line.</param>
    /// <param name="width">In points.</param>
    public static IReadOnlyList<string> Of(string text, double width, PrintStyle style) =>
        text.Contains('\n', StringComparison.Ordinal) ? [.. text.Split('\n').SelectMany(line => OfOne(line, width, style))] : OfOne(text, width, style);

    /// <summary>The widest of a text's own lines, unbroken.</summary>
    public static double WidestLine(string text, PrintStyle style) =>
        text.Contains('\n', StringComparison.Ordinal) ? text.Split('\n').Max(style.Width) : style.Width(text);

    private static List<string> OfOne(string text, double width, PrintStyle style)
    {
        if (style.Width(text) <= width)
        {
            return [text];
        }

        List<string> lines = [];
        string line = "";
        foreach (string piece in TextPage.Pieces(text))
        {
            string word = piece;
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (style.Width(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            while (style.Width(word) > width)
            {
                int end = Fits(word, width, style);
                lines.Add(word[..end].TrimEnd());
                word = word[end..];
            }

            line = word;
        }

        lines.Add(line);
        return lines;
    }

    /// <summary>The widest word of a text: a column that is at least as wide breaks none.</summary>
    public static double WidestWord(string text, PrintStyle style) =>
        text.Length == 0 ? 0 : TextPage.Pieces(text.Replace('\n', ' ')).Select(style.Width).DefaultIfEmpty(0).Max();

    /// <summary>How many letters of a word fit into a column, at least one.</summary>
    private static int Fits(string word, double width, PrintStyle style)
    {
        int end = 1;
        while (end < word.Length && style.Width(word[..(end + 1)]) <= width)
        {
            end++;
        }

        int nicer = word.AsSpan(0, end).LastIndexOfAny(Breaks) + 1;
        end = nicer == 0 || nicer < end / 3 ? end : nicer;
        return end < word.Length && char.IsLowSurrogate(word[end]) ? Math.Max(2, end - 1) : end;
    }
}
