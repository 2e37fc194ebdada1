using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>Names of nets as symbols.</summary>
internal static class PortShapes
{
    private static readonly GridPoint Up = new(0, -1), Down = new(0, 1), None = new(0, 0);

    /// <summary>The symbol of a rail: common and the middle of the supply hang down, supplies stand.</summary>
    public static SchematicPort Rail(GridPoint at, string net, string name) => net switch
    {
        Nets.Common => Ground(at, net),
        Nets.Middle => Middle(at, net),
        _ => Supply(at, net, name),
    };

    private static SchematicPort Supply(GridPoint at, string net, string name)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicPort(PortKind.Supply, net, name, at, Up, [new([P(0, 0), P(0, -1)]), new([P(-0.8, -1), P(0.8, -1)], StrokeWeight.Heavy)],
            new(at.X - 0.8, at.Y - 1.1, at.X + 0.8, at.Y - 0.9), new(P(0, -1.45), name, TextSide.Middle, Lettering.Usual, TextPurpose.NetName));
    }

    private static SchematicPort Ground(GridPoint at, string net)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicPort(PortKind.Ground, net, Nets.Common, at, Down,
            [
                new([P(0, 0), P(0, 0.6)]), new([P(-0.9, 0.6), P(0.9, 0.6)], StrokeWeight.Heavy), new([P(-0.55, 0.95), P(0.55, 0.95)], StrokeWeight.Heavy),
                new([P(-0.2, 1.3), P(0.2, 1.3)], StrokeWeight.Heavy),
            ],
            new(at.X - 0.9, at.Y + 0.5, at.X + 0.9, at.Y + 1.4), null);
    }

    private static SchematicPort Middle(GridPoint at, string net)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicPort(PortKind.Middle, net, Nets.Middle, at, Down,
            [new([P(0, 0), P(0, 0.6)]), new([P(-0.7, 0.6), P(0.7, 0.6), P(0, 1.6)], IsClosed: true)],
            new(at.X - 0.7, at.Y + 0.6, at.X + 0.7, at.Y + 1.6), new(P(0.9, 1.55), Nets.Middle, TextSide.Start, Lettering.Usual, TextPurpose.NetName));
    }

    /// <summary>The name beside a wire, above it.</summary>
    public static SchematicPort Label(GridPoint at, string net, string name) => new(PortKind.Label, net, name, at, None, [], null,
        new(new(at.X + 0.35, at.Y - 0.47), name, TextSide.Start, Lettering.Usual, TextPurpose.NetName));

    /// <summary>The name in a flag.</summary>
    /// <param name="toLeft">True where the flag is left of its point.</param>
    public static SchematicPort Flag(GridPoint at, string net, string name, bool toLeft)
    {
        const double Point = 0.7, High = 0.7;
        double way = toLeft ? -1 : 1, end = Point + Lettering.Width(name, Lettering.Usual, bold: false) + 0.5;
        Spot P(double x, double y) => new(at.X + (way * x), at.Y + y);
        Area body = Area.Around(P(0, -High), P(end, High));
        return new SchematicPort(PortKind.Flag, net, name, at, new(toLeft ? -1 : 1, 0),
            [new([P(0, 0), P(Point, -High), P(end, -High), P(end, High), P(Point, High)], IsClosed: true)], body,
            new(P(Point, 0.34), name, toLeft ? TextSide.End : TextSide.Start, Lettering.Usual, TextPurpose.NetName));
    }
}
