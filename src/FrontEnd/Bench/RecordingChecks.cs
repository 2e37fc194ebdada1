using FrontEnd.Filters;
using MathNet.Numerics;

namespace FrontEnd.Bench;

/// <summary>What makes samples unfit to be judged, whatever the test: nothing moves, or they stand at an end of a range.</summary>
internal static class RecordingChecks
{
    /// <summary>Independent samples that a Gaussian recording must be lacking beyond its extreme for that to be a limit: by chance they are once in a million records
    /// (e⁻¹⁴).</summary>
    private const double LeastLacking = 14;

    /// <summary>Share of a line's amplitude that its tops must reach; less is flattened (derived: a sine cut at 0.95 of its height keeps
    /// 0.987 of its line, so that its tops reach 0.963 of it).</summary>
    private const double LeastTop = 0.97;

    /// <summary>True where no sample differs from the first.</summary>
    public static bool IsDead(RecordingSums sums) => sums.Top == sums.Bottom;

    /// <summary>How many samples of noise stand at an extreme that the noise would go beyond; 0 for none.</summary>
    /// <remarks>n·Q((top − mean + q/2)/σ) samples should lie above the largest value, q being the step of the values (0 where they have
    /// none); where several are lacking and several stand at the largest value itself, it is a limit. The same below.</remarks>
    /// <param name="sums">Of its samples.</param>
    /// <param name="spectrum">Their spectrum, which tells how many are independent; null where all are.</param>
    public static long AtLimits(RecordingSums sums, WelchSpectrum? spectrum = null)
    {
        double independent = spectrum is null ? sums.Count : Math.Min(sums.Count, Independent(sums, spectrum));
        double sigma = Math.Sqrt(sums.Power), step = Step(sums);
        return sigma == 0 ? 0 : End(sums.AtTop, sums.Top - sums.Mean) + End(sums.AtBottom, sums.Mean - sums.Bottom);

        long End(long there, double distance)
        {
            double lacking = independent * Beyond((distance + (step / 2)) / sigma);
            return Math.Max(LeastLacking, sums.Count / 2000.0) <= there && LeastLacking < lacking ? there : 0;
        }
    }

    /// <summary>How many samples of anything stand at an extreme as at a limit: many more than at the next value, where a sine in whole steps has half as many; 0
    /// for none, and where the values are not counted.</summary>
    /// <remarks>In the last step of a sine's way stand √1 of its samples, in the one before √2 − √1 (derived: the cosine about its top).</remarks>
    public static long AtLimitsOfAny(RecordingSums sums)
    {
        const int TimesMore = 5, Sigmas = 6;
        KeyValuePair<double, long>[] values = sums.Values ?? [];
        return values.Length < 3 ? 0 : End(values[^1].Value, values[^2].Value) + End(values[0].Value, values[1].Value);

        static long End(long there, long next) => (TimesMore * next) + (Sigmas * Math.Sqrt(next)) + Sigmas < there ? there : 0;
    }

    /// <summary>Shares of the samples from either end at which the tails of noise are looked at.</summary>
    private static readonly double[] Tails = [0.1, 0.01, 1e-3, 1e-4];

    /// <summary>How much of a tail's place, in standard deviations of the noise, and how many of its own standard deviations count as short (chosen: once in some
    /// thousand millions, so that none of all tails is).</summary>
    private const double LeastShort = 0.06, ShortSigmas = 6;

    /// <summary>The end of noise that is shorter than Gaussian noise of its size has it, as a limit leaves it whose edge a filter behind it has blurred; null for
    /// none.</summary>
    /// <remarks>The sample at a share p from the end stands z = Q⁻¹(p) deviations out, with a deviation of its own of √(p(1 − p)/n)/φ(z), n the independent samples
    /// that have the record's spectrum: (∫S)²/∫S² times twice its length. A line has short tails by itself: of a recording with one nothing is said.</remarks>
    /// <param name="sums">Of its samples [V].</param>
    /// <param name="order">Their order.</param>
    /// <param name="spectrum">Their spectrum.</param>
    /// <param name="step">The converter's step [V]: what is rounded stands up to half of one nearer, blurred or not.</param>
    public static (double Share, double At, double Expected)? ShortTail(RecordingSums sums, SampleOrder order, WelchSpectrum spectrum, double step)
    {
        double sigma = Math.Sqrt(sums.Power), independent = Independent(sums, spectrum);
        double[] shares = [.. Tails.Where(share => 10 <= share * independent)];
        if (shares.Length == 0 || sigma == 0)
        {
            return null;
        }

        double[] at = order.At([0.5, .. shares.SelectMany(share => new[] { share, 1 - share })]);
        for (int i = 0; i < shares.Length; i++)
        {
            double z = Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * shares[i]), own = Math.Sqrt(shares[i] * (1 - shares[i]) / independent) * Math.Sqrt(2 * Math.PI) * Math.Exp(z * z / 2);
            for (int side = 0; side < 2; side++)
            {
                double found = (Math.Abs(at[1 + (2 * i) + side] - sums.Mean) + (Math.Max(step, Step(sums)) / 2)) / sigma;
                if (Math.Max(LeastShort, ShortSigmas * own) < z - found)
                {
                    return (shares[i], found, z);
                }
            }
        }

        return null;
    }

    /// <summary>Samples that are as good as independent: (∫S)²/∫S² times twice the record's length (derived: the variance of a Gaussian record's mean square).</summary>
    private static double Independent(RecordingSums sums, WelchSpectrum spectrum)
    {
        double power = 0, squares = 0;
        foreach (double density in spectrum.Density)
        {
            (power, squares) = (power + density, squares + (density * density));
        }

        double rate = 2 * spectrum.Step * (spectrum.Density.Count - 1);
        return squares == 0 ? 0 : 2 * sums.Count / rate * power * power / squares * spectrum.Step;
    }

    /// <summary>True where a recording with a line is cut off: the line's tops are flat, its harmonics stand out, or what is mostly noise
    /// stands at a limit.</summary>
    /// <param name="sums">Of its samples [V].</param>
    /// <param name="order">Their order.</param>
    /// <param name="spectrum">Their spectrum.</param>
    /// <param name="line">The line's frequency [Hz].</param>
    /// <param name="toneRms">Its rms.</param>
    /// <param name="isMains">True where the source of the line may itself have the harmonics of a mains transformer.</param>
    public static bool IsCut(RecordingSums sums, SampleOrder order, WelchSpectrum spectrum, double line, double toneRms, bool isMains)
    {
        double share = toneRms * toneRms / sums.Power;
        return share < 0.1 ? 0 < AtLimits(sums, spectrum)
            : 0.5 < share && ((0.8 < share && IsFlat(sums, order, spectrum, line, toneRms))
                || IsDistorted(spectrum, line, toneRms, isMains ? MainsHarmonics : Harmonics));
    }

    /// <summary>Share of a line that its second to fifth harmonic may have together: a generator's has less, one cut at 0.9 of its height
    /// has 0.03, at 0.7 0.1 (derived: Fourier's series of a cut sine); EN 50160 allows the mains 0.05 in one harmonic.</summary>
    private const double Harmonics = 0.02, MainsHarmonics = 0.08;

    /// <summary>Half the distance of the 1st and the 99th percentile is less than the line's own amplitude by more than a step
    /// explains.</summary>
    private static bool IsFlat(RecordingSums sums, SampleOrder order, WelchSpectrum spectrum, double line, double toneRms)
    {
        // A line that repeats after few samples need not be sampled at its tops.
        const int FewPhases = 60;
        double turn = line / (2 * spectrum.Step * (spectrum.Density.Count - 1));
        for (int q = 1; q <= FewPhases; q++)
        {
            if (Math.Abs(turn - (Math.Round(turn * q) / q)) * sums.Count < 2.0 / q)
            {
                return false;
            }
        }

        double[] ends = order.At(0.01, 0.99);
        double half = (ends[1] - ends[0]) / 2;
        return half + (Step(sums) / 2) < LeastTop * Math.Sqrt(2) * toneRms;
    }

    private static bool IsDistorted(WelchSpectrum spectrum, double line, double toneRms, double allowed)
    {
        const int Apart = 6;
        double rate = 2 * spectrum.Step * (spectrum.Density.Count - 1), sum = 0;
        for (int h = 2; h <= 5; h++)
        {
            double lands = Folding.LandsAt(h * line, rate);
            if (Apart * spectrum.Step < Math.Min(Math.Abs(lands - line), Math.Min(lands, (rate / 2) - lands)))
            {
                sum += Math.Pow(spectrum.ToneRms(lands), 2);
            }
        }

        return allowed * toneRms < Math.Sqrt(sum);
    }

    /// <summary>The least distance of two values, however many there are; 0 where these are not counted.</summary>
    public static double FinestStep(RecordingSums sums)
    {
        KeyValuePair<double, long>[] values = sums.Values ?? [];
        double least = double.PositiveInfinity;
        for (int i = 1; i < values.Length; i++)
        {
            least = Math.Min(least, values[i].Key - values[i - 1].Key);
        }

        return double.IsFinite(least) ? least : 0;
    }

    /// <summary>The least distance of two values; 0 where nearly every sample has a value of its own, or where there are so many values
    /// that half their distance is nothing beside what it is added to.</summary>
    private static double Step(RecordingSums sums)
    {
        KeyValuePair<double, long>[] values = sums.Values ?? [];
        return values.Length < 2 || sums.Count < 4L * values.Length ? 0 : values.Zip(values.Skip(1), (a, b) => b.Key - a.Key).Min();
    }

    /// <summary>Share of a normal distribution above x standard deviations, Q(x) = erfc(x/√2)/2.</summary>
    private static double Beyond(double x) => SpecialFunctions.Erfc(x / Math.Sqrt(2)) / 2;
}
