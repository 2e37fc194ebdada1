namespace FrontEnd.Documents.Sheets;

/// <summary>The path as boxes in a row, with levels and headroom under each; rows of eight.</summary>
internal static class ChainDrawing
{
    private const int PerRow = 8;
    private const double Width = 760, Gap = 14, BoxHeight = 66, RowHeight = 176, LineHeight = 12.5;

    public static string Of(Assessment assessment)
    {
        IReadOnlyList<ChainBlock> blocks = ChainBlocks.Of(assessment);
        int rows = (blocks.Count + PerRow - 1) / PerRow, columns = Math.Min(PerRow, blocks.Count);
        double box = (Width - (Gap * (columns - 1)) - 4) / columns;
        Svg svg = new(Width, rows * RowHeight, "the signal's path, left to right: " + string.Join(", ", blocks.Select(block => block.Name)));
        for (int at = 0; at < blocks.Count; at++)
        {
            double x = 2 + (at % PerRow * (box + Gap)), y = 2 + (at / PerRow * RowHeight);
            Draw(svg, blocks[at], x, y, box);
            if (at % PerRow > 0)
            {
                double middle = y + (BoxHeight / 2);
                svg.Path($"M{Svg.N(x - Gap + 1)} {Svg.N(middle)}L{Svg.N(x - 2)} {Svg.N(middle)}M{Svg.N(x - 6)} {Svg.N(middle - 4)}L{Svg.N(x - 2)} {Svg.N(middle)}L{Svg.N(x - 6)} {Svg.N(middle + 4)}", "fill=\"none\" stroke=\"#333\"");
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
            svg.Text(middle, line, clips ? "clips, by" : "headroom", "middle", 9.5);
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
