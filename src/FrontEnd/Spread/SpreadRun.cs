using System.Numerics;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Networks;
using FrontEnd.Numbers;
using FrontEnd.Reporting;

namespace FrontEnd.Spread;

/// <summary>Draws many devices of one design and works out how their figures spread.</summary>
/// <remarks>A build's numbers come from seed and build number alone, so the result is the same whatever the number of threads. Runs may be made from
/// several threads at once.</remarks>
public static class SpreadRun
{
    private const int Block = 256;

    /// <summary>Runs; null where the options cannot be drawn (<see cref="SpreadOptions.Check"/> says why), where the design contradicts itself or cannot be
    /// evaluated (see <see cref="Evaluator.Evaluate"/> for the findings), or where the network of a build has no answer.</summary>
    /// <param name="design">The design.</param>
    /// <param name="options">Number of builds, seed, distributions.</param>
    /// <param name="progress">Told the number of builds done, from any thread.</param>
    /// <param name="cancellation">Ends the run with <see cref="OperationCanceledException"/>.</param>
    public static SpreadResult? Run(
        Design design, SpreadOptions options, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        if (options.Check().Count != 0 || DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return null;
        }

        try
        {
            SpreadResult result = Work(Evaluator.WithOneKindOfChannel(design, out string? channel), options, progress, cancellation);
            if (channel is null)
            {
                return result;
            }

            string tie = $"only one channel is drawn, {channel}, the one with the most board noise; the other channels' own electrodes are not drawn";
            return result with { Ties = [.. result.Ties, tie] };
        }
        catch (NetworkHasNoAnswer)
        {
            return null;
        }
    }

    /// <summary>Memory that so many builds take at the most, in bytes: every figure's values and ranks, every build's random numbers, and
    /// for each thread that sorts the draws, ranks and order of one part. All but the values is rented, in powers of two.</summary>
    public static long Memory(int builds)
    {
        const int Value = sizeof(double), Rank = sizeof(float), Stream = 4 * sizeof(ulong), Order = 2 * sizeof(int);
        long figures = SpreadKernel.Ids.Length, rented = (long)BitOperations.RoundUpToPowerOf2((uint)builds);
        return (figures * Value * builds) + (((figures * Rank) + Stream + (SpreadSummary.MostSorting * (Value + Rank + Order))) * rented);
    }

    /// <summary>Draws every part of every build: factors[part][build].</summary>
    internal static double[][] Draw(PartList parts, SpreadOptions options, int builds)
    {
        double[][] factors = [.. parts.Parts.Select(_ => new double[builds])];
        for (int build = 0; build < builds; build++)
        {
            Draw(parts, options, build, factors, build);
        }

        return factors;
    }

    /// <summary>Draws every part of one build into factors[part][<paramref name="at"/>].</summary>
    internal static void Draw(PartList parts, SpreadOptions options, int build, double[][] factors, int at)
    {
        RandomStream random = StreamOf(options, build);
        for (int part = 0; part < factors.Length; part++)
        {
            factors[part][at] = parts.Parts[part].Draw(ref random);
        }
    }

    /// <summary>The random numbers of a build.</summary>
    internal static RandomStream StreamOf(SpreadOptions options, int build) => RandomStream.Numbered(options.Seed, "build", build);

    private static SpreadResult Work(Design design, SpreadOptions options, IProgress<int>? progress, CancellationToken cancellation)
    {
        var parts = new PartList(DesignFields.WithoutStaleRanges(design), options);
        var setup = new SpreadSetup(design, parts);
        SpreadLimit[] limits = SpreadLimit.Of(design);
        SpreadNeeds needsOfOthers = limits.Aggregate(SpreadNeeds.None, (needs, limit) => needs | SpreadKernel.Needs(limit.Figure));
        var nominal = new SpreadKernel(setup);
        nominal.Evaluate(Lanes(parts, part => part.Nominal), 0, SpreadNeeds.All);
        var tally = new SpreadTally(limits);
        int n = options.Builds, blocks = (n + Block - 1) / Block, done = 0;

        // A figure that the nominal device has none of, such as an offset that no node clips at, is left out.
        double[]?[] values = [.. SpreadKernel.Ids.Select((_, figure) =>
            double.IsNaN(nominal.Figure(SpreadKernel.Drawn, figure)[0]) ? null : new double[n])];
        foreach (Worker worker in InParallel.ForWith(blocks, options.Threads, () => new Worker(setup, limits), WorkThrough, cancellation))
        {
            tally.Add(worker.Tally);
        }

        return new SpreadSummary(setup, options, limits, tally, values, cancellation).Result(nominal);

        void WorkThrough(Worker worker, int block)
        {
            int end = Math.Min(n, (block + 1) * Block);
            for (int first = block * Block; first < end; first += Vector<double>.Count)
            {
                for (int lane = 0; lane < Vector<double>.Count; lane++)
                {
                    // The last group of lanes is filled up with further builds.
                    Draw(parts, options, first + lane, worker.Factors, lane);
                }

                worker.Kernel.Evaluate(worker.Factors, 0, SpreadNeeds.All, needsOfOthers);
                Keep(worker.Kernel, values, first);
                worker.Tally.Count(worker.Kernel, first, Math.Min(Vector<double>.Count, end - first));
            }

            progress?.Report(Interlocked.Add(ref done, end - (block * Block)));
        }
    }

    /// <summary>What a thread works with: room for a group of builds, and what it has counted.</summary>
    private sealed class Worker(SpreadSetup setup, SpreadLimit[] limits)
    {
        public SpreadKernel Kernel { get; } = new(setup, SpreadKernel.Surroundings, limits);

        public SpreadTally Tally { get; } = new(limits);

        public double[][] Factors { get; } = Lanes(setup.Parts, _ => 1);
    }

    /// <summary>A number for every part on all lanes.</summary>
    internal static double[][] Lanes(PartList parts, Func<SpreadPart, double> value) =>
        [.. parts.Parts.Select(part => Enumerable.Repeat(value(part), Vector<double>.Count).ToArray())];

    private static void Keep(SpreadKernel kernel, double[]?[] values, int first)
    {
        for (int figure = 0; figure < values.Length; figure++)
        {
            if (values[figure] is not { } row)
            {
                continue;
            }

            Vector<double> value = kernel.Figure(SpreadKernel.Drawn, figure);
            for (int lane = 0; lane < Vector<double>.Count && first + lane < row.Length; lane++)
            {
                row[first + lane] = value[lane];
            }
        }
    }
}
