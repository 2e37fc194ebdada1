using FrontEnd.Designs;

namespace FrontEnd.Bench;

/// <summary>Where a recording's spectrum has another shape than the predicted one, whatever their sizes: a range of frequencies that stands
/// out by more than chance and the parts explain.</summary>
/// <param name="From">Lowest frequency of the range [Hz].</param>
/// <param name="To">Highest [Hz].</param>
/// <param name="Decibels">Measured over predicted there, over the same in the band.</param>
internal sealed record SpectrumShape(double From, double To, double Decibels)
{
    /// <summary>What flicker, joints and parts leave open in the band and above it, and below the band, where temperature works besides
    /// [dB] (common practice, no source).</summary>
    private const double Inside = 6, Below = 10;

    /// <summary>Standard deviations that chance may have.</summary>
    private const double Sigmas = 4;

    /// <summary>Ranges of equal ratio.</summary>
    private const int Rows = 16;

    /// <summary>Bins beside a line that are left out.</summary>
    private const int LineBins = 3;

    /// <summary>"+7.5 dB from 40 Hz to 80 Hz".</summary>
    public string Words => $"{Signed(Decibels)} dB from {QuantityText.Format(From, "Hz")} to {QuantityText.Format(To, "Hz")}";

    /// <summary>With its sign, to a tenth.</summary>
    public static string Signed(double decibels) => $"{(0 <= decibels ? "+" : "")}{QuantityText.FormatNumber(Math.Round(decibels, 1), 3)}";

    /// <summary>Of the median over a wide range to the mean of decibels, and how much the median of n values of Welch's averages spreads:
    /// 10/ln 10·√(π/2)/√(averages·n) (derived for Gaussian noise).</summary>
    private const double MedianSpread = 4.343 * 1.2533;

    /// <summary>Measured over predicted in the band, the median of its bins [dB].</summary>
    public static double Level(WelchSpectrum measured, double[] seen, Band band, Func<int, bool> isLine) =>
        Median(Bins(measured, seen, band.Low.Hertz, band.High.Hertz, isLine).Select(k => Difference(measured, seen, k))) ?? 0;

    /// <summary>The range that stands out most; null for none.</summary>
    /// <param name="measured">The recording's.</param>
    /// <param name="seen">The predicted density at bins 1, 2 … as windows show it.</param>
    /// <param name="predicted">What the prediction rests on.</param>
    /// <param name="band">The design's band.</param>
    /// <param name="isLine">Bins in which a line stands.</param>
    public static SpectrumShape? Worst(
        WelchSpectrum measured, double[] seen, PredictedSpectrum predicted, Band band, Func<int, bool> isLine)
    {
        double level = Level(measured, seen, band, isLine);
        SpectrumShape? worst = null;
        double excess = 0;
        foreach ((double from, double to) in Ranges(measured, seen, predicted))
        {
            int[] bins = [.. Bins(measured, seen, from, to, isLine)];
            if (Median(bins.Select(k => Difference(measured, seen, k))) is not { } median)
            {
                continue;
            }

            double allowed = (to <= band.Low.Hertz ? Below : Inside) + (Sigmas * MedianSpread / Math.Sqrt(measured.Averages * bins.Length));
            double beyond = Math.Abs(median - level) - allowed;
            if (excess < beyond)
            {
                (excess, worst) = (beyond, new SpectrumShape(from, to, median - level));
            }
        }

        return worst;
    }

    /// <summary>Rows of equal ratio up to a tenth below half the rate, and every range that the digital filters halve at least.</summary>
    private static IEnumerable<(double From, double To)> Ranges(WelchSpectrum measured, double[] seen, PredictedSpectrum predicted)
    {
        double low = measured.Step, high = 0.9 * seen.Length * measured.Step, ratio = Math.Pow(high / low, 1.0 / Rows);
        for (int row = 0; row < Rows; row++)
        {
            yield return (low * Math.Pow(ratio, row), low * Math.Pow(ratio, row + 1));
        }

        int? first = null;
        for (int k = 1; k <= (int)(0.9 * seen.Length); k++)
        {
            bool stopped = predicted.Digital(k * measured.Step) < 0.25;
            if (stopped)
            {
                first ??= k;
            }
            else if (first is { } began)
            {
                if (4 <= k - began)
                {
                    yield return (began * measured.Step, (k - 1) * measured.Step);
                }

                first = null;
            }
        }
    }

    private static IEnumerable<int> Bins(WelchSpectrum measured, double[] seen, double from, double to, Func<int, bool> isLine) =>
        Enumerable.Range(1, seen.Length).Where(k => from <= k * measured.Step * (1 + 1e-9) && k * measured.Step <= to * (1 + 1e-9) && !isLine(k));

    /// <summary>True for the bins of found lines.</summary>
    public static Func<int, bool> At(IReadOnlyList<FoundLine> lines, double step, int beside = LineBins)
    {
        double[] centres = [.. lines.Select(line => line.Frequency.Hertz / step)];
        return k => Array.Exists(centres, centre => Math.Abs(k - centre) <= beside);
    }

    private static double Difference(WelchSpectrum measured, double[] seen, int k) =>
        10 * Math.Log10(Math.Max(1e-60, measured.Density[k]) / Math.Max(1e-60, seen[k - 1]));

    private static double? Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? null : sorted[sorted.Length / 2];
    }
}
