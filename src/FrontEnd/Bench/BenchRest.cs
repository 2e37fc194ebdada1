using FrontEnd.Boards;
using FrontEnd.Citations;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Spread;

namespace FrontEnd.Bench;

/// <summary>Dc at the test points of a board at rest, with the leads tied together.</summary>
/// <remarks>
/// The nodes stand at the mid-supply, but for what offset voltages and bias currents make, whose signs nobody knows: a reading agrees
/// between minus and plus what one build in a hundred exceeds (<see cref="DirectSpread"/>).
/// </remarks>
internal static class BenchRest
{
    public const string SupplyName = "point-supply", MidName = "point-mid";

    /// <summary>Last digits of a hand-held meter, ± [V] (common practice, no source).</summary>
    public const double MeterVolts = 1e-3;

    /// <summary>What setting a supply and reading it leave open, ± (common practice, no source).</summary>
    private const double SupplyTolerance = 0.02;

    /// <summary>What the follower behind the mid-supply's divider is off by at most [V] (a general-purpose op-amp's offset; common practice, no
    /// source), and what a reference part is off by at most, ± (common practice, no source).</summary>
    private const double FollowerVolts = 5e-3, ReferenceTolerance = 0.01;

    /// <summary>Of two values drawn evenly within ±t, the difference stays within ± this many t from the 1 % to the 99 %: 2 − √0.08 (derived:
    /// its density is a triangle of half-width 2t).</summary>
    private static readonly double Triangle = 2 - Math.Sqrt(0.08);

    /// <summary>The fixture: the ground electrode's resistor, or the bias resistors, hold the leads at the mid-supply.</summary>
    public const string Together = "all electrode leads tied together at their electrode ends, and to nothing else";

    public static IEnumerable<BenchReading> Of(Design design, BenchBoard board)
    {
        double lowest = design.Supply.Lowest.Volts;
        string mid = Where(board.At(Nets.Middle), "the mid-supply"), common = Where(board.At(Nets.Common), "the supply's minus");
        yield return Test(design, SupplyName, "analogue supply",
            $"laboratory supply set so that the analogue rails are {QuantityText.Format(design.Supply.Lowest)} apart; meter from {Where(board.At(Nets.Analogue), "the analogue supply's plus")} to {common}") with
        {
            At = board.At(Nets.Analogue), Brief = $"laboratory supply set so that the analogue supply reads this; meter to {common}",
            Expected = design.Supply.Lowest, Least = lowest * (1 - SupplyTolerance), Greatest = lowest * (1 + SupplyTolerance),
            Tolerance = "±2 %: setting and meter",
        };
        yield return MidSupply(design, board, $"meter from {mid} to {common}", $"meter from the mid-supply to {common}");
        if (design.Converter.ReferenceVoltage is { } reference)
        {
            string pin = design.Converter.InController ? "the microcontroller's reference pin" : "the converter's reference pin";
            yield return Test(design, "point-reference", "reference voltage", $"meter from {Where(board.At(Nets.ReferenceVoltage), pin)} to {common}") with
            {
                At = board.At(Nets.ReferenceVoltage), Brief = $"meter from the reference pin to {common}",
                Expected = reference, Least = reference.Volts * (1 - ReferenceTolerance), Greatest = reference.Volts * (1 + ReferenceTolerance),
                Tolerance = "±1 %: the part and the meter",
            };
        }

        foreach (NodeDc node in DirectSpread.Of(Fixture.With(design, Fixture.Short)).Where(node => IsPoint(design, node.Node))
            .DistinctBy(node => board.At(node.Node)?.Name ?? node.Node.Text, StringComparer.Ordinal))
        {
            double most = node.High.Volts + MeterVolts;
            TestPoint? at = board.At(node.Node);
            yield return Test(design, $"point-{Slug.Of(node.Node.Text)}", node.Node.Words, $"meter from {Where(at, "the node")} to {mid}") with
            {
                Node = node.Node, At = at, Brief = $"meter from the test point to {mid}", Expected = default(Voltage), Least = -most, Greatest = most,
                Tolerance = $"99 of 100 builds have at most {QuantityText.Format(node.High)} of either sign; the meter's last digits",
            };
        }
    }

    /// <summary>The middle of the supply as the divider's resistors make it.</summary>
    private static BenchReading MidSupply(Design design, BenchBoard board, string setting, string brief)
    {
        double lowest = design.Supply.Lowest.Volts, mid = design.Supply.MidRailVolts, tolerance = 0;
        if (board.Divider(BoardRoles.Upper) is { Value: { } upper } && board.Divider(BoardRoles.Lower) is { Value: { } lower, Tolerance: var its })
        {
            (mid, tolerance) = (lowest * lower.SiValue / (upper.SiValue + lower.SiValue), its?.Fraction ?? 0);
        }

        // A divider's output moves by the share above it times what its two resistors differ by.
        double follower = board.HasFollower ? FollowerVolts : 0, width = (mid * (1 - (mid / lowest)) * Triangle * tolerance) + follower + MeterVolts + (SupplyTolerance * mid);
        return Test(design, MidName, "mid-supply", setting) with
        {
            At = board.At(Nets.Middle), Brief = brief, Expected = Voltage.FromVolts(mid), Least = mid - width, Greatest = mid + width,
            Tolerance = $"the supply within 2 %, 1 % to 99 % of dividers of {QuantityText.FormatPercent(Ratio.FromFraction(tolerance), 2)} resistors, {(follower == 0 ? "" : "5 mV of the follower after it, ")}the meter's last digits",
        };
    }

    private static string Where(TestPoint? at, string otherwise) => at is null ? otherwise : $"{at.Name} ({at.Net})";

    /// <summary>Outputs that a probe reaches: what stands inside a chip or a section is none.</summary>
    private static bool IsPoint(Design design, NodeId node) =>
        node == NodeId.ActiveBuffer || node == NodeId.ReferenceBuffer || node == NodeId.Amplifier || node == NodeId.Converter || node == NodeId.Drive
            || design.Stages.Any(stage => NodeId.Of(stage.Name) == node);

    private static BenchReading Test(Design design, string name, string title, string setting) =>
        new(name, $"dc at rest, {title}", Together, setting, ReadingKind.Other)
        {
            Step = BenchStep.RestingVoltages, Source = new SourceRef("common-practice"), Design = design,
        };
}
