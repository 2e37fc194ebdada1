using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Results;

namespace FrontEnd.Bench;

/// <summary>Holds readings and recordings of a built board against what its design should give.</summary>
public static class BenchComparison
{
    /// <summary>The highest harmonic of the mains that a line in a recording is compared with.</summary>
    public static readonly int HighestHarmonic = Interference.Mains.StandardHarmonics.Count;

    /// <summary>Shortest recording that is worked out [s].</summary>
    private const double ShortestSeconds = 4;

    /// <summary>A line counts where its bin is above the noise beside it by more than chance gives once in some thousand
    /// recordings.</summary>
    private const double LineSigmas = 9;

    /// <summary>Share of the predicted power in the band that a line may hold: what raises the rms by the tolerance, 1.2² − 1.</summary>
    private const double LinePower = 0.44;

    /// <summary>Two thirds of the band that differ by more than this are not "alike" [dB].</summary>
    private const double SlopeDecibels = 2.5;

    private static readonly double[] MainsFrequencies = [50, 60];

    /// <summary>One reading against its test.</summary>
    public static (BenchResult? Result, Finding? Finding) Reading(BenchReading test, IQuantity measured)
    {
        if (test.Expected is null)
        {
            return (new BenchResult(test, measured, VerdictKind.NotJudged, test.Remark ?? "nothing is predicted", 0, []), null);
        }

        if (!string.Equals(measured.SiUnit, test.Expected.SiUnit, StringComparison.Ordinal))
        {
            return (null, Messages.OtherKind(test.Name, measured.SiUnit, test.Expected.SiUnit));
        }

        bool pass = Within(test, measured.SiValue);
        IReadOnlyList<Suspect> suspects = pass ? [] : BenchSuspects.Of(test, measured.SiValue);
        return (new BenchResult(test, measured, pass
            ? VerdictKind.Pass
            : VerdictKind.Fail, Sentence(test, measured), test.Spread, suspects), null);
    }

    /// <summary>A recording made during one test.</summary>
    /// <param name="plan">The design's tests: see <see cref="BenchPlan"/>.</param>
    /// <param name="name">The test's name.</param>
    /// <param name="recording">Samples as the board delivers them. They are read once; where a percentile is wanted of more values than are
    /// counted one by one, four times more.</param>
    /// <param name="raw">True where the digital filters were off also in tests that have them on.</param>
    public static (BenchResult? Result, IReadOnlyList<Finding> Findings) Recording(IReadOnlyList<BenchReading> plan, string name,
        Recording recording, bool raw = false)
    {
        if (plan.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal)) is not { } test)
        {
            string[] known = [.. plan.Select(one => one.Name)];
            return (null, [Messages.NoTest(name, Nearest.Of(name, known), known)]);
        }

        if (test.Kind == ReadingKind.Other)
        {
            return (null, [Messages.ByInstrument(name)]);
        }

        Design design = test.Design;
        if (Unfit(design, recording) is { } unfit)
        {
            return (null, [unfit]);
        }

        var taken = new Taken(test, recording, test.Filtered && !raw);
        if (taken.Sums.NotFinite is { } at)
        {
            return (null, [Messages.NotFinite(at + 1)]);
        }

        BenchResult result = RecordingChecks.IsDead(taken.Sums) ? Dead(taken)
            : test.Kind == ReadingKind.Tone ? Tone(taken)
            : test.Kind == ReadingKind.Pulse ? Pulse(taken)
            : Noise(taken);
        return Whole(taken, result);
    }

    /// <summary>Why a recording cannot be held against a design: another rate, or too short; null where it can.</summary>
    internal static Finding? Unfit(Design design, Recording recording)
    {
        if (1e-3 < Math.Abs((recording.Rate.Hertz / design.Converter.Rate.Hertz) - 1))
        {
            return Messages.OtherRate(QuantityText.Format(recording.Rate, 5), QuantityText.Format(design.Converter.Rate, 5));
        }

        double least = Math.Max(ShortestSeconds, 8 / design.Band.Low.Hertz);
        return recording.Length.Seconds < least
            ? Messages.TooShort(QuantityText.Format(recording.Length), QuantityText.Format(Duration.FromSeconds(least)))
            : null;
    }

    /// <summary>What was taken from a recording, in words.</summary>
    internal static string Described(Recording recording, bool isFiltered) =>
        $"channel `{recording.Channel}`, its samples read as {(recording.AreSteps ? "converter steps" : $"{recording.Unit} at the electrodes")}, {QuantityText.Format(recording.Rate)}"
        + $"{(recording.IsRateAssumed ? " as in the design (the file does not say)" : "")}, {QuantityText.Format(recording.Length)}, held against the design with its digital filters {(isFiltered ? "on" : "off")}";

    /// <summary>The result with what it was taken from; a record that is shorter than the test asks for passes nothing.</summary>
    private static (BenchResult Result, IReadOnlyList<Finding> Findings) Whole(Taken taken, BenchResult result)
    {
        Recording recording = taken.Recording;
        bool isShort = recording.Length.Seconds < WholeShare * BenchPlan.RecordSeconds;
        string asked = QuantityText.Format(Duration.FromSeconds(BenchPlan.RecordSeconds));
        result = result with
        {
            Verdict = isShort && result.Verdict == VerdictKind.Pass ? VerdictKind.NotJudged : result.Verdict,
            Because = result.Because + (isShort && result.Verdict == VerdictKind.Pass
                ? $"; not judged, as the recording has {QuantityText.Format(recording.Length)} of the {asked} that the test asks for"
                : ""),
            Length = recording.Length,
            Taken = Described(recording, taken.IsFiltered),
            Spectra =
            [
                new Curve("measured", "Hz", "V/√Hz", taken.Hertz,
                    [.. Enumerable.Range(1, taken.Hertz.Length).Select(k => Math.Sqrt(taken.Measured.Density[k]))]),
                new Curve("predicted", "Hz", "V/√Hz", taken.Hertz, [.. taken.Density.Select(Math.Sqrt)]),
            ],
        };
        return (result, isShort ? [Messages.Ends(QuantityText.Format(recording.Length), asked)] : []);
    }

    /// <summary>Share of the record that a test asks for which a recording must have: a few rows lost at either end are no cut.</summary>
    private const double WholeShare = 0.98;

    /// <summary>A recording of one test, its spectrum and the predicted one.</summary>
    private sealed class Taken
    {
        public Taken(BenchReading test, Recording recording, bool isFiltered)
        {
            Test = test;
            Recording = recording;
            IsFiltered = isFiltered;
            Evaluation = new Reporting.Evaluation(test.Design);
            double scale = recording.AreSteps ? test.Design.Converter.LsbVolts / test.Gain : 1;
            ISamples samples = scale == 1 ? recording.Samples : new ScaledSamples(recording.Samples, scale);
            WelchSpectrum.Builder spectrum = new(samples.Count, test.Design.Converter.Rate.Hertz, BenchFloor.WindowSeconds(test.Design.Band));
            Sums = new RecordingSums();
            samples.Read(piece =>
            {
                Sums.Take(piece);
                spectrum.Take(piece);
            });
            Order = new SampleOrder(samples, Sums);
            Measured = spectrum.Whole();
            Hertz = [.. Enumerable.Range(1, Measured.Density.Count - 2).Select(k => k * Measured.Step)];
            Predicted = new PredictedSpectrum(Evaluation, isFiltered, test.Gain);
            Density = Predicted.Seen(Measured.Step, Hertz.Length);
        }

        public BenchReading Test { get; }

        public Recording Recording { get; }

        public bool IsFiltered { get; }

        public Reporting.Evaluation Evaluation { get; }

        /// <summary>Of its samples [V at the electrodes].</summary>
        public RecordingSums Sums { get; }

        public SampleOrder Order { get; }

        public WelchSpectrum Measured { get; }

        /// <summary>Frequencies of the bins but the first and the last.</summary>
        public double[] Hertz { get; }

        public PredictedSpectrum Predicted { get; }

        /// <summary>The predicted density at the bins, as windows show it [V²/Hz].</summary>
        public double[] Density { get; }

        public Band Band => Test.Design.Band;
    }

    private static BenchResult Dead(Taken taken) => new(taken.Test, Zero(taken.Test), VerdictKind.Fail,
        $"no sample of {taken.Sums.Count} differs from the first: nothing was measured", 0,
        [new Suspect(SuspectKind.DeadChannel,
            "the channel is dead: no sample differs from the first; check power, the converter's clock and the channel's wire",
            $"{taken.Sums.Count} equal samples")]);

    private static IQuantity Zero(BenchReading test) => test.Kind == ReadingKind.Pulse ? default(Voltage) : default(VoltageRms);

    /// <summary>Bins beside a tone into which its window reaches, and how far the noise beside it may be off before it is told [dB].</summary>
    private const int ToneBins = 40;

    private static BenchResult Tone(Taken taken)
    {
        BenchReading test = taken.Test;
        VoltageRms rms = VoltageRms.FromVolts(taken.Measured.ToneRms(test.Line!.Value.Hertz));
        bool inside = Within(test, rms.Volts);
        string because = Sentence(test, rms);
        List<Suspect> suspects = inside ? [] : [.. BenchSuspects.Of(test, rms.Volts)];
        FoundLine line = new(test.Line.Value, rms, null, null, false);
        Func<int, bool> atLine = SpectrumShape.At([line], taken.Measured.Step, ToneBins);
        if (RecordingChecks.IsCut(taken.Sums, taken.Order, taken.Measured, test.Line.Value.Hertz, rms.Volts, isMains: test.Least is null))
        {
            because += "; but its tops are flat: something clips, and the reading says nothing about the gain";
            suspects = [new Suspect(SuspectKind.Clipping, "clipping: the generator's level, an input beyond its range, a supply below the design",
                "the samples stay at their extremes longer than a sine does, or the line has harmonics")];
            inside = false;
        }
        else if (!inside && Strongest(taken) is { } other && 2 * taken.Measured.Step < Math.Abs(other.Frequency.Hertz - test.Line.Value.Hertz)
            && rms.Volts < other.Rms.Volts)
        {
            suspects.Insert(0, new Suspect(SuspectKind.Fixture,
                $"the largest line stands at {QuantityText.Format(other.Frequency)}, not at {QuantityText.Format(test.Line.Value)}: the generator's frequency, or the samples were not taken at {QuantityText.Format(taken.Recording.Rate)}",
                $"{QuantityText.Format(other.Rms)} there"));
        }

        double level = SpectrumShape.Level(taken.Measured, taken.Density, taken.Band, atLine);
        if (test.Least is null && level < -QuietDecibels)
        {
            because += $"; but the noise beside it is {QuantityText.FormatNumber(-level, 2)} dB below what the board must make: this is no recording of it";
            suspects.Insert(0, new Suspect(SuspectKind.TooQuiet, "a channel that is not connected, or samples in another unit",
                $"the noise is {QuantityText.FormatNumber(-level, 2)} dB below the prediction"));
            inside = false;
        }

        if (SpectrumShape.Worst(taken.Measured, taken.Density, taken.Predicted, taken.Band, atLine) is { } shape)
        {
            Suspect[] filters = [.. OtherFilters(taken, atLine, shape)];
            because += $"; {(filters.Length == 0 ? "" : "but ")}the noise beside the line is not as predicted, {Signed(shape.Decibels)} dB {Around(shape)}{(filters.Length == 0 ? ", which the noise tests judge" : "")}";
            suspects.AddRange(filters);
            inside &= filters.Length == 0;
        }

        return new BenchResult(test, rms, inside ? VerdictKind.Pass : VerdictKind.Fail, because, 0, suspects);
    }

    /// <summary>How far below the predicted noise a recording tells nothing [dB].</summary>
    private const double QuietDecibels = 6;

    private static FoundLine? Strongest(Taken taken)
    {
        int best = 3;
        for (int k = 3; k < taken.Measured.Density.Count - 3; k++)
        {
            best = taken.Measured.Density[best] < taken.Measured.Density[k] ? k : best;
        }

        double hertz = best * taken.Measured.Step;
        return new FoundLine(Frequency.FromHertz(hertz), VoltageRms.FromVolts(taken.Measured.ToneRms(hertz)), null, null, false);
    }

    private static BenchResult Pulse(Taken taken)
    {
        BenchReading test = taken.Test;
        Voltage height = Voltage.FromVolts(BenchPulse.Direction(taken.Order));
        bool inside = Within(test, height.Volts);
        double ratio = height.Volts / test.Expected!.SiValue;
        string evidence = $"{QuantityText.FormatNumber(ratio)} times the prediction";
        Suspect[] suspects = inside ? []
            : ratio < -0.1
            ? [BenchSuspects.Turned(evidence)]
            : [
                .. BenchSuspects.OfUnit(ratio, 0.5),
                new Suspect(SuspectKind.Fixture, "no pulses of this length and period, or the generator's level", evidence)];
        return new BenchResult(test, height, inside ? VerdictKind.Pass : VerdictKind.Fail, Sentence(test, height), 0, suspects);
    }

    private static BenchResult Noise(Taken taken)
    {
        (BenchReading test, WelchSpectrum measured) = (taken.Test, taken.Measured);
        double low = taken.Band.Low.Hertz, high = Math.Min(taken.Band.High.Hertz, test.Design.Converter.Rate.Hertz / 2);

        // Both sides are summed over the same bins, so that the coarseness of the bins at the band's edges drops out of the comparison.
        double expectedPower = measured.Integral(low, high, k => 0 < k && k <= taken.Density.Length ? taken.Density[k - 1] : 0);
        double rms = Math.Sqrt(measured.Power(low, high)), fixture = Math.Sqrt(expectedPower);
        double spread = taken.Predicted.Spread(low, high, taken.Recording.Length.Seconds);
        FoundLine[] lines = [.. Lines(measured, test.Design, taken.Density)];

        // What the sheet calls noise.shorted and what the wires read may differ: the test's range reaches over both.
        double expected = taken.IsFiltered ? test.Expected!.SiValue : fixture, share = taken.IsFiltered ? fixture / test.Expected!.SiValue : 1;
        double width = BenchPlan.NoiseTolerance + (2 * spread), ratio = rms / fixture, least = Math.Min(1, 1 / share) * (1 - width),
            greatest = Math.Max(1, 1 / share) * (1 + width);
        FoundLine[] loud = [.. lines.Where(line => LinePower * expectedPower < line.Rms.Volts * line.Rms.Volts)];
        bool inside = least <= ratio && ratio <= greatest;
        long limited = RecordingChecks.AtLimits(taken.Sums);
        SpectrumShape? shape = SpectrumShape.Worst(measured, taken.Density, taken.Predicted, taken.Band, SpectrumShape.At(lines, measured.Step));
        bool pass = inside && loud.Length == 0 && limited == 0 && shape is null;
        VoltageRms value = VoltageRms.FromVolts(rms);
        string because = $"{QuantityText.Format(value)} measured in {QuantityText.Format(taken.Recording.Length)}, {QuantityText.Format(VoltageRms.FromVolts(expected))} predicted: {Percent(rms / expected)}, "
            + $"the record's own spread {QuantityText.FormatPercent(Ratio.FromFraction(spread), 2)}, allowed {Percent(least * share)} to {Percent(greatest * share)}"
            + (limited != 0 ? $"; but {limited} samples stand at a limit that noise would go beyond" : "")
            + (inside && loud.Length != 0
                ? $"; but a line of {QuantityText.Format(loud[0].Rms)} stands at {QuantityText.Format(loud[0].Frequency)}"
                : "")
            + (inside && shape is not null ? $"; but the spectrum has another shape than the predicted one, {Signed(shape.Decibels)} dB {Around(shape)}" : "");
        IReadOnlyList<Suspect> suspects = pass
            ? []
            : [.. Clipped(limited, taken.Sums.Count), .. OtherFilters(taken, SpectrumShape.At(lines, measured.Step), shape), .. BenchSuspects.OfUnit(ratio, width),
                .. inside && loud.Length == 0 ? [] : Suspects(taken, lines, low, high, expectedPower, ratio), .. Shape(shape)];
        return new BenchResult(test, value, pass ? VerdictKind.Pass : VerdictKind.Fail, because, spread,
            [.. suspects.DistinctBy(suspect => suspect.Kind)]) { Lines = lines };
    }

    private static IEnumerable<Suspect> Clipped(long limited, long samples) => limited == 0
        ? []
        : [new Suspect(SuspectKind.Clipping, "the samples stay at their extremes: an input beyond its range, or numbers cut at a limit",
            $"{limited} of {samples} samples are the largest or the smallest")];

    /// <summary>The digital filters' state as the suspect where the other one fits.</summary>
    private static IEnumerable<Suspect> OtherFilters(Taken taken, Func<int, bool> isLine, SpectrumShape? shape)
    {
        if (shape is null || taken.Test.Design.Digital.Count == 0)
        {
            yield break;
        }

        var other = new PredictedSpectrum(taken.Evaluation, !taken.IsFiltered, taken.Test.Gain);
        double[] seen = other.Seen(taken.Measured.Step, taken.Hertz.Length);
        if (SpectrumShape.Worst(taken.Measured, seen, other, taken.Band, isLine) is null)
        {
            yield return new Suspect(SuspectKind.DigitalFilter, taken.IsFiltered
                ? "the recording was made without the digital filters: its spectrum is the one predicted without them (--raw compares with that)"
                : "the recording was made with the digital filters on: its spectrum is the one predicted with them (the test asks for them off, or --raw says so)",
                $"{Signed(shape.Decibels)} dB {Around(shape)}");
        }
    }

    private static IEnumerable<Suspect> Shape(SpectrumShape? shape) => shape is null
        ? []
        : [new Suspect(SuspectKind.DigitalFilter,
            "a filter of another corner or centre than the design's, analogue or digital, or a rate at which it was not worked out",
            $"{Signed(shape.Decibels)} dB {Around(shape)}")];

    private static string Around(SpectrumShape shape) => $"from {QuantityText.Format(shape.From, "Hz")} to {QuantityText.Format(shape.To, "Hz")}";

    private static string Signed(double decibels) => $"{(0 <= decibels ? "+" : "")}{QuantityText.FormatNumber(Math.Round(decibels, 1), 3)}";

    /// <summary>Lines that stand out of the noise, the largest first.</summary>
    internal static IEnumerable<FoundLine> Lines(WelchSpectrum spectrum, Design design, double[] density)
    {
        // A bin of K averages of Gaussian noise spreads by 1/√K about its mean.
        double threshold = 1 + (LineSigmas / Math.Sqrt(spectrum.Averages)), rate = design.Converter.Rate.Hertz;
        var found = new List<FoundLine>();
        for (int k = 3; k < spectrum.Density.Count - 3; k++)
        {
            bool peak = spectrum.Density[k - 1] < spectrum.Density[k] && spectrum.Density[k + 1] <= spectrum.Density[k];
            if (!peak)
            {
                continue;
            }

            // Held against the shape that is predicted, so that the skirt of a notch or a corner is no line.
            double shape = density[k - 1] / Math.Max(1e-300, Median(density, k - 1));
            if (threshold * spectrum.Background(k) * Math.Max(1, shape) < spectrum.Density[k])
            {
                double power = spectrum.LobePower(k) - (5 * spectrum.Step * spectrum.Background(k));
                double hertz = Centroid(spectrum, k);
                (int? harmonic, double? mains, bool folded) = Named(hertz, spectrum.Step, rate, design);
                found.Add(new FoundLine(Frequency.FromHertz(hertz), VoltageRms.FromVolts(Math.Sqrt(Math.Max(0, power))), harmonic,
                    mains is { } f0 ? Frequency.FromHertz(f0) : null, folded));
            }
        }

        return found.OrderByDescending(line => line.Rms.Volts).Take(12);
    }

    private static double Median(double[] density, int centre)
    {
        double[] beside = [.. Enumerable.Range(-20, 41).Where(at =>
            4 <= Math.Abs(at) && 0 <= centre + at && centre + at < density.Length).Select(at => density[centre + at]).Order()];
        return beside.Length == 0 ? density[centre] : beside[beside.Length / 2];
    }

    private static double Centroid(WelchSpectrum spectrum, int k)
    {
        double sum = 0, moment = 0;
        for (int i = k - 1; i <= k + 1; i++)
        {
            sum += spectrum.Density[i];
            moment += spectrum.Density[i] * i;
        }

        return moment / sum * spectrum.Step;
    }

    /// <summary>The lowest harmonic of the design's mains, then of the other, whose landing within the mains' deviation is this
    /// line.</summary>
    private static (int? Harmonic, double? Mains, bool Folded) Named(double hertz, double step, double rate, Design design)
    {
        double own = design.Mains.Frequency.Hertz;
        foreach (double f0 in MainsFrequencies.Where(other => 1e-9 < Math.Abs(other - own)).Prepend(own))
        {
            for (int h = 1; h <= HighestHarmonic; h++)
            {
                double deviation = design.Mains.Deviation.Fraction;
                (double low, double high) = Folding.LandsWithin(h * f0 * (1 - deviation), h * f0 * (1 + deviation), rate);
                if (low - step <= hertz && hertz <= high + step)
                {
                    return (h, f0, rate / 2 < h * f0);
                }
            }
        }

        return (null, null, false);
    }

    private static List<Suspect> Suspects(Taken taken, FoundLine[] lines, double low, double high, double expectedPower, double ratio)
    {
        (WelchSpectrum measured, double[] density, PredictedSpectrum predicted) = (taken.Measured, taken.Density, taken.Predicted);
        var ranked = new List<(double Weight, Suspect Suspect)>();

        // The part of the excess that each line carries weighs it against the part that the broad noise carries.
        foreach (FoundLine line in lines.Where(line => 0.02 * expectedPower < line.Rms.Volts * line.Rms.Volts))
        {
            ranked.Add((line.Rms.Volts * line.Rms.Volts / expectedPower, OfLine(line)));
        }

        double linePower = lines.Where(line =>
            low <= line.Frequency.Hertz && line.Frequency.Hertz <= high).Sum(line => line.Rms.Volts * line.Rms.Volts);
        double broad = Math.Max(0, (ratio * ratio) - 1 - (linePower / expectedPower));
        double[] thirds = [.. Thirds(measured, density, low, high)];
        double mean = thirds.Average(), slope = thirds[2] - thirds[0];
        string evidence = $"low, middle and high third of the band: {string.Join(", ", thirds.Select(third => $"{(0 <= third ? "+" : "")}{QuantityText.FormatNumber(Math.Round(third, 1), 3)} dB"))}";
        if (mean < -0.8)
        {
            ranked.Add((1 - Math.Min(1, ratio * ratio), new Suspect(
                SuspectKind.TooQuiet,
                    "less noise than the parts must make: the gain is lower than stated, a filter is on that the design does not have, or the fixture is not where it should be",
                    evidence)));
        }
        else if (0.2 < broad)
        {
            ranked.Add((broad, Math.Abs(slope) < SlopeDecibels
                ? new Suspect(SuspectKind.LouderPart,
                    $"every frequency is up alike: the part that makes most of the noise is louder than its card ({predicted.LargestSource}), or gain or converter reference differ from the design; the calibrated sine tells which",
                    evidence)
                : slope < 0
                    ? new Suspect(SuspectKind.LowFrequency,
                        "more towards low frequencies: flicker of amplifier or mid-rail, draughts, a fixture with a bad joint", evidence)
                    : new Suspect(SuspectKind.HighFrequency,
                        "more towards high frequencies: converter noise, what folds back from above, radio and its supply ripple",
                        evidence)));
        }

        List<Suspect> suspects = [.. ranked.OrderByDescending(pair =>
            pair.Weight).Select(pair => pair.Suspect).DistinctBy(suspect => suspect.Kind)];
        return suspects.Count != 0
            ? suspects
            : [new Suspect(SuspectKind.LouderPart, "the excess is small and has no shape: repeat with a longer record", evidence)];
    }

    private static Suspect OfLine(FoundLine line)
    {
        string evidence = $"{QuantityText.Format(line.Rms)} at {QuantityText.Format(line.Frequency)}";
        return line switch
        {
            { Harmonic: { } h, Mains: { } f0, Folded: true } => new Suspect(
                SuspectKind.Aliasing,
                $"harmonic {h} of {QuantityText.FormatPart(f0)} folds back from {QuantityText.FormatPart(Frequency.FromHertz(h * f0.Hertz))}: a section of the anti-alias filter is missing, or the rate is unlucky",
                evidence),
            { Harmonic: { } h, Mains: { } f0 } => new Suspect(
                SuspectKind.MainsPickup,
                $"mains pick-up, {(h == 1 ? "the fundamental" : $"harmonic {h}")} of {QuantityText.FormatPart(f0)}: ground lead off or long, box open, cable untwisted, or a supply wired to the mains",
                evidence),
            _ => new Suspect(SuspectKind.OtherLine,
                $"a line that no mains harmonic up to h = {HighestHarmonic} explains: radio bursts or supply ripple through mid-rail or converter reference, a clock that beats with the sampling rate",
                evidence),
        };
    }

    /// <summary>Measured over predicted power in three parts of the band of equal ratio, by medians of the bins so that lines do not
    /// count [dB].</summary>
    private static IEnumerable<double> Thirds(WelchSpectrum measured, double[] density, double low, double high)
    {
        double step = Math.Pow(high / low, 1.0 / 3);
        for (int third = 0; third < 3; third++)
        {
            double from = low * Math.Pow(step, third), to = from * step;
            double[] ratios = [.. Enumerable.Range(2, density.Length - 2).Where(k =>
                from <= k * measured.Step && k * measured.Step <= to).Select(k => measured.Density[k] / density[k - 1]).Order()];
            yield return ratios.Length == 0 ? 0 : 10 * Math.Log10(Math.Max(1e-30, ratios[ratios.Length / 2]));
        }
    }

    private static bool Within(BenchReading test, double value) =>
        (test.Least is not { } least || least <= value) && (test.Greatest is not { } greatest || value <= greatest);

    private static string Sentence(BenchReading test, IQuantity measured) =>
        $"{QuantityText.Format(measured)} measured, {(test.IsBound ? "at most " : "")}{QuantityText.Format(test.Expected)} predicted, {test.Tolerance}: {(Within(test, measured.SiValue) ? "inside" : "outside")}";

    private static string Percent(double ratio) =>
        $"{(1 <= ratio ? "+" : "")}{QuantityText.FormatPercent(Ratio.FromFraction(ratio - 1), 2)}";
}
