namespace FrontEnd.Filters;

/// <summary>One band of an equiripple design.</summary>
/// <param name="Low">Lower edge [Hz].</param>
/// <param name="High">Upper edge [Hz].</param>
/// <param name="Desired">The gain wanted at a frequency [Hz].</param>
/// <param name="Weight">How much an error counts at a frequency [Hz].</param>
public sealed record FirBand(double Low, double High, Func<double, double> Desired, Func<double, double> Weight)
{
    /// <summary>A band with one gain and one weight throughout.</summary>
    public static FirBand Flat(Frequency low, Frequency high, double gain, double weight) =>
        new(low.Hertz, high.Hertz, _ => gain, _ => weight);
}

/// <summary>Linear-phase FIR with equal ripple: the least largest error for its length (Parks–McClellan).</summary>
/// <remarks>Remez exchange on a dense grid, the trial response by barycentric interpolation. Source: J. H. McClellan, T. W. Parks, L. R.
/// Rabiner, A computer program for designing optimum FIR linear phase digital
/// filters, IEEE Trans. Audio Electroacoust. AU-21 (1973) 506; A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, section 7.7
/// (both from memory).
/// Length is odd (type I) or even (type II, which has a zero at half the rate).</remarks>
public static class EquirippleDesign
{
    private const int GridDensity = 32;
    private const int MostIterations = 100;

    /// <summary>The shortest equiripple filter of odd length that meets a requirement; null above <see cref="KaiserDesign.MostTaps"/>/10
    /// taps.</summary>
    public static FirFilter? Design(FilterRequirement requirement, Frequency rate)
    {
        double dp = FirRequirement.PassDeviation(requirement);
        double ds = FirRequirement.StopDeviation(requirement);
        FirBand[] bands = [.. FirRequirement.Bands(requirement, rate.Hertz).Select(b =>
            new FirBand(b.Low, b.High, _ => b.Pass ? 1 : 0, _ => b.Pass ? 1 / dp : 1 / ds))];
        double width = FirRequirement.TransitionWidth(requirement, rate);
        // Kaiser's forecast for equiripple filters: (−10·log10(δp·δs) − 13)/(2.324·Δω) (Oppenheim & Schafer, equation 7.117, from memory).
        int forecast = Math.Max(3, (int)(((-10 * Math.Log10(dp * ds)) - 13) / (2.324 * width)) | 1);
        int length = forecast;
        while (length <= KaiserDesign.MostTaps / 10)
        {
            FirFilter? filter = Try(length);
            if (filter is not null)
            {
                while (3 < length && Try(length - 2) is { } shorter)
                {
                    filter = shorter;
                    length -= 2;
                }

                return filter;
            }

            length += 2;
        }

        return null;

        FirFilter? Try(int taps)
        {
            FirFilter? filter = Taps(taps, bands, rate);
            return filter is not null && FirRequirement.IsMet(filter, requirement) ? filter : null;
        }
    }

    /// <summary>The best filter of a given length for bands of any shape; null where the exchange does not converge.</summary>
    public static FirFilter? Taps(int length, IReadOnlyList<FirBand> bands, Frequency rate)
    {
        Require.InRange(length, 3, KaiserDesign.MostTaps);
        bool even = length % 2 == 0;
        int terms = (length + 1) / 2;
        Grid grid = Grid.Of(bands, rate.Hertz, terms, even);
        if (grid.X.Length <= terms)
        {
            return null;
        }

        int[] extremals = grid.Start(terms + 1);
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            var trial = Trial.Of(grid, extremals);
            double[] errors = [.. Enumerable.Range(0, grid.X.Length).Select(i => grid.Weight[i] * (grid.Desired[i] - trial.At(grid.X[i])))];
            int[]? next = Exchange(errors, grid.BandStart, extremals.Length);
            if (next is null)
            {
                return null;
            }

            bool same = next.SequenceEqual(extremals);
            extremals = next;
            double largest = errors.Max(Math.Abs);
            if (same || largest <= Math.Abs(trial.Delta) * (1 + 1e-9))
            {
                return Sample(Trial.Of(grid, extremals), length, rate);
            }
        }

        return null;
    }

    /// <summary>The alternating extremes of the error, as many as needed.</summary>
    private static int[]? Exchange(double[] errors, HashSet<int> bandStart, int needed)
    {
        var found = new List<int>();
        for (int i = 0; i < errors.Length; i++)
        {
            bool atStart = bandStart.Contains(i);
            bool atEnd = i == errors.Length - 1 || bandStart.Contains(i + 1);
            double size = Math.Abs(errors[i]);
            bool aboveLeft = atStart || SameSide(errors[i], errors[i - 1]) <= 0;
            bool aboveRight = atEnd || SameSide(errors[i], errors[i + 1]) <= 0;
            if (!(aboveLeft && aboveRight) || size == 0)
            {
                continue;
            }

            if (0 < found.Count && Math.Sign(errors[found[^1]]) == Math.Sign(errors[i]))
            {
                // One sign twice in a row: the larger stands for both.
                if (Math.Abs(errors[found[^1]]) < size)
                {
                    found[^1] = i;
                }
            }
            else
            {
                found.Add(i);
            }
        }

        while (needed < found.Count)
        {
            RemoveLeast(errors, found, needed);
        }

        return found.Count == needed ? [.. found] : null;
    }

    // The neighbour's error on the same side of zero, larger than ours: positive.
    private static double SameSide(double own, double neighbour) => own < 0 ? own - neighbour : neighbour - own;

    private static void RemoveLeast(double[] errors, List<int> found, int needed)
    {
        if (found.Count == needed + 1)
        {
            // An end can go without breaking the alternation.
            found.RemoveAt(Math.Abs(errors[found[0]]) < Math.Abs(errors[found[^1]]) ? 0 : found.Count - 1);
            return;
        }

        int least = Enumerable.Range(0, found.Count).MinBy(i => Math.Abs(errors[found[i]]));
        if (least == 0 || least == found.Count - 1)
        {
            found.RemoveAt(least);
            return;
        }

        int smaller = Math.Abs(errors[found[least - 1]]) < Math.Abs(errors[found[least + 1]]) ? least - 1 : least;
        found.RemoveRange(smaller, 2);
    }

    /// <summary>Taps from L samples of the response by the inverse transform.</summary>
    private static FirFilter Sample(Trial trial, int length, Frequency rate)
    {
        bool even = length % 2 == 0;
        int half = (length - 1) / 2;
        double[] gains = new double[half + 1];
        for (int m = 0; m <= half; m++)
        {
            double w = 2 * Math.PI * m / length;
            gains[m] = trial.At(Math.Cos(w)) * (even ? Math.Cos(w / 2) : 1);
        }

        double[] taps = new double[length];
        double middle = (length - 1) / 2.0;
        for (int k = 0; k <= half; k++)
        {
            double sum = gains[0];
            for (int m = 1; m <= half; m++)
            {
                sum += 2 * gains[m] * Math.Cos(2 * Math.PI * m * (k - middle) / length);
            }

            taps[k] = sum / length;
            taps[length - 1 - k] = taps[k];
        }

        return new FirFilter(taps, rate);
    }

    /// <summary>The points at which the error is looked at, x = cos ω.</summary>
    private sealed record Grid(double[] X, double[] Desired, double[] Weight, HashSet<int> BandStart)
    {
        internal static Grid Of(IReadOnlyList<FirBand> bands, double rate, int terms, bool even)
        {
            var x = new List<double>();
            var desired = new List<double>();
            var weight = new List<double>();
            var starts = new HashSet<int>();
            double step = rate / 2 / (GridDensity * terms);
            foreach (FirBand band in bands)
            {
                starts.Add(x.Count);
                // A type II filter is zero at half the rate whatever is wanted there.
                double high = even ? Math.Min(band.High, (rate / 2) - step) : band.High;
                int points = Math.Max(2, (int)Math.Ceiling((high - band.Low) / step));
                for (int i = 0; i <= points; i++)
                {
                    double f = band.Low + ((high - band.Low) * i / points);
                    double factor = even ? Math.Cos(Math.PI * f / rate) : 1;
                    x.Add(Math.Cos(2 * Math.PI * f / rate));
                    desired.Add(band.Desired(f) / factor);
                    weight.Add(band.Weight(f) * factor);
                }
            }

            return new Grid([.. x], [.. desired], [.. weight], starts);
        }

        /// <summary>Where the exchange begins: points shared out among the bands by their length, at least one in each. Spread over all bands
        /// alike, a narrow one may get none; where the others all want gain 0 nothing then is an error, and no alternation is found.</summary>
        internal int[] Start(int count)
        {
            int[] first = [.. BandStart.Order()];
            int[] sizes = [.. first.Select((start, band) => (band + 1 < first.Length ? first[band + 1] : X.Length) - start)];
            int[] shares = new int[sizes.Length];
            for (int given = 0; given < count; given++)
            {
                shares[Enumerable.Range(0, sizes.Length).Where(band => shares[band] < sizes[band])
                    .MaxBy(band => shares[band] == 0 ? double.MaxValue : (double)sizes[band] / shares[band])]++;
            }

            return [.. first.SelectMany((start, band) => Enumerable.Range(0, shares[band]).Select(k => start + (shares[band] == 1
                ? (sizes[band] - 1) / 2
                : (int)((long)k * (sizes[band] - 1) / (shares[band] - 1)))))];
        }
    }

    /// <summary>The polynomial in cos ω that alternates by ±δ at the extremes.</summary>
    private sealed record Trial(double Delta, double[] X, double[] Y, double[] Beta)
    {
        internal static Trial Of(Grid grid, int[] extremals)
        {
            double[] x = [.. extremals.Select(i => grid.X[i])];
            double[] gamma = Barycentric(x);
            double numerator = 0;
            double denominator = 0;
            for (int i = 0; i < x.Length; i++)
            {
                numerator += gamma[i] * grid.Desired[extremals[i]];
                denominator += (i % 2 == 0 ? 1 : -1) * gamma[i] / grid.Weight[extremals[i]];
            }

            double delta = numerator / denominator;
            double[] y = new double[x.Length - 1];
            for (int i = 0; i < y.Length; i++)
            {
                y[i] = grid.Desired[extremals[i]] - ((i % 2 == 0 ? 1 : -1) * delta / grid.Weight[extremals[i]]);
            }

            double[] points = x[..^1];
            return new Trial(delta, points, y, Barycentric(points));
        }

        internal double At(double x)
        {
            double numerator = 0;
            double denominator = 0;
            for (int i = 0; i < X.Length; i++)
            {
                double distance = x - X[i];
                if (Math.Abs(distance) < 1e-14)
                {
                    return Y[i];
                }

                double share = Beta[i] / distance;
                numerator += share * Y[i];
                denominator += share;
            }

            return numerator / denominator;
        }

        // Π 1/(x_i − x_k), each factor doubled: the span of cos is 2, and the product of hundreds of factors must not vanish. A common
        // factor cancels.
        private static double[] Barycentric(double[] x)
        {
            double[] logs = new double[x.Length];
            int[] signs = new int[x.Length];
            for (int i = 0; i < x.Length; i++)
            {
                signs[i] = 1;
                for (int k = 0; k < x.Length; k++)
                {
                    if (k != i)
                    {
                        double factor = x[i] - x[k];
                        logs[i] -= Math.Log(2 * Math.Abs(factor));
                        signs[i] *= factor < 0 ? -1 : 1;
                    }
                }
            }

            double largest = logs.Max();
            return [.. logs.Select((l, i) => signs[i] * Math.Exp(l - largest))];
        }
    }
}
