using FrontEnd.Results;

namespace FrontEnd.Simulation;

/// <summary>Simulated samples to be looked at: their beginning in time, their spectrum, and what the budget says of it.</summary>
/// <param name="Run">What was simulated.</param>
/// <param name="Summary">What all of it holds.</param>
/// <param name="Traces">The first samples of each channel at the electrodes.</param>
internal sealed record SampleLook(SampleRun Run, SampleSummary Summary, IReadOnlyList<Curve> Traces)
{
    /// <summary>Points of a spectrum that a picture can tell apart.</summary>
    private const int MostPoints = 1500;

    /// <summary>Density of a channel's samples, neighbours joined where there are more than a picture shows [V/√Hz].</summary>
    /// <param name="channel">Counted from 0.</param>
    /// <param name="name">Of the curve.</param>
    public Curve Spectrum(int channel, string name)
    {
        SampledChannel one = Summary.Channels[channel];
        return Density(name, one.Spectrum.Step, [.. one.Spectrum.Density.Skip(1).Take(one.Predicted.Count)]);
    }

    /// <summary>The budget's density of it, lines of the mains left out [V/√Hz].</summary>
    /// <param name="channel">Counted from 0.</param>
    public Curve Budget(int channel)
    {
        SampledChannel one = Summary.Channels[channel];
        return Density("the noise budget", one.Spectrum.Step, one.Predicted);
    }

    /// <summary>Makes the samples.</summary>
    /// <param name="run">What is simulated.</param>
    /// <param name="shown">How much of the beginning is kept.</param>
    /// <param name="progress">Told the share that is done; null for nobody.</param>
    /// <param name="cancellation">Ends it with <see cref="OperationCanceledException"/>.</param>
    public static SampleLook Of(SampleRun run, Duration shown, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        var builder = new Builder(run, shown);
        foreach (SampleBlock block in run.Blocks(cancellation))
        {
            builder.Take(block);
            progress?.Report((double)(block.First + block.Length) / run.Count);
        }

        return builder.Whole();
    }

    private static Curve Density(string name, double step, IReadOnlyList<double> density)
    {
        int joined = Math.Max(1, (density.Count + MostPoints - 1) / MostPoints), points = density.Count / joined;
        double[] hertz = new double[points], root = new double[points];
        for (int i = 0; i < points; i++)
        {
            double sum = 0;
            for (int k = 0; k < joined; k++)
            {
                sum += density[(i * joined) + k];
            }

            (hertz[i], root[i]) = (((i * joined) + 1 + ((joined - 1) / 2.0)) * step, Math.Sqrt(Math.Max(0, sum / joined)));
        }

        return new Curve(name, "Hz", "V/√Hz", hertz, root);
    }

    /// <summary>Makes a look of samples as they come.</summary>
    public sealed class Builder
    {
        private readonly SampleRun _run;
        private readonly SampleSummary.Builder _summary;
        private readonly double[] _seconds;
        private readonly double[][] _volts;

        /// <param name="run">What is simulated.</param>
        /// <param name="shown">How much of the beginning is kept.</param>
        public Builder(SampleRun run, Duration shown)
        {
            int kept = (int)Math.Min(run.Count, Math.Ceiling(shown.Seconds * run.Rate.Hertz));
            (_run, _summary) = (run, new SampleSummary.Builder(run));
            _seconds = [.. Enumerable.Range(0, kept).Select(i => i / run.Rate.Hertz)];
            _volts = [.. run.Channels.Select(_ => new double[kept])];
        }

        /// <summary>Takes the next block.</summary>
        public void Take(SampleBlock block)
        {
            _summary.Take(block);
            for (int channel = 0; channel < _volts.Length; channel++)
            {
                double[] row = _volts[channel];
                for (int i = 0; i < block.Length && block.First + i < row.Length; i++)
                {
                    row[block.First + i] = block.Steps[channel][i] * _run.VoltsPerStep[channel];
                }
            }
        }

        /// <summary>Of all that was taken.</summary>
        public SampleLook Whole() => new(_run, _summary.Whole(), [.. _run.Channels.Select((name, channel) => new Curve(name, "s", "V", _seconds, _volts[channel]))]);
    }
}
