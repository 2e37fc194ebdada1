using System.Numerics;
using FrontEnd.Circuits;
using FrontEnd.Electrodes;

namespace FrontEnd.Documents.Cards;

/// <summary>Fits in words, for the card and for the page.</summary>
internal static class FitWords
{
    /// <summary>A plot is read off to some tenths of a decibel; a fit that leaves more rms is of another shape. Common practice, no source.</summary>
    public const double MostDecibels = 1;

    /// <summary>A meter is good to a few per cent; common practice, no source.</summary>
    public const double MostShare = 0.1;

    /// <summary>Points that a card lists: those that deviate most, if there are more.</summary>
    private const int MostShown = 40;

    /// <summary>Half of the tenth to which a plot can be read.</summary>
    private const double LeastDecibels = 0.05;

    public static string Of(NoiseFit fit) =>
        $"{QuantityText.Format(fit.White, 4)} white, {(fit.Corner.Hertz == 0 ? "no corner" : $"corner {QuantityText.Format(fit.Corner, 4)}")}; {(Math.Abs(fit.Worst.Deviation.Value) < LeastDecibels ? "the points lie on the curve to a tenth of a decibel" : $"the points deviate by {Size(fit.Rms)} rms, at most {Signed(fit.Worst.Deviation)} at {QuantityText.Format(fit.Worst.Frequency)}")}";

    public static string Of(NoiseDeviation point) =>
        $"{QuantityText.Format(point.Frequency)}: {QuantityText.Format(point.Measured)}, fit {QuantityText.Format(point.Fitted)}, {Signed(point.Deviation)}";

    public static string Of(ImpedanceFit fit) =>
        $"{Pairs(fit)}; the points deviate by {QuantityText.FormatPercent(fit.Rms, 2)} rms, at most {QuantityText.FormatPercent(fit.Worst.Left, 2)} at {QuantityText.Format(fit.Worst.Frequency)}. {Why(fit)}";

    public static string Of(ImpedanceDeviation point) =>
        $"{QuantityText.Format(point.Frequency)}: {Polar(point.Measured)}, fit {Polar(point.Fitted)}, {Signed(point.Magnitude)} and {Signed(point.Phase)}";

    /// <summary>Which circuit it is.</summary>
    public static string Pairs(ImpedanceFit fit) => fit.Pairs == 1 ? "one R in parallel with C, and a resistance in series" : "two pairs of R in parallel with C, and a resistance in series";

    /// <summary>Why one pair or two.</summary>
    public static string Why(ImpedanceFit fit) =>
        fit.RmsOfTwo is not { } two ? "The points are too few for a second pair"
        : fit.Pairs == 2 ? $"One pair alone leaves {QuantityText.FormatPercent(fit.RmsOfOne, 2)} rms"
        : $"A second pair would leave {QuantityText.FormatPercent(two, 2)} rms, which is not clearly less";

    public static IEnumerable<NoiseDeviation> Shown(IReadOnlyList<NoiseDeviation> points) =>
        points.Count <= MostShown ? points : points.OrderByDescending(point => Math.Abs(point.Deviation.Value)).Take(MostShown).OrderBy(point => point.Frequency.Hertz);

    public static IEnumerable<ImpedanceDeviation> Shown(IReadOnlyList<ImpedanceDeviation> points) =>
        points.Count <= MostShown ? points : points.OrderByDescending(point => point.Left.Fraction).Take(MostShown).OrderBy(point => point.Frequency.Hertz);

    // Nobody sees less than a tenth of a decibel, a hundredth of a per cent or a tenth of a degree in a plot.
    public static string Signed(Decibels value) => Sign(Math.Round(value.Value, 1)) + Size(value);

    public static string Signed(Ratio value)
    {
        double shown = Math.Round(value.Fraction, 4);
        return Sign(shown) + QuantityText.FormatTrimmed(Ratio.FromFraction(Math.Abs(shown)), 2);
    }

    public static string Signed(Angle value)
    {
        double shown = Math.Round(value.SiValue(), 1);
        return Sign(shown) + QuantityText.Format(Angle.FromDegrees(Math.Abs(shown)), 2);
    }

    private static string Size(Decibels value) => QuantityText.Format(Decibels.FromStated(Math.Round(Math.Abs(value.Value), 1)), 2);

    private static string Polar(Complex z) => $"{QuantityText.Format(Resistance.FromOhms(Complex.Abs(z)))} {QuantityText.Format(PhaseOf(z))}";

    public static Angle PhaseOf(Complex z) => Angle.FromDegrees(z.Phase * 180 / Math.PI);

    private static double SiValue(this Angle angle) => ((IQuantity)angle).SiValue;

    private static string Sign(double value) => value < 0 ? "-" : value > 0 ? "+" : "";
}
