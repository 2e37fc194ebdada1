using FrontEnd.Designs;
using FrontEnd.Identity;

namespace FrontEnd.Spread;

/// <summary>What a spread run found.</summary>
/// <param name="Design">The design whose devices were drawn.</param>
/// <param name="Options">What was asked for.</param>
/// <param name="Parts">Everything that was drawn, in the order of the path.</param>
/// <param name="Figures">The figures, in the order of the path.</param>
/// <param name="Yield">Share of the builds that meet every requirement judged here, 0…1; null where none is judged.</param>
public sealed record SpreadResult(
    Design Design, SpreadOptions Options, IReadOnlyList<SpreadPart> Parts, IReadOnlyList<SpreadFigure> Figures, double? Yield)
{
    /// <summary>The yield of the same builds with electrodes and leads at their nominal values: what all else decides; null where nothing is
    /// judged.</summary>
    public double? YieldWithoutElectrodesAndLeads { get; init; }

    /// <summary>The yield of the same builds with everything outside the board at its nominal value: what better parts can change.</summary>
    public double? YieldOfParts { get; init; }

    /// <summary>What is tied to what, a sentence each.</summary>
    public required IReadOnlyList<string> Ties { get; init; }

    /// <summary>The figure with this id; null where the run has none.</summary>
    public SpreadFigure? Find(ResultId id) => Figures.FirstOrDefault(figure => figure.Id == id);

    /// <summary>The same by the id as a user writes it.</summary>
    public SpreadFigure? Find(string id) => Find(new ResultId(id));
}

/// <summary>One headline figure over all builds; a value of +∞ has no bound, such as the current through a lead without a
/// resistor.</summary>
/// <param name="Id">The result's id, such as <c>noise.total</c>.</param>
/// <param name="Unit">Unit of all its values.</param>
/// <param name="Nominal">With every part at its nominal value and both leads alike; the assessment takes the worst signs of the mismatch
/// instead.</param>
/// <param name="Values">Of every build, in the order of the builds.</param>
/// <param name="Percentiles">At <see cref="Percents"/>, by linear interpolation between the sorted values.</param>
/// <param name="Mean">Mean of the builds.</param>
/// <param name="StandardDeviation">With n − 1.</param>
/// <param name="Yield">Share of the builds that meet its requirement; null where it is not judged.</param>
/// <param name="Limit">The requirement's limit in the figure's unit; null where it is not judged.</param>
/// <param name="LimitIsGreatest">True where the figure must not be above the limit, false where it must not be below.</param>
/// <param name="Requirement">The key that sets the limit; null where it is not judged.</param>
/// <param name="Ranks">Spearman's rank correlation with the parts, largest first; what chance alone makes (<see cref="Chance"/>) is left
/// out.</param>
/// <param name="Least">Smallest value found by corners.</param>
/// <param name="Most">Largest value found by corners.</param>
public sealed record SpreadFigure(
    ResultId Id, string Unit, double Nominal, IReadOnlyList<double> Values, IReadOnlyList<double> Percentiles, double Mean,
    double StandardDeviation, double? Yield, double? Limit, bool LimitIsGreatest, string? Requirement,
    IReadOnlyList<RankCorrelation> Ranks, double Least, double Most)
{
    /// <summary>Size of a rank correlation that chance alone makes about once in 370 times with so many builds, 3/√n: the standard error
    /// of Spearman's coefficient of independent values is 1/√(n − 1) (Kendall 1948, from memory).</summary>
    public static double Chance(int builds) => 3 / Math.Sqrt(builds);

    /// <summary>Share of the builds that meet its requirement with everything outside the board at its nominal value; null where it is not
    /// judged.</summary>
    public double? YieldOfParts { get; init; }

    /// <summary>The percentiles that are given.</summary>
    public static readonly IReadOnlyList<double> Percents = [1, 5, 25, 50, 75, 95, 99];

    /// <summary>Half the width of the 95 % interval of the mean, 1.96·s/√n.</summary>
    public double MeanUncertainty => 1.96 * StandardDeviation / Math.Sqrt(Values.Count);

    /// <summary>A finite value of this figure as the quantity that the assessment gives it as, rms and peak-to-peak told apart.</summary>
    public IQuantity Quantity(double value) => Unit switch
    {
        "V" when Id == ResultIds.Noise.Total || ResultIds.Mains.All.Has(Id) => VoltageRms.FromVolts(value),
        "V" when Id == ResultIds.Noise.BoardShare => VoltagePeakToPeak.FromVolts(value),
        "V" => Voltage.FromVolts(value),
        "A" => Current.FromAmperes(value),
        "dB" => Decibels.FromStated(value),
        "bit" => BitCount.FromBits(value),
        "°" => Angle.FromDegrees(value),
        "1" => Ratio.FromFraction(value),
        _ => throw new InvalidOperationException($"The unit {Unit} is not handled."),
    };

    /// <summary>Smallest value of a build.</summary>
    public double LeastDrawn => Values.Min();

    /// <summary>Largest value of a build.</summary>
    public double MostDrawn => Values.Max();

    /// <summary>
    /// True where a build lies beyond the corners: a figure with its extreme inside the ranges, such as a difference that cancels, has it
    /// at no corner, and a normal draw may go beyond its tolerance.
    /// </summary>
    public bool IsDrawnBeyondCorners => LeastDrawn < Least - Rounding(Least) || Most + Rounding(Most) < MostDrawn;

    private static double Rounding(double value) => 1e-9 * Math.Abs(value);

    /// <summary>
    /// The builds in bins of equal width from the least value to the greatest; null where all builds have the same value or one has no
    /// bound. Whole bits have a bin for each number, and <paramref name="bins"/> does not count.
    /// </summary>
    public Histogram? InBins(int bins)
    {
        double low = LeastDrawn, high = MostDrawn;
        if (!(low < high) || !double.IsFinite(high - low))
        {
            return null;
        }

        bool whole = string.Equals(Unit, "bit", StringComparison.Ordinal) && Values.All(double.IsInteger);
        if (whole)
        {
            (low, high, bins) = (low - 0.5, high + 0.5, (int)(high - low) + 1);
        }

        int[] counts = new int[bins];
        foreach (double value in Values)
        {
            counts[Math.Min(bins - 1, (int)((value - low) / (high - low) * bins))]++;
        }

        return new Histogram(low, high, counts) { IsWhole = whole };
    }
}

/// <summary>How far a part and a figure rise together, −1…1.</summary>
public sealed record RankCorrelation(string Key, double Coefficient);

/// <summary>Numbers of builds in bins of equal width.</summary>
/// <param name="Low">Where the first bin begins: the least value, or half a number below it where the values are whole.</param>
/// <param name="High">Where the last bin ends: the greatest value, or half a number above it.</param>
public sealed record Histogram(double Low, double High, IReadOnlyList<int> Counts)
{
    /// <summary>True where each bin holds one whole number.</summary>
    public bool IsWhole { get; init; }

    /// <summary>The least value.</summary>
    public double Least => IsWhole ? Middle(0) : Low;

    /// <summary>The greatest value.</summary>
    public double Greatest => IsWhole ? Middle(Counts.Count - 1) : High;

    /// <summary>The middle of a bin.</summary>
    public double Middle(int bin) => Low + ((bin + 0.5) * (High - Low) / Counts.Count);
}
