using FrontEnd.Boards;

namespace FrontEnd.Schematics;

/// <summary>Pieces as symbols.</summary>
internal static class SymbolShapes
{
    /// <summary>From pin to pin of a part with two.</summary>
    public const int Length = 4;

    /// <summary>From an op-amp's inputs to its output.</summary>
    public const int OpAmpLength = 7;

    /// <summary>From its output's line to each input's.</summary>
    public const int OpAmpInput = 2;

    private static readonly GridPoint Right = new(1, 0), Left = new(-1, 0), Up = new(0, -1), Down = new(0, 1), NoArm = new(0, 0);

    /// <summary>A resistor or a capacitor to the right of its left pin.</summary>
    /// <param name="left">Index of the pin on the left.</param>
    public static SchematicSymbol Level(BoardPart part, GridPoint at, int left)
    {
        bool resistor = part.Class == PieceClass.Resistor;
        GridPoint end = at + new GridPoint(Length, 0);
        double above = resistor ? 0.75 : 1.05, below = resistor ? 1.38 : 1.68;
        return new SchematicSymbol(
            part, [new(part.Pins[left].Number, at, Right), new(part.Pins[1 - left].Number, end, Left)],
            [.. TwoPins(resistor, upright: false).Select(stroke => stroke.Moved(at))], [Body(resistor, upright: false).Moved(at)],
            [
                new(new(at.X + 2, at.Y - above), part.Designator, TextSide.Middle, Lettering.Usual, TextPurpose.Designator),
                new(new(at.X + 2, at.Y + below), ValueOf(part), TextSide.Middle, Lettering.Usual, TextPurpose.Value),
            ]);
    }

    /// <summary>The same downwards from its upper pin.</summary>
    /// <param name="upper">Index of the pin above.</param>
    public static SchematicSymbol Upright(BoardPart part, GridPoint at, int upper)
    {
        bool resistor = part.Class == PieceClass.Resistor;
        GridPoint end = at + new GridPoint(0, Length);
        return new SchematicSymbol(
            part, [new(part.Pins[upper].Number, at, Down), new(part.Pins[1 - upper].Number, end, Up)],
            [.. TwoPins(resistor, upright: true).Select(stroke => stroke.Moved(at))], [Body(resistor, upright: true).Moved(at)],
            BesideUpright(part.Designator, ValueOf(part), at));
    }

    private static SchematicText[] BesideUpright(string designator, string value, GridPoint at) =>
    [
        new(new(at.X + 1, at.Y + 1.65), designator, TextSide.Start, Lettering.Usual, TextPurpose.Designator),
        .. value.Length == 0 ? (SchematicText[])[] : [new(new(at.X + 1, at.Y + 2.75), value, TextSide.Start, Lettering.Usual, TextPurpose.Value)],
    ];

    private static string ValueOf(BoardPart part) => part.Value is { } value ? QuantityText.FormatPart(value) : "see list";

    private const double Half = 0.4, Plate = 0.75;

    private static Area Body(bool resistor, bool upright) => (resistor, upright) switch
    {
        (true, true) => new(-Half, 1, Half, 3),
        (true, false) => new(1, -Half, 3, Half),
        (false, true) => new(-Plate, 1.8, Plate, 2.2),
        _ => new(1.8, -Plate, 2.2, Plate),
    };

    private static IEnumerable<Stroke> TwoPins(bool resistor, bool upright)
    {
        double first = resistor ? 1 : 1.8, last = Length - first;
        yield return Line((0, 0), (first, 0));
        yield return Line((last, 0), (Length, 0));
        if (resistor)
        {
            yield return new Stroke([Turned((1, -Half)), Turned((3, -Half)), Turned((3, Half)), Turned((1, Half))], IsClosed: true);
            yield break;
        }

        yield return Line((first, -Plate), (first, Plate)) with { Weight = StrokeWeight.Heavy };
        yield return Line((last, -Plate), (last, Plate)) with { Weight = StrokeWeight.Heavy };

        Spot Turned((double Along, double Across) place) => upright ? new(place.Across, place.Along) : new(place.Along, place.Across);
        Stroke Line((double, double) from, (double, double) to) => new([Turned(from), Turned(to)]);
    }

    /// <summary>One op-amp of a package: its inputs at the left, two steps above and below its output's line.</summary>
    /// <param name="at">On the line of the output, above and below which the inputs are.</param>
    /// <param name="plusUp">True where the non-inverting input is above.</param>
    public static SchematicSymbol OpAmp(BoardPart part, BoardSection section, GridPoint at, bool plusUp)
    {
        const double Face = 1, Tip = 6, High = 3.5, Lead = 0.3;
        BoardPin above = plusUp ? section.Plus : section.Minus, below = plusUp ? section.Minus : section.Plus;
        GridPoint upper = at + new GridPoint(0, -OpAmpInput), lower = at + new GridPoint(0, OpAmpInput), output = at + new GridPoint(OpAmpLength, 0);
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicSymbol(
            part, [new(above.Number, upper, Right), new(below.Number, lower, Right), new(section.Output.Number, output, Left)],
            [
                new([P(Face, -High), P(Face, High), P(Tip, 0)], IsClosed: true), new([upper, P(Face, -OpAmpInput)]), new([lower, P(Face, OpAmpInput)]),
                new([P(Tip, 0), output]),
            ],

            // The triangle in three slices, each as high as its left edge.
            [
                new(at.X + Face, at.Y - High, at.X + 2.6, at.Y + High), new(at.X + 2.6, at.Y - 2.4, at.X + 4.2, at.Y + 2.4),
                new(at.X + 4.2, at.Y - 1.3, at.X + Tip, at.Y + 1.3),
            ],
            [
                new(P(Face + 0.25, Lead), $"{part.Designator}{section.Letter}", TextSide.Start, Lettering.Usual, TextPurpose.Designator),
                new(P(Face + 0.3, -OpAmpInput + Lead), plusUp ? "+" : "−", TextSide.Start, Lettering.Usual, TextPurpose.PinName),
                new(P(Face + 0.3, OpAmpInput + Lead), plusUp ? "−" : "+", TextSide.Start, Lettering.Usual, TextPurpose.PinName),
                Number(above.Number, P(Face - 0.1, -OpAmpInput - Lead), TextSide.End), Number(below.Number, P(Face - 0.1, OpAmpInput - Lead), TextSide.End),
                Number(section.Output.Number, P(Tip + 0.1, -Lead), TextSide.Start),
            ]);
    }

    private static SchematicText Number(string number, Spot at, TextSide side) => new(at, number, side, Lettering.Small, TextPurpose.PinNumber);

    /// <summary>A box with its pins' names inside and their numbers outside.</summary>
    /// <param name="at">Its left upper corner.</param>
    /// <param name="words">Below the designator; "" for none.</param>
    /// <param name="label">Where these two stand.</param>
    public static SchematicSymbol Box(BoardPart part, GridPoint at, (int Width, int Height) size, IReadOnlyList<BoxPin> boxPins, string words, BoxLabel label)
    {
        List<SymbolPin> pins = [];
        List<Stroke> strokes = [new([at, at + new GridPoint(size.Width, 0), at + new GridPoint(size.Width, size.Height), at + new GridPoint(0, size.Height)], IsClosed: true)];
        List<SchematicText> texts = [.. Labels(part, at, size, words, label)];
        foreach (BoxPin pin in boxPins)
        {
            BoardPin of = part.Pins.First(one => one.Number == pin.Number);
            (GridPoint edge, GridPoint arm) = pin.Side switch
            {
                BoxSide.Left => (new GridPoint(0, pin.Offset), Right),
                BoxSide.Right => (new GridPoint(size.Width, pin.Offset), Left),
                BoxSide.Top => (new GridPoint(pin.Offset, 0), Down),
                _ => (new GridPoint(pin.Offset, size.Height), Up),
            };
            edge += at;
            GridPoint end = new(edge.X - arm.X, edge.Y - arm.Y);
            pins.Add(new(pin.Number, end, arm));
            strokes.Add(new([end, edge]));
            texts.AddRange(PinTexts(of, pin.Side, edge));
        }

        return new SchematicSymbol(part, pins, strokes, [new(at.X, at.Y, at.X + size.Width, at.Y + size.Height)], texts);
    }

    private static IEnumerable<SchematicText> PinTexts(BoardPin pin, BoxSide side, Spot edge)
    {
        if (pin.Name.Length > 0)
        {
            yield return side switch
            {
                BoxSide.Left => Name(new(edge.X + 0.3, edge.Y + 0.35), TextSide.Start),
                BoxSide.Right => Name(new(edge.X - 0.3, edge.Y + 0.35), TextSide.End),
                BoxSide.Top => Name(new(edge.X, edge.Y + 1.05), TextSide.Middle),
                _ => Name(new(edge.X, edge.Y - 0.4), TextSide.Middle),
            };
        }

        yield return side switch
        {
            BoxSide.Left => Number(pin.Number, new(edge.X - 0.15, edge.Y - 0.3), TextSide.End),
            BoxSide.Right => Number(pin.Number, new(edge.X + 0.15, edge.Y - 0.3), TextSide.Start),
            BoxSide.Top => Number(pin.Number, new(edge.X + 0.3, edge.Y - 0.24), TextSide.Start),
            _ => Number(pin.Number, new(edge.X + 0.3, edge.Y + 0.95), TextSide.Start),
        };

        SchematicText Name(Spot at, TextSide where) => new(at, pin.Name, where, Lettering.Usual, TextPurpose.PinName);
    }

    private static IEnumerable<SchematicText> Labels(BoardPart part, GridPoint at, (int Width, int Height) size, string words, BoxLabel label)
    {
        (double x, double y, TextSide side) = label switch
        {
            BoxLabel.Inside => (at.X + (size.Width / 2.0), at.Y + 3.2, TextSide.Middle),
            BoxLabel.Middle => (at.X + (size.Width / 2.0), at.Y + (size.Height / 2.0) - 0.2, TextSide.Middle),
            _ => (at.X, at.Y - 0.5, TextSide.Start),
        };
        yield return new(new(x, y), part.Designator, side, Lettering.Usual, TextPurpose.Designator);
        if (words.Length > 0)
        {
            double room = label == BoxLabel.Around ? double.PositiveInfinity : size.Width - 0.6;
            yield return new(new(x, label == BoxLabel.Around ? at.Y + size.Height + 1.7 : y + 1.15),
                Lettering.Shortened(words, Lettering.Usual, bold: false, room), side, Lettering.Usual, TextPurpose.Value);
        }
    }

    /// <summary>A test point: a small circle above the wire that it hangs on.</summary>
    /// <param name="at">On the wire.</param>
    /// <param name="net">As the page names it.</param>
    /// <param name="note">What else is to be said of the net; "" for nothing.</param>
    public static SchematicSymbol TestPoint(BoardPart part, GridPoint at, string net, string note = "")
    {
        Spot centre = new(at.X, at.Y - 1 - CircleSize.Radius);
        double top = centre.Y - CircleSize.Radius;
        return new SchematicSymbol(part, [new(part.Pins[0].Number, at, Up)], [new([at, new(at.X, at.Y - 1)])],
            [new(at.X - CircleSize.Radius, top, at.X + CircleSize.Radius, at.Y - 1)],
            [
                new(new(at.X, top - 0.4), part.Designator, TextSide.Middle, Lettering.Usual, TextPurpose.Designator),
                new(new(at.X, top - 1.5), net, TextSide.Middle, Lettering.Usual, TextPurpose.NetName),
                .. note.Length == 0 ? (SchematicText[])[] : [new(new(at.X, top - 2.6), note, TextSide.Middle, Lettering.Small, TextPurpose.Note)],
            ]) { Circle = centre };
    }

    /// <summary>One of two diodes in series, upwards from its lower end.</summary>
    /// <param name="anode">Pin below.</param>
    /// <param name="cathode">Pin above.</param>
    public static SchematicSymbol Diode(BoardPart part, string anode, string cathode, GridPoint at)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicSymbol(part, [new(anode, at, Up), new(cathode, at + new GridPoint(0, -Length), Down)],
            [
                new([P(0, 0), P(0, -1.3)]), new([P(0, -2.7), P(0, -Length)]), new([P(-0.7, -1.4), P(0.7, -1.4), P(0, -2.6)], IsClosed: true),
                new([P(-0.7, -2.6), P(0.7, -2.6)], StrokeWeight.Heavy),
            ],
            [new(at.X - 0.7, at.Y - 2.7, at.X + 0.7, at.Y - 1.3)],
            [new(P(1, -1.7), part.Designator, TextSide.Start, Lettering.Usual, TextPurpose.Designator)]);
    }

    /// <summary>A p-channel field-effect transistor, drain at the left, source at the right, gate below.</summary>
    public static SchematicSymbol Transistor(BoardPart part, GridPoint at)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        string Pin(string name) => part.Pins.First(pin => pin.Name == name).Number;
        return new SchematicSymbol(part,
            [new(Pin("D"), at, Right), new(Pin("S"), at + new GridPoint(Length, 0), Left), new(Pin("G"), at + new GridPoint(2, 2), Up)],
            [
                new([P(0, 0), P(1.1, 0), P(1.1, 0.5)]), new([P(4, 0), P(2.9, 0), P(2.9, 0.5)]), new([P(2, 0.5), P(2, 0), P(2.9, 0)]),
                new([P(0.8, 0.5), P(1.4, 0.5)], StrokeWeight.Heavy), new([P(1.7, 0.5), P(2.3, 0.5)], StrokeWeight.Heavy),
                new([P(2.6, 0.5), P(3.2, 0.5)], StrokeWeight.Heavy), new([P(0.9, 0.95), P(3.1, 0.95)]), new([P(2, 0.95), P(2, 2)]),
                new([P(1.8, 0.3), P(2.2, 0.3), P(2, 0)], IsClosed: true, IsFilled: true),
            ],
            [new(at.X + 0.8, at.Y, at.X + 3.2, at.Y + 0.95)],
            [
                new(P(2, -0.75), part.Designator, TextSide.Middle, Lettering.Usual, TextPurpose.Designator),
                new(P(0.5, 1.3), "D", TextSide.End, Lettering.Small, TextPurpose.PinName), new(P(3.5, 1.3), "S", TextSide.Start, Lettering.Small, TextPurpose.PinName),
                new(P(2.2, 1.9), "G", TextSide.Start, Lettering.Small, TextPurpose.PinName),
            ]);
    }

    /// <summary>A cell, plus above.</summary>
    public static SchematicSymbol Battery(BoardPart part, GridPoint at, string words)
    {
        Spot P(double x, double y) => new Spot(x, y) + at;
        return new SchematicSymbol(part, [new(part.Pins[0].Number, at, Down), new(part.Pins[1].Number, at + new GridPoint(0, Length), Up)],
            [
                new([P(0, 0), P(0, 1.8)]), new([P(0, 2.2), P(0, Length)]), new([P(-1, 1.8), P(1, 1.8)]), new([P(-0.5, 2.2), P(0.5, 2.2)], StrokeWeight.Heavy),
            ],
            [new(at.X - 1, at.Y + 1.8, at.X + 1, at.Y + 2.2)],
            [
                .. BesideUpright(part.Designator, words, at).Select(text => text with { At = text.At with { X = text.At.X + 0.5 } }),
                new(P(-0.4, 1.4), "+", TextSide.End, Lettering.Usual, TextPurpose.PinName),
            ]);
    }

    /// <summary>A pin that a wire passes has no lead of its own.</summary>
    public static GridPoint None => NoArm;
}

/// <summary>A box's edge.</summary>
internal enum BoxSide
{
    Left,
    Right,
    Top,
    Bottom,
}

/// <summary>Where a pin leaves a box.</summary>
/// <param name="Number">Of the piece's pin.</param>
/// <param name="Offset">From the box's upper or left end, in steps.</param>
internal readonly record struct BoxPin(string Number, BoxSide Side, int Offset);

/// <summary>Where a box's designator and words are.</summary>
internal enum BoxLabel
{
    /// <summary>Above and below the box.</summary>
    Around,

    /// <summary>Inside, under the names of the upper pins.</summary>
    Inside,

    /// <summary>Inside, half way down.</summary>
    Middle,
}
