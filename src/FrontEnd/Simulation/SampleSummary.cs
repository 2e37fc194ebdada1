using FrontEnd.Bench;
using FrontEnd.Budgets;
using FrontEnd.Converter;
using FrontEnd.Designs;
using FrontEnd.Reporting;

namespace FrontEnd.Simulation;

/// <summary>What simulated samples hold, against what the budgets say of the same design.</summary>
/// <param name="Channels">Channel by channel.</param>
/// <param name="Clips">What was at its limit, in order; at most so many as <see cref="Builder"/> keeps.</param>
/// <param name="ClippedSamples">How many stretches there were in all.</param>
/// <param name="Delay">From the electrode to the filtered sample in the middle of the band.</param>
/// <param name="NotCompared">Why noise is not held against the budget; null where it is.</param>
internal sealed record SampleSummary(IReadOnlyList<SampledChannel> Channels, IReadOnlyList<SampleEvent> Clips, long ClippedSamples, Duration Delay, string? NotCompared)
{
    /// <summary>Chance that a band of a sound record lies outside its limits.</summary>
    public const double Significance = 0.001;

    /// <summary>True where every band of every channel that is compared lies within its limits.</summary>
    public bool Agrees => Channels.All(channel => channel.Bands.All(band => band.IsInside));

    /// <summary>Makes a summary of samples as they come.</summary>
    public sealed class Builder
    {
        private const int MostClips = 1000;

        /// <summary>Samples until the first window is whole need not be many: the spectrum's windows are this long [s].</summary>
        private const double WindowSeconds = 8;

        private readonly SampleRun _run;
        private readonly WelchSpectrum.Builder[] _spectra;
        private readonly double[] _sum, _squares, _top, _bottom, _volts;
        private readonly List<SampleEvent> _clips = [];
        private long _count, _clipped;

        /// <param name="run">What the samples are of.</param>
        public Builder(SampleRun run)
        {
            int channels = run.Channels.Count;
            _run = run;
            _spectra = [.. Enumerable.Range(0, channels).Select(_ => new WelchSpectrum.Builder(run.Count, run.Rate.Hertz, WindowSeconds))];
            (_sum, _squares, _top, _bottom) = (new double[channels], new double[channels], new double[channels], new double[channels]);
            Array.Fill(_top, double.NegativeInfinity);
            Array.Fill(_bottom, double.PositiveInfinity);
            _volts = new double[SampleMaker.Most];
        }

        /// <summary>Takes the next block.</summary>
        public void Take(SampleBlock block)
        {
            for (int channel = 0; channel < _sum.Length; channel++)
            {
                double[] steps = block.Steps[channel];
                double perStep = _run.VoltsPerStep[channel];
                for (int i = 0; i < block.Length; i++)
                {
                    double volts = _volts[i] = steps[i] * perStep;
                    _sum[channel] += volts;
                    _squares[channel] += volts * volts;
                    _top[channel] = Math.Max(_top[channel], volts);
                    _bottom[channel] = Math.Min(_bottom[channel], volts);
                }

                _spectra[channel].Take(_volts.AsSpan(0, block.Length));
            }

            _count += block.Length;
            _clipped += block.Found.Count;
            _clips.AddRange(block.Found.Take(MostClips - _clips.Count));
        }

        /// <summary>Of all that was taken.</summary>
        public SampleSummary Whole()
        {
            string? notCompared = NotCompared();
            Evaluation[] kinds = [.. _run.Kinds.Select(kind => new Evaluation(kind.Design))];
            return new SampleSummary(
                [.. Enumerable.Range(0, _sum.Length).Select(channel => Of(channel, kinds[_run.KindOf[channel]], notCompared is null))],
                _clips, _clipped, Duration.FromSeconds(LatencyReport.Seconds(_run.Evaluation)), notCompared);
        }

        private SampledChannel Of(int channel, Evaluation kind, bool isCompared)
        {
            WelchSpectrum spectrum = _spectra[channel].Whole();
            double mean = _sum[channel] / _count;
            double[] predicted = new PredictedSpectrum(kind, filtered: true).Seen(spectrum.Step, spectrum.Density.Count - 2);
            SampledLine[] lines = _run.LeftOut.Hum ? [] : [.. kind.Mains.Harmonics
                .Where(harmonic => harmonic.LandsAt <= _run.Rate.Hertz / 2)
                .Select(harmonic => new SampledLine(harmonic.Order, Frequency.FromHertz(harmonic.LandsAt), Measured(spectrum, harmonic), VoltageRms.FromVolts(harmonic.Recorded)))];
            return new SampledChannel(_run.Channels[channel], Voltage.FromVolts(mean),
                VoltageRms.FromVolts(Math.Sqrt(Math.Max(0, (_squares[channel] / _count) - (mean * mean)))),
                VoltagePeakToPeak.FromVolts(_top[channel] - _bottom[channel]), isCompared ? Bands(kind, spectrum, predicted) : [], lines, spectrum, predicted);
        }

        /// <summary>What a line holds: the power above the noise beside it over the frequencies that it wanders over.</summary>
        private static VoltageRms Measured(WelchSpectrum spectrum, MainsHarmonic harmonic)
        {
            double reach = 2.5 * spectrum.Step, low = harmonic.LandsLow - reach, high = harmonic.LandsHigh + reach;
            double beside = spectrum.Background((int)Math.Round(harmonic.LandsAt / spectrum.Step));
            return VoltageRms.FromVolts(Math.Sqrt(Math.Max(0, spectrum.Integral(Math.Max(0, low), high, k => spectrum.Density[k] - beside))));
        }

        private static IReadOnlyList<SampledBand> Bands(Evaluation kind, WelchSpectrum spectrum, double[] predicted)
        {
            Design design = kind.Design;
            double highest = (spectrum.Density.Count - 1.5) * spectrum.Step;
            return [.. design.Bands.Prepend(design.Band).Where(band => band.Low.Hertz < highest)
                .Select(band => SampledBand.Of(band, ReferenceEquals(band, design.Band) ? kind.Noise.Total : kind.Noise.InBand(band.Low.Hertz, band.High.Hertz),
                    spectrum, predicted, kind.Mains.Harmonics)).OfType<SampledBand>()];
        }

        private string? NotCompared() =>
            !_run.Head.IsStill ? "the samples contain signals of the simulated head"
            : _run.LeftOut.IsQuieter ? "noise sources are left out"
            : _count < 4 * WindowSeconds * _run.Rate.Hertz ? "the record is shorter than 32 s"
            : 0 < _clipped ? "something clips"
            : _run.Kinds.Any(IsWithinAStep) ? "the noise is less than half a step of the converter, so its rounding is not white noise"
            : null;

        /// <summary>Rounding adds LSB²/12 but for a share of e^(−2π²σ²/LSB²) or so: 0.7 % at half a step, all of it far below. Source: B. Widrow, I.
        /// Kollár, Quantization noise (2008), ch. 7 (from memory).</summary>
        private static bool IsWithinAStep(ChannelBudgets kind)
        {
            AnalogDigitalConverter converter = kind.Design.Converter;
            return Math.Sqrt((kind.Levels.NoiseAtConverter * kind.Levels.NoiseAtConverter) + (converter.NoiseVolts * converter.NoiseVolts)) < converter.LsbVolts / 2;
        }
    }
}

/// <summary>One channel of simulated samples, in volts at the electrodes.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Mean">Of all samples.</param>
/// <param name="Rms">About it.</param>
/// <param name="PeakToPeak">From the least to the greatest.</param>
/// <param name="Bands">Noise in the design's band, then in the named ones; empty where it is not compared.</param>
/// <param name="Lines">The mains' harmonics; empty where they are left out.</param>
/// <param name="Spectrum">Of the samples.</param>
/// <param name="Predicted">The budget's density as that spectrum's windows show it, at its bins from the first on [V²/Hz].</param>
internal sealed record SampledChannel(string Name, Voltage Mean, VoltageRms Rms, VoltagePeakToPeak PeakToPeak, IReadOnlyList<SampledBand> Bands,
    IReadOnlyList<SampledLine> Lines, WelchSpectrum Spectrum, IReadOnlyList<double> Predicted);

/// <summary>A harmonic of the mains in simulated samples.</summary>
/// <param name="Order">h.</param>
/// <param name="LandsAt">Where sampling puts it.</param>
/// <param name="Measured">What stands there above the noise.</param>
/// <param name="Budget">What the budget says is recorded of it: the larger of both ends of the mains' deviation.</param>
internal sealed record SampledLine(int Order, Frequency LandsAt, VoltageRms Measured, VoltageRms Budget);
