using System.Buffers;
using System.Numerics;
using FrontEnd.Identity;
using FrontEnd.Numbers;

namespace FrontEnd.Spread;

/// <summary>From the builds' figures to percentiles, yield, rank correlation and corners.</summary>
/// <param name="setup">What all builds share.</param>
/// <param name="options">What was asked for.</param>
/// <param name="limits">The limits that figures are judged by.</param>
/// <param name="tally">How many builds meet them.</param>
/// <param name="values">Of each figure, build by build; null for one that the device has none of.</param>
/// <param name="cancellation">Ends the work.</param>
internal sealed class SpreadSummary(
    SpreadSetup setup, SpreadOptions options, SpreadLimit[] limits, SpreadTally tally, double[]?[] values, CancellationToken cancellation)
{
    /// <summary>Most threads that sort at a time: each has room for all builds of one figure or part.</summary>
    public const int MostSorting = 2;

    /// <param name="nominal">The device whose parts are all at their nominal values, evaluated.</param>
    public SpreadResult Result(SpreadKernel nominal)
    {
        int n = options.Builds;
        int[] figures = [.. Enumerable.Range(0, values.Length).Where(figure => values[figure] is { } row && !Array.Exists(row, double.IsNaN))];
        var results = new SpreadFigure[figures.Length];
        float[][] ranks = [.. figures.Select(_ => ArrayPool<float>.Shared.Rent(n))];
        (double[] least, double[] most) = Corners();
        Sort(figures.Length, (sorting, at) => results[at] = Figure(figures[at], sorting, ranks[at]));
        double[,] correlations = Correlations(ranks);
        for (int at = 0; at < results.Length; at++)
        {
            int figure = figures[at], row = at;
            results[at] = results[at] with
            {
                Nominal = nominal.Figure(SpreadKernel.Drawn, figure)[0],
                Ranks =
                [
                    .. setup.Parts.Parts.Select((part, i) => new RankCorrelation(part.Key, correlations[i, row])).Where(rank =>
                        SpreadFigure.Chance(n) < Math.Abs(rank.Coefficient)).OrderByDescending(rank => Math.Abs(rank.Coefficient)),
                ],
                Least = least[figure],
                Most = most[figure],
            };
            ArrayPool<float>.Shared.Return(ranks[at]);
        }

        return new SpreadResult(setup.Design, options, setup.Parts.Parts, results, Yield(SpreadKernel.Drawn))
        {
            YieldWithoutElectrodesAndLeads = Yield(SpreadKernel.Inside), YieldOfParts = Yield(SpreadKernel.Board), Ties = setup.Parts.Ties,
        };
    }

    private static string Unit(ResultId id) =>
        id == ResultIds.Gain.Mid ? "1"
        : id == ResultIds.Converter.Enob || id == ResultIds.Converter.BitsNeeded ? "bit"
        : id == ResultIds.Mains.SystemCmrr || id == ResultIds.Levels.LeastHeadroom || ResultIds.Alias.All.Has(id) ? "dB"
        : ResultIds.Drive.All.Has(id) ? "°"
        : ResultIds.Safety.All.Has(id) ? "A"
        : "V";

    private double? Yield(int surrounding) => limits.Length == 0 ? null : tally.MetAll[surrounding] / (double)options.Builds;

    /// <summary>Puts lists in order, as many at a time as may be.</summary>
    private void Sort(int count, Action<Sorting, int> work)
    {
        int threads = Math.Min(options.Threads ?? MostSorting, MostSorting);
        foreach (Sorting sorting in InParallel.ForWith(count, threads, () => new Sorting(options.Builds), work, cancellation))
        {
            sorting.Dispose();
        }
    }

    /// <summary>What one figure's own values say; its ranks are filled in.</summary>
    private SpreadFigure Figure(int figure, Sorting sorting, float[] ranks)
    {
        double[] row = values[figure]!;
        int n = row.Length;
        sorting.Sort(row, n);
        sorting.Rank(ranks);
        double mean = row.Average(), square = 0;
        foreach (double value in row)
        {
            square += (value - mean) * (value - mean);
        }

        double[] percentiles = new double[SpreadFigure.Percents.Count];
        for (int i = 0; i < percentiles.Length; i++)
        {
            percentiles[i] = Statistics.Percentile(sorting, n, SpreadFigure.Percents[i]);
        }

        ResultId id = SpreadKernel.Ids[figure];
        int limit = Array.FindIndex(limits, one => one.Figure == figure);
        SpreadLimit? judged = limit < 0 ? null : limits[limit];
        return new SpreadFigure(
            id, Unit(id), double.NaN, row, percentiles, mean, 1 < n ? Math.Sqrt(square / (n - 1)) : 0,
            judged is null ? null : tally.Met[SpreadKernel.Drawn][limit] / (double)n, judged?.Limit, judged?.IsGreatest ?? false, judged?.Key,
            [], double.NaN, double.NaN)
        {
            YieldOfParts = judged is null ? null : tally.Met[SpreadKernel.Board][limit] / (double)n,
        };
    }

    /// <summary>Rank correlation of every part with every figure, [part, figure]. The parts are drawn again, some at a time: every build's
    /// random numbers go on where the parts before left off.</summary>
    private double[,] Correlations(float[][] ranks)
    {
        const int Block = 4096;
        int n = options.Builds, parts = setup.Parts.Parts.Count, blocks = (n + Block - 1) / Block;
        RandomStream[] streams = ArrayPool<RandomStream>.Shared.Rent(n);
        double[][] drawn = [.. Enumerable.Range(0, MostSorting).Select(_ => ArrayPool<double>.Shared.Rent(n))];
        float[][] own = [.. drawn.Select(_ => ArrayPool<float>.Shared.Rent(n))];
        double[] squares = [.. ranks.Select(rank => Statistics.Product(rank.AsSpan(0, n), rank.AsSpan(0, n)))];
        double[,] result = new double[parts, ranks.Length];
        for (int first = 0; first < parts; first += MostSorting)
        {
            int start = first, count = Math.Min(MostSorting, parts - first);
            InParallel.For(blocks, options.Threads, block =>
            {
                for (int build = block * Block; build < Math.Min(n, (block + 1) * Block); build++)
                {
                    RandomStream random = start == 0 ? SpreadRun.StreamOf(options, build) : streams[build];
                    for (int i = 0; i < count; i++)
                    {
                        drawn[i][build] = setup.Parts.Parts[start + i].Draw(ref random);
                    }

                    streams[build] = random;
                }
            }, cancellation);
            Sort(count, (sorting, i) =>
            {
                Span<float> part = own[i].AsSpan(0, n);
                sorting.Sort(drawn[i], n);
                sorting.Rank(part);
                double square = Statistics.Product(part, part);
                for (int figure = 0; figure < ranks.Length; figure++)
                {
                    result[start + i, figure] =
                        Statistics.Correlation(Statistics.Product(part, ranks[figure].AsSpan(0, n)), square, squares[figure]);
                }
            });
        }

        ArrayPool<RandomStream>.Shared.Return(streams);
        Array.ForEach(drawn, row => ArrayPool<double>.Shared.Return(row));
        Array.ForEach(own, row => ArrayPool<float>.Shared.Return(row));
        return result;
    }

    /// <summary>Every part at the corner that makes a figure smallest and largest: the sign of each part's sensitivity is taken with the
    /// parts before it at their corners, twice round.</summary>
    /// <remarks>
    /// At the balanced nominal device the sensitivity of a rejection has no sign (both ways are worse), hence the walk. A normal part's
    /// corner is its tolerance. Two leads can be unbalanced in several ways that do not add up, so the walk from the nominal device may
    /// end at the lesser one: where a build lies beyond its end, it is walked once more from that build. That does not find the worst of
    /// every rejection either; <see cref="SpreadFigure.IsDrawnBeyondCorners"/> tells.
    /// </remarks>
    private (double[] Least, double[] Most) Corners()
    {
        const int Directions = 2;
        int count = SpreadKernel.Ids.Length, walks = Math.Min(Directions, Vector<double>.Count / 2), passes = Directions / walks;
        double[] least = new double[count], most = new double[count];
        int[] figures = [.. Enumerable.Range(0, count).Where(figure => values[figure] is not null)];
        WithKernels(figures.Length * passes, (kernel, job) =>
        {
            int figure = figures[job / passes], first = job % passes * walks;
            double[] ends = Climb(kernel, figure, SpreadRun.Lanes(setup.Parts, part => part.Nominal), first, walks);
            for (int walk = 0; walk < walks; walk++)
            {
                (first + walk == 0 ? least : most)[figure] = ends[walk];
            }
        });
        WithKernels(figures.Length * Directions, (kernel, job) =>
        {
            (int figure, int direction) = (figures[job / Directions], job % Directions);
            int extreme = Extreme(figure, direction);
            double reached = values[figure]![extreme];
            if (direction == 0 ? reached < least[figure] : most[figure] < reached)
            {
                double[][] at = SpreadRun.Lanes(setup.Parts, part => part.Nominal);
                for (int lane = 0; lane < Vector<double>.Count; lane++)
                {
                    SpreadRun.Draw(setup.Parts, options, extreme, at, lane);
                }

                double end = Climb(kernel, figure, at, direction, 1)[0];
                least[figure] = direction == 0 ? Math.Min(least[figure], end) : least[figure];
                most[figure] = direction == 1 ? Math.Max(most[figure], end) : most[figure];
            }
        });
        return (least, most);
    }

    /// <summary>The first build with a figure's least value for 0, its greatest for 1.</summary>
    private int Extreme(int figure, int direction)
    {
        if (SpreadKernel.Walked(figure) != figure)
        {
            return Math.Min(options.Builds - 1, direction == 0 ? tally.Least.Build : tally.Most.Build);
        }

        double[] drawn = values[figure]!;
        int extreme = 0;
        for (int build = 1; build < drawn.Length; build++)
        {
            bool isBeyond = direction == 0 ? drawn[build] < drawn[extreme] : drawn[extreme] < drawn[build];
            extreme = isBeyond ? build : extreme;
        }

        return extreme;
    }

    private void WithKernels(int count, Action<SpreadKernel, int> work) =>
        InParallel.ForWith(count, options.Threads, () => new SpreadKernel(setup), work, cancellation);

    /// <summary>Where the walks end that begin at <paramref name="at"/>, the first of them downwards for 0 and upwards for 1: two lanes a
    /// walk, the part at its lower and at its upper corner.</summary>
    private double[] Climb(SpreadKernel kernel, int figure, double[][] at, int first, int walks)
    {
        const int Rounds = 2;
        SpreadNeeds needs = SpreadKernel.Needs(figure);
        int walked = SpreadKernel.Walked(figure);
        Vector<double> now = Evaluated();
        double[] reached = [.. Enumerable.Range(0, walks).Select(walk => now[walk])];
        bool[] matters = [.. at.Select(_ => true)];
        for (int round = 0; round < Rounds; round++)
        {
            for (int part = 0; part < at.Length; part++)
            {
                if (!matters[part])
                {
                    continue;
                }

                SpreadPart one = setup.Parts.Parts[part];
                for (int walk = 0; walk < walks; walk++)
                {
                    (at[part][2 * walk], at[part][(2 * walk) + 1]) = (one.Low, one.High);
                }

                Vector<double> value = Evaluated();
                matters[part] = false;
                for (int walk = 0; walk < walks; walk++)
                {
                    (double low, double high) = (value[2 * walk], value[(2 * walk) + 1]);
                    bool takeLow = first + walk == 0 ? low < high : high < low;

                    // A part that two balanced leads share alike moves nothing in its sign, but moves the figure.
                    matters[part] |= low != high || low != reached[walk];
                    reached[walk] = takeLow ? low : high;
                    at[part].AsSpan(2 * walk, 2).Fill(takeLow ? one.Low : one.High);
                }
            }
        }

        kernel.Evaluate(at, 0, needs);
        Vector<double> end = kernel.Figure(SpreadKernel.Drawn, figure);
        return [.. Enumerable.Range(0, walks).Select(walk => end[2 * walk])];

        Vector<double> Evaluated()
        {
            kernel.Evaluate(at, 0, needs);
            return kernel.Figure(SpreadKernel.Drawn, walked);
        }
    }
}
