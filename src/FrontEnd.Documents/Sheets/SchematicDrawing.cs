using FrontEnd.Boards;
using FrontEnd.Documents.Drawing;
using FrontEnd.Identity;
using FrontEnd.Schematics;
using FrontEnd.Teaching.Problems;

namespace FrontEnd.Documents.Sheets;

/// <summary>Pages of a schematic as pictures. A page is 277 mm wide when it is printed on A4.</summary>
internal static class SchematicDrawing
{
    /// <summary>Units of a picture for a step of the grid: a unit is a quarter of a millimetre in print.</summary>
    private const double Step = 10;

    private const double Thin = 1.2, Thick = 2, Gap = 20;

    private const string NetColour = "#024", QuietColour = "#444";

    private static readonly Pen Line = new("#000", Thin), Heavy = new("#000", Thick), Frame = new("#999", Thin);

    /// <summary>A design's schematic, with the stamp of one that is not to be worn.</summary>
    /// <param name="assessment">Of the design.</param>
    /// <param name="board">The design's.</param>
    /// <param name="withHeadroom">True for how far each node is from clipping, at its test point.</param>
    public static Schematic Of(Assessment assessment, Board board, bool withHeadroom = false)
    {
        Dictionary<string, string> notes = new(StringComparer.Ordinal);
        NodeId[] nodes = [NodeId.Amplifier, .. assessment.Design.Stages.Select(stage => NodeId.Of(stage.Name)), NodeId.Drive];
        foreach (NodeId node in withHeadroom ? nodes : [])
        {
            if (Nets.Of(assessment.Design, node) is { } net && assessment.Find(ResultIds.Levels.Headroom(node)) is { } headroom)
            {
                notes[net] = $"room {Wording.Value(headroom)}";
            }
        }

        return Schematic.Of(board, notes, Cautions.AgainstWearing(assessment).Count == 0 ? null : Cautions.Stamp);
    }

    public static Picture Page(SchematicPage page, string label)
    {
        Picture picture = new(Schematic.Width * Step, Schematic.Height * Step, label);
        Paint(picture, page);
        return picture;
    }

    /// <summary>A question's circuit, as large as it is.</summary>
    public static Picture Of(QuestionSchematic circuit)
    {
        Picture whole = new(circuit.Area.Width * Step, circuit.Area.Height * Step, circuit.Title), page = new(whole.Width, whole.Height, circuit.Title);
        Paint(page, circuit.Page);
        whole.Place(page, -circuit.Area.Left * Step, -circuit.Area.Top * Step);
        return whole;
    }

    /// <summary>All pages below one another, for a file of its own.</summary>
    public static Picture All(Schematic schematic, string label)
    {
        double width = Schematic.Width * Step, height = Schematic.Height * Step;
        Picture picture = new(width + (2 * Gap), (schematic.Pages.Count * (height + Gap)) + Gap, label);
        picture.Rectangle(0, 0, picture.Width, picture.Height, null, Fill.White);
        for (int page = 0; page < schematic.Pages.Count; page++)
        {
            double top = Gap + (page * (height + Gap));
            if (0 < page)
            {
                picture.Line(Gap, top - (Gap / 2), width + Gap, top - (Gap / 2), Frame);
            }

            picture.Place(Page(schematic.Pages[page], $"{label}, page {page + 1}"), Gap, top);
        }

        return picture;
    }

    private static void Paint(Picture picture, SchematicPage page)
    {
        foreach (SchematicWire wire in page.Wires)
        {
            foreach ((GridPoint from, GridPoint to) in wire.Segments)
            {
                picture.Line(from.X * Step, from.Y * Step, to.X * Step, to.Y * Step, Line);
            }
        }

        foreach (GridPoint dot in page.Dots)
        {
            picture.Circle(dot.X * Step, dot.Y * Step, SchematicChecks.DotRadius * Step, null, Fill.Black);
        }

        foreach (Stroke stroke in page.Symbols.SelectMany(symbol => symbol.Strokes).Concat(page.Ports.SelectMany(port => port.Strokes)))
        {
            Paint(picture, stroke);
        }

        foreach (Spot centre in page.Symbols.Select(symbol => symbol.Circle).OfType<Spot>())
        {
            picture.Circle(centre.X * Step, centre.Y * Step, CircleSize.Radius * Step, Line, Fill.White);
        }

        foreach (SchematicText text in page.AllTexts)
        {
            string? colour = text.Purpose switch
            {
                TextPurpose.NetName => NetColour,
                TextPurpose.PinNumber or TextPurpose.Note => QuietColour,
                _ => null,
            };
            picture.Text(text.At.X * Step, text.At.Y * Step, text.Text, AnchorOf(text.Side), text.Size * Step, text.IsBold, colour);
        }
    }

    private static Anchor AnchorOf(TextSide side) => side switch { TextSide.Start => Anchor.Start, TextSide.Middle => Anchor.Middle, _ => Anchor.End };

    private static void Paint(Picture picture, Stroke stroke)
    {
        Pen pen = stroke.Weight == StrokeWeight.Heavy ? Heavy : Line;
        if (stroke.IsClosed)
        {
            picture.Polygon(pen, stroke.IsFilled ? Fill.Black : Fill.White, [.. stroke.Corners.Select(corner => (corner.X * Step, corner.Y * Step))]);
            return;
        }

        Outline outline = new();
        for (int at = 0; at < stroke.Corners.Count; at++)
        {
            (double x, double y) = (stroke.Corners[at].X * Step, stroke.Corners[at].Y * Step);
            _ = at == 0 ? outline.Move(x, y) : outline.Line(x, y);
        }

        picture.Path(outline, pen);
    }
}
