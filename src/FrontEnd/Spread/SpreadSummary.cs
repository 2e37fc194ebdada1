using System.Numerics;
using FrontEnd.Designs;
using FrontEnd.Identity;
using FrontEnd.Reporting;
using FrontEnd.Results;

namespace FrontEnd.Spread;

/// <summary>From the builds' figures to percentiles, yield, rank correlation and corners.</summary>
internal sealed class SpreadSummary(
    SpreadSetup setup, SpreadOptions options, double[][] factors, double[][] figures, CancellationToken cancellation)
{
    private readonly Design _design = setup.Design;
    private readonly Dictionary<ResultId, Result> _judged = Evaluator.Judged(setup.Design) ?? [];

    /// <param name="inside">The builds' figures without what electrodes and leads do.</param>
    /// <param name="board">Those with the board's parts alone drawn.</param>
    public SpreadResult Result(double[][] inside, double[][] board)
    {
        ResultId[] ids = SpreadKernel.Ids;
        int n = options.Builds;
        double[][] partRanks = new double[factors.Length][];
        Parallel.For(0, factors.Length, Parallelism(), i => partRanks[i] = Statistics.Ranks(factors[i].AsSpan(0, n)));
        double[] nominal = Nominal();
        (double[] least, double[] most) = Corners();
        var results = new SpreadFigure?[ids.Length];
        Parallel.For(0, ids.Length, Parallelism(), i =>
        {
            double[] values = figures[i][..n];

            // A figure that a device has none of, such as an offset that no node clips at, is left out.
            if (values.Any(double.IsNaN))
            {
                return;
            }

            double[] sorted = [.. values];
            Array.Sort(sorted);
            double mean = values.Average(), square = values.Sum(value => (value - mean) * (value - mean));
            double[] ranks = Statistics.Ranks(values);
            (string? key, double? limit, bool greatest) = Requirement(ids[i]);
            RankCorrelation[] correlations =
            [
                .. setup.Parts.Parts.Select((part, at) => new RankCorrelation(part.Key, Statistics.Correlation(partRanks[at], ranks)))
                    .Where(rank => SpreadFigure.Chance(n) < Math.Abs(rank.Coefficient)).OrderByDescending(
                        rank => Math.Abs(rank.Coefficient)),
            ];
            results[i] = new SpreadFigure(
                ids[i], Unit(ids[i]), nominal[i], values, [.. SpreadFigure.Percents.Select(p => Statistics.Percentile(sorted, p))],
                mean, 1 < n ? Math.Sqrt(square / (n - 1)) : 0, Share(values), limit, greatest, key, correlations, least[i], most[i])
            {
                YieldOfParts = Share(board[i][..n]),
            };

            double? Share(double[] of) => limit is { } l ? of.Count(value => greatest ? value <= l : l <= value) / (double)n : null;
        });
        return new SpreadResult(_design, options, setup.Parts.Parts, [.. results.OfType<SpreadFigure>()], Yield(ids, figures))
        {
            YieldWithoutElectrodesAndLeads = Yield(ids, inside), YieldOfParts = Yield(ids, board), Ties = setup.Parts.Ties,
        };
    }

    private ParallelOptions Parallelism() => new() { MaxDegreeOfParallelism = options.Threads ?? -1, CancellationToken = cancellation };

    private static string Unit(ResultId id) =>
        id == ResultIds.Gain.Mid ? "1"
        : id == ResultIds.Converter.Enob || id == ResultIds.Converter.BitsNeeded ? "bit"
        : id == ResultIds.Mains.SystemCmrr || id == ResultIds.Levels.LeastHeadroom || ResultIds.Alias.All.Has(id) ? "dB"
        : ResultIds.Drive.All.Has(id) ? "°"
        : ResultIds.Safety.All.Has(id) ? "A"
        : "V";

    /// <summary>The limit that the assessment judges a figure by, in the figure's unit.</summary>
    private (string? Key, double? Limit, bool Greatest) Requirement(ResultId id)
    {
        Result? judged = id == ResultIds.Levels.LeastHeadroom
            ? _judged.Values.FirstOrDefault(result => ResultIds.Levels.IsHeadroom(result.Id))
            : _judged.GetValueOrDefault(id);
        return judged?.Verdict is { Limit: { } limit } verdict
            ? (verdict.Requirement, limit is Quantities.Angle angle ? angle.Degrees : limit.SiValue, verdict.LimitIsGreatest)
            : (null, null, false);
    }

    private double? Yield(ResultId[] ids, double[][] figures)
    {
        int good = 0;
        (int Figure, double Limit, bool Greatest)[] judged =
            [.. ids.Select((id, i) => (i, Requirement(id))).Where(pair => pair.Item2.Limit is not null).Select(
                pair => (pair.i, pair.Item2.Limit!.Value, pair.Item2.Greatest))];
        for (int build = 0; build < options.Builds; build++)
        {
            // What a device has none of (NaN) it does not fail.
            good += judged.All(
                j => double.IsNaN(figures[j.Figure][build])
                || (j.Greatest ? figures[j.Figure][build] <= j.Limit : j.Limit <= figures[j.Figure][build])) ? 1 : 0;
        }

        return judged.Length == 0 ? null : good / (double)options.Builds;
    }

    private double[] Nominal()
    {
        double[][] at = NominalParts(), values = SpreadKernel.NewRows(Vector<double>.Count);
        new SpreadKernel(setup).Evaluate(at, values, 0);
        return [.. values.Take(SpreadKernel.Ids.Length).Select(value => value[0])];
    }

    private double[][] NominalParts() =>
        [.. setup.Parts.Parts.Select(part => Enumerable.Repeat(part.Nominal, Vector<double>.Count).ToArray())];

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
        Parallel.For(0, count * passes, Parallelism(), () => new SpreadKernel(setup), (job, state, kernel) =>
        {
            int figure = job / passes, first = job % passes * walks;
            double[] ends = Climb(kernel, figure, NominalParts(), first, walks);
            for (int walk = 0; walk < walks; walk++)
            {
                (first + walk == 0 ? least : most)[figure] = ends[walk];
            }

            return kernel;
        }, _ => { });
        Parallel.For(0, count * Directions, Parallelism(), () => new SpreadKernel(setup), (job, state, kernel) =>
        {
            (int figure, int direction) = (job / Directions, job % Directions);
            ReadOnlySpan<double> drawn = figures[SpreadKernel.Walked(figure)].AsSpan(0, options.Builds);
            int extreme = 0;
            for (int build = 1; build < drawn.Length; build++)
            {
                bool isBeyond = direction == 0 ? drawn[build] < drawn[extreme] : drawn[extreme] < drawn[build];
                extreme = isBeyond ? build : extreme;
            }

            double reached = figures[figure][extreme];
            if (direction == 0 ? reached < least[figure] : most[figure] < reached)
            {
                double end = Climb(
                    kernel, figure, [.. factors.Select(factor => Enumerable.Repeat(factor[extreme], Vector<double>.Count).ToArray())],
                    direction, 1)[0];
                least[figure] = direction == 0 ? Math.Min(least[figure], end) : least[figure];
                most[figure] = direction == 1 ? Math.Max(most[figure], end) : most[figure];
            }

            return kernel;
        }, _ => { });
        return (least, most);
    }

    /// <summary>Where the walks end that begin at <paramref name="at"/>, the first of them downwards for 0 and upwards for 1: two lanes a
    /// walk, the part at its lower and at its upper corner.</summary>
    private double[] Climb(SpreadKernel kernel, int figure, double[][] at, int first, int walks)
    {
        const int Rounds = 2;
        double[][] values = SpreadKernel.NewRows(Vector<double>.Count);
        double[] value = values[SpreadKernel.Walked(figure)];
        kernel.Evaluate(at, values, 0);
        double[] now = [.. value];
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

                kernel.Evaluate(at, values, 0);
                matters[part] = false;
                for (int walk = 0; walk < walks; walk++)
                {
                    (double low, double high) = (value[2 * walk], value[(2 * walk) + 1]);
                    bool takeLow = first + walk == 0 ? low < high : high < low;

                    // A part that two balanced leads share alike moves nothing in its sign, but moves the figure.
                    matters[part] |= low != high || low != now[walk];
                    now[walk] = takeLow ? low : high;
                    at[part].AsSpan(2 * walk, 2).Fill(takeLow ? one.Low : one.High);
                }
            }
        }

        kernel.Evaluate(at, values, 0);
        return [.. Enumerable.Range(0, walks).Select(walk => values[figure][2 * walk])];
    }
}
