using System.Globalization;
using System.Numerics;
using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Networks;
using FrontEnd.Numbers;
using FrontEnd.Reporting;

namespace FrontEnd.Spread;

/// <summary>Draws many devices of one design and works out how their figures spread.</summary>
/// <remarks>A build's numbers come from seed and build number alone, so the result is the same whatever the number of threads.</remarks>
public static class SpreadRun
{
    private const int Block = 256;

    /// <summary>Runs; null where the design contradicts itself or cannot be evaluated (see <see cref="Evaluator.Evaluate"/> for the
    /// findings).</summary>
    /// <param name="design">The design.</param>
    /// <param name="options">Number of builds, seed, distributions.</param>
    /// <param name="progress">Told the number of builds done, from any thread.</param>
    /// <param name="cancellation">Ends the run with <see cref="OperationCanceledException"/>.</param>
    public static SpreadResult? Run(
        Design design, SpreadOptions options, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        if (options.Builds < 1 || DesignCheck.Run(design).Any(finding => finding.Severity == Severity.Error))
        {
            return null;
        }

        try
        {
            return Work(design, options, progress, cancellation);
        }
        catch (NetworkHasNoAnswer)
        {
            return null;
        }
    }

    /// <summary>Draws every part of every build: factors[part][build]. The last group of lanes is filled up with further builds.</summary>
    internal static double[][] Draw(PartList parts, SpreadOptions options, int builds)
    {
        double[][] factors = [.. parts.Parts.Select(_ => new double[builds])];
        Parallel.For(0, (builds + Block - 1) / Block, Parallelism(options, default), block =>
        {
            for (int build = block * Block; build < Math.Min(builds, (block + 1) * Block); build++)
            {
                SeededRandom random = SeededRandom.For(options.Seed, "build", build.ToString(CultureInfo.InvariantCulture));
                for (int part = 0; part < factors.Length; part++)
                {
                    factors[part][build] = parts.Parts[part].Draw(random);
                }
            }
        });
        return factors;
    }

    private static ParallelOptions Parallelism(SpreadOptions options, CancellationToken cancellation) =>
        new() { MaxDegreeOfParallelism = options.Threads ?? -1, CancellationToken = cancellation };

    private static SpreadResult Work(Design design, SpreadOptions options, IProgress<int>? progress, CancellationToken cancellation)
    {
        var parts = new PartList(DesignFields.WithoutStaleRanges(design), options);
        var setup = new SpreadSetup(design, parts);

        // The same builds three times: as drawn, without what electrodes and leads do, and with the board's parts alone.
        const int Passes = 3;
        int n = options.Builds, padded = (n + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count, done = 0;
        double[][] factors = Draw(parts, options, padded);
        double[][] drawn = Figures(factors);
        double[][] inside = Figures(Held(parts, factors, SpreadPlace.Electrodes, SpreadPlace.Leads));
        double[][] board = Figures(Held(parts, factors, SpreadPlace.Electrodes, SpreadPlace.Leads, SpreadPlace.Surroundings));
        return new SpreadSummary(setup, options, factors, drawn, cancellation).Result(inside, board);

        double[][] Figures(double[][] factors)
        {
            double[][] figures = SpreadKernel.NewRows(padded);
            Parallel.For(
                0,
                (padded + Block - 1) / Block,
                Parallelism(options, cancellation),
                () => new SpreadKernel(setup),
                (block, state, kernel) =>
                {
                    int end = Math.Min(padded, (block + 1) * Block);
                    for (int first = block * Block; first < end; first += Vector<double>.Count)
                    {
                        kernel.Evaluate(factors, figures, first);
                    }

                    progress?.Report(Math.Min(n, Interlocked.Add(ref done, end - (block * Block)) / Passes));
                    return kernel;
                },
                _ => { });
            return figures;
        }
    }

    /// <summary>The same draws with what stands in some places at its nominal value.</summary>
    private static double[][] Held(PartList parts, double[][] factors, params SpreadPlace[] places) =>
    [
        .. factors.Select((row, at) => Array.IndexOf(places, parts.Parts[at].Place) < 0
            ? row
            : [.. Enumerable.Repeat(parts.Parts[at].Nominal, row.Length)]),
    ];
}
