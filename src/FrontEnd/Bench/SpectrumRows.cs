namespace FrontEnd.Bench;

/// <summary>A measured spectrum over a predicted one in rows of a sixth of an octave, with what chance makes of each row: what faults are held against.</summary>
/// <remarks>
/// A row's figure is the mean of its bins' decibels, from which a large bin takes little. A bin of Welch's K averages is distributed as χ² with 2K degrees of
/// freedom over 2K: the mean of its logarithm is ψ(K) − ln K, the variance ψ′(K) (Abramowitz and Stegun 6.3.18, 6.4.12, from memory). Bins beside each other
/// share 4/9 of their power with Hann's window, those two apart 1/36 (derived from its transform, 1, −1/2), so that a row of many counts for half as many.
/// </remarks>
internal sealed class SpectrumRows
{
    /// <summary>Ends of a row over each other: narrow enough for the edges of a notch of Q 10.</summary>
    private const double Ratio = 1.122;

    /// <summary>The mean of a window is taken off, which the first bin still shows; near half the rate nothing is left of most paths.</summary>
    private const int FirstBin = 2;
    private const double LastShare = 0.95;

    private static readonly double Decibel = 10 / Math.Log(10);

    private SpectrumRows(int[][] bins, double[] hertz, double[] difference, double[] variance) =>
        (Bins, Hertz, Difference, Variance) = (bins, hertz, difference, variance);

    /// <summary>Which bins of the spectrum each row holds.</summary>
    public int[][] Bins { get; }

    /// <summary>Each row's middle [Hz].</summary>
    public double[] Hertz { get; }

    /// <summary>Measured over predicted [dB].</summary>
    public double[] Difference { get; }

    /// <summary>What chance makes of it [dB²].</summary>
    public double[] Variance { get; }

    public int Count => Bins.Length;

    /// <param name="measured">The recording's.</param>
    /// <param name="predicted">The predicted density at bins 1, 2 … as windows show it [V²/Hz].</param>
    /// <param name="isLine">Bins that a line reaches.</param>
    public static SpectrumRows Of(WelchSpectrum measured, double[] predicted, Func<int, bool> isLine)
    {
        double k = measured.Averages, bias = Decibel * ((1 / (2 * k)) + (1 / (12 * k * k))),
            one = Decibel * Decibel * ((1 / k) + (1 / (2 * k * k)) + (1 / (6 * k * k * k)));
        List<int[]> rows = [];
        int last = (int)(LastShare * predicted.Length);
        for (double from = FirstBin - 0.5; from < last; from *= Ratio)
        {
            int[] bins = [.. Enumerable.Range((int)Math.Ceiling(from), Math.Max(0, (int)Math.Ceiling(Math.Min(last, from * Ratio)) - (int)Math.Ceiling(from)))
                .Where(bin => !isLine(bin))];
            if (bins.Length != 0)
            {
                rows.Add(bins);
            }
        }

        return new SpectrumRows([.. rows], [.. rows.Select(bins => measured.Step * Math.Sqrt((double)bins[0] * bins[^1]))],
            [.. rows.Select(bins => bias + bins.Average(bin => Decibel * Math.Log(Math.Max(1e-60, measured.Density[bin]) / Math.Max(1e-60, predicted[bin - 1]))))],
            [.. rows.Select(bins => one / bins.Length * (1 + (2 * Shared(bins.Length))))]);
    }

    /// <summary>A density at all bins over another in the rows' way [dB].</summary>
    public double[] Over(double[] density, double[] other) =>
        [.. Bins.Select(bins => bins.Average(bin => Decibel * Math.Log(Math.Max(1e-60, density[bin - 1]) / Math.Max(1e-60, other[bin - 1]))))];

    /// <summary>Σ (1 − m/n)ρ_m of n bins in a row.</summary>
    private static double Shared(int n) => ((1 - (1.0 / n)) * 4 / 9) + (2 < n ? (1 - (2.0 / n)) / 36 : 0);
}
