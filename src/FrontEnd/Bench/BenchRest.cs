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

    /// <summary>Resistors of the mid-supply's divider, ± (common practice, no source), and what the follower behind it is off by at most [V]
    /// (a general-purpose op-amp's offset; common practice, no source).</summary>
    private const double DividerTolerance = 0.01, FollowerVolts = 5e-3;

    /// <summary>Of two values drawn evenly within ±t, the difference stays within ± this many t from the 1 % to the 99 %: 2 − √0.08 (derived:
    /// its density is a triangle of half-width 2t).</summary>
    private static readonly double Triangle = 2 - Math.Sqrt(0.08);

    private const string Together = "all electrode leads tied together at their electrode ends and to nothing else";

    public static IEnumerable<BenchReading> Of(Design design)
    {
        double lowest = design.Supply.Lowest.Volts, mid = design.Supply.MidRailVolts;
        string supply = $"laboratory supply set so that the analogue rails are {QuantityText.Format(design.Supply.Lowest)} apart";
        yield return Test(design, SupplyName, "analogue supply", $"{supply}; meter from the positive to the negative analogue rail") with
        {
            Brief = "supply set so that the analogue rails are as far apart; meter from one to the other",
            Expected = design.Supply.Lowest, Least = lowest * (1 - SupplyTolerance), Greatest = lowest * (1 + SupplyTolerance),
            Tolerance = "±2 %: setting and meter",
        };

        // A divider's output moves by the share above it times what its two resistors differ by.
        double width = (mid * (1 - (mid / lowest)) * Triangle * DividerTolerance) + FollowerVolts + MeterVolts;
        yield return Test(design, MidName, "mid-supply", "meter from the mid-supply to the negative analogue rail") with
        {
            Expected = Voltage.FromVolts(mid), Least = mid - width, Greatest = mid + width,
            Tolerance = "1 % to 99 % of dividers of 1 % resistors, 5 mV of the follower behind, the meter's last digits",
        };
        foreach (NodeDc node in DirectSpread.Of(Fixture.With(design, Fixture.Short)).Where(node => IsPoint(design, node.Node)))
        {
            double most = node.High.Volts + MeterVolts;
            yield return Test(design, $"point-{Slug.Of(node.Node.Text)}", node.Node.Words, "meter from the node to the mid-supply") with
            {
                Node = node.Node, Expected = default(Voltage), Least = -most, Greatest = most,
                Tolerance = $"99 of 100 builds have at most {QuantityText.Format(node.High)} of either sign; the meter's last digits",
            };
        }
    }

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
