using FrontEnd.Catalogue;
using FrontEnd.Designs;
using FrontEnd.Electrodes;
using FrontEnd.Unknowns;

namespace FrontEnd.Bench;

/// <summary>What stood in the place of every electrode while something was recorded, with nobody connected.</summary>
/// <param name="Words">The fixture in a few words.</param>
/// <param name="Part">The part in each lead.</param>
internal sealed record KnownFixture(string Words, Electrode Part)
{
    /// <summary>All leads joined by wire.</summary>
    public static KnownFixture Shorted { get; } = Named(BenchPlan.Shorted)!;

    /// <summary>The bench tests that are a record of noise on a fixture.</summary>
    public static IReadOnlyList<string> Tests => [.. BenchPlan.NoiseFixtures.Select(one => one.Name)];

    /// <summary>The fixture of one of these tests; null for another word.</summary>
    public static KnownFixture? Named(string test)
    {
        foreach ((string name, string words, Electrode part, _) in BenchPlan.NoiseFixtures)
        {
            if (string.Equals(name, test, StringComparison.Ordinal))
            {
                return new KnownFixture(words, part);
            }
        }

        return null;
    }

    /// <summary>The same resistor in every lead, the far ends tied together.</summary>
    public static KnownFixture Of(Resistance resistor) => resistor.Ohms == 0 ? Shorted
        : new($"{QuantityText.FormatPart(resistor)} in every lead, the far ends tied together", Fixture.Of(resistor, default));
}

/// <summary>The noise of a recording on a fixture.</summary>
/// <param name="Fixture">What it was made on.</param>
/// <param name="Rms">Noise in the band, lines taken out: volts at the electrodes, or converter steps.</param>
/// <param name="AreSteps">True for converter steps.</param>
/// <param name="IsFiltered">True where the design's digital filters were on.</param>
internal sealed record FixtureRecording(KnownFixture Fixture, double Rms, bool AreSteps, bool IsFiltered)
{
    /// <summary>How long it lasted.</summary>
    public required Duration Length { get; init; }

    /// <summary>Relative standard deviation of such a reading: <see cref="PredictedSpectrum.Spread"/>.</summary>
    public required Ratio Spread { get; init; }

    /// <summary>Lines that were taken out, the largest first: volts at the electrodes of the design in the middle.</summary>
    public required IReadOnlyList<FoundLine> Lines { get; init; }

    /// <summary>What was taken from the recording, in words.</summary>
    public required string Taken { get; init; }

    /// <summary>How far a prediction may be off from the measured noise and still agree: the bench's tolerance of noise and twice the record's own spread.</summary>
    public Ratio Width => Ratio.FromFraction(BenchPlan.NoiseTolerance + (2 * Spread.Fraction));

    /// <summary>The noise of a recording; findings where it cannot be told.</summary>
    /// <param name="design">What is known of the device.</param>
    /// <param name="fixture">What the recording was made on.</param>
    /// <param name="recording">Its samples, read once.</param>
    /// <param name="raw">True where the digital filters were off.</param>
    public static (FixtureRecording? Reading, IReadOnlyList<Finding> Findings) Of(PartlyKnownDesign design, KnownFixture fixture, Recording recording, bool raw = false)
    {
        if (design.Find(DesignKeys.Converter.Rate) is not null)
        {
            return (null, [Messages.NeedsRate(QuantityText.Format(recording.Rate, 5))]);
        }

        FixturePrediction middle = new(PartlyKnownEvaluator.Drawn(design, FixtureNoise.Middle(design)), FixtureNoise.ChannelOf(design), fixture, !raw);
        Frequency rate = middle.Design.Converter.Rate;
        if (BenchComparison.Unfit(middle.Design, recording) is { } unfit)
        {
            return (null, [unfit]);
        }

        (RecordingSums sums, WelchSpectrum measured) = Read(recording, rate.Hertz, middle.Design.Band);
        if (sums.NotFinite is { } at)
        {
            return (null, [Messages.NotFinite(at + 1)]);
        }

        (double low, double high) = middle.Band;
        if (RecordingChecks.IsDead(sums) || !(0 < measured.Power(low, high)))
        {
            return (null, [Messages.NothingInBand($"{QuantityText.Format(low, "Hz")} and {QuantityText.Format(high, "Hz")}")]);
        }

        if (RecordingChecks.AtLimits(sums, measured) is > 0 and var limited)
        {
            return (null, [Messages.StandsAtLimits(limited)]);
        }

        FoundLine[] lines = [.. RecordingLines.Of(measured, middle.Design, middle.Seen(measured)).Lines.Where(line => low <= line.Frequency.Hertz && line.Frequency.Hertz <= high)];
        double power = measured.Power(low, high), inLines = lines.Sum(line => line.Rms.Volts * line.Rms.Volts);
        double scale = recording.AreSteps ? middle.VoltsPerStep : 1;
        return (new FixtureRecording(fixture, Math.Sqrt(Math.Max(0, power - inLines)), recording.AreSteps, !raw)
        {
            Length = recording.Length,
            Spread = Ratio.FromFraction(middle.Spread(recording.Length)),
            Lines = [.. lines.Select(line => line with { Rms = VoltageRms.FromVolts(line.Rms.Volts * scale) })],
            Taken = BenchComparison.Described(recording, !raw),
        }, []);
    }

    private static (RecordingSums Sums, WelchSpectrum Spectrum) Read(Recording recording, double rate, Band band)
    {
        RecordingSums sums = new();
        WelchSpectrum.Builder spectrum = new(recording.Samples.Count, rate, BenchFloor.WindowSeconds(band));
        recording.Samples.Read(piece =>
        {
            sums.Take(piece);
            spectrum.Take(piece);
        });
        return (sums, spectrum.Whole());
    }
}

/// <summary>What one design gives on a fixture.</summary>
internal sealed class FixturePrediction
{
    private readonly FixtureNoise _noise;
    private readonly bool _filtered;

    /// <param name="design">A design of which every value is known, without errors.</param>
    /// <param name="channel">Which of its channels is recorded, counted from 0.</param>
    /// <param name="fixture">What stands in the electrodes' place.</param>
    /// <param name="filtered">True where the digital filters are on.</param>
    public FixturePrediction(Design design, int channel, KnownFixture fixture, bool filtered) =>
        (_noise, _filtered) = (new FixtureNoise(design, channel, fixture.Part, filtered), filtered);

    /// <summary>The design with the fixture in place.</summary>
    public Design Design => _noise.Design;

    /// <summary>The band in which noise is read, below half the rate [Hz].</summary>
    public (double Low, double High) Band => (Design.Band.Low.Hertz, Math.Min(Design.Band.High.Hertz, Design.Converter.Rate.Hertz / 2));

    /// <summary>Noise in the band at the electrodes [V rms].</summary>
    public double Rms => _noise.Rms;

    /// <summary>One step of the converter at the electrodes [V].</summary>
    public double VoltsPerStep => Design.Converter.LsbVolts / _noise.Gain;

    /// <summary>The density as a recording's windows show it [V²/Hz].</summary>
    public double[] Seen(WelchSpectrum like) => Spectrum.Seen(like.Step, like.Density.Count - 2);

    /// <summary>Relative standard deviation of the noise of a record.</summary>
    public double Spread(Duration length) => Spectrum.Spread(Band.Low, Band.High, length.Seconds);

    /// <summary>What the channel is called; null where the channels have no names.</summary>
    public string? Name(PartlyKnownDesign design) => _noise.Name(design);

    private PredictedSpectrum Spectrum => new(_noise.Evaluation, _filtered, _noise.Gain);
}
