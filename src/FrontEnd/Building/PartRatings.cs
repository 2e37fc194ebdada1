using FrontEnd.Boards;
using FrontEnd.Designs;

namespace FrontEnd.Building;

/// <summary>What a resistor or a capacitor must be made of, stand and be as large as, from where it stands.</summary>
/// <remarks>Dielectrics: classes of IEC 60384-8 and -9, letters of EIA-198 (from memory). A capacitor of class 2 loses capacitance with voltage and age,
/// and makes a signal of its own when the board is shaken: none stands in the signal's path. Voltages and powers of cases are from memory.</remarks>
/// <param name="Technology">Dielectric, or what the resistor is made of; "" where the class says it.</param>
/// <param name="TemperatureCoefficient">How far it follows the temperature.</param>
/// <param name="Voltage">Least voltage rating.</param>
/// <param name="Power">Least power rating.</param>
/// <param name="Package">Case, or pitch of the wires.</param>
/// <param name="Remark">What follows from its size; "" for nothing.</param>
internal sealed record PartRatings(string Technology, string TemperatureCoefficient, string Voltage, string Power, string Package, string Remark)
{
    private static readonly PartRatings None = new("", "", "", "", "", "");

    /// <summary>The largest capacitor that comes with a class 1 dielectric in a case of 1206 (from memory).</summary>
    private const double LargestClass1 = 100e-9;

    /// <summary>The largest that does in smaller cases (from memory).</summary>
    private const double LargestSmallClass1 = 10e-9;

    /// <summary>Resistors above are of 5 %, and the board around them leaks more than they conduct unless it is clean (common practice, no
    /// source).</summary>
    private const double LargestUsualResistor = 10e6;

    /// <summary>Of a piece of a board.</summary>
    public static PartRatings Of(Board board, BoardPart part) => part.Class switch
    {
        PieceClass.Resistor => OfResistor(board, part),
        PieceClass.Capacitor => OfCapacitor(board, part),
        _ => None,
    };

    private static PartRatings OfResistor(Board board, BoardPart part)
    {
        BoardChoices choices = board.Design.Board;
        bool wired = choices.Mounting == Mounting.ThroughHole;
        string remark = part.Value is { } value && LargestUsualResistor < value.SiValue ? "above 10 MΩ: 5 % is usual; keep the board around it clean and guard it" : "";
        if (part.ProtectsWearer)
        {
            // A discharge of 8 kV stands across it for nanoseconds, so that its length counts; it must fail open.
            return new PartRatings("film, fails open", "±100 ppm/K", "200 V", "0.25 W", wired ? "axial, 0.25 W" : "1206", remark);
        }

        bool thin = IsThinFilm(board, part);
        string power = wired ? "0.25 W" : choices.Case switch { ChipCase.Case0603 => "0.1 W", ChipCase.Case0805 => "0.125 W", _ => "0.25 W" };
        return new PartRatings(
            wired ? "metal film" : thin ? "thin film" : "thick film", thin ? "±25 ppm/K" : wired ? "±50 ppm/K" : "±100 ppm/K", "50 V", power,
            wired ? "axial, 0.25 W" : CaseOf(choices), remark);
    }

    /// <summary>Thin film where dc stands across a resistor of the path, which makes flicker noise in thick film (IEC 60195, from memory), and where the
    /// value sets a gain or the middle.</summary>
    private static bool IsThinFilm(Board board, BoardPart part) => part.Block.Kind switch
    {
        BlockKind.Amplifier => part.Role == BoardRoles.GainResistor,
        BlockKind.Supply => part.Role is BoardRoles.Upper or BoardRoles.Lower,
        BlockKind.Stage => board.Design.Stages.Take(part.Block.Stage + 1).All(stage => !stage.Circuit().IsAcCoupled),
        _ => false,
    };

    private static PartRatings OfCapacitor(Board board, BoardPart part)
    {
        BoardChoices choices = board.Design.Board;
        bool wired = choices.Mounting == Mounting.ThroughHole;
        double farads = part.Value!.SiValue;
        if (IsOnSupply(part))
        {
            return new PartRatings("X7R", "class 2", RatingAbove(2 * board.Design.Supply.Highest.Volts), "", wired ? "2.5 mm pitch" : 4.7e-6 < farads ? "1206" : CaseOf(choices),
                "X7R or better, never Y5V; rated for at least twice the supply");
        }

        bool coupling = part.Block.Kind == BlockKind.Stage && board.Design.Stages[part.Block.Stage].Circuit().IsAcCoupled
            && part.Pins.All(pin => !Nets.IsRail(pin.Net)) && part.Pins[0].Net == InputOf(board, part);
        return farads <= LargestClass1 * (1 + 1e-9)
            ? new PartRatings("C0G", "±30 ppm/K", "50 V", "", wired ? "5 mm pitch" : farads <= LargestSmallClass1 * (1 + 1e-9) ? CaseOf(choices) : "1206", "")
            : new PartRatings(coupling ? "film, PET" : "film, PPS or PP", coupling ? "" : "±200 ppm/K", "50 V", "", "5 mm pitch",
                "too large for C0G in a small case: leaded film, 5 mm pitch");
    }

    /// <summary>The net that a stage takes its signal from.</summary>
    private static string InputOf(Board board, BoardPart part) => Board.NetOf(part.Assembly,
        part.Block.Stage == 0 ? Nets.AmplifierOf(board.Design) : Nets.Stage(board.Design, part.Block.Stage - 1));

    /// <summary>Supplies, reference and the middle's own: what no signal goes through.</summary>
    private static bool IsOnSupply(BoardPart part) => part.Block.Kind is BlockKind.Converter or BlockKind.Supply
        ? part.Role != BoardRoles.FollowerCapacitor
        : part.Pins.All(pin => Nets.IsRail(pin.Net)) && part.Key == DesignKeys.Board.Decoupling;

    /// <summary>The next usual rating, 6.3 V to 50 V (from memory).</summary>
    private static string RatingAbove(double volts) =>
        QuantityText.FormatPart(Quantities.Voltage.FromVolts(new[] { 6.3, 10, 16, 25, 50, 100, 250 }.First(rating => volts <= rating || rating == 250)));

    private static string CaseOf(BoardChoices choices) => choices.Case switch { ChipCase.Case0603 => "0603", ChipCase.Case0805 => "0805", _ => "1206" };
}
