using FrontEnd.Documents.Drawing;

namespace FrontEnd.Documents.Sheets;

/// <summary>The path as boxes in a row, with levels and headroom under each; more than nine stand in rows of about equal length.</summary>
internal static class ChainDrawing
{
    private const int MostInRow = 9;
    private const double Width = 760, Gap = 10, BoxHeight = 66, RowHeight = 176, LineHeight = 12.5;

    private static readonly Pen Ink = new("#333");

    public static Picture Of(Assessment assessment)
    {
        IReadOnlyList<ChainBlock> blocks = ChainBlocks.Of(assessment);
        int rows = (blocks.Count + MostInRow - 1) / MostInRow, columns = (blocks.Count + rows - 1) / rows;
        double box = (Width - (Gap * (columns - 1)) - 4) / columns;
        Picture picture = new(Width, rows * RowHeight,
            "the signal's path, left to right: " + string.Join(", ", blocks.Select(block => block.Name)));
        for (int at = 0; at < blocks.Count; at++)
        {
            double x = 2 + (at % columns * (box + Gap)), y = 2 + (at / columns * RowHeight);
            Draw(picture, blocks[at], x, y, box);
            if (at % columns > 0)
            {
                double middle = y + (BoxHeight / 2);
                picture.Path(new Outline().Move(x - Gap + 1, middle).Line(x - 2, middle).Move(x - 5, middle - 3).Line(x - 2, middle).Line(x - 5, middle + 3), Ink);
            }
        }

        return picture;
    }

    private static void Draw(Picture picture, ChainBlock block, double x, double y, double width)
    {
        bool clips = block.Headroom.StartsWith('-');
        picture.Rectangle(x, y, width, BoxHeight, clips ? Ink with { Width = 2.5 } : Ink, Fill.White, radius: 3);
        double line = y + 15, middle = x + (width / 2);
        picture.Text(middle, line, block.Name, Anchor.Middle, 11, bold: true);
        foreach (string text in Shown(block.Lines, 4))
        {
            line += LineHeight;
            picture.Text(middle, line, text, Anchor.Middle, 9.5);
        }

        line = y + BoxHeight + 4;
        if (block.Headroom.Length > 0)
        {
            line += LineHeight;
            picture.Text(middle, line, clips ? "clips; headroom" : "headroom", Anchor.Middle, 9.5);
            line += LineHeight;
            picture.Text(middle, line, block.Headroom, Anchor.Middle, 11, bold: true);
        }

        foreach (string text in Shown(block.Levels, 6))
        {
            line += LineHeight;
            picture.Text(middle, line, text, Anchor.Middle, 9.5, colour: "#333");
        }
    }

    private static IEnumerable<string> Shown(IReadOnlyList<string> lines, int most) =>
        lines.Count <= most ? lines : [.. lines.Take(most - 1), $"and {lines.Count - most + 1} more"];
}
