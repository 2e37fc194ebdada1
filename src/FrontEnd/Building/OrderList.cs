using FrontEnd.Boards;

namespace FrontEnd.Building;

/// <summary>A row of an order list: pieces that one buys as one.</summary>
/// <param name="Parts">The pieces, in the order of the board.</param>
/// <param name="Ratings">What they must be made of and stand.</param>
/// <param name="Remark">What whoever orders or solders them must know; "" for nothing.</param>
internal sealed record OrderRow(IReadOnlyList<BoardPart> Parts, PartRatings Ratings, string Remark)
{
    /// <summary>The first of them, whose class, value and tolerance all have.</summary>
    public BoardPart First => Parts[0];

    public int Quantity => Parts.Count;

    /// <summary>Their designators with prefixes, separated by blanks.</summary>
    public string Designators => string.Join(' ', Parts.Select(part => part.Name));

    /// <summary>What they are there for, each purpose once.</summary>
    public string Where => Once(part => part.Where);

    /// <summary>The fields that set them, each once.</summary>
    public string Keys => Once(part => part.Key);

    private string Once(Func<BoardPart, string> text) =>
        string.Join("; ", Parts.Select(text).Where(one => one.Length != 0).Distinct(StringComparer.Ordinal));
}

/// <summary>What to order for one device.</summary>
internal static class OrderList
{
    /// <summary>Said of each resistor that limits the current into a person.</summary>
    public const string Protects = "protects the wearer: never fit a smaller value";

    /// <summary>A row for each distinct piece: class, value, tolerance, material, rating, package, card. Test points, which are copper, are left
    /// out.</summary>
    public static IReadOnlyList<OrderRow> Of(Board board) =>
    [
        .. board.Parts.Where(part => part.Class != PieceClass.TestPoint)
            .Select(part => (Part: part, Ratings: PartRatings.Of(board, part)))
            .GroupBy(one => (one.Part.Class, one.Part.Value?.SiValue, one.Part.Tolerance?.Fraction, one.Ratings, one.Part.ProtectsWearer, one.Part.Card,
                one.Part.Description, one.Part.Remark))
            .OrderBy(group => group.Key.Class).ThenBy(group => group.Key.SiValue)
            .Select(group => new OrderRow([.. group.Select(one => one.Part)], group.Key.Ratings, RemarkOf([.. group.Select(one => one.Part)], group.Key.Ratings))),
    ];

    /// <summary>The class in the words of an order list.</summary>
    public static string Word(PieceClass kind) => kind switch
    {
        PieceClass.Resistor => "resistor",
        PieceClass.Capacitor => "capacitor",
        PieceClass.OpAmps => "op-amp",
        PieceClass.DifferentialAmplifier => "instrumentation amplifier",
        PieceClass.Converter => "converter",
        PieceClass.VoltageReference => "voltage reference",
        PieceClass.Regulator => "regulator",
        PieceClass.Transistor => "transistor",
        PieceClass.ClampDiodes => "diodes",
        PieceClass.Battery => "battery",
        PieceClass.Connector => "connector",
        _ => "test point",
    };

    /// <summary>The field that sets a piece's tolerance; "" where no field does.</summary>
    public static string ToleranceKey(BoardPart part)
    {
        string kind = part.Class == PieceClass.Resistor ? "resistor-tolerance" : "capacitor-tolerance";
        return part.Class is not (PieceClass.Resistor or PieceClass.Capacitor) ? ""
            : part.Block.Kind == BlockKind.Input ? "input." + kind
            : part.Block.Kind == BlockKind.Stage ? $"stages[{part.Block.Stage + 1}].{kind}"
            : part.Key == DesignKeys.GroundDrive.SeriesResistor ? DesignKeys.GroundDrive.ResistorTolerance
            : "";
    }

    private static string RemarkOf(IReadOnlyList<BoardPart> parts, PartRatings ratings) => string.Join("; ", new[]
    {
        parts[0].ProtectsWearer ? Protects : "", Pairs(parts), ratings.Remark, parts[0].Remark,
    }.Where(text => text.Length != 0));

    /// <summary>"pair with R102"; where many channels share one partner, once.</summary>
    private static string Pairs(IReadOnlyList<BoardPart> parts)
    {
        BoardPart[] paired = [.. parts.Where(part => part.PairedWith.Length != 0)];
        return paired.Length == 0 ? ""
            : paired.Length <= 2 ? $"pair {paired[0].Name} with {paired[0].PairedWith}, from one reel"
            : $"{paired[0].Name}, {paired[0].PairedWith} and similar pairs from one reel: only their difference counts";
    }
}
