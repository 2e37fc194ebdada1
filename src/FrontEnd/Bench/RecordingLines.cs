using FrontEnd.Designs;
using FrontEnd.Filters;

namespace FrontEnd.Bench;

/// <summary>Lines that stand out of the noise of a recording, what each may be, and the bins that they reach.</summary>
/// <remarks>The mains wanders while it is recorded, its harmonics that much more: what stands out side by side is one line, however wide.</remarks>
internal sealed class RecordingLines
{
    /// <summary>A line counts where its bin is above the noise beside it by more than chance gives once in some thousand recordings.</summary>
    private const double LineSigmas = 9;

    /// <summary>Most lines that are told.</summary>
    private const int Most = 12;

    /// <summary>The first bin that a line is looked for in: it must have noise below it.</summary>
    private const int FirstBin = 6;

    /// <summary>Bins beside the outermost one of a line into which its window reaches, and how far apart two that stand out are one line.</summary>
    private const int Lobe = 2, Apart = 3;

    /// <summary>Distances in bins at which the noise beside a bin is looked for: next to it, and beyond what wanders.</summary>
    private static readonly (int From, int To)[] Sides = [(4, 20), (24, 64), (80, 200)];

    private static readonly double[] MainsFrequencies = [50, 60];

    private readonly bool[] _reached;

    private RecordingLines(FoundLine[] lines, IReadOnlyDictionary<FoundLine, LineOdds> odds, bool[] reached) => (Lines, Odds, _reached) = (lines, odds, reached);

    /// <summary>The largest first.</summary>
    public IReadOnlyList<FoundLine> Lines { get; }

    /// <summary>What each may be.</summary>
    public IReadOnlyDictionary<FoundLine, LineOdds> Odds { get; }

    /// <summary>True for a bin that a line reaches.</summary>
    public bool Reach(int bin) => _reached[bin];

    /// <param name="spectrum">The recording's.</param>
    /// <param name="design">The design with its fixture.</param>
    /// <param name="density">The predicted density at bins 1, 2 … as windows show it.</param>
    public static RecordingLines Of(WelchSpectrum spectrum, Design design, double[] density)
    {
        // A bin of K averages of Gaussian noise spreads by 1/√K about its mean.
        double threshold = 1 + (LineSigmas / Math.Sqrt(spectrum.Averages));
        int n = spectrum.Density.Count;
        double[] measured = [.. spectrum.Density], over = [.. Enumerable.Range(0, n).Select(k => 0 < k && k <= density.Length ? measured[k] / Math.Max(1e-300, density[k - 1]) : 0)];
        bool[] reached = new bool[n];
        List<(FoundLine Line, LineOdds Odds)> found = [];
        foreach ((int first, int last, double background) in Regions(measured, over, threshold))
        {
            int from = Math.Max(1, first - Lobe), to = Math.Min(n - 2, last + Lobe);
            double power = 0, moment = 0, sum = 0;
            for (int k = from; k <= to; k++)
            {
                power += (measured[k] - background) * spectrum.Step;
                double above = Math.Max(0, measured[k] - background);
                (sum, moment) = (sum + above, moment + (above * k));
            }

            double hertz = moment / sum * spectrum.Step;
            LineOdds odds = LineOdds.Of(hertz, spectrum.Step * (1 + ((last - first) / 2.0)), design);
            found.Add((odds.Line(hertz, Math.Sqrt(Math.Max(0, power))), odds));
            Mark(reached, measured, first, last, 2 * background);
        }

        (FoundLine Line, LineOdds Odds)[] told = [.. found.OrderByDescending(one => one.Line.Rms.Volts).Take(Most)];
        return new RecordingLines([.. told.Select(one => one.Line)],
            told.DistinctBy(one => one.Line).ToDictionary(one => one.Line, one => one.Odds), reached);
    }

    /// <summary>Bins side by side that stand out, with the noise beneath them.</summary>
    private static IEnumerable<(int First, int Last, double Background)> Regions(double[] measured, double[] over, double threshold)
    {
        (int First, int Last, double Background)? open = null;
        for (int k = FirstBin; k < measured.Length - 3; k++)
        {
            if (Beneath(measured, over, k, threshold) is not { } background)
            {
                continue;
            }

            if (open is { } region && k - region.Last <= Apart)
            {
                open = (region.First, k, Math.Min(region.Background, background));
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = (k, k, background);
        }

        if (open is { } rest)
        {
            yield return rest;
        }
    }

    /// <summary>The noise beside a bin that stands out of it on both sides; null for one that does not. It must stand out of the measured noise, and of the measured
    /// over the predicted: the skirt of a notch is no line, and neither is a notch that is not there.</summary>
    private static double? Beneath(double[] measured, double[] over, int k, double threshold)
    {
        foreach ((int from, int to) in Sides)
        {
            if (Side(over, k, from, to) is { } shape && threshold * shape < over[k] && Side(measured, k, from, to) is { } background && threshold * background < measured[k])
            {
                return background;
            }
        }

        return null;
    }

    /// <summary>The larger one of the medians on both sides: what falls steeply is no line. Null where a side has too few bins.</summary>
    private static double? Side(double[] values, int k, int from, int to)
    {
        const int Fewest = 2;
        int low = Math.Max(1, k - to), high = Math.Min(values.Length - 2, k + to);
        if (k - from - low + 1 < Fewest || high - k - from + 1 < Fewest)
        {
            return null;
        }

        return Math.Max(Median(values.AsSpan(low, k - from - low + 1)), Median(values.AsSpan(k + from, high - k - from + 1)));
    }

    private static double Median(ReadOnlySpan<double> values)
    {
        Span<double> sorted = stackalloc double[values.Length];
        values.CopyTo(sorted);
        sorted.Sort();
        return sorted[sorted.Length / 2];
    }

    /// <summary>The bins of a line, those into which its window reaches, and on from there while they fall.</summary>
    private static void Mark(bool[] reached, double[] measured, int first, int last, double least)
    {
        const int Beside = 3, Farthest = 40;
        (int from, int to) = (first - Beside, last + Beside);
        while (first - Farthest < from && 1 < from && least < measured[from])
        {
            from--;
        }

        while (to < last + Farthest && to < measured.Length - 1 && least < measured[to])
        {
            to++;
        }

        for (int k = Math.Max(0, from); k <= Math.Min(measured.Length - 1, to); k++)
        {
            reached[k] = true;
        }
    }

    /// <summary>The mains frequencies that a line may come from: the design's, then the other.</summary>
    internal static IEnumerable<double> Mains(Design design)
    {
        double own = design.Mains.Frequency.Hertz;
        return MainsFrequencies.Where(other => 1e-9 < Math.Abs(other - own)).Prepend(own);
    }
}

/// <summary>What a line may be, by where it stands.</summary>
/// <remarks>
/// A harmonic may land anywhere within what the mains' deviation makes of it, which for high ones is a large part of the spectrum: the wider it is, the less does
/// standing in it say. Odds are what is thought of each beforehand over the width in which it may stand (Bayes): a line of another origin anywhere below half
/// the rate.
/// </remarks>
/// <param name="Pickup">Probability of the mains or a harmonic below half the rate.</param>
/// <param name="Folded">Of a harmonic from above.</param>
/// <param name="Other">Of neither.</param>
/// <param name="Harmonic">The most probable harmonic; null where another line is more so.</param>
/// <param name="Mains">The mains frequency of it [Hz].</param>
/// <param name="IsFolded">True where it lies above half the rate.</param>
internal sealed record LineOdds(double Pickup, double Folded, double Other, int? Harmonic, double? Mains, bool IsFolded)
{
    /// <summary>Weights beforehand: of the design's mains, of another one, of a line that is none (chosen).</summary>
    private const double OwnMains = 1, OtherMains = 0.05, NoMains = 0.3;

    /// <summary>The share of the fundamental that counts as much as the fundamental: filters and sections left out decide which harmonic shows.</summary>
    private const double FullShare = 0.06;

    /// <param name="hertz">Where the line stands.</param>
    /// <param name="reach">How far from there it may be [Hz].</param>
    /// <param name="design">The design, whose mains it may be.</param>
    public static LineOdds Of(double hertz, double reach, Design design)
    {
        double rate = design.Converter.Rate.Hertz, deviation = design.Mains.Deviation.Fraction, own = design.Mains.Frequency.Hertz;
        double pickup = 0, folded = 0, most = 0, other = NoMains / (rate / 2);
        (int? harmonic, double? mains) = ((int?)null, (double?)null);
        foreach (double f0 in RecordingLines.Mains(design))
        {
            for (int h = 1; h <= BenchComparison.HighestHarmonic; h++)
            {
                (double low, double high) = Folding.LandsWithin(h * f0 * (1 - deviation), h * f0 * (1 + deviation), rate);
                if (hertz < low - reach || high + reach < hertz)
                {
                    continue;
                }

                double share = Math.Min(1, Interference.Mains.StandardHarmonics[h - 1] / FullShare);
                double weight = (f0 == own ? OwnMains : OtherMains) * share / (high - low + (2 * reach));
                (pickup, folded) = rate / 2 < h * f0 ? (pickup, folded + weight) : (pickup + weight, folded);
                if (most < weight)
                {
                    (most, harmonic, mains) = (weight, h, f0);
                }
            }
        }

        double sum = pickup + folded + other;
        return pickup + folded < other ? new LineOdds(pickup / sum, folded / sum, other / sum, null, null, false)
            : new LineOdds(pickup / sum, folded / sum, other / sum, harmonic, mains, rate / 2 < harmonic * mains);
    }

    public FoundLine Line(double hertz, double rms) => new(Frequency.FromHertz(hertz), VoltageRms.FromVolts(rms), Harmonic,
        Mains is { } f0 ? Frequency.FromHertz(f0) : null, IsFolded);
}
