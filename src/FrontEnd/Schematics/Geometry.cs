using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>A point of the grid that pins, corners and ports stand on; y runs downwards.</summary>
/// <param name="X">In steps of <see cref="Schematic.StepMillimetres"/>.</param>
/// <param name="Y">In the same steps.</param>
internal readonly record struct GridPoint(int X, int Y)
{
    public static GridPoint operator +(GridPoint a, GridPoint b) => new(a.X + b.X, a.Y + b.Y);
}

/// <summary>Any place of a page, in steps of the grid; y runs downwards.</summary>
internal readonly record struct Spot(double X, double Y)
{
    public static implicit operator Spot(GridPoint point) => new(point.X, point.Y);

    public static Spot operator +(Spot a, GridPoint b) => new(a.X + b.X, a.Y + b.Y);
}

/// <summary>An upright rectangle of a page, in steps of the grid.</summary>
internal readonly record struct Area(double Left, double Top, double Right, double Bottom)
{
    public static readonly Area Nothing = new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    public double Width => Right - Left;

    public double Height => Bottom - Top;

    /// <summary>True where two have more in common than an edge.</summary>
    public bool Overlaps(Area other) => Left < other.Right - Touch && other.Left < Right - Touch && Top < other.Bottom - Touch && other.Top < Bottom - Touch;

    public bool Holds(Area other) => Left <= other.Left + Touch && other.Right <= Right + Touch && Top <= other.Top + Touch && other.Bottom <= Bottom + Touch;

    public Area With(Area other) => new(
        Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    public Area Moved(GridPoint by) => new(Left + by.X, Top + by.Y, Right + by.X, Bottom + by.Y);

    public static Area Around(params IEnumerable<Spot> spots) =>
        spots.Aggregate(Nothing, (area, spot) => area.With(new Area(spot.X, spot.Y, spot.X, spot.Y)));

    private const double Touch = 1e-9;
}

/// <summary>How heavy a line is drawn.</summary>
internal enum StrokeWeight
{
    Usual,

    /// <summary>Plates of a capacitor, bars of a supply.</summary>
    Heavy,
}

/// <summary>Straight lines from corner to corner.</summary>
/// <param name="IsClosed">Back to the first corner, and white inside.</param>
/// <param name="IsFilled">Black inside.</param>
internal sealed record Stroke(IReadOnlyList<Spot> Corners, StrokeWeight Weight = StrokeWeight.Usual, bool IsClosed = false, bool IsFilled = false)
{
    public Stroke Moved(GridPoint by) => this with { Corners = [.. Corners.Select(corner => corner + by)] };
}

/// <summary>Which of a text's points stands at its place.</summary>
internal enum TextSide
{
    Start,
    Middle,
    End,
}

/// <summary>What a text says.</summary>
internal enum TextPurpose
{
    Designator,
    Value,
    PinName,
    PinNumber,
    NetName,
    Title,
    Note,
}

/// <summary>A text of a drawing.</summary>
/// <param name="At">Where it stands, on the line that the letters stand on.</param>
/// <param name="Size">Of the letters, in steps.</param>
internal sealed record SchematicText(Spot At, string Text, TextSide Side, double Size, TextPurpose Purpose)
{
    public bool IsBold => Purpose is TextPurpose.Designator or TextPurpose.Title;

    /// <summary>What it fills, counted rather too wide than too narrow.</summary>
    public Area Box
    {
        get
        {
            double width = Lettering.Width(Text, Size, IsBold), left = At.X - (Side switch { TextSide.Start => 0, TextSide.Middle => width / 2, _ => width });
            return new(left, At.Y - (Lettering.Above * Size), left + width, At.Y + (Lettering.Below * Size));
        }
    }

    public SchematicText Moved(GridPoint by) => this with { At = At + by };
}

/// <summary>A pin as drawn.</summary>
/// <param name="Number">Of the piece's pin.</param>
/// <param name="At">Where a wire meets it.</param>
/// <param name="Arm">Which way its lead goes from there, one step; none for a pin that a wire passes.</param>
internal readonly record struct SymbolPin(string Number, GridPoint At, GridPoint Arm);

/// <summary>A piece, or one op-amp of a package, as drawn.</summary>
/// <param name="Part">The piece.</param>
/// <param name="Pins">Those of its pins that this symbol shows.</param>
/// <param name="Strokes">Its lines.</param>
/// <param name="Body">What no wire and no text of another may touch.</param>
/// <param name="Texts">Its own texts.</param>
internal sealed record SchematicSymbol(
    BoardPart Part, IReadOnlyList<SymbolPin> Pins, IReadOnlyList<Stroke> Strokes, IReadOnlyList<Area> Body, IReadOnlyList<SchematicText> Texts)
{
    /// <summary>Centre of a small circle, a test point's; null for none.</summary>
    public Spot? Circle { get; init; }

    public SchematicSymbol Moved(GridPoint by) => this with
    {
        Pins = [.. Pins.Select(pin => pin with { At = pin.At + by })], Strokes = [.. Strokes.Select(stroke => stroke.Moved(by))],
        Body = [.. Body.Select(area => area.Moved(by))], Texts = [.. Texts.Select(text => text.Moved(by))],
        Circle = Circle is { } centre ? centre + by : null,
    };
}

/// <summary>Radius of a test point's circle, in steps.</summary>
internal static class CircleSize
{
    public const double Radius = 0.35;
}

/// <summary>A wire from corner to corner, each upright or level.</summary>
internal sealed record SchematicWire(IReadOnlyList<GridPoint> Corners)
{
    public IEnumerable<(GridPoint From, GridPoint To)> Segments => Corners.Zip(Corners.Skip(1));

    public SchematicWire Moved(GridPoint by) => new([.. Corners.Select(corner => corner + by)]);
}

/// <summary>How the name of a net is shown.</summary>
internal enum PortKind
{
    /// <summary>The name beside its wire.</summary>
    Label,

    /// <summary>The name in a flag whose tip is the net.</summary>
    Flag,

    /// <summary>A bar with its name above.</summary>
    Supply,

    /// <summary>Three bars below.</summary>
    Ground,

    /// <summary>An open triangle below.</summary>
    Middle,
}

/// <summary>The name of a net at a point of it. Everything with one name is one net.</summary>
/// <param name="Net">The board's net.</param>
/// <param name="Name">As the page shows it, or as the symbol's meaning is.</param>
/// <param name="Arm">Which way the symbol goes from its point, one step; none for a label.</param>
internal sealed record SchematicPort(
    PortKind Kind, string Net, string Name, GridPoint At, GridPoint Arm, IReadOnlyList<Stroke> Strokes, Area? Body, SchematicText? Text)
{
    public SchematicPort Moved(GridPoint by) => this with
    {
        At = At + by, Strokes = [.. Strokes.Select(stroke => stroke.Moved(by))], Body = Body?.Moved(by), Text = Text?.Moved(by),
    };
}
