using FrontEnd.Budgets;
using FrontEnd.Numbers;

namespace FrontEnd.Simulation;

/// <summary>Noise in the path between the samples: each channel's at its amplifier's output, and every stage's own at its output.</summary>
internal sealed class PathNoise
{
    private readonly int _steps, _stages;
    private readonly ColouredNoise[] _noise;
    private readonly double[][][] _rows;

    public PathNoise(SampleRun run, PathDensities[] densities, int steps)
    {
        double rate = run.Rate.Hertz * steps;
        int length = SampleMaker.BlockLength(run, rate), channels = run.Design.Channels;
        _steps = steps;
        var amplifier = densities.Select(one => one.InThePath(length, rate)).ToArray();
        NoiseColour[] colours = [.. run.KindOf.Select((kind, channel) => run.HasOwnReference(channel)
            ? new NoiseColour(SampleMaker.Added(amplifier[kind].Own, amplifier[kind].Shared), [null])
            : new NoiseColour(amplifier[kind].Own, [amplifier[kind].Shared]))];

        // A stage's noise has no slope but a flicker corner's: shorter blocks do.
        int shorter = Math.Min(length, ColouredNoise.LengthOf(ShortSeconds * rate, 1 << 10, 1 << 17));
        var stages = densities.Select(one => one.InThePath(shorter, rate).Stages).ToArray();
        _stages = run.Design.Stages.Count;
        _noise =
        [
            new ColouredNoise(length, rate, colours, ["reference"], run.Wish.Seed, "noise"),
            .. Enumerable.Range(0, _stages).Select(stage => new ColouredNoise(shorter, rate,
                [.. run.KindOf.Select(kind => new NoiseColour(stages[kind][stage], []))], [], run.Wish.Seed, "stage " + run.Design.Stages[stage].Name)),
        ];
        _rows = [.. Enumerable.Range(0, channels).Select(_ => _noise.Select(_ => new double[SampleMaker.Most * steps]).ToArray())];
    }

    private const double ShortSeconds = 8;

    /// <summary>Channel by channel and block by block, the amplifier first.</summary>
    public double[][][] Next(int count)
    {
        int values = count * _steps;
        for (int block = 0; block <= _stages; block++)
        {
            double[][] rows = [.. _rows.Select(channel => channel[block])];
            foreach (double[] row in rows)
            {
                Array.Clear(row, 0, values);
            }

            _noise[block].AddTo(rows, values);
        }

        return _rows;
    }
}
