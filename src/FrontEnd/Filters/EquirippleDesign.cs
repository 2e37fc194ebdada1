using System.Numerics;

namespace FrontEnd.Filters;

/// <summary>One band of an equiripple design.</summary>
/// <param name="Low">Lower edge [Hz].</param>
/// <param name="High">Upper edge [Hz].</param>
/// <param name="Desired">The gain wanted at a frequency [Hz].</param>
/// <param name="Weight">How much an error counts at a frequency [Hz].</param>
internal sealed record FirBand(double Low, double High, Func<double, double> Desired, Func<double, double> Weight)
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
internal static class EquirippleDesign
{
    private const int GridDensity = 32;
    private const int MostIterations = 100;
    private const int Longest = KaiserDesign.MostTaps / 10;
    private const double ClearlyAbove = 1e-3;

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
        double perTap = 2.324 * width;
        int length = Odd(((-10 * Math.Log10(dp * ds)) - 13) / perTap);
        if (length <= Longest && Exchanged(length, bands, rate) is { } first)
        {
            // Its error falls by so many decibels with each tap: what is wanted is a few taps from there.
            length = Odd(length + (20 * Math.Log10(Math.Abs(first.Delta)) / perTap));
        }

        FirFilter? filter = null;
        for (; length <= Longest && filter is null; length += filter is null ? 2 : 0)
        {
            filter = Try(length);
        }

        while (filter is not null && 3 < length && Try(length - 2) is { } shorter)
        {
            filter = shorter;
            length -= 2;
        }

        return filter;

        FirFilter? Try(int taps)
        {
            // An error clearly above what is allowed needs no taps to be seen.
            return Exchanged(taps, bands, rate) is { } trial && Math.Abs(trial.Delta) < 1 + ClearlyAbove
                && Sample(trial, taps, rate) is var filter && FirRequirement.IsMet(filter, requirement) ? filter : null;
        }
    }

    private static int Odd(double length) => Math.Max(3, (int)Math.Min(length, Longest + 2)) | 1;

    /// <summary>The best filter of a given length for bands of any shape; null where the exchange does not converge.</summary>
    public static FirFilter? Taps(int length, IReadOnlyList<FirBand> bands, Frequency rate) =>
        Exchanged(length, bands, rate) is { } trial ? Sample(trial, length, rate) : null;

    private static Trial? Exchanged(int length, IReadOnlyList<FirBand> bands, Frequency rate)
    {
        Require.InRange(length, 3, KaiserDesign.MostTaps);
        bool even = length % 2 == 0;
        int terms = (length + 1) / 2;
        Grid grid = Grid.Of(bands, rate.Hertz, terms, even);
        if (grid.X.Length <= terms)
        {
            return null;
        }

        double[] errors = new double[grid.X.Length];
        int[] extremals = grid.Start(terms + 1);
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            var trial = Trial.Of(grid, extremals);
            trial.At(grid.X, errors);
            for (int i = 0; i < errors.Length; i++)
            {
                errors[i] = grid.Weight[i] * (grid.Desired[i] - errors[i]);
            }

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
                return Trial.Of(grid, extremals);
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

        // cos(2πm(k − (L − 1)/2)/L): the angles are whole multiples of π/L.
        double[] cosines = [.. Enumerable.Range(0, 2 * length).Select(i => Math.Cos(Math.PI * i / length))];
        double[] taps = new double[length];
        for (int k = 0; k <= half; k++)
        {
            double sum = gains[0];
            int step = (2 * k) - (length - 1) + (2 * length), angle = 0;
            for (int m = 1; m <= half; m++)
            {
                angle = (angle + step) % (2 * length);
                sum += 2 * gains[m] * cosines[angle];
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
        private const double Coincident = 1e-14;

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

            // The weights without the last point: each loses its factor.
            return new Trial(delta, x[..^1], y, [.. gamma.Take(y.Length).Select((g, i) => g * (x[i] - x[^1]))]);
        }

        /// <summary>At many places at once, as many as a vector of the machine holds: the same operations in the same order as for
        /// one.</summary>
        internal void At(double[] places, double[] values)
        {
            int at = 0;
            var least = new Vector<double>(Coincident);
            for (; at + Vector<double>.Count <= places.Length; at += Vector<double>.Count)
            {
                var x = new Vector<double>(places, at);
                Vector<double> numerator = Vector<double>.Zero, denominator = Vector<double>.Zero;
                bool apart = true;
                for (int i = 0; i < X.Length && apart; i++)
                {
                    Vector<double> distance = x - new Vector<double>(X[i]);
                    Vector<double> share = new Vector<double>(Beta[i]) / distance;
                    numerator += share * Y[i];
                    denominator += share;
                    apart = Vector.GreaterThanOrEqualAll(Vector.Abs(distance), least);
                }

                (numerator / denominator).CopyTo(values, at);
                for (int i = at; i < at + Vector<double>.Count && !apart; i++)
                {
                    values[i] = At(places[i]);
                }
            }

            for (; at < places.Length; at++)
            {
                values[at] = At(places[at]);
            }
        }

        internal double At(double x)
        {
            double numerator = 0;
            double denominator = 0;
            for (int i = 0; i < X.Length; i++)
            {
                double distance = x - X[i];
                if (Math.Abs(distance) < Coincident)
                {
                    return Y[i];
                }

                double share = Beta[i] / distance;
                numerator += share * Y[i];
                denominator += share;
            }

            return numerator / denominator;
        }

        // Π 1/(x_i − x_k), each factor doubled: the span of cos is 2, and the product of hundreds of factors must not vanish. Its power of two is
        // kept apart, and a common factor cancels.
        private static double[] Barycentric(double[] x)
        {
            double[] products = new double[x.Length];
            int[] exponents = new int[x.Length];
            for (int i = 0; i < x.Length; i++)
            {
                double product = 1;
                for (int k = 0; k < x.Length; k++)
                {
                    product *= k == i ? 1 : 2 * (x[i] - x[k]);
                    if (k % 16 == 15 || k == x.Length - 1)
                    {
                        int exponent = Math.ILogB(product);
                        (product, exponents[i]) = (Math.ScaleB(product, -exponent), exponents[i] + exponent);
                    }
                }

                products[i] = product;
            }

            int least = exponents.Min();
            return [.. products.Select((product, i) => Math.ScaleB(1 / product, least - exponents[i]))];
        }
    }
}
