using FrontEnd.Results;

namespace FrontEnd.Documents.Sheets;

/// <summary>The path as boxes in a row, with levels and headroom under each; more than nine stand in rows of about equal length.</summary>
internal static class ChainDrawing
{
    private const int MostInRow = 9;
    private const double Width = 760, Gap = 10, BoxHeight = 66, RowHeight = 176, LineHeight = 12.5;

    public static string Of(Assessment assessment)
    {
        IReadOnlyList<ChainBlock> blocks = ChainBlocks.Of(assessment);
        int rows = (blocks.Count + MostInRow - 1) / MostInRow, columns = (blocks.Count + rows - 1) / rows;
        double box = (Width - (Gap * (columns - 1)) - 4) / columns;
        Svg svg = new(Width, rows * RowHeight,
            "the signal's path, left to right: " + string.Join(", ", blocks.Select(block => block.Name)));
        for (int at = 0; at < blocks.Count; at++)
        {
            double x = 2 + (at % columns * (box + Gap)), y = 2 + (at / columns * RowHeight);
            Draw(svg, blocks[at], x, y, box);
            if (at % columns > 0)
            {
                double middle = y + (BoxHeight / 2);
                svg.Path($"M{Svg.N(x - Gap + 1)} {Svg.N(middle)}L{Svg.N(x - 2)} {Svg.N(middle)}M{Svg.N(x - 5)} {Svg.N(middle - 3)}L{Svg.N(x - 2)} {Svg.N(middle)}L{Svg.N(x - 5)} {Svg.N(middle + 3)}", "fill=\"none\" stroke=\"#333\"");
            }
        }

        return svg.Close();
    }

    private static void Draw(Svg svg, ChainBlock block, double x, double y, double width)
    {
        bool clips = block.Headroom.StartsWith('-');
        svg.Rectangle(x, y, width, BoxHeight, $"fill=\"#fff\" stroke=\"#333\" rx=\"3\" stroke-width=\"{(clips ? "2.5" : "1")}\"");
        double line = y + 15, middle = x + (width / 2);
        svg.Text(middle, line, block.Name, "middle", 11, "font-weight=\"bold\"");
        foreach (string text in Shown(block.Lines, 4))
        {
            line += LineHeight;
            svg.Text(middle, line, text, "middle", 9.5);
        }

        line = y + BoxHeight + 4;
        if (block.Headroom.Length > 0)
        {
            line += LineHeight;
            svg.Text(middle, line, clips ? "clips; headroom" : "headroom", "middle", 9.5);
            line += LineHeight;
            svg.Text(middle, line, block.Headroom, "middle", 11, "font-weight=\"bold\"");
        }

        foreach (string text in Shown(block.Levels, 6))
        {
            line += LineHeight;
            svg.Text(middle, line, text, "middle", 9, "fill=\"#333\"");
        }
    }

    private static IEnumerable<string> Shown(IReadOnlyList<string> lines, int most) =>
        lines.Count <= most ? lines : [.. lines.Take(most - 1), $"and {lines.Count - most + 1} more"];
}
