using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Fields;
using FrontEnd.Identity;
using FrontEnd.Numbers;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Advice;

/// <summary>How one result moves when one input moves by a tenth.</summary>
/// <param name="Key">The input's key in the design.</param>
/// <param name="Meaning">What the input is.</param>
/// <param name="From">The input's value.</param>
/// <param name="To">The input's value a tenth up (or down, where up is not allowed).</param>
/// <param name="Before">The result as it is.</param>
/// <param name="After">The result with the input moved; null where it can no longer be computed.</param>
/// <param name="Change">After over before less 1; for decibels, degrees and bits the plain difference.</param>
public sealed record Sensitivity(string Key, string Meaning, IQuantity From, IQuantity To, IQuantity Before, IQuantity? After,
    double Change)
{
    /// <summary>By how much a temperature is moved [K]: a tenth of the absolute temperature would be no skin's.</summary>
    public const double Kelvins = 10;

    private const double Step = 0.1;

    /// <summary>Smallest effect that is listed, as a share (or in dB, degrees or bits).</summary>
    private const double Least = 1e-4;

    /// <summary>False for a limit of use: each is a search of its own, which is not made anew for every input.</summary>
    public static bool IsLookedFor(ResultId id) => !ResultIds.Limit.All.Has(id);

    /// <summary>Moves every numeric input of the design by a tenth and evaluates anew; largest effect first, inputs without effect left
    /// out.</summary>
    public static IReadOnlyList<Sensitivity> Of(Assessment assessment, ResultId id, CancellationToken cancellation = default)
    {
        if (!IsLookedFor(id) || assessment.Find(id) is not { State: ResultState.Number, Value: { } before })
        {
            return [];
        }

        Design design = assessment.Design;
        OneFigure figure = OneFigure.Of(design, id);
        return
        [
            .. InParallel.Map([.. DesignFields.Numeric(design)], field => Move(design, field, figure, before), cancellation).OfType<Sensitivity>()
                .Where(row => row.After is null || Least < Math.Abs(row.Change))
                .OrderByDescending(row => row.After is null ? double.PositiveInfinity : Math.Abs(row.Change)),
        ];
    }

    private static Sensitivity? Move(Design design, Field<Design> field, OneFigure figure, IQuantity before)
    {
        double from = field.SiValue(design) ?? 0;
        if (from == 0)
        {
            return null;
        }

        foreach (double factor in new[] { 1 + Step, 1 - Step })
        {
            double to = field.Holds<Temperature>() ? from + (Kelvins * (factor < 1 ? -1 : 1)) : from * factor;
            if (field.Range is { } range && !range.Contains(to))
            {
                continue;
            }

            Design moved = field.WithSiValue(design, to);

            // A count moves by a whole one or not at all.
            if (field.SiValue(moved) is not { } reached || reached == from)
            {
                return null;
            }

            bool usable = figure.TryOf(moved, out Result? result);
            IQuantity? after = result is { State: ResultState.Number } ? result.Value : null;
            if (!usable && factor > 1)
            {
                continue;
            }

            double change = after is null
                ? 0
                : QuantityKind.IsByDifference(before) || before.SiValue == 0
                ? after.SiValue - before.SiValue
                : (after.SiValue / before.SiValue) - 1;
            return new Sensitivity(field.Key, field.Meaning, Quantity(field, field.Get(design)), Quantity(field, field.Get(moved)), before,
                after, change);
        }

        return null;
    }

    private static IQuantity Quantity(Field<Design> field, object? value) => value switch
    {
        Ratio ratio when FieldText.IsShare(field) => Share.FromFraction(ratio.Fraction),
        IQuantity quantity => quantity,
        double number => PlainNumber.FromNumber(number),
        int count => PlainNumber.FromNumber(count),
        _ => throw new InvalidOperationException($"A numeric field holds {value?.GetType().Name ?? "nothing"}."),
    };
}
