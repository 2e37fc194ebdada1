using FrontEnd.Quantities;

namespace FrontEnd.Spread;

/// <summary>What a spread run found.</summary>
/// <param name="Design">The design whose devices were drawn.</param>
/// <param name="Options">What was asked for.</param>
/// <param name="Parts">Everything that was drawn, in the order of the path.</param>
/// <param name="Figures">The figures, in the order of the path.</param>
/// <param name="Yield">Share of the builds that meet every requirement judged here, 0…1; null where none is judged.</param>
public sealed record SpreadResult(Design Design, SpreadOptions Options, IReadOnlyList<SpreadPart> Parts, IReadOnlyList<SpreadFigure> Figures, double? Yield)
{
    /// <summary>The figure with this id; null where the run has none.</summary>
    public SpreadFigure? Find(string id) => Figures.FirstOrDefault(figure => figure.Id == id);
}

/// <summary>One headline figure over all builds; a value of +∞ has no bound, such as the current through a lead without a resistor.</summary>
/// <param name="Id">The result's id, such as <c>noise.total</c>.</param>
/// <param name="Unit">Unit of all its values.</param>
/// <param name="Nominal">With every part at its nominal value and both leads alike; the assessment takes the worst signs of the mismatch instead.</param>
/// <param name="Values">Of every build, in the order of the builds.</param>
/// <param name="Percentiles">At <see cref="Percents"/>, by linear interpolation between the sorted values.</param>
/// <param name="Mean">Mean of the builds.</param>
/// <param name="StandardDeviation">With n − 1.</param>
/// <param name="Yield">Share of the builds that meet its requirement; null where it is not judged.</param>
/// <param name="Limit">The requirement's limit in the figure's unit; null where it is not judged.</param>
/// <param name="LimitIsGreatest">True where the figure must not be above the limit, false where it must not be below.</param>
/// <param name="Requirement">The key that sets the limit; null where it is not judged.</param>
/// <param name="Ranks">Spearman's rank correlation with the parts, largest first.</param>
/// <param name="Least">Smallest value found by corners.</param>
/// <param name="Most">Largest value found by corners.</param>
public sealed record SpreadFigure(
    string Id, string Unit, double Nominal, IReadOnlyList<double> Values, IReadOnlyList<double> Percentiles, double Mean, double StandardDeviation, double? Yield, double? Limit, bool LimitIsGreatest, string? Requirement,
    IReadOnlyList<RankCorrelation> Ranks, double Least, double Most)
{
    /// <summary>The percentiles that are given.</summary>
    public static readonly IReadOnlyList<double> Percents = [1, 5, 25, 50, 75, 95, 99];

    /// <summary>Half the width of the 95 % interval of the mean, 1.96·s/√n.</summary>
    public double MeanUncertainty => 1.96 * StandardDeviation / Math.Sqrt(Values.Count);

    /// <summary>A finite value of this figure as the quantity that the assessment gives it as, rms and peak-to-peak told apart.</summary>
    public IQuantity Quantity(double value) => (Id, Unit) switch
    {
        ("noise.total" or "mains.total" or "mains.recorded", _) => VoltageRms.FromVolts(value),
        ("noise.board_share", _) => VoltagePeakToPeak.FromVolts(value),
        (_, "V") => Voltage.FromVolts(value),
        (_, "A") => Current.FromAmperes(value),
        (_, "dB") => Decibels.FromStated(value),
        (_, "bit") => BitCount.FromBits(value),
        (_, "°") => Angle.FromDegrees(value),
        (_, "1") => Ratio.FromFraction(value),
        _ => throw new InvalidOperationException($"The unit {Unit} is not handled."),
    };

    /// <summary>The builds in bins of equal width from the least value to the greatest; null where all builds have the same value or one has no bound.</summary>
    public Histogram? InBins(int bins)
    {
        double low = Values.Min(), high = Values.Max();
        if (!(low < high) || !double.IsFinite(high - low))
        {
            return null;
        }

        int[] counts = new int[bins];
        foreach (double value in Values)
        {
            counts[Math.Min(bins - 1, (int)((value - low) / (high - low) * bins))]++;
        }

        return new Histogram(low, high, counts);
    }
}

/// <summary>How far a part and a figure rise together, −1…1.</summary>
public sealed record RankCorrelation(string Key, double Coefficient);

/// <summary>Numbers of builds in bins of equal width.</summary>
/// <param name="Low">Where the first bin begins, the least value.</param>
/// <param name="High">Where the last bin ends, the greatest value.</param>
public sealed record Histogram(double Low, double High, IReadOnlyList<int> Counts)
{
    /// <summary>The middle of a bin.</summary>
    public double Middle(int bin) => Low + ((bin + 0.5) * (High - Low) / Counts.Count);
}
