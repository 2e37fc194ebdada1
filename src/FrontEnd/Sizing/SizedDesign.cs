using FrontEnd.Designs;

namespace FrontEnd.Sizing;

/// <summary>A complete design that meets everything that is asked.</summary>
/// <param name="Design">With every part.</param>
/// <param name="Noise"><c>noise.total</c>.</param>
/// <param name="BoardNoise"><c>noise.board_share</c>, what the requirement judges.</param>
/// <param name="Current"><c>power.supply_current</c>.</param>
/// <param name="Parts">Of the path of the signal: no decoupling, connectors, electrodes, microcontroller.</param>
/// <param name="MainsMargin">The mains limit at the electrodes over <c>mains.total</c>: the margin that CMRR and balance leave.</param>
/// <param name="LimitedBy">The requirement with the least to spare, in words.</param>
internal sealed record SizedDesign(Design Design, VoltageRms Noise, VoltagePeakToPeak BoardNoise, Current Current, int Parts,
    Decibels MainsMargin, string LimitedBy)
{
    /// <summary>One line: amplifier, gains, filter, converter, rate, ground.</summary>
    public string Summary { get; init; } = "";
}
